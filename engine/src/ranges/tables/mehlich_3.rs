//! Mehlich-3: P, K, Ca, Mg and S. Potassium by ammonium acetate shares some of
//! these tables, as their publications say.

use crate::quantity::Unit::{LbPerAcre, MgPerKg};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{
    ALL_PLANTS, LAWN, NO_CHANCE, NO_PLANTS, Rung, Scheme, Soils, Steps, VEGETABLES, named,
};
use crate::soil::{Method, Property};
use crate::sources::{
    DELAWARE_NUTRIENTS, IOWA_PHOSPHORUS, IOWA_POTASSIUM, MLSN, PENN_STATE_LAWNS, RUTGERS_NUTRIENTS,
    SLAN, TRI_STATE_2020, UC_POTASSIUM,
};

const MEHLICH_3: &[Method] = &[Method::Mehlich3, Method::Mehlich3Colorimetric];
const OR_ACETATE: &[Method] =
    &[Method::Mehlich3, Method::Mehlich3Colorimetric, Method::AmmoniumAcetate];

const fn delaware(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        id: named(id),
        property,
        methods: MEHLICH_3,
        soils: Soils::All,
        unit: MgPerKg,
        steps,
        printed_to: 1.0,
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: const { &[DELAWARE_NUTRIENTS.opened()] },
        meaning: "Classes go by how likely fertiliser is to pay: from optimum up, rarely.",
        note: "Published for field crops in Delaware. We use it for gardens and lawns too.",
    }
}

const fn rutgers(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        id: named(id),
        property,
        methods: MEHLICH_3,
        soils: Soils::All,
        unit: LbPerAcre,
        steps,
        printed_to: 1.0,
        judges: NO_PLANTS,
        second: ALL_PLANTS,
        citations: const { &[RUTGERS_NUTRIENTS.opened()] },
        meaning: "Below “high” the soil is short; above it, it holds more than is good.",
        note: "Printed in lb/acre, taken as twice mg/kg.",
    }
}

const fn mlsn(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        id: named(id),
        property,
        methods: MEHLICH_3,
        soils: Soils::All,
        unit: MgPerKg,
        steps,
        printed_to: 0.0,
        judges: NO_PLANTS,
        second: LAWN,
        citations: const { &[MLSN.opened()] },
        meaning: NO_CHANCE,
        note: "A minimum for good turf, not a target: one good lawn soil in ten holds less.",
    }
}

static FLOOR_STEPS: [Rung; 2] =
    [Rung::below("below the minimum", Low), Rung::to("above the minimum", Sufficient)];

static DELAWARE_P: [f64; 3] = [25.0, 50.0, 100.0];
static DELAWARE_K: [f64; 3] = [70.0, 140.0, 280.0];
static DELAWARE_MG: [f64; 3] = [55.0, 110.0, 220.0];
static DELAWARE_CA: [f64; 3] = [450.0, 900.0, 1800.0];

static FOUR_STEPS_STEPS: [Rung; 4] = [
    Rung::to("low", Low),
    Rung::to("medium", Low),
    Rung::to("optimum", Sufficient),
    Rung::to("excessive", Excess),
];

static RUTGERS_P: [f64; 4] = [24.0, 45.0, 71.0, 137.0];
static RUTGERS_K: [f64; 4] = [40.0, 81.0, 145.0, 277.0];
static RUTGERS_MG: [f64; 4] = [45.0, 83.0, 143.0, 295.0];
static RUTGERS_CA: [f64; 4] = [615.0, 1007.0, 1400.0, 1790.0];

static FIVE_STEPS_STEPS: [Rung; 5] = [
    Rung::to("very low", VeryLow),
    Rung::to("low", Low),
    Rung::to("medium", Low),
    Rung::to("high", Sufficient),
    Rung::to("very high", Excess),
];

/// Low, about even, and no response: the conventional classes of turf.
const fn slan(id: &'static str, property: Property, soils: Soils, steps: Steps) -> Scheme {
    Scheme {
        id: named(id),
        property,
        methods: MEHLICH_3,
        soils,
        unit: MgPerKg,
        steps,
        printed_to: 0.0,
        judges: NO_PLANTS,
        second: LAWN,
        citations: const { &[SLAN.second_hand()] },
        meaning: SLAN_MEANING,
        note: "",
    }
}

