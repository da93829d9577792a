//! Mehlich-3: P, K, Ca, Mg and S. Potassium by ammonium acetate shares some of
//! these tables, as their publications say.

use crate::quantity::Unit::{LbPerAcre, MgPerKg};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{
    ALL_PLANTS, BLANK, LAWN, NO_CHANCE, NO_PLANTS, Scheme, Soils, Steps, VEGETABLES, named, rungs,
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
        methods: MEHLICH_3,
        unit: MgPerKg,
        printed_to: 1.0,
        judges: ALL_PLANTS,
        citations: const { &[DELAWARE_NUTRIENTS.opened()] },
        meaning: "Classes go by how likely fertiliser is to pay: from optimum up, rarely.",
        note: "Published for field crops in Delaware. We use it for gardens and lawns too.",
        ..BLANK.table(id, property, steps)
    }
}

const fn rutgers(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        methods: MEHLICH_3,
        unit: LbPerAcre,
        printed_to: 1.0,
        second: ALL_PLANTS,
        citations: const { &[RUTGERS_NUTRIENTS.opened()] },
        meaning: "Below “high” the soil is short; above it, it holds more than is good.",
        note: "Printed in lb/acre, taken as twice mg/kg.",
        ..BLANK.table(id, property, steps)
    }
}

const fn mlsn(id: &'static str, property: Property, steps: Steps) -> Scheme {
    Scheme {
        methods: MEHLICH_3,
        unit: MgPerKg,
        second: LAWN,
        citations: const { &[MLSN.opened()] },
        note: "A minimum for good turf, not a target: one good lawn soil in ten holds less.",
        ..BLANK.table(id, property, steps)
    }
}

rungs! {
    FLOOR_STEPS: below "below the minimum" Low, to "above the minimum" Sufficient;
    FOUR_STEPS: to "low" Low, to "medium" Low, to "optimum" Sufficient, to "excessive" Excess;
    FIVE_STEPS: to "very low" VeryLow, to "low" Low, to "medium" Low, to "high" Sufficient,
        to "very high" Excess;
    pub(super) TURF_STEPS: below "low" VeryLow, to "medium" Low, to "high" Sufficient;
    MAINTAINED_STEPS: below "below critical" Low, to "maintenance range" Sufficient,
        to "above it" High;
    TRI_STATE_P_STEPS: below "below critical" Low, to "above critical" Sufficient;
    IOWA_K_STEPS: to "very low" VeryLow, to "low" Low, to "optimum" Sufficient,
        to "above optimum" High;
    UC_K_STEPS: to "may respond" Low, to "no response" Sufficient;
    PENN_P_STEPS: below "gets phosphorus" Low, to "gets none" Sufficient;
    /// A critical level by two ways of reading the same trials.
    pub(super) BETWEEN_MODELS_STEPS: below "below critical" Low, to "near critical" Low,
        to "above critical" Sufficient;
}

/// Low, about even, and no response: the conventional classes of turf.
const fn slan(id: &'static str, property: Property, soils: Soils, steps: Steps) -> Scheme {
    Scheme {
        methods: MEHLICH_3,
        soils,
        unit: MgPerKg,
        second: LAWN,
        citations: const { &[SLAN.second_hand()] },
        meaning: SLAN_MEANING,
        ..BLANK.table(id, property, steps)
    }
}

/// What the classes of turf mean.
pub(super) const SLAN_MEANING: &str =
    "Low: plants respond in 80–100 % of cases; medium: in about half; high: hardly ever.";

const TRI_STATE: Scheme = Scheme {
    id: named("tri-state-p"),
    property: Property::Phosphorus,
    methods: MEHLICH_3,
    unit: MgPerKg,
    steps: Steps(TRI_STATE_P_STEPS, &[20.0]),
    second: ALL_PLANTS,
    citations: &[TRI_STATE_2020.second_hand()],
    meaning: "Below the critical level plants are likely to respond.",
    note: "For maize and soybean; wheat and alfalfa want 30 mg/kg of phosphorus.",
    ..BLANK
};

