//! A dated job.

use serde::Serialize;
use time::Date;

use crate::named::by_name;
use crate::quantity::Grounds;
use crate::season::Dated;

/// What a job is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JobKind {
    /// What comes before all else: salts, lead.
    Hazard,
    /// Washing salts or sodium out.
    WashSalts,
    /// Clearing the bed.
    Clear,
    /// Liming.
    Lime,
    /// Sulfur.
    Sulfur,
    /// Gypsum.
    Gypsum,
    /// Beginning to charge the biochar.
    Charge,
    /// Bringing the biochar out.
    SpreadBiochar,
    /// A cover crop or mulch.
    CoverCrop,
    /// Feeding what is still short.
    Feed,
    /// Planting or sowing.
    Plant,
    /// The next soil test.
    Retest,
}

by_name! { JobKind, "kind of job",
    Hazard: "hazard",
    WashSalts: "wash-salts",
    Clear: "clear",
    Lime: "lime",
    Sulfur: "sulfur",
    Gypsum: "gypsum",
    Charge: "charge",
    SpreadBiochar: "spread-biochar",
    CoverCrop: "cover-crop",
    Feed: "feed",
    Plant: "plant",
    Retest: "re-test",
}

/// One dated job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Job {
    /// What it is.
    pub kind: JobKind,
    /// Whether it digs, forks or mixes the soil.
    pub digs: bool,
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

impl From<Job> for Dated {
    fn from(Job { task: what, from, to, reason, grounds, .. }: Job) -> Dated {
        Dated { what, from, to, reason, grounds }
    }
}
