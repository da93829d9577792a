//! A list whose lines have several numbers one blank apart: `Zinc (ppm) 8.4 15.6 2.1`. A line
//! above says whether they are samples, `Sample ID 1 2 3`, or units, `ppm lb/acre`; where none
//! does, nothing is read. What is found so is always asked.

use super::Cell;
use super::grid::{filled, joined, words_of};
use super::label::{Label, Quantity};
use super::layout::{Role, role};
use super::names::Word;
use super::number::{Decimal, Said, is_rating, said};
use super::run_together::{self, RunTogether, parts};
use super::units::Printed;
use crate::quantity::Unit;

/// How many lines are looked at, above for what the numbers are, and below for the list.
const ABOVE: usize = 12;
const MOST_LINES: usize = 80;

/// Fewer lines are no list, and no line has more numbers.
const LEAST: usize = 4;
const MOST_NUMBERS: usize = 12;
const MOST_WORDS: usize = 30;

/// So many lines without numbers end the list.
const MOST_BETWEEN: usize = 4;

/// A line of the list.
struct Listed {
    at: usize,
    name: Cell,
    quantity: Quantity,
    numbers: Vec<Cell>,
}

/// What the numbers of a line are.
enum Across {
    Samples(Vec<Cell>),
    Units(Vec<Printed>),
    /// The result is one of them; the others tell how far it may be off, or its limits.
    Result(usize),
}

