//! The reaction class as the word for a pH.

use crate::ranges::Finding;
use crate::soil::Amount;
use crate::sources::NRCS_PH;

/// The reaction classes: upper ends, inclusive, to one decimal.
/// Source: NRCS Soil Survey Manual (opened).
const CLASSES: [(&str, f64); 11] = [
    ("ultra acid", 3.4),
    ("extremely acid", 4.4),
    ("very strongly acid", 5.0),
    ("strongly acid", 5.5),
    ("moderately acid", 6.0),
    ("slightly acid", 6.5),
    ("neutral", 7.3),
    ("slightly alkaline", 7.8),
    ("moderately alkaline", 8.4),
    ("strongly alkaline", 9.0),
    ("very strongly alkaline", f64::INFINITY),
];

/// The name of the reaction class of a pH, by the USDA-NRCS Soil Survey Manual.
pub fn reaction_class(ph: f64) -> &'static str {
    let ph = to_a_tenth(ph);
    CLASSES.iter().find(|(_, end)| ph <= *end).map_or("neutral", |(name, _)| name)
}

/// pH to the tenth that ranges are printed to, so that 7.04 is still 7.0.
pub(super) fn to_a_tenth(ph: f64) -> f64 {
    (ph * 10.0).round() / 10.0
}

/// Puts the reaction class in place of the step's word.
pub(super) fn name_the_class(finding: &mut Finding, amount: Amount) {
    let class = reaction_class(amount.number());
    for range in finding
        .range
        .iter_mut()
        .chain(finding.second_opinions.iter_mut().map(|opinion| &mut opinion.range))
    {
        range.word = class;
    }
    if finding.level.is_some() {
        finding.grounds.rule = format!("{} The soil is {class}.", finding.grounds.rule);
        finding.grounds.sources.push(NRCS_PH.opened());
    }
}
