//! Exchangeable K, Ca and Mg by ammonium acetate or ammonium nitrate.

use crate::quantity::Unit::{MeqPer100g, MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{ALL_PLANTS, NO_CHANCE, NO_PLANTS, Scheme, Soils, named};
use crate::soil::{Method, Property};
use crate::sources::{EXCHANGEABLE_CATIONS, ONTARIO, OREGON_EC1478, RB209};

const fn classes(very_low: f64, low: f64, medium: f64, high: f64) -> [Step; 5] {
    [
        Step::below("very low", VeryLow, very_low),
        Step::below("low", Low, low),
        Step::to("medium", Sufficient, medium),
        Step::to("high", High, high),
        Step::rest("very high", High),
    ]
}

static GENERAL_CA: [Step; 5] = classes(2.0, 5.0, 10.0, 20.0);
static GENERAL_MG: [Step; 5] = classes(0.5, 1.5, 3.0, 8.0);
static GENERAL_K: [Step; 5] = classes(0.12, 0.3, 0.6, 1.2);

const fn oregon_steps(low: f64, medium: f64) -> [Step; 3] {
    [Step::below("low", Low, low), Step::to("medium", Low, medium), Step::rest("high", Sufficient)]
}

static OREGON_K: [Step; 4] = [
    Step::below("low", Low, 150.0),
    Step::to("medium", Low, 250.0),
    Step::to("high", Sufficient, 800.0),
    Step::rest("excessive", Excess),
];
static OREGON_CA: [Step; 3] = oregon_steps(1000.0, 2000.0);
static OREGON_MG: [Step; 3] = oregon_steps(60.0, 300.0);
static ONTARIO_K: [Step; 3] = [
    Step::below("below target", Low, 100.0),
    Step::to("target", Sufficient, 130.0),
    Step::rest("above target", High),
];

static RB209_K: [Step; 7] = [
    Step::to("index 0", VeryLow, 60.0),
    Step::to("index 1", Low, 120.0),
    Step::to("index 2−", Sufficient, 180.0),
    Step::to("index 2+", Sufficient, 240.0),
    Step::to("index 3", High, 400.0),
    Step::to("index 4", High, 600.0),
    Step::rest("above index 4", Excess),
];
static RB209_MG: [Step; 5] = [
    Step::to("index 0", VeryLow, 25.0),
    Step::to("index 1", Low, 50.0),
    Step::to("index 2", Sufficient, 100.0),
    Step::to("index 3", High, 175.0),
    Step::rest("above index 3", High),
];

const GENERAL: Scheme = Scheme {
    id: named(""),
    property: Property::Calcium,
    methods: &[Method::AmmoniumAcetate],
    soils: Soils::All,
    unit: MeqPer100g,
    steps: &[],
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
    meaning: "Low: fertiliser will likely help; medium: it may; high: not likely.",
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
    Scheme { id: named("general-ca"), steps: &GENERAL_CA, ..GENERAL },
    Scheme {
        id: named("general-mg"),
        property: Property::Magnesium,
        steps: &GENERAL_MG,
        ..GENERAL
    },
    Scheme { id: named("general-k"), property: Property::Potassium, steps: &GENERAL_K, ..GENERAL },
    Scheme { id: named("oregon-ca"), steps: &OREGON_CA, ..OREGON },
    Scheme { id: named("oregon-mg"), property: Property::Magnesium, steps: &OREGON_MG, ..OREGON },
    Scheme { id: named("oregon-k"), property: Property::Potassium, steps: &OREGON_K, ..OREGON },
    Scheme {
        id: named("ontario-k"),
        property: Property::Potassium,
        steps: &ONTARIO_K,
        citations: &[ONTARIO.opened()],
        meaning: "Above 100 mg/kg maize and soybean gained little.",
        note: "A suggested target for field crops, printed as ppm and measured by volume, which it calls about equal.",
        ..OREGON
    },
    Scheme { id: named("rb209-k"), steps: &RB209_K, ..UK },
    Scheme { id: named("rb209-mg"), property: Property::Magnesium, steps: &RB209_MG, ..UK },
];
