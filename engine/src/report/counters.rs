//! Numbers that only count the rows of a list, `1  pH  6.2` over `2  P  31`: without them its
//! first column holds the names.

use std::borrow::Cow;

use super::fold::is_letter;
use super::layout::{Role, names_property, role};
use super::number::Decimal;
use super::{Cell, Place};

/// Fewer rows are no list.
const LEAST: usize = 4;

/// A head over the counters has no more characters: `S. No.`, `№ п/п`.
const LONGEST: usize = 9;

/// The rows without the numbers that count them.
pub(super) fn without_counters(
    rows: Cow<'_, [Vec<Cell>]>,
    decimal: Decimal,
) -> Cow<'_, [Vec<Cell>]> {
    let mut found = Vec::new();
    let mut at = 0;
    while at < rows.len() {
        let run = rows[at..].iter().enumerate().take_while(|(i, row)| counts(row, i + 1)).count();
        if run >= LEAST && are_results(&rows[at..at + run], decimal) {
            found.push(at..at + run);
        }
        at += run.max(1);
    }
    let mut rows = rows;
    for run in found {
        let wide = rows[run.start].len() > 1;
        let from = run.start - usize::from(wide && heads_counters(&rows, run.start));
        for row in &mut rows.to_mut()[from..run.end] {
            if wide {
                row.remove(0);
            } else if let Some((counter, rest)) = row[0].text.split_once(' ') {
                let start = row[0].place.start + counter.len() as u32 + 1;
                row[0] = Cell { text: rest.into(), place: Place { start, ..row[0].place } };
            }
        }
    }
    rows
}

/// Whether a row begins with a number that counts it.
fn counts(row: &[Cell], nth: usize) -> bool {
    let Some(first) = row.first() else { return false };
    let own = match row.len() {
        1 => first.text.split_once(' ').filter(|(_, rest)| rest.starts_with(is_letter)),
        _ => Some((first.text.as_str(), "")),
    };
    // Nearly every row ends here.
    own.is_some_and(|(counter, _)| counter.trim_end_matches(['.', ')']) == nth.to_string())
}

/// Whether what is counted is mostly properties, and no samples.
fn are_results(rows: &[Vec<Cell>], decimal: Decimal) -> bool {
    let named = |row: &&Vec<Cell>| match &row[..] {
        [only] => {
            let rest = only.text.split_once(' ').map_or("", |(_, rest)| rest);
            let words = rest.split(' ').take(LONGEST).collect::<Vec<_>>();
            (1..=words.len()).any(|to| matches!(role(&words[..to].join(" ")), Role::Results(_)))
        }
        [_, name, ..] => names_property(name, decimal),
        [] => false,
    };
    rows.iter().filter(named).count() * 2 > rows.len()
}

/// Whether the row above heads the counters too.
fn heads_counters(rows: &[Vec<Cell>], at: usize) -> bool {
    let Some(above) = at.checked_sub(1).map(|i| &rows[i]) else { return false };
    let short =
        |c: &Cell| c.text.chars().count() <= LONGEST && !matches!(role(&c.text), Role::Results(_));
    above.len() > 2
        && above.len() + 1 >= rows[at].len()
        && above.first().is_some_and(short)
        && matches!(
            above.get(1).map(|c| role(&c.text)),
            Some(Role::Names | Role::Other | Role::Results(_))
        )
}
