//! What biochar does to the exchange capacity: the sites it brings, in the place of soil, and
//! those of the soil that a higher pH frees.

use crate::bag::{EffectParameter, Material, parameter};
use crate::quantity::{Band, product};
use crate::survey::buffering::{Buffering, rise};

/// The pH at which the capacity of soils and biochars is measured.
/// Source: common practice, no source.
const MEASURED_AT_PH: f64 = 7.0;

/// A biochar keeps at least so much of its capacity. Source: our choice.
const LEAST_OF_CAPACITY: f64 = 0.25;

/// The change of the exchange capacity, meq for 100 g of soil with its biochar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NewSites {
    /// What the biochar brings, less the soil whose place it takes.
    pub own: Band,
    /// What the higher pH frees of the soil.
    pub freed: Band,
}

impl NewSites {
    /// From `percent` biochar by mass in a soil of `soil` meq/100 g.
    pub fn of(
        soil: f64,
        ph: Option<f64>,
        percent: Band,
        material: &Material,
        buffering: &Buffering,
    ) -> NewSites {
        let rise = rise(ph, percent, material, buffering);
        let holds = of_char(material.cec, ph.map(|ph| ph + rise.likely));
        let mixed = |share: f64, char: f64| share * (char - soil) / (100.0 + share);
        let ends = [percent.low, percent.high].map(|p| [mixed(p, holds.low), mixed(p, holds.high)]);
        let least = ends.iter().flatten().copied().fold(f64::INFINITY, f64::min);
        let most = ends.iter().flatten().copied().fold(f64::NEG_INFINITY, f64::max);
        NewSites {
            own: Band::new(least, mixed(percent.likely, holds.likely), most),
            freed: freed(rise, buffering),
        }
    }
}

/// What a biochar holds at a pH, meq/100 g. Source: `char-sites-by-ph` of facts/effects.csv.
fn of_char(measured: Band, ph: Option<f64>) -> Band {
    let off = ph.unwrap_or(MEASURED_AT_PH) - MEASURED_AT_PH;
    let at = |slope: f64| (1.0 + slope * off).max(LEAST_OF_CAPACITY);
    let slope = parameter(EffectParameter::CharSitesByPh);
    Band::new(
        measured.low * at(slope.low).min(at(slope.high)),
        measured.likely * at(slope.likely),
        measured.high * at(slope.low).max(at(slope.high)),
    )
}

/// The protons that the soil gives up are as many sites, by the share `freed-sites` of
/// facts/effects.csv; none where free lime holds the pH.
fn freed(rise: Band, buffering: &Buffering) -> Band {
    if buffering.limy {
        return Band::exactly(0.0);
    }
    // What moved the pH least met the strongest hold.
    let Band { low, likely, high } = buffering.band;
    let given_up = Band::new(rise.low * high, rise.likely * likely, rise.high * low);
    // mmol(c)/kg is a tenth of a meq/100 g.
    product(&[given_up.map(|mmol| mmol.max(0.0) / 10.0), parameter(EffectParameter::FreedSites)])
}
