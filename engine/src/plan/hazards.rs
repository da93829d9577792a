//! What stops or changes everything else: lead, sodium, salts.

use crate::chemistry::sodium::{SALINE, Sodic};
use crate::plan::rate::MOST_EC;
use crate::quantity::Unit;
use crate::ranges::{Level, lead_level, total_lead_likely};
use crate::soil::{Amount, Method, Property};
use crate::survey::Survey;

/// What comes before any biochar, lime or feed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hazard {
    /// Total lead at or above the level for homes, where food is grown.
    Lead,
    /// Too much sodium on the exchange.
    Sodium,
    /// Too many salts.
    Salts,
}

/// Every hazard of the bed, the worst first.
pub(crate) fn hazards(survey: &Survey<'_>) -> Vec<Hazard> {
    let mut found = Vec::new();
    if leaded(survey) {
        found.push(Hazard::Lead);
    }
    if survey.chemistry.sodium.as_ref().is_some_and(|s| s.sodic == Sodic::Yes) {
        found.push(Hazard::Sodium);
    }
    if salty(survey) {
        found.push(Hazard::Salts);
    }
    found
}

/// Too much lead for the food that grows here.
pub(crate) fn leaded(survey: &Survey<'_>) -> bool {
    survey.is_eaten() && over_lead_level(survey)
}

/// Total lead at or above the screening level for homes.
pub(crate) fn over_lead_level(survey: &Survey<'_>) -> bool {
    let level = lead_level(survey.case.season.today);
    let total = survey.soil.measures.iter().find(|m| {
        m.property == Property::Lead
            && m.method == Some(Method::TotalAcid)
            && m.unit == Unit::MgPerKg
    });
    level.zip(total).is_some_and(|(level, lead)| lead.amount.number() >= level.screening)
}

/// Lead found by an extract, or nobody says how, that points to total lead at or above that
/// level, while nobody measured the total.
pub(crate) fn lead_unsettled(survey: &Survey<'_>) -> bool {
    let of_lead = |total: bool| {
        let all = survey.soil.measures.iter().filter(|m| m.property == Property::Lead);
        all.filter(move |m| (m.method == Some(Method::TotalAcid)) == total)
    };
    let Some(level) = lead_level(survey.case.season.today) else { return false };
    of_lead(true).next().is_none()
        && of_lead(false)
            .filter(|m| !matches!(m.amount, Amount::Below(_)))
            .any(|m| total_lead_likely(m).is_none_or(|total| total >= level.screening))
}

/// Salts likely at or over 4 dS/m of the paste, over the limit in a 1:1 mix, or beyond the
/// range of a potting mix.
fn salty(survey: &Survey<'_>) -> bool {
    survey.ece().is_some_and(|ece| ece.likely >= SALINE)
        || survey.soil.get(Property::Ec).is_some_and(|m| {
            m.method == Some(Method::Water1To1)
                && m.unit == Unit::DsPerM
                && m.amount.number() > MOST_EC
        })
        || salty_mix(survey)
}

/// A potting mix whose own extract is beyond its range of salts.
pub(crate) fn salty_mix(survey: &Survey<'_>) -> bool {
    survey.soil.get(Property::Ec).is_some_and(|m| m.method == Some(Method::SaturatedMedia))
        && survey.findings.level(Property::Ec) == Some(Level::Excess)
}
