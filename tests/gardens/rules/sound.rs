//! Rule 0: whatever is put in, every call answers, and every number is one.

use emberloam_engine::day;
use emberloam_engine::quantity::{Band, Unit};
use emberloam_engine::summary;
use emberloam_engine::{Case, details, export};
use serde_json::Value;

use crate::rules::Faults;
use crate::whole::Whole;

/// Units of what can't be less than nothing.
const AMOUNTS: [Unit; 10] = [
    Unit::Litre,
    Unit::Kg,
    Unit::Gram,
    Unit::TonnePerHa,
    Unit::Bags,
    Unit::Days,
    Unit::Mm,
    Unit::Cm,
    Unit::SquareMetre,
    Unit::DsPerM,
];

/// What may be less than nothing: a change, or what is lost of it.
const MAY_FALL: [&str; 6] =
    ["over a year", "effects", "shift", "winter", "year after year", "held"];

/// DESIGN §1: every number is a finite one, with its bounds in order, and no amount is less
/// than nothing (issue 12, point 10).
pub fn numbers(whole: &Whole<'_>, faults: &mut Faults) {
    for (place, figure) in whole.figures() {
        is_sound(&figure.band, &|| format!("{place}, {}", figure.name), faults);
        let amount = AMOUNTS.contains(&figure.unit) && !MAY_FALL.contains(&place);
        is_amount(amount, &figure.band, &|| format!("{place}, {}", figure.name), faults);
    }
    for (place, band) in whole.bands() {
        is_sound(&band, &|| place.to_string(), faults);
        // Sulfur takes alkalinity away.
        let amount = !MAY_FALL.contains(&place) && !["brought", "works"].contains(&place);
        is_amount(amount, &band, &|| place.to_string(), faults);
    }
}

fn is_sound(band: &Band, place: &dyn Fn() -> String, faults: &mut Faults) {
    let Band { low, likely, high } = *band;
    let finite = low.is_finite() && likely.is_finite() && high.is_finite();
    faults.unless(
        finite,
        || format!("every number is finite: {}", place()),
        || format!("{band:?}"),
    );
    let ordered = low <= likely && likely <= high;
    faults.unless(ordered, || format!("bounds are in order: {}", place()), || format!("{band:?}"));
}

fn is_amount(amount: bool, band: &Band, place: &dyn Fn() -> String, faults: &mut Faults) {
    let holds = !amount || band.low >= 0.0;
    faults.unless(holds, || format!("no amount is negative: {}", place()), || format!("{band:?}"));
}

/// Issue 12, point 10: what the program wrote of a case, it reads back the same.
pub fn round_trip(case: &Case, faults: &mut Faults) {
    let written = match serde_json::to_string(case) {
        Ok(written) => written,
        Err(why) => return faults.fault("a case can be written", why.to_string()),
    };
    match serde_json::from_str::<Case>(&written) {
        // A year that is a slip of the pen is told when it comes back.
        Err(why) if why.to_string().contains("lies in the year") => {}
        // What is no number comes from no file, and goes into none.
        Err(_) if says_no_number(&format!("{case:?}")) => {}
        Err(why) => {
            let at = why.column().saturating_sub(60);
            let there: String = written.chars().skip(at).take(80).collect();
            faults.fault("a case that was written is read", format!("{why}: …{there}"));
        }
        Ok(mut back) => {
            back.report = case.report.clone();
            let again = serde_json::to_string(&back).unwrap_or_default();
            faults.unless(
                again == written,
                || "a case is read as it was written".into(),
                || format!("{written}\n{again}"),
            );
        }
    }
}

/// Issue 12, point 10: a date that the program writes can be read back.
pub fn days(whole: &Whole<'_>, faults: &mut Faults) {
    let jobs = whole.outcome.plan.jobs.iter().flat_map(|job| [job.from, job.to]);
    let windows = whole.details.windows.rests.iter().chain(&whole.details.windows.conflicts);
    let frosts = whole.details.place.iter().flat_map(|place| &place.frosts);
    let dated = windows.chain(frosts).flat_map(|d| [d.from, d.to]);
    for date in jobs.chain(dated).flatten() {
        let written = day::iso(date);
        faults.unless(
            day::parse(&written) == Some(date),
            || "a date that was written is read".into(),
            || format!("{written} for {date}"),
        );
    }
}

