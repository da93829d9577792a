//! Salts as of a saturated paste: by every published equation, and by what the
//! FAO's table of water at saturation adds to them.

use crate::chemistry::saturation_water::{from_water, saturation_water};
use crate::chemistry::sodium::SALINE;
use crate::chemistry::{Chemistry, Derived};
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::question::{Question, QuestionId};
use crate::ranges::{Setting, as_saturated_paste, method_decides};
use crate::soil::{Method, Property, Soil};
use crate::sources::{FAO_2006, OUR_CHOICE};

pub(super) fn work_out(soil: &Soil, setting: &Setting, chemistry: &mut Chemistry) {
    let Some(measure) = soil.get(Property::Ec).filter(|m| m.unit == Unit::DsPerM) else {
        return;
    };
    if method_decides(measure, setting.texture) {
        chemistry.questions.push(
            Question::new(
                QuestionId::EcMethod,
                "How did the lab mix soil and water for the salts reading?",
                "Whether the soil counts as salty: the same number means more in a wetter mix.",
                &[Property::Ec],
            )
            .suggesting("1:1, 1:2, 1:5 or saturated paste."),
        );
    }
    let Some(ec) = measure.amount.exact() else { return };
    // Paste holds less water than any mix, so that it can't be weaker: what is saline as paste
    // is saline by every method.
    let at_least = measure.method.is_none() && ec >= SALINE;
    let Some(method) = measure.method.or(at_least.then_some(Method::SaturatedPaste)) else {
        return;
    };
    let by_equations = by_equations(ec, method, setting);
    let by_water = by_water(ec, method, soil, setting, chemistry);
    let (band, grounds) = match (by_equations, by_water) {
        (None, None) => return,
        (Some(one), None) | (None, Some(one)) => one,
        (Some((band, grounds)), Some((other, more))) => {
            let mut grounds = grounds.with(&more);
            grounds.rule.push_str(" The FAO's way by water content widens the bounds.");
            let high = band.high.max(other.high);
            (Band::new(band.low.min(other.low), band.likely, high), grounds)
        }
    };
    let grounds = if at_least {
        grounds.assume("Nobody says how it was measured. In paste there is at least as much as in any wetter mix, and so much is taken.")
    } else {
        grounds
    };
    chemistry.figures.push(Figure::new(
        Derived::Ece.name(),
        "salts as saturated paste (ECe)",
        band,
        Unit::DsPerM,
        grounds,
    ));
}

fn by_equations(ec: f64, method: Method, setting: &Setting) -> Option<(Band, Grounds)> {
    let (band, sources) = as_saturated_paste(ec, Some(method), setting.texture)?;
    let mut grounds = Grounds::new(
        if sources.is_empty() {
            "As measured in saturated paste."
        } else {
            "Every published equation from this mix to saturated paste; the lowest, the middle and the highest."
        },
        &sources,
    )
    .input("salts (EC)", format!("{} dS/m", significant(ec, 3)))
    .input("method", method.label());
    if !sources.is_empty() {
        grounds.sources.push(OUR_CHOICE.unsourced());
        grounds = match setting.texture {
            Some(texture) => grounds.input("texture", texture.label()),
            None => grounds.assume("The texture is not known; the equations for all were used."),
        };
    }
    Some((band, grounds))
}

/// Parts of water to one of soil.
fn parts(method: Method) -> Option<f64> {
    Some(match method {
        Method::Water1To1 => 1.0,
        Method::Water1To2 => 2.0,
        Method::Water1To2p5 => 2.5,
        Method::Water1To5 => 5.0,
        _ => return None,
    })
}

fn by_water(
    ec: f64,
    method: Method,
    soil: &Soil,
    setting: &Setting,
    chemistry: &Chemistry,
) -> Option<(Band, Grounds)> {
    let (parts, texture) = (parts(method)?, setting.texture?);
    let matter = chemistry.organic_matter(soil)?;
    let water = saturation_water(texture, soil.value(Property::Clay), matter.likely);
    // Paste holds less water than any of these mixes, so it can't be weaker.
    let band = water.map(|w| from_water(ec, parts, w).max(ec));
    let text = |band: &Band, unit| shown(band, unit, Measures::Metric);
    let grounds = Grounds::new(
        "EC × 100 × parts of water ÷ water at saturation (g/100 g), from the FAO's table.",
        &[FAO_2006.second_hand(), FAO_2006.from_memory(), OUR_CHOICE.unsourced()],
    )
    .input("parts of water", significant(parts, 2))
    .input(Property::OrganicMatter.label(), text(&matter, Unit::Percent))
    .input("water at saturation", format!("{} g/100 g", text(&water, Unit::None)));
    Some((band, grounds))
}
