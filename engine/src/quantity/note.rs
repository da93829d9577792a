//! What is said of a number beside it.

use std::borrow::Cow;
use std::fmt;
use std::ops::Deref;

use serde::Serialize;

include!(concat!(env!("OUT_DIR"), "/notes.rs"));

/// A sentence or more of plain words.
///
/// Of those that stand with a row of facts only the place is held, as of a
/// [`Source`](crate::sources::Source): who works with numbers alone needs no words, so that a page
/// may fetch them later.
#[derive(Clone, PartialEq, Eq)]
pub enum Note {
    /// The words of a row of facts, by their place.
    Row(u16),
    /// Words that were put together here.
    Words(Cow<'static, str>),
}

impl Note {
    /// Nothing is said.
    pub const NONE: Note = Note::Words(Cow::Borrowed(""));

    /// Whether nothing is said.
    pub fn is_none(&self) -> bool {
        matches!(self, Note::Words(words) if words.is_empty())
    }

    /// The words; empty where nothing is said.
    pub fn words(&self) -> &str {
        match self {
            Note::Row(at) => NOTES.get(usize::from(*at)).copied().unwrap_or_default(),
            Note::Words(words) => words,
        }
    }
}

impl Deref for Note {
    type Target = str;

    fn deref(&self) -> &str {
        self.words()
    }
}

impl From<String> for Note {
    fn from(words: String) -> Note {
        Note::Words(words.into())
    }
}

impl From<&'static str> for Note {
    fn from(words: &'static str) -> Note {
        Note::Words(words.into())
    }
}

impl fmt::Debug for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.words().fmt(f)
    }
}

impl fmt::Display for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl Serialize for Note {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.words())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_has_its_words_and_no_place_beyond_has_any() {
        let count = NOTES.len() as u16;
        assert!(count > 100 && (0..count).all(|at| !Note::Row(at).words().is_empty()));
        assert_eq!(Note::Row(count).words(), "");
        assert!(Note::NONE.is_none() && !Note::Row(0).is_none());
    }
}
