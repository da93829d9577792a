//! Publications, and how a fact cites them.

use super::table::{Row, Wrong};
use crate::sources::Grade;

/// A publication, and how it was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SourceRow {
    /// A kebab-case name, unique among the publications.
    pub id: String,
    /// Publisher or authors, title and year, as a reader would cite it.
    pub title: String,
    /// Where it was read: an address or a DOI; empty where there is none.
    pub place: String,
    /// What rests on it, in a sentence.
    pub about: String,
    /// How it was read.
    pub read: String,
}

impl SourceRow {
    /// The columns, in the order they are usually written.
    pub const COLUMNS: [&'static str; 5] = ["id", "title", "place", "about", "read"];

    /// Reads a row.
    ///
    /// # Errors
    /// No name, a title nobody could find it by, or not a word on how it was read.
    pub fn read(row: Row<'_>) -> Result<SourceRow, Wrong> {
        let title = row.some("title")?;
        if title.len() <= 10 {
            return Err(row.wrong(format!("the title “{title}” is too short to find it by")));
        }
        Ok(SourceRow {
            id: row.id("id")?,
            title: title.into(),
            place: row.cell("place").into(),
            about: row.some("about")?.into(),
            read: row.some("read")?.into(),
        })
    }
}

/// A publication as a fact cites it: `id:grade`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cited {
    /// The publication.
    pub id: String,
    /// How well the figure is known to stand there.
    pub grade: Grade,
}

impl Row<'_> {
    /// The publications a row rests on.
    ///
    /// # Errors
    /// There is none, or one without its grade.
    pub fn cited(&self) -> Result<Vec<Cited>, Wrong> {
        self.some("sources")?;
        self.list("sources")
            .map(|text| {
                let (id, grade) = text.rsplit_once(':').ok_or_else(|| {
                    self.wrong(format!(
                        "“{text}” under “sources” has no grade: write {text}:opened"
                    ))
                })?;
                Ok(Cited { id: id.trim().into(), grade: self.named(grade.trim())? })
            })
            .collect()
    }
}
