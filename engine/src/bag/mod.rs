//! The biochar on hand: what its bag and its certificate say, and what is usual.

pub mod certificate;
mod material;

pub use material::Material;
pub(crate) use material::between;
