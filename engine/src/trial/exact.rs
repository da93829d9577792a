//! Permutation tests of means: every way that lots could have fallen.
//!
//! Source: Fisher 1935, The Design of Experiments (from memory).

/// The most ways that are gone through. Our choice: some milliseconds.
const MOST_WAYS: f64 = 20_000.0;

/// Ways to choose `n` of `all`.
pub(super) fn choices(all: usize, n: usize) -> f64 {
    (0..n).map(|i| (all - i) as f64 / (i + 1) as f64).product::<f64>().round()
}

/// The probability, both sides, that lots alone set two means as far apart; `None` where there
/// are more ways than can be gone through.
pub fn permutation(one: &[f64], other: &[f64]) -> Option<f64> {
    let all: Vec<f64> = one.iter().chain(other).copied().collect();
    let ways = choices(all.len(), one.len());
    if ways > MOST_WAYS || one.is_empty() || other.is_empty() {
        return None;
    }
    let middle = all.iter().map(|v| v / all.len() as f64).sum::<f64>();
    let away: Vec<f64> = all.iter().map(|v| v - middle).collect();
    let reach: f64 = away.iter().map(|v| v.abs()).sum();
    let found = away[..one.len()].iter().sum::<f64>().abs() - 1e-9 * reach;
    let far = as_far(&away, one.len(), 0.0, found);
    Some(far as f64 / ways)
}

/// How many choices of `left` of these values come, with `sum`, to at least `found` either way.
fn as_far(values: &[f64], left: usize, sum: f64, found: f64) -> usize {
    if left == 0 {
        return usize::from(sum.abs() >= found);
    }
    if values.len() < left {
        return 0;
    }
    as_far(&values[1..], left - 1, sum + values[0], found) + as_far(&values[1..], left, sum, found)
}

/// The same for differences within pairs: every way to turn pairs round.
pub fn signed_permutation(differences: &[f64]) -> Option<f64> {
    let ways = 2f64.powi(differences.len() as i32);
    if ways > MOST_WAYS || differences.is_empty() {
        return None;
    }
    let reach: f64 = differences.iter().map(|d| d.abs()).sum();
    let found = differences.iter().sum::<f64>().abs() - 1e-9 * reach;
    let far = (0..ways as u32).filter(|signs| {
        let turned = differences.iter().enumerate();
        let sum: f64 = turned.map(|(at, d)| if signs >> at & 1 == 1 { -d } else { *d }).sum();
        sum.abs() >= found
    });
    Some(far.count() as f64 / ways)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn by_hand() {
        assert_eq!(choices(6, 3), 20.0);
        assert_eq!(permutation(&[1.0, 2.0, 3.0], &[4.0, 5.0, 6.0]), Some(0.1));
        assert_eq!(permutation(&[7.0; 3], &[7.0; 3]), Some(1.0));
        assert_eq!(signed_permutation(&[1.0, 2.0, 3.0, 4.0]), Some(0.125));
    }
}
