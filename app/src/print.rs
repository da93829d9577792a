//! Printing. What is printed is made by `plan.rs`.

/// Opens the browser's print window.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // Ignored: a browser that can't print says so itself.
        let _ = window.print();
    }
}
