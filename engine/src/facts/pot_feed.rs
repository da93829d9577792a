//! How strong the water is that feeds plants in pots.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::soil::PlantGroup;

/// A feed in the water.
#[derive(Clone, Debug, PartialEq)]
pub struct PotFeedRow {
    /// The plants it was published for.
    pub plants: Vec<PlantGroup>,
    /// Nitrogen in the water, mg/L: low, likely and high.
    pub nitrogen: [f64; 3],
    /// The publications.
    pub cited: Vec<Cited>,
    /// What a reader must know of it.
    pub note: String,
}

/// Water stronger than this, mg/L of nitrogen, feeds no plant. Our choice.
const STRONGEST: f64 = 500.0;

impl Fact for PotFeedRow {
    const COLUMNS: &'static [&'static str] = &["id", "plants", "nitrogen", "sources", "note"];

    fn read(row: Row<'_>) -> Result<PotFeedRow, Wrong> {
        let nitrogen = row.band("nitrogen")?;
        if nitrogen[0] <= 0.0 || nitrogen[2] > STRONGEST {
            return Err(row.wrong("no feed for pots is that weak or strong; write mg/L"));
        }
        Ok(PotFeedRow {
            plants: row.kinds("plants")?,
            nitrogen,
            cited: row.cited()?,
            note: row.cell("note").into(),
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
    fn a_feed_is_in_mg_per_litre() {
        let row = |nitrogen| {
            let row = format!("x,leafy-vegetables,{nitrogen},our-choice:derived,");
            read_one::<PotFeedRow>(&row).map(|row| row.nitrogen)
        };
        assert_eq!(row("100 | 125 | 150"), Ok([100.0, 125.0, 150.0]));
        assert!(row("0.1 | 0.2 | 0.9").is_ok());
        assert!(row("15000").is_err_and(|why| why.contains("weak or strong")));
    }
}
