//! The heads of a table copied one below the other, over rows that kept their cells: `pH`,
//! `P mg/L`, `K mg/L`, and then `East | 6.2 | 31 | 188`. They are counted off, which is to be asked.

use super::Cell;
use super::apart::Apart;
use super::grid::filled;
use super::label::Label;
use super::layout::{Role, is_result, role};
use super::number::{Decimal, Said, said};
use crate::soil::Property;

/// No head takes more lines, and fewer names are none.
const MOST_LINES: usize = 60;
const LEAST: usize = 3;

/// A head that is under way: its words, and what they are.
struct Head {
    cell: Cell,
    property: Option<Property>,
}

/// The table whose first head stands at a row.
pub(super) fn listed_heads(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Apart> {
    // Nearly every line ends here.
    let begins = |cell: &Cell| {
        matches!(role(&cell.text), Role::Sample(0..10)) || Label::of(&cell.text).quantity().is_ok()
    };
    let [first] = rows[at].as_slice() else { return None };
    if !begins(first) {
        return None;
    }
    let wide = |row: &Vec<Cell>| row.len() > LEAST && results(row, decimal) >= LEAST;
    let from = (at + 1..rows.len().min(at + MOST_LINES)).find(|&i| wide(&rows[i]))?;
    let (heads, told) = (heads(&rows[at..from], decimal)?, rows[from].len());
    let named = heads.iter().filter(|h| h.property.is_some()).count();
    let lead = heads.iter().position(|h| h.property.is_some())?;
    let width = heads.len();
    if named < LEAST || lead + named != width || width != told {
        return None;
    }
    let fits = |row: &&Vec<Cell>| {
        let held = |c: &Cell| {
            let first = c.text.split(' ').next().unwrap_or("");
            is_result(first, decimal) || matches!(said(&c.text, decimal), Said::Missing)
        };
        row.len() == width && row[lead..].iter().all(|c| c.is_blank() || held(c))
    };
    let held = rows[from..].iter().take_while(fits).count();
    let roles = heads.iter().map(|h| role(&h.cell.text)).collect();
    (held > 0).then(|| Apart {
        heading: heads.into_iter().map(|h| h.cell).collect(),
        roles,
        rows: rows[from..from + held].to_vec(),
        between: Vec::new(),
        taken: from + held - at,
        sure: false,
    })
}

fn results(row: &[Cell], decimal: Decimal) -> usize {
    let first = |c: &&Cell| c.text.split(' ').next().is_some_and(|w| is_result(w, decimal));
    filled(row).filter(first).count()
}

/// The heads in some lines; `None` where a line is none.
fn heads(rows: &[Vec<Cell>], decimal: Decimal) -> Option<Vec<Head>> {
    let mut heads: Vec<Head> = Vec::new();
    for row in rows {
        let cell = filled(row).next()?;
        if row.len() > 2 || results(row, decimal) > 0 {
            return None;
        }
        let label = Label::of(&cell.text);
        let property = label.quantity().ok().map(|q| q.property);
        match (heads.last_mut(), property) {
            // The same in other words, or its unit, on the next line.
            (Some(last), Some(property)) if last.property == Some(property) => {}
            (Some(last), None) if last.property.is_some() && label.only_unit().is_some() => {
                last.cell.text = format!("{} {}", last.cell.text, cell.text);
            }
            (_, Some(_)) => heads.push(Head { cell: cell.clone(), property }),
            (_, None) if matches!(role(&cell.text), Role::Sample(_)) => {
                heads.push(Head { cell: cell.clone(), property: None });
            }
            _ => return None,
        }
    }
    Some(heads)
}
