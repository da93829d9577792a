//! A trial in one's own soil: its plots judged, the next one planned. A piece of the program of
//! its own, fetched when somebody opens it and kept from then on.

mod judging;
mod kept;
mod next;
mod picture;
mod results;
mod saved;
mod table;
mod taught;
mod view;

use leptos::prelude::*;
use leptos::wasm_split::{SplitLoaderError, wasm_split};

use crate::in_place::unfolds;
use crate::report::files::tell;
use crate::state::Page;
use crate::words::trial as words;

type Inside = fn(Page) -> AnyView;

/// The one door to the piece.
#[wasm_split(trial, wasm_split_path = leptos::wasm_split, fallible)]
fn inside() -> Result<Inside, SplitLoaderError> {
    Ok(view::trial)
}

/// The fold, empty until it is opened.
pub fn trial(page: Page) -> AnyView {
    let made = RwSignal::new(None::<Option<Inside>>);
    let open = move |now: bool| {
        if now && !matches!(made.get_untracked(), Some(Some(_))) {
            leptos::task::spawn_local(async move {
                let found = inside().await.ok();
                // `public/boot.js` has the offline copy keep it.
                tell("emberloam:keep", "split_trial.wasm");
                made.set(Some(found));
            });
        }
    };
    // A link to a trial opens it.
    let linked = window()
        .location()
        .hash()
        .is_ok_and(|hash| hash.trim_start_matches('#').starts_with(kept::MARK));
    let view = move || {
        made.get().map(|made| match made {
            Some(inside) => untrack(|| inside(page)),
            None => view! { <p role="alert">{words::NOT_HERE}</p> }.into_any(),
        })
    };
    view! {
        <details id="trial" class="keep" open=linked on:toggle=unfolds(open)>
            <summary>
                <h2>{words::TRIAL}</h2>
            </summary>
            {view}
        </details>
    }
    .into_any()
}
