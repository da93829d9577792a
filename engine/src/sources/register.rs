//! The publications, one entry each, grouped by the room that leans on them.

use super::Source;

/// Declares publications and the list of them all: of each its name in the code and its id, where
/// it was found (left out where there is no place), and its title.
macro_rules! sources {
    ($all:ident: $($(#[$doc:meta])+ $name:ident = $id:literal $(at $place:literal)?, $title:literal;)+) => {
        $(
            $(#[$doc])+
            pub static $name: Source =
                Source { id: $id, title: $title, place: concat!($($place)?) };
        )+
        /// All of them.
        pub static $all: &[&Source] = &[$(&$name),+];
    };
}

mod biochar;
mod charging;
mod chemistry;
mod doses;
mod material;
mod needs;
mod needs_lime;
mod ranges;
mod season;
mod traits;

pub use biochar::*;
pub use charging::*;
pub use chemistry::*;
pub use doses::*;
pub use material::*;
pub use needs::*;
pub use needs_lime::*;
pub use ranges::*;
pub use season::*;
pub use traits::*;

sources! { WITHOUT_PUBLICATION:
    /// A fact of the trade that nobody needs to publish.
    COMMON_PRACTICE = "common-practice",
        "Common practice, no source";
    /// A choice made for this program; nobody published the exact number.
    OUR_CHOICE = "our-choice",
        "A choice made for this program; no publication gives the exact number";
    /// Arithmetic: atomic masses and legal definitions of units.
    ARITHMETIC = "arithmetic",
        "Arithmetic from atomic masses and the legal definitions of units";
}

/// Every publication in the register.
pub fn all_sources() -> impl Iterator<Item = &'static Source> {
    let rooms = [
        WITHOUT_PUBLICATION,
        RANGES,
        CHEMISTRY,
        BIOCHAR,
        MATERIAL,
        CHARGING,
        SEASON,
        NEEDS,
        TRAITS,
        NEEDS_LIME,
        DOSES,
    ];
    rooms.into_iter().flatten().copied()
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
