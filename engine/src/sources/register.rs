//! The publications, from `engine/facts/sources.csv`.

use super::Source;

include!(concat!(env!("OUT_DIR"), "/sources.rs"));

/// Every publication in the register.
pub fn all_sources() -> impl Iterator<Item = &'static Source> {
    ALL.iter().copied()
}

pub(super) fn id(at: u16) -> &'static str {
    IDS.get(usize::from(at)).copied().unwrap_or_default()
}

pub(super) fn title(at: u16) -> &'static str {
    TITLES.get(usize::from(at)).map_or("", |(title, _)| title)
}

pub(super) fn place(at: u16) -> &'static str {
    TITLES.get(usize::from(at)).map_or("", |(_, place)| place)
}

/// How a publication was read: the text itself, a copy, a quotation, or not at all.
pub fn how_read(source: &Source) -> &'static str {
    match source {
        Source::Registered(at) => READ.get(usize::from(*at)).copied().unwrap_or_default(),
        Source::Own(_) => "",
    }
}
