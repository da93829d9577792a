//! The one recipe: its steps, what to mind, and the waits before a harvest.

use emberloam_engine::details::batch;
use emberloam_engine::plan::charge::ChargePlan;
use emberloam_engine::plan::charge::intervals::Interval;
use emberloam_engine::quantity::{Unit, in_readers, significant};
use emberloam_engine::season::day::spoken;
use leptos::prelude::*;

use crate::control::number_typed;
use crate::deferred::soon;
use crate::do_it::care::said;
use crate::grounds::{opened_grounds, statements};
use crate::in_place::{Look, Text, flag, lines, settled, text};
use crate::state::Page;
use crate::words;

/// The recipe of the plan, or the same for what the person has at hand.
pub fn recipe(page: Page) -> impl IntoView {
    let at_hand = RwSignal::new(None::<f64>);
    let of_plan = soon(page, |_, plan| plan.charge.clone());
    let found = Memo::new(move |_| {
        let of_plan = of_plan.get();
        let Some(litres) = at_hand.get() else { return of_plan };
        let survey = page.survey.get_untracked();
        let of_batch =
            survey.and_then(|survey| untrack(|| page.of_plan(|plan| batch(&survey, plan, litres))));
        of_batch.or(of_plan)
    });
    // Without a word on it the plan's own amount stands in the box.
    let own = move || {
        let litres = page.of_plan(|plan| plan.dose.litres);
        significant(in_readers(litres, Unit::Litre, page.measures()), 3)
    };
    let typed = move |litres: f64| {
        at_hand.set(Some(litres).filter(|litres| litres.is_finite() && *litres > 0.0));
    };
    view! {
        <div id="recipe" class="recipe" hidden=flag(move || found.look(Option::is_none))>
            <p class="recipe-title">{words::RECIPE}</p>
            {litres_at_hand(page, "field i-have", text(String::new), text(own), Box::new(typed))}
            {steps_of(found)}
        </div>
    }
}

/// How much biochar there is, in the reader's measures; what is typed is handed on in litres.
pub fn litres_at_hand(
    page: Page,
    class: &'static str,
    value: Text,
    placeholder: Text,
    put: Box<dyn Fn(f64)>,
) -> AnyView {
    number_typed(page, words::I_HAVE, Unit::Litre, class, value, placeholder, put)
}

/// The steps of a charge, what to mind and how long to wait.
pub fn steps_of(found: Memo<Option<ChargePlan>>) -> impl IntoView {
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
