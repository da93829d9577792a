//! Which biochar, how much, how charged, and what it should do.

mod advice;

use std::collections::BTreeMap;

use crate::case::Case;
use crate::chemistry::Chemistry;
use crate::question::Question;
use crate::ranges::Finding;
use crate::soil::{Property, Soil, Texture};

pub use advice::{Advice, Charging, Effect, Path, Reason};

/// All that the plan is made from.
#[derive(Clone, Copy, Debug)]
pub struct Situation<'a> {
    /// The person's answers.
    pub case: &'a Case,
    /// The sample in the engine's units.
    pub soil: &'a Soil,
    /// The judgement of each property.
    pub findings: &'a BTreeMap<Property, Finding>,
    /// The chemistry.
    pub chemistry: &'a Chemistry,
    /// The texture, answered or read.
    pub texture: Option<Texture>,
}

/// The plan, and what must be asked to firm it up.
pub fn advise(situation: &Situation<'_>) -> (Advice, Vec<Question>) {
    let advice = Advice {
        path: Path::None,
        headline: String::new(),
        provisional: true,
        reasons: Vec::new(),
        would_change: Vec::new(),
        amounts: Vec::new(),
        capped_by: Vec::new(),
        charging: None,
        effects: Vec::new(),
        season: Vec::new(),
        cautions: crate::cautions::cautions(situation, Path::None),
    };
    (advice, Vec::new())
}
