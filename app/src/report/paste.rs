//! The report: the paste box, the samples, and what is wrong with a text that
//! can't be read.

use leptos::prelude::*;
use web_sys::{HtmlDetailsElement, HtmlElement, HtmlTextAreaElement};

use crate::deferred::in_turn;
use crate::frame::{element, hear, put, window_is};
use crate::in_place::{Look, flag, focus, press, text};
use crate::report::files::opened;
use crate::state::{Page, read_first};
use crate::words::keeping::CLOSE;
use crate::{later, words};

/// The invented sample reports: the button in the frame, and the text.
const SAMPLES: [(&str, &str); 4] = [
    ("sample-surplus", include_str!("../../../public/samples/surplus.txt")),
    ("sample-hungry", include_str!("../../../public/samples/hungry-sand.csv")),
    ("sample-metric", include_str!("../../../public/samples/metric-transposed.tsv")),
    ("sample-broken", include_str!("../../../public/samples/broken.txt")),
];

/// A text longer than this, bytes, is read in steps.
const LONG: usize = 100_000;

/// Takes over the box of the frame, with what came into it while the program was on its way.
pub fn paste(page: Page) {
    let fold = element::<HtmlDetailsElement>("report-fold");
    let the_box = element::<HtmlTextAreaElement>("report-text");
    // With a report kept from the last visit a phone shows the answer first.
    fold.set_open(!(page.outcome.with_untracked(Option::is_some) && is_narrow()));
    let early = the_box.value();
    if !early.is_empty() && page.text.with_untracked(String::is_empty) {
        page.paste(early);
    }
    let arrived = move || {
        if page.has_report() && is_narrow() {
            // Folds the report and moves to the answer.
            element::<HtmlDetailsElement>("report-fold").set_open(false);
            focus("answer-title");
        }
    };
    // A text was pasted, not typed: the answer comes into view as soon as it is read.
    let pasted = StoredValue::new(false);
    let after_paste = move || {
        if pasted.get_value() && !page.reading.get_untracked() {
            pasted.set_value(false);
            arrived();
        }
    };
    Effect::new(move |before: Option<u32>| {
        let came = page.came.get();
        if before.is_some_and(|before| before != came) {
            untrack(after_paste);
        }
        came
    });
    let here = later::here();
    hear("report-text", "input", move |event| {
        let text = event_target_value(event);
        match untrack(here) {
            Some(parts) if text.len() > LONG => (parts.long_report)(page, text),
            _ if pasted.get_value() => {
                read_first(&text);
                let the_box = element::<HtmlTextAreaElement>("report-text");
                // It may hold more by then.
                in_turn(move || page.paste(the_box.value()));
            }
            _ => page.paste(text),
        }
    });
    hear("report-text", "paste", move |_| {
        pasted.set_value(true);
        // The text is in the box only after this event, and read a turn later.
        request_animation_frame(move || in_turn(after_paste));
    });
    let shown = the_box.clone();
    Effect::new(move || {
        page.box_shown.track();
        shown.set_value(&page.text.get());
    });
    Effect::new(move || {
        let invalid = if page.trouble().is_some() { "true" } else { "false" };
        // Ignored: the name of an attribute is a plain word.
        let _ = the_box.set_attribute("aria-invalid", invalid);
    });
    for (id, text) in SAMPLES {
        hear(id, "click", move |_| {
            read_first(text);
            in_turn(move || {
                page.will_replace();
                page.paste(text);
                arrived();
            });
        });
    }
    let (link, samples) =
        (element::<HtmlElement>("to-answer"), element::<HtmlDetailsElement>("samples"));
    let answered = Memo::new(move |_| page.has_report());
    Effect::new(move || {
        link.set_hidden(!answered.get());
        samples.set_open(!answered.get());
    });
    put("report-state", text(move || state_of_report(page)).into_any());
    let trouble = move || page.trouble().map(|text| view! { <p>{text}</p> });
    put("trouble", trouble.into_any());
    put("long-reading", later::later(move |parts| (parts.long_work)(page)));
    put("opened", opened(page).into_any());
    put("before", before(page).into_any());
    put("before", later::later(move |parts| (parts.earlier)(page)));
}

/// Says what became of the report that was here, with the way back.
fn before(page: Page) -> impl IntoView {
    let said = move || page.before.look(|before| before.as_ref().map_or("", |before| before.said));
    let close = move || if said() == words::ERASED { words::FORGET } else { CLOSE };
    view! {
        <p id="erased-note" hidden=flag(move || said().is_empty())>
            {text(said)} " "
            <button
                type="button"
                id="take-back"
                on:click=press(move || {
                    page.take_back();
                    focus("answer-title");
                })
            >
                {words::TAKE_BACK}
            </button>
            <button type="button" class="quiet" on:click=press(move || page.before.set(None))>
                {text(close)}
            </button>
        </p>
    }
}

fn state_of_report(page: Page) -> String {
    page.of_sample(|sample| words::results(sample.readings.len()))
}

/// One column: the report folds away above the answer.
pub fn is_narrow() -> bool {
    window_is("(max-width: 59.99rem), (orientation: portrait)")
}
