//! Lead: not a nutrient, so no level is "sufficient"; only totals can be held
//! against a health screening level.

use time::Date;

use crate::quantity::{Grounds, Unit, significant};
use crate::ranges::scheme::amount_text;
use crate::ranges::{Finding, Level};
use crate::soil::{Amount, Measure, Method};
use crate::sources::*;

/// What the US EPA calls for at homes, from a day on: mg/kg of total lead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeadLevel {
    /// The first day: year, month, day. Of 1994 only the year was read.
    pub from: (i32, u8, u8),
    /// That day in words.
    pub since: &'static str,
    /// From here EPA looks closer.
    pub screening: f64,
    /// The same where other sources of lead are near.
    pub with_other_sources: f64,
    /// From here EPA considers taking soil away.
    pub removal: Option<f64>,
    /// The publication.
    pub citation: Citation,
}

// From `engine/facts/lead_levels.csv`.
include!(concat!(env!("OUT_DIR"), "/lead_levels.rs"));

/// The US level for lead on a day; without a day the newest we know. `None` before the first.
pub fn lead_level(on: Option<Date>) -> Option<&'static LeadLevel> {
    let Some(on) = on else { return LEAD_LEVELS.last() };
    let day = (on.year(), u8::from(on.month()), on.day());
    LEAD_LEVELS.iter().rev().find(|level| level.from <= day)
}

/// Residential screening level, mg/kg of total lead.
const SCREENING: f64 = 200.0;
/// Above this we already advise care, mg/kg of total lead.
const CARE: f64 = 100.0;

/// Total lead (mg/kg) that a soil-test extract points to, by straight lines over 96 soils of
/// which each held less than 720 mg/kg; a hint only, since the soils lay far about the lines.
/// By an extract nobody names, the line that makes most of it. `None` by another extract.
///
/// Source: Hamel and others, abstract (opened): 5.3 × Mehlich-1 + 96, 1.3 × Mehlich-3 + 39,
/// 4.7 × Modified Morgan + 64.
pub fn total_lead_likely(measure: &Measure) -> Option<f64> {
    let (slope, start) = match measure.method {
        Some(Method::Mehlich1) | None => (5.3, 96.0),
        Some(Method::Mehlich3 | Method::Mehlich3Colorimetric) => (1.3, 39.0),
        Some(Method::ModifiedMorgan) => (4.7, 64.0),
        Some(_) => return None,
    };
    // "Less than" points to nothing.
    let found = match measure.amount {
        Amount::Exactly(found) | Amount::Above(found) => found,
        Amount::Below(_) => return None,
    };
    (measure.unit == Unit::MgPerKg).then_some(slope * found + start)
}

/// Judges lead by the screening level for homes.
pub(super) fn judge(measure: &Measure) -> Finding {
    match measure.method {
        Some(Method::TotalAcid) => {}
        Some(method) => {
            let part = format!(
                "{} takes out only part of the lead, and screening levels are for total lead. Ask the lab for total lead.",
                method.label()
            );
            let Some(total) = total_lead_likely(measure) else { return Finding::not_judged(part) };
            let grounds = Grounds::new(
                "Total lead by a straight line over 96 soils: 5.3 × Mehlich-1 + 96, 1.3 × Mehlich-3 + 39, 4.7 × Modified Morgan + 64. Single soils lie far off it.",
                &[HAMEL_2003.opened()],
            )
            .input("lead", amount_text(measure.amount, measure.unit))
            .input("method", method.label());
            let total = significant(total, 2);
            let why = format!(
                "{part} So much by this extract points to about {total} mg/kg in all, roughly."
            );
            return Finding { grounds, ..Finding::not_judged(why) };
        }
        None => {
            return Finding::not_judged(
                "Screening levels are for total lead. Say whether the lab measured total lead (strong acid) or used a soil-test extract.",
            );
        }
    }
    if measure.unit != Unit::MgPerKg {
        return Finding::not_judged("Total lead is compared in mg/kg (ppm). Put the unit right.");
    }
    let grounds = Grounds::new(
        "US EPA screening level for soil at homes: 200 mg/kg of total lead. Above 100 we already advise care. No level of lead is known to be safe.",
        &[EPA_LEAD.opened(), OUR_CHOICE.unsourced()],
    )
    .input("lead", amount_text(measure.amount, measure.unit))
    .input("method", Method::TotalAcid.label());
    let level = match measure.amount {
        Amount::Exactly(v) if v > SCREENING => Some(Level::Excess),
        Amount::Exactly(v) if v > CARE => Some(Level::High),
        Amount::Above(v) if v >= SCREENING => Some(Level::Excess),
        Amount::Above(v) if v >= CARE => Some(Level::High),
        _ => None,
    };
    let below = match measure.amount {
        Amount::Exactly(v) | Amount::Below(v) => v <= CARE,
        Amount::Above(_) => false,
    };
    let not_judged = match level {
        Some(_) => None,
        None if below => Some(
            "Plants need no lead, so no level is called enough. This is below the US screening level for homes, 200 mg/kg.".into(),
        ),
        None => Some("The lab's limit is too coarse to tell. Ask the lab for the number.".into()),
    };
    Finding { level, not_judged, source: Some(&EPA_LEAD), grounds, ..Finding::default() }
}
