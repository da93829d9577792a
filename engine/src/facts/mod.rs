//! Reads facts that people published, a row a fact: at build time those of
//! `engine/facts` into statics, at run time a region's own file.

mod oxide;
mod range;
mod region;
mod source;
mod table;

pub use oxide::Oxide;
pub use range::{RangeRow, SoilsRow, StepRow};
pub use region::RegionRow;
pub use source::{Cited, SourceRow};
pub use table::{Row, Table, Wrong};
