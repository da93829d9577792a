//! What is carried to the bed reads as the jobs and the recipe say it.

use emberloam_engine::plan::JobKind;
use emberloam_engine::plan::needs::NeedKind;
use emberloam_engine::summary::{Carried, Vessel, carry, months};

use crate::rules::Faults;
use crate::whole::Whole;

/// A number to the quarter as it is spoken.
fn spoken(text: &str) -> Option<f64> {
    let part = |sign: char| match sign {
        '¼' => Some(0.25),
        '½' => Some(0.5),
        '¾' => Some(0.75),
        _ => None,
    };
    match text.chars().last().and_then(part) {
        Some(rest) => {
            let whole = text.trim_end_matches(['¼', '½', '¾']);
            Some(rest + if whole.is_empty() { 0.0 } else { whole.parse::<f64>().ok()? })
        }
        None => text.parse().ok(),
    }
}

/// One number each; the same one as in the job or the recipe; nothing where nothing is used.
pub fn reads_as_the_jobs(whole: &Whole<'_>, faults: &mut Faults) {
    let (plan, case) = (&whole.outcome.plan, whole.case);
    let all = carry(&whole.outcome, case);
    let own_bucket = case.charge.bucket_litres.is_some();
    let biochar = plan.uses_biochar() && plan.dose.litres > 0.0;
    faults.unless(
        all.first().is_some_and(|first| first.name == "biochar") == biochar,
        || "biochar is carried first, where any is used".into(),
        || format!("{:?} {all:?}", plan.dose),
    );
    let given = plan.needs.iter().any(|need| need.given().is_some());
    let compost = plan.needs.iter().any(|need| need.kind == NeedKind::Compost);
    faults.unless(
        all.is_empty() || biochar || given || compost,
        || "nothing is carried where nothing is used".into(),
        || format!("{all:?}"),
    );
    let jobs: Vec<&str> = plan.jobs.iter().map(|job| job.task.as_str()).collect();
    let steps: Vec<&str> = plan.charge.iter().flat_map(|c| &c.steps).map(String::as_str).collect();
    let spreads: Vec<&str> = plan
        .jobs
        .iter()
        .filter(|job| job.kind == JobKind::SpreadBiochar)
        .map(|job| job.task.as_str())
        .collect();
    for carried in &all {
        let Carried { name, count, vessel, amount, what, fine, .. } = carried;
        let first = amount.split([' ', '\u{a0}']).next().unwrap_or_default();
        faults.unless(
            spoken(first).is_some_and(|number| count.is_none_or(|count| count == number))
                && !amount.contains(['(', '–', ')'])
                && what.len() > 3,
            || "one plain number is carried".into(),
            || format!("{carried:?}"),
        );
        let both = |texts: &[&str], one: &str, other: &str| {
            texts.iter().any(|text| text.contains(one) && text.contains(other))
        };
        let said = if *name == "biochar" {
            match vessel {
                Vessel::Bag => true,
                Vessel::Bucket if own_bucket => true,
                Vessel::Bucket => ["ten-litre", "five-gallon"]
                    .iter()
                    .any(|kind| both(&spreads, &format!("{first} {kind}"), "")),
                _ => both(&spreads, amount, ""),
            }
        } else if let Some((source, _)) = what.split_once(", to charge") {
            // The recipe tells the amount of one batch.
            steps.iter().any(|step| step.starts_with("Make ")) || both(&steps, amount, source)
        } else {
            let beside =
                what.contains(", beside the bag") || ["fertiliser", "compost"].contains(name);
            beside || both(&jobs, amount, what)
        };
        faults.unless(
            said,
            || format!("{name} is carried as the jobs say it"),
            || format!("{carried:?} {jobs:?} {steps:?}"),
        );
        if let Some((low, rest)) = fine.split_once(" to ") {
            let high = rest.split(' ').next().and_then(spoken);
            let low = spoken(low);
            let within = match count {
                Some(count) => low <= Some(*count) && Some(*count) <= high,
                None => low < high,
            };
            faults.unless(
                within && low < high,
                || "what is carried lies in what is fine".into(),
                || format!("{carried:?}"),
            );
        }
    }
    by_month(whole, faults);
}

/// Every dated job of the year stands in its months, and begins once.
fn by_month(whole: &Whole<'_>, faults: &mut Faults) {
    let (plan, today) = (&whole.outcome.plan, whole.case.season.today);
    let twelve = months(plan, today);
    faults.unless(
        twelve.len() == if today.is_some() { 12 } else { 0 },
        || "twelve months".into(),
        || format!("{twelve:?}"),
    );
    let Some(today) = today else { return };
    for (at, job) in plan.jobs.iter().enumerate() {
        let begins = twelve
            .iter()
            .flat_map(|month| month.jobs.iter().zip(&month.starts).map(move |both| (month, both)))
            .filter(|(_, (job, starts))| **job == at && **starts);
        let months: Vec<_> = begins.map(|(month, _)| (month.year, month.month)).collect();
        let first = job.from.or(job.to);
        let soon = first.is_some_and(|day| {
            let months = 12 * (day.year() - today.year()) + i32::from(u8::from(day.month()))
                - i32::from(u8::from(today.month()));
            (0..12).contains(&months)
        });
        let right: Vec<_> =
            first.filter(|_| soon).map(|day| (day.year(), day.month())).into_iter().collect();
        faults.unless(
            months == right,
            || "a job begins in its month".into(),
            || format!("{job:?}: {months:?}"),
        );
    }
}
