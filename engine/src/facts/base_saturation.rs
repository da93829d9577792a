//! The base saturation that a region's lime is to reach.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::soil::PlantGroup;

/// A wanted base saturation.
#[derive(Clone, Debug, PartialEq)]
pub struct BaseSaturationRow {
    /// A kebab-case name, unique among these rows.
    pub id: String,
    /// The region it was published for.
    pub region: String,
    /// The plants.
    pub plants: Vec<PlantGroup>,
    /// Base saturation wanted, % of the exchange capacity at pH 7.
    pub wanted: f64,
    /// The publications.
    pub cited: Vec<Cited>,
    /// What a reader must know of it.
    pub note: String,
}

impl Fact for BaseSaturationRow {
    const COLUMNS: &'static [&'static str] =
        &["id", "region", "plants", "wanted", "sources", "note"];

    fn read(row: Row<'_>) -> Result<BaseSaturationRow, Wrong> {
        let wanted = row.number("wanted")?;
        if !(30.0..=90.0).contains(&wanted) {
            return Err(row.wrong(format!("{wanted} % is no base saturation to lime to")));
        }
        Ok(BaseSaturationRow {
            id: row.id("id")?,
            region: row.id("region")?,
            plants: row.kinds("plants")?,
            wanted,
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
