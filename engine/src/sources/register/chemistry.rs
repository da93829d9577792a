//! Publications behind the `chemistry` room.

use crate::sources::Source;

/// All of them.
pub static CHEMISTRY: &[&Source] = &[];
