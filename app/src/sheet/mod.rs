//! The soil at a glance: every reading a line on one sheet, and what could not be read.

pub mod correct;
pub mod line;
pub mod ruler;

use leptos::prelude::*;

use crate::in_place::{Look, keyed, lines};
use crate::layer::{Stratum, layer};
use crate::report::source::source_key;
use crate::sheet::line::line;
use crate::state::Page;
use crate::words;

/// The layer.
pub fn sheet(page: Page) -> impl IntoView {
    let notes = move || page.outcome.look(|o| o.as_ref().map(|o| o.notes.clone()));
    layer(
        Stratum::Ochre,
        "holds",
        words::HOLDS,
        view! {
            <p class="common-scale" aria-hidden="true">
                {words::SCALE.map(|word| view! { <span>{word}</span> })}
            </p>
            <ul class="readings plain">
                {keyed(move || page.readings.get(), |r| source_key(r.place), move |item| line(page, item))}
            </ul>
            <ul class="notes">{lines(move || notes().unwrap_or_default())}</ul>
        },
    )
}
