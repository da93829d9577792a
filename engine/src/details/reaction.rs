//! What biochar does to the soil's reaction: how firmly the soil holds its pH,
//! by every way the report allows, the pH to come, and what the plants make of
//! it. A call of its own, beside the first answer.

use crate::plan::Plan;
use crate::plan::needs;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown};
use crate::ranges::{Range, judge};
use crate::soil::{Amount, Measure, PlantGroup, Property};
use crate::sources::{ARITHMETIC, OUR_CHOICE};
use crate::survey::Survey;
use crate::survey::buffering::{self as liming, Buffering};

/// A pH this near the end of a range is as good as on it: no test of a bed is
/// truer. Source: our choice.
const NEAR: f64 = 0.1;

/// What the pH does.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PhToCome {
    /// What it comes to for the plants, in two or three plain sentences.
    pub text: String,
    /// The pH in the first year, and the buffering it was worked out with.
    pub figures: Vec<Figure>,
    /// The same buffering by the other ways the report allows.
    pub others: Vec<Figure>,
}

/// The reaction of the treated soil; `None` without a pH, or where no biochar
/// is used.
pub fn reaction(survey: &Survey<'_>, plan: &Plan) -> Option<PhToCome> {
    let (material, dose) = (&survey.material, &plan.dose);
    let ph = survey.water_ph()?;
    if !plan.uses_biochar() {
        return None;
    }
    let buffering = liming::buffering(survey);
    let after = ph_with(survey, dose.percent)?;
    let mut grounds = Grounds::new(
        "pH + 20 × g biochar per kg soil × liming value ÷ buffering of soil and biochar; 0.7 of \
         the liming value works in the first year; no higher than the biochar's own pH or 8.3; \
         none, within −0.3 and 0.2, where there is free lime.",
        &liming::sources(&buffering),
    )
    .input(survey.water_ph_name(), format!("{ph:.1}"));
    grounds = material.explain(
        grounds,
        &[
            ("liming value", material.liming, Unit::Percent),
            ("pH of the biochar", material.ph, Unit::None),
            ("biochar, by mass", dose.percent, Unit::Percent),
        ],
    );
    let figures = vec![
        Figure::new(
            "ph-after",
            "pH in the first year",
            after,
            Unit::None,
            grounds.input("buffering", shown(&buffering.band, Unit::MmolcPerKg, Measures::Metric)),
        ),
        held("ph-buffering", &buffering),
    ];
    Some(PhToCome {
        text: text(survey, ph, after, &buffering),
        figures,
        others: others(survey, buffering.from),
    })
}

/// The pH in the first year after so much of this biochar, % by mass, whatever
/// the plan would spread; `None` without a pH.
pub fn ph_with(survey: &Survey<'_>, percent: Band) -> Option<Band> {
    let ph = survey.water_ph()?;
    let material = &survey.material;
    let buffering = liming::buffering(survey);
    Some(liming::rise(Some(ph), percent, material, &buffering).map(|rise| ph + rise))
}

/// How firmly this soil holds its pH: mmol(c)/kg for one unit.
pub fn ph_buffering(survey: &Survey<'_>) -> Band {
    liming::buffering(survey).band
}

/// A buffering as a figure.
fn held(name: &'static str, buffering: &Buffering) -> Figure {
    let mut grounds = Grounds::new(
        "What the soil takes up for each unit of pH: 1 g of pure lime is 20 mmol(c).",
        &buffering.sources,
    )
    .assume(format!("Taken {}.", buffering.from));
    grounds.inputs.extend(buffering.inputs.iter().cloned());
    Figure::new(name, "acid or lime for one pH unit", buffering.band, Unit::MmolcPerKg, grounds)
}

/// The ways that were not used, for comparison.
fn others(survey: &Survey<'_>, used: &str) -> Vec<Figure> {
    let ways = [
        ("ph-buffering-by-buffer", liming::by_lime_buffer(survey)),
        ("ph-buffering-by-lime", by_lime_requirement(survey)),
        ("ph-buffering-by-organic-matter", liming::by_organic_matter(survey)),
        ("ph-buffering-by-region", liming::by_lime_table(survey)),
        ("ph-buffering-by-texture", Some(liming::by_texture(survey))),
    ];
    ways.into_iter()
        .filter_map(|(name, way)| {
            let way = way.filter(|way| way.from != used)?;
            let label = match name {
                "ph-buffering-by-buffer" => "by the lime buffer",
                "ph-buffering-by-lime" => "by the lime the table asks for",
                "ph-buffering-by-organic-matter" => "by organic matter and clay",
                "ph-buffering-by-region" => "by the region's lime table",
                _ => "by texture alone",
            };
            Some(Figure { label, ..held(name, &way) })
        })
        .collect()
}

