//! A saved report, and what happens to it: saved, renamed, brought up from an
//! older shape. What it is kept in is the business of `database`.

use emberloam_engine::Case;
use emberloam_engine::case::CASE_VERSION;
use emberloam_engine::trial::TRIAL_VERSION;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use crate::origin::Opened;
use crate::share::answers;
use crate::store::Kept;
use crate::words;

/// The version of the shape of an entry that holds a report.
const ENTRY_VERSION: u64 = 1;
/// The same of one that holds a trial: programs before it leave it alone.
const TRIAL_ENTRY: u64 = 2;

/// A saved report, or a saved trial.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Entry {
    /// The version of this shape.
    pub emberloam_entry: u64,
    /// What it is known by; never shown.
    pub id: String,
    /// Its name.
    pub name: String,
    /// The bed or place it is of; empty when the samples have names of their own.
    #[serde(default)]
    pub place: String,
    /// When the soil was sampled, as `2027-04-20`; empty when nobody said.
    #[serde(default)]
    pub date: String,
    /// When it was first saved, as `2027-04-20T18:05:00Z`.
    pub created: String,
    /// When it was saved last.
    pub changed: String,
    /// How often it was saved. Who saves over another revision than the one
    /// they opened would undo another tab's work.
    pub revision: u64,
    /// The pasted text.
    pub text: String,
    /// The answers, without what nobody said.
    pub answers: Value,
    /// The trial, as its own JSON; none where this is a report.
    #[serde(default, skip_serializing_if = "Value::is_null")]
    pub trial: Value,
    /// What another version of the program put beside these; it is kept as it is.
    #[serde(flatten)]
    pub more: Map<String, Value>,
}

/// What a person names when saving.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Label {
    /// The name.
    pub name: String,
    /// The bed or place.
    pub place: String,
    /// When the soil was sampled.
    pub date: String,
}

/// What lies on the shelf, as far as this program can read it.
#[derive(Clone, Debug, PartialEq)]
#[allow(clippy::large_enum_variant, reason = "nearly all of them are entries")]
pub enum Held {
    /// A saved report.
    Entry(Entry),
    /// One of a newer program: named, and left alone.
    Newer(String),
    /// One that can't be read: left alone.
    Damaged,
}

impl Held {
    /// Reads an entry of any version; older ones are brought up.
    pub fn read(json: &str) -> Held {
        serde_json::from_str(json).map_or(Held::Damaged, |value| Held::from_value(&value))
    }

    /// The same from a JSON that is read already.
    pub fn from_value(value: &Value) -> Held {
        let name = || value["name"].as_str().unwrap_or_default().to_string();
        match value["emberloam-entry"].as_u64() {
            Some(version) if version > TRIAL_ENTRY => Held::Newer(name()),
            Some(TRIAL_ENTRY) if !value["trial"].is_object() => Held::Damaged,
            Some(ENTRY_VERSION | TRIAL_ENTRY) => {
                let trial = value["trial"]["version"].as_u64();
                if trial.is_some_and(|version| version > u64::from(TRIAL_VERSION)) {
                    return Held::Newer(name());
                }
                let case = value["answers"]["version"].as_u64();
                if case.is_some_and(|version| version > u64::from(CASE_VERSION)) {
                    return Held::Newer(name());
                }
                match serde_json::from_str::<Entry>(&value.to_string()) {
                    Ok(entry) if entry.kept().is_some() => Held::Entry(entry),
                    Ok(entry) if holds_what_is_new(&entry.answers) => Held::Newer(name()),
                    _ => Held::Damaged,
                }
            }
            _ => bring_up(value).map_or(Held::Damaged, Held::Entry),
        }
    }
}

/// Whether answers are none here only for a key that this program does not know.
fn holds_what_is_new(answers: &Value) -> bool {
    serde_json::from_str::<Case>(&answers.to_string())
        .is_err_and(|why| why.to_string().starts_with("unknown field"))
}

