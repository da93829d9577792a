//! How much plots treated alike usually differ, row by row.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::soil::Property;

/// A property's usual scatter.
#[derive(Clone, Debug, PartialEq)]
pub struct UsualSpreadRow {
    /// What was measured.
    pub property: Property,
    /// The standard deviation of plots treated alike, % of their mean: low, likely, high.
    pub cv: [f64; 3],
    /// The publications.
    pub cited: Vec<Cited>,
    /// What the figures were measured on.
    pub note: String,
}

impl Fact for UsualSpreadRow {
    const COLUMNS: &'static [&'static str] = &["id", "property", "cv", "sources", "note"];

    fn read(row: Row<'_>) -> Result<UsualSpreadRow, Wrong> {
        let cv = row.band("cv")?;
        if cv[0] <= 0.0 || cv[2] > 200.0 {
            return Err(
                row.wrong("no plots scatter so; write the standard deviation in % of the mean")
            );
        }
        Ok(UsualSpreadRow {
            property: row.kind("property")?,
            cv,
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
    fn a_scatter_is_in_per_cent_of_the_mean() {
        let row = |cv| {
            read_one::<UsualSpreadRow>(&format!("x,ph,{cv},our-choice:derived,")).map(|row| row.cv)
        };
        assert_eq!(row("1 | 2 | 8"), Ok([1.0, 2.0, 8.0]));
        assert!(row("0 | 2 | 8").is_err_and(|why| why.contains("in % of the mean")));
    }
}
