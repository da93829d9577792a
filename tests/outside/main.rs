//! Checks of the engine against published tables, worked examples and open
//! data. Over each check stands `/// Source:` with the publication and the
//! grade: opened, second-hand, derived or from memory.
#![allow(missing_docs, reason = "each test's name says what it checks")]

#[path = "../rules/bed.rs"]
mod bed;
mod biochar;
mod biochar_published;
mod charging;
mod chemistry;
mod climate;
mod course;
mod datasets;
mod exchange;
mod leaching;
mod material;
mod needs;
mod needs_lime;
mod quantity;
mod ranges;
mod ranges_borders;
mod reaction;
mod reading;
mod reading_grade;
mod register;
mod season;
#[path = "../rules/shared.rs"]
mod shared;
mod traits;

use shared::{case_of, close, day, surveyed, viewed};