/// Brings up the shape before there was a shelf: a report saved as a file. It
/// gets its id when it is put on the shelf.
fn bring_up(value: &Value) -> Option<Entry> {
    if value["emberloam"].as_u64() != Some(1) {
        return None;
    }
    let entry = Entry {
        emberloam_entry: ENTRY_VERSION,
        id: String::new(),
        name: words::keeping::FROM_A_FILE.into(),
        place: String::new(),
        date: String::new(),
        created: String::new(),
        changed: String::new(),
        revision: 0,
        text: value["text"].as_str()?.into(),
        trial: Value::Null,
        answers: value.get("answers").cloned().unwrap_or_else(|| Value::Object(Default::default())),
        more: Map::new(),
    };
    entry.kept().is_some().then_some(entry)
}

impl Entry {
    /// A new entry.
    pub fn new(kept: &Kept, label: Label, id: String, now: &str) -> Entry {
        Entry {
            emberloam_entry: ENTRY_VERSION,
            id,
            name: label.name,
            place: label.place,
            date: label.date,
            created: now.into(),
            changed: now.into(),
            revision: 1,
            text: kept.text.clone(),
            answers: answers::sparse(&kept.answers),
            trial: Value::Null,
            more: Map::new(),
        }
    }

    /// The same with a trial in the place of a report.
    pub fn holding(self, trial: Value) -> Entry {
        Entry { emberloam_entry: TRIAL_ENTRY, trial, ..self }
    }

    /// Whether it is a trial.
    pub fn is_trial(&self) -> bool {
        !self.trial.is_null()
    }

    /// The report with its answers; `None` when the answers are none.
    pub fn kept(&self) -> Option<Kept> {
        let answers = answers::case(&self.answers)?;
        Some(Kept { text: self.text.clone(), answers, ..Kept::default() })
    }

    /// As it is kept.
    pub fn to_json(&self) -> String {
        // A struct of texts and JSON always has a JSON.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// As it was opened or saved now.
    pub fn opened(&self) -> Opened {
        Opened { id: self.id.clone(), revision: self.revision }
    }

    /// Whether it says the same as another one, whatever its id and however often saved.
    pub fn says_the_same(&self, other: &Entry) -> bool {
        self.text == other.text
            && self.answers == other.answers
            && self.trial == other.trial
            && self.place == other.place
            && self.date == other.date
    }

    /// Whether all words of `find` are in its name, place, date or text.
    pub fn matches(&self, find: &str) -> bool {
        let table = self.trial["text"].as_str().unwrap_or_default();
        let all = [&*self.name, &self.place, &self.date, &self.text, table].map(folded);
        folded(find).split_whitespace().all(|word| all.iter().any(|text| text.contains(word)))
    }
}

/// A text with small letters only.
fn folded(text: &str) -> String {
    text.chars().flat_map(char::to_lowercase).collect()
}

/// What became of a save.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It is on the shelf.
    Saved,
    /// Another tab had saved it meanwhile: that one stays, and this one
    /// stands beside it.
    BothKept,
}

/// What to put on the shelf, when `opened` was opened and `current` is what
/// lies there now in its place.
pub fn save(
    kept: &Kept,
    label: Label,
    opened: Option<&Opened>,
    current: Option<&str>,
    fresh: String,
    now: &str,
) -> (Entry, Outcome) {
    let Some(opened) = opened else {
        return (Entry::new(kept, label, fresh, now), Outcome::Saved);
    };
    match current.map(Held::read) {
        Some(Held::Entry(current)) if current.revision == opened.revision => {
            let mut entry = Entry::new(kept, label, current.id, now);
            entry.created = current.created;
            entry.more = current.more;
            entry.revision = current.revision + 1;
            (entry, Outcome::Saved)
        }
        Some(_) => {
            let name = words::keeping::another(&label.name);
            (Entry::new(kept, Label { name, ..label }, fresh, now), Outcome::BothKept)
        }
        // Deleted meanwhile: it is put back, as a revision that nobody has open.
        None => {
            let mut entry = Entry::new(kept, label, opened.id.clone(), now);
            entry.revision = opened.revision + 1;
            (entry, Outcome::Saved)
        }
    }
}

