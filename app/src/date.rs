//! The day by the clock of the device.

use time::{Date, Month};

/// Today by the clock of the device.
pub fn today() -> Option<Date> {
    let now = js_sys::Date::new_0();
    let month = Month::try_from(now.get_month() as u8 + 1).ok()?;
    Date::from_calendar_date(now.get_full_year() as i32, month, now.get_date() as u8).ok()
}
