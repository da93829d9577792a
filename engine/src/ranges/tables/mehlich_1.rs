//! Mehlich-1 (weak double acid). The tables by weight are written from memory,
//! and no recommendation may rest on them alone; those by volume were read
//! where they are quoted.

use crate::quantity::Unit::{LbPerAcre, MgPerKg, MgPerL};
use crate::ranges::Level::{High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{
    ALL_PLANTS, NO_CHANCE, NO_PLANTS, NOT_VEGETABLES, Rung, Scheme, Soils, Steps, VEGETABLES, named,
};
use crate::soil::{Method, Property};
use crate::sources::{CERRADO, ESPIRITO_SANTO, FLORIDA_MEHLICH1, GEORGIA_HANDBOOK, VIRGINIA_TESTS};

/// Georgia and Virginia say that plants respond nearly always on “low”, and
/// about half of the time on “medium”.
static FOUR_STEPS: [Rung; 4] = [
    Rung::to("low", VeryLow),
    Rung::to("medium", Low),
    Rung::to("high", Sufficient),
    Rung::to("very high", High),
];

static THREE_STEPS: [Rung; 3] =
    [Rung::to("low", VeryLow), Rung::to("medium", Low), Rung::to("high", Sufficient)];

static FIVE_STEPS: [Rung; 5] = [
    Rung::below("very low", VeryLow),
    Rung::to("low", Low),
    Rung::to("medium", Low),
    Rung::to("high", Sufficient),
    Rung::to("very high", High),
];

static GEORGIA_P: [f64; 3] = [30.0, 60.0, 100.0];
static GEORGIA_K: [f64; 3] = [60.0, 150.0, 250.0];
static GEORGIA_MG: [f64; 2] = [60.0, 120.0];
static FLORIDA_P: [f64; 4] = [10.0, 15.0, 30.0, 60.0];
static FLORIDA_K: [f64; 4] = [20.0, 35.0, 60.0, 125.0];
static FLORIDA_MG_STEPS: [Rung; 3] =
    [Rung::below("low", Low), Rung::to("medium", Low), Rung::to("high", Sufficient)];
static FLORIDA_MG: [f64; 2] = [15.0, 30.0];
static VIRGINIA_P: [f64; 3] = [11.0, 35.0, 110.0];
static VIRGINIA_K: [f64; 3] = [75.0, 175.0, 310.0];
static VIRGINIA_MG: [f64; 2] = [72.0, 144.0];

const GEORGIA: Scheme = Scheme {
    id: named(""),
    property: Property::Phosphorus,
    methods: &[Method::Mehlich1],
    soils: Soils::All,
    unit: LbPerAcre,
    steps: Steps(&[], &[]),
    printed_to: 1.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[GEORGIA_HANDBOOK.from_memory()],
    meaning: "Low: plants respond in 80–100 % of cases; medium: in about half; high: hardly ever.",
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

static CERRADO_STEPS: [Rung; 5] = [
    Rung::to("very low", VeryLow),
    Rung::to("low", Low),
    Rung::to("medium", Low),
    Rung::to("adequate", Sufficient),
    Rung::to("high", High),
];

static CERRADO_15: [f64; 4] = [12.0, 18.0, 25.0, 40.0];
static CERRADO_35: [f64; 4] = [10.0, 15.0, 20.0, 35.0];
static CERRADO_60: [f64; 4] = [5.0, 8.0, 12.0, 18.0];
static CERRADO_100: [f64; 4] = [3.0, 4.0, 6.0, 9.0];

/// Phosphorus by volume, by the clay a soil holds.
const fn by_clay(id: &'static str, from: f64, to: f64, steps: Steps) -> Scheme {
    Scheme {
        id: named(id),
        soils: Soils::Within(Property::Clay, from, to),
        unit: MgPerL,
        steps,
        printed_to: 0.1,
        citations: const { &[CERRADO.second_hand()] },
        meaning: NO_CHANCE,
        note: "For irrigated field crops. A Brazilian table for vegetables asks for several times more.",
        ..GEORGIA
    }
}

static BRAZIL_K: [f64; 2] = [60.0, 150.0];
static BRAZIL_K_VEGETABLES: [f64; 2] = [80.0, 200.0];

static BRAZIL_STEPS: [Rung; 3] =
    [Rung::below("low", Low), Rung::to("medium", Low), Rung::to("high", Sufficient)];

const ESPIRITO_SANTO_K: Scheme = Scheme {
    id: named("espirito-santo-k"),
    property: Property::Potassium,
    unit: MgPerL,
    steps: Steps(&BRAZIL_STEPS, &BRAZIL_K),
    printed_to: 0.0,
    judges: NOT_VEGETABLES,
    citations: &[ESPIRITO_SANTO.second_hand()],
    meaning: "Low: potassium is needed; medium: advised; high: only what crops remove.",
    note: "",
    ..GEORGIA
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme { id: named("georgia-p"), steps: Steps(&FOUR_STEPS, &GEORGIA_P), ..GEORGIA },
    Scheme {
        id: named("georgia-k"),
        property: Property::Potassium,
        steps: Steps(&FOUR_STEPS, &GEORGIA_K),
        ..GEORGIA
    },
    Scheme {
        id: named("georgia-mg"),
        property: Property::Magnesium,
        steps: Steps(&THREE_STEPS, &GEORGIA_MG),
        ..GEORGIA
    },
    Scheme { id: named("florida-p"), steps: Steps(&FIVE_STEPS, &FLORIDA_P), ..FLORIDA },
    Scheme {
        id: named("florida-k"),
        property: Property::Potassium,
        steps: Steps(&FIVE_STEPS, &FLORIDA_K),
        ..FLORIDA
    },
    Scheme {
        id: named("florida-mg"),
        property: Property::Magnesium,
        steps: Steps(&FLORIDA_MG_STEPS, &FLORIDA_MG),
        ..FLORIDA
    },
    Scheme { id: named("virginia-p"), steps: Steps(&FOUR_STEPS, &VIRGINIA_P), ..VIRGINIA },
    Scheme {
        id: named("virginia-k"),
        property: Property::Potassium,
        steps: Steps(&FOUR_STEPS, &VIRGINIA_K),
        ..VIRGINIA
    },
    Scheme {
        id: named("virginia-mg"),
        property: Property::Magnesium,
        steps: Steps(&THREE_STEPS, &VIRGINIA_MG),
        ..VIRGINIA
    },
    by_clay("cerrado-p-15", -1.0, 15.0, Steps(&CERRADO_STEPS, &CERRADO_15)),
    by_clay("cerrado-p-35", 15.0, 35.0, Steps(&CERRADO_STEPS, &CERRADO_35)),
    by_clay("cerrado-p-60", 35.0, 60.0, Steps(&CERRADO_STEPS, &CERRADO_60)),
    by_clay("cerrado-p-100", 60.0, 100.0, Steps(&CERRADO_STEPS, &CERRADO_100)),
    ESPIRITO_SANTO_K,
    Scheme {
        id: named("espirito-santo-k-vegetables"),
        steps: Steps(&BRAZIL_STEPS, &BRAZIL_K_VEGETABLES),
        judges: VEGETABLES,
        ..ESPIRITO_SANTO_K
    },
];
