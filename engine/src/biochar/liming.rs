//! How far biochar moves the pH: its liming value over the soil's buffering.

use crate::biochar::spread::{inverse, product};
use crate::biochar::{Material, Situation};
use crate::chemistry::{MEHLICH_PER_PH, MEHLICH_START};
use crate::quantity::Band;
use crate::soil::{Method, Property, Texture};
use crate::sources::{
    ADEWUMI_2025, COMMON_PRACTICE, Citation, NCDA_BUFFER, OUR_CHOICE, SERA6_LIME,
};

/// Share of the liming value that works in the first year.
/// Source: limestone trials average 0.73 of pure lime; 0.7 is our choice.
const WORKS_IN_FIRST_YEAR: Band = Band { low: 0.5, likely: 0.7, high: 1.0 };

/// Biochar lifts no soil past this: free lime holds it there.
/// Source: equilibrium of calcium carbonate with air, common practice.
const CARBONATE_PH: f64 = 8.3;

/// Salt pH reads about this much lower than pH in water.
/// Source: common practice, no source (about 0.5).
const SALT_PH_OFFSET: f64 = 0.5;

/// Rise of pH from `rate` g biochar per kg soil with `liming` (share of
/// CaCO3, 0–1) in a soil that takes `buffering` mmol(c)/kg for one pH unit.
///
/// Source: definition of lime buffer capacity; 1 g CaCO3 is 20 mmol(c).
pub fn ph_rise(rate: f64, liming: f64, buffering: f64) -> f64 {
    if buffering <= 0.0 { 0.0 } else { 20.0 * rate * liming / buffering }
}

/// pH in water: measured, or half a unit above a salt pH.
pub fn water_ph(situation: &Situation<'_>) -> Option<f64> {
    let salt = || situation.soil.value(Property::SaltPh).map(|ph| ph + SALT_PH_OFFSET);
    situation.soil.value(Property::Ph).or_else(salt).filter(|ph| (2.0..=12.0).contains(ph))
}

/// How the pH in water is known, as the name of an input.
pub fn water_ph_name(situation: &Situation<'_>) -> &'static str {
    if situation.soil.value(Property::Ph).is_some() {
        "pH"
    } else {
        "pH in water, taken as salt pH + 0.5"
    }
}

/// What the soil's resistance to a change of pH is taken to be.
#[derive(Clone, Debug, PartialEq)]
pub struct Buffering {
    /// mmol(c)/kg for one unit of pH.
    pub band: Band,
    /// How it is known.
    pub from: String,
    /// The source.
    pub source: Citation,
}

/// The soil's buffering: from a Mehlich buffer pH where there is one,
/// otherwise what is usual for the texture.
pub fn buffering(situation: &Situation<'_>) -> Buffering {
    let mehlich = situation
        .soil
        .get(Property::BufferPh)
        .filter(|m| m.method == Some(Method::MehlichBuffer))
        .and_then(|m| m.amount.exact());
    if let (Some(buffer), Some(ph)) = (mehlich, water_ph(situation)) {
        let acidity = MEHLICH_PER_PH * (MEHLICH_START - buffer);
        if ph < 6.4 && acidity > 0.0 {
            let value = 10.0 * acidity / (MEHLICH_START - ph);
            return Buffering {
                band: Band::new(value * 0.6, value, value * 1.6),
                from: format!("Mehlich buffer pH {buffer} at pH {ph}"),
                source: NCDA_BUFFER.derived(),
            };
        }
    }
    let (band, from) = match situation.texture {
        Some(t) if t.is_sandy() => ((5.0, 10.0, 20.0), "usual for a sandy soil"),
        Some(
            Texture::Clay
            | Texture::SiltyClay
            | Texture::SandyClay
            | Texture::ClayLoam
            | Texture::SiltyClayLoam,
        ) => ((25.0, 45.0, 80.0), "usual for a clay soil"),
        Some(_) => ((12.0, 25.0, 40.0), "usual for a loam"),
        None => ((5.0, 25.0, 80.0), "usual for a loam; the texture isn't known"),
    };
    Buffering {
        band: Band::new(band.0, band.1, band.2),
        from: from.to_string(),
        source: OUR_CHOICE.from_memory(),
    }
}

/// The rise of pH in the first year from `percent` biochar by mass.
pub fn rise(ph: Option<f64>, percent: Band, material: &Material, buffering: &Buffering) -> Band {
    let grams_per_kg = percent.map(|p| p * 10.0);
    let liming = material.liming.map(|l| l / 100.0);
    let free = product(&[grams_per_kg, liming, WORKS_IN_FIRST_YEAR, inverse(buffering.band)])
        .map(|x| ph_rise(x, 1.0, 1.0));
    let Some(ph) = ph else { return free };
    let room = |char_ph: f64| (char_ph.min(CARBONATE_PH) - ph).max(0.0);
    Band::new(
        free.low.min(room(material.ph.low)),
        free.likely.min(room(material.ph.likely)),
        free.high.min(room(material.ph.high)),
    )
}

/// The sources of a predicted pH.
pub fn sources(buffering: &Buffering) -> Vec<Citation> {
    vec![SERA6_LIME.opened(), ADEWUMI_2025.opened(), buffering.source, COMMON_PRACTICE.unsourced()]
}