/// The lime that the buffer's own table asks for, over the way it leads. Such
/// tables count in that lime works in part only, as it does in the field.
fn by_lime_requirement(survey: &Survey<'_>) -> Option<Buffering> {
    let lime = needs::lime_requirement(survey)?;
    let density = survey.bed.density.value;
    // t/ha is 100 g/m²; a slice of 1 cm weighs 10 kg/m² for each g/cm³.
    let grams_per_kg = 10.0 / lime.depth_cm;
    let share = liming::works_in_first_year();
    let band = Band::new(
        lime.rate.low * share.low / density.high,
        lime.rate.likely * share.likely / density.likely,
        lime.rate.high * share.high / density.low,
    )
    .map(|rate| 20.0 * grams_per_kg * rate / lime.way);
    let mut sources = lime.grounds.sources;
    sources.extend([ARITHMETIC.derived(), OUR_CHOICE.unsourced()]);
    Some(Buffering {
        band,
        from: "by the lime requirement",
        sources,
        inputs: lime.grounds.inputs,
        limy: false,
    })
    .filter(|buffering| buffering.band.likely > 0.0)
}

/// The range these plants are judged by.
fn range(survey: &Survey<'_>, ph: f64) -> Option<Range> {
    let measure = Measure {
        property: Property::Ph,
        amount: Amount::Exactly(ph),
        unit: Unit::None,
        method: None,
    };
    let setting = survey.setting();
    judge(&measure, &survey.soil, &setting).range
}

/// What the new pH means.
fn text(survey: &Survey<'_>, ph: f64, after: Band, buffering: &Buffering) -> String {
    let likely = format!("{:.1}", after.likely);
    let mut text = if likely == format!("{ph:.1}") {
        format!("The pH likely stays at {likely}")
    } else {
        format!("The pH likely goes from {ph:.1} to {likely}")
    };
    let (low, high) = (format!("{:.1}", after.low), format!("{:.1}", after.high));
    text.push_str(&if low == high {
        " in the first year. ".to_string()
    } else {
        format!(" in the first year ({low} to {high}). ")
    });
    let plants = survey.case.plants.unwrap_or_default().label();
    let range = range(survey, ph).map(|r| (r.sufficient_from, r.sufficient_to));
    if let Some((Some(from), Some(to))) = range {
        text.push_str(&format!("The range for {plants} is {from:.1} to {to:.1}: "));
        text.push_str(meaning(ph, after, from, to, survey.case.plants));
    }
    if buffering.limy {
        text.push_str(" Free lime in the soil holds the pH where it is.");
    }
    text
}

/// What a pH that moves from `ph` to `after` means within a range.
fn meaning(ph: f64, after: Band, from: f64, to: f64, plants: Option<PlantGroup>) -> &'static str {
    let moved = after.likely > ph + NEAR / 2.0;
    let was_below = ph < from;
    let is_below = after.likely < from - NEAR;
    // To the tenth that the reader sees.
    let is_in = (10.0 * after.likely).round() / 10.0 >= from;
    if ph > to + NEAR {
        "it is above that already, and biochar won't bring it down."
    } else if after.likely > to + NEAR {
        "that is too high. Take less biochar, or one low in ash."
    } else if after.high > to + NEAR {
        match (was_below, is_in) {
            (true, false) => {
                "it is likely still too acid, but may come out above. Test the pH again after a year."
            }
            (true, true) => {
                "it likely comes in, but may come out above. Test the pH again after a year."
            }
            _ => "it likely stays within, but may come out above. Test the pH again after a year.",
        }
    } else if !is_below {
        match (was_below, is_in) {
            (true, true) => "biochar brings it in. Lime then only what a new test asks for.",
            (true, false) => "it comes close to it. Test the pH again before you lime.",
            _ => "it stays within.",
        }
    } else if plants == Some(PlantGroup::AcidLovers) {
        "it is more acid than even these plants like."
    } else if moved {
        "biochar helps part of the way. Lime does the rest, better and cheaper."
    } else {
        "it is still too acid. Lime is what mends that."
    }
}
