//! Dates: windows on both sides of every boundary, and the jobs of a year.

use emberloam_engine::case::{BagState, BedKind, Season, Winter};
use emberloam_engine::plan::{Job, Path, Plan};
use emberloam_engine::ranges::Level;
use emberloam_engine::season::{BETTER_DAYS, LEAST_DAYS, Timing, Window};
use emberloam_engine::soil::Property;
use time::{Date, Duration};

use crate::bed::Bed;
use crate::day;

fn season(today: Option<Date>, harvest: Option<Date>, frost: Option<Date>, days: i64) -> Timing {
    let clear = harvest.or(today).unwrap();
    Timing::of(&Season {
        today,
        harvest,
        first_frost: frost,
        planting: Some(clear + Duration::days(days)),
        ..Season::default()
    })
}

#[test]
fn frost_ends_the_window_unless_it_comes_before_the_bed_is_clear() {
    let (today, harvest) = (day(2026, 9, 20), day(2026, 10, 1));
    let to = |frost| match season(today, harvest, frost, 180).window {
        Window::Open { from, to, notes } => (from, to, notes.len()),
        other => panic!("{other:?}"),
    };
    let planting = harvest.unwrap() + Duration::days(180 - 56);
    assert_eq!(to(day(2026, 10, 25)), (harvest, day(2026, 10, 25), 0));
    assert_eq!(to(day(2026, 10, 1)), (harvest, day(2026, 10, 1), 0));
    assert_eq!(to(day(2026, 9, 30)), (harvest, Some(planting), 1));
    assert_eq!(to(day(2027, 10, 25)), (harvest, Some(planting), 0));
    assert_eq!(to(None), (harvest, Some(planting), 0));
}

#[test]
fn missing_dates_leave_the_window_unknown_and_say_which() {
    let nothing = Timing::of(&Season::default());
    assert_eq!(nothing.window, Window::Unknown("today's date"));
    let growing = Timing::of(&Season {
        today: day(2026, 6, 10),
        planting: day(2026, 5, 1),
        ..Season::default()
    });
    assert!(growing.growing && growing.planting.is_none());
    assert_eq!(growing.window, Window::Unknown("when the crop now in the bed is off"));
    let plan = Bed::surplus().plan();
    let spread = &plan.jobs[0];
    assert_eq!((spread.from, spread.to), (None, None));
    assert!(spread.reason.contains("No dates yet"), "{}", spread.reason);
}

#[test]
fn what_is_planted_today_grows_from_today() {
    let planted_on = |planting| {
        Timing::of(&Season { today: day(2026, 5, 1), planting, ..Season::default() }).growing
    };
    assert!(planted_on(day(2026, 5, 1)));
    assert!(!planted_on(day(2026, 5, 2)));
}

#[test]
fn a_harvest_after_the_next_planting_belongs_to_that_crop() {
    let timing = Timing::of(&Season {
        today: day(2027, 1, 10),
        planting: day(2027, 4, 20),
        harvest: day(2027, 9, 1),
        ..Season::default()
    });
    assert!(!timing.growing && timing.harvest.is_none());
    assert_eq!(timing.clear_from, day(2027, 1, 10));
}

#[test]
fn without_a_winter_frost_is_no_bound() {
    let timing = Timing::of(&Season {
        today: day(2026, 9, 20),
        planting: day(2027, 4, 20),
        first_frost: day(2026, 10, 25),
        winter: Some(Winter::None),
        ..Season::default()
    });
    assert_eq!(timing.first_frost, None);
    let tropics = Bed::surplus().autumn().with(|c| c.season.winter = Some(Winter::None)).plan();
    assert!(tropics.headline.contains("main rains"));
    assert!(tropics.jobs.iter().any(|t| t.reason.contains("main rains")));
}

