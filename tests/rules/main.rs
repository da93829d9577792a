//! Checks of what the plan's own rules lead to, bed by bed: these rules are our
//! choice, so no publication stands over the tests; and of what a pasted report is
//! read as. What is published is checked under `tests/outside`.
#![allow(missing_docs, reason = "each test's name says what it checks")]

mod bed;
mod bed_trial;
mod by_month;
mod charging;
mod chemistry;
mod climate;
mod course;
mod exchange;
mod house;
mod laboratory;
mod leaching;
mod ledger;
mod material;
mod measures;
mod needs;
mod needs_lime;
mod own_beds;
mod own_file;
mod path;
mod quantity;
mod ranges;
mod ranges_borders;
mod reaction;
mod reading;
mod reading_forms;
mod reading_grade;
mod reading_in_line;
mod reading_layouts;
mod reading_likely;
mod reading_names;
mod reading_pasted;
mod reading_second_look;
mod reading_shapes;
mod reading_traps;
mod register;
mod season;
mod shared;
mod shopping;
mod traits;
mod trial;

use shared::{case_of, close, day, surveyed, viewed};
