//! Publications behind lime, acidifying and gypsum in the `needs` room.

use crate::sources::Source;

/// All of them.
pub static NEEDS_LIME: &[&Source] = &[
    &OREGON_SIKORA,
    &TRI_STATE_LIME,
    &BLUEBERRY_PH,
    &SMP_DOMAIN,
    &NCDA_LIME,
    &PSU_LIME,
    &PSU_TURF_LIME,
    &PSU_LAWN,
    &PSU_GARDEN,
    &HULUKA_2005,
    &MISSOURI_ENM,
    &WSU_LIME_DOSE,
    &OSU_LIMING,
    &MSU_SULFUR,
    &BLUEBERRY_SULFUR,
    &RHS_ACIDIFYING,
    &CLEMSON_EC707,
    &OSTER_1999,
    &ALI_GYPSUM,
    &WINE_GYPSUM,
    &NMSU_SULFUR,
    &COLORADO_SALINE,
];

/// Lime by Sikora buffer.
pub static OREGON_SIKORA: Source = Source {
    id: "oregon-em-9585",
    title: "Moore, Updated Lime Requirement Recommendations for Oregon, EM 9585, Oregon State University Extension, 2025",
    place: "https://extension.oregonstate.edu/catalog/em-9585-updated-lime-requirement-recommendations-oregon",
};

/// The pH of blueberries.
pub static BLUEBERRY_PH: Source = Source {
    id: "extension-blueberry-ph",
    title: "extension.org, All About Blueberries: soil pH of 4.2 to 5.2, 4.8 to aim at",
    place: "",
};

/// Lime by SMP buffer, its field works and the pH of organic soil.
pub static TRI_STATE_LIME: Source = Source {
    id: "tri-state-lime-1995",
    title: "Vitosh, Johnson and Mengel, Tri-State Fertilizer Recommendations E-2567, 1995: lime by SMP buffer",
    place: "http://web1.msue.msu.edu/msue/imp/modf1/06039707.html",
};

/// Where the SMP buffer can be trusted.
pub static SMP_DOMAIN: Source = Source {
    id: "sera-6-smp",
    title: "Sikora, SERA-IEG-6 technical note on the SMP buffer, University of Kentucky",
    place: "http://soils.rs.uky.edu/sikora_smptechreport.htm",
};

/// Lime by Mehlich buffer acidity.
pub static NCDA_LIME: Source = Source {
    id: "ncda-lime",
    title: "North Carolina Department of Agriculture (NCDA&CS), lime and fertilizer requirements",
    place: "https://ncagr.gov/agronomic-services-soil-testing-lime-and-fertilizer-requirements",
};

/// Lime by exchangeable acidity.
pub static PSU_LIME: Source = Source {
    id: "penn-state-agronomy-lime",
    title: "Penn State Agronomy Guide, part 1 section 2: lime by exchangeable acidity",
    place: "http://agguide.agronomy.psu.edu/cm/sec2/sec24e1.cfm",
};

/// Lime for turf by exchangeable acidity.
pub static PSU_TURF_LIME: Source = Source {
    id: "penn-state-turf-lime",
    title: "Penn State Agricultural Analytical Services, Turf handbook: lime recommendations",
    place: "https://agsci.psu.edu/aasl/soil-testing/fertility/handbooks/turf/tables/lime-recommendations-turf",
};

/// Lime on a lawn: limits.
pub static PSU_LAWN: Source = Source {
    id: "penn-state-home-lawn",
    title: "Penn State Agricultural Analytical Services, home lawn maintenance: limestone",
    place: "http://agsci.psu.edu/aasl/online-report/home-lawn-maintain",
};

/// Lime in a garden: limits.
pub static PSU_GARDEN: Source = Source {
    id: "penn-state-home-garden",
    title: "Penn State Agricultural Analytical Services, home garden: limestone",
    place: "http://agsci.psu.edu/aasl/online-report/home-garden",
};

