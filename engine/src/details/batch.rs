//! The plan's recipe for another amount of biochar: what a person has at hand.

use crate::plan::charge::ChargePlan;
use crate::plan::{Plan, plan};
use crate::survey::Survey;

/// What can be charged at once, litres. Source: our choice.
const LITRES: std::ops::RangeInclusive<f64> = 0.5..=100_000.0;

/// The recipe for so many litres of biochar. A bed that takes them is so many times larger, and
/// so is all that is brought to it. `None` where the plan charges nothing, or such an amount
/// can't be.
pub fn batch(survey: &Survey<'_>, of: &Plan, litres: f64) -> Option<ChargePlan> {
    if of.charge.is_none() || of.dose.litres <= 0.0 || !LITRES.contains(&litres) {
        return None;
    }
    let area = of.dose.area * litres / of.dose.litres;
    let larger = survey.with_case(&|case| case.bed.area_m2 = Some(area));
    plan(&larger).0.charge
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::case::{BagState, Case, ChargeSource};
    use crate::report;
    use crate::survey::survey_of;

    #[test]
    fn what_is_brought_grows_with_the_biochar() {
        let text = "Mehlich-3\npH 5.6\nP 4 ppm\nK 38 ppm\nNitrate-N 3 ppm\nCEC 6\n";
        let mut case = Case {
            report: report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).unwrap(),
            charge_with: vec![ChargeSource::Compost],
            ..Case::default()
        };
        case.bed.area_m2 = Some(6.0);
        case.bed.depth_cm = Some(15.0);
        case.biochar.state = Some(BagState::Uncharged);
        let survey = survey_of(std::borrow::Cow::Owned(case), 0);
        let (whole, _) = plan(&survey);
        let of = |litres| batch(&survey, &whole, litres).unwrap();
        assert_eq!(Some(of(whole.dose.litres)), whole.charge);
        let (small, large) = (of(50.0), of(100.0));
        for (less, more) in small.used.iter().zip(&large.used) {
            let ratio = more.amount / less.amount;
            assert!((ratio - 2.0).abs() < 0.02, "{} {ratio}", less.label);
        }
        assert_eq!(batch(&survey, &whole, 0.0), None);
        assert_eq!(batch(&survey, &whole, f64::NAN), None);
    }
}
