//! A report that was poured into one line, as a page that shows documents does with a table:
//! `Sabbia % 38 Limo % 33 Argilla % 29 pH 7,8`. Each result becomes a row of its own.

use super::grid::{joined, words_of};
use super::label::Label;
use super::lines::read_row;
use super::number::{Decimal, Said, said};
use super::sections::begins_rates;
use super::{Cell, prose};

/// A shorter line is read as it is, and fewer results are no report. Our choice, bytes.
const SHORTEST: usize = 120;
const LEAST: usize = 5;

/// No name with its unit has more words.
const MOST_WORDS: usize = 7;

/// A longer line has no end. Our choice, bytes.
const LONGEST: usize = 20_000;

/// The rows that a poured line is; `None` where it is none, or is read as well as it stands.
pub(super) fn poured(row: &[Cell], decimal: Decimal) -> Option<Vec<Vec<Cell>>> {
    let [only] = row else { return None };
    // Nearly every line ends here.
    let figures = || only.text.bytes().filter(u8::is_ascii_digit).count();
    if !(SHORTEST..LONGEST).contains(&only.text.len())
        || figures() < LEAST
        || begins_rates(&only.text)
    {
        return None;
    }
    let words = words_of(only);
    if prose::is_prose(&only.text) {
        return None;
    }
    let mut starts = Vec::new();
    let mut at = 0;
    while at < words.len() {
        match named(&words[at..], decimal) {
            Some(length) => {
                starts.push(at);
                at += length;
            }
            None => at += 1,
        }
    }
    if starts.len() < LEAST || read_row(row, decimal).drafts.len() * 2 > starts.len() {
        return None;
    }
    let ends = starts[1..].iter().copied().chain([words.len()]);
    let pieces = starts.iter().zip(ends).map(|(&from, to)| vec![joined(&words[from..to])]);
    let title = (starts[0] > 0).then(|| vec![joined(&words[..starts[0]])]);
    Some(title.into_iter().chain(pieces).collect())
}

/// How many words a name and its number take with which the words begin.
fn named(words: &[Cell], decimal: Decimal) -> Option<usize> {
    let number = |cell: &Cell| matches!(said(&cell.text, decimal), Said::Amount(_, end) if end == cell.text.len());
    let to = words.iter().take(MOST_WORDS + 1).position(number).filter(|to| *to > 0)?;
    let label = Label::of(&joined(&words[..to]).text);
    let own = label.unknown.is_empty() && !label.ends_half && label.quantity().is_ok();
    // "P Olsen modif. 14": the name itself must open it.
    let opens = || !Label::of(&words[0].text).properties.is_empty();
    let first = || to < 3 || Label::of(&joined(&words[1..to]).text).quantity().is_err() || opens();
    (own && first()).then_some(to + 1)
}
