//! A bed's answer in one to three words, for a list of beds.

use crate::plan::{Hazard, Path, Plan, RuleName};

/// The verdict of a bed: what comes first, and what becomes of the biochar.
pub fn verdict_in_words(plan: &Plan) -> &'static str {
    match plan.hazards.first() {
        Some(Hazard::Lead) => return "lead first",
        Some(Hazard::Sodium) => return "sodium first",
        Some(Hazard::Salts) => return "salts first",
        None => {}
    }
    let fired = |name| plan.reasons.iter().any(|reason| reason.rule == name);
    let short = [RuleName::NitrogenShort, RuleName::PhosphorusShort, RuleName::PotassiumShort];
    match (plan.path, plan.lime_first) {
        (Path::UnchargedAfterHarvest, true) => "lime, then uncharged",
        (Path::UnchargedAfterHarvest, false) => "uncharged after harvest",
        (Path::Charged, true) => "lime, then charged",
        (Path::Charged, false) => "charged",
        (Path::ChargeFirst, true) => "lime, then charge",
        (Path::ChargeFirst, false) => "charge first",
        (Path::None, true) => "lime only",
        (Path::None, false) if is_unplanned(plan) => "no plan yet",
        (Path::None, false) if short.into_iter().any(fired) => "feed first",
        (Path::None, false) => "no biochar",
    }
}

/// Whether too little is known for a plan.
pub(super) fn is_unplanned(plan: &Plan) -> bool {
    plan.path == Path::None && plan.reasons.iter().any(|r| r.rule == RuleName::NothingJudged)
}
