//! A day as it is written: `2027-04-20`. Our own few lines, because the
//! calendar library's general parser is a twentieth of the page's weight.

use serde::{Deserialize, Deserializer, Serializer};
use time::{Date, Month};

/// Reads `2027-04-20`; anything else is no day.
pub fn parse(text: &str) -> Option<Date> {
    let mut parts = text.trim().splitn(3, '-');
    let year = parts.next()?.parse().ok()?;
    let month: u8 = parts.next()?.parse().ok()?;
    let day = parts.next()?.parse().ok()?;
    Date::from_calendar_date(year, Month::try_from(month).ok()?, day).ok()
}

/// Writes `2027-04-20`.
pub fn iso(date: Date) -> String {
    format!("{:04}-{:02}-{:02}", date.year(), u8::from(date.month()), date.day())
}

/// Writes `20 April 2027`.
pub fn spoken(date: Date) -> String {
    format!("{} {} {}", date.day(), date.month(), date.year())
}

pub(crate) fn serialize<S: Serializer>(date: &Option<Date>, to: S) -> Result<S::Ok, S::Error> {
    match date {
        Some(date) => to.serialize_some(&iso(*date)),
        None => to.serialize_none(),
    }
}

pub(crate) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Date>, D::Error> {
    let Some(text) = Option::<String>::deserialize(from)? else { return Ok(None) };
    let wrong =
        || serde::de::Error::custom(format!("“{text}” is not a date; write it like 2027-04-20"));
    parse(&text).map(Some).ok_or_else(wrong)
}

#[cfg(test)]
mod tests {
    use super::*;

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
