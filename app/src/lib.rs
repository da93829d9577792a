//! The page: a stand-in until the views arrive.

use leptos::prelude::*;
use wasm_bindgen::prelude::wasm_bindgen;

/// Mounts the page.
#[wasm_bindgen(start)]
pub fn start() {
    leptos::mount::mount_to_body(Page);
}

#[component]
fn Page() -> impl IntoView {
    let text = RwSignal::new(String::new());
    view! {
        <main>
            <h1>"Emberloam"</h1>
            <label for="report-text">"Your soil report"</label>
            <textarea
                id="report-text"
                prop:value=text
                on:input=move |typed| text.set(event_target_value(&typed))
            ></textarea>
            <p id="length">{move || text.read().len()}</p>
        </main>
    }
}
