//! Letters that a scan took for digits: `2O6`, `l4`, `7.l`, and `qo` for the per cent sign. They
//! are read as the digits only where several show that a report was scanned.

use std::borrow::Cow;

use super::Cell;
use super::fold::is_word;

/// So many numbers with a letter among their digits show a scan. Our choice.
const LEAST: usize = 2;

/// The rows with digits where a scan has letters, and a note that says so.
pub(super) fn as_scanned(rows: &[Vec<Cell>]) -> (Cow<'_, [Vec<Cell>]>, Option<String>) {
    let cells = || rows.iter().flatten().filter(|c| may_be(&c.text));
    let sure =
        || cells().flat_map(|c| words(&c.text)).filter(|w| is_scanned(w) && !may_be_litres(w));
    if sure().take(LEAST).count() < LEAST {
        return (Cow::Borrowed(rows), None);
    }
    let example = sure().next().unwrap_or_default();
    let note =
        format!("The text looks scanned: {example} was read as {}, and the like.", digits(example));
    let mut rows = rows.to_vec();
    for cell in rows.iter_mut().flatten().filter(|c| may_be(&c.text)) {
        cell.text = plainly(&cell.text);
    }
    (Cow::Owned(rows), Some(note))
}

/// Nearly every text ends here.
fn may_be(text: &str) -> bool {
    text.bytes().any(|b| b.is_ascii_digit()) && text.contains(['l', 'I', 'O', 'q'])
}

/// Whether a character can be part of a number and its neighbours.
fn is_of_word(c: char) -> bool {
    is_word(c) || c == '.' || c == ','
}

fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c| !is_of_word(c)).map(|word| word.trim_matches(['.', ',']))
}

/// Whether a word is a number with letters among its digits.
fn is_scanned(word: &str) -> bool {
    let letters = word.bytes().filter(|b| matches!(b, b'l' | b'I' | b'O')).count();
    let digits = word.bytes().filter(u8::is_ascii_digit).count();
    let marks = word.bytes().filter(|b| matches!(b, b'.' | b',')).count();
    // "O1" may be the code of a horizon, and "H 2O", "P 2O5" are formulae.
    let code = word.starts_with(['O', 'I']) && marks == 0 || matches!(word, "2O" | "2O3" | "2O5");
    letters > 0 && digits > 0 && marks < 2 && letters + digits + marks == word.len() && !code
}

/// `5l` may be litres, `l` a litre.
fn may_be_litres(word: &str) -> bool {
    word.ends_with('l') && word.bytes().filter(|b| *b == b'l').count() == 1 && !word.contains('O')
}

fn digits(word: &str) -> String {
    word.replace(['l', 'I'], "1").replace('O', "0")
}

/// A text with its numbers in digits. No character is put in or left out, so that all keep their
/// places, but for `qo`.
fn plainly(text: &str) -> String {
    let mut found = String::with_capacity(text.len());
    for piece in text.split_inclusive(|c| !is_of_word(c)) {
        let word = piece.trim_end_matches(|c| !is_of_word(c)).trim_matches(['.', ',']);
        let hundred = word.strip_suffix('g').unwrap_or(word);
        let (is_hundred, behind_number) = (
            hundred.len() == 3 && matches!(digits(hundred).as_str(), "100"),
            found.trim_end().ends_with(|c: char| c.is_ascii_digit()),
        );
        match word {
            "qo" if behind_number => found.push_str(&piece.replace("qo", "%")),
            _ if is_scanned(word) || is_hundred => {
                found.push_str(&piece.replace(word, &digits(word)));
            }
            _ => found.push_str(piece),
        }
    }
    found
}
