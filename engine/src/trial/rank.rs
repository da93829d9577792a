//! Exact tests of ranks, ties and all: counted, not approximated.
//!
//! Source: Wilcoxon 1945, Mann and Whitney 1947 (from memory); ties take the mean of their
//! ranks, and the count is over those.

/// Twice the rank of each value, ties sharing the mean: whole numbers.
fn double_ranks(values: &[f64]) -> Vec<usize> {
    let below = |v: f64| values.iter().filter(|other| **other < v).count();
    let same = |v: f64| values.iter().filter(|other| **other == v).count();
    values.iter().map(|v| 2 * below(*v) + same(*v) + 1).collect()
}

/// The share of ways whose sum is as far from the middle as `sum`. `ways` holds how likely
/// each sum is.
fn as_far(ways: &[f64], sum: usize, twice_middle: f64) -> f64 {
    let away = |sum: usize| (2.0 * sum as f64 - twice_middle).abs();
    let far: f64 =
        ways.iter().enumerate().filter(|(s, _)| away(*s) >= away(sum) - 1e-9).map(|(_, w)| w).sum();
    far.min(1.0)
}

/// The probability, both sides, that chance alone parts two groups as far by their ranks.
/// Values that are no number must not come in. At most some 200 values in all.
pub fn rank_sum(one: &[f64], other: &[f64]) -> f64 {
    // Both sides count alike, and the smaller group takes fewer steps.
    let (one, other) = if one.len() > other.len() { (other, one) } else { (one, other) };
    let all: Vec<f64> = one.iter().chain(other).copied().collect();
    let ranks = double_ranks(&all);
    let total: usize = ranks.iter().sum();
    // ways[n][s]: the share of choices of n values whose doubled ranks come to s.
    let mut ways = vec![vec![0.0; total + 1]; one.len() + 1];
    ways[0][0] = 1.0;
    for (seen, rank) in ranks.iter().enumerate() {
        for n in (1..=one.len().min(seen + 1)).rev() {
            let (fewer, these) = ways.split_at_mut(n);
            for sum in *rank..=total {
                these[0][sum] += fewer[n - 1][sum - rank];
            }
        }
    }
    let counted: f64 = ways[one.len()].iter().sum();
    let shares: Vec<f64> = ways[one.len()].iter().map(|w| w / counted).collect();
    let sum: usize = ranks[..one.len()].iter().sum();
    as_far(&shares, sum, 2.0 * total as f64 * one.len() as f64 / all.len() as f64)
}

/// The same for differences within pairs; those of nought are left out.
pub fn signed_rank(differences: &[f64]) -> f64 {
    let kept: Vec<f64> = differences.iter().copied().filter(|d| *d != 0.0).collect();
    let sizes: Vec<f64> = kept.iter().map(|d| d.abs()).collect();
    let ranks = double_ranks(&sizes);
    let total: usize = ranks.iter().sum();
    let mut ways = vec![0.0; total + 1];
    ways[0] = 1.0;
    for rank in &ranks {
        for sum in (0..=total).rev() {
            let with = if sum >= *rank { ways[sum - rank] } else { 0.0 };
            ways[sum] = 0.5 * (ways[sum] + with);
        }
    }
    let up: usize = ranks.iter().zip(&kept).filter(|(_, d)| **d > 0.0).map(|(rank, _)| rank).sum();
    as_far(&ways, up, total as f64)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: of 20 ways to take three of six, two are as far apart.
    #[test]
    fn three_and_three() {
        assert!((rank_sum(&[1.0, 2.0, 3.0], &[4.0, 5.0, 6.0]) - 0.1).abs() < 1e-12);
        assert!((rank_sum(&[5.0; 3], &[5.0; 3]) - 1.0).abs() < 1e-12);
    }

    /// By hand: of 16 ways to sign four pairs, two have all on one side.
    #[test]
    fn four_pairs() {
        assert!((signed_rank(&[0.1, 0.2, 0.3, 0.4]) - 0.125).abs() < 1e-12);
        assert_eq!(signed_rank(&[0.0, 0.0]), 1.0);
    }
}
