//! The report: the paste box, the samples, and what is wrong with a text that
//! can't be read.

use leptos::prelude::*;
use web_sys::{HtmlDetailsElement, HtmlTextAreaElement};

use crate::deferred::in_turn;
use crate::frame::{element, hear, put, window_is};
use crate::in_place::{flag, focus, press, text};
use crate::report::files::open_file;
use crate::state::{Page, read_first};
use crate::{later, words};

/// The invented sample reports: id, name, text.
const SAMPLES: [(&str, &str, &str); 4] = [
    ("sample-surplus", words::SAMPLE_SURPLUS, include_str!("../../../public/samples/surplus.txt")),
    (
        "sample-hungry",
        words::SAMPLE_HUNGRY,
        include_str!("../../../public/samples/hungry-sand.csv"),
    ),
    (
        "sample-metric",
        words::SAMPLE_METRIC,
        include_str!("../../../public/samples/metric-transposed.tsv"),
    ),
    ("sample-broken", words::SAMPLE_BROKEN, include_str!("../../../public/samples/broken.txt")),
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
    put("report-state", text(move || state_of_report(page)).into_any());
    put("report-fold", below_the_box(page, arrived));
}

/// What leads on from the box: what is wrong with its text, files, samples.
fn below_the_box(page: Page, arrived: impl Fn() + Copy + 'static) -> AnyView {
    let samples = SAMPLES.map(|(id, name, text)| {
        let put = press(move || {
            read_first(text);
            in_turn(move || {
                page.paste(text);
                arrived();
            });
        });
        view! {
            <button type="button" id=id on:click=put>
                {name}
            </button>
        }
    });
    view! {
        <a class="to-answer" href="#answer-title" hidden=flag(move || !page.has_report())>
            {words::TO_THE_ANSWER}
        </a>
        <div id="trouble" role="alert">
            {move || page.trouble().map(|text| view! { <p>{text}</p> })}
        </div>
        {later::later(move |parts| (parts.long_work)(page))}
        {open_file(page)}
        // With a report in they are in nobody's way.
        <details class="samples fold" open=flag(move || !page.has_report())>
            <summary class="soft">{words::SAMPLES}</summary>
            <div class="buttons">{samples.into_iter().collect_view()}</div>
        </details>
    }
    .into_any()
}

fn state_of_report(page: Page) -> String {
    page.of_sample(|sample| words::results(sample.readings.len()))
}

/// One column: the report folds away above the answer.
pub fn is_narrow() -> bool {
    window_is("(max-width: 59.99rem), (orientation: portrait)")
}
