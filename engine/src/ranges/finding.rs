//! A judgement, ready to be shown and drawn.

use serde::Serialize;

use crate::quantity::{Grounds, Unit};
use crate::soil::{Level, Property};
use crate::sources::{Grade, Source};

/// A judgement of one property.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Finding {
    /// The level; `None` when it can't be judged, and `not_judged` says why.
    pub level: Option<Level>,
    /// The range it was judged by.
    pub range: Option<Range>,
    /// The range's source.
    pub source: Option<&'static Source>,
    /// The number that was judged, where the soil is so light that it isn't the printed one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub judged_as: Option<f64>,
    /// Why there is no level, and what would give one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub not_judged: Option<String>,
    /// Whether the region would decide it.
    #[serde(skip)]
    pub wants_region: bool,
    /// Whether the texture would decide it.
    #[serde(skip)]
    pub wants_texture: bool,
    /// Whether the region is known, and the table is not its own.
    #[serde(skip)]
    pub of_elsewhere: bool,
    /// Whether the laboratory's own class is on the same side of enough; `None` where it gave none
    /// that we know.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub laboratory_agrees: Option<bool>,
    /// What other publications say of the same number.
    pub second_opinions: Vec<Opinion>,
    /// What the judgement rests on.
    pub grounds: Grounds,
}

impl Finding {
    /// A finding without a level, with the reason.
    pub fn not_judged(why: impl Into<String>) -> Finding {
        Finding { not_judged: Some(why.into()), ..Finding::default() }
    }

    /// Whether the range itself was written from memory, so that no
    /// recommendation may lean on it alone.
    pub fn rests_on_memory(&self) -> bool {
        // The range's own publication stands first.
        let range = self.grounds.sources.first();
        self.level.is_some() && range.is_none_or(|c| c.grade >= Grade::FromMemory)
    }
}

/// A published range, ready to be drawn as a ruler.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Range {
    /// Where sufficiency begins, which is where the step below ends: 50 where
    /// the scheme prints `26–50, 51–100`. `None` when it has no lower end.
    pub sufficient_from: Option<f64>,
    /// Where sufficiency ends; `None` when the scheme has no upper end.
    pub sufficient_to: Option<f64>,
    /// The unit of the ends.
    pub unit: Unit,
    /// All steps of the scheme, low to high.
    pub steps: Vec<Step>,
    /// The range in words, for example `51–100 mg/kg`.
    pub text: String,
    /// The scheme's own word for this value, for example `optimum`.
    pub word: &'static str,
}

/// One step of a published scheme.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Step {
    /// The scheme's own word.
    pub word: &'static str,
    /// Our level for it.
    pub level: Level,
    /// Its upper end; `None` for the last step.
    pub up_to: Option<f64>,
    /// Whether the upper end itself still belongs to this step.
    pub inclusive: bool,
}

impl Step {
    /// A step printed as `a–end`: the end belongs to it.
    pub const fn to(word: &'static str, level: Level, end: f64) -> Step {
        Step { word, level, up_to: Some(end), inclusive: true }
    }

    /// A step printed as `below end`: the end belongs to the next step.
    pub const fn below(word: &'static str, level: Level, end: f64) -> Step {
        Step { word, level, up_to: Some(end), inclusive: false }
    }

    /// The last step, without an end.
    pub const fn rest(word: &'static str, level: Level) -> Step {
        Step { word, level, up_to: None, inclusive: true }
    }

    /// Whether a value is at or under this step's upper end.
    pub(crate) fn reaches(&self, value: f64) -> bool {
        match self.up_to {
            None => true,
            Some(end) if self.inclusive => value <= end,
            Some(end) => value < end,
        }
    }
}

/// What another publication says of the same number.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Opinion {
    /// Its level.
    pub level: Level,
    /// Its range.
    pub range: Range,
    /// Its source.
    pub source: &'static Source,
    /// Whether it differs from the level we show.
    pub disagrees: bool,
    /// What it rests on.
    pub grounds: Grounds,
}

/// The judgement of each property of a sample.
///
/// A short list: one sample has a few dozen at the most.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Findings(Vec<(Property, Finding)>);

impl Findings {
    /// The judgement of a property.
    pub fn get(&self, property: Property) -> Option<&Finding> {
        self.0.iter().find(|(p, _)| *p == property).map(|(_, finding)| finding)
    }

    /// The level of a property, where it has one.
    pub fn level(&self, property: Property) -> Option<Level> {
        self.get(property)?.level
    }

    /// Sets the judgement of a property.
    pub fn set(&mut self, property: Property, finding: Finding) {
        self.remove(property);
        self.0.push((property, finding));
    }

    /// Adds the judgement of one of several readings of a property: a later one
    /// that can be judged is better than an earlier one that can't.
    pub(crate) fn add(&mut self, property: Property, finding: &Finding) {
        let known = self.get(property);
        if known.is_none_or(|known| known.level.is_none() && finding.level.is_some()) {
            self.set(property, finding.clone());
        }
    }

    /// Takes the judgement of a property away.
    pub fn remove(&mut self, property: Property) {
        self.0.retain(|(p, _)| *p != property);
    }
}
