//! What each source holds, beside its mineral nitrogen: usual analyses, and
//! those of a label in their place.

use crate::case::{Charge, ChargeSource};
use crate::plan::charge::label::own_label;
use crate::plan::charge::supplies::{Form, supply};
use crate::plan::ledger::{Brings, K_IN_K2O, P_IN_P2O5, Substance};
use crate::quantity::Band;
use crate::sources::*;

/// How many nutrients are balanced. Our choice.
pub const NUTRIENTS: usize = 5;

/// A nutrient that biochar is charged with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Nutrient {
    /// Nitrogen.
    Nitrogen,
    /// Phosphorus.
    Phosphorus,
    /// Potassium.
    Potassium,
    /// Calcium.
    Calcium,
    /// Magnesium.
    Magnesium,
}

impl Nutrient {
    /// All of them, in the order of every table here.
    pub const ALL: [Nutrient; NUTRIENTS] = [
        Nutrient::Nitrogen,
        Nutrient::Phosphorus,
        Nutrient::Potassium,
        Nutrient::Calcium,
        Nutrient::Magnesium,
    ];

    /// What a reader calls it.
    pub fn label(self) -> &'static str {
        match self {
            Nutrient::Nitrogen => "nitrogen",
            Nutrient::Phosphorus => "phosphorus",
            Nutrient::Potassium => "potassium",
            Nutrient::Calcium => "calcium",
            Nutrient::Magnesium => "magnesium",
        }
    }

    /// Grams of one mole of charge as a cation; `None` for what is no cation.
    /// Source: atomic masses (derived).
    pub fn grams_per_charge(self) -> Option<f64> {
        match self {
            Nutrient::Nitrogen => Some(14.007),
            Nutrient::Phosphorus => None,
            Nutrient::Potassium => Some(39.098),
            Nutrient::Calcium => Some(20.039),
            Nutrient::Magnesium => Some(12.152),
        }
    }
}

/// A usual analysis, as it is used (moist, not dried).
pub struct Analysis {
    /// kg in a litre.
    density: Band,
    /// N, P2O5 and K2O in all, % of its weight.
    label: [Band; 3],
    /// Ca, Mg and Na, % of its weight.
    more: [Band; 3],
    /// Mineral nitrogen, g in a litre; `None` where all its nitrogen is.
    mineral: Option<Band>,
    /// Share of its phosphorus that works in the first season, 0–1.
    phosphorus_works: f64,
    /// Share of its mineral nitrogen that is ammonium, 0–1.
    ammonium: f64,
    /// Share of its calcium and magnesium that is dissolved salt, 0–1.
    dissolved: f64,
    /// Salts of one part in five parts of water, dS/m, where that is what is known
    /// rather than its cations.
    salts: Option<Band>,
    /// Where the figures come from.
    pub citations: &'static [Citation],
}

// From `engine/facts/analyses.csv`, in the order of the sources.
include!(concat!(env!("OUT_DIR"), "/analyses.rs"));

/// Whether a source is weighed rather than measured by the litre.
pub fn is_weighed(source: ChargeSource) -> bool {
    source == ChargeSource::WoodAsh || supply(source).is_some_and(|s| s.form == Form::Dissolved)
}

/// What a reader calls it.
pub fn label(source: ChargeSource) -> &'static str {
    supply(source).map_or("wood ash", |s| s.label)
}

/// What one litre, or one kilogram of what is weighed, brings, g.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Content {
    /// The nutrients in the order of [`Nutrient::ALL`]; nitrogen is what is mineral at once.
    pub nutrients: [Band; NUTRIENTS],
    /// Phosphorus that works in the first season.
    pub phosphorus_at_once: Band,
    /// Nitrogen in all.
    pub nitrogen_in_all: Band,
    /// Charge of its dissolved cations, mmol(c).
    pub salts: Band,
    /// All of it for the ledger.
    pub(crate) brings: Brings,
}

/// Share of a compost's slow nitrogen that works in the first year.
/// Source: UC Davis, Hartz (opened).
const SLOW_NITROGEN_WORKS: Band = Band { low: 0.05, likely: 0.075, high: 0.10 };

/// Lime in wood ash, as a share of calcium carbonate.
/// Source: common practice of extension offices, a quarter to a half and more (from memory).
const LIME_IN_ASH: Band = Band { low: 0.25, likely: 0.45, high: 0.6 };

/// The usual analysis of a source.
pub fn analysis(source: ChargeSource) -> &'static Analysis {
    &ANALYSES[source as usize]
}

