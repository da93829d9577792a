//! How much of each nutrient the biochar should be given: what its exchange
//! sites would otherwise take from the bed, and what the bed is short of. What
//! the soil has too much of is a limit and no goal.

use crate::biochar::charge::sources::{NUTRIENTS, Nutrient};
use crate::biochar::charging::wanted_per_kg;
use crate::biochar::{Material, Prepared, Situation};
use crate::needs::{self, Verdict};
use crate::quantity::{Band, Grounds, Measures, Unit, shown};
use crate::ranges::Level;
use crate::soil::Property;
use crate::sources::{
    ARITHMETIC, CROP_REMOVAL, DELAWARE_P, GAI_2014, KAMMANN_2015, OUR_CHOICE, PHREEQC_EXCHANGE,
    UMASS_RATES,
};

/// Shares of a well charged biochar's exchange: K, Ca and Mg; ammonium has
/// most of the rest. Our choice, as the charged biochar of the exchange checks.
const FILLED: [f64; 3] = [0.20, 0.55, 0.15];

/// What of the biochar's own K, Ca and Mg works in the first year, 0–1.
/// Source: our choice within Angst & Sohi 2013 and others.
const OWN_WORKS: [Band; 3] = [
    Band { low: 0.2, likely: 0.45, high: 0.8 },
    Band { low: 0.05, likely: 0.10, high: 0.25 },
    Band { low: 0.05, likely: 0.12, high: 0.27 },
];

/// Nitrogen of a year for vegetables, kg/ha: what P and K are set against.
/// Source: UMass Extension, 2.5 lb/1000 sq ft (opened).
const YEARS_NITROGEN: f64 = 122.1;

/// P that a year's vegetables take out, g/m²: 10 to 72, usually 30 lb P2O5 an acre.
/// Source: New England Vegetable Management Guide, Table 4 (opened; P from P2O5 derived).
const PHOSPHORUS_TAKEN: Band = Band { low: 0.49, likely: 1.47, high: 3.52 };

/// K that a year's vegetables take out, g/m²: 35 to 435, usually 130 lb K2O an acre.
/// Source: New England Vegetable Management Guide, Table 4 (opened; K from K2O derived).
const POTASSIUM_TAKEN: Band = Band { low: 3.3, likely: 12.1, high: 40.5 };

/// Exchange sites of `kg` of biochar of `cec` cmol(c)/kg, mol(c).
pub fn sites(kg: f64, cec: f64) -> f64 {
    kg * cec / 100.0
}

/// Grams of a cation that fill `share` (0–1) of `sites` mol(c); 0 for what is no cation.
pub fn to_fill(sites: f64, share: f64, nutrient: Nutrient) -> f64 {
    nutrient.grams_per_charge().map_or(0.0, |grams| sites * share * grams)
}

/// What is wanted of one nutrient.
#[derive(Clone, Debug, PartialEq)]
pub struct Target {
    /// The nutrient.
    pub nutrient: Nutrient,
    /// Grams wanted for the whole dose; nothing where the soil or the biochar has enough.
    pub wanted: Band,
    /// The most the charge may bring, g: what a year's crops take out. Only
    /// where the soil has too much.
    pub at_most: Option<f64>,
    /// Why, in a sentence.
    pub because: &'static str,
    /// What it rests on.
    pub grounds: Grounds,
}

fn property(nutrient: Nutrient) -> Property {
    match nutrient {
        Nutrient::Nitrogen => Property::NitrateN,
        Nutrient::Phosphorus => Property::Phosphorus,
        Nutrient::Potassium => Property::Potassium,
        Nutrient::Calcium => Property::Calcium,
        Nutrient::Magnesium => Property::Magnesium,
    }
}

/// P or K of the year's dressing that the bed needs, over its year's nitrogen;
/// 0 where it needs none or nobody can say.
fn need_by_nitrogen(rates: &[(&str, f64)], name: &str) -> f64 {
    rates.iter().find(|(other, _)| *other == name).map_or(0.0, |(_, rate)| rate / YEARS_NITROGEN)
}

