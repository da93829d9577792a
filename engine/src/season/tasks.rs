//! The dated tasks of each path.

use time::{Date, Duration};

use crate::biochar::Path;
use crate::case::{BedKind, Winter};
use crate::quantity::Grounds;
use crate::season::{Task, Timing, Window};
use crate::sources::{
    BORCHARD_2019, COMMON_PRACTICE, Citation, GUO_2020, NGUYEN_2017, OUR_CHOICE, UMASS_FALL,
};

/// Days before planting at which charged biochar is best spread: first and last.
/// Source: our choice.
const CHARGED_BEFORE_PLANTING: (i64, i64) = (28, 14);

/// Days before planting for the next soil test: first and last.
const RETEST_BEFORE_PLANTING: (i64, i64) = (28, 14);

/// What the tasks are made from.
#[derive(Clone, Copy, Debug)]
pub struct Plan<'a> {
    /// The path.
    pub path: Path,
    /// The dates.
    pub timing: &'a Timing,
    /// How the bed is worked.
    pub kind: Option<BedKind>,
    /// How long charging takes, days; `None` when nothing needs charging.
    pub charging_days: Option<f64>,
    /// The amount, in words.
    pub amount: &'a str,
    /// Worked depth, in words.
    pub depth: &'a str,
    /// Something that comes before any biochar, in one sentence.
    pub first: Option<&'a str>,
}

/// The tasks in the order of the season.
pub fn tasks(plan: &Plan<'_>) -> Vec<Task> {
    match plan.path {
        Path::UnchargedAfterHarvest => uncharged(plan),
        Path::Charged | Path::ChargeFirst => charged(plan),
        Path::None => none(plan),
    }
}

/// How biochar gets into this kind of bed.
fn how(plan: &Plan<'_>) -> String {
    let (amount, depth) = (plan.amount, plan.depth);
    match plan.kind {
        Some(BedKind::NoDig) => {
            format!("Spread {amount} of damp biochar on top and cover it with compost or mulch.")
        }
        Some(BedKind::Lawn) => format!(
            "Take cores out of the lawn, then brush {amount} of damp biochar into the holes, a \
             thin layer at a time."
        ),
        Some(BedKind::Container) => {
            format!("Mix {amount} of damp biochar evenly into the potting mix.")
        }
        Some(BedKind::TreePit) => format!(
            "Work {amount} of damp biochar into holes or a ring under the outer branches, {depth} \
             deep. Don't cut roots."
        ),
        Some(BedKind::Dug) | None => {
            format!("Spread {amount} of damp biochar and mix it in {depth} deep.")
        }
    }
}

fn task(
    text: impl Into<String>,
    window: (Option<Date>, Option<Date>),
    reason: impl Into<String>,
    sources: &[Citation],
    plan: &Plan<'_>,
) -> Task {
    let t = plan.timing;
    let dates = [
        ("today", t.today),
        ("harvest", t.harvest),
        ("first frost", t.first_frost),
        ("planting", t.planting),
    ];
    let reason = reason.into();
    let mut grounds = Grounds::new(reason.clone(), sources);
    for (name, date) in dates {
        if let Some(date) = date {
            grounds = grounds.input(name, date.to_string());
        }
    }
    Task { task: text.into(), from: window.0, to: window.1, reason, grounds }
}

fn later(date: Option<Date>, days: i64) -> Option<Date> {
    Some(date?.saturating_add(Duration::days(days)))
}

/// Not before today.
fn from_today(date: Option<Date>, timing: &Timing) -> Option<Date> {
    match (date, timing.today) {
        (Some(d), Some(t)) => Some(d.max(t)),
        (d, _) => d,
    }
}

fn uncharged(plan: &Plan<'_>) -> Vec<Task> {
    let t = plan.timing;
    let mut reason = match t.winter {
        Some(Winter::None) => {
            "In place before the main rains, it can hold what they would wash away.".to_string()
        }
        _ if t.winter_is_ahead() => {
            "In place before winter, it can hold what rain would wash away.".to_string()
        }
        _ => {
            "The sooner it is in, the more of the surplus it can hold before planting.".to_string()
        }
    };
    let window = match &t.window {
        Window::Open { from, to, notes } => {
            for note in notes {
                reason.push(' ');
                reason.push_str(note);
            }
            if to.is_none() {
                reason.push_str(
                    " Give the first frost and the planting date to see the last good day.",
                );
            }
            (*from, *to)
        }
        Window::Unknown(missing) => {
            reason.push_str(&format!(" No dates yet: say {missing}."));
            (None, None)
        }
        Window::Closed => (None, None),
    };
    let mut tasks = Vec::new();
    if t.harvest.is_some() {
        tasks.push(task(
            "Clear the bed after harvest. Pull no more roots than you must.",
            (t.clear_from, t.clear_from),
            "Biochar goes into a clear bed.",
            &[COMMON_PRACTICE.unsourced()],
            plan,
        ));
    }
    tasks.push(task(
        how(plan),
        window,
        reason,
        &[
            BORCHARD_2019.opened(),
            NGUYEN_2017.second_hand(),
            UMASS_FALL.opened(),
            GUO_2020.opened(),
        ],
        plan,
    ));
    tasks.push(task(
        "Cover the soil: sow a cover crop if there is time, or mulch.",
        (window.0, later(window.1, 14)),
        "Bare soil loses nutrients; a cover crop holds nitrate too.",
        &[COMMON_PRACTICE.unsourced()],
        plan,
    ));
    tasks.push(retest(plan));
    tasks.extend(planting(plan));
    tasks.push(retest_next_year(plan));
    tasks
}

