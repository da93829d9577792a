//! The results of two plots or more beside each other with slashes between, line after line: `pH
//! 5.9 / 6.4` over `P 12 / 8`. Whose is whose nobody knows, so that they are columns to be asked.

use std::borrow::Cow;

use super::grid::filled;
use super::label::Label;
use super::number::{Decimal, Said, said};
use super::place::Tail;
use super::{Cell, Place};

/// Fewer such lines may each mean something else by it. Our choice.
const LEAST: usize = 4;

/// No more plots stand side by side.
const MOST: usize = 8;

/// The rows, those in a run of such lines parted into their name and their results.
pub(super) fn parted_by_slashes(
    rows: Cow<'_, [Vec<Cell>]>,
    decimal: Decimal,
) -> Cow<'_, [Vec<Cell>]> {
    let found: Vec<(usize, Vec<Cell>)> = rows
        .iter()
        .enumerate()
        .filter_map(|(at, row)| Some((at, with_columns(row, decimal)?)))
        .collect();
    let mut parted = rows;
    for run in found.chunk_by(|a, b| b.0 - a.0 == 1 && a.1.len() == b.1.len()) {
        if run.len() >= LEAST {
            for (at, cells) in run {
                parted.to_mut()[*at].clone_from(cells);
            }
        }
    }
    parted
}

/// The name and the results of a line that has them so.
fn with_columns(row: &[Cell], decimal: Decimal) -> Option<Vec<Cell>> {
    let mut cells = filled(row);
    let (only, None) = (cells.next()?, cells.next()) else { return None };
    // Nearly every line ends here.
    if !only.text.contains(" / ") {
        return None;
    }
    let pieces: Vec<&str> = only.text.split(" / ").collect();
    let (name, first) = split_name(pieces[0], decimal)?;
    let results = std::iter::once(first).chain(pieces[1..].iter().copied());
    let mut found = vec![(name, 0)];
    let mut from = pieces[0].len() - first.len();
    for result in results {
        found.push((result, from));
        from += result.len() + " / ".len();
    }
    let fits = found.len() <= MOST + 1 && found[1..].iter().all(|(r, _)| is_one(r, decimal));
    let cell = |(text, from): (&str, usize)| {
        let start = only.place.start + only.text[..from].chars().count() as u32;
        let end = start + text.chars().count() as u32;
        Cell { text: text.into(), place: Place { start, end, ..only.place } }
    };
    fits.then(|| found.into_iter().map(cell).collect())
}

/// A known name and what stands behind it, from its first number.
fn split_name(text: &str, decimal: Decimal) -> Option<(&str, &str)> {
    text.match_indices(' ').find_map(|(at, _)| {
        let (name, rest) = (text[..at].trim_end_matches([':', '=', ' ']), &text[at + 1..]);
        (is_one(rest, decimal) && Label::of(name).quantity().is_ok()).then_some((name, rest))
    })
}

/// Whether a text is one number, with its unit or without, and a remark in brackets.
fn is_one(text: &str, decimal: Decimal) -> bool {
    let Said::Amount(_, end) = said(text, decimal) else { return false };
    let left = Tail::of(&text[end..], decimal).left;
    left.is_none_or(|left| left.starts_with('(') && left.ends_with(')'))
}
