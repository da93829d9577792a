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

/// The fold with the two choices; the saved reports are read when it is opened.
pub fn two_reports(at_work: AtWork) -> AnyView {
    let all = RwSignal::new(Vec::<Entry>::new());
    let chosen = [RwSignal::new(String::new()), RwSignal::new(String::new())];
    let read = move |open: bool| {
        if !open {
            return;
        }
        leptos::task::spawn_local(async move {
            match database::all(Place::Shelf).await {
                Ok(shelved) => {
                    let reports = shelved.iter().filter_map(|(_, json)| match Held::read(json) {
                        Held::Entry(entry) if !entry.is_trial() => Some(entry),
                        _ => None,
                    });
                    let mut reports: Vec<Entry> = reports.collect();
                    by_date(&mut reports);
                    all.set(reports);
                }
                Err(why) => at_work.told.set(why.words().into()),
            }
        });
    };
    let choice = move |label: &'static str, id: &'static str, chosen: RwSignal<String>| {
        let options = move || {
            let option = |entry: Entry| {
                let day = day::parse(&entry.date).map_or_else(String::new, day::spoken);
                let name = format!("{} {day}", entry.name);
                view! { <option value=entry.id translate="no">{name.trim_end().to_string()}</option> }
            };
            all.get().into_iter().map(option).collect_view()
        };
        view! {
            <label class="field">
                <span class="field-name">{label}</span>
                <select id=id on:change=changed(move |event| chosen.set(event_target_value(&event)))>
                    <option value="">"–"</option>
                    {options}
                </select>
            </label>
        }
    };
    let take = press(move || {
        let table_of = |chosen: RwSignal<String>| {
            let id = chosen.get_untracked();
            let entry = all.with_untracked(|all| all.iter().find(|e| e.id == id).cloned())?;
            samples(&entry).map(|samples| table(&samples))
        };
        match chosen.map(table_of) {
            [Some(before), Some(after)] if before != after => {
                let later = Some(after);
                let trial = Trial { text: before, later, ..Trial::default() };
                at_work.stand_in(trial, SavedAs::default());
            }
            _ => at_work.told.set(words::CHOOSE_TWO.into()),
        }
    });
    view! {
        <details id="trial-two" class="fold" on:toggle=unfolds(read)>
            <summary>{words::TWO_REPORTS}</summary>
            <p class="soft" hidden=flag(move || all.with(|all| all.len() > 1))>{words::TWO_NEEDED}</p>
            <div hidden=flag(move || all.with(|all| all.len() < 2))>
                <div class="controls">
                    {choice(words::BEFORE, "trial-before", chosen[0])}
                    {choice(words::AFTER, "trial-after", chosen[1])}
                </div>
                <p class="soft">{words::TWO_MEAN}</p>
                <button type="button" id="trial-take-two" on:click=take>
                    {words::TAKE_TWO}
                </button>
            </div>
        </details>
    }
    .into_any()
}