/// What the classes of turf mean.
pub(super) const SLAN_MEANING: &str =
    "Low: plants respond in 80–100 % of cases; medium: in about half; high: hardly ever.";

pub(super) static TURF_STEPS: [Rung; 3] =
    [Rung::below("low", VeryLow), Rung::to("medium", Low), Rung::to("high", Sufficient)];

static SLAN_P: [f64; 2] = [27.0, 54.0];
static SLAN_K_SAND: [f64; 2] = [50.0, 116.0];
static SLAN_K: [f64; 2] = [75.0, 176.0];
static SLAN_MG_SAND: [f64; 2] = [60.0, 120.0];
static SLAN_MG: [f64; 2] = [70.0, 140.0];
static SLAN_CA: [f64; 2] = [500.0, 750.0];
static SLAN_S: [f64; 2] = [15.0, 40.0];

static MAINTAINED_STEPS: [Rung; 3] = [
    Rung::below("below critical", Low),
    Rung::to("maintenance range", Sufficient),
    Rung::to("above it", High),
];

static TRI_STATE_P_STEPS: [Rung; 2] =
    [Rung::below("below critical", Low), Rung::to("above critical", Sufficient)];
static TRI_STATE_P: [f64; 1] = [20.0];
static TRI_STATE_K_LIGHT: [f64; 2] = [100.0, 130.0];
static TRI_STATE_K: [f64; 2] = [120.0, 170.0];
static IOWA_K_STEPS: [Rung; 4] = [
    Rung::to("very low", VeryLow),
    Rung::to("low", Low),
    Rung::to("optimum", Sufficient),
    Rung::to("above optimum", High),
];
static IOWA_K: [f64; 3] = [90.0, 130.0, 170.0];
static IOWA_P: [f64; 2] = [14.0, 24.0];
static UC_K_STEPS: [Rung; 2] = [Rung::to("may respond", Low), Rung::to("no response", Sufficient)];
static UC_K: [f64; 1] = [200.0];
static PENN_P_STEPS: [Rung; 2] =
    [Rung::below("gets phosphorus", Low), Rung::to("gets none", Sufficient)];
static PENN_P: [f64; 1] = [45.0];

/// A critical level by two ways of reading the same trials.
pub(super) static BETWEEN_MODELS_STEPS: [Rung; 3] = [
    Rung::below("below critical", Low),
    Rung::to("near critical", Low),
    Rung::to("above critical", Sufficient),
];

const TRI_STATE: Scheme = Scheme {
    id: named("tri-state-p"),
    property: Property::Phosphorus,
    methods: MEHLICH_3,
    soils: Soils::All,
    unit: MgPerKg,
    steps: Steps(&TRI_STATE_P_STEPS, &TRI_STATE_P),
    printed_to: 0.0,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[TRI_STATE_2020.second_hand()],
    meaning: "Below the critical level plants are likely to respond.",
    note: "For maize and soybean; wheat and alfalfa want 30 mg/kg of phosphorus.",
};

static MLSN_P: [f64; 1] = [21.0];
static MLSN_K: [f64; 1] = [37.0];
static MLSN_CA: [f64; 1] = [331.0];
static MLSN_MG: [f64; 1] = [47.0];
static MLSN_S: [f64; 1] = [7.0];

