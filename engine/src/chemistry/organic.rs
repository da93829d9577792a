//! Organic matter, and the nitrogen it gives off in a year.

use crate::chemistry::Chemistry;
use crate::quantity::{Band, Context, Figure, Grounds, Unit, convert, significant};
use crate::question::{Question, QuestionId};
use crate::ranges::{Setting, texture_decides};
use crate::soil::{Property, Soil};
use crate::sources::{ARITHMETIC, NITROGEN_RULE, NRCS_SSIR45, OUR_CHOICE, PRIBYL_2010};

/// Nitrogen given off in a year for each 1 % of organic matter, lb/acre.
const RELEASE: Band = Band { low: 10.0, likely: 20.0, high: 40.0 };
/// Peats don't follow the rule: organic matter counts up to this, %.
const COUNTS_UP_TO: f64 = 5.0;

pub(super) fn work_out(soil: &Soil, setting: &Setting, chemistry: &mut Chemistry) {
    let measured = soil.get(Property::OrganicMatter);
    if let Some(measure) = measured
        && setting.texture.is_none()
        && texture_decides(measure)
    {
        chemistry.questions.push(Question::new(
            QuestionId::Texture,
            "What is the soil's texture?",
            "Whether the organic matter is enough: a sandy soil needs less than a clay.",
            &[Property::OrganicMatter],
        ));
    }
    let (organic_matter, grounds) =
        match (measured.and_then(|m| m.amount.exact()), soil.value(Property::OrganicCarbon)) {
            (Some(percent), _) => (
                Band::exactly(percent),
                Grounds::default()
                    .input("organic matter", format!("{} %", significant(percent, 3))),
            ),
            (None, Some(carbon)) => {
                let figure = from_carbon(carbon);
                let found = (figure.band, figure.grounds.clone());
                chemistry.figures.push(figure);
                found
            }
            (None, None) => return,
        };
    chemistry.figures.push(nitrogen_release(organic_matter, grounds));
}

/// Organic matter from organic carbon, %.
fn from_carbon(carbon: f64) -> Figure {
    Figure::new(
        "organic-matter",
        "organic matter",
        Band::new(1.724 * carbon, 1.9 * carbon, 2.0 * carbon),
        Unit::Percent,
        Grounds::new(
            "Organic carbon × 1.724 (the old factor) to 2.0 (nearer for most soils).",
            &[NRCS_SSIR45.opened(), PRIBYL_2010.opened()],
        )
        .input("organic carbon", format!("{} %", significant(carbon, 3))),
    )
}

fn nitrogen_release(organic_matter: Band, mut grounds: Grounds) -> Figure {
    let pounds = organic_matter.map(|v| v.min(COUNTS_UP_TO)).times(RELEASE);
    // The rule is per acre of a furrow slice; only the unit changes here.
    let to_kg = convert(1.0, Unit::LbPerAcre, Unit::KgPerHa, &Context::FURROW_SLICE).unwrap_or(0.0);
    grounds.rule = "20 (10–40) lb of nitrogen per acre and year for each 1 % of organic matter, counted up to 5 %.".into();
    grounds.sources.extend([
        NITROGEN_RULE.from_memory(),
        OUR_CHOICE.unsourced(),
        ARITHMETIC.derived(),
    ]);
    grounds.assumed.push(
        "A furrow slice 17 cm (6⅔ in) deep. Warm moist soil gives more, cold or dry soil less."
            .into(),
    );
    Figure::new(
        "nitrogen-release",
        "nitrogen from organic matter in a year",
        pounds.map(|v| v * to_kg),
        Unit::KgPerHa,
        grounds,
    )
}
