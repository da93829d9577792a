//! Bray P1 phosphorus.

use crate::quantity::Unit::{LbPerAcre, MgPerKg};
use crate::ranges::Level::{Excess, High, Low, Sufficient};
use crate::ranges::Step;
use crate::ranges::scheme::{ALL_PLANTS, NO_PLANTS, Scheme};
use crate::soil::{Method, Property};
use crate::sources::{MISSOURI_PHOSPHORUS, SARE_PHOSPHORUS, TRI_STATE_1995};

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

const BRAY: Scheme = Scheme {
    id: "",
    property: Property::Phosphorus,
    methods: &[Method::BrayP1],
    unit: MgPerKg,
    steps: &[],
    printed_to: 0.0,
    judges: NO_PLANTS,
    second: ALL_PLANTS,
    citations: &[],
    note: "",
};

pub(super) static SCHEMES: &[Scheme] = &[
    Scheme {
        id: "sare-bray",
        steps: &SARE,
        judges: ALL_PLANTS,
        second: NO_PLANTS,
        citations: &[SARE_PHOSPHORUS.opened()],
        note: "A general table for field and garden crops.",
        ..BRAY
    },
    Scheme {
        id: "tri-state-bray",
        steps: &TRI_STATE,
        citations: &[TRI_STATE_1995.opened()],
        note: "The critical level for wheat and alfalfa; for maize and soybean it is 15 mg/kg.",
        ..BRAY
    },
    Scheme {
        id: "missouri-bray",
        unit: LbPerAcre,
        steps: &MISSOURI,
        citations: &[MISSOURI_PHOSPHORUS.opened()],
        note: "A build-up target for field crops, printed as 45 lb/acre.",
        ..BRAY
    },
];
