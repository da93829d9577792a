//! A list of results that begins anew is another sample: `pH 6.9 … humus 6.2 %`, then a line
//! such as `Bed 2`, then `pH 5.4 …`.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use super::about::AboutSample;
use super::fold::{fold, is_letter};
use super::label::Label;
use super::names::Word;
use super::no_samples::is_of_pages;
use super::sample_names::what_was_tested;
use super::{Pairing, Reading, SampleReport};
use crate::soil::Property;

/// The longest heading, characters and words. Our choice.
const LONGEST: usize = 80;
const MOST_WORDS: usize = 9;

/// How many lines above its first result the heading of a list may stand.
const NEAR: u32 = 3;

/// So many results in one line of sentences are a list. Our choice.
const LISTED: usize = 4;

/// Beginnings of lines that greet, and words of those that name a laboratory or a firm.
const GREETINGS: [&str; 27] = [
    "hi ",
    "hello",
    "dear ",
    "hey ",
    "hallo",
    "moin",
    "hej",
    "hola",
    "bonjour",
    "salut",
    "ciao",
    "ola ",
    "thanks",
    "thank you",
    "cheers",
    "regards",
    "guten",
    "servus",
    "buenas",
    "buenos",
    "boa ",
    "witam",
    "good day",
    "good morning",
    "good evening",
    "morning ",
    "goeie",
];
const FIRMS: [&str; 16] = [
    "labor",
    "labs",
    " oy",
    " gmbh",
    " inc",
    " ltd",
    " llc",
    " kft",
    " srl",
    " s.a",
    " b.v",
    " ab",
    " institut",
    " universi",
    " report",
    " presentation",
];

/// The most headings that are kept.
pub(super) const MOST_HEADINGS: usize = 5_000;

/// Whether a line that says nothing else may be the heading of a list.
pub(super) fn may_be_heading(text: &str) -> bool {
    let text = text.trim();
    let words = text.split(' ').count();
    let starts = text.starts_with(|c: char| is_letter(c) || matches!(c, '#' | '*'));
    if !starts || text.chars().count() > LONGEST || words > MOST_WORDS || text.contains("  ") {
        return false;
    }
    let folded = fold(text);
    let greets = GREETINGS.iter().any(|w| folded.starts_with(w) || folded == w.trim());
    let firm = FIRMS.iter().any(|w| {
        folded.match_indices(w).any(|(at, _)| {
            !folded[at + w.len()..].starts_with(is_letter) || w.starts_with(is_letter)
        })
    });
    if greets || firm || is_of_pages(&folded) || tells_a_time(text) {
        return false;
    }
    // The full stop of "no. 3" ends none.
    let stop = text.split(". ").skip(1).any(|next| !next.starts_with(|c: char| c.is_ascii_digit()));
    let sentence = text.ends_with(['.', '?', '!', ';', ',']) || stop;
    let label = Label::of(text);
    let sample = is_sample(&label);
    // "Sample date: 12 June" says when it was taken, and not what it is called.
    let named = |(ahead, _): (&str, &str)| is_sample(&Label::of(ahead)) && !dated(ahead);
    let says = text.split_once(": ").is_some_and(|parts| !named(parts));
    let of_soil = !label.properties.is_empty() && !label.only_symbols || label.unit.is_some();
    let head = label.unknown.is_empty() && !sample;
    !(sentence || says || of_soil || head || label.has(Word::Advice))
}

/// Whether a text tells the time of a day: `Asked July 2, 9:12 AM`.
fn tells_a_time(text: &str) -> bool {
    text.match_indices(':').any(|(at, _)| {
        let digit = |b: Option<&u8>| b.is_some_and(u8::is_ascii_digit);
        let bytes = text.as_bytes();
        at > 0 && digit(bytes.get(at - 1)) && digit(bytes.get(at + 1)) && digit(bytes.get(at + 2))
    })
}

/// Whether a label has a word for a day.
fn dated(label: &str) -> bool {
    let words = ["date", "datum", "fecha", "data ", "dato", "sampled", "дата"];
    let folded = format!("{} ", fold(label));
    words.iter().any(|w| folded.contains(w))
}

pub(super) fn is_sample(label: &Label) -> bool {
    label.words.iter().any(|w| matches!(w, Word::Sample(_)))
}

/// What is said of the samples beside their results, each with its line.
pub(super) struct Beside<'a> {
    pub headings: &'a [(u32, String)],
    pub facts: &'a [(u32, AboutSample)],
}

/// The samples that one sample's readings are, when its list begins anew.
pub(super) fn lists(sample: &mut SampleReport, beside: &Beside<'_>) -> Vec<SampleReport> {
    let runs = runs(&sample.readings);
    if runs.len() < 2 || !are_lists(&sample.readings, &runs) {
        return Vec::new();
    }
    let names = names(&sample.readings, &runs, beside.headings);
    let readings = std::mem::take(&mut sample.readings);
    // The name of a column of a table holds in every list.
    let column = match names[0].as_ref().and_then(|heading| sample.name.strip_prefix(heading)) {
        Some(behind) => behind.trim_start_matches([',', ' ']).to_string(),
        None => sample.name.clone(),
    };
    let mut found: Vec<SampleReport> = Vec::new();
    for (nth, run) in runs.iter().enumerate() {
        let own = &readings[run.clone()];
        let mut new = match nth {
            0 => std::mem::take(sample),
            _ => SampleReport { depth_cm: found[0].depth_cm, ..SampleReport::default() },
        };
        new.name = match &names[nth] {
            Some(heading) if column.is_empty() => heading.clone(),
            Some(heading) => format!("{heading}, {column}"),
            None => new.name,
        };
        let window = window(&readings, &runs, nth);
        for (_, fact) in beside.facts.iter().filter(|(line, _)| window.contains(line)) {
            match fact {
                AboutSample::Depth(top, bottom) => new.depth_cm = Some((*top, *bottom)),
                AboutSample::Texture(texture) => new.texture = Some(*texture),
                AboutSample::Group(group) => new.group = Some(*group),
                _ => {}
            }
        }
        new.readings = own.to_vec();
        found.push(new);
    }
    found
}

