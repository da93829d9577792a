//! The salts that sulfur and trace elements are given as, and the most of each.

use crate::facts::Dressed;
use crate::sources::*;

/// How one element is given.
#[derive(Debug)]
pub(super) struct TraceElement {
    pub element: Dressed,
    /// The salt it is bought as.
    pub salt: &'static str,
    /// The element in the salt, %.
    pub percent: f64,
    /// The most of the element in a year, kg/ha; and of a crop with a rate of its own.
    most: f64,
    most_of_own: f64,
    /// The pH in water between which it helps when it is spread on the soil.
    pub ph: (f64, f64),
    /// The crops that a little of it hurts, by their ids.
    pub hurts: &'static [&'static str],
    pub citations: &'static [Citation],
}

include!(concat!(env!("OUT_DIR"), "/trace_elements.rs"));

impl TraceElement {
    pub fn of(element: Dressed) -> Option<&'static TraceElement> {
        ALL.iter().find(|row| row.element == element)
    }

    /// The most of the salt in a year, kg/ha.
    pub fn most_salt(&self, own: bool) -> f64 {
        100.0 * if own { self.most_of_own } else { self.most } / self.percent
    }
}
