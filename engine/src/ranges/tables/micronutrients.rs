//! Micronutrients by Mehlich-3, DTPA and hot water. Authors differ two- to
//! fourfold, so a level here is a reason to look, not to spread anything.

use crate::quantity::Unit::MgPerKg;
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{ALL_PLANTS, NO_CHANCE, NO_PLANTS, Rung, Scheme, Soils, Steps, named};
use crate::soil::{Measure, Method, Property};
use crate::sources::{
    BRAZIL_ZINC, DTPA_CLASSES, OREGON_EC1478, POLAND_MEHLICH_3, RUTGERS_NUTRIENTS,
};

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

static CRITICAL_STEPS: [Rung; 3] = [
    Rung::below("below critical", Low),
    Rung::to("adequate", Sufficient),
    Rung::to("high, a warning", High),
];

static RUTGERS_ZN: [f64; 2] = [1.0, 50.0];
static RUTGERS_CU: [f64; 2] = [0.5, 20.0];
static RUTGERS_B: [f64; 2] = [0.5, 20.0];
static RUTGERS_FE: [f64; 2] = [50.0, 100.0];

static MARGINAL_STEPS: [Rung; 3] =
    [Rung::to("low", Low), Rung::to("marginal", Low), Rung::to("sufficient", Sufficient)];

static DTPA_ZN: [f64; 2] = [0.5, 1.0];
static DTPA_FE: [f64; 2] = [2.5, 4.5];
static DTPA_CU: [f64; 2] = [0.4, 0.6];
static DTPA_MN_STEPS: [Rung; 2] = [Rung::to("low", Low), Rung::to("sufficient", Sufficient)];
static DTPA_MN: [f64; 1] = [1.0];

static OREGON_B_STEPS: [Rung; 5] = [
    Rung::below("very low", VeryLow),
    Rung::below("low", Low),
    Rung::below("medium", Low),
    Rung::to("high", Sufficient),
    Rung::to("excessive", Excess),
];
static OREGON_B: [f64; 4] = [0.2, 0.5, 1.0, 2.0];

static BY_CROP_STEPS: [Rung; 3] = [
    Rung::below("short for every crop", Low),
    Rung::below("short for some crops", Low),
    Rung::to("enough", Sufficient),
];

static POLAND_ZN: [f64; 2] = [2.5, 7.0];
static POLAND_CU: [f64; 2] = [1.0, 2.2];
static POLAND_FE: [f64; 2] = [160.0, 280.0];
static POLAND_B: [f64; 2] = [0.1, 0.9];
static POLAND_MN: [f64; 2] = [30.0, 75.0];
static KENTUCKY_ZN_ACID: [f64; 2] = [0.55, 1.8];
static KENTUCKY_ZN_ALKALINE: [f64; 2] = [1.6, 2.8];
static SLATON_ZN_ACID: [f64; 1] = [1.3];
static SLATON_ZN_NEUTRAL: [f64; 1] = [3.5];
static SLATON_ZN_ALKALINE: [f64; 1] = [4.2];

static AT_LEAST_STEPS: [Rung; 2] =
    [Rung::below("below critical", Low), Rung::to("enough", Sufficient)];

static BRAZIL_ZN_MEHLICH_1: [f64; 3] = [0.7, 2.0, 25.0];
static BRAZIL_ZN_DTPA: [f64; 3] = [0.3, 1.0, 25.0];

static BRAZIL_STEPS: [Rung; 4] = [
    Rung::below("short for beans and maize", Low),
    Rung::below("short for maize", Low),
    Rung::to("enough", Sufficient),
    Rung::to("may poison", Excess),
];

const RUTGERS: Scheme = Scheme {
    id: named(""),
    property: Property::Zinc,
    methods: &[Method::Mehlich3],
    soils: Soils::All,
    unit: MgPerKg,
    steps: Steps(&[], &[]),
    printed_to: 0.0,
    judges: ALL_PLANTS,
    second: NO_PLANTS,
    citations: &[RUTGERS_NUTRIENTS.opened()],
    meaning: "Below critical is deficient; above high is a warning.",
    note: CHECK,
};

const DTPA: Scheme = Scheme {
    methods: &[Method::Dtpa],
    printed_to: 0.1,
    citations: &[DTPA_CLASSES.second_hand()],
    meaning: "Low is deficient.",
    ..RUTGERS
};

const POLAND: Scheme = Scheme {
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[POLAND_MEHLICH_3.opened()],
    meaning: "Critical values from wheat, oilseed rape and maize.",
    note: "",
    ..RUTGERS
};

const KENTUCKY: Scheme = Scheme {
    citations: &[POLAND_MEHLICH_3.second_hand()],
    meaning: NO_CHANCE,
    note: "Murdock and Howe 2001: by phosphorus, from 25 to 250 mg/kg.",
    ..POLAND
};

