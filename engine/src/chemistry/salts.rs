//! Salts as of a saturated paste.

use crate::chemistry::Chemistry;
use crate::quantity::{Figure, Grounds, Unit, significant};
use crate::question::{Question, QuestionId};
use crate::ranges::{Setting, as_saturated_paste, method_decides};
use crate::soil::{Property, Soil};
use crate::sources::OUR_CHOICE;

pub(super) fn work_out(soil: &Soil, setting: &Setting, chemistry: &mut Chemistry) {
    let Some(measure) = soil.get(Property::Ec).filter(|m| m.unit == Unit::DsPerM) else {
        return;
    };
    if method_decides(measure, setting.texture) {
        chemistry.questions.push(Question {
            id: QuestionId::EcMethod,
            text: "How did the lab mix soil and water for the salts reading?".into(),
            changes:
                "Whether the soil counts as salty: the same number means more in a wetter mix."
                    .into(),
            about: vec![Property::Ec],
            suggestion: Some("1:1, 1:2, 1:5 or saturated paste.".into()),
        });
    }
    let (Some(ec), Some(method)) = (measure.amount.exact(), measure.method) else {
        return;
    };
    let Some((band, sources)) = as_saturated_paste(ec, Some(method), setting.texture) else {
        return;
    };
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
    chemistry.figures.push(Figure {
        name: "ece",
        label: "salts as saturated paste (ECe)",
        band,
        unit: Unit::DsPerM,
        grounds,
    });
}
