//! Rule 8: every number opens to its rule, inputs and source.

use emberloam_engine::quantity::Figure;

use crate::rules::Faults;
use crate::whole::Whole;

/// DESIGN §1, rule 8.
pub fn opens(whole: &Whole<'_>, faults: &mut Faults) {
    for (place, figure) in whole.figures() {
        let grounds = &figure.grounds;
        let explained = !grounds.rule.is_empty() || !grounds.inputs.is_empty();
        faults.unless(
            explained,
            || format!("a number opens to its rule: {place}, {}", figure.name),
            || format!("{figure:?}"),
        );
        faults.unless(
            !grounds.sources.is_empty() || is_the_reports(figure),
            || format!("a number names its source: {place}, {}", figure.name),
            || format!("{figure:?}"),
        );
    }
    for standard in &whole.details.standards {
        let sourced = !standard.grounds.sources.is_empty();
        faults.unless(
            sourced,
            || format!("a standard names its source: {}", standard.name),
            || standard.text.clone(),
        );
    }
    let plan = &whole.outcome.plan;
    for reason in &plan.reasons {
        let sourced = !reason.grounds.sources.is_empty();
        faults.unless(
            sourced,
            || format!("a reason names its source: {}", reason.rule.name()),
            || reason.text.clone(),
        );
    }
    for job in &plan.jobs {
        let sourced = !job.grounds.sources.is_empty();
        faults.unless(
            sourced,
            || format!("a job names its source: {}", job.kind.name()),
            || job.task.clone(),
        );
    }
    for need in plan.needs.iter().filter(|need| need.given().is_some()) {
        let sourced = !need.grounds.sources.is_empty();
        faults.unless(
            sourced,
            || format!("a need names its source: {}", need.kind.name()),
            || need.answer.clone(),
        );
    }
    for account in &plan.ledger.accounts {
        if let Some(ceiling) = &account.ceiling {
            let sourced = !ceiling.grounds.sources.is_empty() && !ceiling.why.is_empty();
            faults.unless(
                sourced,
                || format!("a ceiling names its source: {}", account.of.name()),
                || ceiling.why.clone(),
            );
        }
    }
}

/// Whether a number is merely the report's own, shown again.
fn is_the_reports(figure: &Figure) -> bool {
    ["As the lab gives it.", "As measured in saturated paste."]
        .contains(&figure.grounds.rule.as_str())
}
