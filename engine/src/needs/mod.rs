//! What the bed needs beside biochar: lime or acid, gypsum, and nutrients, in
//! amounts for this bed, or "none" where that is the answer.
//!
//! [`needs`] is a call of its own, beside [`crate::interpret`]: the page asks
//! for it when a reader goes down to it, so that the first answer needn't wait.

mod acidify;
mod gypsum;
mod lime;
mod lime_by_buffer;
mod lime_rate;
mod lime_tables;
mod reaction;

use crate::case::Case;
use crate::chemistry::{self, Chemistry};
use crate::normalise::normalise;
use crate::quantity::{Figure, Grounds};
use crate::question::Question;
use crate::ranges::{Finding, Findings, Setting, judge};
use crate::soil::{Soil, Texture};

pub use acidify::{SulfurSoil, sulfur_for_free_lime, sulfur_michigan};
pub use gypsum::{esp_from_sar, gypsum_oster, gypsum_per_meq};
pub use lime_rate::*;

/// What the chosen sample's bed needs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Needs {
    /// What was looked into, the most telling first: each with its answer.
    pub list: Vec<Need>,
    /// What must be known before more can be said.
    pub questions: Vec<Question>,
}

/// One thing a bed may need.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Need {
    /// A kebab-case name: `lime`, `acidify`, `gypsum`, `nitrogen`, `phosphate`, `potash`,
    /// `magnesium`, `sulfur`.
    pub name: &'static str,
    /// The answer in one plain sentence: how much, none, none and stop, or why it can't be said.
    pub answer: String,
    /// The amounts: kg/ha as published, and kg for the bed.
    pub figures: Vec<Figure>,
    /// What to do, step by step: doses, times, depth.
    pub steps: Vec<String>,
    /// What can hurt, and whom to ask.
    pub cautions: Vec<String>,
    /// What other publications give for the same soil, in a sentence each.
    pub others: Vec<String>,
    /// What the answer rests on.
    pub grounds: Grounds,
}

/// All that a need is worked out from.
#[derive(Clone, Copy, Debug)]
pub struct Ground<'a> {
    /// The person's answers.
    pub case: &'a Case,
    /// The sample in the engine's units.
    pub soil: &'a Soil,
    /// The judgement of each property.
    pub findings: &'a Findings,
    /// The chemistry.
    pub chemistry: &'a Chemistry,
    /// The texture, answered or read.
    pub texture: Option<Texture>,
}

/// Works out what the chosen sample's bed needs. Without a sample the list is empty.
pub fn needs(case: &Case) -> Needs {
    let Some(sample) = case.report.samples.get(case.sample) else { return Needs::default() };
    let read = normalise(sample, &case.reading);
    let texture = case.bed.texture.or(sample.texture).or_else(|| read.soil.texture());
    let setting = Setting { plants: case.plants, texture };
    let chemistry = chemistry::work_out(&read.soil, &setting);
    let mut findings = Findings::default();
    for measure in &read.soil.measures {
        let finding: Finding = judge(measure, &read.soil, &setting);
        if findings.level(measure.property).is_none() {
            findings.set(measure.property, finding);
        }
    }
    let ground =
        Ground { case, soil: &read.soil, findings: &findings, chemistry: &chemistry, texture };
    let mut needs = Needs::default();
    needs.list.extend(lime::need(&ground, &mut needs.questions));
    needs.list.extend(acidify::need(&ground, &mut needs.questions));
    needs.list.extend(gypsum::need(&ground));
    needs.questions.dedup();
    needs
}
