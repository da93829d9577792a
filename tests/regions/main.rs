//! Whole reports as people of each region get them, all invented, with the answer that the
//! region's own published guide gives, read by hand and never from this program.
//!
//! Beside each `NAME.txt` stands `NAME.told`. What doesn't hold yet is listed with its reason
//! in `open.txt`, and leaves that list as soon as it holds. After a change run
//! `EMBERLOAM_ACCEPT=1 cargo test -p emberloam-tests --test regions`, which writes the list anew
//! and keeps the reasons, and give each new line its own. With `-- --nocapture` the count of
//! each region is printed, and with a part of a name in `EMBERLOAM_REGION` how those were read.
#![allow(missing_docs, reason = "each test's name says what it checks")]

mod kept;
mod told;

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use emberloam_engine::case::{BagState, Crop};
use emberloam_engine::quantity::Unit;
use emberloam_engine::region::Region;
use emberloam_engine::soil::{Level, Method};
use emberloam_engine::{Case, Outcome, interpret, report};
use kept::{Kept, kept};
use time::{Date, Month};
use told::Told;

/// The month whose middle is today: early spring in the north, and in the south.
const TODAY: (Month, Month) = (Month::March, Month::September);

/// Regions south of the equator, by how their names begin.
const SOUTH: [&str; 9] =
    ["br-", "brazil", "ar", "cl", "pe", "australia", "new-zealand", "south-africa", "east-africa"];

/// The reason of a fault that nobody has looked at.
const NO_REASON: &str = "?";

/// What came of the lines of a region.
#[derive(Default)]
struct Count {
    told: usize,
    held: usize,
    asked: usize,
}

/// A fault: its file, what it is about, and what was told and said.
type Fault = (String, String, String);

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("regions")
}

/// The names of the files of this folder that end so, without the ending.
fn names(ending: &str) -> Vec<String> {
    let files = fs::read_dir(folder()).expect("the folder of reports");
    let mut names: Vec<String> = files
        .map(|entry| entry.expect("an entry").file_name().into_string().expect("a plain name"))
        .filter_map(|name| Some(name.strip_suffix(ending)?.to_string()))
        .filter(|name| name != "open")
        .collect();
    names.sort();
    names
}

fn told(name: &str) -> Told {
    let text = fs::read_to_string(folder().join(format!("{name}.told"))).expect("what is told");
    Told::read(&text).unwrap_or_else(|why| panic!("{name}.told: {why}"))
}

/// The case of a told bed of 10 m², without biochar and with pure lime; and the regions that
/// the report's own words speak for.
fn case_of(name: &str, told: &Told) -> (Case, Vec<&'static Region>) {
    let bytes = fs::read(folder().join(format!("{name}.txt"))).expect("the report");
    let mut case = Case { plants: told.plants, ..Case::default() };
    case.report = report::open(&bytes).and_then(|grid| report::read(&grid)).unwrap_or_default();
    let read = case.report.regions.clone();
    // Where the report says nothing of it, the person does.
    case.reading.region = told.region.map(|region| region.id.into());
    let south = told.region.is_some_and(|r| SOUTH.iter().any(|word| r.id.starts_with(word)));
    let month = if south { TODAY.1 } else { TODAY.0 };
    case.season.today = Date::from_calendar_date(2027, month, 15).ok();
    case.season.crops =
        told.crop.iter().map(|c| Crop { name: c.clone(), planting: None, harvest: None }).collect();
    case.bed.area_m2 = Some(10.0);
    case.bed.depth_cm = told.depth_cm;
    case.bed.kind = told.bed;
    case.biochar.state = Some(BagState::NoneYet);
    case.feeds.lime_percent = Some(100.0);
    (case, read)
}

