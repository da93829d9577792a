//! A table whose names and numbers can't be counted off: of all the ways to put the numbers of
//! its rows under the names of its head, in their order, the likeliest, when it is far likelier
//! than all others. What is found so is always asked.
//!
//! The ways are those of a pair hidden Markov model (source: R. Durbin and others, *Biological
//! Sequence Analysis*, 1998, chapter 4, from memory): the sum over all of them says how sure
//! each number is of its name.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::Cell;
use super::column_heads::headed;
use super::fold::is_letter;
use super::grid::{filled, joined, words_of};
use super::layout::{Role, head, names_property};
use super::likely_heads::{Way, heads_of, is_result, line_of, other_lines_of};
use super::number::{Decimal, Said, is_rating, said};
use super::run_together::{
    Item, Part, RunTogether, Says, can_be, items, name, numbers, run_together,
};
use super::usual::{UNKNOWN, likelihood};
use crate::quantity::Unit;
use crate::soil::Property;

/// No head takes more lines, and no row more numbers.
const MOST_HEADS: usize = 6;
const MOST_NUMBERS: usize = 60;

/// How many rows are weighed, and as how many they count: those of one laboratory repeat each
/// other.
const WEIGHED: usize = 8;
const MOST_WEIGHT: usize = 3;

/// No more rows are read at once.
const MOST_ROWS: usize = 2_000;

/// Fewer numbers in a row can be anything.
const LEAST: usize = 4;

/// How sure a number must be of its name.
const SURE: f64 = 0.93;

/// What it costs to leave a name without its number, a number without a name among others and
/// before them, to give an unknown name a number, and to leave it without. Our choice.
const NO_NUMBER: f64 = -5.0;
const NO_NAME: f64 = -5.0;
const BEFORE: f64 = -0.3;
const UNKNOWN_TAKES: f64 = -0.7;
const UNKNOWN_LEFT: f64 = -0.7;

/// How much likelier a row must be one column off to be left. Our choice.
const ONE_OFF: f64 = 4.0;

/// What it costs to have a soil sourer in water than in salt, where it is about half a step less
/// so (common practice, no source).
const SOURER_IN_WATER: f64 = -6.0;

/// What it costs to read the lines of a head otherwise than they stand. Our choice.
const OTHERWISE: f64 = -1.0;

/// The table that begins at a row.
pub(super) fn likely_columns(
    rows: &[Vec<Cell>],
    at: usize,
    decimal: Decimal,
) -> Option<RunTogether> {
    let near = rows.len().min(at + 1 + MOST_HEADS);
    // Looked at by its bytes first: nearly every line ends here.
    let digits = |row: &Vec<Cell>| {
        let words = row.iter().flat_map(|c| c.text.split(' '));
        words.filter(|w| w.starts_with(|c: char| c.is_ascii_digit())).nth(LEAST - 1).is_some()
    };
    if !(at + 1..near).any(|i| digits(&rows[i])) {
        return None;
    }
    let many = |i: &usize| items(&rows[*i], decimal).is_some_and(|row| numbers(&row) >= LEAST);
    let from = (at + 1..near).find(many)?;
    // A name in front of the numbers is that of a property: such a table goes the other way.
    let named = |row: &&Vec<Cell>| row.first().is_some_and(|c| begins_with_name(c, decimal));
    let below = &rows[from..];
    if below.iter().take(3).filter(named).count() > 1 {
        return None;
    }
    let heads: Vec<Vec<Part>> = rows[at..from].iter().map(|row| line_of(row)).collect();
    if !heads[0].iter().any(|p| matches!(p.says, Says::Result(_) | Says::Unit(_))) {
        return None;
    }
    let says = |(row, line): (&Vec<Cell>, &Vec<Part>)| {
        let results = line.iter().filter(|p| is_result(p)).count();
        is_sentence(row) && results < 3 || has_number(row, decimal)
    };
    // A table that another reader finds from one of its lines is his.
    let full = |i: usize| filled(&rows[i]).count() >= filled(&rows[from]).count();
    let others = |i: usize| {
        full(i) && head(rows, i, decimal).is_some()
            || headed(rows, i, decimal).is_some()
            || run_together(rows, i, decimal).is_some()
    };
    if rows[at..from].iter().zip(&heads).any(says) || (at + 1..from).any(others) {
        return None;
    }
    let held: Vec<Vec<Item>> = below
        .iter()
        .take(MOST_ROWS)
        .take_while(|row| !is_sentence(row) && !is_of_ranges(row, decimal))
        .map_while(|row| items(row, decimal).filter(|row| numbers(row) >= LEAST))
        .collect();
    let found = likeliest(&rows[at..from], &held, decimal)?;
    Some(RunTogether {
        unmet: found.unmet.iter().map(|i| from + i).collect(),
        taken: from - at + held.len(),
        ..found
    })
}