const SLATON: Scheme = Scheme { note: "Slaton and others 2002, for this pH.", ..KENTUCKY };

const BRAZIL: Scheme = Scheme {
    methods: &[Method::Mehlich1],
    citations: &[BRAZIL_ZINC.opened()],
    meaning: "Enough for 90 % of full growth in pots.",
    note: CHECK,
    ..RUTGERS
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme { id: named("rutgers-zn"), steps: Steps(&CRITICAL_STEPS, &RUTGERS_ZN), ..RUTGERS },
    Scheme {
        id: named("rutgers-cu"),
        property: Property::Copper,
        steps: Steps(&CRITICAL_STEPS, &RUTGERS_CU),
        ..RUTGERS
    },
    Scheme {
        id: named("rutgers-b"),
        property: Property::Boron,
        steps: Steps(&CRITICAL_STEPS, &RUTGERS_B),
        ..RUTGERS
    },
    Scheme {
        id: named("rutgers-fe"),
        property: Property::Iron,
        steps: Steps(&CRITICAL_STEPS, &RUTGERS_FE),
        ..RUTGERS
    },
    Scheme { id: named("dtpa-zn"), steps: Steps(&MARGINAL_STEPS, &DTPA_ZN), ..DTPA },
    Scheme {
        id: named("dtpa-fe"),
        property: Property::Iron,
        steps: Steps(&MARGINAL_STEPS, &DTPA_FE),
        ..DTPA
    },
    Scheme {
        id: named("dtpa-cu"),
        property: Property::Copper,
        steps: Steps(&MARGINAL_STEPS, &DTPA_CU),
        ..DTPA
    },
    Scheme {
        id: named("dtpa-mn"),
        property: Property::Manganese,
        steps: Steps(&DTPA_MN_STEPS, &DTPA_MN),
        ..DTPA
    },
    Scheme {
        id: named("oregon-b"),
        property: Property::Boron,
        methods: &[Method::HotWater],
        steps: Steps(&OREGON_B_STEPS, &OREGON_B),
        citations: &[OREGON_EC1478.from_memory()],
        note: "Written from memory. Too much boron harms plants: never add it on this alone.",
        ..RUTGERS
    },
    Scheme { id: named("poland-zn"), steps: Steps(&BY_CROP_STEPS, &POLAND_ZN), ..POLAND },
    Scheme {
        id: named("poland-cu"),
        property: Property::Copper,
        steps: Steps(&BY_CROP_STEPS, &POLAND_CU),
        ..POLAND
    },
    Scheme {
        id: named("poland-fe"),
        property: Property::Iron,
        steps: Steps(&BY_CROP_STEPS, &POLAND_FE),
        ..POLAND
    },
    Scheme {
        id: named("poland-mn"),
        property: Property::Manganese,
        steps: Steps(&BY_CROP_STEPS, &POLAND_MN),
        ..POLAND
    },
    Scheme {
        id: named("poland-b"),
        property: Property::Boron,
        steps: Steps(&BY_CROP_STEPS, &POLAND_B),
        ..POLAND
    },
    Scheme {
        id: named("kentucky-zn-acid"),
        soils: Soils::Within(Property::Ph, 5.95, 6.45),
        steps: Steps(&BY_CROP_STEPS, &KENTUCKY_ZN_ACID),
        ..KENTUCKY
    },
    Scheme {
        id: named("kentucky-zn-alkaline"),
        soils: Soils::Within(Property::Ph, 7.25, 7.65),
        steps: Steps(&BY_CROP_STEPS, &KENTUCKY_ZN_ALKALINE),
        ..KENTUCKY
    },
    Scheme {
        id: named("slaton-zn-acid"),
        soils: Soils::Within(Property::Ph, 6.0, 6.4),
        steps: Steps(&AT_LEAST_STEPS, &SLATON_ZN_ACID),
        ..SLATON
    },
    Scheme {
        id: named("slaton-zn-neutral"),
        soils: Soils::Within(Property::Ph, 6.8, 7.2),
        steps: Steps(&AT_LEAST_STEPS, &SLATON_ZN_NEUTRAL),
        ..SLATON
    },
    Scheme {
        id: named("slaton-zn-alkaline"),
        soils: Soils::Within(Property::Ph, 7.6, 8.0),
        steps: Steps(&AT_LEAST_STEPS, &SLATON_ZN_ALKALINE),
        ..SLATON
    },
    Scheme {
        id: named("brazil-zn-mehlich-1"),
        steps: Steps(&BRAZIL_STEPS, &BRAZIL_ZN_MEHLICH_1),
        ..BRAZIL
    },
    Scheme {
        id: named("brazil-zn-dtpa"),
        methods: &[Method::Dtpa],
        steps: Steps(&BRAZIL_STEPS, &BRAZIL_ZN_DTPA),
        judges: NO_PLANTS,
        second: ALL_PLANTS,
        ..BRAZIL
    },
];
