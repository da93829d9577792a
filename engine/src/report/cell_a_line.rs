//! A table that was copied with a cell a line, row after row: its head, and then at even steps the
//! name of a property with its unit, its results and their limits.

use super::Cell;
use super::apart::Lines;
use super::layout::{Head, Role, head, is_result};
use super::number::{Decimal, Said, said};

/// A table has so many columns and so many rows.
const COLUMNS: std::ops::RangeInclusive<usize> = 3..=9;
const LEAST: usize = 4;

/// The table that begins at a line.
pub(super) struct CellALine {
    /// Its rows, the head first.
    pub rows: Vec<Vec<Cell>>,
    /// What each column holds.
    pub roles: Vec<Role>,
    /// How many lines it takes.
    pub taken: usize,
}

/// The table that begins at a line, if one does.
pub(super) fn cell_a_line(lines: &Lines<'_>, at: usize, decimal: Decimal) -> Option<CellALine> {
    // Nearly every line ends here.
    if !lines.is_words(at) {
        return None;
    }
    // A name that nobody knows may stand among them.
    let may_be = |i: usize| lines.is_name(i) || lines.is_words(i);
    let steps = |w: &usize| {
        let starts = || (1..=LEAST + 2).map(|i| at + i * w);
        starts().filter(|&i| lines.is_name(i)).count() >= LEAST && starts().take(LEAST).all(may_be)
    };
    COLUMNS.filter(steps).find_map(|width| {
        let row = |i: usize| -> Option<Vec<Cell>> {
            let from = at + i * width;
            (from..from + width).map(|i| lines.cell(i).cloned()).collect()
        };
        let number = |c: &Cell| is_result(&c.text, decimal);
        let missing = |c: &Cell| matches!(said(&c.text, decimal), Said::Missing);
        let top = row(0).filter(|row| !row.iter().any(number))?;
        let mut rows = vec![top];
        while let Some(next) = row(rows.len()) {
            if !may_be(at + rows.len() * width) || !next[1..].iter().any(number) {
                break;
            }
            rows.push(next);
        }
        // A column has numbers in each of its rows, or in none.
        let even = |i: usize| {
            let held = rows[1..].iter().filter(|row| number(&row[i])).count();
            let gone = rows[1..].iter().filter(|row| missing(&row[i])).count();
            held == 0 || held + gone + 1 >= rows.len() - 1 || held * 2 < rows.len() - 1
        };
        let values =
            (1..width).any(|i| rows[1..].iter().filter(|row| number(&row[i])).count() >= LEAST);
        // A name further on begins another row.
        let names = (1..rows.len()).any(|i| (1..width).any(|j| lines.is_name(at + i * width + j)));
        let fits = rows.len() > LEAST && values && !names && (1..width).all(even);
        if !fits {
            return None;
        }
        let Some(Head::Properties(roles)) = head(&rows, 0, decimal) else { return None };
        let taken = rows.len() * width;
        Some(CellALine { rows, roles, taken })
    })
}
