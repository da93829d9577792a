//! A table that was copied with a cell a line, row after row: its head, and then at even steps the
//! name of a property with its unit, its results and their limits.

use super::Cell;
use super::apart::Lines;
use super::label::Label;
use super::layout::{Head, Role, head, is_result, role};
use super::number::{Decimal, Said, is_range, is_rating, said};

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

/// A table whose blank cells left no line: `Item`, `Unit`, `Desired`, `Found` over `pH`, `6.3-6.8`,
/// `5.7`. Each name is followed by what its kind tells apart, with one result among it.
fn by_record(lines: &Lines<'_>, at: usize, decimal: Decimal) -> Option<CellALine> {
    let heads = || (at..).map_while(|i| lines.cell(i).map(|c| (c, role(&c.text))));
    let of_a_list = |role: &Role| {
        matches!(role, Role::Names | Role::Values | Role::Units | Role::Ratings | Role::Methods)
    };
    let (top, roles): (Vec<Cell>, Vec<Role>) =
        heads().take_while(|(_, role)| of_a_list(role)).map(|(c, role)| (c.clone(), role)).unzip();
    let is_values = |role: &Role| matches!(role, Role::Values);
    let width = roles.len();
    if !COLUMNS.contains(&width)
        || !matches!(roles[0], Role::Names)
        || roles.iter().filter(|r| is_values(r)).count() != 1
    {
        return None;
    }
    let kind = |cell: &Cell| -> Option<fn(&Role) -> bool> {
        if is_result(&cell.text, decimal) {
            Some(|role| matches!(role, Role::Values))
        } else if Label::of(&cell.text).only_unit().is_some() {
            Some(|role| matches!(role, Role::Units))
        } else if is_range(&cell.text, decimal) || is_rating(&cell.text) {
            Some(|role| matches!(role, Role::Ratings))
        } else {
            None
        }
    };
    let mut rows = vec![top];
    let mut next = at + width;
    // Sodium's symbol is no "n/a" here.
    let is_name = |i: usize| lines.is_name(i) || lines.cell(i).is_some_and(|c| c.text == "Na");
    'records: while is_name(next) {
        let mut row = vec![Cell { text: String::new(), place: lines.cell(next)?.place }; width];
        row[0] = lines.cell(next)?.clone();
        let mut end = next + 1;
        while let Some(cell) = lines.cell(end).filter(|_| end < next + width && !is_name(end)) {
            let Some(of) = kind(cell) else { break };
            let free = (1..width).find(|&i| of(&roles[i]) && row[i].is_blank());
            // Two numbers beside one name: nobody knows which is its own.
            let Some(free) = free else { break 'records };
            row[free] = cell.clone();
            end += 1;
        }
        if !roles.iter().zip(&row).any(|(role, cell)| is_values(role) && !cell.is_blank()) {
            break;
        }
        rows.push(row);
        next = end;
    }
    // At even steps the other way finds more.
    let blanks = rows.iter().flatten().any(Cell::is_blank);
    (rows.len() > LEAST && blanks).then_some(CellALine { rows, roles, taken: next - at })
}

/// The table that begins at a line, if one does.
pub(super) fn cell_a_line(lines: &Lines<'_>, at: usize, decimal: Decimal) -> Option<CellALine> {
    // Nearly every line ends here.
    if !lines.is_words(at) {
        return None;
    }
    if let Some(table) = by_record(lines, at, decimal) {
        return Some(table);
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
