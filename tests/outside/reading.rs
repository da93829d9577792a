//! The `reading` room against the outside: open laboratory exports, and
//! anything a person may paste.

use std::path::PathBuf;

use emberloam_engine::plan::RuleName;
use emberloam_engine::quantity::Unit;
use emberloam_engine::question::QuestionId;
use emberloam_engine::report::{MOST_BYTES, Reading, Report, SampleReport, Trouble, open, read};
use emberloam_engine::soil::{Amount, Method, Property, Texture};
use emberloam_engine::{Case, interpret};
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

/// Source: a synthetic list report, made for this purpose (opened).
#[test]
fn a_list_report() {
    let report = report(&data("synthetic_reports/list.csv"));
    let [sample] = report.samples.as_slice() else { panic!() };
    assert_eq!(sample.readings.len(), 12);
    exactly(sample, Property::Ph, 6.2, Unit::None);
    exactly(sample, Property::Calcium, 1450.0, Unit::MgPerKg);
    exactly(sample, Property::NitrateN, 12.0, Unit::LbPerAcre);
    exactly(sample, Property::Ec, 0.35, Unit::DsPerM);
    assert_eq!(one(sample, Property::Boron).amount, Some(Amount::Below(0.2)));
    assert_eq!(one(sample, Property::Phosphorus).rating.as_deref(), Some("Low"));
    assert_eq!(method(sample, Property::Phosphorus), Some(Method::Mehlich3));
    assert_eq!(method(sample, Property::BufferPh), Some(Method::SikoraBuffer));
    assert_eq!(method(sample, Property::Potassium), None);
    assert!(report.notes.iter().any(|n| n.contains("1,450 was read as 1450")));
}

/// Source: a synthetic grid report, made for this purpose (opened).
#[test]
fn a_grid_report() {
    let report = report(&data("synthetic_reports/grid.csv"));
    let names: Vec<_> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["North bed", "South bed", "Path 3"]);
    exactly(&report.samples[0], Property::CalciumSaturation, 63.6, Unit::Percent);
    exactly(&report.samples[0], Property::MagnesiumSaturation, 15.4, Unit::Percent);
    exactly(&report.samples[0], Property::Cec, 11.4, Unit::MeqPer100g);
    assert_eq!(one(&report.samples[1], Property::Phosphorus).amount, Some(Amount::Below(1.0)));
    // A blank cell is no reading.
    assert!(report.samples[2].readings.iter().all(|r| r.property != Property::BufferPh));
    assert_eq!(report.unread, []);
}

/// Source: a synthetic report in Windows-1252 with decimal commas (opened);
/// P = P2O5 × 0.4364, K = K2O × 0.8301 (atomic masses, derived).
#[test]
fn a_european_grid_report() {
    let report = report(&data("synthetic_reports/grid_semicolon_latin1.csv"));
    let [first, second] = report.samples.as_slice() else { panic!() };
    exactly(first, Property::SaltPh, 5.9, Unit::None);
    exactly(first, Property::Phosphorus, 12.0 * 0.4364, Unit::MgPer100g);
    exactly(first, Property::Potassium, 18.0 * 0.8301, Unit::MgPer100g);
    exactly(first, Property::OrganicMatter, 3.1, Unit::Percent);
    let Some(Amount::Below(limit)) = one(second, Property::Phosphorus).amount else { panic!() };
    close(limit, 3.0 * 0.4364, 1e-3);
    assert_eq!(second.unread[0].text, "Bodenart: Lehm über Ton");
}

/// Source: example laboratory export with short codes, Modus example data,
/// CC0 (opened).
#[test]
fn an_export_with_short_codes() {
    let report = report(&data("modus_CC0/lab_export_short_codes_49col.csv"));
    let [sample] = report.samples.as_slice() else { panic!() };
    exactly(sample, Property::Ph, 8.3, Unit::None);
    exactly(sample, Property::CalciumSaturation, 77.1, Unit::Percent);
    let phosphorus: Vec<_> = sample
        .readings
        .iter()
        .filter(|r| r.property == Property::Phosphorus)
        .map(|r| (r.amount.unwrap().number(), r.method.as_ref().unwrap().value, r.unit))
        .collect();
    assert_eq!(phosphorus, [(1.6, Method::BrayP1, None), (7.5, Method::Olsen, None)]);
    // A rating in a column of values stays a rating.
    let lime = one(sample, Property::FreeLime);
    assert_eq!((lime.amount, lime.rating.as_deref()), (None, Some("VH")));
    assert!(sample.unread.iter().any(|u| u.text == "CA_SAT: 6.9"));
}

