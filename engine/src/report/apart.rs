//! Names and results that stand apart, one a line: first all names and then all results, as text
//! copied column by column. They are counted off against each other, which is to be asked.

use std::cell::OnceCell;
use std::mem::discriminant;
use std::ops::Range;

use super::Cell;
use super::label::Label;
use super::layout::{Role, is_result, role};
use super::likely_rows::described;
use super::names::Word;
use super::number::{Decimal, Said, is_range, is_rating, said};
use super::plausible::impossible;
use crate::quantity::Unit;
use crate::soil::Property;

/// Fewer names than this are no column, and no column is longer.
const LEAST: usize = 4;
/// No report has more samples beside each other one a line.
const MOST_ACROSS: usize = 10;

/// Within so many lines the first numbers stand.
const REACH: usize = 40;

/// No result has more lines behind it.
const MOST_BEHIND: usize = 5;
const MOST: usize = 60;

/// How many columns one after the other are looked at, and how many samples.
const MOST_COLUMNS: usize = 8;
const MOST_SAMPLES: usize = 200;

/// Why a line of a column of names is none.
const NOTHING: &str = "no soil property in this line";

/// Names and results brought together.
pub(super) struct Apart {
    pub heading: Vec<Cell>,
    pub roles: Vec<Role>,
    pub rows: Vec<Vec<Cell>>,
    /// Lines among them that are neither.
    pub between: Vec<usize>,
    /// How many rows it takes.
    pub taken: usize,
    /// Whether each name has its own number right below it, so that nothing is to be asked.
    pub sure: bool,
}

/// What a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    /// The name of a result, or something like one.
    Name,
    /// `Result`, `Units`: over a column.
    Head,
    /// A result, a sign for a missing one, or a limit.
    Number,
    Missing,
    Range,
    Unit,
    Words,
}

/// Rows of one cell each, and what they are, each looked at once.
pub(super) struct Lines<'a> {
    rows: &'a [Vec<Cell>],
    decimal: Decimal,
    kinds: Vec<OnceCell<Option<Kind>>>,
}

