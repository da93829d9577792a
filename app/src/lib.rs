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
mod frame;
mod grounds;
mod help;
mod in_place;
mod language;
mod later;
mod layer;
mod long_work;
mod markup;
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
mod trial;
mod why;
mod words;

#[cfg(fuzzing)]
pub mod arriving;

use std::cell::Cell;

use wasm_bindgen::prelude::wasm_bindgen;

/// Tells `public/boot.js` of a fault: it ends the program, and the page must say so.
/// `app/bundle/src/stops.rs` has it called in the place of what Rust does where it can't go on.
#[wasm_bindgen]
pub fn stopped() {
    thread_local!(static TOLD: Cell<bool> = const { Cell::new(false) });
    // What tells may itself find no memory.
    if !TOLD.replace(true) {
        report::files::tell("emberloam:stopped", "");
    }
}

/// Mounts the page; one that keeps something, or isn't in English, waits for
/// what reads that.
#[wasm_bindgen(start)]
pub fn start() {
    if store::latest().is_some() || language::is_foreign() {
        // The framework's own tasks only run once something is mounted.
        wasm_bindgen_futures::spawn_local(async {
            let parts = later::at_once().await;
            let newer = match parts {
                Some(parts) => (parts.newer)().await,
                None => None,
            };
            mount(store::restore(parts.map(|parts| &parts.pens), newer));
        });
    } else {
        mount(store::restore(None, None));
    }
}

/// Mounts the page into its frame, in a turn of its own: the browser has just made the program.
fn mount(restored: store::Restored) {
    let begin = || {
        leptos::mount::mount_to(frame::element("notes"), || page::page(restored)).forget();
    };
    leptos::prelude::set_timeout(begin, std::time::Duration::ZERO);
}
