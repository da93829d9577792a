//! A report in a link: what the link holds, how it is written, how one that
//! arrives is shown, and its code for paper.

pub mod answers;
pub mod arrived;
pub mod code;
pub mod link;
pub mod sharing;
pub mod slide;
