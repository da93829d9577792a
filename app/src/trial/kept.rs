//! The trial on this device, and as a file.

use emberloam_engine::trial::Trial;

/// Where it is kept.
const KEPT: &str = "emberloam:trial";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}

/// The trial as JSON.
pub fn to_json(trial: &Trial) -> String {
    // A struct of texts and numbers always has a JSON.
    serde_json::to_string(trial).unwrap_or_default()
}

/// A saved trial, where a text is one.
pub fn from_json(text: &str) -> Option<Trial> {
    text.trim_start().starts_with('{').then(|| serde_json::from_str(text).ok()).flatten()
}

/// What was kept.
pub fn kept() -> Trial {
    let text = storage().and_then(|storage| storage.get_item(KEPT).ok().flatten());
    text.and_then(|text| from_json(&text)).unwrap_or_default()
}

/// Keeps it; whether that was done. An empty one is removed.
pub fn keep(trial: &Trial) -> bool {
    let Some(storage) = storage() else { return trial.text.is_empty() };
    if trial.text.is_empty() {
        return storage.remove_item(KEPT).is_ok();
    }
    storage.set_item(KEPT, &to_json(trial)).is_ok()
}
