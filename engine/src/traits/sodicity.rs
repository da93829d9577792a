//! Sodium: how it sits on the exchange and in the soil water, and the four
//! classes of salty and sodic soils.

use crate::quantity::{Band, Grounds, Unit, significant};
use crate::soil::{Method, Property};
use crate::sources::{COLORADO_SODIC, HANDBOOK_60, NRCS_SALINITY, NRCS_SAR, UMN_ESP};
use crate::survey::Survey;
use crate::traits::Traits;
use crate::traits::salts::Paste;

/// A soil is sodic from this exchangeable sodium percentage.
pub const SODIC_ESP: f64 = 15.0;
/// A soil is sodic from this adsorption ratio.
/// Source: Colorado State University 0.504 (opened).
pub const SODIC_SAR: f64 = 13.0;
/// A soil is saline from this, dS/m of the saturated paste.
pub const SALINE: f64 = 4.0;
/// A pH above this is a sign of sodium.
pub const SODIC_PH: f64 = 8.5;
/// The ratio and the percentage were compared below these.
const FITTED: (f64, f64) = (65.0, 50.0);

/// Sodium adsorption ratio from what the saturated paste's water holds, all in meq/L.
///
/// Source: USDA-NRCS.
pub fn adsorption_ratio(sodium: f64, calcium: f64, magnesium: f64) -> f64 {
    sodium / ((calcium + magnesium) / 2.0).sqrt()
}

/// Exchangeable sodium percentage from the adsorption ratio; none below a ratio of 0.85.
///
/// Source: USDA Handbook 60.
pub fn esp_from_sar(sar: f64) -> f64 {
    let ratio = (0.014_75 * sar - 0.012_6).max(0.0);
    100.0 * ratio / (1.0 + ratio)
}

/// Adsorption ratio from the exchangeable sodium percentage: the same equation the other way.
pub fn sar_from_esp(esp: f64) -> f64 {
    (esp / (100.0 - esp) + 0.012_6) / 0.014_75
}

/// The four classes of Handbook 60.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// Neither.
    Normal,
    /// Many salts.
    Saline,
    /// Much sodium.
    Sodic,
    /// Both.
    SalineSodic,
}

impl Class {
    /// The class by salts of the saturated paste (dS/m) and exchangeable sodium percentage.
    ///
    /// Source: USDA Handbook 60.
    pub fn of(ece: f64, esp: f64) -> Class {
        match (ece >= SALINE, esp >= SODIC_ESP) {
            (false, false) => Class::Normal,
            (true, false) => Class::Saline,
            (false, true) => Class::Sodic,
            (true, true) => Class::SalineSodic,
        }
    }

    /// What a reader calls it.
    pub fn label(self) -> &'static str {
        match self {
            Class::Normal => "neither saline nor sodic",
            Class::Saline => "saline",
            Class::Sodic => "sodic",
            Class::SalineSodic => "saline and sodic",
        }
    }

    fn advice(self) -> &'static str {
        match self {
            Class::Normal => "Nothing need be done about salts or sodium.",
            Class::Saline => {
                "Wash the salts down with clean water where it can drain. Gypsum does not help."
            }
            Class::Sodic => {
                "Gypsum and then clean water put calcium in sodium's place; drainage comes first."
            }
            Class::SalineSodic => {
                "Give gypsum before you wash the salts out: clean water alone would leave the sodium and close the soil."
            }
        }
    }
}

/// Exchangeable sodium with its grounds, and whether an extract of the soil gave it.
struct Exchangeable {
    esp: Band,
    grounds: Grounds,
    extracted: bool,
}

fn exchangeable(survey: &Survey<'_>, traits: &mut Traits) -> Option<Exchangeable> {
    let from_ratio = ratio(survey).map(|(sar, grounds)| {
        let mut grounds = grounds;
        grounds.rule.push_str(
            " ESP = 100 x ÷ (1 + x), x = 0.01475 SAR − 0.0126 (US Salinity Laboratory).",
        );
        grounds.sources.push(HANDBOOK_60.second_hand());
        let esp = esp_from_sar(sar);
        if sar >= FITTED.0 || esp >= FITTED.1 {
            grounds = grounds.assume("The equation was made for ratios below 65 and shares below 50 %; this soil lies beyond.");
        }
        let esp = Band::exactly(esp);
        let label = "exchangeable sodium, from the adsorption ratio";
        traits.figure("esp-from-sar", label, esp, Unit::Percent, &grounds);
        Exchangeable { esp, grounds, extracted: false }
    });
    if from_ratio.is_some() {
        return from_ratio;
    }
    let found = match survey.chemistry.get("sodium-saturation") {
        Some(figure) => (figure.band, figure.grounds.clone()),
        None => {
            let printed = survey.soil.value(Property::SodiumSaturation)?;
            let grounds = Grounds::new("As the lab gives it.", &[])
                .input("exchangeable sodium", format!("{} %", significant(printed, 3)));
            (Band::exactly(printed), grounds)
        }
    };
    let (esp, grounds) = found;
    if esp.high < FITTED.1 {
        let mut grounds = grounds.clone();
        grounds.rule.push_str(" SAR = (ESP ÷ (100 − ESP) + 0.0126) ÷ 0.01475.");
        grounds.sources.push(HANDBOOK_60.derived());
        let label = "sodium adsorption ratio, from exchangeable sodium";
        traits.figure("sar-from-esp", label, esp.map(sar_from_esp), Unit::None, &grounds);
    }
    Some(Exchangeable { esp, grounds, extracted: true })
}

