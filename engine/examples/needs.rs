//! `cargo run -q -p emberloam-engine --example needs -- REPORT [CASE.json]`
//!
//! Prints what the bed needs beside biochar, what kind of soil it is, what
//! biochar does over a year, what to buy, the years it is spread over, how to
//! work it in, how it is charged in detail, and how the bag's certificate lies
//! to the standards.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "this is the engine's command line: it reads files and prints"
)]

use emberloam_engine::biochar::{
    WEEKS, charge_plan, courses, permanence, purchase, repeats, standards, work_in,
};
use emberloam_engine::quantity::{Band, Figure, Unit, shown};
use emberloam_engine::season::{self, windows, winter_loss};
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
    if let Some(bought) = situated(&case, purchase::purchase).flatten() {
        println!("to buy and carry:");
        say(&bought.figures);
        bought.same.iter().for_each(|(what, amount)| println!("    {what}: {amount}"));
        bought.doubts.iter().for_each(|doubt| println!("  - {doubt}"));
    }
    if let Some(years) = situated(&case, repeats::repeats).flatten() {
        println!("year by year: {}", years.text);
        years.stops.iter().for_each(|(year, why)| println!("  - year {year}: {why}"));
        for column in &years.columns {
            let cells = column.years.iter().map(|band| shown(band, column.unit, case.measures));
            println!("    {}: {}", column.label, cells.collect::<Vec<_>>().join("; "));
        }
    }
    if let Some(done) = situated(&case, work_in::work_in).flatten() {
        println!("to work it in:");
        done.steps.iter().chain(&done.cautions).for_each(|step| println!("  - {}", step.text));
        say(&done.figures);
    }
    say(&[permanence::permanence(&case)]);
    for standard in standards::standards(&case.biochar) {
        println!("{}: {}", standard.name, standard.text);
    }
    if let Some(place) = season::place(&case.season, case.measures) {
        println!("place: {}", place.text);
    }
    let (free, loss) = situated(&case, |s| (windows(s), winter_loss(s))).unwrap_or_default();
    for task in free.rests.iter().chain(&free.conflicts) {
        println!("{}: {}", task.task, task.reason);
    }
    if let Some(loss) = loss {
        println!("winter: {}", loss.text);
        say(&loss.figures);
        for month in &loss.months {
            let lost = |band: &Band| shown(band, Unit::KgPerHa, case.measures);
            let with = month.with.as_ref().map_or_else(|| "–".into(), lost);
            println!(
                "    month {}: {} by Burns, {} by Scotter, {with} with biochar",
                month.month.unwrap_or(0),
                lost(&month.burns),
                lost(&month.scotter),
            );
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
