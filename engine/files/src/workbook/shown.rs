//! What a cell shows.

use crate::decimal::shortest;
use calamine::{Data, ExcelDateTime};

/// What a person should be told of a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mark {
    /// A time of day, where a ratio may have been typed.
    Time,
    /// A date without its year, where a range may have been typed.
    Yearless,
    /// The error of a formula.
    Failed,
    /// A formula without a result.
    Unfinished,
}

/// The text of a cell.
#[derive(Debug, Default)]
pub(super) struct Shown {
    pub text: String,
    pub mark: Option<Mark>,
}

impl Shown {
    pub fn text(text: impl Into<String>) -> Shown {
        Shown { text: text.into(), mark: None }
    }

    pub fn marked(text: impl Into<String>, mark: Mark) -> Shown {
        Shown { text: text.into(), mark: Some(mark) }
    }

    /// A formula without a result.
    pub fn unfinished() -> Shown {
        Shown::marked("", Mark::Unfinished)
    }

    pub fn truth(said: bool) -> Shown {
        Shown::text(if said { "TRUE" } else { "FALSE" })
    }
}

/// What a cell shows, with its number format where it is known.
pub(super) fn cell(value: &Data, format: &str) -> Shown {
    match value {
        Data::Empty => Shown::default(),
        Data::String(text) => Shown::text(text.as_str()),
        Data::Int(number) => number_in(*number as f64, format),
        Data::Float(number) => number_in(*number, format),
        Data::Bool(said) => Shown::truth(*said),
        Data::DateTime(moment) => date(moment, format),
        Data::DateTimeIso(text) => iso_date(text),
        Data::DurationIso(text) => duration(text),
        Data::Error(error) => Shown::marked(error.to_string(), Mark::Failed),
    }
}

fn number_in(number: f64, format: &str) -> Shown {
    Shown::text(if is_percent(format) { percent(number) } else { shortest(number) })
}

pub(super) fn percent(number: f64) -> String {
    format!("{}%", shortest(number * 100.0))
}

/// Whether a number format shows per cent, outside text in quotes.
fn is_percent(format: &str) -> bool {
    let mut quoted = false;
    let mut escaped = false;
    for c in format.chars() {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => quoted = !quoted,
            ';' if !quoted => return false,
            '%' if !quoted => return true,
            _ => {}
        }
    }
    false
}

/// A date as year, month and day; a time of day as hours and minutes. Never a
/// number of days, which could be taken for a result.
fn date(moment: &ExcelDateTime, format: &str) -> Shown {
    let days = moment.as_f64();
    // A spreadsheet shows no such date; the last one is in the year 9999.
    if !(0.0..2_958_466.0).contains(&days) {
        return Shown::marked("#####", Mark::Failed);
    }
    if moment.is_duration() || (0.0..1.0).contains(&days) {
        return Shown::marked(clock((days * 86_400.0).round() as i64), Mark::Time);
    }
    let (year, month, day, hour, minute, ..) = moment.to_ymd_hms_milli();
    let mut text = format!("{year:04}-{month:02}-{day:02}");
    if (hour, minute) != (0, 0) {
        text.push_str(&format!(" {hour:02}:{minute:02}"));
    }
    let yearless = !format.is_empty() && !format.contains(['y', 'Y', 'e']);
    if yearless { Shown::marked(text, Mark::Yearless) } else { Shown::text(text) }
}

/// `1:10`, or `1:10:30` where there are seconds.
fn clock(seconds: i64) -> String {
    let (hours, minutes, seconds) = (seconds / 3_600, seconds / 60 % 60, seconds % 60);
    let mut text = format!("{hours}:{:02}", minutes.abs());
    if seconds != 0 {
        text.push_str(&format!(":{:02}", seconds.abs()));
    }
    text
}

pub(super) fn iso_date(text: &str) -> Shown {
    let day = text.strip_suffix("T00:00:00").unwrap_or(text);
    Shown::text(day.replace('T', " "))
}

/// `PT01H10M00S` as `1:10`.
pub(super) fn duration(text: &str) -> Shown {
    let mut seconds = 0;
    let mut number = 0i64;
    for c in text.chars() {
        match c {
            '0'..='9' => {
                number = number.saturating_mul(10).saturating_add(i64::from(c as u8 - b'0'));
            }
            // Parts of a second are no part of a ratio.
            '.' | ',' => {
                seconds += number.min(1_000_000);
                break;
            }
            _ => {
                let size = match c {
                    'D' => 86_400,
                    'H' => 3_600,
                    'M' => 60,
                    'S' => 1,
                    _ => 0,
                };
                seconds += number.min(1_000_000) * size;
                number = 0;
            }
        }
    }
    Shown::marked(clock(seconds), Mark::Time)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::decimal::shortest;

    #[test]
    fn a_number_is_its_shortest_decimal() {
        let cases = [
            (0.1 + 0.2, "0.3"),
            (6.2, "6.2"),
            (1450.0, "1450"),
            (-0.0, "0"),
            (1.0 / 3.0, "0.333333333333333"),
            (1e-12, "1e-12"),
            (12.3 + 2e-15, "12.3"),
        ];
        for (number, text) in cases {
            assert_eq!(shortest(number), text);
        }
    }

    #[test]
    fn a_percent_format_is_known_outside_quotes() {
        assert!(is_percent("0.0%") && is_percent("#,##0.00 %;[Red]-0.00 %"));
        assert!(!is_percent("0.0\" %\"") && !is_percent("General") && !is_percent("0\\%"));
        assert_eq!(cell(&Data::Float(0.034), "0.0%").text, "3.4%");
    }

    #[test]
    fn times_are_never_numbers() {
        let shown = duration("PT01H10M00S");
        assert_eq!((shown.text.as_str(), shown.mark), ("1:10", Some(Mark::Time)));
        assert_eq!(duration("PT90H05M09.5S").text, "90:05:09");
        assert!(!duration("P99999999999999999999DT9H99999999999999999999.5S").text.is_empty());
    }
}
