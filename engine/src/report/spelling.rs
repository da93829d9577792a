//! Spellings that would part or hide what they stand for, written plainly before anything is read.

use std::borrow::Cow;

use super::Cell;
use super::exchange_letters::written_out;
use super::fold::{is_letter, squash};
use super::label::Label;
use super::number::is_rating;

/// The rows in plain spelling.
pub(super) fn plainly(rows: &[Vec<Cell>]) -> Cow<'_, [Vec<Cell>]> {
    let quoted = rows.iter().filter(|row| row.first().is_some_and(is_quoted)).count();
    let sent_on = if quoted < FORWARDED { None } else { Some(unquoted(rows)) };
    let rows = match &sent_on {
        Some(rows) => Cow::Owned(written_out(rows).into_owned()),
        None => written_out(rows),
    };
    let dotted = |cell: &Cell| cell.text.contains("p.p.m");
    let marked = |cell: &Cell| bare(&cell.text).is_some();
    let glued =
        |row: &&Vec<Cell>| row.iter().any(|c| c.text.split(' ').any(|w| rated(w).is_some()));
    let first_glued = rows.iter().position(|row| glued(&row));
    let joined = |c: &Cell| {
        before_number(&c.text).is_some()
            || shares_dashed(&c.text) > 2
            || is_slashed(&c.text)
            || without_temperature(&c.text).is_some()
    };
    let other = |row: &Vec<Cell>| {
        row.iter().any(|c| dotted(c) || marked(c) || joined(c))
            || is_compared(row)
            || has_rates(row)
            || prefix(row).is_some()
            || is_nitrogen_in_percent(row)
    };
    if first_glued.is_none() && !rows.iter().any(other) {
        return rows;
    }
    let mut rows = rows.into_owned();
    if let Some(at) = first_glued {
        // The head of such a table is glued as well.
        for cell in rows[at.saturating_sub(GLUED_HEADS)..at].iter_mut().flatten() {
            cell.text = words_apart(&cell.text);
        }
    }
    for row in &mut rows {
        let compared = is_compared(row);
        if is_nitrogen_in_percent(row) {
            row[0].text = "Total N".into();
        }
        if has_rates(row) {
            row.iter_mut().for_each(|cell| cell.text = without_rate(&cell.text));
        }
        if let Some(prefix) = prefix(row) {
            for cell in row.iter_mut().filter(|c| c.text.starts_with(prefix)) {
                cell.text.drain(..prefix.len());
            }
        }
        for cell in row {
            cell.text = each_word(&cell.text, |word| {
                rated(word).map(|(number, rating)| format!("{number} {rating}"))
            });
            if shares_dashed(&cell.text) > 2 {
                cell.text = each_word(&cell.text, |word| {
                    dashed(word).map(|(name, share)| format!("{name} {share}"))
                });
            }
            if let Some(at) = before_number(&cell.text) {
                cell.text.insert(at, ' ');
            }
            if let Some(bare) = bare(&cell.text) {
                cell.text = bare;
            }
            if is_slashed(&cell.text) {
                // One unit behind the last is that of all: "Ca 66.2 / Mg 19.4 / K 7.9 %".
                let last = cell.text.rsplit(" / ").next().unwrap_or("");
                let shares =
                    last.split([',', '.', ';']).any(|part| part.trim_end().ends_with(" %"));
                let mark = if shares { " %,  " } else { ",  " };
                cell.text = cell.text.replace(" / ", mark);
            }
            if let Some(plain) = without_temperature(&cell.text) {
                cell.text = plain;
            }
            if dotted(cell) {
                cell.text = cell.text.replace("p.p.m.", "ppm").replace("p.p.m", "ppm");
            }
            if compared {
                cell.text = each_word(&cell.text, |word| before_letters(word).map(String::from));
            }
        }
    }
    Cow::Owned(rows)
}