pub(super) static SCHEMES: &[Scheme] = &[
    delaware("delaware-p", Property::Phosphorus, Steps(&FOUR_STEPS_STEPS, &DELAWARE_P)),
    delaware("delaware-k", Property::Potassium, Steps(&FOUR_STEPS_STEPS, &DELAWARE_K)),
    delaware("delaware-mg", Property::Magnesium, Steps(&FOUR_STEPS_STEPS, &DELAWARE_MG)),
    delaware("delaware-ca", Property::Calcium, Steps(&FOUR_STEPS_STEPS, &DELAWARE_CA)),
    rutgers("rutgers-p", Property::Phosphorus, Steps(&FIVE_STEPS_STEPS, &RUTGERS_P)),
    rutgers("rutgers-k", Property::Potassium, Steps(&FIVE_STEPS_STEPS, &RUTGERS_K)),
    rutgers("rutgers-mg", Property::Magnesium, Steps(&FIVE_STEPS_STEPS, &RUTGERS_MG)),
    rutgers("rutgers-ca", Property::Calcium, Steps(&FIVE_STEPS_STEPS, &RUTGERS_CA)),
    mlsn("mlsn-p", Property::Phosphorus, Steps(&FLOOR_STEPS, &MLSN_P)),
    mlsn("mlsn-k", Property::Potassium, Steps(&FLOOR_STEPS, &MLSN_K)),
    mlsn("mlsn-ca", Property::Calcium, Steps(&FLOOR_STEPS, &MLSN_CA)),
    mlsn("mlsn-mg", Property::Magnesium, Steps(&FLOOR_STEPS, &MLSN_MG)),
    Scheme {
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        note: "A minimum for good turf, used here for want of a table for other plants.",
        ..mlsn("mlsn-s", Property::Sulfur, Steps(&FLOOR_STEPS, &MLSN_S))
    },
    slan("slan-p", Property::Phosphorus, Soils::All, Steps(&TURF_STEPS, &SLAN_P)),
    slan("slan-k-sand", Property::Potassium, Soils::Sandy(true), Steps(&TURF_STEPS, &SLAN_K_SAND)),
    slan("slan-k", Property::Potassium, Soils::Sandy(false), Steps(&TURF_STEPS, &SLAN_K)),
    slan(
        "slan-mg-sand",
        Property::Magnesium,
        Soils::Sandy(true),
        Steps(&TURF_STEPS, &SLAN_MG_SAND),
    ),
    slan("slan-mg", Property::Magnesium, Soils::Sandy(false), Steps(&TURF_STEPS, &SLAN_MG)),
    slan("slan-ca", Property::Calcium, Soils::All, Steps(&TURF_STEPS, &SLAN_CA)),
    slan("slan-s", Property::Sulfur, Soils::All, Steps(&TURF_STEPS, &SLAN_S)),
    TRI_STATE,
    Scheme {
        id: named("tri-state-k-light"),
        property: Property::Potassium,
        soils: Soils::Within(Property::Cec, 0.0, 5.0),
        steps: Steps(&MAINTAINED_STEPS, &TRI_STATE_K_LIGHT),
        ..TRI_STATE
    },
    Scheme {
        id: named("tri-state-k"),
        property: Property::Potassium,
        soils: Soils::Within(Property::Cec, 5.0, f64::INFINITY),
        steps: Steps(&MAINTAINED_STEPS, &TRI_STATE_K),
        ..TRI_STATE
    },
    Scheme {
        id: named("iowa-k"),
        property: Property::Potassium,
        methods: OR_ACETATE,
        steps: Steps(&IOWA_K_STEPS, &IOWA_K),
        printed_to: 1.0,
        citations: &[IOWA_POTASSIUM.opened()],
        meaning: "Optimum: a 6–25 % chance of a small response.",
        note: "For maize and soybean. Later editions ask for more.",
        ..TRI_STATE
    },
    Scheme {
        id: named("iowa-p-mehlich-3"),
        methods: &[Method::Mehlich3Colorimetric],
        steps: Steps(&BETWEEN_MODELS_STEPS, &IOWA_P),
        citations: &[IOWA_PHOSPHORUS.opened()],
        meaning: "Above the critical level maize does not respond.",
        note: "We take it as read by colour; the source does not say.",
        ..TRI_STATE
    },
    Scheme {
        id: named("uc-k"),
        property: Property::Potassium,
        methods: OR_ACETATE,
        steps: Steps(&UC_K_STEPS, &UC_K),
        second: VEGETABLES,
        citations: &[UC_POTASSIUM.opened()],
        meaning: "Above the line vegetables do not respond.",
        note: "",
        ..TRI_STATE
    },
    Scheme {
        id: named("penn-state-p"),
        steps: Steps(&PENN_P_STEPS, &PENN_P),
        second: LAWN,
        citations: &[PENN_STATE_LAWNS.second_hand()],
        meaning: NO_CHANCE,
        note: "For home lawns.",
        ..TRI_STATE
    },
];
