//! The plan as headings, paragraphs and lists, without any look.

use crate::day::when;
use crate::outcome::{Bound, JudgedReading, Outcome};
use crate::plan::cautions::Caution;
use crate::plan::needs::Need;
use crate::plan::{Effect, Job, Plan};
use crate::quantity::{Figure, Grounds, Measures, Unit, shown, significant};
use crate::sources::Citation;

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
    List(Vec<Line>),
    /// Publications: what the lines above rest on.
    Sources(Vec<Citation>),
}

/// A line of a list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Line {
    /// Its days, or the name of its number; empty where it is a sentence alone.
    pub head: String,
    /// What it says.
    pub text: String,
    /// Whether it is a job with a box to tick.
    pub tick: bool,
    /// What it rests on.
    pub sources: Vec<Citation>,
}

impl Line {
    fn new(head: impl Into<String>, text: impl Into<String>, grounds: &Grounds) -> Line {
        Line {
            head: head.into(),
            text: text.into(),
            sources: grounds.sources.clone(),
            ..Line::default()
        }
    }

    /// A sentence with what it rests on.
    pub fn said(text: &str, grounds: &Grounds) -> Line {
        Line::new("", text, grounds)
    }
}

/// Sentences that rest on what stands beside them.
fn plain(all: &[String]) -> Vec<Line> {
    all.iter().map(|text| Line::said(text, &Grounds::default())).collect()
}

/// The plan for the chosen sample, in the reader's measures: answer, jobs, amounts, recipe,
/// lime and feeds, levels, reasons, cautions, sources. Page, paper, text and calendar all say
/// what stands here.
pub fn plan(outcome: &Outcome, measures: Measures) -> Vec<Block> {
    with_sources(parts(outcome, measures))
}

/// The same before its sources, for what adds a part to it.
pub fn parts(outcome: &Outcome, measures: Measures) -> Vec<Block> {
    let plan = &outcome.plan;
    let mut blocks =
        vec![Block::Title("Plan for the bed".into()), Block::Paragraph(plan.headline.clone())];
    if plan.provisional {
        let text = "For now: an answer or a test that is still missing can change this.";
        blocks.push(Block::Paragraph(text.into()));
    }
    let mut part = |heading: &str, items: Vec<Line>| blocks.extend(list(heading, items));
    part("What to do when", plan.jobs.iter().map(dated).collect());
    part("How much biochar", plan.amounts.iter().map(|f| figure(f, measures)).collect());
    part("What held the amount down", plain(&plan.capped_by));
    if let Some(charge) = &plan.charge {
        part("How to charge it", plain(&charge.steps));
        let waits = charge.intervals.iter().map(|i| Line::new(i.label, &*i.text, &i.grounds));
        part("How long to wait", waits.collect());
        let left = charge.leftovers.iter().map(|l| Line::said(&l.text, &l.grounds));
        part("What is left over", left.collect());
    }
    part("Lime and feeds", plan.needs.iter().flat_map(|n| need(n, measures)).collect());
    part("With your trial", plan.effects.iter().filter_map(|e| beside(e, measures)).collect());
    if let Some(sample) = outcome.samples.get(outcome.sample) {
        part("What the soil holds", sample.readings.iter().map(level).collect());
    }
    part("Why", reasons(plan, true));
    part("What speaks against it", reasons(plan, false));
    part("Near a line", plain(&plan.lines));
    let cautions = cautions(plan);
    part("Take care", cautions.iter().map(|c| Line::said(&c.text, &c.grounds)).collect());
    let open: Vec<String> = outcome.questions.iter().map(|q| q.text.clone()).collect();
    part("Still to be answered", plain(&open));
    blocks
}

/// A list under its heading; nothing where it is empty.
pub fn list(heading: &str, items: Vec<Line>) -> Vec<Block> {
    if items.is_empty() {
        return Vec::new();
    }
    vec![Block::Heading(heading.into()), Block::List(items)]
}

