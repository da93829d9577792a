//! The whole shelf as one file, and such a file brought in beside what is
//! there: nothing on the shelf is written over.

use serde_json::{Map, Value, json};

use crate::saved::entry::{Entry, Held};
use crate::words;

/// The key by which a file is known as a whole shelf; its value is the
/// version of this shape.
const SHELF: &str = "emberloam-shelf";
const SHELF_VERSION: u64 = 1;

/// What lies on the shelf: id and JSON.
pub type Shelved = (String, String);

/// The shelf as one file. What a newer program put there goes out as it is;
/// what is no JSON at all is left out.
pub fn pack(shelved: &[Shelved], now: &str) -> String {
    let entries: Vec<Value> =
        shelved.iter().filter_map(|(_, json)| serde_json::from_str(json).ok()).collect();
    json!({ SHELF: SHELF_VERSION, "saved": now, "entries": entries }).to_string()
}

/// Why a file can't be brought in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It is no JSON: damaged, or something else.
    Damaged,
    /// It is whole, and no shelf.
    Other,
    /// It was saved by a newer program.
    Newer,
    /// One of its entries, counted from 1, is damaged.
    Entry(usize),
}

impl Refused {
    /// What to tell the reader.
    pub fn words(&self) -> String {
        match self {
            Refused::Damaged => words::keeping::FILE_DAMAGED.into(),
            Refused::Other => words::keeping::FILE_OTHER.into(),
            Refused::Newer => words::keeping::FILE_NEWER.into(),
            Refused::Entry(number) => words::keeping::file_entry_damaged(*number),
        }
    }
}

/// Reads a file: a whole shelf, or a single saved report. Every entry is
/// looked at first: a file is brought in whole or not at all.
///
/// # Errors
/// When it is none, or damaged, or newer.
pub fn unpack(text: &str) -> Result<Vec<Value>, Refused> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let whole: Map<String, Value> = match serde_json::from_str(text) {
        Ok(Value::Object(whole)) => whole,
        Ok(_) => return Err(Refused::Other),
        Err(_) => return Err(Refused::Damaged),
    };
    let version = whole.get(SHELF).and_then(Value::as_u64);
    let entries = match version {
        Some(SHELF_VERSION) => match whole.get("entries") {
            Some(Value::Array(entries)) => entries.clone(),
            _ => return Err(Refused::Damaged),
        },
        Some(version) if version > SHELF_VERSION => return Err(Refused::Newer),
        _ if whole.contains_key("emberloam") => vec![Value::Object(whole)],
        _ => return Err(Refused::Other),
    };
    for (at, entry) in entries.iter().enumerate() {
        let id = entry["id"].as_str();
        match Held::from_value(entry) {
            Held::Damaged => return Err(Refused::Entry(at + 1)),
            // Without an id there is no place to put it.
            Held::Newer(_) if id.is_none() => return Err(Refused::Newer),
            _ => {}
        }
    }
    Ok(entries)
}

/// What bringing in a file does.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Merged {
    /// What is put on the shelf: id and JSON.
    pub put: Vec<Shelved>,
    /// How many were there already.
    pub same: usize,
    /// How many differ from the one there: both are kept.
    pub both: usize,
}

