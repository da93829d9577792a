//! Limits that quality standards set for biochar.

use super::certificate_item::CertificateItem;
use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};

/// A limit: at least, at most, or a stretch of national limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Limit {
    /// At least this.
    AtLeast(f64),
    /// At most this.
    AtMost(f64),
    /// Below this.
    Below(f64),
    /// National limits run from the first to the second; the strictest is safe
    /// anywhere.
    National(f64, f64),
}

/// One limit of one standard, or of one class of it.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitRow {
    /// The standard, as a reader sees it.
    pub standard: String,
    /// The figure it holds for.
    pub figure: CertificateItem,
    /// The limit, in the unit that a certificate gives the figure in.
    pub limit: Limit,
    /// The publications.
    pub cited: Vec<Cited>,
}

impl Fact for LimitRow {
    const COLUMNS: &'static [&'static str] = &["id", "standard", "figure", "limit", "sources"];

    fn read(row: Row<'_>) -> Result<LimitRow, Wrong> {
        Ok(LimitRow {
            standard: row.some("standard")?.into(),
            figure: row.kind("figure")?,
            limit: limit(row)?,
            cited: row.cited()?,
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }
}

/// `at least 10`, `at most 0.7`, `below 0.7`, `at most 13 to 100 by country`.
fn limit(row: Row<'_>) -> Result<Limit, Wrong> {
    let cell = row.some("limit")?;
    let number = |text: &str| row.parse("limit", text.trim());
    if let Some(least) = cell.strip_prefix("at least ") {
        return Ok(Limit::AtLeast(number(least)?));
    }
    if let Some(end) = cell.strip_prefix("below ") {
        return Ok(Limit::Below(number(end)?));
    }
    let most = cell.strip_prefix("at most ").ok_or_else(|| {
        row.wrong(format!(
            "“{cell}” under “limit”: write at least 10, at most 0.7, below 0.7, or at most 13 to \
             100 by country"
        ))
    })?;
    let Some(ends) = most.strip_suffix(" by country") else {
        return Ok(Limit::AtMost(number(most)?));
    };
    match ends.split_once(" to ") {
        Some((strictest, loosest)) => match (number(strictest)?, number(loosest)?) {
            (strictest, loosest) if strictest < loosest => Ok(Limit::National(strictest, loosest)),
            _ => Err(row.wrong(format!("“{ends}”: the strictest limit comes first"))),
        },
        None => Err(row.wrong(format!("“{ends}”: limits by country run from one to another"))),
    }
}

#[cfg(test)]
mod tests {
    use super::super::fact::read_one;
    use super::*;

    #[test]
    fn a_wrong_row_is_named_with_its_line() {
        let row = |limit| {
            let row = format!("ibi-arsenic,IBI,arsenic,{limit},ibi-standards:from-memory");
            read_one::<LimitRow>(&row).map(|row| row.limit)
        };
        assert_eq!(row("at least 10"), Ok(Limit::AtLeast(10.0)));
        assert_eq!(row("at most 0.7"), Ok(Limit::AtMost(0.7)));
        assert_eq!(row("below 0.4"), Ok(Limit::Below(0.4)));
        assert_eq!(row("at most 13 to 100 by country"), Ok(Limit::National(13.0, 100.0)));
        let why = row("13").unwrap_err();
        assert!(why.starts_with("facts.csv, line 7: “13” under “limit”: write"), "{why}");
        let why = row("at most 100 to 13 by country").unwrap_err();
        assert!(why.contains("the strictest limit comes first"), "{why}");
    }
}
