//! A table of samples whose columns are headed by several rows: names broken over lines, units
//! below them, and groups such as `Exchangeable cations (cmol/kg)` over the columns up to the
//! next.

use std::ops::Range;

use super::Cell;
use super::fold::is_letter;
use super::grid::{cell_at, filled, text_at, with_their_own, words_of};
use super::label::{Label, Quantity};
use super::layout::{Role, is_result, names_a_report, names_property, role};
use super::names::Word;
use super::number::{Decimal, is_range, is_rating};
use super::place::suits;
use super::sample_names::identities;
use crate::quantity::Unit;

/// No table has more rows of heads.
const MOST_HEADS: usize = 6;

/// How many rows of a table held by blanks are brought into columns.
const REACH: usize = 600;

/// Such a table.
pub(super) struct Headed {
    pub heading: Vec<Cell>,
    pub roles: Vec<Role>,
    /// The rows below the heads in columns, where they were not in columns before.
    pub rows: Option<Vec<Vec<Cell>>>,
    /// How many rows of heads there are.
    pub heads: usize,
    /// Those among them that hold limits and head nothing.
    pub ranges: Vec<Vec<Cell>>,
}

/// The table of samples that begins at a row with two rows of heads or more.
pub(super) fn headed(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Headed> {
    let few = |row: &Vec<Cell>| filled(row).count() < 2;
    if few(&rows[at]) {
        return None;
    }
    let results = |row: &&Vec<Cell>| row.iter().filter(|c| is_result(&c.text, decimal)).count();
    let near = &rows[at..rows.len().min(at + MOST_HEADS + 1)];
    let heads = near.iter().position(|row| results(&row) > 1 && !is_years(row))?;
    // A line of text between ends the head, and what says its piece heads nothing.
    let says =
        |row: &Vec<Cell>| row.iter().any(|c| c.text.contains(": ") || names_a_report(&c.text));
    if heads < 2 || !rows[at].iter().any(|c| is_name(&c.text)) && !is_years(&rows[at]) {
        return None;
    }
    let unit = |row: &Vec<Cell>| filled(row).all(|c| Label::of(&c.text).only_unit().is_some());
    let ruled = |row: &Vec<Cell>| filled(row).all(|c| c.text.chars().all(is_of_a_line));
    if near[..heads].iter().any(|row| few(row) && !unit(row) && !ruled(row) || says(row)) {
        return None;
    }
    let below = &rows[at + heads..rows.len().min(at + heads + 3)];
    let mut sides: Vec<&str> = below
        .iter()
        .filter_map(|r| r.first())
        .filter(|c| names_property(c, decimal))
        .map(|c| c.text.as_str())
        .collect();
    sides.dedup();
    if sides.len() > 1 {
        return None;
    }
    let limits = |row: &&Vec<Cell>| {
        let ranges = filled(row).filter(|c| is_range(&c.text, decimal)).count();
        ranges > 1 && ranges * 2 >= filled(row).count()
    };
    let (ranges, named): (Vec<Vec<Cell>>, Vec<Vec<Cell>>) =
        near[..heads].iter().cloned().partition(|row| limits(&row));
    let (over, shaped) = if in_columns(&near[..=heads]) {
        (by_index(&named), None)
    } else {
        let (over, shaped) = by_place(rows, at, heads, decimal)?;
        (over, Some(shaped))
    };
    let (heading, roles): (Vec<Cell>, Vec<Role>) = over.iter().map(Over::column).unzip();
    let roles = only_latest(roles, &over);
    let row = shaped.as_ref().map_or(&rows[at + heads], |shaped| &shaped[0]);
    let held = |i: &usize| is_result(text_at(row, *i), decimal);
    let named = (0..roles.len()).filter(|&i| matches!(roles[i], Role::Results(_)));
    (named.filter(held).count() > 1).then_some(Headed {
        heading,
        roles,
        rows: shaped,
        heads,
        ranges,
    })
}

/// The roles of a head whose first cell is the group of the others and not over the names of
/// samples: `Base saturation (%)   K   Ca   Mg` over `Upper field  1.6  48.4  6.7`.
pub(super) fn with_first_as_group(
    heading: &[Cell],
    below: &[Vec<Cell>],
    mut roles: Vec<Role>,
    decimal: Decimal,
) -> Vec<Role> {
    let Some(first) = heading.first() else { return roles };
    let label = Label::of(&first.text);
    let group = label.is_group();
    let names = below.iter().take(3).all(|row| {
        // "6 Upper field" is a name.
        let name = |c: &Cell| !is_result(&c.text, decimal) || c.text.contains(is_letter);
        row.first().is_some_and(|c| !c.is_blank() && name(c))
    });
    if !group || !names || below.is_empty() || matches!(roles[0], Role::Sample(_)) {
        return roles;
    }
    roles[0] = Role::Sample(1);
    for (role, cell) in roles.iter_mut().zip(heading).skip(1) {
        if let Role::Results(quantity) = role {
            let over = Over { own: vec![cell.clone()], groups: vec![first.text.clone()] };
            *role = over.with_groups((**quantity).clone());
        }
    }
    roles
}

/// Whether a cell of a head may be part of a property's name.
fn is_name(text: &str) -> bool {
    let label = Label::of(text);
    label.is_soil() || label.unit.is_some() || !label.methods.is_empty()
}

/// Whether the rows hold their columns by number, as those of a file do: a blank cell between
/// two marks has no width, while one that blanks held has that of its column.
fn in_columns(rows: &[Vec<Cell>]) -> bool {
    let marked = |cell: &Cell| cell.is_blank() && cell.place.start == cell.place.end;
    let full = rows.iter().all(|row| row.len() == rows[0].len() && !row.iter().any(Cell::is_blank));
    full || rows.iter().flatten().any(marked)
}

/// What stands over one column: its own words from the top, and those of its groups.
#[derive(Clone, Debug, Default)]
struct Over {
    own: Vec<Cell>,
    groups: Vec<String>,
}

/// The heads by the numbers of their columns: a cell with blanks to its right stands over them
/// too, as far as something stands below it and below them.
fn by_index(heads: &[Vec<Cell>]) -> Vec<Over> {
    let width = heads.iter().map(Vec::len).max().unwrap_or(0);
    let mut over = vec![Over::default(); width];
    for (nth, head) in heads.iter().enumerate() {
        let below = &heads[nth + 1..];
        let below_at = |i: usize| below.iter().any(|row| cell_at(row, i).is_some());
        let mut group: Option<&Cell> = None;
        for (i, over) in over.iter_mut().enumerate() {
            match cell_at(head, i) {
                Some(cell) => {
                    let next = cell_at(head, i + 1).is_none() && i + 1 < width;
                    let over_all = below.is_empty() && is_other_unit(&cell.text);
                    group = (next && (over_all || below_at(i) && below_at(i + 1))).then_some(cell);
                    match group {
                        Some(cell) => over.groups.push(cell.text.clone()),
                        None => over.own.push(cell.clone()),
                    }
                }
                None if below_at(i) || below.is_empty() && !over.own.is_empty() => {
                    over.groups.extend(group.map(|g| g.text.clone()));
                }
                None => group = None,
            }
        }
    }
    over
}

/// Whether a cell is a unit that results of a soil's store have not: `meq/L`, of what is dissolved.
fn is_other_unit(text: &str) -> bool {
    text.contains('/') && !text.contains(' ') && Label::of(text).unit.is_none()
}

/// Of the columns of several years, `2019` and `2023` over the same names, those of the last.
fn only_latest(mut roles: Vec<Role>, over: &[Over]) -> Vec<Role> {
    let year = |over: &Over| over.groups.iter().find_map(|g| year_of(g));
    let years: Vec<Option<u32>> = over.iter().map(year).collect();
    let Some(last) = years.iter().flatten().max().copied() else { return roles };
    for (role, year) in roles.iter_mut().zip(years) {
        if matches!(role, Role::Results(_)) && year.is_some_and(|year| year < last) {
            *role = Role::Refused("an earlier result".into());
        }
    }
    roles
}

/// Whether a row holds nothing but the years over its columns.
pub(super) fn is_years(row: &[Cell]) -> bool {
    filled(row).count() > 1 && filled(row).all(|c| year_of(&c.text).is_some())
}

/// The year that a heading is, alone or behind one word: `2019`, `Autumn 2019`.
fn year_of(heading: &str) -> Option<u32> {
    let last = heading.split_whitespace().last()?;
    let year: u32 = last.parse().ok()?;
    (heading.split_whitespace().count() < 3 && (1950..2100).contains(&year)).then_some(year)
}

/// Where a column stands in the line.
type Span = Range<u32>;

fn meets(a: &Span, b: &Span) -> bool {
    a.start < b.end && b.start < a.end
}

fn span(cell: &Cell) -> Span {
    cell.place.start..cell.place.end
}

/// The heads and the rows below them by where they stand in the line.
fn by_place(
    rows: &[Vec<Cell>],
    at: usize,
    heads: usize,
    decimal: Decimal,
) -> Option<(Vec<Over>, Vec<Vec<Cell>>)> {
    let below = &rows[at + heads..rows.len().min(at + heads + REACH)];
    // A list of codes and names below the results is none of them.
    let end = (0..below.len()).find(|&i| identities(below, i).is_some()).unwrap_or(below.len());
    let below: Vec<Vec<Cell>> = below[..end].iter().map(|row| with_ratings(row, decimal)).collect();
    // The fullest row has the columns; a group over several of them is none.
    let all = rows[at..at + heads].iter().chain(below.iter().take(1));
    let ruler = all.max_by_key(|row| filled(row).count())?;
    let mut columns: Vec<Span> = filled(ruler).map(span).collect();
    if columns.len() < 4 {
        return None;
    }
    let mut over = vec![Over::default(); columns.len()];
    for head in &rows[at..at + heads] {
        // "RATE" over and over is the laboratory's rating, not a rate to spread.
        let rate = |cell: &Cell| cell.text == "RATE";
        let rates = head.iter().flat_map(words_of).filter(rate).count() > 1;
        let all = filled(head).flat_map(|cell| words_apart(cell, &columns));
        let all = all.map(|mut cell| {
            cell.text = if rates { cell.text.replace("RATE", "") } else { cell.text };
            cell
        });
        let all: Vec<(Cell, bool)> = all.flat_map(|cell| pieces(&cell)).collect();
        for (nth, (plain, drawn)) in all.iter().enumerate() {
            let plain = plain.clone();
            if *drawn {
                // A drawn line stands for all columns between its neighbours.
                let from = nth.checked_sub(1).map_or(0, |i| all[i].0.place.end);
                let to = all.get(nth + 1).map_or(u32::MAX, |next| next.0.place.start);
                let within = |i: &usize| columns[*i].start >= from && columns[*i].end <= to;
                let within = (0..columns.len()).filter(within);
                within.for_each(|i| over[i].groups.push(plain.text.clone()));
                continue;
            }
            let mut under = columns_at(&columns, &span(&plain));
            if under.is_empty() {
                // Over nothing, as `Legal land description` where nobody gave one.
                let Some(near) = nearest(&columns, &span(&plain)) else { continue };
                under.push(near);
            }
            match &under[..] {
                &[only] => {
                    // Two names of one row over the same column stand beside theirs.
                    let line = |c: &Cell| c.place.line == plain.place.line;
                    if over[only].own.iter().any(line) {
                        return None;
                    }
                    over[only].own.push(plain);
                }
                several => {
                    // It goes on to the right as far as nothing else stands in its row.
                    let next = head.iter().map(span).find(|s| s.start > plain.place.end);
                    let open = |i: &usize| next.as_ref().is_none_or(|n| columns[*i].end < n.start);
                    let beyond = several[several.len() - 1] + 1..columns.len();
                    let all = several.iter().copied().chain(beyond.take_while(open));
                    all.for_each(|i| over[i].groups.push(plain.text.clone()));
                }
            }
        }
    }
    // A column reaches as far as the words over it.
    for (column, over) in columns.iter_mut().zip(&over) {
        for own in over.own.iter().map(span) {
            *column = column.start.min(own.start)..column.end.max(own.end);
        }
    }
    let text = |row: &&Vec<Cell>| {
        filled(row).count() < 2 || row.iter().any(|c| is_result(&c.text, decimal))
    };
    let shaped: Vec<Vec<Cell>> =
        below.iter().take_while(text).map_while(|row| placed(row, &columns)).collect();
    (!shaped.is_empty()).then_some((over, shaped))
}

/// A row with each rating in the cell of its number: `12  M` is one.
fn with_ratings(row: &[Cell], decimal: Decimal) -> Vec<Cell> {
    with_their_own(row, |last, cell| {
        // "N" and "VH": the letters of any laboratory's classes.
        let letters = cell.text.bytes().all(|b| b.is_ascii_uppercase());
        let rating = !cell.is_blank() && cell.text.len() < 4 && (letters || is_rating(&cell.text));
        let near = cell.place.start.saturating_sub(last.place.end) < 5;
        rating && near && is_result(&last.text, decimal)
    })
}

/// The words of a head's cell as cells, where each stands over a column of its own and they are
/// no group: `NUMBER MATTER`, `ppm RATE ppm RATE`.
fn words_apart(cell: &Cell, columns: &[Span]) -> Vec<Cell> {
    // "(ppm)(ppm)" are two.
    let spaced = Cell { text: cell.text.replace(")(", ") ("), place: cell.place };
    let mut words = words_of(&spaced);
    // The blanks that were put in are none of the line.
    let put_in = cell.text.matches(")(").count();
    for (nth, word) in words.iter_mut().enumerate() {
        let before = nth.min(put_in) as u32;
        word.place.start -= before;
        word.place.end -= before;
    }
    let over: Vec<usize> = words
        .iter()
        .filter_map(|word| match columns_at(columns, &span(word))[..] {
            [] => nearest(columns, &span(word)),
            [only] => Some(only),
            _ => None,
        })
        .collect();
    let each = over.len() == words.len() && over.windows(2).all(|pair| pair[0] < pair[1]);
    let again = (1..words.len()).any(|i| words[..i].iter().any(|w| w.text == words[i].text));
    let group = Label::of(&cell.text).is_group();
    if words.len() > 1 && each && (again || !group) { words } else { vec![cell.clone()] }
}

fn is_of_a_line(c: char) -> bool {
    matches!(c, '-' | '_' | '=')
}

/// The pieces of a head's cell: `mg/dm3 ---- mmolc/dm3 ----` are two, and the second stands over
/// all that its line covers; with each piece whether it is such a one.
fn pieces(cell: &Cell) -> Vec<(Cell, bool)> {
    let drawn = |word: &str| word.len() > 1 && word.chars().all(is_of_a_line);
    let mut found: Vec<(Cell, bool)> = Vec::new();
    let mut start = cell.place.start;
    // Whether the last piece began with a line, which may close it.
    let mut in_line = false;
    for word in cell.text.split(' ') {
        let end = start + word.chars().count() as u32;
        let opens = drawn(word) && !in_line;
        match found.last_mut().filter(|_| !opens) {
            Some((piece, _)) => {
                if !drawn(word) && !word.is_empty() {
                    piece.text = format!("{} {word}", piece.text).trim().into();
                }
                piece.place.end = end;
            }
            None => {
                let text = if drawn(word) { String::new() } else { word.into() };
                let place = super::Place { start, end, ..cell.place };
                found.push((Cell { text, place }, drawn(word)));
            }
        }
        in_line = if drawn(word) { opens } else { in_line };
        start = end + 1;
    }
    found.retain(|(piece, _)| !piece.text.is_empty());
    found
}

fn columns_at(columns: &[Span], span: &Span) -> Vec<usize> {
    (0..columns.len()).filter(|&i| meets(&columns[i], span)).collect()
}

fn nearest(columns: &[Span], span: &Span) -> Option<usize> {
    let apart = |c: &Span| c.start.saturating_sub(span.end).max(span.start.saturating_sub(c.end));
    (0..columns.len()).min_by_key(|&i| apart(&columns[i])).filter(|&i| apart(&columns[i]) < 3)
}

/// A row with each cell in its column: as many as there are columns stand in their order, fewer
/// must stand under one heading each.
fn placed(row: &[Cell], columns: &[Span]) -> Option<Vec<Cell>> {
    let count = filled(row).count();
    if count < 2 {
        return Some(row.to_vec());
    }
    if count == columns.len() {
        return Some(filled(row).cloned().collect());
    }
    let line = row.first().map_or(0, |c| c.place.line);
    let blank = |column: &Span| {
        let (start, end) = (column.start, column.end);
        Cell { text: String::new(), place: super::Place { line, start, end } }
    };
    let mut cells: Vec<Cell> = columns.iter().map(blank).collect();
    for cell in filled(row) {
        let under = columns_at(columns, &span(cell));
        let column = match under[..] {
            [] => nearest(columns, &span(cell))?,
            [only] => only,
            _ => return None,
        };
        if !cells[column].is_blank() {
            return None;
        }
        cells[column] = cell.clone();
    }
    Some(cells)
}

impl Over {
    /// Its own words: those that a hyphen parts are one, and "rate" below a name and its unit says
    /// only that the laboratory rates it.
    fn text(&self) -> String {
        let rates = |c: &&Cell| {
            let label = Label::of(&c.text);
            label.has(Word::RatingColumn) && label.unknown.is_empty() && label.words.len() == 1
        };
        let named = self.own.len() > 2 && self.own.iter().any(|c| Label::of(&c.text).is_soil());
        let mut text = String::new();
        for cell in self.own.iter().filter(|c| !(named && rates(c))) {
            let word = text.strip_suffix('-').is_some_and(|t| t.ends_with(char::is_lowercase));
            let broken = word
                && cell.text.starts_with(char::is_lowercase)
                && Label::of(&cell.text).only_unit().is_none();
            if broken {
                text.pop();
            } else if !text.is_empty() {
                text.push(' ');
            }
            text.push_str(&cell.text);
        }
        text
    }

    /// The heading of the column and what it holds.
    fn column(&self) -> (Cell, Role) {
        let text = self.text();
        let place = self.own.last().map_or_else(super::Place::default, |c| c.place);
        let heading = |text: &str| Cell { text: text.trim().into(), place };
        // The words nearest to the results say most.
        let own = role(&text);
        let whole = format!("{} {text}", self.groups.join(" "));
        match own {
            Role::Results(quantity) => {
                let role = self.with_groups(*quantity);
                (heading(&text), role)
            }
            // "pH" over "H2O" and "KCl".
            _ if !self.groups.is_empty()
                && !text.is_empty()
                && Label::of(&text).unknown.is_empty()
                && !matches!(own, Role::Sample(_) | Role::Depth) =>
            {
                let groups = self.groups.iter().rev();
                let named = groups.map(|g| role(&format!("{g} {text}")));
                let found = named.into_iter().find(|r| matches!(r, Role::Results(_)));
                let words = self.groups.iter().any(|g| Label::of(g).is_soil());
                match found.filter(|_| words) {
                    Some(role) => (heading(&whole), role),
                    None => (heading(&text), own),
                }
            }
            _ => (heading(&text), own),
        }
    }

    /// A result with the unit, the method and the share that its groups name.
    fn with_groups(&self, mut quantity: Quantity) -> Role {
        let text = self.text();
        for group in self.groups.iter().rev() {
            let label = Label::of(group);
            if is_other_unit(group) && quantity.property.shares_unit() && quantity.unit.is_none() {
                return Role::Refused(format!("its unit “{group}” is not one of a soil's store"));
            }
            if label.is_saturation() && quantity.unit.is_none_or(|u| u.unit == Unit::Percent) {
                match Label::of(&format!("{group} {text}")).quantity() {
                    Ok(share) => quantity = share,
                    Err(why) => return Role::Refused(why),
                }
                continue;
            }
            // Two units over one column: which of them is its own can't be told.
            let other = label.unit.is_some_and(|u| {
                suits(quantity.property, u)
                    && quantity.unit.is_some_and(|own| own.unit != u.unit)
                    && text.split(' ').any(|word| Label::of(word).only_unit().is_some())
            });
            if other && !label.is_saturation() {
                quantity.unit = None;
                continue;
            }
            let unit = label.unit.filter(|u| {
                quantity.unit.is_none() && suits(quantity.property, *u) && !label.is_saturation()
            });
            quantity.unit = quantity.unit.or(unit);
            let both = Label::of(&format!("{group} {text}")).quantity().ok();
            let method = both.filter(|b| b.property == quantity.property).and_then(|b| b.method);
            quantity.method = quantity.method.or(method);
        }
        Role::Results(Box::new(quantity))
    }
}
