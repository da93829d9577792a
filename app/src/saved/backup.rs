//! The whole shelf as one file, and such a file brought in beside what is
//! there: nothing on the shelf is written over.

use serde_json::{Map, Value, json};

use crate::saved::entry::{Entry, Held};
use crate::words;

/// The key by which a file is known as a whole shelf; its value is the
/// version of this shape.
const SHELF: &str = "emberloam-shelf";
const SHELF_VERSION: u64 = 1;
/// The key of what can't be read, within it.
const UNREADABLE: &str = "unreadable";
/// The keys by which a saved report and a report saved as a file are known.
const ENTRY: &str = "emberloam-entry";
const FILE: &str = "emberloam";
/// How often the beginning of a report is looked for in a damaged file.
const MOST_TRIES: usize = 2_000;

/// What lies on the shelf: id and JSON.
pub type Shelved = (String, String);

/// The shelf as one file. What a newer program put there goes out as it is, and so does what
/// can't be read.
pub fn pack(shelved: &[Shelved], now: &str) -> String {
    let (mut entries, mut unreadable) = (Vec::new(), Vec::new());
    for (_, json) in shelved {
        match serde_json::from_str::<Value>(json) {
            Ok(entry) => entries.push(entry),
            Err(_) => unreadable.push(json),
        }
    }
    let mut file = json!({ SHELF: SHELF_VERSION, "saved": now, "entries": entries });
    if !unreadable.is_empty() {
        file[UNREADABLE] = json!(unreadable);
    }
    file.to_string()
}

/// Whether a file gives back all that lies on the shelf.
pub fn gives_back(file: &str, shelved: &[Shelved]) -> bool {
    let Ok(Unpacked { entries, unread }) = unpack(file) else { return false };
    let value = |json: &str| serde_json::from_str::<Value>(json).ok();
    shelved.iter().all(|(_, json)| match value(json) {
        Some(entry) => {
            entries.contains(&entry)
                || unread.iter().any(|u| value(&u.raw).as_ref() == Some(&entry))
        }
        None => unread.iter().any(|unread| unread.raw == *json),
    })
}

/// Why nothing of a file can be brought in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It is no JSON: damaged, or something else.
    Damaged,
    /// It is whole, and no shelf.
    Other,
    /// It was saved by a newer program, and nothing in it is known here.
    Newer,
}

impl Refused {
    /// What to tell the reader.
    pub fn words(&self) -> &'static str {
        match self {
            Refused::Damaged => words::keeping::FILE_DAMAGED,
            Refused::Other => words::keeping::FILE_OTHER,
            Refused::Newer => words::keeping::FILE_NEWER,
        }
    }
}

/// A piece of a file that can't be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// Which report of the file it is, counted from 1.
    pub number: usize,
    /// As it stands in the file.
    pub raw: String,
}

/// What a file holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Unpacked {
    /// What can be brought in: saved reports, also those of a newer program.
    pub entries: Vec<Value>,
    /// What can't be read.
    pub unread: Vec<Unread>,
}

impl Unpacked {
    fn take(&mut self, entry: Value) {
        let number = self.entries.len() + self.unread.len() + 1;
        match Held::from_value(&entry) {
            Held::Damaged => self.unread.push(Unread { number, raw: entry.to_string() }),
            _ => self.entries.push(entry),
        }
    }

    fn leave(&mut self, raw: &str) {
        let number = self.entries.len() + self.unread.len() + 1;
        self.unread.push(Unread { number, raw: raw.into() });
    }
}

/// Reads a file: a whole shelf, or a single saved report. What is sound in a damaged one, or in
/// one that was cut short, is read all the same.
///
/// # Errors
/// When it is none, or nothing in it is known.
pub fn unpack(text: &str) -> Result<Unpacked, Refused> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let whole: Map<String, Value> = match serde_json::from_str(text) {
        Ok(Value::Object(whole)) => whole,
        Ok(_) => return Err(Refused::Other),
        Err(_) => return salvage(text),
    };
    let mut unpacked = Unpacked::default();
    match whole.get(SHELF).and_then(Value::as_u64) {
        Some(version) => {
            let entries = whole.get("entries").and_then(Value::as_array);
            entries.into_iter().flatten().cloned().for_each(|entry| unpacked.take(entry));
            let unreadable = whole.get(UNREADABLE).and_then(Value::as_array);
            let unreadable = unreadable.into_iter().flatten().filter_map(Value::as_str);
            unreadable.for_each(|raw| unpacked.leave(raw));
            if version > SHELF_VERSION && unpacked.entries.is_empty() {
                return Err(Refused::Newer);
            }
            if entries.is_none() {
                return Err(Refused::Damaged);
            }
        }
        None if whole.contains_key(FILE) => unpacked.take(Value::Object(whole)),
        None => return Err(Refused::Other),
    }
    Ok(unpacked)
}

