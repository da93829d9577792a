//! What the treatments and blocks leave over: readings that lie far off are named, never dropped.

use super::distributions::t_critical;

/// A reading is named where chance puts one so far off in fewer than 5 of 100 trials.
/// Source: common practice, no source.
const RARE: f64 = 0.05;

/// With fewer degrees of freedom than this nothing can be called far off. Our choice.
const FEWEST: f64 = 4.0;

/// The places of readings far from what is expected of them. `residuals` holds how far each
/// lies off and how much it draws the fit to itself.
///
/// Source: the t of a reading left out, each share of 5 % divided by their number (Bonferroni);
/// Cook and Weisberg, Residuals and Influence in Regression, 1982 (from memory).
pub(super) fn far_off(residuals: &[(f64, f64)], error: f64, df: f64) -> Vec<usize> {
    if df < FEWEST {
        return Vec::new();
    }
    let rare = t_critical(RARE / residuals.len() as f64, df - 1.0);
    let is_far = |(off, draws): (f64, f64)| {
        let square = off * off / (error * (1.0 - draws));
        let left = df - square;
        if !square.is_finite() || draws > 1.0 - 1e-9 {
            return false;
        }
        // All of the error is this one reading's.
        left <= 1e-9 || (square * (df - 1.0) / left).sqrt() > rare
    };
    (0..residuals.len()).filter(|at| is_far(residuals[*at])).collect()
}
