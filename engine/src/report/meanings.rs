//! What a phrase of a report can mean, and the tables that say which phrase means what.

use crate::soil::{Method, Property};

/// In which form a name gives an element.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// As the element itself.
    Element,
    /// An ion by its name only: `nitrate` for nitrate-N or for NO3.
    Unsure,
    P2O5,
    K2O,
    CaO,
    MgO,
    Na2O,
    So3,
    No3,
    Nh4,
    So4,
    Po4,
    /// Phosphate by name: P2O5 or PO4, nobody knows.
    Phosphate,
}

/// A word that is no property and no method.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Word {
    /// Changes nothing: `available`, `soil`.
    Plain,
    /// Phosphorus read by colour, not by ICP.
    ByColour,
    /// A lime buffer, not named.
    Buffer,
    /// A lime test index: ten times the buffer pH.
    LimeIndex,
    /// pH in salt, not named.
    Salt,
    /// Share of the exchange capacity.
    Saturation,
    /// `sat` alone: a share of the exchange capacity, or a saturated paste.
    Sat,
    /// The whole amount, by digestion.
    Total,
    /// Saturated paste.
    Paste,
    /// A water extract.
    WaterExtract,
    /// An amount to apply.
    Advice,
    /// A quotient of two.
    Ratio,
    /// A laboratory's index number.
    Index,
    /// An index that depends on pH.
    AvailabilityIndex,
    /// A sampling depth.
    Depth,
    /// A texture class.
    Texture,
    /// Names the sample; the lower the rank, the better the name.
    Sample(u8),
    /// Heads a column of property names.
    NameColumn,
    /// Heads a column of results.
    ResultColumn,
    /// Heads a column of units.
    UnitColumn,
    /// Heads a column of ratings.
    RatingColumn,
    /// Heads a column of ranges.
    RangeColumn,
    /// Heads a column of methods.
    MethodColumn,
    /// Humic matter.
    Humic,
    /// Nitrogen, as in `NO3 as N`.
    Nitrogen,
    /// `Bray` or `Mehlich` without its number.
    HalfMethod,
    /// Known, but no property this engine reads.
    Other(&'static str),
}

/// What a phrase means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Meaning {
    Is(Property, Form),
    IsBy(Property, Method),
    By(Method),
    Word(Word),
}

/// How far off a result may be, in a column of its own.
pub(super) const HOW_FAR_OFF: Word = Word::Other("how far a result may be off, not the result");

/// What nobody here judges.
pub(super) const NOT_USED: Word = Word::Other("not used by this program");

/// A store per area or by digestion.
pub(super) const STORE: Word =
    Word::Other("the soil's whole store, which is more than plants can reach");

/// Meanings and their spellings, parted by blanks: one text costs the page less than many.
macro_rules! spellings {
    ($all:ident: $($meaning:expr => $spellings:literal;)+) => {
        pub(super) const $all: &[(Meaning, &str)] = &[$(($meaning, $spellings)),+];
    };
}
pub(super) use spellings;

pub(super) const fn is(property: Property) -> Meaning {
    Meaning::Is(property, Form::Element)
}
