//! The plan as blocks: on paper with its sources as footnotes, and as text to
//! share. Paper is made when the page is about to be printed, and only paper
//! shows it.

use emberloam_engine::details::work_in::work_in;
use emberloam_engine::season::day::spoken;
use emberloam_engine::sources::Citation;
use emberloam_engine::summary::{self, Block, Line};
use leptos::ev;
use leptos::prelude::*;

use crate::grounds::publication;
use crate::share::sharing::paper_code;
use crate::state::Page;
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

/// The plan, empty until something is printed.
pub fn paper(page: Page) -> AnyView {
    let printing = RwSignal::new(0_u32);
    // Ignored: the listener lives as long as the page.
    let _ = window_event_listener(ev::beforeprint, move |_| {
        printing.update(|times| *times += 1);
    });
    let sheet = move || {
        let asked = printing.get() > 0;
        untrack(|| (asked && page.has_report()).then(|| sheet(page)))
    };
    view! { <article class="plan">{sheet} {paper_code(page)}</article> }.into_any()
}

fn sheet(page: Page) -> AnyView {
    let blocks = blocks(page);
    let sources = match blocks.last() {
        Some(Block::Sources(sources)) => sources.clone(),
        _ => Vec::new(),
    };
    let today = date::today().map(spoken).unwrap_or_default();
    let bed = page.bed_name();
    let mut headline = true;
    let parts: Vec<_> = blocks
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
                let items: Vec<_> = lines.into_iter().map(|line| item(line, &sources)).collect();
                view! { <ul>{items}</ul> }.into_any()
            }
            Block::Sources(sources) => {
                view! { <ol class="plan-notes">{footnotes(sources)}</ol> }.into_any()
            }
        })
        .collect();
    view! {
        <p class="plan-bed">
            <span translate=words::translate(&bed)>{bed.clone()}</span>
            " · "
            {words::plan_for(&today)}
        </p>
        {parts}
    }
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
        <li>
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
