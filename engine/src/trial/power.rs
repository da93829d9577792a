//! What a trial could have seen, and how many plots the next one takes: the power of the
//! t test, by the non-central t.

use super::distributions::{normal_below, root, t_critical};
use super::spread::Spread;

/// The share of trials that would show a difference that is there. Common practice, no source.
pub const POWER: f64 = 0.8;

/// The most plots of a treatment that are planned. Our choice.
pub const MOST_REPLICATES: usize = 500;

/// P(T ≤ t) of the non-central t with `df` degrees of freedom, shifted by `shift`.
pub fn noncentral_t_below(t: f64, df: f64, shift: f64) -> f64 {
    Spread::of(df, shift.abs().max(t.abs().min(12.0))).mean(|s| normal_below(t * s - shift))
}

/// The chance that a two-sided test with this critical value shows a difference of `shift`
/// standard errors, on either side.
pub fn power(shift: f64, df: f64, critical: f64) -> f64 {
    let spread = Spread::of(df, shift.abs().max(critical.min(12.0)));
    spread.mean(|s| normal_below(shift - critical * s) + normal_below(-shift - critical * s))
}

/// The smallest difference that such a test sees with [`POWER`], in standard errors.
pub fn smallest_shift(df: f64, critical: f64) -> f64 {
    let lacks = |shift: f64| power(shift, df, critical) - POWER;
    let mut high = critical + 2.0;
    while lacks(high) < 0.0 && high < 1e9 {
        high *= 1.5;
    }
    root(lacks, 0.0, high)
}

/// Degrees of freedom of the error, and the standard error of a difference in standard
/// deviations, for `n` plots of each of `treatments`.
fn error_of(n: usize, treatments: usize, in_blocks: bool) -> (f64, f64) {
    let (n, treatments) = (n as f64, treatments as f64);
    let df = if in_blocks { (n - 1.0) * (treatments - 1.0) } else { treatments * (n - 1.0) };
    (df, (2.0 / n).sqrt())
}

/// Plots of each treatment that show a difference of `differences` standard deviations with a
/// chance of `power_wanted` at 5 %; `None` where even [`MOST_REPLICATES`] do not. Several
/// treatments share the 5 % equally (Bonferroni).
pub fn replicates(
    differences: f64,
    power_wanted: f64,
    treatments: usize,
    in_blocks: bool,
) -> Option<usize> {
    let enough = |n: usize| {
        let (df, error) = error_of(n, treatments, in_blocks);
        let share = 0.05 / (treatments - 1) as f64;
        power(differences.abs() / error, df, t_critical(share, df)) >= power_wanted
    };
    if !(differences.is_finite() && differences != 0.0 && treatments >= 2) {
        return None;
    }
    let (mut low, mut high) = (1, 2);
    while !enough(high) {
        low = high;
        high *= 2;
        if low >= MOST_REPLICATES {
            return None;
        }
    }
    while high - low > 1 {
        let middle = low.midpoint(high);
        if enough(middle) { high = middle } else { low = middle }
    }
    (high <= MOST_REPLICATES).then_some(high)
}