/// Whether a row tells the nitrogen in per cent, which can only be all of it: `Nitrogen (N)  0.44  %`.
fn is_nitrogen_in_percent(row: &[Cell]) -> bool {
    const NAMES: [&str; 7] =
        ["n", "nitrogen", "nitrogenn", "azote", "azoto", "stikstof", "stickstoff"];
    let Some((name, others)) = row.split_first() else { return false };
    // Nearly every row ends here.
    if !name.text.starts_with(['N', 'n', 'A', 'a', 'S', 's'])
        || !others.iter().any(|c| c.text.ends_with('%'))
    {
        return false;
    }
    let result = others.iter().find(|c| c.text.starts_with(|c: char| c.is_ascii_digit()));
    // No soil has more than three.
    let small = result.is_some_and(|c| {
        c.text.starts_with(['0', '1', '2'])
            && c.text.as_bytes().get(1).is_some_and(|b| matches!(b, b'.' | b','))
    });
    small && NAMES.contains(&squash(name.text.trim_end_matches([' ', '.', ':'])).as_str())
}

/// Whether a row of a head says beside each unit that its rating follows: `ppm RATE ppm RATE`.
fn has_rates(row: &[Cell]) -> bool {
    let is = |w: &&str| w.eq_ignore_ascii_case("rate");
    let words = || row.iter().flat_map(|c| c.text.split(' '));
    let count = words().filter(is).count();
    let number = |w: &str| w.bytes().all(|b| b.is_ascii_digit() || b == b'.') && !w.is_empty();
    // Columns that are told by their place keep what stands in them.
    let in_place = row.len() > 1 && row.iter().filter(|c| is(&&c.text[..])).count() < count;
    count > 2 && !in_place && !words().any(number)
}

fn without_rate(text: &str) -> String {
    let words: Vec<&str> = text.split(' ').filter(|w| !w.eq_ignore_ascii_case("rate")).collect();
    words.join(" ")
}

/// What a data file puts before the names of a soil's columns: the `b_` of `b_P`, `b_K`, `b_Mg`.
/// Where those of plants have their own, it is that of the Boden or the soil.
fn prefix(row: &[Cell]) -> Option<&'static str> {
    const OF_SOIL: [&str; 4] = ["b_", "B_", "s_", "S_"];
    let has = |c: &&Cell, prefix: &str| {
        c.text.strip_prefix(prefix).is_some_and(|rest| rest.starts_with(is_letter))
    };
    OF_SOIL.into_iter().find(|prefix| row.iter().filter(|c| has(c, prefix)).count() > 3)
}

/// A text without the temperature of its measurement, which is no result: `EC (1:5) 25 °C`,
/// `C.E. a 25 ºC`, `conductivity @25°C`.
fn without_temperature(text: &str) -> Option<String> {
    let at = text.find(['°', 'º'])?;
    let rest = text[at..].trim_start_matches(['°', 'º', ' ']).strip_prefix('C')?;
    let ahead = text[..at].trim_end();
    let name = ahead.trim_end_matches(|c: char| c.is_ascii_digit());
    if name.len() == ahead.len() || rest.starts_with(is_letter) {
        return None;
    }
    let bracket = name.ends_with('(') && rest.starts_with(')');
    let name = name.trim_end_matches(['(', '@', ' ', ',']);
    let word = ["a", "at", "bei", "bij", "ved", "la", "à"];
    let name = word.iter().find_map(|w| name.strip_suffix(w)?.strip_suffix(' ')).unwrap_or(name);
    Some(format!("{name}{}", if bracket { &rest[1..] } else { rest }))
}

/// Whether slashes part results: `pH 6.2 / P 9.1 (4) / K 168 (4)`.
fn is_slashed(text: &str) -> bool {
    let parts = || text.split(" / ");
    parts().nth(2).is_some()
        && parts().all(|part| part.contains(' ') && part.bytes().any(|b| b.is_ascii_digit()))
}

/// A text with those of its words written anew for which there is a way.
fn each_word(text: &str, anew: impl Fn(&str) -> Option<String>) -> String {
    let words = text.split(' ').map(|word| anew(word).unwrap_or_else(|| word.into()));
    words.collect::<Vec<_>>().join(" ")
}

