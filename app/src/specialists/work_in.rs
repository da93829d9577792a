//! How to work the biochar in, step by step.

use emberloam_engine::details::work_in::{self, Step};
use leptos::prelude::*;

use crate::deferred::soon;
use crate::figure::figures;
use crate::grounds::opened_grounds;
use crate::in_place::{Look, flag, settled};
use crate::state::Page;
use crate::words;

/// The section.
pub fn work_in(page: Page) -> AnyView {
    let found = soon(page, work_in::work_in);
    let of = move || found.look(|found| found.clone().unwrap_or_default());
    view! {
        <details
            id="work-in"
            class="fold"
            hidden=flag(move || found.look(Option::is_none))
        >
            <summary>{words::WORK_IN}</summary>
            <ol class="steps">{settled(move || of().steps, step)}</ol>
            {figures(page, move || of().figures)}
            <ul class="plain">{settled(move || of().cautions, step)}</ul>
        </details>
    }
    .into_any()
}

fn step(of: Step) -> impl IntoView {
    view! {
        <li>
            <p>{of.text.clone()}</p>
            {opened_grounds(&of.text, of.grounds)}
        </li>
    }
}
