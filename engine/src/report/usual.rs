//! How likely a number is for a property: what tells a column of potassium from one of pH when
//! their names stand apart. No result is judged by it.

use super::label::Quantity;
use crate::quantity::Unit;
use crate::soil::Property;

/// Nine soils in ten lie between the two ends, in the unit.
struct Usual {
    property: Property,
    unit: Unit,
    from: f64,
    to: f64,
}

const fn usual(property: Property, unit: Unit, from: f64, to: f64) -> Usual {
    Usual { property, unit, from, to }
}

/// Source: from memory, the middle nine tenths of soil-test summaries.
const USUAL: &[Usual] = &[
    usual(Property::Ph, Unit::None, 4.8, 8.2),
    usual(Property::SaltPh, Unit::None, 4.0, 7.6),
    usual(Property::BufferPh, Unit::None, 5.7, 7.6),
    usual(Property::ExchangeableAcidity, Unit::MeqPer100g, 0.1, 8.0),
    usual(Property::OrganicMatter, Unit::Percent, 1.0, 12.0),
    usual(Property::OrganicCarbon, Unit::Percent, 0.5, 6.0),
    usual(Property::TotalN, Unit::Percent, 0.05, 0.6),
    usual(Property::NitrateN, Unit::MgPerKg, 2.0, 80.0),
    usual(Property::AmmoniumN, Unit::MgPerKg, 1.0, 30.0),
    usual(Property::Phosphorus, Unit::MgPerKg, 4.0, 250.0),
    usual(Property::Potassium, Unit::MgPerKg, 40.0, 600.0),
    usual(Property::Potassium, Unit::MeqPer100g, 0.1, 1.6),
    usual(Property::Calcium, Unit::MgPerKg, 200.0, 6_000.0),
    usual(Property::Calcium, Unit::MeqPer100g, 1.0, 30.0),
    usual(Property::Magnesium, Unit::MgPerKg, 30.0, 800.0),
    usual(Property::Magnesium, Unit::MeqPer100g, 0.3, 7.0),
    usual(Property::Sodium, Unit::MgPerKg, 5.0, 150.0),
    usual(Property::Sodium, Unit::MeqPer100g, 0.02, 0.8),
    usual(Property::Sulfur, Unit::MgPerKg, 4.0, 60.0),
    usual(Property::Boron, Unit::MgPerKg, 0.15, 3.0),
    usual(Property::Zinc, Unit::MgPerKg, 0.4, 30.0),
    usual(Property::Manganese, Unit::MgPerKg, 3.0, 200.0),
    usual(Property::Copper, Unit::MgPerKg, 0.3, 15.0),
    usual(Property::Iron, Unit::MgPerKg, 10.0, 500.0),
    usual(Property::Aluminum, Unit::MgPerKg, 20.0, 1_500.0),
    usual(Property::Aluminum, Unit::MeqPer100g, 0.03, 3.0),
    usual(Property::Molybdenum, Unit::MgPerKg, 0.05, 1.0),
    // "MO" may be organic matter as well.
    usual(Property::Molybdenum, Unit::Percent, 1.0, 12.0),
    usual(Property::Chloride, Unit::MgPerKg, 5.0, 100.0),
    usual(Property::Cec, Unit::MeqPer100g, 4.0, 40.0),
    usual(Property::BaseSaturation, Unit::Percent, 30.0, 100.0),
    usual(Property::CalciumSaturation, Unit::Percent, 30.0, 85.0),
    usual(Property::MagnesiumSaturation, Unit::Percent, 5.0, 30.0),
    usual(Property::PotassiumSaturation, Unit::Percent, 1.0, 8.0),
    usual(Property::SodiumSaturation, Unit::Percent, 0.2, 5.0),
    usual(Property::AciditySaturation, Unit::Percent, 1.0, 50.0),
    usual(Property::Ec, Unit::DsPerM, 0.05, 3.0),
    usual(Property::Ec, Unit::UsPerCm, 50.0, 3_000.0),
    usual(Property::FreeLime, Unit::Percent, 0.2, 30.0),
    usual(Property::Sand, Unit::Percent, 12.0, 85.0),
    usual(Property::Silt, Unit::Percent, 5.0, 65.0),
    usual(Property::Clay, Unit::Percent, 5.0, 55.0),
    usual(Property::OrganicMatter, Unit::GPerKg, 10.0, 120.0),
    usual(Property::OrganicCarbon, Unit::GPerKg, 5.0, 60.0),
    usual(Property::OrganicCarbon, Unit::MgPerKg, 5_000.0, 60_000.0),
    usual(Property::TotalN, Unit::MgPerKg, 500.0, 6_000.0),
    usual(Property::TotalN, Unit::GPerKg, 0.5, 6.0),
    usual(Property::Sand, Unit::GPerKg, 120.0, 850.0),
    usual(Property::Silt, Unit::GPerKg, 50.0, 650.0),
    usual(Property::Clay, Unit::GPerKg, 50.0, 550.0),
    usual(Property::BulkDensity, Unit::GPerCm3, 0.7, 1.6),
    usual(Property::Lead, Unit::MgPerKg, 8.0, 300.0),
    usual(Property::Arsenic, Unit::MgPerKg, 2.0, 25.0),
    usual(Property::Cadmium, Unit::MgPerKg, 0.1, 2.5),
];

