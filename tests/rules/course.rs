//! What biochar does over a year, as one account.

use emberloam_engine::case::{Bag, BagState, Feedstock, Season};
use emberloam_engine::details::{Course, WEEKS, courses};
use emberloam_engine::soil::Property;
use emberloam_engine::{Case, interpret, report};

use crate::{close, viewed};

/// A soil with a surplus, bare until spring, and a bag of fresh softwood biochar, 5 % by volume.
pub fn trial() -> Case {
    let text = "Method: Mehlich-3\npH 6.6\nOrganic matter 4.2 %\nNO3-N 48 ppm\nNH4-N 6 ppm\nP 160 ppm\nK 320 ppm\nCa 2200 ppm\nMg 260 ppm\nS 24 ppm\nNa 18 ppm\nCEC 14 meq/100 g";
    let report =
        report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).expect("it reads");
    let mut case = Case { report, ..Case::default() };
    case.biochar = Bag {
        state: Some(BagState::Uncharged),
        feedstock: Some(Feedstock::Softwood),
        share_percent: Some(5.0),
        ..Bag::default()
    };
    let day = |text: &str| emberloam_engine::season::day::parse(text);
    case.season.today = day("2026-10-05");
    case.season.harvest = day("2026-10-10");
    case.season.first_frost = day("2026-11-05");
    case.season.planting = day("2027-04-20");
    case.bed.area_m2 = Some(10.0);
    case.bed.depth_cm = Some(15.0);
    case
}

fn of(case: &Case) -> Vec<Course> {
    viewed(case, courses)
}

fn found(courses: &[Course], property: Property) -> &Course {
    courses.iter().find(|c| c.property == property).expect("the property was measured")
}

/// Fresh, low-ash softwood biochar, 5 % by volume, after one week: N, P, K, Ca, Mg and S down or
/// unsure, Na up or unsure, pH unsure. Source: common practice, no source.
#[test]
fn a_week_after_fresh_softwood_biochar() {
    let year = of(&trial());
    for property in [
        Property::NitrateN,
        Property::AmmoniumN,
        Property::Phosphorus,
        Property::Potassium,
        Property::Calcium,
        Property::Magnesium,
        Property::Sulfur,
    ] {
        let said = found(&year, property).directions[0];
        assert!(["down", "down or unsure", "unsure"].contains(&said), "{property:?}: {said}");
    }
    let nitrate = found(&year, Property::NitrateN).directions[0];
    assert!(nitrate.starts_with("down"), "{nitrate}");
    let sodium = found(&year, Property::Sodium).directions[0];
    assert!(["up", "up or unsure", "unsure"].contains(&sodium), "{sodium}");
    assert_eq!(found(&year, Property::Ph).directions[0], "unsure");
}

/// The plan's month is the year's fourth week.
#[test]
fn the_month_of_the_plan_is_a_week_of_the_year() {
    let case = trial();
    let plan = interpret(&case).plan;
    let year = of(&case);
    let month = WEEKS.iter().position(|week| *week == 4.0).expect("a month is worked out");
    assert_eq!(plan.effects.len(), year.len());
    for (effect, course) in plan.effects.iter().zip(&year) {
        assert_eq!(effect.property, course.property);
        assert_eq!(effect.direction, course.directions[1]);
        close(course.change[month].likely, effect.change.band.likely, 1e-9);
        close(course.change[month].low, effect.change.band.low, 1e-9);
        close(course.change[month].high, effect.change.band.high, 1e-9);
    }
}

/// The whole is the sum of its parts, in order, and starts from what mixing in does at once.
#[test]
fn the_parts_make_the_whole() {
    for course in of(&trial()) {
        for (at, week) in WEEKS.iter().enumerate() {
            let whole = course.change[at];
            assert!(whole.low <= whole.likely && whole.likely <= whole.high);
            let sum: f64 = course.parts.iter().map(|part| part.change[at].likely).sum();
            close(sum, whole.likely, 1e-9);
            for part in course.parts.iter().filter(|p| *week == 0.0 && p.name.contains("own")) {
                close(part.change[at].high, 0.0, 1e-12);
            }
        }
        // What the biochar gives comes with time, and the low end comes no earlier than the high.
        for part in course.parts.iter().filter(|p| p.name.contains("own")) {
            for two in part.change.windows(2) {
                assert!(two[1].likely >= two[0].likely && two[1].low >= two[0].low);
            }
        }
    }
}

/// Without biochar there is nothing to follow.
#[test]
fn no_biochar_no_course() {
    let mut case = trial();
    case.plants = Some(emberloam_engine::soil::PlantGroup::AcidLovers);
    assert!(of(&case).is_empty());
}

/// Half of the nitrogen held after a month is free again 120 days later. Our own choice, between
/// reviews that find the tie-up in the first months and a trial of 371 days.
#[test]
fn the_hold_on_nitrogen_fades() {
    let year = of(&trial());
    let held = |property| {
        let course = found(&year, property);
        let part = course.parts.iter().find(|p| p.name.starts_with("held")).expect("a part");
        let at = |week: f64| part.change[WEEKS.iter().position(|w| *w == week).unwrap()];
        (at(4.0), at(20.0), at(52.0))
    };
    let (month, later, year_on) = held(Property::NitrateN);
    close(later.likely / month.likely, 0.5_f64.powf(16.0 * 7.0 / 120.0), 1e-9);
    close(later.low / month.low, 0.5_f64.powf(16.0 * 7.0 / 365.0), 1e-9);
    assert!(year_on.likely > 0.2 * month.likely && year_on.likely < 0.0);
    let (month, later, _) = held(Property::Potassium);
    close(later.likely, month.likely, 1e-12);
}

/// A clear surplus holds when every number moves a little; a soil at the border says so. Common
/// practice, no source.
#[test]
fn the_answer_says_whether_it_holds() {
    use emberloam_engine::details::sensitivity;
    use emberloam_engine::plan::Path;
    let clear = sensitivity(&trial()).expect("a sample");
    assert_eq!(clear.path, Path::UnchargedAfterHarvest);
    assert_eq!(clear.of, clear.holds + clear.turns.len());
    assert!(clear.of >= 14, "only {} variations", clear.of);
    assert!(
        clear.text.contains("holds in all") || clear.text.contains("holds in most"),
        "{clear:?}"
    );
    // Phosphorus and potassium just above the start of sufficiency, 51 and 141 mg/kg.
    // In spring: before winter the nitrate would be held first whatever they are.
    let mut edge = trial();
    edge.season = Season {
        today: emberloam_engine::season::day::parse("2027-02-01"),
        planting: emberloam_engine::season::day::parse("2027-05-20"),
        ..Season::default()
    };
    for reading in &mut edge.report.samples[0].readings {
        let value = match reading.property {
            Property::NitrateN => 31.0,
            Property::Phosphorus => 60.0,
            Property::Potassium => 160.0,
            Property::Magnesium => 140.0,
            Property::Calcium => 1200.0,
            _ => continue,
        };
        reading.amount = Some(emberloam_engine::soil::Amount::Exactly(value));
    }
    let found = sensitivity(&edge).expect("a sample");
    for what in ["phosphorus a fifth less", "potassium a fifth less"] {
        assert!(found.turns.iter().any(|turn| turn.what == what), "{what}: {found:?}");
    }
    assert!(found.turns.iter().all(|turn| !turn.what.ends_with("more")), "{found:?}");
    assert!(found.turns.iter().all(|turn| turn.path != found.path));
    assert_eq!(sensitivity(&Case::default()), None);
}
