//! A [`Grid`] to a [`Report`].
use super::{Grid, Report, Trouble};

/// Reads a grid.
///
/// # Errors
/// When nothing in it is a soil result.
pub fn read(grid: &Grid) -> Result<Report, Trouble> {
    let _ = grid;
    Err(Trouble::NoResults)
}
