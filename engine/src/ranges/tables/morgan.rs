//! Morgan (Ireland by volume, Cornell by weight) and Modified Morgan.

use crate::quantity::Unit::{LbPerAcre, MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{ALL_PLANTS, NO_CHANCE, NO_PLANTS, Rung, Scheme, Soils, Steps, named};
use crate::soil::{Method, PlantGroup, Property};
use crate::sources::{
    CORNELL_MORGAN, IRELAND_MORGAN, NEW_YORK_PHOSPHORUS, UCONN_CROPS, UMASS_REPORT, VERMONT_MORGAN,
};

static INDEX_STEPS: [Rung; 4] = [
    Rung::to("index 1", VeryLow),
    Rung::to("index 2", Low),
    Rung::to("index 3", Sufficient),
    Rung::to("index 4", High),
];

static IRISH_P_TILLAGE: [f64; 3] = [3.0, 6.0, 10.0];
static IRISH_P_GRASS: [f64; 3] = [3.0, 5.0, 8.0];
static IRISH_K: [f64; 3] = [50.0, 100.0, 150.0];
static IRISH_MG: [f64; 3] = [25.0, 50.0, 100.0];

static OPTIMUM_STEPS: [Rung; 3] = [
    Rung::below("below optimum", Low),
    Rung::to("optimum", Sufficient),
    Rung::to("above optimum", High),
];

static UMASS_P: [f64; 2] = [4.0, 14.0];
static UMASS_K: [f64; 2] = [100.0, 160.0];
static UMASS_CA: [f64; 2] = [1000.0, 1500.0];
static UMASS_MG: [f64; 2] = [50.0, 120.0];
static UMASS_S_STEPS: [Rung; 2] = [Rung::to("below optimum", Low), Rung::to("optimum", Sufficient)];
static UMASS_S: [f64; 1] = [10.0];

static VERMONT_P: [f64; 4] = [2.0, 4.0, 7.0, 20.0];
static VERMONT_K: [f64; 4] = [50.0, 100.0, 130.0, 160.0];
static VERMONT_MG_STEPS: [Rung; 4] = [
    Rung::to("low", Low),
    Rung::to("medium", Low),
    Rung::to("optimum", Sufficient),
    Rung::to("high", High),
];
static VERMONT_MG: [f64; 3] = [35.0, 50.0, 100.0];

static VERMONT_STEPS_STEPS: [Rung; 5] = [
    Rung::to("low", Low),
    Rung::to("medium", Low),
    Rung::to("optimum", Sufficient),
    Rung::to("high", High),
    Rung::to("excessive", Excess),
];

static CORNELL_P_STEPS: [Rung; 5] = [
    Rung::below("very low", VeryLow),
    Rung::to("low", Low),
    Rung::to("medium", Low),
    Rung::to("high", Sufficient),
    Rung::to("very high", Excess),
];
static CORNELL_P: [f64; 4] = [1.0, 3.0, 8.0, 39.0];

static NEW_YORK_P_STEPS: [Rung; 2] =
    [Rung::below("below critical", Low), Rung::to("high or very high", Sufficient)];
static NEW_YORK_P: [f64; 1] = [9.0];

static UCONN_P: [f64; 2] = [13.0, 20.0];
static UCONN_K: [f64; 2] = [249.0, 349.0];
static UCONN_CA: [f64; 2] = [1799.0, 2399.0];
static UCONN_MG: [f64; 2] = [174.0, 249.0];

static UP_TO_STEPS: [Rung; 3] = [
    Rung::to("below optimum", Low),
    Rung::to("optimum", Sufficient),
    Rung::to("above optimum", High),
];

const fn uconn(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        unit: LbPerAcre,
        citations: const { &[UCONN_CROPS.second_hand()] },
        note: "For field crops. The page names no extractant; the laboratory is said to use this one.",
        ..vermont(id, property, steps)
    }
}

const CORNELL: Scheme = Scheme {
    id: named("cornell-morgan-p"),
    property: Property::Phosphorus,
    methods: &[Method::Morgan],
    soils: Soils::All,
    unit: LbPerAcre,
    steps: Steps(&CORNELL_P_STEPS, &CORNELL_P),
    printed_to: 1.0,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[CORNELL_MORGAN.from_memory()],
    meaning: "Low and medium: plants are likely to respond; high: not likely.",
    note: "Written from memory. Printed in lb/acre, taken as twice mg/kg.",
};

