//! Nitrate-N.

use crate::quantity::Unit::MgPerKg;
use crate::ranges::Level::{Excess, High, Low, Sufficient};
use crate::ranges::scheme::{
    ALL_PLANTS, NO_CHANCE, NO_PLANTS, Rung, Scheme, Soils, Steps, VEGETABLES, named,
};
use crate::soil::Property;
use crate::sources::{PSNT_SWEET_CORN, UC_NITRATE};

static GUIDELINE_STEPS: [Rung; 4] = [
    Rung::below("low", Low),
    Rung::to("medium", Sufficient),
    Rung::to("high", High),
    Rung::to("excessive", Excess),
];
static GUIDELINE: [f64; 3] = [10.0, 20.0, 30.0];
static SIDEDRESS_STEPS: [Rung; 2] =
    [Rung::to("add nitrogen", Low), Rung::to("add none", Sufficient)];
static SIDEDRESS: [f64; 1] = [25.0];

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme {
        id: named("uc-nitrate"),
        property: Property::NitrateN,
        methods: &[],
        soils: Soils::All,
        unit: MgPerKg,
        steps: Steps(&GUIDELINE_STEPS, &GUIDELINE),
        printed_to: 0.0,
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: &[UC_NITRATE.opened()],
        meaning: NO_CHANCE,
        note: "Nitrate moves with water: the number holds for the day of sampling.",
    },
    Scheme {
        id: named("psnt"),
        property: Property::NitrateN,
        methods: &[],
        soils: Soils::All,
        unit: MgPerKg,
        steps: Steps(&SIDEDRESS_STEPS, &SIDEDRESS),
        printed_to: 1.0,
        judges: NO_PLANTS,
        second: VEGETABLES,
        citations: &[PSNT_SWEET_CORN.opened()],
        meaning: "Above 25 mg/kg sweet corn is given no more nitrogen.",
        note: "Holds only for a sample 30 cm (12 in) deep, taken in the season a week before side-dressing.",
    },
];