/// So many quoted lines are a report that was sent on.
const FORWARDED: usize = 5;

/// Whether a line is quoted from another letter: `> K 61 ppm`, while `> 6.3` is a limit.
pub(super) fn is_quoted(cell: &Cell) -> bool {
    cell.text.strip_prefix('>').is_some_and(|rest| rest.trim_start().starts_with(is_letter))
}

/// The rows of a letter that was sent on, without the marks of its lines.
fn unquoted(rows: &[Vec<Cell>]) -> Vec<Vec<Cell>> {
    let mut rows = rows.to_vec();
    for first in rows.iter_mut().filter_map(|row| row.first_mut()).filter(|c| is_quoted(c)) {
        let rest = first.text[1..].trim_start();
        first.place.start += (first.text.len() - rest.len()) as u32;
        first.text = rest.into();
    }
    rows
}

/// A text without the marks of bold type around its words, and without the charge behind an ion:
/// `pH **4.9**`, `S-SO4 2-`.
fn bare(text: &str) -> Option<String> {
    let words: Vec<&str> = text.split("**").collect();
    let closed = |pair: &[&str]| {
        let [before, inner] = pair else { return true };
        before_is_open(before)
            && !inner.is_empty()
            && !inner.starts_with(' ')
            && !inner.ends_with(' ')
    };
    if words.len() > 2 && words.len() % 2 == 1 && words.chunks(2).all(closed) {
        return Some(words.concat());
    }
    let (ion, charge) = text.rsplit_once(' ')?;
    let charged = match charge {
        "2-" | "2−" => ion.ends_with("SO4"),
        "2+" => ["Ca", "Mg", "Zn", "Fe", "Mn", "Cu"].contains(&ion),
        "3+" => ion == "Al",
        _ => false,
    };
    charged.then(|| ion.into())
}

/// Whether bold type may begin behind a text.
fn before_is_open(text: &str) -> bool {
    text.is_empty() || !text.ends_with(is_letter)
}

/// Where a name ends to which its number is glued: `CEC9.8 meq/100 g`, `Organic Matter3.7 %`.
fn before_number(text: &str) -> Option<usize> {
    let digit = |c: char| c.is_ascii_digit();
    let at = text.find(digit)?;
    let (name, rest) = text.split_at(at);
    // Nearly every text ends here.
    if !name.ends_with(is_letter) || name.len() > LONGEST_NAME {
        return None;
    }
    let number = rest.find(|c: char| !digit(c) && c != '.').unwrap_or(rest.len());
    let ends = rest[number..].chars().next().is_none_or(|c| matches!(c, ' ' | '%' | ','));
    let last = name.rsplit([' ', '(', '-', '/']).next().unwrap_or(name);
    // The 2 of "H2O" and the 1 of "B1" are part of the name.
    if !ends || last.chars().count() < 3 && last != "pH" {
        return None;
    }
    let label = Label::of(name);
    let named = !label.ends_half && label.unknown.is_empty() && label.quantity().is_ok();
    // "pH CaCl2"
    let whole = Label::of(&text[at - last.len()..at + number]);
    (named && whole.methods.is_empty()).then_some(at)
}

/// A share of the exchange joined to its symbol by a dash: `Ca-55%`.
fn dashed(word: &str) -> Option<(&str, &str)> {
    let (name, share) = word.split_once('-')?;
    let number = share.trim_end_matches([',', '.', ';']).strip_suffix('%')?;
    let plain = number.bytes().all(|b| b.is_ascii_digit() || b == b'.') && !number.is_empty();
    (plain && ["Ca", "Mg", "K", "Na", "H", "Al"].contains(&name)).then_some((name, share))
}

fn shares_dashed(text: &str) -> usize {
    text.split(' ').filter(|word| dashed(word).is_some()).count()
}

/// A longer text is no name. Our choice, bytes.
const LONGEST_NAME: usize = 40;

/// How many lines above a row of glued ratings may be its head.
const GLUED_HEADS: usize = 3;

