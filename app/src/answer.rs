//! The answer, on the surface: what to do, how much, when next, and how to
//! charge; then the questions that could change it.

use emberloam_engine::quantity::Unit;
use emberloam_engine::season::Task;
use leptos::prelude::*;

use crate::figure::figures;
use crate::grounds::{Statement, statements};
use crate::later::later;
use crate::layer::{Stratum, edge, turf};
use crate::living::{Look, flag, lines, text};
use crate::paste::is_narrow;
use crate::questions::questions;
use crate::samples::which_sample;
use crate::season::when;
use crate::soon::soon_of;
use crate::state::Page;
use crate::words;

/// Cautions that always show; on a phone the others fold away, so that they
/// don't bury the questions. The engine names what hurts people first.
const FIRST_CAUTIONS: usize = 3;

/// The layer.
pub fn answer(page: Page) -> impl IntoView {
    let path = move || page.of_plan(|plan| Some(plan.path.name()));
    let headline = move || page.of_plan(|plan| plan.headline.clone());
    let provisional = move || page.of_plan(|plan| plan.provisional);
    view! {
        <section id="answer" class="layer humus" data-path=path aria-labelledby="answer-title">
            {turf()} {edge(Stratum::Humus)}
            <div class="layer-inside">
                <p class="kicker">
                    {words::WHAT_TO_DO} " · "
                    <span translate=text(move || {
                        words::translate(&page.bed_name())
                    })>{text(move || page.bed_name())}</span>
                </p>
                <h2 id="answer-title" class="headline" tabindex="-1">
                    {text(headline)}
                </h2>
                <p class="provisional" hidden=flag(move || !provisional())>
                    {words::PROVISIONAL} " "
                    <a href="#questions">{words::TO_THE_QUESTIONS}</a>
                </p>
                {which_sample(page)}
                {next_date(page)}
                {amounts(page)}
                {later(move |parts| (parts.purchase)(page))}
                {recipe(page)}
                {later(move |parts| (parts.charging)(page))}
                {later(move |parts| (parts.work_in)(page))}
                {cautions(page)}
                {questions(page)}
            </div>
        </section>
    }
}

fn next_date(page: Page) -> impl IntoView {
    // The tasks stand in the order they are done, dated or not.
    let next = move |say: fn(&Task) -> String| {
        page.of_plan(|plan| plan.season.first().map(say).unwrap_or_default())
    };
    view! {
        <p class="next" hidden=flag(move || next(when).is_empty())>
            <span class="next-word">{words::NEXT}</span>
            <strong>{text(move || next(when))}</strong>
            <span>{text(move || next(|task| task.task.clone()))}</span>
        </p>
    }
}

fn amounts(page: Page) -> impl IntoView {
    // What to carry to the bed comes first, the shares and rates after it.
    let list = move || {
        let amounts = page.of_plan(|plan| plan.amounts.clone());
        let (mut first, then): (Vec<_>, Vec<_>) =
            amounts.into_iter().partition(|figure| figure.unit == Unit::Litre);
        first.extend(then);
        first
    };
    let assumed = move || {
        let lead = list().first().map(|f| f.grounds.assumed.clone());
        lead.unwrap_or_default()
    };
    let capped = move || page.of_plan(|plan| plan.capped_by.clone());
    view! {
        <div class="amounts" hidden=flag(move || list().is_empty())>
            <h3>{words::AMOUNTS}</h3>
            {figures(page, list)}
            <ul class="notes">
                {lines(move || assumed().iter().map(|text| words::assumed(text)).collect())}
                {lines(capped)}
            </ul>
        </div>
    }
}

fn recipe(page: Page) -> impl IntoView {
    let steps = soon_of(move || {
        page.of_plan(|plan| plan.charging.as_ref().map(|c| c.steps.clone())).unwrap_or_default()
    });
    let numbers = soon_of(move || {
        page.of_plan(|plan| plan.charging.as_ref().map(|c| c.figures.clone())).unwrap_or_default()
    });
    view! {
        <div class="recipe" hidden=flag(move || steps.look(Vec::is_empty))>
            <h3>{words::RECIPE}</h3>
            <ol class="steps">
                {lines(move || steps.get())}
            </ol>
            {figures(page, move || numbers.get())}
        </div>
    }
}

fn cautions(page: Page) -> impl IntoView {
    let part = |first: bool| {
        let found = soon_of(move || {
            page.of_plan(|plan| {
                let kept = |at: &usize| (*at < FIRST_CAUTIONS) == first;
                let all = plan.cautions.iter().enumerate();
                all.filter(|(at, _)| kept(at))
                    .map(|(_, caution)| Statement {
                        rule: None,
                        text: caution.text.clone(),
                        grounds: caution.grounds.clone(),
                    })
                    .collect::<Vec<_>>()
            })
        });
        move || found.get()
    };
    let (first, rest) = (part(true), part(false));
    view! {
        <div class="cautions" hidden=flag(move || first().is_empty())>
            <h3>{words::TAKE_CARE}</h3>
            <ul class="plain">{statements(Box::new(first))}</ul>
            <details
                class="fold"
                open=!is_narrow()
                hidden=flag(move || rest().is_empty())
            >
                <summary>{text(move || words::more_cautions(rest().len()))}</summary>
                <ul class="plain">{statements(Box::new(rest))}</ul>
            </details>
        </div>
    }
}
