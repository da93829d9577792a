//! Sodium: how it sits on the exchange, by the one way the report allows best,
//! and the four classes of salty and sodic soils.

use crate::chemistry::{Chemistry, Derived};
use crate::quantity::{Band, Grounds, Input, Unit, significant};
use crate::ranges::{Setting, judge, region_judges};
use crate::soil::{Amount, Measure, Method, Property, Soil};
use crate::sources::{Citation, HANDBOOK_60, NRCS_SAR};

/// A soil is sodic from this exchangeable sodium percentage.
/// Source: Handbook 60 (from memory), Colorado State University 0.504 (opened).
pub const SODIC_ESP: f64 = 15.0;
/// A soil is sodic from this adsorption ratio.
/// Source: Colorado State University 0.504 (opened).
pub const SODIC_SAR: f64 = 13.0;
/// A soil is saline from this, dS/m of the saturated paste.
/// Source: Handbook 60 (from memory), NRCS (opened).
pub const SALINE: f64 = 4.0;
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

/// Whether a soil is sodic.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sodic {
    /// It is not.
    No,
    /// The report is too coarse to tell.
    Perhaps,
    /// It is.
    Yes,
}

/// The sodium of a soil: one number, however it was measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Sodium {
    /// Exchangeable sodium, %.
    pub esp: Band,
    /// The adsorption ratio, where it was measured.
    pub sar: Option<f64>,
    /// From which percentage a soil is sodic here.
    pub line: f64,
    /// Whether that is too much.
    pub sodic: Sodic,
    /// How it is known.
    pub grounds: Grounds,
}

impl Sodium {
    /// The class by salts of the paste (dS/m): sodic by the line that was measured.
    pub(crate) fn class(&self, ece: f64) -> Class {
        Class::of(ece, if self.sodic == Sodic::Yes { SODIC_ESP } else { 0.0 })
    }

    /// The class at other ends of what is known.
    pub(crate) fn class_at(&self, ece: f64, esp: f64) -> Class {
        Class::of(ece, esp / self.line * SODIC_ESP)
    }
}

/// The adsorption ratio comes before an extract of the soil, which counts the
/// sodium of the soil's water as well.
pub(super) fn work_out(soil: &Soil, chemistry: &Chemistry, setting: &Setting) -> Option<Sodium> {
    if let Some((sar, grounds)) = ratio(soil) {
        return Some(by_ratio(sar, grounds));
    }
    let (esp, mut grounds) = match soil.value(Property::SodiumSaturation) {
        Some(printed) => (
            Band::exactly(printed.clamp(0.0, 100.0)),
            Grounds::new("Exchangeable sodium as the lab gives it.", &[])
                .input("exchangeable sodium", format!("{} %", significant(printed, 3))),
        ),
        None => {
            let figure = chemistry.get(Derived::SodiumSaturation)?;
            (figure.band, figure.grounds.clone())
        }
    };
    let (line, of_region) = line_here(soil, setting, esp.likely);
    grounds.sources.extend(of_region);
    let sodic = if esp.likely >= line {
        Sodic::Yes
    } else if esp.high >= line {
        Sodic::Perhaps
    } else {
        Sodic::No
    };
    Some(Sodium { esp, sar: None, line, sodic, grounds })
}

/// From which share a soil is sodic here: where the region's own table, which somebody read, ends
/// what is enough; else where Handbook 60 does.
pub(super) fn line_here(soil: &Soil, setting: &Setting, esp: f64) -> (f64, Option<Citation>) {
    let share = Measure {
        property: Property::SodiumSaturation,
        amount: Amount::Exactly(esp),
        unit: Unit::Percent,
        method: None,
    };
    let own = region_judges(&share, setting).then(|| judge(&share, soil, setting));
    let own = own.filter(|finding| !finding.rests_on_memory() && !finding.of_elsewhere);
    let end = own.as_ref().and_then(|finding| finding.range.as_ref()?.sufficient_to);
    match end {
        Some(end) => (end, own.and_then(|finding| finding.grounds.sources.first().copied())),
        None => (SODIC_ESP, None),
    }
}

/// The line is drawn at the ratio that was measured, not at the share that
/// follows from it, so that no rounding moves it.
fn by_ratio(sar: f64, mut grounds: Grounds) -> Sodium {
    grounds
        .rule
        .push_str(" ESP = 100 x ÷ (1 + x), x = 0.01475 SAR − 0.0126 (US Salinity Laboratory).");
    grounds.sources.push(HANDBOOK_60.second_hand());
    let esp = esp_from_sar(sar);
    if sar >= FITTED.0 || esp >= FITTED.1 {
        grounds = grounds.assume(
            "The equation was made for ratios below 65 and shares below 50 %; this soil lies beyond.",
        );
    }
    let sodic = if sar >= SODIC_SAR { Sodic::Yes } else { Sodic::No };
    Sodium { esp: Band::exactly(esp), sar: Some(sar), line: SODIC_ESP, sodic, grounds }
}

/// The adsorption ratio: printed, or from the water of the saturated paste.
fn ratio(soil: &Soil) -> Option<(f64, Grounds)> {
    if let Some(sar) = soil.value(Property::Sar).filter(|sar| *sar >= 0.0) {
        let grounds = Grounds::new("The adsorption ratio is as the lab gives it.", &[])
            .input(Property::Sar.label(), significant(sar, 3));
        return Some((sar, grounds));
    }
    let mut grounds = Grounds::new(
        "SAR = Na ÷ √((Ca + Mg) ÷ 2), in meq/L of the paste's water.",
        &[NRCS_SAR.opened()],
    );
    let mut part = |property: Property| {
        let of_paste = |m: &&Measure| {
            m.property == property
                && m.method == Some(Method::SaturatedPaste)
                && m.unit == Unit::MgPerL
        };
        let mg = soil.measures.iter().find(of_paste)?.amount.exact()?;
        let value = format!("{} mg/L", significant(mg, 3));
        grounds.inputs.push(Input::new(property.label(), value));
        Some(mg / property.mg_per_mmolc()?)
    };
    let (na, ca, mg) =
        (part(Property::Sodium)?, part(Property::Calcium)?, part(Property::Magnesium)?);
    (ca + mg > 0.0 && na >= 0.0).then(|| (adsorption_ratio(na, ca, mg), grounds))
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

    /// What to do, in a sentence.
    pub(crate) fn advice(self) -> &'static str {
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
