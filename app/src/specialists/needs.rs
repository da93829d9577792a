//! Lime and feeds: what the bed still needs beside biochar, and what there is to give it.

use emberloam_engine::plan::needs::Need;
use emberloam_engine::quantity::Unit;
use leptos::prelude::*;

use crate::control::number;
use crate::deferred::soon_of;
use crate::figure::figures;
use crate::grounds::opened_grounds;
use crate::in_place::settled;
use crate::state::Page;
use crate::words;

/// The section.
pub fn needs(page: Page) -> AnyView {
    let found = soon_of(move || page.of_plan(|plan| plan.needs.clone()));
    view! {
        <section id="needs" aria-labelledby="needs-title">
            <h3 id="needs-title">{words::NEEDS}</h3>
            <p class="soft">{words::NEEDS_INTRO}</p>
            <div>{settled(move || found.get(), move |of| need(page, of))}</div>
            {feeds(page)}
        </section>
    }
    .into_any()
}

/// One need: its answer, its amounts, what to do, and what it rests on.
fn need(page: Page, of: Need) -> impl IntoView {
    // What is given is warned of beside the amount.
    let given = of.given().is_some();
    let Need { kind, answer, figures: amounts, steps, cautions, others, grounds, .. } = of;
    view! {
        <div class="need" data-name=kind.name()>
            <h4>{kind.label()}</h4>
            <p>{answer}</p>
            {figures(page, move || amounts.clone())}
            {list("steps", steps)}
            {(!given).then(|| list("need-cautions", cautions))}
            {(!others.is_empty()).then(|| view! { <p class="aside-word">{words::OTHERS}</p> })}
            {list("others", others)}
            {opened_grounds(kind.label(), grounds)}
        </div>
    }
}

fn list(class: &'static str, lines: Vec<String>) -> impl IntoView {
    let items: Vec<_> = lines.into_iter().map(|line| view! { <li>{line}</li> }).collect();
    (!items.is_empty()).then(|| view! { <ul class=class>{items}</ul> })
}

/// What there is to lime and feed with.
fn feeds(page: Page) -> impl IntoView {
    let bag = [
        number(
            page,
            words::BAG_N,
            Unit::Percent,
            |case| case.feeds.fertiliser.map(|bag| bag[0]),
            |case, value| set_bag(case, 0, value),
        ),
        number(
            page,
            words::BAG_P,
            Unit::Percent,
            |case| case.feeds.fertiliser.map(|bag| bag[1]),
            |case, value| set_bag(case, 1, value),
        ),
        number(
            page,
            words::BAG_K,
            Unit::Percent,
            |case| case.feeds.fertiliser.map(|bag| bag[2]),
            |case, value| set_bag(case, 2, value),
        ),
    ];
    view! {
        <details class="fold">
            <summary>{words::FEEDS}</summary>
            <div class="controls">
                {number(
                    page,
                    words::LIME_PERCENT,
                    Unit::Percent,
                    |case| case.feeds.lime_percent,
                    |case, value| case.feeds.lime_percent = value,
                )}
                {number(
                    page,
                    words::TARGET_PH,
                    Unit::None,
                    |case| case.feeds.target_ph,
                    |case, value| case.feeds.target_ph = value,
                )}
                {bag}
                {number(
                    page,
                    words::COMPOST_LITRES,
                    Unit::Litre,
                    |case| case.feeds.compost_litres,
                    |case, value| case.feeds.compost_litres = value,
                )}
            </div>
        </details>
    }
}

/// Sets one number of the bag; a bag of nothing is no bag.
fn set_bag(case: &mut emberloam_engine::Case, at: usize, value: Option<f64>) {
    let mut bag = case.feeds.fertiliser.unwrap_or_default();
    bag[at] = value.unwrap_or(0.0);
    case.feeds.fertiliser = Some(bag).filter(|bag| bag.iter().any(|percent| *percent > 0.0));
}
