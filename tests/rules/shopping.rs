//! What to buy for all beds of a report, and each bed's answer in a word or three.

use emberloam_engine::case::{BagState, Case, ChargeSource};
use emberloam_engine::plan::Path;
use emberloam_engine::summary::{ToBuy, Vessel, shopping, verdict_in_words};
use emberloam_engine::{interpret, quantity::Measures};

use crate::case_of;

/// Four beds: two acid and poor, one rich in nitrate, one without a result that says anything.
fn four_beds() -> Case {
    let mut case = case_of(
        "Sample,pH,Nitrate-N ppm,P (Olsen) ppm,K ppm\n\
         North,5.2,3,4,40\nSouth,5.2,3,4,40\nEast,6.7,60,20,200\nWest,6.5,,,\n",
    );
    assert_eq!(case.report.samples.len(), 4);
    case.bed.texture = Some(emberloam_engine::soil::Texture::ALL[2]);
    case
}

fn bought<'a>(lines: &'a [ToBuy], what: &str) -> Option<&'a ToBuy> {
    lines.iter().find(|line| line.what == what)
}

#[test]
fn bags_are_summed_before_they_are_rounded() {
    let mut case = four_beds();
    case.biochar.state = Some(BagState::Uncharged);
    case.biochar.bag_litres = Some(50.0);
    case.charge_with = vec![ChargeSource::Compost];
    case.answer(0, false, |case| case.bed.area_m2 = Some(4.0));
    case.answer(1, false, |case| case.bed.area_m2 = Some(6.0));
    let list = shopping(&case);
    let plans: Vec<_> = interpret(&case).samples.into_iter().map(|s| s.plan).collect();
    assert!(plans[0].path == Path::ChargeFirst && plans[1].path == Path::ChargeFirst);
    let litres = [0, 1].map(|at: usize| plans[at].dose.litres);
    let biochar = bought(&list.lines, "uncharged biochar").unwrap();
    let whole = ((litres[0] + litres[1]) / 50.0).ceil();
    // By hand: 4 and 6 m² of 7.5 L make 30 and 45 L, two bags in all; each alone rounded up
    // makes two as well, so that a third bed of 3 m² shows the difference.
    assert_eq!((biochar.vessel, biochar.count), (Vessel::Bag, Some(whole)));
    let of = |at: usize| (biochar.beds[at].name.as_str(), biochar.beds[at].amount.as_str());
    assert_eq!((of(0), of(1)), (("North", "30\u{a0}L"), ("South", "45\u{a0}L")));
    assert_eq!(biochar.amount, "2 bags");
    case.answer(0, false, |case| case.bed.area_m2 = Some(7.0));
    case.answer(1, false, |case| case.bed.area_m2 = Some(6.0));
    // 52.5 and 45 L: 97.5 L are two bags, where bed by bed it would be three.
    assert_eq!(bought(&shopping(&case).lines, "uncharged biochar").unwrap().amount, "2 bags");
    for what in ["compost", "ground limestone"] {
        assert_eq!(bought(&list.lines, what).unwrap().beds.len(), 2, "{what}");
    }
    // East has no size, West no plan.
    assert_eq!(
        list.not_counted,
        ["The size of “East” is not known.", "“West” has no answer about biochar yet."]
    );
}

#[test]
fn lime_is_bought_in_whole_bags_of_the_sum() {
    let mut case = four_beds();
    case.answer(0, true, |case| case.bed.area_m2 = Some(60.0));
    for (measures, bag) in [(Measures::Metric, 20.0), (Measures::Us, 40.0 * 0.453_592_37)] {
        case.measures = measures;
        let plans = interpret(&case).samples.into_iter().map(|sample| sample.plan);
        let carried = |plan: emberloam_engine::Plan| {
            let need = plan.needs.iter().find(|need| need.kind.name() == "lime")?.given()?;
            Some(need.likely / 1000.0)
        };
        let kg: f64 = plans.filter_map(carried).sum();
        let list = shopping(&case);
        let lime = bought(&list.lines, "ground limestone").unwrap();
        assert_eq!(lime.count, Some((kg / bag - 1e-9).ceil()), "{kg} kg: {lime:?}");
        assert_eq!(list.not_counted, ["“West” has no answer about biochar yet."]);
    }
}

#[test]
fn a_verdict_is_one_to_three_words_and_says_what_comes_first() {
    let mut case = four_beds();
    let words = |case: &Case, at: usize| verdict_in_words(&interpret(case).samples[at].plan);
    assert_eq!(words(&case, 0), "lime, then charged");
    assert_eq!(words(&case, 3), "no plan yet");
    case.biochar.state = Some(BagState::Uncharged);
    assert_eq!(words(&case, 0), "lime, then charge");
    let salty = case_of("pH 7.0\nNitrate-N 5 ppm\nECe 12 dS/m\nP (Olsen) 20 ppm\n");
    assert_eq!(words(&salty, 0), "salts first");
    let leaded = case_of("pH 6.5\nNitrate-N 5 ppm\nTotal lead 900 mg/kg\nP (Olsen) 20 ppm\n");
    assert_eq!(words(&leaded, 0), "lead first");
}
