//! Printing. `public/folds.js` opens the folds that belong on paper.

/// Opens the browser's print window.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // Ignored: a browser that can't print says so itself.
        let _ = window.print();
    }
}
