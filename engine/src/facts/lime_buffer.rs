//! Printed tables of lime by what a buffer shows.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::named::named;

named! { "printed lime table", unit:
    /// A table of pure lime by a reading and the target pH.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum LimeTable {
        /// Short tons for the top 6 in, by the pH of Sikora's buffer.
        OregonSikora = "oregon-sikora", "ton/acre";
        /// Pounds for turf, by exchangeable acidity, meq/100 g.
        PennStateTurf = "penn-state-turf", "lb/1000 ft2";
        /// Tonnes of pure lime for the top 20 cm, by the SMP index.
        BrSulSmp = "br-sul-smp", "t/ha";
    }
}

/// One line of such a table.
#[derive(Clone, Debug, PartialEq)]
pub struct LimeBufferRow {
    /// The table.
    pub table: LimeTable,
    /// The region whose soils it was made for; empty where it goes by its buffer alone.
    pub region: String,
    /// The reading, tenths.
    pub reading: u16,
    /// Target pH, rising, and the lime for it, tenths of the table's unit.
    pub rates: Vec<(f64, u16)>,
    /// The publications.
    pub cited: Vec<Cited>,
}

impl Fact for LimeBufferRow {
    const COLUMNS: &'static [&'static str] =
        &["id", "table", "region", "reading", "unit", "rates", "sources"];

    fn read(row: Row<'_>) -> Result<LimeBufferRow, Wrong> {
        let table: LimeTable = row.kind("table")?;
        let unit = row.cell("unit");
        if unit != table.unit() {
            let what = format!("“{unit}”: {} is printed in {}", table.name(), table.unit());
            return Err(row.wrong(what));
        }
        let rates = row.some("rates")?.split('|').map(|rate| {
            let (target, lime) = rate.split_once('=').ok_or_else(|| {
                row.wrong(format!("“{rate}” is no rate; write it as: target pH = lime"))
            })?;
            let target = row.parse("rates", target.trim())?;
            Ok((target, tenths(row, "rates", lime.trim())?))
        });
        let rates: Vec<(f64, u16)> = rates.collect::<Result<_, Wrong>>()?;
        if rates.windows(2).any(|two| two[0].0 >= two[1].0 || two[0].1 > two[1].1) {
            return Err(row.wrong("a higher target comes later and takes no less lime"));
        }
        Ok(LimeBufferRow {
            table,
            region: row.cell("region").into(),
            reading: tenths(row, "reading", row.cell("reading"))?,
            rates,
            cited: row.cited()?,
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }
}

/// A number that is printed to a tenth.
fn tenths(row: Row<'_>, head: &str, text: &str) -> Result<u16, Wrong> {
    let tenths = row.parse(head, text)? * 10.0;
    if (tenths - tenths.round()).abs() > 1e-6 || !(0.0..=65_535.0).contains(&tenths) {
        return Err(row.wrong(format!("“{text}” under “{head}” is not printed to a tenth")));
    }
    Ok(tenths.round() as u16)
}

#[cfg(test)]
mod tests {
    use super::super::fact::read_one;
    use super::*;

    #[test]
    fn a_wrong_row_is_named_with_its_line() {
        let row = |unit, rates| {
            read_one::<LimeBufferRow>(&format!(
                "oregon-sikora-65,oregon-sikora,,6.5,{unit},{rates},oregon-sikora:opened"
            ))
        };
        let right = row("ton/acre", "5.6 = 0.7 | 6.0 = 1.2").unwrap();
        assert_eq!((right.reading, right.rates), (65, vec![(5.6, 7), (6.0, 12)]));
        let why = row("t/ha", "5.6 = 0.7").unwrap_err();
        assert!(why.starts_with("facts.csv, line 7: “t/ha”: oregon-sikora is printed in"), "{why}");
        let why = row("ton/acre", "5.6 = 0.7 | 6.0 = 0.12").unwrap_err();
        assert!(why.contains("“0.12” under “rates” is not printed to a tenth"), "{why}");
        let why = row("ton/acre", "5.6 = 1.2 | 6.0 = 0.7").unwrap_err();
        assert!(why.contains("takes no less lime"), "{why}");
    }
}