/// A number with its rating glued to it: `88,4wysoka`.
fn rated(word: &str) -> Option<(&str, &str)> {
    let at = word.find(is_letter)?;
    let (number, rating) = word.split_at(at);
    let plain = !number.is_empty()
        && number.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b','))
        && number.ends_with(|c: char| c.is_ascii_digit());
    (plain && rating.chars().count() > 3 && is_rating(rating)).then_some((number, rating))
}

/// Words that are glued where a small letter meets a capital: `Nazwa polaNumer`, `ocenaMg`.
fn words_apart(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    let mut small = 0;
    for (at, c) in text.char_indices() {
        // "próbkipH" and "H2OZasolenie" as well.
        let reaction = small > 1 && text[at..].starts_with("pH");
        let water = c.is_uppercase() && out.ends_with("H2O");
        if c.is_uppercase() && small > 2 && !out.ends_with(" p") || reaction || water {
            out.push(' ');
        }
        small = if c.is_lowercase() { small + 1 } else { 0 };
        out.push(c);
    }
    out
}

/// Whether the results of a row have the letters of a comparison of means behind them: `4.82c`,
/// `0.66ab`.
fn is_compared(row: &[Cell]) -> bool {
    let words = row.iter().flat_map(|cell| cell.text.split(' '));
    words.filter_map(before_letters).filter(|n| n.contains(['.', ','])).nth(2).is_some()
}

/// The number before one to three letters from a to h.
fn before_letters(word: &str) -> Option<&str> {
    let number = word.trim_end_matches(|c| matches!(c, 'a'..='h'));
    let letters = word.len() - number.len();
    let plain = number.starts_with(|c: char| c.is_ascii_digit())
        && number.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b','))
        && number.ends_with(|c: char| c.is_ascii_digit());
    ((1..=3).contains(&letters) && plain).then_some(number)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::Place;

    fn row(text: &str) -> Vec<Cell> {
        text.split("  ").map(|t| Cell { text: t.into(), place: Place::default() }).collect()
    }

    #[test]
    fn letters_of_a_comparison_and_dots_of_a_unit_go() {
        let rows = [row("T1 Control  4.82c  18.6b  0.44bc  14"), row("Zinc (p.p.m.)  1.2")];
        let plain = plainly(&rows);
        assert_eq!(plain[0], row("T1 Control  4.82  18.6  0.44  14"));
        assert_eq!(plain[1], row("Zinc (ppm)  1.2"));
    }

    #[test]
    fn ratings_and_heads_are_unglued() {
        let rows =
            [row("Nazwa polaNumer próbki P mg/L Ι ocenaMg mg/L"), row("Tunel 1  88,4wysoka  12")];
        let plain = plainly(&rows);
        assert_eq!(plain[0], row("Nazwa pola Numer próbki P mg/L Ι ocena Mg mg/L"));
        assert_eq!(plain[1], row("Tunel 1  88,4 wysoka  12"));
    }

    #[test]
    fn numbers_are_parted_from_the_name_they_are_glued_to() {
        let apart = |text: &str| plainly(&[row(text)])[0][0].text.clone();
        for (glued, plain) in [
            ("CEC9.8 meq/100 g", "CEC 9.8 meq/100 g"),
            ("Soil pH5.9", "Soil pH 5.9"),
            ("Organic Matter3.7 %", "Organic Matter 3.7 %"),
            ("Phosphorus41", "Phosphorus 41"),
        ] {
            assert_eq!(apart(glued), plain);
        }
        for whole in [
            "K2O 41",
            "P2O5 12",
            "NO3 8",
            "pH H2O 6.2",
            "Phosphorus Mehlich3 41",
            "B12",
            "pH CaCl2 4.9",
        ] {
            assert_eq!(apart(whole), whole);
        }
    }

    #[test]
    fn codes_with_a_letter_stay() {
        let rows = [row("12a  12b  6.2  41"), row("Plot 3.1a  6.2  41")];
        assert_eq!(plainly(&rows), &rows[..]);
    }
}
