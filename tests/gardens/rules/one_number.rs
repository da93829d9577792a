//! Rule 1: one fact, one number.

use std::borrow::Cow;

use emberloam_engine::case::ChargeSource;
use emberloam_engine::plan::needs::{NeedKind, Verdict};
use emberloam_engine::plan::{Hazard, JobKind, RuleName};
use emberloam_engine::quantity::{Band, Grounds, measured_out};
use emberloam_engine::{plan, survey};

use crate::rules::Faults;
use crate::whole::Whole;

/// DESIGN §1, rule 1: no two places show different values for one quantity of one bed.
pub fn one_number(whole: &Whole<'_>, faults: &mut Faults) {
    nitrate(whole, faults);
    sodium_and_salts(whole, faults);
    biochar(whole, faults);
    working_in(whole, faults);
    inputs(whole, faults);
}

/// The nitrate in store is the same among the traits and before the winter.
fn nitrate(whole: &Whole<'_>, faults: &mut Faults) {
    let stock = whole.details.traits.get("nitrate-stock").map(|f| f.band);
    let winter = whole.details.winter_loss.iter().flat_map(|w| &w.figures);
    let held: Option<Band> = winter.filter(|f| f.name == "nitrate-held").map(|f| f.band).next();
    faults.unless(
        held.is_none() || held == stock,
        || "one stock of nitrate".into(),
        || format!("{stock:?} {held:?}"),
    );
}

/// Salty and sodic are the same among hazards, reasons, needs, cautions and traits.
fn sodium_and_salts(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let hazard = |hazard| plan.hazards.contains(&hazard);
    let fired = |rule| plan.reasons.iter().any(|r| r.rule == rule);
    let say = || format!("{:?}, {:?}", plan.hazards, plan.headline);
    let sodic = hazard(Hazard::Sodium);
    let salty = hazard(Hazard::Salts);
    faults.unless(sodic == fired(RuleName::Sodic), || "sodic in hazards and reasons".into(), say);
    let of_salts = fired(RuleName::Saline) || fired(RuleName::SaltyOneToOne);
    faults.unless(salty == of_salts, || "salty in hazards and reasons".into(), say);
    let gypsum = plan.needs.iter().find(|n| n.kind == NeedKind::Gypsum);
    let cures = gypsum.is_some_and(|n| n.answer.contains("soil is sodic"));
    faults.unless(
        sodic == cures,
        || "sodic in hazards and needs".into(),
        || format!("{:?}: {:?}", plan.hazards, gypsum.map(|n| &n.answer)),
    );
    let cautioned = plan.cautions.iter().any(|c| c.text.contains("soil is sodic"));
    faults.unless(sodic == cautioned, || "sodic in hazards and cautions".into(), say);
    let said = whole.details.traits.sayings.iter().find(|s| s.name == "sodicity");
    if let Some(said) = said {
        // "this soil is saline and sodic", "this soil is most likely sodic, but may be saline".
        let class = said.text.split("this soil is ").nth(1).unwrap_or_default();
        let class = class.trim_start_matches("most likely ");
        let says = class.starts_with("sodic") || class.starts_with("saline and sodic");
        faults.unless(
            class.is_empty() || says == sodic,
            || "sodic in hazards and traits".into(),
            || format!("{:?}: {}", plan.hazards, said.text),
        );
    }
}

/// The amount of biochar is the same wherever it is said.
fn biochar(whole: &Whole<'_>, faults: &mut Faults) {
    let (plan, bed) = (&whole.outcome.plan, &whole.survey.bed);
    let dose = &plan.dose;
    let same = dose.area == bed.area.value && dose.depth == bed.depth.value;
    faults.unless(same, || "one area and one depth".into(), || format!("{dose:?}"));
    if !plan.uses_biochar() {
        return;
    }
    let amount = |name| plan.amounts.iter().find(|f| f.name == name).map(|f| f.band.likely);
    faults.unless(
        amount("biochar-volume") == Some(dose.litres),
        || "one amount of biochar, in the amounts".into(),
        || format!("{dose:?}"),
    );
    let bought = whole.details.purchase.iter().flat_map(|p| &p.figures).find(|f| f.name == "bags");
    faults.unless(
        bought.is_none_or(|f| Some(f.band.likely) == amount("bags")),
        || "one count of bags".into(),
        || format!("{bought:?} {:?}", amount("bags")),
    );
    let said = measured_out(dose.litres, whole.case.measures);
    let spreads = plan.jobs.iter().find(|job| job.kind == JobKind::SpreadBiochar);
    faults.unless(
        spreads.is_some_and(|job| job.task.contains(&said)),
        || "one amount of biochar, in the jobs".into(),
        || format!("{said} {:?}", spreads.map(|job| &job.task)),
    );
}

