//! Reports of the world: layouts that were met in public text, rebuilt with invented numbers by
//! people who had not seen the program, and pages that hold no soil result at all.
//!
//! `open` is for building by; what lies in `aside` is counted, and looked into by nobody. A result is
//!
//! - right: property, number and unit, in a sample of that name, or the same once more in another
//!   unit, which the program has worked out and found the same;
//! - right but for want of a name: in a sample of its own that is only numbered;
//! - asked: property and number, while the unit, the method or the sample is open, or while it
//!   is asked whether name and number belong together;
//! - unread: not taken, so that a person must type it;
//! - wrong: taken with another unit, or not in the truth at all;
//! - asked wrongly: not in the truth, but nothing is done with it before it is said to be right.
//!
//! The name counts also where a report has but one sample. Of several equally good names one is
//! enough (the truth parts them by ` | `): the truth calls the depths of one sample
//! `Plot 0-6"`, and so a sample `Plot` of that depth is right, as is one that has the
//! laboratory's number where the truth has a depth alone. Of a column for each year the truth has
//! sometimes the last one only: what stands under an earlier year, and is called by it, is not
//! counted.
//!
//! `cargo test -p emberloam-tests --test world -- --nocapture` prints the tables; with
//! `EMBERLOAM_WORLD=a07` what is wrong and unread in the files whose names begin so.
#![allow(missing_docs, reason = "each test's name says what it checks")]

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use emberloam_engine::quantity::Unit;
use emberloam_engine::report::{self, Pairing, Reading, Report, SampleReport};
use emberloam_engine::soil::Method;
use emberloam_files::open_file;

fn world(folder: &str) -> PathBuf {
    // `join` keeps a whole path as it is.
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("world").join(folder)
}

fn read(path: &std::path::Path) -> Result<Report, String> {
    let bytes = fs::read(path).expect("the file can be read");
    let opened = open_file(&bytes).map_err(|why| why.to_string())?;
    let grid = report::open(opened.text.as_bytes()).map_err(|why| why.to_string())?;
    report::read(&grid).map_err(|why| why.to_string())
}

/// One result that the page prints.
struct Truth {
    sample: String,
    property: String,
    said: String,
    number: f64,
    unit: String,
}

/// Each file with its results.
fn truths(folder: &str) -> BTreeMap<String, Vec<Truth>> {
    let mut all: BTreeMap<String, Vec<Truth>> = BTreeMap::new();
    // Nothing may be set aside just now.
    let files = fs::read_dir(world(folder)).into_iter().flatten().filter_map(Result::ok);
    for list in files.map(|entry| entry.path()) {
        let name = list.file_name().and_then(|name| name.to_str()).unwrap_or_default();
        if !name.starts_with("truth") {
            continue;
        }
        for line in fs::read_to_string(&list).expect("a list").lines().skip(1) {
            let cells: Vec<&str> = line.split('\t').collect();
            let [file, sample, property, said, number, unit, ..] = cells[..] else {
                panic!("{}: {line:?} has too few cells", list.display());
            };
            all.entry(file.into()).or_default().push(Truth {
                sample: sample.into(),
                // The corpus has the short name.
                property: match property {
                    "acidity" => "exchangeable-acidity".into(),
                    other => other.into(),
                },
                said: said.into(),
                number: number.parse().unwrap_or_else(|_| panic!("{file}: {number} is no number")),
                unit: unit.replace(' ', ""),
            });
        }
    }
    all
}

#[derive(Clone, Copy, Default)]
struct Count {
    all: usize,
    right: usize,
    asked: usize,
    unread: usize,
    wrong: usize,
    /// Of the wrong ones those that are right but for the sample's name, or for the unit.
    misnamed: usize,
    other_unit: usize,
    /// Names and numbers that are asked about and don't belong together.
    asked_wrongly: usize,
    /// Right, in a sample of its own that has only a number for a name.
    unnamed: usize,
}

impl Count {
    fn add(&mut self, other: &Count) {
        self.all += other.all;
        self.right += other.right;
        self.asked += other.asked;
        self.unread += other.unread;
        self.wrong += other.wrong;
        self.misnamed += other.misnamed;
        self.other_unit += other.other_unit;
        self.asked_wrongly += other.asked_wrongly;
        self.unnamed += other.unnamed;
    }

