//! `cargo run --release -q -p emberloam-engine --example costs -- [MOST_SECONDS [answers]]`
//!
//! With `answers` only the cases are measured.
//! What it costs to read and to answer texts and cases that were made to be costly, in seconds,
//! each at four sizes: where the last column is above 2, the cost grows faster than the size.
//! For limits: see "What was tried and survived" in DEVELOPERS.md.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    clippy::print_stdout,
    reason = "this is a measurement: it takes the time and prints"
)]

use std::borrow::Cow;
use std::time::Instant;

use emberloam_engine::case::{Correction, Crop};
use emberloam_engine::{Case, details, interpret, report, season, summary, survey};
use time::{Date, Month};

/// A kind of text, made as long as wanted.
type Text = (&'static str, fn(usize) -> String, usize);

const TEXTS: &[Text] = &[
    ("digits of one number", |n| format!("pH {}", "1".repeat(n)), 300_000),
    ("digits without a name", |n| "7".repeat(n), 300_000),
    ("digits in groups", |n| format!("K 1{} ppm", ",000".repeat(n / 4)), 300_000),
    ("digits and dots", |n| format!("pH {}", "1.".repeat(n / 2)), 300_000),
    ("numbers of one line", |n| format!("pH {}", "6 ".repeat(n / 2)), 300_000),
    ("numbers and ranges", |n| format!("pH {}", "6-7 ".repeat(n / 4)), 300_000),
    ("exponents", |n| format!("P 1{}", "e1".repeat(n / 2)), 300_000),
    ("signs", |n| format!("P {}", "<".repeat(n)), 300_000),
    ("minus", |n| format!("P {}5", "-".repeat(n)), 300_000),
    ("brackets", |n| format!("P {}5{}", "(".repeat(n / 2), ")".repeat(n / 2)), 300_000),
    ("words of one line", |n| "soil test ".repeat(n / 10), 300_000),
    ("one word", |n| "a".repeat(n), 300_000),
    ("one foreign word", |n| "ä".repeat(n / 2), 300_000),
    ("units of one line", |n| format!("P 5 {}", "mg/kg ".repeat(n / 6)), 300_000),
    ("slashes", |n| format!("P 5 mg{}", "/kg".repeat(n / 3)), 300_000),
    ("names of one line", |n| "pH P K Ca Mg ".repeat(n / 13), 300_000),
    ("pairs of one line", |n| "pH 6.5 P 30 K 150 ".repeat(n / 18), 300_000),
    ("pairs in sentences", |n| "The pH is 6.5 and P is 30 ppm. ".repeat(n / 31), 300_000),
    ("columns of nothing", |n| format!("pH{}\n6.5", "\t".repeat(n)), 40_000),
    ("columns of one name", |n| format!("{}\n{}", "pH\t".repeat(n), "6.5\t".repeat(n)), 40_000),
    (
        "columns of names",
        |n| format!("{}\n{}", "pH,P (ppm),K,".repeat(n / 3), "6.5,30,150,".repeat(n / 3)),
        40_000,
    ),
    (
        "columns of samples",
        |n| {
            let heads: String = (0..n).map(|i| format!(",Bed {i}")).collect();
            format!("Test{heads}\npH{}\nP ppm{}\n", ",6.5".repeat(n), ",30".repeat(n))
        },
        40_000,
    ),
    ("columns of words", |n| format!("{}\n{}", "x,".repeat(n), "6.5,".repeat(n)), 40_000),
    ("columns of blanks", |n| format!("pH{}6.5", " ".repeat(n)), 300_000),
    ("columns held by blanks", |n| format!("{}\n{}", "pH   ".repeat(n), "6.5  ".repeat(n)), 40_000),
    ("bars", |n| format!("{}\n{}", "|pH".repeat(n), "|6.5".repeat(n)), 40_000),
    ("lines of results", |n| "P 12 ppm\n".repeat(n), 20_000),
    ("lines of numbers", |n| "12\n".repeat(n), 20_000),
    ("lines of words", |n| "garden soil\n".repeat(n), 20_000),
    ("lines of names", |n| "Phosphorus\n".repeat(n), 20_000),
    (
        "names, then numbers",
        |n| format!("{}{}", "Phosphorus\n".repeat(n / 2), "12 ppm\n".repeat(n / 2)),
        20_000,
    ),
    ("lines of samples", |n| "Sample: Bed\npH 6.5\n".repeat(n / 2), 20_000),
    ("lines of headings", |n| "Recommendations:\nResults:\n".repeat(n / 2), 20_000),
    (
        "lines of one table",
        |n| {
            let rows: String = (0..n).map(|i| format!("Bed {i},6.5,30,150\n")).collect();
            format!("Sample,pH,P ppm,K ppm\n{rows}")
        },
        20_000,
    ),
    ("tables", |n| "Sample,pH,P ppm\nBed,6.5,30\n\n".repeat(n / 3), 20_000),
    ("rows of ranges", |n| "pH,6.5,6.0-7.0,low\n".repeat(n), 20_000),
    ("rows of the same name", |n| "Bed 1,pH,6.5\n".repeat(n), 20_000),
    ("page breaks", |n| "\u{c}pH 6.5\n".repeat(n), 20_000),
    ("drawn lines", |n| "+----+\n|pH|6.5|\n".repeat(n / 2), 20_000),
    ("footnotes", |n| "1/ by Mehlich-3\n".repeat(n), 20_000),
];

/// A kind of answer, given as often as wanted.
type Answers = (&'static str, fn(&mut Case, usize), usize);

const ANSWERS: &[Answers] = &[
    (
        "crops",
        |case, n| {
            let crop = |i| Crop { name: format!("kale {i}"), planting: None, harvest: None };
            case.season.crops = (0..n).map(crop).collect();
        },
        200,
    ),
    (
        "dated crops",
        |case, n| {
            let day = |month, day| Date::from_calendar_date(2027, month, day).ok();
            let crop = |i| Crop {
                name: format!("kale {i}"),
                planting: day(Month::April, 1 + (i % 28) as u8),
                harvest: day(Month::July, 1 + (i % 28) as u8),
            };
            case.season.crops = (0..n).map(crop).collect();
        },
        200,
    ),
    (
        "a long name of a crop",
        |case, n| {
            let crop = Crop { name: "kale ".repeat(n), planting: None, harvest: None };
            case.season.crops = vec![crop];
        },
        40_000,
    ),
    ("charge sources", |case, n| case.charge_with = all_of(n), 20_000),
    (
        "corrections",
        |case, n| {
            let Some(reading) = case.report.samples[0].readings.first().cloned() else { return };
            let one = Correction {
                place: reading.place,
                original: reading.original,
                property: None,
                result: Some("6.1".into()),
                unit: None,
                method: None,
                leave_out: false,
            };
            case.reading.corrections = vec![one; n];
        },
        20_000,
    ),
    ("a far sample", |case, n| case.sample = n, 4_000_000),
    ("a great area", |case, n| case.bed.area_m2 = Some(10f64.powi(n as i32)), 300),
    ("many years", |case, n| case.biochar.years = Some(n as u32), 4_000_000_000),
];

fn all_of(n: usize) -> Vec<emberloam_engine::case::ChargeSource> {
    use emberloam_engine::case::ChargeSource;
    ChargeSource::ALL.iter().copied().cycle().take(n).collect()
}

const REPORT: &str = "pH 6.1\nP 18 ppm Mehlich-3\nK 120 ppm\nCa 900 ppm\nCEC 8\nNO3-N 22 ppm\n";

fn read(text: &str) -> Case {
    let read = report::open(text.as_bytes()).and_then(|grid| report::read(&grid));
    Case { report: read.unwrap_or_default(), ..Case::default() }
}

fn answered(case: &Case) -> usize {
    let outcome = interpret(case);
    summary::text(&summary::plan(&outcome, case.measures)).len()
}

/// What a reader may open of an answer.
fn opened(case: &Case) {
    let outcome = interpret(case);
    let surveyed = survey(Cow::Borrowed(case));
    details::traits(&surveyed);
    details::windows(&surveyed);
    details::courses(&surveyed, &outcome.plan);
    details::exchange_shift(&surveyed, &outcome.plan);
    details::winter_loss(&surveyed, &outcome.plan);
    season::place(&case.season, case.measures);
    details::purchase(&surveyed, &outcome.plan);
    details::repeats(&surveyed, &outcome.plan);
    details::sensitivity(case);
}

fn main() {
    let most = std::env::args().nth(1).and_then(|s| s.parse().ok()).unwrap_or(10.0);
    for (name, text, size) in TEXTS.iter().take(if std::env::args().len() > 2 { 0 } else { 99 }) {
        row(name, *size, most, |n| {
            let text = text(n);
            let begun = Instant::now();
            let case = read(&text);
            answered(&case);
            begun.elapsed().as_secs_f64()
        });
    }
    for (name, answer, size) in ANSWERS {
        row(name, *size, most, |n| {
            let mut case = read(REPORT);
            case.season.today = Date::from_calendar_date(2027, Month::March, 1).ok();
            case.season.latitude = Some(48.0);
            case.season.last_frost = Date::from_calendar_date(2027, Month::May, 1).ok();
            case.bed.area_m2 = Some(6.0);
            answer(&mut case, n);
            let begun = Instant::now();
            answered(&case);
            opened(&case);
            begun.elapsed().as_secs_f64()
        });
    }
}

fn row(name: &str, size: usize, most: f64, measure: impl Fn(usize) -> f64) {
    print!("{name:28} {size:>10} ");
    let mut last = 0.0;
    let mut growth = 0.0;
    for part in [8, 4, 2, 1] {
        let seconds = measure(size / part);
        print!(" {seconds:8.3}");
        growth = if last > 0.002 { seconds / last } else { 0.0 };
        last = seconds;
        if seconds > most {
            print!(" …");
            break;
        }
    }
    println!("  {}{growth:.1}", if growth > 2.6 { "! " } else { "" });
}
