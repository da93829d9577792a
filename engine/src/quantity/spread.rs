//! How wide a product of uncertain numbers is.

use crate::quantity::Band;

/// The product of independent numbers that are all positive. Their relative
/// bounds add up as squares (the usual propagation of error), since all of
/// them being at their worst at once is most unlikely.
///
/// A factor that is likely zero makes the product zero.
pub fn product(factors: &[Band]) -> Band {
    let likely: f64 = factors.iter().map(|f| f.likely).product();
    if !likely.is_finite() || likely <= 0.0 {
        return Band::exactly(0.0);
    }
    let spread = |end: fn(&Band) -> f64| {
        let squares: f64 =
            factors.iter().map(|f| (end(f).max(f64::MIN_POSITIVE) / f.likely).ln().powi(2)).sum();
        squares.sqrt()
    };
    Band::new(likely * (-spread(|f| f.low)).exp(), likely, likely * spread(|f| f.high).exp())
}

/// One over a positive number.
pub fn inverse(band: Band) -> Band {
    band.map(|v| 1.0 / v)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_numbers_known_to_a_factor_of_two_give_less_than_a_factor_of_four() {
        let twice = Band::new(5.0, 10.0, 20.0);
        let both = product(&[twice, twice]);
        assert_eq!(both.likely, 100.0);
        let factor = 2f64.powf(2f64.sqrt());
        assert!((both.high / 100.0 - factor).abs() < 1e-9);
        assert!((100.0 / both.low - factor).abs() < 1e-9);
        let one = product(&[twice]);
        assert!((one.low - 5.0).abs() < 1e-9 && (one.high - 20.0).abs() < 1e-9);
    }

    #[test]
    fn nothing_times_anything_is_nothing() {
        let zero = product(&[Band::exactly(0.0), Band::new(1.0, 2.0, 3.0)]);
        assert_eq!(zero, Band::exactly(0.0));
    }
}
