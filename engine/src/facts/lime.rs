//! A region's lime table: how much for a soil of this kind at each pH.

use super::fact::Fact;
use super::range::{SoilsRow, soils};
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::named::named;

named! { "use of the ground":
    /// What the ground that is limed bears.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum GroundUse {
        /// Dug or tilled ground.
        Tilled = "tilled";
        /// Grass of every kind.
        Grass = "grass";
    }
}

named! { "reaction":
    /// Which pH a lime table goes by.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Reckoned {
        /// pH in water.
        Water = "water";
        /// pH in a salt solution.
        Salt = "salt";
    }
}

/// One column of a lime table.
#[derive(Clone, Debug, PartialEq)]
pub struct LimeRow {
    /// A kebab-case name, unique among the columns.
    pub id: String,
    /// The region it was published for.
    pub region: String,
    /// What the ground bears.
    pub uses: Vec<GroundUse>,
    /// The soils it was made for.
    pub soils: SoilsRow,
    /// Which pH it goes by.
    pub by: Reckoned,
    /// The pH it leads to, likewise.
    pub target: f64,
    /// pH and pure lime (CaCO₃), t/ha, rising pH.
    pub points: Vec<(f64, f64)>,
    /// The depth it is for, cm.
    pub depth_cm: f64,
    /// The publications.
    pub cited: Vec<Cited>,
    /// What a reader must know of it.
    pub note: String,
}

/// t/ha in each unit that tables print.
/// Source: legal definitions (derived).
const UNITS: [(&str, f64); 6] = [
    ("t/ha", 1.0),
    ("kg/ha", 0.001),
    ("g/m2", 0.01),
    ("ton/acre", 2.241_702),
    ("lb/acre", 0.001_120_851),
    ("lb/1000 ft2", 0.048_824_28),
];

/// Pure lime in what tables count.
/// Source: atomic masses (derived); that ground limestone is 95 % pure is our choice.
const KINDS: [(&str, f64); 4] =
    [("CaCO3", 1.0), ("CaO", 1.784_8), ("ground limestone", 0.95), ("aglime CCE 90", 0.9)];

impl Fact for LimeRow {
    const COLUMNS: &'static [&'static str] = &[
        "id", "region", "use", "soils", "by", "target", "points", "unit", "of", "depth_cm",
        "sources", "note",
    ];

    fn read(row: Row<'_>) -> Result<LimeRow, Wrong> {
        let each = row.factor("unit", &UNITS)? * row.factor("of", &KINDS)?;
        let mut points = Vec::new();
        for text in row.some("points")?.split('|') {
            let (ph, rate) = text
                .split_once('=')
                .ok_or_else(|| row.wrong(format!("“{text}” is no point; write it as: 5.5 = 4")))?;
            points
                .push((row.parse("points", ph.trim())?, row.parse("points", rate.trim())? * each));
        }
        if points.windows(2).any(|two| two[0].0 >= two[1].0 || two[0].1 < two[1].1) {
            return Err(row.wrong("the points must rise in pH and fall in lime"));
        }
        Ok(LimeRow {
            id: row.id("id")?,
            region: row.id("region")?,
            uses: row.kinds("use")?,
            soils: soils(row)?,
            by: row.kind("by")?,
            target: row.number("target")?,
            points,
            depth_cm: row.number("depth_cm")?,
            cited: row.cited()?,
            note: row.cell("note").into(),
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }

    fn region(&self) -> Option<&str> {
        Some(&self.region)
    }
}
