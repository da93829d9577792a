//! What a laboratory's own word for a result means.

use super::table::{Row, Wrong};
use crate::soil::Level;

/// A laboratory's word.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RatingRow {
    /// The word, in lower case.
    pub word: String,
    /// Our level: the least that every laboratory means by it.
    pub level: Level,
    /// The region where it means this; empty where it does everywhere.
    pub region: String,
}

impl RatingRow {
    /// The columns, in the order they are usually written.
    pub const COLUMNS: [&'static str; 3] = ["word", "level", "region"];

    /// Reads a row.
    ///
    /// # Errors
    /// No word, or a level nobody knows.
    pub fn read(row: Row<'_>) -> Result<RatingRow, Wrong> {
        let word = row.some("word")?;
        if word != word.to_lowercase() {
            return Err(row.wrong(format!("write “{word}” in lower case")));
        }
        Ok(RatingRow {
            word: word.into(),
            level: row.kind("level")?,
            region: row.cell("region").into(),
        })
    }
}