/// Keys of the JSON whose number is never left out: `null` there was no number.
const NEVER_EMPTY: [&str; 5] = ["low", "likely", "high", "most", "amount"];

/// The same of all that is written: the outcome as JSON, the details, the text, the exports.
pub fn all_that_is_written(whole: &Whole<'_>, faults: &mut Faults) {
    let outcome = serde_json::to_value(&whole.outcome).expect("an outcome can be written");
    walk(&outcome, &mut Vec::new(), faults);
    // It plans the bed dozens of times.
    let holds = details::sensitivity(whole.case);
    let counted = holds.is_none_or(|found| found.holds + found.turns.len() == found.of);
    faults.unless(counted, || "every variation holds or turns".into(), String::new);
    let details = format!("{:?}", whole.details);
    in_order(&details, faults);
    let report = &whole.case.report;
    let csv = export::csv(report, &whole.outcome, "");
    faults.unless(!csv.is_empty(), || "the readings are exported".into(), || csv.clone());
    let modus = export::modus(report, &whole.outcome, "code", "2026-11-25");
    let read = serde_json::from_str::<Value>(&modus);
    faults.unless(read.is_ok(), || "an export of readings is JSON".into(), || modus.clone());
    // What a person gave as no number may be said again to them.
    if says_no_number(&format!("{:?}", whole.case)) {
        return;
    }
    for text in [details, summary::text(&whole.blocks), whole.calendar.clone(), csv] {
        faults.unless(
            !says_no_number(&text),
            || "no text says a number that is none".into(),
            || {
                let at = ["NaN", "inf"].iter().find_map(|word| text.find(word)).unwrap_or(0);
                text.chars().skip(at.saturating_sub(160)).take(260).collect()
            },
        );
    }
}

fn says_no_number(text: &str) -> bool {
    text.split(|c: char| !c.is_alphanumeric()).any(|word| word == "NaN" || word == "inf")
}

/// The bounds of every band in a Debug text.
fn in_order(text: &str, faults: &mut Faults) {
    let number = |text: &str, after: &str| -> Option<f64> {
        let rest = &text[text.find(after)? + after.len()..];
        rest[..rest.find([',', ' ', '}'])?].parse().ok()
    };
    for (at, _) in text.match_indices("low: ") {
        let band: String = text[at..].chars().take(120).collect();
        let found = ["low: ", "likely: ", "high: "].map(|name| number(&band, name));
        let [Some(low), Some(likely), Some(high)] = found else { continue };
        faults.unless(
            low <= likely && likely <= high,
            || "bounds are in order in the details".into(),
            || {
                text[..at]
                    .chars()
                    .rev()
                    .take(120)
                    .collect::<String>()
                    .chars()
                    .rev()
                    .collect::<String>()
                    + &band
            },
        );
    }
}

/// Goes through what is written as JSON.
fn walk(value: &Value, path: &mut Vec<String>, faults: &mut Faults) {
    match value {
        Value::Object(object) => {
            let number = |key| object.get(key).and_then(Value::as_f64);
            if let [Some(low), Some(likely), Some(high)] = ["low", "likely", "high"].map(number) {
                faults.unless(
                    low <= likely && likely <= high,
                    || format!("bounds are in order in the JSON at {}", plain(path)),
                    || format!("{low}, {likely}, {high}"),
                );
            }
            for (key, value) in object {
                path.push(key.clone());
                let empty = value.is_null() && NEVER_EMPTY.contains(&key.as_str());
                faults.unless(
                    !empty,
                    || format!("every number of the JSON is one at {}", plain(path)),
                    || path.join("."),
                );
                walk(value, path, faults);
                path.pop();
            }
        }
        Value::Array(items) => {
            for (at, item) in items.iter().enumerate() {
                path.push(at.to_string());
                walk(item, path, faults);
                path.pop();
            }
        }
        _ => {}
    }
}

/// A path without its numbers.
fn plain(path: &[String]) -> String {
    let parts = path.iter().filter(|part| part.parse::<usize>().is_err());
    parts.cloned().collect::<Vec<_>>().join(".")
}
