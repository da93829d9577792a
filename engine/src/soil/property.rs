//! The properties a soil test reports.

use crate::named::by_name;
use crate::quantity::Unit;

/// A property of a soil, by its trade name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Property {
    /// pH in water.
    Ph,
    /// pH in a salt solution (0.01 M CaCl2 or KCl).
    SaltPh,
    /// pH of the soil in a lime buffer.
    BufferPh,
    /// Exchangeable acidity.
    ExchangeableAcidity,
    /// Organic matter.
    OrganicMatter,
    /// Organic carbon.
    OrganicCarbon,
    /// Total nitrogen.
    TotalN,
    /// Nitrate, as nitrogen.
    NitrateN,
    /// Ammonium, as nitrogen.
    AmmoniumN,
    /// Extractable phosphorus, as the element.
    Phosphorus,
    /// Extractable potassium, as the element.
    Potassium,
    /// Extractable calcium.
    Calcium,
    /// Extractable magnesium.
    Magnesium,
    /// Extractable sodium.
    Sodium,
    /// Extractable sulfur, sulfate counted as sulfur.
    Sulfur,
    /// Boron.
    Boron,
    /// Zinc.
    Zinc,
    /// Manganese.
    Manganese,
    /// Copper.
    Copper,
    /// Iron.
    Iron,
    /// Aluminium.
    Aluminum,
    /// Molybdenum.
    Molybdenum,
    /// Chloride.
    Chloride,
    /// Cation exchange capacity as the laboratory gives it.
    Cec,
    /// Base saturation as the laboratory gives it.
    BaseSaturation,
    /// Calcium saturation as the laboratory gives it.
    CalciumSaturation,
    /// Magnesium saturation as the laboratory gives it.
    MagnesiumSaturation,
    /// Potassium saturation as the laboratory gives it.
    PotassiumSaturation,
    /// Sodium saturation (exchangeable sodium percentage) as the laboratory gives it.
    SodiumSaturation,
    /// Acidity saturation as the laboratory gives it.
    AciditySaturation,
    /// Electrical conductivity (soluble salts).
    Ec,
    /// Sodium adsorption ratio.
    Sar,
    /// Free lime, as calcium carbonate.
    FreeLime,
    /// Sand.
    Sand,
    /// Silt.
    Silt,
    /// Clay.
    Clay,
    /// Density of the dry soil.
    BulkDensity,
    /// Estimated nitrogen release.
    NitrogenRelease,
    /// Lead.
    Lead,
    /// Arsenic.
    Arsenic,
    /// Cadmium.
    Cadmium,
}

by_name!(Property, "property");

