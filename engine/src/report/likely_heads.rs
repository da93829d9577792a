//! The ways to make one row of names of the lines of a head, of which
//! [`super::likely_columns`] takes the likeliest.

use super::Cell;
use super::fold::is_letter;
use super::grid::{filled, joined};
use super::label::{Label, saturation_of};
use super::run_together::{
    Part, Says, columns, describe, is_run_together, parts, refuse_twins, says, take_method, tokens,
};
use super::units::Printed;
use crate::quantity::Unit;
use crate::soil::{Method, Property};

/// No head has more names.
const MOST_PARTS: usize = 60;

/// What it costs to part the names of a line over two places of another. Our choice.
const TWICE: f64 = -3.0;

/// No more ways are weighed.
const MOST_WAYS: usize = 400;

pub(super) fn is_result(part: &Part) -> bool {
    matches!(part.says, Says::Result(_))
}

/// The names and units of a line of a head: those of each cell where wide gaps part them.
pub(super) fn line_of(row: &[Cell]) -> Vec<Part> {
    let row = &without_rates(row)[..];
    let all = if is_run_together(row) {
        parts(row)
    } else {
        filled(row).flat_map(|cell| parts(std::slice::from_ref(cell))).collect()
    };
    without_foreign_units(all.into_iter().flat_map(apart).collect())
}

/// A name whose unit is not known here, as `Ca meq/L` of an extract, is no result.
fn without_foreign_units(mut parts: Vec<Part>) -> Vec<Part> {
    for i in 1..parts.len() {
        let text = parts[i].cell.text.trim_matches(['(', ')']);
        let unit = matches!(parts[i].says, Says::Nothing)
            && text.split_once('/').is_some_and(|(a, b)| {
                let letters = |t: &str| !t.is_empty() && t.chars().all(is_letter);
                letters(a) && letters(b) && a.chars().all(char::is_lowercase)
            });
        if unit && is_result(&parts[i - 1]) {
            parts[i - 1].says = Says::Refused("its unit is not known here".into());
        }
    }
    parts
}

/// The same line read otherwise: without the small words of another language, and with a column
/// behind each unit in brackets.
pub(super) fn other_lines_of(row: &[Cell]) -> [Vec<Part>; 2] {
    [line_of(&without_small_words(row)), by_brackets(row).unwrap_or_else(|| line_of(row))]
}

/// A row without the words by which a laboratory heads its ratings over and over: `ppm RATE ppm
/// RATE`.
fn without_rates(row: &[Cell]) -> Vec<Cell> {
    let rate = |word: &str| word.eq_ignore_ascii_case("rate");
    let all = row.iter().flat_map(|c| c.text.split(' ')).filter(|w| rate(w)).count();
    if all < 2 {
        return row.to_vec();
    }
    let without = |cell: &Cell| {
        let words: Vec<&str> = cell.text.split(' ').filter(|w| !rate(w)).collect();
        Cell { text: words.join(" "), place: cell.place }
    };
    row.iter().map(without).collect()
}

/// A row without the words of one or two small letters: `pH u KCl`, `pH w KCl`.
fn without_small_words(row: &[Cell]) -> Vec<Cell> {
    let small = |word: &&str| word.chars().count() < 3 && word.chars().all(char::is_lowercase);
    let without = |cell: &Cell| {
        let words: Vec<&str> = cell.text.split(' ').filter(|w| !small(w)).collect();
        Cell { text: words.join(" "), place: cell.place }
    };
    row.iter().map(without).collect()
}

/// The columns of a line whose units in brackets end them: `P2O5 dễ tiêu (mg/100g đất)` is one,
/// whatever the words between mean. The names before the last of a column have none.
fn by_brackets(row: &[Cell]) -> Option<Vec<Part>> {
    let words = tokens(&without_small_words(row));
    let mut found: Vec<Part> = Vec::new();
    let (mut from, mut columns) = (0, 0);
    let mut at = 0;
    while at < words.len() {
        let opens = words[at].text.starts_with('(');
        let close = (at..words.len().min(at + 4)).find(|&i| words[i].text.ends_with(')'));
        let unit = close.filter(|_| opens).and_then(|close| {
            let inner: Vec<Cell> = words[at..=close].to_vec();
            let text = joined(&inner).text;
            let inside = text.trim_matches(['(', ')']);
            // "(mg/100g soil)" in another language.
            let starts = inside.split(' ').next().unwrap_or(inside);
            let unit = [inside, starts].iter().find_map(|t| Label::of(t).only_unit());
            unit.map(|unit| (close, unit))
        });
        let Some((close, unit)) = unit else {
            at += 1;
            continue;
        };
        let mut names: Vec<Part> = parts(&words[from..at]).into_iter().flat_map(apart).collect();
        match names.iter().rposition(is_result) {
            Some(last) => {
                names.truncate(last + 1);
                if let Says::Result(quantity) = &mut names[last].says
                    && quantity.unit.is_none()
                {
                    quantity.unit = Some(unit);
                }
            }
            // A column that nobody knows.
            None => {
                names.retain(|p| matches!(p.says, Says::Of(_)));
                names.push(Part { says: Says::Nothing, cell: joined(&words[from..=close]) });
            }
        }
        found.extend(names);
        (from, columns) = (close + 1, columns + 1);
        at = close + 1;
    }
    found.extend(parts(&words[from..]).into_iter().flat_map(apart));
    (columns > 2).then_some(found)
}

