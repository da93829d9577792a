//! The plan as neutral blocks, the blocks as plain text, and its jobs as a
//! calendar: for the page, paper, the clipboard, a letter or a notebook.

mod blocks;
mod calendar;
mod text;

pub use blocks::{Block, Line, amount, cautions, list, parts, plan, with_sources};
pub use calendar::calendar;
pub use text::text;
