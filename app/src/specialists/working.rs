//! The working: the plan's own amounts with their bounds, and every number the
//! chemistry gave, each with its grounds.

use leptos::prelude::*;

use crate::deferred::soon_of;
use crate::figure::figures;
use crate::in_place::{Look, flag, lines};
use crate::state::Page;
use crate::words;

/// The amounts of biochar, and what held them down.
pub fn amounts(page: Page) -> AnyView {
    let found = soon_of(move || page.of_plan(|plan| plan.amounts.clone()));
    let capped = soon_of(move || page.of_plan(|plan| plan.capped_by.clone()));
    let assumed = move || {
        let lead = found.look(|all| all.first().map(|f| f.grounds.assumed.clone()));
        lead.unwrap_or_default()
    };
    view! {
        <section id="amounts" hidden=flag(move || found.look(Vec::is_empty))>
            <h3>{words::AMOUNTS}</h3>
            {figures(page, move || found.get())}
            <ul class="notes">
                {lines(move || assumed().iter().map(|text| words::assumed(text)).collect())}
                {lines(move || capped.get())}
            </ul>
        </section>
    }
    .into_any()
}

/// The chemistry.
pub fn working(page: Page) -> AnyView {
    let found = soon_of(move || {
        page.outcome.look(|o| o.as_ref().map(|o| o.derived.clone()).unwrap_or_default())
    });
    view! {
        <section id="working">
            <h3>{words::WORKING}</h3>
            <p class="soft">{words::WORKING_INTRO}</p>
            {figures(page, move || found.get())}
        </section>
    }
    .into_any()
}
