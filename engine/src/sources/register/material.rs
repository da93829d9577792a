//! Publications behind what biochar is made of and how long it stays.

use crate::sources::Source;

/// What lasts of biochar after a hundred years.
pub static WOOLF_2021: Source = Source {
    id: "woolf-2021",
    title: "Woolf et al., Greenhouse gas inventory model for biochar additions to soil, Environmental Science & Technology, 2021, with the authors' data",
    place: "doi:10.1021/acs.est.1c02425",
};

/// Limits for biochar that goes into soil.
pub static IBI_STANDARDS: Source = Source {
    id: "ibi-std-2.1",
    title: "International Biochar Initiative, Standardized Product Definition and Product Testing Guidelines for Biochar That Is Used in Soil, version 2.1, 2015",
    place: "",
};

/// Limits for biochar by use.
pub static EBC_GUIDELINES: Source = Source {
    id: "ebc-10",
    title: "European Biochar Certificate, Guidelines for a Sustainable Production of Biochar, version 10.2, 2022",
    place: "https://www.european-biochar.org",
};

/// How exchange capacity grows as biochar ages.
pub static CHENG_2008: Source = Source {
    id: "cheng-2008",
    title: "Cheng et al., Natural oxidation of black carbon in soils: changes in molecular form and surface charge along a climosequence, 2008",
    place: "",
};

/// All of them.
pub static MATERIAL: &[&Source] = &[&WOOLF_2021, &IBI_STANDARDS, &EBC_GUIDELINES, &CHENG_2008];
