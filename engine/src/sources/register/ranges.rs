//! Publications behind the `ranges` room.

use crate::sources::Source;

/// All of them.
pub static RANGES: &[&Source] = &[
    &DELAWARE_NUTRIENTS,
    &DELAWARE_PH,
    &RUTGERS_NUTRIENTS,
    &RUTGERS_ORGANIC_MATTER,
    &MLSN,
    &UC_OLSEN,
    &NI_PHOSPHORUS,
    &RB209,
    &UMASS_REPORT,
    &VERMONT_MORGAN,
    &IRELAND_MORGAN,
    &CORNELL_MORGAN,
    &SARE_PHOSPHORUS,
    &TRI_STATE_1995,
    &MISSOURI_PHOSPHORUS,
    &MONTANA_OLSEN,
    &SERA6_METHODS,
    &GEORGIA_HANDBOOK,
    &FLORIDA_MEHLICH1,
    &VIRGINIA_TESTS,
    &EXCHANGEABLE_CATIONS,
    &DTPA_CLASSES,
    &OREGON_EC1478,
    &ESPIRITO_SANTO,
    &CERRADO,
    &BRAZIL_ZINC,
    &POLAND_MEHLICH_3,
    &UCONN_CROPS,
    &NEW_YORK_PHOSPHORUS,
    &AUSTRALIA_PASTURE,
    &ONTARIO,
    &NORTHERN_PLAINS_OLSEN,
    &PENN_STATE_LAWNS,
    &UC_POTASSIUM,
    &IOWA_PHOSPHORUS,
    &IOWA_POTASSIUM,
    &TRI_STATE_2020,
    &SLAN,
    &UC_NITRATE,
    &PSNT_SWEET_CORN,
    &NRCS_PH,
    &NRCS_SALINITY,
    &NCDA_HOME,
    &CORNELL_PH,
    &CLEMSON_PH,
    &UCONN_PH,
    &UMN_GARDEN,
    &COLORADO_SODIC,
    &EPA_LEAD,
    &SALT_REVIEW,
    &SONMEZ,
    &HOGG_SUSPENSION,
    &AUSTRALIA_14B1,
];

/// Mehlich-3 P, K, Ca and Mg.
pub static DELAWARE_NUTRIENTS: Source = Source {
    id: "delaware-nutrients",
    title: "University of Delaware Cooperative Extension, nutrient recommendations (Mehlich-3)",
    place: "https://www.udel.edu/academics/colleges/canr/cooperative-extension/environmental-stewardship/soil-testing/nutrient-recommendations.html",
};

/// Target pH.
pub static DELAWARE_PH: Source = Source {
    id: "delaware-ph",
    title: "University of Delaware Cooperative Extension, soil test categories and target pH",
    place: "https://extension.udel.edu/factsheets/agronomic-crops/",
};

/// Mehlich-3 macronutrients, micronutrients and the manganese activity index.
pub static RUTGERS_NUTRIENTS: Source = Source {
    id: "rutgers-nutrients",
    title: "Rutgers NJAES Soil Testing Laboratory, relative levels of nutrients (Mehlich-3)",
    place: "https://njaes.rutgers.edu/soil-testing-lab/relative-levels-of-nutrients.php",
};

/// Organic matter by texture.
pub static RUTGERS_ORGANIC_MATTER: Source = Source {
    id: "rutgers-organic-matter",
    title: "Rutgers NJAES Soil Testing Laboratory, organic matter levels by soil texture",
    place: "https://njaes.rutgers.edu/soil-testing-lab/organic-matter-levels.php",
};

/// Minimum levels for turf.
pub static MLSN: Source = Source {
    id: "mlsn-2014",
    title: "PACE Turf and Asian Turfgrass Center, Minimum Levels for Sustainable Nutrition soil guidelines, 2014 (Mehlich-3)",
    place: "https://m.moam.info/reference-pace-turf_647a4cf3097c4770028cb00e.html",
};

/// Olsen P for vegetables.
pub static UC_OLSEN: Source = Source {
    id: "uc-olsen-vegetables",
    title: "University of California Cooperative Extension, Family Farm Series: fertilizing vegetables, soil tests (Olsen)",
    place: "http://sfp.ucanr.edu/pubs/Family_Farm_Series/Veg/Fertilizing/tests",
};

/// The Olsen P index by volume.
pub static NI_PHOSPHORUS: Source = Source {
    id: "ni-sr-2019-81",
    title: "Northern Ireland Statutory Rule 2019/81, Schedule 5 paragraph 10: soil phosphorus index (Olsen, mg/L)",
    place: "https://www.legislation.gov.uk/nisr/2019/81/schedule/5/paragraph/10",
};

