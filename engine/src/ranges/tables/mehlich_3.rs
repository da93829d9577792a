//! Mehlich-3: P, K, Ca, Mg and S. Potassium by ammonium acetate shares some of
//! these tables, as their publications say.

use crate::quantity::Unit::{LbPerAcre, MgPerKg};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{
    ALL_PLANTS, LAWN, NO_CHANCE, NO_PLANTS, Scheme, Soils, VEGETABLES, named,
};
use crate::soil::{Method, Property};
use crate::sources::{
    DELAWARE_NUTRIENTS, IOWA_PHOSPHORUS, IOWA_POTASSIUM, MLSN, PENN_STATE_LAWNS, RUTGERS_NUTRIENTS,
    SLAN, TRI_STATE_2020, UC_POTASSIUM,
};

const MEHLICH_3: &[Method] = &[Method::Mehlich3, Method::Mehlich3Colorimetric];
const OR_ACETATE: &[Method] =
    &[Method::Mehlich3, Method::Mehlich3Colorimetric, Method::AmmoniumAcetate];

const fn delaware(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
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

const fn rutgers(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
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

const fn mlsn(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
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

const fn floor(minimum: f64) -> [Step; 2] {
    [Step::below("below the minimum", Low, minimum), Step::rest("above the minimum", Sufficient)]
}

static DELAWARE_P: [Step; 4] = four_steps(25.0, 50.0, 100.0);
static DELAWARE_K: [Step; 4] = four_steps(70.0, 140.0, 280.0);
static DELAWARE_MG: [Step; 4] = four_steps(55.0, 110.0, 220.0);
static DELAWARE_CA: [Step; 4] = four_steps(450.0, 900.0, 1800.0);

const fn four_steps(low: f64, medium: f64, optimum: f64) -> [Step; 4] {
    [
        Step::to("low", Low, low),
        Step::to("medium", Low, medium),
        Step::to("optimum", Sufficient, optimum),
        Step::rest("excessive", Excess),
    ]
}

static RUTGERS_P: [Step; 5] = five_steps(24.0, 45.0, 71.0, 137.0);
static RUTGERS_K: [Step; 5] = five_steps(40.0, 81.0, 145.0, 277.0);
static RUTGERS_MG: [Step; 5] = five_steps(45.0, 83.0, 143.0, 295.0);
static RUTGERS_CA: [Step; 5] = five_steps(615.0, 1007.0, 1400.0, 1790.0);

const fn five_steps(very_low: f64, low: f64, medium: f64, high: f64) -> [Step; 5] {
    [
        Step::to("very low", VeryLow, very_low),
        Step::to("low", Low, low),
        Step::to("medium", Low, medium),
        Step::to("high", Sufficient, high),
        Step::rest("very high", Excess),
    ]
}

/// Low, about even, and no response: the conventional classes of turf.
const fn slan(
    id: &'static str,
    property: Property,
    soils: Soils,
    steps: &'static [Step],
) -> Scheme {
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
    "Low: grass responds in 80–100 % of cases; medium: in about half; high: hardly ever.";

pub(super) const fn turf(low: f64, medium: f64) -> [Step; 3] {
    [
        Step::below("low", VeryLow, low),
        Step::to("medium", Low, medium),
        Step::rest("high", Sufficient),
    ]
}

static SLAN_P: [Step; 3] = turf(27.0, 54.0);
static SLAN_K_SAND: [Step; 3] = turf(50.0, 116.0);
static SLAN_K: [Step; 3] = turf(75.0, 176.0);
static SLAN_MG_SAND: [Step; 3] = turf(60.0, 120.0);
static SLAN_MG: [Step; 3] = turf(70.0, 140.0);
static SLAN_CA: [Step; 3] = turf(500.0, 750.0);
static SLAN_S: [Step; 3] = turf(15.0, 40.0);

const fn maintained(from: f64, to: f64) -> [Step; 3] {
    [
        Step::below("below critical", Low, from),
        Step::to("maintenance range", Sufficient, to),
        Step::rest("above it", High),
    ]
}

static TRI_STATE_P: [Step; 2] =
    [Step::below("below critical", Low, 20.0), Step::rest("above critical", Sufficient)];
static TRI_STATE_K_LIGHT: [Step; 3] = maintained(100.0, 130.0);
static TRI_STATE_K: [Step; 3] = maintained(120.0, 170.0);
static IOWA_K: [Step; 4] = [
    Step::to("very low", VeryLow, 90.0),
    Step::to("low", Low, 130.0),
    Step::to("optimum", Sufficient, 170.0),
    Step::rest("above optimum", High),
];
static IOWA_P: [Step; 3] = between_models(14.0, 24.0);
static UC_K: [Step; 2] =
    [Step::to("may respond", Low, 200.0), Step::rest("no response", Sufficient)];
static PENN_P: [Step; 2] =
    [Step::below("gets phosphorus", Low, 45.0), Step::rest("gets none", Sufficient)];

/// A critical level by two ways of reading the same trials.
pub(super) const fn between_models(one: f64, other: f64) -> [Step; 3] {
    [
        Step::below("below critical", Low, one),
        Step::to("critical by one reading of the trials", Low, other),
        Step::rest("above critical", Sufficient),
    ]
}

const TRI_STATE: Scheme = Scheme {
    id: named("tri-state-p"),
    property: Property::Phosphorus,
    methods: MEHLICH_3,
    soils: Soils::All,
    unit: MgPerKg,
    steps: &TRI_STATE_P,
    printed_to: 0.0,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[TRI_STATE_2020.second_hand()],
    meaning: "Below the critical level crops are likely to respond; above the range nothing is added.",
    note: "For maize and soybean; wheat and alfalfa want 30 mg/kg of phosphorus.",
};

static MLSN_P: [Step; 2] = floor(21.0);
static MLSN_K: [Step; 2] = floor(37.0);
static MLSN_CA: [Step; 2] = floor(331.0);
static MLSN_MG: [Step; 2] = floor(47.0);
static MLSN_S: [Step; 2] = floor(7.0);

pub(super) static SCHEMES: &[Scheme] = &[
    delaware("delaware-p", Property::Phosphorus, &DELAWARE_P),
    delaware("delaware-k", Property::Potassium, &DELAWARE_K),
    delaware("delaware-mg", Property::Magnesium, &DELAWARE_MG),
    delaware("delaware-ca", Property::Calcium, &DELAWARE_CA),
    rutgers("rutgers-p", Property::Phosphorus, &RUTGERS_P),
    rutgers("rutgers-k", Property::Potassium, &RUTGERS_K),
    rutgers("rutgers-mg", Property::Magnesium, &RUTGERS_MG),
    rutgers("rutgers-ca", Property::Calcium, &RUTGERS_CA),
    mlsn("mlsn-p", Property::Phosphorus, &MLSN_P),
    mlsn("mlsn-k", Property::Potassium, &MLSN_K),
    mlsn("mlsn-ca", Property::Calcium, &MLSN_CA),
    mlsn("mlsn-mg", Property::Magnesium, &MLSN_MG),
    Scheme {
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        note: "A minimum for good turf, used here for want of a table for other plants.",
        ..mlsn("mlsn-s", Property::Sulfur, &MLSN_S)
    },
    slan("slan-p", Property::Phosphorus, Soils::All, &SLAN_P),
    slan("slan-k-sand", Property::Potassium, Soils::Sandy(true), &SLAN_K_SAND),
    slan("slan-k", Property::Potassium, Soils::Sandy(false), &SLAN_K),
    slan("slan-mg-sand", Property::Magnesium, Soils::Sandy(true), &SLAN_MG_SAND),
    slan("slan-mg", Property::Magnesium, Soils::Sandy(false), &SLAN_MG),
    slan("slan-ca", Property::Calcium, Soils::All, &SLAN_CA),
    slan("slan-s", Property::Sulfur, Soils::All, &SLAN_S),
    TRI_STATE,
    Scheme {
        id: named("tri-state-k-light"),
        property: Property::Potassium,
        soils: Soils::Within(Property::Cec, 0.0, 5.0),
        steps: &TRI_STATE_K_LIGHT,
        ..TRI_STATE
    },
    Scheme {
        id: named("tri-state-k"),
        property: Property::Potassium,
        soils: Soils::Within(Property::Cec, 5.0, f64::INFINITY),
        steps: &TRI_STATE_K,
        ..TRI_STATE
    },
    Scheme {
        id: named("iowa-k"),
        property: Property::Potassium,
        methods: OR_ACETATE,
        steps: &IOWA_K,
        printed_to: 1.0,
        citations: &[IOWA_POTASSIUM.opened()],
        meaning: "Optimum: a 6–25 % chance of a small response.",
        note: "For maize and soybean, 2003. Later editions ask for more.",
        ..TRI_STATE
    },
    Scheme {
        id: named("iowa-p-mehlich-3"),
        methods: &[Method::Mehlich3Colorimetric],
        steps: &IOWA_P,
        citations: &[IOWA_PHOSPHORUS.opened()],
        meaning: "Above the critical level maize did not respond.",
        note: "We take the trials to have read phosphorus by colour; the summary does not say.",
        ..TRI_STATE
    },
    Scheme {
        id: named("uc-k"),
        property: Property::Potassium,
        methods: OR_ACETATE,
        steps: &UC_K,
        second: VEGETABLES,
        citations: &[UC_POTASSIUM.opened()],
        meaning: "Above the line vegetables in general do not respond.",
        note: "",
        ..TRI_STATE
    },
    Scheme {
        id: named("penn-state-p"),
        steps: &PENN_P,
        second: LAWN,
        citations: &[PENN_STATE_LAWNS.second_hand()],
        meaning: NO_CHANCE,
        note: "From this line up the laboratory recommends no phosphorus for home lawns.",
        ..TRI_STATE
    },
];
