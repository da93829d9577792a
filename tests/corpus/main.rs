//! Reads every file of the corpus and compares it, cell by cell, with the
//! truth that was written when the file was made.
//!
//! Each result of the truth comes out as one of four:
//!
//! - correct: the right sample, property, number, unit and method;
//! - asked: the right sample, property and number, and the engine asks for the
//!   unit or the method that is missing;
//! - unread: not taken, so that a person must type it;
//! - wrong: taken with another property, number, unit or method, or for another
//!   sample. So is a reading that the truth knows nothing of.
//!
//! Wrong must be none. `cargo test -p emberloam-tests --test corpus -- --nocapture`
//! prints the table.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use emberloam_engine::quantity::Unit;
use emberloam_engine::report::{self, Reading, Report};
use emberloam_engine::soil::Amount;
use emberloam_files::open_file;

/// The share of the results that is read without a question, and the share
/// that may stay unread, in per cent. They follow the reading as it gets better.
const LEAST_CORRECT: f64 = 90.0;
const MOST_UNREAD: f64 = 0.5;

/// One result as the file was made.
struct Truth {
    sample: String,
    property: String,
    said: String,
    number: f64,
    unit: String,
    method: String,
    rating: String,
}

#[derive(Clone, Copy, Default)]
struct Count {
    correct: usize,
    asked: usize,
    unread: usize,
    wrong: usize,
}

fn corpus() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("corpus")
}

fn truths() -> BTreeMap<String, Vec<Truth>> {
    let text = fs::read_to_string(corpus().join("truth.tsv")).expect("the truth can be read");
    let mut all: BTreeMap<String, Vec<Truth>> = BTreeMap::new();
    for line in text.lines().skip(1) {
        let cells: Vec<&str> = line.split('\t').collect();
        let [file, sample, property, said, number, unit, method, rating] = cells[..] else {
            panic!("a line of the truth has not eight cells: {line:?}");
        };
        all.entry(file.into()).or_default().push(Truth {
            sample: sample.into(),
            property: property.into(),
            said: said.into(),
            number: number.parse().expect("a number"),
            unit: unit.into(),
            method: method.into(),
            rating: rating.into(),
        });
    }
    all
}

fn read(file: &str) -> Result<Report, String> {
    let bytes = fs::read(corpus().join("files").join(file)).expect("the file can be read");
    let opened = open_file(&bytes).map_err(|why| why.to_string())?;
    let grid = report::open(opened.text.as_bytes()).map_err(|why| why.to_string())?;
    report::read(&grid).map_err(|why| why.to_string())
}

fn same_number(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-3 * a.abs().max(b.abs()).max(1e-9)
}

/// Whether a reading says the number of the truth.
fn says(reading: &Reading, truth: &Truth) -> bool {
    match (reading.amount, truth.said.as_str()) {
        (Some(Amount::Exactly(n)), "=")
        | (Some(Amount::Below(n)), "<")
        | (Some(Amount::Above(n)), ">") => same_number(n, truth.number),
        (None, "nd") => true,
        (None, "rating") => reading.rating.as_deref() == Some(&truth.rating),
        _ => false,
    }
}

enum Verdict {
    Correct,
    Asked,
    Wrong(String),
}

fn verdict(reading: &Reading, truth: &Truth) -> Verdict {
    let unit = reading.unit.map_or("-", Unit::symbol);
    let method = reading.method.as_ref().map_or("-", |known| known.value.name());
    // A unit that goes without saying, such as % of organic matter, is said to be no print.
    let usual = truth.unit == "-" && reading.notes.iter().any(|n| n.contains("no unit printed"));
    if unit != truth.unit && unit != "-" && !usual {
        return Verdict::Wrong(format!("unit {unit}, printed {}", truth.unit));
    }
    if method != truth.method && method != "-" {
        return Verdict::Wrong(format!("method {method}, printed {}", truth.method));
    }
    if let (Some(rating), false) = (&reading.rating, truth.rating == "-")
        && !rating.contains(&truth.rating)
    {
        return Verdict::Wrong(format!("rating {rating:?}, printed {:?}", truth.rating));
    }
    let unit_asked = unit == "-" && reading.amount.is_some();
    if unit_asked || method != truth.method { Verdict::Asked } else { Verdict::Correct }
}

