//! The units that soil reports and this engine use.

use crate::named::by_name;
/// A unit of a soil-test value or of a worked-out figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// No unit: pH, ratios.
    None,
    /// mg/kg of dry soil, the same as ppm by mass.
    MgPerKg,
    /// mg per litre of soil, the same as mg/dm³: a volumetric result.
    MgPerL,
    /// mg per 100 g of soil.
    MgPer100g,
    /// Pounds per acre.
    LbPerAcre,
    /// Kilograms per hectare.
    KgPerHa,
    /// Milliequivalents per 100 g, the same as cmol(c)/kg.
    MeqPer100g,
    /// mmol(c)/kg.
    MmolcPerKg,
    /// cmol(c) per litre of soil, the same as meq/100 cm³.
    MeqPer100cm3,
    /// Per cent.
    Percent,
    /// g/kg.
    GPerKg,
    /// g per litre of soil, the same as g/dm³: a volumetric result.
    GPerL,
    /// dS/m, the same as mS/cm and mmho/cm.
    DsPerM,
    /// µS/cm.
    UsPerCm,
    /// g/cm³.
    GPerCm3,
    /// A laboratory's own index number.
    Index,
    /// Litres.
    Litre,
    /// Kilograms.
    Kg,
    /// Grams.
    Gram,
    /// Tonnes per hectare.
    TonnePerHa,
    /// Square metres.
    SquareMetre,
    /// Centimetres.
    Cm,
    /// Millimetres.
    Mm,
    /// Days.
    Days,
    /// A count of bags.
    Bags,
    /// Degrees Celsius.
    Celsius,
    /// Metres.
    Metre,
    /// Money, whichever the person pays in.
    Money,
}

by_name!(Unit, "unit");

impl Unit {
    /// Every unit.
    pub const ALL: [Unit; 28] = [
        Unit::None,
        Unit::MgPerKg,
        Unit::MgPerL,
        Unit::MgPer100g,
        Unit::LbPerAcre,
        Unit::KgPerHa,
        Unit::MeqPer100g,
        Unit::MmolcPerKg,
        Unit::MeqPer100cm3,
        Unit::Percent,
        Unit::GPerKg,
        Unit::GPerL,
        Unit::DsPerM,
        Unit::UsPerCm,
        Unit::GPerCm3,
        Unit::Index,
        Unit::Litre,
        Unit::Kg,
        Unit::Gram,
        Unit::TonnePerHa,
        Unit::SquareMetre,
        Unit::Cm,
        Unit::Mm,
        Unit::Days,
        Unit::Bags,
        Unit::Celsius,
        Unit::Metre,
        Unit::Money,
    ];

    /// Its name in JSON.
    pub fn name(self) -> &'static str {
        match self {
            Unit::None => "",
            Unit::MgPerKg => "mg/kg",
            Unit::MgPerL => "mg/L",
            Unit::MgPer100g => "mg/100 g",
            Unit::LbPerAcre => "lb/acre",
            Unit::KgPerHa => "kg/ha",
            Unit::MeqPer100g => "meq/100 g",
            Unit::MmolcPerKg => "mmolc/kg",
            Unit::MeqPer100cm3 => "meq/100 cm3",
            Unit::Percent => "%",
            Unit::GPerKg => "g/kg",
            Unit::GPerL => "g/L",
            Unit::DsPerM => "dS/m",
            Unit::UsPerCm => "uS/cm",
            Unit::GPerCm3 => "g/cm3",
            Unit::Index => "index",
            Unit::Litre => "L",
            Unit::Kg => "kg",
            Unit::Gram => "g",
            Unit::TonnePerHa => "t/ha",
            Unit::SquareMetre => "m2",
            Unit::Cm => "cm",
            Unit::Mm => "mm",
            Unit::Days => "days",
            Unit::Bags => "bags",
            Unit::Celsius => "°C",
            Unit::Metre => "m",
            Unit::Money => "money",
        }
    }

    /// How the unit is written beside a number.
    pub fn symbol(self) -> &'static str {
        match self {
            Unit::None => "",
            Unit::MgPerKg => "mg/kg",
            Unit::MgPerL => "mg/L",
            Unit::MgPer100g => "mg/100 g",
            Unit::LbPerAcre => "lb/acre",
            Unit::KgPerHa => "kg/ha",
            Unit::MeqPer100g => "meq/100 g",
            Unit::MmolcPerKg => "mmol(c)/kg",
            Unit::MeqPer100cm3 => "meq/100 cm³",
            Unit::Percent => "%",
            Unit::GPerKg => "g/kg",
            Unit::GPerL => "g/dm³",
            Unit::DsPerM => "dS/m",
            Unit::UsPerCm => "µS/cm",
            Unit::GPerCm3 => "g/cm³",
            Unit::Index => "index",
            Unit::Litre => "L",
            Unit::Kg => "kg",
            Unit::Gram => "g",
            Unit::TonnePerHa => "t/ha",
            Unit::SquareMetre => "m²",
            Unit::Cm => "cm",
            Unit::Mm => "mm",
            Unit::Days => "days",
            Unit::Bags => "bags",
            Unit::Celsius => "°C",
            Unit::Metre => "m",
            Unit::Money => "",
        }
    }
}
