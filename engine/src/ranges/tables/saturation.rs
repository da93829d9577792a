//! Saturations and sodium ratios as the laboratory prints them.

use crate::quantity::Unit::{None as Plain, Percent};
use crate::ranges::Level::{Excess, High, Low, Sufficient};
use crate::ranges::Step;
use crate::ranges::scheme::{ALL_PLANTS, NO_CHANCE, NO_PLANTS, Scheme, Soils, named};
use crate::soil::Property;
use crate::sources::{COLORADO_SODIC, UMASS_REPORT};

const fn optimum(from: f64, to: f64) -> [Step; 3] {
    [
        Step::below("below optimum", Low, from),
        Step::to("optimum", Sufficient, to),
        Step::rest("above optimum", High),
    ]
}

static CA: [Step; 3] = optimum(50.0, 80.0);
static MG: [Step; 3] = optimum(10.0, 30.0);
static K: [Step; 3] = optimum(2.0, 7.0);
static ESP: [Step; 2] = [Step::below("not sodic", Sufficient, 15.0), Step::rest("sodic", Excess)];
static SAR: [Step; 2] = [Step::below("not sodic", Sufficient, 13.0), Step::rest("sodic", Excess)];

const UMASS: Scheme = Scheme {
    id: named(""),
    property: Property::CalciumSaturation,
    methods: &[],
    soils: Soils::All,
    unit: Percent,
    steps: &[],
    printed_to: 0.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[UMASS_REPORT.opened()],
    meaning: NO_CHANCE,
    note: "Plants answer to the amount of a nutrient more than to its share. Read this as a hint.",
};

const SODIC: Scheme = Scheme {
    citations: &[COLORADO_SODIC.opened()],
    meaning: "A line for the soil's structure, not a chance that plants respond.",
    note: "Structure can suffer below this line too, on clay and where salts are few.",
    ..UMASS
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme { id: named("umass-ca-saturation"), steps: &CA, ..UMASS },
    Scheme {
        id: named("umass-mg-saturation"),
        property: Property::MagnesiumSaturation,
        steps: &MG,
        ..UMASS
    },
    Scheme {
        id: named("umass-k-saturation"),
        property: Property::PotassiumSaturation,
        steps: &K,
        ..UMASS
    },
    Scheme { id: named("sodic-esp"), property: Property::SodiumSaturation, steps: &ESP, ..SODIC },
    Scheme { id: named("sodic-sar"), property: Property::Sar, unit: Plain, steps: &SAR, ..SODIC },
];
