//! A table whose lines were lost, as copying from some documents leaves it: the names of its head
//! and all of its rows one after the other in one line, among the words of a whole report. The
//! rows are told by their like numbers of results; what is read of them is always asked.

use super::fold::is_letter;
use super::grid::{joined, words_of};
use super::label::Label;
use super::layout::{Role, role};
use super::number::{Decimal, Said, is_rating, said};
use super::run_together::{Part, Says, parts};
use super::{Cell, prose};

/// A shorter line holds no table, and a longer one has no end. Our choice, bytes.
const SHORTEST: usize = 120;
const LONGEST: usize = 20_000;

/// A line with more cells than this for its length kept its columns. Our choice, bytes a cell.
const LEAST_OF_A_CELL: usize = 100;

/// So many results make a row, and so many names a head. Our choice.
const LEAST: usize = 5;
const LEAST_NAMES: usize = 4;

/// No head takes more words, and no row has more before its results.
const MOST_HEAD: usize = 75;
const MOST_LABEL: usize = 5;

/// Unknown words one after the other that end a head.
const MOST_UNKNOWN: usize = 2;

/// How far the numbers of two rows may be apart: a blank is lost with its line.
const MOST_LOST: usize = 3;

/// What a word is to a table.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Number,
    Depth,
    Rating,
    Word,
}

fn kind_of(word: &Cell, decimal: Decimal) -> Kind {
    let text = word.text.as_str();
    match said(text, decimal) {
        Said::Amount(_, end) if end == text.len() => Kind::Number,
        // Sodium's symbol is no "n/a".
        Said::Missing if text == "Na" => Kind::Word,
        Said::Missing | Said::NotDetected => Kind::Number,
        Said::Range if is_range_of_depth(text) => Kind::Depth,
        _ if text.len() < 4 && is_rating(text) => Kind::Rating,
        _ => Kind::Word,
    }
}

/// `0-18`, `15–30`: no table says the unit of its depths in each row.
fn is_range_of_depth(text: &str) -> bool {
    let whole = |t: &str| t.parse::<u16>().ok();
    let ends = text.split_once(['-', '–']).and_then(|(a, b)| Some((whole(a)?, whole(b)?)));
    ends.is_some_and(|(top, bottom)| top < bottom)
}

/// A row of the table: its first word, the word after its last, and how many numbers it has.
#[derive(Clone, Copy)]
struct Row {
    from: usize,
    to: usize,
    numbers: usize,
}

/// The row that begins at a word.
fn row_at(kinds: &[Kind], from: usize) -> Option<Row> {
    if !matches!(kinds.get(from)?, Kind::Depth | Kind::Word) {
        return None;
    }
    let mut numbers = 0;
    let mut words = 0;
    let mut at = from;
    while at < kinds.len() {
        match kinds[at] {
            Kind::Number => numbers += 1,
            Kind::Rating if numbers > 0 => {}
            _ if numbers >= LEAST => break,
            Kind::Depth if numbers < 3 => {}
            // "BARN 7 18841": a name may have numbers.
            Kind::Word | Kind::Rating if numbers < 2 && words < MOST_LABEL => words += 1,
            _ => return None,
        }
        at += 1;
    }
    (numbers >= LEAST).then_some(Row { from, to: at, numbers })
}

/// The lines that a line is; `None` where it holds no such table.
pub(super) fn lost_lines(row: &[Cell], decimal: Decimal) -> Option<Vec<Vec<Cell>>> {
    // Nearly every line ends here.
    let length: usize = row.iter().map(|c| c.text.len() + 1).sum();
    let figures = || row.iter().flat_map(|c| c.text.bytes()).filter(u8::is_ascii_digit).count();
    if row.len() * LEAST_OF_A_CELL > length
        || !(SHORTEST..LONGEST).contains(&length)
        || figures() < 4 * LEAST
        || prose::is_of_a_study(&row[0].text)
    {
        return None;
    }
    let words = words_of(&joined(row));
    let kinds: Vec<Kind> = words.iter().map(|word| kind_of(word, decimal)).collect();
    let mut lines = Vec::new();
    let mut done = 0;
    let mut at = 0;
    while at < words.len() {
        let Some(rows) = rows_at(&kinds, at) else {
            at += 1;
            continue;
        };
        at = rows.last()?.to;
        let Some(table) = table_of(rows, &words, &kinds, done) else { continue };
        if table.head.start > done {
            lines.push(vec![joined(&words[done..table.head.start])]);
        }
        for line in [table.head.start..table.units, table.units..table.head.end] {
            if !line.is_empty() {
                lines.push(vec![joined(&words[line])]);
            }
        }
        lines.extend(table.rows.iter().map(|row| vec![joined(&words[row.from..row.to])]));
        done = at;
    }
    if done == 0 {
        return None;
    }
    if done < words.len() {
        lines.push(vec![joined(&words[done..])]);
    }
    Some(lines)
}

