//! A language: its texts and how they are found.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

use crate::decimal::marked;
use crate::po::{Damage, entries};
use crate::sentence::Sentence;

/// A sentence with fewer letters of its own, such as `{a} and {b}`, fits so much
/// that it only counts where all that fills it can be said.
const FEW_LETTERS: usize = 6;
/// So many commas make a long list.
const LONG_LIST: usize = 3;
/// How many ways to fill one sentence's holes are tried.
const MOST_TRIES: usize = 12;
/// The longest text that is looked up, bytes: longer than any the program makes,
/// so a longer one is the person's own.
const LONGEST: usize = 1_200;
/// How many steps one text may take. The program's own need some hundreds; what
/// a person types may fit a hundred sentences a little.
const FUEL: u32 = 20_000;

/// A language: its texts, and its mark between whole numbers and decimals.
#[derive(Debug)]
pub struct Catalogue {
    /// Texts without holes, in order.
    plain: Vec<(String, String)>,
    /// Sentences with holes, the surest first.
    sentences: Vec<Sentence>,
    mark: char,
}

/// A text in the other language.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Said {
    /// The text.
    pub text: String,
    /// What the catalogue doesn't have; it stays as it was.
    pub left: Vec<String>,
}

impl Said {
    /// A text that is not found.
    fn nothing(text: &str) -> Said {
        Said { text: text.into(), left: vec![text.into()] }
    }

    /// How much is left in English.
    fn cost(&self) -> usize {
        self.left.iter().map(String::len).sum()
    }

    /// Takes the other if less of it is left in English.
    fn or_better(&mut self, other: Option<Said>) {
        if let Some(other) = other.filter(|other| other.cost() < self.cost()) {
            *self = other;
        }
    }
}

/// The putting together of one text: what was said already, and the steps left.
struct Work {
    known: RefCell<BTreeMap<String, Said>>,
    fuel: Cell<u32>,
}

impl Work {
    /// Spends a step; says whether there was one.
    fn spend(&self) -> bool {
        let left = self.fuel.get();
        self.fuel.set(left.saturating_sub(1));
        left > 0
    }
}

impl Catalogue {
    /// Reads a catalogue in the PO format. `mark` is the decimal mark of the
    /// reader's country, a point or a comma.
    ///
    /// # Errors
    /// When the catalogue is damaged.
    pub fn read(po: &str, mark: char) -> Result<Catalogue, Damage> {
        let mut plain = Vec::new();
        let mut sentences = Vec::new();
        for entry in entries(po)?.into_iter().filter(|entry| !entry.said.is_empty()) {
            match Sentence::of(&entry.english, &entry.said) {
                Some(sentence) => sentences.push(sentence),
                None => plain.push((entry.english, entry.said)),
            }
        }
        plain.sort();
        sentences.sort_by_key(|sentence| std::cmp::Reverse(sentence.letters));
        Ok(Catalogue { plain, sentences, mark })
    }

    /// The text in the other language. A text longer than any that the program
    /// makes stays as it is.
    pub fn say(&self, text: &str) -> Said {
        if text.len() > LONGEST {
            return Said::nothing(text);
        }
        let work = Work { known: RefCell::default(), fuel: Cell::new(FUEL) };
        let mut said = self.phrase(text, &work);
        if self.mark != '.' {
            said.text = marked(&said.text, self.mark);
        }
        said
    }

    /// A phrase with the blanks around it.
    fn phrase(&self, text: &str, work: &Work) -> Said {
        let body = text.trim_matches([' ', '\n']);
        // What stands in quotes is the person's own.
        let quoted = body.strip_prefix('“').and_then(|inside| inside.strip_suffix('”'));
        if !body.chars().any(char::is_alphabetic) || quoted.is_some_and(|own| !own.contains('”'))
        {
            return Said { text: text.into(), left: Vec::new() };
        }
        let mut said = self.body(body, work);
        if said.cost() > 0 {
            // A phrase at the head of a line or a sentence has a capital it may not have elsewhere.
            if let Some(lower) = small(body) {
                let other = self.body(&lower, work);
                if other.cost() < said.cost() {
                    said = Said { text: capital(&other.text), left: other.left };
                }
            }
        }
        if body.len() != text.len() {
            let start = text.len() - text.trim_start_matches([' ', '\n']).len();
            said.text = format!("{}{}{}", &text[..start], said.text, &text[start + body.len()..]);
        }
        said
    }

