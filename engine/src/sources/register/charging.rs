//! Publications behind what charges biochar, in the `plan`.

use crate::sources::Source;

sources! { CHARGING:
    /// Manure in home gardens.
    UGA_MANURE = "uga-manure",
        "University of Georgia CAES, manure in home gardens: no pig, dog or cat manure; germs outlive frost";
    /// Analyses of manures as they are.
    UAF_MANURE = "uaf-manure" at "https://uaf.edu/ces/publications/database/gardening/animal-manure-fertilizer.php",
        "University of Alaska Fairbanks CES, LPM-00340, Table 1: analyses of manures";
    /// Phosphorus of manure by year.
    OMAFRA_MANURE = "omafra-manure" at "http://omafra.gov.on.ca/english/crops/facts/13-043.htm",
        "Ontario Ministry of Agriculture, factsheet 13-043 (Brown, 2013): 40 % of the phosphorus of manure in the first year";
    /// Nutrients of urine.
    JONSSON_2004 = "jonsson-2004",
        "Jönsson, Richert Stintzing, Vinnerås & Salomon, Guidelines on the use of urine and faeces in crop production, EcoSanRes 2004-2 (7.3 g N, 0.67 g P, 1.8 g K in a litre)";
    /// Ions of stored urine.
    KIRCHMANN_1995 = "kirchmann-1995" at "doi:10.1007/BF00750100",
        "Kirchmann & Pettersson, Human urine: chemical composition and fertilizer use efficiency, Fertilizer Research 40:149, 1995";
    /// Storage and waiting times for urine.
    WHO_EXCRETA_2006 = "who-excreta-2006",
        "World Health Organization, Guidelines for the safe use of wastewater, excreta and greywater, volume 4, 2006: stored urine";
    /// Nitrate in worm castings and in compost.
    NMSU_CASTINGS = "nmsu-castings",
        "New Mexico State University (Dickerson), vermicompost: nitrate-N 902 ppm, compost 156 ppm";
    /// Analyses of organic fertilisers.
    TEXAS_ORGANICS = "texas-organics" at "https://plantanswers.com/earthkind/ekgarden8.html",
        "Texas A&M AgriLife, Earth-Kind gardening: some common organic fertilizers (blood 10-1.5-0, wood ashes 0-2-6)";
    /// Wood ash as a fertiliser.
    UC_WOOD_ASH = "uc-wood-ash",
        "Perry, University of California Cooperative Extension, Stanislaus County: Wood ashes as a garden fertilizer (about 0-1-3, 25 % calcium or more)";
    /// Usual labels of fish fertilisers.
    FISH_LABELS = "fish-labels",
        "Usual labels of fish emulsion (5-2-2) and hydrolysate, as trade notes give them";
    /// Comfrey liquid.
    COMFREY_1990 = "comfrey-1990",
        "Harris, Bourne, Gits & Lennartsson, The use of comfrey as a source of plant nutrients: rich in potassium, and it varies from cut to cut";
    /// What vegetables take out of the soil.
    CROP_REMOVAL = "new-england-removal" at "https://nevegetable.org/cultural-practices/removal-nutrients-soil",
        "New England Vegetable Management Guide, Table 4: approximate nutrient removal by vegetable crops";
    /// Phosphorus on soils that have too much.
    DELAWARE_P = "delaware-p" at "http://www.udel.edu/academics/colleges/canr/cooperative-extension/fact-sheets/phosphorus-removal-delaware-crops/",
        "University of Delaware, Phosphorus removal by Delaware crops: on high-P soils no more than crops remove";
    /// Salts by conductivity.
    USSL_60 = "ussl-60",
        "US Salinity Laboratory, Agriculture Handbook 60, 1954: cations in meq/L are about ten times the conductivity in dS/m";
    /// Salts of compost.
    CLEMSON_COMPOST = "clemson-compost",
        "Clemson University, reading a compost analysis: 1 to 10 dS/m in five parts of water";
}