/// Sorts by date, the latest first; those without one by when they were saved.
pub fn by_date(entries: &mut [Entry]) {
    let when = |entry: &Entry| {
        let date = if entry.date.is_empty() { &entry.created } else { &entry.date };
        (date.get(..10).unwrap_or(date).to_string(), entry.created.clone())
    };
    entries.sort_by_key(|entry| std::cmp::Reverse(when(entry)));
}

#[cfg(test)]
pub mod tests {
    use proptest::prelude::*;
    use serde_json::json;

    use super::*;

    const NOW: &str = "2027-04-20T18:05:00Z";

    pub fn an_entry(id: &str, name: &str, text: &str) -> Entry {
        let kept = Kept { text: text.into(), ..Kept::default() };
        Entry::new(&kept, Label { name: name.into(), ..Label::default() }, id.into(), NOW)
    }

    fn kept(text: &str) -> Kept {
        Kept { text: text.into(), ..Kept::default() }
    }

    fn label(name: &str) -> Label {
        Label { name: name.into(), ..Label::default() }
    }

    #[test]
    fn what_is_put_on_the_shelf_comes_back() {
        let mut answers = Case { sample: 1, ..Case::default() };
        answers.bed.area_m2 = Some(12.0);
        let kept = Kept { text: "pH 6.5\n".into(), answers, ..Kept::default() };
        let entry = Entry::new(&kept, label("Back bed"), "a".into(), NOW);
        assert_eq!(Held::read(&entry.to_json()), Held::Entry(entry.clone()));
        assert_eq!(entry.kept(), Some(kept));
    }

    #[test]
    fn a_save_over_the_revision_that_was_opened_replaces_it() {
        let old = an_entry("a", "Back bed", "pH 6");
        let (new, outcome) = save(
            &kept("pH 7"),
            label("Back bed"),
            Some(&old.opened()),
            Some(&old.to_json()),
            "f".into(),
            "later",
        );
        assert_eq!(outcome, Outcome::Saved);
        assert_eq!((new.id.as_str(), new.revision, new.text.as_str()), ("a", 2, "pH 7"));
        assert_eq!((new.created.as_str(), new.changed.as_str()), (NOW, "later"));
    }

    #[test]
    fn a_save_over_another_tabs_work_keeps_both() {
        let old = an_entry("a", "Back bed", "pH 6");
        let mut newer = old.clone();
        newer.revision = 2;
        let unreadable = r#"{"emberloam-entry":9}"#.to_string();
        for current in [newer.to_json(), unreadable, "{".into()] {
            let (new, outcome) = save(
                &kept("pH 7"),
                label("Back bed"),
                Some(&old.opened()),
                Some(&current),
                "f".into(),
                NOW,
            );
            assert_eq!(outcome, Outcome::BothKept);
            assert_eq!((new.id.as_str(), new.revision), ("f", 1));
            assert_ne!(new.name, old.name);
        }
    }

    #[test]
    fn what_was_deleted_meanwhile_is_saved_again() {
        let old = an_entry("a", "Back bed", "pH 6");
        let (new, outcome) =
            save(&kept("pH 7"), label("x"), Some(&old.opened()), None, "f".into(), NOW);
        assert_eq!((outcome, new.id.as_str(), new.revision), (Outcome::Saved, "a", 2));
    }

    #[test]
    fn what_another_version_put_beside_is_kept_through_a_save() {
        let mut value = serde_json::to_value(an_entry("a", "Back bed", "pH 6")).unwrap();
        value["moon"] = json!({"phase": [1, 2]});
        let Held::Entry(entry) = Held::from_value(&value) else { panic!("not read") };
        assert_eq!(serde_json::from_str::<Value>(&entry.to_json()).unwrap(), value);
        let (saved, _) = save(
            &kept("pH 7"),
            label("Back bed"),
            Some(&entry.opened()),
            Some(&entry.to_json()),
            "f".into(),
            NOW,
        );
        assert_eq!(saved.more["moon"], value["moon"]);
    }