fn compare(file: &str, truths: &[Truth], report: &Report, faults: &mut Vec<String>) -> Count {
    let mut count = Count::default();
    let mut left: Vec<(&str, &Reading)> = report
        .samples
        .iter()
        .flat_map(|s| s.readings.iter().map(|r| (s.name.as_str(), r)))
        .collect();
    let mut wrong = |count: &mut Count, what: String| {
        count.wrong += 1;
        faults.push(format!("{file}: {what}"));
    };
    for truth in truths {
        let about = |(name, reading): &&(&str, &Reading)| {
            *name == truth.sample && reading.property.name() == truth.property
        };
        // With two of a property in a sample, the one whose method fits is meant.
        let fits = |&&(_, reading): &&(&str, &Reading)| {
            let method = reading.method.as_ref().map(|known| known.value.name());
            says(reading, truth) && method.is_none_or(|name| name == truth.method)
        };
        let found = left
            .iter()
            .filter(about)
            .find(fits)
            .or_else(|| left.iter().filter(about).find(|(_, reading)| says(reading, truth)));
        let Some(&(name, reading)) = found else {
            count.unread += 1;
            continue;
        };
        left.retain(|&(n, r)| !(n == name && std::ptr::eq(r, reading)));
        match verdict(reading, truth) {
            Verdict::Correct => count.correct += 1,
            Verdict::Asked => count.asked += 1,
            Verdict::Wrong(why) => {
                wrong(
                    &mut count,
                    format!("{name}: {} {}: {why}", truth.property, reading.original),
                );
            }
        }
    }
    // What is left was never printed so.
    for (name, reading) in left {
        wrong(
            &mut count,
            format!(
                "{name}: {} {:?} {:?} from “{}: {}” is not in the truth",
                reading.property.name(),
                reading.amount,
                reading.unit.map(Unit::symbol),
                reading.name,
                reading.original
            ),
        );
    }
    count
}

#[test]
fn no_cell_of_the_corpus_is_read_wrong() {
    let mut faults = Vec::new();
    let mut total = Count::default();
    let truths = truths();
    println!("{:<36} correct   asked  unread   wrong", "file");
    for (file, truth) in &truths {
        let count = match read(file) {
            Ok(report) => compare(file, truth, &report, &mut faults),
            Err(why) => {
                println!("{file}: {why}");
                Count { unread: truth.len(), ..Count::default() }
            }
        };
        println!(
            "{file:<36} {:>7} {:>7} {:>7} {:>7}",
            count.correct, count.asked, count.unread, count.wrong
        );
        total.correct += count.correct;
        total.asked += count.asked;
        total.unread += count.unread;
        total.wrong += count.wrong;
    }
    println!(
        "{:<36} {:>7} {:>7} {:>7} {:>7}",
        format!("{} files", truths.len()),
        total.correct,
        total.asked,
        total.unread,
        total.wrong
    );
    assert!(truths.len() >= 120, "the corpus has only {} files", truths.len());
    assert!(faults.is_empty(), "{} wrong:\n{}", faults.len(), faults.join("\n"));
    let all = (total.correct + total.asked + total.unread) as f64 / 100.0;
    let (correct, unread) = (total.correct as f64 / all, total.unread as f64 / all);
    assert!(correct >= LEAST_CORRECT, "only {correct:.1} % is read without a question");
    assert!(unread <= MOST_UNREAD, "{unread:.1} % is not read");
}

#[test]
fn every_file_that_holds_no_report_is_refused_with_its_own_words() {
    let text = fs::read_to_string(corpus().join("refused.tsv")).expect("the list can be read");
    let mut said = Vec::new();
    for line in text.lines().skip(1) {
        let (file, words) = line.split_once('\t').expect("two cells");
        let why = read(file).expect_err(file);
        assert!(why.contains(words), "{file}: {why:?} does not speak of {words:?}");
        assert!(!said.contains(&why), "{file}: another file gets the same words: {why}");
        said.push(why);
    }
    assert!(said.len() >= 7);
}
