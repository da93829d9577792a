//! A result whose extractant nobody named: what holds under all of the usual ones.

use crate::quantity::Unit;
use crate::ranges::scheme::amount_text;
use crate::ranges::{Finding, Level, Setting, judge};
use crate::region::usual_extractants;
use crate::soil::{Measure, Method, Soil};

/// The judgement that every usual extractant shares; where they differ, what each would say.
pub(super) fn by_every_usual(measure: &Measure, soil: &Soil, setting: &Setting) -> Finding {
    let each: Vec<(Method, Finding)> = usual_extractants(setting.region, measure.property)
        .into_iter()
        .map(|method| {
            let named = Measure { method: Some(method), ..*measure };
            (method, judge(&named, soil, setting))
        })
        .collect();
    let levels: Option<Vec<Level>> = each.iter().map(|(_, finding)| finding.level).collect();
    // One alone speaks for all only where a region has no other.
    let least = if setting.region.is_some() { 1 } else { 2 };
    let mildest = levels.filter(|levels| levels.len() >= least).and_then(|levels| {
        if levels.iter().all(|level| level.is_short()) {
            levels.iter().copied().max()
        } else if levels.iter().all(|level| !level.is_short()) {
            levels.iter().copied().min()
        } else {
            None
        }
    });
    if let Some(level) = mildest
        && let Some((_, finding)) = each.iter().find(|(_, finding)| finding.level == Some(level))
    {
        let mut finding = finding.clone();
        let names: Vec<&str> = each.iter().map(|(method, _)| method.label()).collect();
        finding.grounds.assumed.insert(
            0,
            format!(
                "The extractant is not known. By what is usual ({}) it comes to this side of enough; the mildest is shown.",
                names.join(", ")
            ).into(),
        );
        return finding;
    }
    let told: Vec<String> = each
        .iter()
        .filter_map(|(method, finding)| {
            Some(format!("{} by {}", finding.level?.label(), method.label()))
        })
        .collect();
    let mut why = String::from(
        "Which extractant did the lab use? The same number means different things in each.",
    );
    if !told.is_empty() && measure.unit != Unit::None {
        let value = amount_text(measure.amount, measure.unit);
        why.push_str(&format!(" {value} would be: {}.", told.join(", ")));
    }
    Finding { wants_region: setting.region.is_none(), ..Finding::not_judged(why) }
}
