//! Olsen (bicarbonate) phosphorus, by weight and by volume.

use super::mehlich_3::{SLAN_MEANING, turf};
use crate::quantity::Unit::{MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{
    ALL_PLANTS, LAWN, NO_CHANCE, NO_PLANTS, NOT_VEGETABLES, Scheme, Soils, VEGETABLES, named,
};
use crate::soil::{Method, PlantGroup, Property};
use crate::sources::{
    AUSTRALIA_PASTURE, MLSN, NI_PHOSPHORUS, NORTHERN_PLAINS_OLSEN, ONTARIO, RB209, SLAN, UC_OLSEN,
};

const fn uc(
    id: &'static str,
    steps: &'static [Step],
    judges: &'static [PlantGroup],
    second: &'static [PlantGroup],
    note: &'static str,
) -> Scheme {
    Scheme {
        id: named(id),
        property: Property::Phosphorus,
        methods: &[Method::Olsen],
        soils: Soils::All,
        unit: MgPerKg,
        steps,
        printed_to: 0.0,
        judges,
        second,
        citations: const { &[UC_OLSEN.opened()] },
        meaning: "Its words say how likely a crop is to respond to phosphorus.",
        note,
    }
}

const fn responsive(highly: f64, probably: f64) -> [Step; 3] {
    [
        Step::below("highly responsive", Low, highly),
        Step::to("probably responsive", Low, probably),
        Step::rest("not responsive", Sufficient),
    ]
}

static COOL: [Step; 3] = responsive(15.0, 30.0);
static WARM: [Step; 3] = responsive(8.0, 15.0);
static LETTUCE: [Step; 3] = responsive(20.0, 30.0);
static POTATO: [Step; 3] = responsive(18.0, 35.0);
static TOMATO: [Step; 3] = responsive(6.0, 12.0);

static NORTHERN_PLAINS: [Step; 5] = [
    Step::to("very low", VeryLow, 3.0),
    Step::to("low", Low, 7.0),
    Step::to("medium", Low, 11.0),
    Step::to("high", Sufficient, 15.0),
    Step::rest("very high", High),
];
static ONTARIO_P: [Step; 3] = [
    Step::below("below target", Low, 12.0),
    Step::to("target", Sufficient, 18.0),
    Step::rest("above target", High),
];
static PASTURE: [Step; 3] = responsive(12.0, 15.0);
static SLAN_P: [Step; 3] = turf(12.0, 28.0);
static MLSN_P: [Step; 2] =
    [Step::below("below the minimum", Low, 6.0), Step::rest("above the minimum", Sufficient)];

const SECOND: Scheme = Scheme {
    id: named("northern-plains-olsen"),
    property: Property::Phosphorus,
    methods: &[Method::Olsen],
    soils: Soils::All,
    unit: MgPerKg,
    steps: &NORTHERN_PLAINS,
    printed_to: 1.0,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[NORTHERN_PLAINS_OLSEN.second_hand()],
    meaning: NO_CHANCE,
    note: "For field crops of the northern plains.",
};

static INDEX_TARGET_3: [Step; 7] = [
    Step::to("index 0", VeryLow, 9.0),
    Step::to("index 1", Low, 15.0),
    Step::to("index 2−", Low, 20.0),
    Step::to("index 2+", Low, 25.0),
    Step::to("index 3", Sufficient, 45.0),
    Step::to("index 4", High, 70.0),
    Step::rest("above index 4", Excess),
];
static INDEX_TARGET_2: [Step; 7] = [
    Step::to("index 0", VeryLow, 9.0),
    Step::to("index 1", Low, 15.0),
    Step::to("index 2−", Sufficient, 20.0),
    Step::to("index 2+", Sufficient, 25.0),
    Step::to("index 3", High, 45.0),
    Step::to("index 4", High, 70.0),
    Step::rest("above index 4", Excess),
];

pub(super) static SCHEMES: &[Scheme] = &[
    uc(
        "uc-cool",
        &COOL,
        &[PlantGroup::MixedVegetables, PlantGroup::LeafyVegetables, PlantGroup::RootCrops],
        NO_PLANTS,
        "Published for cool-season vegetables, the stricter of the two tables.",
    ),
    uc(
        "uc-warm",
        &WARM,
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
    uc("uc-lettuce", &LETTUCE, NO_PLANTS, &[PlantGroup::LeafyVegetables], "For lettuce."),
    uc("uc-potato", &POTATO, NO_PLANTS, &[PlantGroup::RootCrops], "For potato."),
    uc(
        "uc-tomato",
        &TOMATO,
        NO_PLANTS,
        &[PlantGroup::FruitingVegetables],
        "For canning tomato and maize.",
    ),
    Scheme {
        id: named("ni-index-vegetables"),
        property: Property::Phosphorus,
        methods: &[Method::Olsen],
        soils: Soils::All,
        unit: MgPerL,
        steps: &INDEX_TARGET_3,
        printed_to: 1.0,
        judges: VEGETABLES,
        second: NO_PLANTS,
        citations: &[NI_PHOSPHORUS.opened(), RB209.second_hand()],
        meaning: NO_CHANCE,
        note: "The target for vegetables is index 3; that target was read second-hand.",
    },
    Scheme {
        id: named("ni-index"),
        property: Property::Phosphorus,
        methods: &[Method::Olsen],
        soils: Soils::All,
        unit: MgPerL,
        steps: &INDEX_TARGET_2,
        printed_to: 1.0,
        judges: NOT_VEGETABLES,
        second: NO_PLANTS,
        citations: &[NI_PHOSPHORUS.opened(), RB209.second_hand()],
        meaning: NO_CHANCE,
        note: "The target is index 2, set for field crops and grass and read second-hand.",
    },
    SECOND,
    Scheme {
        id: named("ontario-p"),
        steps: &ONTARIO_P,
        printed_to: 0.0,
        citations: &[ONTARIO.opened()],
        meaning: "Above 12 mg/kg field crops gained little.",
        note: "A suggested target for field crops.",
        ..SECOND
    },
    Scheme {
        id: named("australia-pasture-p"),
        methods: &[Method::Olsen, Method::BrayP1],
        steps: &PASTURE,
        printed_to: 0.0,
        second: LAWN,
        citations: &[AUSTRALIA_PASTURE.opened()],
        meaning: "Its words say how likely pasture is to respond.",
        note: "For pasture, sampled 10 cm deep. The middle class is printed as “marginal”.",
        ..SECOND
    },
    Scheme {
        id: named("slan-olsen-p"),
        steps: &SLAN_P,
        printed_to: 0.0,
        second: LAWN,
        citations: &[SLAN.second_hand()],
        meaning: SLAN_MEANING,
        note: "",
        ..SECOND
    },
    Scheme {
        id: named("mlsn-olsen-p"),
        steps: &MLSN_P,
        printed_to: 0.0,
        second: LAWN,
        citations: &[MLSN.opened()],
        note: "A minimum for good turf, not a target.",
        ..SECOND
    },
];
