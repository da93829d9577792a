//! Bytes or pasted text to a [`Grid`].
use super::{Grid, Trouble};

/// Opens a source.
///
/// # Errors
/// When it is empty, too large or no text.
pub fn open(bytes: &[u8]) -> Result<Grid, Trouble> {
    let _ = bytes;
    Err(Trouble::Empty)
}
