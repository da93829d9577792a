//! Whether what is left over looks normal: the test of Shapiro and Wilk.
//!
//! Source: Royston 1995, algorithm AS R94 (from memory); `shapiro.test` of R agrees.

use std::f64::consts::PI;

use super::distributions::{normal_below, normal_density};

/// The fewest and the most values that it is worked for.
const WORKED: std::ops::RangeInclusive<usize> = 3..=5_000;

/// A polynomial, its constant first.
fn polynomial(of: &[f64], x: f64) -> f64 {
    of.iter().rev().fold(0.0, |sum, c| sum * x + c)
}

/// The z below which `p` of the normal distribution lies, `p` within 0 and 1.
///
/// Source: Abramowitz and Stegun 26.2.23 to begin with (from memory), then Newton's steps.
fn normal_quantile(p: f64) -> f64 {
    let t = (-2.0 * p.min(1.0 - p).ln()).sqrt();
    let top = polynomial(&[2.515_517, 0.802_853, 0.010_328], t);
    let z = t - top / polynomial(&[1.0, 1.432_788, 0.189_269, 0.001_308], t);
    let mut z = if p < 0.5 { -z } else { z };
    for _ in 0..4 {
        z -= (normal_below(z) - p) / normal_density(z);
    }
    z
}

/// The weights of the order statistics from the outermost in, for `n` values.
fn weights(n: usize) -> Vec<f64> {
    if n == 3 {
        return vec![0.5f64.sqrt()];
    }
    let place = |i: usize| -normal_quantile((i as f64 - 0.375) / (n as f64 + 0.25));
    let expected: Vec<f64> = (1..=n / 2).map(place).collect();
    let squares = 2.0 * expected.iter().map(|m| m * m).sum::<f64>();
    let root = 1.0 / (n as f64).sqrt();
    let first = polynomial(&[0.0, 0.221_157, -0.147_981, -2.071_19, 4.434_685, -2.706_056], root)
        + expected[0] / squares.sqrt();
    let mut fixed = vec![first];
    if n > 5 {
        let second =
            polynomial(&[0.0, 0.042_981, -0.293_762, -1.752_461, 5.682_633, -3.582_633], root);
        fixed.push(second + expected[1] / squares.sqrt());
    }
    let left = squares - 2.0 * expected[..fixed.len()].iter().map(|m| m * m).sum::<f64>();
    let rest = 1.0 - 2.0 * fixed.iter().map(|a| a * a).sum::<f64>();
    let scale = (rest / left).sqrt();
    let of = |(at, m): (usize, &f64)| fixed.get(at).copied().unwrap_or(m * scale);
    expected.iter().enumerate().map(of).collect()
}

/// W of Shapiro and Wilk and the chance of so small a one where the values are normal; `None` for
/// fewer than 3 or more than 5,000 values, and where they are all alike.
pub fn shapiro_wilk(values: &[f64]) -> Option<(f64, f64)> {
    let n = values.len();
    if !WORKED.contains(&n) || values.iter().any(|v| !v.is_finite()) {
        return None;
    }
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let reach = sorted[n - 1] - sorted[0];
    // In shares of their reach, so that no square is lost.
    let scaled: Vec<f64> = sorted.iter().map(|v| (v - sorted[0]) / reach).collect();
    let mean = scaled.iter().sum::<f64>() / n as f64;
    let all: f64 = scaled.iter().map(|v| (v - mean).powi(2)).sum();
    if !(all.is_finite() && all > 0.0) {
        return None;
    }
    let line: f64 =
        weights(n).iter().enumerate().map(|(i, a)| a * (scaled[n - 1 - i] - scaled[i])).sum();
    let w = (line * line / all).min(1.0);
    Some((w, chance(w, n as f64)))
}

/// The chance of a W no larger than this.
fn chance(w: f64, n: f64) -> f64 {
    if n < 4.0 {
        let least = 0.75f64.sqrt().asin();
        return (6.0 / PI * (w.sqrt().asin() - least)).clamp(0.0, 1.0);
    }
    let (lack, ln) = ((1.0 - w).ln(), n.ln());
    let (y, mean, sd) = if n < 12.0 {
        let most = 0.459 * n - 2.273;
        if lack >= most {
            return 0.0;
        }
        let mean = polynomial(&[0.544, -0.399_78, 0.025_054, -6.714e-4], n);
        (-(most - lack).ln(), mean, polynomial(&[1.382_2, -0.778_57, 0.062_767, -0.002_032_2], n))
    } else {
        let mean = polynomial(&[-1.586_1, -0.310_82, -0.083_751, 0.003_891_5], ln);
        (lack, mean, polynomial(&[-0.480_3, -0.082_676, 0.003_030_2], ln))
    };
    normal_below(-(y - mean) / sd.exp())
}
