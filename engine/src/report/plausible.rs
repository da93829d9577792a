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
    limit(Property::BaseSaturation, Unit::Percent, 0.0, 110.0, SHARE),
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

/// Why a number can't be a result of this property; `None` when it can.
pub(super) fn impossible(property: Property, value: f64, unit: Option<Unit>) -> Option<String> {
    let label = property.label();
    let shown = significant(value, 6);
    if value < 0.0 {
        return Some(format!("{label} {shown} can't be: a result is never below zero"));
    }
    if property.unit() == Unit::MgPerKg
        && matches!(unit, Some(Unit::MgPerKg | Unit::MgPerL))
        && value > 1_000_000.0
    {
        return Some(format!("{label} {shown} can't be: a million ppm is the whole soil"));
    }
    let limit = LIMITS.iter().find(|l| l.property == property && unit == Some(l.unit))?;
    (value < limit.from || value > limit.to).then(|| {
        let symbol = limit.unit.symbol();
        let space = if symbol.is_empty() { "" } else { " " };
        format!("{label} {shown}{space}{symbol} can't be. {}", limit.advice)
    })
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
        assert!(impossible(Property::Zinc, -1.0, None).is_some());
    }
}
