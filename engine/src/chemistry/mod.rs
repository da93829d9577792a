//! The soil's chemistry, with grounds and bounds.

mod acidity;
mod exchange;
mod organic;
mod phosphorus;
mod salts;
pub mod saturation_water;
pub mod sodium;

use crate::named::named;
use crate::quantity::{Band, Figure};
use crate::question::Question;
use crate::ranges::Setting;
use crate::soil::{Property, Soil};

pub(crate) use acidity::{MEHLICH_PER_PH, MEHLICH_START, base_unsaturation, found_by_buffer};

named! { "worked-out number":
    /// What the chemistry works out; each is a figure at most once.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Derived {
        /// Exchange capacity, measured or by summation.
        Cec = "cec";
        /// Exchange capacity by summation, beside a printed one.
        CecBySummation = "cec-by-summation";
        /// Bases on the exchange, %.
        BaseSaturation = "base-saturation";
        /// Calcium on the exchange, %.
        CalciumSaturation = "calcium-saturation";
        /// Magnesium on the exchange, %.
        MagnesiumSaturation = "magnesium-saturation";
        /// Potassium on the exchange, %.
        PotassiumSaturation = "potassium-saturation";
        /// Sodium on the exchange (ESP), %.
        SodiumSaturation = "sodium-saturation";
        /// Acidity on the exchange, % (where acidity is counted).
        AciditySaturation = "acidity-saturation";
        /// Organic matter from organic carbon, %.
        OrganicMatter = "organic-matter";
        /// Nitrogen that organic matter gives off in a year, kg/ha.
        NitrogenRelease = "nitrogen-release";
        /// The phosphorus saturation ratio.
        PSaturationRatio = "p-saturation-ratio";
        /// Salts as saturated paste, dS/m.
        Ece = "ece";
    }
}

/// What the chemistry says of one sample.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chemistry {
    /// Every worked-out number.
    pub figures: Vec<Figure>,
    /// Exchange capacity, meq/100 g, measured or by summation.
    pub cec: Option<Band>,
    /// Sodium on the exchange, where the report tells.
    pub sodium: Option<sodium::Sodium>,
    /// What must be known before more can be worked out.
    pub questions: Vec<Question>,
}

impl Chemistry {
    /// A worked-out number.
    pub fn get(&self, what: Derived) -> Option<&Figure> {
        self.figures.iter().find(|f| f.name == what.name())
    }

    /// The bounds of a worked-out number.
    pub fn band(&self, what: Derived) -> Option<Band> {
        self.get(what).map(|f| f.band)
    }

    /// Organic matter, %: measured, or from organic carbon.
    pub(crate) fn organic_matter(&self, soil: &Soil) -> Option<Band> {
        let measured = soil.value(Property::OrganicMatter).map(Band::exactly);
        measured.or_else(|| self.band(Derived::OrganicMatter))
    }
}

/// Works out the chemistry of one sample.
///
/// What the report doesn't allow is left out, and asked for where an answer
/// would help.
pub fn work_out(soil: &Soil, setting: &Setting) -> Chemistry {
    let mut chemistry = Chemistry::default();
    exchange::work_out(soil, setting, &mut chemistry);
    organic::work_out(soil, setting, &mut chemistry);
    phosphorus::work_out(soil, &mut chemistry);
    salts::work_out(soil, setting, &mut chemistry);
    chemistry.sodium = sodium::work_out(soil, &chemistry, setting);
    chemistry
}
