//! Publications behind the `biochar` room.

use crate::sources::Source;

/// All of them.
pub static BIOCHAR: &[&Source] = &[];
