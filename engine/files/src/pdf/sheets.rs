//! Pages to text. A sheet too wide for one page is printed as left parts and
//! right parts on pages of their own; here they come side by side again.

use super::columns::is_result;
use super::table::Row;

/// Rows at the same height are at most so far apart, points.
const LEVEL: f64 = 0.75;

/// How a page stands to an earlier one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Fit {
    /// It holds further columns of the same rows.
    Beside,
    /// It may.
    Doubt,
    No,
}

/// The text of all pages.
pub(super) fn text(mut pages: Vec<Vec<Row>>, notes: &mut Vec<String>) -> String {
    let mut first = 0;
    let mut before = 1;
    while first < pages.len() {
        let (mut down, mut across) = parts(&pages, first, notes);
        // The next rows of a sheet whose parts were printed from left to right.
        if across == 1 && before > 1 && first + before <= pages.len() {
            let whole = (1..before)
                .all(|part| beside(&pages[first], &pages[first + part], false) == Fit::Beside);
            if whole {
                (down, across) = (1, before);
            }
        }
        before = if down == 1 { across } else { 1 };
        for right in 1..across {
            for page in first..first + down {
                let (left, rest) = pages.split_at_mut(first + right * down);
                put_beside(&mut left[page], &mut rest[page - first]);
            }
        }
        if across > 1 {
            notes.push(format!(
                "The table on pages {} to {} was too wide for one page. Its parts were put side by side, row by row.",
                first + 1,
                first + down * across
            ));
        }
        first += down * across;
    }
    let mut text = String::new();
    for (number, rows) in (1..).zip(&pages) {
        text.push_str(&format!("[page {number}]\n"));
        for row in rows {
            let line = row.cells.join("\t");
            let line = line.trim_end_matches('\t');
            text.push_str(if row.alone { line.trim_start_matches('\t') } else { line });
            text.push('\n');
        }
    }
    text
}

/// How many pages one part of the sheet that begins on page `first` takes,
/// and how many parts it has.
fn parts(pages: &[Vec<Row>], first: usize, notes: &mut Vec<String>) -> (usize, usize) {
    let left = pages.len() - first;
    for down in 1..=left / 2 {
        let fits = |part: usize| {
            let at = first + part * down;
            if at + down > pages.len() {
                return Fit::No;
            }
            let mut whole = beside(&pages[first], &pages[at], true);
            for page in 1..down {
                if whole == Fit::Beside {
                    whole = beside(&pages[first + page], &pages[at + page], false);
                }
            }
            whole
        };
        match fits(1) {
            Fit::Beside => {
                let across = (2..).find(|&part| fits(part) != Fit::Beside).unwrap_or(2);
                return (down, across);
            }
            Fit::Doubt => notes.push(format!(
                "Pages {} and {} may be the left and the right part of one table. Their rows do not match, so they were left apart.",
                first + 1,
                first + down + 1
            )),
            Fit::No => {}
        }
    }
    (1, 1)
}

/// Whether the rows of `b` continue those of `a` to the right. The first page
/// of a part must have a head.
fn beside(a: &[Row], b: &[Row], head: bool) -> Fit {
    let own: Vec<&Row> = b.iter().filter(|row| !is_repeated(a, row)).collect();
    let Some((top, body)) = own.split_first() else { return Fit::No };
    if head {
        let Some(above) = at(a, top.last) else { return Fit::No };
        let words = |row: &Row| !row.cells.iter().any(|c| is_result(c));
        let filled = above.cells.iter().filter(|c| !c.is_empty()).count();
        if body.is_empty() || filled < 2 || !words(top) || !words(above) {
            return Fit::No;
        }
    }
    // The right part has no names of its own: its columns are results.
    let names = body
        .iter()
        .filter(|row| row.cells.iter().find(|c| !c.is_empty()).is_some_and(|c| !is_result(c)));
    if names.count() * 3 > body.len() {
        return Fit::No;
    }
    let level = own.iter().filter(|row| at(a, row.last).is_some()).count();
    if level == own.len() {
        Fit::Beside
    } else if head && level * 3 > own.len() * 2 && level > 2 {
        Fit::Doubt
    } else {
        Fit::No
    }
}

fn is_level(row: &Row, y: f64) -> bool {
    (row.y - LEVEL..row.last + LEVEL).contains(&y)
}

fn at(rows: &[Row], y: f64) -> Option<&Row> {
    rows.iter().find(|row| is_level(row, y))
}

/// A line that stands on every page: the same but for its numbers.
fn is_repeated(a: &[Row], row: &Row) -> bool {
    let bare = |row: &Row| -> String {
        row.cells.concat().chars().filter(|c| !c.is_ascii_digit()).collect()
    };
    let text = bare(row);
    text.chars().filter(|c| c.is_alphabetic()).count() > 2
        && at(a, row.y).is_some_and(|other| bare(other) == text)
}

/// Appends the rows of `b` to those of `a`.
fn put_beside(a: &mut [Row], b: &mut Vec<Row>) {
    let own: Vec<bool> = b.iter().map(|row| !is_repeated(a, row)).collect();
    let fits = |own: (&Row, &bool), row: &Row| *own.1 && is_level(row, own.0.last);
    let taken = |row: &&mut Row| b.iter().zip(&own).any(|r| fits(r, row));
    let width = a.iter_mut().filter(taken).map(|row| row.cells.len()).max().unwrap_or(0);
    let wide = b.iter().zip(&own).filter(|r| *r.1).map(|r| r.0.cells.len()).max().unwrap_or(0);
    for row in a.iter_mut().filter(taken) {
        row.alone = false;
        row.cells.resize(width, String::new());
        let beside = b.iter().zip(&own).find(|r| fits(*r, row)).map(|r| r.0);
        row.cells.extend(beside.into_iter().flat_map(|r| r.cells.iter().cloned()));
        row.cells.resize(width + wide, String::new());
    }
    let mut own = own.into_iter();
    b.retain(|_| !own.next().unwrap_or(false));
}
