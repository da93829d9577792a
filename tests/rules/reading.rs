//! Whatever is pasted is read or refused.

use std::path::PathBuf;

use emberloam_engine::quantity::Unit;
use emberloam_engine::report::{MOST_BYTES, Reading, Report, SampleReport, Trouble, open, read};
use emberloam_engine::soil::{Amount, Method, Property, Texture};
use proptest::prelude::*;

use crate::close;

/// A file of the open data that the tests carry.
fn data(name: &str) -> Vec<u8> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("open-data").join(name);
    std::fs::read(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// A sample report that the page offers.
fn sample(name: &str) -> Vec<u8> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../public/samples").join(name);
    std::fs::read(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

#[track_caller]
fn report(bytes: &[u8]) -> Report {
    open(bytes).and_then(|grid| read(&grid)).unwrap()
}

#[track_caller]
fn one(sample: &SampleReport, property: Property) -> &Reading {
    let found: Vec<_> = sample.readings.iter().filter(|r| r.property == property).collect();
    assert_eq!(found.len(), 1, "{property:?} in {}: {:?}", sample.name, found);
    found[0]
}

#[track_caller]
fn exactly(sample: &SampleReport, property: Property, value: f64, unit: Unit) {
    let reading = one(sample, property);
    close(reading.amount.unwrap().exact().unwrap(), value, 1e-3);
    assert_eq!(reading.unit, Some(unit), "{property:?}");
}

fn method(sample: &SampleReport, property: Property) -> Option<Method> {
    one(sample, property).method.as_ref().map(|m| m.value)
}

#[test]
fn workbooks_and_documents_are_named_as_what_they_are() {
    for name in ["fpdf2.pdf", "openpyxl.xlsx", "libreoffice.ods", "libreoffice_biff.xls"] {
        let trouble = open(&data(&format!("synthetic_reports/{name}"))).unwrap_err();
        assert!(matches!(trouble, Trouble::Binary { .. }), "{name}: {trouble}");
    }
}

#[test]
fn trials_without_a_soil_word_say_so() {
    let trouble = open(&data("nist_anova/SmLs01.dat")).and_then(|g| read(&g)).unwrap_err();
    assert!(matches!(trouble, Trouble::Prose | Trouble::NoSoilWords { .. }), "{trouble:?}");
}

#[test]
fn the_sample_of_a_surplus() {
    let report = report(&sample("surplus.txt"));
    let [plot] = report.samples.as_slice() else { panic!() };
    assert_eq!(plot.name, "Plot 7, after tomatoes");
    assert_eq!(plot.texture, Some(Texture::Loam));
    assert_eq!(plot.readings.len(), 16);
    exactly(plot, Property::Calcium, 2310.0, Unit::MgPerKg);
    assert_eq!(method(plot, Property::Zinc), Some(Method::Mehlich3));
    assert_eq!(method(plot, Property::NitrateN), None);
    assert_eq!(one(plot, Property::Phosphorus).rating.as_deref(), Some("Very high"));
}

#[test]
fn the_sample_of_a_hungry_sand() {
    let report = report(&sample("hungry-sand.csv"));
    let [north, south] = report.samples.as_slice() else { panic!() };
    assert_eq!((north.texture, south.texture), (Some(Texture::LoamySand), Some(Texture::Sand)));
    exactly(north, Property::Phosphorus, 2.1, Unit::MgPerKg);
    assert_eq!(method(south, Property::Potassium), Some(Method::ModifiedMorgan));
    assert_eq!(one(north, Property::Boron).amount, Some(Amount::Below(0.1)));
}

#[test]
fn the_sample_with_columns_for_beds() {
    let report = report(&sample("metric-transposed.tsv"));
    let [bean, herb] = report.samples.as_slice() else { panic!() };
    assert_eq!((bean.name.as_str(), herb.name.as_str()), ("Bean bed", "Herb bed"));
    exactly(herb, Property::Potassium, 231.5, Unit::MgPerL);
    assert_eq!(method(bean, Property::Phosphorus), Some(Method::Olsen));
    assert_eq!(method(bean, Property::Magnesium), Some(Method::AmmoniumNitrate));
    assert_eq!(bean.depth_cm, Some((0.0, 15.0)));
}

#[test]
fn the_broken_sample_loses_nothing() {
    let report = report(&sample("broken.txt"));
    let [bed] = report.samples.as_slice() else { panic!() };
    let unread: Vec<&str> =
        report.unread.iter().chain(&bed.unread).map(|u| u.reason.as_str()).collect();
    for reason in ["can't be", "a recommendation", "humic matter"] {
        assert!(unread.iter().any(|u| u.contains(reason)), "{reason}: {unread:?}");
    }
    assert_eq!(one(bed, Property::Phosphorus).unit, None);
    // Every line with a figure is either a reading, about the sample, or listed as unread.
    let mut lines: Vec<u32> =
        report.unread.iter().chain(&bed.unread).map(|u| u.place.line).collect();
    lines.extend(bed.readings.iter().map(|r| r.place.line));
    let text = String::from_utf8(sample("broken.txt")).unwrap();
    for (number, line) in (1..).zip(text.lines()) {
        let figures = line.bytes().any(|b| b.is_ascii_digit());
        assert!(lines.contains(&number) || !figures, "line {number}: {line}");
    }
}

#[test]
fn bulk_is_refused_and_a_long_report_is_read() {
    let bulk = "Phosphorus 18 ppm\n".repeat(MOST_BYTES / 18 + 1);
    assert!(matches!(open(bulk.as_bytes()), Err(Trouble::TooLarge { .. })));
    let much = "Phosphorus 18 ppm\n".repeat(100_000 / 18);
    assert!(open(much.as_bytes()).and_then(|g| read(&g)).is_ok());
}

/// Words of soil reports, good and bad, to be thrown together.
const SCRAPS: &[&str] = &[
    "pH",
    "P",
    "K",
    "Ca",
    "N.A.",
    "P2O5",
    "P₂O₅",
    "NO3-N",
    "Mehlich",
    "Mehlich-3",
    "Bray",
    "1",
    "18",
    "6,2",
    "1,450",
    "2.000",
    "<0.2",
    "ND",
    "18L",
    "2-",
    "50-100",
    "−3",
    "ppm",
    "mg/kg",
    "%",
    "lb/A",
    "cmol(+)/kg",
    "µS/cm",
    "0-6 in",
    "Depth",
    "Texture",
    "Sample ID",
    "Result",
    "Unit",
    "REC",
    "Optimum",
    "\t",
    ",",
    ";",
    "|",
    "  ",
    " ",
    ":",
    "=",
    "(",
    ")",
    "\"",
    "\n",
    "\r\n",
    "\u{a0}",
    "é",
    "≤",
    "VH",
    "loam",
    "1:1",
    "#",
];

/// Lines of reports that hold a result, or something to be listed as unread.
const LINES: &[&str] = &[
    "Phosphorus (Mehlich-3): 18 ppm  Low",
    "Potassium, ppm: 142",
    "Zinc, ppm (DTPA)     1.2     Adequate",
    "Organic matter, 3,4 %",
    "Ca\t1,450\tppm\tOptimum",
    "Mg; 210; ppm",
    "| Boron | < 0.2 | ppm |",
    "NO3-N 12 lb/A",
    "Manganese    41    ppm    20-60",
    "Apply 2 lb N per 1000 sq ft",
    "Lime requirement: 50 lb per 1000 sq ft",
    "The dog dug up bed three, again, and again.",
    "Copper: VH",
    "Iron -3 ppm",
    "pH 69",
    "Wormage 12",
    "Client: Jo Field, Quarry Lane",
    "Sulfur 14 furlongs",
];

fn never_panics(bytes: &[u8]) {
    if let Ok(grid) = open(bytes) {
        let text_lines = 1 + bytes.iter().filter(|b| matches!(b, b'\n' | b'\r')).count() as u32;
        if let Ok(report) = read(&grid) {
            assert!(!report.samples.is_empty());
            for reading in report.samples.iter().flat_map(|s| &s.readings) {
                assert!(reading.place.line >= 1 && reading.place.line <= text_lines);
                assert!(reading.place.start <= reading.place.end);
                assert!(reading.amount.is_none_or(|a| a.number().is_finite() && a.number() >= 0.0));
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_bytes_are_read_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        never_panics(&bytes);
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,200}") {
        never_panics(text.as_bytes());
    }

    #[test]
    fn any_heap_of_scraps_is_read_or_refused(
        scraps in prop::collection::vec(prop::sample::select(SCRAPS), 0..80),
    ) {
        never_panics(scraps.concat().as_bytes());
        never_panics(scraps.join(" ").as_bytes());
    }

    #[test]
    fn a_sample_with_bytes_changed_is_read_or_refused(
        which in 0..4_usize,
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..12),
    ) {
        let names = ["surplus.txt", "hungry-sand.csv", "metric-transposed.tsv", "broken.txt"];
        let mut bytes = sample(names[which]);
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        never_panics(&bytes);
    }

    /// No line with a figure is lost in silence, whatever stands before and after it.
    #[test]
    fn each_line_is_read_or_listed(
        lines in prop::collection::vec(prop::sample::select(LINES), 1..14),
    ) {
        let text = format!("pH 6.5\n{}", lines.join("\n"));
        let report = report(text.as_bytes());
        let mut seen: Vec<u32> = report.unread.iter().map(|u| u.place.line).collect();
        for sample in &report.samples {
            seen.extend(sample.readings.iter().map(|r| r.place.line));
            seen.extend(sample.unread.iter().map(|u| u.place.line));
        }
        let figures = |line: &&str| line.bytes().any(|b| b.is_ascii_digit());
        for (number, line) in (2..).zip(&lines).filter(|(_, line)| figures(line)) {
            prop_assert!(seen.contains(&number), "line {number} ({line}) is lost:\n{text}");
        }
    }

    #[test]
    fn a_number_comes_back_as_it_was_written(
        whole in 0..100_000_u32, part in 0..1000_u32, limit in any::<bool>(), comma in any::<bool>(),
    ) {
        // Two decimals and a companion that settles the decimal mark.
        let mark = if comma { ',' } else { '.' };
        let mut written = format!("{whole}{mark}{:02}", part % 100);
        if limit {
            written.insert(0, '<');
        }
        let text = format!("Zn {written} ppm\npH 6{mark}5");
        let report = report(text.as_bytes());
        let expected = f64::from(whole) + f64::from(part % 100) / 100.0;
        let amount = one(&report.samples[0], Property::Zinc).amount.unwrap();
        prop_assert!((amount.number() - expected).abs() < 1e-9, "{text}: {amount:?}");
        prop_assert_eq!(matches!(amount, Amount::Below(_)), limit);
    }

    #[test]
    fn thousands_marks_change_nothing(value in 1000..999_999_u32, comma in any::<bool>()) {
        let (thousands, decimal) = if comma { ('.', ',') } else { (',', '.') };
        let written = format!("{}{thousands}{:03}", value / 1000, value % 1000);
        let text = format!("Ca {written} ppm\npH 6{decimal}5");
        let report = report(text.as_bytes());
        let amount = one(&report.samples[0], Property::Calcium).amount;
        prop_assert_eq!(amount, Some(Amount::Exactly(f64::from(value))));
        prop_assert!(report.notes.iter().any(|n| n.contains(&written)), "{:?}", report.notes);
    }
}
