//! Did it work in my soil? A table of plots, treated and untreated, judged: which design it
//! is, what each property did, and what these plots could not have seen.
//!
//! ```
//! use emberloam_engine::trial::{Trial, evaluate};
//! let text = "Treatment,pH\nnone,6.0\nnone,6.1\nnone,5.9\nchar,6.6\nchar,6.7\nchar,6.5\n";
//! let found = evaluate(&Trial { text: text.into(), ..Trial::default() }).unwrap();
//! assert!(found.results[0].comparisons[0].text.starts_with("pH rose"));
//! ```

mod amounts;
mod blocks;
mod design;
mod distributions;
mod evaluation;
mod exact;
mod heads;
mod holm;
mod judge;
mod layout;
mod means;
mod names;
mod next;
mod normality;
mod plots;
mod power;
mod rank;
mod residuals;
mod several;
mod spread;
mod stated;
mod table;
mod text;
mod usual_spread;

use serde::{Deserialize, Serialize};

use crate::named::named;
use crate::quantity::{Band, Measures, Unit};
use crate::soil::Property;

pub use crate::plan::{Calibrated, calibrate};
pub use amounts::{Amounts, Place, amounts};
pub use blocks::one_way;
pub use design::Design;
pub use distributions::{f_tail, t_both_tails, t_critical};
pub use evaluation::{
    Column, Comparison, Evaluation, Exact, ExactTest, Foreseen, Group, Interval, Level, Normality,
    Outlier, Overall, Reading, Refusal, Test, TrialResult, Verdict,
};
pub use exact::{permutation, signed_permutation};
pub use holm::holm;
pub use judge::Judging;
pub use layout::{PlotOf, layout, layout_csv};
pub use next::{NextTrial, SheetRow, Wish, next_trial, sheet_csv};
pub use normality::shapiro_wilk;
pub use power::{noncentral_t_below, power, replicates, smallest_shift};
pub use rank::{rank_sum, signed_rank};
pub use several::{Dunnett, StudentizedRange};
pub use usual_spread::{UsualSpread, usual_spread};

/// The version of [`Trial`] this engine writes and reads.
pub const TRIAL_VERSION: u32 = 1;

/// The most plots, with each time one was sampled counted, that are judged at once.
pub const MOST_PLOTS: usize = 2_000;
/// The most properties.
pub const MOST_PROPERTIES: usize = 60;
/// The most treatments.
pub const MOST_TREATMENTS: usize = 20;
/// The most text, bytes.
pub const MOST_TEXT: usize = 1_000_000;

/// A trial as a person gives it: the table and what was said about it. In JSON every key is
/// kebab-case and may be left out; an unknown one is an error.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Trial {
    /// The version of this shape.
    #[serde(deserialize_with = "known_version")]
    pub version: u32,
    /// The table of plots, or a soil report whose sample names tell the treatments.
    pub text: String,
    /// A second report or table of the same plots, sampled later.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub later: Option<String>,
    /// What columns are, where the guess is wrong.
    pub roles: Vec<RoleOf>,
    /// Rows to keep where a column holds more than this trial: all others are left out.
    pub only: Vec<Only>,
    /// The treatment that the others are compared with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub control: Option<String>,
    /// Compare every pair of treatments rather than each with one control.
    pub every_pair: bool,
    /// The design, where the one found is not the one that was laid out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design: Option<Design>,
    /// What the model foretold.
    pub foretold: Vec<Foretold>,
    /// The measures that plans for the next trial are written in.
    pub measures: Measures,
}

impl Default for Trial {
    fn default() -> Trial {
        Trial {
            version: TRIAL_VERSION,
            text: String::new(),
            later: None,
            roles: Vec::new(),
            only: Vec::new(),
            control: None,
            every_pair: false,
            design: None,
            foretold: Vec::new(),
            measures: Measures::default(),
        }
    }
}

/// Refuses a trial written by a newer engine, whose answers may mean more than this one knows.
fn known_version<'de, D: serde::Deserializer<'de>>(from: D) -> Result<u32, D::Error> {
    let version = u32::deserialize(from)?;
    if version > TRIAL_VERSION {
        return Err(serde::de::Error::custom(format!(
            "this trial is of version {version}, newer than this program (version \
             {TRIAL_VERSION}); use a newer program"
        )));
    }
    Ok(version)
}

named! { "role of a column", label:
    /// What a column of the table holds.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum Role {
        /// What was done to the plot. Two such columns are taken together.
        Treatment = "treatment", "treatment";
        /// Block, pair or replicate laid out together.
        Block = "block", "block or pair";
        /// When it was sampled.
        When = "when", "when it was sampled";
        /// A plot's own number or name.
        Plot = "plot", "number of the plot";
        /// Something else that was varied.
        Factor = "factor", "something else that was varied";
        /// A result.
        Reading = "reading", "result";
        /// Names of samples that hold treatment, block or time.
        Names = "names", "names to take apart";
        LeaveOut = "leave-out", "left out";
    }
}

/// What a person says a column is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct RoleOf {
    /// The column's head, as [`Column::head`].
    pub head: String,
    /// What it holds.
    pub role: Role,
}

/// Rows that belong to the trial: those with one of these texts under a head.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Only {
    /// The column's head.
    pub head: String,
    /// What a row must hold there.
    pub values: Vec<String>,
}

/// A change that the model foretold.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Foretold {
    /// The property.
    pub property: Property,
    /// The low end of the change.
    pub low: f64,
    /// The likely change.
    pub likely: f64,
    /// The high end.
    pub high: f64,
    /// Per cent of what was there, or none where it is in the property's own unit.
    pub unit: Unit,
}

impl Foretold {
    /// The change as a band.
    pub fn band(&self) -> Band {
        Band::new(self.low, self.likely, self.high)
    }
}

/// Judges a trial.
///
/// # Errors
/// What can't be read, with what to do, and the columns as far as they are known.
pub fn evaluate(trial: &Trial) -> Result<Evaluation, Refusal> {
    Judging::of(trial).map(Judging::told)
}
