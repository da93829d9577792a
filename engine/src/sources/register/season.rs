//! Publications behind the `season` room.

use crate::sources::Source;

/// What to do in autumn and what in spring.
pub static UMASS_FALL: Source = Source {
    id: "umass-fall-amendment",
    title: "UMass Extension, Fall soil amendment",
    place: "https://ag.umass.edu/home-lawn-garden/fact-sheets/fall-soil-amendment",
};

/// How much of surface nitrate a drainage washes below a depth.
pub static BURNS_1975: Source = Source {
    id: "burns-1975",
    title: "Burns, 1975, An equation to predict the leaching of surface-applied nitrate, Journal of Agricultural Science",
    place: "https://www.cambridge.org/core/journals/journal-of-agricultural-science/article/3BE93B1C7B55029FF4D3D1F24C9A5BF9",
};

/// The same as a continuous form.
pub static SCOTTER_1993: Source = Source {
    id: "scotter-1993",
    title: "Scotter, White and Dyson, 1993, Journal of Soil Science 44:25–33",
    place: "",
};

/// How much drains through in a British winter.
pub static AHDB_RAIN: Source = Source {
    id: "ahdb-rain",
    title: "AHDB, excess winter rainfall",
    place: "https://ahdb.org.uk/ewr",
};

/// All of them.
pub static SEASON: &[&Source] = &[&UMASS_FALL, &BURNS_1975, &SCOTTER_1993, &AHDB_RAIN];
