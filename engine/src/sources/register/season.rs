//! Publications behind the `season` room.

use crate::sources::Source;

/// All of them.
pub static SEASON: &[&Source] = &[];
