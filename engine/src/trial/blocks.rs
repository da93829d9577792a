//! Treatments and blocks by least squares, with plots missing or doubled; without blocks it is
//! the one-way analysis.
//!
//! Source: the reduced normal equations of the treatments, as in Cochran and Cox, Experimental
//! Designs, 1957 (from memory); `aov(y ~ block + treatment)` of R agrees.

use super::distributions::f_tail;
use super::evaluation::Overall;
use super::means::{Mean, sum};

/// One plot's value with its treatment and its block, both counted from 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Point {
    pub treatment: usize,
    pub block: usize,
    pub y: f64,
}

/// What least squares finds.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fit {
    /// The mean of each treatment over all blocks alike.
    pub means: Vec<f64>,
    /// Their variances and covariances, in units of the error's variance.
    pub covariance: Vec<Vec<f64>>,
    /// The mean square of the error.
    pub error: f64,
    /// Its degrees of freedom.
    pub df: f64,
    /// The mean square of the treatments, blocks taken out.
    pub treatments: f64,
    /// How far each point lies from what is expected of it, and how much it draws that to itself.
    pub residuals: Vec<(f64, f64)>,
}

impl Overall {
    /// Of what least squares found.
    pub(super) fn of(fit: &Fit) -> Overall {
        let (df, f) = (fit.means.len() as f64 - 1.0, fit.treatments / fit.error);
        Overall { f, df, error_df: fit.df, error: fit.error, p: f_tail(f, df, fit.df) }
    }
}

/// The one-way analysis of groups of any size, as the verdicts rest on it; `None` where nothing is
/// left for the error.
pub fn one_way(groups: &[Vec<f64>]) -> Option<Overall> {
    let of_group = |(treatment, values): (usize, &Vec<f64>)| {
        values.iter().map(|y| Point { treatment, block: 0, y: *y }).collect::<Vec<_>>()
    };
    let points: Vec<Point> = groups.iter().enumerate().flat_map(of_group).collect();
    Some(Overall::of(&fit(&points, groups.len(), 1)?))
}

/// Fits `treatments` and `blocks`; every one of both has a point. `None` where some treatments
/// never meet the others in a block, and where nothing is left for the error.
pub(super) fn fit(points: &[Point], treatments: usize, blocks: usize) -> Option<Fit> {
    let df = (points.len() + 1).checked_sub(treatments + blocks).filter(|df| *df > 0)?;
    // From the first value on: that many leading digits in common cost none of the last.
    let base = points.first()?.y;
    let mut by_block: Vec<Vec<f64>> = vec![Vec::new(); blocks];
    let mut met = vec![vec![0.0; blocks]; treatments];
    for point in points {
        by_block[point.block].push(point.y - base);
        met[point.treatment][point.block] += 1.0;
    }
    let block_means: Vec<f64> = by_block.iter().map(|all| Mean::of(all).mean).collect();
    let sizes: Vec<f64> = by_block.iter().map(|all| all.len() as f64).collect();
    // What is left of a point once its block is taken out.
    let left = |point: &Point| (point.y - base) - block_means[point.block];
    let of = |treatment| points.iter().filter(move |point| point.treatment == treatment);
    let right: Vec<f64> = (0..treatments).map(|t| sum(of(t).map(left))).collect();
    let normal = |i: usize, j: usize| {
        let own: f64 = if i == j { met[i].iter().sum() } else { 0.0 };
        own - (0..blocks).map(|b| met[i][b] * met[j][b] / sizes[b]).sum::<f64>()
    };
    // Effects are against the first treatment.
    let system: Vec<Vec<f64>> =
        (1..treatments).map(|i| (1..treatments).map(|j| normal(i, j)).collect()).collect();
    let inverse = inverted(system)?;
    let mut effects = vec![0.0];
    effects.extend(
        inverse.iter().map(|row| row.iter().zip(&right[1..]).map(|(c, r)| c * r).sum::<f64>()),
    );
    let of_block = |b: usize| -> f64 {
        (0..treatments).map(|i| met[i][b] * effects[i]).sum::<f64>() / sizes[b]
    };
    let drawn: Vec<f64> = (0..blocks).map(of_block).collect();
    let rest = |point: &Point| left(point) - (effects[point.treatment] - drawn[point.block]);
    let squares = sum(points.iter().map(|point| rest(point).powi(2)));
    let error = squares / df as f64;
    let between: f64 = effects.iter().zip(&right).map(|(effect, right)| effect * right).sum();

    // A combination of effects, as weights of the treatments, has this variance.
    let product = |one: &[f64], other: &[f64]| -> f64 {
        let rows = inverse.iter().zip(&one[1..]);
        rows.map(|(row, w)| w * row.iter().zip(&other[1..]).map(|(c, o)| c * o).sum::<f64>()).sum()
    };
    let n = blocks as f64;
    let mean_of_blocks = Mean::of(&block_means).mean;
    let weights: Vec<Vec<f64>> = (0..treatments)
        .map(|own| {
            let share = |i: usize| (0..blocks).map(|b| met[i][b] / sizes[b]).sum::<f64>() / n;
            (0..treatments).map(|i| f64::from(u8::from(i == own)) - share(i)).collect()
        })
        .collect();
    let common = sizes.iter().map(|size| 1.0 / size).sum::<f64>() / (n * n);
    let means = weights
        .iter()
        .map(|w| base + mean_of_blocks + w.iter().zip(&effects).map(|(w, e)| w * e).sum::<f64>())
        .collect();
    let covariance =
        weights.iter().map(|a| weights.iter().map(|b| common + product(a, b)).collect()).collect();
    let draws = |point: &Point| {
        let own: Vec<f64> = (0..treatments)
            .map(|i| {
                f64::from(u8::from(i == point.treatment)) - met[i][point.block] / sizes[point.block]
            })
            .collect();
        1.0 / sizes[point.block] + product(&own, &own)
    };
    Some(Fit {
        means,
        covariance,
        error,
        df: df as f64,
        treatments: between / (treatments as f64 - 1.0).max(1.0),
        residuals: points.iter().map(|point| (rest(point), draws(point))).collect(),
    })
}

/// The inverse of a symmetric matrix by Gauss and Jordan with pivots; `None` where it has none.
fn inverted(mut m: Vec<Vec<f64>>) -> Option<Vec<Vec<f64>>> {
    let n = m.len();
    let largest = m.iter().flatten().fold(0.0_f64, |a, v| a.max(v.abs()));
    let mut inverse: Vec<Vec<f64>> =
        (0..n).map(|i| (0..n).map(|j| f64::from(u8::from(i == j))).collect()).collect();
    for at in 0..n {
        let pivot = (at..n).max_by(|a, b| m[*a][at].abs().total_cmp(&m[*b][at].abs()))?;
        if m[pivot][at].abs() <= 1e-10 * largest {
            return None;
        }
        m.swap(at, pivot);
        inverse.swap(at, pivot);
        let scale = m[at][at];
        for v in m[at].iter_mut().chain(inverse[at].iter_mut()) {
            *v /= scale;
        }
        for row in (0..n).filter(|row| *row != at) {
            let factor = m[row][at];
            if factor != 0.0 {
                for column in 0..n {
                    m[row][column] -= factor * m[at][column];
                    inverse[row][column] -= factor * inverse[at][column];
                }
            }
        }
    }
    Some(inverse)
}
