//! What a result can't be. Wide on purpose: this catches slips of the pen and
//! of the reading, not odd soils.

use crate::quantity::{Unit, significant};
use crate::soil::Property;

/// One limit: between `from` and `to` in `unit`, and what to do otherwise.
struct Limit {
    property: Property,
    unit: Unit,
    from: f64,
    to: f64,
    advice: &'static str,
}

const fn limit(property: Property, unit: Unit, from: f64, to: f64, advice: &'static str) -> Limit {
    Limit { property, unit, from, to, advice }
}

const SHARE: &str = "A share lies between 0 and 100 %. Check the column it stands in.";

/// Source: common practice, no source.
const LIMITS: &[Limit] = &[
    limit(
        Property::Ph,
        Unit::None,
        2.5,
        11.0,
        "Soil pH runs from about 3 to 11. If it is a lime test index, name it so.",
    ),
    limit(Property::SaltPh, Unit::None, 2.0, 10.5, "Salt pH runs from about 2 to 10."),
    limit(
        Property::BufferPh,
        Unit::None,
        3.0,
        9.0,
        "Buffer pH runs from about 4 to 8. If it is a lime test index, name it so.",
    ),
    limit(Property::OrganicMatter, Unit::Percent, 0.0, 100.0, SHARE),
    limit(Property::OrganicCarbon, Unit::Percent, 0.0, 60.0, "Carbon can't be above 60 %."),
    limit(Property::TotalN, Unit::Percent, 0.0, 10.0, "Total nitrogen can't be above 10 %."),
    limit(Property::Cec, Unit::MeqPer100g, 0.0, 250.0, "Even pure peat stays below 250 meq/100 g."),
    // Where there is lime, acetate dissolves it and counts it with the bases.
    limit(Property::BaseSaturation, Unit::Percent, 0.0, 1000.0, SHARE),
    limit(Property::CalciumSaturation, Unit::Percent, 0.0, 110.0, SHARE),
    limit(Property::MagnesiumSaturation, Unit::Percent, 0.0, 110.0, SHARE),
    limit(Property::PotassiumSaturation, Unit::Percent, 0.0, 110.0, SHARE),
    limit(Property::SodiumSaturation, Unit::Percent, 0.0, 110.0, SHARE),
    limit(Property::AciditySaturation, Unit::Percent, 0.0, 110.0, SHARE),
    limit(Property::Sand, Unit::Percent, 0.0, 100.0, SHARE),
    limit(Property::Silt, Unit::Percent, 0.0, 100.0, SHARE),
    limit(Property::Clay, Unit::Percent, 0.0, 100.0, SHARE),
    limit(Property::FreeLime, Unit::Percent, 0.0, 100.0, SHARE),
    limit(
        Property::BulkDensity,
        Unit::GPerCm3,
        0.02,
        2.7,
        "Solid rock weighs 2.7 g/cm³, so no soil is heavier.",
    ),
    limit(Property::Ec, Unit::DsPerM, 0.0, 200.0, "Sea water has about 50 dS/m. Is it µS/cm?"),
];

/// No result is larger, in any unit that a laboratory prints. Our choice.
const BEYOND: f64 = 1e9;

/// Why a number can't be a result of this property; `None` when it can.
pub(crate) fn impossible(property: Property, value: f64, unit: Option<Unit>) -> Option<String> {
    let label = property.label();
    // Written out only when needed: this is asked of every cell.
    let shown = || significant(value, 6);
    if value.is_nan() || value.abs() > BEYOND {
        return Some(format!("{label} can't be read: no laboratory measures such a number"));
    }
    if value < 0.0 {
        return Some(format!("{label} {} can't be: a result is never below zero", shown()));
    }
    if property.unit() == Unit::MgPerKg
        && matches!(unit, Some(Unit::MgPerKg | Unit::MgPerL))
        && value > 1_000_000.0
    {
        return Some(format!("{label} {} can't be: a million ppm is the whole soil", shown()));
    }
    let limit = LIMITS.iter().find(|l| l.property == property && unit == Some(l.unit))?;
    (value < limit.from || value > limit.to).then(|| {
        let symbol = limit.unit.symbol();
        let space = if symbol.is_empty() { "" } else { " " };
        format!("{label} {}{space}{symbol} can't be. {}", shown(), limit.advice)
    })
}

