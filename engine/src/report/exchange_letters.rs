//! The letters of a Brazilian table of the exchange: `SB`, `t`, `T`, `V`, `m`. Alone each may be
//! anything, so they are taken only where several of them stand together.

use std::borrow::Cow;

use super::Cell;
use super::fold::{fold_char, is_letter};

/// What a letter is written out as, where the reader knows it.
/// Source: common practice of Brazilian laboratories: V % = 100 SB/T, m % = 100 Al/t.
const WRITTEN: [(&str, &str); 4] = [("V", "V%"), ("m", "m%"), ("T", "CTC (T)"), ("t", "CTC (t)")];

/// The names beside which a single letter means a part of the exchange.
const SURE: [&str; 5] = ["SB", "H+Al", "CTC", "CTC (T)", "CTC (t)"];

/// The rows with such letters written out.
pub(super) fn written_out(rows: &[Vec<Cell>]) -> Cow<'_, [Vec<Cell>]> {
    let named = |name: &str| rows.iter().flatten().any(|cell| names(&cell.text, name));
    let letters = WRITTEN.iter().filter(|(letter, _)| named(letter)).count();
    let sure = SURE.iter().filter(|name| named(name)).count();
    if letters == 0 || letters + sure < 2 || sure == 0 && !(named("V") && named("m")) {
        return Cow::Borrowed(rows);
    }
    let mut rows = rows.to_vec();
    for cell in rows.iter_mut().flatten() {
        if let Some(text) = cell_written_out(&cell.text) {
            cell.text = text;
        }
    }
    Cow::Owned(rows)
}

/// A letter of a head that also names other parts of the exchange, written out.
pub(super) fn letter_written_out(letter: &str, beside: &[Cell]) -> Option<&'static str> {
    let (_, written) = WRITTEN.iter().find(|(known, _)| *known == letter)?;
    let sure = beside.iter().any(|cell| SURE.contains(&cell.text.as_str()));
    sure.then_some(written)
}

/// Whether a text has this name with nothing but its result or its unit behind it.
fn names(text: &str, name: &str) -> bool {
    // Nearly every cell ends here.
    if text.as_bytes().first() != name.as_bytes().first() {
        return false;
    }
    let bare: String = text.chars().filter(|c| *c != ' ').collect();
    let wanted: String = name.chars().filter(|c| *c != ' ').collect();
    bare.strip_prefix(&wanted).is_some_and(|rest| {
        let mut rest = rest.chars();
        match rest.next() {
            None | Some('%' | ':' | '=') => true,
            Some('(') => rest.next().is_some_and(|c| c == '%' || c.is_ascii_lowercase()),
            Some(c) => c.is_ascii_digit() && text.starts_with(&format!("{name} ")),
        }
    })
}

fn cell_written_out(text: &str) -> Option<String> {
    let words: Vec<&str> = text.split(' ').collect();
    let mut found = false;
    let out: Vec<String> = words
        .iter()
        .enumerate()
        .map(|(i, word)| {
            let bare = word.trim_end_matches([':', '=']);
            let bare = bare.strip_suffix("(%)").or(bare.strip_suffix('%')).unwrap_or(bare);
            let Some((letter, written)) = WRITTEN.iter().find(|(letter, _)| *letter == bare) else {
                return (*word).to_string();
            };
            if !stands_as_name(&words, i, letter) {
                return (*word).to_string();
            }
            found = true;
            let colon = if word.ends_with([':', '=']) { ":" } else { "" };
            format!("{written}{colon}")
        })
        .collect();
    found.then(|| out.join(" "))
}

/// Whether a letter begins its cell or follows a result, and its own result or unit follows.
fn stands_as_name(words: &[&str], at: usize, letter: &str) -> bool {
    let number = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
    let unit = |word: &str| {
        let word: String = word.chars().map(fold_char).collect();
        word.starts_with('(') || word.contains('%') || word.contains("mol") || word.contains("meq")
    };
    let before = at == 0 || words[..at].iter().any(|w| number(w));
    let behind = words.get(at + 1).is_none_or(|next| number(next) || unit(next));
    // "T 25 °C" is no exchange capacity.
    let by_charge = letter.eq_ignore_ascii_case("t")
        && words.get(at + 1).is_some_and(|next| number(next))
        && !words[at + 1..].iter().take(2).any(|w| w.contains(is_letter) && unit(w));
    before && behind && !by_charge
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_letter_that_names_is_written_out() {
        for (text, out) in [
            ("V", "V%"),
            ("V (%)", "V% (%)"),
            ("V 37 %", "V% 37 %"),
            ("V: 37 %", "V%: 37 %"),
            ("T", "CTC (T)"),
            ("t (cmolc/dm³)", "CTC (t) (cmolc/dm³)"),
            (
                "SB 2,1 T 6,6 cmolc/dm³ V 32 % m 18 %",
                "SB 2,1 CTC (T) 6,6 cmolc/dm³ V% 32 % m% 18 %",
            ),
        ] {
            assert_eq!(cell_written_out(text).as_deref(), Some(out), "{text}");
        }
        for text in ["T 25 °C", "Talhão T norte", "Dose: 2 t/ha", "v", "Lote V"] {
            assert_eq!(cell_written_out(text), None, "{text}");
        }
    }
}