impl<'a> Lines<'a> {
    pub fn of(rows: &'a [Vec<Cell>], decimal: Decimal) -> Lines<'a> {
        Lines { rows, decimal, kinds: vec![OnceCell::new(); rows.len()] }
    }

    /// The names and results that begin at a row.
    pub fn apart(&self, at: usize) -> Option<Apart> {
        // What begins in the middle of a column is counted off wrongly.
        let begins = at == 0
            || self.is_parted(at)
            || matches!(
                self.kind(at - 1),
                None | Some(Kind::Head | Kind::Number | Kind::Range | Kind::Words)
            );
        if !begins || !matches!(self.kind(at)?, Kind::Name | Kind::Head | Kind::Words) {
            return None;
        }
        self.columns(at)
            .or_else(|| self.one_by_one(at))
            .or_else(|| self.by_property(at))
            .or_else(|| self.records(at))
            .or_else(|| self.in_step(at))
    }

    /// Whether the heads of a table may be listed from a row on: several names before the first
    /// number. Each line is looked at once, however often this is asked.
    pub fn may_list_heads(&self, at: usize) -> bool {
        let middle = at > 0 && !self.is_parted(at) && self.kind(at - 1) == Some(Kind::Name);
        // "pH 6.5" says its piece.
        let says = |i: usize| {
            let last = self.cell(i).and_then(|c| c.text.rsplit(' ').next());
            last.is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit()))
        };
        let mut names = (at..self.rows.len().min(at + MOST))
            .take_while(|&i| self.kind(i) != Some(Kind::Number))
            .filter(|&i| self.kind(i) == Some(Kind::Name) && !says(i));
        !middle && names.nth(2).is_some()
    }

    /// Whether a line is a name of a property alone, or words that may head a column.
    pub fn is_name(&self, at: usize) -> bool {
        self.kind(at) == Some(Kind::Name)
    }

    pub fn is_words(&self, at: usize) -> bool {
        matches!(self.kind(at), Some(Kind::Words | Kind::Head))
    }

    pub fn cell(&self, at: usize) -> Option<&'a Cell> {
        match self.rows.get(at)?.as_slice() {
            [only] => Some(only),
            _ => None,
        }
    }

    fn kind(&self, at: usize) -> Option<Kind> {
        *self.kinds.get(at)?.get_or_init(|| self.kind_of(&self.cell(at)?.text))
    }

    fn kind_of(&self, text: &str) -> Option<Kind> {
        if is_range(text, self.decimal) {
            return Some(Kind::Range);
        }
        if is_result(text, self.decimal) {
            return Some(Kind::Number);
        }
        if matches!(said(text, self.decimal), Said::Missing) {
            return Some(Kind::Missing);
        }
        let label = Label::of(text);
        if label.only_unit().is_some() {
            return Some(Kind::Unit);
        }
        if label.is_soil() || label.quantity().is_ok() {
            return Some(if text.contains(": ") { Kind::Words } else { Kind::Name });
        }
        Some(match role(text) {
            Role::Values | Role::Units | Role::Ratings | Role::Names | Role::Methods => Kind::Head,
            _ => Kind::Words,
        })
    }

    /// Whether a blank line stands before a line.
    fn is_parted(&self, at: usize) -> bool {
        let line = |at: usize| self.rows[at].first().map_or(0, |c| c.place.line);
        at > 0 && line(at) > line(at - 1) + 1
    }

    /// What a name is the heading of, and whether its result can be a number.
    fn heads(&self, at: usize) -> Role {
        self.cell(at).map_or(Role::Blank, |c| role(c.text.trim_end_matches([':', ' '])))
    }

    /// One column after the other, each with as many lines and its own heading or a blank line
    /// before it.
    fn columns(&self, at: usize) -> Option<Apart> {
        let mut stretches = Vec::new();
        let mut from = at;
        while stretches.len() < MOST_COLUMNS {
            let most = stretches.first().map(|first: &Stretch| first.lines.len());
            let Some(stretch) = self.stretch(from, most) else { break };
            from = stretch.lines.end;
            stretches.push(stretch);
        }
        let (names, others) = stretches.split_first()?;
        let count = names.lines.len();
        let named = names.lines.clone().filter(|&i| self.kind(i) == Some(Kind::Name)).count();
        if !(LEAST..=MOST).contains(&count) || named * 2 < count {
            return None;
        }
        let same: Vec<&Stretch> = others.iter().filter(|s| s.lines.len() == count).collect();
        let of = |wanted: fn(&Stretch) -> bool| same.iter().copied().filter(move |s| wanted(s));
        let mut results = of(|s| matches!(s.head, Some(Role::Values)));
        let (results, second) = match (results.next(), results.next()) {
            (Some(first), second) => (first, second),
            (None, _) => {
                let mut numbers = same.iter().copied().filter(|s| {
                    let numbers =
                        s.lines.clone().filter(|&i| self.kind(i) == Some(Kind::Number)).count();
                    s.head.is_none() && numbers * 3 > count * 2
                });
                (numbers.next()?, numbers.next())
            }
        };
        if second.is_some() {
            return None;
        }
        let units = same.iter().find(|s| {
            let unit = |i: &usize| matches!(self.kind(*i), Some(Kind::Unit));
            matches!(s.head, Some(Role::Units)) || s.lines.clone().filter(unit).count() * 2 > count
        });
        let ratings = of(|s| matches!(s.head, Some(Role::Ratings))).next();
        let line = |column: Option<&Stretch>, i: usize| {
            column.and_then(|c| self.cell(c.lines.start + i)).cloned()
        };
        let (mut heading, mut roles, mut row) = (Vec::new(), Vec::new(), Vec::new());
        for i in 0..count {
            let name = line(Some(names), i)?;
            let unit = line(units.copied(), i).filter(|c| Label::of(&c.text).unit.is_some());
            let text = unit.map_or(name.text.clone(), |u| format!("{} {}", name.text, u.text));
            let result = line(Some(results), i)?;
            let role = match role(&text) {
                // A single column holds the results of one sample, and no name of it.
                Role::Sample(_) | Role::Other => Role::Refused(NOTHING.into()),
                role => role,
            };
            if !can_be(&role, &result.text, self.decimal) {
                return None;
            }
            heading.push(Cell { text, place: name.place });
            roles.push(role);
            row.push(result);
            if let Some(rating) = line(ratings, i) {
                heading.push(Cell { text: String::new(), place: name.place });
                roles.push(Role::Ratings);
                row.push(rating);
            }
        }
        let last = same.iter().map(|s| s.lines.end).max()?;
        let numbers = row.iter().filter(|c| is_result(&c.text, self.decimal)).count();
        (numbers >= LEAST).then(|| Apart {
            heading,
            roles,
            rows: vec![row],
            between: Vec::new(),
            taken: last - at,
            sure: false,
        })
    }

    /// The lines up to the next heading, blank line or change from words to numbers.
    fn stretch(&self, from: usize, most: Option<usize>) -> Option<Stretch> {
        let mut head = None;
        let mut at = from;
        while self.kind(at) == Some(Kind::Head) {
            // "Result" over "Medium": the second is what the column holds.
            let next = self.heads(at);
            if head.as_ref().is_some_and(|head| discriminant(head) != discriminant(&next)) {
                break;
            }
            head = Some(next);
            at += 1;
            // "Value" and "Found", one below the other.
            if at - from > 2 {
                return None;
            }
        }
        let first = self.kind(at)?;
        let is_number = |kind: Kind| matches!(kind, Kind::Number | Kind::Range);
        let words = !is_number(first) && first != Kind::Missing;
        let mut end = at;
        while end <= at + MOST {
            let Some(kind) = self.kind(end) else { break };
            let turned = words && is_number(kind) && head.is_none();
            // "units" and "class" may stand in a column that has its heading.
            let named = kind == Kind::Head && (most.is_none() || head.is_none());
            let full = most.is_some_and(|most| end == at + most) && !is_number(kind);
            if named || full || end > at && self.is_parted(end) || turned {
                break;
            }
            end += 1;
        }
        // The heading of the next column is no line of this one.
        let other = |head: &Role| discriminant(head) != discriminant(&self.heads(end - 1));
        let next = end > at + 1
            && self.kind(end - 1) == Some(Kind::Head)
            && head.as_ref().is_some_and(other);
        (end > at && !next).then_some(Stretch { head, lines: at..end })
    }

    /// All names of a table, then the results of its first sample, of its second, and so on.
    fn records(&self, at: usize) -> Option<Apart> {
        let named = |i: usize| {
            let kind = self.kind(i);
            matches!(kind, Some(Kind::Name | Kind::Head | Kind::Words))
                && self.cell(i).is_some_and(|c| c.text.split(' ').count() < 7)
        };
        let names = (at..at + MOST).take_while(|&i| named(i)).count();
        // The results begin after the last name of a property, or ratings beside it.
        let is_name = |i: &usize| matches!(self.kind(*i), Some(Kind::Name | Kind::Head));
        let end = (at..at + names).rev().find(is_name)? + 1;
        let count = end - at;
        let roles: Vec<Role> = (at..end).map(|i| self.heads(i)).collect();
        let results = roles.iter().filter(|r| matches!(r, Role::Results(_))).count();
        if count < LEAST || results < LEAST || results * 3 < count {
            return None;
        }
        let mut rows: Vec<Vec<Cell>> = Vec::new();
        let mut from = end;
        while rows.len() < MOST_SAMPLES {
            let row: Option<Vec<Cell>> = (0..count).map(|i| self.cell(from + i).cloned()).collect();
            let Some(row) = row.filter(|row| self.is_row(&roles, row)) else { break };
            rows.push(row);
            from += count;
        }
        // What goes on with numbers was counted off wrongly.
        let over = matches!(self.kind(from), Some(Kind::Number | Kind::Range));
        let heading: Vec<Cell> = (at..end).filter_map(|i| self.cell(i).cloned()).collect();
        (!rows.is_empty() && !over).then(|| Apart {
            heading,
            roles,
            rows,
            between: Vec::new(),
            taken: from - at,
            sure: false,
        })
    }

    /// Each name with its unit and its one number below it, and with limits, ratings and methods
    /// below that: `Calcium`, `me/100g`, `21.4`, `8.0 - 14.0`. Nothing is to be counted off.
    fn one_by_one(&self, at: usize) -> Option<Apart> {
        let (mut heading, mut roles, mut row) = (Vec::new(), Vec::new(), Vec::new());
        let mut between = Vec::new();
        let mut end = at;
        let mut from = at;
        while heading.len() < MOST {
            let Some(name) = self.cell(from).filter(|_| self.kind(from) == Some(Kind::Name)) else {
                break;
            };
            // "pH" over "pH units", and its unit or what is said of it, before the number.
            let again = match (self.heads(from), self.heads(from + 1)) {
                (Role::Results(a), Role::Results(b)) => a.property == b.property,
                _ => false,
            };
            let mut next = from + 1 + usize::from(again);
            let mut text = name.text.clone();
            while matches!(self.kind(next), Some(Kind::Unit | Kind::Words)) && next < from + 3 {
                if self.kind(next) == Some(Kind::Unit) {
                    text = format!("{text} {}", self.cell(next)?.text);
                }
                next += 1;
            }
            let number = matches!(self.kind(next), Some(Kind::Number));
            // Something that was not measured has no line for its number.
            let Some(result) = self.cell(next).filter(|_| number) else {
                if self.kind(next) != Some(Kind::Missing) {
                    break;
                }
                from = next + 1;
                continue;
            };
            let role = role(&text);
            if !can_be(&role, &result.text, self.decimal) {
                return None;
            }
            // The same once more begins the list of the next sample.
            let key = |role: &Role| match role {
                Role::Results(q) => Some((q.property, q.method, q.unit.map(|u| u.unit))),
                _ => None,
            };
            if key(&role).is_some() && roles.iter().any(|r| key(r) == key(&role)) {
                break;
            }
            heading.push(Cell { text, place: name.place });
            roles.push(role);
            row.push(result.clone());
            next += 1;
            end = next;
            let mut others = 0;
            while matches!(
                self.kind(next),
                Some(Kind::Range | Kind::Words | Kind::Missing | Kind::Head)
            ) || self.cell(next).is_some_and(|c| c.text.starts_with(['±', '<', '>']))
            {
                // "Carbon, organic" is a name that nobody knows, with a number of its own.
                let own = self.kind(next) == Some(Kind::Words)
                    && (1..3).any(|i| {
                        matches!(self.kind(next + i), Some(Kind::Number))
                            && (1..i).all(|j| self.kind(next + j) == Some(Kind::Unit))
                    });
                if own {
                    // It is passed over with its number.
                    while self.kind(next) != Some(Kind::Number) {
                        between.push(next);
                        next += 1;
                    }
                    between.push(next);
                }
                next += 1;
                others += 1;
                if others > MOST_BEHIND {
                    break;
                }
            }
            // A second number: which of them is the result can't be told.
            if self.kind(next) == Some(Kind::Number) {
                return None;
            }
            from = next;
        }
        let results = roles.iter().filter(|r| matches!(r, Role::Results(_))).count();
        between.retain(|i| *i < end);
        (results >= LEAST).then(|| Apart {
            heading,
            roles,
            rows: vec![row],
            between,
            taken: end - at,
            sure: true,
        })
    }

    /// A name with the results of all samples below it, one a line, and so on: the names and the
    /// depths of the samples come first in the same way.
    fn by_property(&self, at: usize) -> Option<Apart> {
        // Nearly every line ends here: two numbers below each other stand near its beginning.
        let number = |i: usize| self.kind(i) == Some(Kind::Number);
        (at + 1..at + REACH).find(|&i| number(i) && number(i + 1))?;
        let begins = |role: &Role| {
            matches!(role, Role::Sample(_) | Role::Depth | Role::Texture | Role::Results(_))
        };
        if !begins(&self.heads(at)) && described("", &self.cell(at)?.text).is_none() {
            return None;
        }
        let found = (2..=MOST_ACROSS).filter_map(|count| self.blocks(at, count));
        let blocks = found.max_by_key(|blocks| {
            blocks.iter().filter(|b| matches!(b.role, Role::Results(_))).count()
        })?;
        let results = blocks.iter().filter(|b| matches!(b.role, Role::Results(_))).count();
        if results < LEAST {
            return None;
        }
        let count = blocks[0].lines.len();
        if !begins(&blocks[0].role) {
            return None;
        }
        let text = |block: &Block, i: usize| self.cell(block.lines.start + i).cloned();
        // The best name that is no number by itself.
        let rank = |block: &&Block| {
            let Role::Sample(rank) = block.role else { return None };
            let number = |i: usize| self.kind(i) == Some(Kind::Number);
            Some(rank + if block.lines.clone().any(number) { 10 } else { 0 })
        };
        let best = blocks.iter().filter(|b| rank(b).is_some()).min_by_key(rank);
        // Words under a heading that nobody knows, above the first results.
        let above = blocks.iter().take_while(|b| !matches!(b.role, Role::Results(_)));
        let words = above.clone().find(|b| {
            matches!(b.role, Role::Other)
                && b.lines.clone().all(|i| self.kind(i) == Some(Kind::Words))
        });
        let names = best.filter(|b| rank(b) < Some(10)).or(words).or(best);
        let mut heading = Vec::new();
        let mut roles = Vec::new();
        let mut rows = vec![Vec::new(); count];
        let mut take = |block: &Block, role: Role| {
            heading.push(block.label.clone());
            roles.push(role);
            for (i, row) in rows.iter_mut().enumerate() {
                row.extend(text(block, i));
            }
        };
        if let Some(names) = names {
            take(names, Role::Sample(1));
        }
        for (nth, block) in blocks.iter().enumerate() {
            match &block.role {
                Role::Results(_) | Role::Depth | Role::Texture => take(block, block.role.clone()),
                Role::Ratings if nth > 0 && matches!(blocks[nth - 1].role, Role::Results(_)) => {
                    take(block, Role::Ratings);
                }
                _ => {}
            }
        }
        let taken = blocks.last()?.lines.end - at;
        Some(Apart { heading, roles, rows, between: Vec::new(), taken, sure: false })
    }

    /// The names from a line on, each with so many lines below it.
    fn blocks(&self, at: usize, count: usize) -> Option<Vec<Block>> {
        let mut found: Vec<Block> = Vec::new();
        let mut from = at;
        while found.len() < MOST {
            // "Parameter  Unit  Method" between the samples and their results.
            let head = |i: usize| {
                let words = self.cell(i).map_or(0, |c| c.text.split(' ').count());
                words > 1 && words < 6 && self.cell(i).is_some_and(|c| is_column_words(&c.text))
            };
            let start = if head(from) { from + 1 } else { from };
            let Some(label) = self.cell(start).cloned() else { break };
            let lines = start + 1..start + 1 + count;
            if self.cell(lines.end - 1).is_none() || matches!(self.kind(start), Some(Kind::Number))
            {
                break;
            }
            let number = |i: usize| matches!(self.kind(i), Some(Kind::Number | Kind::Missing));
            let numbers = lines.clone().filter(|&i| number(i)).count();
            let role = match self.heads(start) {
                // Ratings, and aims given as ranges.
                Role::Results(_) | Role::Refused(_) if numbers == 0 => Role::Other,
                // A name with its unit and its method: `P ppm Bray 1`.
                Role::Other | Role::Refused(_) => described("", &label.text)
                    .map_or(Role::Other, |quantity| Role::Results(Box::new(quantity))),
                role => role,
            };
            let advice = Label::of(&label.text).has(Word::Advice);
            let fits = match &role {
                Role::Results(_) => {
                    numbers == count
                        && lines.clone().all(|i| can_be(&role, &self.rows[i][0].text, self.decimal))
                }
                // What stands below a word is no block where names or numbers are mixed in it.
                _ => numbers == 0 || numbers == count,
            };
            if advice || !fits {
                break;
            }
            from = lines.end;
            found.push(Block { label, role, lines });
        }
        // What comes after the last results is something else.
        let last =
            found.iter().rposition(|b| matches!(b.role, Role::Results(_) | Role::Ratings))?;
        found.truncate(last + 1);
        Some(found)
    }

    /// Whether lines can be the results of one sample.
    fn is_row(&self, roles: &[Role], row: &[Cell]) -> bool {
        let fits = roles.iter().zip(row).all(|(role, cell)| can_be(role, &cell.text, self.decimal));
        let held = roles.iter().zip(row).filter(|(role, cell)| {
            matches!(role, Role::Results(_)) && is_result(&cell.text, self.decimal)
        });
        let share = |(role, cell): (&Role, &Cell)| match (role, said(&cell.text, self.decimal)) {
            (Role::Results(q), Said::Amount(amount, _))
                if q.unit.is_some_and(|u| u.unit == Unit::Percent)
                    && q.property.is_share()
                    && q.property != Property::BaseSaturation =>
            {
                Some(amount.number())
            }
            _ => None,
        };
        let shares: Vec<f64> = roles.iter().zip(row).filter_map(share).collect();
        let whole = (75.0..=130.0).contains(&shares.iter().sum::<f64>());
        fits && held.count() >= LEAST && (shares.len() < 4 || whole)
    }

    /// Names and headings in any order, then as many results as there are names, with ranges and
    /// limits among them.
    fn in_step(&self, at: usize) -> Option<Apart> {
        let mut names = Vec::new();
        let mut between = Vec::new();
        let mut end = at;
        while end < at + MOST {
            match self.kind(end)? {
                Kind::Name => names.push(end),
                Kind::Head | Kind::Words | Kind::Unit => between.push(end),
                _ => break,
            }
            end += 1;
        }
        // "Base saturation" over the shares of each cation is a heading.
        let share = |i: usize| match self.heads(i) {
            Role::Results(q) if q.property.is_share() => Some(q.property),
            _ => None,
        };
        let over = |nth: usize| {
            let next = names.get(nth + 1).and_then(|&i| share(i));
            share(names[nth]) == Some(Property::BaseSaturation) && next.is_some()
        };
        let groups: Vec<usize> = (0..names.len()).filter(|&i| over(i)).map(|i| names[i]).collect();
        let mut results = Vec::new();
        let mut from = end;
        while from < end + 2 * MOST {
            let Some(cell) = self.cell(from) else { break };
            let first = match self.kind(from) {
                Some(Kind::Range) => None,
                Some(Kind::Number) if !cell.text.starts_with(['<', '>']) => Some(cell.clone()),
                Some(Kind::Number) => None,
                _ => match cell.text.split_once(' ') {
                    // A result with its range behind it.
                    Some((first, rest)) if is_range(rest.trim(), self.decimal) => {
                        Some(Cell { text: first.into(), place: cell.place })
                    }
                    _ => break,
                },
            };
            results.extend(first);
            from += 1;
        }
        // As many numbers right below the names are the results, where limits follow.
        let first = end..end + names.len();
        let limits = matches!(self.kind(first.end), Some(Kind::Range));
        let all = first.clone().all(|i| self.kind(i) == Some(Kind::Number));
        if limits && all && results.len() > names.len() {
            results = first.filter_map(|i| self.cell(i).cloned()).collect();
        }
        let known: Vec<usize> = match results.len() {
            n if n == names.len() => names,
            n if n + groups.len() == names.len() => {
                names.into_iter().filter(|i| !groups.contains(i)).collect()
            }
            _ => return None,
        };
        let heading: Vec<Cell> = known.iter().filter_map(|&i| self.cell(i).cloned()).collect();
        let roles: Vec<Role> = known.iter().map(|&i| self.heads(i)).collect();
        let text = |c: &Cell| !is_rating(&c.text);
        (self.is_row(&roles, &results) && results.iter().all(text)).then(|| Apart {
            heading,
            roles,
            rows: vec![results],
            between,
            taken: from - at,
            sure: false,
        })
    }
}

