//! A table whose columns stand one blank apart, as text copied from a PDF: the names of its head,
//! which may take several lines, are counted off against the numbers of its rows.

use std::ops::Range;

use super::Cell;
use super::exchange_letters::letter_written_out;
use super::fold::squash;
use super::grid::{filled, joined, words_of};
use super::label::{Label, Quantity};
use super::layout::{Role, role};
use super::names::Word;
use super::number::{Decimal, Said, is_rating, said};
use super::place::{Tail, wrong_unit};
use super::plausible::impossible;
use super::stacked_heads::is_code;
use super::units::Printed;
use crate::quantity::Unit;
use crate::soil::{Method, Property};

/// No head takes more lines, and no name more words.
const MOST_HEADS: usize = 4;
const MOST_WORDS: usize = 6;

/// No row has more words, and no more rows are counted off at once.
const MOST_TOKENS: usize = 80;
const MOST_ROWS: usize = 2_000;

/// Such a table in columns.
pub(super) struct RunTogether {
    pub heading: Vec<Cell>,
    pub roles: Vec<Role>,
    pub rows: Vec<Vec<Cell>>,
    /// Whether one line of names stands over as many numbers, so that nothing is to be asked.
    pub sure: bool,
    /// The rows of the head that name no column.
    pub unnamed: Vec<usize>,
    /// The rows whose numbers could not be counted off.
    pub unmet: Vec<usize>,
    /// How many rows it takes.
    pub taken: usize,
}

