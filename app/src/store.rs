//! What is typed stays on this device, and nowhere else.
//!
//! Writing and reading JSON weighs a tenth of the first load, so it is in the
//! later piece: [`Pens`] is how the page gets at it.

use emberloam_engine::Case;
use emberloam_engine::quantity::Measures;
use serde::{Deserialize, Serialize};
use web_sys::Storage;

use crate::words;

/// Where the page keeps its state, for whatever tab opens next; `public/boot.js` knows these names.
const KEPT: &str = "kept";
/// Since when, as the browser counts milliseconds.
const WHEN: &str = "when";
/// Where a tab keeps its own: since when, the name of the visit, and the state, each on a line.
const OWN: &str = "own";
/// Where a state that can't be read is put aside, so that it isn't lost.
pub const SET_ASIDE: &str = "set-aside";

/// The longest text that is kept here, bytes: browsers give a page some 5 MB in all.
const MOST_KEPT: usize = 1_000_000;

/// All that is kept. The report in the answers is no part of it: it is read
/// again from the text.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Kept {
    /// The pasted text.
    pub text: String,
    /// The answers.
    pub answers: Case,
    /// The jobs that were ticked off, each by its sample and its kind.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub done: Vec<String>,
}

impl Kept {
    /// What a first visit begins with: nothing but the measures of the
    /// reader's country.
    pub fn fresh() -> Kept {
        let language = web_sys::window().and_then(|window| window.navigator().language());
        let measures = measures_of(language.as_deref().unwrap_or_default());
        Kept { answers: Case { measures, ..Case::default() }, ..Kept::default() }
    }

    /// Whether it holds no report and no answer; in which measures it is shown
    /// is none.
    pub fn is_blank(&self) -> bool {
        let measures = self.answers.measures;
        self.text.is_empty() && self.answers == Case { measures, ..Case::default() }
    }
}

/// The measures of the country in a language's name, such as `en-US`. The
/// United States alone measure gardens in feet and gallons of their size.
fn measures_of(language: &str) -> Measures {
    if language.ends_with("-US") { Measures::Us } else { Measures::Metric }
}

/// The ways between what is kept and its JSON.
pub struct Pens {
    /// As one line of JSON for this device.
    pub to_json: fn(&Kept) -> Option<String>,
    /// Back from it.
    pub from_json: fn(&str) -> Option<Kept>,
    /// As the file that a person saves.
    pub to_saved: fn(&Kept) -> Option<String>,
    /// Back from it.
    pub from_saved: fn(&str) -> Option<Kept>,
}

/// The pens; the later piece hands them out.
pub const PENS: Pens = Pens {
    to_json: Kept::to_json,
    from_json: Kept::from_json,
    to_saved: Kept::to_saved,
    from_saved: Kept::from_saved,
};

impl Kept {
    /// As one line of JSON. Text too long for a report is left out.
    fn to_json(&self) -> Option<String> {
        if self.text.len() > MOST_KEPT {
            let answers = self.answers.clone();
            return serde_json::to_string(&Kept { answers, ..Kept::default() }).ok();
        }
        serde_json::to_string(self).ok()
    }

    /// Reads what [`Kept::to_json`] wrote.
    fn from_json(json: &str) -> Option<Kept> {
        serde_json::from_str(json).ok().filter(Kept::is_within_bounds)
    }

    /// Whether its answers are such as a garden can have: what would freeze the page is not kept.
    fn is_within_bounds(&self) -> bool {
        self.answers.within_bounds().is_ok()
    }
}

/// A report saved as a file.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Saved {
    /// The version of this shape. The opener refuses newer ones.
    emberloam: u32,
    text: String,
    #[serde(default)]
    answers: Case,
}

impl Kept {
    /// As the file that a person saves.
    fn to_saved(&self) -> Option<String> {
        let Kept { text, answers, .. } = self.clone();
        serde_json::to_string(&Saved { emberloam: 1, text, answers }).ok()
    }

    /// Reads what [`Kept::to_saved`] wrote.
    fn from_saved(json: &str) -> Option<Kept> {
        let Saved { text, answers, .. } = serde_json::from_str(json).ok()?;
        Some(Kept { text, answers, ..Kept::default() }).filter(Kept::is_within_bounds)
    }
}

