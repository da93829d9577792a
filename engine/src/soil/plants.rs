//! The groups of plants that ranges are published for.

use crate::named::named;

named! { "plant group", label:
    /// What grows, or will grow, in the bed.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
    pub enum PlantGroup {
        /// A kitchen garden of all sorts.
        #[default]
        MixedVegetables = "mixed-vegetables", "mixed vegetables";
        /// Lettuce, spinach, cabbages and other leaves: cool-season vegetables.
        LeafyVegetables = "leafy-vegetables", "leafy vegetables";
        /// Tomato, pepper, squash, beans: warm-season vegetables.
        FruitingVegetables = "fruiting-vegetables", "fruiting vegetables";
        /// Carrot, beet, potato and other roots.
        RootCrops = "root-crops", "root crops";
        Lawn = "lawn", "lawn";
        /// Flowers, shrubs and shade trees.
        OrnamentalsAndTrees = "ornamentals-and-trees", "ornamentals and trees";
        /// Berries and tree fruit other than blueberry.
        Berries = "berries", "berries and tree fruit";
        /// Blueberry, azalea, rhododendron, camellia.
        AcidLovers = "acid-lovers", "acid-loving plants";
    }
}
