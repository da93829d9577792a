//! The most of a nutrient, of sodium and of alkalinity that may come into the
//! bed in a year, whatever brings it.

use crate::plan::ledger::{Ceiling, Ledger, Substance};
use crate::quantity::{Band, Grounds, Unit, significant};
use crate::ranges::Level;
use crate::soil::Property;
use crate::sources::{
    ARITHMETIC, COLORADO_SODIC, CROP_REMOVAL, Citation, DELAWARE_P, NC_EQUATIONS, OUR_CHOICE,
};
use crate::survey::Survey;

/// P that a year's vegetables take out, g/m²: 10 to 72, usually 30 lb P2O5 an acre.
/// Source: New England Vegetable Management Guide, Table 4 (opened; P from P2O5 derived).
const PHOSPHORUS_TAKEN: Band = Band { low: 0.49, likely: 1.47, high: 3.52 };

/// K that a year's vegetables take out, g/m²: 35 to 435, usually 130 lb K2O an acre.
/// Source: New England Vegetable Management Guide, Table 4 (opened; K from K2O derived).
const POTASSIUM_TAKEN: Band = Band { low: 3.3, likely: 12.1, high: 40.5 };

/// P that the highest published rate brings to a soil that lacks it, g/m²: 150 lb P2O5 an acre.
/// Source: North Carolina's equation 14 at index 0 (opened; P from P2O5 derived).
const PHOSPHORUS_RATE: f64 = 7.34;

/// Sodium that may come to sit on the exchange, % of its capacity, what is there counted in.
/// Source: our choice: sodium harms structure below 15 % too, from about 5 %.
const SODIUM_SHARE: f64 = 5.0;
/// Exchange capacity nobody knows, meq/100 g. Our choice.
const USUAL_CEC: f64 = 10.0;
/// g of one mole of charge of sodium. Source: atomic mass (derived).
const SODIUM: f64 = 22.99;

/// Phosphorus in a biochar, %, up to which only what works in a year counts, and from
/// which all of it does, as in bone and manure.
/// Source: our choice; wood has 0.1 %, manure 2.5 %, bone 15 %.
const PHOSPHORUS_COUNTS: (f64, f64) = (0.3, 1.0);
/// Of a biochar's phosphorus so much works in a year. Source: our choice within Angst & Sohi 2013.
const PHOSPHORUS_WORKS: Band = Band { low: 0.05, likely: 0.1, high: 0.2 };

/// g of a substance in a kilogram of biochar that count against its ceiling.
pub(crate) fn load(survey: &Survey<'_>, substance: Substance) -> f64 {
    let material = &survey.material;
    let percent = match substance {
        Substance::Phosphorus => {
            let total = material.phosphorus.likely;
            let short = survey.findings.level(Property::Phosphorus).is_some_and(Level::is_short);
            let (from, to) = PHOSPHORUS_COUNTS;
            let rich = ((total - from) / (to - from)).clamp(0.0, 1.0);
            // A soil that lacks it may be given what comes free slowly.
            let most = if short { PHOSPHORUS_WORKS.high } else { 1.0 };
            total * (PHOSPHORUS_WORKS.likely + rich * (most - PHOSPHORUS_WORKS.likely))
        }
        Substance::Potassium => material.potassium.likely,
        Substance::Sodium => material.sodium.likely,
        _ => 0.0,
    };
    10.0 * percent
}

/// The ceiling of a substance; `None` where nothing is published or worked out.
pub(crate) fn of(survey: &Survey<'_>, substance: Substance) -> Option<Ceiling> {
    match substance {
        Substance::Phosphorus => Some(phosphorus(survey)),
        Substance::Potassium => Some(potassium(survey)),
        Substance::Sodium => Some(sodium(survey)),
        _ => None,
    }
}

/// Enters the ceilings.
pub(crate) fn enter(survey: &Survey<'_>, ledger: &mut Ledger) {
    for substance in Substance::ALL {
        ledger.account(substance).ceiling = of(survey, substance);
    }
}

