//! Many properties, one trial: how chance is kept to 5 % over all of them.

/// The share of trials without any effect that may give an arrow all the same.
/// Source: common practice, no source.
pub(super) const ALPHA: f64 = 0.05;

/// Holm's adjusted probabilities, in the order given. What is no number counts as 1.
///
/// Source: Holm 1979 (from memory): the i-th smallest times what is left, never falling.
pub fn holm(p: &[f64]) -> Vec<f64> {
    let p: Vec<f64> = p.iter().map(|p| if p.is_nan() { 1.0 } else { *p }).collect();
    let mut order: Vec<usize> = (0..p.len()).collect();
    order.sort_by(|a, b| p[*a].total_cmp(&p[*b]));
    let mut adjusted = vec![1.0; p.len()];
    let mut largest = 0.0_f64;
    for (done, at) in order.into_iter().enumerate() {
        largest = largest.max(p[at] * (p.len() - done) as f64).min(1.0);
        adjusted[at] = largest;
    }
    adjusted
}

/// By how much each family of comparisons shares the 5 %: its own test is read at `ALPHA` over
/// this. `largest` holds the largest probability of each family.
///
/// Holm's steps: a family hands its share on once all of its comparisons are shown. With one
/// comparison in each, an interval at that level excludes nought just where Holm's adjusted
/// probability is below 5 %. With several, the share stays with a family that is not wholly
/// shown, so that no more than 5 % is ever at stake.
pub(super) fn shares(largest: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..largest.len()).collect();
    order.sort_by(|a, b| largest[*a].total_cmp(&largest[*b]));
    let mut shares = vec![1.0; largest.len()];
    let mut left = largest.len();
    let mut stopped = false;
    for at in order {
        shares[at] = left as f64;
        stopped |= largest[at] * left as f64 >= ALPHA;
        if !stopped {
            left -= 1;
        }
    }
    shares
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand.
    #[test]
    fn the_steps_of_holm() {
        let adjusted = holm(&[0.04, 0.01, 0.03, f64::NAN]);
        let expected = [0.09, 0.04, 0.09, 1.0];
        for (a, b) in adjusted.iter().zip(expected) {
            assert!((a - b).abs() < 1e-12, "{adjusted:?}");
        }
    }

    #[test]
    fn a_share_shows_what_holm_shows() {
        for p in [[0.001, 0.02, 0.03], [0.01, 0.01, 0.2], [0.016, 0.024, 0.06], [0.5, 0.6, 0.01]] {
            let by_share: Vec<bool> =
                p.iter().zip(shares(&p)).map(|(p, share)| p * share < ALPHA).collect();
            let by_holm: Vec<bool> = holm(&p).iter().map(|p| *p < ALPHA).collect();
            assert_eq!(by_share, by_holm, "{p:?}");
        }
    }
}
