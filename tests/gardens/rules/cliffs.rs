//! Rule 5: no cliffs.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use emberloam_engine::plan::Plan;
use emberloam_engine::plan::needs::NeedKind;
use emberloam_engine::quantity::significant;
use emberloam_engine::soil::{Amount, Property};
use emberloam_engine::{Case, Outcome, interpret};

use crate::rules::Faults;

/// The lines that had to be allowed, with how often.
static LINES: Mutex<BTreeMap<String, usize>> = Mutex::new(BTreeMap::new());

/// The lines that had to be allowed so far, one in a line.
pub fn lines() -> String {
    let lines = LINES.lock().unwrap_or_else(PoisonError::into_inner);
    lines.iter().map(|(line, times)| format!("{times} times: {line}\n")).collect()
}

/// A change below this share of an amount is no cliff.
const A_TENTH: f64 = 0.1;

/// How much more of a reading there is; of a pH, which is a logarithm, a hundredth of a unit,
/// as finely as it is printed.
fn a_little_more(property: Property, value: f64) -> f64 {
    match property {
        Property::Ph | Property::SaltPh | Property::BufferPh => value + 0.01,
        _ => value * 1.01,
    }
}

/// What is brought to a bed: its name, its amount, and what is not worth speaking of on 1 m²
/// (2 % of a usual year's dressing).
fn amounts(plan: &Plan) -> [(&'static str, f64, f64); 8] {
    let given = |kind| {
        let need = plan.needs.iter().find(|n| n.kind == kind);
        need.and_then(|n| n.given()).map_or(0.0, |grams| grams.likely)
    };
    let biochar = if plan.uses_biochar() { plan.dose.litres } else { 0.0 };
    [
        ("biochar", biochar, 0.15),
        ("lime", given(NeedKind::Lime), 8.0),
        ("sulfur", given(NeedKind::Acid), 2.0),
        ("gypsum", given(NeedKind::Gypsum), 10.0),
        ("nitrogen", given(NeedKind::Nitrogen), 0.24),
        ("phosphate", given(NeedKind::Phosphate), 0.18),
        ("potash", given(NeedKind::Potash), 0.22),
        ("Epsom salts", given(NeedKind::Magnesium), 1.0),
    ]
}

/// DESIGN §1, rule 5: a hundredth more of one reading moves no amount by more than a tenth,
/// unless it crosses a published line, which is then named.
pub fn none(case: &Case, faults: &mut Faults) {
    let before = interpret(case);
    let Some(sample) = case.report.samples.get(before.sample) else { return };
    for (at, reading) in sample.readings.iter().enumerate() {
        let Some(Amount::Exactly(value)) = reading.amount else { continue };
        let more = a_little_more(reading.property, value);
        let after = interpret(&with(case, at, more));
        let area = before.plan.dose.area;
        for (was, is) in amounts(&before.plan).into_iter().zip(amounts(&after.plan)) {
            let ((what, was, least), (_, is, _)) = (was, is);
            let moved = (is - was).abs();
            if moved <= A_TENTH * was.max(is) || moved <= least * area {
                continue;
            }
            let label = reading.property.label();
            let line = crossed(&before, &after)
                .or_else(|| slope(case, at, (value, more), (what, was, is)));
            let Some(line) = line else {
                faults.fault(
                    format!("no cliff: {label} moves {what}"),
                    format!("{label} {value} to {}: {what} {was} to {is}", significant(more, 6)),
                );
                continue;
            };
            let mut lines = LINES.lock().unwrap_or_else(PoisonError::into_inner);
            *lines.entry(format!("{line} ({label} moves {what})")).or_default() += 1;
        }
    }
}

/// The same garden with another result of the reading at a place in the chosen sample.
fn with(case: &Case, at: usize, value: f64) -> Case {
    let mut other = case.clone();
    let chosen = case.sample.min(case.report.samples.len().saturating_sub(1));
    other.report.samples[chosen].readings[at].amount = Some(Amount::Exactly(value));
    other
}

/// A slope is no cliff, however steep: half of the step moves half of the amount. Amounts that
/// end at a limit come down to nothing before it, maybe within the step: then the half of it in
/// which they move is a slope.
fn slope(
    case: &Case,
    at: usize,
    (value, more): (f64, f64),
    (what, was, is): (&str, f64, f64),
) -> Option<String> {
    let (mut step, mut ends) = ((value, more), (was, is));
    for _ in 0..3 {
        let half = f64::midpoint(step.0, step.1);
        let found = amounts(&interpret(&with(case, at, half)).plan);
        let (_, between, _) = found.into_iter().find(|(name, ..)| *name == what)?;
        let off = (between - f64::midpoint(ends.0, ends.1)).abs();
        if off <= 0.25 * (ends.1 - ends.0).abs() {
            return Some("a slope that ends at a limit".into());
        }
        let first = (between - ends.0).abs() > (between - ends.1).abs();
        (step, ends) = if first {
            ((step.0, half), (ends.0, between))
        } else {
            ((half, step.1), (between, ends.1))
        };
    }
    None
}

/// The published line between two outcomes of nearly one report.
fn crossed(before: &Outcome, after: &Outcome) -> Option<String> {
    let (a, b) = (&before.plan, &after.plan);
    if a.hazards != b.hazards {
        return Some("a hazard begins".into());
    }
    let levels = |outcome: &Outcome| -> Vec<_> {
        let readings = outcome.samples.get(outcome.sample).into_iter().flat_map(|s| &s.readings);
        readings.map(|r| (r.property, r.finding.level)).collect()
    };
    let (was, is) = (levels(before), levels(after));
    // A level that is another must be named on one side of its line.
    let named = |property: Property| {
        let mut lines = a.lines.iter().chain(&b.lines);
        lines.any(|line| line.contains(property.label()))
    };
    let changed = was.iter().zip(&is).find(|(a, b)| a != b && named(a.0));
    if let Some(((property, _), _)) = changed {
        return Some(format!("the level of {}", property.label()));
    }
    let fired = |plan: &Plan| plan.reasons.iter().map(|r| r.rule.name()).collect::<Vec<_>>();
    let (was, is) = (fired(a), fired(b));
    let differs = was.iter().find(|r| !is.contains(r)).or(is.iter().find(|r| !was.contains(r)));
    if let Some(rule) = differs {
        return Some(format!("the rule {rule}"));
    }
    None
}
