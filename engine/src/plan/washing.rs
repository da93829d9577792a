//! How much water takes the salts of a bed down, and what bears them until then.

use crate::quantity::{Band, Unit, between};
use crate::soil::salt_tolerance::{CROPS, relative_yield};
use crate::sources::{ARITHMETIC, Citation, HANDBOOK_60_LEACHING, NRCS_SALINITY, OUR_CHOICE};
use crate::survey::Survey;

/// Salts to come down to, dS/m of the paste: there the soil is no longer called saline.
/// Source: NRCS classes (opened).
const GOAL: f64 = 2.0;

/// The share of the salts that goes, and the depth of water for each depth of soil.
/// Source: Handbook 60 (from memory): half a foot of water takes half the salts out of a foot of
/// soil, a foot 80 %, two feet 90 %.
const TAKEN_OUT: ([f64; 4], [f64; 4]) = ([0.0, 0.5, 0.8, 0.9], [0.0, 0.5, 1.0, 2.0]);

/// A crop is said to bear the salts where so much of its yield is left, %. Our choice.
const BEARS: f64 = 75.0;
/// No more crops than these are named. Our choice.
const NAMED: usize = 4;

/// What the depth of water rests on.
pub(crate) const SOURCES: &[Citation] = &[
    HANDBOOK_60_LEACHING.from_memory(),
    NRCS_SALINITY.opened(),
    ARITHMETIC.derived(),
    OUR_CHOICE.unsourced(),
];

/// Water that brings the salts of the worked depth down, cm; no more than takes out 90 %. `None`
/// where the salts of the paste aren't known.
pub(crate) fn depth_of_water(survey: &Survey<'_>) -> Option<f64> {
    let ece = survey.ece()?.likely;
    let share = (1.0 - GOAL / ece).clamp(0.0, TAKEN_OUT.0[3]);
    let times = between(&TAKEN_OUT.0, &TAKEN_OUT.1, share).filter(|_| ece > GOAL)?;
    Some(times * survey.bed.depth.value)
}

/// What to do.
pub(crate) fn task(survey: &Survey<'_>, water: f64) -> String {
    let depth = survey.shown(&Band::exactly(survey.bed.depth.value), Unit::Cm);
    let high = survey.shown(&Band::exactly(water), Unit::Cm);
    format!(
        "First see that water drains away below. Then wash the salts down: roughly {high} of clean water in all for the top {depth}, in several waterings, each let drain. Test the salts again."
    )
}

/// What the bed can grow until then; `None` where no crop of it bears so much.
pub(crate) fn bears(survey: &Survey<'_>) -> Option<String> {
    let ece = survey.ece()?.likely;
    let left =
        |crop: &crate::soil::salt_tolerance::Crop| relative_yield(ece, crop.threshold, crop.slope);
    let mut bear: Vec<_> =
        CROPS.iter().filter(|crop| crop.grows_in(survey.plants()) && left(crop) >= BEARS).collect();
    bear.sort_by(|a, b| left(b).total_cmp(&left(a)));
    let names: Vec<_> = bear.iter().take(NAMED).map(|crop| crop.name).collect();
    (!names.is_empty())
        .then(|| format!(" Of what grows here these bear the salts best: {}.", names.join(", ")))
}
