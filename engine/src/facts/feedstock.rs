//! What biochar is made from, and its usual properties.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::named::named;

named! { "feedstock":
    /// What biochar was made from.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum Feedstock {
        /// Pine, spruce, fir and other conifers.
        Softwood = "softwood";
        /// Oak, beech, ash and other broadleaves.
        Hardwood = "hardwood";
        /// Straw, grass.
        GrassOrStraw = "grass-or-straw";
        /// Bamboo.
        Bamboo = "bamboo";
        /// The husks of rice.
        RiceHusk = "rice-husk";
        /// Manure or litter.
        Manure = "manure";
        /// Nutshells, stones.
        Nutshell = "nutshell";
        /// Bones.
        Bone = "bone";
        /// Several of these together.
        Blend = "blend";
    }
}

/// The usual properties of biochar from one feedstock, on a dry basis; bands are low, likely and
/// high.
#[derive(Clone, Debug, PartialEq)]
pub struct FeedstockRow {
    /// The feedstock.
    pub feedstock: Feedstock,
    /// Bulk density, kg/m³.
    pub bulk_density: [f64; 3],
    /// pH.
    pub ph: [f64; 3],
    /// Liming value, % CaCO3.
    pub liming: [f64; 3],
    /// Exchange capacity, cmol(c)/kg.
    pub cec: [f64; 3],
    /// Water it takes up, g per g.
    pub water: [f64; 3],
    /// Likely phosphorus, potassium, calcium, magnesium, sulfur and sodium, % in all.
    pub totals: [f64; 6],
    /// The publications.
    pub cited: Vec<Cited>,
}

impl Fact for FeedstockRow {
    const COLUMNS: &'static [&'static str] = &[
        "id",
        "bulk_density",
        "ph",
        "liming",
        "cec",
        "water",
        "phosphorus",
        "potassium",
        "calcium",
        "magnesium",
        "sulfur",
        "sodium",
        "sources",
    ];

    fn read(row: Row<'_>) -> Result<FeedstockRow, Wrong> {
        let percent = |head| match row.number(head)? {
            percent if (0.0..=100.0).contains(&percent) => Ok(percent),
            other => Err(row.wrong(format!("{other} under “{head}” is no percentage"))),
        };
        Ok(FeedstockRow {
            feedstock: row.kind("id")?,
            bulk_density: row.band("bulk_density")?,
            ph: row.band("ph")?,
            liming: row.band("liming")?,
            cec: row.band("cec")?,
            water: row.band("water")?,
            totals: [
                percent("phosphorus")?,
                percent("potassium")?,
                percent("calcium")?,
                percent("magnesium")?,
                percent("sulfur")?,
                percent("sodium")?,
            ],
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
        let row = |id, ph| {
            read_one::<FeedstockRow>(&format!(
                "{id},250 | 400 | 600,{ph},4 | 11 | 20,50,1.2,2.5,4,6,1.3,0.7,1,reviews:from-memory"
            ))
        };
        let right = row("manure", "8 | 9.8 | 11").unwrap();
        assert_eq!((right.ph, right.cec, right.totals[5]), ([8.0, 9.8, 11.0], [50.0; 3], 1.0));
        let why = row("peat", "8 | 9 | 10").unwrap_err();
        assert!(why.starts_with("facts.csv, line 7: “peat” is no feedstock"), "{why}");
        let why = row("manure", "8 | 12 | 10").unwrap_err();
        assert!(why.starts_with("facts.csv, line 7: “8 | 12 | 10” under “ph”"), "{why}");
    }
}
