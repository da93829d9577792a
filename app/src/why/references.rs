//! The sources: every publication, what rests on it, and how well it was read.

use emberloam_engine::details::{
    courses, exchange_shift, permanence, purchase, reaction, repeats, standards, traits, windows,
    winter_loss, work_in,
};
use emberloam_engine::plan::charge::ChargePlan;
use emberloam_engine::quantity::Grounds;
use emberloam_engine::region::{CropRate, RegionalLime};
use emberloam_engine::season;
use emberloam_engine::sources::{Citation, Source, all_sources};
use emberloam_engine::{Outcome, Plan, Survey, ranges};
use leptos::prelude::*;

use crate::deferred::{soon, soon_of};
use crate::grounds::{citation, publication};
use crate::in_place::{Look, settled};
use crate::state::Page;
use crate::words;

/// What rests on a publication: each citation with the name of what it is for.
type Cited = Vec<(Citation, String)>;
/// Notes what the grounds of something are.
type Note<'a> = dyn FnMut(&Grounds, &str) + 'a;

/// What is worked out beside the first answer, each with its sources. One at a
/// time, so that no turn of the page takes long.
const BESIDE: [fn(&Survey<'_>, &Plan, &mut Note<'_>); 5] =
    [of_traits, of_course, of_amounts, of_bag, of_season];

/// The list of what this answer leans on, and the register of all there is.
pub fn list(page: Page) -> AnyView {
    let first =
        soon_of(move || page.outcome.look(|o| o.as_ref().map(of_answer)).unwrap_or_default());
    let beside = BESIDE.map(|of| {
        soon(page, move |survey, plan| {
            let mut cited = Cited::new();
            of(survey, plan, &mut |grounds, what| note(&mut cited, grounds, what));
            cited
        })
    });
    // Waits behind the others in the queue.
    let used = soon_of(move || {
        let mut all = first.get();
        beside.iter().for_each(|of| all.extend(of.get()));
        by_source(all)
    });
    let rows = settled(move || used.get(), |(source, rests)| row(source, &rests));
    view! {
        <ul class="citations">{rows}</ul>
        <details class="fold" id="register">
            <summary>{words::REGISTER}</summary>
            <p class="soft">{words::REGISTER_INTRO}</p>
            <ul class="citations">{register()}</ul>
        </details>
    }
    .into_any()
}

/// A publication with what rests on it.
fn row(source: Citation, rests: &[String]) -> AnyView {
    let rests = words::rests_on(rests);
    view! { <li>{citation(source)} <span class="soft rests">{rests}</span></li> }.into_any()
}

fn note(cited: &mut Cited, grounds: &Grounds, what: &str) {
    cited.extend(grounds.sources.iter().map(|citation| (*citation, what.to_string())));
}

/// Every source once, by title, with the weakest grade that was used, so that nothing looks
/// better read than it is, and what rests on it.
fn by_source(cited: Cited) -> Vec<(Citation, Vec<String>)> {
    let mut found: Vec<(Citation, Vec<String>)> = Vec::new();
    for (citation, what) in cited {
        let title = citation.source.title();
        let at = found.partition_point(|(kept, _)| kept.source.title() < title);
        match found.get_mut(at).filter(|(kept, _)| kept.source.title() == title) {
            Some((kept, rests)) => {
                kept.grade = kept.grade.max(citation.grade);
                if !rests.contains(&what) {
                    rests.push(what);
                }
            }
            None => found.insert(at, (citation, vec![what])),
        }
    }
    found
}

/// The sources of the first answer.
fn of_answer(outcome: &Outcome) -> Cited {
    let mut cited = Cited::new();
    let mut add = |grounds: &Grounds, what: &str| note(&mut cited, grounds, what);
    for reading in outcome.samples.first().into_iter().flat_map(|s| &s.readings) {
        add(&reading.finding.grounds, reading.property.label());
        for other in &reading.finding.second_opinions {
            add(&other.grounds, reading.property.label());
        }
    }
    let plan = &outcome.plan;
    for figure in outcome.derived.iter().chain(&plan.amounts) {
        add(&figure.grounds, figure.label);
    }
    for effect in &plan.effects {
        effect.figures().for_each(|figure| add(&figure.grounds, words::EFFECTS));
    }
    plan.reasons.iter().for_each(|reason| add(&reason.grounds, words::THE_PATH));
    plan.jobs.iter().for_each(|job| add(&job.grounds, words::ROOM_SEASON));
    plan.cautions.iter().for_each(|caution| add(&caution.grounds, words::CAUTIONS));
    for need in &plan.needs {
        add(&need.grounds, need.kind.label());
        need.figures.iter().for_each(|figure| add(&figure.grounds, need.kind.label()));
    }
    plan.charge.iter().for_each(|charge| of_charge(charge, &mut |of| add(of, words::CHARGING)));
    cited
}

