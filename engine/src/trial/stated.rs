//! The design of a trial in words.

use super::Design;
use super::plots::Plots;

/// The design in a sentence or two.
pub(super) fn stated(
    design: Design,
    plots: &Plots,
    beside: Option<Design>,
    in_blocks: bool,
) -> String {
    let (treatments, blocks) = (plots.treatments.len(), plots.blocks.len());
    let factor = plots.factor.clone().unwrap_or_default();
    match design {
        Design::NoReplicates => {
            "One sample of a treatment shows what that plot reads, not what the treatment does: two plots treated alike differ too. Take at least four plots of each treatment, by lot.".into()
        }
        Design::Unpaired if beside.is_some() => format!(
            "{treatments} treatments on plots of their own, blocks left aside."
        ),
        Design::Unpaired => format!("{treatments} treatments on plots of their own, given by lot."),
        Design::Paired => format!("{blocks} pairs: both treatments side by side in each."),
        Design::Blocks => format!("{blocks} blocks: each of {treatments} treatments once in each."),
        Design::IncompleteBlocks => format!(
            "{blocks} blocks that do not hold each of {treatments} treatments once: judged by least squares."
        ),
        Design::BeforeAfter => {
            "The same plots before and after, all treated. There are no untreated plots, so the season can't be told from the treatment.".into()
        }
        Design::BeforeAfterWithControl if in_blocks => format!(
            "{treatments} treatments, each plot before and after, in {blocks} blocks: the changes are compared."
        ),
        Design::BeforeAfterWithControl => format!(
            "{treatments} treatments, each plot before and after: the changes are compared."
        ),
        Design::SplitPlot => format!(
            "Two things were varied: the treatment and “{factor}”. In a split plot each has a scatter of its own, and this program knows one only. Choose one level of “{factor}”, call both columns a treatment if every plot was drawn by lot for both, or leave the column out."
        ),
        Design::RepeatedMeasures => format!(
            "The same plots were sampled {} times. Samples of one plot are not independent, and this program does not follow plots over many dates. Choose two dates, or judge the last one alone.",
            plots.whens.len()
        ),
    }
}