/// UK target indices; K and Mg indices.
pub static RB209: Source = Source {
    id: "rb209",
    title: "Nutrient Management Guide (RB209), AHDB: soil indices",
    place: "",
};

/// Modified Morgan optimum ranges.
pub static UMASS_REPORT: Source = Source {
    id: "umass-modified-morgan",
    title: "University of Massachusetts Soil and Plant Nutrient Testing Laboratory, soil test report, 2014 (Modified Morgan)",
    place: "https://scribd.com/document/258603620",
};

/// Modified Morgan classes of Vermont.
pub static VERMONT_MORGAN: Source = Source {
    id: "vermont-modified-morgan",
    title: "University of Vermont Extension, nutrient recommendations (Modified Morgan)",
    place: "",
};

/// The Irish index, by volume.
pub static IRELAND_MORGAN: Source = Source {
    id: "ireland-soil-index",
    title: "Fertilizer Association of Ireland, soil index system (Morgan, mg/L)",
    place: "https://www.fertilizer-assoc.ie/soil-index-system/",
};

/// Morgan P by weight.
pub static CORNELL_MORGAN: Source = Source {
    id: "cornell-morgan",
    title: "Cornell University, soil test phosphorus classes (Morgan)",
    place: "",
};

/// Bray P1.
pub static SARE_PHOSPHORUS: Source = Source {
    id: "sare-phosphorus",
    title: "Magdoff and van Es, Building Soils for Better Crops, 3rd edition (SARE), Table 21.2: ranges for phosphorus tests",
    place: "https://www.sare.org/publications/building-soils-for-better-crops/getting-the-most-from-routine-soil-tests/soil-testing-for-p/",
};

/// Bray P1 critical levels.
pub static TRI_STATE_1995: Source = Source {
    id: "tri-state-1995",
    title: "Tri-State Fertilizer Recommendations E-2567 (Michigan, Ohio, Indiana), 1995: critical levels (Bray P1)",
    place: "https://ocj.com/2013/02/managing-at-the-critical-level-for-p-and-k/",
};

/// Bray P1 target.
pub static MISSOURI_PHOSPHORUS: Source = Source {
    id: "missouri-phosphorus",
    title: "University of Missouri, phosphorus in Missouri soils: target level (Bray P1)",
    place: "https://plantsciences.missouri.edu/nutrientmanagement/Phosphorus/P_in_Missouri_subsoils.htm",
};

/// Where Bray fails and Olsen holds.
pub static MONTANA_OLSEN: Source = Source {
    id: "montana-olsen-ph",
    title: "Montana State University, Olsen P and soil pH",
    place: "https://landresources.montana.edu/soilfertility/timelytopics/olsenp_soilph.html",
};

/// Which laboratories use which extractant, and up to which pH.
pub static SERA6_METHODS: Source = Source {
    id: "sera6-bulletin-409",
    title: "SERA-IEG-6, Procedures used by state soil testing laboratories in the southern region, Bulletin 409, 2009",
    place: "https://studylib.net/doc/18357143/",
};

/// Mehlich-1, Georgia.
pub static GEORGIA_HANDBOOK: Source = Source {
    id: "georgia-sb62",
    title: "University of Georgia, Soil Test Handbook SB 62, Coastal Plain soils (Mehlich-1)",
    place: "",
};

/// Mehlich-1, Florida.
pub static FLORIDA_MEHLICH1: Source = Source {
    id: "florida-mehlich-1",
    title: "University of Florida IFAS, soil test interpretation before 2014 (Mehlich-1)",
    place: "",
};

/// Mehlich-1, Virginia.
pub static VIRGINIA_TESTS: Source = Source {
    id: "virginia-452-701",
    title: "Virginia Tech, Explanation of Soil Tests 452-701 (Mehlich-1)",
    place: "https://pubs.ext.vt.edu/452/452-701/452-701.html",
};

/// Exchangeable Ca, Mg and K.
pub static EXCHANGEABLE_CATIONS: Source = Source {
    id: "exchangeable-cation-classes",
    title: "Tandon 2005 and Havlin and others 1999, classes of exchangeable cations, as given in Journal of Ecology and Environment, 2019, Table 9",
    place: "https://jecoenv.biomedcentral.com/articles/10.1186/s41610-019-0104-9/tables/9",
};

/// DTPA micronutrients.
pub static DTPA_CLASSES: Source = Source {
    id: "dtpa-classes",
    title: "Havlin and others 1999, classes of DTPA micronutrients, as given in Journal of Ecology and Environment, 2019, Table 12",
    place: "https://jecoenv.biomedcentral.com/articles/10.1186/s41610-019-0104-9/tables/12",
};