/// The likeliest columns of rows under the lines of a head.
fn likeliest(head: &[Vec<Cell>], held: &[Vec<Item>], decimal: Decimal) -> Option<RunTogether> {
    let lines: Vec<Vec<Part>> = head.iter().map(|row| line_of(row)).collect();
    let other: Vec<[Vec<Part>; 2]> = head.iter().map(|row| other_lines_of(row)).collect();
    let aligned = head.iter().any(|row| filled(row).count() > 2);
    let mut ways = heads_of(&lines, aligned);
    for nth in 0..2 {
        let lines: Vec<Vec<Part>> = other.iter().map(|lines| lines[nth].clone()).collect();
        ways.extend(
            heads_of(&lines, aligned)
                .into_iter()
                .map(|way| Way { before: way.before + OTHERWISE, ..way }),
        );
    }
    let tables = Table::of(held, decimal);
    let found = tables.iter().filter_map(|table| table.likeliest(&ways));
    let found = found.max_by(|a, b| a.how_likely.total_cmp(&b.how_likely))?;
    let shaped = found.table.shaped(&found)?;
    Some(RunTogether {
        unnamed: Vec::new(),
        unmet: shaped.unmet,
        taken: 0,
        sure: false,
        heading: shaped.heading,
        roles: shaped.roles,
        rows: shaped.rows,
    })
}

/// No head of a table with a cell a line has more of them.
const MOST_LINES: usize = 45;

/// The same for a table with a cell a line: the names of its head, which may be broken over lines,
/// and then for each sample its name and its numbers.
pub(super) fn likely_records(
    rows: &[Vec<Cell>],
    at: usize,
    decimal: Decimal,
) -> Option<RunTogether> {
    let alone = |i: usize| match rows.get(i)?.as_slice() {
        [only] => Some(only),
        _ => None,
    };
    // Only the first line of a head begins one; most lines end here.
    let soil = |cell: &Cell| line_of(std::slice::from_ref(cell)).iter().any(is_result);
    let value = |i: usize| {
        let cell = alone(i)?;
        let row = items(std::slice::from_ref(cell), decimal)?;
        let one = matches!(&row[..], [Item::Number(..) | Item::Missing]);
        one.then_some(cell)
    };
    let run = |from: usize| {
        (from..rows.len().min(from + MOST_NUMBERS)).take_while(|&i| value(i).is_some()).count()
    };
    // Looked at by their bytes first: nearly every line ends here.
    let digit = |i: usize| {
        alone(i).is_some_and(|c| c.text.starts_with(|c: char| c.is_ascii_digit() || c == '<'))
    };
    let first = (at + 2..rows.len().min(at + MOST_LINES))
        .find(|&i| alone(i).is_none() || (i..i + LEAST).all(digit))?;
    if run(first) < LEAST {
        return None;
    }
    let head: Vec<&Cell> = (at..first - 1).map_while(alone).collect();
    let sentence = head.iter().any(|c| c.text.contains(": ") || c.text.ends_with('.'));
    if head.len() < 2 || sentence || head.iter().filter(|c| soil(c)).count() < LEAST {
        return None;
    }
    let mut records: Vec<Vec<Cell>> = Vec::new();
    let mut from = first - 1;
    while let Some(name) = alone(from).filter(|_| value(from).is_none()) {
        let count = run(from + 1);
        if count < LEAST {
            break;
        }
        let values = (from + 1..from + 1 + count).filter_map(alone).cloned();
        records.push([name.clone()].into_iter().chain(values).collect());
        from += 1 + count;
    }
    let held: Vec<Vec<Item>> = records.iter().filter_map(|row| items(row, decimal)).collect();
    if records.len() < 2 || held.len() < records.len() {
        return None;
    }
    let words: Vec<Cell> = head.into_iter().cloned().collect();
    let found = likeliest(&[vec![joined(&words)]], &held, decimal)?;
    Some(RunTogether { unmet: Vec::new(), taken: from - at, ..found })
}

