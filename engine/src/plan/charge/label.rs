//! What a person knows of a source: its label, and how much there is of it.

use crate::case::{Charge, ChargeSource, SourceFigures};

/// What the person knows of a source.
pub(super) fn known(charge: &Charge, source: ChargeSource) -> Option<&SourceFigures> {
    charge.sources.iter().find(|own| own.source == source)
}

/// The N-P2O5-K2O of a label, where it can be one.
pub fn own_label(charge: &Charge, source: ChargeSource) -> Option<[f64; 3]> {
    let label = known(charge, source)?.n_p2o5_k2o?;
    let holds =
        label.iter().all(|p| (0.0..=100.0).contains(p)) && label.iter().sum::<f64>() <= 100.0;
    holds.then_some(label)
}
