//! The plan on paper: two pages with the answer, the amounts, the recipe, the
//! dates, the levels and the cautions, with the sources as footnotes. It is
//! made when the page is about to be printed, and only paper shows it.

use emberloam_engine::biochar::work_in::work_in;
use emberloam_engine::outcome::JudgedReading;
use emberloam_engine::quantity::{Figure, Grounds};
use emberloam_engine::season::Task;
use emberloam_engine::situated;
use emberloam_engine::sources::Citation;
use leptos::ev;
use leptos::prelude::*;

use crate::figure::value;
use crate::grounds::publication;
use crate::living::Look;
use crate::reading::amount;
use crate::season::when;
use crate::share::sharing::paper_code;
use crate::state::Page;
use crate::{date, words};

/// Reasons and cautions that fit beside the rest on two pages; the engine names
/// the weightiest first.
const MOST_REASONS: usize = 4;
const MOST_CAUTIONS: usize = 6;

/// The plan, empty until something is printed.
pub fn plan(page: Page) -> AnyView {
    let printing = RwSignal::new(0_u32);
    // Ignored: the listener lives as long as the page.
    let _ = window_event_listener(ev::beforeprint, move |_| {
        printing.update(|times| *times += 1);
    });
    let sheet = move || {
        let asked = printing.get() > 0;
        untrack(|| (asked && page.has_report()).then(|| paper(page)))
    };
    view! { <article class="plan">{sheet} {paper_code(page)}</article> }.into_any()
}

/// The footnotes, in the order they are first needed.
#[derive(Default)]
struct Footnotes(Vec<Citation>);

impl Footnotes {
    /// The numbers of what something rests on.
    fn of(&mut self, grounds: &Grounds) -> String {
        let mut numbers = Vec::new();
        for citation in &grounds.sources {
            let same = |known: &Citation| known.source.title == citation.source.title;
            let at = self.0.iter().position(same).unwrap_or_else(|| {
                self.0.push(*citation);
                self.0.len() - 1
            });
            if let Some(known) = self.0.get_mut(at) {
                known.grade = known.grade.max(citation.grade);
            }
            numbers.push((at + 1).to_string());
        }
        numbers.join(", ")
    }
}