/// Whether a row says something in words of its own, with a colon between.
fn is_sentence(row: &[Cell]) -> bool {
    row.iter().any(|c| c.text.contains(": "))
}

/// Whether a row gives ranges, or begins with a rating: then it tells what numbers mean.
fn is_of_ranges(row: &[Cell], decimal: Decimal) -> bool {
    let words: Vec<Cell> = filled(row).flat_map(words_of).collect();
    let range = |word: &&Cell| matches!(said(&word.text, decimal), Said::Range);
    let rated = filled(row).find(|c| c.text.chars().any(is_letter));
    // Codes and depths, "4417-1" and "0-20", stand before the results of a sample.
    let numbers = items(row, decimal).map_or(0, |row| numbers(&row));
    let ranges = words.iter().skip(3).filter(range).count();
    ranges > 1 && ranges * 3 > numbers || rated.is_some_and(|c| is_rating(&c.text))
}

/// Whether a number stands alone among the words of a row.
fn has_number(row: &[Cell], decimal: Decimal) -> bool {
    items(row, decimal).is_none_or(|row| numbers(&row) > 0)
}

/// Whether a cell begins with the name of a property, as the rows of a list do.
fn begins_with_name(cell: &Cell, decimal: Decimal) -> bool {
    let words: Vec<&str> = cell.text.split(' ').take(3).collect();
    (1..=words.len()).any(|to| {
        let cell = Cell { text: words[..to].join(" "), place: cell.place };
        cell.text.len() > 1 && names_property(&cell, decimal)
    })
}

/// How sure each number is of each name, and the logarithm of the sum over all ways.
struct Fit {
    all: f64,
    sure: Vec<Vec<f64>>,
}

impl Fit {
    /// Puts numbers under names in all ways; `together` has the logarithm of how well each name
    /// and each number go together.
    fn of(parts: &[Part], together: &[Vec<f64>], nameless: f64) -> Fit {
        let (n, m) = (parts.len(), together.first().map_or(0, Vec::len));
        let no_number = |i: usize| if is_result(&parts[i]) { NO_NUMBER } else { UNKNOWN_LEFT };
        let no_name = |i: usize| nameless + if i == 0 { BEFORE } else { NO_NAME };
        let mut left = vec![vec![f64::NEG_INFINITY; m + 1]; n + 1];
        left[0][0] = 0.0;
        for i in 0..=n {
            for j in 0..=m {
                let mut ways =
                    [left[i][j], f64::NEG_INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
                if i > 0 && j > 0 {
                    ways[1] = left[i - 1][j - 1] + together[i - 1][j - 1];
                }
                if i > 0 {
                    ways[2] = left[i - 1][j] + no_number(i - 1);
                }
                if j > 0 {
                    ways[3] = left[i][j - 1] + no_name(i);
                }
                left[i][j] = log_sum(&ways);
            }
        }
        let mut right = vec![vec![f64::NEG_INFINITY; m + 1]; n + 1];
        right[n][m] = 0.0;
        for i in (0..=n).rev() {
            for j in (0..=m).rev() {
                let mut ways =
                    [right[i][j], f64::NEG_INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
                if i < n && j < m {
                    ways[1] = right[i + 1][j + 1] + together[i][j];
                }
                if i < n {
                    ways[2] = right[i + 1][j] + no_number(i);
                }
                if j < m {
                    ways[3] = right[i][j + 1] + no_name(i);
                }
                right[i][j] = log_sum(&ways);
            }
        }
        let all = left[n][m];
        let at =
            |i: usize, j: usize| (left[i][j] + together[i][j] + right[i + 1][j + 1] - all).exp();
        let sure = (0..n).map(|i| (0..m).map(|j| at(i, j)).collect()).collect();
        Fit { all, sure }
    }
}

fn log_sum(ways: &[f64]) -> f64 {
    let most = ways.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if most == f64::NEG_INFINITY {
        return most;
    }
    most + ways.iter().map(|way| (way - most).exp()).sum::<f64>().ln()
}

/// How well a number goes with a name.
fn weight(part: &Part, item: &Item, decimal: Decimal) -> f64 {
    let (Says::Result(quantity), Item::Number(cell, _)) = (&part.says, item) else {
        return UNKNOWN;
    };
    let Said::Amount(amount, _) = said(&cell.text, decimal) else { return UNKNOWN };
    if !can_be(&part.says, &cell.text, decimal) {
        return -30.0;
    }
    let scale = quantity.unit.map_or(1.0, |u| u.scale);
    likelihood(quantity, amount.number() * scale)
}

fn is_number(item: &&Item) -> bool {
    !matches!(item, Item::Words(_))
}

/// All rows, with those that have at least so many numbers as the table is wide.
struct Table<'a> {
    all: &'a [Vec<Item>],
    /// Which rows have them, and which have fewer.
    met: Vec<usize>,
    short: Vec<usize>,
    width: usize,
    decimal: Decimal,
    /// How well the columns go with each name, once for all ways.
    weighed: RefCell<BTreeMap<Name, Vec<f64>>>,
}

/// What of a name tells how likely a number is under it.
type Name = Option<(Property, Option<Unit>, u64, bool)>;

fn name_of(part: &Part) -> Name {
    let Says::Result(q) = &part.says else { return None };
    let scale = q.unit.map_or(1.0, |u| u.scale);
    Some((q.property, q.unit.map(|u| u.unit), scale.to_bits(), q.lime_index))
}

/// The likeliest head of a table.
struct Likeliest<'a> {
    table: &'a Table<'a>,
    parts: &'a [Part],
    /// The name of each number, where it is sure of it.
    named: Vec<Option<usize>>,
    /// How likely the rows are, to be set against the same rows in another width.
    how_likely: f64,
}

