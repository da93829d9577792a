//! What is usual where no optimum was ever set.

use crate::soil::{Measure, Method, Property};

/// What Modified Morgan usually finds, mg/kg; the laboratory says that
/// optimum levels were never set.
/// Source: University of Massachusetts soil test report, 2014 (opened).
const USUAL_IN_MODIFIED_MORGAN: [(Property, &str); 5] = [
    (Property::Boron, "0.1–0.5"),
    (Property::Manganese, "1.1–6.3"),
    (Property::Zinc, "1.0–7.6"),
    (Property::Copper, "0.3–0.6"),
    (Property::Iron, "2.7–9.4"),
];

/// Why a Modified Morgan micronutrient has no level, with what is usual.
pub(crate) fn usual_without_a_range(measure: &Measure) -> Option<String> {
    let (_, usual) = USUAL_IN_MODIFIED_MORGAN
        .iter()
        .find(|(p, _)| *p == measure.property && measure.method == Some(Method::ModifiedMorgan))?;
    Some(format!(
        "No optimum was ever set for {} by Modified Morgan. The University of Massachusetts calls {usual} mg/kg usual.",
        measure.property.label()
    ))
}
