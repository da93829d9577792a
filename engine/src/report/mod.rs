//! From pasted text to a report: `open` turns bytes into a [`Grid`] and knows
//! no soil; `read` is where the cells meet the domain.

mod about;
mod across_by_place;
mod advice;
mod apart;
mod cell_a_line;
mod column_heads;
mod counters;
mod crop;
mod drawn;
mod element_rows;
mod exchange_letters;
mod fold;
mod grid;
mod label;
mod languages;
mod languages_of_asia;
mod layout;
mod lexicon;
mod likely_columns;
mod likely_heads;
mod likely_rows;
mod lines;
mod listed_heads;
mod lost_lines;
mod marks;
mod meanings;
mod more_languages;
mod named_line;
mod names;
mod nested_names;
mod new_list;
mod no_samples;
mod number;
mod open;
mod oxide;
mod place;
mod plausible;
mod poured;
mod prose;
mod read;
mod reader;
mod run_together;
mod sample_names;
mod scanned;
mod second_look;
mod sections;
mod settle;
mod short_names;
mod slashes;
mod spelling;
#[cfg(test)]
mod spellings_abroad;
mod split;
mod stacked_heads;
#[cfg(test)]
mod synonyms;
mod table;
mod textures;
mod trouble;
mod units;
mod uses;
mod usual;

use serde::Serialize;

use crate::quantity::Unit;
use crate::region::Region;
use crate::soil::{Amount, Method, Property, SoilGroup, Texture};

pub use advice::{Advice, AdviceUnit, Advised, Land, LimeAs};
pub use grid::{Cell, Grid, Place};
pub use marks::{Lines, Whereabouts, whereabouts};
pub use named_line::{NamedLine, name_lines, reading_of};
pub use number::parse_amount;
pub use open::{MOST_BYTES, open};
pub(crate) use plausible::{doubt, impossible};
pub use read::read;
pub use reader::MOST_SAMPLES;
pub use trouble::Trouble;
pub use uses::{Stretch, Use, uses};

/// What was read: samples, what could not be placed, and nothing guessed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Report {
    /// The samples, in the order of the report.
    pub samples: Vec<SampleReport>,
    /// Lines and cells that belong to no one sample and could not be placed.
    pub unread: Vec<Unread>,
    /// How decimal commas and thousands marks were read, when there was a choice.
    pub notes: Vec<String>,
    /// The regions that its own words speak for; more than one where they leave it open.
    pub regions: Vec<&'static Region>,
    /// The one crop that it says it is for, by its id in `facts/crops.csv`.
    pub crop: Option<&'static str>,
}

/// One sample of a report.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SampleReport {
    /// Its name as printed, or `Sample 1`.
    pub name: String,
    /// Its readings.
    pub readings: Vec<Reading>,
    /// Cells of this sample that could not be placed.
    pub unread: Vec<Unread>,
    /// The sampling depth the report states: top and bottom, cm.
    pub depth_cm: Option<(f64, f64)>,
    /// The texture class the report states.
    pub texture: Option<Texture>,
    /// The group of soils the report counts it to.
    pub group: Option<SoilGroup>,
    /// The pH that the laboratory aims at.
    pub target_ph: Option<f64>,
    /// What the laboratory advises for it; the lines are listed as unread too, since they are
    /// no results.
    pub advice: Vec<Advice>,
}

/// One result as it stands in the report. The number is already that of the
/// element (P from P2O5, N from NO3) but still in the report's own unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// What was measured.
    pub property: Property,
    /// The result; `None` when only a rating or "not detected" without a limit is printed.
    pub amount: Option<Amount>,
    /// The unit, when the report names one.
    pub unit: Option<Unit>,
    /// The method and how it is known.
    pub method: Option<Known<Method>>,
    /// The laboratory's own rating or range beside the result.
    pub rating: Option<String>,
    /// The name as printed.
    pub name: String,
    /// The result as printed.
    pub original: String,
    /// The sampling depth in its own name, cm from and to, as in `Nitrate-N 0-24 in`.
    pub depth_cm: Option<(f64, f64)>,
    /// How the result and its name were brought together.
    pub pairing: Pairing,
    /// Where it stands in the source.
    pub place: Place,
    /// Conversions already made and how the unit was found, for the reader:
    /// for example `P2O5 × 0.4364 = P`.
    pub notes: Vec<String>,
}

/// How a result and its name were brought together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Pairing {
    /// They stand together, or under each other in a table.
    #[default]
    Together,
    /// Words stand between them: `the pH came back 6.2`.
    Sentence,
    /// Names and numbers stand apart and were counted off against each other: to be asked.
    CountedOff,
}

/// A fact and how it is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Known<T> {
    /// The fact.
    pub value: T,
    /// How it is known.
    pub from: Origin,
}

/// How a fact about a reading is known.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Origin {
    /// It stands with the reading.
    Stated,
    /// It was inferred; the text says from what, for example
    /// `line 3 names Mehlich-3 for the whole report`.
    Inferred(String),
    /// The person answered.
    Answered,
}

/// A line or a cell that could not be placed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Unread {
    /// The text.
    pub text: String,
    /// Why, and what to do.
    pub reason: String,
    /// Where it stands.
    pub place: Place,
}
