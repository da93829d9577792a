//! What is drawn with letters, not written: scales with a mark on them and rows of leader dots.
//! A scale's two ends are no results, and dots only lead the eye to one. So does the stamp of a
//! message: who sent it, and when.

use std::borrow::Cow;

use super::fold::{is_letter, is_word};
use super::number::is_rating;

/// What the line of a scale is drawn with.
const LINE: &str = "-=_.~·–—─━═";

/// What shows a place on it.
const POINTER: &str = "*^+#xXoO●▲▼♦◆■█";

/// What frames it or parts it.
const FRAME: &str = "|[]()<>┃│├┤";

/// So many dots in a row lead from a name to its result; three may stand for a missing one.
const LEADERS: usize = 4;

/// The longest line that is looked at, bytes: nobody draws on a longer one.
const LONGEST_LINE: usize = 1_000;

/// The text with blanks in place of what is drawn, so that each character keeps its place.
pub(super) fn without_drawings(text: &str) -> Cow<'_, str> {
    let drawn = |line: &str| {
        line.len() <= LONGEST_LINE
            && (line.contains("...")
                || line.contains('…')
                || may_hold_scale(line)
                || stamp(line) > 0)
    };
    if !text.lines().any(drawn) {
        return Cow::Borrowed(text);
    }
    let mut plain = String::with_capacity(text.len());
    for line in text.split_inclusive('\n') {
        if drawn(line) {
            plain.push_str(&blanked(line));
        } else {
            plain.push_str(line);
        }
    }
    Cow::Owned(plain)
}

/// The characters of the stamp with which a message begins: `[10/01/2024, 20:42] Nora: ` and
/// `10/01/24, 20:42 - Nora: `. Most programs for messages write one of them into what is copied.
fn stamp(line: &str) -> usize {
    let (time, sender) = match line.strip_prefix('[') {
        Some(inner) => match inner.split_once("] ") {
            Some(parts) => parts,
            None => return 0,
        },
        None if line.starts_with(|c: char| c.is_ascii_digit()) => match line.split_once(" - ") {
            Some(parts) => parts,
            None => return 0,
        },
        None => return 0,
    };
    let figures = |c: char| c.is_ascii_digit() || "/.-:, APMapm\u{202f}".contains(c);
    let timed = time.len() < 26 && time.contains(':') && time.chars().all(figures);
    let day = time.split([',', ' ']).next().unwrap_or("").split(['/', '.', '-']).count() == 3;
    match sender.find(": ") {
        Some(colon) if timed && day && colon < 50 => {
            let from = line.len() - sender.len() + colon + 1;
            line[..from].chars().count()
        }
        _ => 0,
    }
}

fn may_hold_scale(line: &str) -> bool {
    line.contains(|c| LINE.contains(c)) && line.contains(|c| c == '[' || POINTER.contains(c))
}

fn blanked(line: &str) -> String {
    let mut chars: Vec<char> = line.chars().collect();
    let sent = stamp(line);
    chars[..sent].fill(' ');
    let whole = chars.clone();
    let mut at = 0;
    while at < chars.len() {
        at = match scale(&chars, at) {
            Some((from, to)) => {
                chars[from..to].fill(' ');
                to
            }
            None => at + 1,
        };
    }
    // A scale alone on its line is still to be listed.
    if chars.iter().all(|c| c.is_whitespace()) {
        chars = whole;
    }
    let mut at = 0;
    while at < chars.len() {
        let run = chars[at..].iter().take_while(|c| matches!(c, '.' | '…')).count();
        let dots: usize = chars[at..at + run].iter().map(|c| if *c == '…' { 3 } else { 1 }).sum();
        if dots >= LEADERS {
            chars[at..at + run].fill(' ');
        }
        at += run.max(1);
    }
    chars.into_iter().collect()
}

/// The scale whose drawing begins at a character, with the numbers at both its ends.
fn scale(chars: &[char], at: usize) -> Option<(usize, usize)> {
    let end = drawing(chars, at)?;
    let from = foot_before(chars, at)?;
    let to = foot_behind(chars, end)?;
    Some((from, to))
}

/// Where the drawing of a scale ends that begins here: a line with a mark on it.
fn drawing(chars: &[char], at: usize) -> Option<usize> {
    let is = |set: &str, i: usize| chars.get(i).is_some_and(|c| set.contains(*c));
    if at > 0 && (is(LINE, at - 1) || is(FRAME, at - 1)) {
        return None;
    }
    if chars.get(at) == Some(&'[') {
        // "[=====     ]": a bar may be filled with blanks.
        let close = at + chars[at..].iter().position(|c| *c == ']')?;
        let inner = &chars[at + 1..close];
        let drawn = |c: &&char| LINE.contains(**c) || POINTER.contains(**c);
        let blank = inner.iter().filter(|c| **c == ' ').count();
        let strokes = inner.iter().filter(drawn).count();
        return (strokes > 2 && strokes + blank == inner.len()).then_some(close + 1);
    }
    let mut end = at;
    let (mut strokes, mut pointers) = (0, 0);
    while end < chars.len() {
        if is(LINE, end) {
            strokes += 1;
        } else if is(POINTER, end) && (end > at || chars[at] != '+') {
            // A letter points only within the line.
            let within = end > at && (is(LINE, end - 1) || is(FRAME, end - 1));
            let letter = chars[end].is_ascii_alphabetic();
            if letter && (!within || is_letter_behind(chars, end)) {
                break;
            }
            pointers += 1;
        } else if !is(FRAME, end) {
            break;
        }
        end += 1;
    }
    (strokes > 2 && pointers > 0 && end - at > 4).then_some(end)
}