/// Reads report after report of a file that is no whole JSON.
fn salvage(text: &str) -> Result<Unpacked, Refused> {
    let ours = [SHELF, ENTRY, FILE].iter().any(|key| text.contains(&format!("\"{key}\"")));
    if !ours {
        return Err(Refused::Damaged);
    }
    let list = "\"entries\":[";
    let mut rest = text.find(list).map_or(text, |at| &text[at + list.len()..]);
    let mut unpacked = Unpacked::default();
    let mut tries = MOST_TRIES;
    loop {
        rest = rest.trim_start_matches([',', ' ', '\n', '\r', '\t']);
        if rest.is_empty() || rest.starts_with(']') {
            return Ok(unpacked);
        }
        if let Some((entry, after)) = next_value(rest) {
            unpacked.take(entry);
            rest = after;
            continue;
        }
        // On to where a report begins again.
        let mut at = 1;
        let next = loop {
            let found = rest.get(at..).and_then(|later| later.find(",{\""));
            let Some(found) = found.map(|found| at + found).filter(|_| tries > 0) else {
                break rest.len();
            };
            tries -= 1;
            let is_entry = |(value, _): (Value, &str)| value.get(ENTRY).is_some();
            if next_value(&rest[found + 1..]).is_some_and(is_entry) {
                break found;
            }
            at = found + 1;
        };
        unpacked.leave(&rest[..next]);
        rest = &rest[next..];
    }
}

/// The JSON that a text begins with, and what follows it.
fn next_value(text: &str) -> Option<(Value, &str)> {
    let mut values = serde_json::Deserializer::from_str(text).into_iter::<Value>();
    let value = values.next()?.ok()?;
    Some((value, &text[values.byte_offset()..]))
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
                    None if !id.is_empty() => merged.put.push((id, value.to_string())),
                    Some(json) if serde_json::from_str(json).ok().as_ref() == Some(&value) => {
                        merged.same += 1;
                    }
                    _ => merged.put.push((fresh(), value.to_string())),
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
        let merged = merge(shelf, unpack(file).unwrap().entries, fresh);
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
        let newer = r#"{"emberloam-entry":3,"id":"n","moon":"full"}"#.to_string();
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
        assert_eq!(unpack("pH 6.5"), Err(Refused::Damaged));
        assert_eq!(unpack("[]"), Err(Refused::Other));
        assert_eq!(unpack(r#"{"Events":[]}"#), Err(Refused::Other));
        assert_eq!(unpack(r#"{"emberloam-shelf":2,"entries":[]}"#), Err(Refused::Newer));
        assert_eq!(unpack(r#"{"emberloam-shelf":1}"#), Err(Refused::Damaged));
        assert!(unpack(&format!("\u{feff}{whole}")).is_ok());
    }

    #[test]
    fn what_is_sound_in_a_damaged_file_is_read_and_the_rest_is_shown() {
        let three = ["pH 6", "pH 7", "pH 8 \u{201c},{\u{201d}"];
        let three = [0, 1, 2].map(|at| an_entry(&format!("id-{at}"), "Bed", three[at]));
        let whole = pack(&shelved(&three), "now");
        let texts = |unpacked: &Unpacked| -> Vec<String> {
            unpacked.entries.iter().map(|e| e["text"].as_str().unwrap_or_default().into()).collect()
        };
        // One whose revision is none.
        let damaged = unpack(&whole.replacen("\"revision\":1", "\"revision\":[]", 1)).unwrap();
        assert_eq!(texts(&damaged), [three[1].text.clone(), three[2].text.clone()]);
        assert_eq!(damaged.unread[0].number, 1);
        assert!(damaged.unread[0].raw.contains("pH 6"));
        // A hole in the second.
        let second = whole.find("id-1").unwrap();
        let holed = format!("{}\"{}", &whole[..second], &whole[second + 9..]);
        let holed = unpack(&holed).unwrap();
        assert_eq!(texts(&holed), [three[0].text.clone(), three[2].text.clone()]);
        assert_eq!((holed.unread.len(), holed.unread[0].number), (1, 2));
        assert!(holed.unread[0].raw.contains("pH 7"));
        // Cut short anywhere: the reports before the cut are there, the rest is shown.
        for end in (0..whole.len()).filter(|end| whole.is_char_boundary(*end)) {
            let Ok(cut) = unpack(&whole[..end]) else { continue };
            let all = texts(&cut).concat()
                + &cut.unread.iter().map(|u| u.raw.as_str()).collect::<String>();
            for entry in &three {
                let stands = whole[..end].contains(&serde_json::to_string(&entry.text).unwrap());
                let seen = all.contains(&entry.text)
                    || cut.unread.iter().any(|u| u.raw.contains(&entry.id));
                assert!(!stands || seen, "cut at {end}: {} is lost", entry.id);
            }
        }
    }

    #[test]
    fn a_file_is_read_back_before_it_is_called_saved() {
        let mut mine = shelved(&[an_entry("a", "Back", "pH 6")]);
        mine.push(("d".into(), "{broken".into()));
        mine.push(("e".into(), r#"{"emberloam-entry":1,"id":"e"}"#.into()));
        mine.push(("n".into(), r#"{"emberloam-entry":9,"id":"n","moons":[1]}"#.into()));
        let file = pack(&mine, "now");
        assert!(gives_back(&file, &mine));
        assert!(!gives_back(&file.replace("pH 6", "pH 5"), &mine));
        assert!(!gives_back(&file.replace("{broken", "{brok"), &mine));
        assert!(!gives_back(&file[..file.len() / 2], &mine));
    }

    #[test]
    fn a_newer_file_gives_what_is_known_of_it() {
        let mine = shelved(&[an_entry("a", "Back", "pH 6")]);
        let newer = pack(&mine, "now").replace("\"emberloam-shelf\":1", "\"emberloam-shelf\":7");
        assert_eq!(unpack(&newer).unwrap().entries.len(), 1);
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