/// The blocks with every publication that their lines rest on, once, in the order it is met,
/// and with the weakest grade it was used by.
pub fn with_sources(mut blocks: Vec<Block>) -> Vec<Block> {
    let mut all: Vec<Citation> = Vec::new();
    let lines = blocks.iter().filter_map(|block| match block {
        Block::List(lines) => Some(lines),
        _ => None,
    });
    for citation in lines.flatten().flat_map(|line| &line.sources) {
        match all.iter_mut().find(|known| known.source.title() == citation.source.title()) {
            Some(known) => known.grade = known.grade.max(citation.grade),
            None => all.push(*citation),
        }
    }
    if !all.is_empty() {
        blocks.push(Block::Heading("Sources".into()));
        blocks.push(Block::Sources(all));
    }
    blocks
}

fn figure(f: &Figure, measures: Measures) -> Line {
    Line::new(f.label, shown(&f.band, f.unit, measures), &f.grounds)
}

/// What biochar does in the first month by the trial of this bed, beside the plan's own word.
fn beside(effect: &Effect, measures: Measures) -> Option<Line> {
    let with = effect.with_trial.as_ref()?;
    let [own, with_trial] = [&effect.change, with].map(|f| shown(&f.band, f.unit, measures));
    let text = format!("{with_trial} in the first month; without your trial {own}");
    Some(Line::new(with.label, text, &with.grounds))
}

/// A need: its answer, its amounts for the bed, its steps.
fn need(need: &Need, measures: Measures) -> Vec<Line> {
    let mut lines = vec![Line::said(&need.answer, &need.grounds)];
    // Where nothing is given a number only confuses; a salt's stands in the answer; and what is
    // carried to the bed counts there, not what it comes to on a square metre.
    if need.given().is_some() && need.salt.is_none() {
        let by_area = [Unit::GPerM2, Unit::GPerM2OfLawn];
        let carried = need.figures.iter().filter(|f| !by_area.contains(&f.unit));
        lines.extend(carried.map(|f| figure(f, measures)));
    }
    lines.extend(plain(&need.steps));
    lines
}

fn reasons(plan: &Plan, speaks_for: bool) -> Vec<Line> {
    let of_kind = plan.reasons.iter().filter(|r| r.speaks_for == speaks_for);
    of_kind.map(|r| Line::said(&r.text, &r.grounds)).collect()
}

/// What can hurt: of the plan, of the charge and of what is given, each once.
pub fn cautions(plan: &Plan) -> Vec<Caution> {
    let charge = plan.charge.iter().flat_map(|c| &c.cautions).cloned();
    let given = plan.needs.iter().filter(|n| n.given().is_some()).flat_map(|n| &n.cautions);
    let given = given.map(|text| Caution {
        text: text.clone(),
        people: false,
        grounds: Grounds::default(),
    });
    let mut all: Vec<Caution> = Vec::new();
    for caution in plan.cautions.iter().cloned().chain(charge).chain(given) {
        if !all.iter().any(|known| known.text == caution.text) {
            all.push(caution);
        }
    }
    all
}

fn dated(job: &Job) -> Line {
    Line::new(when(job.from, job.to), &*job.task, &job.grounds)
}

/// The number or limit of a reading with its unit, as judged.
pub fn amount(reading: &JudgedReading) -> String {
    let symbol = reading.unit.map_or("", Unit::symbol);
    let space = if symbol.is_empty() { "" } else { "\u{a0}" };
    let number = |value| format!("{}{space}{symbol}", significant(value, 3));
    match (reading.value, reading.bound) {
        (_, Some(Bound::Below(limit))) => format!("below {}", number(limit)),
        (_, Some(Bound::Above(limit))) => format!("above {}", number(limit)),
        (Some(value), None) => number(value),
        (None, None) => reading.original.clone(),
    }
}

fn level(reading: &JudgedReading) -> Line {
    let finding = &reading.finding;
    let number = match finding.judged_as {
        Some(judged) => {
            format!("{}, judged as {} in so light a soil", amount(reading), significant(judged, 2))
        }
        None => amount(reading),
    };
    let text = match (finding.level, &finding.range) {
        (Some(level), Some(range)) => {
            format!("{number}, {} (enough: {})", level.label(), range.text)
        }
        (Some(level), None) => format!("{number}, {}", level.label()),
        _ => number,
    };
    Line::new(reading.property.label(), text, &finding.grounds)
}
