//! A day as it is written: `2027-04-20`. Our own few lines, because the
//! calendar library's general parser is a twentieth of the page's weight.

use std::ops::RangeInclusive;

use serde::{Deserialize, Deserializer, Serializer};
use time::{Date, Month};

/// The years in which a garden is planned; any other is a slip of the pen. Our choice.
pub const YEARS: RangeInclusive<i32> = 1900..=2200;

/// Reads a day as [`iso`] writes it, such as `2027-04-20`; anything else is no day.
pub fn parse(text: &str) -> Option<Date> {
    let text = text.trim();
    let before_christ = text.strip_prefix('-');
    let mut parts = before_christ.unwrap_or(text).splitn(3, '-');
    let year = i32::from(parts.next()?.parse::<u16>().ok()?);
    let month: u8 = parts.next()?.parse().ok()?;
    let day = parts.next()?.parse().ok()?;
    let year = if before_christ.is_some() { -year } else { year };
    Date::from_calendar_date(year, Month::try_from(month).ok()?, day).ok()
}

/// Reads a day that a person or a file gives.
///
/// # Errors
/// In words for the reader, when it is no day or its year is none of [`YEARS`].
pub fn read(text: &str) -> Result<Date, String> {
    match parse(text) {
        Some(date) if YEARS.contains(&date.year()) => Ok(date),
        Some(date) => Err(format!(
            "“{text}” lies in the year {}, and not between {} and {}; write it like 2027-04-20",
            date.year(),
            YEARS.start(),
            YEARS.end()
        )),
        None => Err(format!("“{text}” is not a date; write it like 2027-04-20")),
    }
}

/// Writes `2027-04-20`; a year before 0 begins with a minus.
pub fn iso(date: Date) -> String {
    let sign = if date.year() < 0 { "-" } else { "" };
    let year = date.year().unsigned_abs();
    format!("{sign}{year:04}-{:02}-{:02}", u8::from(date.month()), date.day())
}

/// Writes `20 April 2027`: day and month can't be mixed up.
pub fn spoken(date: Date) -> String {
    format!("{} {} {}", date.day(), date.month(), date.year())
}

/// Writes the days from one date to another without saying a month or year twice.
pub fn span(from: Date, to: Date) -> String {
    if from == to {
        spoken(to)
    } else if from.year() != to.year() {
        format!("{} – {}", spoken(from), spoken(to))
    } else if from.month() != to.month() {
        format!("{} {} – {}", from.day(), from.month(), spoken(to))
    } else {
        format!("{}–{}", from.day(), spoken(to))
    }
}

/// The days of a job, in words.
pub fn when(from: Option<Date>, to: Option<Date>) -> String {
    match (from, to) {
        (Some(from), Some(to)) => span(from, to),
        (Some(from), None) => format!("From {}", spoken(from)),
        (None, Some(to)) => format!("By {}", spoken(to)),
        (None, None) => "No date yet".into(),
    }
}

pub(crate) fn serialize<S: Serializer>(date: &Option<Date>, to: S) -> Result<S::Ok, S::Error> {
    match date {
        Some(date) => to.serialize_some(&iso(*date)),
        None => to.serialize_none(),
    }
}

pub(crate) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Date>, D::Error> {
    let Some(text) = Option::<String>::deserialize(from)? else { return Ok(None) };
    read(&text).map(Some).map_err(serde::de::Error::custom)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_span_says_month_and_year_once() {
        let span_of = |a, b| span(parse(a).unwrap(), parse(b).unwrap());
        assert_eq!(span_of("2027-04-02", "2027-04-20"), "2–20 April 2027");
        assert_eq!(span_of("2027-04-28", "2027-05-03"), "28 April – 3 May 2027");
        assert_eq!(span_of("2027-12-28", "2028-01-03"), "28 December 2027 – 3 January 2028");
        assert_eq!(span_of("2027-04-02", "2027-04-02"), "2 April 2027");
    }

    #[test]
    fn a_day_comes_back_as_it_was_written() {
        for text in ["2027-04-20", "2028-02-29", "1999-12-31"] {
            assert_eq!(parse(text).map(iso).as_deref(), Some(text));
        }
        for text in ["", "2027-02-29", "20.4.2027", "2027-13-01", "2027-04"] {
            assert_eq!(parse(text), None, "{text}");
        }
    }

    #[test]
    fn every_day_there_is_comes_back_as_it_was_written() {
        for number in Date::MIN.to_julian_day()..=Date::MAX.to_julian_day() {
            let day = Date::from_julian_day(number).unwrap();
            assert_eq!(parse(&iso(day)), Some(day));
            if day.ordinal() == 1 {
                assert_eq!(read(&iso(day)).is_ok(), YEARS.contains(&day.year()), "{day}");
            }
        }
    }

    #[test]
    fn a_slip_of_the_pen_in_the_year_is_told() {
        assert_eq!(
            read("0027-04-20").unwrap_err(),
            "“0027-04-20” lies in the year 27, and not between 1900 and 2200; write it like 2027-04-20"
        );
        for text in
            ["-0001-01-01", "0000-01-01", "9999-12-31", "12027-04-20", "99999-04-20", "--1-01-01"]
        {
            assert!(read(text).unwrap_err().contains("2027-04-20"), "{text}");
            let json = format!(r#"{{"planting":"{text}"}}"#);
            let wrong = serde_json::from_str::<crate::case::Season>(&json).unwrap_err();
            assert!(wrong.to_string().contains("write it like"), "{wrong}");
        }
    }

    #[test]
    fn a_case_keeps_its_days_and_refuses_what_is_none() {
        let planting = parse("2027-04-20");
        let season = crate::case::Season { planting, ..Default::default() };
        let json = serde_json::to_string(&season).unwrap();
        assert!(json.contains(r#""planting":"2027-04-20""#), "{json}");
        assert_eq!(serde_json::from_str::<crate::case::Season>(&json).unwrap(), season);
        let wrong = serde_json::from_str::<crate::case::Season>(r#"{"planting":"20 April"}"#);
        assert!(wrong.unwrap_err().to_string().contains("not a date"));
    }
}