struct Table {
    head: std::ops::Range<usize>,
    /// Where the units begin that stand below the names.
    units: usize,
    rows: Vec<Row>,
}

/// The rows of which the first begins at a word, two or more.
fn rows_at(kinds: &[Kind], at: usize) -> Option<Vec<Row>> {
    let first = row_at(kinds, at)?;
    let mut rows = vec![first];
    while let Some(row) = rows.last().and_then(|last| row_at(kinds, last.to)) {
        let alike = row.numbers.abs_diff(first.numbers) <= MOST_LOST;
        let by_depth = (kinds[row.from] == Kind::Depth) == (kinds[at] == Kind::Depth);
        if !alike || !by_depth && rows.len() < 2 {
            break;
        }
        rows.push(row);
    }
    (rows.len() > 1).then_some(rows)
}

/// The rows with the head that stands before them.
fn table_of(mut rows: Vec<Row>, words: &[Cell], kinds: &[Kind], done: usize) -> Option<Table> {
    // What stands before the first row's name is the end of the head.
    let number = |k: &Kind| matches!(k, Kind::Number | Kind::Depth);
    let label = |row: &Row| kinds[row.from..].iter().take_while(|k| !number(k)).count();
    rows[0].from += label(&rows[0]).saturating_sub(label(&rows[1]));
    let head = head_before(words, done, rows[0].from)?;
    Some(Table { units: head.1, head: head.0, rows })
}

/// The head that ends at a word, and where its units begin.
fn head_before(words: &[Cell], done: usize, end: usize) -> Option<(std::ops::Range<usize>, usize)> {
    let from = end.saturating_sub(MOST_HEAD).max(done);
    let found = parts(&words[from..end]);
    // A letter may be written out in its part, so that only its place tells its words.
    let first = |part: &Part| {
        words[from..end].partition_point(|word| word.place.start < part.cell.place.start) + from
    };
    let mut at = end;
    let (mut start, mut unknown, mut names) = (end, 0, 0);
    let mut last_name = end.max(1);
    for part in found.iter().rev() {
        let here = first(part);
        let text = part.cell.text.as_str();
        // A date, a number and the end of a sentence are no head.
        let figure = text.starts_with(|c: char| c.is_ascii_digit()) && !text.contains(is_letter);
        if figure || text.ends_with(['.', ':']) && is_nothing(part) {
            break;
        }
        unknown = if is_nothing(part) { unknown + 1 } else { 0 };
        if unknown > MOST_UNKNOWN {
            break;
        }
        if matches!(part.says, Says::Result(_)) {
            names += 1;
            if last_name == end {
                last_name = at;
            }
        }
        if unknown == 0 {
            start = here;
        }
        at = here;
    }
    if names < LEAST_NAMES {
        return None;
    }
    let below: Vec<Part> = found
        .into_iter()
        .filter(|part| part.cell.place.start >= words[last_name - 1].place.end)
        .collect();
    let mut units = below.iter().filter(|part| matches!(part.says, Says::Unit(_)));
    let line = units.next().filter(|_| units.count() > 1);
    let line = line.map(|unit| {
        let at = words.partition_point(|w| w.place.start < unit.cell.place.start);
        // "ID in % dS/m": words below "Sample Depth" begin the line of the units.
        let below = |word: &&Cell| {
            let small = word.text.len() < 3 && word.text.chars().all(char::is_lowercase);
            small || matches!(role(&word.text), Role::Sample(_))
        };
        at - words[last_name..at].iter().rev().take_while(below).count()
    });
    Some((start..end, line.unwrap_or(end)))
}

fn is_nothing(part: &Part) -> bool {
    matches!(part.says, Says::Nothing)
        && part.cell.text.chars().any(is_letter)
        && !matches!(role(&part.cell.text), Role::Sample(_))
        && Label::of(&part.cell.text).words.is_empty()
}