const IRELAND: Scheme = Scheme {
    id: named(""),
    property: Property::Phosphorus,
    methods: &[Method::Morgan],
    soils: Soils::All,
    unit: MgPerL,
    steps: Steps(&[], &[]),
    printed_to: 1.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[IRELAND_MORGAN.opened()],
    meaning: NO_CHANCE,
    note: "The target is index 3. It was set for Irish farm soils.",
};

const fn umass(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        id: named(id),
        property,
        methods: &[Method::ModifiedMorgan],
        soils: Soils::All,
        unit: MgPerKg,
        steps,
        printed_to: 0.0,
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: const { &[UMASS_REPORT.opened()] },
        meaning: NO_CHANCE,
        note: "The optimum range that this laboratory prints on its reports.",
    }
}

const fn vermont(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        id: named(id),
        property,
        methods: &[Method::ModifiedMorgan],
        soils: Soils::All,
        unit: MgPerKg,
        steps,
        printed_to: 1.0,
        judges: NO_PLANTS,
        second: ALL_PLANTS,
        citations: const { &[VERMONT_MORGAN.from_memory()] },
        meaning: NO_CHANCE,
        note: "Written from memory.",
    }
}

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme {
        id: named("ireland-p-tillage"),
        steps: Steps(&INDEX_STEPS, &IRISH_P_TILLAGE),
        printed_to: 0.1,
        judges: &[
            PlantGroup::MixedVegetables,
            PlantGroup::LeafyVegetables,
            PlantGroup::FruitingVegetables,
            PlantGroup::RootCrops,
            PlantGroup::OrnamentalsAndTrees,
            PlantGroup::Berries,
            PlantGroup::AcidLovers,
        ],
        ..IRELAND
    },
    Scheme {
        id: named("ireland-p-grass"),
        steps: Steps(&INDEX_STEPS, &IRISH_P_GRASS),
        printed_to: 0.1,
        judges: &[PlantGroup::Lawn],
        ..IRELAND
    },
    Scheme {
        id: named("ireland-k"),
        property: Property::Potassium,
        steps: Steps(&INDEX_STEPS, &IRISH_K),
        ..IRELAND
    },
    Scheme {
        id: named("ireland-mg"),
        property: Property::Magnesium,
        steps: Steps(&INDEX_STEPS, &IRISH_MG),
        ..IRELAND
    },
    umass("umass-p", Property::Phosphorus, Steps(&OPTIMUM_STEPS, &UMASS_P)),
    umass("umass-k", Property::Potassium, Steps(&OPTIMUM_STEPS, &UMASS_K)),
    umass("umass-ca", Property::Calcium, Steps(&OPTIMUM_STEPS, &UMASS_CA)),
    umass("umass-mg", Property::Magnesium, Steps(&OPTIMUM_STEPS, &UMASS_MG)),
    umass("umass-s", Property::Sulfur, Steps(&UMASS_S_STEPS, &UMASS_S)),
    Scheme {
        printed_to: 0.1,
        ..vermont("vermont-p", Property::Phosphorus, Steps(&VERMONT_STEPS_STEPS, &VERMONT_P))
    },
    vermont("vermont-k", Property::Potassium, Steps(&VERMONT_STEPS_STEPS, &VERMONT_K)),
    vermont("vermont-mg", Property::Magnesium, Steps(&VERMONT_MG_STEPS, &VERMONT_MG)),
    uconn("uconn-p", Property::Phosphorus, Steps(&UP_TO_STEPS, &UCONN_P)),
    uconn("uconn-k", Property::Potassium, Steps(&UP_TO_STEPS, &UCONN_K)),
    uconn("uconn-ca", Property::Calcium, Steps(&UP_TO_STEPS, &UCONN_CA)),
    uconn("uconn-mg", Property::Magnesium, Steps(&UP_TO_STEPS, &UCONN_MG)),
    Scheme {
        id: named("new-york-morgan-p"),
        steps: Steps(&NEW_YORK_P_STEPS, &NEW_YORK_P),
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: &[NEW_YORK_PHOSPHORUS.opened()],
        note: "For field crops.",
        ..CORNELL
    },
    CORNELL,
];