/// What one part says, as two where it is a name with the group of those below it, `K
/// Exchangeable cations (cmol/kg)`, or the method of one nutrient with the name of another,
/// `Bray-P1 K ppm`.
fn apart(part: Part) -> Vec<Part> {
    let words = tokens(std::slice::from_ref(&part.cell));
    let Says::Result(whole) = &part.says else { return vec![part] };
    let half = |words: &[Cell]| {
        let cell = joined(words);
        Some(Part { says: says(words, &cell.text)?, cell })
    };
    let two = (1..words.len()).find_map(|to| {
        let first = half(&words[..to]).filter(is_result)?;
        let cell = joined(&words[to..]);
        let label = Label::of(&cell.text);
        let bare = label.only_unit().is_some() || label.only_method().is_some();
        if label.is_group() && !bare {
            return Some([first, Part { says: Says::Group(label.unit.map(|u| u.unit)), cell }]);
        }
        let second = half(&words[to..])?;
        let other = |a: &Part| matches!(&a.says, Says::Result(q) if q.property != whole.property);
        (other(&first) && is_result(&second)).then_some([first, second])
    });
    match two {
        Some(two) => two.into_iter().flat_map(apart).collect(),
        None => vec![part],
    }
}

/// One row of names, and the logarithm of how likely such a reading of a head is before any number
/// is looked at.
#[derive(Clone)]
pub(super) struct Way {
    pub parts: Vec<Part>,
    pub before: f64,
}

/// The ways to make one row of names of the lines of a head. Those of one kind share what one of
/// another kind has.
pub(super) fn heads_of(heads: &[Vec<Part>], aligned: bool) -> Vec<Way> {
    let plain: Vec<Vec<Part>> = columns(heads).into_iter().map(|c| c.parts).collect();
    let (once, twice) = put_together(heads);
    let salt = only_salt(heads);
    let mut ways = Vec::new();
    let all = plain.iter().chain(&once);
    let again: Vec<Vec<Part>> = all.filter_map(|way| with_shares(way)).collect();
    for (mut kind, cost) in
        [(plain, 0.0), (again, 0.0), (by_place(heads, aligned), 0.0), (once, 0.0), (twice, TWICE)]
    {
        for way in &mut kind {
            tell_reaction(way, salt);
            shares(way);
            refuse_twins(way);
        }
        let results = |way: &Vec<Part>| way.iter().filter(|p| is_result(p)).count();
        kind.retain(|way| way.len() <= MOST_PARTS && results(way) > 2);
        let before = cost - (kind.len().max(1) as f64).ln();
        ways.extend(kind.into_iter().map(|parts| Way { parts, before }));
    }
    ways
}

/// Names with those cations that stand once more as shares of the exchange: `K Ca Mg Na … K Ca Mg
/// Na`.
fn with_shares(way: &[Part]) -> Option<Vec<Part>> {
    let cation = |part: &Part| match &part.says {
        Says::Result(q) if saturation_of(q.property).is_some() => Some(q.property),
        _ => None,
    };
    let mut seen = Vec::new();
    let mut found = way.to_vec();
    let mut again = 0;
    for part in &mut found {
        let Some(property) = cation(part) else { continue };
        if seen.contains(&property)
            && let Some(share) = saturation_of(property)
            && let Says::Result(quantity) = &mut part.says
        {
            quantity.property = share;
            quantity.unit = Some(Printed { unit: Unit::Percent, scale: 1.0 });
            again += 1;
        }
        seen.push(property);
    }
    (again > 1).then_some(found)
}

