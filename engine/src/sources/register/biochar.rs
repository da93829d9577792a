//! Publications behind the `biochar` room and the cautions.

use crate::sources::Source;

/// Rates, best uses and stop rules.
pub static GUO_2020: Source = Source {
    id: "guo-2020",
    title: "Guo, The 3R principles for applying biochar to improve soil health, Soil Systems 4(1):9, 2020",
    place: "doi:10.3390/soilsystems4010009",
};

/// Yield by climate.
pub static JEFFERY_2017: Source = Source {
    id: "jeffery-2017",
    title: "Jeffery et al., Biochar boosts tropical but not temperate crop yields, Environmental Research Letters 12:053001, 2017",
    place: "",
};

/// Yield by soil.
pub static JEFFERY_2011: Source = Source {
    id: "jeffery-2011",
    title: "Jeffery et al., A quantitative review of the effects of biochar application to soils on crop productivity, Agriculture, Ecosystems & Environment 144:175, 2011",
    place: "doi:10.1016/j.agee.2011.08.015",
};

/// Nitrate leaching.
pub static BORCHARD_2019: Source = Source {
    id: "borchard-2019",
    title: "Borchard et al., Biochar, soil and land-use interactions that reduce nitrate leaching and N2O emissions: a meta-analysis, Science of the Total Environment 651:2354, 2019",
    place: "",
};

/// Mineral nitrogen in the first months.
pub static NGUYEN_2017: Source = Source {
    id: "nguyen-2017",
    title: "Nguyen et al., Effects of biochar on soil available inorganic nitrogen: a review and meta-analysis, Geoderma 288:79, 2017",
    place: "doi:10.1016/j.geoderma.2016.11.004",
};

/// Mineral nitrogen by dose.
pub static ILAN_2020: Source = Source {
    id: "ilan-2020",
    title: "Wood biochar at 0.5, 1 and 2 % with manure compost in three soils over 371 days (National Ilan University), Agronomy 10:444, 2020",
    place: "",
};

/// No mean change in mineral nitrogen.
pub static BIEDERMAN_2013: Source = Source {
    id: "biederman-2013",
    title: "Biederman & Harpole, Biochar and its effects on plant productivity and nutrient cycling: a meta-analysis, GCB Bioenergy 5:202, 2013",
    place: "doi:10.1111/gcbb.12037",
};

/// Charged against uncharged biochar on poor sand.
pub static KAMMANN_2015: Source = Source {
    id: "kammann-2015",
    title: "Kammann et al., Plant growth improvement mediated by nitrate capture in co-composted biochar, Scientific Reports 5:11080, 2015",
    place: "",
};

/// Biochar with and without fertiliser in the field.
pub static YE_2020: Source = Source {
    id: "ye-2020",
    title: "Ye et al., Biochar effects on crop yields with and without fertilizer: a meta-analysis of field studies, Soil Use and Management 36:2, 2020",
    place: "",
};

/// Nitrate leaching from loam and from sand.
pub static LIU_2017: Source = Source {
    id: "liu-2017",
    title: "Liu et al., nitrate leaching from loam and sand with 2 and 4 % biochar, Journal of Soil Science and Plant Nutrition 17(2):515, 2017",
    place: "",
};

/// Sandy soils.
pub static BEKCHANOVA_2024: Source = Source {
    id: "bekchanova-2024",
    title: "Bekchanova et al., Biochar improves the nutrient cycle in sandy-textured soils and increases crop yield: a systematic review, Environmental Evidence 13:3, 2024",
    place: "doi:10.1186/s13750-024-00326-5",
};

/// Kinetics of uptake from solution.
pub static HYDROCHAR_KINETICS: Source = Source {
    id: "hydrochar-kinetics",
    title: "Phosphate uptake kinetics of chars from solution, PMC8694899, Table 3 (90 % taken up after 64 to 96 hours)",
    place: "https://www.ncbi.nlm.nih.gov/pmc/articles/PMC8694899/",
};

/// Exchangeable calcium after mixing in biochar.
pub static HAILEGNAW_2019: Source = Source {
    id: "hailegnaw-2019",
    title: "Hailegnaw et al., Mutual relationships of biochar and soil pH, CEC and exchangeable base cations, Journal of Soils and Sediments 19:2405, 2019",
    place: "",
};

/// Nutrients biochar gives up to repeated extraction.
pub static ANGST_SOHI_2013: Source = Source {
    id: "angst-sohi-2013",
    title: "Angst & Sohi, Establishing release dynamics for plant nutrients from biochar, GCB Bioenergy 5:221, 2013",
    place: "",
};