/// What a source brings, by its own label where it has one.
pub fn content(charge: &Charge, source: ChargeSource) -> Content {
    let usual = analysis(source);
    let own = own_label(charge, source);
    let kg = if is_weighed(source) { Band::exactly(1.0) } else { usual.density };
    // 1 % of a kilogram is 10 g.
    let grams = |percent: Band| percent.map(|p| 10.0 * p).times(kg);
    let labelled = |at: usize| own.map_or(usual.label[at], |label| Band::exactly(label[at]));
    let nitrogen_in_all = grams(labelled(0));
    let phosphorus = grams(labelled(1)).map(|g| g * P_IN_P2O5);
    let potassium = grams(labelled(2)).map(|g| g * K_IN_K2O);
    let [calcium, magnesium, sodium] = usual.more.map(grams);
    let mineral = match usual.mineral {
        // Ash charges with no nitrogen, whatever its label says.
        None if source == ChargeSource::WoodAsh => Band::exactly(0.0),
        None => nitrogen_in_all,
        Some(grams) => {
            let scale = own.map_or(1.0, |label| label[0] / usual.label[0].likely);
            grams.map(|g| g * scale)
        }
    };
    let salts = salts(usual, kg, mineral, [potassium, calcium, magnesium, sodium]);
    let slow = Band::new(
        (nitrogen_in_all.low - mineral.low).max(0.0),
        (nitrogen_in_all.likely - mineral.likely).max(0.0),
        (nitrogen_in_all.high - mineral.high).max(0.0),
    );
    let ammonium = mineral.map(|g| g * usual.ammonium);
    let mut brings = Brings::nothing()
        .with_all(Substance::NitrateN, mineral.map(|g| g * (1.0 - usual.ammonium)))
        .with_all(Substance::AmmoniumN, ammonium)
        .with(Substance::OrganicN, slow, slow.times(SLOW_NITROGEN_WORKS))
        .with(Substance::Phosphorus, phosphorus, phosphorus.map(|g| g * usual.phosphorus_works))
        .with_all(Substance::Potassium, potassium)
        .with_all(Substance::Calcium, calcium)
        .with_all(Substance::Magnesium, magnesium)
        .with_all(Substance::Sodium, sodium);
    if source == ChargeSource::WoodAsh {
        brings = brings.with_all(Substance::Alkalinity, LIME_IN_ASH.map(|share| 1000.0 * share));
    }
    Content {
        brings,
        nutrients: [mineral, phosphorus, potassium, calcium, magnesium],
        phosphorus_at_once: phosphorus.map(|g| g * usual.phosphorus_works),
        nitrogen_in_all,
        salts,
    }
}

/// Charge of the dissolved cations of `kg`, mmol(c).
fn salts(
    usual: &Analysis,
    kg: Band,
    mineral: Band,
    [potassium, calcium, magnesium, sodium]: [Band; 4],
) -> Band {
    let charge_of = |nutrient: Nutrient, grams: Band, share: f64| {
        let per_gram = nutrient.grams_per_charge().map_or(0.0, |g| 1000.0 * share / g);
        grams.map(|g| g * per_gram)
    };
    /// g of one mole of charge of sodium. Source: atomic mass (derived).
    const SODIUM: f64 = 22.99;
    let cations = charge_of(Nutrient::Nitrogen, mineral, usual.ammonium)
        .plus(charge_of(Nutrient::Potassium, potassium, 1.0))
        .plus(charge_of(Nutrient::Calcium, calcium, usual.dissolved))
        .plus(charge_of(Nutrient::Magnesium, magnesium, usual.dissolved))
        .plus(sodium.map(|g| 1000.0 * g / SODIUM));
    /// mmol(c) in a kilogram for 1 dS/m in five parts of water: ten a litre.
    /// Source: US Salinity Laboratory, Handbook 60 (from memory).
    const IN_FIVE_PARTS: f64 = 50.0;
    match usual.salts {
        Some(paste) => paste.map(|ec| ec * IN_FIVE_PARTS).times(kg),
        None => cations,
    }
}

/// Whether ash would drive ammonia off it.
pub fn holds_ammonium(source: ChargeSource) -> bool {
    use ChargeSource::{
        AgedManure, AmmoniumSulfate, BloodMeal, CalciumAmmoniumNitrate, CompleteFertiliser,
        FishHydrolysate, NitrogenFertiliser, PlantLiquid, Urine,
    };
    matches!(
        source,
        AgedManure
            | AmmoniumSulfate
            | BloodMeal
            | CalciumAmmoniumNitrate
            | CompleteFertiliser
            | FishHydrolysate
            | NitrogenFertiliser
            | PlantLiquid
            | Urine
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_source_has_an_analysis_and_no_band_is_upside_down() {
        let charge = Charge::default();
        for source in ChargeSource::ALL {
            let content = content(&charge, source);
            let [n, ..] = content.nutrients;
            assert!(n.likely <= content.nitrogen_in_all.likely + 1e-9, "{source:?}");
            assert!(n.high.is_finite() && content.salts.low >= 0.0);
        }
    }
}
