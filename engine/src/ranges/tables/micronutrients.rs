//! Micronutrients by Mehlich-3, DTPA and hot water. Authors differ two- to
//! fourfold, so a level here is a reason to look, not to spread anything.

use crate::quantity::Unit::MgPerKg;
use crate::ranges::Level::{Excess, High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{
    ALL_PLANTS, BLANK, NO_CHANCE, NO_PLANTS, Scheme, Soils, Steps, named, rungs,
};
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

rungs! {
    CRITICAL_STEPS: below "below critical" Low, to "adequate" Sufficient,
        to "high, a warning" High;
    MARGINAL_STEPS: to "low" Low, to "marginal" Low, to "sufficient" Sufficient;
    DTPA_MN_STEPS: to "low" Low, to "sufficient" Sufficient;
    OREGON_B_STEPS: below "very low" VeryLow, below "low" Low, below "medium" Low,
        to "high" Sufficient, to "excessive" Excess;
    BY_CROP_STEPS: below "short for every crop" Low, below "short for some crops" Low,
        to "enough" Sufficient;
    AT_LEAST_STEPS: below "below critical" Low, to "enough" Sufficient;
    BRAZIL_STEPS: below "short for beans and maize" Low, below "short for maize" Low,
        to "enough" Sufficient, to "may poison" Excess;
}

const RUTGERS: Scheme = Scheme {
    property: Property::Zinc,
    methods: &[Method::Mehlich3],
    unit: MgPerKg,
    judges: ALL_PLANTS,
    citations: &[RUTGERS_NUTRIENTS.opened()],
    meaning: "Below critical is deficient; above high is a warning.",
    note: CHECK,
    ..BLANK
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
    RUTGERS.table("rutgers-zn", Property::Zinc, Steps(CRITICAL_STEPS, &[1.0, 50.0])),
    RUTGERS.table("rutgers-cu", Property::Copper, Steps(CRITICAL_STEPS, &[0.5, 20.0])),
    RUTGERS.table("rutgers-b", Property::Boron, Steps(CRITICAL_STEPS, &[0.5, 20.0])),
    RUTGERS.table("rutgers-fe", Property::Iron, Steps(CRITICAL_STEPS, &[50.0, 100.0])),
    DTPA.table("dtpa-zn", Property::Zinc, Steps(MARGINAL_STEPS, &[0.5, 1.0])),
    DTPA.table("dtpa-fe", Property::Iron, Steps(MARGINAL_STEPS, &[2.5, 4.5])),
    DTPA.table("dtpa-cu", Property::Copper, Steps(MARGINAL_STEPS, &[0.4, 0.6])),
    DTPA.table("dtpa-mn", Property::Manganese, Steps(DTPA_MN_STEPS, &[1.0])),
    Scheme {
        id: named("oregon-b"),
        property: Property::Boron,
        methods: &[Method::HotWater],
        steps: Steps(OREGON_B_STEPS, &[0.2, 0.5, 1.0, 2.0]),
        citations: &[OREGON_EC1478.from_memory()],
        note: "Written from memory. Too much boron harms plants: never add it on this alone.",
        ..RUTGERS
    },
    POLAND.table("poland-zn", Property::Zinc, Steps(BY_CROP_STEPS, &[2.5, 7.0])),
    POLAND.table("poland-cu", Property::Copper, Steps(BY_CROP_STEPS, &[1.0, 2.2])),
    POLAND.table("poland-fe", Property::Iron, Steps(BY_CROP_STEPS, &[160.0, 280.0])),
    POLAND.table("poland-mn", Property::Manganese, Steps(BY_CROP_STEPS, &[30.0, 75.0])),
    POLAND.table("poland-b", Property::Boron, Steps(BY_CROP_STEPS, &[0.1, 0.9])),
    Scheme {
        soils: Soils::Within(Property::Ph, 5.95, 6.45),
        ..KENTUCKY.table("kentucky-zn-acid", Property::Zinc, Steps(BY_CROP_STEPS, &[0.55, 1.8]))
    },
    Scheme {
        soils: Soils::Within(Property::Ph, 7.25, 7.65),
        ..KENTUCKY.table("kentucky-zn-alkaline", Property::Zinc, Steps(BY_CROP_STEPS, &[1.6, 2.8]))
    },
    Scheme {
        soils: Soils::Within(Property::Ph, 6.0, 6.4),
        ..SLATON.table("slaton-zn-acid", Property::Zinc, Steps(AT_LEAST_STEPS, &[1.3]))
    },
    Scheme {
        soils: Soils::Within(Property::Ph, 6.8, 7.2),
        ..SLATON.table("slaton-zn-neutral", Property::Zinc, Steps(AT_LEAST_STEPS, &[3.5]))
    },
    Scheme {
        soils: Soils::Within(Property::Ph, 7.6, 8.0),
        ..SLATON.table("slaton-zn-alkaline", Property::Zinc, Steps(AT_LEAST_STEPS, &[4.2]))
    },
    BRAZIL.table("brazil-zn-mehlich-1", Property::Zinc, Steps(BRAZIL_STEPS, &[0.7, 2.0, 25.0])),
    Scheme {
        methods: &[Method::Dtpa],
        judges: NO_PLANTS,
        second: ALL_PLANTS,
        ..BRAZIL.table("brazil-zn-dtpa", Property::Zinc, Steps(BRAZIL_STEPS, &[0.3, 1.0, 25.0]))
    },
];
