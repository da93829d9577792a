//! A list of properties whose samples stand beside each other, held by blanks: which number is
//! whose is told by where it stands under the names, whatever ratings, marks and blanks are
//! between.

use std::ops::Range;

use super::Cell;
use super::grid::{filled, joined, words_of};
use super::label::{Label, Quantity};
use super::layout::{Role, is_result, role};
use super::likely_rows::{described, is_missing};
use super::names::Word;
use super::number::{Decimal, Said, is_date, is_rating, said};
use super::run_together::RunTogether;
use super::stacked_heads::is_code;

/// No table has more rows of heads, more samples or more rows.
const MOST_HEADS: usize = 8;
const MOST_SAMPLES: usize = 12;
const MOST_ROWS: usize = 80;

/// Fewer properties are no list.
const LEAST: usize = 4;

/// How many characters a number may stand to the left of its heading, and a rating to the right
/// of its number.
const LEFT: u32 = 3;
const RATED: u32 = 7;

/// Where the names of a list begin at most.
const NAMES: u32 = 6;

/// A row of heads: what its first cell says, and the cells over the samples.
struct Heading<'a> {
    label: Option<&'a Cell>,
    over: Vec<&'a Cell>,
    /// Where aims begin behind the samples.
    end: u32,
}

impl Heading<'_> {
    fn says(&self) -> Role {
        self.label.map_or(Role::Blank, |c| role(c.text.trim_end_matches([':', ' ', '.'])))
    }

    /// Whether it says that it names samples.
    fn is_of_samples(&self) -> bool {
        let sample = |r: Role| matches!(r, Role::Sample(0..10));
        sample(self.says()) || self.over.iter().all(|c| matches!(role(&c.text), Role::Sample(_)))
    }
}

/// A row of the list: its name and, under each sample, its number and rating.
struct Listed {
    name: Cell,
    role: Role,
    results: Vec<Option<(Cell, String)>>,
}

/// The list that begins at a row with the names of its samples.
pub(super) fn across_by_place(
    rows: &[Vec<Cell>],
    at: usize,
    decimal: Decimal,
) -> Option<RunTogether> {
    let first = heading(&rows[at], decimal).filter(Heading::is_of_samples)?;
    let columns = columns(&first.over, first.end);
    // Names above the laboratory's numbers, over nothing that says so.
    let above = |i: &usize| {
        heading(&rows[*i], decimal).filter(|head| {
            head.label.is_none() && fits(head, &columns) && head.over.len() == columns.len()
        })
    };
    let mut heads: Vec<Heading> =
        (at.saturating_sub(2)..at).rev().map_while(|i| above(&i)).collect();
    heads.push(first);
    let mut from = at + 1;
    while from < rows.len() && heads.len() < MOST_HEADS {
        match heading(&rows[from], decimal) {
            Some(head) if fits(&head, &columns) => heads.push(head),
            _ if is_rule(&rows[from]) => {}
            _ => break,
        }
        from += 1;
    }
    // "Indicative guidelines" over the columns behind the samples.
    let aims = rows[from.min(rows.len())..].iter().take(4).flat_map(|row| filled(row)).find(|c| {
        let words: Vec<&str> = c.text.split(' ').take(2).collect();
        let aim = Label::of(&words.join(" ")).has(Word::RangeColumn)
            || words.iter().any(|w| Label::of(w).has(Word::RangeColumn));
        c.place.start >= columns[1].start && aim
    });
    let columns = match aims {
        Some(aim) => {
            let end = aim.place.start.saturating_sub(LEFT);
            let own = columns.into_iter().filter(|c| c.start < end);
            own.map(|c| c.start..c.end.min(end)).collect()
        }
        None => columns,
    };
    for head in &mut heads {
        head.over.retain(|c| columns.iter().any(|column| column.contains(&c.place.start)));
    }
    let mut listed = Vec::new();
    let mut waiting = None;
    // The name of the last row, for those below it that have only their unit or method.
    let mut over = String::new();
    let (mut unmet, mut taken) = (Vec::new(), from);
    for (i, row) in rows.iter().enumerate().skip(from).take(MOST_ROWS) {
        let name = filled(row).next().filter(|c| c.place.start < NAMES);
        if let Some(name) = name {
            over.clone_from(&name.text);
        }
        if filled(row).count() < 2 && !is_rule(row) {
            // A heading among the rows, or a unit alone.
            unmet.push(i);
            if i > taken + 2 {
                break;
            }
            continue;
        }
        let over = if name.is_some() { "" } else { &over };
        match list(row, over, &columns, &mut waiting, decimal) {
            Some(line) => {
                listed.push(line);
                taken = i + 1;
            }
            None => {
                unmet.push(i);
                if i > taken + 2 {
                    break;
                }
            }
        }
    }
    unmet.retain(|i| *i < taken && !is_rule(&rows[*i]));
    let held = |line: &&Listed| matches!(line.role, Role::Results(_));
    if listed.iter().filter(held).count() < LEAST || unmet.len() > listed.len() {
        return None;
    }
    let (heading, roles, rows) = turned(&heads, &listed, columns.len())?;
    Some(RunTogether {
        heading,
        roles,
        rows,
        sure: true,
        unnamed: Vec::new(),
        unmet,
        taken: taken - at,
    })
}

