//! The plan as headings, paragraphs and lists, without any look.

use crate::outcome::{JudgedReading, Outcome};
use crate::plan::needs::Need;
use crate::plan::{Job, Plan};
use crate::quantity::{Band, Figure, Measures, Unit, shown, significant};

/// A piece of the plan.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// The plan's title.
    Title(String),
    /// The heading of a part.
    Heading(String),
    /// A paragraph.
    Paragraph(String),
    /// A list.
    List(Vec<String>),
    /// Publications, by the titles they have.
    Sources(Vec<String>),
}

/// The plan for the chosen sample, in the reader's measures: answer, amounts,
/// lime and feeds, recipe, jobs, levels, reasons, cautions, sources. Page, paper,
/// text and calendar all say what stands here.
pub fn plan(outcome: &Outcome, measures: Measures) -> Vec<Block> {
    let plan = &outcome.plan;
    let mut blocks =
        vec![Block::Title("Plan for the bed".into()), Block::Paragraph(plan.headline.clone())];
    if plan.provisional {
        let text = "For now: an answer or a test that is still missing can change this.";
        blocks.push(Block::Paragraph(text.into()));
    }
    let mut part = |heading: &'static str, items: Vec<String>| {
        if !items.is_empty() {
            blocks.push(Block::Heading(heading.into()));
            blocks.push(Block::List(items));
        }
    };
    part("What to do when", plan.jobs.iter().map(dated).collect());
    part("How much biochar", plan.amounts.iter().map(|f| figure(f, measures)).collect());
    part("What held the amount down", plan.capped_by.clone());
    if let Some(charge) = &plan.charge {
        part("How to charge it", charge.steps.clone());
        part("How long to wait", charge.intervals.iter().map(|i| i.text.clone()).collect());
        part("What is left over", charge.leftovers.iter().map(|l| l.text.clone()).collect());
    }
    part("Lime and feeds", plan.needs.iter().flat_map(|n| need(n, measures)).collect());
    if let Some(sample) = outcome.samples.get(outcome.sample) {
        part("What the soil holds", sample.readings.iter().map(|r| level(r, measures)).collect());
    }
    part("Why", reasons(plan, true));
    part("What speaks against it", reasons(plan, false));
    part("Near a line", plan.lines.clone());
    part("Take care", cautions(plan));
    part("Still to be answered", outcome.questions.iter().map(|q| q.text.clone()).collect());
    let sources = sources(outcome);
    if !sources.is_empty() {
        blocks.push(Block::Heading("Sources".into()));
        blocks.push(Block::Sources(sources));
    }
    blocks
}

fn figure(f: &Figure, measures: Measures) -> String {
    format!("{}: {}", f.label, shown(&f.band, f.unit, measures))
}

/// A need: its answer, its amounts for the bed, its steps.
fn need(need: &Need, measures: Measures) -> Vec<String> {
    let amounts = need.figures.iter().map(|f| figure(f, measures));
    std::iter::once(need.answer.clone()).chain(amounts).chain(need.steps.iter().cloned()).collect()
}

fn reasons(plan: &Plan, speaks_for: bool) -> Vec<String> {
    let of_kind = plan.reasons.iter().filter(|r| r.speaks_for == speaks_for);
    of_kind.map(|r| r.text.clone()).collect()
}

/// What can hurt: of the plan, of the charge and of what is given, each once.
pub fn cautions(plan: &Plan) -> Vec<String> {
    let charge = plan.charge.iter().flat_map(|c| &c.cautions).map(|c| &c.text);
    let given = plan.needs.iter().filter(|n| n.given().is_some()).flat_map(|n| &n.cautions);
    let mut all: Vec<String> = Vec::new();
    for text in plan.cautions.iter().map(|c| &c.text).chain(charge).chain(given) {
        if !all.contains(text) {
            all.push(text.clone());
        }
    }
    all
}

fn dated(job: &Job) -> String {
    let task = &job.task;
    match (job.from, job.to) {
        (Some(from), Some(to)) if from == to => format!("{from}: {}", task),
        (Some(from), Some(to)) => format!("{from} to {to}: {}", task),
        (Some(from), None) => format!("from {from}: {}", task),
        (None, Some(to)) => format!("by {to}: {}", task),
        (None, None) => task.clone(),
    }
}

fn level(reading: &JudgedReading, measures: Measures) -> String {
    let number = match (reading.value, reading.bound) {
        (Some(value), _) => {
            shown(&Band::exactly(value), reading.unit.unwrap_or(Unit::None), measures)
        }
        (None, Some(crate::outcome::Bound::Below(v))) => format!("below {}", significant(v, 3)),
        (None, Some(crate::outcome::Bound::Above(v))) => format!("above {}", significant(v, 3)),
        (None, None) => reading.original.clone(),
    };
    let number = match reading.finding.judged_as {
        Some(judged) => {
            format!("{number}, judged as {} in so light a soil", significant(judged, 2))
        }
        None => number,
    };
    match (&reading.finding.level, &reading.finding.range) {
        (Some(level), Some(range)) => {
            format!(
                "{}: {number}, {} (enough: {})",
                reading.property.label(),
                level.label(),
                range.text
            )
        }
        (Some(level), None) => format!("{}: {number}, {}", reading.property.label(), level.label()),
        _ => format!("{}: {number}", reading.property.label()),
    }
}

/// Every publication the plan rests on, once, in the order it is met.
fn sources(outcome: &Outcome) -> Vec<String> {
    let mut titles: Vec<String> = Vec::new();
    for citation in outcome.citations() {
        let line = match citation.source.place {
            "" => citation.source.title.to_string(),
            place => format!("{} {place}", citation.source.title),
        };
        if !titles.contains(&line) {
            titles.push(line);
        }
    }
    titles
}
