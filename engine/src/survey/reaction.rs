//! The soil's reaction: its pH, the pH its plants want, and where lime or acid
//! would bring it.

use crate::facts::Reckoned;
use crate::quantity::{Grounds, Note, Unit, significant};
use crate::ranges::{Finding, Setting, judge, region_judges};
use crate::region::RegionalLime;
use crate::soil::{Amount, Measure, PlantGroup, Property};
use crate::sources::{
    BLUEBERRY_PH, COMMON_PRACTICE, Citation, LABORATORY, OUR_CHOICE, TRI_STATE_LIME,
};
use crate::survey::{Ground, Survey};

/// Organic soil: the pH to lime to, and the pH from which none is needed.
/// Source: E-2567, Michigan (second-hand); that 5.0 is enough is our choice.
const PEAT_TARGET: f64 = 5.3;
/// Source: our choice.
const PEAT_FROM: f64 = 5.0;
/// The pH to bring soil for blueberries and their kind to.
/// Source: extension.org (second-hand).
const ACID_TARGET: f64 = 4.8;
/// How much higher pH reads in water than in salt solution.
/// Common practice, no source.
pub(crate) const WATER_OVER_SALT: f64 = 0.5;
/// The targets that may be asked for. Wide on purpose: a slip of the pen is
/// caught, a choice is not.
const TARGETS: std::ops::RangeInclusive<f64> = 4.0..=7.5;

/// Where the pH is and where it should be.
#[derive(Debug)]
pub struct Reaction {
    /// pH in water.
    pub ph: f64,
    /// Whether it was measured in water, and not taken from a salt pH.
    pub in_water: bool,
    /// Where the range that judges these plants begins.
    pub from: f64,
    /// Where that range ends.
    pub to: f64,
    /// The highest pH that every range published for these plants holds up to.
    pub bears: f64,
    /// The pH to reach.
    pub target: f64,
    pub(crate) assumed: Vec<Note>,
    pub(crate) sources: Vec<Citation>,
}

/// The range for these plants, with its ends in water, and whether it is the region's own: the
/// region's where it has one with two ends, else that which judges where no region is known.
fn range_of(
    survey: &Survey<'_>,
    measure: &Measure,
    salt: Option<&Finding>,
) -> Option<(Finding, f64, f64, bool)> {
    let ends = |finding: Finding, above: f64, of_region: bool| {
        let range = finding.range.as_ref()?;
        let (from, to) = (range.sufficient_from? + above, range.sufficient_to? + above);
        Some((finding, from, to, of_region))
    };
    let by = |region| {
        let setting = Setting { region, ..survey.setting() };
        judge(measure, &survey.soil, &setting)
    };
    let own = region_judges(measure, &survey.setting());
    salt.and_then(|salt| ends(salt.clone(), WATER_OVER_SALT, true))
        .or_else(|| ends(by(survey.region.filter(|_| own)), 0.0, own))
        .or_else(|| ends(by(None), 0.0, false))
}

/// The pH in water that the region's lime table leads to, where all that may hold lead to one.
fn led_to(survey: &Survey<'_>) -> Option<f64> {
    let (tables, _) = survey.lime_tables_of_here();
    let in_water = |table: &&RegionalLime| match table.by {
        Reckoned::Water => table.target,
        Reckoned::Salt => table.target + WATER_OVER_SALT,
    };
    let first = tables.first().map(in_water)?;
    tables.iter().all(|table| (in_water(table) - first).abs() < 1e-9).then_some(first)
}

impl Reaction {
    /// `None` when no pH is reported as a number.
    pub(crate) fn of(survey: &Survey<'_>) -> Option<Reaction> {
        let in_water = survey.soil.value(Property::Ph).is_some();
        let ph = survey.water_ph()?;
        let measure = Measure {
            property: Property::Ph,
            amount: Amount::Exactly(ph),
            unit: Unit::None,
            method: None,
        };
        let salt = survey.findings.get(Property::SaltPh).filter(|_| !in_water);
        let (finding, from, to, of_region) = range_of(survey, &measure, salt)?;
        let mut sources = finding.grounds.sources.clone();
        let mut assumed = finding.grounds.assumed;
        // Every range published for these plants holds up to here. For shrubs
        // and trees the lower end is the published target.
        let mut target = to;
        if survey.case.plants == Some(PlantGroup::OrnamentalsAndTrees) {
            target = from;
        }
        if of_region {
            // The region's own range stands alone; lime aims where the region's table leads, and
            // without one at the middle.
            target = match led_to(survey) {
                Some(led) => led.clamp(from, to),
                None => ((from + to) * 5.0).round() / 10.0,
            };
        } else {
            for opinion in finding.second_opinions {
                target = target.min(opinion.range.sufficient_to.unwrap_or(target));
                sources.extend(opinion.grounds.sources.first());
            }
        }
        sources.push(OUR_CHOICE.unsourced());
        let bears = if of_region { to } else { target.min(to) };
        let mut from = from;
        let peat = survey.bed.ground == Ground::Organic
            && survey.case.plants != Some(PlantGroup::AcidLovers);
        if peat {
            (from, target) = (PEAT_FROM, PEAT_TARGET);
            assumed
                .push("Organic soil is limed to pH 5.3 only: it holds little harmful acid.".into());
            sources.insert(0, TRI_STATE_LIME.second_hand());
        } else if survey.case.plants == Some(PlantGroup::AcidLovers) {
            target = target.min(ACID_TARGET);
            sources.push(BLUEBERRY_PH.second_hand());
        }
        match survey.case.feeds.target_ph {
            Some(asked) if TARGETS.contains(&asked) => {
                // No dose takes the pH out of these plants' range; where it is already out,
                // it may stay there.
                target = if asked > to {
                    to.max(ph.min(asked))
                } else if asked < ph {
                    asked.max(from.min(ph))
                } else {
                    asked
                };
                if (target - asked).abs() > 1e-9 {
                    assumed.push(format!(
                        "You ask for a pH of {}. These plants do well from {} to {} only, so no further than that is aimed at.",
                        significant(asked, 3),
                        significant(from, 3),
                        significant(to, 3)
                    ).into());
                }
            }
            Some(asked) => assumed.push(
                format!(
                    "The pH you ask for, {}, is left aside: give one from 4 to 7.5.",
                    significant(asked, 3)
                )
                .into(),
            ),
            // What the laboratory aims at, for these plants and its own soils.
            None => {
                if let Some(printed) = survey.target_ph.filter(|ph| (from..=to).contains(ph)) {
                    target = printed;
                    assumed.push(
                        format!(
                            "The report prints {} as the pH to reach.",
                            significant(printed, 3)
                        )
                        .into(),
                    );
                    sources.push(LABORATORY.opened());
                }
            }
        }
        if !in_water {
            assumed.push(
                "Only a pH in salt solution is reported. In water it is taken to be 0.5 higher."
                    .into(),
            );
            sources.push(COMMON_PRACTICE.unsourced());
        }
        Some(Reaction { ph, in_water, from, to, bears, target, assumed, sources })
    }

    /// Adds what is known of pH and target to the grounds of an answer.
    pub(crate) fn add_to(&self, mut grounds: Grounds) -> Grounds {
        grounds.assumed.extend(self.assumed.iter().cloned());
        grounds.cite(&self.sources);
        grounds
            .input("pH", format!("{:.1}", self.ph))
            .input("pH to reach", significant(self.target, 3))
    }
}
