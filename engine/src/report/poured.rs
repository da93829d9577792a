//! Results one after the other in one line, as a page that shows documents pours a table into it:
//! `Sabbia % 38 Limo % 33 Argilla % 29 pH 7,8`. Each result becomes a row of its own.

use super::fold::fold;
use super::grid::{joined, words_of};
use super::label::Label;
use super::lines::read_row;
use super::names::Word;
use super::number::{Decimal, Said, said};
use super::sections::begins_rates;
use super::{Cell, prose};

/// A shorter line is read as it is, and fewer results are no list. Our choice, bytes.
const SHORTEST: usize = 24;
const LEAST: usize = 3;

/// So many results in a line are a whole report. Our choice.
const MANY: usize = 8;

/// A line of so few cells may be one text, if it is so long. Our choice, bytes.
const MOST_CELLS: usize = 4;
const LONG: usize = 200;

/// No name with its unit has more words.
const MOST_WORDS: usize = 7;

/// A longer line has no end. Our choice, bytes.
const LONGEST: usize = 20_000;

/// The rows that a line of several results is; `None` where it is none, or is read as well as it
/// stands.
pub(super) fn poured(row: &[Cell], decimal: Decimal) -> Option<Vec<Vec<Cell>>> {
    // A mark here and there in a whole report parts no cells.
    let whole = match row {
        [_] => None,
        _ if row.len() <= MOST_CELLS => Some(joined(row)).filter(|all| all.text.len() > LONG),
        _ => return None,
    };
    let only = match (&whole, row) {
        (Some(whole), _) => whole,
        (None, [only]) => only,
        _ => return None,
    };
    // Nearly every line ends here.
    let figures = || only.text.bytes().filter(u8::is_ascii_digit).count();
    if !(SHORTEST..LONGEST).contains(&only.text.len())
        || figures() < LEAST
        || begins_rates(&only.text)
        || whole.is_none() && prose::is_prose(&only.text)
        || prose::is_of_a_study(&only.text)
        || only.text.contains('±')
    {
        return None;
    }
    let words = words_of(only);
    if let Some(rows) = numbers_first(&words, decimal) {
        return Some(rows);
    }
    let mut starts = Vec::new();
    let mut at = 0;
    let mut advised = words.len();
    while at < words.len() {
        // What a whole report advises at its end is no result.
        if starts.len() >= MANY && advises(&words[at]) {
            advised = at;
            break;
        }
        match named(&words[at..], decimal) {
            Some(length) => {
                starts.push(at);
                at += length;
                // "P 31 ppm, K 221 ppm": the unit is that of the number before it.
                let unit = |word: &&Cell| {
                    Label::of(word.text.trim_end_matches([',', ';'])).only_unit().is_some()
                };
                at += words[at..].iter().take_while(unit).count();
            }
            None => at += 1,
        }
    }
    if starts.len() < LEAST
        || whole.is_some() && starts.len() < MANY
        || is_no_list(&words, &starts)
        || advised == words.len() && read_row(row, decimal).drafts.len() >= starts.len()
    {
        return None;
    }
    let ends = starts[1..].iter().copied().chain([advised]);
    let pieces = starts.iter().zip(ends).map(|(&from, to)| joined(&words[from..to]));
    let title = (starts[0] > 0).then(|| joined(&words[..starts[0]]));
    let advice = (advised < words.len()).then(|| joined(&words[advised..]));
    let all = title.into_iter().chain(pieces).chain(advice);
    // A whole report becomes a list; a few results stay a line.
    let is_report = starts.len() >= MANY;
    Some(if is_report { all.map(|cell| vec![cell]).collect() } else { vec![all.collect()] })
}

/// Whether a word begins what is advised or aimed at.
fn advises(word: &Cell) -> bool {
    let label = Label::of(word.text.trim_matches(['(', ')', ':', ',', '.']));
    let text = fold(&word.text);
    label.has(Word::Advice)
        || ["conseil", "souhaitable", "recommend", "empfehl", "suggested", "advies", "recomend"]
            .iter()
            .any(|w| text.starts_with(w))
}

