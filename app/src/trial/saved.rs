//! The trial and the saved reports: saved among them under its name, over itself or beside; and
//! two of them taken as before and after.

use emberloam_engine::export::table;
use emberloam_engine::season::day;
use emberloam_engine::trial::Trial;
use leptos::prelude::*;

use crate::in_place::{changed, flag, press, text, unfolds};
use crate::origin::SavedAs;
use crate::report::exports::event_code;
use crate::report::files::tell;
use crate::saved::database::{self, Change, Place};
use crate::saved::entry::{self, Entry, Held, Label, Outcome, by_date};
use crate::saved::trend::samples;
use crate::saved::view::now;
use crate::store::Kept;
use crate::trial::kept::to_json;
use crate::trial::view::AtWork;
use crate::words::{keeping, trial as words};

/// The field for the name, and the button.
pub fn kept_among_reports(at_work: AtWork) -> AnyView {
    let AtWork { trial, saved, .. } = at_work;
    let none = move || trial.with(|trial| trial.text.is_empty());
    view! {
        <div class="keep-form" hidden=flag(none)>
            <label class="field">
                <span class="field-name">{words::NAME}</span>
                <input
                    id="trial-name"
                    type="text"
                    autocomplete="off"
                    prop:value=text(move || saved.with(|saved| saved.name.clone()))
                    on:input=changed(move |event| {
                        let name = event_target_value(&event);
                        saved.update(|saved| saved.name = name);
                    })
                />
            </label>
            <div class="buttons">
                <button type="button" id="trial-save" on:click=press(move || save(at_work))>
                    {words::SAVE_HERE}
                </button>
            </div>
        </div>
    }
    .into_any()
}

/// Saves it over the one that was opened; beside it where another tab has saved that meanwhile.
fn save(at_work: AtWork) {
    let AtWork { trial, saved, told, .. } = at_work;
    let name = saved.with_untracked(|saved| saved.name.trim().to_string());
    if name.is_empty() {
        return told.set(keeping::NAME_IT.into());
    }
    // What was written as JSON is JSON.
    let json = serde_json::from_str(&trial.with_untracked(to_json)).unwrap_or_default();
    let opened = saved.with_untracked(|saved| saved.opened.clone());
    let decide = move |there: &[(String, String)]| {
        let current = opened.as_ref().and_then(|o| there.iter().find(|(id, _)| *id == o.id));
        let current = current.map(|(_, json)| json.as_str());
        let label = Label { name, ..Label::default() };
        let (entry, outcome) =
            entry::save(&Kept::default(), label, opened.as_ref(), current, event_code(), &now());
        let entry = entry.holding(json);
        (vec![Change::Put((entry.id.clone(), entry.to_json()))], (entry, outcome))
    };
    leptos::task::spawn_local(async move {
        match database::change(Place::Shelf, decide).await {
            Ok((entry, outcome)) => {
                told.set(match outcome {
                    Outcome::Saved => keeping::saved(&entry.name),
                    Outcome::BothKept => keeping::both_kept(&entry.name),
                });
                saved.update(|saved| {
                    saved.opened = Some(entry.opened());
                    saved.name = entry.name;
                });
                tell("emberloam:shelf-changed", "");
            }
            Err(why) => told.set(why.words().into()),
        }
    });
}
