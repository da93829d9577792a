//! Saturations and sodium ratios as the laboratory prints them.

use crate::quantity::Unit::{None as Plain, Percent};
use crate::ranges::Level::{Excess, High, Low, Sufficient};
use crate::ranges::scheme::{ALL_PLANTS, BLANK, Scheme, Steps, rungs};
use crate::soil::Property;
use crate::sources::{COLORADO_SODIC, UMASS_REPORT};

rungs! {
    OPTIMUM_STEPS: below "below optimum" Low, to "optimum" Sufficient, to "above optimum" High;
    ESP_STEPS: below "not sodic" Sufficient, to "sodic" Excess;
    SAR_STEPS: below "not sodic" Sufficient, to "sodic" Excess;
}

const UMASS: Scheme = Scheme {
    property: Property::CalciumSaturation,
    unit: Percent,
    judges: ALL_PLANTS,
    citations: &[UMASS_REPORT.opened()],
    note: "Plants answer to the amount of a nutrient more than to its share. Read this as a hint.",
    ..BLANK
};

const SODIC: Scheme = Scheme {
    citations: &[COLORADO_SODIC.opened()],
    meaning: "A line for the soil's structure, not for plants.",
    note: "Structure can suffer below this line too, on clay and where salts are few.",
    ..UMASS
};

pub(super) static SCHEMES: &[Scheme] = &[
    UMASS.table(
        "umass-ca-saturation",
        Property::CalciumSaturation,
        Steps(OPTIMUM_STEPS, &[50.0, 80.0]),
    ),
    UMASS.table(
        "umass-mg-saturation",
        Property::MagnesiumSaturation,
        Steps(OPTIMUM_STEPS, &[10.0, 30.0]),
    ),
    UMASS.table(
        "umass-k-saturation",
        Property::PotassiumSaturation,
        Steps(OPTIMUM_STEPS, &[2.0, 7.0]),
    ),
    SODIC.table("sodic-esp", Property::SodiumSaturation, Steps(ESP_STEPS, &[15.0])),
    Scheme { unit: Plain, ..SODIC.table("sodic-sar", Property::Sar, Steps(SAR_STEPS, &[13.0])) },
];
