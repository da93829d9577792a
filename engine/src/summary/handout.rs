//! One page to take to the bed: the answer, what to carry, what to do when, how to charge, and
//! what can hurt. Reasons, readings and sources stay in the plan.

use crate::case::Case;
use crate::day::when;
use crate::outcome::Outcome;
use crate::plan::charge::ChargePlan;
use crate::quantity::Grounds;
use crate::summary::blocks::{Block, Line, cautions, list};
use crate::summary::carry::{Carried, carry};

/// The most cautions on it. Our choice: what is longer is not read.
const MOST_CAUTIONS: usize = 5;

/// The most words on it: a page. Our choice.
const MOST_WORDS: usize = 350;

/// What stands at its end, whatever else had to go.
const RULES_FIRST: &str = "Local rules and the advice of licensed people come before this plan.";

/// What its cautions stand under.
const TAKE_CARE: &str = "Take care";

/// The handout for the chosen sample's bed, in the reader's measures.
pub fn handout(outcome: &Outcome, case: &Case) -> Vec<Block> {
    let plan = &outcome.plan;
    let name = outcome.samples.get(outcome.sample).map(|sample| sample.name.trim());
    let title = match name {
        Some(name) if !name.is_empty() => name.to_string(),
        _ => "Plan for the bed".to_string(),
    };
    let mut blocks = vec![Block::Title(title), Block::Paragraph(plan.headline.clone())];
    if plan.provisional {
        let text = "For now: an answer or a test that is still missing can change this.";
        blocks.push(Block::Paragraph(text.into()));
    }
    let all = carry(outcome, case);
    if let Some(first) = all.first() {
        let heading = format!("What to carry {}", first.of_bed);
        blocks.extend(list(&heading, all.iter().map(carried).collect()));
    }
    let jobs = plan.jobs.iter().map(|job| Line {
        head: when(job.from, job.to),
        text: job.task.clone(),
        tick: true,
        ..Line::default()
    });
    blocks.extend(list("What to do when", jobs.collect()));
    let mut dangers = cautions(plan);
    dangers.retain(|caution| !caution.text.starts_with("Local rules"));
    // What can hurt people first.
    dangers.sort_by_key(|caution| !caution.people);
    let last = Block::Paragraph(RULES_FIRST.into());
    let taken = words(&blocks) + words(std::slice::from_ref(&last)) + count(TAKE_CARE);
    let mut left = MOST_WORDS.saturating_sub(taken);
    // The first caution has its place whatever the recipe takes.
    let first = dangers.first().map_or(0, |caution| count(&caution.text));
    let charging = plan.charge.as_ref().map(|c| in_short(c, left.saturating_sub(first)));
    blocks.extend(list("How to charge it", charging.unwrap_or_default()));
    left = MOST_WORDS.saturating_sub(words(&blocks) + words(std::slice::from_ref(&last)));
    left = left.saturating_sub(count(TAKE_CARE));
    let mut told = Vec::new();
    for caution in &dangers {
        let long = count(&caution.text);
        if told.len() < MOST_CAUTIONS && long <= left {
            left -= long;
            told.push(Line::said(&caution.text, &Grounds::default()));
        }
    }
    blocks.extend(list(TAKE_CARE, told));
    blocks.push(last);
    blocks
}

fn carried(carried: &Carried) -> Line {
    let Carried { amount, what, weighs, fine, .. } = carried;
    let what = if weighs.is_empty() { what.clone() } else { format!("{what}, {weighs}") };
    let text = if fine.is_empty() { format!("{what}.") } else { format!("{what}. {fine}") };
    Line { head: amount.clone(), text, ..Line::default() }
}

/// The recipe without its spreading, which is a job, and of how to pour only the first sentence.
/// Where there is no room for all of it, first the mask goes, which is among the cautions, then
/// how to pour; where there is none for that, it stands in the plan alone.
fn in_short(charge: &ChargePlan, room: usize) -> Vec<Line> {
    let steps = charge.steps.split_last().map_or(&[][..], |(_, steps)| steps);
    let short = |step: &String| {
        let first = step.split_once(". ").filter(|_| step.starts_with("Pour it over"));
        first.map_or_else(|| step.clone(), |(first, _)| format!("{first}."))
    };
    let steps: Vec<String> = steps.iter().map(short).collect();
    let without = |starts: &[&str]| -> Vec<Line> {
        let kept = steps.iter().filter(|step| !starts.iter().any(|start| step.starts_with(start)));
        kept.map(|step| Line::said(step, &Grounds::default())).collect()
    };
    let fits = |lines: &Vec<Line>| {
        lines.iter().map(|line| count(&line.text)).sum::<usize>() + count("How to charge it")
            <= room
    };
    [&[][..], &["Work outdoors"], &["Work outdoors", "Pour it over"]]
        .into_iter()
        .map(without)
        .find(fits)
        .unwrap_or_else(|| {
            vec![Line::said("The recipe stands in the whole plan.", &Grounds::default())]
        })
}

fn count(text: &str) -> usize {
    text.split_whitespace().count()
}

/// The words of some blocks.
fn words(blocks: &[Block]) -> usize {
    blocks
        .iter()
        .map(|block| match block {
            Block::Title(text) | Block::Heading(text) | Block::Paragraph(text) => count(text),
            Block::List(lines) => {
                lines.iter().map(|line| count(&line.head) + count(&line.text)).sum()
            }
            Block::Sources(_) => 0,
        })
        .sum()
}
