//! What the checks have in common.

use std::borrow::Cow;

use emberloam_engine::{Case, Plan, Survey, plan, report, survey};
use time::{Date, Month};

/// Fails unless `found` is within `tolerance` of `expected`.
#[track_caller]
pub fn close(found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "found {found}, expected {expected} ± {tolerance}"
    );
}

/// A date.
pub fn day(year: i32, month: u8, day: u8) -> Option<Date> {
    Some(Date::from_calendar_date(year, Month::try_from(month).unwrap(), day).unwrap())
}

/// A case whose report says this.
pub fn case_of(text: &str) -> Case {
    let report =
        report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).expect("it reads");
    Case { report, ..Case::default() }
}

/// The survey of a case.
pub fn surveyed(case: &Case) -> Survey<'_> {
    survey(Cow::Borrowed(case))
}

/// A view of the plan of a case.
pub fn viewed<T>(case: &Case, view: impl Fn(&Survey<'_>, &Plan) -> T) -> T {
    let survey = surveyed(case);
    view(&survey, &plan(&survey).0)
}