/// The list that begins at a row.
pub(super) fn likely_rows(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<RunTogether> {
    let (_, first) = name_and_numbers(&rows[at], decimal)?;
    let count = first.len();
    if !(2..=MOST_NUMBERS).contains(&count) {
        return None;
    }
    let from = at.saturating_sub(ABOVE);
    let across = (from..at)
        .rev()
        .find_map(|i| units(&rows[i], count).map(Across::Units))
        .or_else(|| (from..at).rev().find_map(|i| columns(&rows[i], count)))
        .or_else(|| samples_above(rows, at, count).map(Across::Samples))
        .or_else(|| bare_names(rows, at, count).map(Across::Samples))
        .or_else(|| is_enumerated(&rows[at]).then(|| Across::Samples(vec![joined(&[]); count])))?;
    let (lines, taken) = listed(rows, at, count, decimal);
    if lines.len() < LEAST || lines.first()?.at != at {
        return None;
    }
    let used: Vec<usize> = lines.iter().map(|line| line.at).collect();
    let unmet = (at..at + taken).filter(|i| !used.contains(i)).collect();
    let (mut heading, mut roles) = (Vec::new(), Vec::new());
    let mut table = Vec::new();
    let mut sure = false;
    match across {
        Across::Samples(names) => {
            heading.push(joined(&[]));
            roles.push(Role::Sample(1));
            for line in &lines {
                heading.push(line.name.clone());
                roles.push(Role::Results(Box::new(line.quantity.clone())));
            }
            for (nth, name) in names.into_iter().enumerate() {
                let numbers = lines.iter().map(|line| line.numbers[nth].clone());
                table.push([name].into_iter().chain(numbers).collect());
            }
        }
        Across::Result(nth) => {
            for line in &lines {
                heading.push(line.name.clone());
                roles.push(Role::Results(Box::new(line.quantity.clone())));
            }
            table.push(lines.iter().map(|line| line.numbers[nth].clone()).collect());
        }
        Across::Units(units) => {
            sure = are_the_same(&lines, &units, decimal);
            let mut row = Vec::new();
            for line in &lines {
                for (unit, number) in units.iter().zip(&line.numbers) {
                    let mut quantity = line.quantity.clone();
                    quantity.unit = Some(*unit);
                    heading.push(line.name.clone());
                    roles.push(Role::Results(Box::new(quantity)));
                    row.push(number.clone());
                }
            }
            table.push(row);
        }
    }
    Some(RunTogether { heading, roles, rows: table, sure, unnamed: Vec::new(), unmet, taken })
}

/// Whether every line says the same in both units, so that nothing is to be asked: two pounds per
/// acre are one ppm over the depth for which they are given.
fn are_the_same(lines: &[Listed], units: &[Printed], decimal: Decimal) -> bool {
    let number = |cell: &Cell| match said(&cell.text, decimal) {
        Said::Amount(amount, _) => Some(amount.number()),
        _ => None,
    };
    let twice = |line: &Listed| {
        let (Some(ppm), Some(lb)) = (number(&line.numbers[0]), number(&line.numbers[1])) else {
            return false;
        };
        (lb - 2.0 * ppm).abs() <= 0.03 * lb + 1.0
    };
    let printed: Vec<Unit> = units.iter().map(|u| u.unit).collect();
    printed == [Unit::MgPerKg, Unit::LbPerAcre] && lines.iter().all(twice)
}

/// The lines of the list, and how many rows it takes.
fn listed(rows: &[Vec<Cell>], at: usize, count: usize, decimal: Decimal) -> (Vec<Listed>, usize) {
    let mut lines: Vec<Listed> = Vec::new();
    let (mut taken, mut between) = (0, 0);
    // What "BASE SATURATION %" says of the lines below, and the name that "Desired value" stands
    // behind, while "Value found" comes below it.
    let mut over = String::new();
    let mut waiting: Option<(Cell, Quantity)> = None;
    // The lines since the last that had numbers: a name may be broken over them.
    let mut broken: Vec<Cell> = Vec::new();
    for (i, row) in rows.iter().enumerate().skip(at).take(MOST_LINES) {
        let below = numbers_below(&broken, row, decimal);
        if below.is_some() {
            over.clear();
        }
        let Some((name, mut numbers)) = name_and_numbers(row, decimal).or(below) else {
            broken.extend(filled(row).flat_map(words_of));
            between += 1;
            if between > MOST_BETWEEN || row.iter().any(|c| c.text.contains(". ")) {
                break;
            }
            let label = Label::of(&joined_text(row));
            over = if label.is_saturation() { joined_text(row) } else { String::new() };
            continue;
        };
        broken.clear();
        // A dash behind them stands for a rating.
        if numbers.len() == count + 1 && numbers.last().is_some_and(is_missing) {
            numbers.pop();
        }
        let label = Label::of(&name.text);
        let values = label.has(Word::ResultColumn);
        let aim = label.has(Word::RangeColumn);
        match described(&over, &without_aim(&name.text)) {
            Some(quantity) if aim => waiting = Some((name, quantity)),
            Some(quantity) if numbers.len() == count => {
                lines.push(Listed { at: i, name, quantity, numbers });
                (taken, between) = (i + 1 - at, 0);
            }
            _ if values && numbers.len() == count => {
                if let Some((name, quantity)) = waiting.take() {
                    lines.push(Listed { at: i, name, quantity, numbers });
                    (taken, between) = (i + 1 - at, 0);
                }
            }
            _ => {}
        }
    }
    (lines, taken)
}

/// Bare numbers below a name that is broken over two lines: `Ca %` and `sat` over `58.8 42.3`.
fn numbers_below(name: &[Cell], row: &[Cell], decimal: Decimal) -> Option<(Cell, Vec<Cell>)> {
    let numbers: Vec<Cell> = filled(row).flat_map(words_of).collect();
    let few = (1..=MOST_BROKEN).contains(&name.len()) && numbers.len() > 1;
    (few && numbers.iter().all(|c| is_bare(c, decimal))).then(|| (joined(name), numbers))
}

/// Whether a cell is a number and nothing else.
fn is_bare(cell: &Cell, decimal: Decimal) -> bool {
    matches!(said(&cell.text, decimal), Said::Amount(_, end) if end == cell.text.len())
}

/// A name that is broken over lines has no more words.
const MOST_BROKEN: usize = 5;

/// Whether the numbers of a line are told one after the other: `Lead 41, 38 and 97`.
fn is_enumerated(row: &[Cell]) -> bool {
    let digit = |word: &str| word.starts_with(|c: char| c.is_ascii_digit() || c == '<');
    filled(row).any(|cell| {
        let words: Vec<&str> = cell.text.split(' ').collect();
        words.windows(3).any(|w| digit(w[0]) && JOINS.contains(&w[1]) && digit(w[2]))
    })
}

/// Words that join the last of several numbers, one a language.
const JOINS: &[&str] = &["and", "und", "et", "y", "e", "en", "och", "og", "i", "&"];

/// `CALCIUM: lbs / acre Desired Value` without its aim.
fn without_aim(name: &str) -> String {
    let words: Vec<&str> = name.split(' ').collect();
    let aim = (0..words.len()).find(|&i| {
        Label::of(&words[i..].join(" ")).properties.is_empty()
            && Label::of(&words[i..].join(" ")).has(Word::RangeColumn)
    });
    words[..aim.unwrap_or(words.len())].join(" ")
}

fn joined_text(row: &[Cell]) -> String {
    filled(row).map(|c| c.text.as_str()).collect::<Vec<_>>().join(" ")
}

/// The words that a row begins with, without its number in the list, and the bare numbers that
/// end it, each with its ratings behind it.
fn name_and_numbers(row: &[Cell], decimal: Decimal) -> Option<(Cell, Vec<Cell>)> {
    let mut words = without_brackets(row);
    if words.len() > MOST_WORDS {
        return None;
    }
    if is_enumerated(row) {
        words.retain(|word| !JOINS.contains(&word.text.as_str()));
        for word in words.iter_mut().filter(|w| w.text.ends_with(',')) {
            word.text.pop();
            word.place.end -= 1;
        }
    }
    let mut words = &words[..];
    let bare = |cell: &Cell| {
        is_bare(cell, decimal) || matches!(said(&cell.text, decimal), Said::NotDetected)
    };
    let missing = is_missing;
    if let [first, second, ..] = words
        && first.text.trim_end_matches('.').bytes().all(|b| b.is_ascii_digit())
        && !bare(second)
    {
        words = &words[1..];
    }
    let mut numbers = Vec::new();
    loop {
        let ratings = words.iter().rev().take_while(|w| is_rating(&w.text)).count();
        let rest = &words[..words.len() - ratings];
        match rest {
            // "216   150 - 300": two limits, and no two numbers of the row.
            [before @ .., low, dash, high]
                if matches!(dash.text.as_str(), "-" | "–" | "to")
                    && bare(low)
                    && bare(high)
                    && before.last().is_some_and(bare) =>
            {
                words = before;
            }
            [before @ .., last] if bare(last) || missing(last) && !before.is_empty() => {
                numbers.push(last.clone());
                words = before;
            }
            _ => break,
        }
    }
    numbers.reverse();
    // A dash before the first number stands for a unit or a method.
    let dashes = numbers.iter().take_while(|n| missing(n)).count();
    numbers.drain(..dashes);
    (!words.is_empty()
        && words.len() < MOST_WORDS / 2
        && numbers.iter().filter(|n| bare(n)).count() > 1)
        .then(|| (joined(words), numbers))
}

pub(super) fn is_missing(cell: &Cell) -> bool {
    matches!(cell.text.as_str(), "-" | "–" | "n/a" | "N/A")
}

/// What a name says with the unit and the method behind it: `Available P mg/kg Olsen`.
pub(super) fn described(over: &str, name: &str) -> Option<Quantity> {
    let words: Vec<&str> = name.split(' ').collect();
    let (to, mut quantity) = (1..=words.len()).rev().find_map(|to| {
        let text = format!("{over} {}", words[..to].join(" "));
        Label::of(&text).quantity().ok().map(|quantity| (to, quantity))
    })?;
    let rest = &words[to..];
    if quantity.unit.is_none() {
        let spans = (0..rest.len()).flat_map(|i| [(i, i + 1), (i, i + 2)]);
        let mut units = spans
            .filter(|&(_, end)| end <= rest.len())
            .filter_map(|(i, end)| Label::of(&rest[i..end].join(" ")).only_unit());
        quantity.unit = units.next().filter(|_| quantity.property.unit() != Unit::None);
    }
    let methods = Label::of(&rest.join(" ")).methods;
    quantity.method = quantity.method.or(methods.into_iter().next());
    Some(quantity)
}

/// What a word of a head says of its column.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Says {
    /// Names, units or methods: nothing of a result.
    Describes(bool),
    Result,
    Rating,
    Other,
}

