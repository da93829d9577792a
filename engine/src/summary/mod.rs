//! The plan as neutral blocks, and the blocks as plain text: for the
//! clipboard, a letter or a notebook.

mod blocks;
mod text;

pub use blocks::{Block, plan};
pub use text::text;