pub(super) fn targets(situation: &Situation<'_>, prepared: &Prepared) -> [Target; NUTRIENTS] {
    let (material, dose) = (&prepared.material, &prepared.dose);
    let kg = dose.mass.likely;
    let facts = &prepared.decision.facts;
    let nitrogen = wanted_per_kg(facts).map(|g| g * kg);
    // The same year's rates that the needs of the bed give.
    let rates: Vec<(&str, f64)> = needs::of_ground(situation)
        .list
        .iter()
        .filter(|need| need.verdict == Verdict::Give)
        .filter_map(|need| {
            let rate = need.figures.iter().find(|f| f.name.ends_with("-rate"))?;
            Some((need.name, rate.band.likely))
        })
        .collect();
    /// P in P2O5 and K in K2O. Source: atomic masses (derived).
    const OF_OXIDE: [f64; 2] = [0.4364, 0.8302];
    Nutrient::ALL.map(|nutrient| {
        let level = situation.findings.level(property(nutrient));
        let surplus = level.is_some_and(Level::is_surplus);
        let short = level.is_some_and(Level::is_short);
        let explain = |rule: &str| {
            let known = level.map_or("not judged", Level::label);
            Grounds::new(rule, &[])
                .input("biochar, dry", shown(&dose.mass, Unit::Kg, Measures::Metric))
                .input("in the soil", known)
        };
        let mut target = Target {
            nutrient,
            wanted: Band::exactly(0.0),
            at_most: None,
            because: "",
            grounds: Grounds::default(),
        };
        match nutrient {
            Nutrient::Nitrogen => {
                target.wanted = nitrogen;
                target.because = if surplus {
                    "Little: the soil has nitrogen to spare."
                } else {
                    "Fresh biochar takes nitrogen from the bed; this is what it takes."
                };
                target.grounds = explain(
                    "dry mass × 3 (1–5) g nitrogen per kg; the low end where the soil has nitrogen \
                     to spare",
                );
                target.grounds.sources = vec![
                    GAI_2014.opened(),
                    KAMMANN_2015.second_hand(),
                    OUR_CHOICE.unsourced(),
                ];
            }
            Nutrient::Phosphorus if !surplus => {
                let ratio = need_by_nitrogen(&rates, "phosphate") * OF_OXIDE[0];
                target.wanted = nitrogen.map(|g| g * ratio);
                target.because = if ratio > 0.0 {
                    "The soil is short: phosphorus in step with the nitrogen, as a year of feeding gives them."
                } else {
                    "None: no shortage of it is known, and the sites of biochar hold none."
                };
                target.grounds = explain(
                    "nitrogen wanted × the phosphorus a year's dressing gives ÷ its nitrogen; none \
                     where the soil isn't short",
                );
                target.grounds.sources = vec![UMASS_RATES.opened(), OUR_CHOICE.unsourced()];
            }
            Nutrient::Phosphorus => {
                let taken = at_level(PHOSPHORUS_TAKEN.likely, level) * dose.area;
                target.at_most = Some(taken);
                target.because = "None: the soil has too much. The charge brings no more than a \
                                  year's crops take out.";
                target.grounds = explain(
                    "at most what a year's vegetables take out, 1.5 (0.5–3.5) g/m²; half of it \
                     where the soil is in excess",
                );
                target.grounds.sources = vec![
                    CROP_REMOVAL.opened(),
                    DELAWARE_P.opened(),
                    OUR_CHOICE.unsourced(),
                ];
            }
            Nutrient::Potassium | Nutrient::Calcium | Nutrient::Magnesium if surplus => {
                if nutrient == Nutrient::Potassium {
                    target.at_most = Some(at_level(POTASSIUM_TAKEN.likely, level) * dose.area);
                    target.grounds = explain(
                        "at most what a year's vegetables take out, 12 (3–40) g/m²; half of it \
                         where the soil is in excess",
                    );
                    target.grounds.sources =
                        vec![CROP_REMOVAL.opened(), OUR_CHOICE.unsourced()];
                } else {
                    target.grounds = explain("none where the soil has more than enough");
                    target.grounds.sources = vec![OUR_CHOICE.unsourced()];
                }
                target.because = "None: the soil has more than enough to fill the sites itself.";
            }
            _ => {
                let (at, own) = match nutrient {
                    Nutrient::Potassium => (0, material.potassium),
                    Nutrient::Calcium => (1, material.calcium),
                    _ => (2, material.magnesium),
                };
                let filled = sites_to_fill(material, kg, FILLED[at], nutrient);
                // 1 % of a kilogram is 10 g. Where the soil is short, the biochar's own
                // is left to the plants.
                let has = if short { Band::exactly(0.0) } else { OWN_WORKS[at].times(own).map(|works| 10.0 * kg * works) };
                let mut wanted = Band::new(
                    (filled.low - has.high).max(0.0),
                    (filled.likely - has.likely).max(0.0),
                    (filled.high - has.low).max(0.0),
                );
                if nutrient == Nutrient::Potassium {
                    let ratio = need_by_nitrogen(&rates, "potash") * OF_OXIDE[1];
                    wanted = wanted.plus(nitrogen.map(|g| g * ratio));
                }
                target.wanted = wanted;
                target.because = if short {
                    "The soil is short, and the sites of the biochar would take more."
                } else if wanted.likely > 0.0 {
                    "To fill the sites of the biochar, less what it brings itself."
                } else {
                    "None: the biochar brings enough itself to fill its sites."
                };
                target.grounds = explain(
                    "exchange sites × the share to fill (K 20, Ca 55, Mg 15 %), less what works of \
                     the biochar's own in the first year; where the soil is short, nothing is taken \
                     off, and potassium is added beside the nitrogen as the bed needs it",
                )
                .input("exchange capacity", shown(&material.cec, Unit::MeqPer100g, Measures::Metric))
                .input("the biochar's own", shown(&own, Unit::Percent, Measures::Metric));
                target.grounds.sources = vec![
                    ARITHMETIC.derived(),
                    PHREEQC_EXCHANGE.derived(),
                    OUR_CHOICE.unsourced(),
                ];
            }
        }
        target
    })
}

/// Half where the soil is in excess, so that it comes down.
fn at_level(taken: f64, level: Option<Level>) -> f64 {
    if level == Some(Level::Excess) { taken / 2.0 } else { taken }
}

fn sites_to_fill(material: &Material, kg: f64, share: f64, nutrient: Nutrient) -> Band {
    material.cec.map(|cec| to_fill(sites(kg, cec), share, nutrient))
}
