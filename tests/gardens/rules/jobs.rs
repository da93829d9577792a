//! Rule 4: every job can be done.

use emberloam_engine::Outcome;
use emberloam_engine::case::ChargeSource;
use emberloam_engine::plan::charge::intervals::RAW_TOUCHING;
use emberloam_engine::plan::{Job, JobKind};
use emberloam_engine::season::Timing;
use emberloam_engine::survey::Standing;
use time::{Date, Duration};

use crate::rules::{Faults, days_can_be};
use crate::whole::Whole;

/// DESIGN §1, rule 4: jobs are dated, in order, none before today, none that digs where
/// something stands, and what charges comes before what is charged.
pub fn can_be_done(whole: &Whole<'_>, faults: &mut Faults) {
    let timing = Timing::of(&whole.case.season);
    let jobs = &whole.outcome.plan.jobs;
    if !days_can_be(whole.case) {
        return;
    }
    for job in jobs {
        in_time(job, &timing, faults);
        digs_where_it_may(job, whole, faults);
    }
    in_order(jobs, faults);
    charged_first(&whole.outcome, faults);
    manure_waits(whole, &timing, faults);
}

fn told(job: &Job) -> String {
    format!("{:?} to {:?}: {}", job.from, job.to, job.task)
}

/// None before today, none that ends before it begins.
fn in_time(job: &Job, timing: &Timing, faults: &mut Faults) {
    let kind = job.kind.name();
    if let Some(today) = timing.today {
        for day in [job.from, job.to].into_iter().flatten() {
            faults.unless(day >= today, || format!("no job before today: {kind}"), || told(job));
        }
    }
    if let Some((from, to)) = job.from.zip(job.to) {
        faults.unless(from <= to, || format!("a job ends after it begins: {kind}"), || told(job));
    }
}

/// None that digs before the bed is clear, where nobody knows when it will be, or where roots
/// last; and what a job says is what it is marked as.
fn digs_where_it_may(job: &Job, whole: &Whole<'_>, faults: &mut Faults) {
    let kind = job.kind.name();
    let words = ["mix it in", "dig it in", "fork it in"];
    let says = words.iter().any(|word| job.task.contains(word));
    faults.unless(
        job.digs || !says,
        || format!("a job that digs is marked so: {kind}"),
        || told(job),
    );
    if !job.digs {
        return;
    }
    match whole.survey.bed.standing {
        Standing::Clear => {}
        Standing::Until(off) => {
            let after = job.from.is_some_and(|from| from >= off);
            faults.unless(
                after,
                || format!("no digging before the bed is clear: {kind}"),
                || format!("clear on {off}; {}", told(job)),
            );
        }
        Standing::Open | Standing::Lasting => {
            faults.fault(format!("no digging where something stands: {kind}"), told(job));
        }
    }
    // A crop planted since stands in the bed until it is off.
    let planted = Timing::of(&whole.case.season).planting;
    if let (Some(planted), Some(from)) = (planted, job.from) {
        faults.unless(
            from < planted || job.kind == JobKind::Lime,
            || format!("no digging once the next crop is in: {kind}"),
            || format!("planted on {planted}; {}", told(job)),
        );
    }
}

/// Sorted by their first days.
fn in_order(jobs: &[Job], faults: &mut Faults) {
    let days: Vec<Date> = jobs.iter().filter_map(|job| job.from.or(job.to)).collect();
    faults.unless(
        days.is_sorted(),
        || "jobs stand in order".into(),
        || jobs.iter().map(told).collect::<Vec<_>>().join(" | "),
    );
}

/// Biochar is spread once the charge is through.
fn charged_first(outcome: &Outcome, faults: &mut Faults) {
    let Some(charge) = &outcome.plan.charge else { return };
    let first = |kind| outcome.plan.jobs.iter().find(|job| job.kind == kind);
    let (Some(begins), Some(spreads)) = (first(JobKind::Charge), first(JobKind::SpreadBiochar))
    else {
        return faults.fault("a charge has its job", format!("{:?}", outcome.plan.path));
    };
    let Some((begun, spread)) = begins.from.zip(spreads.from) else { return };
    let ready = begun.saturating_add(Duration::days(charge.days.likely as i64));
    faults.unless(
        spread >= ready,
        || "biochar is spread once it is charged".into(),
        || format!("begun {begun}, {} days, spread {spread}", charge.days.likely),
    );
}

/// From what counts as raw manure to the harvest there are 120 days, where the harvest is known.
fn manure_waits(whole: &Whole<'_>, timing: &Timing, faults: &mut Faults) {
    let Some(charge) = &whole.outcome.plan.charge else { return };
    let raw = [ChargeSource::AgedManure, ChargeSource::Urine, ChargeSource::CompostTea];
    if !charge.used.iter().any(|u| u.amount > 0.0 && raw.contains(&u.source)) {
        return;
    }
    let eaten = charge.intervals.iter().any(|i| i.days.0 > 0);
    let spreads = whole.outcome.plan.jobs.iter().find(|job| job.kind == JobKind::SpreadBiochar);
    let Some(spread) = spreads.and_then(|job| job.from).filter(|_| eaten) else { return };
    let known = whole.case.season.crops.iter().filter_map(|crop| crop.harvest);
    for harvest in known.chain(timing.harvest).filter(|harvest| *harvest > spread) {
        let wait = (harvest - spread).whole_days();
        faults.unless(
            wait >= RAW_TOUCHING,
            || "manure waits for the harvest".into(),
            || format!("spread {spread}, harvest {harvest}: {wait} days"),
        );
    }
}
