//! Text as the trade's many spellings have it, folded to one: lower case,
//! subscripts to digits, accents off, split into words that remember what
//! stood between them.

/// What stood before a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Gap {
    /// Nothing: a change of case inside a word, as in `olsenP`.
    Glued,
    /// A dot or underscores, as in `K_mg.kg`.
    Soft,
    /// A slash, as in `mg/kg`.
    Slash,
    /// A hyphen, as in `M3-P`.
    Dash,
    /// Blanks or other marks.
    Space,
    /// A comma, colon or bracket: no phrase reaches across it.
    Wall,
}

/// A folded word and the bytes it stands at.
#[derive(Clone, Debug)]
pub(super) struct Word {
    pub text: String,
    pub gap: Gap,
    pub start: usize,
    pub end: usize,
}

/// One character, folded.
pub(super) fn fold_char(c: char) -> char {
    match c {
        '₀'..='₉' => char::from(b'0' + (c as u32 - '₀' as u32) as u8),
        '⁴'..='⁹' => char::from(b'4' + (c as u32 - '⁴' as u32) as u8),
        '⁰' => '0',
        '¹' => '1',
        '²' => '2',
        '³' => '3',
        'µ' | 'μ' => 'u',
        '−' | '‐' | '‑' | '–' | '—' | '⁻' => '-',
        '≤' | '‹' | '＜' => '<',
        '≥' | '›' | '＞' => '>',
        '\u{a0}' | '\u{202f}' | '\u{2009}' | '\u{2007}' | '\t' | '\n' | '\r' => ' ',
        'à'..='å' | 'À'..='Å' => 'a',
        'è'..='ë' | 'È'..='Ë' => 'e',
        'ì'..='ï' | 'Ì'..='Ï' => 'i',
        'ò'..='ö' | 'Ò'..='Ö' | 'ø' | 'Ø' => 'o',
        'ù'..='ü' | 'Ù'..='Ü' => 'u',
        'ý' | 'Ý' => 'y',
        'Ā'..='ž' => latin_with_marks(c),
        // The letters of Vietnamese.
        'Ạ'..='ặ' => 'a',
        'Ẹ'..='ệ' => 'e',
        'Ỉ'..='ị' => 'i',
        'Ọ'..='ợ' | 'ơ' | 'Ơ' => 'o',
        'Ụ'..='ự' | 'ư' | 'Ư' => 'u',
        'Ỳ'..='ỹ' => 'y',
        'Μ' => 'u',
        'ά' | 'Ά' => 'α',
        'έ' | 'Έ' => 'ε',
        'ή' | 'Ή' => 'η',
        'ί' | 'ϊ' | 'Ί' => 'ι',
        'ό' | 'Ό' => 'ο',
        'ύ' | 'ϋ' | 'Ύ' => 'υ',
        'ώ' | 'Ώ' => 'ω',
        'ς' => 'σ',
        'ё' | 'Ё' => 'е',
        'Ґ' => 'ґ',
        'ș' | 'Ș' => 's',
        'ț' | 'Ț' => 't',
        // The capitals of Ukrainian, and the wide letters of Japanese.
        'Ѐ'..='Џ' => char::from_u32(c as u32 + 0x50).unwrap_or(c),
        '！'..='～' => char::from((c as u32 - '！' as u32) as u8 + b'!').to_ascii_lowercase(),
        'ç' | 'Ç' => 'c',
        'ñ' | 'Ñ' => 'n',
        // Lower case of the Latin-1, Greek and Cyrillic capitals; the tables for
        // every script would add 6 kB to the page.
        'À'..='Þ' | 'Α'..='Ω' | 'А'..='Я' if c != '×' => {
            char::from_u32(c as u32 + 0x20).unwrap_or(c)
        }
        _ => c.to_ascii_lowercase(),
    }
}