/// `calcium`, `calcium and zinc`, `boron, calcium and zinc`.
pub(crate) fn listed(properties: &[Property]) -> String {
    let names: Vec<&str> = properties.iter().map(|p| p.label()).collect();
    match names.as_slice() {
        [] => String::new(),
        [one] => (*one).to_string(),
        [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
    }
}

impl Property {
    /// Every property, in the order a report is usually read.
    pub const ALL: [Property; 41] = [
        Property::Ph,
        Property::SaltPh,
        Property::BufferPh,
        Property::ExchangeableAcidity,
        Property::OrganicMatter,
        Property::OrganicCarbon,
        Property::TotalN,
        Property::NitrateN,
        Property::AmmoniumN,
        Property::Phosphorus,
        Property::Potassium,
        Property::Calcium,
        Property::Magnesium,
        Property::Sodium,
        Property::Sulfur,
        Property::Boron,
        Property::Zinc,
        Property::Manganese,
        Property::Copper,
        Property::Iron,
        Property::Aluminum,
        Property::Molybdenum,
        Property::Chloride,
        Property::Cec,
        Property::BaseSaturation,
        Property::CalciumSaturation,
        Property::MagnesiumSaturation,
        Property::PotassiumSaturation,
        Property::SodiumSaturation,
        Property::AciditySaturation,
        Property::Ec,
        Property::Sar,
        Property::FreeLime,
        Property::Sand,
        Property::Silt,
        Property::Clay,
        Property::BulkDensity,
        Property::NitrogenRelease,
        Property::Lead,
        Property::Arsenic,
        Property::Cadmium,
    ];

    /// The kebab-case trade name, as it stands in JSON.
    pub fn name(self) -> &'static str {
        match self {
            Property::Ph => "ph",
            Property::SaltPh => "salt-ph",
            Property::BufferPh => "buffer-ph",
            Property::ExchangeableAcidity => "exchangeable-acidity",
            Property::OrganicMatter => "organic-matter",
            Property::OrganicCarbon => "organic-carbon",
            Property::TotalN => "total-n",
            Property::NitrateN => "nitrate-n",
            Property::AmmoniumN => "ammonium-n",
            Property::Phosphorus => "phosphorus",
            Property::Potassium => "potassium",
            Property::Calcium => "calcium",
            Property::Magnesium => "magnesium",
            Property::Sodium => "sodium",
            Property::Sulfur => "sulfur",
            Property::Boron => "boron",
            Property::Zinc => "zinc",
            Property::Manganese => "manganese",
            Property::Copper => "copper",
            Property::Iron => "iron",
            Property::Aluminum => "aluminum",
            Property::Molybdenum => "molybdenum",
            Property::Chloride => "chloride",
            Property::Cec => "cec",
            Property::BaseSaturation => "base-saturation",
            Property::CalciumSaturation => "calcium-saturation",
            Property::MagnesiumSaturation => "magnesium-saturation",
            Property::PotassiumSaturation => "potassium-saturation",
            Property::SodiumSaturation => "sodium-saturation",
            Property::AciditySaturation => "acidity-saturation",
            Property::Ec => "ec",
            Property::Sar => "sar",
            Property::FreeLime => "free-lime",
            Property::Sand => "sand",
            Property::Silt => "silt",
            Property::Clay => "clay",
            Property::BulkDensity => "bulk-density",
            Property::NitrogenRelease => "nitrogen-release",
            Property::Lead => "lead",
            Property::Arsenic => "arsenic",
            Property::Cadmium => "cadmium",
        }
    }

    /// What a reader calls it.
    pub fn label(self) -> &'static str {
        match self {
            Property::Ph => "pH",
            Property::SaltPh => "salt pH",
            Property::BufferPh => "buffer pH",
            Property::ExchangeableAcidity => "exchangeable acidity",
            Property::OrganicMatter => "organic matter",
            Property::OrganicCarbon => "organic carbon",
            Property::TotalN => "total nitrogen",
            Property::NitrateN => "nitrate-N",
            Property::AmmoniumN => "ammonium-N",
            Property::Phosphorus => "phosphorus",
            Property::Potassium => "potassium",
            Property::Calcium => "calcium",
            Property::Magnesium => "magnesium",
            Property::Sodium => "sodium",
            Property::Sulfur => "sulfur",
            Property::Boron => "boron",
            Property::Zinc => "zinc",
            Property::Manganese => "manganese",
            Property::Copper => "copper",
            Property::Iron => "iron",
            Property::Aluminum => "aluminum",
            Property::Molybdenum => "molybdenum",
            Property::Chloride => "chloride",
            Property::Cec => "exchange capacity (CEC)",
            Property::BaseSaturation => "base saturation",
            Property::CalciumSaturation => "calcium saturation",
            Property::MagnesiumSaturation => "magnesium saturation",
            Property::PotassiumSaturation => "potassium saturation",
            Property::SodiumSaturation => "exchangeable sodium",
            Property::AciditySaturation => "acidity saturation",
            Property::Ec => "salts (EC)",
            Property::Sar => "sodium adsorption ratio",
            Property::FreeLime => "free lime",
            Property::Sand => "sand",
            Property::Silt => "silt",
            Property::Clay => "clay",
            Property::BulkDensity => "bulk density",
            Property::NitrogenRelease => "nitrogen release",
            Property::Lead => "lead",
            Property::Arsenic => "arsenic",
            Property::Cadmium => "cadmium",
        }
    }

    /// Milligrams that carry one millimole of charge in soil exchange, for
    /// the cations that are reported by charge.
    /// Source: arithmetic from IUPAC atomic masses.
    pub fn mg_per_mmolc(self) -> Option<f64> {
        Some(match self {
            Property::Calcium => 40.078 / 2.0,
            Property::Magnesium => 24.305 / 2.0,
            Property::Potassium => 39.098,
            Property::Sodium => 22.990,
            Property::Aluminum => 26.982 / 3.0,
            Property::AmmoniumN => 14.007,
            _ => return None,
        })
    }

    /// Whether the value depends on an extractant, so that it can't be judged
    /// before the extractant is known.
    pub fn is_extracted(self) -> bool {
        matches!(
            self,
            Property::Phosphorus
                | Property::Potassium
                | Property::Calcium
                | Property::Magnesium
                | Property::Sodium
                | Property::Sulfur
                | Property::Boron
                | Property::Zinc
                | Property::Manganese
                | Property::Copper
                | Property::Iron
                | Property::Aluminum
        )
    }

    /// A share of the exchange capacity.
    pub(crate) fn is_share(self) -> bool {
        matches!(
            self,
            Property::BaseSaturation
                | Property::CalciumSaturation
                | Property::MagnesiumSaturation
                | Property::PotassiumSaturation
                | Property::SodiumSaturation
                | Property::AciditySaturation
        )
    }

    /// Whether a report names one unit for this and all other nutrients and metals.
    pub(crate) fn shares_unit(self) -> bool {
        self.unit() == Unit::MgPerKg
    }

    /// The unit the engine keeps this property in. Extractable nutrients that
    /// a laboratory reports by volume stay in mg/L instead.
    pub fn unit(self) -> Unit {
        match self {
            Property::Ph | Property::SaltPh | Property::BufferPh | Property::Sar => Unit::None,
            Property::ExchangeableAcidity | Property::Cec => Unit::MeqPer100g,
            Property::OrganicMatter
            | Property::OrganicCarbon
            | Property::TotalN
            | Property::BaseSaturation
            | Property::CalciumSaturation
            | Property::MagnesiumSaturation
            | Property::PotassiumSaturation
            | Property::SodiumSaturation
            | Property::AciditySaturation
            | Property::FreeLime
            | Property::Sand
            | Property::Silt
            | Property::Clay => Unit::Percent,
            Property::Ec => Unit::DsPerM,
            Property::BulkDensity => Unit::GPerCm3,
            Property::NitrogenRelease => Unit::LbPerAcre,
            _ => Unit::MgPerKg,
        }
    }
}
