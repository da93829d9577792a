//! Names that stand in the second column, under a heading in the first: `Cations, ppm | Calcium |
//! 4390` among rows such as `pH | | 6.7`, as tables of web pages have them.

use std::borrow::Cow;

use super::Cell;
use super::grid::{cell_at, text_at};
use super::label::Label;
use super::layout::{is_result, names_property};
use super::number::Decimal;

/// How many rows on either side are looked at for one that has its name in the first column.
const NEAR: usize = 12;

/// The rows, those names in the first column, with the unit of their heading.
pub(super) fn out_of_their_nest(
    rows: Cow<'_, [Vec<Cell>]>,
    decimal: Decimal,
) -> Cow<'_, [Vec<Cell>]> {
    // Nearly every row ends at its second cell.
    let results = |row: &[Cell]| row.iter().skip(2).any(|c| is_result(&c.text, decimal));
    let named =
        |row: &[Cell], at: usize| cell_at(row, at).is_some_and(|c| names_property(c, decimal));
    let nested =
        |row: &[Cell]| cell_at(row, 1).is_some() && results(row) && !named(row, 0) && named(row, 1);
    let found: Vec<usize> = (0..rows.len()).filter(|&at| nested(&rows[at])).collect();
    let plain =
        |row: &Vec<Cell>| row.len() > 2 && row[1].is_blank() && results(row) && named(row, 0);
    let mut rows = rows;
    for at in found.into_iter().rev() {
        let near = &rows[at.saturating_sub(NEAR)..rows.len().min(at + NEAR)];
        if !near.iter().any(plain) {
            continue;
        }
        // A heading may stand over several rows.
        let over = rows[..=at].iter().rev().take(NEAR).map(|row| text_at(row, 0));
        let unit = over.take_while(|t| !names_text(t)).find(|t| !t.is_empty());
        let unit = unit.and_then(|heading| heading.rsplit_once([',', '(', ' ']));
        let unit = unit.map(|(_, last)| last.trim_matches([' ', ')']).to_owned());
        let unit = unit.filter(|unit| Label::of(unit).only_unit().is_some());
        let row = &mut rows.to_mut()[at];
        let blank = Cell { text: String::new(), place: row[1].place };
        let mut name = std::mem::replace(&mut row[1], blank);
        if let Some(unit) = unit.filter(|_| Label::of(&name.text).unit.is_none()) {
            name.text = format!("{} {unit}", name.text);
        }
        row[0] = name;
    }
    rows
}

fn names_text(text: &str) -> bool {
    !text.is_empty() && Label::of(text).quantity().is_ok()
}
