//! Where no lime belongs, and which buffer it was.

use emberloam_engine::case::{BedKind, Case};
use emberloam_engine::plan::needs::{Need, NeedKind, Verdict};
use emberloam_engine::quantity::Band;
use emberloam_engine::question::QuestionId;
use emberloam_engine::soil::PlantGroup;
use emberloam_engine::{Outcome, interpret};

fn case_of(text: &str) -> Case {
    let mut case = crate::case_of(text);
    case.bed.area_m2 = Some(10.0);
    case
}

#[track_caller]
fn find(needs: &Outcome, kind: NeedKind) -> &Need {
    needs
        .plan
        .needs
        .iter()
        .find(|n| n.kind == kind)
        .unwrap_or_else(|| panic!("no {kind:?}: {needs:?}"))
}

#[track_caller]
fn band(need: &Need, name: &str) -> Band {
    let figure = need.figures.iter().find(|f| f.name == name);
    figure.unwrap_or_else(|| panic!("no {name} in {need:?}")).band
}

/// Without the name of the buffer there is no amount, and it is asked; without a buffer test there is
/// a rough one with wide bounds, which says so. Common practice: a formula belongs to one buffer.
#[test]
fn a_buffer_without_a_name_gives_no_number() {
    let found = interpret(&case_of("pH 5.4\nBuffer pH 6.4\n"));
    let lime = find(&found, NeedKind::Lime);
    assert!(lime.figures.is_empty(), "{lime:?}");
    assert!(found.questions.iter().any(|q| q.id == QuestionId::Buffer));
    let found = interpret(&case_of("pH 5.4\n"));
    let lime = find(&found, NeedKind::Lime);
    let rate = band(lime, "lime-rate");
    assert!(rate.low > 0.0 && rate.high > 4.0 * rate.low, "{rate:?}");
    assert!(lime.figures[0].grounds.assumed.iter().any(|a| a.contains("a lime buffer test")));
    // A reading that the buffer can't give gives no number; one that no pH is, is none.
    let with = |reading| interpret(&case_of(&format!("pH 5.4\nSikora buffer pH {reading}\n")));
    let found = with("9.0");
    let lime = find(&found, NeedKind::Lime);
    assert!(lime.figures.is_empty() && lime.verdict == Verdict::Unknown, "{lime:?}");
    assert_eq!(band(find(&with("2.0"), NeedKind::Lime), "lime-rate"), rate);
}

/// Where no lime belongs. Source: common practice, no source.
#[test]
fn no_lime_where_none_belongs() {
    for text in ["pH 6.6\nSikora buffer pH 6.9\n", "pH 7.2\nSMP buffer pH 7.0\n"] {
        let found = interpret(&case_of(text));
        assert_eq!(find(&found, NeedKind::Lime).verdict, Verdict::Enough, "{text}");
    }
    let mut case = case_of("pH 4.6\nSikora buffer pH 6.2\n");
    case.plants = Some(PlantGroup::AcidLovers);
    assert_eq!(find(&interpret(&case), NeedKind::Lime).verdict, Verdict::Enough);
    let mut case = case_of("pH 5.2\nSikora buffer pH 6.2\n");
    case.bed.kind = Some(BedKind::Container);
    assert!(find(&interpret(&case), NeedKind::Lime).figures.is_empty());
}