/// A table in columns.
struct Shaped {
    heading: Vec<Cell>,
    roles: Vec<Role>,
    rows: Vec<Vec<Cell>>,
    unmet: Vec<usize>,
}

impl<'a> Table<'a> {
    /// The table by each number of numbers that its rows have: what is more in others stands in
    /// their names, and those with fewer have blanks.
    fn of(all: &'a [Vec<Item>], decimal: Decimal) -> Vec<Table<'a>> {
        let count = |row: &[Item]| row.iter().filter(is_number).count();
        let mut widths: Vec<usize> = all.iter().take(50).map(|row| count(row)).collect();
        widths.sort_unstable();
        widths.dedup();
        let wide = widths.into_iter().rev().take(4).filter(|w| (LEAST..=MOST_NUMBERS).contains(w));
        let table = |width: usize| {
            let (met, short) = (0..all.len()).partition(|&i| count(&all[i]) >= width);
            Table { all, met, short, width, decimal, weighed: RefCell::default() }
        };
        wide.map(table).filter(|t| t.met.len() * 3 >= all.len()).collect()
    }

    /// All numbers of a row, and the last of them.
    fn numbers(&self, row: usize) -> Vec<&'a Item> {
        self.all[row].iter().filter(is_number).collect()
    }

    fn last_numbers(&self, row: usize) -> Vec<&'a Item> {
        let all = self.numbers(row);
        all[all.len() - self.width..].to_vec()
    }

    fn taken_by(part: &Part) -> f64 {
        let may = matches!(part.says, Says::Result(_) | Says::Refused(_));
        if may { 0.0 } else { UNKNOWN_TAKES }
    }

    /// The full rows at once.
    fn fit(&self, Way { parts, before }: &Way) -> Fit {
        let rows: Vec<Vec<&Item>> =
            self.met.iter().take(WEIGHED).map(|&row| self.last_numbers(row)).collect();
        let all = self.all.len().min(MOST_WEIGHT) as f64;
        let each = all / rows.len().max(1) as f64;
        let column = |part: &Part, j: usize| -> f64 {
            rows.iter().map(|row| weight(part, row[j], self.decimal)).sum::<f64>() * each
        };
        let mut weighed = self.weighed.borrow_mut();
        let together: Vec<Vec<f64>> = parts
            .iter()
            .map(|part| {
                let columns = weighed
                    .entry(name_of(part))
                    .or_insert_with(|| (0..self.width).map(|j| column(part, j)).collect());
                columns.iter().map(|weight| weight + Self::taken_by(part)).collect()
            })
            .collect();
        drop(weighed);
        let fit = Fit::of(parts, &together, UNKNOWN * all);
        let sourer =
            if self.is_sourer_in_water(parts, &fit, &rows) { SOURER_IN_WATER } else { 0.0 };
        Fit { all: fit.all + before + sourer, ..fit }
    }

    /// Whether the likeliest pH in water is below that in salt in most rows.
    fn is_sourer_in_water(&self, parts: &[Part], fit: &Fit, rows: &[Vec<&Item>]) -> bool {
        let column = |wanted: Property| {
            let i = parts
                .iter()
                .position(|p| matches!(&p.says, Says::Result(q) if q.property == wanted))?;
            (0..self.width).max_by(|a, b| fit.sure[i][*a].total_cmp(&fit.sure[i][*b]))
        };
        let (Some(water), Some(salt)) = (column(Property::Ph), column(Property::SaltPh)) else {
            return false;
        };
        let number = |item: &Item| match item {
            Item::Number(cell, _) => match said(&cell.text, self.decimal) {
                Said::Amount(amount, _) => Some(amount.number()),
                _ => None,
            },
            _ => None,
        };
        let below = |row: &&Vec<&Item>| number(row[water]) < number(row[salt]);
        rows.iter().filter(below).count() * 2 > rows.len()
    }

    /// A row by itself.
    fn fit_of_row(&self, parts: &[Part], row: usize) -> Fit {
        let numbers = self.numbers(row);
        let of = |part: &Part, item: &Item| weight(part, item, self.decimal) + Self::taken_by(part);
        let together: Vec<Vec<f64>> =
            parts.iter().map(|part| numbers.iter().map(|item| of(part, item)).collect()).collect();
        Fit::of(parts, &together, UNKNOWN)
    }

    fn likeliest(&'a self, ways: &'a [Way]) -> Option<Likeliest<'a>> {
        let mut fits: Vec<(&Vec<Part>, Fit)> =
            ways.iter().map(|way| (&way.parts, self.fit(way))).collect();
        fits.sort_by(|a, b| b.1.all.total_cmp(&a.1.all));
        let named = self.named(&fits)?;
        let (parts, fit) = fits.first()?;
        // Each row by itself: the full ones, what their names have beyond, and the short ones.
        let weight = self.all.len().min(MOST_WEIGHT) as f64;
        let beyond = |&row: &usize| UNKNOWN * (self.numbers(row).len() - self.width) as f64;
        let full =
            fit.all / weight * self.met.len() as f64 + self.met.iter().map(beyond).sum::<f64>();
        let weighed = self.short.iter().take(WEIGHED);
        let short: f64 = weighed.clone().map(|&row| self.fit_of_row(parts, row).all).sum();
        let how_likely = full + short * self.short.len() as f64 / weighed.len().max(1) as f64;
        Some(Likeliest { table: self, parts, named, how_likely })
    }

    /// For each number the name of the likeliest head that it is sure of, when most of the
    /// results have theirs.
    fn named(&self, ways: &[(&Vec<Part>, Fit)]) -> Option<Vec<Option<usize>>> {
        let (parts, best) = ways.first()?;
        let of = |part: &Part| match &part.says {
            Says::Result(q) => Some(q.property),
            _ => None,
        };
        // Other heads that are nearly as likely have their say.
        let near: Vec<(f64, &(&Vec<Part>, Fit))> = ways
            .iter()
            .map(|way| ((way.1.all - best.all).exp(), way))
            .filter(|(weight, _)| *weight > 1e-3)
            .collect();
        let weights: f64 = near.iter().map(|(weight, _)| weight).sum();
        let named = |j: usize| {
            let i =
                (0..parts.len()).max_by(|a, b| best.sure[*a][j].total_cmp(&best.sure[*b][j]))?;
            let own = of(&parts[i])?;
            let share = |(parts, fit): &(&Vec<Part>, Fit)| -> f64 {
                let same = (0..parts.len()).filter(|&k| of(&parts[k]) == Some(own));
                same.map(|k| fit.sure[k][j]).sum()
            };
            let sure = near.iter().map(|(weight, way)| weight * share(way)).sum::<f64>() / weights;
            (sure >= SURE).then_some(i)
        };
        let found: Vec<Option<usize>> = (0..self.width).map(named).collect();
        // Rates of fertiliser have no pH, no organic matter and no exchange beside them.
        let anchor = |i: &&usize| of(&parts[**i]).is_some_and(|property| !is_fed(property));
        found.iter().flatten().find(anchor)?;
        let sure = found.iter().flatten().count();
        let results = parts.iter().filter(|p| is_result(p)).count();
        (sure > 2 && sure * 2 > results).then_some(found)
    }

    fn shaped(&self, likeliest: &Likeliest) -> Option<Shaped> {
        let Likeliest { parts, named, .. } = likeliest;
        let taken: Vec<(usize, usize)> =
            named.iter().enumerate().filter_map(|(j, i)| Some((j, (*i)?))).collect();
        let lead = &parts[..taken.first()?.1];
        let mut found: Vec<(usize, Vec<Option<&Item>>)> = Vec::new();
        for &row in &self.met {
            let numbers = self.last_numbers(row);
            let fits = |by: isize| -> f64 {
                let at = |j: usize| numbers.get(usize::try_from(j as isize + by).ok()?);
                let of = |&(j, i): &(usize, usize)| {
                    at(j).map_or(UNKNOWN, |item| weight(&parts[i], item, self.decimal))
                };
                taken.iter().map(of).sum()
            };
            // A row with a blank somewhere stands one column off.
            if fits(0) >= fits(1).max(fits(-1)) - ONE_OFF {
                found.push((row, taken.iter().map(|&(j, _)| Some(numbers[j])).collect()));
            }
        }
        for &row in &self.short {
            let numbers = self.numbers(row);
            let sure = self.fit_of_row(parts, row).sure;
            let of = |&(_, i): &(usize, usize)| {
                numbers.iter().zip(&sure[i]).find(|(_, sure)| **sure >= SURE).map(|(item, _)| *item)
            };
            let cells: Vec<Option<&Item>> = taken.iter().map(of).collect();
            if cells.iter().flatten().count() * 2 > taken.len() {
                found.push((row, cells));
            }
        }
        found.sort_by_key(|(row, _)| *row);
        let unmet =
            (0..self.all.len()).filter(|i| !found.iter().any(|(row, _)| row == i)).collect();
        let rows: Vec<Vec<Cell>> =
            found.iter().map(|(row, cells)| in_cells(lead, &self.all[*row], cells)).collect();
        let mut heading = vec![joined(&[])];
        let mut roles = vec![Role::Sample(1)];
        for (_, i) in &taken {
            heading.extend([parts[*i].cell.clone(), joined(&[])]);
            let role = match &parts[*i].says {
                Says::Result(quantity) => Role::Results(quantity.clone()),
                _ => Role::Other,
            };
            roles.extend([role, Role::Ratings]);
        }
        (!rows.is_empty()).then_some(Shaped { heading, roles, rows, unmet })
    }
}

