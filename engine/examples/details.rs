//! `cargo run -q -p emberloam-engine --example details -- REPORT [CASE.json]`
//!
//! Prints the plan, and then what a reader goes down to: what kind of soil it
//! is, a year with biochar, what to buy, how to work it in, the years it is
//! spread over, what the bag's certificate says, and the winter.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "this is the engine's command line: it reads files and prints"
)]

use std::borrow::Cow;

use emberloam_engine::details::standards::standards;
use emberloam_engine::details::work_in::work_in;
use emberloam_engine::details::{
    courses, permanence, purchase, reaction, repeats, traits, windows, winter_loss,
};
use emberloam_engine::quantity::{Figure, shown};
use emberloam_engine::{Case, interpret, report, season, summary, survey};

fn main() {
    let mut files = std::env::args().skip(1);
    let bytes = std::fs::read(files.next().expect("a report")).expect("it can be read");
    let mut case: Case = files.next().map_or_else(Case::default, |file| {
        let json = std::fs::read_to_string(file).expect("the case can be read");
        serde_json::from_str(&json).expect("a case")
    });
    case.report = report::open(&bytes).and_then(|grid| report::read(&grid)).expect("a report");
    let outcome = interpret(&case);
    println!("{}", summary::text(&summary::plan(&outcome, case.measures)));

    let (bed, plan) = (survey(Cow::Borrowed(&case)), &outcome.plan);
    let say = |heading: &str, text: &str, figures: &[Figure]| {
        println!("{heading}: {text}");
        for figure in figures {
            println!("    {}: {}", figure.label, shown(&figure.band, figure.unit, case.measures));
        }
    };
    let soil = traits(&bed);
    for saying in &soil.sayings {
        say(saying.name, &saying.text, &[]);
    }
    say("the soil", "", &soil.figures);
    for course in courses(&bed, plan) {
        say(course.label, &course.directions.join(", "), &[]);
    }
    if let Some(found) = reaction(&bed, plan) {
        say("pH", &found.text, &found.figures);
    }
    if let Some(found) = purchase(&bed, plan) {
        say("to buy", &found.doubts.join(" "), &found.figures);
    }
    if let Some(found) = work_in(&bed, plan) {
        let steps: Vec<&str> = found.steps.iter().map(|step| step.text.as_str()).collect();
        say("to work it in", &steps.join(" "), &found.figures);
    }
    if let Some(found) = repeats(&bed, plan) {
        say("year by year", &found.text, &[]);
    }
    say("what lasts", "", &[permanence(&case)]);
    for standard in standards(&case.biochar) {
        say(standard.name, &standard.text, &[]);
    }
    if let Some(place) = season::place(&case.season, case.measures) {
        say("the place", &place.text, &[]);
    }
    let free = windows(&bed);
    for dated in free.rests.iter().chain(&free.conflicts) {
        say(&dated.what, &dated.reason, &[]);
    }
    if let Some(found) = winter_loss(&bed, plan) {
        say("the winter", &found.text, &found.figures);
    }
}