#[test]
fn the_southern_year_is_the_northern_one_half_a_year_on() {
    let shift = Duration::days(182);
    let north = Bed::surplus().autumn().plan();
    let south = Bed::surplus()
        .autumn()
        .with(|c| {
            for date in [
                &mut c.season.today,
                &mut c.season.harvest,
                &mut c.season.first_frost,
                &mut c.season.planting,
            ] {
                *date = date.map(|d| d + shift);
            }
        })
        .plan();
    assert_eq!(north.path, south.path);
    for (n, s) in north.jobs.iter().zip(&south.jobs) {
        assert_eq!(n.from.map(|d| d + shift), s.from, "{}", n.task);
        assert_eq!(n.to.map(|d| d + shift), s.to, "{}", n.task);
    }
}

#[test]
fn the_headline_speaks_of_winter_only_when_one_is_ahead() {
    let headline = |today, frost| {
        Bed::surplus()
            .with(|c| {
                c.season.today = today;
                c.season.first_frost = frost;
                c.season.planting = day(2027, 4, 20);
            })
            .plan()
            .headline
    };
    assert!(headline(day(2026, 10, 1), day(2026, 10, 25)).contains("before winter"));
    assert!(headline(day(2026, 10, 1), None).contains("before winter"));
    assert!(headline(day(2027, 2, 1), day(2026, 10, 25)).contains("well before planting"));
    assert!(headline(day(2027, 2, 1), None).contains("well before planting"));
}

fn find<'a>(plan: &'a Plan, part: &str) -> &'a Job {
    plan.jobs.iter().find(|t| t.task.contains(part)).unwrap_or_else(|| panic!("no {part}"))
}

#[test]
fn uncharged_biochar_goes_in_between_harvest_and_frost() {
    let plan = Bed::surplus().autumn().plan();
    let spread = find(&plan, "mix it in");
    assert_eq!((spread.from, spread.to), (day(2026, 10, 1), day(2026, 10, 25)));
    assert!(spread.task.contains("7.5\u{a0}L") && spread.task.contains("15\u{a0}cm"));
    let test = find(&plan, "Test the soil");
    assert_eq!((test.from, test.to), (day(2027, 3, 23), day(2027, 4, 6)));
    assert_eq!(find(&plan, "Plant").from, day(2027, 4, 20));
}

fn poor(days: i64) -> Plan {
    let today = day(2027, 1, 10);
    Bed::content()
        .level(Property::Potassium, Level::Low)
        .with(move |c| {
            c.biochar.state = Some(BagState::Uncharged);
            c.season.today = today;
            c.season.planting = Some(today.unwrap() + Duration::days(days));
        })
        .plan()
}

#[test]
fn charging_starts_in_time_for_planting_and_says_so_when_it_is_late() {
    // Compost takes 28 days, and the spread wants 14 more.
    let in_time = poor(42);
    assert_eq!(in_time.path, Path::ChargeFirst);
    let start = find(&in_time, "Start charging");
    assert_eq!((start.from, start.to), (day(2027, 1, 10), day(2027, 1, 10)));
    assert!(!start.reason.contains("no longer time"));
    let late = poor(41);
    assert!(find(&late, "Start charging").reason.contains("no longer time"));
    assert_eq!(find(&late, "mix it in").from, day(2027, 2, 7));
}

#[test]
fn how_it_goes_in_depends_on_the_bed() {
    let kinds = [
        (BedKind::Dug, "mix it in"),
        (BedKind::NoDig, "cover it with compost"),
        (BedKind::Lawn, "cores"),
        (BedKind::Container, "potting mix"),
        (BedKind::TreePit, "Don't cut roots"),
    ];
    for (kind, part) in kinds {
        let plan = Bed::content()
            .level(Property::Potassium, Level::Low)
            .with(|c| c.bed.kind = Some(kind))
            .plan();
        find(&plan, part);
    }
}