/// A row with its name and its results, each with its rating behind it.
fn in_cells(lead: &[Part], row: &[Item], results: &[Option<&Item>]) -> Vec<Cell> {
    let first = results.iter().flatten().next();
    // The words before the first of its results.
    let before = row
        .iter()
        .position(|item| first.is_some_and(|first| std::ptr::eq(item, *first)))
        .map_or(&row[..0], |at| &row[..at]);
    // A number that no heading calls a sample is another result.
    let called = lead.iter().any(|p| matches!(p.says, Says::Of(Role::Sample(_))));
    let name = name(lead, before);
    let named = called || name.text.contains(is_letter);
    let mut cells = vec![if named { name } else { joined(&[]) }];
    for item in results {
        let (cell, rating) = match item {
            Some(Item::Number(cell, rating)) => (cell.clone(), rating.clone()),
            _ => (joined(&[]), None),
        };
        let place = cell.place;
        cells.extend([cell, Cell { text: rating.unwrap_or_default(), place }]);
    }
    cells
}

/// Whether a fertiliser may be meant.
fn is_fed(property: Property) -> bool {
    use Property::{
        AmmoniumN, Boron, Calcium, Magnesium, Manganese, NitrateN, Phosphorus, Potassium, Sulfur,
        TotalN, Zinc,
    };
    matches!(
        property,
        AmmoniumN
            | Boron
            | Calcium
            | Magnesium
            | Manganese
            | NitrateN
            | Phosphorus
            | Potassium
            | Sulfur
            | TotalN
            | Zinc
    )
}
