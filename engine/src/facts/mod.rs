//! Reads facts that people published, a row a fact: at build time those of
//! `engine/facts` into statics, at run time a region's own file.

mod base_saturation;
mod certificate_item;
mod charge_source;
mod crop;
mod fact;
mod feedstock;
mod lime;
mod lime_buffer;
mod limit;
mod metal;
mod oxide;
mod plain;
mod pot_feed;
mod range;
mod rate;
mod rating;
mod region;
mod salt_line;
mod saturation_water;
mod source;
mod table;
mod trace_element;

pub use base_saturation::BaseSaturationRow;
pub use certificate_item::CertificateItem;
pub use charge_source::{AnalysisRow, ChargeSource};
pub use crop::CropRow;
pub use fact::Fact;
pub use feedstock::{Feedstock, FeedstockRow};
pub use lime::{GroundUse, LimeRow, Reckoned};
pub use lime_buffer::{LimeBufferRow, LimeTable};
pub use limit::{Limit, LimitRow};
pub use metal::{LeadLevelRow, MetalRow};
pub use oxide::Oxide;
pub use plain::{decimal, small};
pub use pot_feed::PotFeedRow;
pub use range::{RangeRow, SoilsRow, StepRow};
pub use rate::{Dressed, RateRow, Way};
pub use rating::RatingRow;
pub use region::RegionRow;
pub use salt_line::{Grain, SaltLineRow};
pub use saturation_water::SaturationWaterRow;
pub use source::{Cited, SourceRow};
pub use table::{Row, Rows, Table, Wrong, rows_of};
pub use trace_element::TraceElementRow;
