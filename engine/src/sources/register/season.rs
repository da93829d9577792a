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

/// Sunshine above the air, daylength and evaporation from temperatures.
pub static FAO_56: Source = Source {
    id: "fao-56",
    title: "Allen, Pereira, Raes and Smith, 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56",
    place: "https://www.fao.org/4/x0490e/x0490e00.htm",
};

/// Dates of frost at stations in the United States.
pub static NCEI_NORMALS: Source = Source {
    id: "ncei-normals",
    title: "NOAA NCEI, U.S. climate normals 1981–2010: last spring day at 0 °C and length of the season without, half of the years",
    place: "https://www.ncei.noaa.gov/products/land-based-station/us-climate-normals",
};

/// How much later spring comes farther from the equator and higher up.
pub static HOPKINS_LAW: Source = Source {
    id: "hopkins-law",
    title: "Hopkins, 1919, the bioclimatic law, quoted by Alabama Cooperative Extension",
    place: "https://www.aces.edu/blog/topics/forestry/estimating-alabama-bloom-times-using-hopkins-bioclimatic-law/",
};

/// How much less nitrate is lost under a cover crop.
pub static NOURI_2022: Source = Source {
    id: "nouri-2022",
    title: "Nouri and others, 2022, When do cover crops reduce nitrate leaching? A global meta-analysis, Global Change Biology 28:4736–4749",
    place: "",
};

/// The same for cover crops of grass and of legumes.
pub static CHRISTIANSON_2021: Source = Source {
    id: "christianson-2021",
    title: "Christianson and others, 2021, Effectiveness of cover crops for water pollutant reduction, Transactions of the ASABE 64:1007–1017",
    place: "https://doi.org/10.13031/trans.14028",
};

/// All of them.
pub static SEASON: &[&Source] = &[
    &UMASS_FALL,
    &BURNS_1975,
    &SCOTTER_1993,
    &AHDB_RAIN,
    &FAO_56,
    &NCEI_NORMALS,
    &HOPKINS_LAW,
    &NOURI_2022,
    &CHRISTIANSON_2021,
];
