//! Files that come in and go out. `public/files.js` opens and saves them; it
//! and the page speak by events on the window.

use gloo::events::EventListener;
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CustomEvent, CustomEventInit};

use crate::in_place::{Look, flag, lines, press};
use crate::state::Page;
use crate::{later, words};

/// Hears what the script tells.
pub fn listen(page: Page) {
    hear("emberloam:opened", Box::new(move |said| page.opened.set(said)));
    hear("emberloam:replacing", Box::new(move |_| page.will_replace()));
    hear("emberloam:refused", Box::new(move |said| page.refuse(said)));
    hear(
        "emberloam:saved",
        Box::new(move |json| {
            leptos::task::spawn_local(async move {
                let Some(parts) = later::at_once().await else {
                    return page.refuse(words::LATER_MISSING.into());
                };
                match (parts.pens.from_saved)(&json) {
                    Some(kept) => page.restore(kept),
                    None => page.refuse(words::SAVED_DAMAGED.into()),
                }
            });
        }),
    );
}

/// Hears what a script tells, as long as the page stands.
pub fn hear(name: &'static str, does: Box<dyn Fn(String)>) {
    let Some(window) = web_sys::window() else { return };
    EventListener::new(&window, name, move |event| {
        let event = event.dyn_ref::<CustomEvent>();
        does(event.and_then(|event| event.detail().as_string()).unwrap_or_default());
    })
    .forget();
}

/// Hands a text to the script to save as a file.
pub fn save(name: &str, kind: &str, text: &str) {
    tell("emberloam:save", &format!("{name}\n{kind}\n{text}"));
}

/// Tells the scripts something.
pub fn tell(name: &str, detail: &str) {
    let init = CustomEventInit::new();
    init.set_detail(&JsValue::from_str(detail));
    if let (Some(window), Ok(event)) =
        (web_sys::window(), CustomEvent::new_with_event_init_dict(name, &init))
    {
        // Ignored: the answer only says whether a listener cancelled it.
        let _ = window.dispatch_event(&event);
    }
}

/// A file's name after the bed: letters, digits and hyphens.
pub fn file_name(bed: &str, ending: &str) -> String {
    let plain: String =
        bed.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
    let plain = plain.trim_matches('-');
    let plain = if plain.is_empty() { "soil-report" } else { plain };
    format!("{plain}.{ending}")
}

/// Where the text was opened from, and what to know of it.
pub fn opened(page: Page) -> impl IntoView {
    view! {
        <ul class="notes" hidden=flag(move || page.opened.look(String::is_empty))>
            {lines(move || page.opened.look(|said| said.lines().map(str::to_string).collect()))}
        </ul>
    }
}

/// Saves the report with its answers.
pub fn save_report(page: Page) -> impl IntoView {
    view! {
        <button
            type="button"
            id="save-report"
            hidden=flag(move || !page.has_report())
            on:click=press(move || {
                leptos::task::spawn_local(async move {
                    let Some(parts) = later::at_once().await else {
                        return page.refuse(words::LATER_MISSING.into());
                    };
                    if let Some(json) = (parts.pens.to_saved)(&untrack(|| page.kept())) {
                        let name = file_name(&untrack(|| page.bed_name()), "emberloam.json");
                        save(&name, "application/json", &json);
                    }
                });
            })
        >
            {words::SAVE_REPORT}
        </button>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_named_after_its_bed() {
        assert_eq!(file_name("Back garden, 2", "csv"), "Back-garden--2.csv");
        assert_eq!(file_name("“…”", "csv"), "soil-report.csv");
    }
}
