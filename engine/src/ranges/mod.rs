//! Published ranges as tables, and judging a measure by them in its own
//! extractant.

mod finding;

use crate::soil::{Measure, PlantGroup, Soil, Texture};

pub use finding::{Finding, Level, Opinion, Range, Step};

/// What a range may depend on beside the soil.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Setting {
    /// The plants; mixed vegetables until somebody says.
    pub plants: Option<PlantGroup>,
    /// The texture, when it is known.
    pub texture: Option<Texture>,
}

/// Judges one measure.
pub fn judge(measure: &Measure, soil: &Soil, setting: &Setting) -> Finding {
    let _ = (measure, soil, setting);
    Finding::default()
}
