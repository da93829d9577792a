//! Amounts as they are carried to the bed: buckets and bags by the half, cups, spoons, and what
//! is weighed.

use super::display::LITRES_PER_GALLON;
use super::{Measures, significant, weighed};
use crate::named::named;

named! { "vessel":
    /// What something is carried in.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Vessel {
        /// A bag as it is sold.
        Bag = "bag";
        /// A bucket.
        Bucket = "bucket";
        /// A jug with marks: litres, quarts or gallons.
        Jug = "jug";
        /// A cup.
        Cup = "cup";
        /// A spoon.
        Spoon = "spoon";
        /// Scales.
        Weight = "weight";
    }
}

/// One amount, as it is carried.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Portion {
    /// How many of the vessel, in halves (spoons in quarters); `None` for what is read off a
    /// mark or weighed.
    pub count: Option<f64>,
    /// The vessel.
    pub vessel: Vessel,
    /// Both in words, with one number: `4½ buckets`, `1 kg`.
    pub amount: String,
}

impl Portion {
    pub(crate) fn weighed(grams: f64, measures: Measures) -> Portion {
        Portion { count: None, vessel: Vessel::Weight, amount: weighed(grams, measures) }
    }

    /// Whole bags.
    pub(crate) fn bags(count: f64) -> Portion {
        let name = if count > 1.0 { "bags" } else { "bag" };
        let amount = format!("{} {name}", in_fractions(count));
        Portion { count: Some(count), vessel: Vessel::Bag, amount }
    }

    /// A volume without buckets.
    pub(crate) fn volume(litres: f64, measures: Measures) -> Portion {
        let vessel = if is_in_cups(litres, measures) { Vessel::Cup } else { Vessel::Jug };
        Portion { count: None, vessel, amount: volume(litres, measures) }
    }

    /// Buckets of a size where that is near enough, else a volume.
    pub(crate) fn poured(litres: f64, bucket: f64, measures: Measures) -> Portion {
        match in_buckets(litres, bucket) {
            Some(count) => {
                Portion { count: Some(count), vessel: Vessel::Bucket, amount: buckets(count) }
            }
            None => Portion::volume(litres, measures),
        }
    }
}

/// A bucket when nobody gave one, litres: ten litres, or five US gallons.
/// Our choice.
pub(crate) fn usual_bucket(measures: Measures) -> f64 {
    match measures {
        Measures::Metric => 10.0,
        Measures::Us => 5.0 * LITRES_PER_GALLON,
    }
}

/// From half a bucket on a volume is told in buckets, up to two hundred of them. Our choice.
const BUCKETS: std::ops::RangeInclusive<f64> = 0.5..=200.0;

/// From so many buckets on only whole ones are counted. Our choice.
const HALVES: f64 = 10.0;

/// How far a count of half buckets may lie from the volume, as a share of it: rather less than
/// more, since what holds an amount down is a limit. Our choice: nobody fills a bucket of
/// something loose to better than that.
const NEAR: std::ops::RangeInclusive<f64> = 0.75..=1.05;

/// A volume in half buckets of a size, where that comes near enough.
pub(crate) fn in_buckets(litres: f64, bucket: f64) -> Option<f64> {
    let exact = litres / bucket;
    if !BUCKETS.contains(&exact) {
        return None;
    }
    let step = if exact < HALVES { 0.5 } else { 1.0 };
    [(exact / step).floor() * step, (exact / step).ceil() * step]
        .into_iter()
        .filter(|count| NEAR.contains(&(count / exact)))
        .min_by(|a, b| (a - exact).abs().total_cmp(&(b - exact).abs()))
}

/// `½ bucket`, `1 bucket`, `4½ buckets`.
fn buckets(count: f64) -> String {
    format!("{} {}", in_fractions(count), if count > 1.0 { "buckets" } else { "bucket" })
}

/// A number to the quarter as it is spoken: `¼`, `2`, `4½`.
pub(crate) fn in_fractions(count: f64) -> String {
    let quarters = (4.0 * count).round();
    let whole = (quarters / 4.0).trunc();
    let part = match (quarters - 4.0 * whole) as i64 {
        1 => "¼",
        2 => "½",
        3 => "¾",
        _ => "",
    };
    if part.is_empty() || whole > 0.0 {
        format!("{}{part}", significant(whole, 15))
    } else {
        part.into()
    }
}

/// Litres in a US cup. Source: legal definition, a sixteenth of a gallon (derived).
const CUP: f64 = LITRES_PER_GALLON / 16.0;

/// Less than half a gallon is measured in cups.
fn is_in_cups(litres: f64, measures: Measures) -> bool {
    measures == Measures::Us && litres < 0.5 * LITRES_PER_GALLON
}

