//! Dates as JSON writes them: `"2027-04-20"` (ISO 8601).

use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};
use time::{Date, Month};

/// Reads `2027-04-20`.
pub fn read(text: &str) -> Option<Date> {
    let mut parts = text.splitn(3, '-');
    let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
    let digits = |part: &str, count: usize| -> Option<u16> {
        (part.len() == count && part.bytes().all(|b| b.is_ascii_digit()))
            .then(|| part.parse().ok())?
    };
    let year = i32::from(digits(year, 4)?);
    let month = Month::try_from(u8::try_from(digits(month, 2)?).ok()?).ok()?;
    let day = u8::try_from(digits(day, 2)?).ok()?;
    Date::from_calendar_date(year, month, day).ok()
}

/// Writes a date, or null.
///
/// # Errors
/// When the serializer fails.
#[allow(clippy::ref_option, reason = "serde hands a field over by reference")]
pub fn serialize<S: Serializer>(date: &Option<Date>, serializer: S) -> Result<S::Ok, S::Error> {
    date.map(|date| date.to_string()).serialize(serializer)
}

/// Reads a date, or null.
///
/// # Errors
/// When the text is no date.
pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Date>, D::Error> {
    let Some(text) = Option::<String>::deserialize(deserializer)? else { return Ok(None) };
    read(&text)
        .map(Some)
        .ok_or_else(|| D::Error::custom(format!("“{text}” is not a date such as 2027-04-20")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_date_comes_back_as_written_and_anything_else_is_refused() {
        for text in ["2027-04-20", "2028-02-29", "0001-01-01", "9999-12-31"] {
            assert_eq!(read(text).map(|d| d.to_string()).as_deref(), Some(text));
        }
        for text in ["", "2027-4-20", "2027-02-29", "2027-13-01", "20-04-2027", "2027-04-20T00"] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