/// What a property is seldom outside of, in the engine's unit: beyond it the unit is asked.
struct Usual(Property, f64, f64);

/// Source: from memory, the extremes of soil-test summaries: leached sands at one end, manured,
/// salty or polluted soils at the other. Calcium from 20 mg/kg, a tenth of a meq/100 g: no soil
/// that bears plants has less, while the meq/100 g of limy soils seldom reach it.
const USUAL: &[Usual] = &[
    Usual(Property::Phosphorus, 0.02, 3_000.0),
    Usual(Property::Potassium, 4.0, 6_000.0),
    Usual(Property::Calcium, 20.0, 60_000.0),
    Usual(Property::Magnesium, 3.0, 10_000.0),
    Usual(Property::Sulfur, 0.0, 10_000.0),
    Usual(Property::Boron, 0.0, 100.0),
    Usual(Property::Zinc, 0.0, 3_000.0),
    Usual(Property::Manganese, 0.0, 3_000.0),
    Usual(Property::Copper, 0.0, 3_000.0),
    Usual(Property::Iron, 0.0, 10_000.0),
    Usual(Property::NitrateN, 0.0, 2_000.0),
    Usual(Property::AmmoniumN, 0.0, 2_000.0),
    Usual(Property::OrganicMatter, 0.05, 100.0),
    Usual(Property::Cec, 0.3, 200.0),
    Usual(Property::Ec, 0.0, 60.0),
];

/// Why the unit of a result is doubted, and what it may be; `value` is in the engine's unit.
pub(crate) fn doubt(property: Property, value: f64, printed: Unit) -> Option<&'static str> {
    let by_charge = matches!(printed, Unit::MeqPer100g | Unit::MeqPer100cm3 | Unit::MmolcPerKg);
    let &Usual(_, least, most) = USUAL.iter().find(|u| u.0 == property)?;
    if value < least {
        Some(match property {
            Property::Potassium | Property::Calcium | Property::Magnesium if !by_charge => {
                "No soil holds so little. Numbers like this are usual in meq/100 g (cmol/kg); a zero often means that the test was not run."
            }
            _ => "No soil holds so little. A zero often means that the test was not run.",
        })
    } else if value > most {
        Some(if by_charge {
            "No soil holds so much. Numbers like this are usual in ppm (mg/kg)."
        } else if printed == Unit::Percent || printed == Unit::GPerKg {
            "No extract takes out so much. Is it a total, or in ppm (mg/kg)?"
        } else if property == Property::Ec {
            "No soil is so salty. Numbers like this are usual in µS/cm."
        } else {
            "No soil holds so much. Look at the decimal mark and at the column it stands in."
        })
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_can_be_and_beyond_them_cannot() {
        for l in LIMITS {
            assert_eq!(impossible(l.property, l.from, Some(l.unit)), None);
            assert_eq!(impossible(l.property, l.to, Some(l.unit)), None);
            assert!(impossible(l.property, l.to + 0.01, Some(l.unit)).is_some());
            assert!(impossible(l.property, l.from - 0.01, Some(l.unit)).is_some());
        }
        let why = impossible(Property::Ph, 69.0, Some(Unit::None)).unwrap();
        assert!(why.starts_with("pH 69 can't be"), "{why}");
        for wrong in [-1.0, f64::NAN, f64::INFINITY] {
            assert!(impossible(Property::Zinc, wrong, None).is_some());
        }
    }

    #[test]
    fn a_number_out_of_the_usual_has_its_unit_doubted() {
        for &Usual(property, least, most) in USUAL {
            let unit = property.unit();
            assert_eq!(doubt(property, least, unit).or(doubt(property, most, unit)), None);
            assert!(doubt(property, most * 1.01, unit).is_some());
            assert_eq!(doubt(property, least * 0.9, unit).is_some(), least > 0.0);
        }
        let low = |unit| doubt(Property::Potassium, 0.3, unit).unwrap();
        assert!(low(Unit::MgPerKg).contains("meq/100 g"));
        assert!(!low(Unit::MeqPer100g).contains("meq/100 g"));
        assert!(doubt(Property::Potassium, 46_000.0, Unit::MeqPer100g).unwrap().contains("ppm"));
    }
}
