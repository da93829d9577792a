//! What comes from outside as the page takes it in, for `tests/fuzz`; no part of the page.

use emberloam_engine::Case;

use crate::saved::backup;
use crate::saved::entry::Held;
use crate::share::link::{Letter, packed};

/// A link as it stands in the address.
pub fn fragment(fragment: &str) {
    drop(Letter::from_fragment(fragment));
}

/// A link that holds this JSON: its text and its answers.
pub fn link(json: &str) -> Option<(String, Case)> {
    let fragment = format!("soil={}", packed(json));
    let letter = Letter::from_fragment(&fragment).expect("it is one of ours").ok()?;
    let again = Letter::from_fragment(&letter.to_fragment()).expect("it is one of ours");
    assert_eq!(again.as_ref(), Ok(&letter), "a link gives back what it was made of");
    Some((letter.text, letter.answers))
}

/// A file of saved reports: the text and the answers of each that can be read.
pub fn shelf(file: &str) -> Vec<(String, Case)> {
    let Ok(unpacked) = backup::unpack(file) else { return Vec::new() };
    let held = unpacked.entries.iter().map(Held::from_value);
    let kept = held.filter_map(|held| match held {
        Held::Entry(entry) => entry.kept(),
        _ => None,
    });
    kept.map(|kept| (kept.text, kept.answers)).collect()
}
