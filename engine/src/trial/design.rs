//! How the trial was laid out, as the plots show it.

use std::collections::BTreeMap;

use super::heads::control_rank;
use super::plots::Plots;
use super::table::Table;
use super::{Refusal, Trial};
use crate::named::named;
use crate::soil::Amount;

/// More results below or above a limit than this, and there is no verdict.
/// Source: US EPA, Guidance for Data Quality Assessment, QA/G-9, 2000: half the limit may stand
/// for up to 15 % of the results (from memory).
pub(super) const MOST_AT_LIMIT: f64 = 0.15;

named! { "design", label:
    /// How the plots of a trial stand to each other.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Design {
        /// One sample of a treatment: nothing can be concluded.
        NoReplicates = "no-replicates", "no replicates";
        /// Plots given to treatments by lot over the whole bed.
        Unpaired = "unpaired", "unpaired plots";
        /// Two treatments side by side, again and again.
        Paired = "paired", "pairs of plots";
        /// Every treatment once in each block.
        Blocks = "blocks", "randomised blocks";
        /// Blocks that lack some treatments.
        IncompleteBlocks = "incomplete-blocks", "blocks that lack plots";
        /// The same plots before and after, all treated.
        BeforeAfter = "before-after", "before and after, without a control";
        /// Treated and untreated plots, each before and after.
        BeforeAfterWithControl = "before-after-with-control", "before and after, with a control";
        /// Two things varied, one of them perhaps on larger plots.
        SplitPlot = "split-plot", "two things varied (perhaps a split plot)";
        /// The same plots sampled three times or more.
        RepeatedMeasures = "repeated-measures", "the same plots many times";
    }
}

impl Design {
    /// Whether it is judged here.
    pub fn is_judged(self) -> bool {
        !matches!(self, Design::NoReplicates | Design::SplitPlot | Design::RepeatedMeasures)
    }

    fn has_blocks(self) -> bool {
        matches!(self, Design::Paired | Design::Blocks | Design::IncompleteBlocks)
    }

    fn is_change(self) -> bool {
        matches!(self, Design::BeforeAfter | Design::BeforeAfterWithControl)
    }
}

/// The plots with their design.
#[derive(Clone, Debug)]
pub(super) struct Laid {
    pub plots: Plots,
    pub design: Design,
    /// Whether blocks are taken out.
    pub in_blocks: bool,
    /// The first time, where changes are judged, and the last.
    pub first: Option<usize>,
    pub last: Option<usize>,
    pub control: Option<usize>,
    pub could_be: Vec<Design>,
    pub stated: String,
    /// How many plots hold each treatment.
    pub plots_of: Vec<usize>,
}

/// One plot's value of one property.
#[derive(Clone, Debug)]
pub(super) struct Seen {
    pub treatment: usize,
    pub block: Option<usize>,
    pub plot: String,
    pub value: f64,
    pub before: Option<f64>,
    pub at_limit: bool,
}

/// What tells one plot from another: its treatment, its block, its own name.
type Key = (usize, Option<usize>, String);

impl Laid {
    /// The plots' values of one property, where a result below a limit counts as `share` of it;
    /// samples of one plot are averaged, and before is taken from after.
    pub fn seen(&self, property: usize, share: f64) -> Vec<Seen> {
        let mut plots: BTreeMap<Key, [Vec<(f64, bool)>; 2]> = BTreeMap::new();
        let named = self.plots.tells_plots();
        for (at, row) in self.plots.rows.iter().enumerate() {
            let Some(amount) = row.results[property] else { continue };
            let value = match amount {
                Amount::Exactly(v) => (v, false),
                Amount::Below(limit) => (limit * share, true),
                Amount::Above(limit) => (limit, true),
            };
            let side = match row.when {
                when if when == self.last => 1,
                when if when == self.first && self.first.is_some() => 0,
                _ => continue,
            };
            let plot = if named { row.plot.clone() } else { format!("\u{0}{at:06}") };
            plots.entry((row.treatment, row.block, plot)).or_default()[side].push(value);
        }
        let mean = |all: &[(f64, bool)]| {
            let sum: f64 = all.iter().map(|(v, _)| v / all.len() as f64).sum();
            (!all.is_empty()).then_some(sum)
        };
        plots
            .into_iter()
            .filter_map(|((treatment, block, plot), [before, after])| {
                let last = mean(&after)?;
                let first = if self.first.is_some() { Some(mean(&before)?) } else { None };
                let at_limit = before.iter().chain(&after).any(|(_, limit)| *limit);
                let plot = if plot.starts_with('\u{0}') { String::new() } else { plot };
                let value = last - first.unwrap_or(0.0);
                Some(Seen { treatment, block, plot, value, before: first, at_limit })
            })
            .collect()
    }
}

impl Plots {
    /// Whether a plot can be known again: it has a name, or a block that holds its treatment once.
    fn tells_plots(&self) -> bool {
        self.rows.iter().all(|row| row.block.is_some() || !row.plot.is_empty())
    }

    /// Every plot, with the times it was sampled.
    fn keys(&self) -> BTreeMap<Key, Vec<Option<usize>>> {
        let mut keys: BTreeMap<Key, Vec<Option<usize>>> = BTreeMap::new();
        let named = self.tells_plots();
        for (at, row) in self.rows.iter().enumerate() {
            let plot = if named { row.plot.clone() } else { format!("{at:06}") };
            keys.entry((row.treatment, row.block, plot)).or_default().push(row.when);
        }
        keys
    }
}

