//! pH by what grows, with the reaction class as the word.

use crate::quantity::Unit;
use crate::ranges::Finding;
use crate::ranges::Level::{High, Low, Sufficient};
use crate::ranges::scheme::{BLANK, LAWN, NO_PLANTS, Scheme, Steps, VEGETABLES, named, rungs};
use crate::soil::{Amount, PlantGroup, Property};
use crate::sources::{
    CLEMSON_PH, CORNELL_PH, Citation, DELAWARE_PH, MLSN, NCDA_HOME, NRCS_PH, OUR_CHOICE, UCONN_PH,
};

const BERRIES: &[PlantGroup] = &[PlantGroup::Berries];
const ORNAMENTALS: &[PlantGroup] = &[PlantGroup::OrnamentalsAndTrees];
const ACID: &[PlantGroup] = &[PlantGroup::AcidLovers];

rungs! {
    BETWEEN_STEPS: below "more acid than the range" Low, to "in the range" Sufficient,
        to "more alkaline than the range" High;
    ABOVE_55_STEPS: to "more acid than the range" Low, to "in the range" Sufficient;
}

const PH: Scheme = Scheme {
    property: Property::Ph,
    unit: Unit::None,
    meaning: "A range to aim at, not a chance that plants respond.",
    ..BLANK
};

type Plants = &'static [PlantGroup];
type Citations = &'static [Citation];

/// A range that these plants are judged by.
const fn judging(
    id: &'static str,
    plants: Plants,
    ends: &'static [f64; 2],
    citations: Citations,
) -> Scheme {
    Scheme { judges: plants, citations, ..PH.table(id, Property::Ph, Steps(BETWEEN_STEPS, ends)) }
}

/// A range shown as a second opinion for these plants.
const fn second(
    id: &'static str,
    plants: Plants,
    ends: &'static [f64; 2],
    citations: Citations,
) -> Scheme {
    Scheme { judges: NO_PLANTS, second: plants, ..judging(id, plants, ends, citations) }
}

pub(super) static SCHEMES: &[Scheme] = &[
    judging("ph-vegetables-cornell", VEGETABLES, &[6.0, 7.0], &[CORNELL_PH.opened()]),
    second("ph-vegetables-ncda", VEGETABLES, &[6.0, 6.5], &[NCDA_HOME.opened()]),
    second("ph-vegetables-clemson", VEGETABLES, &[5.8, 6.5], &[CLEMSON_PH.opened()]),
    Scheme {
        note: "Potatoes that scab are kept at 5.2–5.4 by the same source.",
        ..second("ph-vegetables-uconn", VEGETABLES, &[6.0, 6.8], &[UCONN_PH.opened()])
    },
    judging("ph-lawn-cornell", LAWN, &[6.0, 7.5], &[CORNELL_PH.opened()]),
    Scheme {
        note: "For fescue, bermuda, zoysia and St Augustine grass. Centipedegrass wants 5.5.",
        ..second("ph-lawn-ncda", LAWN, &[6.0, 6.5], &[NCDA_HOME.opened()])
    },
    Scheme {
        id: named("ph-lawn-mlsn"),
        steps: Steps(ABOVE_55_STEPS, &[5.5]),
        second: LAWN,
        citations: &[MLSN.opened()],
        note: "A minimum only.",
        ..PH
    },
    Scheme {
        note: "The source gives 6.0 as the target for shrubs and shade trees. The upper end is ours: there the neutral class ends.",
        ..judging(
            "ph-ornamentals",
            ORNAMENTALS,
            &[6.0, 7.3],
            &[NCDA_HOME.opened(), OUR_CHOICE.unsourced()],
        )
    },
    judging("ph-berries-ncda", BERRIES, &[6.0, 6.5], &[NCDA_HOME.opened()]),
    Scheme {
        note: "Sources differ by about 0.7 for blueberry. This band takes them all in.",
        ..judging(
            "ph-acid-lovers",
            ACID,
            &[4.5, 5.5],
            &[UCONN_PH.derived(), NCDA_HOME.derived(), DELAWARE_PH.derived()],
        )
    },
    second("ph-acid-lovers-uconn", ACID, &[4.5, 5.3], &[UCONN_PH.opened()]),
    second("ph-acid-lovers-ncda", ACID, &[5.0, 5.5], &[NCDA_HOME.opened()]),
];

/// The reaction classes: upper ends, inclusive, to one decimal.
/// Source: NRCS Soil Survey Manual (opened).
const CLASSES: [(&str, f64); 11] = [
    ("ultra acid", 3.4),
    ("extremely acid", 4.4),
    ("very strongly acid", 5.0),
    ("strongly acid", 5.5),
    ("moderately acid", 6.0),
    ("slightly acid", 6.5),
    ("neutral", 7.3),
    ("slightly alkaline", 7.8),
    ("moderately alkaline", 8.4),
    ("strongly alkaline", 9.0),
    ("very strongly alkaline", f64::INFINITY),
];

/// The name of the reaction class of a pH, by the USDA-NRCS Soil Survey Manual.
pub fn reaction_class(ph: f64) -> &'static str {
    let ph = to_a_tenth(ph);
    CLASSES.iter().find(|(_, end)| ph <= *end).map_or("neutral", |(name, _)| name)
}

/// pH to the tenth that ranges are printed to, so that 7.04 is still 7.0.
pub(super) fn to_a_tenth(ph: f64) -> f64 {
    (ph * 10.0).round() / 10.0
}

/// Puts the reaction class in place of the step's word.
pub(super) fn name_the_class(finding: &mut Finding, amount: Amount) {
    let class = reaction_class(amount.number());
    for range in finding
        .range
        .iter_mut()
        .chain(finding.second_opinions.iter_mut().map(|opinion| &mut opinion.range))
    {
        range.word = class;
    }
    if finding.level.is_some() {
        finding.grounds.rule = format!("{} The soil is {class}.", finding.grounds.rule);
        finding.grounds.sources.push(NRCS_PH.opened());
    }
}
