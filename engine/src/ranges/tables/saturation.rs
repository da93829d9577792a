//! Saturations and sodium ratios as the laboratory prints them.

use crate::quantity::Unit::{None as Plain, Percent};
use crate::ranges::Level::{Excess, High, Low, Sufficient};
use crate::ranges::scheme::{ALL_PLANTS, NO_CHANCE, NO_PLANTS, Rung, Scheme, Soils, Steps, named};
use crate::soil::Property;
use crate::sources::{COLORADO_SODIC, UMASS_REPORT};

static OPTIMUM_STEPS: [Rung; 3] = [
    Rung::below("below optimum", Low),
    Rung::to("optimum", Sufficient),
    Rung::to("above optimum", High),
];

static CA: [f64; 2] = [50.0, 80.0];
static MG: [f64; 2] = [10.0, 30.0];
static K: [f64; 2] = [2.0, 7.0];
static ESP_STEPS: [Rung; 2] = [Rung::below("not sodic", Sufficient), Rung::to("sodic", Excess)];
static ESP: [f64; 1] = [15.0];
static SAR_STEPS: [Rung; 2] = [Rung::below("not sodic", Sufficient), Rung::to("sodic", Excess)];
static SAR: [f64; 1] = [13.0];

const UMASS: Scheme = Scheme {
    id: named(""),
    property: Property::CalciumSaturation,
    methods: &[],
    soils: Soils::All,
    unit: Percent,
    steps: Steps(&[], &[]),
    printed_to: 0.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[UMASS_REPORT.opened()],
    meaning: NO_CHANCE,
    note: "Plants answer to the amount of a nutrient more than to its share. Read this as a hint.",
};

const SODIC: Scheme = Scheme {
    citations: &[COLORADO_SODIC.opened()],
    meaning: "A line for the soil's structure, not for plants.",
    note: "Structure can suffer below this line too, on clay and where salts are few.",
    ..UMASS
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme { id: named("umass-ca-saturation"), steps: Steps(&OPTIMUM_STEPS, &CA), ..UMASS },
    Scheme {
        id: named("umass-mg-saturation"),
        property: Property::MagnesiumSaturation,
        steps: Steps(&OPTIMUM_STEPS, &MG),
        ..UMASS
    },
    Scheme {
        id: named("umass-k-saturation"),
        property: Property::PotassiumSaturation,
        steps: Steps(&OPTIMUM_STEPS, &K),
        ..UMASS
    },
    Scheme {
        id: named("sodic-esp"),
        property: Property::SodiumSaturation,
        steps: Steps(&ESP_STEPS, &ESP),
        ..SODIC
    },
    Scheme {
        id: named("sodic-sar"),
        property: Property::Sar,
        unit: Plain,
        steps: Steps(&SAR_STEPS, &SAR),
        ..SODIC
    },
];
