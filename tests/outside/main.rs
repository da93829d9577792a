//! Checks of the engine against published tables, worked examples and open
//! data. Over each check stands `/// Source:` with the publication and the
//! grade: opened, second-hand, derived or from memory. Where the same table is
//! only copied out a second time stands `/// Double entry:`: that finds a slip of
//! the pen, and says nothing of whether the table is right or well used.
#![allow(missing_docs, reason = "each test's name says what it checks")]

#[path = "../rules/bed.rs"]
#[allow(dead_code, reason = "the checks of the rules use the rest")]
mod bed;
mod biochar;
mod biochar_published;
mod charging;
mod chemistry;
mod climate;
mod datasets;
mod exchange;
mod grounds;
mod leaching;
mod material;
mod needs;
mod needs_lime;
mod quantity;
mod ranges;
mod ranges_borders;
mod reaction;
mod reading;
mod season;
mod second_reading;
mod second_reading_rates;
#[path = "../rules/shared.rs"]
mod shared;
mod traits;
mod trial;

use shared::{case_of, close, day, surveyed, viewed};