    fn told(&self) -> String {
        let share = |n: usize| n as f64 * 100.0 / self.all.max(1) as f64;
        format!(
            "{:.1} % right, {:.1} % right but for want of a name, {:.1} % asked, {:.1} % unread; {} wrong, of them {} by the sample's name alone and {} by the unit; {} asked wrongly",
            share(self.right),
            share(self.unnamed),
            share(self.asked),
            share(self.unread),
            self.wrong,
            self.misnamed,
            self.other_unit,
            self.asked_wrongly
        )
    }
}

/// The truth's unit as the engine writes its own, and how many of the engine's are in one.
fn unit_of(printed: &str) -> (&str, f64) {
    let plain = printed.split("as").next().unwrap_or_default();
    match plain {
        "ppm" => ("mg/kg", 1.0),
        "mg/dm3" | "g/m3" => ("mg/L", 1.0),
        "mg/100g" => ("mg/100 g", 1.0),
        "meq/100g" | "cmol/kg" | "cmolc/kg" => ("meq/100 g", 1.0),
        "meq/100cm3" | "cmolc/dm3" | "cmol/L" => ("meq/100 cm³", 1.0),
        "mmolc/dm3" => ("meq/100 cm³", 0.1),
        "mmolc/kg" => ("mmol(c)/kg", 1.0),
        "uS/cm" => ("µS/cm", 1.0),
        "mS/cm" | "mmho/cm" => ("dS/m", 1.0),
        "g/cm3" => ("g/cm³", 1.0),
        "g/L" | "g/dm3" => ("g/dm³", 1.0),
        other => (other, 1.0),
    }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 2e-3 * a.abs().max(b.abs()).max(1e-9)
}

/// A name without its blanks and marks.
fn plain(name: &str) -> String {
    name.to_lowercase().chars().filter(|c| c.is_alphanumeric()).collect()
}

/// The depth that a name ends with, from and to in any unit, and the name before it.
fn depth_of(name: &str) -> Option<(String, f64, f64)> {
    let name = name.replace('"', "");
    let told = name.trim_end_matches(|c: char| c.is_alphabetic() || matches!(c, ' ' | '"' | ')'));
    let at = told.rfind(|c: char| !c.is_ascii_digit() && !matches!(c, '.' | '-' | '–' | ' '));
    let from = at.map_or(0, |at| at + told[at..].chars().next().map_or(0, char::len_utf8));
    let (ahead, bottom) = told[from..].rsplit_once(['-', '–'])?;
    let start = ahead.trim_end().rfind(' ').map_or(0, |at| at + 1);
    let top = ahead[start..].trim().parse().ok()?;
    let name = name[..from + start].trim_end_matches([' ', ',', '(']);
    Some((name.into(), top, bottom.trim().parse().ok()?))
}

/// Whether a sample is of that depth, in cm, mm or inches.
fn is_as_deep(sample: &SampleReport, top: f64, bottom: f64) -> bool {
    sample.depth_cm.is_some_and(|(from, to)| {
        [1.0, 0.1, 2.54].iter().any(|cm| near(from, top * cm) && near(to, bottom * cm))
    })
}

/// `Sample 2`: what the program calls a sample whose name it did not find.
fn is_numbered(name: &str) -> bool {
    name.rsplit_once("ample ").is_some_and(|(_, n)| n.bytes().all(|b| b.is_ascii_digit()))
}

/// What the truth does not list, though the program reads it.
const UNLISTED: [&str; 5] = ["molybdenum", "sar", "pbi", "remaining-p", "nitrogen-release"];

/// What those who wrote the truth left out, or wrote in their own way, as `sources-*.md` say: the
/// clay that a class's name stands for, sodium by its oxide, an Rt as a pH.
fn is_left_out(sample: &str, reading: &Reading, truths: &[Truth]) -> bool {
    let last = sample.rsplit(", ").next().unwrap_or(sample);
    let year = last.len() == 4 && (last.starts_with("19") || last.starts_with("20"));
    if year && !truths.iter().any(|t| t.sample.contains(last)) {
        return true;
    }
    let listed = |property: &str| truths.iter().any(|t| t.property == property);
    // Some left out every index.
    if reading.unit == Some(Unit::Index) && !listed(reading.property.name()) {
        return true;
    }
    match reading.property.name() {
        "clay" => !reading.original.contains(|c: char| c.is_ascii_digit()),
        "sodium" => reading.name.contains("Na2O") && !listed("sodium"),
        // µg/kg is none of its units.
        "manganese" | "copper" | "zinc" | "boron" => {
            reading.notes.iter().any(|n| n.starts_with("× 0.001"))
                && !listed(reading.property.name())
        }
        "salt-ph" => reading.name == "Rt" && !listed("salt-ph"),
        "bulk-density" => !listed("bulk-density"),
        // The share of aluminium is left out where that of hydrogen stands too.
        "acidity-saturation" => !listed("acidity-saturation") || reading.name.contains("%Al"),
        "buffer-ph" => reading.name.eq_ignore_ascii_case("Lime index") && !listed("buffer-ph"),
        _ => false,
    }
}

