//! Publications behind the `ranges` room.

use crate::sources::Source;

sources! { RANGES:
    /// Mehlich-3 P, K, Ca and Mg.
    DELAWARE_NUTRIENTS = "delaware-nutrients" at "https://www.udel.edu/academics/colleges/canr/cooperative-extension/environmental-stewardship/soil-testing/nutrient-recommendations.html",
        "University of Delaware Cooperative Extension, nutrient recommendations (Mehlich-3)";
    /// Target pH.
    DELAWARE_PH = "delaware-ph" at "https://extension.udel.edu/factsheets/agronomic-crops/",
        "University of Delaware Cooperative Extension, soil test categories and target pH";
    /// Mehlich-3 macronutrients, micronutrients and the manganese activity index.
    RUTGERS_NUTRIENTS = "rutgers-nutrients" at "https://njaes.rutgers.edu/soil-testing-lab/relative-levels-of-nutrients.php",
        "Rutgers NJAES Soil Testing Laboratory, relative levels of nutrients (Mehlich-3)";
    /// Organic matter by texture.
    RUTGERS_ORGANIC_MATTER = "rutgers-organic-matter" at "https://njaes.rutgers.edu/soil-testing-lab/organic-matter-levels.php",
        "Rutgers NJAES Soil Testing Laboratory, organic matter levels by soil texture";
    /// Minimum levels for turf.
    MLSN = "mlsn-2014" at "https://m.moam.info/reference-pace-turf_647a4cf3097c4770028cb00e.html",
        "PACE Turf and Asian Turfgrass Center, Minimum Levels for Sustainable Nutrition soil guidelines, 2014 (Mehlich-3)";
    /// Olsen P for vegetables.
    UC_OLSEN = "uc-olsen-vegetables" at "http://sfp.ucanr.edu/pubs/Family_Farm_Series/Veg/Fertilizing/tests",
        "University of California Cooperative Extension, Family Farm Series: fertilizing vegetables, soil tests (Olsen)";
    /// The Olsen P index by volume.
    NI_PHOSPHORUS = "ni-sr-2019-81" at "https://www.legislation.gov.uk/nisr/2019/81/schedule/5/paragraph/10",
        "Northern Ireland Statutory Rule 2019/81, Schedule 5 paragraph 10: soil phosphorus index (Olsen, mg/L)";
    /// UK target indices; K and Mg indices.
    RB209 = "rb209",
        "Nutrient Management Guide (RB209), AHDB: soil indices";
    /// Modified Morgan optimum ranges.
    UMASS_REPORT = "umass-modified-morgan" at "https://scribd.com/document/258603620",
        "University of Massachusetts Soil and Plant Nutrient Testing Laboratory, soil test report, 2014 (Modified Morgan)";
    /// Modified Morgan classes of Vermont.
    VERMONT_MORGAN = "vermont-modified-morgan",
        "University of Vermont Extension, nutrient recommendations (Modified Morgan)";
    /// The Irish index, by volume.
    IRELAND_MORGAN = "ireland-soil-index" at "https://www.fertilizer-assoc.ie/soil-index-system/",
        "Fertilizer Association of Ireland, soil index system (Morgan, mg/L)";
    /// Morgan P by weight.
    CORNELL_MORGAN = "cornell-morgan",
        "Cornell University, soil test phosphorus classes (Morgan)";
    /// Bray P1.
    SARE_PHOSPHORUS = "sare-phosphorus" at "https://www.sare.org/publications/building-soils-for-better-crops/getting-the-most-from-routine-soil-tests/soil-testing-for-p/",
        "Magdoff and van Es, Building Soils for Better Crops, 3rd edition (SARE), Table 21.2: ranges for phosphorus tests";
    /// Bray P1 critical levels.
    TRI_STATE_1995 = "tri-state-1995" at "https://ocj.com/2013/02/managing-at-the-critical-level-for-p-and-k/",
        "Tri-State Fertilizer Recommendations E-2567 (Michigan, Ohio, Indiana), 1995: critical levels (Bray P1)";
    /// Bray P1 target.
    MISSOURI_PHOSPHORUS = "missouri-phosphorus" at "https://plantsciences.missouri.edu/nutrientmanagement/Phosphorus/P_in_Missouri_subsoils.htm",
        "University of Missouri, phosphorus in Missouri soils: target level (Bray P1)";
    /// Where Bray fails and Olsen holds.
    MONTANA_OLSEN = "montana-olsen-ph" at "https://landresources.montana.edu/soilfertility/timelytopics/olsenp_soilph.html",
        "Montana State University, Olsen P and soil pH";
    /// Which laboratories use which extractant, and up to which pH.
    SERA6_METHODS = "sera6-bulletin-409" at "https://studylib.net/doc/18357143/",
        "SERA-IEG-6, Procedures used by state soil testing laboratories in the southern region, Bulletin 409, 2009";
    /// Mehlich-1, Georgia.
    GEORGIA_HANDBOOK = "georgia-sb62",
        "University of Georgia, Soil Test Handbook SB 62, Coastal Plain soils (Mehlich-1)";
    /// Mehlich-1, Florida.
    FLORIDA_MEHLICH1 = "florida-mehlich-1",
        "University of Florida IFAS, soil test interpretation before 2014 (Mehlich-1)";
    /// Mehlich-1, Virginia.
    VIRGINIA_TESTS = "virginia-452-701" at "https://pubs.ext.vt.edu/452/452-701/452-701.html",
        "Virginia Tech, Explanation of Soil Tests 452-701 (Mehlich-1)";
    /// Exchangeable Ca, Mg and K.
    EXCHANGEABLE_CATIONS = "exchangeable-cation-classes" at "https://jecoenv.biomedcentral.com/articles/10.1186/s41610-019-0104-9/tables/9",
        "Tandon 2005 and Havlin and others 1999, classes of exchangeable cations, as given in Journal of Ecology and Environment, 2019, Table 9";
    /// DTPA micronutrients.
    DTPA_CLASSES = "dtpa-classes" at "https://jecoenv.biomedcentral.com/articles/10.1186/s41610-019-0104-9/tables/12",
        "Havlin and others 1999, classes of DTPA micronutrients, as given in Journal of Ecology and Environment, 2019, Table 12";
    /// Western Oregon's ranges.
    OREGON_EC1478 = "oregon-ec1478" at "https://dokumen.tips/documents/soil-test-interpretation-guide.html",
        "Horneck and others, Soil Test Interpretation Guide EC 1478, Oregon State University, 2011";
    /// Mehlich-1 K.
    ESPIRITO_SANTO = "espirito-santo-manual",
        "Manual de recomendação de calagem e adubação, Espírito Santo (Mehlich-1)";
    /// Mehlich-1 P by clay.
    CERRADO = "cerrado-2004" at "https://dareagro.blogspot.com/2023/01/tabelas-de-interpretacao-de-analise-de.html",
        "Sousa and Lobato, 2004, Cerrado: correção do solo e adubação (Mehlich-1)";
    /// Zinc by Mehlich-1 and DTPA.
    BRAZIL_ZINC = "brazil-zinc" at "https://scielo.br/j/rbeaa/a/HJpCbTNjLpSq4349C9YnV4K/",
        "Zinc for five crops (Mehlich-1 and DTPA), Rev. Bras. Eng. Agríc. Ambiental";
    /// Micronutrients by Mehlich-3, with a table of other authors.
    POLAND_MEHLICH_3 = "agronomy-15-2661" at "https://www.mdpi.com/2073-4395/15/11/2661",
        "Agronomy 15:2661, 2025: critical micronutrients in Poland (Mehlich-3)";
    /// Optimum ranges of Connecticut.
    UCONN_CROPS = "uconn-crops" at "https://soiltesting.cahnr.uconn.edu/soil-test-results-for-agronomic-crops",
        "University of Connecticut, soil test results for agronomic crops";
    /// The critical level of Morgan P.
    NEW_YORK_PHOSPHORUS = "new-york-phosphorus" at "https://www.jswconline.org/content/60/1/10.abstract",
        "Ketterings and others, 2005, J. Soil and Water Conservation 60:10 (Morgan)";
    /// Olsen or Bray P of pasture.
    AUSTRALIA_PASTURE = "australia-pasture" at "https://makingmorefromsheep.com.au",
        "Making More From Sheep, tool 7.3: phosphorus (Bray or Olsen)";
    /// Targets for Olsen P and for K by ammonium acetate.
    ONTARIO = "ontario-p-k" at "https://fieldcropnews.com/2022/03/the-ontario-phosphorus-and-potassium-database/",
        "Ontario phosphorus and potassium database, 2022";
    /// Olsen P of the northern plains.
    NORTHERN_PLAINS_OLSEN = "northern-plains-olsen",
        "Olsen phosphorus classes of the northern plains";
    /// Phosphorus for lawns.
    PENN_STATE_LAWNS = "penn-state-lawns" at "http://www.blog.asianturfgrass.com/2015/04/soil-test-phosphorus-in-turf-soils-2-datasets.html",
        "Landschoot and others, phosphorus of home lawns, Penn State (Mehlich-3)";
    /// Potassium for vegetables.
    UC_POTASSIUM = "uc-potassium" at "https://ucanr.edu/sites/uccesc/UC_Blogs/?blogasset=52676&blogpost=6029",
        "University of California Cooperative Extension, potassium fertility of Salinas Valley soils, 2011";
    /// Critical levels of three phosphorus tests.
    IOWA_PHOSPHORUS = "iowa-phosphorus" at "https://discovery.researcher.life/article/interpretation-of-soil-phosphorus-tests-for-corn-in-soils-with-varying-ph-and-calcium-carbonate-content/3e523839527032c7ba9f22ef9a3d0b50",
        "Interpretation of soil phosphorus tests for corn, Iowa";
    /// Iowa's classes of potassium.
    IOWA_POTASSIUM = "iowa-potassium-2003" at "https://core.ac.uk/works/22460990",
        "Iowa State University, potassium classes, 2003";
    /// Mehlich-3 P and K by exchange capacity.
    TRI_STATE_2020 = "tri-state-2020" at "https://agcrops.osu.edu/node/3478",
        "Tri-State Fertilizer Recommendations, Bulletin 974, 2020 (Mehlich-3)";
    /// Conventional classes for turf.
    SLAN = "slan-2003" at "https://online.flippingbook.com/view/395169/32",
        "Carrow and others, 2003, sufficiency classes for turf";
    /// Nitrate-N.
    UC_NITRATE = "uc-nitrate" at "https://docslib.org/doc/3975102",
        "University of California Cooperative Extension (A. Fulton), soil nitrate guideline";
    /// The pre-sidedress nitrate test.
    PSNT_SWEET_CORN = "psnt-sweet-corn" at "https://sites.udel.edu/weeklycropupdate/?p=18834",
        "Rutgers pre-sidedress nitrate test for sweet corn, in University of Delaware Weekly Crop Update";
    /// Names of pH classes.
    NRCS_PH = "nrcs-ph-classes" at "https://forages.oregonstate.edu/ssis/soils/characteristics/ph",
        "USDA-NRCS Soil Survey Manual, soil reaction classes";
    /// Names of salinity classes.
    NRCS_SALINITY = "nrcs-salinity-classes" at "https://sjvp.databasin.org/datasets/58b3b7b6e8de4747bece8154f3bf2379/",
        "USDA-NRCS, soil salinity classes by saturated paste";
    /// Target pH by plant.
    NCDA_HOME = "ncda-homeowners" at "https://www.ncagr.gov/divisions/agronomic-services/soil-testing/homeowners/understand-your-report",
        "North Carolina Department of Agriculture (NCDA&CS), homeowner's guide: understand your report";
    /// pH for gardens and lawns.
    CORNELL_PH = "cornell-ph",
        "Cornell University, soil pH for vegetables and lawns";
    /// pH for vegetables.
    CLEMSON_PH = "clemson-ph",
        "Clemson Extension, soil pH for vegetables";
    /// pH for vegetables and acid-loving plants.
    UCONN_PH = "uconn-ph" at "https://studylib.net/doc/7363013",
        "University of Connecticut, soil pH preferences of plants";
    /// Organic-matter classes.
    UMN_GARDEN = "umn-lawn-garden" at "https://soiltest.cfans.umn.edu/interpretation-soil-test-results-lawn-garden",
        "University of Minnesota Soil Testing Laboratory, interpretation of lawn and garden soil tests";
    /// When sodium breaks structure.
    COLORADO_SODIC = "colorado-0504" at "https://studylib.net/doc/10770022/",
        "Davis, Waskom and Bauder, Managing Sodic Soils 0.504, Colorado State University";
    /// Lead in soil.
    EPA_LEAD = "epa-lead-2025" at "https://eelp.law.harvard.edu/tracker/epa-lowered-screening-level-for-lead-in-soil-for-first-time-in-30-years",
        "US EPA, residential soil lead directive, October 2025: screening level 200 mg/kg";
    /// Equations from soil and water mixes to saturated paste.
    SALT_REVIEW = "salt-review-2018" at "https://pmc.ncbi.nlm.nih.gov/articles/PMC6002086/table/pone.0198290.t002",
        "PLoS ONE 13(6): e0198290, 2018, Table 2: equations from soil–water extracts to saturated paste";
    /// Equations by texture, 1:2.5 and 1:5.
    SONMEZ = "sonmez-2008",
        "Sonmez and others, 2008, saturated paste from 1:2.5 and 1:5 extracts by texture";
    /// Equations for 1:2 suspensions.
    HOGG_SUSPENSION = "hogg-henry-1984",
        "Hogg and Henry, 1984, saturated paste from 1:2 suspensions by texture";
    /// Australian factors for 1:5.
    AUSTRALIA_14B1 = "australia-14b1" at "https://raw.githack.com/ANZSoilData/def-au-scma/master/html/14-saturation-extracts/14B1.html",
        "Australian soil chemical methods, method 14B1, Table 14.2: saturated paste from 1:5";
}
