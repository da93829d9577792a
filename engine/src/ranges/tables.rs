//! The published tables, from `engine/facts/ranges.csv`.

use super::scheme::{NO_CHANCE, Rung, Scheme, Steps, named};
use crate::facts::Oxide;
use crate::quantity::{Note, Unit};
use crate::soil::{Level, Method, PlantGroup, Property, SoilGroup, Soils, Texture};
use crate::sources::*;

include!(concat!(env!("OUT_DIR"), "/ranges.rs"));

/// Every published table.
pub(crate) fn all() -> impl DoubleEndedIterator<Item = &'static Scheme> {
    ALL.iter()
}