/// Whether a reading says the number, as printed or in the engine's unit.
fn says(reading: &Reading, truth: &Truth) -> bool {
    let squashed = |text: &str| text.chars().filter(|c| !c.is_whitespace()).collect::<String>();
    let number = reading.amount.map(|amount| amount.number());
    let (_, factor) = unit_of(&truth.unit);
    let same = |n: f64| near(n, truth.number) || near(n, truth.number * factor);
    number.is_some_and(same)
        || squashed(&reading.original).starts_with(&squashed(&truth.said))
        || truth.said.starts_with(['<', '>']) && number.is_some_and(same)
}

fn compare(truths: &[Truth], report: &Report, faults: &mut Vec<String>) -> Count {
    let mut count = Count { all: truths.len(), ..Count::default() };
    let mut left: Vec<(&SampleReport, &Reading)> = report
        .samples
        .iter()
        .flat_map(|s| s.readings.iter().map(move |r| (s, r)))
        .filter(|(_, r)| r.amount.is_some() && !UNLISTED.contains(&r.property.name()))
        .collect();
    let mut unnamed: Vec<(&str, &Truth)> = Vec::new();
    let several = truths.iter().any(|truth| truth.sample != truths[0].sample);
    // Where there is one sample the laboratory's number for it is no wrong name, but none.
    let numbered = |name: &str| {
        let digits = name.bytes().filter(u8::is_ascii_digit).count();
        let words = name.split(|c: char| !c.is_alphabetic()).any(|w| w.chars().count() > 2);
        is_numbered(name) || !several && digits > 2 && !words
    };
    for truth in truths {
        let fits = |(_, reading): &&(&SampleReport, &Reading)| {
            reading.property.name() == truth.property && says(reading, truth)
        };
        let alike = |a: &str, b: &str| {
            let (a, b) = (plain(a), plain(b));
            a == b || !b.is_empty() && (a.contains(&b) || b.contains(&a))
        };
        let named = |sample: &SampleReport| {
            let deep = || {
                truth.sample.split(" | ").filter_map(depth_of).any(|(name, top, bottom)| {
                    is_as_deep(sample, top, bottom)
                        && (plain(&name).is_empty() || alike(&sample.name, &name))
                })
            };
            let mut names = truth.sample.split(" | ");
            truth.sample.is_empty() || names.any(|name| alike(&sample.name, name)) || deep()
        };
        let found = left
            .iter()
            .filter(fits)
            .find(|(sample, _)| named(sample))
            .or_else(|| left.iter().find(fits));
        // What stands again in another unit, and was seen to be the same, is used once.
        let again = || {
            let samples = report.samples.iter().filter(|s| named(s) || numbered(&s.name));
            let mut unread = samples.flat_map(|s| &s.unread);
            unread.any(|u| u.reason.starts_with("the same ") && u.text.contains(&truth.said))
        };
        if found.is_none() && again() {
            count.right += 1;
            continue;
        }
        let Some(&(sample, reading)) = found else {
            count.unread += 1;
            faults.push(format!("unread: {} {} {}", truth.sample, truth.property, truth.said));
            continue;
        };
        left.retain(|&(_, r)| !std::ptr::eq(r, reading));
        // A lime test index is a buffer pH times ten.
        let index = truth.property == "buffer-ph" && truth.unit == "index";
        let (unit, _) = unit_of(if index { "" } else { &truth.unit });
        match reading.unit.map(Unit::symbol) {
            // 2.6 dag/dm³, which the truth has no name for, is 26 g/dm³.
            // What a paste's extract gives as ppm is mg in a litre of it.
            Some("mg/L")
                if truth.unit == "ppm"
                    && reading.method.as_ref().is_some_and(|m| {
                        matches!(m.value, Method::SaturatedPaste | Method::SaturatedMedia)
                    }) =>
            {
                count.right += 1;
            }
            Some(own) if !unit.is_empty() && own != unit && (own, unit) != ("g/dm³", "%") => {
                count.wrong += 1;
                count.other_unit += 1;
                faults.push(format!(
                    "wrong: {} {}: {own}, printed {unit}",
                    truth.property, truth.said
                ));
            }
            _ if reading.pairing == Pairing::CountedOff => count.asked += 1,
            None if !unit.is_empty() => count.asked += 1,
            // It stands alone, so that its number tells it as well as a name.
            _ if !several && is_numbered(&sample.name) => count.right += 1,
            _ if !named(sample) && numbered(&sample.name) => {
                unnamed.push((&sample.name, truth));
            }
            _ if !named(sample) => {
                count.wrong += 1;
                count.misnamed += 1;
                faults.push(format!(
                    "wrong: {} {} of {:?} is given to {:?}",
                    truth.property, truth.said, truth.sample, sample.name
                ));
            }
            _ => count.right += 1,
        }
    }
    // A sample without a name is wrong where it holds the results of two.
    for (name, truth) in &unnamed {
        let own = unnamed.iter().filter(|(other, _)| other == name);
        if own.clone().all(|(_, other)| other.sample == truth.sample) {
            count.unnamed += 1;
        } else {
            count.wrong += 1;
            count.misnamed += 1;
            faults.push(format!(
                "wrong: {} {} of {:?} is mixed with others",
                truth.property, truth.said, truth.sample
            ));
        }
    }
    let left = left.iter().map(|(sample, reading)| (&sample.name, reading));
    for (name, reading) in left.filter(|(name, r)| !is_left_out(name, r, truths)) {
        let asked = reading.pairing == Pairing::CountedOff;
        *if asked { &mut count.asked_wrongly } else { &mut count.wrong } += 1;
        faults.push(format!(
            "{}: {name}: {} {} from {:?} is no result",
            if asked { "asked wrongly" } else { "wrong" },
            reading.property.name(),
            reading.original,
            reading.name
        ));
    }
    count
}