/// A drawn line.
fn is_rule(row: &[Cell]) -> bool {
    filled(row).all(|c| c.text.chars().all(|c| matches!(c, '-' | '=' | '_' | '*')))
}

/// A row that says something of each sample, and of no property.
fn heading<'a>(row: &'a [Cell], decimal: Decimal) -> Option<Heading<'a>> {
    // Nearly every line ends here. In a file one mark parts the cells, and places say nothing.
    let marked = |pair: &[Cell]| pair[1].place.start == pair[0].place.end + 1;
    if row.len() < 2 || row.windows(2).all(marked) {
        return None;
    }
    let all: Vec<&Cell> = filled(row).collect();
    // "Field :" stands before its names, wherever it begins.
    let colon = all.first().is_some_and(|c| c.text.ends_with(':'))
        || all.get(1).is_some_and(|c| c.text == ":");
    let cells: Vec<&Cell> = all.into_iter().filter(|c| c.text != ":").collect();
    let (first, others) = cells.split_first()?;
    if cells.iter().any(|c| c.text.contains(": ") || c.text.len() > 40) {
        return None;
    }
    let of = |text: &str| role(text.trim_end_matches([':', ' ', '.']));
    let soil = |c: &&Cell| matches!(of(&c.text), Role::Results(_) | Role::Refused(_));
    let column_word = |c: &&Cell| {
        matches!(of(&c.text), Role::Values | Role::Units | Role::Ratings | Role::Methods)
    };
    // "P1 Pradera" is the name of a plot.
    let of_samples = matches!(of(&first.text), Role::Sample(_));
    let named = others.iter().filter(|c| !of_samples && soil(c)).count();
    // "Sample: Orchard   Rec'd 28/12/2017" says its pieces.
    let sentence = others.iter().any(|c| c.text.ends_with(':') || is_date(&c.text))
        && !others.iter().all(|c| is_date(&c.text));
    let aim = |c: &Cell| Label::of(&c.text).has(Word::RangeColumn);
    if cells.iter().filter(|c| !aim(c)).any(column_word)
        || named * 2 > others.len()
        || soil(first)
        || sentence
    {
        return None;
    }
    let number = |c: &&Cell| c.text.contains(['.', ',']) && is_result(&c.text, decimal);
    if others.iter().any(number) {
        return None;
    }
    // Over the names of the tests stands what the row says, or nothing.
    let labelled = first.place.start < NAMES || colon;
    let mut over: Vec<&Cell> = if labelled { others.to_vec() } else { cells.clone() };
    // Aims behind the samples are none of theirs.
    let mut end = u32::MAX;
    while let Some(last) = over.last().filter(|c| aim(c)) {
        end = last.place.start.saturating_sub(LEFT);
        over.pop();
    }
    let wide = over.windows(2).all(|pair| pair[1].place.start > pair[0].place.end + 1);
    let held = over.iter().all(|c| c.place.end > c.place.start);
    ((2..=MOST_SAMPLES).contains(&over.len()) && wide && held).then(|| Heading {
        label: labelled.then_some(*first),
        over,
        end,
    })
}

/// Where each sample's column begins and ends.
fn columns(over: &[&Cell], end: u32) -> Vec<Range<u32>> {
    let starts: Vec<u32> = over.iter().map(|c| c.place.start.saturating_sub(LEFT)).collect();
    let ends = starts[1..].iter().copied().chain([end]);
    starts.iter().zip(ends).map(|(&start, end)| start..end).collect()
}

/// Whether a row of heads has a cell in each column.
fn fits(head: &Heading<'_>, columns: &[Range<u32>]) -> bool {
    head.over.len() <= columns.len()
        && head.over.iter().all(|c| columns.iter().any(|column| column.contains(&c.place.start)))
}

