//! Golden outcomes: each sample report of the page with a case, compared with
//! the outcome that was looked at and accepted.
//!
//! After a change that is meant to alter them, run
//! `EMBERLOAM_ACCEPT=1 cargo test -p emberloam-tests --test golden`
//! and read the difference before you commit it.
#![allow(missing_docs, reason = "each test's name says what it checks")]

use std::fs;
use std::path::PathBuf;

use emberloam_engine::{Case, interpret, report};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..")
}

#[track_caller]
fn check(sample: &str, name: &str) {
    let folder = root().join("tests/golden");
    let bytes = fs::read(root().join("public/samples").join(sample)).expect("the sample is there");
    let case = fs::read_to_string(folder.join(format!("{name}.case.json"))).expect("a case");
    let mut case: Case = serde_json::from_str(&case).expect("the case is well formed");
    case.report = report::open(&bytes).and_then(|grid| report::read(&grid)).expect("it reads");
    let found = serde_json::to_string_pretty(&interpret(&case)).expect("it serialises") + "\n";
    let golden = folder.join(format!("{name}.outcome.json"));
    if std::env::var_os("EMBERLOAM_ACCEPT").is_some() {
        fs::write(&golden, &found).expect("the golden outcome can be written");
    }
    let accepted = fs::read_to_string(&golden).unwrap_or_default();
    if found != accepted {
        let line = found.lines().zip(accepted.lines()).position(|(a, b)| a != b).unwrap_or(0);
        panic!(
            "{name}: the outcome differs from line {}:\n  now      {}\n  accepted {}",
            line + 1,
            found.lines().nth(line).unwrap_or(""),
            accepted.lines().nth(line).unwrap_or("(nothing)"),
        );
    }
}

#[test]
fn a_surplus_before_winter() {
    check("surplus.txt", "surplus");
}

#[test]
fn a_hungry_sand_with_an_uncharged_bag() {
    check("hungry-sand.csv", "hungry-sand");
}

#[test]
fn a_metric_report_with_decimal_commas() {
    check("metric-transposed.tsv", "metric");
}

#[test]
fn a_bad_report_asks_and_lists_what_it_could_not_read() {
    check("broken.txt", "broken");
}
