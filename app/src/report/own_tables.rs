//! A region's own file: an educator's tables, opened, named, saved and taken out again.

use std::cell::{Cell, RefCell};

use emberloam_engine::Case;
use emberloam_engine::facts::Wrong;
use emberloam_engine::own::{MOST_BYTES, OwnFacts, read};
use leptos::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::HtmlInputElement;

use crate::in_place::{Look, changed, flag, lines, press};
use crate::report::files::save;
use crate::state::Page;
use crate::words;

/// What a file came to: its tables, which stay for as long as the page does, or its faults.
type Read = Result<&'static OwnFacts, Vec<String>>;

/// What reads such a file.
pub type Reader = fn(&str, &str) -> Result<OwnFacts, Vec<Wrong>>;

thread_local! {
    /// What reads a file, once it is here. It comes with the later piece: a visit without such a
    /// file never needs it, and a file comes only from there.
    static READER: Cell<Option<Reader>> = const { Cell::new(None) };
    /// The file that was read last, and what it came to.
    static READ: RefCell<Option<(String, Read)>> = const { RefCell::new(None) };
}

/// From now on files are read by `reader`.
pub fn read_with(reader: Reader) {
    READER.set(Some(reader));
}

/// What the case's own file came to. A text is read once: what is read of it is never given back.
fn read_of(case: &Case) -> Option<Read> {
    let text = case.own_file.as_ref()?;
    let read = READER.get()?;
    READ.with_borrow_mut(|known| match known {
        Some((of, came_to)) if of == text => Some(came_to.clone()),
        _ => {
            let came_to = match read("", text) {
                Ok(own) => Ok(&*Box::leak(Box::new(own))),
                Err(wrong) => Err(wrong.iter().take(8).map(ToString::to_string).collect()),
            };
            *known = Some((text.clone(), came_to.clone()));
            Some(came_to)
        }
    })
}

/// The tables of the case's own file. One that is wrong judges nothing.
pub fn tables_of(case: &Case) -> Option<&'static OwnFacts> {
    read_of(case)?.ok()
}

/// The tables of a case that came with a link or was kept, in a sentence each.
fn said(case: &Case) -> Vec<String> {
    match read_of(case) {
        None => Vec::new(),
        Some(Ok(own)) => {
            own.sources.iter().map(|source| words::own_tables_of(source.title())).collect()
        }
        Some(Err(wrong)) => wrong,
    }
}

/// The picker, what the file holds, and the way out.
pub fn own_tables(page: Page) -> AnyView {
    let wrong = RwSignal::new(Vec::<String>::new());
    let chosen = changed(move |event| {
        let input: HtmlInputElement = event_target(&event);
        let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
        input.set_value("");
        if file.size() > MOST_BYTES as f64 {
            return wrong.set(vec![words::OWN_TABLES_TOO_LARGE.into()]);
        }
        leptos::task::spawn_local(async move {
            let content = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
            let Some(text) = content else {
                return wrong.set(vec![words::OWN_TABLES_UNREAD.into()]);
            };
            match read(&file.name(), &text) {
                Ok(own) => {
                    wrong.set(Vec::new());
                    let only = own.regions.first().map(|region| region.id.to_string());
                    page.answer(|case| {
                        case.reading.region = only.or(case.reading.region.take());
                        case.own_file = Some(text);
                    });
                }
                Err(why) => {
                    wrong.set(why.iter().take(8).map(ToString::to_string).collect());
                }
            }
        });
    });
    let has = move || page.answers.look(|case| case.own_file.is_some());
    view! {
        <label class="field">
            <span class="field-name">{words::OWN_TABLES}</span>
            <input id="own-tables" class="file" type="file" accept=".csv,text/csv" on:change=chosen />
        </label>
        <div role="status" id="own-tables-said">
            <ul class="notes">
                {lines(move || {
                    let faults = wrong.get();
                    if faults.is_empty() { page.answers.look(said) } else { faults }
                })}
            </ul>
        </div>
        <p class="buttons" hidden=flag(move || !has())>
            <button
                type="button"
                id="own-tables-save"
                on:click=press(move || {
                    if let Some(text) = page.answers.look(|case| case.own_file.clone()) {
                        save("region-tables.csv", "text/csv", &text);
                    }
                })
            >
                {words::OWN_TABLES_SAVE}
            </button>
            <button
                type="button"
                id="own-tables-out"
                on:click=press(move || page.answer(|case| case.own_file = None))
            >
                {words::OWN_TABLES_OUT}
            </button>
        </p>
    }
    .into_any()
}
