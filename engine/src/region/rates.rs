//! A year's dressings of crops by a region's guides.

use crate::facts::{Dressed, Way};
use crate::quantity::{Band, Note};
use crate::soil::{Level, PlantGroup};
use crate::sources::*;

/// A year's dressing of one nutrient for one crop.
#[derive(Debug)]
pub struct CropRate {
    /// The region it was published for.
    pub region: &'static str,
    /// The crops, by their ids.
    pub crops: &'static [&'static str],
    /// What is dressed.
    pub nutrient: Dressed,
    /// For each level of the soil, kg/ha; `None` for any level.
    pub rates: &'static [(Option<Level>, Band)],
    /// How it gets to the plants.
    pub way: Way,
    /// How it is split.
    pub when: &'static str,
    /// What is given in which month, 1 is January, kg/ha.
    pub months: &'static [(u8, Band)],
    /// The publications.
    pub citations: &'static [Citation],
    /// What a reader must know of it.
    pub note: Note,
}

/// A crop with a rate, or that a trace element hurts.
#[derive(Debug)]
pub struct CropNames {
    /// Its id.
    pub id: &'static str,
    /// Its name as said within a sentence.
    pub name: &'static str,
    /// The plants it is grown among; `None` for a field crop.
    pub group: Option<PlantGroup>,
    /// Every name it goes by, in lower case.
    pub names: &'static [&'static str],
}

include!(concat!(env!("OUT_DIR"), "/rates.rs"));

impl CropRate {
    /// Every rate.
    pub fn all() -> &'static [CropRate] {
        ALL
    }
}

impl CropNames {
    /// The crop of a name in lower case.
    pub fn of(name: &str) -> Option<&'static CropNames> {
        NAMES.iter().find(|crop| crop.names.contains(&name))
    }

    /// The crop of an id.
    pub fn by_id(id: &str) -> Option<&'static CropNames> {
        NAMES.iter().find(|crop| crop.id == id)
    }
}
