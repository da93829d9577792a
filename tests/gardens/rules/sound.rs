//! Rule 0: whatever is put in, every call answers, and every number is one.

use emberloam_engine::Case;
use emberloam_engine::season::day;
use serde_json::{Map, Value};

use crate::rules::Faults;
use crate::whole::Whole;

/// Units of what can't be less than nothing.
const AMOUNTS: [&str; 10] = ["L", "kg", "g", "t/ha", "bags", "days", "mm", "cm", "m²", "dS/m"];

/// Keys whose number is never left out: `null` there was no number.
const NEVER_EMPTY: [&str; 6] = ["low", "likely", "high", "most", "amount", "share"];

/// DESIGN §1: every number is a finite one, with its bounds in order, and no amount is less
/// than nothing (issue 12, point 10).
pub fn numbers(whole: &Whole<'_>, faults: &mut Faults) {
    walk(&whole.json, "outcome", faults);
    let details = format!("{:?}", whole.details);
    let readings = format!(
        "{:?}",
        whole
            .outcome
            .samples
            .iter()
            .map(|s| s.readings.iter().map(|r| (r.value, r.bound)).collect::<Vec<_>>())
            .collect::<Vec<_>>()
    );
    for (where_, text) in [("details", &details), ("readings", &readings), ("text", &whole.text)] {
        for word in ["NaN", "inf"] {
            faults.unless(!has_word(text, word), format!("no {word} in {where_}"), || {
                around(text, word)
            });
        }
    }
    in_order(&details, faults);
}

/// Whether a text has a word by itself.
fn has_word(text: &str, word: &str) -> bool {
    find_word(text, word).is_some()
}

fn find_word(text: &str, word: &str) -> Option<usize> {
    let whole = |at: usize| {
        let before = text[..at].chars().next_back();
        let after = text[at + word.len()..].chars().next();
        !before.is_some_and(char::is_alphanumeric) && !after.is_some_and(char::is_alphanumeric)
    };
    text.match_indices(word).map(|(at, _)| at).find(|at| whole(*at))
}

fn around(text: &str, word: &str) -> String {
    let at = find_word(text, word).unwrap_or(0);
    let from = text[..at].char_indices().rev().nth(160).map_or(0, |(i, _)| i);
    text[from..].chars().take(260).collect()
}

/// The bounds of every band in a Debug text.
fn in_order(text: &str, faults: &mut Faults) {
    let number = |text: &str, after: &str| -> Option<f64> {
        let rest = text.strip_prefix(after)?;
        rest[..rest.find([',', ' ', '}'])?].parse().ok()
    };
    for (at, _) in text.match_indices("low: ") {
        let band = (|| {
            let text = &text[at..];
            let low = number(text, "low: ")?;
            let text = &text[text.find("likely: ")?..];
            let likely = number(text, "likely: ")?;
            let text = &text[text.find("high: ")?..];
            Some((low, likely, number(text, "high: ")?))
        })();
        if let Some((low, likely, high)) = band {
            faults.unless(low <= likely && likely <= high, "bounds in order in details", || {
                let from = text[..at].char_indices().rev().nth(120).map_or(0, |(i, _)| i);
                text[from..].chars().take(260).collect()
            });
        }
    }
}

/// Goes through what is written as JSON.
fn walk(value: &Value, path: &str, faults: &mut Faults) {
    match value {
        Value::Object(object) => {
            bounds(object, path, faults);
            for (key, value) in object {
                if NEVER_EMPTY.contains(&key.as_str()) {
                    faults.unless(
                        !value.is_null(),
                        format!("a finite number at {}", plain(path)),
                        || format!("{path}.{key} is none: {object:?}"),
                    );
                }
                walk(value, &format!("{path}.{key}"), faults);
            }
        }
        Value::Array(items) => {
            for (at, item) in items.iter().enumerate() {
                let name = item.get("name").or(item.get("of")).or(item.get("kind"));
                let name = name.and_then(Value::as_str).map_or(at.to_string(), String::from);
                walk(item, &format!("{path}.{name}"), faults);
            }
        }
        Value::String(text) => {
            for word in ["NaN", "inf"] {
                faults.unless(
                    !has_word(text, word),
                    format!("no {word} said at {}", plain(path)),
                    || format!("{path}: {}", around(text, word)),
                );
            }
        }
        _ => {}
    }
}

/// A path without its numbers.
fn plain(path: &str) -> String {
    let parts = path.split('.').filter(|part| part.parse::<usize>().is_err());
    parts.collect::<Vec<_>>().join(".")
}

fn bounds(object: &Map<String, Value>, path: &str, faults: &mut Faults) {
    let number = |key| object.get(key).and_then(Value::as_f64);
    if let (Some(low), Some(likely), Some(high)) = (number("low"), number("likely"), number("high"))
    {
        faults.unless(
            low <= likely && likely <= high,
            format!("bounds in order at {}", plain(path)),
            || format!("{path}: {low}, {likely}, {high}"),
        );
        let unit = object.get("unit").and_then(Value::as_str).unwrap_or_default();
        // What changes may fall.
        let is_amount =
            AMOUNTS.contains(&unit) || path.ends_with("for_bed") || path.ends_with("wanted");
        faults.unless(
            !is_amount || low >= 0.0,
            format!("no negative amount at {}", plain(path)),
            || format!("{path}: {low}, {likely}, {high} {unit}"),
        );
    }
    for key in ["most", "amount"] {
        let Some(value) = number(key) else { continue };
        faults.unless(value >= 0.0, format!("no negative amount at {}.{key}", plain(path)), || {
            format!("{path}.{key}: {value}")
        });
    }
}

/// Issue 12, point 10: what the program wrote of a case, it reads back the same.
pub fn round_trip(case: &Case, faults: &mut Faults) {
    let written = match serde_json::to_string(case) {
        Ok(written) => written,
        Err(why) => return faults.unless(false, "a case can be written", || why.to_string()),
    };
    match serde_json::from_str::<Case>(&written) {
        Err(why) => faults.unless(false, "a case that was written is read", || {
            let why = why.to_string();
            let at = why.rfind("column ").and_then(|i| why[i + 7..].parse::<usize>().ok());
            let from = at.unwrap_or(0).saturating_sub(60);
            format!(
                "{why}: …{}",
                written.get(from..).unwrap_or_default().chars().take(80).collect::<String>()
            )
        }),
        Ok(mut back) => {
            back.report = case.report.clone();
            // What is no number is written as nothing.
            let again = serde_json::to_string(&back).unwrap_or_default();
            faults.unless(again == written, "a case is read as it was written", || {
                format!("{written}\n{again}")
            });
        }
    }
}

/// Issue 12, point 10: a date that the program writes can be read back.
pub fn days(whole: &Whole<'_>, faults: &mut Faults) {
    let jobs = whole.outcome.plan.jobs.iter().flat_map(|job| [job.from, job.to]);
    let windows = whole.details.windows.rests.iter().flat_map(|d| [d.from, d.to]);
    for date in jobs.chain(windows).flatten() {
        let written = day::iso(date);
        faults.unless(
            day::parse(&written) == Some(date),
            "a date that was written is read",
            || format!("{written} for {date}"),
        );
    }
}
