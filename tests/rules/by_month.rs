//! Nitrogen in the months of a region's guide.

use emberloam_engine::case::Case;
use emberloam_engine::outcome::interpret;
use emberloam_engine::plan::JobKind;
use emberloam_engine::soil::PlantGroup;

use crate::shared::{case_of, day};

fn lawn(region: &str, today: (i32, u8, u8)) -> Case {
    let mut case = case_of("pH 6.5\nP (Mehlich-3) 60 ppm\nK (Mehlich-3) 180 ppm\n");
    case.reading.region = Some(region.into());
    case.plants = Some(PlantGroup::Lawn);
    case.bed.area_m2 = Some(92.903_04);
    case.season.today = day(today.0, today.1, today.2);
    case
}

/// The months in which the lawn is fed, with the first days.
fn fed(case: &Case) -> Vec<String> {
    let jobs = interpret(case).plan.jobs;
    let feeds = jobs.iter().filter(|job| job.kind == JobKind::Feed);
    feeds
        .map(|job| {
            let (from, to) = (job.from.expect("a first day"), job.to.expect("a last day"));
            assert!(from <= to && Some(from) >= case.season.today, "{}", job.task);
            format!("{} {}", job.task, from)
        })
        .collect()
}

/// NC State: a cool-season lawn in the middle of the state gets 0.5 to 1 lb in February, 1 in
/// September and 1 in November (opened). Of 1000 sq ft; a part of a month that runs counts, one
/// that is over comes next year.
#[test]
fn a_lawn_is_fed_in_the_months_of_its_region() {
    let spring = fed(&lawn("us-north-carolina", (2027, 3, 10)));
    assert_eq!(spring.len(), 3, "{spring:?}");
    assert!(spring[0].starts_with("Feed in September") && spring[0].ends_with("2027-09-01"));
    assert!(spring[1].starts_with("Feed in November") && spring[1].ends_with("2027-11-01"));
    assert!(spring[2].starts_with("Feed in February") && spring[2].ends_with("2028-02-01"));
    let autumn = fed(&lawn("us-north-carolina", (2027, 9, 20)));
    assert!(autumn[0].starts_with("Feed in September") && autumn[0].ends_with("2027-09-20"));
    let last_day = fed(&lawn("us-north-carolina", (2027, 11, 30)));
    assert!(last_day[0].starts_with("Feed in November") && last_day[0].ends_with("2027-11-30"));
}

/// The parts together are the year's need, and none is more than may be given at once.
#[test]
fn the_months_together_are_the_year() {
    let outcome = interpret(&lawn("us-north-carolina", (2027, 3, 10)));
    let need = outcome.plan.needs.iter().find(|need| need.kind.name() == "nitrogen").unwrap();
    let ounces: f64 = outcome
        .plan
        .jobs
        .iter()
        .filter(|job| job.kind == JobKind::Feed)
        .map(|job| {
            let grams = job.task.split(": ").nth(1).and_then(|what| what.split('\u{a0}').next());
            grams.and_then(|grams| grams.parse::<f64>().ok()).expect("grams")
        })
        .sum();
    let year = need.for_bed.unwrap().likely;
    assert!((ounces - year).abs() < 0.05 * year, "{ounces} of {year} g");
}

/// Where no guide of the region names months and no frost is known, no day in winter is given.
#[test]
fn nothing_is_fed_in_the_dead_of_winter() {
    let jobs = interpret(&lawn("us-virginia-beyond", (2026, 12, 20))).plan.jobs;
    for job in jobs.iter().filter(|job| job.kind == JobKind::Feed) {
        let from = job.from.map_or(6, |from| u8::from(from.month()));
        assert!((3..=10).contains(&from), "{} from {:?}", job.task, job.from);
    }
}
