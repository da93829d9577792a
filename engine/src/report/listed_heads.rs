//! The heads of a table copied one below the other, `pH`, `P mg/L`, `K mg/L`, over rows that kept
//! their cells, as `East | 6.2 | 31 | 188`, or that have a cell a line too. They are counted off,
//! which is to be asked.

use super::Cell;
use super::about::depth;
use super::apart::{Apart, can_be};
use super::fold::squash;
use super::grid::{filled, joined};
use super::label::Label;
use super::layout::{Role, is_result, role};
use super::names::Word;
use super::number::{Decimal, Said, said};
use crate::quantity::Unit;
use crate::soil::Property;

/// No head takes more lines, and fewer names are none.
const MOST_LINES: usize = 60;
const LEAST: usize = 3;

/// No table has more columns before its results, more samples, or a longer heading over some.
const MOST_LEAD: usize = 4;
const MOST_SAMPLES: usize = 500;
const LONGEST: usize = 60;

/// No head has more words, and within so many lines it stands.
const MOST_ABOVE: usize = 12;
const MOST_WORDS: usize = 8;

/// The heads of a table.
#[derive(Default)]
struct Heads {
    /// Whether a word that nobody knows is a head.
    own: bool,
    /// Those before the results: what names a sample, or says how deep it lies.
    lead: Vec<Cell>,
    /// `None` for a head that nobody knows.
    results: Vec<(Cell, Option<Property>)>,
    /// The units one below the other that follow a name.
    units: Vec<Cell>,
}

