//! Morgan (Ireland by volume, Cornell by weight) and Modified Morgan.

use crate::quantity::Unit::{LbPerAcre, MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{ALL_PLANTS, NO_CHANCE, NO_PLANTS, Scheme, Soils, named};
use crate::soil::{Method, PlantGroup, Property};
use crate::sources::{
    CORNELL_MORGAN, IRELAND_MORGAN, NEW_YORK_PHOSPHORUS, UCONN_CROPS, UMASS_REPORT, VERMONT_MORGAN,
};

const fn index(one: f64, two: f64, three: f64) -> [Step; 4] {
    [
        Step::to("index 1", VeryLow, one),
        Step::to("index 2", Low, two),
        Step::to("index 3", Sufficient, three),
        Step::rest("index 4", High),
    ]
}

static IRISH_P_TILLAGE: [Step; 4] = index(3.0, 6.0, 10.0);
static IRISH_P_GRASS: [Step; 4] = index(3.0, 5.0, 8.0);
static IRISH_K: [Step; 4] = index(50.0, 100.0, 150.0);
static IRISH_MG: [Step; 4] = index(25.0, 50.0, 100.0);

const fn optimum(from: f64, to: f64) -> [Step; 3] {
    [
        Step::below("below optimum", Low, from),
        Step::to("optimum", Sufficient, to),
        Step::rest("above optimum", High),
    ]
}

static UMASS_P: [Step; 3] = optimum(4.0, 14.0);
static UMASS_K: [Step; 3] = optimum(100.0, 160.0);
static UMASS_CA: [Step; 3] = optimum(1000.0, 1500.0);
static UMASS_MG: [Step; 3] = optimum(50.0, 120.0);
static UMASS_S: [Step; 2] =
    [Step::to("below optimum", Low, 10.0), Step::rest("optimum", Sufficient)];

static VERMONT_P: [Step; 5] = vermont_steps(2.0, 4.0, 7.0, 20.0);
static VERMONT_K: [Step; 5] = vermont_steps(50.0, 100.0, 130.0, 160.0);
static VERMONT_MG: [Step; 4] = [
    Step::to("low", Low, 35.0),
    Step::to("medium", Low, 50.0),
    Step::to("optimum", Sufficient, 100.0),
    Step::rest("high", High),
];

const fn vermont_steps(low: f64, medium: f64, optimum: f64, high: f64) -> [Step; 5] {
    [
        Step::to("low", Low, low),
        Step::to("medium", Low, medium),
        Step::to("optimum", Sufficient, optimum),
        Step::to("high", High, high),
        Step::rest("excessive", Excess),
    ]
}

static CORNELL_P: [Step; 5] = [
    Step::below("very low", VeryLow, 1.0),
    Step::to("low", Low, 3.0),
    Step::to("medium", Low, 8.0),
    Step::to("high", Sufficient, 39.0),
    Step::rest("very high", Excess),
];

static NEW_YORK_P: [Step; 2] =
    [Step::below("below critical", Low, 9.0), Step::rest("high or very high", Sufficient)];

static UCONN_P: [Step; 3] = up_to(13.0, 20.0);
static UCONN_K: [Step; 3] = up_to(249.0, 349.0);
static UCONN_CA: [Step; 3] = up_to(1799.0, 2399.0);
static UCONN_MG: [Step; 3] = up_to(174.0, 249.0);

const fn up_to(below: f64, optimum: f64) -> [Step; 3] {
    [
        Step::to("below optimum", Low, below),
        Step::to("optimum", Sufficient, optimum),
        Step::rest("above optimum", High),
    ]
}

const fn uconn(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
    Scheme {
        unit: LbPerAcre,
        citations: const { &[UCONN_CROPS.second_hand()] },
        note: "Printed in lb/acre for field crops. The page names no extractant; the laboratory is said to use Modified Morgan.",
        ..vermont(id, property, steps)
    }
}

const CORNELL: Scheme = Scheme {
    id: named("cornell-morgan-p"),
    property: Property::Phosphorus,
    methods: &[Method::Morgan],
    soils: Soils::All,
    unit: LbPerAcre,
    steps: &CORNELL_P,
    printed_to: 1.0,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[CORNELL_MORGAN.from_memory()],
    meaning: "Crops are likely to respond on low and medium, not on high and very high.",
    note: "Written from memory. Printed in lb/acre, taken as twice mg/kg.",
};

const IRELAND: Scheme = Scheme {
    id: named(""),
    property: Property::Phosphorus,
    methods: &[Method::Morgan],
    soils: Soils::All,
    unit: MgPerL,
    steps: &[],
    printed_to: 1.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[IRELAND_MORGAN.opened()],
    meaning: NO_CHANCE,
    note: "The target is index 3. It was set for Irish farm soils.",
};

const fn umass(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
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

const fn vermont(id: &'static str, property: Property, steps: &'static [Step]) -> Scheme {
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
        steps: &IRISH_P_TILLAGE,
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
        steps: &IRISH_P_GRASS,
        printed_to: 0.1,
        judges: &[PlantGroup::Lawn],
        ..IRELAND
    },
    Scheme { id: named("ireland-k"), property: Property::Potassium, steps: &IRISH_K, ..IRELAND },
    Scheme { id: named("ireland-mg"), property: Property::Magnesium, steps: &IRISH_MG, ..IRELAND },
    umass("umass-p", Property::Phosphorus, &UMASS_P),
    umass("umass-k", Property::Potassium, &UMASS_K),
    umass("umass-ca", Property::Calcium, &UMASS_CA),
    umass("umass-mg", Property::Magnesium, &UMASS_MG),
    umass("umass-s", Property::Sulfur, &UMASS_S),
    Scheme { printed_to: 0.1, ..vermont("vermont-p", Property::Phosphorus, &VERMONT_P) },
    vermont("vermont-k", Property::Potassium, &VERMONT_K),
    vermont("vermont-mg", Property::Magnesium, &VERMONT_MG),
    uconn("uconn-p", Property::Phosphorus, &UCONN_P),
    uconn("uconn-k", Property::Potassium, &UCONN_K),
    uconn("uconn-ca", Property::Calcium, &UCONN_CA),
    uconn("uconn-mg", Property::Magnesium, &UCONN_MG),
    Scheme {
        id: named("new-york-morgan-p"),
        steps: &NEW_YORK_P,
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: &[NEW_YORK_PHOSPHORUS.opened()],
        note: "For field crops. Printed as 9 lb/acre or 4.5 mg/kg.",
        ..CORNELL
    },
    CORNELL,
];