/// The names of one line among those of another, at one place, and at two.
fn put_together(heads: &[Vec<Part>]) -> (Vec<Vec<Part>>, Vec<Vec<Part>>) {
    let results = |line: &[Part]| line.iter().filter(|p| is_result(p)).count();
    let (mut once, mut twice) = (Vec::new(), Vec::new());
    for (nth, upper) in heads.iter().enumerate() {
        for (below, lower) in heads.iter().enumerate().skip(nth + 1) {
            if results(upper) < 1 || results(lower) < 2 {
                continue;
            }
            let inner = names_alone(lower);
            let described = |mut way: Vec<Part>| {
                for line in heads.iter().skip(below + 1) {
                    describe(&mut way, line);
                }
                way
            };
            once.extend((0..=upper.len()).map(|at| described(put_in(upper, &inner, at))));
            // Two groups have two places, each behind a word that names no result.
            let places: Vec<usize> =
                (1..=upper.len()).filter(|&at| !is_result(&upper[at - 1])).collect();
            for (i, &first) in places.iter().enumerate() {
                for &second in &places[i + 1..] {
                    for to in 1..inner.len() {
                        let way = put_in(upper, &inner[to..], second);
                        twice.push(described(put_in(&way, &inner[..to], first)));
                    }
                }
            }
            twice.truncate(MOST_WAYS);
        }
    }
    (once, twice)
}

/// All names by where they stand in their lines, where blanks hold them.
fn by_place(heads: &[Vec<Part>], aligned: bool) -> Vec<Vec<Part>> {
    let named = |p: &&Part| matches!(p.says, Says::Result(_) | Says::Refused(_));
    let mut all: Vec<Part> = heads.iter().flatten().filter(named).cloned().collect();
    all.sort_by_key(|p| p.cell.place.start + p.cell.place.end);
    if heads.len() > 1 && aligned { vec![all] } else { Vec::new() }
}

/// A line with the names of another at a place, in the unit of the group before them.
fn put_in(line: &[Part], inner: &[Part], at: usize) -> Vec<Part> {
    let unit = match at.checked_sub(1).map(|i| &line[i].says) {
        Some(Says::Group(unit)) => *unit,
        _ => None,
    };
    let mut way = line.to_vec();
    way.splice(at..at, inner.iter().cloned().map(|part| in_unit(part, unit)));
    way
}

/// The names of a line whose units stand among them, without the units.
fn names_alone(line: &[Part]) -> Vec<Part> {
    let unit = |cell: &Cell| {
        let bare = cell.text.trim_matches(['(', ')']);
        matches!(bare, "%" | "ppm") || Label::of(bare).only_unit().is_some()
    };
    let words: Vec<Cell> = line
        .iter()
        .flat_map(|part| tokens(std::slice::from_ref(&part.cell)))
        .filter(|word| !unit(word))
        .collect();
    let names = |p: &Part| matches!(p.says, Says::Result(_) | Says::Refused(_));
    parts(&words).into_iter().filter(names).collect()
}

/// A name that its group gives its unit.
fn in_unit(mut part: Part, unit: Option<Unit>) -> Part {
    if let (Says::Result(quantity), Some(unit)) = (&mut part.says, unit) {
        quantity.unit = quantity.unit.or(Some(Printed { unit, scale: 1.0 }));
    }
    part
}

/// Cations in per cent are shares of the exchange.
fn shares(parts: &mut [Part]) {
    for part in parts {
        let Says::Result(quantity) = &mut part.says else { continue };
        let percent = quantity.unit.is_some_and(|u| u.unit == Unit::Percent);
        let of_exchange = Label::of(&format!("base saturation {}", part.cell.text)).quantity();
        if percent
            && let Ok(share) = of_exchange
            && share.property.is_share()
        {
            **quantity = share;
        }
    }
}

/// The salt that the lines of a head name by itself, where it is one and no water beside it.
fn only_salt(heads: &[Vec<Part>]) -> Option<Method> {
    let mut found = heads.iter().flatten().filter_map(|p| match p.says {
        Says::Method(method @ (Method::Kcl | Method::CaCl2)) => Some(method),
        _ => None,
    });
    let first = found.next()?;
    found.next().is_none().then_some(first)
}

/// The only pH of a head that names a salt by itself is that in the salt.
fn tell_reaction(parts: &mut [Part], salt: Option<Method>) {
    let Some(salt) = salt else { return };
    let is_ph = |p: &&mut Part| matches!(&p.says, Says::Result(q) if matches!(q.property, Property::Ph | Property::SaltPh));
    let mut all: Vec<&mut Part> = parts.iter_mut().filter(is_ph).collect();
    if let [only] = &mut all[..]
        && let Says::Result(quantity) = &mut only.says
        && quantity.method.is_none()
    {
        take_method(quantity, salt);
    }
}
