//! Means and scatter of treatments, and two of them against each other without equal scatter.

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
        let shift = values.iter().map(|v| v - first).sum::<f64>() / n;
        let away = |v: &f64| (v - first) - shift;
        let slip: f64 = values.iter().map(away).sum::<f64>() / n;
        let squares: f64 = values.iter().map(|v| (away(v) - slip).powi(2)).sum();
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