/// Brings entries in beside those there are, by their ids. One that differs
/// from the one there gets an id of its own and a name that says so.
pub fn merge(
    shelved: &[Shelved],
    entries: Vec<Value>,
    fresh: &mut dyn FnMut() -> String,
) -> Merged {
    let mut merged = Merged::default();
    for value in entries {
        let id = value["id"].as_str().unwrap_or_default().to_string();
        let there = shelved.iter().chain(&merged.put);
        let mine = there.clone().find(|(known, _)| *known == id).map(|(_, json)| json);
        let entry = match Held::from_value(&value) {
            Held::Entry(entry) => entry,
            // Of a newer program: put in its place as it is, or left out when the place is taken.
            _ => {
                match mine {
                    None => merged.put.push((id, value.to_string())),
                    Some(json) if serde_json::from_str(json).ok().as_ref() == Some(&value) => {
                        merged.same += 1;
                    }
                    Some(_) => merged.put.push((fresh(), value.to_string())),
                }
                continue;
            }
        };
        let known = |json: &String| match Held::read(json) {
            Held::Entry(known) => Some(known),
            _ => None,
        };
        let same = |known: &Entry| known.says_the_same(&entry);
        if there.clone().filter_map(|(_, json)| known(json)).any(|known| {
            same(&known)
                && (known.id == entry.id && known.name == entry.name
                    || known.name == words::keeping::from_the_file(&entry.name)
                    || entry.id.is_empty())
        }) {
            merged.same += 1;
        } else if mine.is_none() && !entry.id.is_empty() {
            merged.put.push((id, entry.to_json()));
        } else {
            let conflict = mine.is_some();
            merged.both += usize::from(conflict);
            let mut beside = Entry { id: fresh(), ..entry };
            if conflict {
                beside.name = words::keeping::from_the_file(&beside.name);
            }
            beside.revision = beside.revision.max(1);
            merged.put.push((beside.id.clone(), beside.to_json()));
        }
    }
    merged
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::saved::entry::tests::an_entry;

    fn shelved(entries: &[Entry]) -> Vec<Shelved> {
        entries.iter().map(|entry| (entry.id.clone(), entry.to_json())).collect()
    }

    fn counter() -> impl FnMut() -> String {
        let mut count = 0;
        move || {
            count += 1;
            format!("fresh-{count}")
        }
    }

    fn bring_in(shelf: &mut Vec<Shelved>, file: &str, fresh: &mut dyn FnMut() -> String) -> Merged {
        let merged = merge(shelf, unpack(file).unwrap(), fresh);
        for (id, json) in &merged.put {
            assert!(shelf.iter().all(|(known, _)| known != id), "{id} is written over");
            shelf.push((id.clone(), json.clone()));
        }
        merged
    }

    #[test]
    fn a_shelf_packed_and_brought_in_elsewhere_is_the_same() {
        let mine = shelved(&[an_entry("a", "Back", "pH 6"), an_entry("b", "Front", "pH 7")]);
        let file = pack(&mine, "now");
        let mut other = Vec::new();
        let merged = bring_in(&mut other, &file, &mut counter());
        assert_eq!((other, merged.same, merged.both), (mine, 0, 0));
    }

    #[test]
    fn an_entry_that_differs_is_kept_beside_and_brought_in_once() {
        let theirs = shelved(&[an_entry("a", "Back", "pH 7"), an_entry("b", "Front", "pH 5")]);
        let file = pack(&theirs, "now");
        let mut mine = shelved(&[an_entry("a", "Back", "pH 6")]);
        let mut fresh = counter();
        let merged = bring_in(&mut mine, &file, &mut fresh);
        assert_eq!((merged.put.len(), merged.same, merged.both), (2, 0, 1));
        let texts: Vec<String> = mine
            .iter()
            .filter_map(|(_, json)| match Held::read(json) {
                Held::Entry(entry) => Some(entry.text),
                _ => None,
            })
            .collect();
        assert_eq!(texts, ["pH 6", "pH 7", "pH 5"]);
        let again = bring_in(&mut mine, &file, &mut fresh);
        assert_eq!((again.put.len(), again.same), (0, 2));
    }

    #[test]
    fn what_a_newer_program_put_there_goes_out_and_in_as_it_is() {
        let newer = r#"{"emberloam-entry":2,"id":"n","moon":"full"}"#.to_string();
        let file = pack(&[("n".into(), newer.clone())], "now");
        let mut other = Vec::new();
        bring_in(&mut other, &file, &mut counter());
        assert_eq!(
            serde_json::from_str::<Value>(&other[0].1).unwrap(),
            serde_json::from_str::<Value>(&newer).unwrap()
        );
        assert_eq!(bring_in(&mut other, &file, &mut counter()).same, 1);
    }

    #[test]
    fn a_single_saved_report_is_brought_in_once() {
        let file = r#"{"emberloam":1,"text":"pH 6"}"#;
        let mut shelf = Vec::new();
        let mut fresh = counter();
        assert_eq!(bring_in(&mut shelf, file, &mut fresh).put.len(), 1);
        assert_eq!(shelf[0].0, "fresh-1");
        assert_eq!(bring_in(&mut shelf, file, &mut fresh).same, 1);
    }

    #[test]
    fn a_file_that_is_none_says_what_is_wrong() {
        let whole = pack(&shelved(&[an_entry("a", "Back", "pH 6")]), "now");
        assert_eq!(unpack(&whole[..whole.len() - 3]), Err(Refused::Damaged));
        assert_eq!(unpack("pH 6.5"), Err(Refused::Damaged));
        assert_eq!(unpack("[]"), Err(Refused::Other));
        assert_eq!(unpack(r#"{"Events":[]}"#), Err(Refused::Other));
        assert_eq!(unpack(r#"{"emberloam-shelf":2,"entries":[]}"#), Err(Refused::Newer));
        assert_eq!(unpack(r#"{"emberloam-shelf":1}"#), Err(Refused::Damaged));
        assert_eq!(
            unpack(&whole.replace("\"revision\":1", "\"revision\":[]")),
            Err(Refused::Entry(1))
        );
        assert!(unpack(&format!("\u{feff}{whole}")).is_ok());
    }

    proptest! {
        #[test]
        fn any_text_is_unpacked_without_a_panic(text in "(?s).{0,300}") {
            let _ = unpack(&text);
        }

        #[test]
        fn no_merge_loses_a_text_or_writes_one_over(
            mine in proptest::collection::vec((0_u8..4, 0_u8..4), 0..6),
            theirs in proptest::collection::vec((0_u8..4, 0_u8..4), 0..6),
        ) {
            let entries = |all: &[(u8, u8)]| {
                let mut entries: Vec<Entry> = Vec::new();
                for (id, text) in all {
                    let id = format!("id-{id}");
                    if entries.iter().all(|entry| entry.id != id) {
                        entries.push(an_entry(&id, &id, &format!("text {text}")));
                    }
                }
                shelved(&entries)
            };
            let (mine, theirs) = (entries(&mine), entries(&theirs));
            let mut shelf = mine.clone();
            let file = pack(&theirs, "now");
            let mut fresh = counter();
            bring_in(&mut shelf, &file, &mut fresh);
            let text = |json: &str| serde_json::from_str::<Value>(json).unwrap()["text"].clone();
            prop_assert_eq!(&shelf[..mine.len()], &mine[..]);
            for (_, json) in &theirs {
                prop_assert!(shelf.iter().any(|(_, kept)| text(kept) == text(json)));
            }
            let before = shelf.len();
            bring_in(&mut shelf, &file, &mut fresh);
            prop_assert_eq!(shelf.len(), before, "brought in twice");
        }
    }
}
