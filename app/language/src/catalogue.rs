//! A language: its texts and how they are found.

use std::cell::RefCell;
use std::collections::BTreeMap;

use crate::decimal::marked;
use crate::po::{Damage, entries};
use crate::sentence::Sentence;

/// A sentence with fewer letters of its own, such as `{a} and {b}`, fits so much
/// that it only counts where all that fills it can be said.
const FEW_LETTERS: usize = 6;
/// How many ways to fill one sentence's holes are tried.
const MOST_TRIES: usize = 12;

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

/// What was said already while one text is put together.
type Known = RefCell<BTreeMap<String, Said>>;

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

    /// The text in the other language.
    pub fn say(&self, text: &str) -> Said {
        let mut said = self.phrase(text, &Known::default());
        if self.mark != '.' {
            said.text = marked(&said.text, self.mark);
        }
        said
    }

    /// A phrase with the blanks around it.
    fn phrase(&self, text: &str, known: &Known) -> Said {
        let body = text.trim_matches([' ', '\n']);
        // What stands in quotes is the person's own.
        let quoted = body.strip_prefix('“').and_then(|inside| inside.strip_suffix('”'));
        if !body.chars().any(char::is_alphabetic) || quoted.is_some_and(|own| !own.contains('”'))
        {
            return Said { text: text.into(), left: Vec::new() };
        }
        let mut said = self.body(body, known);
        if said.cost() > 0 {
            // A phrase at the head of a line or a sentence has a capital it may not have elsewhere.
            if let Some(lower) = small(body) {
                let other = self.body(&lower, known);
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

    fn body(&self, body: &str, known: &Known) -> Said {
        if let Ok(at) = self.plain.binary_search_by(|(english, _)| english.as_str().cmp(body)) {
            return Said { text: self.plain[at].1.clone(), left: Vec::new() };
        }
        if let Some(said) = known.borrow().get(body) {
            return said.clone();
        }
        let mut best = Said { text: body.into(), left: vec![body.into()] };
        best.or_better(self.by_sentences(body, &['.', '?', '!'], known));
        for sentence in &self.sentences {
            if best.cost() == 0 {
                break;
            }
            let below = if sentence.letters < FEW_LETTERS { 1 } else { best.cost() };
            best.or_better(self.filled(sentence, body, known, below));
        }
        if best.cost() > 0 {
            best.or_better(self.by_sentences(body, &['.', '?', '!', ':'], known));
        }
        // Last: a number may belong to what stands before or after it, as in a date.
        if best.cost() > 0 {
            best.or_better(self.with_number(body, known));
        }
        if best.cost() > 0 {
            best.or_better(self.before_stop(body, known));
        }
        known.borrow_mut().insert(body.into(), best.clone());
        best
    }

    /// The text as one sentence after another; the longest beginning first.
    fn by_sentences(&self, body: &str, stops: &[char], known: &Known) -> Option<Said> {
        let mut best: Option<Said> = None;
        for (end, _) in body.rmatch_indices(stops) {
            let (first, rest) = body.split_at(end + 1);
            if !rest.starts_with(' ') || rest.trim().is_empty() {
                continue;
            }
            let least = best.as_ref().map_or(body.len(), Said::cost);
            let mut first = self.phrase(first, known);
            if first.cost() >= least {
                continue;
            }
            let rest = self.phrase(rest, known);
            first.text += &rest.text;
            first.left.extend(rest.left);
            let cost = first.cost();
            if cost < least {
                best = Some(first);
            }
            if cost == 0 {
                break;
            }
        }
        best
    }

    /// What stands before a colon or another stop at the end.
    fn before_stop(&self, body: &str, known: &Known) -> Option<Said> {
        let words = body.strip_suffix([':', '.', ';', ','])?;
        let mut said = self.phrase(words, known);
        said.text += &body[words.len()..];
        Some(said)
    }

    /// An amount: numbers, then words, or words, then numbers.
    fn with_number(&self, body: &str, known: &Known) -> Option<Said> {
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
        let mut said = self.phrase(&body[from..to], known);
        said.text = format!("{}{}{}", &body[..from], said.text, &body[to..]);
        Some(said)
    }

    /// The text as this sentence with its holes filled, if less than `below` is left in English.
    fn filled(&self, sentence: &Sentence, body: &str, known: &Known, below: usize) -> Option<Said> {
        let mut best: Option<Said> = None;
        let mut tries = 0;
        sentence.fillings(body, &mut |holes| {
            tries += 1;
            let least = best.as_ref().map_or(below, Said::cost);
            let mut all = Said::default();
            let mut fillings = Vec::new();
            for (at, hole) in holes.iter().enumerate() {
                if sentence.is_own_words(at) {
                    fillings.push((*hole).to_string());
                    continue;
                }
                let said = self.phrase(hole, known);
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

    #[test]
    fn a_country_with_a_point_keeps_it() {
        assert_eq!(Catalogue::read(PO, '.').unwrap().say("6.4 mg/kg").text, "6.4 mg/kg");
    }
}
