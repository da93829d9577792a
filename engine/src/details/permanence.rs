//! How much of a biochar's carbon is still in the soil after a hundred years.

use crate::bag::between;
use crate::bag::certificate::given;
use crate::case::{Bag, Case, CertificateItem, Season};
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::sources::{OUR_CHOICE, WOOLF_2021};

/// Soil temperature, °C, with intercept and slope of the share that stays on
/// the atoms of hydrogen to one of organic carbon.
/// Source: Woolf et al. 2021, refitted to the 85 chars of the authors' data
/// (derived).
const FIT: [(f64, f64, f64); 7] = [
    (5.0, 1.126, 0.461),
    (8.0, 1.114, 0.550),
    (10.0, 1.095, 0.588),
    (10.9, 1.086, 0.601),
    (15.0, 1.044, 0.636),
    (20.0, 1.006, 0.651),
    (25.0, 0.981, 0.656),
];

/// How far the chars lie from the fit, as a standard deviation, in cool and in
/// warm soil. Source: the same fit (derived).
const SCATTER: [(f64, f64); 2] = [(5.0, 0.13), (25.0, 0.22)];

/// Hydrogen to organic carbon by the temperature it was made at, ± 0.12.
/// Source: review literature, from memory.
const BY_HEAT: [(f64, f64); 4] = [(400.0, 0.65), (500.0, 0.45), (600.0, 0.30), (700.0, 0.18)];
/// How far it lies from that. Source: review literature, from memory.
const BY_HEAT_WITHIN: f64 = 0.12;

/// Hydrogen to organic carbon where nothing is known. Source: from memory.
const USUAL: Band = Band { low: 0.18, likely: 0.45, high: 0.7 };

/// Mean soil temperature where nothing is known, °C. Source: our choice: the
/// fit's whole range.
const USUAL_SOIL: Band = Band { low: 5.0, likely: 10.9, high: 25.0 };

/// The share (0–1) of the carbon that is still there after a hundred years, by
/// the atoms of hydrogen to one of organic carbon and the mean temperature of
/// the soil, °C, held to 5 to 25.
///
/// Source: Woolf et al. 2021, refitted (derived).
pub fn share_left(hydrogen_to_carbon: f64, soil_c: f64) -> f64 {
    let intercept = between(&FIT.map(|(t, a, _)| (t, a)), soil_c);
    let slope = between(&FIT.map(|(t, _, b)| (t, b)), soil_c);
    (intercept - slope * hydrogen_to_carbon).clamp(0.0, 1.0)
}

/// What lasts of the biochar's carbon, %. Two chars in three lie between low and
/// high, as far as the numbers that go in are measured.
pub fn permanence(case: &Case) -> Figure {
    let bag = &case.biochar;
    let mut grounds = Grounds::new(
        "intercept − slope × H:C, both by the temperature of the soil; held between 0 and 100 %",
        &[WOOLF_2021.derived()],
    )
    .assume(
        "The trials behind this lasted a few years; a hundred is drawn out from them. Ploughing, \
         fire and water that carries it off are not counted.",
    );
    let ratio = hydrogen_to_carbon(bag, &mut grounds);
    let soil = soil_temperature(&case.season, &mut grounds);
    let left = |ratio: f64, soil: f64, off: f64| {
        let share = share_left(ratio, soil) + off * between(&SCATTER, soil);
        100.0 * share.clamp(0.0, 1.0)
    };
    let band = Band::new(
        left(ratio.high, soil.high, -1.0),
        left(ratio.likely, soil.likely, 0.0),
        left(ratio.low, soil.low, 1.0),
    );
    grounds = grounds
        .input("ratio of H to organic C (molar)", shown(&ratio, Unit::None, Measures::Metric))
        .input("mean soil temperature", shown(&soil, Unit::Celsius, Measures::Metric));
    if let Some(carbon) = known(bag, CertificateItem::OrganicCarbon) {
        grounds = grounds.input("organic carbon", format!("{} %", significant(carbon, 3)));
    }
    Figure::new(
        "permanence",
        "of its carbon still there after 100 years",
        band,
        Unit::Percent,
        grounds,
    )
}

/// What the certificate gives, unless it can't be.
fn known(bag: &Bag, what: CertificateItem) -> Option<f64> {
    given(bag, what).ok().flatten()
}

/// Hydrogen to organic carbon, measured or taken.
fn hydrogen_to_carbon(bag: &Bag, grounds: &mut Grounds) -> Band {
    if let Some(measured) = known(bag, CertificateItem::HydrogenToCarbon) {
        return Band::exactly(measured);
    }
    grounds.sources.push(OUR_CHOICE.from_memory());
    if let Some(heat) = known(bag, CertificateItem::MadeAt) {
        grounds.assumed.push("H to organic C is taken from the temperature it was made at.".into());
        let likely = between(&BY_HEAT, heat);
        return Band::new(likely - BY_HEAT_WITHIN, likely, likely + BY_HEAT_WITHIN);
    }
    grounds.assumed.push(
        "H to organic C is not given; 0.18 to 0.7 is usual. It stands on a certificate.".into(),
    );
    USUAL
}

/// The mean temperature of the soil, °C: the air's where it is known.
fn soil_temperature(season: &Season, grounds: &mut Grounds) -> Band {
    let year = season
        .lowest_c
        .zip(season.highest_c)
        .map(|(low, high)| low.iter().chain(&high).sum::<f64>() / 24.0);
    let Some(mean) = year.filter(|mean| mean.is_finite()) else {
        grounds.assumed.push(
            "How warm the soil is, is not known: 5 to 25 °C over the year, likely 11.".into(),
        );
        return USUAL_SOIL;
    };
    grounds.assumed.push("The soil is as warm as the air, over a year.".into());
    if !(USUAL_SOIL.low..=USUAL_SOIL.high).contains(&mean) {
        grounds
            .assumed
            .push("The year's mean lies outside 5 to 25 °C; the nearest is taken.".into());
    }
    Band::exactly(mean.clamp(USUAL_SOIL.low, USUAL_SOIL.high))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::case::CertificateFigure;

    #[test]
    fn bare_bags_are_wide_and_measured_ones_narrower() {
        let bare = permanence(&Case::default()).band;
        assert!(bare.low < 50.0 && bare.high > 95.0, "{bare:?}");
        let mut case = Case::default();
        let (what, value) = (CertificateItem::HydrogenToCarbon, 0.4);
        case.biochar.certificate = vec![CertificateFigure { what, value }];
        (case.season.lowest_c, case.season.highest_c) = (Some([5.0; 12]), Some([15.0; 12]));
        let measured = permanence(&case).band;
        assert!((measured.likely - 86.0).abs() < 0.5, "{measured:?}");
        assert!(measured.high - measured.low < bare.high - bare.low);
    }

    #[test]
    fn nothing_leaves_more_than_all_or_less_than_none() {
        assert_eq!(share_left(0.0, 5.0), 1.0);
        assert_eq!(share_left(2.0, 30.0), 0.0);
        assert_eq!(share_left(0.4, -20.0), share_left(0.4, 5.0));
    }
}
