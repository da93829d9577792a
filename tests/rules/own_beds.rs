//! Several beds in one report, each with answers of its own.

use std::borrow::Cow;

use emberloam_engine::case::{BagState, BedKind, Case, Crop};
use emberloam_engine::details::sensitivity;
use emberloam_engine::question::QuestionId;
use emberloam_engine::soil::PlantGroup;
use emberloam_engine::{interpret, interpret_survey, judged_readings, survey};

use crate::{case_of, day};

/// Two beds of the same poor soil.
fn two_beds() -> Case {
    let mut case = case_of(
        "Sample,pH,Nitrate-N ppm,P (Olsen) ppm,K ppm,Sand %,Silt %,Clay %\n\
         North,5.4,3,4,40,60,25,15\nSouth,5.4,3,4,40,60,25,15\n",
    );
    assert_eq!(case.report.samples.len(), 2);
    case.biochar.state = Some(BagState::Uncharged);
    case.bed.area_m2 = Some(10.0);
    case
}

#[test]
fn each_bed_is_planned_by_its_own_answers() {
    let mut case = two_beds();
    let before = interpret(&case);
    case.answer(1, false, |case| {
        case.bed.area_m2 = Some(30.0);
        case.bed.kind = Some(BedKind::NoDig);
        case.plants = Some(PlantGroup::Lawn);
    });
    let after = interpret(&case);
    assert_eq!(after.samples[0], before.samples[0]);
    let litres = |at: usize| after.samples[at].plan.dose.litres;
    assert!((litres(1) / litres(0) - 3.0).abs() < 1e-9, "{} {}", litres(0), litres(1));
    assert!(after.samples[1].plan.jobs.iter().all(|job| !job.digs));
    assert_eq!(after.samples[1].name, "South");
    assert_eq!(judged_readings(&case, 1), after.samples[1].readings);
    for at in [0, 1] {
        let alone = case.of_sample(at);
        assert_eq!(interpret(&alone).plan, after.samples[at].plan);
        // As the page does it, and as a view of a plan does.
        case.sample = at;
        for surveyed in [survey(Cow::Owned(case.clone())), survey(Cow::Borrowed(&case))] {
            assert_eq!(emberloam_engine::plan(&surveyed).0, after.samples[at].plan);
        }
    }
    case.sample = 1;
    let surveyed = survey(Cow::Borrowed(&case));
    assert_eq!(interpret_survey(&surveyed).samples[0], after.samples[1]);
}

#[test]
fn whether_the_answer_holds_is_tried_with_the_beds_own_answers() {
    let mut case = two_beds();
    // A day of planting is moved both ways.
    case.answer(1, false, |case| case.season.planting = day(2027, 4, 20));
    case.sample = 1;
    let of = |case: &Case| sensitivity(case).unwrap().of;
    assert_eq!(sensitivity(&case), sensitivity(&case.of_sample(1)));
    assert_eq!(of(&case), of(&case.of_sample(0)) + 2);
}

#[test]
fn beds_are_counted_anew_where_a_report_is_cut() {
    let mut case = two_beds();
    case.answer(1, false, |case| case.bed.area_m2 = Some(30.0));
    let whole = interpret(&case);
    case.report.samples.remove(0);
    case.count_beds_from(1);
    assert_eq!(interpret(&case).samples[0], whole.samples[1]);
    case.count_beds_from(1);
    assert!(case.beds.is_empty());
}

#[test]
fn a_crop_that_the_report_names_is_planned_for_until_another_is_said() {
    const SOIL: &str = "pH 6.4\nOlsen method\nPhosphorus 18 mg/kg\nPotassium 90 mg/kg\n";
    let asked = |case: &Case| {
        interpret(case).questions.iter().any(|question| question.id == QuestionId::Plants)
    };
    let plain = case_of(SOIL);
    assert!(asked(&plain));
    let case = case_of(&format!("Crop: Carrots\n{SOIL}"));
    let told = interpret(&case);
    assert!(!asked(&case));
    assert!(told.notes.iter().any(|note| note.contains("names this crop: carrot")), "{told:#?}");
    // The page surveys first; it must say the same.
    assert_eq!(interpret_survey(&survey(Cow::Borrowed(&case))), told);
    let mut answered = plain.clone();
    answered.plants = Some(PlantGroup::RootCrops);
    answered.season.crops.push(Crop { name: "carrot".into(), planting: None, harvest: None });
    assert_eq!(interpret(&answered).plan, told.plan);
    // What a person says stands before it.
    let mut lawn = case.clone();
    lawn.plants = Some(PlantGroup::Lawn);
    let mut plain_lawn = plain;
    plain_lawn.plants = Some(PlantGroup::Lawn);
    assert_eq!(interpret(&lawn).plan, interpret(&plain_lawn).plan);
    assert!(!interpret(&lawn).notes.iter().any(|note| note.contains("names this crop")));
}
