//! Puts the page's English into another language.
//!
//! The program writes plain English sentences with numbers and names in them.
//! A catalogue in the format of GNU gettext holds each sentence with holes
//! where those stand (`Spread {amount} over the bed.`) beside its translation.
//! [`Catalogue::say`] finds the sentence that a text was made from, says what
//! fills its holes in the same way, and puts it together in the other language.
//! A language is one file; no view and no room of the engine knows of it.
#![warn(missing_docs)]

mod catalogue;
mod decimal;
mod po;
mod sentence;

pub use catalogue::{Catalogue, Said};
pub use po::{Damage, Entry, entries};
