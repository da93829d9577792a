//! Publications behind what charges biochar.

use crate::sources::Source;

/// All of them.
pub static CHARGING: &[&Source] = &[
    &UGA_MANURE,
    &UAF_MANURE,
    &OMAFRA_MANURE,
    &JONSSON_2004,
    &KIRCHMANN_1995,
    &WHO_EXCRETA_2006,
    &NMSU_CASTINGS,
    &TEXAS_ORGANICS,
    &UC_WOOD_ASH,
    &FISH_LABELS,
    &COMFREY_1990,
    &CROP_REMOVAL,
    &DELAWARE_P,
    &USSL_60,
    &CLEMSON_COMPOST,
];

/// Manure in home gardens.
pub static UGA_MANURE: Source = Source {
    id: "uga-manure",
    title: "University of Georgia CAES, manure in home gardens: no pig, dog or cat manure; germs outlive frost",
    place: "",
};

/// Analyses of manures as they are.
pub static UAF_MANURE: Source = Source {
    id: "uaf-manure",
    title: "University of Alaska Fairbanks CES, LPM-00340, Table 1: analyses of manures",
    place: "https://uaf.edu/ces/publications/database/gardening/animal-manure-fertilizer.php",
};

/// Phosphorus of manure by year.
pub static OMAFRA_MANURE: Source = Source {
    id: "omafra-manure",
    title: "Ontario Ministry of Agriculture, factsheet 13-043 (Brown, 2013): 40 % of the phosphorus of manure in the first year",
    place: "http://omafra.gov.on.ca/english/crops/facts/13-043.htm",
};

/// Nutrients of urine.
pub static JONSSON_2004: Source = Source {
    id: "jonsson-2004",
    title: "Jönsson, Richert Stintzing, Vinnerås & Salomon, Guidelines on the use of urine and faeces in crop production, EcoSanRes 2004-2 (7.3 g N, 0.67 g P, 1.8 g K in a litre)",
    place: "",
};

/// Ions of stored urine.
pub static KIRCHMANN_1995: Source = Source {
    id: "kirchmann-1995",
    title: "Kirchmann & Pettersson, Human urine: chemical composition and fertilizer use efficiency, Fertilizer Research 40:149, 1995",
    place: "doi:10.1007/BF00750100",
};

/// Storage and waiting times for urine.
pub static WHO_EXCRETA_2006: Source = Source {
    id: "who-excreta-2006",
    title: "World Health Organization, Guidelines for the safe use of wastewater, excreta and greywater, volume 4, 2006: stored urine",
    place: "",
};

/// Nitrate in worm castings and in compost.
pub static NMSU_CASTINGS: Source = Source {
    id: "nmsu-castings",
    title: "New Mexico State University (Dickerson), vermicompost: nitrate-N 902 ppm, compost 156 ppm",
    place: "",
};

/// Analyses of organic fertilisers.
pub static TEXAS_ORGANICS: Source = Source {
    id: "texas-organics",
    title: "Texas A&M AgriLife, Earth-Kind gardening: some common organic fertilizers (blood 10-1.5-0, wood ashes 0-2-6)",
    place: "https://plantanswers.com/earthkind/ekgarden8.html",
};

/// Wood ash as a fertiliser.
pub static UC_WOOD_ASH: Source = Source {
    id: "uc-wood-ash",
    title: "Perry, University of California Cooperative Extension, Stanislaus County: Wood ashes as a garden fertilizer (about 0-1-3, 25 % calcium or more)",
    place: "",
};

/// Usual labels of fish fertilisers.
pub static FISH_LABELS: Source = Source {
    id: "fish-labels",
    title: "Usual labels of fish emulsion (5-2-2) and hydrolysate, as trade notes give them",
    place: "",
};

/// Comfrey liquid.
pub static COMFREY_1990: Source = Source {
    id: "comfrey-1990",
    title: "Harris, Bourne, Gits & Lennartsson, The use of comfrey as a source of plant nutrients: rich in potassium, and it varies from cut to cut",
    place: "",
};

/// What vegetables take out of the soil.
pub static CROP_REMOVAL: Source = Source {
    id: "new-england-removal",
    title: "New England Vegetable Management Guide, Table 4: approximate nutrient removal by vegetable crops",
    place: "https://nevegetable.org/cultural-practices/removal-nutrients-soil",
};

/// Phosphorus on soils that have too much.
pub static DELAWARE_P: Source = Source {
    id: "delaware-p",
    title: "University of Delaware, Phosphorus removal by Delaware crops: on high-P soils no more than crops remove",
    place: "http://www.udel.edu/academics/colleges/canr/cooperative-extension/fact-sheets/phosphorus-removal-delaware-crops/",
};

/// Salts by conductivity.
pub static USSL_60: Source = Source {
    id: "ussl-60",
    title: "US Salinity Laboratory, Agriculture Handbook 60, 1954: cations in meq/L are about ten times the conductivity in dS/m",
    place: "",
};

/// Salts of compost.
pub static CLEMSON_COMPOST: Source = Source {
    id: "clemson-compost",
    title: "Clemson University, reading a compost analysis: 1 to 10 dS/m in five parts of water",
    place: "",
};
