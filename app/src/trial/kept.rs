//! The trial on this device, as a file, and as a link.

use emberloam_engine::trial::Trial;

use crate::origin::SavedAs;
use crate::share::link::{Unopened, packed, unpacked};
use crate::store::{named, storage};

/// Where it is kept.
const KEPT: &str = "trial";
const SAVED_AS: &str = "trial-saved-as";

/// The trial as JSON.
pub fn to_json(trial: &Trial) -> String {
    // A struct of texts and numbers always has a JSON.
    serde_json::to_string(trial).unwrap_or_default()
}

/// A saved trial, where a text is one.
pub fn from_json(text: &str) -> Option<Trial> {
    text.trim_start().starts_with('{').then(|| serde_json::from_str(text).ok()).flatten()
}

/// As what the trial is saved among the reports.
pub fn kept_name() -> SavedAs {
    let text = storage().and_then(|storage| storage.get_item(&named(SAVED_AS)).ok().flatten());
    text.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default()
}

/// Keeps that.
pub fn keep_name(saved: &SavedAs) {
    let Some(storage) = storage() else { return };
    // Ignored: a name that isn't kept is typed again.
    let _ = match serde_json::to_string(saved) {
        Ok(json) if *saved != SavedAs::default() => storage.set_item(&named(SAVED_AS), &json),
        _ => storage.remove_item(&named(SAVED_AS)),
    };
}

/// What was kept.
pub fn kept() -> Trial {
    let text = storage().and_then(|storage| storage.get_item(&named(KEPT)).ok().flatten());
    text.and_then(|text| from_json(&text)).unwrap_or_default()
}

/// What the fragment of a link to a trial begins with.
pub const MARK: &str = "trial=";

/// The fragment of a link that holds the trial.
pub fn to_fragment(trial: &Trial) -> String {
    MARK.to_string() + &packed(&to_json(trial))
}

/// The trial of a fragment, with or without its `#`; `None` when it is none.
pub fn from_fragment(fragment: &str) -> Option<Result<Trial, Unopened>> {
    let carried = fragment.strip_prefix('#').unwrap_or(fragment).strip_prefix(MARK)?;
    let trial = unpacked(carried).and_then(|json| from_json(&json).ok_or(Unopened::Damaged));
    Some(trial)
}

/// Keeps it; whether that was done. An empty one is removed.
pub fn keep(trial: &Trial) -> bool {
    let Some(storage) = storage() else { return trial.text.is_empty() };
    if trial.text.is_empty() {
        return storage.remove_item(&named(KEPT)).is_ok();
    }
    storage.set_item(&named(KEPT), &to_json(trial)).is_ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_trial_comes_back_from_a_link_and_from_a_file() {
        let mut trial =
            Trial { text: "Treatment,pH\nnone,6\nchar,6.4\n".into(), ..Trial::default() };
        trial.every_pair = true;
        let fragment = to_fragment(&trial);
        assert_eq!(from_fragment(&format!("#{fragment}")), Some(Ok(trial.clone())));
        assert_eq!(from_json(&to_json(&trial)), Some(trial));
        assert_eq!(from_fragment(&fragment[..fragment.len() - 9]), Some(Err(Unopened::Damaged)));
        assert_eq!(from_fragment("#soil=1.abc"), None);
        assert_eq!(from_json("{\"text\": 3}"), None);
    }
}
