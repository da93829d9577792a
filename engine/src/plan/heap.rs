//! Charging a heap of biochar without a soil test.

use std::borrow::Cow;
use std::ops::RangeInclusive;

use crate::case::{BagState, Bed, Case, Charge, ChargeSource};
use crate::plan::charge::ChargePlan;
use crate::plan::path::Path;
use crate::plan::{balance, rate};
use crate::quantity::{Measures, significant};
use crate::survey::survey_of;

/// What a heap can be, litres. Our choice: a cup or so to a lorry or two.
const HEAPS: RangeInclusive<f64> = 0.1..=100_000.0;

/// The recipe for so many litres of fresh biochar, where nothing is known of the soil: for a bed
/// of mixed vegetables that takes the usual share of it in the usual depth, as for any plan.
///
/// # Errors
/// In words for the reader, when no heap is of that size.
pub fn charge_alone(
    litres: f64,
    with: &[ChargeSource],
    charge: &Charge,
    measures: Measures,
) -> Result<ChargePlan, String> {
    if !HEAPS.contains(&litres) {
        return Err(format!(
            "A heap of {} L can't be charged by this recipe: give 0.1 to 100,000 litres.",
            significant(litres, 3)
        ));
    }
    let of_area = |area_m2: f64| Case {
        bed: Bed { area_m2: Some(area_m2), ..Bed::default() },
        charge_with: with.to_vec(),
        charge: charge.clone(),
        measures,
        ..Case::default()
    };
    let mut case = of_area(1.0);
    case.biochar.state = Some(BagState::Uncharged);
    // The bed that takes so much: the share doesn't depend on the area.
    let on_one = rate::dose(&survey_of(Cow::Borrowed(&case), 0)).litres;
    case.bed.area_m2 = Some(litres / on_one);
    let survey = survey_of(Cow::Owned(case), 0);
    let dose = rate::dose(&survey);
    let charged = balance(&survey, &[], Path::ChargeFirst, &dose, &mut Vec::new()).charge;
    charged.ok_or_else(|| "Nothing needs charging here.".to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn alone(litres: f64, with: &[ChargeSource]) -> ChargePlan {
        charge_alone(litres, with, &Charge::default(), Measures::Metric).unwrap()
    }

    #[test]
    fn twice_the_heap_takes_twice_of_everything() {
        for source in ChargeSource::ALL {
            for beside in [&[][..], &[ChargeSource::Compost], &[ChargeSource::Urine]] {
                let with: Vec<ChargeSource> =
                    std::iter::once(source).chain(beside.iter().copied()).collect();
                let one = alone(10.0, &with);
                for litres in [0.1, 7.0, 100.0, 2345.0, 100_000.0] {
                    let other = alone(litres, &with);
                    assert_eq!(one.sources(), other.sources(), "{with:?}");
                    for (a, b) in one.used.iter().zip(&other.used) {
                        let scaled = a.amount * litres / 10.0;
                        assert!((scaled / b.amount - 1.0).abs() < 1e-6, "{with:?} {litres}");
                    }
                }
            }
        }
    }

    #[test]
    fn what_is_no_heap_is_refused_in_words() {
        for litres in [0.0, -3.0, 0.09, 100_001.0, f64::NAN, f64::INFINITY] {
            let refused = charge_alone(litres, &[], &Charge::default(), Measures::Metric);
            assert!(refused.unwrap_err().contains("0.1 to 100,000 litres"));
        }
    }

    #[test]
    fn nobody_told_what_to_charge_with_gets_a_whole_recipe() {
        let plan = alone(40.0, &[]);
        assert_eq!(plan.sources(), [ChargeSource::Compost]);
        assert!(plan.steps.iter().any(|step| step.contains("40\u{a0}L (4 buckets) of biochar")));
        assert!(plan.steps.len() > 4 && !plan.cautions.is_empty());
        assert!(!plan.text.contains("further down"), "{}", plan.text);
    }
}
