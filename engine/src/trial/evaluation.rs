//! What is told of a trial.

use serde::Serialize;

use super::{Design, Role};
use crate::case::TrialFinding;
use crate::named::named;
use crate::plan::calibrate;
use crate::quantity::{Band, Unit};
use crate::soil::{Method, Property};
use crate::sources::Citation;

/// Why a trial can't be judged, and what to do. Nothing that was typed is lost.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Refusal {
    /// What is wrong and what to do.
    pub message: String,
    /// The columns as far as they were read, so that their roles can be changed.
    pub columns: Vec<Column>,
}

impl std::fmt::Display for Refusal {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for Refusal {}

/// A column and what it was taken for.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Column {
    /// Its head, made unique.
    pub head: String,
    /// What it holds.
    pub role: Role,
    /// Why it was taken for that, in a sentence.
    pub why: String,
    /// The property, where the head is known.
    pub property: Option<Property>,
    /// The unit, where one is named.
    pub unit: Option<Unit>,
    /// How it was measured, where that is named.
    pub method: Option<Method>,
    /// The different texts in it, the first 40, where it is no result.
    pub levels: Vec<String>,
    /// How many of its cells are numbers.
    pub numbers: usize,
}

/// A trial, judged.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Evaluation {
    /// The columns with their roles.
    pub columns: Vec<Column>,
    /// The treatments in the order of the table, the control among them.
    pub treatments: Vec<Level>,
    /// The control, by its place in `treatments`; none where every pair is compared.
    pub control: Option<usize>,
    /// How many plots there are.
    pub plots: usize,
    /// How many blocks or pairs, where there are any.
    pub blocks: usize,
    /// The design.
    pub design: Design,
    /// The design in a sentence, with the reason where it is refused.
    pub stated: String,
    /// The designs that these plots can also be judged as.
    pub could_be: Vec<Design>,
    /// What was averaged, left out or read in a way that could be wrong.
    pub notes: Vec<String>,
    /// The whole in a line.
    pub headline: String,
    /// Each property, in the order of the table.
    pub results: Vec<TrialResult>,
    /// How the verdicts were guarded against chance over all properties, in a sentence.
    pub guard: String,
    /// What the methods rest on.
    pub sources: Vec<Citation>,
}

impl Evaluation {
    /// What one treatment did beside the control, of each property that the model foretold, for
    /// the plan of its bed. What changed in plots that were all treated may come of the season,
    /// and teaches nothing.
    pub fn findings(&self, treatment: usize) -> Vec<TrialFinding> {
        let of_property = |result: &TrialResult| {
            let is_it = |c: &&Comparison| {
                c.treatment == treatment
                    && c.treatment != c.control
                    && self.control == Some(c.control)
            };
            let seen = result.comparisons.iter().find(is_it)?.foretold.as_ref()?;
            let (model, found) = (seen.foretold, seen.found.band());
            calibrate(model, found)?;
            Some(TrialFinding {
                property: result.property?,
                foretold: [model.low, model.likely, model.high],
                found: [found.low, found.likely, found.high],
            })
        };
        self.results.iter().filter_map(of_property).collect()
    }
}

/// A treatment and its plots.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Level {
    /// Its name as in the table.
    pub name: String,
    /// Its plots.
    pub plots: usize,
}

/// One property.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct TrialResult {
    /// Its head in the table.
    pub head: String,
    /// What it is called in a sentence: the property's name, or the head in quotes.
    pub label: String,
    /// The property, where the head is known.
    pub property: Option<Property>,
    /// The unit, where one is named.
    pub unit: Option<Unit>,
    /// Each treatment.
    pub groups: Vec<Group>,
    /// Each treatment against the control, or each pair.
    pub comparisons: Vec<Comparison>,
    /// Whether the treatments differ at all, where there are several or blocks.
    pub overall: Option<Overall>,
    /// Readings far from what the others lead one to expect. They are used all the same.
    pub outliers: Vec<Outlier>,
    /// Whether the scatter looks normal, where there are plots enough to tell.
    pub normality: Option<Normality>,
    /// The share of results below or above a limit, 0 to 1.
    pub limits_share: f64,
    /// The standard deviation of plots treated alike, in the unit: what the next trial is
    /// planned from. `None` without replicates.
    pub residual_sd: Option<f64>,
    /// The mean of all plots, in the unit.
    pub mean: f64,
    /// What else is to be known of it.
    pub notes: Vec<String>,
}

/// One treatment's plots of one property.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Group {
    /// The treatment, by its place.
    pub treatment: usize,
    /// Plots with a result.
    pub n: usize,
    /// Plots without one.
    pub missing: usize,
    /// The mean; of the change, where there is before and after.
    pub mean: f64,
    /// The standard deviation; `None` for a single plot.
    pub sd: Option<f64>,
    /// The mean with what the blocks that it lacks would have made of it.
    pub adjusted: f64,
    /// Each plot.
    pub readings: Vec<Reading>,
}

/// One plot's result.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Reading {
    /// The plot's own name, empty where it has none.
    pub plot: String,
    /// Its block or pair, empty where it has none.
    pub block: String,
    /// The value that was worked with: of a result below a limit, half the limit.
    pub value: f64,
    /// The value before, where there is before and after: `value` is then the change.
    pub before: Option<f64>,
    /// Whether it, or a part of it, was below or above a limit.
    pub at_limit: bool,
}

