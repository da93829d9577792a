//! Amounts in the measure of the thing and of the reader.

use emberloam_engine::case::Case;
use emberloam_engine::outcome::interpret;
use emberloam_engine::plan::needs::NeedKind;
use emberloam_engine::quantity::{Measures, Unit};
use emberloam_engine::soil::PlantGroup;

use crate::shared::case_of;

fn bed(area: Option<f64>, measures: Measures) -> Case {
    let mut case = case_of("pH 6.5\nP (Mehlich-3) 60 ppm\nK (Mehlich-3) 180 ppm\n");
    case.bed.area_m2 = area;
    case.measures = measures;
    case
}

/// The unit of the nitrogen rate, and its likely value.
fn rate(case: &Case) -> (Unit, f64) {
    let plan = interpret(case).plan;
    let need = plan.needs.iter().find(|need| need.kind == NeedKind::Nitrogen).expect("nitrogen");
    let figure = need.figures.iter().find(|f| f.name == "nitrogen-rate").expect("a rate");
    (figure.unit, figure.band.likely)
}

/// Issue: a bed by the square metre, a lawn likewise but told by 1000 sq ft, a field by the
/// hectare; 1 kg/ha is 0.1 g/m² (derived).
#[test]
fn a_rate_is_told_in_the_measure_of_the_thing() {
    let (unit, garden) = rate(&bed(Some(20.0), Measures::Metric));
    assert_eq!(unit, Unit::GPerM2);
    let (unit, field) = rate(&bed(Some(5000.0), Measures::Metric));
    assert_eq!(unit, Unit::KgPerHa);
    assert!((field - 10.0 * garden).abs() < 1e-9 * field, "{field} and {garden}");
    let mut lawn = bed(Some(5000.0), Measures::Metric);
    lawn.plants = Some(PlantGroup::Lawn);
    assert_eq!(rate(&lawn).0, Unit::GPerM2OfLawn);
}

/// Until somebody says how large the bed is, amounts are for an area that people of these
/// measures count by: 1 m², or 100 sq ft, which is 9.290304 m² (legal definition, derived).
#[test]
fn an_unknown_bed_is_one_that_can_be_measured() {
    let grams = |measures| {
        let plan = interpret(&bed(None, measures)).plan;
        let need = plan.needs.iter().find(|need| need.kind == NeedKind::Nitrogen).cloned();
        need.and_then(|need| need.given()).expect("nitrogen").likely
    };
    let (metric, us) = (grams(Measures::Metric), grams(Measures::Us));
    assert!((us - 9.290_304 * metric).abs() < 1e-6 * us, "{us} and {metric}");
    let jobs = interpret(&bed(None, Measures::Us)).plan.jobs;
    assert!(jobs.iter().any(|job| job.task.contains("on 100\u{a0}sq ft")), "{jobs:?}");
}
