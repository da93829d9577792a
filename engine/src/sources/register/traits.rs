//! Publications behind the `traits` room.

use crate::sources::Source;

/// All of them.
pub static TRAITS: &[&Source] = &[
    &SAXTON_RAWLS,
    &HANDBOOK_60,
    &MAAS_1990,
    &FAO_SALT_YIELD,
    &FAO_2006,
    &NRCS_SAR,
    &CARBON_STOCK,
    &BULK_DENSITY,
    &OHIO_PSNT,
    &SARE_PSNT,
    &UMN_GARDEN_P,
    &EPA_LEAD_2024,
    &EPA_LEAD_1994,
    &EPA_SCREENING,
    &GERMAN_SOIL_2021,
    &GERMAN_SOIL_1999,
    &ARSENIC_LIMITS_2010,
    &VERMONT_METALS,
    &OSU_LEAD,
    &UMN_SAMPLING,
    &GARDEN_LEAD_UPTAKE,
];

/// Water held, from sand, clay and organic matter.
pub static SAXTON_RAWLS: Source = Source {
    id: "saxton-rawls-2006",
    title: "Saxton and Rawls, 2006, Soil water characteristic estimates by texture and organic matter, Soil Science Society of America Journal 70:1569–1578",
    place: "https://soil.scijournals.org/cgi/content/full/70/5/1569",
};

/// Exchangeable sodium from the adsorption ratio; saline and sodic soils.
pub static HANDBOOK_60: Source = Source {
    id: "usda-handbook-60",
    title: "US Salinity Laboratory, 1954, Diagnosis and improvement of saline and alkali soils, USDA Agriculture Handbook 60",
    place: "https://iadclexicon.org/exchangeable-sodium-percentage-esp/",
};

/// Thresholds and slopes of crops.
pub static MAAS_1990: Source = Source {
    id: "maas-1990",
    title: "Maas, 1990, Salt tolerance of herbaceous crops, US Salinity Laboratory, Table 42C",
    place: "http://www.ussl.ars.usda.gov/pls/caliche/SALTT42C",
};

/// The equation of yield and salts.
pub static FAO_SALT_YIELD: Source = Source {
    id: "fao-61-annex-1",
    title: "FAO Irrigation and Drainage Paper 61, Annex 1: crop salt tolerance",
    place: "https://openknowledge.fao.org/server/api/core/bitstreams/40bde440-cc49-46a7-8906-3b49c5418f67/content/y4263e0e.htm",
};

/// Water at saturation by texture and organic matter.
pub static FAO_2006: Source = Source {
    id: "fao-soil-description-2006",
    title: "FAO, 2006, Guidelines for soil description, 4th edition: salts of the saturation extract from a 1:x mix",
    place: "https://cran.r-project.org/package=soilassessment",
};

/// The adsorption ratio.
pub static NRCS_SAR: Source = Source {
    id: "nrcs-sar",
    title: "USDA-NRCS, Custom Soil Resource Report: sodium adsorption ratio",
    place: "https://dnrweblink.state.co.us/DRMSSearch/0/doc/1000844/Page65.aspx",
};

/// Carbon of a slice of soil.
pub static CARBON_STOCK: Source = Source {
    id: "soilsconnect-q97",
    title: "Soils Connect (Australia), question 97: carbon and nitrogen stock of a slice of soil",
    place: "https://soilsconnect.com.au",
};

/// Usual density of dry soil.
pub static BULK_DENSITY: Source = Source {
    id: "nres-201-bulk-density",
    title: "NRES 201 Introductory Soil Science, lecture notes 2011: bulk density of mineral and organic soils",
    place: "https://www.coursehero.com/file/6307366/RelativeResourceManager8/",
};

/// Nitrogen taken off the usual rate.
pub static OHIO_PSNT: Source = Source {
    id: "ohio-psnt-2022",
    title: "Ohio State University Extension, 2022, pre-sidedress nitrate test to adjust nitrogen rates of corn",
    place: "https://m.farms.com/news/pre-sidedress-nitrogen-test-to-adjust-n-rates-180668.aspx",
};

