//! Small tables within a form: names in a row, and below them a row of results that says no more
//! than its unit, or that it was found. `Ca Mg K Na H` over `% of the CEC 72.8 19.2 5.2 2.7 0`.

use super::grid::{cell_at, filled};
use super::label::Label;
use super::layout::{Role, is_result, role};
use super::names::Word;
use super::number::{Decimal, is_range};
use super::place::Tail;
use super::{Cell, number::Said, number::said};
use crate::quantity::Unit;

/// A head has so many names of properties, and so many rows below it. Our choice.
const FEWEST: usize = 3;
const MOST_ROWS: usize = 4;

/// Such a table: each result with its name, and the rows of limits.
pub(super) struct ElementRows<'a> {
    pub results: Vec<[Cell; 2]>,
    pub limits: Vec<&'a [Cell]>,
    pub taken: usize,
}

/// The table that begins at a row.
pub(super) fn element_rows(
    rows: &[Vec<Cell>],
    at: usize,
    decimal: Decimal,
) -> Option<ElementRows<'_>> {
    let head = &rows[at];
    let labelled = head.first()?.is_blank();
    let columns = names(head, labelled)?;
    // A strip with units of its own is a table of one sample.
    if !labelled && head.iter().any(|c| Label::of(&c.text).unit.is_some()) {
        return None;
    }
    let mut found = ElementRows { results: Vec::new(), limits: Vec::new(), taken: 1 };
    let mut read = Vec::new();
    for row in rows[at + 1..].iter().take(MOST_ROWS) {
        let kind =
            if labelled { kind(row, &columns, decimal) } else { bare_kind(row, head, decimal) };
        let Some(kind) = kind else { break };
        found.taken += 1;
        match kind {
            Kind::Limits => found.limits.push(row),
            Kind::Found(unit) if read.contains(&unit) => return None,
            Kind::Found(unit) => {
                let unit_above = || above(&rows[..at]);
                let said = unit.clone().or_else(unit_above);
                if !labelled && said.is_none() {
                    return None;
                }
                let said = said.map_or(String::new(), |u| format!(" {u}"));
                for &column in &columns {
                    if let Some(cell) = cell_at(row, column) {
                        let own = Label::of(&head[column].text).unit.is_some();
                        let text =
                            if own { cell.text.clone() } else { format!("{}{said}", cell.text) };
                        found
                            .results
                            .push([head[column].clone(), Cell { text, place: cell.place }]);
                    }
                }
                read.push(unit);
            }
        }
    }
    // What stands below goes on with the same names: it is a table of samples.
    (!read.is_empty()).then_some(found)
}

/// The columns of a head of properties; its first cell is blank where the rows have labels.
fn names(head: &[Cell], labelled: bool) -> Option<Vec<usize>> {
    let from = usize::from(labelled);
    if head.len() < FEWEST + from {
        return None;
    }
    let roles: Vec<Role> = head[from..].iter().map(|c| role(&c.text)).collect();
    let other =
        |r: &Role| matches!(r, Role::Results(_) | Role::Refused(_) | Role::Other | Role::Blank);
    let result = |r: &Role| matches!(r, Role::Results(_));
    let columns: Vec<usize> =
        (0..roles.len()).filter(|&i| result(&roles[i])).map(|i| i + from).collect();
    let plain = |c: &Cell| !c.text.contains(|c: char| c.is_ascii_digit()) || result(&role(&c.text));
    let most = columns.len() >= FEWEST && columns.len() * 2 > filled(head).count();
    (most && roles.iter().all(other) && head.iter().all(plain)).then_some(columns)
}

/// What a row without a label holds.
fn bare_kind(row: &[Cell], head: &[Cell], decimal: Decimal) -> Option<Kind> {
    if row.len() != head.len() {
        return None;
    }
    if filled(row).all(|c| is_result(&c.text, decimal)) && filled(row).count() >= FEWEST {
        return Some(Kind::Found(None));
    }
    let limits = filled(row).filter(|c| is_range(&c.text, decimal)).count();
    (limits >= FEWEST).then_some(Kind::Limits)
}

enum Kind {
    /// What was found, in the unit that the row names.
    Found(Option<String>),
    Limits,
}

/// What a row below such a head holds.
fn kind(row: &[Cell], columns: &[usize], decimal: Decimal) -> Option<Kind> {
    let first = row.first()?;
    let held = || columns.iter().filter_map(|&i| cell_at(row, i));
    let bare = |c: &Cell| match said(&c.text, decimal) {
        Said::Amount(_, end) => Tail::of(&c.text[end..], decimal).left.is_none(),
        Said::NotDetected | Said::Missing => true,
        _ => false,
    };
    let label = Label::of(&first.text);
    let plain = label.unknown.is_empty() && label.methods.is_empty();
    let words = |w: &Word| matches!(w, Word::ResultColumn | Word::Plain);
    // "% of the CEC" names the exchange and is its share.
    let share = label.unit.is_some_and(|u| u.unit == Unit::Percent)
        && label.properties.iter().all(|(p, _)| *p == crate::soil::Property::Cec);
    if first.is_blank() || label.has(Word::RangeColumn) || is_limit(&first.text) {
        return (held().count() >= FEWEST && !first.is_blank()).then_some(Kind::Limits);
    }
    if !held().all(bare)
        || held().filter(|c| is_result(&c.text, decimal)).count() < FEWEST
        || !plain
    {
        return None;
    }
    if share {
        return Some(Kind::Found(Some("%".into())));
    }
    if label.only_unit().is_some() {
        return Some(Kind::Found(Some(first.text.clone())));
    }
    (label.has(Word::ResultColumn) && label.words.iter().all(words) && label.properties.is_empty())
        .then(|| Kind::Found(label.unit.map(|u| u.unit.symbol().into())))
}

/// Whether the first words of a row say that limits follow, though others stand beside.
fn is_limit(text: &str) -> bool {
    text.split(' ').any(|word| Label::of(word).has(Word::RangeColumn))
}

/// The unit that the title above a small table names: `Cation saturation (%)`.
fn above(rows: &[Vec<Cell>]) -> Option<String> {
    let row = rows.iter().rev().take(2).find(|row| filled(row).next().is_some())?;
    let mut cells = filled(row);
    let (only, None) = (cells.next()?, cells.next()) else { return None };
    let unit =
        Label::of(&only.text).unit.filter(|_| !only.text.contains(|c: char| c.is_ascii_digit()))?;
    Some(unit.unit.symbol().into())
}