/// What is dug in, in two halves, is what the job says is spread.
fn working_in(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let Some(work) = &whole.details.work_in else { return };
    let spreads = plan.jobs.iter().find(|job| job.kind == JobKind::SpreadBiochar);
    let Some(job) = spreads.filter(|job| job.digs) else { return };
    let mixed = plan.charge.iter().flat_map(|c| &c.used);
    // Compost, castings and manure are mixed in; what soaks in takes no room.
    let mixed = mixed.filter(|u| {
        use ChargeSource::{AgedManure, Compost, Vermicompost};
        [Compost, Vermicompost, AgedManure].contains(&u.source)
    });
    let all = plan.dose.litres + mixed.map(|u| u.amount).sum::<f64>();
    let said = |litres| measured_out(litres, whole.case.measures);
    faults.unless(
        job.task.contains(&said(all)),
        || "the job spreads biochar and what is mixed in".into(),
        || format!("{}: {}", said(all), job.task),
    );
    faults.unless(
        work.steps.iter().any(|step| step.text.contains(&said(all / 2.0))),
        || "two halves are worked in".into(),
        || {
            format!(
                "{}: {:?}",
                said(all / 2.0),
                work.steps.iter().map(|s| &s.text).collect::<Vec<_>>()
            )
        },
    );
}

/// What facts of the bed are called where something is worked out from them.
const FACTS: [&str; 9] = [
    "pH",
    "area",
    "worked depth",
    "density of dry soil",
    "exchange capacity",
    "organic matter",
    "exchangeable sodium",
    "planting",
    "harvest",
];

/// Numbers of one fact shown to fewer digits lie so near, as a share.
const ROUNDED: f64 = 0.06;

/// What goes in under one name is one value, wherever it goes in.
fn inputs(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let figures = whole.figures();
    let all: Vec<&Grounds> =
        plan.grounds().chain(figures.iter().map(|(_, f)| &f.grounds)).collect();
    for fact in FACTS {
        let mut values: Vec<&str> = all
            .iter()
            .flat_map(|g| &g.inputs)
            .filter(|i| i.name == fact)
            .map(|i| i.value.as_str())
            .collect();
        values.sort_unstable();
        values.dedup();
        let numbers: Vec<Option<f64>> = values.iter().map(|v| first_number(v)).collect();
        let near = |a: Option<f64>, b: Option<f64>| match (a, b) {
            (Some(a), Some(b)) => (a - b).abs() <= ROUNDED * a.abs().max(b.abs()),
            _ => false,
        };
        let same = numbers.windows(2).all(|pair| near(pair[0], pair[1]));
        let is_date = fact == "planting" || fact == "harvest";
        let holds = if is_date { values.len() < 2 } else { same };
        faults.unless(holds, || format!("one {fact} goes in everywhere"), || values.join(" | "));
    }
}

fn first_number(text: &str) -> Option<f64> {
    let text = text.trim_start_matches('−');
    let end = text.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(text.len());
    text[..end].parse().ok()
}

/// Planned again, the plan is the same: nothing in it hangs on anything but the bed.
pub fn planned_twice(whole: &Whole<'_>, faults: &mut Faults) {
    let (again, _) = plan(&survey(Cow::Borrowed(whole.case)));
    let plan = &whole.outcome.plan;
    faults.unless(again == *plan, || "one plan for one bed".into(), || plan.headline.clone());
    let stop =
        plan.needs.iter().filter(|n| n.verdict != Verdict::Give).all(|n| n.given().is_none());
    faults.unless(
        stop,
        || "what is not to be given has no amount".into(),
        || format!("{:?}", plan.needs),
    );
}
