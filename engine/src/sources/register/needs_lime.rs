//! Publications behind lime, acidifying and gypsum in the `plan`.

use crate::sources::Source;

sources! { NEEDS_LIME:
    /// Lime by Sikora buffer.
    OREGON_SIKORA = "oregon-em-9585" at "https://extension.oregonstate.edu/catalog/em-9585-updated-lime-requirement-recommendations-oregon",
        "Moore, Updated Lime Requirement Recommendations for Oregon, EM 9585, Oregon State University Extension, 2025";
    /// Lime by SMP buffer.
    TRI_STATE_LIME = "tri-state-lime-1995" at "http://web1.msue.msu.edu/msue/imp/modf1/06039707.html",
        "Vitosh, Johnson and Mengel, Tri-State Fertilizer Recommendations E-2567, 1995: lime by SMP buffer";
    /// Where the SMP buffer can be trusted.
    SMP_DOMAIN = "sera-6-smp" at "http://soils.rs.uky.edu/sikora_smptechreport.htm",
        "Sikora, SERA-IEG-6 technical note on the SMP buffer, University of Kentucky";
    /// Lime by Mehlich buffer acidity.
    NCDA_LIME = "ncda-lime" at "https://ncagr.gov/agronomic-services-soil-testing-lime-and-fertilizer-requirements",
        "North Carolina Department of Agriculture (NCDA&CS), lime and fertilizer requirements";
    /// Lime by exchangeable acidity.
    PSU_LIME = "penn-state-agronomy-lime" at "http://agguide.agronomy.psu.edu/cm/sec2/sec24e1.cfm",
        "Penn State Agronomy Guide, part 1 section 2: lime by exchangeable acidity";
    /// Lime for turf by exchangeable acidity.
    PSU_TURF_LIME = "penn-state-turf-lime" at "https://agsci.psu.edu/aasl/soil-testing/fertility/handbooks/turf/tables/lime-recommendations-turf",
        "Penn State Agricultural Analytical Services, Turf handbook: lime recommendations";
    /// Lime on a lawn: limits.
    PSU_LAWN = "penn-state-home-lawn" at "http://agsci.psu.edu/aasl/online-report/home-lawn-maintain",
        "Penn State Agricultural Analytical Services, home lawn maintenance: limestone";
    /// Lime in a garden: limits.
    PSU_GARDEN = "penn-state-home-garden" at "http://agsci.psu.edu/aasl/online-report/home-garden",
        "Penn State Agricultural Analytical Services, home garden: limestone";
    /// Lime by Adams–Evans buffer.
    HULUKA_2005 = "huluka-2005" at "https://www.scribd.com/document/685265151",
        "Huluka, 2005, A modification to the Adams–Evans soil buffer determination solution, Communications in Soil Science and Plant Analysis";
    /// Lime by Woodruff buffer.
    MISSOURI_ENM = "missouri-enm" at "http://agebb.missouri.edu/mfgc/contest/condition7.htm",
        "University of Missouri, lime by effective neutralizing material (ENM)";
    /// Lime round trees and shrubs: limit.
    WSU_LIME_DOSE = "wsu-lime-dose" at "https://www.columbian.com/news/2020/oct/03/gardening-with-allen-use-leaves-to-help-build-soil-quality/",
        "Washington State University Extension Master Gardener column, 3 October 2020: lime per application";
    /// When lime is spread and how long it takes.
    OSU_LIMING = "osu-liming" at "https://wayne.osu.edu/news/liming-considerations",
        "Ohio State University Extension, Wayne County, Liming considerations";
    /// Sulfur by texture.
    MSU_SULFUR = "msu-sulfur" at "http://web1.msue.msu.edu/msue/imp/modop/00001631.html",
        "Michigan State University Extension 00001631, Lowering soil pH, 1998";
    /// Sulfur for blueberry.
    BLUEBERRY_SULFUR = "blueberry-sulfur",
        "Sulfur to reach pH 4.5 for blueberry, attributed to Michigan State University";
    /// Acidifying, British advice.
    RHS_ACIDIFYING = "rhs-acidifying" at "https://rhs.org.uk/soil-composts-mulches/acidifying-soil",
        "Royal Horticultural Society, Acidifying soil";
    /// Sulfur on a lawn: limits.
    CLEMSON_EC707 = "clemson-ec-707",
        "Southern Lawns, Clemson University EC 707, 2003: sulfur per application";
    /// Gypsum requirement.
    OSTER_1999 = "oster-1999",
        "Oster, Shainberg and Abrol, 1999, Reclamation of salt-affected soils: gypsum requirement";
    /// Gypsum, rule of thumb.
    ALI_GYPSUM = "ali-gypsum" at "http://what-when-how.com/Tutorial/topic-95721d49lk/Practices-of-Irrigation-and-On-farm-Water-Management-344.html",
        "Ali, Practices of Irrigation and On-farm Water Management, chapter 8, Springer";
    /// Gypsum, South African rule.
    WINE_GYPSUM = "wine-gypsum" at "https://user-hpa96tt.cld.bz/FERTILISER-GUIDELINES-FOR-THE-WINE-INDUSTRY/33",
        "Fertiliser Guidelines for the Wine Industry, South Africa: gypsum";
    /// Sulfur in place of gypsum.
    NMSU_SULFUR = "nmsu-sulfur-for-gypsum" at "https://pow.nmsu.edu/legacy/view_entry.php?progress_id=4495",
        "New Mexico State University, sulfur in place of gypsum on calcareous soil";
    /// What gypsum does not help.
    COLORADO_SALINE = "colorado-0503" at "https://extension.colostate.edu/topic-areas/agriculture/managing-saline-soils-0-503/",
        "Managing Saline Soils 0.503, Colorado State University Extension";
    /// The pH of blueberries.
    BLUEBERRY_PH = "extension-blueberry-ph",
        "extension.org, All About Blueberries: soil pH of 4.2 to 5.2, 4.8 to aim at";
}
