//! A sentence with holes.

/// A sentence with holes, and the same in the other language.
#[derive(Clone, Debug)]
pub(crate) struct Sentence {
    /// What stands before, between and after the holes.
    between: Vec<String>,
    /// What may fill each hole.
    fits: Vec<Fits>,
    /// The other language: a piece of text, then a hole by its number, and so on.
    said: Vec<(String, Option<usize>)>,
    /// How many letters stand outside the holes: the more, the surer.
    pub(crate) letters: usize,
}

/// Takes the ways to fill the holes of a text; says when it has enough.
pub(crate) type Found<'f, 't> = dyn FnMut(Option<&[&'t str]>) -> bool + 'f;

/// What may fill a hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Fits {
    /// A phrase, which is said in its turn.
    Phrase,
    /// The person's own words: the hole stands in quotes, and its name doesn't
    /// begin with `!`.
    OwnWords,
    /// Numbers only: the hole's name begins with `#`.
    Number,
}

/// The pieces of a text with holes: text, then the name of the hole after it.
fn pieces(text: &str) -> Vec<(String, Option<String>)> {
    let mut all = Vec::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        let Some((name, after)) = after.split_once('}') else { break };
        all.push((before.to_string(), Some(name.to_string())));
        rest = after;
    }
    all.push((rest.to_string(), None));
    all
}

impl Sentence {
    /// Takes the sentence apart; `None` for a text without holes, for one with
    /// nothing between two holes, and for one whose translation has a hole that
    /// the English doesn't have.
    pub(crate) fn of(english: &str, said: &str) -> Option<Sentence> {
        let english = pieces(english);
        let names: Vec<&String> = english.iter().filter_map(|(_, name)| name.as_ref()).collect();
        if names.is_empty() {
            return None;
        }
        let number = |name: String| names.iter().position(|known| **known == name);
        let said = pieces(said)
            .into_iter()
            .map(|(text, name)| match name {
                Some(name) => number(name).map(|at| (text, Some(at))),
                None => Some((text, None)),
            })
            .collect::<Option<Vec<_>>>()?;
        let between: Vec<String> = english.iter().map(|(text, _)| text.clone()).collect();
        if between[1..between.len() - 1].iter().any(String::is_empty) {
            return None;
        }
        let fits = between
            .windows(2)
            .zip(&names)
            .map(|(around, name)| {
                if name.starts_with('#') {
                    Fits::Number
                } else if name.starts_with('!') {
                    Fits::Phrase
                } else if around[0].ends_with('“') && around[1].starts_with('”') {
                    Fits::OwnWords
                } else {
                    Fits::Phrase
                }
            })
            .collect();
        let letters = between
            .iter()
            .flat_map(|text| text.chars())
            .filter(|sign| sign.is_alphabetic())
            .count();
        Some(Sentence { between, fits, said, letters })
    }

    /// What the sentence begins with.
    pub(crate) fn start(&self) -> &str {
        &self.between[0]
    }

    /// Whether what fills this hole is the person's own words.
    pub(crate) fn is_own_words(&self, hole: usize) -> bool {
        self.fits[hole] == Fits::OwnWords
    }

    /// Calls `found` with each way to fill the holes so that this text comes
    /// out, shortest first, and with nothing for each step on the way, until it
    /// says that it has enough.
    pub(crate) fn fillings<'t>(&self, text: &'t str, found: &mut Found<'_, 't>) {
        let last = &self.between[self.between.len() - 1];
        let Some(rest) = text.strip_prefix(self.start()) else { return };
        let Some(rest) = rest.strip_suffix(last.as_str()) else { return };
        self.fill(rest, &mut Vec::new(), found);
    }

    fn fill<'t>(&self, rest: &'t str, holes: &mut Vec<&'t str>, found: &mut Found<'_, 't>) -> bool {
        if holes.len() + 1 == self.fits.len() {
            if !self.can_fill(holes.len(), rest) {
                return false;
            }
            holes.push(rest);
            let enough = found(Some(holes));
            holes.pop();
            return enough;
        }
        let next = self.between[holes.len() + 1].as_str();
        for (at, _) in rest.match_indices(next) {
            if found(None) {
                return true;
            }
            if self.can_fill(holes.len(), &rest[..at]) {
                holes.push(&rest[..at]);
                let enough = self.fill(&rest[at + next.len()..], holes, found);
                holes.pop();
                if enough {
                    return true;
                }
            }
        }
        false
    }

    /// Whether this may fill the hole. Nothing fills none.
    fn can_fill(&self, hole: usize, text: &str) -> bool {
        match self.fits[hole] {
            Fits::Number => text.contains(char::is_numeric) && !text.contains(char::is_alphabetic),
            Fits::Phrase | Fits::OwnWords => !text.trim().is_empty(),
        }
    }

    /// The sentence in the other language, with its holes filled.
    pub(crate) fn filled(&self, holes: &[String]) -> String {
        let mut out = String::new();
        for (text, hole) in &self.said {
            out += text;
            if let Some(filling) = hole.and_then(|at| holes.get(at)) {
                out += filling;
            }
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all<'t>(sentence: &Sentence, text: &'t str) -> Vec<Vec<&'t str>> {
        let mut found = Vec::new();
        sentence.fillings(text, &mut |holes| {
            found.extend(holes.map(<[&str]>::to_vec));
            false
        });
        found
    }

    #[test]
    fn holes_are_found_in_every_way_they_can_be() {
        let sentence = Sentence::of("{a} and {b}.", "{b} y {a}.").unwrap();
        assert_eq!(all(&sentence, "x and y and z."), [["x", "y and z"], ["x and y", "z"]]);
        assert!(all(&sentence, "x and .").is_empty());
        assert!(all(&sentence, "x and y").is_empty());
        assert_eq!(sentence.filled(&["uno".into(), "dos".into()]), "dos y uno.");
    }

    #[test]
    fn a_hole_for_numbers_takes_no_words() {
        let sentence = Sentence::of("{#day} May {#year}", "{#day} de mayo de {#year}").unwrap();
        assert_eq!(all(&sentence, "2–4 May 2027"), [["2–4", "2027"]]);
        assert!(all(&sentence, "2 May – 3 June 2027").is_empty());
    }

    #[test]
    fn a_text_without_holes_and_one_with_strange_holes_are_no_sentence() {
        assert!(Sentence::of("plain", "llano").is_none());
        assert!(Sentence::of("{a} b", "{c} d").is_none());
        assert!(Sentence::of("{a}{b} c", "{a}{b} d").is_none());
    }
}