/// The critical nitrate level over many sites.
pub static SARE_PSNT: Source = Source {
    id: "sare-ane94-019",
    title: "SARE project ANE94-019: pre-sidedress nitrate test for sweet corn, 83 sites",
    place: "https://projects.sare.org/sare_project/ane94-019/",
};

/// Garden phosphorus that calls for no more.
pub static UMN_GARDEN_P: Source = Source {
    id: "umn-garden-phosphorus",
    title: "University of Minnesota Extension, phosphorus in home gardens: 25 ppm is very high, add none",
    place: "https://extension.umn.edu",
};

/// Lead levels from January 2024.
pub static EPA_LEAD_2024: Source = Source {
    id: "epa-lead-2024",
    title: "US EPA, updated residential soil lead guidance, 17 January 2024",
    place: "https://www.morganlewis.com/ja/pubs/2024/01/new-epa-guidance-cuts-prior-residential-soil-lead-levels-in-half",
};

/// Lead level from 1994.
pub static EPA_LEAD_1994: Source = Source {
    id: "epa-lead-1994",
    title: "US EPA, residential soil lead screening level of 1994: 400 mg/kg",
    place: "https://ehsdailyadvisor.blr.com/2024/02/epa-lowers-lead-contaminated-soil-screening-levels/",
};

/// Screening levels of other metals.
pub static EPA_SCREENING: Source = Source {
    id: "epa-regional-screening",
    title: "US EPA, regional screening levels for residential soil: arsenic and cadmium",
    place: "",
};

/// Precautionary values by texture.
pub static GERMAN_SOIL_2021: Source = Source {
    id: "bbodschv-2021",
    title: "Germany, Federal Soil Protection Ordinance of 2021 (BBodSchV), Annex 1, Table 1: precautionary values",
    place: "https://gesetze.legal/bund/bbodschv/anlage_1",
};

/// Test values for vegetable gardens.
pub static GERMAN_SOIL_1999: Source = Source {
    id: "bbodschv-1999",
    title: "Germany, Federal Soil Protection Ordinance of 1999 (BBodSchV), Annex 2, Table 2.2: fields and vegetable gardens",
    place: "https://umwelt-online.de/recht/boden/bbsv5.htm",
};

/// How far apart published arsenic limits are.
pub static ARSENIC_LIMITS_2010: Source = Source {
    id: "arsenic-limits-2010",
    title: "Analysis of regulatory guidance values for residential surface soil arsenic, 2010, Journal of Environmental Engineering 136(9)",
    place: "https://ascelibrary.com/doi/10.1061/%28ASCE%29EE.1943-7870.0000224",
};

/// Why an extract is no total.
pub static VERMONT_METALS: Source = Source {
    id: "vermont-heavy-metals",
    title: "Grubinger and Ross, University of Vermont, Interpreting the results of soil tests for heavy metals",
    place: "https://vdocuments.site/interpreting-the-results-of-soil-tests-for-interpreting-the-results-of-soil.html",
};

/// Natural lead, and what to do about more.
pub static OSU_LEAD: Source = Source {
    id: "oregon-ec-1616",
    title: "Oregon State University Extension EC 1616-E: lead in garden soil",
    place: "",
};

/// How deep to sample for lead.
pub static UMN_SAMPLING: Source = Source {
    id: "umn-sampling",
    title: "University of Minnesota Soil Testing Laboratory, how to take a soil sample",
    place: "https://soiltest.dl9.umn.edu/node/96",
};

/// Which crops carry lead.
pub static GARDEN_LEAD_UPTAKE: Source = Source {
    id: "garden-lead-uptake-2014",
    title: "Lead in New York City and Buffalo community garden vegetables, PMC4175907",
    place: "https://pmc.ncbi.nlm.nih.gov/articles/PMC4175907",
};
