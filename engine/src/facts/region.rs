//! A region: whose tables judge there, and what its reports look like.

use super::fact::Fact;
use super::plain::small;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::soil::Method;

/// A region.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RegionRow {
    /// A kebab-case name, unique among the regions.
    pub id: String,
    /// What a gardener calls it.
    pub name: String,
    /// The larger region that it is a part of; empty where there is none.
    pub within: String,
    /// Other regions whose tables are next best, the best first.
    pub near: Vec<String>,
    /// The usual extractants of phosphorus, the most usual first.
    pub phosphorus: Vec<Method>,
    /// The usual extractants of potassium, calcium and magnesium, likewise.
    pub cations: Vec<Method>,
    /// Whether its laboratories print pH in a salt solution.
    pub salt_ph: bool,
    /// Words that its reports print.
    pub clues: Vec<String>,
    /// Where this was read.
    pub cited: Vec<Cited>,
}

impl Fact for RegionRow {
    const COLUMNS: &'static [&'static str] =
        &["id", "name", "within", "near", "phosphorus", "cations", "ph", "clues", "sources"];

    fn read(row: Row<'_>) -> Result<RegionRow, Wrong> {
        let clues: Vec<String> = row.list("clues").map(small).collect();
        if let Some(short) = clues.iter().find(|clue| clue.chars().count() < 2) {
            return Err(row.wrong(format!("the clue “{short}” is too short to tell a region")));
        }
        let salt_ph = match row.cell("ph") {
            "water" => false,
            "salt" => true,
            other => {
                return Err(row.wrong(format!("“{other}” under “ph”: write water or salt")));
            }
        };
        Ok(RegionRow {
            id: row.id("id")?,
            name: row.some("name")?.into(),
            within: row.cell("within").into(),
            near: row.list("near").map(str::to_owned).collect(),
            phosphorus: row.kinds("phosphorus")?,
            cations: row.kinds("cations")?,
            salt_ph,
            clues,
            cited: row.cited()?,
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }
}