/// Finds the design, or takes the one that was said.
pub(super) fn laid_out(trial: &Trial, plots: Plots, table: &Table) -> Result<Laid, Refusal> {
    let mut plots = plots;
    let keys = plots.keys();
    let again = |times: &Vec<Option<usize>>| {
        let mut times = times.clone();
        times.sort_unstable();
        times.dedup();
        times.len()
    };
    let most_times = keys.values().map(again).max().unwrap_or(0);
    let twice = keys.values().filter(|times| again(times) > 1).count();
    let averaged = keys.values().filter(|times| times.len() > again(times)).count();
    if averaged > 0 {
        plots.notes.push(format!(
            "Several samples of one plot are no replicates. They were averaged, in {averaged} plots."
        ));
    }
    let times = plots.whens.len();
    if times > 1 && most_times < 2 && !plots.tells_plots() {
        return Err(table.refuse(
            "There are several dates, but nothing tells which plot is which. Give each plot a number or a block, and the same one at each date.",
        ));
    }
    let changes = twice > 0;
    if times > 1 && !changes {
        plots.notes.push(
            "Each plot was sampled once, at different times, so the times were not used. What differs may come from the day as well.".into(),
        );
        plots.rows.iter_mut().for_each(|row| row.when = None);
        plots.whens.clear();
    }
    if plots.treatments.len() < 2 && !changes {
        let only = plots.treatments.first().cloned().unwrap_or_default();
        return Err(table.refuse(format!(
            "All plots hold “{only}”, so there is nothing to compare them with. Add plots without it, or what the same plots read before."
        )));
    }
    let beside = beside(&plots, &keys);
    let single = keys.keys().fold(BTreeMap::<usize, usize>::new(), |mut counts, key| {
        *counts.entry(key.0).or_default() += 1;
        counts
    });
    let no_replicates = single.values().all(|plots| *plots < 2)
        || plots.treatments.len() == 2 && single.values().any(|plots| *plots < 2);
    let at_once = beside.unwrap_or(Design::Unpaired);
    let over_time = if plots.treatments.len() < 2 {
        Design::BeforeAfter
    } else {
        Design::BeforeAfterWithControl
    };
    let mut could_be = Vec::new();
    if plots.factor.is_some() {
        could_be.push(Design::SplitPlot);
    }
    if changes && times > 2 {
        could_be.push(Design::RepeatedMeasures);
    }
    if changes {
        could_be.push(over_time);
    }
    if plots.treatments.len() > 1 {
        could_be.push(at_once);
        could_be.extend(beside.map(|_| Design::Unpaired));
    }
    let found = if no_replicates && plots.treatments.len() > 1 || keys.len() < 2 {
        could_be = vec![Design::NoReplicates];
        Design::NoReplicates
    } else {
        could_be[0]
    };
    let design = match trial.design {
        Some(said) if could_be.contains(&said) => said,
        Some(said) => {
            plots.notes.push(format!("These plots can't be judged as {}.", said.label()));
            found
        }
        None => found,
    };
    if plots.blocks.len() > 1 && beside.is_none() {
        plots.notes.push(
            "Each block holds one treatment alone, so blocks can't be told from treatments, and were not used.".into(),
        );
    }
    // A change of before and after may still stand in blocks.
    let in_blocks =
        beside.is_some() && (design.has_blocks() || design == Design::BeforeAfterWithControl);
    let last = plots.whens.len().checked_sub(1);
    // One plot before and after concludes nothing, and is shown.
    let one_plot = design == Design::NoReplicates && changes && plots.treatments.len() < 2;
    let first = if design.is_change() || one_plot { Some(0) } else { None };
    if last > Some(0) && first.is_none() && design.is_judged() {
        plots.notes.push("Only the last time was judged.".into());
    }
    let control = control(trial, &plots);
    let stated = super::stated::stated(design, &plots, beside, in_blocks);
    let plots_of =
        (0..plots.treatments.len()).map(|t| single.get(&t).copied().unwrap_or(0)).collect();
    Ok(Laid { plots, design, in_blocks, first, last, control, could_be, stated, plots_of })
}

/// The design with blocks, where blocks hold treatments side by side.
fn beside(plots: &Plots, keys: &BTreeMap<Key, Vec<Option<usize>>>) -> Option<Design> {
    let mut cells: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (treatment, block, _) in keys.keys() {
        cells.entry((*block)?).or_insert_with(|| vec![0; plots.treatments.len()])[*treatment] += 1;
    }
    let shared = |counts: &&Vec<usize>| counts.iter().filter(|n| **n > 0).count() > 1;
    if cells.len() < 2 || !cells.values().any(|counts| shared(&counts)) {
        return None;
    }
    let once = cells.values().flatten().all(|n| *n <= 1);
    let alike = cells.values().flatten().all(|n| *n == 1);
    Some(match (plots.treatments.len(), once, alike) {
        (2, true, _) => Design::Paired,
        (_, _, true) => Design::Blocks,
        _ => Design::IncompleteBlocks,
    })
}

/// The treatment that the others are compared with: the one that was said, else the one whose
/// name says that nothing was done, else the first of two.
fn control(trial: &Trial, plots: &Plots) -> Option<usize> {
    let said = trial.control.as_ref();
    let said = said.and_then(|name| plots.treatments.iter().position(|known| known == name));
    if trial.every_pair && plots.treatments.len() > 2 {
        return None;
    }
    let ranked = plots.treatments.iter().enumerate();
    let by_name = ranked.filter_map(|(at, name)| Some((control_rank(name)?, at))).min();
    let first = (plots.treatments.len() <= 2).then_some(0);
    said.or(by_name.map(|(_, at)| at)).or(first)
}
