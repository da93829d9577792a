//! What could not be placed, each line with its reason and a way to it, beside
//! the number of results that were read.

use emberloam_engine::report::{NamedLine, Unread, reading_of};
use emberloam_engine::soil::Property;
use leptos::prelude::*;

use crate::control::pick;
use crate::grounds::opens;
use crate::in_place::{Look, flag, settled, text};
use crate::report::source::source_line;
use crate::state::Page;
use crate::words;

/// The fold; nothing where all was placed.
pub fn unread(page: Page) -> AnyView {
    let list = Memo::new(move |_| {
        let of_report = page
            .report
            .look(|report| report.as_ref().map(|r| r.unread.clone()).unwrap_or_default());
        let of_sample = page.of_sample(|sample| sample.unread.clone());
        of_sample.into_iter().chain(of_report).collect::<Vec<Unread>>()
    });
    view! {
        <details id="unread" class="fold" hidden=flag(move || list.look(Vec::is_empty))>
            <summary>{text(move || words::unread(list.look(Vec::len)))}</summary>
            <ul class="plain">
                {settled(move || list.get(), move |unread: Unread| line(page, unread))}
            </ul>
        </details>
    }
    .into_any()
}

/// A line with its reason, its place, and what it may be: one choice makes a reading of it.
fn line(page: Page, unread: Unread) -> impl IntoView {
    let opened = RwSignal::new(false);
    let Unread { place, reason, text } = unread.clone();
    let choice = move || {
        let choices = Property::ALL.into_iter().filter(|p| reading_of(&unread, *p).is_some());
        let choices = choices.map(|property| (property, property.label())).collect();
        let text = text.clone();
        let named = move |property: Option<Property>| {
            let sample = untrack(|| page.chosen());
            let line =
                property.map(|property| NamedLine { sample, place, text: text.clone(), property });
            page.answers.update(|case| case.reading.named_lines.extend(line));
        };
        pick(words::MEASURED, words::NOT_SAID, choices, || None, named)
    };
    view! {
        <li>
            {source_line(page, move || place)} <p>{reason}</p>
            <details on:toggle=opens(opened)>
                <summary>{words::SAY_WHAT_IT_IS}</summary>
                <div class="controls">{move || opened.get().then(&choice)}</div>
            </details>
        </li>
    }
}