#[test]
fn no_window_ends_before_it_starts_whatever_the_order_of_the_dates() {
    let today = day(2026, 9, 20).unwrap();
    let steps = [-200, -30, 0, 10, 27, 28, 40, 56, 70, 200];
    for harvest in steps {
        for frost in steps {
            for planting in steps {
                for base in [Bed::surplus(), Bed::content().level(Property::Potassium, Level::Low)]
                {
                    let plan = base
                        .with(|c| {
                            c.season.today = Some(today);
                            c.season.harvest = Some(today + Duration::days(harvest));
                            c.season.first_frost = Some(today + Duration::days(frost));
                            c.season.planting = Some(today + Duration::days(planting));
                        })
                        .plan();
                    for task in &plan.jobs {
                        if let (Some(from), Some(to)) = (task.from, task.to) {
                            assert!(
                                from <= to,
                                "{harvest} {frost} {planting}: {} {from} {to}",
                                task.task
                            );
                            assert!(to >= today, "{harvest} {frost} {planting}: {}", task.task);
                        }
                    }
                }
            }
        }
    }
}

#[test]
fn dates_at_the_end_of_time_do_no_harm() {
    let plan = Bed::surplus()
        .with(|c| {
            c.season.today = Some(Date::MIN);
            c.season.planting = Some(Date::MAX);
        })
        .plan();
    assert_eq!(plan.path, Path::UnchargedAfterHarvest);
    Bed::surplus()
        .with(|c| {
            c.season.today = Some(Date::MAX);
            c.season.planting = Some(Date::MIN);
        })
        .plan();
}

/// Source: common practice, no source: most beds are planted after the last
/// spring frost.
#[test]
fn the_last_frost_stands_for_a_missing_planting_date() {
    let season =
        Season { today: day(2026, 9, 20), last_frost: day(2027, 4, 20), ..Season::default() };
    let timing = Timing::of(&season);
    assert_eq!(timing.planting, season.last_frost);
    assert!(timing.planting_assumed);
    let given = Season { planting: day(2027, 5, 2), ..season.clone() };
    assert_eq!(Timing::of(&given).planting, given.planting);
    assert!(!Timing::of(&given).planting_assumed);
    let tropics = Season { winter: Some(Winter::None), ..season };
    assert_eq!(Timing::of(&tropics).planting, None);
}

#[test]
fn what_is_charged_too_late_for_planting_is_spread_after_it() {
    let bed = Bed::content().level(Property::Phosphorus, Level::Low).planting_in(5);
    let tasks = bed.plan().jobs;
    let at = |part: &str| tasks.iter().position(|t| t.task.contains(part)).unwrap();
    assert!(at("Plant.") < at("Spread"), "{tasks:#?}");
    let days: Vec<_> = tasks.iter().filter_map(|t| t.from).collect();
    assert!(days.is_sorted(), "{days:?}");
}

/// The tasks a gardener must not forget are all there, dated.
#[test]
fn the_plan_has_a_date_for_each_step_up_to_next_years_sample() {
    let uncharged = Bed::surplus().autumn().plan();
    for part in [
        "Clear the bed",
        "mix it in",
        "Cover the soil",
        "before planting",
        "Plant",
        "same time of year",
    ] {
        assert!(find(&uncharged, part).from.is_some(), "{part}");
    }
    let charged = poor(120);
    for part in ["Start charging", "mix it in", "Plant", "same time of year"] {
        assert!(find(&charged, part).from.is_some(), "{part}");
    }
}

/// Source: Nguyen et al. 2017: mineral nitrogen falls most in the first month
/// (second-hand); twice that is our choice.
#[test]
fn four_and_eight_weeks_before_planting() {
    assert_eq!((LEAST_DAYS, BETTER_DAYS), (28, 56));
    let today = day(2026, 9, 20);
    let last = |days| match season(today, None, None, days).window {
        Window::Open { to, notes, .. } => (to, notes.len()),
        other => panic!("{days}: {other:?}"),
    };
    assert!(season(today, None, None, 27).planting_is_soon());
    assert_eq!(last(28), (today, 1));
    assert_eq!(last(55), (Some(today.unwrap() + Duration::days(27)), 1));
    assert_eq!(last(56), (today, 0));
    assert_eq!(last(57), (Some(today.unwrap() + Duration::days(1)), 0));
}
