//! `cargo run -q -p emberloam-engine --example needs -- REPORT [CASE.json]`
//!
//! Prints what the bed needs beside biochar, what kind of soil it is, what
//! biochar does over a year, and how it is charged in detail.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "this is the engine's command line: it reads files and prints"
)]

use emberloam_engine::biochar::{WEEKS, charge_plan, courses};
use emberloam_engine::quantity::{Band, Figure, Unit, shown};
use emberloam_engine::{Case, needs, report, situated, traits};

fn main() {
    let mut files = std::env::args().skip(1);
    let bytes = std::fs::read(files.next().expect("a report")).expect("it can be read");
    let mut case: Case = files.next().map_or_else(Case::default, |file| {
        let json = std::fs::read_to_string(file).expect("the case can be read");
        serde_json::from_str(&json).expect("a case")
    });
    case.report = report::open(&bytes).and_then(|grid| report::read(&grid)).expect("a report");
    let say = |figures: &[Figure]| {
        for figure in figures {
            println!("    {}: {}", figure.label, shown(&figure.band, figure.unit, case.measures));
        }
    };
    for need in needs::needs(&case).list {
        println!("{}: {}", need.name, need.answer);
        say(&need.figures);
        for line in need.steps.iter().chain(&need.cautions).chain(&need.others) {
            println!("  - {line}");
        }
    }
    let of_soil = traits::traits(&case);
    for saying in &of_soil.sayings {
        println!("{}: {}", saying.name, saying.text);
    }
    say(&of_soil.figures);
    for course in situated(&case, courses).unwrap_or_default() {
        let [week, month, year] = course.directions;
        println!("{}: {week}, {month}, {year} after a week, a month, a year", course.label);
        for (week, band) in WEEKS.iter().zip(&course.change) {
            println!("    week {week}: {}", shown(band, course.unit, case.measures));
        }
    }
    let Some(plan) = situated(&case, charge_plan).flatten() else { return };
    println!("charging: {}", plan.text);
    for used in &plan.used {
        let unit = if used.weighed { Unit::Kg } else { Unit::Litre };
        let amount = Band::exactly(used.amount);
        println!("    {} of {}", shown(&amount, unit, case.measures), used.label);
    }
    for share in &plan.shares {
        let wanted = shown(&share.wanted, Unit::Gram, case.measures);
        let brought = shown(&share.brought, Unit::Gram, case.measures);
        let name = share.nutrient.label();
        println!("    {name}: {wanted} wanted, {brought} brought. {}", share.text);
    }
    say(&plan.figures);
    for (number, step) in plan.steps.iter().enumerate() {
        println!("  {}. {step}", number + 1);
    }
    let said = plan.cautions.iter().chain(&plan.leftovers).map(|c| &c.text);
    let waits = plan.intervals.iter().map(|wait| &wait.text);
    for line in said.chain(waits).chain(plan.without_phosphorus.iter().map(|o| &o.text)) {
        println!("  - {line}");
    }
}
