//! Published lines that a reading lies so near that the next test may fall on
//! the other side: what lies beyond them is said.

use crate::chemistry::sodium::{SALINE, SODIC_ESP, SODIC_SAR};
use crate::plan::facts::LOW_CEC;
use crate::quantity::{Unit, significant};
use crate::ranges::{Finding, lead_level};
use crate::soil::{Method, Property};
use crate::survey::Survey;

/// A reading so near a line, as a share of it, is as good as on it.
/// Our choice: no test of a bed is truer.
const NEAR: f64 = 0.02;
/// The same for pH, units. Our choice.
const NEAR_PH: f64 = 0.1;

/// The readings whose levels the plan turns on.
const TURNED_ON: [Property; 8] = [
    Property::Ph,
    Property::NitrateN,
    Property::Phosphorus,
    Property::Potassium,
    Property::Calcium,
    Property::Magnesium,
    Property::Sulfur,
    Property::Ec,
];

/// What is said of every line that is near.
pub(crate) fn near_lines(survey: &Survey<'_>) -> Vec<String> {
    let mut said = Vec::new();
    for property in TURNED_ON {
        let value = survey.soil.get(property).and_then(|m| m.amount.exact());
        if let (Some(value), Some(finding)) = (value, survey.findings.get(property)) {
            said.extend(near_level(survey, property, value, finding));
        }
    }
    said.extend(fixed_lines(survey));
    said
}

/// The border of a range that is near, and the level beyond it.
fn near_level(
    survey: &Survey<'_>,
    property: Property,
    value: f64,
    finding: &Finding,
) -> Option<String> {
    let range = finding.range.as_ref()?;
    let here = finding.level?;
    // Light soils are judged by their volume.
    let judged = value * survey.bed.lightens(property);
    range.steps.windows(2).find_map(|pair| {
        let [before, after] = pair else { return None };
        let line = before.up_to.filter(|line| is_near(property, judged, *line))?;
        let beyond = if here <= before.level { after.level } else { before.level };
        (before.level != after.level)
            .then(|| said(property.label(), judged, line, range.unit, beyond.label()))
    })
}

fn is_near(property: Property, value: f64, line: f64) -> bool {
    let within = if property == Property::Ph { NEAR_PH } else { NEAR * line.abs() };
    (value - line).abs() <= within
}

fn said(name: &str, value: f64, line: f64, unit: Unit, beyond: &str) -> String {
    let unit = unit.symbol();
    let (value, line) = (significant(value, 3), significant(line, 3));
    let space = if unit.is_empty() { "" } else { "\u{a0}" };
    format!(
        "The {name}, {value}{space}{unit}, lies near a published line ({line}{space}{unit}); beyond it, it is called {beyond}, and the plan may differ."
    )
}

/// Lines that stand in no range: salts, sodium, lead, exchange capacity.
fn fixed_lines(survey: &Survey<'_>) -> Vec<String> {
    let sodium = survey.chemistry.sodium.as_ref();
    let lead = survey
        .soil
        .measures
        .iter()
        .find(|m| m.property == Property::Lead && m.method == Some(Method::TotalAcid));
    let screening = lead_level(survey.case.season.today).map_or(f64::MAX, |level| level.screening);
    let lines = [
        (
            "salts as saturated paste",
            survey.ece().map(|b| b.likely),
            SALINE,
            Unit::DsPerM,
            "saline",
        ),
        ("adsorption ratio", sodium.and_then(|s| s.sar), SODIC_SAR, Unit::None, "sodic"),
        (
            "exchangeable sodium",
            sodium.filter(|s| s.sar.is_none()).map(|s| s.esp.likely),
            sodium.map_or(SODIC_ESP, |s| s.line),
            Unit::Percent,
            "sodic",
        ),
        (
            "total lead",
            lead.map(|m| m.amount.number()),
            screening,
            Unit::MgPerKg,
            "too much for food crops",
        ),
        (
            "exchange capacity",
            survey.chemistry.cec.map(|b| b.likely),
            LOW_CEC,
            Unit::MeqPer100g,
            "poor in what it can hold",
        ),
    ];
    lines
        .into_iter()
        .filter_map(|(name, value, line, unit, beyond)| {
            let value = value.filter(|v| (v - line).abs() <= NEAR * line)?;
            Some(said(name, value, line, unit, beyond))
        })
        .collect()
}
