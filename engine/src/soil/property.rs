//! The properties a soil test reports.

use crate::named::named;
use crate::quantity::Unit;

named! { "property", label:
    /// A property of a soil, by its trade name.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
    pub enum Property {
        /// pH in water.
        Ph = "ph", "pH";
        /// pH in a salt solution (0.01 M CaCl2 or KCl).
        SaltPh = "salt-ph", "salt pH";
        /// pH of the soil in a lime buffer.
        BufferPh = "buffer-ph", "buffer pH";
        ExchangeableAcidity = "exchangeable-acidity", "exchangeable acidity";
        OrganicMatter = "organic-matter", "organic matter";
        OrganicCarbon = "organic-carbon", "organic carbon";
        TotalN = "total-n", "total nitrogen";
        /// Nitrate, as nitrogen.
        NitrateN = "nitrate-n", "nitrate-N";
        /// Ammonium, as nitrogen.
        AmmoniumN = "ammonium-n", "ammonium-N";
        /// Extractable phosphorus, as the element.
        Phosphorus = "phosphorus", "phosphorus";
        /// Extractable potassium, as the element.
        Potassium = "potassium", "potassium";
        /// Extractable calcium.
        Calcium = "calcium", "calcium";
        /// Extractable magnesium.
        Magnesium = "magnesium", "magnesium";
        /// Extractable sodium.
        Sodium = "sodium", "sodium";
        /// Extractable sulfur, sulfate counted as sulfur.
        Sulfur = "sulfur", "sulfur";
        Boron = "boron", "boron";
        Zinc = "zinc", "zinc";
        Manganese = "manganese", "manganese";
        Copper = "copper", "copper";
        Iron = "iron", "iron";
        /// Aluminium.
        Aluminum = "aluminum", "aluminum";
        Molybdenum = "molybdenum", "molybdenum";
        Chloride = "chloride", "chloride";
        /// Cation exchange capacity as the laboratory gives it.
        Cec = "cec", "exchange capacity (CEC)";
        /// Base saturation as the laboratory gives it.
        BaseSaturation = "base-saturation", "base saturation";
        /// Calcium saturation as the laboratory gives it.
        CalciumSaturation = "calcium-saturation", "calcium saturation";
        /// Magnesium saturation as the laboratory gives it.
        MagnesiumSaturation = "magnesium-saturation", "magnesium saturation";
        /// Potassium saturation as the laboratory gives it.
        PotassiumSaturation = "potassium-saturation", "potassium saturation";
        /// Sodium saturation (exchangeable sodium percentage) as the laboratory gives it.
        SodiumSaturation = "sodium-saturation", "exchangeable sodium";
        /// Acidity saturation as the laboratory gives it.
        AciditySaturation = "acidity-saturation", "acidity saturation";
        /// Electrical conductivity (soluble salts).
        Ec = "ec", "salts (EC)";
        Sar = "sar", "sodium adsorption ratio";
        /// Free lime, as calcium carbonate.
        FreeLime = "free-lime", "free lime";
        Sand = "sand", "sand";
        Silt = "silt", "silt";
        Clay = "clay", "clay";
        /// Density of the dry soil.
        BulkDensity = "bulk-density", "bulk density";
        /// Estimated nitrogen release.
        NitrogenRelease = "nitrogen-release", "nitrogen release";
        /// Phosphorus buffering index: how strongly a soil binds phosphorus.
        Pbi = "pbi", "phosphorus buffering index (PBI)";
        /// Phosphorus left in solution from 60 mg/L, as Brazil measures it, mg/L.
        RemainingP = "remaining-p", "P-rem";
        Lead = "lead", "lead";
        Arsenic = "arsenic", "arsenic";
        Cadmium = "cadmium", "cadmium";
    }
}

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
            Property::Ph
            | Property::SaltPh
            | Property::BufferPh
            | Property::Sar
            | Property::Pbi => Unit::None,
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