/// What a reading is of: two of one kind in a list are one too many.
fn key_of(reading: &Reading) -> (Property, Option<&'static str>, Option<&'static str>) {
    let method = reading.method.as_ref().map(|m| m.value.label());
    (reading.property, method, reading.unit.map(|u| u.symbol()))
}

/// The readings up to the next that says something else of a property that was said already.
fn runs(readings: &[Reading]) -> Vec<Range<usize>> {
    let mut runs: Vec<Range<usize>> = Vec::new();
    let mut seen: BTreeMap<_, _> = BTreeMap::new();
    let mut from = 0;
    // Whether a reading says again what its list has said.
    let mut same = vec![false; readings.len()];
    // A sentence beside a list may tell of anything; one of many results is a list itself.
    let mut told: BTreeMap<u32, usize> = BTreeMap::new();
    for reading in readings.iter().filter(|r| r.pairing == Pairing::Sentence) {
        *told.entry(reading.place.line).or_default() += 1;
    }
    let few = |line: u32| told.get(&line).is_some_and(|count| *count < LISTED);
    let sentence = |r: &Reading| r.pairing == Pairing::Sentence && few(r.place.line);
    let listed = readings.iter().any(|r| !sentence(r));
    for (i, reading) in readings.iter().enumerate().filter(|(_, r)| !(listed && sentence(r))) {
        let key = key_of(reading);
        let number = reading.amount.map(|a| a.number());
        let again = seen.get(&key).is_some_and(|n| *n != number);
        let below = i > 0 && reading.place.line > readings[i - 1].place.line;
        if again && below {
            // What was the same as above, just before, belongs to the new list.
            let start = (from + 1..i).rev().take_while(|&j| same[j]).last().unwrap_or(i);
            runs.push(from..start);
            seen.clear();
            from = start;
            for earlier in &readings[start..i] {
                seen.insert(key_of(earlier), earlier.amount.map(|a| a.number()));
            }
        }
        same[i] = seen.insert(key, number).is_some() && !again;
    }
    runs.push(from..readings.len());
    runs
}

/// Whether each run is a list of its own: it has several results, most of them of the same
/// properties as the first.
fn are_lists(readings: &[Reading], runs: &[Range<usize>]) -> bool {
    let of = |run: &Range<usize>| -> BTreeSet<Property> {
        readings[run.clone()].iter().map(|r| r.property).collect()
    };
    let first = of(&runs[0]);
    runs.iter().all(|run| {
        let own = of(run);
        let shared = own.intersection(&first).count();
        shared > 1 && shared * 2 >= own.len().min(first.len())
    })
}

/// The lines that belong to a run: from the end of the one before to its own.
fn window(readings: &[Reading], runs: &[Range<usize>], nth: usize) -> Range<u32> {
    let line = |i: usize| readings[i].place.line;
    let from = nth.checked_sub(1).map_or(0, |before| line(runs[before].end - 1) + 1);
    from..line(runs[nth].end - 1) + 1
}

/// A heading without its marks.
pub(super) fn plain_heading(text: &str) -> String {
    let text = text.trim_matches(['#', '*', ' ', ':', '-']);
    // "Farm location: Lower Mill": what it is, and the name.
    let named = text.split_once(": ").filter(|(ahead, _)| is_sample(&Label::of(ahead)));
    what_was_tested(named.map_or(text, |(_, name)| name)).into()
}

/// The heading of each run: the last line before its first reading that heads no other, one that
/// begins with the word for a sample before all others.
fn names(
    readings: &[Reading],
    runs: &[Range<usize>],
    headings: &[(u32, String)],
) -> Vec<Option<String>> {
    let over = |nth: usize| {
        let from = window(readings, runs, nth).start;
        let to = readings[runs[nth].start].place.line;
        // What stands further up is the head of the page, unless it says that it names a sample.
        let near = move |(line, text): &&(u32, String)| {
            let sure = || text.starts_with('#') || is_sample(&Label::of(text));
            (from..=to).contains(line) && (line + NEAR >= to || sure())
        };
        headings.iter().filter(near).map(|(_, text)| text)
    };
    let mut count: BTreeMap<&String, usize> = BTreeMap::new();
    for nth in 0..runs.len() {
        for text in over(nth).collect::<BTreeSet<_>>() {
            *count.entry(text).or_default() += 1;
        }
    }
    let best = |nth: usize| {
        let own: Vec<&String> = over(nth).filter(|text| count[*text] == 1).collect();
        // A line that says so comes before others, a plot's name before a farm's.
        let rank = |text: &&&String| {
            let plain = plain_heading(text);
            let first: Vec<&str> = plain.split(' ').take(2).collect();
            let label = Label::of(&first.join(" "));
            let ranks = label.words.iter().filter_map(|word| match word {
                Word::Sample(rank) => Some(*rank),
                _ => None,
            });
            ranks.min().unwrap_or(u8::MAX)
        };
        own.iter().rev().min_by_key(rank).map(|text| plain_heading(text))
    };
    (0..runs.len()).map(best).collect()
}
