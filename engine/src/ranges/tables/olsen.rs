//! Olsen (bicarbonate) phosphorus, by weight and by volume.

use super::mehlich_3::{SLAN_MEANING, TURF_STEPS};
use crate::quantity::Unit::{MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{
    ALL_PLANTS, BLANK, LAWN, NO_PLANTS, NOT_VEGETABLES, Scheme, Steps, VEGETABLES, named, rungs,
};
use crate::soil::{Method, PlantGroup, Property};
use crate::sources::{
    AUSTRALIA_PASTURE, MLSN, NI_PHOSPHORUS, NORTHERN_PLAINS_OLSEN, ONTARIO, RB209, SLAN, UC_OLSEN,
};

const fn uc(
    id: &'static str,
    steps: Steps,
    judges: &'static [PlantGroup],
    second: &'static [PlantGroup],
    note: &'static str,
) -> Scheme {
    Scheme {
        methods: &[Method::Olsen],
        unit: MgPerKg,
        judges,
        second,
        citations: const { &[UC_OLSEN.opened()] },
        meaning: "Its words say how likely plants are to respond.",
        note,
        ..BLANK.table(id, Property::Phosphorus, steps)
    }
}

rungs! {
    RESPONSIVE_STEPS: below "highly responsive" Low, to "probably responsive" Low,
        to "not responsive" Sufficient;
    NORTHERN_PLAINS_STEPS: to "very low" VeryLow, to "low" Low, to "medium" Low,
        to "high" Sufficient, to "very high" High;
    ONTARIO_P_STEPS: below "below target" Low, to "target" Sufficient, to "above target" High;
    MLSN_P_STEPS: below "below the minimum" Low, to "above the minimum" Sufficient;
    INDEX_TARGET_3_STEPS: to "index 0" VeryLow, to "index 1" Low, to "index 2−" Low,
        to "index 2+" Low, to "index 3" Sufficient, to "index 4" High, to "above index 4" Excess;
    INDEX_TARGET_2_STEPS: to "index 0" VeryLow, to "index 1" Low, to "index 2−" Sufficient,
        to "index 2+" Sufficient, to "index 3" High, to "index 4" High, to "above index 4" Excess;
}

const SECOND: Scheme = Scheme {
    id: named("northern-plains-olsen"),
    property: Property::Phosphorus,
    methods: &[Method::Olsen],
    unit: MgPerKg,
    steps: Steps(NORTHERN_PLAINS_STEPS, &[3.0, 7.0, 11.0, 15.0]),
    printed_to: 1.0,
    second: ALL_PLANTS,
    citations: &[NORTHERN_PLAINS_OLSEN.second_hand()],
    note: "For field crops of the northern plains.",
    ..BLANK
};

pub(super) static SCHEMES: &[Scheme] = &[
    uc(
        "uc-cool",
        Steps(RESPONSIVE_STEPS, &[15.0, 30.0]),
        &[PlantGroup::MixedVegetables, PlantGroup::LeafyVegetables, PlantGroup::RootCrops],
        NO_PLANTS,
        "Published for cool-season vegetables, the stricter of the two tables.",
    ),
    uc(
        "uc-warm",
        Steps(RESPONSIVE_STEPS, &[8.0, 15.0]),
        &[
            PlantGroup::FruitingVegetables,
            PlantGroup::Lawn,
            PlantGroup::OrnamentalsAndTrees,
            PlantGroup::Berries,
            PlantGroup::AcidLovers,
        ],
        &[PlantGroup::MixedVegetables],
        "Published for warm-season vegetables. Used for lawns, shrubs and fruit for want of their own table.",
    ),
    uc(
        "uc-lettuce",
        Steps(RESPONSIVE_STEPS, &[20.0, 30.0]),
        NO_PLANTS,
        &[PlantGroup::LeafyVegetables],
        "For lettuce.",
    ),
    uc(
        "uc-potato",
        Steps(RESPONSIVE_STEPS, &[18.0, 35.0]),
        NO_PLANTS,
        &[PlantGroup::RootCrops],
        "For potato.",
    ),
    uc(
        "uc-tomato",
        Steps(RESPONSIVE_STEPS, &[6.0, 12.0]),
        NO_PLANTS,
        &[PlantGroup::FruitingVegetables],
        "For canning tomato and maize.",
    ),
    Scheme {
        id: named("ni-index-vegetables"),
        property: Property::Phosphorus,
        methods: &[Method::Olsen],
        unit: MgPerL,
        steps: Steps(INDEX_TARGET_3_STEPS, &[9.0, 15.0, 20.0, 25.0, 45.0, 70.0]),
        printed_to: 1.0,
        judges: VEGETABLES,
        citations: &[NI_PHOSPHORUS.opened(), RB209.second_hand()],
        note: "The target for vegetables is index 3; that target was read second-hand.",
        ..BLANK
    },
    Scheme {
        id: named("ni-index"),
        property: Property::Phosphorus,
        methods: &[Method::Olsen],
        unit: MgPerL,
        steps: Steps(INDEX_TARGET_2_STEPS, &[9.0, 15.0, 20.0, 25.0, 45.0, 70.0]),
        printed_to: 1.0,
        judges: NOT_VEGETABLES,
        citations: &[NI_PHOSPHORUS.opened(), RB209.second_hand()],
        note: "The target is index 2, set for field crops and grass and read second-hand.",
        ..BLANK
    },
    SECOND,
    Scheme {
        id: named("ontario-p"),
        steps: Steps(ONTARIO_P_STEPS, &[12.0, 18.0]),
        printed_to: 0.0,
        citations: &[ONTARIO.opened()],
        meaning: "Above 12 mg/kg field crops gained little.",
        note: "A suggested target for field crops.",
        ..SECOND
    },
    Scheme {
        id: named("australia-pasture-p"),
        methods: &[Method::Olsen, Method::BrayP1],
        steps: Steps(RESPONSIVE_STEPS, &[12.0, 15.0]),
        printed_to: 0.0,
        second: LAWN,
        citations: &[AUSTRALIA_PASTURE.opened()],
        meaning: "Its words say how likely plants are to respond.",
        note: "For pasture, sampled 10 cm deep.",
        ..SECOND
    },
    Scheme {
        id: named("slan-olsen-p"),
        steps: Steps(TURF_STEPS, &[12.0, 28.0]),
        printed_to: 0.0,
        second: LAWN,
        citations: &[SLAN.second_hand()],
        meaning: SLAN_MEANING,
        note: "",
        ..SECOND
    },
    Scheme {
        id: named("mlsn-olsen-p"),
        steps: Steps(MLSN_P_STEPS, &[6.0]),
        printed_to: 0.0,
        second: LAWN,
        citations: &[MLSN.opened()],
        note: "A minimum for good turf, not a target.",
        ..SECOND
    },
];