/// The words of a head, each as long as it is known, with what it says of its column.
fn column_words(words: &[Cell]) -> Vec<(Cell, Option<Says>)> {
    let mut found = Vec::new();
    let mut at = 0;
    while at < words.len() {
        let longest = 3.min(words.len() - at);
        let known = (1..=longest).rev().find_map(|length| {
            let cell = joined(&words[at..at + length]);
            let label = Label::of(cell.text.trim_matches(['(', ')', ':', ' ']));
            if !label.unknown.is_empty() || !label.properties.is_empty() {
                return None;
            }
            let says = label.words.iter().find_map(|word| match word {
                Word::NameColumn => Some(Says::Describes(true)),
                Word::UnitColumn | Word::MethodColumn => Some(Says::Describes(false)),
                Word::ResultColumn => Some(Says::Result),
                Word::RatingColumn => Some(Says::Rating),
                Word::RangeColumn | Word::Other(_) => Some(Says::Other),
                _ => None,
            })?;
            Some((cell, says, length))
        });
        match known {
            Some((cell, says, length)) => {
                found.push((cell, Some(says)));
                at += length;
            }
            None => {
                found.push((words[at].clone(), None));
                at += 1;
            }
        }
    }
    found
}

/// What the columns of numbers are by the words of a head: `Parameter Unit Method Result ±`, or
/// `Parameter Unit Upper field Rating Lower field Rating`.
fn columns(row: &[Cell], count: usize) -> Option<Across> {
    let words: Vec<Cell> = filled(row).flat_map(words_of).collect();
    if words.len() > MOST_WORDS {
        return None;
    }
    let words = column_words(&words);
    words.iter().find(|(_, says)| *says == Some(Says::Describes(true)))?;
    let last = words.iter().rposition(|(_, says)| matches!(says, Some(Says::Describes(_))))?;
    let behind = &words[last + 1..];
    let told: Vec<Says> = behind
        .iter()
        .filter_map(|(_, says)| *says)
        .filter(|says| matches!(says, Says::Result | Says::Other))
        .collect();
    if told.len() == count && told.iter().filter(|says| **says == Says::Result).count() == 1 {
        return told.iter().position(|says| *says == Says::Result).map(Across::Result);
    }
    let rated = |(_, says): &(Cell, Option<Says>)| *says == Some(Says::Rating);
    let names: Vec<Cell> = behind
        .split(rated)
        .filter(|group| !group.is_empty())
        .map(|group| joined(&group.iter().map(|(cell, _)| cell.clone()).collect::<Vec<_>>()))
        .collect();
    let each = behind.iter().filter(|w| rated(w)).count() == count && names.len() == count;
    each.then_some(Across::Samples(names))
}

