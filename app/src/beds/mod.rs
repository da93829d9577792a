//! The beds of a report: each with its verdict in a word or two, the samples
//! side by side, and one shopping list for all.

mod list;
pub mod shopping;

use leptos::prelude::*;

use crate::beds::list::{MOST, list};
use crate::in_place::{changed, flag, text};
use crate::later::later;
use crate::report::samples::which_sample;
use crate::state::Page;
use crate::words;

/// The part; nothing where the report has one sample.
pub fn beds(page: Page) -> impl IntoView {
    view! {
        <section
            id="beds"
            class="beds"
            aria-label=words::BEDS
            hidden=flag(move || page.count() < 2)
        >
            {list(page)} <div hidden=flag(move || page.count() <= MOST)>{which_sample(page)}</div>
            <label class="tick">
                <input
                    type="checkbox"
                    id="for-all"
                    prop:checked=flag(move || page.for_all.get())
                    on:change=changed(move |event| page.for_all.set(event_target_checked(&event)))
                />
                <span>{text(move || words::for_all_beds(page.count()))}</span>
            </label>
            {later(move |parts| (parts.compare)(page))}
        </section>
    }
}
