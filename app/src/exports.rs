//! The readings of all samples, as files for other programs.

use std::fmt::Write as _;

use emberloam_engine::export;
use emberloam_engine::report::Report;
use leptos::prelude::*;

use crate::files::{file_name, save};
use crate::living::{flag, press};
use crate::state::Page;
use crate::{date, words};

/// The buttons that save the readings.
pub fn exports(page: Page) -> AnyView {
    view! {
        <button
            type="button"
            id="save-table"
            hidden=flag(move || !page.has_report())
            on:click=press(move || {
                save_as(page, "csv", "text/csv", |report, outcome, text| {
                    export::csv(report, outcome, text)
                });
            })
        >
            {words::SAVE_TABLE}
        </button>
        <button
            type="button"
            id="save-exchange"
            hidden=flag(move || !page.has_report())
            on:click=press(move || {
                save_as(page, "modus.json", "application/json", |report, outcome, _| {
                    let today = date::today().map_or(String::new(), |day| day.to_string());
                    export::modus(report, outcome, &event_code(), &today)
                });
            })
        >
            {words::SAVE_EXCHANGE}
        </button>
    }
    .into_any()
}

fn save_as(
    page: Page,
    ending: &str,
    kind: &str,
    write: fn(&Report, &emberloam_engine::Outcome, &str) -> String,
) {
    let written = untrack(|| {
        let outcome = page.outcome_of(0..page.count())?;
        let report = page.report.get().ok()?;
        Some(page.text.with(|text| write(&report, &outcome, text)))
    });
    if let Some(written) = written {
        save(&file_name(&untrack(|| page.bed_name()), ending), kind, &written);
    }
}

/// A fresh name for what is saved, in the form of a random UUID. Nothing secret rests on it.
/// Source: RFC 9562, section 5.4 (from memory).
fn event_code() -> String {
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
