//! The `reading` room against the outside: open laboratory exports, and
//! anything a person may paste.

use std::path::PathBuf;

use emberloam_engine::plan::RuleName;
use emberloam_engine::quantity::Unit;
use emberloam_engine::question::QuestionId;
use emberloam_engine::report::{Reading, Report, SampleReport, open, read};
use emberloam_engine::soil::{Amount, Method, Property, Texture};
use emberloam_engine::{Case, interpret};

use crate::close;

/// A file of the open data that the tests carry.
fn data(name: &str) -> Vec<u8> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("open-data").join(name);
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
fn every_extract_is_shown_and_judged_only_by_its_own_tables() {
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
        assert!(reading.method.is_some(), "{name}");
        // Where nothing is published, or only from memory, no advice may lean on it.
        let finding = &reading.finding;
        assert!(finding.level.is_none() || finding.source.is_some(), "{name}");
        let asked = outcome.questions.iter().any(|q| q.id == QuestionId::Extractant);
        assert!(!asked, "{name}");
    }
}
