//! PDFs as programs print them, against the rows that were put into them.

// Samples are files; only the library itself may read none.
#![allow(clippy::disallowed_methods)]

use std::fs;
use std::path::PathBuf;

use emberloam_engine::quantity::Unit;
use emberloam_engine::report;
use emberloam_engine::soil::{Amount, Property};
use emberloam_files::{Kind, Refusal, open_file};

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/pdf")
}

fn names() -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder())
        .expect("the folder of samples")
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter_map(|name| name.strip_suffix(".pdf").map(String::from))
        .collect();
    names.sort();
    names
}

fn bytes(name: &str) -> Vec<u8> {
    fs::read(folder().join(name).with_extension("pdf")).expect("a sample")
}

/// Source: the `.tsv` beside each file, written by the program that made the
/// file; checked by eye against a general-purpose PDF-to-text program (opened).
#[test]
fn every_row_comes_out_cell_by_cell() {
    let mut checked = 0;
    for name in names() {
        let Ok(rows) = fs::read_to_string(folder().join(&name).with_extension("tsv")) else {
            continue;
        };
        let opened = open_file(&bytes(&name)).unwrap_or_else(|e| panic!("{name}: {e}"));
        assert_eq!(opened.kind, Kind::Pdf);
        assert!(opened.text.starts_with("[page 1]\n"), "{name}");
        let mut lines = opened.text.lines();
        for row in rows.lines() {
            assert!(
                lines.any(|line| line == row),
                "{name}: no row {row:?} where it belongs in\n{}",
                opened.text
            );
            checked += 1;
        }
    }
    assert!(checked > 400, "only {checked} rows were checked");
}

#[test]
fn a_password_is_named() {
    assert_eq!(open_file(&bytes("user-password")), Err(Refusal::LockedPdf));
}

#[test]
fn a_sheet_put_together_is_said() {
    let notes = open_file(&bytes("cut-cells")).expect("a report").notes;
    assert_eq!(notes.len(), 1);
    assert!(notes[0].starts_with("The table on pages 1 to 3 was too wide"), "{notes:?}");
}

/// What the engine reads: sample, property, result, unit.
fn readings(name: &str) -> Vec<(String, Property, f64, Option<Unit>)> {
    let opened = open_file(&bytes(name)).expect("a report");
    let grid = report::open(opened.text.as_bytes()).expect("text");
    let report = report::read(&grid).expect("results");
    let mut found = Vec::new();
    for sample in &report.samples {
        for reading in &sample.readings {
            let number = reading.amount.map_or(f64::NAN, |a: Amount| a.number());
            found.push((sample.name.clone(), reading.property, number, reading.unit));
        }
    }
    found
}

#[test]
fn the_engine_reads_what_the_page_shows() {
    let ppm = Some(Unit::MgPerKg);
    for name in ["own-fonts", "font-in-the-file", "wrapped-cell"] {
        let found = readings(name);
        for (sample, property, number, unit) in [
            ("North bed", Property::Ph, 6.2, Some(Unit::None)),
            ("North bed", Property::Cec, 11.4, Some(Unit::MeqPer100g)),
            ("South bed", Property::Phosphorus, 1.0, ppm),
            ("Path 3", Property::OrganicMatter, 4.9, Some(Unit::Percent)),
            ("Path 3", Property::Potassium, 301.0, ppm),
            ("Path 3", Property::CalciumSaturation, 75.7, Some(Unit::Percent)),
        ] {
            let wanted = (sample.to_string(), property, number, unit);
            assert!(found.contains(&wanted), "{name}: {wanted:?} is not in {found:?}");
        }
        let buffer = |r: &&(String, _, f64, _)| r.0 == "Path 3" && r.1 == Property::BufferPh;
        assert_eq!(found.iter().find(buffer), None, "{name}: its buffer pH is blank");
    }
    let wide = readings("sheet-left-to-right");
    let potassium = |r: &&(String, _, f64, _)| r.0 == "Plot 0" && r.1 == Property::Potassium;
    assert_eq!(wide.iter().find(potassium).map(|r| r.2), Some(7.3), "{wide:?}");
}

/// A small generator of numbers, the same in every run.
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % end.max(1) as u64) as usize
    }
}

#[test]
fn damage_is_survived() {
    let mut dice = Dice(0x9E37_79B9_7F4A_7C15);
    let mut opened = 0;
    for name in names() {
        let whole = bytes(&name);
        for round in 0..12 {
            let mut part = whole.clone();
            match round % 3 {
                0 => part.truncate(dice.below(whole.len())),
                1 => {
                    for _ in 0..1 + dice.below(20) {
                        let at = dice.below(part.len());
                        part[at] ^= 1 << dice.below(8);
                    }
                }
                _ => {
                    let from = dice.below(part.len());
                    let to = (from + dice.below(400)).min(part.len());
                    part.drain(from..to);
                }
            }
            opened += usize::from(open_file(&part).is_ok());
        }
    }
    // Most damage leaves something to read.
    assert!(opened > 60, "{opened}");
}