/// Western Oregon's ranges.
pub static OREGON_EC1478: Source = Source {
    id: "oregon-ec1478",
    title: "Horneck and others, Soil Test Interpretation Guide EC 1478, Oregon State University, 2011",
    place: "https://dokumen.tips/documents/soil-test-interpretation-guide.html",
};

/// Nitrate-N.
pub static UC_NITRATE: Source = Source {
    id: "uc-nitrate",
    title: "University of California Cooperative Extension (A. Fulton), soil nitrate guideline",
    place: "https://docslib.org/doc/3975102",
};

/// The pre-sidedress nitrate test.
pub static PSNT_SWEET_CORN: Source = Source {
    id: "psnt-sweet-corn",
    title: "Rutgers pre-sidedress nitrate test for sweet corn, in University of Delaware Weekly Crop Update",
    place: "https://sites.udel.edu/weeklycropupdate/?p=18834",
};

/// Names of pH classes.
pub static NRCS_PH: Source = Source {
    id: "nrcs-ph-classes",
    title: "USDA-NRCS Soil Survey Manual, soil reaction classes",
    place: "https://forages.oregonstate.edu/ssis/soils/characteristics/ph",
};

/// Names of salinity classes.
pub static NRCS_SALINITY: Source = Source {
    id: "nrcs-salinity-classes",
    title: "USDA-NRCS, soil salinity classes by saturated paste",
    place: "https://sjvp.databasin.org/datasets/58b3b7b6e8de4747bece8154f3bf2379/",
};

/// Target pH by plant.
pub static NCDA_HOME: Source = Source {
    id: "ncda-homeowners",
    title: "North Carolina Department of Agriculture (NCDA&CS), homeowner's guide: understand your report",
    place: "https://www.ncagr.gov/divisions/agronomic-services/soil-testing/homeowners/understand-your-report",
};

/// pH for gardens and lawns.
pub static CORNELL_PH: Source = Source {
    id: "cornell-ph",
    title: "Cornell University, soil pH for vegetables and lawns",
    place: "",
};

/// pH for vegetables.
pub static CLEMSON_PH: Source =
    Source { id: "clemson-ph", title: "Clemson Extension, soil pH for vegetables", place: "" };

/// pH for vegetables and acid-loving plants.
pub static UCONN_PH: Source = Source {
    id: "uconn-ph",
    title: "University of Connecticut, soil pH preferences of plants",
    place: "https://studylib.net/doc/7363013",
};

/// Organic-matter classes.
pub static UMN_GARDEN: Source = Source {
    id: "umn-lawn-garden",
    title: "University of Minnesota Soil Testing Laboratory, interpretation of lawn and garden soil tests",
    place: "https://soiltest.cfans.umn.edu/interpretation-soil-test-results-lawn-garden",
};

/// When sodium breaks structure.
pub static COLORADO_SODIC: Source = Source {
    id: "colorado-0504",
    title: "Davis, Waskom and Bauder, Managing Sodic Soils 0.504, Colorado State University",
    place: "https://studylib.net/doc/10770022/",
};

/// Lead in soil.
pub static EPA_LEAD: Source = Source {
    id: "epa-lead-2025",
    title: "US EPA, residential soil lead directive, October 2025: screening level 200 mg/kg",
    place: "https://eelp.law.harvard.edu/tracker/epa-lowered-screening-level-for-lead-in-soil-for-first-time-in-30-years",
};

/// Equations from soil and water mixes to saturated paste.
pub static SALT_REVIEW: Source = Source {
    id: "salt-review-2018",
    title: "PLoS ONE 13(6): e0198290, 2018, Table 2: equations from soil–water extracts to saturated paste",
    place: "https://pmc.ncbi.nlm.nih.gov/articles/PMC6002086/table/pone.0198290.t002",
};

/// Equations by texture, 1:2.5 and 1:5.
pub static SONMEZ: Source = Source {
    id: "sonmez-2008",
    title: "Sonmez and others, 2008, saturated paste from 1:2.5 and 1:5 extracts by texture",
    place: "",
};

/// Equations for 1:2 suspensions.
pub static HOGG_SUSPENSION: Source = Source {
    id: "hogg-henry-1984",
    title: "Hogg and Henry, 1984, saturated paste from 1:2 suspensions by texture",
    place: "",
};

/// Australian factors for 1:5.
pub static AUSTRALIA_14B1: Source = Source {
    id: "australia-14b1",
    title: "Australian soil chemical methods, method 14B1, Table 14.2: saturated paste from 1:5",
    place: "https://raw.githack.com/ANZSoilData/def-au-scma/master/html/14-saturation-extracts/14B1.html",
};

