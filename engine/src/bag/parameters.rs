//! The parameters of what biochar does in the soil, as rows of `facts/effects.csv`.

pub use crate::facts::EffectParameter;
use crate::quantity::Band;
use crate::sources::*;

include!(concat!(env!("OUT_DIR"), "/effects.rs"));

/// A parameter, in the unit that its row names.
pub fn parameter(which: EffectParameter) -> Band {
    BANDS[which as usize]
}

/// What a parameter rests on.
pub fn rests_on(which: EffectParameter) -> &'static [Citation] {
    CITED[which as usize]
}
