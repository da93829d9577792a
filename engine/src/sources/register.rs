//! The publications, one entry each, grouped by the room that leans on them.

use super::Source;

mod biochar;
mod charging;
mod chemistry;
mod material;
mod needs;
mod needs_lime;
mod ranges;
mod season;
mod traits;

pub use biochar::*;
pub use charging::*;
pub use chemistry::*;
pub use material::*;
pub use needs::*;
pub use needs_lime::*;
pub use ranges::*;
pub use season::*;
pub use traits::*;

/// A fact of the trade that nobody needs to publish.
pub static COMMON_PRACTICE: Source =
    Source { id: "common-practice", title: "Common practice, no source", place: "" };

/// A choice made for this program; nobody published the exact number.
pub static OUR_CHOICE: Source = Source {
    id: "our-choice",
    title: "A choice made for this program; no publication gives the exact number",
    place: "",
};

/// Arithmetic: atomic masses and legal definitions of units.
pub static ARITHMETIC: Source = Source {
    id: "arithmetic",
    title: "Arithmetic from atomic masses and the legal definitions of units",
    place: "",
};

/// Every publication in the register.
pub fn all_sources() -> impl Iterator<Item = &'static Source> {
    [&COMMON_PRACTICE, &OUR_CHOICE, &ARITHMETIC]
        .into_iter()
        .chain(RANGES.iter().copied())
        .chain(CHEMISTRY.iter().copied())
        .chain(BIOCHAR.iter().copied())
        .chain(MATERIAL.iter().copied())
        .chain(CHARGING.iter().copied())
        .chain(SEASON.iter().copied())
        .chain(NEEDS.iter().copied())
        .chain(TRAITS.iter().copied())
        .chain(NEEDS_LIME.iter().copied())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_source_has_its_own_id_and_says_what_it_is() {
        let mut seen = std::collections::BTreeSet::new();
        for source in all_sources() {
            assert!(seen.insert(source.id), "{} stands twice", source.id);
            assert!(source.title.len() > 10, "{} needs a title", source.id);
        }
    }
}
