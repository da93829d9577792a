//! What is typed stays on this device, and nowhere else.
//!
//! Writing and reading JSON weighs a tenth of the first load, so it is in the
//! later piece: [`Pens`] is how the page gets at it.

use emberloam_engine::Case;
use emberloam_engine::quantity::Measures;
use serde::{Deserialize, Serialize};
use web_sys::Storage;

use crate::words;

/// Where the page keeps its state.
const KEPT: &str = "emberloam:kept";
/// Where a state that can't be read is put aside, so that it isn't lost.
const SET_ASIDE: &str = "emberloam:set-aside";

/// The longest text that is kept, bytes: browsers give a page some 5 MB in all.
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

/// Whether something is kept on this device, so that the page must wait for
/// the pens before it begins.
pub fn holds_something() -> bool {
    storage().is_some_and(|storage| matches!(storage.get_item(KEPT), Ok(Some(_))))
}

/// Reads what was kept on this device. Without pens nothing is read, and
/// nothing kept is written over.
pub fn restore(pens: Option<&Pens>) -> Restored {
    let Some(storage) = storage() else {
        return Restored { say: Some(words::STORAGE_OFF), ..Restored::fresh() };
    };
    let Ok(Some(json)) = storage.get_item(KEPT) else { return Restored::fresh() };
    let Some(pens) = pens else {
        return Restored {
            say: Some(words::STORAGE_NOT_LOADED),
            hands_off: true,
            ..Restored::fresh()
        };
    };
    match (pens.from_json)(&json) {
        Some(kept) => Restored { kept, say: None, hands_off: false },
        None => {
            // Ignored: when there is no room for it we still must not stop here.
            let _ = storage.set_item(SET_ASIDE, &json);
            Restored { say: Some(words::STORAGE_DAMAGED), ..Restored::fresh() }
        }
    }
}

/// Keeps the state.
///
/// # Errors
/// In words for the reader, when the device won't keep it.
pub fn keep(pens: &Pens, kept: &Kept) -> Result<(), &'static str> {
    let storage = storage().ok_or(words::STORAGE_OFF)?;
    let json = (pens.to_json)(kept).ok_or(words::STORAGE_OFF)?;
    storage.set_item(KEPT, &json).map_err(|_| words::STORAGE_FULL)?;
    if kept.text.len() > MOST_KEPT { Err(words::TEXT_TOO_LONG_TO_KEEP) } else { Ok(()) }
}

/// Removes all that was kept.
pub fn erase() {
    if let Some(storage) = storage() {
        for key in [KEPT, SET_ASIDE] {
            // Ignored: removing fails only where nothing can be kept either.
            let _ = storage.remove_item(key);
        }
    }
    // `public/boot.js` keeps what the program stopped over.
    crate::report::files::tell("emberloam:erased", "");
}

/// The browser's storage, where it has any for this page.
pub fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok().flatten()
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
