//! What `public/index.html` holds before the program comes: the head, the settings, the paste box,
//! a picture of an answer. The page takes it over as it stands, so that nothing is drawn twice.

use gloo::events::EventListener;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlElement};

/// An element of the frame; one that is in no page where there is none of the name.
pub fn element<T: JsCast>(id: &str) -> T {
    let page = document();
    let found = page.get_element_by_id(id).and_then(|element| element.dyn_into().ok());
    found.unwrap_or_else(|| {
        let nowhere = page.create_element("div").expect("a page can hold elements");
        nowhere.unchecked_into()
    })
}

/// Whether the window is as a media query says.
pub fn window_is(query: &str) -> bool {
    let list = web_sys::window().and_then(|window| window.match_media(query).ok().flatten());
    list.is_some_and(|list| list.matches())
}

/// Puts a view at the end of an element of the frame, for as long as the page stands.
pub fn put(id: &str, view: AnyView) {
    let mut view = view.build();
    view.mount(&element::<HtmlElement>(id), None);
    std::mem::forget(view);
}

/// Hears what happens to an element of the frame.
pub fn hear(id: &str, event: &'static str, does: impl Fn(&Event) + 'static) {
    EventListener::new(&element::<HtmlElement>(id), event, does).forget();
}