/// The plain letter of one with a mark from the languages of central Europe and Turkey: `ł` is
/// `l`. They stand in the order of the alphabet.
fn latin_with_marks(c: char) -> char {
    const LAST: [(char, char); 19] = [
        ('ą', 'a'),
        ('č', 'c'),
        ('đ', 'd'),
        ('ě', 'e'),
        ('ģ', 'g'),
        ('ħ', 'h'),
        ('ı', 'i'),
        ('ĵ', 'j'),
        ('ĸ', 'k'),
        ('ł', 'l'),
        ('ŋ', 'n'),
        ('œ', 'o'),
        ('ř', 'r'),
        ('š', 's'),
        ('ŧ', 't'),
        ('ų', 'u'),
        ('ŵ', 'w'),
        ('Ÿ', 'y'),
        ('ž', 'z'),
    ];
    LAST.iter().find(|(last, _)| c <= *last).map_or(c, |(_, plain)| *plain)
}

/// A letter of any script. By range, not by the tables of the standard
/// library, which would add 3 kB to the page.
pub(super) fn is_letter(c: char) -> bool {
    let other =
        c >= 'À' && !matches!(c, '×' | '÷' | '\u{2000}'..='\u{2bff}' | '\u{3000}'..='\u{303f}');
    c.is_ascii_alphabetic() || other
}

/// A letter or a digit.
pub(super) fn is_word(c: char) -> bool {
    c.is_ascii_digit() || is_letter(c)
}

/// A sign that is a word by itself.
fn is_sign(c: char) -> bool {
    matches!(c, '%' | '‰' | '#')
}

fn is_capital(c: char) -> bool {
    matches!(c, 'A'..='Z' | 'À'..='Þ') && c != '×'
}

fn is_small(c: char) -> bool {
    matches!(c, 'a'..='z' | 'ß'..='ÿ' | 'µ' | 'μ') && c != '÷'
}

/// The first so many characters of a text.
pub(super) fn first_chars(text: &str, count: usize) -> &str {
    &text[..text.char_indices().nth(count).map_or(text.len(), |(byte, _)| byte)]
}

/// The text with every character folded.
pub(super) fn fold(text: &str) -> String {
    text.chars().map(fold_char).collect()
}

/// Only the letters, digits and per cent signs of the text, folded.
pub(super) fn squash(text: &str) -> String {
    text.chars().map(fold_char).filter(|c| is_word(*c) || is_sign(*c)).collect()
}

/// The clauses of a text between commas and semicolons; the comma of `7,5 %` parts nothing.
pub(super) fn clauses(text: &str) -> Vec<&str> {
    let bytes = text.as_bytes();
    let digit = |at: Option<usize>| at.and_then(|a| bytes.get(a)).is_some_and(u8::is_ascii_digit);
    let mut found = Vec::new();
    let mut from = 0;
    for (at, c) in text.char_indices() {
        let in_number = digit(at.checked_sub(1)) && digit(Some(at + 1));
        if c == ';' || c == ',' && !in_number {
            found.push(&text[from..at]);
            from = at + 1;
        }
    }
    found.push(&text[from..]);
    found
}

/// The sentences of a text: `B: hot water. Zn: DTPA` has two. The full stop of an abbreviation,
/// which is short, ends none.
pub(super) fn sentences(text: &str) -> Vec<&str> {
    let mut found = Vec::new();
    let mut from = 0;
    for (at, _) in text.match_indices(". ") {
        let last = text[from..at].rsplit(' ').next().unwrap_or("");
        let next = text[at + 2..].trim_start().chars().next();
        let ends = last.chars().count() > 4 || last.ends_with(|c: char| !is_letter(c));
        if ends && next.is_some_and(is_capital) {
            found.push(&text[from..at]);
            from = at + 2;
        }
    }
    found.push(&text[from..]);
    found
}

