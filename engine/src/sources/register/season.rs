//! Publications behind the `season` room.

use crate::sources::Source;

/// What to do in autumn and what in spring.
pub static UMASS_FALL: Source = Source {
    id: "umass-fall-amendment",
    title: "UMass Extension, Fall soil amendment",
    place: "https://ag.umass.edu/home-lawn-garden/fact-sheets/fall-soil-amendment",
};

/// All of them.
pub static SEASON: &[&Source] = &[&UMASS_FALL];
