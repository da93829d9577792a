//! Mehlich-1 (weak double acid). The tables by weight are written from memory,
//! and no recommendation may rest on them alone; those by volume were read
//! where they are quoted.

use crate::quantity::Unit::{LbPerAcre, MgPerKg, MgPerL};
use crate::ranges::Level::{High, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{
    ALL_PLANTS, NO_CHANCE, NO_PLANTS, NOT_VEGETABLES, Scheme, Soils, VEGETABLES, named,
};
use crate::soil::{Method, Property};
use crate::sources::{CERRADO, ESPIRITO_SANTO, FLORIDA_MEHLICH1, GEORGIA_HANDBOOK, VIRGINIA_TESTS};

/// Georgia and Virginia say that plants respond nearly always on “low”, and
/// about half of the time on “medium”.
const fn four(low: f64, medium: f64, high: f64) -> [Step; 4] {
    [
        Step::to("low", VeryLow, low),
        Step::to("medium", Low, medium),
        Step::to("high", Sufficient, high),
        Step::rest("very high", High),
    ]
}

const fn three(low: f64, medium: f64) -> [Step; 3] {
    [Step::to("low", VeryLow, low), Step::to("medium", Low, medium), Step::rest("high", Sufficient)]
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
    id: named(""),
    property: Property::Phosphorus,
    methods: &[Method::Mehlich1],
    soils: Soils::All,
    unit: LbPerAcre,
    steps: &[],
    printed_to: 1.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[GEORGIA_HANDBOOK.from_memory()],
    meaning: "Low: plants respond in 80–100 % of cases; medium: in about half.",
    note: "Written from memory, for sandy coastal soils. Check it with the lab before you act on it.",
};

const FLORIDA: Scheme = Scheme {
    unit: MgPerKg,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[FLORIDA_MEHLICH1.from_memory()],
    meaning: NO_CHANCE,
    note: "Written from memory.",
    ..GEORGIA
};

const VIRGINIA: Scheme = Scheme {
    unit: LbPerAcre,
    citations: &[VIRGINIA_TESTS.from_memory()],
    meaning: "Low: plants almost always respond; medium: sometimes; high: usually not.",
    ..FLORIDA
};

const fn cerrado(very_low: f64, low: f64, medium: f64, adequate: f64) -> [Step; 5] {
    [
        Step::to("very low", VeryLow, very_low),
        Step::to("low", Low, low),
        Step::to("medium", Low, medium),
        Step::to("adequate", Sufficient, adequate),
        Step::rest("high", High),
    ]
}

static CERRADO_15: [Step; 5] = cerrado(12.0, 18.0, 25.0, 40.0);
static CERRADO_35: [Step; 5] = cerrado(10.0, 15.0, 20.0, 35.0);
static CERRADO_60: [Step; 5] = cerrado(5.0, 8.0, 12.0, 18.0);
static CERRADO_100: [Step; 5] = cerrado(3.0, 4.0, 6.0, 9.0);

/// Phosphorus by volume, by the clay a soil holds.
const fn by_clay(id: &'static str, from: f64, to: f64, steps: &'static [Step]) -> Scheme {
    Scheme {
        id: named(id),
        soils: Soils::Within(Property::Clay, from, to),
        unit: MgPerL,
        steps,
        printed_to: 0.1,
        citations: const { &[CERRADO.second_hand()] },
        meaning: NO_CHANCE,
        note: "For irrigated field crops of the Cerrado; a Brazilian table for vegetables asks for several times more.",
        ..GEORGIA
    }
}

static BRAZIL_K: [Step; 3] = brazil(60.0, 150.0);
static BRAZIL_K_VEGETABLES: [Step; 3] = brazil(80.0, 200.0);

const fn brazil(low: f64, medium: f64) -> [Step; 3] {
    [Step::below("low", Low, low), Step::to("medium", Low, medium), Step::rest("high", Sufficient)]
}

const ESPIRITO_SANTO_K: Scheme = Scheme {
    id: named("espirito-santo-k"),
    property: Property::Potassium,
    unit: MgPerL,
    steps: &BRAZIL_K,
    printed_to: 0.0,
    judges: NOT_VEGETABLES,
    citations: &[ESPIRITO_SANTO.second_hand()],
    meaning: "Low: potassium is needed; medium: advised; high: only what crops remove.",
    note: "",
    ..GEORGIA
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme { id: named("georgia-p"), steps: &GEORGIA_P, ..GEORGIA },
    Scheme { id: named("georgia-k"), property: Property::Potassium, steps: &GEORGIA_K, ..GEORGIA },
    Scheme {
        id: named("georgia-mg"),
        property: Property::Magnesium,
        steps: &GEORGIA_MG,
        ..GEORGIA
    },
    Scheme { id: named("florida-p"), steps: &FLORIDA_P, ..FLORIDA },
    Scheme { id: named("florida-k"), property: Property::Potassium, steps: &FLORIDA_K, ..FLORIDA },
    Scheme {
        id: named("florida-mg"),
        property: Property::Magnesium,
        steps: &FLORIDA_MG,
        ..FLORIDA
    },
    Scheme { id: named("virginia-p"), steps: &VIRGINIA_P, ..VIRGINIA },
    Scheme {
        id: named("virginia-k"),
        property: Property::Potassium,
        steps: &VIRGINIA_K,
        ..VIRGINIA
    },
    Scheme {
        id: named("virginia-mg"),
        property: Property::Magnesium,
        steps: &VIRGINIA_MG,
        ..VIRGINIA
    },
    by_clay("cerrado-p-15", -1.0, 15.0, &CERRADO_15),
    by_clay("cerrado-p-35", 15.0, 35.0, &CERRADO_35),
    by_clay("cerrado-p-60", 35.0, 60.0, &CERRADO_60),
    by_clay("cerrado-p-100", 60.0, 100.0, &CERRADO_100),
    ESPIRITO_SANTO_K,
    Scheme {
        id: named("espirito-santo-k-vegetables"),
        steps: &BRAZIL_K_VEGETABLES,
        judges: VEGETABLES,
        ..ESPIRITO_SANTO_K
    },
];
