//! The pH to come, and how firmly the soil holds it.

use emberloam_engine::details;
use leptos::prelude::*;

use crate::deferred::soon;
use crate::figure::figures;
use crate::in_place::{Look, flag, text};
use crate::state::Page;
use crate::words;

/// The section.
pub fn reaction(page: Page) -> impl IntoView {
    let found = soon(page, details::reaction);
    let of = move || found.look(|found| found.clone().unwrap_or_default());
    view! {
        <div id="reaction" hidden=flag(move || found.look(Option::is_none))>
            <h3>{words::REACTION}</h3>
            <p>{text(move || of().text)}</p>
            {figures(page, move || of().figures)}
            <details class="fold">
                <summary>{words::REACTION_OTHERS}</summary>
                {figures(page, move || of().others)}
            </details>
        </div>
    }
}