fn paper(page: Page) -> AnyView {
    let mut notes = Footnotes::default();
    let plan = page.outcome.look(|outcome| outcome.as_ref().map(|o| o.advice.clone()));
    let Some(plan) = plan else { return ().into_any() };
    let today = date::today().map(date::spoken).unwrap_or_default();
    let bed = page.bed_name();
    let why: Vec<_> = plan
        .reasons
        .iter()
        .filter(|reason| reason.speaks_for)
        .take(MOST_REASONS)
        .map(|reason| noted(reason.text.clone(), notes.of(&reason.grounds), true))
        .collect();
    let amounts = figures(page, &plan.amounts, &mut notes);
    let steps = plan.charging.map(|charging| charging.steps).unwrap_or_default();
    let steps: Vec<_> = steps.into_iter().map(|step| view! { <li>{step}</li> }).collect();
    let work = page.case().and_then(|case| situated(&case, work_in).flatten());
    let work: Vec<_> = work
        .iter()
        .flat_map(|work| &work.steps)
        .map(|step| noted(step.text.clone(), notes.of(&step.grounds), true))
        .collect();
    let dates: Vec<_> = plan.season.iter().map(|task| dated(task, &mut notes)).collect();
    let readings = page.of_sample(|sample| sample.readings.clone());
    let levels: Vec<_> = readings.iter().map(|r| level(r, &mut notes)).collect();
    let more = plan.cautions.len().saturating_sub(MOST_CAUTIONS);
    let cautions: Vec<_> = plan
        .cautions
        .iter()
        .take(MOST_CAUTIONS)
        .map(|caution| noted(caution.text.clone(), notes.of(&caution.grounds), true))
        .collect();
    let footnotes: Vec<_> = notes
        .0
        .iter()
        .map(|citation| {
            let title = publication(citation.source);
            view! { <li>{title} " (" {citation.grade.words()} ")"</li> }
        })
        .collect();
    view! {
        <header>
            <p class="plan-bed">
                <span translate=words::translate(&bed)>{bed.clone()}</span>
                " · "
                {words::plan_for(&today)}
            </p>
            <p class="plan-headline">{plan.headline}</p>
            {plan.provisional.then(|| view! { <p>{words::PLAN_PROVISIONAL}</p> })}
        </header>
        <div class="plan-columns">
            {part(words::WHY, !why.is_empty(), view! { <ul>{why}</ul> })}
            {part(words::AMOUNTS, !amounts.is_empty(), view! { <dl>{amounts}</dl> })}
            {part(words::RECIPE, !steps.is_empty(), view! { <ol>{steps}</ol> })}
        </div>
        {part(words::WORK_IN, !work.is_empty(), view! { <ol>{work}</ol> })}
        {part(words::WHEN, !dates.is_empty(), view! { <table>{dates}</table> })}
        {part(words::TAKE_CARE, !cautions.is_empty(), view! { <ul>{cautions}</ul> })}
        {(more > 0).then(|| view! { <p class="plan-small">{words::plan_more_cautions(more)}</p> })}
        {part(
            words::HOLDS,
            !levels.is_empty(),
            view! {
                <table class="plan-levels">
                    <thead>
                        <tr>
                            <th scope="col">{words::COLUMN_PROPERTY}</th>
                            <th scope="col">{words::RESULT}</th>
                            <th scope="col">{words::COLUMN_LEVEL}</th>
                            <th scope="col">{words::COLUMN_ENOUGH}</th>
                        </tr>
                    </thead>
                    <tbody>{levels}</tbody>
                </table>
            },
        )}
        {part(words::SOURCES, !footnotes.is_empty(), view! { <ol class="plan-notes">{footnotes}</ol> })}
    }
    .into_any()
}

/// A part of the plan under its name, unless it is empty.
fn part(name: &'static str, holds: bool, inside: impl IntoView + 'static) -> AnyView {
    holds
        .then(|| {
            view! {
                <section class="plan-part">
                    <h2>{name}</h2>
                    {inside.into_any()}
                </section>
            }
        })
        .into_any()
}

/// A text with the numbers of its footnotes; as an item of a list, or within one.
fn noted(text: String, numbers: String, item: bool) -> AnyView {
    let inside = view! {
        {text}
        <sup>{numbers}</sup>
    };
    if item { view! { <li>{inside}</li> }.into_any() } else { inside.into_any() }
}

fn figures(page: Page, list: &[Figure], notes: &mut Footnotes) -> Vec<AnyView> {
    list.iter()
        .map(|figure| {
            let numbers = notes.of(&figure.grounds);
            view! {
                <div>
                    <dt>{words::title(figure.label)}</dt>
                    <dd>{noted(value(page, figure), numbers, false)}</dd>
                </div>
            }
            .into_any()
        })
        .collect()
}

fn dated(task: &Task, notes: &mut Footnotes) -> AnyView {
    let numbers = notes.of(&task.grounds);
    view! {
        <tr>
            <th scope="row">{when(task)}</th>
            <td>{noted(task.task.clone(), numbers, false)}</td>
        </tr>
    }
    .into_any()
}

fn level(reading: &JudgedReading, notes: &mut Footnotes) -> AnyView {
    let finding = &reading.finding;
    let numbers = notes.of(&finding.grounds);
    let name = finding.level.map_or(words::NOT_JUDGED, |level| level.label());
    let enough = finding.range.as_ref().map(|range| range.text.clone()).unwrap_or_default();
    view! {
        <tr>
            <th scope="row">{words::title(reading.property.label())}</th>
            <td>{amount(reading)}</td>
            <td>{name}</td>
            <td>{noted(enough, numbers, false)}</td>
        </tr>
    }
    .into_any()
}
