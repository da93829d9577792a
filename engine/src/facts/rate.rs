//! A year's dressing of one nutrient for one crop, by the level of the soil.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::named::named;
use crate::soil::Level;

named! { "nutrient of a dressing":
    /// What is dressed, as guides count it.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Dressed {
        /// Nitrogen, N.
        N = "N";
        /// Phosphate, P₂O₅.
        P2O5 = "P2O5";
        /// Potash, K₂O.
        K2O = "K2O";
    }
}

/// A year's dressing.
#[derive(Clone, Debug, PartialEq)]
pub struct RateRow {
    /// A kebab-case name, unique among the rates.
    pub id: String,
    /// The region it was published for.
    pub region: String,
    /// The crop, by its name in `crops.csv`, or a group: `any`, `mixed-garden`, `lawn-cool-season`.
    pub crop: String,
    /// What is dressed.
    pub nutrient: Dressed,
    /// For each level of the soil low, likely and high, kg/ha; `None` for any level.
    pub rates: Vec<(Option<Level>, [f64; 3])>,
    /// How it is split, in a few words.
    pub when: String,
    /// The publications.
    pub cited: Vec<Cited>,
    /// What a reader must know of it.
    pub note: String,
}

/// kg/ha in each unit that guides print.
/// Source: legal definitions (derived).
const UNITS: [(&str, f64); 5] = [
    ("kg/ha", 1.0),
    ("lb/acre", 1.120_851),
    ("lb/1000 ft2", 48.824_28),
    ("lb/100 ft2", 488.242_8),
    ("g/m2", 10.0),
];
/// More than this in a year, kg/ha, is a slip of the pen. Our choice.
const MOST: f64 = 600.0;

impl Fact for RateRow {
    const COLUMNS: &'static [&'static str] =
        &["id", "region", "crop", "nutrient", "rates", "unit", "when", "sources", "note"];

    fn read(row: Row<'_>) -> Result<RateRow, Wrong> {
        let each = row.factor("unit", &UNITS)?;
        let mut rates = Vec::new();
        for text in row.some("rates")?.split('|') {
            rates.push(rate(row, text.trim(), each)?);
        }
        let likely = |pair: &[(Option<Level>, [f64; 3])]| pair[0].1[1] < pair[1].1[1];
        if rates.windows(2).any(likely) {
            return Err(row.wrong("a dressing grows with the level of the soil"));
        }
        Ok(RateRow {
            id: row.id("id")?,
            region: row.id("region")?,
            crop: row.id("crop")?,
            nutrient: row.kind("nutrient")?,
            rates,
            when: row.cell("when").into(),
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

/// `low = 80` or `any = 60–90–120`.
fn rate(row: Row<'_>, text: &str, each: f64) -> Result<(Option<Level>, [f64; 3]), Wrong> {
    let (level, numbers) = text
        .split_once('=')
        .ok_or_else(|| row.wrong(format!("“{text}” is no rate; write it as: low = 80")))?;
    let level = match level.trim() {
        "any" => None,
        level => Some(row.named(level)?),
    };
    let parts: Vec<f64> = numbers
        .split('–')
        .map(|part| row.parse("rates", part.trim()).map(|v| v * each))
        .collect::<Result<_, _>>()?;
    let band = match parts[..] {
        [only] => [only; 3],
        [low, likely, high] => [low, likely, high],
        _ => return Err(row.wrong(format!("“{text}”: one number, or low–likely–high"))),
    };
    let rises = band[0] <= band[1] && band[1] <= band[2];
    if !rises || band[0] < 0.0 || band[2] > MOST {
        return Err(row.wrong(format!("“{text}” is no dressing for a year")));
    }
    Ok((level, band))
}
