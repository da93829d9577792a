//! The parameters of what biochar does in the soil, with their bounds.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::named::named;

named! { "parameter of the effect model":
    /// A parameter of what biochar does.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum EffectParameter {
        /// Share of the liming value in the first year.
        LimeWorks = "lime-works";
        /// Mmol(c)/kg of biochar for one pH.
        CharBuffering = "char-buffering";
        /// PH, where free lime or a pH above 7.8 holds it.
        LimyRise = "limy-rise";
        /// Sites freed for each proton the biochar takes up.
        FreedSites = "freed-sites";
        /// Change of the biochar's capacity for one pH, as a share of that at pH 7.
        CharSitesByPh = "char-sites-by-ph";
        /// % of the capacity there was, from 0.5 % by mass on.
        CapacityOtherwise = "capacity-otherwise";
        /// Rate of an exponential for each % by mass.
        NitrogenBound = "nitrogen-bound";
        /// % more mineral nitrogen.
        NitrogenFreed = "nitrogen-freed";
        /// Days until half of it is free again.
        NitrogenFades = "nitrogen-fades";
        /// Share of a year's release in the first month.
        OwnFirstMonth = "own-first-month";
        /// Share of a year's release in the first month.
        SaltsFirstMonth = "salts-first-month";
        /// Share of a year's release in the first month.
        LimeFirstMonth = "lime-first-month";
        /// Share of a year's release in the first month.
        SodiumFirstMonth = "sodium-first-month";
        /// % of the total in a year.
        PhosphorusAvailable = "phosphorus-available";
        /// % of the total in a year, pH 5.0 and below.
        ManurePhosphorusAcid = "manure-phosphorus-acid";
        /// % of the total in a year, pH 7.0 and above.
        ManurePhosphorusLimy = "manure-phosphorus-limy";
        /// % of the total in a year, pH 5.0 and below.
        BonePhosphorusAcid = "bone-phosphorus-acid";
        /// % of the total in a year, pH 7.0 and above.
        BonePhosphorusLimy = "bone-phosphorus-limy";
        /// % of the total in a year.
        PotassiumAvailable = "potassium-available";
        /// % of the total in a year, at the least.
        CalciumAvailable = "calcium-available";
        /// % of the total in a year, at the least.
        MagnesiumAvailable = "magnesium-available";
        /// % of the total in a year.
        SulfurAvailable = "sulfur-available";
        /// % of the total in a year.
        SodiumAvailable = "sodium-available";
        /// % of what is there.
        PhosphorusHeld = "phosphorus-held";
        /// % of what is there.
        PotassiumHeld = "potassium-held";
        /// % of what is there.
        CalciumHeld = "calcium-held";
        /// % of what is there.
        MagnesiumHeld = "magnesium-held";
        /// % of what is there.
        SulfurHeld = "sulfur-held";
        /// Share of the charge's nitrogen that an extract shows.
        NitrogenInExtract = "nitrogen-in-extract";
        /// Days until all but a third of the charge's ammonium is nitrate.
        AmmoniumTurns = "ammonium-turns";
        /// Share of what the charge brings that is free in the first month.
        ChargeFirstMonth = "charge-first-month";
    }
}

/// One parameter.
#[derive(Clone, Debug, PartialEq)]
pub struct EffectRow {
    /// Which.
    pub parameter: EffectParameter,
    /// Low, likely, high, in the unit that the row names.
    pub band: [f64; 3],
    /// The publications.
    pub cited: Vec<Cited>,
    /// The trials it was fitted on, or `nothing`.
    pub fitted: String,
}

impl Fact for EffectRow {
    const COLUMNS: &'static [&'static str] = &["id", "band", "unit", "sources", "fitted", "note"];

    fn read(row: Row<'_>) -> Result<EffectRow, Wrong> {
        let fitted = row.cell("fitted");
        if fitted.is_empty() {
            return Err(row.wrong("say which trials it was fitted on, or “nothing”"));
        }
        if row.cell("unit").is_empty() {
            return Err(row.wrong("say what the band counts under “unit”"));
        }
        Ok(EffectRow {
            parameter: row.kind("id")?,
            band: row.band("band")?,
            cited: row.cited()?,
            fitted: fitted.into(),
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }
}

#[cfg(test)]
mod tests {
    use super::super::fact::read_one;
    use super::*;

    #[test]
    fn a_parameter_says_what_it_was_fitted_on() {
        let row = |band, fitted| {
            read_one::<EffectRow>(&format!("limy-rise,{band},pH,our-choice:unsourced,{fitted},"))
                .map(|row| row.band)
        };
        assert_eq!(row("-0.3 | 0 | 0.2", "nothing"), Ok([-0.3, 0.0, 0.2]));
        assert!(row("-0.3 | 0 | 0.2", "").is_err_and(|why| why.contains("which trials")));
        assert!(row("0.3 | 0 | 0.2", "nothing").is_err());
    }
}