/// Source: example laboratory exports of some 200 columns, Modus example
/// data, CC0 (opened).
#[test]
fn exports_of_two_hundred_columns() {
    let report_b = report(&data("modus_CC0/lab_export_wide_200col_B.csv"));
    assert_eq!(report_b.samples.len(), 8);
    let first = &report_b.samples[0];
    assert_eq!(first.name, "R1");
    exactly(first, Property::Ph, 6.0, Unit::None);
    exactly(first, Property::BufferPh, 6.2, Unit::None);
    exactly(first, Property::Phosphorus, 6.9, Unit::MgPerKg);
    exactly(first, Property::Potassium, 341.0, Unit::MgPerKg);
    exactly(first, Property::NitrateN, 1.9, Unit::MgPerKg);
    exactly(first, Property::Cec, 28.2, Unit::MeqPer100g);
    exactly(first, Property::MagnesiumSaturation, 24.0, Unit::Percent);
    exactly(first, Property::TotalN, 3812.0, Unit::MgPerKg);
    assert_eq!(method(first, Property::Phosphorus), Some(Method::Olsen));
    assert_eq!(method(first, Property::BufferPh), Some(Method::WoodruffBuffer));
    assert_eq!(method(first, Property::Ec), Some(Method::Water1To1));
    // Pounds of N that may be advice are no result, and the depth has no unit.
    for heading in ["lbs N/A", "B Depth", "E Depth"] {
        assert!(report_b.unread.iter().any(|u| u.text == heading), "{heading}");
    }
    let report_a = report(&data("modus_CC0/lab_export_wide_200col_A.csv"));
    exactly(&report_a.samples[0], Property::OrganicCarbon, 3.482, Unit::Percent);
    let report_c = report(&data("modus_CC0/lab_export_wide_200col_C.csv"));
    exactly(&report_c.samples[7], Property::Calcium, 1667.0, Unit::MgPerKg);
    exactly(&report_c.samples[7], Property::Phosphorus, 4.8, Unit::MgPerKg);
}

/// Source: anonymised soil-health laboratory data, 30 samples, CC0 (opened).
#[test]
fn a_research_table_with_units_in_its_headings() {
    let report = report(&data("soil_health_lab_CC0/anonymized_wide.csv"));
    assert_eq!(report.samples.len(), 30);
    let first = &report.samples[0];
    assert_eq!((first.name.as_str(), first.texture), ("D030301", Some(Texture::SiltLoam)));
    exactly(first, Property::Phosphorus, 19.0, Unit::MgPerKg);
    exactly(first, Property::Potassium, 356.0, Unit::MgPerKg);
    exactly(first, Property::Calcium, 6.6, Unit::MeqPer100g);
    exactly(first, Property::NitrateN, 1.9, Unit::MgPerKg);
    exactly(first, Property::OrganicMatter, 1.3, Unit::Percent);
    exactly(first, Property::Ec, 0.29, Unit::DsPerM);
    exactly(first, Property::Sand, 32.0, Unit::Percent);
    exactly(first, Property::Ph, 6.1, Unit::None);
    assert_eq!(method(first, Property::Phosphorus), Some(Method::Olsen));
    // The file holds densities of 50 and more, which can't be g/cm³.
    assert!(
        first.unread.iter().any(|u| u.text == "bd_g.cm3: 58.1" && u.reason.contains("can't be"))
    );
    exactly(&report.samples[2], Property::BulkDensity, 1.21, Unit::GPerCm3);
}

/// Source: the same data with one result a row; each sample has the results
/// that the wide table gives it (opened).
#[test]
fn a_research_table_with_one_result_a_row() {
    let wide = report(&data("soil_health_lab_CC0/anonymized_wide.csv"));
    let long = report(&data("soil_health_lab_CC0/anonymized_long_first600.csv"));
    assert!(long.samples.len() > 10);
    let mut compared = 0;
    // The last sample is cut off by the end of the file.
    for sample in &long.samples[..long.samples.len() - 1] {
        let same = wide.samples.iter().find(|s| s.name == sample.name).unwrap();
        assert_eq!(sample.texture, same.texture, "{}", sample.name);
        for property in [Property::Ph, Property::Potassium, Property::OrganicMatter] {
            let at = |s: &SampleReport| {
                let reading = s.readings.iter().find(|r| r.property == property)?;
                Some((reading.amount?.number(), reading.unit))
            };
            assert_eq!(at(sample), at(same), "{property:?} in {}", sample.name);
            compared += usize::from(at(sample).is_some());
        }
    }
    assert!(compared > 30, "{compared}");
}