/// A volume without buckets: `0.86 L`, `250 mL`, `3 cups`, `2.1 gal`.
pub(crate) fn volume(litres: f64, measures: Measures) -> String {
    let said = |value: f64, unit: &str| format!("{}\u{a0}{unit}", significant(value, 2));
    match measures {
        Measures::Metric if litres < 0.5 => said(1000.0 * litres, "mL"),
        Measures::Metric => said(litres, "L"),
        Measures::Us if is_in_cups(litres, measures) => {
            let cups = litres / CUP;
            said(cups, if significant(cups, 2) == "1" { "cup" } else { "cups" })
        }
        Measures::Us => said(litres / LITRES_PER_GALLON, "gal"),
    }
}

/// A volume with its buckets, where they say it well: `40 L (4 ten-litre buckets)`,
/// `43 L (about 4½ ten-litre buckets)`; `kind` is what kind of bucket it is.
pub(crate) fn with_buckets(litres: f64, bucket: f64, kind: &str, measures: Measures) -> String {
    let text = volume(litres, measures);
    let Some(count) = in_buckets(litres, bucket) else { return text };
    let about = if volume(count * bucket, measures) == text { "" } else { "about " };
    let number = in_fractions(count);
    if count > 1.0 {
        format!("{text} ({about}{number} {kind}buckets)")
    } else {
        format!("{text} ({about}{number} {kind}bucket)")
    }
}

/// Litres in one of what a pot is sold by, and its sign.
pub fn pot_measure(measures: Measures) -> (f64, &'static str) {
    match measures {
        Measures::Metric => (1.0, "L"),
        Measures::Us => (LITRES_PER_GALLON, "gal"),
    }
}

/// Litres in one of what a scoop is known by, and its sign.
pub fn scoop_measure(measures: Measures) -> (f64, &'static str) {
    match measures {
        Measures::Metric => (1.0, "L"),
        Measures::Us => (LITRES_PER_GALLON / 4.0, "qt"),
    }
}

/// A volume to measure out, with buckets where that helps:
/// `40 L (4 ten-litre buckets)`, `11 gal (about 2 five-gallon buckets)`.
pub fn measured_out(litres: f64, measures: Measures) -> String {
    let kind = match measures {
        Measures::Metric => "ten-litre ",
        Measures::Us => "five-gallon ",
    };
    with_buckets(litres, usual_bucket(measures), kind, measures)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::EXTREMES;

    /// By hand: a US gallon is 231 cubic inches of 2.54 cm, four quarts.
    #[test]
    fn a_pot_and_a_scoop_are_measured_as_the_reader_does() {
        let gallon = 231.0 * 2.54f64.powi(3) / 1000.0;
        let (pot, scoop) = (pot_measure(Measures::Us), scoop_measure(Measures::Us));
        assert!((pot.0 - gallon).abs() < 1e-9 && (4.0 * scoop.0 - gallon).abs() < 1e-9);
        assert_eq!((pot.1, scoop.1), ("gal", "qt"));
        assert_eq!(
            (pot_measure(Measures::Metric), scoop_measure(Measures::Metric)),
            ((1.0, "L"), (1.0, "L"))
        );
    }

    #[test]
    fn a_volume_is_told_in_half_buckets_where_that_comes_near() {
        let out = |litres| measured_out(litres, Measures::Metric);
        assert_eq!(out(0.25), "250\u{a0}mL");
        assert_eq!(out(4.9), "4.9\u{a0}L");
        assert_eq!(out(5.0), "5\u{a0}L (½ ten-litre bucket)");
        assert_eq!(out(8.0), "8\u{a0}L");
        assert_eq!(out(12.0), "12\u{a0}L (about 1 ten-litre bucket)");
        assert_eq!(out(40.0), "40\u{a0}L (4 ten-litre buckets)");
        assert_eq!(out(45.0), "45\u{a0}L (4½ ten-litre buckets)");
        assert_eq!(out(1065.0), "1100\u{a0}L (106 ten-litre buckets)");
        assert_eq!(out(47.0), "47\u{a0}L (about 4½ ten-litre buckets)");
        assert_eq!(measured_out(40.0, Measures::Us), "11\u{a0}gal (about 2 five-gallon buckets)");
        assert_eq!(measured_out(0.5, Measures::Us), "2.1\u{a0}cups");
    }

    #[test]
    fn half_buckets_are_never_much_more_than_was_asked_for() {
        for tenths in 1..40_000 {
            let litres = f64::from(tenths) / 10.0;
            let Some(count) = in_buckets(litres, 10.0) else {
                assert!(!(14.5..=2000.0).contains(&litres), "{litres}");
                continue;
            };
            assert!((2.0 * count).fract() == 0.0 && count >= 0.5);
            assert!((0.75..=1.05).contains(&(10.0 * count / litres)), "{litres} {count}");
        }
    }

    #[test]
    fn no_amount_is_odd() {
        for value in EXTREMES {
            for measures in [Measures::Metric, Measures::Us] {
                for text in [
                    measured_out(value, measures),
                    Portion::poured(value, 10.0, measures).amount,
                    in_fractions(value),
                ] {
                    assert!(!text.contains("inf") && !text.contains("NaN"), "{text}");
                }
            }
        }
    }
}