/// An estimate with its ends.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Interval {
    /// The low end.
    pub low: f64,
    /// The estimate.
    pub value: f64,
    /// The high end.
    pub high: f64,
}

impl Interval {
    /// As a band.
    pub fn band(&self) -> Band {
        Band::new(self.low, self.value, self.high)
    }
}

named! { "verdict":
    /// What can be said of one property.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Verdict {
        /// Higher than the control.
        Rose = "rose";
        /// Lower.
        Fell = "fell";
        /// These plots can't tell.
        CantTell = "cant-tell";
        /// A single plot of a treatment: nothing can be concluded.
        NoReplicates = "no-replicates";
        /// Too many results lie below or above a limit.
        TooManyAtLimit = "too-many-at-limit";
        /// The design is one that is not judged here.
        NotJudged = "not-judged";
    }
}

named! { "test", label:
    /// The test that stands behind an interval.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Test {
        Welch = "welch", "Welch's t test";
        Paired = "paired-t", "paired t test";
        Blocks = "blocks", "analysis of variance with blocks, by least squares";
        Dunnett = "dunnett", "Dunnett's test";
        TukeyKramer = "tukey-kramer", "Tukey–Kramer test";
        /// Least squares, with Šidák's bound for several comparisons.
        Sidak = "sidak", "analysis of variance by least squares, with Šidák's bound";
    }
}

named! { "exact test", label:
    /// A test that counts how often chance alone would do the same.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum ExactTest {
        /// Of all ways to give the plots to the treatments.
        Permutation = "permutation", "permutation test";
        /// The same of ranks: Wilcoxon and Mann–Whitney.
        RankSum = "rank-sum", "rank-sum test";
        /// Of all ways to turn the pairs round.
        SignFlip = "sign-flip", "permutation test of pairs";
        /// The same of ranks: Wilcoxon.
        SignedRank = "signed-rank", "signed-rank test";
    }
}

/// An exact test beside the other.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Exact {
    /// Which.
    pub test: ExactTest,
    /// Its probability, both sides.
    pub p: f64,
    /// The least it could have come to with so many plots.
    pub least: f64,
    /// Why it is given, and what it says.
    pub text: String,
}

/// One treatment against another.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Comparison {
    /// The treatment, by its place.
    pub treatment: usize,
    /// What it is compared with.
    pub control: usize,
    /// What can be said.
    pub verdict: Verdict,
    /// The verdict in a sentence or two.
    pub text: String,
    /// The difference with its 95 % interval; `None` without replicates or any scatter.
    /// `value` alone is always known.
    pub difference: f64,
    /// The 95 % interval, for this property alone; with several treatments for all of them
    /// together.
    pub interval: Option<Interval>,
    /// The wider interval that holds for all properties together: an arrow is only given
    /// where it excludes nought.
    pub guarded: Option<Interval>,
    /// The treatment as a multiple of the control, with its 95 % interval, for this pair
    /// alone; none for pH, changes, and where the control may be nought.
    pub ratio: Option<Interval>,
    /// The standard error of the difference.
    pub standard_error: Option<f64>,
    /// Degrees of freedom of the error.
    pub df: Option<f64>,
    /// The test.
    pub test: Option<Test>,
    /// Why that test, in a sentence.
    pub why: String,
    /// Its t.
    pub t: Option<f64>,
    /// Its probability, with several treatments that of the test for several.
    pub p: Option<f64>,
    /// The same after Holm over all properties.
    pub p_holm: Option<f64>,
    /// An exact test, where plots are few or values tied.
    pub exact: Option<Exact>,
    /// The smallest difference that these plots would have shown in 80 of 100 such trials.
    pub smallest: Option<f64>,
    /// The model's word beside it.
    pub foretold: Option<Foreseen>,
}

/// What the model foretold, beside what was found in the same measure.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Foreseen {
    /// What was foretold.
    pub foretold: Band,
    /// What was found, with its 95 % interval.
    pub found: Interval,
    /// Per cent of the control, or none for the property's own unit.
    pub unit: Unit,
    /// `Some(true)` agrees, `Some(false)` does not, `None` can't tell.
    pub agrees: Option<bool>,
    /// In a sentence.
    pub text: String,
}

/// A look at the scatter that the intervals take for normal. It changes no verdict.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Normality {
    /// W of Shapiro and Wilk, 0 to 1.
    pub w: f64,
    /// The chance of so small a one where the scatter is normal.
    pub p: f64,
    /// In a sentence.
    pub text: String,
}

/// Whether the treatments differ at all.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Overall {
    /// The F of the treatments, blocks taken out first.
    pub f: f64,
    /// Degrees of freedom of the treatments.
    pub df: f64,
    /// Degrees of freedom of the error.
    pub error_df: f64,
    /// The mean square of the error.
    pub error: f64,
    /// The probability of so large an F by chance.
    pub p: f64,
}

/// A reading far from the others.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Outlier {
    /// The treatment, by its place.
    pub treatment: usize,
    /// The plot's name or block.
    pub plot: String,
    /// Its value.
    pub value: f64,
    /// What is said of it.
    pub text: String,
}