/// Source: the csv crate, an independent reader of delimited text (opened).
#[test]
fn cells_are_those_of_an_independent_reader() {
    for (name, mark) in [
        ("synthetic_reports/list.csv", b','),
        ("synthetic_reports/grid.csv", b','),
        ("modus_CC0/lab_export_wide_200col_B.csv", b','),
        ("modus_CC0/lab_export_short_codes_49col.csv", b','),
        ("soil_health_lab_CC0/anonymized_wide.csv", b','),
        ("soil_health_lab_CC0/anonymized_long_first600.csv", b','),
    ] {
        let bytes = data(name);
        let grid = open(&bytes).unwrap();
        let mut other = csv::ReaderBuilder::new()
            .delimiter(mark)
            .has_headers(false)
            .flexible(true)
            .from_reader(bytes.as_slice());
        let theirs: Vec<Vec<String>> = other
            .records()
            .map(|r| r.unwrap().iter().map(|c| c.trim().to_string()).collect())
            .collect();
        let ours: Vec<Vec<String>> =
            grid.rows.iter().map(|r| r.iter().map(|c| c.text.clone()).collect()).collect();
        assert_eq!(ours, theirs, "{name}");
    }
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
    for reason in ["can't be", "a recommendation", "humic matter", "no soil property"] {
        assert!(unread.iter().any(|u| u.contains(reason)), "{reason}: {unread:?}");
    }
    assert_eq!(one(bed, Property::Phosphorus).unit, None);
    // Every line is either a reading, about the sample, or listed as unread.
    let mut lines: Vec<u32> =
        report.unread.iter().chain(&bed.unread).map(|u| u.place.line).collect();
    lines.extend(bed.readings.iter().map(|r| r.place.line));
    let text = String::from_utf8(sample("broken.txt")).unwrap();
    for (number, line) in (1..).zip(text.lines()) {
        assert!(lines.contains(&number) || line.starts_with("Bed:"), "line {number}: {line}");
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

    /// No line is lost in silence, whatever stands before and after it.
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
        for (number, line) in (2..).zip(&lines) {
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

/// Source: the ranges of Georgia SB 62 for Mehlich-1 are from memory, whatever
/// is read elsewhere about where that extractant fits.
#[test]
fn a_plan_on_remembered_ranges_says_so_even_where_the_extractant_is_doubtful() {
    for ph in ["6.2", "7.2"] {
        let text = format!("Mehlich-1\nDepth 0-6 in\npH {ph}\nP 12 lb/acre\nK 300 lb/acre\n");
        let case = Case { report: report(text.as_bytes()), ..Case::default() };
        let plan = interpret(&case).plan;
        let rules: Vec<_> = plan.reasons.iter().map(|r| r.rule).collect();
        assert!(rules.contains(&RuleName::JudgedFromMemory), "pH {ph}: {rules:?}");
        assert!(plan.provisional, "pH {ph}");
    }
}

/// Source: the extracts as laboratories name them (from memory).
#[test]
fn an_extract_without_a_published_range_is_shown_and_not_judged() {
    let names = [
        "P (Colwell)",
        "P (CAL)",
        "P (Lancaster)",
        "P (Kelowna)",
        "P (modified Kelowna)",
        "P resina",
        "P H3A",
        "Mehlich-2 P",
        "P (AB-DTPA)",
        "P Joret-Hébert",
        "P Dyer",
        "Zn (DTPA-sorbitol)",
        "Zn (0.1 M HCl)",
        "S (KCl 40)",
    ];
    for name in names {
        let report = report(format!("Test\tResult\tUnit\n{name}\t12\tmg/kg\n").as_bytes());
        let outcome = interpret(&Case { report, ..Case::default() });
        let reading = &outcome.samples[0].readings[0];
        assert_eq!(reading.value, Some(12.0), "{name}");
        assert!(reading.method.is_some() && reading.finding.level.is_none(), "{name}");
        assert!(reading.finding.range.is_none(), "{name}");
        let asked = outcome.questions.iter().any(|q| q.id == QuestionId::Extractant);
        assert!(!asked, "{name}");
    }
}
