//! How much plots treated alike usually differ, as rows of `facts/usual_spreads.csv`.

use crate::quantity::Band;
use crate::soil::Property;
use crate::sources::*;

/// The usual scatter of one property.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UsualSpread {
    /// What was measured.
    pub property: Property,
    /// The standard deviation of plots treated alike, % of their mean.
    pub cv: Band,
    /// The publications.
    pub citations: &'static [Citation],
    /// What the figures were measured on.
    pub note: &'static str,
}

include!(concat!(env!("OUT_DIR"), "/usual_spreads.rs"));

/// The usual scatter of a property, where a row holds it.
pub fn usual_spread(property: Property) -> Option<&'static UsualSpread> {
    SPREADS.iter().find(|row| row.property == property)
}
