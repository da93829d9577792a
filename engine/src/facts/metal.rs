//! Levels that authorities set for metals in soil.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::soil::Property;

/// A level for the total of a metal.
#[derive(Clone, Debug, PartialEq)]
pub struct MetalRow {
    /// The metal.
    pub metal: Property,
    /// Whose level it is and what for, within a sentence.
    pub whose: String,
    /// When it was set or held.
    pub set: String,
    /// mg/kg in sand, in loam and silt, and in clay; three times the same where the soil is all one.
    pub levels: [f64; 3],
    /// The region it holds in; empty where it is said everywhere.
    pub region: String,
    /// The publications.
    pub cited: Vec<Cited>,
}

impl Fact for MetalRow {
    const COLUMNS: &'static [&'static str] =
        &["id", "region", "metal", "whose", "set", "level", "sources"];

    const MAY_LACK: &'static [&'static str] = &["region"];

    fn read(row: Row<'_>) -> Result<MetalRow, Wrong> {
        let metal: Property = row.kind("metal")?;
        if ![Property::Lead, Property::Arsenic, Property::Cadmium].contains(&metal) {
            return Err(row.wrong(format!("{} is not held against levels here", metal.label())));
        }
        Ok(MetalRow {
            metal,
            whose: row.some("whose")?.into(),
            set: row.some("set")?.into(),
            levels: row.band("level")?,
            region: row.cell("region").into(),
            cited: row.cited()?,
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }

    fn region(&self) -> Option<&str> {
        Some(self.region.as_str()).filter(|region| !region.is_empty())
    }
}

/// What the US EPA calls for at homes, from a day on: mg/kg of total lead.
#[derive(Clone, Debug, PartialEq)]
pub struct LeadLevelRow {
    /// The first day: year, month, day.
    pub from: (i32, u8, u8),
    /// That day in words.
    pub since: String,
    /// From here EPA looks closer.
    pub screening: f64,
    /// The same where other sources of lead are near.
    pub with_other_sources: f64,
    /// From here EPA considers taking soil away.
    pub removal: Option<f64>,
    /// The publication.
    pub cited: Vec<Cited>,
}

impl Fact for LeadLevelRow {
    const COLUMNS: &'static [&'static str] =
        &["id", "from", "since", "screening", "with_other_sources", "removal", "sources"];

    fn read(row: Row<'_>) -> Result<LeadLevelRow, Wrong> {
        let cited = row.cited()?;
        if cited.len() != 1 {
            return Err(row.wrong("a level has one publication"));
        }
        Ok(LeadLevelRow {
            from: day(row)?,
            since: row.some("since")?.into(),
            screening: row.number("screening")?,
            with_other_sources: row.number("with_other_sources")?,
            removal: row.number_or_none("removal")?,
            cited,
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }
}

fn day(row: Row<'_>) -> Result<(i32, u8, u8), Wrong> {
    let cell = row.some("from")?;
    let wrong = || row.wrong(format!("“{cell}” under “from” is no day: write 2025-10-16"));
    let mut parts = cell.split('-');
    let mut part = || parts.next().and_then(|part| part.parse::<u16>().ok()).ok_or_else(wrong);
    match (part()?, part()?, part()?) {
        (year, month @ 1..=12, day @ 1..=31) => Ok((i32::from(year), month as u8, day as u8)),
        _ => Err(wrong()),
    }
}

#[cfg(test)]
mod tests {
    use super::super::fact::read_one;
    use super::*;

    #[test]
    fn a_wrong_row_is_named_with_its_line() {
        let row = |metal, level| {
            let row =
                format!("state,iowa,{metal},a state's level,2024,{level},epa-lead:second-hand");
            read_one::<MetalRow>(&row).map(|row| row.levels)
        };
        assert_eq!(row("lead", "63"), Ok([63.0; 3]));
        assert_eq!(row("cadmium", "0.4 | 1 | 1.5"), Ok([0.4, 1.0, 1.5]));
        let why = row("zinc", "63").unwrap_err();
        assert_eq!(why, "facts.csv, line 7: zinc is not held against levels here");
        let lead = |from| {
            let row = format!("epa,{from},since then,200,100,,epa-lead:second-hand");
            read_one::<LeadLevelRow>(&row).map(|row| row.from)
        };
        assert_eq!(lead("2025-10-16"), Ok((2025, 10, 16)));
        let why = lead("16 October 2025").unwrap_err();
        assert!(why.starts_with("facts.csv, line 7: “16 October 2025” under “from”"), "{why}");
        assert!(lead("2025-13-01").is_err() && lead("2025-10").is_err());
    }
}
