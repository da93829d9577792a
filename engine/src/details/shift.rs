//! What biochar does to the cations on the exchange and in the soil's water.

use crate::chemistry::Derived;
use crate::details::exchange::{CATIONS, Cation, Exchange, PerCation, Pool};
use crate::plan::{Path, Plan};
use crate::quantity::{Band, Figure, Grounds, Unit, significant};
use crate::soil::Property;
use crate::sources::{ARITHMETIC, COLORADO_SODIC, OUR_CHOICE, PHREEQC_EXCHANGE};
use crate::survey::Survey;
use crate::survey::buffering as liming;
use crate::survey::capacity::NewSites;

/// Water in moist soil, and in wetted biochar, L/kg. Source: common practice, no source.
const SOIL_WATER: f64 = 0.30;
const CHAR_WATER: f64 = 1.0;

/// Charges in the water of a soil whose salts nobody measured, mol/L.
/// Source: our choice: about 1 dS/m.
const USUAL_SALTS: f64 = 0.010;
/// Charges in the water for each dS/m of saturated paste, mol/L.
/// Source: common practice, no source (10 meq/L for 1 dS/m).
const SALTS_PER_DS: f64 = 0.010;

/// What sits on the exchange of fresh wood biochar, and of charged biochar: Ca,
/// Mg, K, NH₄, Na, acidity.
/// Source: our choice, from the usual contents of ash.
const FRESH: PerCation = [0.55, 0.15, 0.28, 0.0, 0.02, 0.0];
const CHARGED: PerCation = [0.55, 0.15, 0.20, 0.09, 0.01, 0.0];

/// The exchange before and after biochar.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shift {
    /// What it means.
    pub text: String,
    /// Shares of the exchange and concentrations in the water, before and after.
    pub figures: Vec<Figure>,
}

/// The exchange of this soil before and after the biochar of the plan; `None`
/// when the plan uses none, or when the cations or the capacity are not known.
pub fn exchange_shift(survey: &Survey<'_>, plan: &Plan) -> Option<Shift> {
    if !plan.uses_biochar() {
        return None;
    }
    let cec = survey.chemistry.cec?.likely;
    let salts = survey
        .chemistry
        .get(Derived::Ece)
        .map_or(USUAL_SALTS, |ece| (ece.band.likely * SALTS_PER_DS).clamp(0.001, 0.5));
    let soil = at_rest(cec / 100.0, shares(survey)?, salts)?;
    let before = soil.settled()?;
    let charged = !matches!(plan.path, Path::UnchargedAfterHarvest);
    let load = if charged { CHARGED } else { FRESH };
    let after = |capacity: f64, percent: f64, freed: f64| -> Option<Exchange> {
        let char = Pool::of(capacity / 100.0, CHAR_WATER, &load, &[0.0; CATIONS]);
        let by_mass = percent / 100.0 / (1.0 + percent / 100.0);
        soil.mixed(&char, by_mass).with_calcium(freed / 100.0).settled()
    };
    let (capacity, percent) = (survey.material.cec, plan.dose.percent);
    let buffering = liming::buffering(survey);
    let freed = NewSites::of(cec, survey.water_ph(), percent, &survey.material, &buffering).freed;
    let ends = [
        after(capacity.likely, percent.likely, freed.likely)?,
        after(capacity.low, percent.low, freed.low)?,
        after(capacity.high, percent.high, freed.high)?,
    ];
    let band = |of: &dyn Fn(&Exchange) -> f64| {
        let [likely, low, high] = [of(&ends[0]), of(&ends[1]), of(&ends[2])];
        Band { low: low.min(high).min(likely), likely, high: low.max(high).max(likely) }
    };
    let grounds = grounds(survey, cec, percent);
    let mut figures: Vec<Figure> = SHOWN
        .into_iter()
        .flat_map(|(cation, labels)| {
            let was = Band::exactly(100.0 * before.of(cation).0);
            let is = band(&|exchange| 100.0 * exchange.of(cation).0);
            labels.into_iter().zip([was, is])
        })
        .map(|(label, band)| {
            Figure::new("exchange-shift", label, band, Unit::Percent, grounds.clone())
        })
        .collect();
    let mut text = String::from(
        "On the exchange biochar moves little at garden rates: it adds sites, and takes and gives cations with the soil.",
    );
    if survey.soil.value(Property::Sodium).is_some() {
        let moved =
            band(&|exchange| 100.0 * (exchange.of(Cation::Sodium).0 - before.of(Cation::Sodium).0));
        text.push_str(&format!(
            " Exchangeable sodium changes by {} points. It is no remedy for a sodic soil: gypsum and washing out are.",
            survey.shown(&moved, Unit::None)
        ));
        if let Some(last) = figures.last_mut() {
            last.grounds.sources.push(COLORADO_SODIC.opened());
        }
    }
    Some(Shift { text, figures })
}

