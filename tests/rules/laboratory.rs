//! What the laboratory advises stands beside our amounts, and in their place where we have none.

use emberloam_engine::plan::needs::{Need, NeedKind, Verdict};
use emberloam_engine::question::QuestionId;
use emberloam_engine::soil::PlantGroup;
use emberloam_engine::sources::LABORATORY;
use emberloam_engine::{Case, interpret};

use crate::{case_of, close};

/// A bed of 10 m², limed with pure lime; it is without biochar.
fn bed(text: &str) -> Case {
    let mut case = case_of(text);
    case.bed.area_m2 = Some(10.0);
    case.feeds.lime_percent = Some(100.0);
    case.biochar.state = Some(emberloam_engine::case::BagState::NoneYet);
    case
}

#[track_caller]
fn need(case: &Case, kind: NeedKind) -> Need {
    let needs = interpret(case).plan.needs;
    needs.into_iter().find(|need| need.kind == kind).expect("the need is spoken of")
}

#[track_caller]
fn grams(need: &Need) -> f64 {
    need.given().unwrap_or_else(|| panic!("{need:?}")).likely
}

fn rests_on_the_laboratory(need: &Need) -> bool {
    need.grounds.sources.contains(&LABORATORY.opened())
}

/// By hand: 1 t/ha is 100 g/m², so 3 t/ha of pure lime is 3 kg on 10 m²; 1.5 t CaO is 2.68 t
/// CaCO3 by atomic masses (derived).
#[test]
fn where_no_table_was_read_the_laboratorys_lime_is_the_answer() {
    for (line, kg) in [("Lime 3 t/ha CaCO3", 3.0), ("Lime requirement 1500 kg CaO/ha", 2.677)] {
        let lime = need(&bed(&format!("pH 5.4\nCEC 14 meq/100g\n{line}")), NeedKind::Lime);
        close(grams(&lime) / 1000.0, kg, 0.01);
        assert!(rests_on_the_laboratory(&lime) && !lime.others.is_empty(), "{lime:?}");
    }
    let none = need(&bed("pH 5.4\nCEC 14 meq/100g\nLime 0 t/ha"), NeedKind::Lime);
    assert_eq!((none.verdict, rests_on_the_laboratory(&none)), (Verdict::Enough, true));
    // A buffer nobody named needs no question where the laboratory has answered.
    let text = "pH 5.4\nCEC 14 meq/100g\nBuffer pH 6.4\n";
    let asks = |case: &Case| interpret(case).questions.iter().any(|q| q.id == QuestionId::Buffer);
    assert!(asks(&bed(text)) && !asks(&bed(&format!("{text}Lime 3 t/ha"))));
}

#[test]
fn beside_a_table_that_was_read_the_laboratorys_lime_is_said() {
    let text = "pH 5.4\nCEC 14 meq/100g\nSikora buffer pH 6.4\n";
    let ours = need(&bed(text), NeedKind::Lime);
    let with = |line: &str| need(&bed(&format!("{text}{line}")), NeedKind::Lime);
    let t_per_ha = grams(&ours) / 1000.0;
    let near = with(&format!("Lime {:.2} t/ha CaCO3", t_per_ha));
    let apart = with(&format!("Lime {:.2} t/ha CaCO3", t_per_ha / 2.0));
    let far = with("Lime 30 t/ha CaCO3");
    let none = with("Lime 0 t/ha");
    for (need, says) in [
        (&near, "Either will do"),
        (&apart, "follow the laboratory"),
        (&far, "is not given here"),
        (&none, "asks for none"),
    ] {
        close(grams(need), grams(&ours), 1e-6);
        assert!(need.steps[0].contains(says), "{:?}", need.steps);
        assert!(rests_on_the_laboratory(need));
    }
    assert!(near.steps[0].contains(&format!("{:.1}", t_per_ha)), "{:?}", near.steps);
}

#[test]
fn the_laboratorys_lime_is_held_to_the_same_ceilings() {
    let much = need(&bed("pH 6.0\nCEC 6 meq/100g\nLime 30 t/ha"), NeedKind::Lime);
    let most = much.in_all.clone().expect("a ceiling");
    assert!(most.binds && grams(&much) <= most.most * (1.0 + 1e-9), "{much:?}");
    let mut acid = bed("pH 4.6\nLime 3 t/ha");
    acid.plants = Some(PlantGroup::AcidLovers);
    let none = need(&acid, NeedKind::Lime);
    assert_eq!((none.verdict, none.given()), (Verdict::Enough, None));
    assert!(none.steps[0].contains("which plants"), "{:?}", none.steps);
    let lead = bed("pH 5.4\nLead (total) 4000 ppm\nK2O 100 kg/ha recommended");
    assert!(interpret(&lead).plan.needs.iter().all(|n| n.kind != NeedKind::Potash));
}

/// By hand: 60 kg/ha is 6 g/m² and 60 g on 10 m²; 2 lb/1000 sq ft is 97.6 kg/ha.
#[test]
fn where_we_hold_no_rate_the_laboratorys_feed_is_the_answer() {
    let memory = "pH 6.4\nP (Mehlich-1) 8 lb/acre\nK (Mehlich-1) 40 lb/acre\nCEC 14 meq/100g\n";
    for (line, kind, rate) in [
        ("P2O5 recommended 60 kg/ha", NeedKind::Phosphate, 60.0),
        ("K2O recommended 60 kg/ha", NeedKind::Potash, 60.0),
        ("P2O5 2 lb/1000 sq ft", NeedKind::Phosphate, 97.6),
    ] {
        let found = need(&bed(&format!("{memory}{line}")), kind);
        close(found.figures[0].band.likely, rate / 10.0, 0.01);
        // The bed gets it less what biochar brings: 1 kg/ha is 1 g here.
        assert!((1.0..=rate).contains(&grams(&found)), "{found:?}");
        assert!(rests_on_the_laboratory(&found), "{found:?}");
    }
    // No more than the highest published dressing, 150 lb/acre.
    let much = bed(&format!("{memory}P2O5 recommended 900 kg/ha"));
    assert!(grams(&need(&much, NeedKind::Phosphate)) < 168.2);
    let mut currants = bed("pH 6.4\nN recommended 50 kg/ha");
    currants.plants = Some(PlantGroup::Berries);
    close(need(&currants, NeedKind::Nitrogen).figures[0].band.likely, 5.0, 0.01);
    let beside = need(&bed("pH 6.4\nN recommended 20 kg/ha"), NeedKind::Nitrogen);
    assert!(beside.steps[0].contains("follow the laboratory"), "{:?}", beside.steps);
}

#[test]
fn of_several_figures_the_one_for_what_grows_here_is_taken() {
    let text = "pH 5.4\nCEC 14 meq/100g\nLime requirement (arable) 4 t/ha\nLime requirement (grass) 1 t/ha";
    let printed = |case: &Case| need(case, NeedKind::Lime).grounds.inputs[0].value.clone();
    assert_eq!(printed(&bed(text)), "4\u{a0}t/ha");
    let mut lawn = bed(text);
    lawn.plants = Some(PlantGroup::Lawn);
    assert_eq!(printed(&lawn), "1\u{a0}t/ha");
    let unclear = need(&bed("pH 5.4\nLime 4 t/ha\nLime requirement 1 t/ha"), NeedKind::Lime);
    assert!(!rests_on_the_laboratory(&unclear));
}
