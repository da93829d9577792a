//! Golden plans: each sample report of the page with a case, and the plan's own
//! text beside it, which was read and accepted. The sources are left out.
//!
//! After a change that is meant to alter them, run
//! `EMBERLOAM_ACCEPT=1 cargo test -p emberloam-tests --test golden`
//! and read the difference before you commit it.
#![allow(missing_docs, reason = "each test's name says what it checks")]

use std::fs;

use emberloam_engine::summary::{self, Block};
use emberloam_engine::{Case, interpret, report};
use emberloam_tests::project;

/// The plan as text, without its publications.
fn told(case: &Case) -> String {
    let mut blocks = summary::plan(&interpret(case), case.measures);
    blocks.retain(|block| {
        !matches!(block, Block::Sources(_)) && *block != Block::Heading("Sources".into())
    });
    summary::text(&blocks)
}

#[track_caller]
fn check(sample: &str, name: &str) {
    let folder = project().join("tests/golden");
    let bytes = fs::read(project().join("public/samples").join(sample)).expect("the sample");
    let case = fs::read_to_string(folder.join(format!("{name}.case.json"))).expect("a case");
    let mut case: Case = serde_json::from_str(&case).expect("the case is well formed");
    case.report = report::open(&bytes).and_then(|grid| report::read(&grid)).expect("it reads");
    let found = told(&case);
    let golden = folder.join(format!("{name}.txt"));
    if std::env::var_os("EMBERLOAM_ACCEPT").is_some() {
        fs::write(&golden, &found).expect("the golden plan can be written");
    }
    let accepted = fs::read_to_string(&golden).unwrap_or_default();
    if found != accepted {
        let same = found.lines().zip(accepted.lines()).take_while(|(a, b)| a == b).count();
        panic!(
            "{name}: the plan differs from line {}:\n  now      {}\n  accepted {}",
            same + 1,
            found.lines().nth(same).unwrap_or("(nothing)"),
            accepted.lines().nth(same).unwrap_or("(nothing)"),
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
