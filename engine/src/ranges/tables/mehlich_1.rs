//! Mehlich-1 (weak double acid). The tables by weight are written from memory,
//! and no recommendation may rest on them alone; those by volume were read
//! where they are quoted.

use crate::quantity::Unit::{LbPerAcre, MgPerKg, MgPerL};
use crate::ranges::Level::{High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{
    ALL_PLANTS, BLANK, NO_CHANCE, NO_PLANTS, NOT_VEGETABLES, Scheme, Soils, Steps, VEGETABLES,
    named, rungs,
};
use crate::soil::{Method, Property};
use crate::sources::{CERRADO, ESPIRITO_SANTO, FLORIDA_MEHLICH1, GEORGIA_HANDBOOK, VIRGINIA_TESTS};

rungs! {
    /// Georgia and Virginia say that plants respond nearly always on “low”, and
    /// about half of the time on “medium”.
    FOUR_STEPS: to "low" VeryLow, to "medium" Low, to "high" Sufficient, to "very high" High;
    THREE_STEPS: to "low" VeryLow, to "medium" Low, to "high" Sufficient;
    FIVE_STEPS: below "very low" VeryLow, to "low" Low, to "medium" Low, to "high" Sufficient,
        to "very high" High;
    FLORIDA_MG_STEPS: below "low" Low, to "medium" Low, to "high" Sufficient;
    CERRADO_STEPS: to "very low" VeryLow, to "low" Low, to "medium" Low, to "adequate" Sufficient,
        to "high" High;
    BRAZIL_STEPS: below "low" Low, to "medium" Low, to "high" Sufficient;
}

const GEORGIA: Scheme = Scheme {
    property: Property::Phosphorus,
    methods: &[Method::Mehlich1],
    unit: LbPerAcre,
    printed_to: 1.0,
    judges: ALL_PLANTS,
    citations: &[GEORGIA_HANDBOOK.from_memory()],
    meaning: "Low: plants respond in 80–100 % of cases; medium: in about half; high: hardly ever.",
    note: "Written from memory, for sandy coastal soils. Check it with the lab before you act on it.",
    ..BLANK
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

const ESPIRITO_SANTO_K: Scheme = Scheme {
    id: named("espirito-santo-k"),
    property: Property::Potassium,
    unit: MgPerL,
    steps: Steps(BRAZIL_STEPS, &[60.0, 150.0]),
    printed_to: 0.0,
    judges: NOT_VEGETABLES,
    citations: &[ESPIRITO_SANTO.second_hand()],
    meaning: "Low: potassium is needed; medium: advised; high: only what crops remove.",
    note: "",
    ..GEORGIA
};

pub(super) static SCHEMES: &[Scheme] = &[
    GEORGIA.table("georgia-p", Property::Phosphorus, Steps(FOUR_STEPS, &[30.0, 60.0, 100.0])),
    GEORGIA.table("georgia-k", Property::Potassium, Steps(FOUR_STEPS, &[60.0, 150.0, 250.0])),
    GEORGIA.table("georgia-mg", Property::Magnesium, Steps(THREE_STEPS, &[60.0, 120.0])),
    FLORIDA.table("florida-p", Property::Phosphorus, Steps(FIVE_STEPS, &[10.0, 15.0, 30.0, 60.0])),
    FLORIDA.table("florida-k", Property::Potassium, Steps(FIVE_STEPS, &[20.0, 35.0, 60.0, 125.0])),
    FLORIDA.table("florida-mg", Property::Magnesium, Steps(FLORIDA_MG_STEPS, &[15.0, 30.0])),
    VIRGINIA.table("virginia-p", Property::Phosphorus, Steps(FOUR_STEPS, &[11.0, 35.0, 110.0])),
    VIRGINIA.table("virginia-k", Property::Potassium, Steps(FOUR_STEPS, &[75.0, 175.0, 310.0])),
    VIRGINIA.table("virginia-mg", Property::Magnesium, Steps(THREE_STEPS, &[72.0, 144.0])),
    by_clay("cerrado-p-15", -1.0, 15.0, Steps(CERRADO_STEPS, &[12.0, 18.0, 25.0, 40.0])),
    by_clay("cerrado-p-35", 15.0, 35.0, Steps(CERRADO_STEPS, &[10.0, 15.0, 20.0, 35.0])),
    by_clay("cerrado-p-60", 35.0, 60.0, Steps(CERRADO_STEPS, &[5.0, 8.0, 12.0, 18.0])),
    by_clay("cerrado-p-100", 60.0, 100.0, Steps(CERRADO_STEPS, &[3.0, 4.0, 6.0, 9.0])),
    ESPIRITO_SANTO_K,
    Scheme {
        judges: VEGETABLES,
        ..ESPIRITO_SANTO_K.table(
            "espirito-santo-k-vegetables",
            Property::Potassium,
            Steps(BRAZIL_STEPS, &[80.0, 200.0]),
        )
    },
];