fn of_charge(charge: &ChargePlan, add: &mut dyn FnMut(&Grounds)) {
    charge.shares.iter().for_each(|share| add(&share.grounds));
    charge.used.iter().chain(&charge.alone).for_each(|used| add(&used.grounds));
    charge.intervals.iter().for_each(|wait| add(&wait.grounds));
    charge.figures.iter().for_each(|figure| add(&figure.grounds));
    charge.cautions.iter().chain(&charge.leftovers).for_each(|said| add(&said.grounds));
}

fn of_traits(survey: &Survey<'_>, _: &Plan, add: &mut Note<'_>) {
    let of_soil = traits(survey);
    of_soil.figures.iter().for_each(|figure| add(&figure.grounds, figure.label));
    of_soil.sayings.iter().for_each(|saying| add(&saying.grounds, words::TRAITS));
}

/// What biochar does over a year.
fn of_course(survey: &Survey<'_>, plan: &Plan, add: &mut Note<'_>) {
    courses(survey, plan).iter().for_each(|course| add(&course.grounds, words::COURSE));
    let reaction = reaction(survey, plan).unwrap_or_default();
    for figure in reaction.figures.iter().chain(&reaction.others) {
        add(&figure.grounds, words::REACTION);
    }
    let shift = exchange_shift(survey, plan).unwrap_or_default();
    shift.figures.iter().for_each(|figure| add(&figure.grounds, words::EXCHANGE));
}

/// What to buy, spread over the years, and how to work it in.
fn of_amounts(survey: &Survey<'_>, plan: &Plan, add: &mut Note<'_>) {
    if let Some(bought) = purchase(survey, plan) {
        add(&bought.grounds, words::PURCHASE);
        bought.figures.iter().for_each(|figure| add(&figure.grounds, words::PURCHASE));
    }
    if let Some(years) = repeats(survey, plan) {
        add(&years.grounds, words::SCHEDULE);
        years.columns.iter().for_each(|column| add(&column.grounds, words::SCHEDULE));
    }
    if let Some(done) = work_in::work_in(survey, plan) {
        done.figures.iter().for_each(|figure| add(&figure.grounds, words::WORK_IN));
        for step in done.steps.iter().chain(&done.cautions) {
            add(&step.grounds, words::WORK_IN);
        }
    }
}

/// What the bag's certificate says.
fn of_bag(survey: &Survey<'_>, _: &Plan, add: &mut Note<'_>) {
    let case = survey.case();
    add(&permanence(case).grounds, words::CERTIFICATE);
    for standard in standards::standards(&case.biochar) {
        add(&standard.grounds, words::STANDARDS);
    }
}

fn of_season(survey: &Survey<'_>, plan: &Plan, add: &mut Note<'_>) {
    let case = survey.case();
    if let Some(place) = season::place(&case.season, case.measures) {
        add(&place.grounds, words::PLACE);
    }
    let free = windows(survey);
    for task in free.rests.iter().chain(&free.conflicts) {
        add(&task.grounds, words::RESTS);
    }
    for figure in winter_loss(survey, plan).iter().flat_map(|loss| &loss.figures) {
        add(&figure.grounds, words::WINTER_LOSS);
    }
}

/// Every publication there is, with what rests on it in any answer.
fn register() -> impl IntoView {
    let ranges = ranges::schemes().map(|scheme| (scheme.citations, scheme.property.label()));
    let lime = RegionalLime::all().iter().map(|table| (table.citations, words::ROOM_NEEDS));
    let rates = CropRate::all().iter().map(|rate| (rate.citations, words::ROOM_NEEDS));
    let mut cited = Cited::new();
    for (citations, what) in ranges.chain(lime).chain(rates) {
        cited.extend(citations.iter().map(|citation| (*citation, what.to_string())));
    }
    let used = by_source(cited);
    let mut all: Vec<&'static Source> = all_sources().collect();
    all.sort_unstable_by_key(|source| source.title());
    all.into_iter()
        .map(|source| {
            let at = used.binary_search_by(|(known, _)| known.source.title().cmp(source.title()));
            let (title, rests) = match at.ok().map(|at| &used[at]) {
                Some((cited, rests)) => (citation(*cited), words::rests_on(rests)),
                None => (publication(source), String::new()),
            };
            view! { <li>{title} <span class="soft rests">{rests}</span></li> }
        })
        .collect_view()
}
