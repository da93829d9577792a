//! Results by depth whose name stands once, over or under them: `Nitrate` and below it
//! `0-6"  14 lb/acre` and `6-24"  33 lb/acre`; or beside it, `pH  0-6" 7.9  6-24" 8.2`.

use super::Cell;
use super::about::{depth, depth_at};
use super::grid::{filled, joined};
use super::label::Label;
use super::layout::{is_result, names_property};
use super::number::{Decimal, Said, said};
use super::place::Tail;

/// No list has more depths of one property.
const MOST: usize = 6;

/// The results, each in a row with its name and its depth, and how many rows they took.
pub(super) struct ByDepth {
    pub rows: Vec<Vec<Cell>>,
    /// What stands beside them and is none.
    pub beside: Vec<Cell>,
    pub taken: usize,
    /// Whether the name stands over or beside them; under them it is asked.
    pub sure: bool,
}

/// Such results that begin at a row.
pub(super) fn by_depth(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<ByDepth> {
    // Nearly every row ends here.
    let begins = |row: &Vec<Cell>| {
        let first = filled(row).next()?;
        first.text.starts_with(|c: char| c.is_ascii_digit()).then_some(())
    };
    if begins(&rows[at]).is_none() {
        return beside(&rows[at], decimal).or_else(|| {
            begins(rows.get(at + 1)?)?;
            below(rows, at, decimal)
        });
    }
    above(rows, at, decimal)
}

fn below(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<ByDepth> {
    let cells = |row: &Vec<Cell>| filled(row).cloned().collect::<Vec<_>>();
    let first = cells(&rows[at]);
    // "Nitrate  0-6"  18 lb/acre" has the first depth beside the name.
    let (name, mut lines) = match name_alone(&rows[at], decimal) {
        Some(name) => (name, Vec::new()),
        None => {
            let name = first.first().filter(|c| names_property(c, decimal))?;
            (name.clone(), vec![line(name, &first[1..], decimal)?])
        }
    };
    let begun = lines.len();
    let next = rows[at + 1..].iter().take(MOST);
    lines.extend(next.map_while(|row| line(&name, &cells(row), decimal)));
    let taken = 1 + lines.len() - begun;
    without_sum(&mut lines);
    together(lines, taken, true)
}

/// Leaves out the sum over all depths below them.
fn without_sum(lines: &mut Vec<(Vec<Cell>, Vec<Cell>)>) {
    let ends = |line: &(Vec<Cell>, Vec<Cell>)| depth(&line.0[0].text, "", Decimal::Point);
    let [first, .., before, last] = &lines[..] else { return };
    let all = ends(first).zip(ends(before)).map(|(first, before)| (first.0, before.1));
    if all.is_some() && all == ends(last) {
        let mut sum = lines.pop().map_or(Vec::new(), |line| line.0);
        if let Some(line) = lines.last_mut() {
            line.1.append(&mut sum);
        }
    }
}

/// The name below its depths, where the row above them is no name of its own.
fn above(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<ByDepth> {
    let cells = |row: &Vec<Cell>| filled(row).cloned().collect::<Vec<_>>();
    let any = joined(&[]);
    let count = rows[at..]
        .iter()
        .take(MOST)
        .take_while(|row| line(&any, &cells(row), decimal).is_some())
        .count();
    if count == 0 {
        return None;
    }
    let name = name_alone(rows.get(at + count)?, decimal)?;
    // A name that heads depths of its own is that of those below it.
    if rows.get(at + count + 1).is_some_and(|row| line(&any, &cells(row), decimal).is_some()) {
        return None;
    }
    let mut lines: Vec<_> =
        rows[at..at + count].iter().filter_map(|row| line(&name, &cells(row), decimal)).collect();
    without_sum(&mut lines);
    together(lines, count + 1, false)
}

fn beside(row: &[Cell], decimal: Decimal) -> Option<ByDepth> {
    let cells: Vec<Cell> = filled(row).cloned().collect();
    let (name, mut rest) = cells.split_first()?;
    let depth = |c: &Cell| c.text.contains(['"', '″', 'c', 'i']) && depth_of(&c.text).is_some();
    if !rest.first().is_some_and(depth) || !names_property(name, decimal) {
        return None;
    }
    let mut lines = Vec::new();
    while let Some((own, beside)) = line(name, rest, decimal) {
        lines.push((own, Vec::new()));
        rest = &rest[rest.len() - beside.len()..];
    }
    if let Some(last) = lines.last_mut() {
        last.1 = rest.to_vec();
    }
    if lines.len() < 2 { None } else { together(lines, 1, true) }
}

fn together(lines: Vec<(Vec<Cell>, Vec<Cell>)>, taken: usize, sure: bool) -> Option<ByDepth> {
    let (rows, beside): (Vec<_>, Vec<_>) = lines.into_iter().unzip();
    let beside = beside.into_iter().flatten().filter(|c: &Cell| !is_bar(&c.text)).collect();
    (!rows.is_empty()).then_some(ByDepth { rows, beside, taken, sure })
}

/// `****`: how much there is, drawn.
fn is_bar(text: &str) -> bool {
    text.chars().all(|c| matches!(c, '*' | '=' | '.' | '|' | '#'))
}

/// The name in a row that has nothing else but bars.
fn name_alone(row: &[Cell], decimal: Decimal) -> Option<Cell> {
    let cells: Vec<&Cell> = filled(row).collect();
    let (first, others) = cells.split_first()?;
    let own = match first.text.rsplit_once(' ') {
        Some((name, last)) if is_bar(last) => Cell { text: name.into(), place: first.place },
        _ => (*first).clone(),
    };
    let soil = Label::of(&own.text).unit.is_none() && names_property(&own, decimal);
    (soil && others.iter().all(|c| is_bar(&c.text))).then_some(own)
}

/// The depth that a text begins with, as it is printed, and what follows it.
fn depth_of(text: &str) -> Option<(&str, &str)> {
    depth_at(text, "", Decimal::Point).filter(|_| text.contains(['-', '–']))?;
    let end = text.find(['"', '″', '”']).map_or_else(
        || {
            text.match_indices(' ')
                .map(|(at, _)| at)
                .find(|&at| depth_at(&text[..at], "", Decimal::Point).is_some())
        },
        |at| Some(at + text[at..].chars().next().map_or(1, char::len_utf8)),
    );
    let end = end.unwrap_or(text.len());
    Some((&text[..end], text[end..].trim_start()))
}

/// A depth and its result, as a row with the name before them, and the cells behind.
fn line(name: &Cell, cells: &[Cell], decimal: Decimal) -> Option<(Vec<Cell>, Vec<Cell>)> {
    let (first, rest) = cells.split_first()?;
    let (depth, behind) = depth_of(&first.text)?;
    let (result, rest) = if behind.is_empty() {
        let (result, rest) = rest.split_first()?;
        (result.clone(), rest)
    } else {
        let start = first.place.start + (first.text.len() - behind.len()) as u32;
        let place = super::Place { start, ..first.place };
        (Cell { text: behind.into(), place }, rest)
    };
    let Said::Amount(_, end) = said(&result.text, decimal) else { return None };
    let left = Tail::of(&result.text[end..], decimal).left;
    if !is_result(&result.text, decimal) || !left.as_deref().is_none_or(is_bar) {
        return None;
    }
    let named = Cell { text: format!("{} {depth}", name.text), place: first.place };
    Some((vec![named, result], rest.to_vec()))
}
