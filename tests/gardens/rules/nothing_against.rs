//! Rule 2: nothing is advised that another part forbids.

use emberloam_engine::case::ChargeSource;
use emberloam_engine::plan::charge::sources::holds_ammonium;
use emberloam_engine::plan::needs::{Need, NeedKind, Verdict};
use emberloam_engine::plan::{Hazard, JobKind, Path, Plan};

use crate::rules::{Faults, days_can_be};
use crate::whole::Whole;

/// DESIGN §1, rule 2.
pub fn nothing_against(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    hazards(plan, faults);
    no_biochar(plan, faults);
    phosphorus(whole, faults);
    lime_and_acid(plan, faults);
    charge(whole, faults);
    working_in(whole, faults);
}

fn need(plan: &Plan, kind: NeedKind) -> Option<&Need> {
    plan.needs.iter().find(|need| need.kind == kind)
}

fn given(plan: &Plan, kind: NeedKind) -> bool {
    need(plan, kind).is_some_and(|need| need.given().is_some())
}

fn has_job(plan: &Plan, kind: JobKind) -> bool {
    plan.jobs.iter().any(|job| job.kind == kind)
}

/// In leaded soil nothing is dug and nothing made more acid; where a hazard stands, no biochar.
fn hazards(plan: &Plan, faults: &mut Faults) {
    if plan.hazards.contains(&Hazard::Lead) {
        let digs = plan.jobs.iter().find(|job| job.digs);
        faults.unless(
            digs.is_none(),
            || "no digging in leaded soil".into(),
            || format!("{:?}", digs.map(|job| &job.task)),
        );
        let acid = has_job(plan, JobKind::Sulfur) || given(plan, NeedKind::Acid);
        faults.unless(
            !acid,
            || "no sulfur on leaded soil".into(),
            || format!("{:?}", need(plan, NeedKind::Acid)),
        );
        let plants = has_job(plan, JobKind::Plant);
        faults.unless(
            !plants,
            || "no food is planted in leaded soil".into(),
            || plan.headline.clone(),
        );
        let feeds = has_job(plan, JobKind::Feed);
        faults.unless(!feeds, || "no food is fed in leaded soil".into(), || plan.headline.clone());
    }
    if !plan.hazards.is_empty() {
        faults.unless(
            plan.path == Path::None,
            || "no biochar before a hazard".into(),
            || format!("{:?} {:?}", plan.hazards, plan.path),
        );
    }
}

/// Where there is no biochar now, no part has any; and the headline says what the path is.
fn no_biochar(plan: &Plan, faults: &mut Faults) {
    let none = plan.path == Path::None;
    let jobs = has_job(plan, JobKind::Charge) || has_job(plan, JobKind::SpreadBiochar);
    let any = jobs || plan.charge.is_some() || !plan.amounts.is_empty() || !plan.effects.is_empty();
    faults.unless(
        !(none && any),
        || "no biochar is none anywhere".into(),
        || plan.headline.clone(),
    );
    faults.unless(
        none || has_job(plan, JobKind::SpreadBiochar),
        || "biochar has its job".into(),
        || plan.headline.clone(),
    );
    let words = ["No biochar", "No plan yet", "Don't use this biochar"];
    let says_none = words.iter().any(|word| plan.headline.contains(word));
    faults.unless(
        none == says_none,
        || "the headline says what the path is".into(),
        || format!("{:?}: {}", plan.path, plan.headline),
    );
}

/// Where phosphorus is to stop, nothing on the list brings it.
fn phosphorus(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let stops = need(plan, NeedKind::Phosphate).is_some_and(|n| n.verdict == Verdict::Stop);
    if !stops {
        return;
    }
    let bag = whole.case.feeds.fertiliser.is_some_and(|bag| bag[1] > 0.0);
    let fertiliser = bag && given(plan, NeedKind::Fertiliser);
    faults.unless(
        !fertiliser,
        || "no bag with phosphate where it is to stop".into(),
        || format!("{:?}", need(plan, NeedKind::Fertiliser).map(|n| &n.answer)),
    );
    let compost = need(plan, NeedKind::Compost)
        .iter()
        .flat_map(|n| &n.figures)
        .any(|f| f.name == "compost-litres" && f.band.likely > 0.0);
    faults.unless(
        !compost,
        || "no compost where phosphate is to stop".into(),
        || format!("{:?}", need(plan, NeedKind::Compost).map(|n| &n.answer)),
    );
    let phosphate = |job: &&emberloam_engine::plan::Job| job.task.contains("phosphate");
    let job = plan.jobs.iter().find(phosphate);
    faults.unless(
        job.is_none(),
        || "no phosphate is fed where it is to stop".into(),
        || format!("{:?}", job.map(|job| &job.task)),
    );
}

/// The pH is raised or lowered, not both; and where lime is warned against, none is given.
fn lime_and_acid(plan: &Plan, faults: &mut Faults) {
    let (lime, acid) = (given(plan, NeedKind::Lime), given(plan, NeedKind::Acid));
    faults.unless(!(lime && acid), || "never lime and acid".into(), || plan.headline.clone());
    let warned = plan.cautions.iter().any(|c| c.text.contains("Don't lime as well"));
    faults.unless(
        !(warned && lime),
        || "no lime where it is warned against".into(),
        || format!("{:?}", need(plan, NeedKind::Lime).map(|n| &n.answer)),
    );
    let lime_first = plan.headline.starts_with("Lime first");
    let known = need(plan, NeedKind::Lime).is_some_and(|n| n.verdict != Verdict::Enough);
    faults.unless(!lime_first || known, || "lime first is lime".into(), || plan.headline.clone());
}

/// No ash with ammonium, nor lime within two weeks of it; on grass and where roots last
/// nothing is mixed in.
fn charge(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let Some(charge) = &plan.charge else { return };
    if !days_can_be(whole.case) {
        return;
    }
    let uses = |source| charge.used.iter().any(|u| u.source == source && u.amount > 0.0);
    let ammonium = charge.used.iter().any(|u| holds_ammonium(u.source) && u.amount > 0.0);
    faults.unless(
        !(ammonium && uses(ChargeSource::WoodAsh)),
        || "no ash with ammonium".into(),
        || format!("{:?}", charge.steps),
    );
    let days = |kind| {
        let jobs = plan.jobs.iter().filter(move |job| job.kind == kind);
        jobs.filter_map(|job| Some((job.from?, job.to.or(job.from)?)))
    };
    for (from, _) in days(JobKind::SpreadBiochar).filter(|_| ammonium) {
        for (_, limed) in days(JobKind::Lime).filter(|(lime, _)| *lime <= from) {
            faults.unless(
                (from - limed).whole_days() >= 14,
                || "lime and ammonium stand two weeks apart".into(),
                || format!("lime until {limed}, charge spread from {from}"),
            );
        }
    }
}

/// The view of working in digs where the job digs, and nowhere else.
fn working_in(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let digs = plan.jobs.iter().any(|job| job.kind == JobKind::SpreadBiochar && job.digs);
    let mut steps = whole.details.work_in.iter().flat_map(|w| &w.steps);
    let step = steps.find(|step| step.text.contains("Dig or fork"));
    faults.unless(
        step.is_none() || digs,
        || "working in digs only where the job does".into(),
        || format!("{:?}", step.map(|s| &s.text)),
    );
}
