//! What biochar is charged with, and what that holds.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::named::named;

named! { "thing to charge with":
    /// What can charge biochar.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum ChargeSource {
        /// Finished compost.
        Compost = "compost";
        /// Worm castings.
        Vermicompost = "vermicompost";
        /// Manure, aged or heaped but never composted hot.
        AgedManure = "aged-manure";
        /// Compost tea.
        CompostTea = "compost-tea";
        /// Liquid from nettles or comfrey left to rot in water.
        PlantLiquid = "plant-liquid";
        /// Fish hydrolysate or emulsion.
        FishHydrolysate = "fish-hydrolysate";
        /// Urine, diluted.
        Urine = "urine";
        /// Ammonium sulfate.
        AmmoniumSulfate = "ammonium-sulfate";
        /// Calcium ammonium nitrate.
        CalciumAmmoniumNitrate = "calcium-ammonium-nitrate";
        /// Blood meal.
        BloodMeal = "blood-meal";
        /// Another soluble nitrogen fertiliser that brings no phosphorus.
        NitrogenFertiliser = "nitrogen-fertiliser";
        /// A soluble complete (N-P-K) fertiliser.
        CompleteFertiliser = "complete-fertiliser";
        /// Ash of untreated wood.
        WoodAsh = "wood-ash";
    }
}

/// The usual analysis of what biochar is charged with, as it is used (moist, not dried); bands are
/// low, likely and high.
#[derive(Clone, Debug, PartialEq)]
pub struct AnalysisRow {
    /// What it is.
    pub source: ChargeSource,
    /// kg in a litre.
    pub density: [f64; 3],
    /// N, P2O5 and K2O in all, % of its weight.
    pub label: [[f64; 3]; 3],
    /// Ca, Mg and Na, % of its weight.
    pub more: [[f64; 3]; 3],
    /// Mineral nitrogen, g in a litre; `None` where all its nitrogen is.
    pub mineral: Option<[f64; 3]>,
    /// Share of its phosphorus that works in the first season, 0–1.
    pub phosphorus_works: f64,
    /// Share of its mineral nitrogen that is ammonium, 0–1.
    pub ammonium: f64,
    /// Share of its calcium and magnesium that is dissolved salt, 0–1.
    pub dissolved: f64,
    /// Salts of one part in five parts of water, dS/m; `None` where its cations say it.
    pub salts: Option<[f64; 3]>,
    /// The publications.
    pub cited: Vec<Cited>,
}

impl Fact for AnalysisRow {
    const COLUMNS: &'static [&'static str] = &[
        "id",
        "kg_per_litre",
        "n",
        "p2o5",
        "k2o",
        "ca",
        "mg",
        "na",
        "mineral_n",
        "phosphorus_works",
        "ammonium",
        "dissolved",
        "salts",
        "sources",
    ];

    fn read(row: Row<'_>) -> Result<AnalysisRow, Wrong> {
        let within = |head, most: f64| match row.band(head)? {
            band if 0.0 <= band[0] && band[2] <= most => Ok(band),
            _ => Err(row.wrong(format!("“{head}” must lie between 0 and {most}"))),
        };
        let percent = |head| within(head, 100.0);
        let share = |head| Ok::<f64, Wrong>(within(head, 1.0)?[1]);
        let label = [percent("n")?, percent("p2o5")?, percent("k2o")?];
        let mineral = row.band_or_none("mineral_n")?;
        // A label's own nitrogen scales the mineral part by the usual one.
        if mineral.is_some() && label[0][1] <= 0.0 {
            return Err(row.wrong("there is mineral nitrogen but none in all: fill in “n”"));
        }
        Ok(AnalysisRow {
            source: row.kind("id")?,
            density: row.band("kg_per_litre")?,
            label,
            more: [percent("ca")?, percent("mg")?, percent("na")?],
            mineral,
            phosphorus_works: share("phosphorus_works")?,
            ammonium: share("ammonium")?,
            dissolved: share("dissolved")?,
            salts: row.band_or_none("salts")?,
            cited: row.cited()?,
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
    fn a_wrong_row_is_named_with_its_line() {
        let row = |n, ammonium| {
            read_one::<AnalysisRow>(&format!(
                "urine,1 | 1 | 1.02,{n},0.15,0.22,0.01,0,0.25,5 | 7 | 9,1,{ammonium},1,,labels:opened"
            ))
        };
        let right = row("0.7", "0.9").unwrap();
        assert_eq!((right.label[0], right.ammonium, right.salts), ([0.7; 3], 0.9, None));
        let why = row("0", "0.9").unwrap_err();
        assert!(why.starts_with("facts.csv, line 7: there is mineral nitrogen"), "{why}");
        let why = row("0.7", "90").unwrap_err();
        assert_eq!(why, "facts.csv, line 7: “ammonium” must lie between 0 and 1");
    }
}