/// What a visit begins with.
#[derive(Debug)]
pub struct Restored {
    /// What was kept, or nothing.
    pub kept: Kept,
    /// What to tell the person about it.
    pub say: Option<&'static str>,
    /// What is kept could not be read yet, so nothing may be kept over it.
    pub hands_off: bool,
}

impl Restored {
    fn fresh() -> Restored {
        Restored { kept: Kept::fresh(), say: None, hands_off: false }
    }
}

/// What this copy of the program calls what it keeps. Another copy on the same site, at another
/// path, has names of its own.
pub fn named(what: &str) -> String {
    format!("emberloam{}:{what}", home())
}

/// Whether the page was opened as a file, with no server.
pub fn is_a_file() -> bool {
    let location = web_sys::window().map(|window| window.location());
    location.and_then(|location| location.protocol().ok()).as_deref() == Some("file:")
}

/// The folder this copy of the program lies in; empty at the top of its site.
pub fn home() -> String {
    let path = web_sys::window().and_then(|window| window.location().pathname().ok());
    let path = path.unwrap_or_default();
    let folder = &path[..path.rfind('/').map_or(0, |at| at + 1)];
    if folder == "/" { String::new() } else { folder.into() }
}

/// The state that was kept last.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Latest {
    /// As JSON.
    pub json: String,
    /// Since when, ms.
    pub when: f64,
    /// The visit of this tab that kept it; empty when it may have been another tab.
    pub visit: String,
}

/// What this tab kept last, or else any tab.
pub fn latest() -> Option<Latest> {
    let own = session().and_then(|session| session.get_item(&named(OWN)).ok().flatten());
    let mut lines = own.as_deref().unwrap_or_default().splitn(3, '\n');
    if let (Some(when), Some(visit), Some(json)) = (lines.next(), lines.next(), lines.next()) {
        let when = js_sys::parse_float(when).max(0.0);
        return Some(Latest { json: json.into(), when, visit: visit.into() });
    }
    let storage = storage()?;
    let json = storage.get_item(&named(KEPT)).ok()??;
    let when = storage.get_item(&named(WHEN)).ok().flatten().unwrap_or_default();
    let when = js_sys::parse_float(&when).max(0.0);
    Some(Latest { json, when, visit: String::new() })
}

thread_local! {
    static VISIT: (String, String) = {
        let before = latest().map(|latest| latest.visit).unwrap_or_default();
        let fresh = || format!("{}", (js_sys::Math::random() * 1e12) as u64);
        // A copy of a tab has what the tab has: what tells them apart is new.
        let tab = before.split('-').next().filter(|tab| !tab.is_empty()).map(str::to_string);
        (format!("{}-{}", tab.unwrap_or_else(fresh), fresh()), before)
    };
}

/// The name of this visit, and that of the one before it in this tab. Both begin with the name
/// of the tab, up to a hyphen.
pub fn visit() -> (String, String) {
    VISIT.with(Clone::clone)
}

/// Reads what was kept on this device; `newer` is what the earlier states hold beyond it. Without
/// pens nothing is read, and nothing kept is written over.
pub fn restore(pens: Option<&Pens>, newer: Option<Kept>) -> Restored {
    // Before anything is kept over it.
    visit();
    if storage().is_none() {
        return Restored { say: Some(words::STORAGE_OFF), ..Restored::fresh() };
    }
    let Some(latest) = latest() else { return Restored::fresh() };
    let Some(pens) = pens else {
        return Restored {
            say: Some(words::STORAGE_NOT_LOADED),
            hands_off: true,
            ..Restored::fresh()
        };
    };
    if let Some(kept) = newer {
        return Restored { kept, say: None, hands_off: false };
    }
    match (pens.from_json)(&latest.json) {
        Some(kept) => Restored { kept, say: None, hands_off: false },
        None => {
            put(SET_ASIDE, &latest.json);
            Restored { say: Some(words::STORAGE_DAMAGED), ..Restored::fresh() }
        }
    }
}

/// Keeps something for all tabs; whether there was room for it.
fn put(what: &str, value: &str) -> bool {
    storage().is_some_and(|storage| storage.set_item(&named(what), value).is_ok())
}

