//! Rows of cells, each knowing its place in the source.

use serde::{Deserialize, Serialize};

/// Where a cell stands in the pasted text.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
pub struct Place {
    /// Line, from 1.
    pub line: u32,
    /// First character in the line, from 0.
    pub start: u32,
    /// One past the last character.
    pub end: u32,
}

/// A cell: its text without surrounding blanks, and its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cell {
    /// The text; empty where the source leaves the cell blank.
    pub text: String,
    /// Where it stands.
    pub place: Place,
}

/// The cells of a source, row by row.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Grid {
    /// The rows.
    pub rows: Vec<Vec<Cell>>,
    /// Whether the source has pages, so that titles and page numbers run through it.
    pub paged: bool,
}

impl Cell {
    pub(super) fn is_blank(&self) -> bool {
        self.text.is_empty()
    }
}

/// The cells of a row that hold something.
pub(super) fn filled(row: &[Cell]) -> impl Iterator<Item = &Cell> {
    row.iter().filter(|cell| !cell.is_blank())
}

/// The cell of a row in a column, where it holds something.
pub(super) fn cell_at(row: &[Cell], column: usize) -> Option<&Cell> {
    row.get(column).filter(|cell| !cell.is_blank())
}

/// The text of a row in a column.
pub(super) fn text_at(row: &[Cell], column: usize) -> &str {
    row.get(column).map_or("", |cell| cell.text.as_str())
}

/// Several cells as one.
pub(super) fn joined(cells: &[Cell]) -> Cell {
    let text = cells.iter().map(|c| c.text.as_str()).collect::<Vec<_>>().join(" ");
    let place = match cells {
        [] => Place::default(),
        [first, .., last] => Place { end: last.place.end, ..first.place },
        [only] => only.place,
    };
    Cell { text, place }
}

/// A row in which each cell that belongs to the one before it, as `belongs(before, cell)` says, is
/// part of that one.
pub(super) fn with_their_own(row: &[Cell], belongs: impl Fn(&Cell, &Cell) -> bool) -> Vec<Cell> {
    let mut found: Vec<Cell> = Vec::new();
    for cell in row {
        match found.last_mut() {
            Some(last) if belongs(last, cell) => {
                last.text = format!("{} {}", last.text, cell.text);
                last.place.end = cell.place.end;
            }
            _ => found.push(cell.clone()),
        }
    }
    found
}

/// The words of a cell, each a cell.
pub(super) fn words_of(cell: &Cell) -> Vec<Cell> {
    let mut start = cell.place.start;
    let mut found = Vec::new();
    for word in cell.text.split(' ') {
        let end = start + word.chars().count() as u32;
        if !word.is_empty() {
            let place = Place { start, end, ..cell.place };
            found.push(Cell { text: word.into(), place });
        }
        start = end + 1;
    }
    found
}
