//! Exchangeable K, Ca and Mg by ammonium acetate or ammonium nitrate.

use crate::quantity::Unit::{MeqPer100g, MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{ALL_PLANTS, NO_CHANCE, NO_PLANTS, Rung, Scheme, Soils, Steps, named};
use crate::soil::{Method, Property};
use crate::sources::{EXCHANGEABLE_CATIONS, ONTARIO, OREGON_EC1478, RB209};

static CLASSES_STEPS: [Rung; 5] = [
    Rung::below("very low", VeryLow),
    Rung::below("low", Low),
    Rung::to("medium", Sufficient),
    Rung::to("high", High),
    Rung::to("very high", High),
];

static GENERAL_CA: [f64; 4] = [2.0, 5.0, 10.0, 20.0];
static GENERAL_MG: [f64; 4] = [0.5, 1.5, 3.0, 8.0];
static GENERAL_K: [f64; 4] = [0.12, 0.3, 0.6, 1.2];

static OREGON_STEPS_STEPS: [Rung; 3] =
    [Rung::below("low", Low), Rung::to("medium", Low), Rung::to("high", Sufficient)];

static OREGON_K_STEPS: [Rung; 4] = [
    Rung::below("low", Low),
    Rung::to("medium", Low),
    Rung::to("high", Sufficient),
    Rung::to("excessive", Excess),
];
static OREGON_K: [f64; 3] = [150.0, 250.0, 800.0];
static OREGON_CA: [f64; 2] = [1000.0, 2000.0];
static OREGON_MG: [f64; 2] = [60.0, 300.0];
static ONTARIO_K_STEPS: [Rung; 3] = [
    Rung::below("below target", Low),
    Rung::to("target", Sufficient),
    Rung::to("above target", High),
];
static ONTARIO_K: [f64; 2] = [100.0, 130.0];

static RB209_K_STEPS: [Rung; 7] = [
    Rung::to("index 0", VeryLow),
    Rung::to("index 1", Low),
    Rung::to("index 2−", Sufficient),
    Rung::to("index 2+", Sufficient),
    Rung::to("index 3", High),
    Rung::to("index 4", High),
    Rung::to("above index 4", Excess),
];
static RB209_K: [f64; 6] = [60.0, 120.0, 180.0, 240.0, 400.0, 600.0];
static RB209_MG_STEPS: [Rung; 5] = [
    Rung::to("index 0", VeryLow),
    Rung::to("index 1", Low),
    Rung::to("index 2", Sufficient),
    Rung::to("index 3", High),
    Rung::to("above index 3", High),
];
static RB209_MG: [f64; 4] = [25.0, 50.0, 100.0, 175.0];

const GENERAL: Scheme = Scheme {
    id: named(""),
    property: Property::Calcium,
    methods: &[Method::AmmoniumAcetate],
    soils: Soils::All,
    unit: MeqPer100g,
    steps: Steps(&[], &[]),
    printed_to: 0.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[EXCHANGEABLE_CATIONS.second_hand()],
    meaning: NO_CHANCE,
    note: "General classes, not tied to a crop or a region. We take “medium” as enough.",
};

const OREGON: Scheme = Scheme {
    unit: MgPerKg,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[OREGON_EC1478.from_memory()],
    meaning: "Low: plants are likely to respond; medium: they may; high: not likely.",
    note: "Written from memory.",
    ..GENERAL
};

const UK: Scheme = Scheme {
    property: Property::Potassium,
    methods: &[Method::AmmoniumNitrate],
    unit: MgPerL,
    printed_to: 1.0,
    citations: &[RB209.from_memory()],
    note: "Written from memory. The target is index 2.",
    ..GENERAL
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme { id: named("general-ca"), steps: Steps(&CLASSES_STEPS, &GENERAL_CA), ..GENERAL },
    Scheme {
        id: named("general-mg"),
        property: Property::Magnesium,
        steps: Steps(&CLASSES_STEPS, &GENERAL_MG),
        ..GENERAL
    },
    Scheme {
        id: named("general-k"),
        property: Property::Potassium,
        steps: Steps(&CLASSES_STEPS, &GENERAL_K),
        ..GENERAL
    },
    Scheme { id: named("oregon-ca"), steps: Steps(&OREGON_STEPS_STEPS, &OREGON_CA), ..OREGON },
    Scheme {
        id: named("oregon-mg"),
        property: Property::Magnesium,
        steps: Steps(&OREGON_STEPS_STEPS, &OREGON_MG),
        ..OREGON
    },
    Scheme {
        id: named("oregon-k"),
        property: Property::Potassium,
        steps: Steps(&OREGON_K_STEPS, &OREGON_K),
        ..OREGON
    },
    Scheme {
        id: named("ontario-k"),
        property: Property::Potassium,
        steps: Steps(&ONTARIO_K_STEPS, &ONTARIO_K),
        citations: &[ONTARIO.opened()],
        meaning: "Above 100 mg/kg maize and soybean gained little.",
        note: "A suggested target for field crops. Measured by volume, which it calls about equal to weight.",
        ..OREGON
    },
    Scheme { id: named("rb209-k"), steps: Steps(&RB209_K_STEPS, &RB209_K), ..UK },
    Scheme {
        id: named("rb209-mg"),
        property: Property::Magnesium,
        steps: Steps(&RB209_MG_STEPS, &RB209_MG),
        ..UK
    },
];
