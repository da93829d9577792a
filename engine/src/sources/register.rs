//! The publications, from `engine/facts/sources.csv`.

use super::Source;

include!(concat!(env!("OUT_DIR"), "/sources.rs"));

/// Every publication in the register.
pub fn all_sources() -> impl Iterator<Item = &'static Source> {
    ALL.iter().copied()
}

/// How a publication was read: the text itself, a copy, a quotation, or not at all.
pub fn how_read(source: &Source) -> &'static str {
    READ.iter().find(|(id, _)| *id == source.id).map_or("", |(_, read)| read)
}
