//! Phosphorus beyond what plants use: the published lines from which water is
//! at risk, or no more should be added.

use crate::chemistry::Derived;
use crate::details::Traits;
use crate::quantity::{Band, Grounds, Unit};
use crate::ranges::amount_text;
use crate::soil::{Amount, Measure, Method, Property};
use crate::sources::{Citation, NI_PHOSPHORUS, RB209, SIMS_2002, UMN_GARDEN_P};
use crate::survey::Survey;

/// Delaware: water is at risk above this, mg/kg by Mehlich-3.
pub const DELAWARE_LINE: f64 = 150.0;
/// Delaware: water is at risk above this saturation ratio.
/// Source: Sims and others 2002 (opened).
pub const RATIO_LINE: f64 = 0.15;
/// Minnesota: no more for vegetables from this, mg/kg.
pub const MINNESOTA_LINE: f64 = 25.0;
/// UK index 4 begins here, mg/L by Olsen.
pub const INDEX_4: f64 = 46.0;

/// Whether a result stands over a line; `None` where the lab's limit can't tell.
fn over(amount: Amount, is_over: impl Fn(f64) -> bool) -> Option<bool> {
    match amount {
        Amount::Exactly(v) => Some(is_over(v)),
        Amount::Below(v) => (!is_over(v)).then_some(false),
        Amount::Above(v) => is_over(v).then_some(true),
    }
}

pub(super) fn work_out(survey: &Survey<'_>, traits: &mut Traits) {
    let measures = &survey.soil.measures;
    for measure in measures.iter().filter(|m| m.property == Property::Phosphorus) {
        line(survey, measure, traits);
    }
    let Some(ratio) = survey.chemistry.get(Derived::PSaturationRatio) else { return };
    let text = if ratio.band.likely > RATIO_LINE {
        "The phosphorus saturation ratio is over 0.15: the soil is so full that water carries phosphorus off. Add none, compost and manure included, and keep the ground covered."
    } else {
        "The phosphorus saturation ratio is not over 0.15, the line from which water is at risk."
    };
    traits.say("phosphorus-and-water", text, ratio.grounds.clone());
}

fn line(survey: &Survey<'_>, measure: &Measure, traits: &mut Traits) {
    let text = amount_text(measure.amount, measure.unit);
    let mut say = |said: String, rule: &str, sources: &[Citation]| {
        let grounds = Grounds::new(rule, sources).input(Property::Phosphorus.label(), text.clone());
        traits.say("phosphorus-and-water", said, grounds);
    };
    match (measure.method, measure.unit) {
        (Some(Method::Mehlich3), Unit::MgPerKg) => {
            let said = match over(measure.amount, |v| v > DELAWARE_LINE) {
                Some(true) => format!(
                    "Phosphorus is {text} by Mehlich-3. Above 150 Delaware counts it a risk to streams and lakes: add none, compost and manure included, and keep the ground covered."
                ),
                Some(false) => format!(
                    "Phosphorus is {text} by Mehlich-3, not over 150, the line from which Delaware counts it a risk to water."
                ),
                None => return,
            };
            say(
                said,
                "Water is at risk above 150 mg/kg of Mehlich-3 phosphorus.",
                &[SIMS_2002.opened()],
            );
        }
        (Some(Method::BrayP1 | Method::Olsen), Unit::MgPerKg)
            if survey.grows_vegetables()
                && over(measure.amount, |v| v >= MINNESOTA_LINE) == Some(true) =>
        {
            say(
                format!(
                    "Phosphorus is {text}. From 25 Minnesota calls it very high for vegetable gardens: add none, and pause compost while it stays so high. At other times no more than {} of compost a year.",
                    survey.shown(&Band::exactly(2.54), Unit::Cm)
                ),
                "No phosphorus from 25 mg/kg. The page names no extractant; that Minnesota uses Bray or Olsen is from memory.",
                &[UMN_GARDEN_P.opened(), UMN_GARDEN_P.from_memory()],
            );
        }
        (Some(Method::Olsen), Unit::MgPerL)
            if over(measure.amount, |v| v.round() >= INDEX_4) == Some(true) =>
        {
            say(
                format!(
                    "Phosphorus is {text} by Olsen: index 4 or more in the UK. No phosphorus fertiliser is normally given there."
                ),
                "Index 4 begins at 46 mg/L. That none is normally given from there is from memory.",
                &[NI_PHOSPHORUS.opened(), RB209.from_memory()],
            );
        }
        _ => {}
    }
}
