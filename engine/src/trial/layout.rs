//! Which plot gets what, by lot from a seed that is shown: the same seed, the same layout.

use serde::Serialize;

/// One plot of a layout.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PlotOf {
    /// Its number, from 1, in the order of the bed.
    pub plot: usize,
    /// Its block, from 1; 1 for all where there are no blocks.
    pub block: usize,
    /// What it gets.
    pub treatment: String,
}

/// Numbers that fall as if by chance, and the same for the same seed.
///
/// Source: Steele, Lea and Flood 2014, SplitMix64 (from memory).
struct Lots(u64);

impl Lots {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number below `below`, each as likely: what would make some likelier is drawn again.
    fn below(&mut self, below: usize) -> usize {
        let below = below as u64;
        let fair = u64::MAX - u64::MAX % below;
        loop {
            let drawn = self.next();
            if drawn < fair {
                return (drawn % below) as usize;
            }
        }
    }

    /// Source: Fisher and Yates 1938, Durstenfeld 1964 (from memory).
    fn shuffle<T>(&mut self, all: &mut [T]) {
        for at in (1..all.len()).rev() {
            let other = self.below(at + 1);
            all.swap(at, other);
        }
    }
}

/// Gives `replicates` plots to each treatment by lot: over the whole bed, or one of each in
/// every block.
pub fn layout(treatments: &[String], replicates: usize, in_blocks: bool, seed: u64) -> Vec<PlotOf> {
    let mut lots = Lots(seed);
    let mut order: Vec<(usize, usize)> = Vec::new();
    for block in 1..=replicates {
        let mut own: Vec<usize> = (0..treatments.len()).collect();
        if in_blocks {
            lots.shuffle(&mut own);
        }
        order.extend(own.into_iter().map(|t| (if in_blocks { block } else { 1 }, t)));
    }
    if !in_blocks {
        lots.shuffle(&mut order);
    }
    let plots = order.into_iter().enumerate();
    plots
        .map(|(at, (block, treatment))| PlotOf {
            plot: at + 1,
            block,
            treatment: treatments[treatment].clone(),
        })
        .collect()
}

/// A layout as a table with commas, to be filled in.
pub fn layout_csv(plots: &[PlotOf]) -> String {
    let mut text = String::from("Plot,Block,Treatment\n");
    for PlotOf { plot, block, treatment } in plots {
        text += &format!("{plot},{block},{}\n", quoted(treatment));
    }
    text
}

/// A cell of a table with commas.
pub(super) fn quoted(text: &str) -> String {
    // A spreadsheet takes a cell that begins so for a formula.
    let text =
        if text.starts_with(['=', '+', '-', '@']) { format!("'{text}") } else { text.into() };
    if text.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    fn names(many: usize) -> Vec<String> {
        (0..many).map(|at| format!("T{at}")).collect()
    }

    #[test]
    fn every_block_holds_each_treatment_once_and_the_seed_decides() {
        let plots = layout(&names(3), 5, true, 42);
        assert_eq!(plots, layout(&names(3), 5, true, 42));
        assert_ne!(plots, layout(&names(3), 5, true, 43));
        for block in 1..=5 {
            let mut own: Vec<&str> =
                plots.iter().filter(|p| p.block == block).map(|p| p.treatment.as_str()).collect();
            own.sort_unstable();
            assert_eq!(own, ["T0", "T1", "T2"]);
        }
    }

    /// 6 orders of 3 plots over 6000 seeds: each near 1000, within 5 standard deviations.
    #[test]
    fn every_order_is_as_likely() {
        let mut counts: BTreeMap<Vec<String>, i32> = BTreeMap::new();
        for seed in 0..6000 {
            let order = layout(&names(3), 1, false, seed).into_iter().map(|p| p.treatment);
            *counts.entry(order.collect()).or_default() += 1;
        }
        assert_eq!(counts.len(), 6);
        assert!(counts.values().all(|n| (n - 1000).abs() < 145), "{counts:?}");
    }

    #[test]
    fn a_name_with_a_comma_stays_one_cell() {
        let names = ["char, charged".to_string(), "=none".to_string()];
        let text = layout_csv(&layout(&names, 1, true, 1));
        assert!(text.contains("\"char, charged\"") && text.contains("'=none"), "{text}");
    }
}
