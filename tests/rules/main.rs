//! Checks of what the plan's own rules lead to, bed by bed: these rules are our
//! choice, so no publication stands over the tests; and of what a pasted report is
//! read as. What is published is checked under `tests/outside`.
#![allow(missing_docs, reason = "each test's name says what it checks")]

mod bed;
mod house;
mod ledger;
mod path;
mod reading_traps;
mod season;
mod shared;

use shared::{close, day, surveyed};
