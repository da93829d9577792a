//! What was used of each line of the source: results, what was listed as not read, words of names,
//! ratings, and figures that nothing was made of.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use super::fold::is_word;
use super::{Place, Reading, Report, Unread};
use crate::report::marks::Lines;

/// What a stretch of a line is to the reader.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Use {
    /// A result.
    Result,
    /// Part of a name, a unit, a rating or a range that stands with a result.
    Beside,
    /// Words that hold no figure.
    Words,
    /// Listed as not read, with the reason.
    Listed,
    /// A figure of which nothing was made.
    Unused,
}

/// A stretch of a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// The text.
    pub text: String,
    /// What it is to the reader.
    pub used: Use,
}

/// The lines of a text, from the first, each cut into stretches of one use; at most `most` lines.
pub fn uses(text: &str, report: &Report, most: usize) -> Vec<Vec<Stretch>> {
    let known = Known::of(report);
    let lines = Lines::of(text);
    (1..).zip(lines.iter().take(most)).map(|(number, line)| known.line(line, number)).collect()
}

/// The places of a report by their lines, and the words that stand with its results.
struct Known<'a> {
    results: BTreeMap<u32, Vec<Place>>,
    listed: BTreeMap<u32, Vec<Place>>,
    beside: BTreeSet<&'a str>,
}

impl<'a> Known<'a> {
    fn of(report: &'a Report) -> Known<'a> {
        let readings: Vec<&Reading> = report.samples.iter().flat_map(|s| &s.readings).collect();
        let unread = report.samples.iter().flat_map(|s| &s.unread).chain(&report.unread);
        let mut known =
            Known { results: BTreeMap::new(), listed: BTreeMap::new(), beside: BTreeSet::new() };
        for reading in readings {
            known.results.entry(reading.place.line).or_default().push(reading.place);
            let texts = [Some(&reading.name), reading.rating.as_ref()];
            known.beside.extend(texts.into_iter().flatten().flat_map(|t| t.split(SEPARATORS)));
        }
        for Unread { place, .. } in unread {
            known.listed.entry(place.line).or_default().push(*place);
        }
        known.beside.extend(report.samples.iter().flat_map(|s| s.name.split(SEPARATORS)));
        known.beside.remove("");
        known
    }

    fn line(&self, line: &str, number: u32) -> Vec<Stretch> {
        let mut found: Vec<Stretch> = Vec::new();
        let mut at = 0;
        for piece in line.split_inclusive(char::is_whitespace) {
            let length = piece.chars().count() as u32;
            let used = self.word(piece.trim(), Place { line: number, start: at, end: at + length });
            at += length;
            match found.last_mut() {
                Some(last) if last.used == used || piece.trim().is_empty() => {
                    last.text.push_str(piece);
                }
                _ => found.push(Stretch { text: piece.into(), used }),
            }
        }
        found
    }

    fn word(&self, word: &str, at: Place) -> Use {
        let meets = |places: &BTreeMap<u32, Vec<Place>>| {
            let here = places.get(&at.line).map_or(&[][..], Vec::as_slice);
            here.iter()
                .any(|p| p.start < at.start + word.chars().count() as u32 && at.start < p.end)
        };
        if meets(&self.results) {
            Use::Result
        } else if meets(&self.listed) {
            Use::Listed
        } else if word
            .trim_matches(MARKS)
            .split(SEPARATORS)
            .all(|w| w.is_empty() || self.beside.contains(w))
        {
            if word.contains(is_word) { Use::Beside } else { Use::Words }
        } else if word.bytes().any(|b| b.is_ascii_digit()) {
            Use::Unused
        } else {
            Use::Words
        }
    }
}

/// What parts the words of a name or a rating.
const SEPARATORS: [char; 10] = [' ', '\t', ',', ';', ':', '(', ')', '|', '"', '='];

/// What stands round a word.
const MARKS: [char; 4] = ['.', '*', '\'', '–'];

#[cfg(test)]
mod tests {
    use super::super::{open, read};
    use super::*;

    fn shown(text: &str) -> Vec<Vec<(String, Use)>> {
        let report = read(&open(text.as_bytes()).unwrap()).unwrap();
        let lines = uses(text, &report, 100);
        let plain = |s: Stretch| (s.text.trim().to_string(), s.used);
        lines.into_iter().map(|line| line.into_iter().map(plain).collect()).collect()
    }

    #[test]
    fn each_word_is_a_result_beside_one_listed_or_unused() {
        let lines = shown("Received by Ada\npH 6.2\nPhosphorus 18 ppm 20-40\nTarget pH 6.5\n");
        assert_eq!(lines[0], [("Received by Ada".into(), Use::Words)]);
        assert_eq!(lines[1], [("pH".into(), Use::Beside), ("6.2".into(), Use::Result)]);
        assert!(lines[2].contains(&("Phosphorus".into(), Use::Beside)));
        assert!(lines[2].iter().any(|(text, used)| text.starts_with("18") && *used == Use::Result));
        assert!(lines[3].iter().all(|(_, used)| *used == Use::Listed), "{:?}", lines[3]);
    }

    #[test]
    fn nothing_of_the_text_is_lost() {
        let text = "Sample\tpH\tP ppm\nA\t6.2\t18 L\n\nLab 4711, page 1\n";
        let report = read(&open(text.as_bytes()).unwrap()).unwrap();
        let back: Vec<String> = uses(text, &report, 100)
            .into_iter()
            .map(|line| line.into_iter().map(|s| s.text).collect())
            .collect();
        assert_eq!(back.join("\n"), text.trim_end_matches('\n'));
    }
}
