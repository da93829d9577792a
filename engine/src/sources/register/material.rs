//! Publications behind what biochar is made of and how long it stays, in `details`.

use crate::sources::Source;

sources! { MATERIAL:
    /// What lasts of biochar after a hundred years.
    WOOLF_2021 = "woolf-2021" at "doi:10.1021/acs.est.1c02425",
        "Woolf et al., Greenhouse gas inventory model for biochar additions to soil, Environmental Science & Technology, 2021, with the authors' data";
    /// Limits for biochar that goes into soil.
    IBI_STANDARDS = "ibi-std-2.1",
        "International Biochar Initiative, Standardized Product Definition and Product Testing Guidelines for Biochar That Is Used in Soil, version 2.1, 2015";
    /// Limits for biochar by use.
    EBC_GUIDELINES = "ebc-10" at "https://www.european-biochar.org",
        "European Biochar Certificate, Guidelines for a Sustainable Production of Biochar, version 10.2, 2022";
    /// How exchange capacity grows as biochar ages.
    CHENG_2008 = "cheng-2008",
        "Cheng et al., Natural oxidation of black carbon in soils: changes in molecular form and surface charge along a climosequence, 2008";
}