    fn body(&self, body: &str, work: &Work) -> Said {
        if let Some(said) = work.known.borrow().get(body) {
            return said.clone();
        }
        let listed = self.listed(body, work).filter(|said| said.cost() == 0);
        let mut best = listed.unwrap_or_else(|| self.whole(body, work));
        for stops in [&['.', '?', '!'][..], &['.', '?', '!', ':'][..]] {
            if best.cost() > 0 {
                best.or_better(self.in_turn(body, stops, work));
            }
        }
        // Last: a number may belong to what stands before or after it, as in a date.
        if best.cost() > 0 {
            best.or_better(self.with_number(body, work));
        }
        if best.cost() > 0 {
            best.or_better(self.before_stop(body, work));
        }
        work.known.borrow_mut().insert(body.into(), best.clone());
        best
    }

    /// A long list, thing by thing: as one text it could be parted in a thousand ways.
    fn listed(&self, body: &str, work: &Work) -> Option<Said> {
        let is_one = body.matches(", ").count() >= LONG_LIST
            && ![". ", ": ", "“"].iter().any(|mark| body.contains(mark));
        let mut said = Said::default();
        for thing in is_one.then(|| body.split(", "))? {
            let part = self.phrase(thing, work);
            let mark = if said.text.is_empty() { "" } else { ", " };
            said.text = said.text + mark + &part.text;
            said.left.extend(part.left);
        }
        Some(said)
    }

    /// The text as one entry of the catalogue: that which leaves the least in English.
    fn whole(&self, body: &str, work: &Work) -> Said {
        if let Ok(at) = self.plain.binary_search_by(|(english, _)| english.as_str().cmp(body)) {
            return Said { text: self.plain[at].1.clone(), left: Vec::new() };
        }
        let mut best = Said::nothing(body);
        if !work.spend() {
            return best;
        }
        // Several sentences are no `{a}, {b}`.
        let fewest = if body.contains(". ") { FEW_LETTERS } else { 0 };
        for sentence in &self.sentences {
            if best.cost() == 0 || sentence.letters < fewest {
                break;
            }
            let below = if sentence.letters < FEW_LETTERS { 1 } else { best.cost() };
            best.or_better(self.filled(sentence, body, work, below));
        }
        best
    }

    /// The text as one sentence after another, as many at a time as one entry holds.
    fn in_turn(&self, body: &str, stops: &[char], work: &Work) -> Option<Said> {
        let mut ends: Vec<usize> = body
            .match_indices(stops)
            .map(|(at, _)| at + 1)
            .filter(|end| body[*end..].starts_with(' '))
            .collect();
        if ends.is_empty() {
            return None;
        }
        ends.push(body.len());
        let mut said = Said::default();
        let (mut from, mut next) = (0, 0);
        while next < ends.len() {
            let together = (next + 1..ends.len()).rev().find_map(|last| {
                let found = self.whole(body[from..ends[last]].trim_start(), work);
                (found.cost() == 0).then_some((last, found))
            });
            let (last, part) = match together {
                Some((last, found)) => (last, found),
                None => (next, self.phrase(body[from..ends[next]].trim_start(), work)),
            };
            if from > 0 {
                said.text.push(' ');
            }
            said.text += &part.text;
            said.left.extend(part.left);
            (from, next) = (ends[last], last + 1);
        }
        Some(said)
    }

    /// What stands before a colon or another stop at the end.
    fn before_stop(&self, body: &str, work: &Work) -> Option<Said> {
        let words = body.strip_suffix([':', '.', ';', ','])?;
        let mut said = self.phrase(words, work);
        said.text += &body[words.len()..];
        Some(said)
    }

    /// An amount: numbers, then words, or words, then numbers.
    fn with_number(&self, body: &str, work: &Work) -> Option<Said> {
        let no_word = |sign: char| !sign.is_alphabetic();
        let number = |text: &str| text.contains(char::is_numeric);
        let before = &body[..body.len() - body.trim_start_matches(no_word).len()];
        let after = &body[body.trim_end_matches(no_word).len()..];
        let (from, to) = if number(before) {
            (before.len(), body.len())
        } else if number(after) {
            (0, body.len() - after.len())
        } else {
            return None;
        };
        let mut said = self.phrase(&body[from..to], work);
        said.text = format!("{}{}{}", &body[..from], said.text, &body[to..]);
        Some(said)
    }

