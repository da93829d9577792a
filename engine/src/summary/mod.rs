//! The plan as neutral blocks, the blocks as plain text, and its jobs as a
//! calendar: for the page, paper, the clipboard, a letter or a notebook; and what to carry to
//! the bed.

mod blocks;
mod calendar;
mod carry;
mod handout;
mod months;
mod shopping;
mod text;
mod verdict;

pub use blocks::{Block, Line, amount, cautions, list, parts, plan, with_sources};
pub use calendar::calendar;
pub use carry::{Carried, carry};
pub use handout::handout;
pub use months::{MonthOfJobs, months};
pub use shopping::{ForBed, Shopping, ToBuy, shopping};
pub use text::text;
pub use verdict::verdict_in_words;

pub use crate::quantity::Vessel;
