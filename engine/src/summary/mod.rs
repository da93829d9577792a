//! The plan as neutral blocks, the blocks as plain text, and its jobs as a
//! calendar: for the page, paper, the clipboard, a letter or a notebook; and what to carry to
//! the bed.

mod blocks;
mod calendar;
mod carry;
mod months;
mod text;

pub use blocks::{Block, Line, amount, cautions, list, parts, plan, with_sources};
pub use calendar::calendar;
pub use carry::{Carried, carry};
pub use months::{MonthOfJobs, months};
pub use text::text;

pub use crate::quantity::Vessel;
