//! How a region limes: by pH and soil, or to a base saturation.

use crate::facts::{GroundUse, Reckoned};
use crate::quantity::{Note, between};
use crate::soil::{PlantGroup, Property, SoilGroup, Soils, Texture};
use crate::sources::*;

/// One column of a region's lime table.
#[derive(Debug)]
pub struct RegionalLime {
    /// The region it was published for.
    pub region: &'static str,
    /// What the ground bears.
    pub uses: &'static [GroundUse],
    /// The soils it was made for.
    pub soils: Soils,
    /// Which pH it goes by.
    pub by: Reckoned,
    /// The pH it leads to, likewise.
    pub target: f64,
    /// pH and pure lime, t/ha.
    pub points: &'static [(f64, f64)],
    /// The depth it is for, cm.
    pub depth_cm: f64,
    /// The publications.
    pub citations: &'static [Citation],
    /// What a reader must know of it.
    pub note: Note,
}

/// The base saturation that lime is to reach.
#[derive(Debug)]
pub struct WantedSaturation {
    /// The region it was published for.
    pub region: &'static str,
    /// The plants.
    pub plants: &'static [PlantGroup],
    /// % of the exchange capacity at pH 7.
    pub wanted: f64,
    /// The publications.
    pub citations: &'static [Citation],
    /// What a reader must know of it.
    pub note: Note,
}

include!(concat!(env!("OUT_DIR"), "/lime.rs"));

impl WantedSaturation {
    /// Every row.
    pub fn all() -> &'static [WantedSaturation] {
        WANTED
    }
}

impl RegionalLime {
    /// Every column.
    pub fn all() -> &'static [RegionalLime] {
        ALL
    }

    /// Pure lime from this pH (in the table's own solution) towards `target`, t/ha. Below the
    /// table its first row is held: nothing is stretched. `None` where the target lies below it,
    /// where the table says nothing.
    pub fn rate(&self, ph: f64, target: f64) -> Option<f64> {
        let (xs, ys): (Vec<f64>, Vec<f64>) = self.points.iter().copied().unzip();
        let first = *xs.first()?;
        let at = |ph: f64| between(&xs, &ys, ph.max(first)).unwrap_or(0.0);
        let target = target.min(self.target);
        (target >= first).then(|| (at(ph) - at(target)).max(0.0))
    }
}
