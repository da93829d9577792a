//! Publications behind what the `survey` finds of a bed, and what `details` says of its salts,
//! metals, water and nitrate.

use crate::sources::Source;

sources! { TRAITS:
    /// Water held, from sand, clay and organic matter.
    SAXTON_RAWLS = "saxton-rawls-2006" at "https://soil.scijournals.org/cgi/content/full/70/5/1569",
        "Saxton and Rawls, 2006, Soil water characteristic estimates by texture and organic matter, Soil Science Society of America Journal 70:1569–1578";
    /// Exchangeable sodium from the adsorption ratio; saline and sodic soils.
    HANDBOOK_60 = "usda-handbook-60" at "https://iadclexicon.org/exchangeable-sodium-percentage-esp/",
        "US Salinity Laboratory, 1954, Diagnosis and improvement of saline and alkali soils, USDA Agriculture Handbook 60";
    /// Thresholds and slopes of crops.
    MAAS_1990 = "maas-1990" at "http://www.ussl.ars.usda.gov/pls/caliche/SALTT42C",
        "Maas, 1990, Salt tolerance of herbaceous crops, US Salinity Laboratory, Table 42C";
    /// The equation of yield and salts.
    FAO_SALT_YIELD = "fao-61-annex-1" at "https://openknowledge.fao.org/server/api/core/bitstreams/40bde440-cc49-46a7-8906-3b49c5418f67/content/y4263e0e.htm",
        "FAO Irrigation and Drainage Paper 61, Annex 1: crop salt tolerance";
    /// Water at saturation by texture and organic matter.
    FAO_2006 = "fao-soil-description-2006" at "https://cran.r-project.org/package=soilassessment",
        "FAO, 2006, Guidelines for soil description, 4th edition: salts of the saturation extract from a 1:x mix";
    /// The adsorption ratio.
    NRCS_SAR = "nrcs-sar" at "https://dnrweblink.state.co.us/DRMSSearch/0/doc/1000844/Page65.aspx",
        "USDA-NRCS, Custom Soil Resource Report: sodium adsorption ratio";
    /// Carbon of a slice of soil.
    CARBON_STOCK = "soilsconnect-q97" at "https://soilsconnect.com.au",
        "Soils Connect (Australia), question 97: carbon and nitrogen stock of a slice of soil";
    /// Usual density of dry soil.
    BULK_DENSITY = "nres-201-bulk-density" at "https://www.coursehero.com/file/6307366/RelativeResourceManager8/",
        "NRES 201 Introductory Soil Science, lecture notes 2011: bulk density of mineral and organic soils";
    /// Nitrogen taken off the usual rate.
    OHIO_PSNT = "ohio-psnt-2022" at "https://m.farms.com/news/pre-sidedress-nitrogen-test-to-adjust-n-rates-180668.aspx",
        "Ohio State University Extension, 2022, pre-sidedress nitrate test to adjust nitrogen rates of corn";
    /// The critical nitrate level over many sites.
    SARE_PSNT = "sare-ane94-019" at "https://projects.sare.org/sare_project/ane94-019/",
        "SARE project ANE94-019: pre-sidedress nitrate test for sweet corn, 83 sites";
    /// Garden phosphorus that calls for no more.
    UMN_GARDEN_P = "umn-garden-phosphorus" at "https://extension.umn.edu",
        "University of Minnesota Extension, phosphorus in home gardens: 25 ppm is very high, add none";
    /// Lead levels from January 2024.
    EPA_LEAD_2024 = "epa-lead-2024" at "https://www.morganlewis.com/ja/pubs/2024/01/new-epa-guidance-cuts-prior-residential-soil-lead-levels-in-half",
        "US EPA, updated residential soil lead guidance, 17 January 2024";
    /// Lead level from 1994.
    EPA_LEAD_1994 = "epa-lead-1994" at "https://ehsdailyadvisor.blr.com/2024/02/epa-lowers-lead-contaminated-soil-screening-levels/",
        "US EPA, residential soil lead screening level of 1994: 400 mg/kg";
    /// Screening levels of other metals.
    EPA_SCREENING = "epa-regional-screening",
        "US EPA, regional screening levels for residential soil: arsenic and cadmium";
    /// Precautionary values by texture.
    GERMAN_SOIL_2021 = "bbodschv-2021" at "https://gesetze.legal/bund/bbodschv/anlage_1",
        "Germany, Federal Soil Protection Ordinance of 2021 (BBodSchV), Annex 1, Table 1: precautionary values";
    /// Test values for vegetable gardens.
    GERMAN_SOIL_1999 = "bbodschv-1999" at "https://umwelt-online.de/recht/boden/bbsv5.htm",
        "Germany, Federal Soil Protection Ordinance of 1999 (BBodSchV), Annex 2, Table 2.2: fields and vegetable gardens";
    /// How far apart published arsenic limits are.
    ARSENIC_LIMITS_2010 = "arsenic-limits-2010" at "https://ascelibrary.com/doi/10.1061/%28ASCE%29EE.1943-7870.0000224",
        "Analysis of regulatory guidance values for residential surface soil arsenic, 2010, Journal of Environmental Engineering 136(9)";
    /// Why an extract is no total.
    VERMONT_METALS = "vermont-heavy-metals" at "https://vdocuments.site/interpreting-the-results-of-soil-tests-for-interpreting-the-results-of-soil.html",
        "Grubinger and Ross, University of Vermont, Interpreting the results of soil tests for heavy metals";
    /// Natural lead, and what to do about more.
    OSU_LEAD = "oregon-ec-1616",
        "Oregon State University Extension EC 1616-E: lead in garden soil";
    /// How deep to sample for lead.
    UMN_SAMPLING = "umn-sampling" at "https://soiltest.dl9.umn.edu/node/96",
        "University of Minnesota Soil Testing Laboratory, how to take a soil sample";
    /// Which crops carry lead.
    GARDEN_LEAD_UPTAKE = "garden-lead-uptake-2014" at "https://pmc.ncbi.nlm.nih.gov/articles/PMC4175907",
        "Lead in New York City and Buffalo community garden vegetables, PMC4175907";
}
