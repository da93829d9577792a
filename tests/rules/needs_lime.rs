//! Where no lime belongs, and which buffer it was.

use emberloam_engine::case::{BedKind, Case};
use emberloam_engine::plan::Hazard;
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

/// Source: RB209 (from memory): a silt loam at pH 5.5 takes 8 t/ha of ground limestone to 6.7. The
/// region's own table is followed, and by it the soil takes up that much.
#[test]
fn a_regions_lime_table_is_followed_as_far_as_it_leads() {
    let mut case = case_of("pH 5.5\nTexture: silt loam\n");
    case.reading.region = Some("uk".into());
    case.bed.depth_cm = Some(20.0);
    case.feeds.lime_percent = Some(95.0);
    let found = interpret(&case);
    let lime = find(&found, NeedKind::Lime);
    let grams = lime.given().expect("lime").likely;
    assert!((grams / 10.0 - 800.0).abs() < 1.0, "{grams} g on 10 m2");
    assert!(lime.in_all.as_ref().is_some_and(|most| !most.binds), "{lime:?}");
    assert_eq!(lime.answer.split("to ").last(), Some("6.7."));
}

/// Source: Botta 2015 (opened): sodic from 6 % in Australia; Handbook 60 (from memory): from 15.
#[test]
fn a_soil_is_sodic_from_the_regions_own_line() {
    let of = |region: Option<&str>, share| {
        let mut case = case_of(&format!("pH 7.6\nCEC 20 meq/100 g\nESP {share} %\n"));
        case.reading.region = region.map(String::from);
        let plan = interpret(&case).plan;
        let gypsum = plan.needs.iter().any(|n| n.kind == NeedKind::Gypsum && n.given().is_some());
        (plan.hazards.contains(&Hazard::Sodium), gypsum)
    };
    assert_eq!(of(Some("australia"), 8), (true, true));
    assert_eq!(of(Some("australia"), 5), (false, false));
    assert_eq!(of(None, 12), (false, false));
    assert_eq!(of(None, 16), (true, true));
}

/// Source: University of Florida (opened): 5.5 to 7.0 is right, so that a printed 6.5 is aimed at;
/// a target beyond what the plants like is not.
#[test]
fn the_target_on_the_report_is_aimed_at() {
    let of = |target: &str| {
        let mut case = case_of(&format!("pH 5.2\nAdams-Evans buffer 7.50\n{target}\n"));
        case.reading.region = Some("us-florida".into());
        find(&interpret(&case), NeedKind::Lime).answer.split("to ").last().map(String::from)
    };
    assert_eq!(of("Target pH 6.5").as_deref(), Some("6.5."));
    assert_eq!(of("Target pH 7.6"), of(""));
    assert_ne!(of("").as_deref(), Some("6.5."));
}
