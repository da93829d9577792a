//! Publications behind the `ranges` room.

use crate::sources::Source;

/// All of them.
pub static RANGES: &[&Source] = &[];
