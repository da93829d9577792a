//! Where an extractant tells nothing: soils it was not made for.

use crate::soil::{Amount, Measure, Method, Property, Soil};
use crate::sources::{Citation, MONTANA_OLSEN, OUR_CHOICE, SERA6_METHODS};

/// Bray P1 is refused from this pH. The source keeps it below 7; it is the
/// neutral class that ends here.
const BRAY_UP_TO_PH: f64 = 7.3;
/// Laboratories change from Mehlich-1 to another extractant above this pH.
const MEHLICH_1_UP_TO_PH: f64 = 7.4;
/// Mehlich-1 was made for soils that exchange less than this, meq/100 g.
const MEHLICH_1_UP_TO_CEC: f64 = 10.0;
/// Free lime that counts as calcareous, % CaCO3.
/// Our choice: the least that a laboratory reports.
const CALCAREOUS: f64 = 0.5;

/// What an extractant's limits say of one measure.
#[derive(Debug, PartialEq)]
pub(super) enum Fit {
    /// Within its limits.
    Fits,
    /// Usable, with this said beside it.
    Doubtful(&'static str, Citation),
    /// Not usable, for this reason.
    Refused(&'static str, Vec<Citation>),
}

/// Whether the soil holds free lime, as far as the report says.
pub(crate) fn has_free_lime(soil: &Soil) -> bool {
    soil.get(Property::FreeLime).is_some_and(|m| match m.amount {
        Amount::Exactly(v) | Amount::Above(v) => v >= CALCAREOUS,
        Amount::Below(_) => false,
    })
}

/// Whether the measure's extractant can be trusted in this soil.
pub(super) fn fit(measure: &Measure, soil: &Soil) -> Fit {
    let ph = soil.value(Property::Ph);
    let lime = has_free_lime(soil);
    match measure.method {
        Some(Method::BrayP1 | Method::BrayP2) if lime || ph.is_some_and(|v| v >= BRAY_UP_TO_PH) => {
            Fit::Refused(
                "Bray fails where there is lime (pH 7.3 or more): it can find no phosphorus where there is plenty. Ask the lab for Olsen or Mehlich-3.",
                vec![MONTANA_OLSEN.opened(), OUR_CHOICE.unsourced()],
            )
        }
        Some(Method::BrayP1 | Method::BrayP2) if ph.is_some_and(|v| v > 7.0) => Fit::Doubtful(
            "Above pH 7 Bray may read too low. Olsen is the better test there.",
            MONTANA_OLSEN.opened(),
        ),
        Some(Method::Mehlich1) if lime || ph.is_some_and(|v| v > MEHLICH_1_UP_TO_PH) => {
            Fit::Refused(
                "Mehlich-1 is made for acid soils, and labs leave it above pH 7.4. Ask the lab for Mehlich-3 or Olsen.",
                vec![SERA6_METHODS.opened()],
            )
        }
        Some(Method::Mehlich1) if ph.is_some_and(|v| v >= 7.0) => Fit::Doubtful(
            "Mehlich-1 is made for acid soils; from pH 7 it is near its limit.",
            SERA6_METHODS.opened(),
        ),
        Some(Method::Mehlich1)
            if soil.value(Property::Cec).is_some_and(|v| v > MEHLICH_1_UP_TO_CEC) =>
        {
            Fit::Doubtful(
                "Mehlich-1 is made for soils of low exchange capacity, below about 10 meq/100 g (from memory).",
                SERA6_METHODS.from_memory(),
            )
        }
        _ => Fit::Fits,
    }
}