/// Keeps the state, for this tab and for the next one.
///
/// # Errors
/// In words for the reader, when the device won't keep it.
pub fn keep(pens: &Pens, kept: &Kept) -> Result<(), &'static str> {
    storage().ok_or(words::STORAGE_OFF)?;
    let json = (pens.to_json)(kept).ok_or(words::STORAGE_OFF)?;
    let long = kept.text.len() > MOST_KEPT;
    // A text that is left out here may stand among the earlier states, which are then the newer.
    let when = if long { 0.0 } else { js_sys::Date::now() };
    if let Some(session) = session() {
        let own = format!("{when}\n{}\n{json}", visit().0);
        // Ignored: then a reload of this tab takes what any tab kept last.
        let _ = session.set_item(&named(OWN), &own);
    }
    if !(put(KEPT, &json) && put(WHEN, &format!("{when}"))) {
        return Err(words::STORAGE_FULL);
    }
    if long { Err(words::TEXT_TOO_LONG_TO_KEEP) } else { Ok(()) }
}

/// Removes all that was kept of the report and its answers.
pub fn erase() {
    for (storage, keys) in [(storage(), &[KEPT, WHEN, SET_ASIDE][..]), (session(), &[OWN][..])] {
        for key in keys {
            // Ignored: removing fails only where nothing can be kept either.
            let _ = storage.as_ref().map(|storage| storage.remove_item(&named(key)));
        }
    }
    // `public/boot.js` keeps what the program stopped over; `saved/earlier.rs` the states before.
    crate::report::files::tell("emberloam:erased", "");
}

/// The browser's storage, where it has any for this page.
pub fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}

/// The browser's storage for this tab alone.
pub fn session() -> Option<Storage> {
    web_sys::window()?.session_storage().ok().flatten()
}

#[cfg(test)]
mod tests {
    use emberloam_engine::case::BagState;

    use super::*;

    #[test]
    fn what_is_kept_comes_back_without_the_report() {
        let mut answers = Case { sample: 2, ..Case::default() };
        answers.bed.area_m2 = Some(12.5);
        answers.biochar.state = Some(BagState::Uncharged);
        let kept =
            Kept { text: "pH 6,5\n".into(), answers, done: vec!["2 spread-biochar 0".into()] };
        let mut with_report = kept.clone();
        with_report.answers.report.notes.push("read".into());
        let json = with_report.to_json().unwrap();
        assert_eq!(Kept::from_json(&json), Some(kept));
    }

    #[test]
    fn text_too_long_for_a_report_is_left_out_and_the_answers_stay() {
        let mut kept = Kept { text: "x".repeat(MOST_KEPT + 1), ..Kept::default() };
        kept.answers.bed.depth_cm = Some(15.0);
        let back = Kept::from_json(&kept.to_json().unwrap()).unwrap();
        assert_eq!(back.text, "");
        assert_eq!(back.answers.bed.depth_cm, Some(15.0));
    }

    #[test]
    fn a_saved_file_gives_back_report_and_answers() {
        let answers = Case { sample: 1, ..Case::default() };
        let kept = Kept { text: "pH 6.5\n".into(), answers, ..Kept::default() };
        let json = kept.to_saved().unwrap();
        assert!(json.starts_with(r#"{"emberloam":1,"text":"pH 6.5\n""#), "{json}");
        assert_eq!(Kept::from_saved(&json), Some(kept));
        assert_eq!(Kept::from_saved(r#"{"emberloam":1}"#), None);
    }

    #[test]
    fn the_measures_follow_the_country_and_are_nothing_to_lose() {
        let of = ["en-US", "es-US", "en-GB", "es-MX", "es", ""].map(measures_of);
        let (us, metric) = (Measures::Us, Measures::Metric);
        assert_eq!(of, [us, us, metric, metric, metric, metric]);
        let mut kept = Kept::default();
        kept.answers.measures = us;
        assert!(kept.is_blank());
        kept.answers.bed.area_m2 = Some(2.0);
        assert!(!kept.is_blank());
    }

    #[test]
    fn damaged_json_is_refused() {
        for json in ["", "{", "7", r#"{"bed":{"area-m2":"wide"}}"#] {
            assert_eq!(Kept::from_json(json), None, "{json}");
        }
    }
}
