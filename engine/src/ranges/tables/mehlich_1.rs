//! Mehlich-1 (weak double acid). No table could be opened: all of these are
//! written from memory, and no recommendation may rest on them alone.

use crate::quantity::Unit::{LbPerAcre, MgPerKg};
use crate::ranges::Level::{High, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{ALL_PLANTS, NO_PLANTS, Scheme};
use crate::soil::{Method, Property};
use crate::sources::{FLORIDA_MEHLICH1, GEORGIA_HANDBOOK, VIRGINIA_TESTS};

const fn four(low: f64, medium: f64, high: f64) -> [Step; 4] {
    [
        Step::to("low", Low, low),
        Step::to("medium", Low, medium),
        Step::to("high", Sufficient, high),
        Step::rest("very high", High),
    ]
}

const fn three(low: f64, medium: f64) -> [Step; 3] {
    [Step::to("low", Low, low), Step::to("medium", Low, medium), Step::rest("high", Sufficient)]
}

const fn five(very_low: f64, low: f64, medium: f64, high: f64) -> [Step; 5] {
    [
        Step::below("very low", VeryLow, very_low),
        Step::to("low", Low, low),
        Step::to("medium", Low, medium),
        Step::to("high", Sufficient, high),
        Step::rest("very high", High),
    ]
}

static GEORGIA_P: [Step; 4] = four(30.0, 60.0, 100.0);
static GEORGIA_K: [Step; 4] = four(60.0, 150.0, 250.0);
static GEORGIA_MG: [Step; 3] = three(60.0, 120.0);
static FLORIDA_P: [Step; 5] = five(10.0, 15.0, 30.0, 60.0);
static FLORIDA_K: [Step; 5] = five(20.0, 35.0, 60.0, 125.0);
static FLORIDA_MG: [Step; 3] =
    [Step::below("low", Low, 15.0), Step::to("medium", Low, 30.0), Step::rest("high", Sufficient)];
static VIRGINIA_P: [Step; 4] = four(11.0, 35.0, 110.0);
static VIRGINIA_K: [Step; 4] = four(75.0, 175.0, 310.0);
static VIRGINIA_MG: [Step; 3] = three(72.0, 144.0);

const GEORGIA: Scheme = Scheme {
    id: "",
    property: Property::Phosphorus,
    methods: &[Method::Mehlich1],
    unit: LbPerAcre,
    steps: &[],
    printed_to: 1.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[GEORGIA_HANDBOOK.from_memory()],
    note: "Written from memory, for sandy coastal soils. Check it with the lab before you act on it.",
};

const FLORIDA: Scheme = Scheme {
    unit: MgPerKg,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[FLORIDA_MEHLICH1.from_memory()],
    note: "Written from memory.",
    ..GEORGIA
};

const VIRGINIA: Scheme =
    Scheme { unit: LbPerAcre, citations: &[VIRGINIA_TESTS.from_memory()], ..FLORIDA };

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme { id: "georgia-p", steps: &GEORGIA_P, ..GEORGIA },
    Scheme { id: "georgia-k", property: Property::Potassium, steps: &GEORGIA_K, ..GEORGIA },
    Scheme { id: "georgia-mg", property: Property::Magnesium, steps: &GEORGIA_MG, ..GEORGIA },
    Scheme { id: "florida-p", steps: &FLORIDA_P, ..FLORIDA },
    Scheme { id: "florida-k", property: Property::Potassium, steps: &FLORIDA_K, ..FLORIDA },
    Scheme { id: "florida-mg", property: Property::Magnesium, steps: &FLORIDA_MG, ..FLORIDA },
    Scheme { id: "virginia-p", steps: &VIRGINIA_P, ..VIRGINIA },
    Scheme { id: "virginia-k", property: Property::Potassium, steps: &VIRGINIA_K, ..VIRGINIA },
    Scheme { id: "virginia-mg", property: Property::Magnesium, steps: &VIRGINIA_MG, ..VIRGINIA },
];
