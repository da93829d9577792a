//! Micronutrients by Mehlich-3, DTPA and hot water. Authors differ two- to
//! fourfold, so a level here is a reason to look, not to spread anything.

use crate::quantity::Unit::MgPerKg;
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::Step;
use crate::ranges::scheme::{ALL_PLANTS, NO_PLANTS, Scheme};
use crate::soil::{Measure, Method, Property};
use crate::sources::{DTPA_CLASSES, OREGON_EC1478, RUTGERS_NUTRIENTS};

const CHECK: &str = "Published limits for micronutrients differ two- to fourfold. Take this as a reason to look at the plants.";

/// What Modified Morgan usually finds, mg/kg; the laboratory says that
/// optimum levels were never set.
/// Source: University of Massachusetts soil test report, 2014 (opened).
const USUAL_IN_MODIFIED_MORGAN: [(Property, &str); 5] = [
    (Property::Boron, "0.1–0.5"),
    (Property::Manganese, "1.1–6.3"),
    (Property::Zinc, "1.0–7.6"),
    (Property::Copper, "0.3–0.6"),
    (Property::Iron, "2.7–9.4"),
];

/// Why a Modified Morgan micronutrient has no level, with what is usual.
pub(crate) fn usual_without_a_range(measure: &Measure) -> Option<String> {
    let (_, usual) = USUAL_IN_MODIFIED_MORGAN
        .iter()
        .find(|(p, _)| *p == measure.property && measure.method == Some(Method::ModifiedMorgan))?;
    Some(format!(
        "No optimum was ever set for {} by Modified Morgan. The University of Massachusetts calls {usual} mg/kg usual.",
        measure.property.label()
    ))
}

const fn critical(critical: f64, warning: f64) -> [Step; 3] {
    [
        Step::below("below critical", Low, critical),
        Step::to("adequate", Sufficient, warning),
        Step::rest("high, a warning", High),
    ]
}

static RUTGERS_ZN: [Step; 3] = critical(1.0, 50.0);
static RUTGERS_CU: [Step; 3] = critical(0.5, 20.0);
static RUTGERS_B: [Step; 3] = critical(0.5, 20.0);
static RUTGERS_FE: [Step; 3] = critical(50.0, 100.0);

const fn marginal(low: f64, marginal: f64) -> [Step; 3] {
    [
        Step::to("low", Low, low),
        Step::to("marginal", Low, marginal),
        Step::rest("sufficient", Sufficient),
    ]
}

static DTPA_ZN: [Step; 3] = marginal(0.5, 1.0);
static DTPA_FE: [Step; 3] = marginal(2.5, 4.5);
static DTPA_CU: [Step; 3] = marginal(0.4, 0.6);
static DTPA_MN: [Step; 2] = [Step::to("low", Low, 1.0), Step::rest("sufficient", Sufficient)];

static OREGON_B: [Step; 5] = [
    Step::below("very low", VeryLow, 0.2),
    Step::below("low", Low, 0.5),
    Step::below("medium", Low, 1.0),
    Step::to("high", Sufficient, 2.0),
    Step::rest("excessive", Excess),
];

const RUTGERS: Scheme = Scheme {
    id: "",
    property: Property::Zinc,
    methods: &[Method::Mehlich3],
    unit: MgPerKg,
    steps: &[],
    printed_to: 0.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[RUTGERS_NUTRIENTS.opened()],
    note: CHECK,
};

const DTPA: Scheme = Scheme {
    methods: &[Method::Dtpa],
    printed_to: 0.1,
    citations: &[DTPA_CLASSES.second_hand()],
    ..RUTGERS
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme { id: "rutgers-zn", steps: &RUTGERS_ZN, ..RUTGERS },
    Scheme { id: "rutgers-cu", property: Property::Copper, steps: &RUTGERS_CU, ..RUTGERS },
    Scheme { id: "rutgers-b", property: Property::Boron, steps: &RUTGERS_B, ..RUTGERS },
    Scheme { id: "rutgers-fe", property: Property::Iron, steps: &RUTGERS_FE, ..RUTGERS },
    Scheme { id: "dtpa-zn", steps: &DTPA_ZN, ..DTPA },
    Scheme { id: "dtpa-fe", property: Property::Iron, steps: &DTPA_FE, ..DTPA },
    Scheme { id: "dtpa-cu", property: Property::Copper, steps: &DTPA_CU, ..DTPA },
    Scheme { id: "dtpa-mn", property: Property::Manganese, steps: &DTPA_MN, ..DTPA },
    Scheme {
        id: "oregon-b",
        property: Property::Boron,
        methods: &[Method::HotWater],
        steps: &OREGON_B,
        citations: &[OREGON_EC1478.from_memory()],
        note: "Written from memory. Too much boron harms plants: never add it on this alone.",
        ..RUTGERS
    },
];
