//! Mehlich-3 manganese, by the activity index that takes pH into account.

use crate::quantity::{Unit, significant};
use crate::ranges::Level::{High, Low, Sufficient};
use crate::ranges::scheme::{judge_on, stretch};
use crate::ranges::{Finding, Setting, Step, add_opinions};
use crate::soil::{Measure, Property, Soil};
use crate::sources::RUTGERS_NUTRIENTS;

/// The index below which plants may lack manganese.
const DEFICIENT_BELOW: f64 = 25.0;
/// The index above which manganese may harm.
const WARNING_ABOVE: f64 = 100.0;

/// The manganese activity index of Mehlich-3 manganese (mg/kg) at a soil pH.
///
/// Source: Rutgers NJAES, relative levels of nutrients.
pub fn activity_index(manganese: f64, ph: f64) -> f64 {
    101.7 + 3.75 * manganese - 15.2 * ph
}

/// The manganese (mg/kg) that gives an index at a soil pH.
fn manganese_at(index: f64, ph: f64) -> f64 {
    (index - 101.7 + 15.2 * ph) / 3.75
}

/// Judges manganese by its activity at the soil's pH.
pub(super) fn judge(measure: &Measure, soil: &Soil, setting: &Setting) -> Finding {
    let Some(ph) = soil.value(Property::Ph) else {
        return Finding {
            source: Some(&RUTGERS_NUTRIENTS),
            ..Finding::not_judged(
                "How much manganese is enough depends on the pH. Add the pH in water.",
            )
        };
    };
    if measure.unit != Unit::MgPerKg {
        return Finding::not_judged(
            "The manganese index needs mg/kg (ppm), and this result is by volume of soil.",
        );
    }
    let steps: Vec<Step> = [
        Step::below("deficient", Low, manganese_at(DEFICIENT_BELOW, ph)),
        Step::to("adequate", Sufficient, manganese_at(WARNING_ABOVE, ph)),
        Step::rest("high, a warning", High),
    ]
    .into_iter()
    // In a very acid soil no amount of manganese is too little.
    .filter(|step| step.up_to.is_none_or(|end| end > 0.0))
    .collect();
    let text = stretch(&steps, 0.0, measure.unit, &|end| (end * 10.0).round() / 10.0);
    let mut finding = judge_on(&steps, &text, measure, &[RUTGERS_NUTRIENTS.opened()]);
    let index = activity_index(measure.amount.number(), ph);
    finding.grounds.rule = format!(
        "Index = 101.7 + 3.75 × Mn − 15.2 × pH = {}; deficient below 25, a warning above 100. {}",
        significant(index, 3),
        finding.grounds.rule
    );
    finding.grounds = finding.grounds.input("pH", significant(ph, 3));
    add_opinions(&mut finding, *measure, soil, setting, None);
    finding
}
