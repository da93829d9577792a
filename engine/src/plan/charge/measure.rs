//! Amounts as a person measures them out: their own bucket, their own units.

use crate::quantity::{
    LITRES_PER_GALLON, Measures, Unit, in_readers, readers_symbol, significant, weighed,
};

/// A bucket when nobody gave one, litres: ten litres, or five US gallons.
/// Our choice.
const USUAL_BUCKET: (f64, f64) = (10.0, 18.927);

/// Litres in a US cup. Source: legal definition, a sixteenth of a gallon (derived).
const CUP: f64 = 0.236_588_236_5;

/// How a person measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measuring {
    /// Their measures.
    pub measures: Measures,
    /// Their bucket, litres.
    pub bucket: f64,
}

impl Measuring {
    /// With the bucket given, if it can be one.
    pub fn new(measures: Measures, bucket_litres: Option<f64>) -> Measuring {
        let usual = if measures == Measures::Us { USUAL_BUCKET.1 } else { USUAL_BUCKET.0 };
        let bucket = bucket_litres.filter(|b| (0.5..=200.0).contains(b)).unwrap_or(usual);
        Measuring { measures, bucket }
    }

    /// A volume without buckets: `0.86 L`, `250 mL`, `3 cups`, `2.1 gal`.
    pub fn volume(&self, litres: f64) -> String {
        let said = |value: f64, unit: &str| format!("{}\u{a0}{unit}", significant(value, 2));
        match self.measures {
            Measures::Metric if litres < 0.5 => said(1000.0 * litres, "mL"),
            Measures::Metric => said(litres, "L"),
            Measures::Us if litres < 0.5 * LITRES_PER_GALLON => {
                let cups = litres / CUP;
                said(cups, if significant(cups, 2) == "1" { "cup" } else { "cups" })
            }
            Measures::Us => said(litres / LITRES_PER_GALLON, "gal"),
        }
    }

    /// A volume with buckets where that helps: `10 L (1 bucket)`.
    pub fn litres(&self, litres: f64) -> String {
        let text = self.volume(litres);
        let buckets = litres / self.bucket;
        if !(0.25..=500.0).contains(&buckets) {
            return text;
        }
        // To the quarter bucket while that can be seen.
        let buckets = if buckets < 10.0 { (buckets * 4.0).round() / 4.0 } else { buckets.round() };
        let whole = buckets.trunc();
        let quarter = match ((buckets - whole) * 4.0) as u8 {
            1 => "¼",
            2 => "½",
            3 => "¾",
            _ => "",
        };
        let number = if whole > 0.0 { format!("{whole:.0}{quarter}") } else { quarter.to_string() };
        let name = if buckets > 1.0 { "buckets" } else { "bucket" };
        format!("{text} ({number} {name})")
    }

    /// A weight: `40 g`, `1.4 oz`, `2.2 lb`.
    pub fn weight(&self, grams: f64) -> String {
        weighed(grams, self.measures)
    }

    /// An area.
    pub fn area(&self, square_metres: f64) -> String {
        let value = in_readers(square_metres, Unit::SquareMetre, self.measures);
        let unit = readers_symbol(Unit::SquareMetre, self.measures);
        format!("{}\u{a0}{unit}", significant(value, 2))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_said_as_they_are_measured_out() {
        let metric = Measuring::new(Measures::Metric, None);
        let cases = [
            (0.2, "200\u{a0}mL"),
            (0.857, "0.86\u{a0}L"),
            (2.4, "2.4\u{a0}L"),
            (2.5, "2.5\u{a0}L (¼ bucket)"),
            (10.0, "10\u{a0}L (1 bucket)"),
            (17.6, "18\u{a0}L (1¾ buckets)"),
            (240.0, "240\u{a0}L (24 buckets)"),
        ];
        for (litres, said) in cases {
            assert_eq!(metric.litres(litres), said);
        }
        let own = Measuring::new(Measures::Metric, Some(12.0));
        assert_eq!(own.litres(24.0), "24\u{a0}L (2 buckets)");
        let us = Measuring::new(Measures::Us, None);
        assert_eq!(us.litres(0.5), "2.1\u{a0}cups");
        assert_eq!(us.litres(18.927), "5\u{a0}gal (1 bucket)");
        assert_eq!(us.weight(40.0), "1.4\u{a0}oz");
        assert_eq!(metric.weight(1500.0), "1.5\u{a0}kg");
        assert_eq!(Measuring::new(Measures::Metric, Some(f64::NAN)).bucket, 10.0);
    }
}
