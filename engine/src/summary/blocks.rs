//! The plan as headings, paragraphs and lists, without any look.

use crate::outcome::{JudgedReading, Outcome};
use crate::quantity::{Band, Figure, Measures, Unit, shown, significant};
use crate::season::Task;

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
/// recipe, dates, levels, reasons, cautions, sources.
pub fn plan(outcome: &Outcome, measures: Measures) -> Vec<Block> {
    let advice = &outcome.advice;
    let mut blocks =
        vec![Block::Title("Biochar plan".into()), Block::Paragraph(advice.headline.clone())];
    let mut part = |heading: &'static str, items: Vec<String>| {
        if !items.is_empty() {
            blocks.push(Block::Heading(heading.into()));
            blocks.push(Block::List(items));
        }
    };
    let figure = |f: &Figure| format!("{}: {}", f.label, shown(&f.band, f.unit, measures));
    part("How much", advice.amounts.iter().map(figure).collect());
    if let Some(charging) = &advice.charging {
        part("How to charge it", charging.steps.clone());
    }
    part("When", advice.season.iter().map(dated).collect());
    if let Some(sample) = outcome.samples.get(outcome.sample) {
        part("What the soil holds", sample.readings.iter().map(|r| level(r, measures)).collect());
    }
    let reason = |speaks_for: bool| {
        advice
            .reasons
            .iter()
            .filter(|r| r.speaks_for == speaks_for)
            .map(|r| r.text.clone())
            .collect()
    };
    part("Why", reason(true));
    part("What speaks against it", reason(false));
    part("Take care", advice.cautions.iter().map(|c| c.text.clone()).collect());
    part("Still to be answered", outcome.questions.iter().map(|q| q.text.clone()).collect());
    let sources = sources(outcome);
    if !sources.is_empty() {
        blocks.push(Block::Heading("Sources".into()));
        blocks.push(Block::Sources(sources));
    }
    blocks
}

fn dated(task: &Task) -> String {
    match (task.from, task.to) {
        (Some(from), Some(to)) if from == to => format!("{from}: {}", task.task),
        (Some(from), Some(to)) => format!("{from} to {to}: {}", task.task),
        (Some(from), None) => format!("from {from}: {}", task.task),
        (None, Some(to)) => format!("by {to}: {}", task.task),
        (None, None) => task.task.clone(),
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
