//! Publications behind the `season` room.

use crate::sources::Source;

sources! { SEASON:
    /// What to do in autumn and what in spring.
    UMASS_FALL = "umass-fall-amendment" at "https://ag.umass.edu/home-lawn-garden/fact-sheets/fall-soil-amendment",
        "UMass Extension, Fall soil amendment";
    /// How much of surface nitrate a drainage washes below a depth.
    BURNS_1975 = "burns-1975" at "https://www.cambridge.org/core/journals/journal-of-agricultural-science/article/3BE93B1C7B55029FF4D3D1F24C9A5BF9",
        "Burns, 1975, An equation to predict the leaching of surface-applied nitrate, Journal of Agricultural Science";
    /// The same as a continuous form.
    SCOTTER_1993 = "scotter-1993",
        "Scotter, White and Dyson, 1993, Journal of Soil Science 44:25–33";
    /// How much drains through in a British winter.
    AHDB_RAIN = "ahdb-rain" at "https://ahdb.org.uk/ewr",
        "AHDB, excess winter rainfall";
    /// Sunshine above the air, daylength and evaporation from temperatures.
    FAO_56 = "fao-56" at "https://www.fao.org/4/x0490e/x0490e00.htm",
        "Allen, Pereira, Raes and Smith, 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56";
    /// Dates of frost at stations in the United States.
    NCEI_NORMALS = "ncei-normals" at "https://www.ncei.noaa.gov/products/land-based-station/us-climate-normals",
        "NOAA NCEI, U.S. climate normals 1981–2010: last spring day at 0 °C and length of the season without, half of the years";
    /// How much later spring comes farther from the equator and higher up.
    HOPKINS_LAW = "hopkins-law" at "https://www.aces.edu/blog/topics/forestry/estimating-alabama-bloom-times-using-hopkins-bioclimatic-law/",
        "Hopkins, 1919, the bioclimatic law, quoted by Alabama Cooperative Extension";
    /// How much less nitrate is lost under a cover crop.
    NOURI_2022 = "nouri-2022",
        "Nouri and others, 2022, When do cover crops reduce nitrate leaching? A global meta-analysis, Global Change Biology 28:4736–4749";
    /// The same for cover crops of grass and of legumes.
    CHRISTIANSON_2021 = "christianson-2021" at "https://doi.org/10.13031/trans.14028",
        "Christianson and others, 2021, Effectiveness of cover crops for water pollutant reduction, Transactions of the ASABE 64:1007–1017";
}
