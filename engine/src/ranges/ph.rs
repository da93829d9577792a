//! pH by what grows, with the reaction class as the word.

use crate::quantity::Unit;
use crate::ranges::Finding;
use crate::ranges::Level::{High, Low, Sufficient};
use crate::ranges::scheme::{LAWN, NO_PLANTS, Rung, Scheme, Soils, Steps, VEGETABLES, named};
use crate::soil::{Amount, PlantGroup, Property};
use crate::sources::{
    CLEMSON_PH, CORNELL_PH, DELAWARE_PH, MLSN, NCDA_HOME, NRCS_PH, OUR_CHOICE, UCONN_PH,
};

const BERRIES: &[PlantGroup] = &[PlantGroup::Berries];
const ORNAMENTALS: &[PlantGroup] = &[PlantGroup::OrnamentalsAndTrees];
const ACID: &[PlantGroup] = &[PlantGroup::AcidLovers];

static BETWEEN_STEPS: [Rung; 3] = [
    Rung::below("more acid than the range", Low),
    Rung::to("in the range", Sufficient),
    Rung::to("more alkaline than the range", High),
];

static P58_65: [f64; 2] = [5.8, 6.5];
static P60_65: [f64; 2] = [6.0, 6.5];
static P60_68: [f64; 2] = [6.0, 6.8];
static P60_70: [f64; 2] = [6.0, 7.0];
static P60_73: [f64; 2] = [6.0, 7.3];
static P60_75: [f64; 2] = [6.0, 7.5];
static P45_55: [f64; 2] = [4.5, 5.5];
static P45_53: [f64; 2] = [4.5, 5.3];
static P50_55: [f64; 2] = [5.0, 5.5];
static ABOVE_55_STEPS: [Rung; 2] =
    [Rung::to("more acid than the range", Low), Rung::to("in the range", Sufficient)];
static ABOVE_55: [f64; 1] = [5.5];

const PH: Scheme = Scheme {
    id: named(""),
    property: Property::Ph,
    methods: &[],
    soils: Soils::All,
    unit: Unit::None,
    steps: Steps(&[], &[]),
    printed_to: 0.0,
    judges: NO_PLANTS,
    second: NO_PLANTS,
    citations: &[],
    meaning: "A range to aim at, not a chance that plants respond.",
    note: "",
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme {
        id: named("ph-vegetables-cornell"),
        steps: Steps(&BETWEEN_STEPS, &P60_70),
        judges: VEGETABLES,
        citations: &[CORNELL_PH.opened()],
        ..PH
    },
    Scheme {
        id: named("ph-vegetables-ncda"),
        steps: Steps(&BETWEEN_STEPS, &P60_65),
        second: VEGETABLES,
        citations: &[NCDA_HOME.opened()],
        ..PH
    },
    Scheme {
        id: named("ph-vegetables-clemson"),
        steps: Steps(&BETWEEN_STEPS, &P58_65),
        second: VEGETABLES,
        citations: &[CLEMSON_PH.opened()],
        ..PH
    },
    Scheme {
        id: named("ph-vegetables-uconn"),
        steps: Steps(&BETWEEN_STEPS, &P60_68),
        second: VEGETABLES,
        citations: &[UCONN_PH.opened()],
        note: "Potatoes that scab are kept at 5.2–5.4 by the same source.",
        ..PH
    },
    Scheme {
        id: named("ph-lawn-cornell"),
        steps: Steps(&BETWEEN_STEPS, &P60_75),
        judges: LAWN,
        citations: &[CORNELL_PH.opened()],
        ..PH
    },
    Scheme {
        id: named("ph-lawn-ncda"),
        steps: Steps(&BETWEEN_STEPS, &P60_65),
        second: LAWN,
        citations: &[NCDA_HOME.opened()],
        note: "For fescue, bermuda, zoysia and St Augustine grass. Centipedegrass wants 5.5.",
        ..PH
    },
    Scheme {
        id: named("ph-lawn-mlsn"),
        steps: Steps(&ABOVE_55_STEPS, &ABOVE_55),
        second: LAWN,
        citations: &[MLSN.opened()],
        note: "A minimum only.",
        ..PH
    },
    Scheme {
        id: named("ph-ornamentals"),
        steps: Steps(&BETWEEN_STEPS, &P60_73),
        judges: ORNAMENTALS,
        citations: &[NCDA_HOME.opened(), OUR_CHOICE.unsourced()],
        note: "The source gives 6.0 as the target for shrubs and shade trees. The upper end is ours: there the neutral class ends.",
        ..PH
    },
    Scheme {
        id: named("ph-berries-ncda"),
        steps: Steps(&BETWEEN_STEPS, &P60_65),
        judges: BERRIES,
        citations: &[NCDA_HOME.opened()],
        ..PH
    },
    Scheme {
        id: named("ph-acid-lovers"),
        steps: Steps(&BETWEEN_STEPS, &P45_55),
        judges: ACID,
        citations: &[UCONN_PH.derived(), NCDA_HOME.derived(), DELAWARE_PH.derived()],
        note: "Sources differ by about 0.7 for blueberry. This band takes them all in.",
        ..PH
    },
    Scheme {
        id: named("ph-acid-lovers-uconn"),
        steps: Steps(&BETWEEN_STEPS, &P45_53),
        second: ACID,
        citations: &[UCONN_PH.opened()],
        ..PH
    },
    Scheme {
        id: named("ph-acid-lovers-ncda"),
        steps: Steps(&BETWEEN_STEPS, &P50_55),
        second: ACID,
        citations: &[NCDA_HOME.opened()],
        ..PH
    },
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