/// Properties by feedstock.
pub static IPPOLITO_2020: Source = Source {
    id: "ippolito-2020",
    title: "Ippolito et al., Feedstock choice, pyrolysis temperature and type influence biochar characteristics, Biochar 2:421, 2020",
    place: "doi:10.1007/s42773-020-00067-x",
};

/// Water that wood biochar takes up.
pub static SUANSA_2021: Source = Source {
    id: "suansa-2021",
    title: "Suansa et al., branch-wood biochar at 300 to 500 °C, BioResources 16(2):2824, 2021",
    place: "",
};

/// Liming value of biochars.
pub static ADEWUMI_2025: Source = Source {
    id: "adewumi-2025",
    title: "Adewumi, He, Dhandapani & Guo, Liming value of 19 biochars, Agricultural & Environmental Letters, 2025",
    place: "doi:10.1002/ael2.70017",
};

/// How a pH change follows from lime and buffering.
pub static SERA6_LIME: Source = Source {
    id: "sera-6-lime",
    title: "SERA-6 fact sheet 3, and Kissel & Sonon, UGA Circular 874: lime buffer capacity",
    place: "",
};

/// Buffering by organic carbon and clay.
pub static AITKEN_1990: Source = Source {
    id: "aitken-1990",
    title: "Aitken, Moody & McKinley, Lime requirement of acidic Queensland soils, Australian Journal of Soil Research 28, 1990",
    place: "",
};

/// Cation exchange constants.
pub static PHREEQC_EXCHANGE: Source = Source {
    id: "phreeqc-exchange",
    title: "US Geological Survey, PHREEQC database (phreeqc.dat): exchange constants, phreeqc.dat, as distributed with PHREEQC version 3",
    place: "",
};

/// Salts in dry-land soils after biochar.
pub static DRYLANDS_2025: Source = Source {
    id: "drylands-2025",
    title: "Biochar in dry-land soils: a meta-analysis of 40 papers, Agronomy 15(11):2609, 2025",
    place: "",
};

/// Whether biochar catches fire.
pub static FLAMMABILITY_2014: Source = Source {
    id: "flammability-2014",
    title: "Short- and long-term flammability of biochars, Biomass and Bioenergy 69:183, 2014",
    place: "",
};

/// How much water makes biochar safe to store.
pub static DEL_CAMPO_2021: Source = Source {
    id: "del-campo-2021",
    title: "del Campo et al., flammability of biochar and its moisture, ACI Avances en Ciencias 13(2), 2021",
    place: "doi:10.18272/aci.v13i2.2314",
};

/// Herbicides on biochar.
pub static SONI_2015: Source = Source {
    id: "soni-2015",
    title: "Soni et al., weed control by atrazine and pendimethalin in soil with biochar, Weed Technology, 2015",
    place: "",
};

/// Raw manure intervals.
pub static NOP_205_203: Source = Source {
    id: "nop-205-203",
    title: "US National Organic Program, 7 CFR 205.203(c): raw manure and compost",
    place: "https://law.lawstack.com/cfr/7/205.203/",
};

/// Compost tea with additives.
pub static NOSB_TEA_2004: Source = Source {
    id: "nosb-tea-2004",
    title: "US National Organic Standards Board, Compost Tea Task Force report, 6 April 2004",
    place: "",
};

/// Lead in garden soils.
pub static LEAD_UMD: Source = Source {
    id: "lead-umd-hg18",
    title: "University of Maryland Extension HG18, Lead in garden soils",
    place: "https://extension.umd.edu/resource/lead-garden-soils",
};

/// All of them.
pub static BIOCHAR: &[&Source] = &[
    &GUO_2020,
    &JEFFERY_2017,
    &JEFFERY_2011,
    &BORCHARD_2019,
    &NGUYEN_2017,
    &ILAN_2020,
    &BIEDERMAN_2013,
    &KAMMANN_2015,
    &YE_2020,
    &LIU_2017,
    &BEKCHANOVA_2024,
    &HYDROCHAR_KINETICS,
    &HAILEGNAW_2019,
    &ANGST_SOHI_2013,
    &IPPOLITO_2020,
    &SUANSA_2021,
    &ADEWUMI_2025,
    &SERA6_LIME,
    &AITKEN_1990,
    &PHREEQC_EXCHANGE,
    &DRYLANDS_2025,
    &FLAMMABILITY_2014,
    &DEL_CAMPO_2021,
    &SONI_2015,
    &NOP_205_203,
    &NOSB_TEA_2004,
    &LEAD_UMD,
];
