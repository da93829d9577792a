//! Bray P1 phosphorus.

use super::mehlich_3::{SLAN_MEANING, between_models, turf};
use crate::quantity::Unit::{LbPerAcre, MgPerKg};
use crate::ranges::Level::{Excess, High, Low, Sufficient};
use crate::ranges::Step;
use crate::ranges::scheme::{ALL_PLANTS, LAWN, NO_CHANCE, NO_PLANTS, Scheme, Soils, named};
use crate::soil::{Method, Property};
use crate::sources::{IOWA_PHOSPHORUS, MISSOURI_PHOSPHORUS, SARE_PHOSPHORUS, SLAN, TRI_STATE_1995};

static SARE: [Step; 4] = [
    Step::to("low", Low, 15.0),
    Step::to("optimum", Sufficient, 24.0),
    Step::to("high", High, 31.0),
    Step::rest("very high", Excess),
];
static TRI_STATE: [Step; 2] =
    [Step::below("below critical", Low, 25.0), Step::rest("above critical", Sufficient)];
static MISSOURI: [Step; 2] =
    [Step::below("below target", Low, 45.0), Step::rest("at target", Sufficient)];

static IOWA: [Step; 3] = between_models(11.0, 20.0);
static SLAN_P: [Step; 3] = turf(15.0, 30.0);

const BRAY: Scheme = Scheme {
    id: named(""),
    property: Property::Phosphorus,
    methods: &[Method::BrayP1],
    soils: Soils::All,
    unit: MgPerKg,
    steps: &[],
    printed_to: 0.0,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[],
    meaning: NO_CHANCE,
    note: "",
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme {
        id: named("sare-bray"),
        steps: &SARE,
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: &[SARE_PHOSPHORUS.opened()],
        note: "A general table for field and garden crops.",
        ..BRAY
    },
    Scheme {
        id: named("tri-state-bray"),
        steps: &TRI_STATE,
        citations: &[TRI_STATE_1995.opened()],
        meaning: "Below the critical level crops are likely to respond.",
        note: "The critical level for wheat and alfalfa; for maize and soybean it is 15 mg/kg.",
        ..BRAY
    },
    Scheme {
        id: named("missouri-bray"),
        unit: LbPerAcre,
        steps: &MISSOURI,
        citations: &[MISSOURI_PHOSPHORUS.opened()],
        meaning: "High: a low chance of response; very high: none.",
        note: "A build-up target for field crops, printed as 45 lb/acre.",
        ..BRAY
    },
    Scheme {
        id: named("iowa-bray"),
        steps: &IOWA,
        citations: &[IOWA_PHOSPHORUS.opened()],
        meaning: "Above the critical level maize did not respond.",
        note: "From 61 trials with maize, soils rich in lime left out.",
        ..BRAY
    },
    Scheme {
        id: named("slan-bray"),
        steps: &SLAN_P,
        second: LAWN,
        citations: &[SLAN.second_hand()],
        meaning: SLAN_MEANING,
        ..BRAY
    },
];