fn is_letter_behind(chars: &[char], at: usize) -> bool {
    chars.get(at + 1).is_some_and(|c| is_word(*c))
}

/// Where the foot at the left end of a drawing begins: a number, which may have its unit or a
/// rating beside it, or a rating alone.
fn foot_before(chars: &[char], drawing: usize) -> Option<usize> {
    let back = |to: usize, is: fn(char) -> bool| {
        to - chars[..to].iter().rev().take_while(|c| is(**c)).count()
    };
    let end = back(drawing, is_blank);
    let unit = back(end, is_of_unit);
    let number_end = if end - unit < 8 { back(unit, is_blank) } else { end };
    let number = back(number_end, is_of_number);
    let whole = number < number_end && chars[number_end - 1].is_ascii_digit();
    let apart = number == 0 || !is_word(chars[number - 1]);
    if whole && apart && chars[number].is_ascii_digit() {
        let word_end = back(number, is_blank);
        let word = back(word_end, is_letter);
        return Some(if is_rating(&text_of(&chars[word..word_end])) { word } else { number });
    }
    let word = back(end, is_letter);
    is_rating(&text_of(&chars[word..end])).then_some(word)
}

/// Where the foot at the right end of a drawing ends.
fn foot_behind(chars: &[char], drawing: usize) -> Option<usize> {
    let on = |from: usize, is: fn(char) -> bool| {
        from + chars[from..].iter().take_while(|c| is(**c)).count()
    };
    let start = on(drawing, is_blank);
    let number = on(start, is_of_number);
    let begins = chars.get(start).is_some_and(char::is_ascii_digit);
    let from = if begins { on(number, is_blank) } else { start };
    let word = on(from, is_letter);
    let rated = is_rating(&text_of(&chars[from..word]));
    match (begins, rated) {
        (_, true) => Some(word),
        (true, false) => Some(number),
        (false, false) => None,
    }
}

fn is_blank(c: char) -> bool {
    c == ' '
}

fn is_of_unit(c: char) -> bool {
    is_letter(c) || matches!(c, '/' | '%')
}

fn is_of_number(c: char) -> bool {
    c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '–')
}

/// A word as text; a lone letter says too little here.
fn text_of(chars: &[char]) -> String {
    if chars.len() > 2 { chars.iter().collect() } else { String::new() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_of_a_scale_go_with_it() {
        for (text, left) in [
            ("pH 5.0 |----|----|*---| 8.0   6.2", "pH 6.2"),
            ("pH   6.2   5.0 |--*--| 8.0", "pH 6.2"),
            ("pH 5.0 -----x----- 8.0 6.2", "pH 6.2"),
            ("pH 5.0 [=====     ] 8.0 6.2", "pH 6.2"),
            ("pH 5,0|---+---|8,0 6,2", "pH 6,2"),
            ("P 0 ppm |--*-----| 100 18 ppm", "P 18 ppm"),
            ("pH 5.0 |---*---| 8.0", "pH"),
            ("P 0-20 |---*---| 40-60 25 ppm", "P 25 ppm"),
            ("P low 0 |---*---| 100 high 25 ppm", "P 25 ppm"),
            ("P low |---*---| high 25 ppm", "P 25 ppm"),
        ] {
            let plain = without_drawings(text);
            let words: Vec<&str> = plain.split_whitespace().collect();
            assert_eq!(words.join(" "), left, "{text}");
            assert_eq!(plain.chars().count(), text.chars().count());
        }
    }

    #[test]
    fn what_is_no_scale_stays() {
        for text in [
            "A | 6.2 | --- | 18",
            "A|6.2|---|---|18",
            "K 120 --- 150",
            "pH 6.2 |---*---|",
            "5.0 |---*---| 8.0",
            "pH 6.2 ******",
            "P 18 | *** | 45",
            "P2O5 ... 45 lb/acre",
            "| pH | 6.2 |\n|----|-----|",
        ] {
            assert_eq!(without_drawings(text), text);
        }
    }

    #[test]
    fn leader_dots_part_a_name_from_its_result() {
        assert_eq!(without_drawings("P ppm ..... 140"), "P ppm       140");
        assert_eq!(without_drawings("pH........6.2"), "pH        6.2");
        assert_eq!(without_drawings("pH …… 6.2"), "pH    6.2");
    }
}