/// The words of a row without what brackets add in figures: `Calcium (60 to 70%)`.
fn without_brackets(row: &[Cell]) -> Vec<Cell> {
    let mut found = Vec::new();
    let mut inner: Vec<Cell> = Vec::new();
    for word in filled(row).flat_map(words_of) {
        let opens = word.text.starts_with('(');
        let closes = word.text.contains(')');
        if opens || !inner.is_empty() {
            inner.push(word);
            if closes {
                let range = inner.len() > 1
                    && inner.iter().any(|w| w.text.contains(|c: char| c.is_ascii_digit()));
                if !range {
                    found.append(&mut inner);
                }
                inner.clear();
            }
        } else {
            found.push(word);
        }
    }
    found.append(&mut inner);
    found
}

/// The units of a row that has nothing but them and methods.
fn units(row: &[Cell], count: usize) -> Option<Vec<Printed>> {
    let all = parts(row);
    let units: Vec<Printed> = all
        .iter()
        .filter_map(|part| match part.says {
            run_together::Says::Unit(unit) => Some(unit),
            _ => None,
        })
        .collect();
    let other = |says: &run_together::Says| {
        use run_together::Says::{Method, Nothing, Unit};
        !matches!(says, Unit(_) | Method(_) | Nothing)
    };
    let different = units.windows(2).all(|pair| pair[0].unit != pair[1].unit);
    (units.len() == count && different && !all.iter().any(|p| other(&p.says))).then_some(units)
}

