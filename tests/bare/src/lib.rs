//! The least page that Leptos makes: a heading, a box, and the number of its letters.

use leptos::prelude::*;
use wasm_bindgen::prelude::wasm_bindgen;

/// Mounts it.
#[wasm_bindgen(start)]
pub fn start() {
    let letters = RwSignal::new(0);
    let count = move |event| letters.set(event_target_value(&event).chars().count());
    leptos::mount::mount_to_body(move || {
        view! {
            <h1>"A bare page"</h1>
            <textarea on:input=count></textarea>
            <p id="letters">{move || letters.get()}</p>
        }
    });
}
