//! The published tables, one file for each test they belong to.

mod bray;
mod cations;
mod mehlich_1;
mod mehlich_3;
mod micronutrients;
mod morgan;
mod nitrate;
mod olsen;
mod saturation;

use super::scheme::Scheme;
pub(crate) use micronutrients::usual_without_a_range;

/// Every table that is looked up by property, method and unit.
pub(crate) fn looked_up() -> impl Iterator<Item = &'static Scheme> {
    [
        mehlich_3::SCHEMES,
        olsen::SCHEMES,
        bray::SCHEMES,
        morgan::SCHEMES,
        mehlich_1::SCHEMES,
        cations::SCHEMES,
        micronutrients::SCHEMES,
        nitrate::SCHEMES,
        saturation::SCHEMES,
        super::ph::SCHEMES,
    ]
    .into_iter()
    .flatten()
}
