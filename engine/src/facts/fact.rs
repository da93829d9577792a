//! What all facts have in common.

use super::source::Cited;
use super::table::{Row, Wrong};

/// A fact that stands in one row.
pub trait Fact: Sized {
    /// The columns, in the order they are usually written; “id” is among them.
    const COLUMNS: &'static [&'static str];

    /// Those of them that a file may lack: it was written before they came, or has no use for them.
    const MAY_LACK: &'static [&'static str] = &[];

    /// Reads a row.
    ///
    /// # Errors
    /// What is wrong with it.
    fn read(row: Row<'_>) -> Result<Self, Wrong>;

    /// The publications it rests on.
    fn cited(&self) -> &[Cited];

    /// The region it was published for, where that matters.
    fn region(&self) -> Option<&str> {
        None
    }
}

/// Reads one row, written as in its file but without quotes, as line 7; what is wrong with it.
#[cfg(test)]
pub(crate) fn read_one<T: Fact>(row: &str) -> Result<T, String> {
    let heads = T::COLUMNS.iter().map(|head| (*head).to_string()).collect();
    let row: Vec<String> = row.split(',').map(str::to_string).collect();
    assert_eq!(row.len(), T::COLUMNS.len(), "{row:?}");
    let table = super::table::Table { file: "facts.csv".into(), heads, rows: vec![(7, row)] };
    let read = table.read(T::COLUMNS, T::MAY_LACK, T::read);
    read.map(|mut all| all.remove(0)).map_err(|wrong| wrong[0].to_string())
}