pub(super) static SCHEMES: &[Scheme] = &[
    delaware("delaware-p", Property::Phosphorus, Steps(FOUR_STEPS, &[25.0, 50.0, 100.0])),
    delaware("delaware-k", Property::Potassium, Steps(FOUR_STEPS, &[70.0, 140.0, 280.0])),
    delaware("delaware-mg", Property::Magnesium, Steps(FOUR_STEPS, &[55.0, 110.0, 220.0])),
    delaware("delaware-ca", Property::Calcium, Steps(FOUR_STEPS, &[450.0, 900.0, 1800.0])),
    rutgers("rutgers-p", Property::Phosphorus, Steps(FIVE_STEPS, &[24.0, 45.0, 71.0, 137.0])),
    rutgers("rutgers-k", Property::Potassium, Steps(FIVE_STEPS, &[40.0, 81.0, 145.0, 277.0])),
    rutgers("rutgers-mg", Property::Magnesium, Steps(FIVE_STEPS, &[45.0, 83.0, 143.0, 295.0])),
    rutgers("rutgers-ca", Property::Calcium, Steps(FIVE_STEPS, &[615.0, 1007.0, 1400.0, 1790.0])),
    mlsn("mlsn-p", Property::Phosphorus, Steps(FLOOR_STEPS, &[21.0])),
    mlsn("mlsn-k", Property::Potassium, Steps(FLOOR_STEPS, &[37.0])),
    mlsn("mlsn-ca", Property::Calcium, Steps(FLOOR_STEPS, &[331.0])),
    mlsn("mlsn-mg", Property::Magnesium, Steps(FLOOR_STEPS, &[47.0])),
    Scheme {
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        note: "A minimum for good turf, used here for want of a table for other plants.",
        ..mlsn("mlsn-s", Property::Sulfur, Steps(FLOOR_STEPS, &[7.0]))
    },
    slan("slan-p", Property::Phosphorus, Soils::All, Steps(TURF_STEPS, &[27.0, 54.0])),
    slan("slan-k-sand", Property::Potassium, Soils::Sandy(true), Steps(TURF_STEPS, &[50.0, 116.0])),
    slan("slan-k", Property::Potassium, Soils::Sandy(false), Steps(TURF_STEPS, &[75.0, 176.0])),
    slan(
        "slan-mg-sand",
        Property::Magnesium,
        Soils::Sandy(true),
        Steps(TURF_STEPS, &[60.0, 120.0]),
    ),
    slan("slan-mg", Property::Magnesium, Soils::Sandy(false), Steps(TURF_STEPS, &[70.0, 140.0])),
    slan("slan-ca", Property::Calcium, Soils::All, Steps(TURF_STEPS, &[500.0, 750.0])),
    slan("slan-s", Property::Sulfur, Soils::All, Steps(TURF_STEPS, &[15.0, 40.0])),
    TRI_STATE,
    Scheme {
        soils: Soils::Within(Property::Cec, 0.0, 5.0),
        ..TRI_STATE.table(
            "tri-state-k-light",
            Property::Potassium,
            Steps(MAINTAINED_STEPS, &[100.0, 130.0]),
        )
    },
    Scheme {
        soils: Soils::Within(Property::Cec, 5.0, f64::INFINITY),
        ..TRI_STATE.table(
            "tri-state-k",
            Property::Potassium,
            Steps(MAINTAINED_STEPS, &[120.0, 170.0]),
        )
    },
    Scheme {
        id: named("iowa-k"),
        property: Property::Potassium,
        methods: OR_ACETATE,
        steps: Steps(IOWA_K_STEPS, &[90.0, 130.0, 170.0]),
        printed_to: 1.0,
        citations: &[IOWA_POTASSIUM.opened()],
        meaning: "Optimum: a 6–25 % chance of a small response.",
        note: "For maize and soybean. Later editions ask for more.",
        ..TRI_STATE
    },
    Scheme {
        id: named("iowa-p-mehlich-3"),
        methods: &[Method::Mehlich3Colorimetric],
        steps: Steps(BETWEEN_MODELS_STEPS, &[14.0, 24.0]),
        citations: &[IOWA_PHOSPHORUS.opened()],
        meaning: "Above the critical level maize does not respond.",
        note: "We take it as read by colour; the source does not say.",
        ..TRI_STATE
    },
    Scheme {
        id: named("uc-k"),
        property: Property::Potassium,
        methods: OR_ACETATE,
        steps: Steps(UC_K_STEPS, &[200.0]),
        second: VEGETABLES,
        citations: &[UC_POTASSIUM.opened()],
        meaning: "Above the line vegetables do not respond.",
        note: "",
        ..TRI_STATE
    },
    Scheme {
        id: named("penn-state-p"),
        steps: Steps(PENN_P_STEPS, &[45.0]),
        second: LAWN,
        citations: &[PENN_STATE_LAWNS.second_hand()],
        meaning: NO_CHANCE,
        note: "For home lawns.",
        ..TRI_STATE
    },
];
