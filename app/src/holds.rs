//! What your soil holds: every reading, and what could not be read.

use emberloam_engine::outcome::JudgedReading;
use emberloam_engine::report::Unread;
use leptos::prelude::*;

use crate::later::later;
use crate::layer::{Stratum, layer};
use crate::living::{Look, flag, keyed, lines, settled, text};
use crate::reading::reading;
use crate::source::{source_key, source_line};
use crate::state::Page;
use crate::words;

/// The layer.
pub fn holds(page: Page) -> impl IntoView {
    let notes = move || page.outcome.look(|o| o.as_ref().map(|o| o.notes.clone()));
    layer(
        Stratum::Loam,
        "holds",
        words::HOLDS,
        view! {
            {summary(page)}
            {later(move |parts| (parts.compare)(page))}
            <ul class="notes">
                {lines(move || notes().unwrap_or_default())}
            </ul>
            <ul class="readings plain">
                {keyed(move || page.readings.get(), |r| source_key(r.place), move |item| reading(page, item))}
            </ul>
            {later(move |parts| (parts.needs)(page))}
            {unread(page)}
            {later(move |parts| (parts.uses)(page))}
        },
    )
}

/// The readings by level in three lines: what is short, what is enough, what
/// is more than enough.
fn summary(page: Page) -> impl IntoView {
    let names = move |keep: fn(&JudgedReading) -> bool| {
        page.readings.look(|readings| {
            let mut names: Vec<_> =
                readings.iter().filter(|r| keep(r)).map(|r| r.property.label()).collect();
            names.dedup();
            names.join(", ")
        })
    };
    let row = move |word: &'static str, keep: fn(&JudgedReading) -> bool| {
        view! {
            <div hidden=flag(move || names(keep).is_empty())>
                <dt>{word}</dt>
                <dd>{text(move || names(keep))}</dd>
            </div>
        }
    };
    view! {
        <dl class="at-a-glance">
            {row(words::SHORT, |r| r.finding.level.is_some_and(|l| l.is_short()))}
            {row(
                words::ENOUGH,
                |r| r.finding.level.is_some_and(|l| !l.is_short() && !l.is_surplus()),
            )}
            {row(words::SURPLUS, |r| r.finding.level.is_some_and(|l| l.is_surplus()))}
            {row(words::NOT_JUDGED_YET, |r| r.finding.level.is_none())}
        </dl>
    }
}

/// What could not be placed, each with its reason.
fn unread(page: Page) -> impl IntoView {
    let list = move || {
        let of_report = page
            .report
            .look(|report| report.as_ref().map(|r| r.unread.clone()).unwrap_or_default());
        let of_sample = page.of_sample(|sample| sample.unread.clone());
        of_sample.into_iter().chain(of_report).collect::<Vec<Unread>>()
    };
    view! {
        <div id="unread" hidden=flag(move || list().is_empty())>
            <h3>{words::UNREAD}</h3>
            <ul class="plain">
                {settled(
                    list,
                    move |unread: Unread| {
                        view! {
                            <li>
                                {source_line(page, move || unread.place)}
                                <p>{unread.reason}</p>
                            </li>
                        }
                    },
                )}
            </ul>
        </div>
    }
}
