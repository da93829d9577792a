//! The published dressings as a second pair of eyes read them.
//!
//! `second_reading_rates.csv` keeps that reading: the least and the most of each level of the
//! soil in the unit printed, how the text was read, and where it differs from the row in
//! `engine/facts/rates.csv`, the reason. What is likely in between is ours in most rows, so only
//! the ends are held.

use std::collections::{BTreeMap, BTreeSet};

/// kg/ha in each unit that guides print.
/// Source: legal definitions of the acre, the pound and the foot (from memory).
fn kg_per_ha(unit: &str) -> f64 {
    const POUND: f64 = 0.453_592_37;
    const SQUARE_FOOT: f64 = 0.092_903_04;
    match unit {
        "kg/ha" => 1.0,
        "g/m2" => 10.0,
        "oz/1000 ft2" => POUND / 16.0 * 1e4 / (1_000.0 * SQUARE_FOOT),
        "kg/ha as MgO" => 24.305 / 40.304,
        "kg/ha as SO3" => 32.06 / 80.057,
        "lb/acre" => POUND * 1e4 / (43_560.0 * SQUARE_FOOT),
        "lb/1000 ft2" => POUND * 1e4 / (1_000.0 * SQUARE_FOOT),
        "lb/100 ft2" => POUND * 1e4 / (100.0 * SQUARE_FOOT),
        other => panic!("{other} is no unit of a dressing"),
    }
}

/// The rows of a file of facts or readings, each by the heads of its columns.
fn rows(file: &str) -> Vec<BTreeMap<String, String>> {
    let path = format!("{}/{file}", env!("CARGO_MANIFEST_DIR"));
    let mut reader = csv::Reader::from_path(path).expect("a file of dressings");
    reader.deserialize().map(|row| row.expect("a row")).collect()
}

/// The least and the most at each level, kg/ha.
fn ends(row: &BTreeMap<String, String>) -> BTreeMap<String, (f64, f64)> {
    let each = kg_per_ha(&row["unit"]);
    let level = |text: &str| {
        let (level, numbers) = text.split_once('=').expect("level = numbers");
        let numbers: Vec<f64> =
            numbers.split('–').map(|n| n.trim().parse().expect("a number")).collect();
        (level.trim().to_owned(), (numbers[0] * each, numbers[numbers.len() - 1] * each))
    };
    row["rates"].split('|').map(level).collect()
}

/// Source: the publication of each row (opened or quoted, as the second reader says in the file).
#[test]
fn the_second_reader_found_the_same_dressings_or_said_what_differs() {
    let ours = rows("../engine/facts/rates.csv");
    let mut seen = BTreeSet::new();
    let (mut agreed, mut wrong) = (0, Vec::new());
    for read in rows("outside/second_reading_rates.csv") {
        let (id, remark) = (&read["id"], &read["remark"]);
        let Some(row) = ours.iter().find(|row| row["id"] == *id) else {
            wrong.push(format!("{id} stands in no row of rates.csv"));
            continue;
        };
        if !seen.insert(id.clone()) || remark.is_empty() {
            wrong.push(format!("{id} was read twice, or stands without a word on where"));
        }
        if read["read"] == "not found" {
            if row["sources"].contains(":opened") {
                wrong.push(format!("{id}: opened, but not found again"));
            }
            continue;
        }
        let (own, found) = (ends(row), ends(&read));
        // A figure rounded to a decimal is still the printed one.
        let near = |a: f64, b: f64| (a - b).abs() <= 0.01 * b;
        let same = own.len() == found.len()
            && found.iter().all(|(level, (low, high))| {
                own.get(level).is_some_and(|of| near(of.0, *low) && near(of.1, *high))
            });
        agreed += usize::from(same);
        if same != read["differs"].is_empty() {
            wrong.push(format!("{id}: {own:?}, read again as {found:?}"));
        }
    }
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
    assert!(agreed > 100, "only {agreed} dressings agree");
}

/// Source: the publication of each row, as above (opened or quoted). A dressing that says it was
/// opened was read by two.
#[test]
fn every_dressing_that_was_opened_was_read_again() {
    let read: BTreeSet<String> =
        rows("outside/second_reading_rates.csv").iter().map(|row| row["id"].clone()).collect();
    let once: Vec<String> = rows("../engine/facts/rates.csv")
        .iter()
        .filter(|row| row["sources"].contains(":opened") && !read.contains(&row["id"]))
        .map(|row| row["id"].clone())
        .collect();
    assert!(once.is_empty(), "read once only: {once:?}");
}
