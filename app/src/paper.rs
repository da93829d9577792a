//! The plan on paper: one page to take to the bed, the whole with its reasons and
//! sources, or a page for each bed; and as blocks, for text to share. Paper is made when the page
//! is about to be printed, and only paper shows it.

use emberloam_engine::details::work_in::work_in;
use emberloam_engine::season::day::spoken;
use emberloam_engine::sources::Citation;
use emberloam_engine::summary::{self, Block, Line, ToBuy};
use leptos::ev;
use leptos::prelude::*;

use crate::grounds::publication;
use crate::share::sharing::paper_code;
use crate::state::Page;
use crate::store::is_a_file;
use crate::{date, words};

/// The plan with the steps to work it in; nothing without a report.
pub fn blocks(page: Page) -> Vec<Block> {
    let (Some(survey), Some(outcome)) = (page.survey.get(), page.outcome.get()) else {
        return Vec::new();
    };
    let mut blocks = summary::parts(&outcome, page.measures());
    let work = work_in(&survey, &outcome.plan).unwrap_or_default();
    let steps = work.steps.iter().map(|step| Line::said(&step.text, &step.grounds)).collect();
    blocks.extend(summary::list(words::WORK_IN, steps));
    summary::with_sources(blocks)
}

/// What is to be printed.
#[derive(Clone, Copy, Default, PartialEq)]
pub enum Printed {
    /// One page to take to the bed.
    #[default]
    Handout,
    /// The same, then the plan with its reasons and sources.
    Whole,
    /// A page for each bed, and the shopping list for all.
    AllBeds,
}

/// More beds than these are no heap of paper that anybody reads. Our choice.
const MOST_BEDS: usize = 60;

/// The paper, empty until something is printed.
pub fn paper(page: Page) -> AnyView {
    let printed = page.printed;
    // Ignored: the listener lives as long as the page. Printed from the browser's own menu it is
    // the handout.
    let _ = window_event_listener(ev::beforeprint, move |_| {
        if printed.with_untracked(Option::is_none) {
            printed.set(Some(Printed::default()));
        }
    });
    // Not at `afterprint`, which phones send before they have taken the page.
    Effect::new(move |_| {
        page.report.track();
        page.answers.track();
        if printed.with_untracked(Option::is_some) {
            printed.set(None);
        }
    });
    let sheets = move || {
        let what = printed.get().filter(|_| untrack(|| page.has_report()));
        what.map(|what| untrack(|| sheets(page, what)))
    };
    view! { <div class="plan">{sheets}</div> }.into_any()
}

fn sheets(page: Page, printed: Printed) -> AnyView {
    match printed {
        Printed::Handout => handout(page, page.chosen(), true),
        Printed::Whole => view! { {handout(page, page.chosen(), true)} {whole(page)} }.into_any(),
        Printed::AllBeds => {
            let beds = (0..page.count().min(MOST_BEDS)).map(|at| handout(page, at, false));
            view! { {beds.collect_view()} {list_for_all(page)} }.into_any()
        }
    }
}

/// The day it is printed, and of which bed.
fn head(bed: &str) -> AnyView {
    let today = date::today().map(spoken).unwrap_or_default();
    view! {
        <p class="plan-bed">
            <span translate=words::translate(bed)>{bed.to_string()}</span>
            " · "
            {words::plan_for(&today)}
        </p>
    }
    .into_any()
}

/// One page for one bed.
fn handout(page: Page, at: usize, with_code: bool) -> AnyView {
    let of_bed = page.of_bed(at, |outcome, case| {
        let name = outcome.samples.first().map(|sample| sample.name.clone()).unwrap_or_default();
        (name, summary::handout(outcome, case))
    });
    let (name, blocks) = of_bed.unwrap_or_default();
    let bed = if name.is_empty() { words::YOUR_BED.to_string() } else { name };
    view! {
        <article class="handout">
            {(with_code && !is_a_file()).then(|| paper_code(page))} {head(&bed)} {laid_out(blocks, &[])}
        </article>
    }
    .into_any()
}

/// The plan with its reasons, and its sources as footnotes.
fn whole(page: Page) -> AnyView {
    let blocks = blocks(page);
    let sources = match blocks.last() {
        Some(Block::Sources(sources)) => sources.clone(),
        _ => Vec::new(),
    };
    view! {
        <article class="whole">{head(&page.bed_name())} {laid_out(blocks, &sources)}</article>
    }
    .into_any()
}

/// What to buy for all beds.
fn list_for_all(page: Page) -> AnyView {
    let shopping = page.shopping();
    let line = |line: &ToBuy| {
        let beds: Vec<_> =
            line.beds.iter().map(|bed| format!("{}: {}", bed.name, bed.amount)).collect();
        let text = format!("{} ({})", line.what, beds.join("; "));
        Line { head: line.amount.clone(), text, tick: true, sources: Vec::new() }
    };
    let mut blocks = vec![Block::Paragraph(words::SHOPPING.into())];
    blocks.push(Block::List(shopping.lines.iter().map(line).collect()));
    blocks.extend(shopping.not_counted.into_iter().map(Block::Paragraph));
    view! { <article class="handout">{laid_out(blocks, &[])}</article> }.into_any()
}

fn laid_out(blocks: Vec<Block>, sources: &[Citation]) -> AnyView {
    let mut headline = true;
    blocks
        .into_iter()
        .map(|block| match block {
            // The page's own head stands in its place.
            Block::Title(_) => ().into_any(),
            Block::Paragraph(text) => {
                let class = std::mem::take(&mut headline).then_some("plan-headline");
                view! { <p class=class>{text}</p> }.into_any()
            }
            Block::Heading(text) => view! { <h2>{text}</h2> }.into_any(),
            Block::List(lines) => {
                let items: Vec<_> = lines.into_iter().map(|line| item(line, sources)).collect();
                view! { <ul>{items}</ul> }.into_any()
            }
            Block::Sources(sources) => {
                view! { <ol class="plan-notes">{footnotes(sources)}</ol> }.into_any()
            }
        })
        .collect_view()
        .into_any()
}

/// A line with the numbers of its footnotes.
fn item(line: Line, sources: &[Citation]) -> AnyView {
    let numbers: Vec<String> = (1..)
        .zip(sources)
        .filter(|(_, known)| line.sources.iter().any(|c| c.source.title() == known.source.title()))
        .map(|(number, _)| number.to_string())
        .collect();
    let head = words::title(&line.head);
    view! {
        <li class:to-tick=line.tick>
            {(!head.is_empty()).then(|| view! { <strong>{head}</strong> ": " })}
            {line.text}
            <sup>{numbers.join(", ")}</sup>
        </li>
    }
    .into_any()
}

fn footnotes(sources: Vec<Citation>) -> Vec<AnyView> {
    let note = |citation: Citation| {
        let title = publication(citation.source);
        view! { <li>{title} " (" {citation.grade.words()} ")"</li> }.into_any()
    };
    sources.into_iter().map(note).collect()
}