/// The table that begins at a row.
pub(super) fn run_together(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<RunTogether> {
    // Looked at by its bytes first: nearly every line ends here.
    let near = rows.len().min(at + 1 + MOST_HEADS);
    if !(at + 1..near).any(|i| has_numbers(&rows[i])) {
        return None;
    }
    let first = parts(&rows[at]);
    if !first.iter().any(|p| matches!(p.says, Says::Result(_) | Says::Unit(_))) {
        return None;
    }
    let from = (at + 1..near)
        .find(|&i| items(&rows[i], decimal).is_some_and(|items| numbers(&items) > 1))?;
    if !rows[at..=from].iter().all(|row| is_run_together(row)) {
        return None;
    }
    let heads: Vec<Vec<Part>> = rows[at..from].iter().map(|row| parts(row)).collect();
    let below: Vec<Vec<Item>> =
        rows[from..].iter().take(MOST_ROWS).map_while(|row| items(row, decimal)).collect();
    columns(&heads).into_iter().find_map(|columns| {
        let found = count_off(&columns, &below, decimal)?;
        let sure = heads.len() == 1 && columns.sure && found.sure;
        let names = |p: &Part| matches!(p.says, Says::Result(_));
        // Of several units in a line none is that of all results.
        let units =
            |i: &usize| heads[*i].iter().filter(|p| matches!(p.says, Says::Unit(_))).count() > 1;
        let unnamed = (0..heads.len()).filter(|&i| !heads[i].iter().any(names) && !units(&i));
        Some(RunTogether {
            unnamed: unnamed.map(|i| at + i).collect(),
            unmet: found.unmet.iter().map(|i| from + i).collect(),
            taken: from - at + found.taken,
            ..found.into_table(&columns, sure)
        })
    })
}

/// What some words of a head say.
#[derive(Clone, Debug)]
pub(super) enum Says {
    Result(Box<Quantity>),
    /// A number that is none of the soil's results, and why.
    Refused(String),
    Unit(Printed),
    Method(Method),
    Index,
    Rating,
    /// The name, depth or texture of a sample.
    Of(Role),
    /// Cations or nutrients in general.
    Group(Option<Unit>),
    Nothing,
}

/// Some words of a head.
#[derive(Clone, Debug)]
pub(super) struct Part {
    pub says: Says,
    pub cell: Cell,
}

/// The words of a row, each a cell.
pub(super) fn tokens(row: &[Cell]) -> Vec<Cell> {
    filled(row).flat_map(words_of).collect()
}

/// Whether several words of a row begin with a digit.
fn has_numbers(row: &[Cell]) -> bool {
    let words = row.iter().flat_map(|c| c.text.split(' '));
    words.filter(|w| w.starts_with(|c: char| c.is_ascii_digit())).nth(1).is_some()
}

/// Whether a row has its words one blank apart: a table held by wide gaps has its columns.
pub(super) fn is_run_together(row: &[Cell]) -> bool {
    let count = filled(row).count();
    count < 3 || count * 4 < tokens(row).len()
}

/// The names and units of a line, from the left, each as long as it can be.
pub(super) fn parts(row: &[Cell]) -> Vec<Part> {
    let mut words = tokens(row);
    let written: Vec<Option<&str>> =
        words.iter().map(|w| letter_written_out(&w.text, &words)).collect();
    for (word, written) in words.iter_mut().zip(written) {
        if let Some(written) = written {
            word.text = written.into();
        }
    }
    // "% K % Mg % H": each share's sign stands before its name.
    let sign = |w: &Cell| w.text == "%";
    let before = words.last().is_some_and(|w| !sign(w))
        && words.windows(2).filter(|w| sign(&w[0]) && !sign(&w[1])).count() > 1;
    let mut found = Vec::new();
    let mut at = 0;
    while at < words.len() && words.len() <= MOST_TOKENS {
        let longest = MOST_WORDS.min(words.len() - at);
        let part = (1..=longest).rev().find_map(|length| {
            if before && length > 1 && sign(&words[at + length - 1]) {
                return None;
            }
            let cell = joined(&words[at..at + length]);
            says(&words[at..at + length], &cell.text).map(|says| (Part { says, cell }, length))
        });
        let (part, length) =
            part.unwrap_or_else(|| (Part { says: Says::Nothing, cell: words[at].clone() }, 1));
        found.push(part);
        at += length;
    }
    found
}

/// What words say together, when all of them are known.
pub(super) fn says(words: &[Cell], text: &str) -> Option<Says> {
    let label = Label::of(text.trim_end_matches([':', '*', ',']));
    let alone = words.len() == 1;
    let about =
        |w: &Word| matches!(w, Word::Sample(_) | Word::Depth | Word::Texture | Word::Advice);
    if alone && text.chars().all(|c| !super::fold::is_letter(c) && c != '%') {
        return None;
    }
    // "Index" belongs to the name before it.
    if !alone && squash(&words[0].text) == "index" {
        return None;
    }
    // "Humus-" goes on in the line below.
    if !label.unknown.is_empty() || text.ends_with('-') {
        return None;
    }
    if !alone && two_in_one(words) {
        return None;
    }
    if label.properties.is_empty() && !label.is_soil() {
        return of_no_property(&label, alone, text);
    }
    // "P P" are two columns, and so are "% K %" and what names a sample before a result.
    let again = (1..words.len()).any(|i| words[..i].iter().any(|w| w.text == words[i].text));
    let unit = |w: &Cell| Label::of(&w.text).only_unit().is_some();
    let two_units = !alone && unit(&words[0]) && words.last().is_some_and(unit);
    if !alone && (again || two_units || label.words.iter().any(about)) {
        return None;
    }
    match label.quantity() {
        // "% EC dS/m", "(meq/100 g) Acidity": the unit belongs to the name before it.
        Ok(quantity)
            if unit(&words[0])
                && (words[0].text.starts_with('(')
                    || wrong_unit(quantity.property, quantity.unit.map(|u| u.unit)).is_some()) =>
        {
            None
        }
        Ok(quantity) => Some(Says::Result(Box::new(quantity))),
        Err(why) if alone => Some(Says::Refused(why)),
        Err(_) => None,
    }
}

/// Whether words are two columns: two units, two methods, or the symbols of two elements.
fn two_in_one(words: &[Cell]) -> bool {
    let of = |words: &[Cell]| Label::of(&joined(words).text);
    let meant = |words: &[Cell]| {
        let label = of(words);
        let index = label.words.iter().all(|w| matches!(w, Word::Index))
            && !label.words.is_empty()
            && label.unknown.is_empty()
            && label.unit.is_none();
        label.only_unit().is_some() || label.only_method().is_some() || index
    };
    let parted = (1..words.len()).any(|i| meant(&words[..i]) && meant(&words[i..]));
    let named: Vec<_> =
        words.iter().map(|w| Label::of(&w.text).quantity().ok().map(|q| q.property)).collect();
    parted || named.iter().all(Option::is_some) && named.iter().any(|p| *p != named[0])
}

/// What words say in which no property is named.
fn of_no_property(label: &Label, alone: bool, text: &str) -> Option<Says> {
    if let Some(unit) = label.only_unit() {
        return Some(Says::Unit(unit));
    }
    if let Some(method) = label.only_method().filter(|_| label.unit.is_none()) {
        return match label.quantity() {
            Ok(quantity) => Some(Says::Result(Box::new(quantity))),
            Err(_) => Some(Says::Method(method)),
        };
    }
    if let Ok(quantity) = label.quantity() {
        return Some(Says::Result(Box::new(quantity)));
    }
    let all = |wanted: fn(&Word) -> bool| {
        !label.words.is_empty() && label.words.iter().all(wanted) && label.unit.is_none()
    };
    if all(|w| matches!(w, Word::Index)) {
        return Some(Says::Index);
    }
    if all(|w| matches!(w, Word::RatingColumn)) {
        return Some(Says::Rating);
    }
    if label.has(Word::Advice) || label.has(Word::Ratio) {
        return Some(Says::Refused("a ratio or a recommendation, not a result".into()));
    }
    let other = |w: &Word| matches!(w, Word::Other(_) | Word::Humic | Word::AvailabilityIndex);
    let of_it = |w: &Word| other(w) || matches!(w, Word::Plain);
    if label.words.iter().any(other) && (alone || label.words.iter().all(of_it)) {
        return Some(Says::Refused("not used by this program".into()));
    }
    if all(|w| matches!(w, Word::Plain | Word::Saturation | Word::Sat)) || label.is_saturation() {
        return (!alone).then_some(Says::Group(label.unit.map(|u| u.unit)));
    }
    match role(text) {
        // "Laboratory reference" and "Index" are two.
        Role::Sample(_) if label.has(Word::Index) || label.unit.is_some() => None,
        of @ (Role::Sample(_) | Role::Depth | Role::Texture) => Some(Says::Of(of)),
        _ if alone => Some(Says::Nothing),
        _ => None,
    }
}

/// The columns that a head has.
#[derive(Clone, Debug)]
pub(super) struct Columns {
    pub parts: Vec<Part>,
    /// Where the first result stands.
    first: usize,
    /// Whether the names themselves leave no doubt.
    sure: bool,
}

/// The ways to take the lines of a head as columns, the likeliest first: the line with the most
/// names has them, and the others say more of them.
pub(super) fn columns(heads: &[Vec<Part>]) -> Vec<Columns> {
    let results = |line: &Vec<Part>| {
        line.iter().filter(|p| matches!(p.says, Says::Result(_) | Says::Refused(_))).count()
    };
    let mut lines: Vec<usize> = (0..heads.len()).filter(|&i| results(&heads[i]) > 0).collect();
    lines.sort_by_key(|&i| (std::cmp::Reverse(results(&heads[i])), heads.len() - i));
    lines.into_iter().flat_map(|main| columns_of(heads, main)).collect()
}

/// The ways to take the columns from one line of a head.
fn columns_of(heads: &[Vec<Part>], main: usize) -> Vec<Columns> {
    let mut parts = heads[main].clone();
    let (above, below) = (&heads[..main], &heads[main + 1..]);
    repeat_groups(&mut parts, above);
    let mut lines = below.to_vec();
    if let Some(inner) = lines.first_mut() {
        put_in_group(&mut parts, inner);
        tell_reactions(&mut parts, inner);
    }
    // Shares of the exchange in a heading over other names: whose they are can't be counted off.
    let share = |p: &Part| matches!(p.says, Says::Group(Some(Unit::Percent)));
    let shares_above = above.iter().flatten().any(share) && !parts.iter().any(names_share);
    for line in &lines {
        describe(&mut parts, line);
    }
    if shares_above || parts.iter().filter(|p| matches!(p.says, Says::Result(_))).count() < 2 {
        return Vec::new();
    }
    refuse_twins(&mut parts);
    let mut ways = vec![parts.clone()];
    ways.extend((0..parts.len()).filter_map(|i| split_in_two(&parts, i)));
    let found = ways.into_iter().enumerate().filter_map(|(nth, parts)| {
        let first = parts.iter().position(|p| matches!(p.says, Says::Result(_)) || is_twin(p))?;
        Some(Columns { parts, first, sure: nth == 0 })
    });
    found.collect()
}

/// `pH pH` over `H2O CaCl2`: each with its own.
fn tell_reactions(parts: &mut Vec<Part>, line: &[Part]) {
    const WATER: [&str; 6] = ["h2o", "water", "agua", "eau", "wasser", "acqua"];
    let told: Vec<Option<Method>> = line
        .iter()
        .flat_map(|p| tokens(std::slice::from_ref(&p.cell)))
        .filter_map(|word| match Label::of(&word.text).only_method() {
            Some(method @ (Method::Kcl | Method::CaCl2)) => Some(Some(method)),
            _ => WATER.contains(&squash(&word.text).as_str()).then_some(None),
        })
        .collect();
    let reactions: Vec<usize> = (0..parts.len())
        .filter(|&i| matches!(&parts[i].says, Says::Result(q) if q.property == Property::Ph && q.method.is_none()))
        .collect();
    // "pH" over "H2O CaCl2": one name over both.
    if let (&[only], [first, second]) = (&reactions[..], &told[..])
        && first != second
    {
        parts.insert(only + 1, parts[only].clone());
        for (i, method) in [(only, first), (only + 1, second)] {
            if let (Says::Result(quantity), Some(method)) = (&mut parts[i].says, method) {
                take_method(quantity, *method);
            }
        }
        return;
    }
    // Water alone may be anything.
    let told: Vec<_> = told.into_iter().filter(|m| reactions.len() > 1 || m.is_some()).collect();
    if reactions.len() != told.len() {
        return;
    }
    for (&i, method) in reactions.iter().zip(told) {
        if let (Says::Result(quantity), Some(method)) = (&mut parts[i].says, method) {
            take_method(quantity, method);
        }
    }
}

fn names_share(part: &Part) -> bool {
    matches!(&part.says, Says::Result(q) if q.property.is_share())
}

/// `P K Mg P K Mg` below `Index mg/l`: the same names once for each group, in their order.
fn repeat_groups(parts: &mut [Part], above: &[Vec<Part>]) {
    let of = |p: &Part| match &p.says {
        Says::Result(q) if q.unit.is_none() && q.property.unit() != Unit::None => Some(q.property),
        _ => None,
    };
    let group = |p: &&Part| matches!(p.says, Says::Unit(_) | Says::Index | Says::Method(_));
    let over: Vec<Part> = above.iter().flatten().filter(group).cloned().collect();
    // They may stand in the same line, before the first name.
    let first = parts.iter().position(|p| matches!(p.says, Says::Result(_))).unwrap_or(0);
    let ahead: Vec<Part> = parts[..first].iter().filter(group).cloned().collect();
    let in_line = over.len() < 2 && ahead.len() > 1;
    let groups = if in_line { ahead } else { over };
    let bare: Vec<usize> = (0..parts.len()).filter(|&i| of(&parts[i]).is_some()).collect();
    let length = bare.len() / groups.len().max(1);
    let names: Vec<_> = bare.iter().map(|&i| of(&parts[i])).collect();
    let again = length > 1
        && groups.len() > 1
        && length * groups.len() == bare.len()
        && names.chunks(length).all(|chunk| chunk == &names[..length]);
    if !again {
        return;
    }
    for (nth, &i) in bare.iter().enumerate() {
        let Says::Result(quantity) = &mut parts[i].says else { continue };
        match groups[nth / length].says {
            Says::Unit(unit) => quantity.unit = Some(unit),
            Says::Method(method) => take_method(quantity, method),
            _ => quantity.unit = Some(Printed { unit: Unit::Index, scale: 1.0 }),
        }
    }
    if in_line {
        parts[..first].iter_mut().filter(|p| group(&&**p)).for_each(|p| p.says = Says::Nothing);
    }
}

/// Why a column is not read.
const TWINS: &str = "two columns have this name, and nothing tells them apart";

fn is_twin(part: &Part) -> bool {
    matches!(&part.says, Says::Refused(why) if why == TWINS)
}

/// Names that stand twice with nothing to tell them apart can't be counted off.
pub(super) fn refuse_twins(parts: &mut [Part]) {
    let of = |p: &Part| match &p.says {
        Says::Result(q) => Some((q.property, q.form, q.method, q.unit.map(|u| u.unit))),
        _ => None,
    };
    let all: Vec<_> = parts.iter().map(of).collect();
    for (i, part) in parts.iter_mut().enumerate() {
        let twin = |(j, other): (usize, &_)| j != i && *other == all[i];
        if all[i].is_some() && all.iter().enumerate().any(twin) {
            part.says = Says::Refused(TWINS.into());
        }
    }
}

/// `Exchangeable cations (cmol/kg)` over `Na K Ca Mg`: the names take the place of their group.
fn put_in_group(parts: &mut Vec<Part>, inner: &mut Vec<Part>) {
    let is_name = |p: &Part| matches!(&p.says, Says::Result(q) if q.unit.is_none());
    let only_names = inner.iter().all(is_name);
    // A unit by itself heads a group where the line below has nothing but names.
    let group = |p: &Part| match p.says {
        Says::Group(unit) => Some(unit),
        Says::Unit(unit) if only_names => Some(Some(unit.unit)),
        _ => None,
    };
    let groups: Vec<(usize, Option<Unit>)> =
        parts.iter().enumerate().filter_map(|(i, p)| Some((i, group(p)?))).collect();
    let (&[(at, unit)], Some(from)) = (&groups[..], inner.iter().position(is_name)) else { return };
    let count = inner[from..].iter().take_while(|p| is_name(p)).count();
    if count < 3 || inner[from + count..].iter().any(is_name) {
        return;
    }
    let mut names: Vec<Part> = inner.drain(from..from + count).collect();
    for name in &mut names {
        if let (Says::Result(quantity), Some(unit)) = (&mut name.says, unit) {
            quantity.unit = Some(Printed { unit, scale: 1.0 });
        }
    }
    // The other words of the group's name go with it.
    let word = |p: &Part| matches!(p.says, Says::Nothing | Says::Group(_));
    let before = parts[..at].iter().rev().take_while(|p| word(p)).count();
    let behind = parts[at + 1..].iter().take_while(|p| word(p)).count();
    parts.splice(at - before..=at + behind, names);
}

/// A name of two words as two names: `pH Buffer`.
fn split_in_two(parts: &[Part], at: usize) -> Option<Vec<Part>> {
    let words = tokens(std::slice::from_ref(&parts[at].cell));
    if words.len() < 2 || !matches!(parts[at].says, Says::Result(_)) {
        return None;
    }
    let half = |words: &[Cell]| {
        let cell = joined(words);
        let says = says(words, &cell.text)?;
        matches!(says, Says::Result(_)).then_some(Part { says, cell })
    };
    let halves =
        (1..words.len()).find_map(|to| Some([half(&words[..to])?, half(&words[to..])?]))?;
    let mut split = parts.to_vec();
    split.splice(at..=at, halves);
    Some(split)
}

/// Gives the columns the units, methods and indices of the line below their names: all of them
/// from the right, or none.
pub(super) fn describe(parts: &mut [Part], line: &[Part]) {
    let mut described = parts.to_vec();
    let mut left = line.iter().rev().peekable();
    for part in described.iter_mut().rev() {
        let Some(next) = left.peek() else { break };
        let Says::Result(quantity) = &mut part.says else {
            // A column of something else has its own words below it.
            if !matches!(next.says, Says::Method(_)) {
                left.next();
            }
            continue;
        };
        if matches!(next.says, Says::Rating) {
            left.next();
        }
        let Some(next) = left.peek() else { break };
        match next.says {
            Says::Unit(unit) if takes(quantity, unit) => quantity.unit = Some(unit),
            Says::Index => quantity.unit = Some(Printed { unit: Unit::Index, scale: 1.0 }),
            Says::Method(method) => take_method(quantity, method),
            Says::Unit(_) if quantity.property.unit() == Unit::None => continue,
            _ => break,
        }
        left.next();
    }
    let units = |parts: &[Part], wanted: bool| {
        let open = |p: &&Part| {
            matches!(&p.says, Says::Result(q)
                if q.property.unit() != Unit::None && q.unit.is_some() == wanted)
        };
        parts.iter().filter(open).count()
    };
    let over = left.any(|p| matches!(p.says, Says::Unit(_) | Says::Index));
    if !over && units(&described, false) == 0 {
        parts.clone_from_slice(&described);
    }
}

/// Whether a unit can be a property's.
fn takes(quantity: &Quantity, printed: Printed) -> bool {
    let of = quantity.property;
    of.unit() != Unit::None
        && quantity.unit.is_none()
        && wrong_unit(of, Some(printed.unit)).is_none()
        && (of.shares_unit() || of.unit() == printed.unit || of.unit() != Unit::MgPerKg)
}

pub(super) fn take_method(quantity: &mut Quantity, method: Method) {
    if quantity.property == Property::Ph && matches!(method, Method::Kcl | Method::CaCl2) {
        quantity.property = Property::SaltPh;
    }
    quantity.method = quantity.method.or(Some(method));
}

/// What stands in a row of numbers.
#[derive(Clone, Debug)]
pub(super) enum Item {
    /// A result, with its rating behind it.
    Number(Cell, Option<String>),
    /// A result that was not measured.
    Missing,
    Words(Vec<Cell>),
}

pub(super) fn numbers(items: &[Item]) -> usize {
    items.iter().filter(|i| matches!(i, Item::Number(..))).count()
}

/// The numbers and words of a row; `None` where its numbers have their own units.
pub(super) fn items(row: &[Cell], decimal: Decimal) -> Option<Vec<Item>> {
    let words = tokens(row);
    if words.len() > MOST_TOKENS {
        return None;
    }
    let mut found: Vec<Item> = Vec::new();
    let mut at = 0;
    while at < words.len() {
        let next = words.get(at + 1);
        let sign = matches!(words[at].text.as_str(), "<" | ">" | "±" | "≤" | "≥");
        let length = if sign && next.is_some() { 2 } else { 1 };
        let cell = joined(&words[at..at + length]);
        at += length;
        if cell.text.starts_with('±') {
            continue;
        }
        match said(&cell.text, decimal) {
            Said::Amount(_, end) => {
                let tail = Tail::of(&cell.text[end..], decimal);
                if tail.unit.is_some() || tail.left.is_some() {
                    take_word(&mut found, cell)?;
                } else {
                    found.push(Item::Number(cell, None));
                }
            }
            Said::NotDetected => found.push(Item::Number(cell, None)),
            Said::Missing => found.push(Item::Missing),
            // "2-" and "2+" are halves of an index.
            _ if is_half_index(&cell.text) => found.push(Item::Number(cell, None)),
            Said::Range | Said::Text => take_word(&mut found, cell)?,
        }
    }
    Some(found)
}

/// Takes a word: the rating of the number before it, or one more of several; `None` for a unit.
fn take_word(found: &mut Vec<Item>, cell: Cell) -> Option<()> {
    match found.last_mut() {
        Some(Item::Number(_, rating)) if is_rating(&cell.text) || is_class(&cell.text) => {
            match rating {
                Some(rating) => rating.extend([" ", &cell.text]),
                None => *rating = Some(cell.text),
            }
        }
        Some(Item::Number(..)) if Label::of(&cell.text).only_unit().is_some() => return None,
        Some(Item::Words(words)) => words.push(cell),
        _ => found.push(Item::Words(vec![cell])),
    }
    Some(())
}

fn is_half_index(text: &str) -> bool {
    let digit = text.strip_suffix('-').or_else(|| text.strip_suffix('+'));
    digit.is_some_and(|d| d.len() == 1 && d.bytes().all(|b| b.is_ascii_digit()))
}

/// `C`, `IV`, `IVA`: a laboratory's class, which stands behind its number.
fn is_class(text: &str) -> bool {
    let roman = |t: &str| !t.is_empty() && t.bytes().all(|b| matches!(b, b'I' | b'V'));
    matches!(text, "A" | "B" | "C" | "D" | "E") || roman(text.trim_end_matches(['A', 'B']))
}

/// The numbers of the rows under the columns.
struct CountedOff {
    rows: Vec<Vec<Cell>>,
    named: bool,
    /// Which columns have their ratings beside them.
    rated: Vec<bool>,
    sure: bool,
    /// Rows of the table that could not be met, and how many there are in all.
    unmet: Vec<usize>,
    taken: usize,
}

/// Counts the columns off against the numbers of the rows. Every row must be met in the same
/// way, and in one way only.
fn count_off(columns: &Columns, rows: &[Vec<Item>], decimal: Decimal) -> Option<CountedOff> {
    let parts = &columns.parts[columns.first..];
    let runs = unknown_runs(parts);
    // A sentence has more words than names.
    let unknown: usize = runs.iter().map(|run| run.len()).sum();
    if unknown * 2 > parts.len() {
        return None;
    }
    let mut ways = patterns(&runs);
    let mut taken = Vec::new();
    let mut met = 0;
    for row in rows {
        let fits = |way: &Vec<usize>| meet(parts, &runs, way, row, decimal).is_some();
        let left: Vec<Vec<usize>> = ways.iter().filter(|way| fits(way)).cloned().collect();
        if left.is_empty() {
            // A row with a blank somewhere can't be counted off; what is no row ends the table.
            if met == 0 || numbers(row) * 2 < parts.len() {
                break;
            }
            taken.push(None);
            continue;
        }
        ways = left;
        met += 1;
        taken.push(Some(row));
    }
    // What follows the last row that was met is no part of the table.
    taken.truncate(taken.iter().rposition(Option::is_some)? + 1);
    let [way] = &ways[..] else { return None };
    // A row with a number less before its first result may have lost one behind it.
    let before = |row: &&Vec<Item>| {
        meet(parts, &runs, way, row, decimal).map_or(0, |(_, rest)| numbers(rest))
    };
    let counts: Vec<usize> = taken.iter().flatten().map(before).collect();
    // "CHAPEL 14 AC" has one more, as part of its name.
    let often = |n: &&usize| (counts.iter().filter(|m| m == n).count(), **n);
    let usual = counts.iter().max_by_key(often).copied().unwrap_or(0);
    for row in &mut taken {
        if row.as_ref().is_some_and(|row| before(row) < usual) {
            *row = None;
        }
    }
    taken.truncate(taken.iter().rposition(Option::is_some)? + 1);
    let lead = &columns.parts[..columns.first];
    let mut sure = runs.is_empty();
    let mut shaped = Vec::new();
    for row in taken.iter() {
        let Some(row) = row else { continue };
        let (cells, rest) = meet(parts, &runs, way, row, decimal)?;
        // One column too many before the first result may shift them all.
        let loose = rest.iter().map(width).sum::<usize>() > lead.len();
        if loose && !parts.iter().any(is_checked) {
            return None;
        }
        sure &= !loose;
        shaped.push((name(lead, rest), cells));
    }
    let named = shaped.iter().any(|(name, _)| !name.text.is_empty());
    let rated = |i: usize| shaped.iter().any(|(_, cells)| !cells[i].1.is_empty());
    let rated: Vec<bool> = (0..parts.len() - unknown).map(rated).collect();
    let row = |(name, cells): &(Cell, Vec<Met>)| {
        let mut row: Vec<Cell> = named.then(|| name.clone()).into_iter().collect();
        for ((cell, rating), rated) in cells.iter().zip(&rated) {
            row.push(cell.clone());
            row.extend(rated.then(|| Cell { text: rating.clone(), place: cell.place }));
        }
        row
    };
    let rows: Vec<Vec<Cell>> = shaped.iter().map(row).collect();
    let unmet = (0..taken.len()).filter(|&i| taken[i].is_none()).collect();
    (!rows.is_empty()).then_some(CountedOff { rows, named, rated, sure, unmet, taken: taken.len() })
}

/// Whether a number out of its column would be seen: a pH can only be a pH.
fn is_checked(part: &Part) -> bool {
    matches!(&part.says, Says::Result(q)
        if matches!(q.property, Property::Ph | Property::SaltPh | Property::BufferPh))
}

fn width(item: &Item) -> usize {
    match item {
        Item::Words(words) => words.len(),
        _ => 1,
    }
}

/// Where columns stand one after the other of which nobody knows whether they hold numbers.
fn unknown_runs(parts: &[Part]) -> Vec<Range<usize>> {
    let unknown =
        |p: &Part| !matches!(p.says, Says::Result(_) | Says::Unit(_) | Says::Index) && !is_twin(p);
    let mut runs: Vec<Range<usize>> = Vec::new();
    for i in (0..parts.len()).filter(|&i| unknown(&parts[i])) {
        match runs.last_mut() {
            Some(run) if run.end == i => run.end = i + 1,
            _ => runs.push(i..i + 1),
        }
    }
    runs
}

/// How many numbers each run of unknown columns may hold.
fn patterns(runs: &[Range<usize>]) -> Vec<Vec<usize>> {
    let mut all = vec![Vec::new()];
    if runs.len() > 3 {
        return Vec::new();
    }
    for run in runs {
        let longer = |way: &Vec<usize>| {
            let way = way.clone();
            (0..=run.len().min(3)).map(move |count| [way.clone(), vec![count]].concat())
        };
        all = all.iter().flat_map(longer).collect();
    }
    all
}

/// A result under its column, and its rating.
type Met = (Cell, String);

/// The numbers of a row under the columns, from the right, and what is left of it.
fn meet<'a>(
    parts: &[Part],
    runs: &[Range<usize>],
    way: &[usize],
    row: &'a [Item],
    decimal: Decimal,
) -> Option<(Vec<Met>, &'a [Item])> {
    let mut rest = row;
    let mut cells: Vec<Met> = Vec::new();
    let mut at = parts.len();
    while at > 0 {
        at -= 1;
        if let Some(run) = runs.iter().position(|run| run.contains(&at)) {
            at = runs[run].start;
            let mut left = way[run];
            while let [before @ .., last] = rest {
                match last {
                    Item::Words(_) => {}
                    _ if left > 0 => left -= 1,
                    _ => break,
                }
                rest = before;
            }
            if left > 0 {
                return None;
            }
            continue;
        }
        // "b. low": ratings of more than one word.
        if let [before @ .., Item::Words(words)] = rest
            && words.len() < 4
            && words.iter().any(|w| is_rating(&w.text))
            && !words.iter().any(|w| w.text.contains(|c: char| c.is_ascii_digit()))
        {
            rest = before;
        }
        let [before @ .., last] = rest else { return None };
        cells.push(match last {
            Item::Number(cell, rating) => {
                if !can_be(&parts[at].says, &cell.text, decimal) {
                    return None;
                }
                (cell.clone(), rating.clone().unwrap_or_default())
            }
            Item::Missing => {
                (Cell { text: String::new(), place: parts[at].cell.place }, String::new())
            }
            Item::Words(_) => return None,
        });
        rest = before;
    }
    cells.reverse();
    // A decimal number before the first column is a result, and all stand one column off.
    if matches!(rest.last(), Some(Item::Number(c, None)) if c.text.contains(['.', ','])) {
        return None;
    }
    shares_add_up(parts, runs, &cells, decimal).then_some((cells, rest))
}