/// Lime by Adams–Evans buffer.
pub static HULUKA_2005: Source = Source {
    id: "huluka-2005",
    title: "Huluka, 2005, A modification to the Adams–Evans soil buffer determination solution, Communications in Soil Science and Plant Analysis",
    place: "https://www.scribd.com/document/685265151",
};

/// Lime by Woodruff buffer.
pub static MISSOURI_ENM: Source = Source {
    id: "missouri-enm",
    title: "University of Missouri, lime by effective neutralizing material (ENM)",
    place: "http://agebb.missouri.edu/mfgc/contest/condition7.htm",
};

/// Lime round trees and shrubs: limit.
pub static WSU_LIME_DOSE: Source = Source {
    id: "wsu-lime-dose",
    title: "Washington State University Extension Master Gardener column, 3 October 2020: lime per application",
    place: "https://www.columbian.com/news/2020/oct/03/gardening-with-allen-use-leaves-to-help-build-soil-quality/",
};

/// When lime is spread and how long it takes.
pub static OSU_LIMING: Source = Source {
    id: "osu-liming",
    title: "Ohio State University Extension, Wayne County, Liming considerations",
    place: "https://wayne.osu.edu/news/liming-considerations",
};

/// Sulfur by texture.
pub static MSU_SULFUR: Source = Source {
    id: "msu-sulfur",
    title: "Michigan State University Extension 00001631, Lowering soil pH, 1998",
    place: "http://web1.msue.msu.edu/msue/imp/modop/00001631.html",
};

/// Sulfur for blueberry.
pub static BLUEBERRY_SULFUR: Source = Source {
    id: "blueberry-sulfur",
    title: "Sulfur to reach pH 4.5 for blueberry, attributed to Michigan State University",
    place: "",
};

/// Acidifying, British advice.
pub static RHS_ACIDIFYING: Source = Source {
    id: "rhs-acidifying",
    title: "Royal Horticultural Society, Acidifying soil",
    place: "https://rhs.org.uk/soil-composts-mulches/acidifying-soil",
};

/// Sulfur on a lawn: limits.
pub static CLEMSON_EC707: Source = Source {
    id: "clemson-ec-707",
    title: "Southern Lawns, Clemson University EC 707, 2003: sulfur per application",
    place: "",
};

/// Gypsum requirement.
pub static OSTER_1999: Source = Source {
    id: "oster-1999",
    title: "Oster, Shainberg and Abrol, 1999, Reclamation of salt-affected soils: gypsum requirement",
    place: "",
};

/// Gypsum, rule of thumb.
pub static ALI_GYPSUM: Source = Source {
    id: "ali-gypsum",
    title: "Ali, Practices of Irrigation and On-farm Water Management, chapter 8, Springer",
    place: "http://what-when-how.com/Tutorial/topic-95721d49lk/Practices-of-Irrigation-and-On-farm-Water-Management-344.html",
};

/// Gypsum, South African rule.
pub static WINE_GYPSUM: Source = Source {
    id: "wine-gypsum",
    title: "Fertiliser Guidelines for the Wine Industry, South Africa: gypsum",
    place: "https://user-hpa96tt.cld.bz/FERTILISER-GUIDELINES-FOR-THE-WINE-INDUSTRY/33",
};

/// Sulfur in place of gypsum.
pub static NMSU_SULFUR: Source = Source {
    id: "nmsu-sulfur-for-gypsum",
    title: "New Mexico State University, sulfur in place of gypsum on calcareous soil",
    place: "https://pow.nmsu.edu/legacy/view_entry.php?progress_id=4495",
};

/// What gypsum does not help.
pub static COLORADO_SALINE: Source = Source {
    id: "colorado-0503",
    title: "Managing Saline Soils 0.503, Colorado State University Extension",
    place: "https://extension.colostate.edu/topic-areas/agriculture/managing-saline-soils-0-503/",
};
