//! The register of publications. Every fact the engine uses names one, with
//! the grade of the reading: whether somebody opened the text, read it quoted,
//! derived the number, or wrote it from memory.

mod register;

use serde::Serialize;

pub use register::*;

/// A publication, or the honest statement that there is none.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// A kebab-case name, unique in the register.
    pub id: &'static str,
    /// Publisher or authors, title and year, as a reader would cite it.
    pub title: &'static str,
    /// Where it was found: an address or a DOI; empty where there is none.
    pub place: &'static str,
}

/// How well a figure is known to stand in the source it names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Grade {
    /// Read in the text itself.
    Opened,
    /// Read in a text that quotes the source.
    SecondHand,
    /// Worked out by arithmetic from a figure that was read.
    Derived,
    /// Written from memory; never the only ground of a recommendation.
    FromMemory,
    /// Our own engineering choice, or common practice: no publication.
    Unsourced,
}

/// A source with the grade of what is taken from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Citation {
    /// The publication.
    pub source: &'static Source,
    /// How well the figure is known to stand there.
    pub grade: Grade,
}

impl Serialize for Citation {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeStruct;
        let mut s = serializer.serialize_struct("Citation", 4)?;
        s.serialize_field("id", self.source.id)?;
        s.serialize_field("title", self.source.title)?;
        s.serialize_field("place", self.source.place)?;
        s.serialize_field("grade", &self.grade)?;
        s.end()
    }
}

impl Source {
    /// A figure read in this text.
    pub const fn opened(&'static self) -> Citation {
        Citation { source: self, grade: Grade::Opened }
    }
    /// A figure read where this text is quoted.
    pub const fn second_hand(&'static self) -> Citation {
        Citation { source: self, grade: Grade::SecondHand }
    }
    /// A figure worked out from this text.
    pub const fn derived(&'static self) -> Citation {
        Citation { source: self, grade: Grade::Derived }
    }
    /// A figure remembered from this text.
    pub const fn from_memory(&'static self) -> Citation {
        Citation { source: self, grade: Grade::FromMemory }
    }
    /// A figure that no publication backs.
    pub const fn unsourced(&'static self) -> Citation {
        Citation { source: self, grade: Grade::Unsourced }
    }
}

impl Grade {
    /// The grade in a reader's words.
    pub fn words(self) -> &'static str {
        match self {
            Grade::Opened => "read in the source",
            Grade::SecondHand => "read where the source is quoted",
            Grade::Derived => "worked out from the source",
            Grade::FromMemory => "from memory, not checked against the source",
            Grade::Unsourced => "no publication behind it",
        }
    }
}
