//! Reads facts that people published, a row a fact: at build time those of
//! `engine/facts` into statics, at run time a region's own file.

mod base_saturation;
mod lime;
mod oxide;
mod range;
mod rating;
mod region;
mod source;
mod table;

pub use base_saturation::BaseSaturationRow;
pub use lime::{GroundUse, LimeRow, Reckoned};
pub use oxide::Oxide;
pub use range::{RangeRow, SoilsRow, StepRow};
pub use rating::RatingRow;
pub use region::RegionRow;
pub use source::{Cited, SourceRow};
pub use table::{Row, Table, Wrong};
