//! Amounts as a person measures them out: their own bucket, their own units.

use crate::quantity::{
    Measures, Portion, Unit, in_readers, readers_symbol, significant, usual_bucket, weighed,
    with_buckets,
};

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
        let own = bucket_litres.filter(|b| (0.5..=200.0).contains(b));
        let bucket = own.unwrap_or(usual_bucket(measures));
        Measuring { measures, bucket }
    }

    /// A volume with buckets where that helps: `10 L (1 bucket)`.
    pub fn litres(&self, litres: f64) -> String {
        with_buckets(litres, self.bucket, "", self.measures)
    }

    /// The same as it is carried: buckets alone where they say it well.
    pub(crate) fn carried(&self, litres: f64) -> Portion {
        Portion::poured(litres, self.bucket, self.measures)
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
            (6.0, "6\u{a0}L (about ½ bucket)"),
            (10.0, "10\u{a0}L (1 bucket)"),
            (17.6, "18\u{a0}L (about 1½ buckets)"),
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
