//! What a soil test is about: properties, the methods they are measured by,
//! texture, and one sample in the engine's own units.

mod method;
mod plants;
mod property;
mod sample;
mod texture;

pub use method::{Method, MethodKind};
pub use plants::PlantGroup;
pub use property::Property;
pub(crate) use property::listed;
pub use sample::{Amount, Measure, Soil};
pub use texture::Texture;
