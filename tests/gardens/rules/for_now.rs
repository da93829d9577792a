//! Rule 7: what is not known is never a verdict.

use emberloam_engine::plan::{RULES, Reason, RuleName, Speaks};
use emberloam_engine::soil::Property;

use crate::rules::Faults;
use crate::whole::Whole;

/// What the path is decided from.
const DECIDES: [Property; 3] = [Property::NitrateN, Property::Phosphorus, Property::Potassium];

/// DESIGN §1, rule 7: a plan that rests on an unjudged reading is "for now", and says which
/// answer settles it.
pub fn for_now(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let Some(sample) = whole.outcome.samples.get(whole.outcome.sample) else {
        return faults.unless(
            plan.provisional,
            || "without a report a plan is for now".into(),
            || plan.headline.clone(),
        );
    };
    let unjudged = |property: &Property| {
        let mut of_it = sample.readings.iter().filter(|r| r.property == *property).peekable();
        of_it.peek().is_some() && of_it.all(|r| r.finding.level.is_none())
    };
    let open: Vec<&str> = DECIDES.iter().filter(|p| unjudged(p)).map(|p| p.label()).collect();
    // What forbids biochar holds whatever the answer is.
    let forbidden = plan.reasons.iter().any(|reason| {
        let rule = RULES.iter().find(|rule| rule.name == reason.rule);
        rule.is_some_and(|rule| rule.speaks == Speaks::Forbids)
    });
    let settled = !plan.hazards.is_empty() || forbidden;
    faults.unless(
        open.is_empty() || settled || plan.provisional,
        || "a plan that rests on an unjudged reading is for now".into(),
        || format!("{open:?}: {}", plan.headline),
    );
    let judged = DECIDES
        .iter()
        .any(|p| sample.readings.iter().any(|r| r.property == *p && r.finding.level.is_some()));
    faults.unless(
        judged || !plan.hazards.is_empty() || plan.provisional,
        || "a plan in which nothing was judged is for now".into(),
        || plan.headline.clone(),
    );
    let says = !whole.outcome.questions.is_empty()
        || !plan.would_change.is_empty()
        || !plan.hazards.is_empty()
        || plan.reasons.iter().any(asks_for_a_test)
        || plan.headline.contains("Have them tested")
        || sample.readings.iter().any(|r| r.finding.not_judged.is_some());
    faults.unless(
        !plan.provisional || says,
        || "a plan for now says what settles it".into(),
        || plan.headline.clone(),
    );
}

/// A reason that names the test that would settle it: a nitrate test too old, a range that is
/// known from memory only.
fn asks_for_a_test(reason: &Reason) -> bool {
    reason.rule == RuleName::JudgedFromMemory || reason.text.contains("test again nearer the day")
}
