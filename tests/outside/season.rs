//! The `season` room against the outside: windows on both sides of every
//! boundary.

use emberloam_engine::biochar::{Advice, Path};
use emberloam_engine::case::{BagState, BedKind, Season, Winter};
use emberloam_engine::ranges::Level;
use emberloam_engine::season::{BETTER_DAYS, LEAST_DAYS, Task, Timing, Window};
use emberloam_engine::soil::Property;
use time::{Date, Duration};

use crate::biochar::{Bed, day};

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
    let advice = Bed::surplus().advice();
    let spread = &advice.season[0];
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
    let tropics = Bed::surplus().autumn().with(|c| c.season.winter = Some(Winter::None)).advice();
    assert!(tropics.headline.contains("main rains"));
    assert!(tropics.season.iter().any(|t| t.reason.contains("main rains")));
}

#[test]
fn the_southern_year_is_the_northern_one_half_a_year_on() {
    let shift = Duration::days(182);
    let north = Bed::surplus().autumn().advice();
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
        .advice();
    assert_eq!(north.path, south.path);
    for (n, s) in north.season.iter().zip(&south.season) {
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
            .advice()
            .headline
    };
    assert!(headline(day(2026, 10, 1), day(2026, 10, 25)).contains("before winter"));
    assert!(headline(day(2026, 10, 1), None).contains("before winter"));
    assert!(headline(day(2027, 2, 1), day(2026, 10, 25)).contains("well before planting"));
    assert!(headline(day(2027, 2, 1), None).contains("well before planting"));
}

fn find<'a>(advice: &'a Advice, part: &str) -> &'a Task {
    advice.season.iter().find(|t| t.task.contains(part)).unwrap_or_else(|| panic!("no {part}"))
}

#[test]
fn uncharged_biochar_goes_in_between_harvest_and_frost() {
    let advice = Bed::surplus().autumn().advice();
    let spread = find(&advice, "mix it in");
    assert_eq!((spread.from, spread.to), (day(2026, 10, 1), day(2026, 10, 25)));
    assert!(spread.task.contains("5\u{a0}L") && spread.task.contains("10\u{a0}cm"));
    let test = find(&advice, "Test the soil");
    assert_eq!((test.from, test.to), (day(2027, 3, 23), day(2027, 4, 6)));
    assert_eq!(find(&advice, "Plant").from, day(2027, 4, 20));
}

