//! What a soil test is about: properties, the methods they are measured by,
//! texture, and one sample in the engine's own units.

mod group;
mod level;
mod method;
mod plants;
mod property;
pub mod salt_tolerance;
mod sample;
mod soils;
mod texture;
pub mod water;

pub use group::SoilGroup;
pub use level::Level;
pub use method::{Method, MethodKind};
pub use plants::PlantGroup;
pub use property::Property;
pub(crate) use property::listed;
pub use sample::{Amount, Measure, Soil};
pub(crate) use soils::PEAT_MATTER;
pub use soils::{Fit, Soils};
pub use texture::Texture;
