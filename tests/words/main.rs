//! The languages of the page: that each is whole, sound and plain.
#![allow(missing_docs, reason = "each test's name says what it checks")]

mod plain;
mod said;
mod trials;

use std::collections::BTreeSet;
use std::fs;

use emberloam_engine::ranges::{Scheme, schemes};
use emberloam_engine::sources::all_sources;
use emberloam_language::{Catalogue, Entry, entries};
use emberloam_tests::project;
use emberloam_tests::prose::literals;

/// How many gardens are asked about.
const GARDENS: usize = 700;

/// Every language but English: its tag and its catalogue.
fn languages() -> Vec<(String, String)> {
    let folder = project().join("public/words");
    let mut all: Vec<(String, String)> = fs::read_dir(folder)
        .expect("the catalogues")
        .map(|entry| entry.expect("a catalogue").path())
        .map(|path| {
            let tag = path.file_stem().expect("a tag").to_string_lossy().into_owned();
            (tag, fs::read_to_string(&path).expect("a text"))
        })
        .collect();
    all.sort();
    assert!(!all.is_empty(), "no catalogue in public/words");
    all
}

fn entries_of(po: &str) -> Vec<Entry> {
    entries(po).unwrap_or_else(|damage| panic!("{damage}"))
}

fn catalogue(po: &str) -> Catalogue {
    Catalogue::read(po, '.').unwrap_or_else(|damage| panic!("{damage}"))
}

/// Words that stay as they are: what the reports of the corpus and our gardens
/// name themselves, and what their laboratories print in place of a number.
const OWN_WORDS: [&str; 5] =
    ["Kale", "NONE", "ND (u)", "Chair, Colour, Price", "very-low = 3 | low = 2 | sufficient"];

#[test]
fn nothing_that_the_engine_says_is_left_in_english() {
    let said = said::everything(GARDENS);
    assert!(said.len() > 10_000, "only {} texts were said", said.len());
    // Publications keep their titles. The longest go first: one title may hold another.
    let mut titles: Vec<&str> = all_sources()
        .flat_map(|source| [source.title(), source.place()])
        .filter(|title| title.len() > 3)
        .collect();
    titles.sort_by_key(|title| std::cmp::Reverse(title.len()));
    let foreign = foreign_words();
    assert!(foreign.contains("sehr niedrig"), "no scheme is in another language");
    for (tag, po) in languages() {
        let catalogue = catalogue(&po);
        let mut missing: BTreeSet<String> = BTreeSet::new();
        for text in &said {
            let text = titles.iter().fold(text.clone(), |text, title| text.replace(title, "1"));
            for part in catalogue.say(&text).left {
                let stays = OWN_WORDS.contains(&part.as_str()) || foreign.contains(part.as_str());
                if !stays && !is_formula(&part) {
                    missing.insert(format!("{part:?} of {text:?}"));
                }
            }
        }
        let list: Vec<&String> = missing.iter().take(40).collect();
        assert!(missing.is_empty(), "{tag} lacks {}: {list:#?}", missing.len());
    }
}

/// Regions whose guides are in English, by the start of their names.
const IN_ENGLISH: [&str; 11] = [
    "anywhere",
    "us-",
    "canada-",
    "uk",
    "scotland",
    "ireland",
    "australia",
    "new-zealand",
    "india",
    "south-africa",
    "east-africa",
];

/// The words of schemes in another language, which stay as their publication prints them.
fn foreign_words() -> BTreeSet<&'static str> {
    let in_english =
        |scheme: &&Scheme| IN_ENGLISH.iter().any(|start| scheme.region.starts_with(start));
    let words = |schemes: Vec<&'static Scheme>| -> BTreeSet<&'static str> {
        schemes.iter().flat_map(|scheme| scheme.steps()).map(|step| step.word).collect()
    };
    let (english, foreign): (Vec<_>, Vec<_>) = schemes().partition(in_english);
    let english = words(english);
    words(foreign).into_iter().filter(|word| !english.contains(word)).collect()
}

/// Whether it is an equation of chemical signs, which no language changes:
/// `K2O × 0.8302 = K`.
fn is_formula(text: &str) -> bool {
    let short = |part: &str| part.chars().filter(|sign| sign.is_alphabetic()).count() <= 3;
    text.contains(" = ") && text.split_whitespace().all(short)
}

/// A text with `1` in its holes.
fn with_holes_filled(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        let Some((_, after)) = after.split_once('}') else { break };
        out += before;
        out.push('1');
        rest = after;
    }
    out + rest
}

#[test]
fn nothing_in_the_pages_own_words_is_left_in_english() {
    for (tag, po) in languages() {
        let catalogue = catalogue(&po);
        let mut missing = Vec::new();
        for file in ["words.rs", "words/keeping.rs", "words/trial.rs", "help.rs"] {
            let file = format!("app/src/{file}");
            let source = fs::read_to_string(project().join(&file)).expect("the page's words");
            let texts = literals(&source);
            assert!(texts.len() > 40, "{file}: only {} texts found", texts.len());
            for text in texts {
                let is_name = !text.contains(' ') && text == text.to_lowercase();
                let filled = with_holes_filled(&text);
                if !is_name && !catalogue.say(&filled).left.is_empty() {
                    missing.push(format!("{file}: {text:?}"));
                }
            }
        }
        assert!(missing.is_empty(), "{tag} lacks {missing:#?}");
    }
}

