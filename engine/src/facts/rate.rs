//! A year's dressing of one nutrient for one crop, by the level of the soil.

use super::fact::Fact;
use super::oxide::Oxide;
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
        /// Magnesium.
        Mg = "Mg";
        /// Sulfur.
        S = "S";
        /// Boron.
        B = "B";
        /// Zinc.
        Zn = "Zn";
        /// Manganese.
        Mn = "Mn";
        /// Copper.
        Cu = "Cu";
        /// Iron.
        Fe = "Fe";
    }
}

named! { "way to dress":
    /// How a dressing gets to the plants: its rate is for this way only.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Way {
        /// Spread on the soil.
        Soil = "";
        /// In a band, or beside the row.
        Row = "band";
        /// Sprayed on the leaves.
        Leaves = "leaves";
    }
}

/// A year's dressing.
#[derive(Clone, Debug, PartialEq)]
pub struct RateRow {
    /// A kebab-case name, unique among the rates.
    pub id: String,
    /// The region it was published for.
    pub region: String,
    /// The crops, by their names in `crops.csv`, or a group: `any`, `mixed-garden`, `lawn-cool-season`.
    pub crops: Vec<String>,
    /// What is dressed.
    pub nutrient: Dressed,
    /// For each level of the soil low, likely and high, kg/ha; `None` for any level.
    pub rates: Vec<(Option<Level>, [f64; 3])>,
    /// How it gets to the plants.
    pub way: Way,
    /// How it is split, in a few words.
    pub when: String,
    /// What is given in which month, 1 is January, kg/ha.
    pub months: Vec<(u8, [f64; 3])>,
    /// The publications.
    pub cited: Vec<Cited>,
    /// What a reader must know of it.
    pub note: String,
}

/// kg/ha in each unit that guides print.
/// Source: legal definitions (derived).
const UNITS: [(&str, f64); 6] = [
    ("kg/ha", 1.0),
    ("lb/acre", 1.120_851),
    ("lb/1000 ft2", 48.824_28),
    ("lb/100 ft2", 488.242_8),
    ("g/m2", 10.0),
    ("oz/1000 ft2", 3.051_517),
];
/// The months, as a row names them.
const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];
/// More than this in a year, kg/ha, is a slip of the pen. Our choice.
const MOST: f64 = 600.0;

impl Fact for RateRow {
    const COLUMNS: &'static [&'static str] = &[
        "id", "region", "crop", "nutrient", "rates", "unit", "way", "when", "months", "sources",
        "note",
    ];

    const MAY_LACK: &'static [&'static str] = &["way", "months"];

    fn read(row: Row<'_>) -> Result<RateRow, Wrong> {
        let nutrient: Dressed = row.kind("nutrient")?;
        let each = unit(row, nutrient)?;
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
            crops: crops(row)?,
            nutrient,
            months: months(row, each, &rates)?,
            rates,
            way: row.kind("way")?,
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

/// One crop or several: `beetroot; swede`.
fn crops(row: Row<'_>) -> Result<Vec<String>, Wrong> {
    let crops: Vec<String> = row.list("crop").map(str::to_string).collect();
    let fits = |c: char| c.is_ascii_lowercase() || c == '-';
    match crops.iter().find(|crop| !crop.chars().all(fits)) {
        Some(crop) => Err(row.wrong(format!("“{crop}” is no crop’s id: use a–z and hyphens"))),
        None if crops.is_empty() => Err(row.wrong("“crop” is empty; for every crop write: any")),
        None => Ok(crops),
    }
}

/// kg/ha of the nutrient in one of the row's unit, such as `lb/acre` or `kg/ha as MgO`.
fn unit(row: Row<'_>, nutrient: Dressed) -> Result<f64, Wrong> {
    let cell = row.cell("unit");
    let (unit, counted) = cell.split_once(" as ").unwrap_or((cell, ""));
    let element = match (counted, nutrient) {
        ("", _) => 1.0,
        ("MgO", Dressed::Mg) => Oxide::MgO.element(),
        ("SO3", Dressed::S) => Oxide::SO3.element(),
        _ => return Err(row.wrong(format!("{} is not counted as {counted}", nutrient.name()))),
    };
    Ok(row.known(unit, "unit", &UNITS)? * element)
}

/// `may = 0.5 | july = 0.5–1`: no less in all than the least of a year, and no more than the most.
fn months(
    row: Row<'_>,
    each: f64,
    rates: &[(Option<Level>, [f64; 3])],
) -> Result<Vec<(u8, [f64; 3])>, Wrong> {
    let mut months = Vec::new();
    for text in row.cell("months").split('|').map(str::trim).filter(|text| !text.is_empty()) {
        let wrong = || row.wrong(format!("“{text}” is no month; write it as: may = 0.5"));
        let (name, numbers) = text.split_once('=').ok_or_else(wrong)?;
        let at = MONTHS.iter().position(|month| *month == name.trim()).ok_or_else(wrong)?;
        months.push((at as u8 + 1, amount(row, "months", numbers, each)?));
    }
    let all = |of: usize| months.iter().map(|(_, band)| band[of]).sum::<f64>();
    let least = rates.iter().map(|(_, band)| band[0]).fold(f64::INFINITY, f64::min);
    let most = rates.iter().map(|(_, band)| band[2]).fold(0.0, f64::max);
    if !months.is_empty() && (all(0) > most * 1.01 || all(2) < least * 0.99) {
        return Err(row.wrong("the months together are not the year's rate"));
    }
    Ok(months)
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
    Ok((level, amount(row, "rates", numbers, each)?))
}

/// `80`, `60–120` or `60–90–120`, in kg/ha.
fn amount(row: Row<'_>, head: &str, text: &str, each: f64) -> Result<[f64; 3], Wrong> {
    let parts: Vec<f64> = text
        .split('–')
        .map(|part| row.parse(head, part.trim()).map(|v| v * each))
        .collect::<Result<_, _>>()?;
    let band = match parts[..] {
        [only] => [only; 3],
        [low, high] => [low, (low + high) / 2.0, high],
        [low, likely, high] => [low, likely, high],
        _ => return Err(row.wrong(format!("“{text}”: one number, low–high or low–likely–high"))),
    };
    let rises = band[0] <= band[1] && band[1] <= band[2];
    if !rises || band[0] < 0.0 || band[2] > MOST {
        return Err(row.wrong(format!("“{text}” is no dressing for a year")));
    }
    Ok(band)
}