    /// The text as this sentence with its holes filled, if less than `below` is left in English.
    fn filled(&self, sentence: &Sentence, body: &str, work: &Work, below: usize) -> Option<Said> {
        let mut best: Option<Said> = None;
        let mut tries = 0;
        sentence.fillings(body, &mut |holes| {
            // Where the first holes are still open, only the steps are counted.
            let Some(holes) = holes else { return !work.spend() };
            tries += 1;
            let least = best.as_ref().map_or(below, Said::cost);
            let mut all = Said::default();
            let mut fillings = Vec::new();
            for (at, hole) in holes.iter().enumerate() {
                if sentence.is_own_words(at) {
                    fillings.push((*hole).to_string());
                    continue;
                }
                let said = self.phrase(hole, work);
                all.left.extend(said.left);
                fillings.push(said.text);
                if all.cost() >= least {
                    return tries >= MOST_TRIES;
                }
            }
            all.text = sentence.filled(&fillings);
            let done = all.cost() == 0;
            best = Some(all);
            done || tries >= MOST_TRIES
        });
        best
    }
}

/// The text with a small first letter, if it has a capital one.
fn small(text: &str) -> Option<String> {
    let first = text.chars().next().filter(|sign| sign.is_uppercase())?;
    Some(first.to_lowercase().chain(text.chars().skip(1)).collect())
}

/// The text with a capital first letter.
fn capital(text: &str) -> String {
    let mut signs = text.chars();
    signs.next().map(|first| first.to_uppercase().chain(signs).collect()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    const PO: &str = r#"
msgid "potassium"
msgstr "potasio"

msgid "organic matter"
msgstr "materia orgánica"

msgid "low"
msgstr "bajo"

msgid "mg/kg"
msgstr "mg/kg"

msgid "{what} is {level}."
msgstr "{what}: {level}."

msgid "Organic matter is low."
msgstr "Falta materia orgánica."

msgid "Test again."
msgstr "Analice otra vez."

msgid "{a} and {b}"
msgstr "{a} y {b}"

msgid "{#day} May {#year}"
msgstr "{#day} de mayo de {#year}"

msgid "May {#year}"
msgstr "mayo de {#year}"

msgid "By {day}"
msgstr "Hasta el {day}"

msgid "{a} – {b}"
msgstr "{a} – {b}"

msgid "Saved as “{name}”."
msgstr "Guardado como “{name}”."
"#;

    fn said(text: &str) -> Said {
        Catalogue::read(PO, ',').unwrap().say(text)
    }

    #[track_caller]
    fn check(english: &str, spanish: &str) {
        assert_eq!(said(english), Said { text: spanish.into(), left: Vec::new() });
    }

    #[test]
    fn a_phrase_is_found_whole_in_a_sentence_and_after_a_number() {
        check("potassium", "potasio");
        check("Potassium is low.", "Potasio: bajo.");
        check(" 12.5 (8–20)\u{a0}mg/kg", " 12,5 (8–20)\u{a0}mg/kg");
        check("6.4", "6,4");
        check("potassium 0.5 (¾)", "potasio 0,5 (¾)");
        check("2 (potassium 3)", "2 (potasio 3)");
        check("4 May 2027", "4 de mayo de 2027");
        check("By 2–4 May 2027", "Hasta el 2–4 de mayo de 2027");
        check("4 May 2027 – 9 May 2028", "4 de mayo de 2027 – 9 de mayo de 2028");
        check("", "");
    }

    #[test]
    fn a_whole_text_comes_before_one_with_holes_and_sentences_follow_each_other() {
        check("Organic matter is low.", "Falta materia orgánica.");
        check("Potassium is low. Test again.", "Potasio: bajo. Analice otra vez.");
        check("potassium and organic matter", "potasio y materia orgánica");
        check(
            "potassium 9 %, organic matter 8 %, low 7 %, potassium",
            "potasio 9 %, materia orgánica 8 %, bajo 7 %, potasio",
        );
    }

    #[test]
    fn the_persons_own_words_stay() {
        check("Saved as “low and dry”.", "Guardado como “low and dry”.");
        check("“low” and potassium", "“low” y potasio");
    }

    #[test]
    fn what_is_missing_stays_and_is_told() {
        let found = said("Potassium is plenty. Test again.");
        assert_eq!(found.text, "Potassium is plenty. Analice otra vez.");
        assert_eq!(found.left, ["Potassium is plenty"]);
    }

    /// Both took minutes once, and the first overran the stack.
    #[test]
    fn a_text_that_fits_a_little_everywhere_takes_no_more_steps_than_a_text_may() {
        for text in ["a. ", "aq. ", "a: a, ", "Potassium and ", "low is ", "x and y. "] {
            for times in [10, 100, 300, 30_000] {
                let long = text.repeat(times);
                let found = said(&long);
                assert!(!found.left.is_empty());
                assert!(times < 30_000 || found.text == long, "{text} was changed");
            }
        }
    }

    #[test]
    fn a_country_with_a_point_keeps_it() {
        assert_eq!(Catalogue::read(PO, '.').unwrap().say("6.4 mg/kg").text, "6.4 mg/kg");
    }
}
