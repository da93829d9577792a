//! The one recipe: its steps, what to mind, and the waits before a harvest.

use emberloam_engine::plan::charge::ChargePlan;
use emberloam_engine::plan::charge::intervals::Interval;
use emberloam_engine::season::day::spoken;
use leptos::prelude::*;

use crate::deferred::soon_of;
use crate::do_it::care::said;
use crate::grounds::{opened_grounds, statements};
use crate::in_place::{Look, flag, lines, settled};
use crate::state::Page;
use crate::words;

/// The recipe of the plan.
pub fn recipe(page: Page) -> impl IntoView {
    let found = soon_of(move || page.of_plan(|plan| plan.charge.clone()));
    view! {
        <details id="recipe" class="recipe" open hidden=flag(move || found.look(Option::is_none))>
            <summary>{words::RECIPE}</summary>
            {steps_of(found)}
        </details>
    }
}

/// The steps of a charge, what to mind and how long to wait.
pub fn steps_of(found: RwSignal<Option<ChargePlan>>) -> impl IntoView {
    let steps = move || found.look(|c| c.as_ref().map(|c| c.steps.clone())).unwrap_or_default();
    let mind = move || found.look(|c| c.as_ref().map(|c| said(&c.cautions))).unwrap_or_default();
    let waits = move || found.look(|c| c.as_ref().map(|c| c.intervals.clone())).unwrap_or_default();
    view! {
        <ol class="steps">{lines(steps)}</ol>
        <details class="waits" hidden=flag(move || waits().is_empty() && mind().is_empty())>
            <summary>{words::CHARGE_WAITS}</summary>
            {settled(waits, wait)}
            <ul class="plain minded">{statements(Box::new(mind))}</ul>
        </details>
    }
}

/// How long to wait before the harvest.
fn wait(of: Interval) -> impl IntoView {
    let Interval { source, label, harvest_from, too_soon, text, grounds, .. } = of;
    let from = harvest_from
        .map(|(touching, others)| words::harvest_from(&spoken(touching), &spoken(others)));
    let too_soon: Vec<_> = too_soon
        .iter()
        .map(|crop| view! { <p><strong>{words::harvest_too_soon(crop)}</strong></p> })
        .collect();
    let name = words::title(label);
    view! {
        <div data-source=source.name()>
            <p><strong>{name.clone()}": "</strong>{text}</p>
            {from.map(|from| view! { <p>{from}</p> })}
            {too_soon}
            {opened_grounds(&name, grounds)}
        </div>
    }
}
