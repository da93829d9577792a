//! The groups of plants that ranges are published for.

use crate::named::by_name;

/// What grows, or will grow, in the bed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PlantGroup {
    /// A kitchen garden of all sorts.
    #[default]
    MixedVegetables,
    /// Lettuce, spinach, cabbages and other leaves: cool-season vegetables.
    LeafyVegetables,
    /// Tomato, pepper, squash, beans: warm-season vegetables.
    FruitingVegetables,
    /// Carrot, beet, potato and other roots.
    RootCrops,
    /// Lawn.
    Lawn,
    /// Flowers, shrubs and shade trees.
    OrnamentalsAndTrees,
    /// Berries and tree fruit other than blueberry.
    Berries,
    /// Blueberry, azalea, rhododendron, camellia.
    AcidLovers,
}

by_name! { PlantGroup, "plant group",
    MixedVegetables: "mixed-vegetables",
    LeafyVegetables: "leafy-vegetables",
    FruitingVegetables: "fruiting-vegetables",
    RootCrops: "root-crops",
    Lawn: "lawn",
    OrnamentalsAndTrees: "ornamentals-and-trees",
    Berries: "berries",
    AcidLovers: "acid-lovers",
}

impl PlantGroup {
    /// What a reader calls it.
    pub fn label(self) -> &'static str {
        match self {
            PlantGroup::MixedVegetables => "mixed vegetables",
            PlantGroup::LeafyVegetables => "leafy vegetables",
            PlantGroup::FruitingVegetables => "fruiting vegetables",
            PlantGroup::RootCrops => "root crops",
            PlantGroup::Lawn => "lawn",
            PlantGroup::OrnamentalsAndTrees => "ornamentals and trees",
            PlantGroup::Berries => "berries and tree fruit",
            PlantGroup::AcidLovers => "acid-loving plants",
        }
    }
}
