//! Dates as a reader sees them.

use time::{Date, Month};

use crate::words;

/// Writes `20 April 2027`: day and month can't be mixed up.
pub fn spoken(date: Date) -> String {
    format!(
        "{} {} {}",
        date.day(),
        words::MONTHS[usize::from(u8::from(date.month())) - 1],
        date.year()
    )
}

/// Writes the days from one date to another without saying a month or year twice.
pub fn span(from: Date, to: Date) -> String {
    let month = |d: Date| words::MONTHS[usize::from(u8::from(d.month())) - 1];
    if from == to {
        spoken(to)
    } else if from.year() != to.year() {
        format!("{} – {}", spoken(from), spoken(to))
    } else if from.month() != to.month() {
        format!("{} {} – {}", from.day(), month(from), spoken(to))
    } else {
        format!("{}–{}", from.day(), spoken(to))
    }
}

/// Today by the clock of the device.
pub fn today() -> Option<Date> {
    let now = js_sys::Date::new_0();
    let month = Month::try_from(now.get_month() as u8 + 1).ok()?;
    Date::from_calendar_date(now.get_full_year() as i32, month, now.get_date() as u8).ok()
}

#[cfg(test)]
mod tests {
    use emberloam_engine::season::day::parse;

    use super::*;

    #[test]
    fn a_span_says_month_and_year_once() {
        let span_of = |a, b| span(parse(a).unwrap(), parse(b).unwrap());
        assert_eq!(span_of("2027-04-02", "2027-04-20"), "2–20 April 2027");
        assert_eq!(span_of("2027-04-28", "2027-05-03"), "28 April – 3 May 2027");
        assert_eq!(span_of("2027-12-28", "2028-01-03"), "28 December 2027 – 3 January 2028");
        assert_eq!(span_of("2027-04-02", "2027-04-02"), "2 April 2027");
    }
}
