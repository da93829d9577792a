//! Lines from the salts of a mix of soil and water to those of saturated paste.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::named::named;
use crate::soil::Method;

named! { "texture of a salt line":
    /// Texture as the lines know it.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Grain {
        /// Sand to sandy loam.
        Coarse = "coarse";
        /// Loams and silts.
        Medium = "medium";
        /// Clay loams and clays.
        Fine = "fine";
        /// Every texture.
        Any = "any";
    }
}

/// One published line: ECe = slope × EC + intercept, both in dS/m.
#[derive(Clone, Debug, PartialEq)]
pub struct SaltLineRow {
    /// The mix of soil and water.
    pub method: Method,
    /// The soils it was fitted on.
    pub grain: Grain,
    /// dS/m of the paste for one of the mix.
    pub slope: f64,
    /// dS/m of the paste where the mix has none.
    pub intercept: f64,
    /// The publication.
    pub cited: Vec<Cited>,
}

impl Fact for SaltLineRow {
    const COLUMNS: &'static [&'static str] =
        &["id", "method", "texture", "slope", "intercept", "sources"];

    fn read(row: Row<'_>) -> Result<SaltLineRow, Wrong> {
        let (slope, intercept) = (row.number("slope")?, row.number("intercept")?);
        if slope < 1.0 {
            return Err(row.wrong("paste is no weaker than the mix: the slope is 1 or more"));
        }
        if intercept >= 1.0 {
            return Err(row.wrong("this gives salts to a soil without any"));
        }
        let cited = row.cited()?;
        if cited.len() != 1 {
            return Err(row.wrong("a line has one publication"));
        }
        let (method, grain) = (row.kind("method")?, row.kind("texture")?);
        Ok(SaltLineRow { method, grain, slope, intercept, cited })
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
        let row = |method, intercept| {
            let row = format!("water-1-1-fine,{method},fine,2.66,{intercept},salt-review:opened");
            read_one::<SaltLineRow>(&row).map(|line| line.grain)
        };
        assert_eq!(row("water-1-1", "-0.97"), Ok(Grain::Fine));
        let why = row("mud", "-0.97").unwrap_err();
        assert!(why.starts_with("facts.csv, line 7: “mud” is no "), "{why}");
        let why = row("water-1-1", "1.46").unwrap_err();
        assert_eq!(why, "facts.csv, line 7: this gives salts to a soil without any");
    }
}
