//! Morgan (Ireland by volume, Cornell by weight) and Modified Morgan.

use crate::quantity::Unit::{LbPerAcre, MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{ALL_PLANTS, BLANK, NO_PLANTS, Scheme, Steps, named, rungs};
use crate::soil::{Method, PlantGroup, Property};
use crate::sources::{
    CORNELL_MORGAN, IRELAND_MORGAN, NEW_YORK_PHOSPHORUS, UCONN_CROPS, UMASS_REPORT, VERMONT_MORGAN,
};

rungs! {
    INDEX_STEPS: to "index 1" VeryLow, to "index 2" Low, to "index 3" Sufficient,
        to "index 4" High;
    OPTIMUM_STEPS: below "below optimum" Low, to "optimum" Sufficient, to "above optimum" High;
    UMASS_S_STEPS: to "below optimum" Low, to "optimum" Sufficient;
    VERMONT_MG_STEPS: to "low" Low, to "medium" Low, to "optimum" Sufficient, to "high" High;
    VERMONT_STEPS: to "low" Low, to "medium" Low, to "optimum" Sufficient, to "high" High,
        to "excessive" Excess;
    CORNELL_P_STEPS: below "very low" VeryLow, to "low" Low, to "medium" Low, to "high" Sufficient,
        to "very high" Excess;
    NEW_YORK_P_STEPS: below "below critical" Low, to "high or very high" Sufficient;
    UP_TO_STEPS: to "below optimum" Low, to "optimum" Sufficient, to "above optimum" High;
}

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
    unit: LbPerAcre,
    steps: Steps(CORNELL_P_STEPS, &[1.0, 3.0, 8.0, 39.0]),
    printed_to: 1.0,
    second: ALL_PLANTS,
    citations: &[CORNELL_MORGAN.from_memory()],
    meaning: "Low and medium: plants are likely to respond; high: not likely.",
    note: "Written from memory. Printed in lb/acre, taken as twice mg/kg.",
    ..BLANK
};

const IRELAND: Scheme = Scheme {
    property: Property::Phosphorus,
    methods: &[Method::Morgan],
    unit: MgPerL,
    printed_to: 1.0,
    judges: ALL_PLANTS,
    citations: &[IRELAND_MORGAN.opened()],
    note: "The target is index 3. It was set for Irish farm soils.",
    ..BLANK
};

const fn umass(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        methods: &[Method::ModifiedMorgan],
        unit: MgPerKg,
        judges: ALL_PLANTS,
        citations: const { &[UMASS_REPORT.opened()] },
        note: "The optimum range that this laboratory prints on its reports.",
        ..BLANK.table(id, property, steps)
    }
}

const fn vermont(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        methods: &[Method::ModifiedMorgan],
        unit: MgPerKg,
        printed_to: 1.0,
        second: ALL_PLANTS,
        citations: const { &[VERMONT_MORGAN.from_memory()] },
        note: "Written from memory.",
        ..BLANK.table(id, property, steps)
    }
}

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme {
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
        ..IRELAND.table(
            "ireland-p-tillage",
            Property::Phosphorus,
            Steps(INDEX_STEPS, &[3.0, 6.0, 10.0]),
        )
    },
    Scheme {
        printed_to: 0.1,
        judges: &[PlantGroup::Lawn],
        ..IRELAND.table(
            "ireland-p-grass",
            Property::Phosphorus,
            Steps(INDEX_STEPS, &[3.0, 5.0, 8.0]),
        )
    },
    IRELAND.table("ireland-k", Property::Potassium, Steps(INDEX_STEPS, &[50.0, 100.0, 150.0])),
    IRELAND.table("ireland-mg", Property::Magnesium, Steps(INDEX_STEPS, &[25.0, 50.0, 100.0])),
    umass("umass-p", Property::Phosphorus, Steps(OPTIMUM_STEPS, &[4.0, 14.0])),
    umass("umass-k", Property::Potassium, Steps(OPTIMUM_STEPS, &[100.0, 160.0])),
    umass("umass-ca", Property::Calcium, Steps(OPTIMUM_STEPS, &[1000.0, 1500.0])),
    umass("umass-mg", Property::Magnesium, Steps(OPTIMUM_STEPS, &[50.0, 120.0])),
    umass("umass-s", Property::Sulfur, Steps(UMASS_S_STEPS, &[10.0])),
    Scheme {
        printed_to: 0.1,
        ..vermont("vermont-p", Property::Phosphorus, Steps(VERMONT_STEPS, &[2.0, 4.0, 7.0, 20.0]))
    },
    vermont("vermont-k", Property::Potassium, Steps(VERMONT_STEPS, &[50.0, 100.0, 130.0, 160.0])),
    vermont("vermont-mg", Property::Magnesium, Steps(VERMONT_MG_STEPS, &[35.0, 50.0, 100.0])),
    uconn("uconn-p", Property::Phosphorus, Steps(UP_TO_STEPS, &[13.0, 20.0])),
    uconn("uconn-k", Property::Potassium, Steps(UP_TO_STEPS, &[249.0, 349.0])),
    uconn("uconn-ca", Property::Calcium, Steps(UP_TO_STEPS, &[1799.0, 2399.0])),
    uconn("uconn-mg", Property::Magnesium, Steps(UP_TO_STEPS, &[174.0, 249.0])),
    Scheme {
        id: named("new-york-morgan-p"),
        steps: Steps(NEW_YORK_P_STEPS, &[9.0]),
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: &[NEW_YORK_PHOSPHORUS.opened()],
        note: "For field crops.",
        ..CORNELL
    },
    CORNELL,
];
