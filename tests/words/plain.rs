//! Whether a gardener can read the other languages.

use emberloam_language::entries;
use emberloam_tests::prose::Prose;

/// The least ease of reading: below it a text is "somewhat difficult".
/// Source: Barrio-Cantalejo and others 2008, the INFLESZ scale (from memory).
const LEAST_EASE: f64 = 55.0;

/// The least ease of one text: below it only the learned read it.
/// Source: the same scale, "very difficult" (from memory).
const LEAST_OF_ONE: f64 = 40.0;

/// A text without the names of its holes.
fn without_holes(text: &str) -> String {
    let parts = text.split('{').map(|part| part.split_once('}').map_or(part, |(_, rest)| rest));
    parts.collect::<Vec<_>>().join(" ")
}

/// The syllables of a Spanish word: each run of vowels is one, but for two
/// strong vowels, or a stressed weak one beside another, which part.
/// Source: Real Academia Española, Ortografía, "hiatos y diptongos" (from memory).
fn syllables(word: &str) -> usize {
    let mut word = word.to_lowercase().replace("qu", "q");
    // Between a g and these, u is no vowel.
    for vowel in ["e", "i", "é", "í"] {
        word = word.replace(&format!("gu{vowel}"), &format!("g{vowel}"));
    }
    let mut count = 0;
    let mut before: Option<char> = None;
    for sign in word.chars() {
        let strong = "aeoáéó".contains(sign);
        let stressed_weak = "íú".contains(sign);
        if strong || stressed_weak || "iuü".contains(sign) {
            let parts = before.is_none_or(|before| {
                let both_strong = strong && "aeoáéó".contains(before);
                both_strong || stressed_weak || "íú".contains(before)
            });
            count += usize::from(parts);
            before = Some(sign);
        } else {
            before = None;
        }
    }
    count.max(1)
}

/// Source: Szigriszt-Pazos 1993, perspicuity = 206.835 − 62.3 × syllables in a
/// word − words in a sentence (from memory).
fn ease<'a>(texts: impl IntoIterator<Item = &'a str>) -> (f64, usize) {
    let Prose { sentences, words, syllables } = Prose::of(texts, &[], syllables);
    (206.835 - 62.3 * syllables / words - words / sentences, words as usize)
}

#[test]
fn syllables_are_counted_as_spanish_parts_them() {
    let words =
        ["suelo", "biocarbón", "nutrientes", "caoba", "maíz", "que", "guía", "agua", "abono"];
    assert_eq!(words.map(syllables), [2, 3, 3, 3, 2, 1, 2, 2, 3]);
}

#[test]
fn spanish_is_as_plain_as_a_newspaper_or_plainer() {
    let (_, po) = super::languages().into_iter().find(|(tag, _)| tag == "es").expect("Spanish");
    let all = entries(&po).expect("it can be read");
    // Labels of a word or two are no sentences.
    let said = all.iter().map(|entry| without_holes(&entry.said));
    let texts: Vec<String> = said.filter(|text| text.split_whitespace().count() >= 5).collect();
    let (found, words) = ease(texts.iter().map(String::as_str));
    println!("Spanish: ease {found:.1} over {words} words");
    assert!(words > 5_000, "only {words} words found");
    assert!(found >= LEAST_EASE, "ease {found:.1}");
    // A long name makes one text hard, but none is as hard as a thesis.
    let hard: Vec<(f64, &String)> = texts
        .iter()
        .map(|text| (ease([text.as_str()]), text))
        .filter(|((found, words), _)| *words >= 12 && *found < LEAST_OF_ONE)
        .map(|((found, _), text)| (found, text))
        .collect();
    assert!(hard.is_empty(), "{hard:#?}");
}
