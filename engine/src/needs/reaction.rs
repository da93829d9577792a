//! The soil's reaction: its pH, the pH its plants want, and where lime or acid
//! would bring it.

use crate::needs::Ground;
use crate::quantity::{Grounds, Unit, significant};
use crate::ranges::{Setting, judge};
use crate::soil::{Amount, Measure, PlantGroup, Property};
use crate::sources::{COMMON_PRACTICE, Citation, OUR_CHOICE};

/// Salt pH reads about this much lower than pH in water.
const SALT_PH_OFFSET: f64 = 0.5;
/// The targets that may be asked for. Wide on purpose: a slip of the pen is
/// caught, a choice is not.
const TARGETS: std::ops::RangeInclusive<f64> = 4.0..=7.5;

/// Where the pH is and where it should be.
#[derive(Debug)]
pub(super) struct Reaction {
    /// pH in water, to a tenth.
    pub ph: f64,
    /// Whether it was measured in water, and not taken from a salt pH.
    pub in_water: bool,
    /// The range that judges these plants.
    pub from: f64,
    pub to: f64,
    /// The pH to reach.
    pub target: f64,
    pub assumed: Vec<String>,
    pub sources: Vec<Citation>,
}

impl Reaction {
    /// `None` when no pH is reported as a number.
    pub fn of(ground: &Ground<'_>) -> Option<Reaction> {
        let water = ground.soil.value(Property::Ph);
        let ph = match water {
            Some(ph) => ph,
            None => ground.soil.value(Property::SaltPh)? + SALT_PH_OFFSET,
        };
        let measure = Measure {
            property: Property::Ph,
            amount: Amount::Exactly(ph),
            unit: Unit::None,
            method: None,
        };
        let setting = Setting { plants: ground.case.plants, texture: ground.texture };
        let finding = judge(&measure, ground.soil, &setting);
        let range = finding.range?;
        let (from, to) = (range.sufficient_from?, range.sufficient_to?);
        let mut sources = finding.grounds.sources.clone();
        let mut assumed = finding.grounds.assumed;
        // Every range published for these plants holds up to here. For shrubs
        // and trees the lower end is the published target.
        let mut target = to;
        if ground.case.plants == Some(PlantGroup::OrnamentalsAndTrees) {
            target = from;
        }
        for opinion in finding.second_opinions {
            target = target.min(opinion.range.sufficient_to.unwrap_or(target));
            sources.extend(opinion.grounds.sources.first());
        }
        sources.push(OUR_CHOICE.unsourced());
        match ground.case.feeds.target_ph {
            Some(asked) if TARGETS.contains(&asked) => target = asked,
            Some(asked) => assumed.push(format!(
                "The pH you ask for, {}, is left aside: give one from 4 to 7.5.",
                significant(asked, 3)
            )),
            None => {}
        }
        if water.is_none() {
            assumed.push(
                "Only a pH in salt solution is reported. In water it is taken to be 0.5 higher."
                    .into(),
            );
            sources.push(COMMON_PRACTICE.unsourced());
        }
        let ph = tenth(ph);
        Some(Reaction { ph, in_water: water.is_some(), from, to, target, assumed, sources })
    }

    /// Adds what is known of pH and target to the grounds of an answer.
    pub fn add_to(&self, mut grounds: Grounds) -> Grounds {
        grounds.assumed.extend(self.assumed.iter().cloned());
        for citation in &self.sources {
            if !grounds.sources.contains(citation) {
                grounds.sources.push(*citation);
            }
        }
        grounds
            .input("pH", format!("{:.1}", self.ph))
            .input("pH to reach", significant(self.target, 3))
    }
}

/// pH to the tenth that laboratories print.
fn tenth(ph: f64) -> f64 {
    (ph * 10.0).round() / 10.0
}

/// How deep the bed is worked, cm; `None` when nobody said, or what was said
/// can't be.
pub(super) fn worked_depth(ground: &Ground<'_>) -> Option<f64> {
    ground.case.bed.depth_cm.filter(|depth| (1.0..=100.0).contains(depth))
}

/// The area of the bed, m²; `None` when nobody said, or what was said can't be.
pub(super) fn area(ground: &Ground<'_>) -> Option<f64> {
    ground.case.bed.area_m2.filter(|area| *area > 0.0 && area.is_finite())
}
