//! What can be wrong with a whole report. Each message says what was found
//! and what to do; the text itself stays with the person.

/// Why a report can't be read at all.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Trouble {
    /// Nothing was pasted.
    Empty,
    /// The bytes are no text: a picture, a PDF, a workbook.
    Binary {
        /// What it looks like, for example `a PDF file`.
        looks_like: &'static str,
    },
    /// More text than a soil report can be.
    TooLarge {
        /// Bytes found.
        bytes: usize,
        /// Bytes allowed.
        allowed: usize,
    },
    /// Sentences, no results.
    Prose,
    /// A table, but none of its names is a soil property.
    NoSoilWords {
        /// The first few names found.
        names: Vec<String>,
    },
    /// Soil words, but not one result could be read.
    NoResults,
}

impl std::fmt::Display for Trouble {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{self:?}")
    }
}

impl std::error::Error for Trouble {}
