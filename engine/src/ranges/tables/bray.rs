//! Bray P1 phosphorus.

use super::mehlich_3::{BETWEEN_MODELS_STEPS, SLAN_MEANING, TURF_STEPS};
use crate::quantity::Unit::{LbPerAcre, MgPerKg};
use crate::ranges::Level::{Excess, High, Low, Sufficient};
use crate::ranges::scheme::{ALL_PLANTS, BLANK, LAWN, NO_PLANTS, Scheme, Steps, named, rungs};
use crate::soil::{Method, Property};
use crate::sources::{IOWA_PHOSPHORUS, MISSOURI_PHOSPHORUS, SARE_PHOSPHORUS, SLAN, TRI_STATE_1995};

rungs! {
    SARE_STEPS: to "low" Low, to "optimum" Sufficient, to "high" High, to "very high" Excess;
    TRI_STATE_STEPS: below "below critical" Low, to "above critical" Sufficient;
    MISSOURI_STEPS: below "below target" Low, to "at target" Sufficient;
}

const BRAY: Scheme = Scheme {
    property: Property::Phosphorus,
    methods: &[Method::BrayP1],
    unit: MgPerKg,
    second: ALL_PLANTS,
    ..BLANK
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme {
        id: named("sare-bray"),
        steps: Steps(SARE_STEPS, &[15.0, 24.0, 31.0]),
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: &[SARE_PHOSPHORUS.opened()],
        note: "A general table for field and garden crops.",
        ..BRAY
    },
    Scheme {
        id: named("tri-state-bray"),
        steps: Steps(TRI_STATE_STEPS, &[25.0]),
        citations: &[TRI_STATE_1995.opened()],
        meaning: "Below the critical level plants are likely to respond.",
        note: "The critical level for wheat and alfalfa; for maize and soybean it is 15 mg/kg.",
        ..BRAY
    },
    Scheme {
        id: named("missouri-bray"),
        unit: LbPerAcre,
        steps: Steps(MISSOURI_STEPS, &[45.0]),
        citations: &[MISSOURI_PHOSPHORUS.opened()],
        meaning: "Where that state calls a soil “high”, plants seldom respond; “very high”, never.",
        note: "A build-up target for field crops, printed as 45 lb/acre.",
        ..BRAY
    },
    Scheme {
        id: named("iowa-bray"),
        steps: Steps(BETWEEN_MODELS_STEPS, &[11.0, 20.0]),
        citations: &[IOWA_PHOSPHORUS.opened()],
        meaning: "Above the critical level maize does not respond.",
        note: "From trials with maize, without soils rich in lime.",
        ..BRAY
    },
    Scheme {
        id: named("slan-bray"),
        steps: Steps(TURF_STEPS, &[15.0, 30.0]),
        second: LAWN,
        citations: &[SLAN.second_hand()],
        meaning: SLAN_MEANING,
        ..BRAY
    },
];