/// The table whose first head stands at a row.
pub(super) fn listed_heads(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Apart> {
    let head = first_head(rows, at, decimal)?;
    // A word that nobody knows is a head of its own, or says more of the one above it.
    [true, false].into_iter().find_map(|own| table(rows, at, head, own, decimal))
}

/// The row of the first head; words that nobody knows may stand over it.
fn first_head(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<usize> {
    let begins = |c: &Cell| {
        c.text.split(' ').count() <= MOST_WORDS
            && !c.text.contains(": ")
            && (matches!(role(&c.text), Role::Sample(0..10) | Role::Depth | Role::Names)
                || Label::of(&c.text).quantity().is_ok())
    };
    for (i, row) in rows.iter().enumerate().skip(at).take(MOST_ABOVE) {
        match only(row) {
            Some(cell) if is_result(&cell.text, decimal) => return None,
            Some(cell) if begins(cell) => return Some(i),
            Some(_) => {}
            // Cells whose lines were broken: the first heads side by side, and the last goes on.
            None => {
                let broken =
                    row.iter().all(begins) && rows.get(i + 1).is_some_and(|r| only(r).is_some());
                return broken.then_some(i);
            }
        }
    }
    None
}

/// The table whose first head stands in a row.
fn table(rows: &[Vec<Cell>], at: usize, head: usize, own: bool, decimal: Decimal) -> Option<Apart> {
    let mut heads = Heads { own, ..Heads::default() };
    let mut from = head;
    // What nobody knows behind the last known head is no head.
    let mut known = (head, 0);
    while from < rows.len().min(at + MOST_LINES) {
        // "Organic" over "Matter"
        let broken = broken_name(rows, from);
        let taken = match &broken {
            Some(cell) => heads.take(cell),
            None => heads.take_row(&rows[from], decimal),
        };
        if !taken {
            break;
        }
        from += 1 + usize::from(broken.is_some());
        let last = heads.results.last();
        if last.is_none_or(|(c, of)| of.is_some() || Label::of(&c.text).unit.is_some()) {
            known = (from, heads.results.len());
        }
    }
    heads.give_units();
    from = known.0;
    heads.results.truncate(known.1);
    let least = if heads.lead.is_empty() { LEAST + 1 } else { LEAST };
    let few = heads.known() < least || heads.known() * 2 < heads.results.len();
    if few || from < head + LEAST || from == rows.len() {
        return None;
    }
    let (rows, end) =
        wide_rows(rows, from, &heads, decimal).or_else(|| records(rows, from, &heads, decimal))?;
    let lead = rows[0].len() - heads.results.len();
    let (heading, roles) = heads.over(&rows, lead);
    let fits = |row: &Vec<Cell>| {
        let own = |(role, cell): (&Role, &Cell)| {
            !matches!(role, Role::Results(_)) || can_be(role, first_word(cell), decimal)
        };
        roles.iter().zip(row).all(own)
    };
    if !rows.iter().all(fits) {
        return None;
    }
    let between = (at..head).collect();
    Some(Apart { heading, roles, rows, between, taken: end - at, sure: false })
}

/// The name of a property that is broken over two lines, each of which alone is none.
fn broken_name(rows: &[Vec<Cell>], at: usize) -> Option<Cell> {
    let (first, second) = (only(&rows[at])?, only(rows.get(at + 1)?)?);
    let is_one = |text: &str| Label::of(text).quantity().is_ok();
    let whole = joined(&[first.clone(), second.clone()]);
    let known = |c: &Cell| is_one(&c.text) || Label::of(&c.text).only_unit().is_some();
    (!known(first) && !known(second) && is_one(&whole.text)).then_some(whole)
}

/// Whether a text may be a head that nobody knows.
fn is_short(text: &str) -> bool {
    text.split(' ').count() < 4 && !text.bytes().any(|b| b.is_ascii_digit()) && !text.ends_with('.')
}

/// The one cell of a row.
fn only(row: &[Cell]) -> Option<&Cell> {
    let mut all = filled(row);
    all.next().filter(|_| all.next().is_none())
}

fn first_word(cell: &Cell) -> &str {
    cell.text.split(' ').next().unwrap_or("")
}

/// Whether a cell begins with a result, or says that there is none.
fn holds(cell: &Cell, decimal: Decimal) -> bool {
    is_result(first_word(cell), decimal) || matches!(said(&cell.text, decimal), Said::Missing)
}

impl Heads {
    /// Takes a row of heads; says whether it is one.
    fn take_row(&mut self, row: &[Cell], decimal: Decimal) -> bool {
        // Several heads side by side are a row of their own, but for the first of them.
        let first = self.lead.is_empty() && self.results.is_empty();
        let results = filled(row).any(|c| is_result(&c.text, decimal));
        let side_by_side = filled(row).count() > 2 && !first;
        !results && !side_by_side && filled(row).all(|cell| self.take(cell))
    }

    fn take(&mut self, cell: &Cell) -> bool {
        let label = Label::of(&cell.text);
        // "mg/L | class"
        let bare = label.properties.is_empty() && !label.is_saturation();
        let unit = Some(first_word(cell)).filter(|w| bare && Label::of(w).only_unit().is_some());
        if unit.is_none() {
            self.give_units();
        }
        if let Ok(quantity) = label.quantity() {
            // The same in other words is no second one.
            match self.results.last_mut() {
                Some((last, before)) if *before == Some(quantity.property) => {
                    if label.unit.is_some() && Label::of(&last.text).unit.is_none() {
                        last.text = format!("{} {}", last.text, cell.text);
                    }
                }
                _ => self.results.push((cell.clone(), Some(quantity.property))),
            }
            return true;
        }
        let named = !self.results.is_empty();
        let of = role(&cell.text);
        if matches!(of, Role::Sample(_) | Role::Depth) && !named {
            self.lead.push(cell.clone());
            return true;
        }
        // "Nr." over "crt."
        if let (Role::Other, false, Some(last)) = (&of, named, self.lead.last_mut())
            && !cell.text.contains(' ')
        {
            last.text = format!("{} {}", last.text, cell.text);
            return true;
        }
        // "pH in" over "H2O"
        let medium = ["h2o", "kcl", "cacl2"].contains(&squash(&cell.text).as_str());
        if let Some((last, _)) = self.results.last_mut().filter(|_| medium) {
            last.text = format!("{} {}", last.text, cell.text);
            return true;
        }
        if let Some(unit) = unit {
            self.units.push(Cell { text: unit.into(), place: cell.place });
            return true;
        }
        if named && matches!(of, Role::Other | Role::Refused(_)) && is_short(&cell.text) {
            if self.own {
                self.results.push((cell.clone(), None));
            }
            return true;
        }
        matches!(of, Role::Names | Role::Units | Role::Values | Role::Methods | Role::Ratings)
    }

    /// One unit is that of the name above it; as many as there are names with one are theirs.
    fn give_units(&mut self) {
        let units = std::mem::take(&mut self.units);
        let none = |c: &Cell| Label::of(&c.text).unit.is_none();
        let bare = |of: &Option<Property>| of.is_some_and(|p| p.unit() == Unit::None);
        let last = self.results.last_mut().map(|(cell, _)| cell).or(self.lead.last_mut());
        if let ([unit], Some(last)) = (&units[..], last.filter(|c| none(c))) {
            last.text = format!("{} {}", last.text, unit.text);
            return;
        }
        let open = self.results.iter_mut().filter(|(c, of)| !bare(of) && none(c));
        let open: Vec<&mut Cell> = open.map(|(cell, _)| cell).collect();
        if open.len() == units.len() {
            for (cell, unit) in open.into_iter().zip(units) {
                cell.text = format!("{} {}", cell.text, unit.text);
            }
        }
    }

    fn known(&self) -> usize {
        self.results.iter().filter(|(_, of)| of.is_some()).count()
    }

    /// The heads over rows with so many cells before their results, and what they are.
    fn over(self, rows: &[Vec<Cell>], lead: usize) -> (Vec<Cell>, Vec<Role>) {
        let place = self.results[0].0.place;
        let blank = || Cell { text: String::new(), place };
        // What they are called may stand over the rows, and no head over that.
        let mut heading: Vec<Cell> = match lead - self.lead.len().min(lead) {
            0 | 1 => self.lead,
            _ => Vec::new(),
        };
        while heading.len() < lead {
            heading.insert(0, blank());
        }
        let mut roles: Vec<Role> = heading.iter().map(|c| role(&c.text)).collect();
        for (i, role) in roles.iter_mut().enumerate().filter(|(_, r)| matches!(r, Role::Blank)) {
            let cells = || rows.iter().map(|row| row[i].text.as_str());
            if cells().all(|text| depth(text, "cm", Decimal::Point).is_some()) {
                *role = Role::Depth;
            } else if !cells().all(|text| text.bytes().all(|b| b.is_ascii_digit())) {
                *role = Role::Sample(1);
            }
        }
        roles.extend(self.results.iter().map(|(cell, _)| role(&cell.text)));
        heading.extend(self.results.into_iter().map(|(cell, _)| cell));
        (heading, roles)
    }
}

/// The rows that kept their cells, and the row after them.
fn wide_rows(
    rows: &[Vec<Cell>],
    from: usize,
    heads: &Heads,
    decimal: Decimal,
) -> Option<(Vec<Vec<Cell>>, usize)> {
    let lead = rows[from].len().checked_sub(heads.results.len())?;
    let known = heads.lead.is_empty() || lead == heads.lead.len();
    let fits = |row: &&Vec<Cell>| {
        row.len() == rows[from].len()
            && row[lead..].iter().all(|c| c.is_blank() || holds(c, decimal))
            && row[lead..].iter().filter(|c| holds(c, decimal)).count() >= LEAST
    };
    let own: Vec<Vec<Cell>> = rows[from..].iter().take_while(fits).cloned().collect();
    (known && lead <= MOST_LEAD && !own.is_empty()).then(|| {
        let end = from + own.len();
        (own, end)
    })
}

/// The rows whose cells stand one a line, and the row after them. A line of words may stand over
/// some of them, which is then what they are called.
fn records(
    rows: &[Vec<Cell>],
    from: usize,
    heads: &Heads,
    decimal: Decimal,
) -> Option<(Vec<Vec<Cell>>, usize)> {
    let leads = match heads.lead.len() {
        0 => 1..=MOST_LEAD,
        known => known..=known + 1,
    };
    let ways = leads.filter_map(|lead| records_of(rows, from, lead, heads, decimal));
    ways.max_by_key(|(found, _)| found.len())
}

fn records_of(
    rows: &[Vec<Cell>],
    from: usize,
    lead: usize,
    heads: &Heads,
    decimal: Decimal,
) -> Option<(Vec<Vec<Cell>>, usize)> {
    let lines: Vec<(usize, &Cell)> = (from..rows.len())
        .take(MOST_SAMPLES * (lead + heads.results.len() + 1))
        .filter(|&i| filled(&rows[i]).next().is_some())
        .map_while(|i| Some((i, only(&rows[i])?)))
        .collect();
    let width = lead + heads.results.len();
    let fits = |at: usize| -> Option<Vec<Cell>> {
        let row: Vec<Cell> = lines.get(at..at + width)?.iter().map(|l| l.1.clone()).collect();
        // "3.8" counts no row.
        let decimals = |c: &Cell| c.text.contains(['.', ',']) && is_result(&c.text, decimal);
        let named = |c: &Cell| decimals(c) || Label::of(&c.text).has(Word::RangeColumn);
        let all = row[lead..].iter().all(|c| holds(c, decimal))
            && row[lead..]
                .iter()
                .filter(|c| !matches!(said(&c.text, decimal), Said::Missing))
                .count()
                >= LEAST
            && !row[..lead].iter().any(named);
        all.then_some(row)
    };
    let words = |at: usize| {
        lines.get(at).is_some_and(|(_, c)| {
            c.text.len() < LONGEST && !holds(c, decimal) && !c.text.ends_with(['.', ':'])
        })
    };
    let unnamed = !heads.lead.iter().any(|c| matches!(role(&c.text), Role::Sample(_)));
    let mut found: Vec<Vec<Cell>> = Vec::new();
    let (mut at, mut over) = (0, None);
    loop {
        if let Some(row) = fits(at) {
            found.push(over.iter().cloned().chain(row).collect());
            at += width;
        } else if unnamed && lead > 0 && words(at) && fits(at + 1).is_some() {
            over = Some(lines[at].1.clone());
            at += 1;
        } else {
            break;
        }
    }
    // What goes on with numbers was counted off wrongly.
    let goes_on = lines.get(at).is_some_and(|(_, c)| is_result(&c.text, decimal));
    let even = found.iter().all(|row| row.len() == found[0].len());
    (found.len() > 1 && even && !goes_on)
        .then(|| (found, lines.get(at).map_or(lines[at - 1].0 + 1, |l| l.0)))
}
