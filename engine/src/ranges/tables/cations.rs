//! Exchangeable K, Ca and Mg by ammonium acetate or ammonium nitrate.

use crate::quantity::Unit::{MeqPer100g, MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{ALL_PLANTS, BLANK, NO_PLANTS, Scheme, Steps, named, rungs};
use crate::soil::{Method, Property};
use crate::sources::{EXCHANGEABLE_CATIONS, ONTARIO, OREGON_EC1478, RB209};

rungs! {
    CLASSES_STEPS: below "very low" VeryLow, below "low" Low, to "medium" Sufficient,
        to "high" High, to "very high" High;
    OREGON_STEPS: below "low" Low, to "medium" Low, to "high" Sufficient;
    OREGON_K_STEPS: below "low" Low, to "medium" Low, to "high" Sufficient, to "excessive" Excess;
    ONTARIO_K_STEPS: below "below target" Low, to "target" Sufficient, to "above target" High;
    RB209_K_STEPS: to "index 0" VeryLow, to "index 1" Low, to "index 2−" Sufficient,
        to "index 2+" Sufficient, to "index 3" High, to "index 4" High, to "above index 4" Excess;
    RB209_MG_STEPS: to "index 0" VeryLow, to "index 1" Low, to "index 2" Sufficient,
        to "index 3" High, to "above index 3" High;
}

const GENERAL: Scheme = Scheme {
    property: Property::Calcium,
    methods: &[Method::AmmoniumAcetate],
    unit: MeqPer100g,
    judges: ALL_PLANTS,
    citations: &[EXCHANGEABLE_CATIONS.second_hand()],
    note: "General classes, not tied to a crop or a region. We take “medium” as enough.",
    ..BLANK
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
    GENERAL.table("general-ca", Property::Calcium, Steps(CLASSES_STEPS, &[2.0, 5.0, 10.0, 20.0])),
    GENERAL.table("general-mg", Property::Magnesium, Steps(CLASSES_STEPS, &[0.5, 1.5, 3.0, 8.0])),
    GENERAL.table("general-k", Property::Potassium, Steps(CLASSES_STEPS, &[0.12, 0.3, 0.6, 1.2])),
    OREGON.table("oregon-ca", Property::Calcium, Steps(OREGON_STEPS, &[1000.0, 2000.0])),
    OREGON.table("oregon-mg", Property::Magnesium, Steps(OREGON_STEPS, &[60.0, 300.0])),
    OREGON.table("oregon-k", Property::Potassium, Steps(OREGON_K_STEPS, &[150.0, 250.0, 800.0])),
    Scheme {
        id: named("ontario-k"),
        property: Property::Potassium,
        steps: Steps(ONTARIO_K_STEPS, &[100.0, 130.0]),
        citations: &[ONTARIO.opened()],
        meaning: "Above 100 mg/kg maize and soybean gained little.",
        note: "A suggested target for field crops. Measured by volume, which it calls about equal to weight.",
        ..OREGON
    },
    UK.table(
        "rb209-k",
        Property::Potassium,
        Steps(RB209_K_STEPS, &[60.0, 120.0, 180.0, 240.0, 400.0, 600.0]),
    ),
    UK.table("rb209-mg", Property::Magnesium, Steps(RB209_MG_STEPS, &[25.0, 50.0, 100.0, 175.0])),
];
