//! Publications behind the nutrients of the `needs` room.

use crate::sources::Source;

/// All of them.
pub static NEEDS: &[&Source] = &[
    &UC_LEAD,
    &RB209_RATES,
    &TEXAS_RATES,
    &NC_EQUATIONS,
    &UMASS_RATES,
    &NC_LAWNS,
    &CORNELL_LAWNS,
    &NEW_ENGLAND_COMPOST,
    &UC_COMPOST_N,
    &UMN_COMPOST,
    &NC_BAGS,
    &EPSOM_ARITHMETIC,
];

/// Phosphate and potash above maintenance, by index.
pub static RB209_RATES: Source = Source {
    id: "rb209-build-up",
    title: "Tried & Tested nutrient planning, Building up soil indices (RB209: +60 and +30 kg/ha)",
    place: "https://www.triedandtested.org.uk/news-and-information/building-up-soil-indices/",
};

/// Rates by class of soil test.
pub static TEXAS_RATES: Source = Source {
    id: "texas-rates",
    title: "Texas A&M AgriLife Extension, fertiliser by soil-test class (pinto beans, table 3)",
    place: "https://aggie-horticulture.tamu.edu/extension/beans/pintobeans/table3.html",
};

/// Rates by an index, as parabolas.
pub static NC_EQUATIONS: Source = Source {
    id: "nc-equations",
    title: "NCDA&CS Agronomic Division, Circular 1, Table 2.4: rate equations (Hardy, Tucker and Stokes 2014)",
    place: "https://www.ncagr.gov/agronomi/obt24.htm",
};

/// A garden's recommendation, worked out.
pub static UMASS_RATES: Source = Source {
    id: "umass-rates",
    title: "UMass Extension, vegetable garden: N 2–4, P2O5 3, K2O 1 lb/1000 sq ft by test; 2.5 lb N without one",
    place: "https://ag.umass.edu/print/15878",
};

/// Nitrogen for lawns by grass.
pub static NC_LAWNS: Source = Source {
    id: "nc-lawns",
    title: "NC State Extension, Caring for your lawn and the environment (N by grass, a year)",
    place: "https://content.ces.ncsu.edu/caring-for-your-lawn-and-the-environment",
};

/// Nitrogen on a lawn at one time.
pub static CORNELL_LAWNS: Source = Source {
    id: "cornell-lawns",
    title: "Cornell University, lawns: never more than 1 lb N/1000 sq ft at one time",
    place: "",
};

/// What a finished compost holds.
pub static NEW_ENGLAND_COMPOST: Source = Source {
    id: "new-england-compost",
    title: "New England Vegetable Management Guide, Using compost (about 1-1-1 %)",
    place: "https://nevegetable.org/cultural-practices/compost",
};

/// How much of a compost's nitrogen works in the first year.
pub static UC_COMPOST_N: Source = Source {
    id: "uc-compost-n",
    title: "UC Davis (T. Hartz), nitrogen of composts in the first year: 5–10 %",
    place: "http://thealmonddoctor.com/almond/compost-applications-for-the-almond-orchard/",
};

/// How much compost a year.
pub static UMN_COMPOST: Source = Source {
    id: "umn-compost",
    title: "University of Minnesota Extension, How much compost should you apply to your garden",
    place: "https://extension.umn.edu/yard-and-garden-news/how-much-compost-should-you-apply-your-garden-spring",
};

/// From a nutrient to a weight of bag.
pub static NC_BAGS: Source = Source {
    id: "nc-bags",
    title: "NC State Extension, how much of a fertiliser gives 1 lb of nitrogen",
    place: "https://content.ces.ncsu.edu/caring-for-your-lawn-and-the-environment",
};

/// Magnesium in magnesium sulfate.
pub static EPSOM_ARITHMETIC: Source = Source {
    id: "epsom-salt",
    title: "Arithmetic: magnesium is 9.86 % of MgSO4·7H2O by atomic masses",
    place: "",
};

/// The pH that leaded soil is kept at.
pub static UC_LEAD: Source = Source {
    id: "uc-anr-8424",
    title: "University of California Agriculture and Natural Resources, Publication 8424: soils in urban agriculture, testing and best management",
    place: "",
};
