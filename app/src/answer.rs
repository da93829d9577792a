//! The answer, on the surface: what to do, how much, when next, and the one
//! recipe; then the questions that could change it.

use emberloam_engine::plan::Job;
use emberloam_engine::plan::cautions::Caution;
use emberloam_engine::plan::charge::intervals::Interval;
use emberloam_engine::plan::needs::{Need, NeedKind};
use emberloam_engine::quantity::{Figure, Unit};
use emberloam_engine::season::day::{spoken, when};
use emberloam_engine::summary;
use leptos::prelude::*;

use crate::figure::figures;
use crate::grounds::{Statement, opened_grounds, statements};
use crate::later::later;
use crate::layer::{Stratum, edge, turf};
use crate::living::{Look, flag, lines, settled, text};
use crate::paste::is_narrow;
use crate::questions::questions;
use crate::samples::which_sample;
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
    // The jobs stand in the order they are done, dated or not.
    let next = move |say: fn(&Job) -> String| {
        page.of_plan(|plan| plan.jobs.first().map(say).unwrap_or_default())
    };
    let days = |job: &Job| when(job.from, job.to);
    view! {
        <p class="next" hidden=flag(move || next(days).is_empty())>
            <span class="next-word">{words::NEXT}</span>
            <strong>{text(move || next(days))}</strong>
            <span>{text(move || next(|job| job.task.clone()))}</span>
        </p>
    }
}

fn amounts(page: Page) -> impl IntoView {
    // What to carry to the bed comes first, the shares and rates after it.
    let list = move || {
        page.of_plan(|plan| {
            let (lime, feeds): (Vec<&Need>, Vec<&Need>) = plan.needs.iter().partition(|need| {
                matches!(need.kind, NeedKind::Lime | NeedKind::Acid | NeedKind::Gypsum)
            });
            let (biochar, rest): (Vec<&Figure>, Vec<&Figure>) =
                plan.amounts.iter().partition(|figure| figure.unit == Unit::Litre);
            let mut all: Vec<Figure> = lime.into_iter().filter_map(carried).collect();
            all.extend(biochar.into_iter().cloned());
            all.extend(feeds.into_iter().filter_map(carried));
            all.extend(rest.into_iter().cloned());
            all
        })
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

/// Lime or a feed as an amount for the bed; what there is on hand only takes its place.
fn carried(need: &Need) -> Option<Figure> {
    let on_hand = matches!(need.kind, NeedKind::Fertiliser | NeedKind::Compost);
    let band = need.given().filter(|_| !on_hand)?;
    let weight = need.figures.iter().find(|f| matches!(f.unit, Unit::Gram | Unit::Kg));
    let label = weight.map_or(need.kind.label(), |figure| figure.label);
    let grounds = need.grounds.clone();
    Some(Figure { name: need.kind.name(), label, band, unit: Unit::Gram, grounds })
}

/// The one recipe: what can hurt, the steps, and the waits before a harvest.
fn recipe(page: Page) -> impl IntoView {
    let found = soon_of(move || page.of_plan(|plan| plan.charge.clone()));
    let steps = move || found.look(|c| c.as_ref().map(|c| c.steps.clone())).unwrap_or_default();
    let mind = move || found.look(|c| c.as_ref().map(|c| said(&c.cautions))).unwrap_or_default();
    let waits = move || found.look(|c| c.as_ref().map(|c| c.intervals.clone())).unwrap_or_default();
    view! {
        <div class="recipe" hidden=flag(move || found.look(Option::is_none))>
            <h3>{words::RECIPE}</h3>
            <ol class="steps">{lines(steps)}</ol>
            <ul class="plain">{statements(Box::new(mind))}</ul>
            <div class="waits" hidden=flag(move || waits().is_empty())>
                <h4>{words::CHARGE_WAITS}</h4>
                {settled(waits, wait)}
            </div>
        </div>
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
    view! {
        <div data-source=source.name()>
            <p><strong>{words::title(label)}": "</strong>{text}</p>
            {from.map(|from| view! { <p>{from}</p> })}
            {too_soon}
            {opened_grounds(grounds)}
        </div>
    }
}

/// Cautions, each with what it rests on.
pub fn said(cautions: &[Caution]) -> Vec<Statement> {
    cautions
        .iter()
        .map(|c| Statement { rule: None, text: c.text.clone(), grounds: c.grounds.clone() })
        .collect()
}

fn cautions(page: Page) -> impl IntoView {
    let part = |first: bool| {
        let found = soon_of(move || {
            page.of_plan(|plan| {
                // Those of the charge stand beside the recipe.
                let by_recipe = |c: &Caution| {
                    plan.charge.as_ref().is_some_and(|charge| charge.cautions.contains(c))
                };
                let mut all = summary::cautions(plan);
                all.retain(|caution| !by_recipe(caution));
                let (leading, rest) = all.split_at(all.len().min(FIRST_CAUTIONS));
                said(if first { leading } else { rest })
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
