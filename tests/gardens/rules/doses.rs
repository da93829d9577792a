//! Every dose is safe: it has a most at once and in all, keeps to both, leaves the pH within the
//! plants' range, and is not given where something forbids it.

use emberloam_engine::case::BedKind;
use emberloam_engine::plan::needs::{Need, NeedKind};
use emberloam_engine::plan::{Hazard, JobKind};
use emberloam_engine::soil::Property;

use crate::rules::{Faults, days_can_be};
use crate::whole::Whole;

/// A share that sums of numbers may be off by.
const ROUNDING: f64 = 1e-6;

/// From this pH on peat is not limed. Source: E-2567, 5.3 (second-hand), and our choice below it.
const PEAT: f64 = 5.0;

/// What has limits.
const LIMITED: [NeedKind; 13] = [
    NeedKind::Lime,
    NeedKind::Acid,
    NeedKind::Gypsum,
    NeedKind::Nitrogen,
    NeedKind::Phosphate,
    NeedKind::Potash,
    NeedKind::Magnesium,
    NeedKind::Sulfur,
    NeedKind::Boron,
    NeedKind::Zinc,
    NeedKind::Manganese,
    NeedKind::Copper,
    NeedKind::Iron,
];

/// Issue 13, point 5.
pub fn are_safe(whole: &Whole<'_>, faults: &mut Faults) {
    let given = whole.outcome.plan.needs.iter().filter(|need| need.given().is_some());
    for need in given.filter(|need| LIMITED.contains(&need.kind)) {
        within_limits(need, faults);
        ph_in_range(whole, need, faults);
        not_forbidden(whole, need, faults);
    }
    lime_apart_from_feed(whole, faults);
    one_feed_after_the_other(whole, faults);
}

fn within_limits(need: &Need, faults: &mut Faults) {
    let (name, grams) = (need.kind.name(), need.given().map_or(0.0, |grams| grams.likely));
    let (Some(in_all), Some(at_once)) = (&need.in_all, &need.at_once) else {
        return faults.fault(format!("every dose has its limits: {name}"), need.answer.clone());
    };
    let keeps = |grams: f64, most: f64| grams <= most * (1.0 + ROUNDING) + ROUNDING;
    faults.unless(
        keeps(grams, in_all.most),
        || format!("no more than the most in all: {name}"),
        || format!("{grams} g of at most {} g: {}", in_all.most, in_all.why),
    );
    faults.unless(
        keeps(grams / f64::from(need.doses.max(1)), at_once.most),
        || format!("no dose is more than the most at once: {name}"),
        || format!("{grams} g in {} doses of at most {} g", need.doses, at_once.most),
    );
    for ceiling in [in_all, at_once].into_iter().filter(|ceiling| ceiling.binds) {
        let said = need.steps.contains(&ceiling.why);
        let named = need.grounds.rule.contains(&ceiling.grounds.rule);
        let sourced = ceiling.grounds.sources.iter().all(|s| need.grounds.sources.contains(s));
        faults.unless(
            said && named && sourced && !ceiling.grounds.sources.is_empty(),
            || format!("what holds a dose down is said and named: {name}"),
            || format!("{}: {:?}", ceiling.why, need.steps),
        );
    }
}

/// The range is that by which the reading itself was judged.
fn ph_in_range(whole: &Whole<'_>, need: &Need, faults: &mut Faults) {
    let sample = whole.outcome.samples.get(whole.outcome.sample);
    let readings = sample.into_iter().flat_map(|sample| &sample.readings);
    // Peat is limed to 5.3 only, so that it may also be left there.
    let organic = readings.clone().any(|r| {
        let percent = r.value.unwrap_or_default();
        r.property == Property::OrganicMatter && percent >= 20.0
            || r.property == Property::OrganicCarbon && percent >= 10.0
    });
    let mut judged = readings.filter(|r| r.property == Property::Ph);
    let Some(range) = judged.find_map(|r| r.finding.range.as_ref()) else { return };
    let foretold = |name| need.figures.iter().find(|f| f.name == name).map(|f| f.band.likely);
    match need.kind {
        NeedKind::Lime => {
            let (after, to) = (foretold("ph-after-lime"), range.sufficient_to);
            faults.unless(
                after.zip(to).is_some_and(|(after, to)| after <= to + 1e-6),
                || "lime does not take the pH above the plants' range".into(),
                || format!("{after:?}, the range ends at {to:?}"),
            );
        }
        NeedKind::Acid => {
            let after = foretold("ph-after-sulfur");
            let from =
                range.sufficient_from.map(|from| if organic { from.min(PEAT) } else { from });
            faults.unless(
                after.zip(from).is_some_and(|(after, from)| after >= from - 1e-6),
                || "sulfur does not take the pH below the plants' range".into(),
                || format!("{after:?}, the range begins at {from:?}"),
            );
        }
        _ => {}
    }
}

fn not_forbidden(whole: &Whole<'_>, need: &Need, faults: &mut Faults) {
    let (plan, name) = (&whole.outcome.plan, need.kind.name());
    faults.unless(
        whole.case.bed.kind != Some(BedKind::Container),
        || format!("no field dose in a pot: {name}"),
        || need.answer.clone(),
    );
    let sodic = plan.hazards.contains(&Hazard::Sodium);
    faults.unless(
        need.kind != NeedKind::Gypsum || sodic,
        || "gypsum only for sodium".into(),
        || need.answer.clone(),
    );
    let feeds = !matches!(need.kind, NeedKind::Lime | NeedKind::Acid | NeedKind::Gypsum);
    faults.unless(
        !feeds || plan.hazards.is_empty(),
        || format!("nothing is fed before a hazard is mended: {name}"),
        || format!("{:?}", plan.hazards),
    );
}

/// What is parted so that it does no harm is not given on one day.
fn one_feed_after_the_other(whole: &Whole<'_>, faults: &mut Faults) {
    if !days_can_be(whole.case) {
        return;
    }
    let feeds = whole.outcome.plan.jobs.iter().filter(|job| job.kind == JobKind::Feed);
    let days: Vec<_> = feeds.filter_map(|job| Some((job.from?, job.to.or(job.from)?))).collect();
    for pair in days.windows(2) {
        faults.unless(
            pair[1].0 >= pair[0].1,
            || "one feed comes after the other".into(),
            || format!("{days:?}"),
        );
    }
}

/// Lime and nitrogen, which may come as ammonium or manure, stand two weeks apart.
fn lime_apart_from_feed(whole: &Whole<'_>, faults: &mut Faults) {
    if !days_can_be(whole.case) {
        return;
    }
    let days = |kind, word: &'static str| {
        let jobs = whole.outcome.plan.jobs.iter();
        let jobs = jobs.filter(move |job| job.kind == kind && job.task.contains(word));
        jobs.filter_map(|job| Some((job.from?, job.to.or(job.from)?)))
    };
    for (fed_from, fed_to) in days(JobKind::Feed, "nitrogen") {
        for (from, to) in days(JobKind::Lime, "") {
            let apart = (fed_from - to).whole_days() >= 14 || (from - fed_to).whole_days() >= 14;
            faults.unless(
                apart,
                || "lime and nitrogen stand two weeks apart".into(),
                || format!("lime {from} to {to}, fed {fed_from} to {fed_to}"),
            );
        }
    }
}
