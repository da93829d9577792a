//! The units that soil reports and this engine use.

use serde::{Deserialize, Serialize};

/// A unit of a soil-test value or of a worked-out figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Unit {
    /// No unit: pH, ratios.
    #[serde(rename = "")]
    None,
    /// mg/kg of dry soil, the same as ppm by mass.
    #[serde(rename = "mg/kg")]
    MgPerKg,
    /// mg per litre of soil, the same as mg/dm³: a volumetric result.
    #[serde(rename = "mg/L")]
    MgPerL,
    /// mg per 100 g of soil.
    #[serde(rename = "mg/100 g")]
    MgPer100g,
    /// Pounds per acre.
    #[serde(rename = "lb/acre")]
    LbPerAcre,
    /// Kilograms per hectare.
    #[serde(rename = "kg/ha")]
    KgPerHa,
    /// Milliequivalents per 100 g, the same as cmol(c)/kg.
    #[serde(rename = "meq/100 g")]
    MeqPer100g,
    /// mmol(c)/kg.
    #[serde(rename = "mmolc/kg")]
    MmolcPerKg,
    /// cmol(c) per litre of soil, the same as meq/100 cm³.
    #[serde(rename = "meq/100 cm3")]
    MeqPer100cm3,
    /// Per cent.
    #[serde(rename = "%")]
    Percent,
    /// g/kg.
    #[serde(rename = "g/kg")]
    GPerKg,
    /// dS/m, the same as mS/cm and mmho/cm.
    #[serde(rename = "dS/m")]
    DsPerM,
    /// µS/cm.
    #[serde(rename = "uS/cm")]
    UsPerCm,
    /// g/cm³.
    #[serde(rename = "g/cm3")]
    GPerCm3,
    /// A laboratory's own index number.
    #[serde(rename = "index")]
    Index,
    /// Litres.
    #[serde(rename = "L")]
    Litre,
    /// Kilograms.
    #[serde(rename = "kg")]
    Kg,
    /// Grams.
    #[serde(rename = "g")]
    Gram,
    /// Tonnes per hectare.
    #[serde(rename = "t/ha")]
    TonnePerHa,
    /// Square metres.
    #[serde(rename = "m2")]
    SquareMetre,
    /// Centimetres.
    #[serde(rename = "cm")]
    Cm,
    /// Millimetres.
    #[serde(rename = "mm")]
    Mm,
    /// Days.
    #[serde(rename = "days")]
    Days,
    /// A count of bags.
    #[serde(rename = "bags")]
    Bags,
    /// Degrees Celsius.
    #[serde(rename = "°C")]
    Celsius,
}

impl Unit {
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
        }
    }
}