/// Half where the soil is in excess, so that it comes down.
fn at_level(taken: f64, level: Option<Level>) -> f64 {
    if level == Some(Level::Excess) { taken / 2.0 } else { taken }
}

fn ceiling(
    survey: &Survey<'_>,
    per_m2: f64,
    why: &str,
    rule: &str,
    sources: &[Citation],
) -> Ceiling {
    let grounds =
        Grounds::new(rule, sources).input("on 1 m²", format!("{} g", significant(per_m2, 2)));
    Ceiling {
        most: per_m2 * survey.bed.area.value,
        why: why.into(),
        grounds: survey.bed.area.add_to(grounds),
        binds: false,
    }
}

fn phosphorus(survey: &Survey<'_>) -> Ceiling {
    let level = survey.findings.level(Property::Phosphorus);
    if level.is_some_and(Level::is_surplus) {
        return ceiling(
            survey,
            at_level(PHOSPHORUS_TAKEN.likely, level),
            "The soil has too much phosphorus: no more comes in than a year's crops take out.",
            "at most what a year's vegetables take out, 1.5 (0.5–3.5) g/m² of phosphorus; half of it where the soil is in excess",
            &[CROP_REMOVAL.opened(), DELAWARE_P.opened(), OUR_CHOICE.unsourced()],
        );
    }
    if level.is_some_and(Level::is_short) || level.is_none() {
        return ceiling(
            survey,
            PHOSPHORUS_RATE,
            "More phosphorus than the highest published dressing for a soil that lacks it is not given in a year.",
            "at most the highest published dressing, 7.3 g/m² of phosphorus",
            &[NC_EQUATIONS.derived(), OUR_CHOICE.unsourced()],
        );
    }
    ceiling(
        survey,
        PHOSPHORUS_TAKEN.high,
        "There is enough phosphorus: no more comes in than crops can take out in a year.",
        "at most what a year's vegetables can take out, 3.5 g/m² of phosphorus",
        &[CROP_REMOVAL.opened(), OUR_CHOICE.unsourced()],
    )
}

fn potassium(survey: &Survey<'_>) -> Ceiling {
    let level = survey.findings.level(Property::Potassium);
    let (per_m2, why) = if level.is_some_and(Level::is_surplus) {
        (
            POTASSIUM_TAKEN.likely,
            "The soil has too much potassium: no more comes in than a year's crops take out.",
        )
    } else {
        (
            POTASSIUM_TAKEN.high,
            "More potassium than crops can take out in a year crowds out magnesium.",
        )
    };
    ceiling(
        survey,
        per_m2,
        why,
        "at most what a year's vegetables take out: 40 g/m² of potassium; 12 where the soil has more than enough",
        &[CROP_REMOVAL.opened(), OUR_CHOICE.unsourced()],
    )
}

fn sodium(survey: &Survey<'_>) -> Ceiling {
    let cec = survey.chemistry.cec.map_or(USUAL_CEC, |cec| cec.likely.max(0.0));
    let there = survey.chemistry.sodium.as_ref().map_or(0.0, |s| s.esp.likely);
    let room = (SODIUM_SHARE - there).max(0.0) / 100.0;
    // meq/100 g × 10 = mmol(c)/kg.
    let per_m2 = room * cec * 10.0 * SODIUM / 1000.0 * survey.bed.soil_per_m2().likely;
    let mut found = ceiling(
        survey,
        per_m2,
        "More of this would bring sodium past 5 % of the exchange, where it begins to harm the soil.",
        "(5 % − exchangeable sodium) × exchange capacity × soil of the worked depth",
        &[OUR_CHOICE.unsourced(), COLORADO_SODIC.opened(), ARITHMETIC.derived()],
    );
    let text = survey.shown(&Band::exactly(cec), Unit::MeqPer100g);
    found.grounds = survey.bed.depth.add_to(found.grounds.input("exchange capacity", text));
    found
}