/// A row of the list; `None` where a number stands in no column or two in one.
fn list(
    row: &[Cell],
    over: &str,
    columns: &[Range<u32>],
    waiting: &mut Option<Quantity>,
    decimal: Decimal,
) -> Option<Listed> {
    if filled(row).skip(1).any(|c| c.text.contains(": ")) {
        return None;
    }
    let end = columns.last()?.end;
    let own = |w: &Cell| w.text != ":" && w.place.start < end;
    let words: Vec<Cell> = filled(row).flat_map(words_of).filter(own).collect();
    let border = columns.first()?.start;
    let bare = |cell: &Cell| match said(&cell.text, decimal) {
        Said::Amount(_, end) => end == cell.text.len(),
        Said::NotDetected => true,
        _ => false,
    };
    let from = words.iter().position(|w| w.place.start >= border && (bare(w) || is_missing(w)))?;
    let mut name = joined(&words[..from]);
    if name.text.is_empty() {
        name = Cell { text: over.into(), place: words[from].place };
    }
    let label = Label::of(name.text.trim_end_matches([':', ' ']));
    if name.text.matches(':').count() > 1 {
        return None;
    }
    let over = if name.text == over { "" } else { over };
    let role = match described(over, name.text.trim_end_matches([':', ' ', '.'])) {
        Some(_) if label.has(Word::Advice) => return None,
        // "Desired value" stands beside the name, and "Value found" below it.
        Some(quantity) if label.has(Word::RangeColumn) => {
            *waiting = Some(quantity);
            return None;
        }
        None if label.has(Word::ResultColumn) => match waiting.take() {
            Some(quantity) => Role::Results(Box::new(quantity)),
            None => return None,
        },
        Some(quantity) => Role::Results(Box::new(quantity)),
        None => Role::Other,
    };
    // Each number with what stands behind it.
    let mut numbers: Vec<(Cell, String)> = Vec::new();
    let mut words = words[from..].iter().peekable();
    let mut end = 0;
    while let Some(word) = words.next() {
        let sign = matches!(word.text.as_str(), "<" | ">");
        let word = match words.peek() {
            Some(next) if sign => {
                let both = joined(&[word.clone(), (*next).clone()]);
                words.next();
                both
            }
            _ => word.clone(),
        };
        if bare(&word) || is_missing(&word) {
            end = word.place.end;
            let text = if is_missing(&word) { String::new() } else { word.text };
            numbers.push((Cell { text, place: word.place }, String::new()));
        } else if word.place.start < end + RATED
            && let Some((_, rating)) = numbers.last_mut()
        {
            let mark = word.text.chars().all(|c| matches!(c, '*' | '+' | ')' | '0'..='9'));
            if is_rating(&word.text) || word.text.len() < 3 || mark {
                let blank = if rating.is_empty() { "" } else { " " };
                rating.extend([blank, &word.text]);
                end = word.place.end;
            }
        }
    }
    // As many as there are samples stand in their order, fewer each in its column.
    let mut results: Vec<Option<(Cell, String)>> = vec![None; columns.len()];
    let all = numbers.len() == columns.len();
    for (nth, number) in numbers.into_iter().enumerate() {
        let at = number.0.place.start;
        let column = if all { nth } else { columns.iter().position(|c| c.contains(&at))? };
        if results[column].is_some() {
            return None;
        }
        results[column] = Some(number);
    }
    Some(Listed { name, role, results })
}

/// The list with a row for each sample.
#[allow(clippy::type_complexity, reason = "a table: its heading, its roles and its rows")]
fn turned(
    heads: &[Heading<'_>],
    listed: &[Listed],
    width: usize,
) -> Option<(Vec<Cell>, Vec<Role>, Vec<Vec<Cell>>)> {
    let full = |head: &&Heading<'_>| head.over.len() == width;
    let rank = |head: &&Heading<'_>| {
        let codes = head.over.iter().all(|c| is_code(&c.text));
        let short = head.over.iter().all(|c| c.text.chars().count() < 4);
        let same = (1..width).any(|i| head.over[..i].iter().any(|c| c.text == head.over[i].text));
        let named = match head.says() {
            Role::Sample(rank) => rank,
            Role::Depth | Role::Texture => 40,
            _ if head.label.is_none() => 2,
            _ => 12,
        };
        named + if codes { 10 } else { 0 } + if short { 6 } else { 0 } + if same { 15 } else { 0 }
    };
    let best = heads.iter().filter(full).min_by_key(rank)?;
    let deep = heads.iter().filter(full).find(|head| matches!(head.says(), Role::Depth));
    let mut heading = vec![joined(&[])];
    let mut roles = vec![Role::Sample(1)];
    // Names over nothing that says so may take two rows: "Field 3" over "Long meadow".
    let parts: Vec<&Heading> = match best.label {
        None => heads.iter().rev().filter(|head| head.label.is_none() && full(head)).collect(),
        Some(_) => vec![best],
    };
    let name =
        |i: usize| joined(&parts.iter().map(|head| head.over[i].clone()).collect::<Vec<_>>());
    let mut rows: Vec<Vec<Cell>> = (0..width).map(|i| vec![name(i)]).collect();
    if let Some(deep) = deep {
        heading.extend(deep.label.cloned());
        roles.push(Role::Depth);
        for (row, cell) in rows.iter_mut().zip(&deep.over) {
            row.push((*cell).clone());
        }
    }
    for line in listed {
        heading.extend([line.name.clone(), joined(&[])]);
        roles.extend([line.role.clone(), Role::Ratings]);
        for (row, result) in rows.iter_mut().zip(&line.results) {
            let (cell, rating) = result.clone().unwrap_or_else(|| (joined(&[]), String::new()));
            let place = cell.place;
            row.extend([cell, Cell { text: rating, place }]);
        }
    }
    Some((heading, roles, rows))
}
