//! What salts crops bear without loss.

use crate::soil::PlantGroup;

/// A crop's tolerance, by salts of the saturated paste.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crop {
    /// Its name.
    pub name: &'static str,
    /// It loses nothing up to here, dS/m.
    pub threshold: f64,
    /// What each dS/m above costs, % of the yield.
    pub slope: f64,
    /// The group it is grown in; mixed vegetables have all but the berries.
    pub group: PlantGroup,
}

const fn crop(name: &'static str, threshold: f64, slope: f64, group: PlantGroup) -> Crop {
    Crop { name, threshold, slope, group }
}

use PlantGroup::{Berries, FruitingVegetables as Fruiting, LeafyVegetables as Leafy, RootCrops};

/// The crops of gardens.
/// Source: Maas 1990 (opened).
pub static CROPS: [Crop; 24] = [
    crop("asparagus", 4.1, 2.0, Leafy),
    crop("bean", 1.0, 19.0, Fruiting),
    crop("mung bean", 1.8, 20.7, Fruiting),
    crop("red beet", 4.0, 9.0, RootCrops),
    crop("broccoli", 2.8, 9.2, Leafy),
    crop("cabbage", 1.8, 9.7, Leafy),
    crop("carrot", 1.0, 14.0, RootCrops),
    crop("celery", 1.8, 6.2, Leafy),
    crop("sweet corn", 1.7, 12.0, Fruiting),
    crop("cucumber", 2.5, 13.0, Fruiting),
    crop("eggplant", 1.1, 6.9, Fruiting),
    crop("lettuce", 1.3, 13.0, Leafy),
    crop("onion", 1.2, 16.0, RootCrops),
    crop("pepper", 1.5, 14.0, Fruiting),
    crop("potato", 1.7, 12.0, RootCrops),
    crop("radish", 1.2, 13.0, RootCrops),
    crop("spinach", 2.0, 7.6, Leafy),
    crop("scallop squash", 3.2, 16.0, Fruiting),
    crop("zucchini", 4.7, 9.4, Fruiting),
    crop("strawberry", 1.0, 33.0, Berries),
    crop("sweet potato", 1.5, 11.0, RootCrops),
    crop("tomato", 2.5, 9.9, Fruiting),
    crop("cherry tomato", 1.7, 9.1, Fruiting),
    crop("turnip", 0.9, 9.0, RootCrops),
];

/// Yield as a share (%) of that without salts, in a paste of `ece` dS/m: 100 up to the
/// threshold, then falling by the slope, never below none.
///
/// Source: FAO Irrigation and Drainage Paper 61, Annex 1.
pub fn relative_yield(ece: f64, threshold: f64, slope: f64) -> f64 {
    (100.0 - slope * (ece - threshold)).clamp(0.0, 100.0)
}

impl Crop {
    /// Whether a bed of this group grows it.
    pub fn grows_in(&self, plants: PlantGroup) -> bool {
        self.group == plants || plants == PlantGroup::MixedVegetables && self.group != Berries
    }
}
