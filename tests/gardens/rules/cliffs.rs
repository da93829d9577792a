//! Rule 5: no cliffs.

use emberloam_engine::plan::Plan;
use emberloam_engine::plan::needs::NeedKind;
use emberloam_engine::quantity::significant;
use emberloam_engine::soil::{Amount, Property};
use emberloam_engine::{Case, Outcome, interpret};

use crate::rules::Faults;

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
        let mut other = case.clone();
        other.report.samples[before.sample].readings[at].amount = Some(Amount::Exactly(more));
        let after = interpret(&other);
        let area = before.plan.dose.area;
        for (was, is) in amounts(&before.plan).into_iter().zip(amounts(&after.plan)) {
            let ((what, was, least), (_, is, _)) = (was, is);
            let moved = (is - was).abs();
            if moved <= A_TENTH * was.max(is) || moved <= least * area {
                continue;
            }
            let label = reading.property.label();
            let Some(line) = crossed(&before, &after) else {
                faults.fault(
                    format!("no cliff: {label} moves {what}"),
                    format!("{label} {value} to {}: {what} {was} to {is}", significant(more, 6)),
                );
                continue;
            };
            println!("A line is crossed: {line} ({label} moves {what})");
        }
    }
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
    if let Some(((property, _), _)) = was.iter().zip(&is).find(|(a, b)| a != b) {
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
