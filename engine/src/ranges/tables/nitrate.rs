//! Nitrate-N.

use crate::quantity::Unit::MgPerKg;
use crate::ranges::Level::{Excess, High, Low, Sufficient};
use crate::ranges::scheme::{ALL_PLANTS, BLANK, Scheme, Steps, VEGETABLES, named, rungs};
use crate::soil::Property;
use crate::sources::{PSNT_SWEET_CORN, UC_NITRATE};

rungs! {
    GUIDELINE_STEPS: below "low" Low, to "medium" Sufficient, to "high" High,
        to "excessive" Excess;
    SIDEDRESS_STEPS: to "add nitrogen" Low, to "add none" Sufficient;
}

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme {
        id: named("uc-nitrate"),
        property: Property::NitrateN,
        unit: MgPerKg,
        steps: Steps(GUIDELINE_STEPS, &[10.0, 20.0, 30.0]),
        judges: ALL_PLANTS,
        citations: &[UC_NITRATE.opened()],
        note: "Nitrate moves with water: the number holds for the day of sampling.",
        ..BLANK
    },
    Scheme {
        id: named("psnt"),
        property: Property::NitrateN,
        unit: MgPerKg,
        steps: Steps(SIDEDRESS_STEPS, &[25.0]),
        printed_to: 1.0,
        second: VEGETABLES,
        citations: &[PSNT_SWEET_CORN.opened()],
        meaning: "Above 25 mg/kg sweet corn is given no more nitrogen.",
        note: "Holds only for a sample 30 cm (12 in) deep, taken in the season a week before side-dressing.",
        ..BLANK
    },
];
