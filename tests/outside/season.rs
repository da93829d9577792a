//! Dates against the outside: how long before planting, and the calendar file.

use crate::bed::Bed;

/// The calendar file is read by another program's parser. Source: RFC 5545 by the icalendar crate
/// (opened as code).
#[test]
fn the_dates_go_into_a_calendar() {
    use emberloam_engine::plan::{Job, JobKind};
    use emberloam_engine::season::day;
    use emberloam_engine::summary::calendar;
    use icalendar::{Calendar, Component, DatePerhapsTime};

    let reason = "Rain comes; roots sleep, and a backslash \\ stays.\nSecond line – with “marks”.";
    let task = |text: &str, from: &str, to: &str| {
        Job::dated(JobKind::Plant, text, (day::parse(from), day::parse(to)), reason)
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
    use emberloam_engine::summary::calendar;

    let mut tasks = Bed::surplus().autumn().plan().jobs;
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