    #[test]
    fn newer_shapes_are_named_and_older_ones_brought_up() {
        let newer = json!({"emberloam-entry": 3, "name": "Back bed", "colour": "red"});
        assert_eq!(Held::from_value(&newer), Held::Newer("Back bed".into()));
        let mut newer_case = an_entry("a", "Back bed", "");
        newer_case.answers = json!({"version": 9, "moon": "full"});
        assert_eq!(Held::read(&newer_case.to_json()), Held::Newer("Back bed".into()));
        newer_case.answers = json!({"bed": {"moon": "full"}});
        assert_eq!(Held::read(&newer_case.to_json()), Held::Newer("Back bed".into()));
        let file = json!({"emberloam": 1, "text": "pH 6", "answers": {"sample": 2}});
        let Held::Entry(up) = Held::from_value(&file) else { panic!("not brought up") };
        assert_eq!((up.text.as_str(), up.kept().unwrap().answers.sample), ("pH 6", 2));
        for damaged in ["", "7", "{}", r#"{"emberloam":1}"#, r#"{"emberloam-entry":1,"id":"a"}"#] {
            assert_eq!(Held::read(damaged), Held::Damaged, "{damaged}");
        }
        let mut wrong = an_entry("a", "Back bed", "");
        wrong.answers = json!({"bed": 7});
        assert_eq!(Held::read(&wrong.to_json()), Held::Damaged);
    }

    #[test]
    fn a_trial_is_saved_beside_reports_and_found_by_its_table() {
        let trial = json!({"version": 1, "text": "Treatment,pH\nnone,6\nchar,6.4\n"});
        let entry = an_entry("t", "By the fence", "").holding(trial.clone());
        assert_eq!(Held::read(&entry.to_json()), Held::Entry(entry.clone()));
        assert!(entry.is_trial() && !an_entry("a", "Back", "pH 6").is_trial());
        assert!(entry.matches("char fence") && !entry.matches("lime"));
        assert!(!entry.says_the_same(&an_entry("t", "By the fence", "")));
        assert_eq!(entry.to_json().find("trial\":null"), None);
        // Programs before it know version 1 alone, and leave it alone.
        assert!(entry.to_json().contains("\"emberloam-entry\":2"));
        let newer = entry.clone().holding(json!({"version": 9}));
        assert_eq!(Held::read(&newer.to_json()), Held::Newer("By the fence".into()));
        let none = entry.clone().holding(Value::Null);
        assert_eq!(Held::read(&none.to_json()), Held::Damaged);
        let (saved, outcome) = save(
            &Kept::default(),
            label("By the fence"),
            Some(&entry.opened()),
            Some(&entry.to_json()),
            "f".into(),
            NOW,
        );
        let saved = saved.holding(trial);
        assert_eq!((outcome, saved.revision, saved.id.as_str()), (Outcome::Saved, 2, "t"));
        assert!(saved.says_the_same(&entry));
    }

    #[test]
    fn entries_are_found_by_words_of_name_date_and_text() {
        let mut entry = an_entry("a", "Äpfel hinten", "Mehlich-3 pH 6");
        entry.date = "2026-03-01".into();
        for find in ["", "äpfel", "HINTEN 2026", "mehlich", "2026-03"] {
            assert!(entry.matches(find), "{find}");
        }
        for find in ["birnen", "äpfel 2025"] {
            assert!(!entry.matches(find), "{find}");
        }
    }

    #[test]
    fn the_latest_stands_first() {
        let mut all: Vec<Entry> = ["2025-01-01", "", "2028-02-02"]
            .iter()
            .map(|date| Entry { date: (*date).into(), ..an_entry(date, date, "") })
            .collect();
        by_date(&mut all);
        let dates: Vec<_> = all.iter().map(|entry| entry.date.as_str()).collect();
        assert_eq!(dates, ["2028-02-02", "", "2025-01-01"]);
    }

    proptest! {
        #[test]
        fn any_text_is_read_without_a_panic(json in "(?s).{0,200}") {
            let _ = Held::read(&json);
        }

        #[test]
        fn any_entry_comes_back(name in "(?s).{0,60}", text in "(?s).{0,300}", sample in 0_usize..99) {
            let answers = Case { sample, ..Case::default() };
            let entry = Entry::new(&Kept { text, answers, ..Kept::default() }, label(&name), "a".into(), NOW);
            prop_assert_eq!(Held::read(&entry.to_json()), Held::Entry(entry));
        }
    }
}
