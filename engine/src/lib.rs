//! From a pasted soil test to a dated plan for one bed: surveyed once, planned
//! once, and all that is shown is a view of that plan.
#![warn(missing_docs)]

pub mod bag;
pub mod case;
pub mod chemistry;
pub mod day;
pub mod details;
pub mod export;
pub mod facts;
mod named;
pub mod normalise;
pub mod outcome;
pub mod own;
pub mod plan;
pub mod quantity;
pub mod question;
pub mod ranges;
pub mod region;
pub mod report;
pub mod season;
pub mod soil;
pub mod sources;
pub mod summary;
pub mod survey;
pub mod trial;

pub use case::Case;
pub use outcome::{Outcome, interpret, interpret_survey, judged_readings};
pub use plan::{Plan, charge_alone, plan};
pub use survey::{Survey, survey};