fn poor(days: i64) -> Advice {
    let today = day(2027, 1, 10);
    Bed::content()
        .level(Property::Potassium, Level::Low)
        .with(move |c| {
            c.biochar.state = Some(BagState::Uncharged);
            c.season.today = today;
            c.season.planting = Some(today.unwrap() + Duration::days(days));
        })
        .advice()
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
        let advice = Bed::content()
            .level(Property::Potassium, Level::Low)
            .with(|c| c.bed.kind = Some(kind))
            .advice();
        find(&advice, part);
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
                    let advice = base
                        .with(|c| {
                            c.season.today = Some(today);
                            c.season.harvest = Some(today + Duration::days(harvest));
                            c.season.first_frost = Some(today + Duration::days(frost));
                            c.season.planting = Some(today + Duration::days(planting));
                        })
                        .advice();
                    for task in &advice.season {
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
    let advice = Bed::surplus()
        .with(|c| {
            c.season.today = Some(Date::MIN);
            c.season.planting = Some(Date::MAX);
        })
        .advice();
    assert_eq!(advice.path, Path::UnchargedAfterHarvest);
    Bed::surplus()
        .with(|c| {
            c.season.today = Some(Date::MAX);
            c.season.planting = Some(Date::MIN);
        })
        .advice();
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
    let bed = Bed::content().level(Property::Phosphorus, Level::Low).planting_in(21);
    let tasks = bed.advice().season;
    let at = |part: &str| tasks.iter().position(|t| t.task.contains(part)).unwrap();
    assert!(at("Plant.") < at("Spread"), "{tasks:#?}");
    let days: Vec<_> = tasks.iter().filter_map(|t| t.from).collect();
    assert!(days.is_sorted(), "{days:?}");
}

/// The calendar file is read by another program's parser. Source: RFC 5545 by the icalendar crate
/// (opened as code).
#[test]
fn the_dates_go_into_a_calendar() {
    use emberloam_engine::quantity::Grounds;
    use emberloam_engine::season::{Task, calendar, day};
    use icalendar::{Calendar, Component, DatePerhapsTime};

    let task = |text: &str, from: &str, to: &str| Task {
        task: text.into(),
        from: day::parse(from),
        to: day::parse(to),
        reason: "Rain comes; roots sleep, and a backslash \\ stays.\nSecond line – with “marks”."
            .into(),
        grounds: Grounds::default(),
    };
    let long = "Spread 75 L of damp biochar, mix it in 15 cm deep; then water: ".repeat(5);
    let tasks = [
        task(&long, "2026-10-10", "2026-11-05"),
        task("Only until a day", "", "2027-02-28"),
        task("Only from a day", "2028-02-29", ""),
        task("Without a day", "", ""),
    ];
    let text = calendar(&tasks, "Bed 2, north", "20261125T120000Z", "a-code");
    assert!(text.split("\r\n").all(|line| line.len() <= 75), "a line is too long");
    assert!(!text.replace("\r\n", "").contains(['\r', '\n']));
    let read: Calendar = text.parse().expect("a calendar");
    let events: Vec<_> = read.components.iter().filter_map(|c| c.as_event()).collect();
    assert_eq!(events.len(), 3);
    let day_of = |date: Option<DatePerhapsTime>| match date {
        Some(DatePerhapsTime::Date(date)) => date.to_string(),
        other => panic!("no day: {other:?}"),
    };
    for (event, (from, end)) in events.iter().zip([
        ("2026-10-10", "2026-11-06"),
        ("2027-02-28", "2027-03-01"),
        ("2028-02-29", "2028-03-01"),
    ]) {
        assert_eq!(day_of(event.get_start()), from);
        assert_eq!(day_of(event.get_end()), end);
    }
    assert_eq!(events[0].get_summary(), Some(format!("Bed 2, north: {long}").as_str()));
    assert_eq!(events[0].get_description(), Some(tasks[0].reason.as_str()));
    let ids: std::collections::BTreeSet<_> = events.iter().filter_map(|e| e.get_uid()).collect();
    assert_eq!(ids.len(), 3);
}

/// What Python's icalendar reads in a calendar file; it says so when it is not there.
fn read_by_python(text: &str) -> Vec<serde_json::Value> {
    use std::io::Write;
    use std::path::PathBuf;
    use std::process::{Command, Stdio};

    const HOW: &str = "Run tests/run, which installs it, or: python3 -m venv target/python && \
        target/python/bin/pip install icalendar";
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..");
    let own = root.join("target/python/bin/python");
    let python = if own.exists() { own } else { PathBuf::from("python3") };
    let script = root.join("tests/outside/calendar/read.py");
    let mut running = Command::new(&python)
        .arg(script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap_or_else(|why| panic!("Python is needed for this check ({why}). {HOW}"));
    running.stdin.take().expect("a pipe").write_all(text.as_bytes()).expect("it takes the file");
    let done = running.wait_with_output().expect("it ends");
    let trouble = String::from_utf8_lossy(&done.stderr);
    assert!(
        !trouble.contains("No module named 'icalendar'"),
        "Python's icalendar is needed for this check. {HOW}"
    );
    assert!(done.status.success(), "it refuses the file: {trouble}");
    serde_json::from_slice(&done.stdout).expect("a list of events")
}

/// The calendar file of a real plan, read by a parser in another language.
/// Source: RFC 5545 by Python's icalendar (opened as code).
#[test]
fn a_plan_goes_into_a_calendar_that_another_program_reads() {
    use emberloam_engine::season::calendar;

    let mut tasks = Bed::surplus().autumn().advice().season;
    assert!(tasks.len() >= 5);
    tasks[0].task = "Umlauts ä and €, commas, semicolons; a backslash \\ ".repeat(9);
    tasks[0].reason = "First line\nSecond: “quoted”, 100 %".into();
    let text = calendar(&tasks, "Bed 2, north; by the wall", "20261125T120000Z", "a-code");
    assert!(text.split("\r\n").all(|line| line.len() <= 75), "a line is too long");
    assert!(text.ends_with("END:VCALENDAR\r\n"));
    assert!(!text.replace("\r\n", "").contains(['\r', '\n']));
    let events = read_by_python(&text);
    let dated: Vec<_> = tasks.iter().filter(|t| t.from.is_some() || t.to.is_some()).collect();
    assert_eq!(events.len(), dated.len());
    let mut ids = std::collections::BTreeSet::new();
    for (event, task) in events.iter().zip(dated) {
        let from = task.from.or(task.to).unwrap();
        let last = task.to.unwrap_or(from);
        assert_eq!(event["start"], from.to_string());
        assert_eq!(event["end"], last.next_day().unwrap().to_string());
        assert_eq!(event["summary"], format!("Bed 2, north; by the wall: {}", task.task));
        assert_eq!(event["description"], task.reason);
        assert_eq!(event["stamp"], "2026-11-25T12:00:00+00:00");
        assert_eq!(event["busy"], "TRANSPARENT");
        ids.insert(event["uid"].to_string());
    }
    assert_eq!(ids.len(), events.len());
    assert!(read_by_python(&calendar(&[], "", "20261125T120000Z", "a-code")).is_empty());
}

/// The tasks a gardener must not forget are all there, dated.
#[test]
fn the_plan_has_a_date_for_each_step_up_to_next_years_sample() {
    let uncharged = Bed::surplus().autumn().advice();
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
