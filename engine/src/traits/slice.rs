//! The slice of soil that a sample speaks for: how deep, and how heavy.

use crate::quantity::{Band, Grounds, Unit, significant};
use crate::question::QuestionId;
use crate::soil::Property;
use crate::sources::{BULK_DENSITY, OUR_CHOICE};
use crate::survey::Survey;
use crate::traits::Traits;

/// Density of dry mineral soil in a garden, g/cm³, when nobody measured it.
const MINERAL: Band = Band { low: 0.9, likely: 1.3, high: 1.6 };
/// Density of peat and muck, g/cm³.
const ORGANIC: Band = Band { low: 0.1, likely: 0.35, high: 0.6 };
/// Organic matter from which a soil counts as organic, %.
const ORGANIC_FROM: f64 = 20.0;

/// Dry density of the soil, g/cm³, added to the grounds.
pub(super) fn density(survey: &Survey<'_>, grounds: Grounds) -> (Band, Grounds) {
    if let Some(value) = survey.soil.value(Property::BulkDensity).filter(|v| *v > 0.0) {
        let text = format!("{} g/cm³", significant(value, 3));
        return (Band::exactly(value), grounds.input(Property::BulkDensity.label(), text));
    }
    let organic = survey.organic_matter().is_some_and(|om| om.likely >= ORGANIC_FROM);
    let band = if organic { ORGANIC } else { MINERAL };
    let mut grounds = grounds.assume(format!(
        "Bulk density was not measured; taken as {}.",
        survey.shown(&band, Unit::GPerCm3)
    ));
    grounds.sources.push(BULK_DENSITY.opened());
    grounds.sources.push(OUR_CHOICE.unsourced());
    (band, grounds)
}

/// Asks for the depth of the sample.
pub(super) fn ask_depth(traits: &mut Traits, about: Property, changes: &str) {
    traits.ask(QuestionId::SamplingDepth, "How deep was the sample taken?", changes, &[about]);
}
