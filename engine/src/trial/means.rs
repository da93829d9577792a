//! Means and scatter of treatments, and two of them against each other without equal scatter.

/// A sum whose error does not grow with the number of its terms.
///
/// Source: Neumaier 1974, after Kahan (from memory).
pub(super) fn sum(terms: impl Iterator<Item = f64>) -> f64 {
    let (mut all, mut lost) = (0.0, 0.0);
    for term in terms {
        let next: f64 = all + term;
        // What the larger of both can't hold of the smaller.
        lost += if f64::abs(all) >= term.abs() { (all - next) + term } else { (term - next) + all };
        all = next;
    }
    all + lost
}

/// How many, their mean and their variance; a variance of `None` for a single value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Mean {
    pub n: usize,
    pub mean: f64,
    pub variance: Option<f64>,
}

impl Mean {
    /// Of at least one value. Worked from the first value in two passes, so that many leading
    /// digits in common cost none of the last.
    pub fn of(values: &[f64]) -> Mean {
        let first = values.first().copied().unwrap_or(0.0);
        let n = values.len() as f64;
        let shift = sum(values.iter().map(|v| v - first)) / n;
        let away = |v: &f64| (v - first) - shift;
        let slip = sum(values.iter().map(away)) / n;
        let squares = sum(values.iter().map(|v| (away(v) - slip).powi(2)));
        let variance = (values.len() > 1).then(|| squares / (n - 1.0));
        Mean { n: values.len(), mean: first + (shift + slip), variance }
    }
}

/// The standard error of the difference of two means, and its degrees of freedom.
///
/// Source: Welch 1947 (from memory); `t.test` of R agrees.
pub(super) fn welch(one: Mean, other: Mean) -> Option<(f64, f64)> {
    let part = |m: Mean| Some((m.variance? / m.n as f64, m.n as f64 - 1.0));
    let ((a, df_a), (b, df_b)) = (part(one)?, part(other)?);
    let square = a + b;
    // Shares of the whole, so that what is small stays a number.
    let (a, b) = if square > 0.0 { (a / square, b / square) } else { (0.5, 0.5) };
    Some((square.sqrt(), 1.0 / (a * a / df_a + b * b / df_b)))
}
