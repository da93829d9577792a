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

// From `engine/facts/crops.csv`: those whose tolerance is held.
include!(concat!(env!("OUT_DIR"), "/crops.rs"));

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
        self.group == plants
            || plants == PlantGroup::MixedVegetables && self.group != PlantGroup::Berries
    }
}