/// The names of as many samples in a line above, the best of several.
fn samples_above(rows: &[Vec<Cell>], at: usize, count: usize) -> Option<Vec<Cell>> {
    let near = at.saturating_sub(ABOVE)..at;
    // A number by itself is a poor name.
    let poor = |names: &[Cell]| names.iter().all(|c| c.text.bytes().all(|b| b.is_ascii_digit()));
    let all = near.filter_map(|i| samples(&rows[i], count));
    all.min_by_key(|(rank, names)| (poor(names), *rank)).map(|(_, names)| names)
}

/// No name has more words.
const MOST_IN_NAME: usize = 4;

/// `beds  greenhouse  upper pasture` right above the list, which nothing says to be names: as many
/// words as numbers are, more leave it open which are whose.
fn bare_names(rows: &[Vec<Cell>], at: usize, count: usize) -> Option<Vec<Cell>> {
    let above = rows[at.saturating_sub(1)..at].last()?;
    let words: Vec<Cell> = filled(above).flat_map(words_of).collect();
    let known = |cell: &Cell| {
        let label = Label::of(&cell.text);
        label.unknown.is_empty() && !label.words.iter().all(|w| matches!(w, Word::Sample(_)))
            || cell.text.contains(|c: char| c.is_ascii_digit() || matches!(c, ':' | '.' | ','))
    };
    if !(count..=count * MOST_IN_NAME).contains(&words.len()) || words.iter().any(known) {
        return None;
    }
    if words.len() == count {
        return Some(words);
    }
    // "Ridge paddock Creek paddock": a word is the same in each.
    if words.len().is_multiple_of(count) {
        let length = words.len() / count;
        let names: Vec<&[Cell]> = words.chunks(length).collect();
        let alike = |at: usize| names.iter().all(|name| name[at].text == names[0][at].text);
        if (0..length).any(alike) {
            return Some(names.iter().map(|name| joined(name)).collect());
        }
    }
    (count > 2 && words.len() <= count * 2).then(|| (0..count).map(|_| joined(&[])).collect())
}

/// The names of samples in a line that begins with a word for them, and how good they are.
fn samples(row: &[Cell], count: usize) -> Option<(u8, Vec<Cell>)> {
    let cells: Vec<&Cell> = filled(row).collect();
    let of = |text: &str| match role(text.trim_end_matches([':', ' '])) {
        Role::Sample(rank) if rank < 10 => Some(rank),
        _ => None,
    };
    if cells.len() == count + 1
        && let Some(rank) = of(&cells[0].text)
    {
        return Some((rank, cells[1..].iter().map(|c| (*c).clone()).collect()));
    }
    let words: Vec<Cell> = cells.iter().flat_map(|c| words_of(c)).collect();
    (1..words.len().min(4)).rev().find_map(|to| {
        let rank = of(&joined(&words[..to]).text)?;
        let names = &words[to..];
        // "Field 1 Field 2": each begins with the same word.
        let starts: Vec<usize> =
            (0..names.len()).filter(|&i| names[i].text == names[0].text).collect();
        if names.len() == count {
            return Some((rank, names.to_vec()));
        }
        let ends = starts[1..].iter().copied().chain([names.len()]);
        let each = starts.iter().zip(ends).map(|(&from, to)| joined(&names[from..to]));
        (starts.len() == count).then(|| (rank, each.collect()))
    })
}
