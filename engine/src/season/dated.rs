//! Something with its days: a rest of the bed, a frost, a conflict of dates.

use serde::Serialize;
use time::Date;

use crate::quantity::Grounds;

/// Something with its days.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Dated {
    /// What it is.
    pub what: String,
    /// The first day; `None` where it isn't known.
    #[serde(serialize_with = "crate::season::day::serialize")]
    pub from: Option<Date>,
    /// The last day.
    #[serde(serialize_with = "crate::season::day::serialize")]
    pub to: Option<Date>,
    /// Why then.
    pub reason: String,
    /// What it rests on.
    pub grounds: Grounds,
}