/// The words of a name.
pub(super) fn words(text: &str) -> Vec<Word> {
    let chars: Vec<(usize, char)> = text.char_indices().collect();
    let at = |i: usize| chars.get(i).map(|&(_, c)| c);
    let byte = |i: usize| chars.get(i).map_or(text.len(), |&(b, _)| b);
    let mut words: Vec<Word> = Vec::new();
    let mut gap = String::new();
    let mut i = 0;
    while let Some(c) = at(i) {
        // The charge mark of cmol(+) and cmol(c).
        let after_mol = gap.is_empty() && words.last().is_some_and(|w| w.text.ends_with("mol"));
        if after_mol && c == '+' {
            i += 1;
            continue;
        }
        if after_mol && c == '(' && at(i + 2) == Some(')') {
            if at(i + 1) == Some('c') {
                let (start, end) = (byte(i), byte(i + 3));
                words.push(Word { text: "c".into(), gap: Gap::Glued, start, end });
            }
            i += 3;
            continue;
        }
        if !in_word(c) {
            gap.push(fold_char(c));
            i += 1;
            continue;
        }
        let start = i;
        let mut word = String::new();
        if let Some((ratio, length)) = ratio(&chars[i..]) {
            word = ratio;
            i += length;
        } else if is_sign(c) {
            word.push(c);
            i += 1;
        } else {
            while let Some(c) = at(i).filter(|&c| in_word(c) && !is_sign(c)) {
                if i > start && hump(at(i - 1), c, at(i + 1)) {
                    break;
                }
                // "EC1:5", while "P1:5 ppm" is Bray P1 with its result.
                if matches!(word.as_str(), "ec" | "h") && ratio(&chars[i..]).is_some() {
                    break;
                }
                word.push(fold_char(c));
                i += 1;
            }
        }
        let kind = kind_of(&gap, words.is_empty());
        words.push(Word { text: word, gap: kind, start: byte(start), end: byte(i) });
        gap.clear();
    }
    words
}

fn in_word(c: char) -> bool {
    is_word(fold_char(c)) || is_sign(c)
}

/// Whether a capital begins a new word inside a word: `olsenP`, `PMeh`.
fn hump(before: Option<char>, here: char, after: Option<char>) -> bool {
    is_capital(here)
        && before.is_some_and(|b| is_small(b) || is_capital(b) && after.is_some_and(is_small))
}

/// A soil-to-liquid ratio such as `1:1`, `1:2.5` or `2:1`, as one word `1to2.5`.
fn ratio(chars: &[(usize, char)]) -> Option<(String, usize)> {
    let digits = |from: usize| {
        chars[from..].iter().take(3).take_while(|(_, c)| c.is_ascii_digit()).map(|&(_, c)| c)
    };
    let first: String = digits(0).collect();
    let colon = first.len();
    if colon == 0 || chars.get(colon)?.1 != ':' {
        return None;
    }
    let mut second: String = digits(colon + 1).collect();
    if second.is_empty() {
        return None;
    }
    let mut length = colon + 1 + second.len();
    if chars.get(length).is_some_and(|(_, c)| matches!(c, '.' | ',')) {
        let part = digits(length + 1).count();
        if part > 0 {
            second.push('.');
            second.extend(digits(length + 1));
            length += 1 + part;
        }
    }
    Some((format!("{first}to{second}"), length))
}

fn kind_of(gap: &str, first: bool) -> Gap {
    let trimmed = gap.trim();
    if first {
        Gap::Wall
    } else if gap.is_empty() {
        Gap::Glued
    } else if gap.contains('/') {
        Gap::Slash
    } else if gap.contains([',', ';', ':', '=', '(', ')', '[', ']', '|']) {
        Gap::Wall
    } else if gap == "-" {
        Gap::Dash
    } else if trimmed == gap && trimmed.chars().all(|c| matches!(c, '.' | '_')) {
        Gap::Soft
    } else {
        Gap::Space
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_falls_into_words_at_marks_and_humps() {
        let cases = [
            ("olsenP_mg.kg", "olsen|p|mg|kg"),
            ("P₂O₅ mg/100 g", "p2o5|mg|100|g"),
            ("pH (1:2.5 water)", "p|h|1to2.5|water"),
            ("EC1:5 dS/m", "ec|1to5|d|s|m"),
            ("cmol(+)/kg", "cmol|kg"),
            ("cmol(c)/kg", "cmol|c|kg"),
            ("%K Sat", "%|k|sat"),
            ("µS/cm and μS/cm", "u|s|cm|and|u|s|cm"),
        ];
        for (text, expected) in cases {
            let found: Vec<String> = words(text).into_iter().map(|w| w.text).collect();
            assert_eq!(found.join("|"), expected, "{text}");
        }
    }
}
