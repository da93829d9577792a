//! The register of publications. Every fact the engine uses names one, with
//! the grade of the reading: whether somebody opened the text, read it quoted,
//! derived the number, or wrote it from memory.

mod grade;
mod register;

use serde::Serialize;

pub use grade::Grade;
pub use register::*;

/// A publication, or the honest statement that there is none.
///
/// It holds only where its words stand: what judges a soil needs no title, so that a page may
/// fetch the titles later.
#[derive(PartialEq, Eq)]
pub enum Source {
    /// One of the register, by its place there.
    Registered(u16),
    /// One of a region's own file.
    Own(Words),
}

/// What a reader is told of a publication.
#[derive(Debug, PartialEq, Eq)]
pub struct Words {
    /// A kebab-case name, unique in the register.
    pub id: &'static str,
    /// Publisher or authors, title and year, as a reader would cite it.
    pub title: &'static str,
    /// Where it was found: an address or a DOI; empty where there is none.
    pub place: &'static str,
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
        s.serialize_field("id", self.source.id())?;
        s.serialize_field("title", self.source.title())?;
        s.serialize_field("place", self.source.place())?;
        s.serialize_field("grade", &self.grade)?;
        s.end()
    }
}

/// By its title.
impl Serialize for Source {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.title())
    }
}

impl std::fmt::Debug for Source {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.id())
    }
}

impl Source {
    /// A kebab-case name, unique in the register.
    pub fn id(&self) -> &'static str {
        match self {
            Source::Registered(at) => register::id(*at),
            Source::Own(words) => words.id,
        }
    }
    /// Publisher or authors, title and year, as a reader would cite it.
    pub fn title(&self) -> &'static str {
        match self {
            Source::Registered(at) => register::title(*at),
            Source::Own(words) => words.title,
        }
    }
    /// Where it was found: an address or a DOI; empty where there is none.
    pub fn place(&self) -> &'static str {
        match self {
            Source::Registered(at) => register::place(*at),
            Source::Own(words) => words.place,
        }
    }
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