/// Whether the region that a report's words speak for is the told one.
fn region_kept(told: &Told, read: &[&'static Region]) -> Kept {
    match (told.region, read) {
        (None, []) => Kept::Held,
        (Some(told), [only]) if *only == told => Kept::Held,
        (Some(_), []) => Kept::Asked,
        (Some(told), several) if several.len() > 1 && several.contains(&told) => Kept::Asked,
        (_, others) => {
            let ids: Vec<&str> = others.iter().map(|region| region.id).collect();
            Kept::Not(ids.join(" or "))
        }
    }
}

/// Prints how a report was read and what is made of it.
fn show(name: &str, outcome: &Outcome) {
    println!("\n{name}");
    for line in &outcome.unread {
        println!("  not read: {} ({})", line.text, line.reason);
    }
    for sample in &outcome.samples {
        println!("  {}", sample.name);
        for r in &sample.readings {
            let judged = r.finding.level.map(Level::label).or(r.finding.not_judged.as_deref());
            let (unit, method) = (r.unit.map(Unit::symbol), r.method.map(Method::label));
            let (by, says) =
                (r.finding.source.map_or("", |source| source.title()), judged.unwrap_or_default());
            println!(
                "    {:?} {} {:?} {unit:?} {method:?}: {says} ({by})",
                r.property, r.original, r.value
            );
        }
        for question in &sample.questions {
            println!("    asks: {} {:?}", question.text, question.about);
        }
        for need in &sample.plan.needs {
            println!("    {:?} {:?}: {}", need.kind, need.verdict, need.answer);
        }
        println!("    {:?} {}", sample.plan.hazards, sample.plan.headline);
    }
}

/// What came of each line of a report, with what it is about.
fn answers(name: &str) -> Vec<(String, String, Kept)> {
    let told = told(name);
    let (case, read) = case_of(name, &told);
    let region = told.region.map_or("none", |region| region.id);
    let mut all = vec![("region".to_string(), region.to_string(), region_kept(&told, &read))];
    let outcome = interpret(&case);
    let shown = std::env::var("EMBERLOAM_REGION").is_ok_and(|words| name.contains(&words));
    if shown {
        show(name, &outcome);
    }
    for line in &told.lines {
        let named = |sample: &str| outcome.samples.iter().find(|s| s.name.contains(sample));
        let sample = match &line.sample {
            Some(sample) => named(sample),
            None => outcome.samples.first(),
        };
        let about = match &line.sample {
            Some(sample) => format!("{sample} {}", line.about),
            None => line.about.clone(),
        };
        let kept = sample.map_or(Kept::Not("not read".into()), |sample| kept(line, sample));
        all.push((about, line.told.clone(), kept));
    }
    if shown {
        for (about, told, kept) in &all {
            println!("    {about}: told {told}: {kept:?}");
        }
    }
    all
}

/// The faults that are known, each with its reason.
fn listed() -> Vec<(Fault, String)> {
    let text = fs::read_to_string(folder().join("open.txt")).unwrap_or_default();
    text.lines()
        .filter(|line| !line.is_empty())
        .map(|line| {
            let mut parts = line.splitn(4, ": ").map(String::from);
            let mut next = || parts.next().unwrap_or_else(|| panic!("open.txt: “{line}”"));
            ((next(), next(), next()), next())
        })
        .collect()
}

/// Writes the list anew: a fault of the same file and matter keeps its reason.
fn accept(faults: &[Fault], listed: &[(Fault, String)]) {
    let mut text = String::new();
    for (file, about, what) in faults {
        let known = listed.iter().find(|((f, a, _), _)| f == file && a == about);
        let why = known.map_or(NO_REASON, |(_, why)| why);
        text += &format!("{file}: {about}: {what}: {why}\n");
    }
    fs::write(folder().join("open.txt"), text).expect("the list can be written");
}

/// Source: beside each line of the told files stands its own, with its grade.
#[test]
fn each_region_answers_as_its_guide_does_or_the_fault_is_listed() {
    let mut faults: Vec<Fault> = Vec::new();
    let mut counts: BTreeMap<String, Count> = BTreeMap::new();
    for name in names(".txt") {
        let region = told(&name).region.map_or("anywhere", |region| region.id);
        let count = counts.entry(region.into()).or_default();
        for (about, told, kept) in answers(&name) {
            count.told += 1;
            match kept {
                Kept::Held => count.held += 1,
                Kept::Asked => count.asked += 1,
                Kept::Not(said) => {
                    faults.push((name.clone(), about, format!("told {told}, said {said}")));
                }
            }
        }
    }
    println!("{:20} told held asked not held", "region");
    for (region, Count { told, held, asked }) in &counts {
        println!("{region:20} {told:4} {held:4} {asked:5} {:8}", told - held - asked);
    }
    let listed = listed();
    if std::env::var_os("EMBERLOAM_ACCEPT").is_some() {
        accept(&faults, &listed);
    }
    let line = |(file, about, what): &Fault| format!("{file}: {about}: {what}");
    let new = faults.iter().filter(|fault| !listed.iter().any(|(known, _)| known == *fault));
    let new: Vec<String> = new.map(line).collect();
    let gone = listed.iter().filter(|(known, _)| !faults.contains(known));
    let gone: Vec<String> = gone.map(|(known, _)| line(known)).collect();
    let unexplained = listed.iter().filter(|(_, why)| why == NO_REASON);
    let unexplained: Vec<String> = unexplained.map(|(known, _)| line(known)).collect();
    assert!(new.is_empty(), "{} new faults:\n{}", new.len(), new.join("\n"));
    assert!(gone.is_empty(), "no longer stand; take them out:\n{}", gone.join("\n"));
    assert!(unexplained.is_empty(), "give a reason for:\n{}", unexplained.join("\n"));
}

#[test]
fn each_report_has_its_told_file_and_something_to_check() {
    assert_eq!(names(".txt"), names(".told"));
    for name in names(".told") {
        let told = told(&name);
        assert!(!told.lines.is_empty(), "{name} tells nothing");
        let region = told.region.map_or("anywhere", |region| region.id);
        assert!(name.starts_with(region), "{name} is told to be from {region}");
    }
}