/// Whether a line advises, tells limits or an earlier test, or is a row of a table, whose ratings
/// stand for names: `18 M 141 H 1842 M 14 H 203`.
fn is_no_list(words: &[Cell], starts: &[usize]) -> bool {
    // What a whole report in one line says further on is not said of its results.
    if starts.len() >= MANY {
        return false;
    }
    let other = |word: &Cell| {
        let label = Label::of(word.text.trim_matches(['(', ')', ':', ',', '.']));
        label.words.iter().any(|w| {
            matches!(w, Word::Advice | Word::RangeColumn | Word::Other(_) | Word::RatingColumn)
        })
    };
    let letters = || starts.iter().map(|&at| words[at].text.as_str()).filter(|w| w.len() == 1);
    let twice = letters().any(|one| letters().filter(|other| *other == one).count() > 1);
    let group = Label::of(joined(&words[..starts[0]]).text.trim_end_matches([':', ' '])).is_group();
    twice || starts[0] > 0 && group || words.iter().any(other)
}

/// Whether a word is a number, whatever ends it: `212,`, `14kg/ha`.
fn is_number(word: &Cell, decimal: Decimal) -> bool {
    let Said::Amount(_, end) = said(&word.text, decimal) else { return false };
    let tail = word.text[end..].trim_end_matches([',', ';', '.']);
    tail.is_empty() || Label::of(tail).only_unit().is_some()
}

/// How many words a name and its number take with which the words begin.
fn named(words: &[Cell], decimal: Decimal) -> Option<usize> {
    let to = words.iter().take(MOST_WORDS + 1).position(|word| is_number(word, decimal));
    let to = to.filter(|to| *to > 0)?;
    let label = Label::of(joined(&words[..to]).text.trim_end_matches([':', '=', ' ']));
    let own = label.unknown.is_empty() && !label.ends_half && label.quantity().is_ok();
    // "P Olsen modif. 14": the name itself must open it.
    let opens = || !Label::of(&words[0].text).properties.is_empty();
    let first = || to < 3 || Label::of(&joined(&words[1..to]).text).quantity().is_err() || opens();
    (own && first()).then_some(to + 1)
}

/// Words between a number and what it is of, one or more a language.
const OF: &[&str] = &["of", "de", "di", "von", "av"];

/// `18 % d'argile, 41 % de limon`: the numbers first, each as a row of its name and its number.
fn numbers_first(words: &[Cell], decimal: Decimal) -> Option<Vec<Vec<Cell>>> {
    let mut rows = Vec::new();
    let mut at = 0;
    while at + 1 < words.len() {
        let Some((row, end)) = number_of(&words[at..], decimal) else {
            at += 1;
            continue;
        };
        rows.push(row);
        at += end;
    }
    (rows.len() > 1).then_some(rows)
}

/// The name and the number with which the words begin, and how many they take.
fn number_of(words: &[Cell], decimal: Decimal) -> Option<(Vec<Cell>, usize)> {
    if !is_number(&words[0], decimal) || words[0].text.ends_with(',') {
        return None;
    }
    let unit = Label::of(&words[1].text).only_unit().is_some();
    let after = 1 + usize::from(unit);
    let of = words.get(after)?;
    let glued = of.text.strip_prefix("d'").or(of.text.strip_prefix("d’"));
    let (name, end) = match glued {
        Some(name) => (name, after + 1),
        None if OF.contains(&of.text.as_str()) => (words.get(after + 1)?.text.as_str(), after + 2),
        None => return None,
    };
    let name = name.trim_end_matches([',', ';', '.']);
    let label = Label::of(name);
    if label.quantity().is_err() || !label.unknown.is_empty() {
        return None;
    }
    let name = Cell { text: name.into(), place: words[end - 1].place };
    Some((vec![name, joined(&words[..after])], end))
}
