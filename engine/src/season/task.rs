//! A dated task.

use serde::Serialize;
use time::Date;

use crate::quantity::Grounds;

/// One dated task.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Task {
    /// What to do.
    pub task: String,
    /// The first good day; `None` until the dates are known.
    #[serde(serialize_with = "crate::season::day::serialize")]
    pub from: Option<Date>,
    /// The last good day.
    #[serde(serialize_with = "crate::season::day::serialize")]
    pub to: Option<Date>,
    /// Why then.
    pub reason: String,
    /// What it rests on.
    pub grounds: Grounds,
}
