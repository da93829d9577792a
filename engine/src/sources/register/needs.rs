//! Publications behind the nutrients in the `plan`.

use crate::sources::Source;

sources! { NEEDS:
    /// Phosphate and potash above maintenance, by index.
    RB209_RATES = "rb209-build-up" at "https://www.triedandtested.org.uk/news-and-information/building-up-soil-indices/",
        "Tried & Tested nutrient planning, Building up soil indices (RB209: +60 and +30 kg/ha)";
    /// Rates by class of soil test.
    TEXAS_RATES = "texas-rates" at "https://aggie-horticulture.tamu.edu/extension/beans/pintobeans/table3.html",
        "Texas A&M AgriLife Extension, fertiliser by soil-test class (pinto beans, table 3)";
    /// Rates by an index, as parabolas.
    NC_EQUATIONS = "nc-equations" at "https://www.ncagr.gov/agronomi/obt24.htm",
        "NCDA&CS Agronomic Division, Circular 1, Table 2.4: rate equations (Hardy, Tucker and Stokes 2014)";
    /// A garden's recommendation, worked out.
    UMASS_RATES = "umass-rates" at "https://ag.umass.edu/print/15878",
        "UMass Extension, vegetable garden: N 2–4, P2O5 3, K2O 1 lb/1000 sq ft by test; 2.5 lb N without one";
    /// Nitrogen for lawns by grass.
    NC_LAWNS = "nc-lawns" at "https://content.ces.ncsu.edu/caring-for-your-lawn-and-the-environment",
        "NC State Extension, Caring for your lawn and the environment (N by grass, a year)";
    /// Nitrogen on a lawn at one time.
    CORNELL_LAWNS = "cornell-lawns",
        "Cornell University, lawns: never more than 1 lb N/1000 sq ft at one time";
    /// What a finished compost holds.
    NEW_ENGLAND_COMPOST = "new-england-compost" at "https://nevegetable.org/cultural-practices/compost",
        "New England Vegetable Management Guide, Using compost (about 1-1-1 %)";
    /// How much of a compost's nitrogen works in the first year.
    UC_COMPOST_N = "uc-compost-n" at "http://thealmonddoctor.com/almond/compost-applications-for-the-almond-orchard/",
        "UC Davis (T. Hartz), nitrogen of composts in the first year: 5–10 %";
    /// How much compost a year.
    UMN_COMPOST = "umn-compost" at "https://extension.umn.edu/yard-and-garden-news/how-much-compost-should-you-apply-your-garden-spring",
        "University of Minnesota Extension, How much compost should you apply to your garden";
    /// From a nutrient to a weight of bag.
    NC_BAGS = "nc-bags" at "https://content.ces.ncsu.edu/caring-for-your-lawn-and-the-environment",
        "NC State Extension, how much of a fertiliser gives 1 lb of nitrogen";
    /// Magnesium in magnesium sulfate.
    EPSOM_ARITHMETIC = "epsom-salt",
        "Arithmetic: magnesium is 9.86 % of MgSO4·7H2O by atomic masses";
    /// The pH that leaded soil is kept at.
    UC_LEAD = "uc-anr-8424",
        "University of California Agriculture and Natural Resources, Publication 8424: soils in urban agriculture, testing and best management";
}
