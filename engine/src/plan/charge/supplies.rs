//! What charges biochar: how each source is used, the water it takes, and how
//! long it takes.

use crate::bag::Material;
use crate::case::{Bag, Case, Charge, ChargeSource};
use crate::plan::charge::label::own_label;
use crate::quantity::Band;

/// Uptake from solution, per hour: the slowest and the fastest published, and
/// a cautious likely value.
/// Source: published uptake takes minutes to days; the cautious likely value is our choice.
pub(super) const UPTAKE_PER_HOUR: Band = Band { low: 0.02, likely: 0.024, high: 1.0 };

/// Days in contact with moist compost. Source: our choice.
pub(super) const SOLID_DAYS: Band = Band { low: 14.0, likely: 28.0, high: 42.0 };

/// Days soaking in a solution. Source: our choice from [`UPTAKE_PER_HOUR`].
pub(super) const SOAK_DAYS: Band = Band { low: 3.0, likely: 7.0, high: 7.0 };

/// Below this the days double, °C. Source: our choice.
pub(super) const COLD: f64 = 10.0;

/// Share taken up after `hours`, 0–1, at `per_hour`.
pub fn taken_up(hours: f64, per_hour: f64) -> f64 {
    1.0 - (-per_hour * hours).exp()
}

/// Litres of water that wet `kg` of dry biochar holding `grams` per gram.
pub fn water_to_wet(kg: f64, grams: f64) -> f64 {
    kg * grams
}

/// How a source is used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Form {
    /// Mixed in; at most so many litres of it for one litre of biochar.
    Solid(f64),
    /// Soaked in, as much as the target needs and the biochar can drink.
    Liquid,
    /// Soaked in, as much as the biochar can still drink.
    Filling,
    /// Stirred into the water; measured by its nitrogen.
    Dissolved,
}

pub(super) struct Supply {
    pub source: ChargeSource,
    pub label: &'static str,
    pub form: Form,
    brings_phosphorus: bool,
}

const fn supply_of(
    source: ChargeSource,
    label: &'static str,
    form: Form,
    brings_phosphorus: bool,
) -> Supply {
    Supply { source, label, form, brings_phosphorus }
}

/// In the order they are counted: what is mixed in, what the biochar drinks,
/// and fertiliser for what is still missing. The figures stand with the analyses.
static SUPPLIES: [Supply; 12] = {
    use ChargeSource::*;
    use Form::{Dissolved, Filling, Liquid, Solid};
    [
        supply_of(Compost, "compost", Solid(1.0), true),
        supply_of(Vermicompost, "worm castings", Solid(0.5), true),
        supply_of(AgedManure, "aged manure", Solid(0.5), true),
        supply_of(Urine, "urine", Liquid, false),
        supply_of(FishHydrolysate, "fish hydrolysate", Liquid, true),
        supply_of(PlantLiquid, "nettle or comfrey liquid", Liquid, false),
        supply_of(CompostTea, "compost tea", Filling, false),
        supply_of(AmmoniumSulfate, "ammonium sulfate", Dissolved, false),
        supply_of(CalciumAmmoniumNitrate, "calcium ammonium nitrate", Dissolved, false),
        supply_of(BloodMeal, "blood meal", Dissolved, false),
        supply_of(NitrogenFertiliser, "nitrogen fertiliser", Dissolved, false),
        supply_of(CompleteFertiliser, "complete (N-P-K) fertiliser", Dissolved, true),
    ]
};

/// What charges with nitrogen; wood ash brings none.
pub(super) fn supply(source: ChargeSource) -> Option<&'static Supply> {
    SUPPLIES.iter().find(|s| s.source == source)
}

impl Supply {
    /// Whether it must lie with the biochar for weeks.
    pub fn is_slow(&self) -> bool {
        matches!(self.form, Form::Solid(_)) || self.source == ChargeSource::BloodMeal
    }

    /// Whether it brings phosphorus to mind; its label knows best.
    pub fn brings_phosphorus(&self, charge: &Charge) -> bool {
        own_label(charge, self.source).map_or(self.brings_phosphorus, |label| label[1] > 0.0)
    }
}

/// Days to charge, by how the biochar is charged and how warm it is.
pub(super) fn days(slow: bool, charge: &Charge) -> Band {
    let cold = charge.temperature_c.is_some_and(|t| t < COLD);
    let days = if slow { SOLID_DAYS } else { SOAK_DAYS };
    if cold { days.map(|d| 2.0 * d) } else { days }
}

/// Water that wets the biochar, litres, less what is in it already.
pub(super) fn water(kg: Band, material: &Material, bag: &Bag) -> Band {
    let moist = bag.moisture_percent.filter(|m| (0.0..=90.0).contains(m)).unwrap_or(0.0);
    let there = |kg: f64| kg * moist / (100.0 - moist);
    let wets = |kg: f64, grams: f64| (water_to_wet(kg, grams) - there(kg)).max(0.0);
    Band::new(
        wets(kg.low, material.water.low),
        wets(kg.likely, material.water.likely),
        wets(kg.high, material.water.high),
    )
}

/// What charges the biochar: what is on hand and does no harm, or a sensible
/// choice when nobody said. With `quick` only what soaks in within days; `barred` is what
/// comes too near to a harvest.
pub(super) fn choose(
    case: &Case,
    spare_phosphorus: bool,
    quick: bool,
    barred: &[ChargeSource],
) -> Vec<&'static Supply> {
    let spares = |s: &&'static Supply| !spare_phosphorus || !s.brings_phosphorus(&case.charge);
    let in_time = |s: &&'static Supply| !quick || !s.is_slow();
    let on_hand =
        |s: &&'static Supply| case.charge_with.contains(&s.source) && !barred.contains(&s.source);
    let used: Vec<_> = SUPPLIES.iter().filter(on_hand).filter(spares).filter(in_time).collect();
    if !used.is_empty() {
        return used;
    }
    // A nitrogen fertiliser, unless its own label says that it brings phosphorus.
    let first =
        [ChargeSource::Compost, ChargeSource::NitrogenFertiliser, ChargeSource::AmmoniumSulfate];
    let usual = || first.into_iter().filter_map(supply);
    usual().filter(spares).find(in_time).into_iter().collect()
}
