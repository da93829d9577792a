//! Olsen (bicarbonate) phosphorus, by weight and by volume.

use crate::quantity::Unit::{MgPerKg, MgPerL};
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{NO_PLANTS, NOT_VEGETABLES, Scheme, VEGETABLES};
use crate::soil::{Method, PlantGroup, Property};
use crate::sources::{NI_PHOSPHORUS, RB209, UC_OLSEN};

const fn uc(
    id: &'static str,
    steps: &'static [Step],
    judges: &'static [PlantGroup],
    second: &'static [PlantGroup],
    note: &'static str,
) -> Scheme {
    Scheme {
        id,
        property: Property::Phosphorus,
        methods: &[Method::Olsen],
        unit: MgPerKg,
        steps,
        printed_to: 0.0,
        judges,
        second,
        citations: const { &[UC_OLSEN.opened()] },
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
    uc("uc-tomato", &TOMATO, NO_PLANTS, &[PlantGroup::FruitingVegetables], "For canning tomato."),
    Scheme {
        id: "ni-index-vegetables",
        property: Property::Phosphorus,
        methods: &[Method::Olsen],
        unit: MgPerL,
        steps: &INDEX_TARGET_3,
        printed_to: 1.0,
        judges: VEGETABLES,
        second: NO_PLANTS,
        citations: &[NI_PHOSPHORUS.opened(), RB209.second_hand()],
        note: "The target for vegetables is index 3; that target was read second-hand.",
    },
    Scheme {
        id: "ni-index",
        property: Property::Phosphorus,
        methods: &[Method::Olsen],
        unit: MgPerL,
        steps: &INDEX_TARGET_2,
        printed_to: 1.0,
        judges: NOT_VEGETABLES,
        second: NO_PLANTS,
        citations: &[NI_PHOSPHORUS.opened(), RB209.second_hand()],
        note: "The target is index 2, set for field crops and grass and read second-hand.",
    },
];