/// Whether a result can stand under a heading.
pub(super) fn can_be(role: &Role, text: &str, decimal: Decimal) -> bool {
    let number = match said(text, decimal) {
        Said::Amount(amount, _) => Some(amount.number()),
        Said::NotDetected | Said::Missing => None,
        Said::Range => return matches!(role, Role::Other | Role::Depth | Role::Sample(_)),
        Said::Text => return !matches!(role, Role::Results(_)),
    };
    match (role, number) {
        (Role::Ratings, Some(_)) => false,
        (Role::Results(quantity), Some(number)) => {
            let unit = quantity.unit.map_or(quantity.property.unit(), |u| u.unit);
            match quantity.property {
                Property::Ph | Property::SaltPh => (3.0..=10.0).contains(&number),
                of => impossible(of, number, Some(unit)).is_none(),
            }
        }
        _ => true,
    }
}

/// Whether a line has nothing but words that head columns.
fn is_column_words(text: &str) -> bool {
    let label = Label::of(text);
    let heads = |w: &Word| {
        matches!(w, Word::NameColumn | Word::UnitColumn | Word::MethodColumn | Word::ResultColumn)
    };
    label.unknown.is_empty() && label.words.len() > 1 && label.words.iter().all(heads)
}

/// A name and the lines of its results.
struct Block {
    label: Cell,
    role: Role,
    lines: Range<usize>,
}

/// The lines of one column, with what its heading says.
struct Stretch {
    head: Option<Role>,
    lines: Range<usize>,
}
