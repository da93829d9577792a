//! The page: a soil profile. The answer lies on the surface, and each layer
//! below explains the one above it.
//!
//! State is small: the pasted text and the answers.
//! All else is worked out from them by the engine; nothing here calculates
//! with soil.

mod announce;
mod bed;
mod beds;
mod control;
mod date;
mod deferred;
mod do_it;
mod figure;
mod grounds;
mod help;
mod in_place;
mod language;
mod later;
mod layer;
mod long_work;
mod notes;
mod origin;
mod page;
mod paper;
mod report;
mod saved;
mod share;
mod sheet;
mod specialists;
mod state;
mod store;
mod this_season;
mod why;
mod words;

use wasm_bindgen::prelude::wasm_bindgen;

/// Tells `public/boot.js` of a fault: it ends the program, and the page must say so.
fn tell_of_faults() {
    std::panic::set_hook(Box::new(|_| report::files::tell("emberloam:stopped", "")));
}

/// Mounts the page; one that keeps something, or isn't in English, waits for
/// what reads that.
#[wasm_bindgen(start)]
pub fn start() {
    tell_of_faults();
    if store::holds_something() || language::is_foreign() {
        // The framework's own tasks only run once something is mounted.
        wasm_bindgen_futures::spawn_local(async {
            let parts = later::at_once().await;
            if let Some(parts) = parts {
                (parts.learn)();
            }
            mount(store::restore(parts.map(|parts| &parts.pens)));
        });
    } else {
        mount(store::restore(None));
    }
}

/// Mounts the page into `<main id="page">`, or into the body when there is none, and says so.
fn mount(restored: store::Restored) {
    use wasm_bindgen::JsCast;

    let place = leptos::prelude::document()
        .get_element_by_id("page")
        .and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok());
    match place {
        Some(main) => {
            // The words there are for people whose browser can't run the page.
            main.set_inner_html("");
            leptos::mount::mount_to(main, move || page::page(restored)).forget();
        }
        None => leptos::mount::mount_to_body(move || page::page(restored)),
    }
    report::files::tell("emberloam:mounted", "");
}
