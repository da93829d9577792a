//! How amounts are said.

use emberloam_engine::quantity::{Band, Context, Measures, Unit, convert, measured_out, shown};

/// What a conversion lacks is said. Common practice, no source.
#[test]
fn a_refused_conversion_says_what_it_lacks() {
    for (from, to, lacks) in [
        (Unit::LbPerAcre, Unit::MgPerKg, "depth"),
        (Unit::MgPerL, Unit::MgPerKg, "density"),
        (Unit::MgPerKg, Unit::DsPerM, "different things"),
    ] {
        let why = convert(1.0, from, to, &Context::NONE).unwrap_err().to_string();
        assert!(why.contains(lacks), "{why}");
    }
}

/// An amount to measure out is told in half buckets, from half a one to two hundred of them.
/// Common practice, no source.
#[test]
fn buckets_where_they_help() {
    assert_eq!(measured_out(19.9, Measures::Metric), "20\u{a0}L (2 ten-litre buckets)");
    assert_eq!(measured_out(4.9, Measures::Metric), "4.9\u{a0}L");
    assert_eq!(measured_out(2000.0, Measures::Metric), "2000\u{a0}L (200 ten-litre buckets)");
    assert_eq!(measured_out(2010.0, Measures::Metric), "2000\u{a0}L");
    assert_eq!(
        measured_out(3.785_411_784 * 1000.0, Measures::Us),
        "1000\u{a0}gal (200 five-gallon buckets)"
    );
    assert_eq!(measured_out(3.785_411_784 * 1005.0, Measures::Us), "1000\u{a0}gal");
}

/// Digits that nobody measured are dropped, and none that stand before the point. Common practice,
/// no source.
#[test]
fn digits_of_a_band() {
    let said =
        |low, likely, high| shown(&Band::new(low, likely, high), Unit::Percent, Measures::Metric);
    assert_eq!(said(-0.004, 2.0, 412.3), "0 (0 to 412)\u{a0}%");
    assert_eq!(said(123.4, 456.7, 789.1), "457 (123–789)\u{a0}%");
    assert_eq!(said(0.123, 0.456, 0.789), "0.46 (0.12–0.79)\u{a0}%");
    assert_eq!(said(1.0, 1.0, 1.0), "1\u{a0}%");
    assert_eq!(said(1234.0, 1234.0, 1234.0), "1230\u{a0}%");
    assert_eq!(said(0.0, 0.0, 0.0), "0\u{a0}%");
    assert!(Band::exactly(1.0).is_exact() && !Band::new(1.0, 2.0, 3.0).is_exact());
}

/// What is far finer than the band is wide is none, measured in the reader's own unit. Common
/// practice, no source.
#[test]
fn the_fineness_of_a_band_is_the_readers() {
    let ounces = shown(&Band::new(3.0, 200.0, 250.0), Unit::Gram, Measures::Us);
    assert_eq!(ounces, "7.1 (0.11–8.8)\u{a0}oz");
    let metric = shown(&Band::new(5.0, 100.0, 900.0), Unit::Percent, Measures::Metric);
    assert_eq!(metric, "100 (5–900)\u{a0}%");
    assert_eq!(
        shown(&Band::new(4.9, 100.0, 900.0), Unit::Percent, Measures::Metric),
        "100 (0–900)\u{a0}%"
    );
}
