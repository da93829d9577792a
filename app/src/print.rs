//! Printing: the tables of the charts and all cautions open for the paper and
//! close after.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::events::EventListener;
use leptos::prelude::document;
use wasm_bindgen::JsCast;
use web_sys::HtmlDetailsElement;

/// Follows the window's printing for as long as the page lives.
pub fn open_for_printing() {
    let Some(window) = web_sys::window() else { return };
    let opened: Rc<RefCell<Vec<HtmlDetailsElement>>> = Rc::default();
    let to_close = opened.clone();
    EventListener::new(&window, "beforeprint", move |_| {
        for fold in closed_folds() {
            fold.set_open(true);
            opened.borrow_mut().push(fold);
        }
    })
    .forget();
    EventListener::new(&window, "afterprint", move |_| {
        for fold in to_close.borrow_mut().drain(..) {
            fold.set_open(false);
        }
    })
    .forget();
}

fn closed_folds() -> Vec<HtmlDetailsElement> {
    let Ok(list) = document().query_selector_all(".open-on-paper:not([open])") else {
        return Vec::new();
    };
    (0..list.length()).filter_map(|i| list.get(i)?.dyn_into().ok()).collect()
}

/// Opens the browser's print window.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // Ignored: a browser that can't print says so itself.
        let _ = window.print();
    }
}
