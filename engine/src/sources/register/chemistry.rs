//! Publications behind the `chemistry` room.

use crate::sources::Source;

/// All of them.
pub static CHEMISTRY: &[&Source] = &[
    &OSU_CEC,
    &CLEMSON_CEC,
    &UGA_ADAMS_EVANS,
    &NCDA_BUFFER,
    &SMP_ACIDITY,
    &WOODRUFF_ACIDITY,
    &ADAMS_EVANS_1962,
    &UMN_ESP,
    &SIMS_2002,
    &NRCS_SSIR45,
    &PRIBYL_2010,
    &NITROGEN_RULE,
    &ADAMS_1973,
];

/// Exchange capacity by summation, and by texture.
pub static OSU_CEC: Source = Source {
    id: "osu-anr-81",
    title: "Ohio State University Extension ANR-81, Calculating Cation Exchange Capacity, Base Saturation, and Calcium Saturation, 2019",
    place: "https://ohioline.osu.edu/factsheet/anr-81",
};

/// Charge of the bases, acidity by Adams–Evans, saturations.
pub static CLEMSON_CEC: Source = Source {
    id: "clemson-cec",
    title: "Clemson University Agricultural Service Laboratory, Cation Exchange Capacity: Calculations",
    place: "http://www.clemson.edu/public/regulatory/ag-srvc-lab/soil-testing/cec-calculations.html",
};

/// Acidity by Adams–Evans buffer.
pub static UGA_ADAMS_EVANS: Source = Source {
    id: "uga-adams-evans",
    title: "University of Georgia, Soil Test Method 6: Adams–Evans buffer",
    place: "http://aesl.ces.uga.edu/protected/methods/details/stl-soil/6.html",
};

/// Acidity by Mehlich buffer.
pub static NCDA_BUFFER: Source = Source {
    id: "ncda-mehlich-buffer",
    title: "North Carolina Department of Agriculture (NCDA&CS), Mehlich buffer acidity",
    place: "http://www.ncagr.gov/agronomi/bufftab1.htm",
};

/// Acidity by SMP and Sikora buffer.
pub static SMP_ACIDITY: Source = Source {
    id: "smp-acidity",
    title: "NCERA-13, Recommended Chemical Soil Test Procedures: acidity from SMP or Sikora buffer",
    place: "",
};

/// Acidity by Woodruff buffer.
pub static WOODRUFF_ACIDITY: Source = Source {
    id: "woodruff-acidity",
    title: "University of Missouri, Soil Testing in Missouri: neutralizable acidity by Woodruff buffer",
    place: "",
};

/// How pH follows base saturation.
pub static ADAMS_EVANS_1962: Source = Source {
    id: "adams-evans-1962",
    title: "Adams and Evans, 1962, Soil Science Society of America Proceedings 26:355–357",
    place: "",
};

/// Soluble sodium counted as exchangeable.
pub static UMN_ESP: Source = Source {
    id: "umn-esp",
    title: "University of Minnesota Research Analytical Laboratory, exchangeable sodium percentage",
    place: "https://ral.cfans.umn.edu/exchangeable-sodium-percentage-esp-andor-sodium-adsorption-ratio-sar",
};

/// Phosphorus saturation ratio.
pub static SIMS_2002: Source = Source {
    id: "sims-2002",
    title: "Sims, Maguire, Leytem, Gartley and Pautler, 2002, Soil Science Society of America Journal 66:2016",
    place: "https://doi.org/10.2136/sssaj2002.2016",
};

/// Organic matter from carbon, the old factor.
pub static NRCS_SSIR45: Source = Source {
    id: "nrcs-ssir-45",
    title: "USDA-NRCS Soil Survey Investigations Report 45: organic matter = 1.724 × organic carbon",
    place: "http://inspire.ec.europa.eu/codelist/SoilDerivedObjectParameterNameValue/organicCarbonContent",
};

/// Organic matter from carbon, the newer factor.
pub static PRIBYL_2010: Source = Source {
    id: "pribyl-2010",
    title: "Pribyl, 2010, A critical review of the conventional SOC to SOM conversion factor, Geoderma 156:75–83",
    place: "https://doi.org/10.1016/j.geoderma.2010.02.003",
};

/// Nitrogen from organic matter.
pub static NITROGEN_RULE: Source = Source {
    id: "nitrogen-release-rule",
    title: "US extension rule: about 20 lb of nitrogen per acre and year for each 1 % of organic matter",
    place: "",
};

/// Density of a soil from its organic matter.
pub static ADAMS_1973: Source = Source {
    id: "adams-1973",
    title: "Adams 1973, The effect of organic matter on the bulk and true densities of some uncultivated podzolic soils, Journal of Soil Science 24:10–17",
    place: "",
};