/// Conventional classes for turf.
pub static SLAN: Source = Source {
    id: "slan-2003",
    title: "Carrow and others, 2003, sufficiency classes for turf",
    place: "https://online.flippingbook.com/view/395169/32",
};

/// Mehlich-3 P and K by exchange capacity.
pub static TRI_STATE_2020: Source = Source {
    id: "tri-state-2020",
    title: "Tri-State Fertilizer Recommendations, Bulletin 974, 2020 (Mehlich-3)",
    place: "https://agcrops.osu.edu/node/3478",
};

/// Iowa's classes of potassium.
pub static IOWA_POTASSIUM: Source = Source {
    id: "iowa-potassium-2003",
    title: "Iowa State University, potassium classes, 2003",
    place: "https://core.ac.uk/works/22460990",
};

/// Critical levels of three phosphorus tests.
pub static IOWA_PHOSPHORUS: Source = Source {
    id: "iowa-phosphorus",
    title: "Interpretation of soil phosphorus tests for corn, Iowa",
    place: "https://discovery.researcher.life/article/interpretation-of-soil-phosphorus-tests-for-corn-in-soils-with-varying-ph-and-calcium-carbonate-content/3e523839527032c7ba9f22ef9a3d0b50",
};

/// Potassium for vegetables.
pub static UC_POTASSIUM: Source = Source {
    id: "uc-potassium",
    title: "University of California Cooperative Extension, potassium fertility of Salinas Valley soils, 2011",
    place: "https://ucanr.edu/sites/uccesc/UC_Blogs/?blogasset=52676&blogpost=6029",
};

/// Phosphorus for lawns.
pub static PENN_STATE_LAWNS: Source = Source {
    id: "penn-state-lawns",
    title: "Landschoot and others, phosphorus of home lawns, Penn State (Mehlich-3)",
    place: "http://www.blog.asianturfgrass.com/2015/04/soil-test-phosphorus-in-turf-soils-2-datasets.html",
};

/// Olsen P of the northern plains.
pub static NORTHERN_PLAINS_OLSEN: Source = Source {
    id: "northern-plains-olsen",
    title: "Olsen phosphorus classes of the northern plains",
    place: "",
};

/// Targets for Olsen P and for K by ammonium acetate.
pub static ONTARIO: Source = Source {
    id: "ontario-p-k",
    title: "Ontario phosphorus and potassium database, 2022",
    place: "https://fieldcropnews.com/2022/03/the-ontario-phosphorus-and-potassium-database/",
};

/// Olsen or Bray P of pasture.
pub static AUSTRALIA_PASTURE: Source = Source {
    id: "australia-pasture",
    title: "Making More From Sheep, tool 7.3: phosphorus (Bray or Olsen)",
    place: "https://makingmorefromsheep.com.au",
};

/// The critical level of Morgan P.
pub static NEW_YORK_PHOSPHORUS: Source = Source {
    id: "new-york-phosphorus",
    title: "Ketterings and others, 2005, J. Soil and Water Conservation 60:10 (Morgan)",
    place: "https://www.jswconline.org/content/60/1/10.abstract",
};

/// Optimum ranges of Connecticut.
pub static UCONN_CROPS: Source = Source {
    id: "uconn-crops",
    title: "University of Connecticut, soil test results for agronomic crops",
    place: "https://soiltesting.cahnr.uconn.edu/soil-test-results-for-agronomic-crops",
};

/// Micronutrients by Mehlich-3, with a table of other authors.
pub static POLAND_MEHLICH_3: Source = Source {
    id: "agronomy-15-2661",
    title: "Agronomy 15:2661, 2025: critical micronutrients in Poland (Mehlich-3)",
    place: "https://www.mdpi.com/2073-4395/15/11/2661",
};

/// Zinc by Mehlich-1 and DTPA.
pub static BRAZIL_ZINC: Source = Source {
    id: "brazil-zinc",
    title: "Zinc for five crops (Mehlich-1 and DTPA), Rev. Bras. Eng. Agríc. Ambiental",
    place: "https://scielo.br/j/rbeaa/a/HJpCbTNjLpSq4349C9YnV4K/",
};

/// Mehlich-1 P by clay.
pub static CERRADO: Source = Source {
    id: "cerrado-2004",
    title: "Sousa and Lobato, 2004, Cerrado: correção do solo e adubação (Mehlich-1)",
    place: "https://dareagro.blogspot.com/2023/01/tabelas-de-interpretacao-de-analise-de.html",
};

/// Mehlich-1 K.
pub static ESPIRITO_SANTO: Source = Source {
    id: "espirito-santo-manual",
    title: "Manual de recomendação de calagem e adubação, Espírito Santo (Mehlich-1)",
    place: "",
};
