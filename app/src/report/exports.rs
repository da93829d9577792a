//! The readings of all samples, as files for other programs.

use std::fmt::Write as _;

use emberloam_engine::export::Export;
use emberloam_engine::report::Lines;
use emberloam_engine::{Case, judged_readings, summary};
use leptos::prelude::*;

use crate::in_place::{flag, press};
use crate::language::{own_or_said, say_jobs};
use crate::long_work::{Done, SLICE, Work, begin};
use crate::report::files::{file_name, save};
use crate::state::Page;
use crate::{date, words};

/// The buttons that save the readings.
pub fn exports(page: Page) -> AnyView {
    view! {
        <button
            type="button"
            id="save-table"
            hidden=flag(move || !page.has_report())
            on:click=press(move || save_as(page, "save-table", Export::csv(), "csv", "text/csv"))
        >
            {words::SAVE_TABLE}
        </button>
        <button
            type="button"
            id="save-exchange"
            hidden=flag(move || !page.has_report())
            on:click=press(move || {
                let today = date::today().map_or(String::new(), |day| day.to_string());
                let export = Export::modus(&event_code(), &today);
                save_as(page, "save-exchange", export, "modus.json", "application/json");
            })
        >
            {words::SAVE_EXCHANGE}
        </button>
    }
    .into_any()
}

/// Writes the readings as they are when its turn comes, whatever is changed meanwhile.
fn save_as(
    page: Page,
    from: &'static str,
    export: Export,
    ending: &'static str,
    kind: &'static str,
) {
    let erasings = page.erasings();
    let (mut export, mut parts) = (Some(export), 0);
    let mut begun_with = None;
    begin(
        page,
        Work {
            name: words::SAVING_READINGS,
            said: words::SAVED_READINGS,
            slice: Box::new(move || {
                // What was erased is not written any more.
                if page.erasings() != erasings {
                    return Done::default();
                }
                let begun = js_sys::Date::now();
                // Taken when its turn comes: a report that is still being read comes first.
                let Some((case, text, name)) = begun_with.get_or_insert_with(|| {
                    let report = page.has_report().then(|| page.report.get().ok()).flatten()?;
                    let name = file_name(&page.bed_name(), ending);
                    Some((Case { report, ..page.answers.get() }, page.text.get(), name))
                }) else {
                    return Done::default();
                };
                let source = Lines::of(text);
                for sample in &case.report.samples[parts..] {
                    if let Some(export) = &mut export {
                        export.add(sample, &judged_readings(case, parts), &source);
                    }
                    parts += 1;
                    if js_sys::Date::now() - begun >= SLICE {
                        break;
                    }
                }
                let of = case.report.samples.len();
                if parts == of
                    && let Some(export) = export.take()
                {
                    save(name, kind, &export.finish());
                }
                Done { parts, of }
            }),
            undo: Box::new(|| ()),
            from,
        },
    );
}

/// The button that saves the dated jobs for a calendar.
pub fn calendar(page: Page) -> AnyView {
    let dated =
        move || page.of_plan(|plan| plan.jobs.iter().any(|job| job.from.or(job.to).is_some()));
    view! {
        <button
            type="button"
            id="save-calendar"
            hidden=flag(move || !dated())
            on:click=press(move || {
                let bed = own_or_said(&untrack(|| page.bed_name()));
                let jobs = say_jobs(untrack(|| page.of_plan(|plan| plan.jobs.clone())));
                let written = summary::calendar(&jobs, &bed, &stamp(), &event_code());
                save(&file_name(&bed, "ics"), "text/calendar", &written);
            })
        >
            {words::SAVE_CALENDAR}
        </button>
    }
    .into_any()
}

/// Now in UTC, as `20261125T120000Z`.
fn stamp() -> String {
    let now = js_sys::Date::new_0();
    format!(
        "{:04}{:02}{:02}T{:02}{:02}{:02}Z",
        now.get_utc_full_year(),
        now.get_utc_month() + 1,
        now.get_utc_date(),
        now.get_utc_hours(),
        now.get_utc_minutes(),
        now.get_utc_seconds()
    )
}

/// A fresh name for what is saved, in the form of a random UUID. Nothing secret rests on it.
/// Source: RFC 9562, section 5.4 (from memory).
pub fn event_code() -> String {
    let mut code = String::new();
    for at in 0..32 {
        if matches!(at, 8 | 12 | 16 | 20) {
            code.push('-');
        }
        let dice = (js_sys::Math::random() * 16.0) as u8 & 15;
        let digit = match at {
            12 => 4,
            16 => 8 | dice & 3,
            _ => dice,
        };
        // Ignored: a string takes all that is written to it.
        let _ = write!(code, "{digit:x}");
    }
    code
}
