//! A dated job.

use serde::Serialize;
use time::Date;

use crate::named::named;
use crate::plan::load::Load;
use crate::quantity::Grounds;
use crate::season::Dated;

named! { "kind of job":
    /// What a job is.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum JobKind {
        /// What comes before all else: salts, lead.
        Hazard = "hazard";
        /// Washing salts or sodium out.
        WashSalts = "wash-salts";
        /// Clearing the bed.
        Clear = "clear";
        /// Liming.
        Lime = "lime";
        /// Sulfur.
        Sulfur = "sulfur";
        /// Gypsum.
        Gypsum = "gypsum";
        /// Beginning to charge the biochar.
        Charge = "charge";
        /// Bringing the biochar out.
        SpreadBiochar = "spread-biochar";
        /// A cover crop or mulch.
        CoverCrop = "cover-crop";
        /// Feeding what is still short.
        Feed = "feed";
        /// Spraying the leaves with what the soil would lock up.
        Spray = "spray";
        /// Planting or sowing.
        Plant = "plant";
        /// The next soil test.
        Retest = "re-test";
    }
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
    /// What it carries to the bed beside biochar.
    #[serde(skip)]
    pub(crate) carries: Vec<Load>,
    /// What it rests on.
    pub grounds: Grounds,
}

impl Job {
    /// A job with its days that neither digs nor carries anything.
    pub fn dated(
        kind: JobKind,
        task: impl Into<String>,
        (from, to): (Option<Date>, Option<Date>),
        reason: impl Into<String>,
    ) -> Job {
        let (task, reason, grounds) = (task.into(), reason.into(), Grounds::default());
        Job { kind, digs: false, task, from, to, reason, grounds, carries: Vec::new() }
    }

    /// The job with what it carries.
    pub(crate) fn carrying(self, carries: Vec<Load>) -> Job {
        Job { carries, ..self }
    }
}

impl From<Job> for Dated {
    fn from(Job { task: what, from, to, reason, grounds, .. }: Job) -> Dated {
        Dated { what, from, to, reason, grounds }
    }
}