fn counted(folder: &str, shown: bool) -> Count {
    let asked = std::env::var("EMBERLOAM_WORLD").ok();
    let mut total = Count::default();
    let mut sets: BTreeMap<String, Count> = BTreeMap::new();
    for (file, truth) in truths(folder) {
        let mut faults = Vec::new();
        let count = match read(&world(folder).join(&file)) {
            Ok(report) => compare(&truth, &report, &mut faults),
            Err(why) => {
                faults.push(why);
                Count { all: truth.len(), unread: truth.len(), ..Count::default() }
            }
        };
        let Count { right, asked: open, unread, wrong, .. } = count;
        if shown {
            println!(
                "{file:<44} {right:>5} {open:>5} {unread:>6} {wrong:>5} {:>5} {:>5} {:>5} {:>5}",
                count.misnamed, count.other_unit, count.asked_wrongly, count.unnamed
            );
            if asked.as_ref().is_some_and(|name| file.starts_with(name.as_str())) {
                println!("    {}", faults.join("\n    "));
            }
        }
        total.add(&count);
        sets.entry(file.chars().take(1).collect()).or_default().add(&count);
    }
    if shown {
        sets.iter().for_each(|(set, count)| println!("set {set}: {}", count.told()));
    }
    println!("{folder}: {}", total.told());
    total
}

/// Source: the pages themselves; the truth was written by who made them.
#[test]
fn reports_of_the_world_are_read() {
    println!("{:<44} right asked unread wrong", "file");
    counted("open", true);
}

#[test]
fn reports_set_aside_are_counted() {
    counted("aside", false);
}

/// The reports of a folder of one's own, with their `truth.tsv`: `EMBERLOAM_REPORTS=/a/folder`.
#[test]
fn reports_of_a_folder_of_ones_own_are_counted() {
    if let Ok(folder) = std::env::var("EMBERLOAM_REPORTS") {
        counted(&folder, true);
    }
}

/// A page of rates, ranges, leaves, water, compost or prices yields no reading.
#[test]
fn a_page_that_is_no_soil_report_yields_nothing() {
    let mut wrong = Vec::new();
    let mut pages = 0;
    for path in fs::read_dir(world("pages")).expect("a folder").filter_map(Result::ok) {
        let path = path.path();
        let name = path.file_name().and_then(|name| name.to_str()).unwrap_or_default().to_owned();
        if name == "README.md" {
            continue;
        }
        pages += 1;
        if let Ok(report) = read(&path) {
            let readings = report.samples.iter().flat_map(|sample| &sample.readings);
            let told: Vec<String> =
                readings.map(|r| format!("{} {}", r.property.name(), r.original)).collect();
            wrong.push(format!("{name}: {}", told.join(", ")));
        }
    }
    wrong.sort();
    assert!(wrong.is_empty(), "{} of {pages} pages yield:\n{}", wrong.len(), wrong.join("\n"));
    assert!(pages >= 30);
}