/// Whether a number can be what its column says.
pub(super) fn can_be(says: &Says, text: &str, decimal: Decimal) -> bool {
    let (Says::Result(quantity), Said::Amount(amount, _)) = (says, said(text, decimal)) else {
        return true;
    };
    let number = amount.number();
    let unit = quantity.unit.map_or(quantity.property.unit(), |u| u.unit);
    match quantity.property {
        Property::Ph | Property::SaltPh => (3.0..=10.0).contains(&number),
        Property::BufferPh => quantity.lime_index || (4.0..=9.0).contains(&number),
        of => impossible(of, number, Some(unit)).is_none(),
    }
}

/// Whether the shares of the exchange, where all are there, come to the whole.
fn shares_add_up(parts: &[Part], runs: &[Range<usize>], cells: &[Met], decimal: Decimal) -> bool {
    let known = (0..parts.len()).filter(|i| !runs.iter().any(|run| run.contains(i)));
    let shares: Vec<f64> = known
        .zip(cells)
        .filter(|(i, _)| match &parts[*i].says {
            Says::Result(q) => q.property.is_share() && q.property != Property::BaseSaturation,
            _ => false,
        })
        .filter_map(|(_, (cell, _))| match said(&cell.text, decimal) {
            Said::Amount(amount, _) => Some(amount.number()),
            _ => None,
        })
        .collect();
    let of_exchange = shares.len() > 3;
    !of_exchange || (75.0..=130.0).contains(&shares.iter().sum::<f64>())
}

