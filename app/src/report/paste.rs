//! The report: the paste box, the samples, and what is wrong with a text that
//! can't be read.

use leptos::html::Details;
use leptos::prelude::*;

use crate::in_place::{changed, flag, focus, press, text};
use crate::report::files::open_file;
use crate::state::Page;
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

/// The report.
pub fn paste(page: Page) -> impl IntoView {
    let fold = NodeRef::<Details>::new();
    // With a report kept from the last visit a phone shows the answer first.
    let open = !(page.outcome.with_untracked(Option::is_some) && is_narrow());
    let here = later::here();
    let typed = move |text: String| match untrack(here) {
        Some(parts) if text.len() > LONG => (parts.long_report)(page, text),
        _ => page.paste(text),
    };
    let arrived = move || {
        if page.has_report() && is_narrow() {
            show_answer(fold);
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
    view! {
        <details id="report-fold" class="report" node_ref=fold open=open>
            <summary>
                <span class="report-title">{words::YOUR_REPORT}</span>
                <span class="soft">{text(move || state_of_report(page))}</span>
            </summary>
            <label class="field">
                <span class="field-name">{words::PASTE_HERE}</span>
                <textarea
                    id="report-text"
                    spellcheck="false"
                    autocomplete="off"
                    autocapitalize="off"
                    wrap="off"
                    rows="10"
                    placeholder=words::PASTE_EXAMPLE
                    aria-describedby="trouble"
                    aria-invalid=move || page.trouble().map(|_| "true")
                    prop:value=text(move || {
                        page.box_shown.track();
                        page.text.get()
                    })
                    on:input=changed(move |event| typed(event_target_value(&event)))
                    on:paste=move |_| {
                        pasted.set_value(true);
                        // The text is in the box only after this event.
                        request_animation_frame(after_paste);
                    }
                ></textarea>
            </label>
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
                <div class="buttons">
                    {SAMPLES
                        .map(|(id, name, text)| {
                            let put = press(move || {
                                page.paste(text);
                                arrived();
                            });
                            view! {
                                <button type="button" id=id on:click=put>
                                    {name}
                                </button>
                            }
                        })
                        .collect_view()}
                </div>
            </details>
        </details>
        {later::later(move |parts| (parts.unread)(page))}
    }
}

fn state_of_report(page: Page) -> String {
    page.of_sample(|sample| words::results(sample.readings.len()))
}

/// One column: the report folds away above the answer.
pub fn is_narrow() -> bool {
    let query = "(max-width: 59.99rem), (orientation: portrait)";
    let list = web_sys::window().and_then(|window| window.match_media(query).ok().flatten());
    list.is_some_and(|list| list.matches())
}

/// Folds the report and moves to the answer.
fn show_answer(fold: NodeRef<Details>) {
    if let Some(fold) = fold.get_untracked() {
        fold.set_open(false);
    }
    focus("answer-title");
}