#[test]
fn nothing_in_the_scripts_is_left_in_english() {
    for (tag, po) in languages() {
        let catalogue = catalogue(&po);
        let mut missing = Vec::new();
        let mut checked = 0;
        for file in ["boot.js", "files.js"] {
            let script = fs::read_to_string(project().join("public").join(file)).expect("a script");
            // Long texts are put together of pieces.
            let script = script.replace("\" +\n        \"", "");
            for text in literals(&script) {
                let is_sentence = text.ends_with('.') && text.matches(' ').count() > 3;
                checked += usize::from(is_sentence);
                if is_sentence && !catalogue.say(&text).left.is_empty() {
                    missing.push(format!("{file}: {text:?}"));
                }
            }
        }
        assert!(checked >= 6, "only {checked} sentences found in the scripts");
        assert!(missing.is_empty(), "{tag} lacks {missing:#?}");
    }
}

/// `language.js` looks for them as whole entries: the program that could say more isn't there yet.
#[test]
fn what_is_shown_before_the_program_comes_stands_in_every_catalogue() {
    let page = fs::read_to_string(project().join("public/index.html")).expect("the page");
    let (_, frame) = page.split_once("<div id=\"ground\"").expect("the frame");
    let texts: Vec<&str> = frame
        .split('>')
        .filter_map(|part| Some(part.split_once('<')?.0.trim()))
        .filter(|text| !text.is_empty())
        .collect();
    assert!(texts.len() >= 5, "only {texts:?} found");
    for (tag, po) in languages() {
        let missing: Vec<_> = texts
            .iter()
            .filter(|text| {
                **text != "Emberloam" && !po.contains(&format!("msgid {text:?}\nmsgstr \""))
            })
            .collect();
        assert!(missing.is_empty(), "{tag} lacks {missing:?}");
    }
}

/// The names of the holes of a text, in order.
fn holes(text: &str) -> Vec<&str> {
    let mut all: Vec<&str> =
        text.split('{').skip(1).filter_map(|part| Some(part.split_once('}')?.0)).collect();
    all.sort_unstable();
    all
}

#[test]
fn every_translation_keeps_its_holes_and_how_it_ends() {
    for (tag, po) in languages() {
        let mut wrong = Vec::new();
        let mut seen = BTreeSet::new();
        for Entry { english, said } in entries_of(&po) {
            if holes(&english) != holes(&said) {
                wrong.push(format!("holes: {english:?} {said:?}"));
            }
            if english.contains("}{") {
                wrong.push(format!("nothing between two holes: {english:?}"));
            }
            if !seen.insert(english.clone()) {
                wrong.push(format!("twice: {english:?}"));
            }
            let end = |text: &str| text.chars().last().filter(|sign| ".:,;?!".contains(*sign));
            if said.trim() != said || end(&english) != end(&said) {
                wrong.push(format!("end: {english:?} {said:?}"));
            }
            if english.contains('\u{a0}') != said.contains('\u{a0}') {
                wrong.push(format!("space that doesn't break: {english:?} {said:?}"));
            }
        }
        assert!(wrong.is_empty(), "{tag}: {wrong:#?}");
    }
}

/// Every source that says something, as one text without line ends within texts.
fn sources() -> String {
    let mut all = String::new();
    let mut folders = ["engine/src", "engine/facts", "engine/files/src", "app/src", "public"]
        .map(|folder| project().join(folder))
        .to_vec();
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("a folder of sources") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|end| end == "rs" || end == "js") {
                all += &literals(&fs::read_to_string(&path).expect("a source")).join("\n");
                all.push('\n');
                // JavaScript's texts with holes stand in other quotes.
                if path.extension().is_some_and(|end| end == "js") {
                    all += &fs::read_to_string(&path)
                        .expect("a source")
                        .replace("\" +\n        \"", "");
                }
            } else if path.extension().is_some_and(|end| end == "csv") {
                let mut facts = csv::ReaderBuilder::new().flexible(true).from_path(&path);
                for row in facts.iter_mut().flat_map(csv::Reader::records) {
                    let row = row.expect("a row of facts");
                    row.iter().for_each(|cell| all += &format!("{cell}\n"));
                }
            } else if path.extension().is_some_and(|end| end == "html") {
                all += &fs::read_to_string(&path).expect("a page").replace("&#10;", "\n");
            }
        }
    }
    all
}

#[test]
fn no_translation_is_idle() {
    let sources = sources();
    for (tag, po) in languages() {
        let mut idle = Vec::new();
        for Entry { english, .. } in entries_of(&po) {
            let filled = english.replace('{', "}{");
            let longest = filled
                .split('}')
                .filter(|piece| !piece.starts_with('{'))
                .max_by_key(|piece| piece.len())
                .unwrap_or_default();
            // What is put together of several texts has at least its longest words there.
            let found = |text: &str| sources.contains(text);
            let by_halves = || {
                let sentences: Vec<&str> = longest.split_inclusive(['.', ':', ';']).collect();
                sentences.iter().any(|part| part.trim().len() > 8 && found(part.trim()))
            };
            if !found(longest.trim()) && !by_halves() {
                idle.push(english);
            }
        }
        assert!(idle.is_empty(), "{tag}: nothing says {idle:#?}");
    }
}

/// Source: polib, a reader of PO files that isn't ours.
#[test]
fn another_reader_of_the_format_reads_the_same() {
    for (tag, po) in languages() {
        let path = project().join(format!("public/words/{tag}.po"));
        let theirs = polib::po_file::parse(&path).expect("a catalogue in the PO format");
        assert_eq!(theirs.metadata.language, tag);
        let theirs: BTreeSet<(String, String)> = theirs
            .messages()
            .map(|message| {
                (message.msgid().to_owned(), message.msgstr().expect("one text").to_owned())
            })
            .collect();
        let ours: BTreeSet<(String, String)> =
            entries_of(&po).into_iter().map(|entry| (entry.english, entry.said)).collect();
        assert_eq!(ours, theirs);
    }
}