/// The adsorption ratio: printed, or from the water of the saturated paste.
fn ratio(survey: &Survey<'_>) -> Option<(f64, Grounds)> {
    if let Some(sar) = survey.soil.value(Property::Sar).filter(|sar| *sar >= 0.0) {
        let grounds = Grounds::new("The adsorption ratio is as the lab gives it.", &[])
            .input(Property::Sar.label(), significant(sar, 3));
        return Some((sar, grounds));
    }
    let mut grounds = Grounds::new(
        "SAR = Na ÷ √((Ca + Mg) ÷ 2), in meq/L of the paste's water.",
        &[NRCS_SAR.opened()],
    );
    let mut part = |property: Property| {
        let of_paste = |m: &&crate::soil::Measure| {
            m.property == property
                && m.method == Some(Method::SaturatedPaste)
                && m.unit == Unit::MgPerL
        };
        let mg = survey.soil.measures.iter().find(of_paste)?.amount.exact()?;
        let input = crate::quantity::Input {
            name: property.label().into(),
            value: format!("{} mg/L", significant(mg, 3)),
        };
        grounds.inputs.push(input);
        Some(mg / property.mg_per_mmolc()?)
    };
    let (na, ca, mg) =
        (part(Property::Sodium)?, part(Property::Calcium)?, part(Property::Magnesium)?);
    (ca + mg > 0.0).then(|| (adsorption_ratio(na, ca, mg), grounds))
}

pub(super) fn work_out(survey: &Survey<'_>, paste: Option<&Paste>, traits: &mut Traits) {
    let ph = survey.soil.value(Property::Ph).filter(|ph| *ph > SODIC_PH);
    let Some(found) = exchangeable(survey, traits) else {
        if let Some(ph) = ph {
            let grounds =
                Grounds::new("A pH above 8.5 is a sign of sodium.", &[COLORADO_SODIC.opened()])
                    .input("pH", significant(ph, 3));
            traits.say(
                "sodicity",
                "A pH above 8.5 is a sign that sodium rules this soil. Ask the lab for sodium or the adsorption ratio (SAR).",
                grounds,
            );
        }
        return;
    };
    let Exchangeable { esp, mut grounds, extracted } = found;
    grounds.rule.push_str(
        " Saline from 4 dS/m of the saturated paste; sodic from 15 % exchangeable sodium or a ratio of 13.",
    );
    grounds.sources.extend([
        COLORADO_SODIC.opened(),
        NRCS_SALINITY.opened(),
        HANDBOOK_60.from_memory(),
    ]);
    let sodium = survey.shown(&esp, Unit::Percent);
    let mut text = match paste {
        None => match (esp.low >= SODIC_ESP, esp.high < SODIC_ESP) {
            (true, _) => format!(
                "Exchangeable sodium is {sodium}: this soil is sodic. Whether it is saline too, only a salts test (EC) tells."
            ),
            (_, true) => format!(
                "Exchangeable sodium is {sodium}, below the 15 % from which a soil is sodic."
            ),
            _ => format!(
                "Exchangeable sodium is {sodium}, and 15 % makes a soil sodic: this one may be. Ask the lab for the adsorption ratio (SAR)."
            ),
        },
        Some((ece, why)) => {
            grounds.inputs.extend(why.inputs.iter().cloned());
            grounds.sources.extend(why.sources.iter().copied());
            let salts = survey.shown(ece, Unit::DsPerM);
            let here = Class::of(ece.likely, esp.likely);
            let corners = [
                Class::of(ece.low, esp.low),
                Class::of(ece.high, esp.low),
                Class::of(ece.low, esp.high),
                Class::of(ece.high, esp.high),
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
                format!(
                    "Salts {salts} and exchangeable sodium {sodium}: this soil is {class}. {advice}"
                )
            } else {
                let test = if extracted {
                    "A saturated-paste test with the adsorption ratio (SAR) would tell."
                } else {
                    "A saturated-paste test would tell."
                };
                format!(
                    "Salts {salts} and exchangeable sodium {sodium}: this soil is most likely {class}, \
                     but may be {others}. {test}"
                )
            }
        }
    };
    if extracted && paste.is_some_and(|(ece, _)| ece.high >= SALINE) {
        text.push_str(
            " In a salty soil the extract counts dissolved sodium as well, so this share may be too high.",
        );
        grounds.sources.push(UMN_ESP.opened());
    }
    if let Some(ph) = ph
        && esp.high < SODIC_ESP
    {
        text.push_str(
            " Yet a pH above 8.5 is a sign of sodium: have the adsorption ratio (SAR) measured.",
        );
        grounds = grounds.input("pH", significant(ph, 3));
    }
    if ph.is_none() && esp.low >= 5.0 && esp.high < SODIC_ESP {
        text.push_str(" Sodium can harm the soil's structure below 15 % too.");
    }
    traits.say("sodicity", text, grounds);
}
