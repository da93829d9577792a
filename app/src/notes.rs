//! What the page tells about itself: ready offline, a new version, keeping.

use gloo::events::EventListener;
use leptos::prelude::*;

use crate::in_place::{flag, press, text, text_if};
use crate::state::Page;
use crate::words;

/// The notes. They wait at the edge of the page and never cover it.
pub fn notes(page: Page) -> impl IntoView {
    let offline = RwSignal::new(false);
    let update = RwSignal::new(false);
    if let Some(window) = web_sys::window() {
        EventListener::new(&window, "emberloam:offline-ready", move |_| offline.set(true)).forget();
        EventListener::new(&window, "emberloam:update-waiting", move |_| update.set(true)).forget();
    }
    view! {
        <p id="offline-note" hidden=flag(move || !offline.get())>
            {text_if(move || offline.get(), words::OFFLINE_READY)}
        </p>
        <p id="update-note" hidden=flag(move || !update.get())>
            {text_if(move || update.get(), words::UPDATE_WAITING)}
            " "
            <button type="button" on:click=press(use_update)>
                {words::USE_UPDATE}
            </button>
            <button type="button" class="quiet" on:click=press(move || update.set(false))>
                {words::LATER}
            </button>
        </p>
        <p id="keeping-note" hidden=flag(move || page.keeping.get().is_none())>
            {text(move || page.keeping.get().unwrap_or_default())}
        </p>
    }
}

/// Asks the script that looks after the service worker to use the new version.
fn use_update() {
    if let (Some(window), Ok(event)) =
        (web_sys::window(), web_sys::CustomEvent::new("emberloam:use-update"))
    {
        // Ignored: the answer only says whether a listener cancelled it.
        let _ = window.dispatch_event(&event);
    }
}
