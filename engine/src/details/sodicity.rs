//! Sodium: how it sits on the exchange and in the soil water, and the four
//! classes of salty and sodic soils.

use crate::chemistry::Derived;
use crate::chemistry::sodium::{SALINE, Sodic, Sodium, sar_from_esp};
use crate::details::Traits;
use crate::quantity::{Band, Grounds, Unit, significant};
use crate::soil::Property;
use crate::sources::{COLORADO_SODIC, HANDBOOK_60, NRCS_SALINITY, UMN_ESP};
use crate::survey::Survey;

/// A pH above this is a sign of sodium.
pub const SODIC_PH: f64 = 8.5;
/// Below this share the ratio and the percentage were compared.
const FITTED: f64 = 50.0;

/// The same sodium as the other measure has it.
fn as_other_measure(sodium: &Sodium, traits: &mut Traits) {
    let Sodium { esp, grounds, .. } = sodium;
    if sodium.sar.is_some() {
        let label = "exchangeable sodium, from the adsorption ratio";
        traits.figure("esp-from-sar", label, *esp, Unit::Percent, grounds);
    } else if esp.high < FITTED {
        let mut grounds = grounds.clone();
        grounds.rule.push_str(" SAR = (ESP ÷ (100 − ESP) + 0.0126) ÷ 0.01475.");
        grounds.sources.push(HANDBOOK_60.derived());
        let label = "sodium adsorption ratio, from exchangeable sodium";
        traits.figure("sar-from-esp", label, esp.map(sar_from_esp), Unit::None, &grounds);
    }
}

/// What a high pH alone tells.
fn by_ph_alone(ph: f64, traits: &mut Traits) {
    let grounds = Grounds::new("A pH above 8.5 is a sign of sodium.", &[COLORADO_SODIC.opened()])
        .input("pH", significant(ph, 3));
    traits.say(
        "sodicity",
        "A pH above 8.5 is a sign that sodium rules this soil. Ask the lab for sodium or the adsorption ratio (SAR).",
        grounds,
    );
}

pub(super) fn work_out(survey: &Survey<'_>, traits: &mut Traits) {
    let paste = survey.chemistry.get(Derived::Ece);
    let ph = survey.soil.value(Property::Ph).filter(|ph| *ph > SODIC_PH);
    let Some(found) = &survey.chemistry.sodium else {
        if let Some(ph) = ph {
            by_ph_alone(ph, traits);
        }
        return;
    };
    as_other_measure(found, traits);
    let (esp, mut grounds, extracted) = (found.esp, found.grounds.clone(), found.sar.is_none());
    let line = significant(found.line, 3);
    grounds.rule.push_str(&format!(
        " Saline from 4 dS/m of the saturated paste; sodic from {line} % exchangeable sodium or a ratio of 13.",
    ));
    grounds.sources.extend([
        COLORADO_SODIC.opened(),
        NRCS_SALINITY.opened(),
        HANDBOOK_60.from_memory(),
    ]);
    let mut text = match paste {
        None => without_salts(survey, found),
        Some(paste) => {
            grounds.inputs.extend(paste.grounds.inputs.iter().cloned());
            grounds.sources.extend(paste.grounds.sources.iter().copied());
            with_salts(survey, found, paste.band)
        }
    };
    if extracted && paste.is_some_and(|ece| ece.band.high >= SALINE) {
        text.push_str(
            " In a salty soil the extract counts dissolved sodium as well, so this share may be too high.",
        );
        grounds.sources.push(UMN_ESP.opened());
    }
    if let Some(ph) = ph
        && esp.high < found.line
    {
        text.push_str(
            " Yet a pH above 8.5 is a sign of sodium: have the adsorption ratio (SAR) measured.",
        );
        grounds = grounds.input("pH", significant(ph, 3));
    }
    if ph.is_none() && esp.low >= 5.0 && esp.high < found.line {
        text.push_str(&format!(" Sodium can harm the soil's structure below {line} % too."));
    }
    traits.say("sodicity", text, grounds);
}

fn without_salts(survey: &Survey<'_>, found: &Sodium) -> String {
    let sodium = survey.shown(&found.esp, Unit::Percent);
    let line = significant(found.line, 3);
    match (found.sodic == Sodic::Yes, found.sodic == Sodic::No) {
        (true, _) => format!(
            "Exchangeable sodium is {sodium}: this soil is sodic. Whether it is saline too, only a salts test (EC) tells."
        ),
        (_, true) => {
            format!(
                "Exchangeable sodium is {sodium}, below the {line} % from which a soil is sodic."
            )
        }
        _ => format!(
            "Exchangeable sodium is {sodium}, and {line} % makes a soil sodic: this one may be. Ask the lab for the adsorption ratio (SAR)."
        ),
    }
}

/// The class of a soil whose salts (dS/m in saturated paste) are known too.
fn with_salts(survey: &Survey<'_>, found: &Sodium, ece: Band) -> String {
    let esp = found.esp;
    let (salts, sodium) = (survey.shown(&ece, Unit::DsPerM), survey.shown(&esp, Unit::Percent));
    let here = found.class(ece.likely);
    let corners = [
        found.class_at(ece.low, esp.low),
        found.class_at(ece.high, esp.low),
        found.class_at(ece.low, esp.high),
        found.class_at(ece.high, esp.high),
    ];
    let mut others = String::new();
    for (i, class) in corners.iter().enumerate() {
        if *class != here && !corners[..i].contains(class) {
            others.push_str(if others.is_empty() { "" } else { ", or " });
            others.push_str(class.label());
        }
    }
    let (class, advice) = (here.label(), here.advice());
    if others.is_empty() {
        return format!(
            "Salts {salts} and exchangeable sodium {sodium}: this soil is {class}. {advice}"
        );
    }
    let test = if found.sar.is_none() {
        "A saturated-paste test with the adsorption ratio (SAR) would tell."
    } else {
        "A saturated-paste test would tell."
    };
    format!(
        "Salts {salts} and exchangeable sodium {sodium}: this soil is most likely {class}, \
         but may be {others}. {test}"
    )
}
