//! Publications behind the most that a dose may be.

use crate::sources::Source;

sources! { DOSES:
    /// Potassium on sand.
    NEW_ENGLAND_POTASSIUM = "new-england-potassium" at "https://nevegetable.org/cultural-practices/potassium",
        "New England Vegetable Management Guide, Potassium: split on sandy soils, and crowds out magnesium";
    /// Magnesium by index.
    RB209_MAGNESIUM = "rb209-magnesium",
        "AHDB Nutrient Management Guide (RB209): magnesium at index 0 and 1, 50 to 100 kg MgO/ha and more";
    /// Gypsum spread at one time.
    INDIA_GYPSUM = "india-gypsum" at "https://alpha.agri.bot/tag/gypsum/",
        "Gypsum for reclamation of sodic soil, India: 10 to 15 t/ha, mixed into the top 10 cm";
    /// What washing takes out.
    HANDBOOK_60_LEACHING = "usda-handbook-60-leaching",
        "US Salinity Laboratory Staff, 1954, Agriculture Handbook 60: salts washed out by depth of water";
    /// Total lead from what a soil test takes out.
    HAMEL_2003 = "hamel-2003" at "https://www.researchwithrutgers.com/en/publications/lead-extraction-using-three-soil-fertility-tests-and-environmenta",
        "Hamel, Heckman, Shilke-Gartley and Hoskins, Lead extraction using three soil fertility tests and EPA method 3050 (abstract)";
}
