//! Several treatments at once: Dunnett's test against one control, and the studentized range
//! for every pair (Tukey–Kramer).
//!
//! Source: Dunnett 1955; Tukey 1953 and Kramer 1956; Hayter 1984 (the unequal numbers are
//! safe). Both distributions are integrated here, not read from a table.

use super::distributions::{normal_below, normal_density, where_tail_is};
use super::spread::Spread;

/// How sharp the two functions are in ln S: a range of up to about 8 standard deviations.
const SHARP: f64 = 8.0;

/// Points of the normal distribution with their weights, close enough for a product of
/// `factors` normal probabilities with slopes up to `slope`.
fn normal_points(factors: usize, slope: f64) -> Vec<(f64, f64)> {
    let step = (0.7 / (1.0 + factors as f64 * slope * slope).sqrt()).min(0.5);
    let half = (8.6 / step).ceil() as i32;
    (-half..=half).map(|at| f64::from(at) * step).map(|z| (z, step * normal_density(z))).collect()
}

/// The range of `groups` means in standard errors of a mean, whose error has `df` degrees of
/// freedom.
pub struct StudentizedRange {
    groups: usize,
    spread: Spread,
    /// Points of the largest mean: z, its weight, and the share of means below it.
    points: Vec<(f64, f64, f64)>,
}

impl StudentizedRange {
    /// For at least two groups and a positive `df`.
    pub fn new(groups: usize, df: f64) -> StudentizedRange {
        let points = normal_points(groups, 1.0);
        let points = points.into_iter().map(|(z, weight)| (z, weight, normal_below(z))).collect();
        StudentizedRange { groups, spread: Spread::of(df, SHARP), points }
    }

    /// P(range > `q`).
    pub fn tail(&self, q: f64) -> f64 {
        let rest = self.groups as i32 - 1;
        let below = self.spread.mean(|s| {
            let within = self.points.iter().map(|(z, weight, below)| {
                weight * (below - normal_below(z - q * s)).max(0.0).powi(rest)
            });
            self.groups as f64 * within.sum::<f64>()
        });
        (1.0 - below).clamp(0.0, 1.0)
    }

    /// The range that is passed with probability `p`.
    pub fn critical(&self, p: f64) -> f64 {
        where_tail_is(p, |q| self.tail(q))
    }
}

/// The largest of several |t| against one control.
pub struct Dunnett {
    spread: Spread,
    points: Vec<(f64, f64)>,
    /// Each different correlation with the control as (slope, width), and how many treatments
    /// have it.
    factors: Vec<(f64, f64, i32)>,
}

impl Dunnett {
    /// For treatments of these numbers of plots beside a control of `control` plots, with a
    /// common error of `df` degrees of freedom.
    pub fn new(control: usize, treatments: &[usize], df: f64) -> Dunnett {
        let mut counts: Vec<(usize, i32)> = Vec::new();
        for &n in treatments {
            match counts.iter_mut().find(|(known, _)| *known == n) {
                Some((_, times)) => *times += 1,
                None => counts.push((n, 1)),
            }
        }
        let factors: Vec<(f64, f64, i32)> = counts
            .into_iter()
            .map(|(n, times)| {
                // λ ÷ √(1 − λ²) and 1 ÷ √(1 − λ²), where λ² = n ÷ (n + control).
                let (n, control) = (n as f64, control as f64);
                ((n / control).sqrt(), ((n + control) / control).sqrt(), times)
            })
            .collect();
        let slope = factors.iter().map(|(slope, _, _)| *slope).fold(0.0, f64::max);
        Dunnett {
            spread: Spread::of(df, SHARP),
            points: normal_points(treatments.len(), slope),
            factors,
        }
    }

    /// Normal probabilities that one tail takes: it grows with the square of unequal numbers.
    pub fn work(&self) -> usize {
        2 * self.spread.len() * self.points.len() * self.factors.len()
    }

    /// P(the largest |t| > `t`).
    pub fn tail(&self, t: f64) -> f64 {
        let t = t.abs();
        let below = self.spread.mean(|s| {
            let at = |z: f64| -> f64 {
                let each = self.factors.iter().map(|(slope, width, times)| {
                    let (middle, reach) = (slope * z, width * t * s);
                    (normal_below(middle + reach) - normal_below(middle - reach)).powi(*times)
                });
                each.product()
            };
            self.points.iter().map(|(z, weight)| weight * at(*z)).sum()
        });
        (1.0 - below).clamp(0.0, 1.0)
    }

    /// The |t| that the largest passes with probability `p`.
    pub fn critical(&self, p: f64) -> f64 {
        where_tail_is(p, |t| self.tail(t))
    }
}
