//! Mehlich-3: P, K, Ca, Mg and S.

use crate::quantity::Unit::{LbPerAcre, MgPerKg};
use crate::ranges::Level::{Excess, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{ALL_PLANTS, NO_PLANTS, Scheme};
use crate::soil::{Method, PlantGroup, Property};
use crate::sources::{DELAWARE_NUTRIENTS, MLSN, RUTGERS_NUTRIENTS};

const MEHLICH_3: &[Method] = &[Method::Mehlich3, Method::Mehlich3Colorimetric];
const LAWN: &[PlantGroup] = &[PlantGroup::Lawn];

const fn delaware(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
    Scheme {
        id,
        property,
        methods: MEHLICH_3,
        unit: MgPerKg,
        steps,
        printed_to: 1.0,
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: const { &[DELAWARE_NUTRIENTS.opened()] },
        note: "Published for field crops in Delaware. We use it for gardens and lawns too.",
    }
}

const fn rutgers(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
    Scheme {
        id,
        property,
        methods: MEHLICH_3,
        unit: LbPerAcre,
        steps,
        printed_to: 1.0,
        judges: NO_PLANTS,
        second: ALL_PLANTS,
        citations: const { &[RUTGERS_NUTRIENTS.opened()] },
        note: "Printed in lb/acre, taken as twice mg/kg. “High” is the best class here.",
    }
}

const fn mlsn(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
    Scheme {
        id,
        property,
        methods: MEHLICH_3,
        unit: MgPerKg,
        steps,
        printed_to: 0.0,
        judges: NO_PLANTS,
        second: LAWN,
        citations: const { &[MLSN.opened()] },
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
];