fn charged(plan: &Plan<'_>) -> Vec<Task> {
    let t = plan.timing;
    let mut tasks = Vec::new();
    let spread_from = from_today(t.before_planting(CHARGED_BEFORE_PLANTING.0), t);
    let spread_to = from_today(t.before_planting(CHARGED_BEFORE_PLANTING.1), t);
    let mut spread = (spread_from, spread_to);
    let mut reason = "Two to four weeks let it settle before roots reach it.".to_string();
    if t.planting.is_none() {
        spread = (None, None);
        reason = if t.growing {
            "Charged biochar may go beside growing plants at any time. Keep it off the stems. \
             Give the next planting date for a dated plan."
                .to_string()
        } else {
            "Two to four weeks before planting is best. Give the planting date for a dated plan."
                .to_string()
        };
    }
    if let Some(days) = plan.charging_days {
        let days = days as i64;
        let last_start = t.before_planting(days + CHARGED_BEFORE_PLANTING.1);
        let first_start = t.before_planting(days + 2 * CHARGED_BEFORE_PLANTING.0);
        let late = last_start.zip(t.today).is_some_and(|(last, today)| last < today);
        let mut why = format!("Charging takes about {days} days.");
        if late {
            why.push_str(" There is no longer time for all of it before planting: start now, and use it when it is ready.");
            let ready = later(t.today, days);
            spread = (ready, later(ready, 14));
            reason = "As soon as it is charged. If the plants are in, put it between the rows."
                .to_string();
        }
        tasks.push(task(
            match plan.path {
                Path::Charged => "Start charging the biochar, unless you buy it charged.",
                _ => "Start charging the biochar.",
            },
            (from_today(first_start, t), from_today(last_start, t)),
            why,
            &[OUR_CHOICE.unsourced()],
            plan,
        ));
    }
    let spreading =
        task(how(plan), spread, reason, &[OUR_CHOICE.unsourced(), GUO_2020.opened()], plan);
    // Charging that began late is over only when the plants are in.
    let after_planting = spread.0.zip(t.planting).is_some_and(|(spread, plant)| spread > plant);
    let at = tasks.len() + usize::from(after_planting && planting(plan).is_some());
    tasks.extend(planting(plan));
    tasks.insert(at, spreading);
    tasks.push(retest_next_year(plan));
    tasks
}

fn none(plan: &Plan<'_>) -> Vec<Task> {
    let mut tasks = Vec::new();
    if let Some(first) = plan.first {
        tasks.push(task(
            first,
            (plan.timing.today, None),
            "This comes before any biochar.",
            &[COMMON_PRACTICE.unsourced()],
            plan,
        ));
    }
    tasks.push(retest_next_year(plan));
    tasks
}

fn retest(plan: &Plan<'_>) -> Task {
    let t = plan.timing;
    let window = (
        from_today(t.before_planting(RETEST_BEFORE_PLANTING.0), t),
        from_today(t.before_planting(RETEST_BEFORE_PLANTING.1), t),
    );
    let mut reason =
        "Nitrate in biochar shows only in part in a soil test, so read the result as the least \
         there is."
            .to_string();
    if t.planting.is_none() {
        reason.push_str(" Do it two to four weeks before planting.");
    }
    task(
        "Test the soil again before planting, and feed only what is short.",
        window,
        reason,
        &[COMMON_PRACTICE.unsourced()],
        plan,
    )
}

fn retest_next_year(plan: &Plan<'_>) -> Task {
    let t = plan.timing;
    task(
        "Test the soil again, at the same time of year and by the same laboratory.",
        (later(t.today, 335), later(t.today, 395)),
        "A year on, two tests can be compared.",
        &[COMMON_PRACTICE.unsourced()],
        plan,
    )
}

fn planting(plan: &Plan<'_>) -> Option<Task> {
    let date = plan.timing.planting?;
    let reason = if plan.timing.planting_assumed {
        "The last spring frost, until you give the planting date."
    } else {
        "The date you gave."
    };
    Some(task("Plant.", (Some(date), Some(date)), reason, &[COMMON_PRACTICE.unsourced()], plan))
}