/// What a number comes to of which nothing is known: a density over the logarithms of six powers
/// of ten.
pub(super) const UNKNOWN: f64 = -2.6;

/// The logarithm of how likely a number is under a heading.
pub(super) fn likelihood(quantity: &Quantity, number: f64) -> f64 {
    let own = quantity.property;
    if quantity.unit.is_some_and(|u| u.unit == Unit::Index) {
        // Classes of nutrients are few.
        return if number < 10.0 && number.fract() == 0.0 { UNKNOWN / 2.0 } else { UNKNOWN };
    }
    let said = quantity.unit.map(|u| u.unit);
    let fitting = USUAL.iter().filter(|u| u.property == own);
    let same = said.is_some_and(|unit| fitting.clone().any(|u| u.unit == unit));
    let ways: Vec<f64> = fitting
        .filter(|usual| !same || said == Some(usual.unit))
        .filter_map(|usual| {
            let times = match said {
                Some(unit) => times(unit, usual.unit)?,
                None => 1.0,
            };
            Some(density(usual.from * times, usual.to * times, number))
        })
        .collect();
    // A unit that nobody foresaw tells nothing.
    let most = ways.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if ways.is_empty() { UNKNOWN } else { most.max(-12.0) }
}

/// How many times farther from the middle than the ends of nine soils in ten, in the logarithm, a
/// number lies that is looked at twice. Our choice: none of some 7,000 results of laboratories
/// that we have lies so far out.
const FAR: f64 = 2.6;

/// Whether hardly any soil has such a number. Nothing at all is usual of some.
pub(super) fn is_far_out(property: Property, unit: Option<Unit>, number: f64) -> bool {
    let Some(unit) = unit else { return false };
    let ends = |usual: &Usual| {
        let times = times(unit, usual.unit)?;
        Some((usual.from * times, usual.to * times))
    };
    let own = USUAL.iter().filter(|u| u.property == property);
    let ways: Vec<(f64, f64)> = own.filter_map(ends).collect();
    let far = |&(from, to): &(f64, f64)| {
        let (low, high) = (from.ln(), to.ln());
        let half = (high - low) / 2.0;
        let off = number.max(from / 20.0).ln() - f64::midpoint(low, high);
        // The least ends of these lie at nothing.
        let few = matches!(
            property,
            Property::ExchangeableAcidity
                | Property::AciditySaturation
                | Property::Aluminum
                | Property::FreeLime
                | Property::Lead
                | Property::Arsenic
                | Property::Cadmium
                | Property::BaseSaturation
        );
        off > FAR * half || !few && off < -FAR * half
    };
    !ways.is_empty() && ways.iter().all(far)
}

/// Student's distribution over the logarithm: its wide ends hold odd soils.
fn density(from: f64, to: f64, number: f64) -> f64 {
    let (low, high) = (from.ln(), to.ln());
    let width = (high - low) / 3.3;
    let z = (number.max(from / 20.0).ln() - f64::midpoint(low, high)) / width;
    -2.5 * (1.0 + z * z / 4.0).ln() - width.ln() - 1.0
}

/// How many of one unit about make one of another; `None` where they measure other things.
fn times(to: Unit, from: Unit) -> Option<f64> {
    if to == from {
        return Some(1.0);
    }
    Some(match (from, to) {
        (Unit::MgPerKg, Unit::MgPerL) => 1.0,
        (Unit::MgPerKg, Unit::LbPerAcre | Unit::KgPerHa) => 2.0,
        (Unit::MgPerKg, Unit::MgPer100g) => 0.1,
        (Unit::MgPerKg, Unit::GPerKg) => 0.001,
        (Unit::MeqPer100g, Unit::MeqPer100cm3) => 1.0,
        (Unit::MeqPer100g, Unit::MmolcPerKg) => 10.0,
        (Unit::Percent, Unit::GPerKg | Unit::GPerL) => 10.0,
        _ => return None,
    })
}