/// The name of a sample in the words before its results: that under the best head where the
/// words and the heads are as many, else its first words; a code where there are none.
pub(super) fn name(lead: &[Part], rest: &[Item]) -> Cell {
    let all: Vec<Cell> = rest.iter().flat_map(cells_of).collect();
    let rank = |part: &Part| match part.says {
        Says::Of(Role::Sample(rank)) => Some(rank),
        _ => None,
    };
    let best = lead.iter().enumerate().filter_map(|(i, p)| Some((rank(p)?, i))).min();
    if all.len() == lead.len()
        && let Some((_, best)) = best
        && !is_code(&all[best].text)
    {
        return all[best].clone();
    }
    let words = |i: &Item| matches!(i, Item::Words(_)) && !is_code(&joined(&cells_of(i)).text);
    let Some(at) = rest.iter().position(words) else {
        return all.into_iter().next().unwrap_or_else(|| joined(&[]));
    };
    let mut named = cells_of(&rest[at]);
    // "Field 3" ends with its number, and "Field 3 0-20" with its depth.
    if let Some(Item::Number(cell, None)) = rest.get(at + 1)
        && all.len() > lead.len()
        && cell.text.len() < 4
        && cell.text.bytes().all(|b| b.is_ascii_digit())
    {
        named.push(cell.clone());
        if let Some(Item::Words(more)) = rest.get(at + 2)
            && let [only] = &more[..]
        {
            named.push(only.clone());
        }
    }
    joined(&named)
}