/// The cations that are shown, each before and after.
const SHOWN: [(Cation, [&str; 2]); 4] = [
    (Cation::Calcium, ["calcium on the exchange, before", "calcium on the exchange, after"]),
    (Cation::Magnesium, ["magnesium on the exchange, before", "magnesium on the exchange, after"]),
    (Cation::Potassium, ["potassium on the exchange, before", "potassium on the exchange, after"]),
    (Cation::Sodium, ["sodium on the exchange, before", "sodium on the exchange, after"]),
];

/// What sits on the exchange of the soil, as shares of it.
fn shares(survey: &Survey<'_>) -> Option<PerCation> {
    let share = |what| Some(survey.chemistry.band(what)?.likely / 100.0);
    let (calcium, magnesium, potassium) = (
        share(Derived::CalciumSaturation)?,
        share(Derived::MagnesiumSaturation)?,
        share(Derived::PotassiumSaturation)?,
    );
    let sodium = share(Derived::SodiumSaturation).unwrap_or(0.0);
    let bases = calcium + magnesium + potassium + sodium;
    // From pH 7 on no acidity is counted, here as in the chemistry.
    let alkaline = survey.water_ph().is_some_and(|ph| ph >= 7.0);
    let acidity = if alkaline { 0.0 } else { (1.0 - bases).max(0.0) };
    let all = bases + acidity;
    Some([calcium, magnesium, potassium, 0.0, sodium, acidity].map(|s| s / all))
}

fn grounds(survey: &Survey<'_>, cec: f64, percent: Band) -> Grounds {
    let mut grounds = Grounds::new(
        "Soil and biochar mixed, with the sites that a higher pH frees for the calcium of its lime, then brought to equilibrium: each cation holds sites by its constant of exchange (Gaines–Thomas).",
        &[PHREEQC_EXCHANGE.opened(), OUR_CHOICE.unsourced(), ARITHMETIC.derived()],
    )
    .input("exchange capacity of the soil", format!("{} meq/100 g", significant(cec, 3)))
    .input("of the biochar", survey.shown(&survey.material.cec, Unit::MeqPer100g))
    .input("biochar in the soil, by mass", survey.shown(&percent, Unit::Percent))
    .assume("The soil's constants hold for biochar too; moist soil, 0.3 L of water to a kilogram.");
    if survey.chemistry.get(Derived::SodiumSaturation).is_none() {
        grounds = grounds.assume("Sodium was not measured; it is taken as none.");
    }
    if survey.chemistry.get(Derived::Ece).is_none() {
        grounds = grounds.assume("The salts are not known; about 1 dS/m is taken.");
    }
    grounds
}

/// A pool whose exchange holds these shares, with water in equilibrium that
/// carries `salts` (mol of charge per litre).
fn at_rest(capacity: f64, shares: PerCation, salts: f64) -> Option<Pool> {
    // cᵢ = Eᵢ ÷ (Kᵢ xᶻ): the sum of charges falls as x rises.
    let dissolved = |ln_x: f64| -> PerCation {
        std::array::from_fn(|i| {
            let cation = Cation::ALL[i];
            let pull = (cation.log_k() * std::f64::consts::LN_10 + cation.charge() * ln_x).exp();
            shares[i] / pull
        })
    };
    let charges = |water: &PerCation| -> f64 {
        Cation::ALL.iter().zip(water).map(|(cation, c)| cation.charge() * c).sum()
    };
    let (mut low, mut high) = (-50.0_f64, 50.0_f64);
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if charges(&dissolved(middle)) > salts {
            low = middle;
        } else {
            high = middle;
        }
    }
    let water = dissolved(0.5 * (low + high));
    let sound = charges(&water).is_finite() && capacity > 0.0;
    sound.then(|| Pool::of(capacity, SOIL_WATER, &shares, &water))
}
