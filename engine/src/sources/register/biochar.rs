//! Publications behind the `plan` with biochar: its way, its rates and its cautions; and behind
//! what `details` says of it.

use crate::sources::Source;

sources! { BIOCHAR:
    /// Rates, best uses and stop rules.
    GUO_2020 = "guo-2020" at "doi:10.3390/soilsystems4010009",
        "Guo, The 3R principles for applying biochar to improve soil health, Soil Systems 4(1):9, 2020";
    /// Yield by climate.
    JEFFERY_2017 = "jeffery-2017",
        "Jeffery et al., Biochar boosts tropical but not temperate crop yields, Environmental Research Letters 12:053001, 2017";
    /// Yield by soil.
    JEFFERY_2011 = "jeffery-2011" at "doi:10.1016/j.agee.2011.08.015",
        "Jeffery et al., A quantitative review of the effects of biochar application to soils on crop productivity, Agriculture, Ecosystems & Environment 144:175, 2011";
    /// Nitrate leaching.
    BORCHARD_2019 = "borchard-2019",
        "Borchard et al., Biochar, soil and land-use interactions that reduce nitrate leaching and N2O emissions: a meta-analysis, Science of the Total Environment 651:2354, 2019";
    /// Mineral nitrogen in the first months.
    NGUYEN_2017 = "nguyen-2017" at "doi:10.1016/j.geoderma.2016.11.004",
        "Nguyen et al., Effects of biochar on soil available inorganic nitrogen: a review and meta-analysis, Geoderma 288:79, 2017";
    /// Mineral nitrogen by dose.
    ILAN_2020 = "ilan-2020",
        "Wood biochar at 0.5, 1 and 2 % with manure compost in three soils over 371 days (National Ilan University), Agronomy 10:444, 2020";
    /// No mean change in mineral nitrogen.
    BIEDERMAN_2013 = "biederman-2013" at "doi:10.1111/gcbb.12037",
        "Biederman & Harpole, Biochar and its effects on plant productivity and nutrient cycling: a meta-analysis, GCB Bioenergy 5:202, 2013";
    /// Charged against uncharged biochar on poor sand.
    KAMMANN_2015 = "kammann-2015",
        "Kammann et al., Plant growth improvement mediated by nitrate capture in co-composted biochar, Scientific Reports 5:11080, 2015";
    /// Biochar with and without fertiliser in the field.
    YE_2020 = "ye-2020",
        "Ye et al., Biochar effects on crop yields with and without fertilizer: a meta-analysis of field studies, Soil Use and Management 36:2, 2020";
    /// Nitrate leaching from loam and from sand.
    LIU_2017 = "liu-2017",
        "Liu et al., nitrate leaching from loam and sand with 2 and 4 % biochar, Journal of Soil Science and Plant Nutrition 17(2):515, 2017";
    /// Sandy soils.
    BEKCHANOVA_2024 = "bekchanova-2024" at "doi:10.1186/s13750-024-00326-5",
        "Bekchanova et al., Biochar improves the nutrient cycle in sandy-textured soils and increases crop yield: a systematic review, Environmental Evidence 13:3, 2024";
    /// Kinetics of uptake from solution.
    HYDROCHAR_KINETICS = "hydrochar-kinetics" at "https://www.ncbi.nlm.nih.gov/pmc/articles/PMC8694899/",
        "Phosphate uptake kinetics of chars from solution, PMC8694899, Table 3 (90 % taken up after 64 to 96 hours)";
    /// Exchangeable calcium after mixing in biochar.
    HAILEGNAW_2019 = "hailegnaw-2019",
        "Hailegnaw et al., Mutual relationships of biochar and soil pH, CEC and exchangeable base cations, Journal of Soils and Sediments 19:2405, 2019";
    /// Nutrients biochar gives up to repeated extraction.
    ANGST_SOHI_2013 = "angst-sohi-2013",
        "Angst & Sohi, Establishing release dynamics for plant nutrients from biochar, GCB Bioenergy 5:221, 2013";
    /// Properties by feedstock.
    IPPOLITO_2020 = "ippolito-2020" at "doi:10.1007/s42773-020-00067-x",
        "Ippolito et al., Feedstock choice, pyrolysis temperature and type influence biochar characteristics, Biochar 2:421, 2020";
    /// Water that wood biochar takes up.
    SUANSA_2021 = "suansa-2021",
        "Suansa et al., branch-wood biochar at 300 to 500 °C, BioResources 16(2):2824, 2021";
    /// Liming value of biochars.
    ADEWUMI_2025 = "adewumi-2025" at "doi:10.1002/ael2.70017",
        "Adewumi, He, Dhandapani & Guo, Liming value of 19 biochars, Agricultural & Environmental Letters, 2025";
    /// How a pH change follows from lime and buffering.
    SERA6_LIME = "sera-6-lime",
        "SERA-6 fact sheet 3, and Kissel & Sonon, UGA Circular 874: lime buffer capacity";
    /// Buffering by organic carbon and clay.
    AITKEN_1990 = "aitken-1990",
        "Aitken, Moody & McKinley, Lime requirement of acidic Queensland soils, Australian Journal of Soil Research 28, 1990";
    /// Cation exchange constants.
    PHREEQC_EXCHANGE = "phreeqc-exchange",
        "US Geological Survey, PHREEQC database (phreeqc.dat): exchange constants, phreeqc.dat, as distributed with PHREEQC version 3";
    /// Salts in dry-land soils after biochar.
    DRYLANDS_2025 = "drylands-2025",
        "Biochar in dry-land soils: a meta-analysis of 40 papers, Agronomy 15(11):2609, 2025";
    /// Whether biochar catches fire.
    FLAMMABILITY_2014 = "flammability-2014",
        "Short- and long-term flammability of biochars, Biomass and Bioenergy 69:183, 2014";
    /// How much water makes biochar safe to store.
    DEL_CAMPO_2021 = "del-campo-2021" at "doi:10.18272/aci.v13i2.2314",
        "del Campo et al., flammability of biochar and its moisture, ACI Avances en Ciencias 13(2), 2021";
    /// Herbicides on biochar.
    SONI_2015 = "soni-2015",
        "Soni et al., weed control by atrazine and pendimethalin in soil with biochar, Weed Technology, 2015";
    /// Raw manure intervals.
    NOP_205_203 = "nop-205-203" at "https://law.lawstack.com/cfr/7/205.203/",
        "US National Organic Program, 7 CFR 205.203(c): raw manure and compost";
    /// Compost tea with additives.
    NOSB_TEA_2004 = "nosb-tea-2004",
        "US National Organic Standards Board, Compost Tea Task Force report, 6 April 2004";
    /// Lead in garden soils.
    LEAD_UMD = "lead-umd-hg18" at "https://extension.umd.edu/resource/lead-garden-soils",
        "University of Maryland Extension HG18, Lead in garden soils";
}