fn cells_of(item: &Item) -> Vec<Cell> {
    match item {
        Item::Number(cell, None) => vec![cell.clone()],
        Item::Number(cell, Some(words)) => {
            vec![cell.clone(), Cell { text: words.clone(), place: cell.place }]
        }
        Item::Missing => vec![joined(&[])],
        Item::Words(words) => words.clone(),
    }
}

impl CountedOff {
    fn into_table(self, columns: &Columns, sure: bool) -> RunTogether {
        let parts = &columns.parts[columns.first..];
        let runs = unknown_runs(parts);
        let known = (0..parts.len()).filter(|i| !runs.iter().any(|run| run.contains(i)));
        let mut heading = Vec::new();
        let mut roles = Vec::new();
        if self.named {
            heading.push(joined(&[]));
            roles.push(Role::Sample(1));
        }
        for (part, rated) in known.map(|i| &parts[i]).zip(&self.rated) {
            heading.push(part.cell.clone());
            roles.push(match &part.says {
                Says::Result(quantity) => Role::Results(quantity.clone()),
                Says::Refused(why) => Role::Refused(why.clone()),
                _ => Role::Other,
            });
            if *rated {
                heading.push(joined(&[]));
                roles.push(Role::Ratings);
            }
        }
        let (unnamed, unmet) = (Vec::new(), Vec::new());
        RunTogether { heading, roles, rows: self.rows, sure, unnamed, unmet, taken: 0 }
    }
}
