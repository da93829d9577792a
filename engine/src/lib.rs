//! From a pasted soil test to a dated biochar plan.
#![warn(missing_docs)]

pub mod biochar;
pub mod case;
pub mod cautions;
pub mod chemistry;
pub mod export;
mod named;
pub mod needs;
pub mod normalise;
pub mod outcome;
pub mod quantity;
pub mod question;
pub mod ranges;
pub mod report;
pub mod season;
pub mod soil;
pub mod sources;
pub mod summary;
mod survey;
pub mod traits;

pub use case::Case;
pub use outcome::{Outcome, interpret, judged_readings, situated};
pub use survey::{Survey, survey};
