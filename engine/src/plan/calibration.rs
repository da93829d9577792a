//! What a trial teaches the model: its likely value and the trial's, each by how sure it is.

use serde::Serialize;

use crate::case::BedTrial;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown};
use crate::soil::Property;
use crate::sources::{GELMAN_BDA, OUR_CHOICE};

/// A band of low, likely and high is held to be right in 90 of 100 cases: its ends lie so many
/// standard deviations from its middle. Our choice.
const BAND_ENDS: f64 = 1.644_853_626_951_472_7;

/// The same of a 95 % interval.
const INTERVAL_ENDS: f64 = 1.959_963_984_540_054;

/// A change as the model foretells it, as the trial found it, and as both say together.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Calibrated {
    /// The model's own, unchanged.
    pub model: Band,
    /// With the trial, in the same measure.
    pub with_trial: Band,
    /// How much of the likely value is the trial's, 0 to 1.
    pub weight: f64,
    /// The rule, its numbers and its assumptions.
    pub grounds: Grounds,
}

/// The model's change of a property together with what a trial of this soil found, as its 95 %
/// interval, in the same measure (per cent of the control, or pH units); `None` where either has
/// no width, or is no number.
///
/// Both are taken as normal: the band of the model as its 90 % interval round its likely value,
/// the 95 % interval of the trial round what it found. Each counts by one over its square. It
/// holds for the bed of the trial and others like it: one trial can't tell how beds differ.
pub fn calibrate(model: Band, found: Band) -> Option<Calibrated> {
    let prior = (model.high - model.low) / (2.0 * BAND_ENDS);
    let trial = (found.high - found.low) / (2.0 * INTERVAL_ENDS);
    let usable = |sd: f64| sd.is_finite() && sd > 0.0;
    if !usable(prior) || !usable(trial) || !found.likely.is_finite() || !model.likely.is_finite() {
        return None;
    }
    // As shares of the wider, so that no square is lost.
    let wider = prior.max(trial);
    let [of_model, of_trial] = [prior, trial].map(|sd| (wider / sd).powi(2));
    let weight = of_trial / (of_model + of_trial);
    let likely = model.likely + weight * (found.likely - model.likely);
    let reach = BAND_ENDS * wider / (of_model + of_trial).sqrt();
    let grounds = Grounds::new(
        "The model's likely value and the trial's, each counted by one over the square of its standard deviation.",
        &[GELMAN_BDA.from_memory(), OUR_CHOICE.unsourced()],
    )
    .assume("The model's band holds in 90 of 100 cases.")
    .assume("The trial's soil is that of the bed.");
    let with_trial = Band::new(likely - reach, likely, likely + reach);
    Some(Calibrated { model, with_trial, weight, grounds })
}

/// What a plan foretells of one property together with the trial of its bed; `None` without one.
///
/// The trial tells where in the model's band this soil lies. Where the plan's dose or biochar is
/// another than the trial's was, the soil keeps that place in the band of now, and the band its
/// share of the width: our choice, since one trial can't tell how its soil takes another dose.
pub(crate) fn with_trial(
    change: &Figure,
    property: Property,
    trial: Option<&BedTrial>,
) -> Option<Figure> {
    let trial = trial?;
    let finding = trial.of(property)?;
    let (now, unit) = (change.band, change.unit);
    let both = calibrate(finding.model(), finding.seen())?;
    let width = |band: Band| band.high - band.low;
    let share = width(now) / width(both.model);
    if share <= 0.0 {
        return None;
    }
    let reach = share * width(both.with_trial) / 2.0;
    let likely = now.likely + share * (both.with_trial.likely - both.model.likely);
    // Nothing can fall by more than all of it.
    let least = if unit == Unit::Percent { -100.0 } else { f64::NEG_INFINITY };
    let band = Band::new(likely - reach, likely, likely + reach).map(|change| change.max(least));
    let told = |band: Band| shown(&band, unit, Measures::Metric);
    let mut grounds = both
        .grounds
        .input("foretold for the trial", told(both.model))
        .input("found in the trial", told(finding.seen()))
        .input("foretold for this plan", told(now));
    if now != both.model {
        grounds = grounds.assume(
            "With another dose or biochar than the trial's the soil keeps its place in the model's band.",
        );
    }
    let name = "with-your-trial";
    Some(Figure { name, label: change.label, band, unit, grounds })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: two that are as sure meet in the middle, and are surer by √2.
    #[test]
    fn two_that_are_as_sure_meet_in_the_middle() {
        let sd = 2.0;
        let model = Band::new(10.0 - BAND_ENDS * sd, 10.0, 10.0 + BAND_ENDS * sd);
        let reach = INTERVAL_ENDS * sd;
        let found = Band::new(20.0 - reach, 20.0, 20.0 + reach);
        let both = calibrate(model, found).unwrap();
        assert!((both.with_trial.likely - 15.0).abs() < 1e-12 && (both.weight - 0.5).abs() < 1e-12);
        let width = (both.with_trial.high - both.with_trial.low) / (model.high - model.low);
        assert!((width - 0.5f64.sqrt()).abs() < 1e-12);
        assert_eq!(both.model, model);
    }

    #[test]
    fn what_has_no_width_teaches_nothing() {
        let found = Band::new(1.0, 2.0, 3.0);
        assert_eq!(calibrate(Band::exactly(2.0), found), None);
        assert_eq!(calibrate(found, Band::exactly(2.0)), None);
    }
}
