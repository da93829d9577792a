//! The jobs of a year by month.

use time::{Date, Month};

use crate::plan::Plan;

/// A month with its jobs.
#[derive(Clone, Debug, PartialEq)]
pub struct MonthOfJobs {
    /// The year.
    pub year: i32,
    /// The month.
    pub month: Month,
    /// Which of the plan's jobs fall into it, in their order.
    pub jobs: Vec<usize>,
    /// Of each of these, whether it begins in this month.
    pub starts: Vec<bool>,
}

/// The twelve months from today's on; none where nobody knows today. A job without days is in
/// none of them; one without a last day stands where it begins, one without a first where it
/// ends.
pub fn months(plan: &Plan, today: Option<Date>) -> Vec<MonthOfJobs> {
    let Some(today) = today else { return Vec::new() };
    // Months counted from the year 0, so that they can be compared.
    let number = |day: Date| 12 * day.year() + i32::from(u8::from(day.month())) - 1;
    let spans: Vec<Option<(i32, i32)>> = plan
        .jobs
        .iter()
        .map(|job| {
            let first = job.from.or(job.to)?;
            Some((number(first), number(job.to.unwrap_or(first))))
        })
        .collect();
    let first = number(today);
    let month_of = |at: i32| {
        let within = |span: &Option<(i32, i32)>| {
            span.is_some_and(|(begins, ends)| (begins..=ends).contains(&at))
        };
        let jobs: Vec<usize> = (0..spans.len()).filter(|job| within(&spans[*job])).collect();
        let starts =
            jobs.iter().map(|job| spans[*job].is_some_and(|(begins, _)| begins == at)).collect();
        let month = Month::January.nth_next(at.rem_euclid(12) as u8);
        MonthOfJobs { year: at.div_euclid(12), month, jobs, starts }
    };
    (first..first + 12).map(month_of).collect()
}
