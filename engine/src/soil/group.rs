//! The groups that a region parts its soils into, where they are no textures.

use crate::named::named;

named! { "soil group", label:
    /// A group of soils, by the name that its region gives it.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum SoilGroup {
        /// The sandy plain along the Atlantic and the Gulf.
        CoastalPlain = "coastal-plain", "Coastal Plain";
        /// The hills behind that plain, with the mountains and the Limestone Valley.
        Piedmont = "piedmont", "Piedmont";
        Peat = "peat", "peat";
    }
}
