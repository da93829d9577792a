//! The biochar on hand: what its bag and its certificate say, and what is usual.

pub mod certificate;
mod material;
mod parameters;

pub use material::Material;
pub(crate) use material::between;
pub use parameters::{EffectParameter, parameter, rests_on};
