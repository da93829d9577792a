//! Organic carbon, and how much of it the sampled slice of soil holds.

use crate::details::Traits;
use crate::details::ask_depth;
use crate::quantity::{Band, Grounds, Unit, shown, significant};
use crate::soil::Property;
use crate::sources::{CARBON_STOCK, NRCS_SSIR45, PRIBYL_2010};
use crate::survey::Survey;

/// Organic carbon (%) from organic matter (%): ÷ 2.0 to ÷ 1.724.
///
/// Source: Pribyl 2010 for 1.9 to 2.0; NRCS for 1.724.
pub fn from_organic_matter(organic_matter: f64) -> Band {
    Band::new(organic_matter / 2.0, organic_matter / 1.9, organic_matter / 1.724)
}

/// Carbon in a slice, t/ha, from carbon (%), density (g/cm³) and thickness (cm).
pub fn stock(carbon_percent: f64, bulk_density: f64, thickness_cm: f64) -> f64 {
    carbon_percent * bulk_density * thickness_cm
}

pub(super) fn work_out(survey: &Survey<'_>, traits: &mut Traits) {
    let value = |property| {
        let (_, measure, slice) = survey.slices(property).next()?;
        Some((measure.amount.exact().filter(|_| measure.unit == Unit::Percent)?, slice))
    };
    let (carbon, slice, mut grounds) =
        if let Some((percent, slice)) = value(Property::OrganicCarbon) {
            let grounds = Grounds::new("Organic carbon as measured.", &[])
                .input(Property::OrganicCarbon.label(), format!("{} %", significant(percent, 3)));
            (Band::exactly(percent), slice, grounds)
        } else if let Some((percent, slice)) = value(Property::OrganicMatter) {
            let grounds = Grounds::new(
                "Organic matter ÷ 2.0 (nearer for most soils) to ÷ 1.724 (the old factor).",
                &[PRIBYL_2010.opened(), NRCS_SSIR45.opened()],
            )
            .input(Property::OrganicMatter.label(), format!("{} %", significant(percent, 3)));
            let carbon = from_organic_matter(percent);
            traits.figure("organic-carbon", "organic carbon", carbon, Unit::Percent, &grounds);
            (carbon, slice, grounds)
        } else {
            return;
        };
    let thickness = slice.map(|(top, bottom)| bottom - top).filter(|t| (1.0..=200.0).contains(t));
    let Some(thickness) = thickness else {
        return ask_depth(
            traits,
            Property::OrganicMatter,
            "How much carbon the sampled soil holds.",
        );
    };
    grounds.rule.push_str(" Stock (t/ha) = carbon (%) × bulk density (g/cm³) × thickness (cm).");
    grounds.sources.push(CARBON_STOCK.opened());
    let density = survey.bed.density.value;
    let grounds = survey.bed.density.add_to(grounds);
    let thick = survey.shown(&Band::exactly(thickness), Unit::Cm);
    let grounds = grounds.input("thickness of the sample", &thick);
    let held = carbon.times(density).map(|v| v * thickness);
    traits.figure("carbon-stock", "carbon in the sampled soil", held, Unit::TonnePerHa, &grounds);
    let text = format!(
        "The soil is {} carbon: {} in the {thick} that were sampled.",
        survey.shown(&carbon, Unit::Percent),
        // As carbon is counted everywhere, whatever the bed.
        shown(&held, Unit::TonnePerHa, survey.case.measures),
    );
    traits.say("carbon", text, grounds);
}
