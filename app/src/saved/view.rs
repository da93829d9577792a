//! The shelf as a person sees it: what to save, what is there, what to do with it.

use emberloam_engine::season::day;
use leptos::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{HtmlDetailsElement, HtmlInputElement};

use crate::frame::element;
use crate::in_place::{Look, changed, flag, focus, keyed, press, text, unfolds};
use crate::language::own_or_said;
use crate::origin::{Opened, Origin, SavedAs};
use crate::report::exports::event_code;
use crate::report::files::{hear, save as save_file, tell};
use crate::saved::backup::{self, Shelved, Unpacked};
use crate::saved::database::{self, Change, Place, Shut};
use crate::saved::entry::{self, Entry, Held, Label, Outcome, by_date};
use crate::saved::erase;
use crate::saved::years::years;
use crate::share::arrived::forget_address;
use crate::state::Page;
use crate::store::is_a_file;
use crate::words::keeping as said;
use crate::{date, words};

/// The shelf as it was read last, and what is being done with it.
#[derive(Clone, Copy)]
pub struct SavedReports {
    page: Page,
    /// Whether the shelf is in sight: until then nothing is read.
    open: RwSignal<bool>,
    /// What lies there.
    pub shelved: RwSignal<Vec<Shelved>>,
    /// Why it can't be used.
    shut: RwSignal<Option<Shut>>,
    /// What happened last, in words.
    told: RwSignal<String>,
    /// What was deleted last, to be put back.
    deleted: RwSignal<Option<Shelved>>,
    find: RwSignal<String>,
    name: RwSignal<String>,
    place: RwSignal<String>,
    date: RwSignal<String>,
    /// Which entry is being renamed.
    renaming: RwSignal<String>,
    /// Whether erasing waits for a yes.
    sure: RwSignal<bool>,
    /// What could not be read of the file that was brought in last.
    unread: RwSignal<String>,
}

/// Now, as `2027-04-20T18:05:00.000Z`.
pub fn now() -> String {
    js_sys::Date::new_0().to_iso_string().into()
}

impl SavedReports {
    fn new(page: Page) -> SavedReports {
        SavedReports {
            page,
            open: RwSignal::new(false),
            shelved: RwSignal::new(Vec::new()),
            shut: RwSignal::new(None),
            told: RwSignal::new(String::new()),
            deleted: RwSignal::new(None),
            find: RwSignal::new(String::new()),
            name: RwSignal::new(String::new()),
            place: RwSignal::new(String::new()),
            date: RwSignal::new(String::new()),
            renaming: RwSignal::new(String::new()),
            sure: RwSignal::new(false),
            unread: RwSignal::new(String::new()),
        }
    }

    /// The saved reports that can be read, the latest first.
    pub fn entries(self) -> Vec<Entry> {
        let held = |(_, json): &Shelved| match Held::read(json) {
            Held::Entry(entry) => Some(entry),
            _ => None,
        };
        let mut entries: Vec<Entry> =
            self.shelved.look(|all| all.iter().filter_map(held).collect());
        by_date(&mut entries);
        entries
    }

    /// Says what happened, to eyes and ears.
    fn tell(self, what: impl Into<String>) {
        let what = what.into();
        self.page.said.set(what.clone());
        self.told.set(what);
    }

    /// Reads the shelf again.
    fn read(self) {
        leptos::task::spawn_local(async move {
            match database::all(Place::Shelf).await {
                Ok(all) => {
                    self.shut.set(None);
                    self.shelved.set(all);
                }
                Err(why) => self.shut.set(Some(why)),
            }
        });
    }

    /// Makes a change, says what came of it, and reads the shelf again.
    fn change<T: 'static>(
        self,
        decide: impl FnOnce(&[Shelved]) -> (Vec<Change>, T) + 'static,
        then: impl FnOnce(T) -> String + 'static,
    ) {
        leptos::task::spawn_local(async move {
            match database::change(Place::Shelf, decide).await {
                Ok(decided) => {
                    let what = then(decided);
                    self.tell(what);
                    self.read();
                }
                Err(why) => self.tell(why.words()),
            }
        });
    }

    /// The form for what is on the page now.
    fn fill(self) {
        let page = self.page;
        let id = page.origin.with_untracked(|origin| origin.opened.as_ref().map(|o| o.id.clone()));
        let there = untrack(|| self.entries()).into_iter().find(|e| Some(&e.id) == id.as_ref());
        let label = match there {
            Some(entry) => Label { name: entry.name, place: entry.place, date: entry.date },
            None => {
                let bed = untrack(|| page.bed_name());
                let place = if bed == words::YOUR_BED { String::new() } else { bed.clone() };
                let today = date::today().map_or(String::new(), day::iso);
                Label { name: own_or_said(&bed), place, date: today }
            }
        };
        self.name.set(label.name);
        self.place.set(label.place);
        self.date.set(label.date);
    }

    /// Saves what is on the page; over the open one, unless it is to be `another`.
    fn save(self, another: bool) {
        let page = self.page;
        let kept = untrack(|| page.kept());
        let name = self.name.get_untracked().trim().to_string();
        if name.is_empty() {
            self.tell(said::NAME_IT);
            return focus("shelf-name");
        }
        let label = Label {
            name,
            place: self.place.get_untracked().trim().into(),
            date: self.date.get_untracked(),
        };
        let opened =
            page.origin.with_untracked(|origin| origin.opened.clone()).filter(|_| !another);
        let decide = move |there: &[Shelved]| {
            let current = opened.as_ref().and_then(|o| there.iter().find(|(id, _)| *id == o.id));
            let current = current.map(|(_, json)| json.as_str());
            let (entry, outcome) =
                entry::save(&kept, label, opened.as_ref(), current, event_code(), &now());
            (vec![Change::Put((entry.id.clone(), entry.to_json()))], (entry, outcome))
        };
        self.change(decide, move |(entry, outcome)| {
            page.origin.update(|origin| origin.opened = Some(entry.opened()));
            self.name.set(entry.name.clone());
            match outcome {
                Outcome::Saved => said::saved(&entry.name),
                Outcome::BothKept => said::both_kept(&entry.name),
            }
        });
    }

    fn open(self, entry: &Entry) {
        let page = self.page;
        if entry.is_trial() {
            let (name, opened) = (entry.name.clone(), Some(entry.opened()));
            page.trial.set(Some((entry.trial.to_string(), SavedAs { name, opened })));
            element::<HtmlDetailsElement>("trial").set_open(true);
            focus("trial-table");
            return self.tell(said::opened(&entry.name));
        }
        let Some(kept) = entry.kept() else { return };
        page.restore(kept);
        page.origin.set(Origin { opened: Some(entry.opened()), scenario: None });
        self.fill();
        self.tell(said::opened(&entry.name));
    }

    fn rename(self, id: String, name: &str) {
        let name = name.trim().to_string();
        if name.is_empty() {
            return self.tell(said::NAME_IT);
        }
        let page = self.page;
        let decide = move |there: &[Shelved]| {
            let json = there.iter().find(|(known, _)| *known == id).map(|(_, json)| json);
            match json.map(|json| Held::read(json)) {
                Some(Held::Entry(mut entry)) => {
                    entry.name = name;
                    entry.revision += 1;
                    entry.changed = now();
                    (vec![Change::Put((id, entry.to_json()))], Some(entry))
                }
                _ => (Vec::new(), None),
            }
        };
        self.change(decide, move |entry| {
            self.renaming.set(String::new());
            let Some(entry) = entry else { return said::GONE.into() };
            page.origin.update(|origin| {
                let before = Opened { revision: entry.revision - 1, ..entry.opened() };
                if origin.opened.as_ref() == Some(&before) {
                    origin.opened = Some(entry.opened());
                    self.name.set(entry.name.clone());
                }
            });
            said::renamed(&entry.name)
        });
    }

    fn duplicate(self, entry: &Entry) {
        let copy = Entry {
            id: event_code(),
            name: said::another(&entry.name),
            created: now(),
            changed: now(),
            revision: 1,
            ..entry.clone()
        };
        let name = copy.name.clone();
        let decide =
            move |_: &[Shelved]| (vec![Change::Put((copy.id.clone(), copy.to_json()))], ());
        self.change(decide, move |()| said::saved(&name));
    }

    fn delete(self, id: String) {
        let decide = move |there: &[Shelved]| {
            let gone = there.iter().find(|(known, _)| *known == id).cloned();
            (vec![Change::Remove(id)], gone)
        };
        self.change(decide, move |gone| {
            self.deleted.set(gone);
            focus("shelf-put-back");
            said::DELETED.into()
        });
    }

    fn put_back(self) {
        let Some(gone) = self.deleted.get_untracked() else { return };
        let decide = move |there: &[Shelved]| {
            // Saved again by another tab meanwhile: that is the newer one.
            let free = there.iter().all(|(id, _)| *id != gone.0);
            (if free { vec![Change::Put(gone)] } else { Vec::new() }, ())
        };
        self.change(decide, move |()| {
            self.deleted.set(None);
            focus("shelf-find");
            said::PUT_BACK.into()
        });
    }

    fn take_out(self) {
        leptos::task::spawn_local(async move {
            match database::all(Place::Shelf).await {
                Ok(all) => {
                    let file = backup::pack(&all, &now());
                    if !backup::gives_back(&file, &all) {
                        return self.tell(said::NOT_CHECKED);
                    }
                    save_file("emberloam-shelf.json", "application/json", &file);
                    self.tell(said::taken_out(all.len()));
                }
                Err(why) => self.tell(why.words()),
            }
        });
    }

    fn bring_in(self, file: web_sys::File) {
        leptos::task::spawn_local(async move {
            let Ok(content) = JsFuture::from(file.text()).await else {
                return self.tell(said::FILE_UNREAD);
            };
            match backup::unpack(&content.as_string().unwrap_or_default()) {
                Err(why) => self.tell(why.words()),
                Ok(Unpacked { entries, unread }) => {
                    let raw: Vec<&str> = unread.iter().map(|unread| unread.raw.as_str()).collect();
                    self.unread.set(raw.join("\n\n"));
                    let numbers: Vec<usize> = unread.iter().map(|unread| unread.number).collect();
                    self.change(
                        move |there| {
                            let merged = backup::merge(there, entries, &mut event_code);
                            (merged.put.iter().cloned().map(Change::Put).collect(), merged)
                        },
                        move |merged| {
                            let told = said::brought_in(merged.put.len(), merged.same, merged.both);
                            if numbers.is_empty() { told } else { told + &said::not_read(&numbers) }
                        },
                    );
                }
            }
        });
    }

    fn erase_all(self) {
        self.page.erase();
        // Nothing of it is left to go back to.
        self.page.before.set(None);
        tell("emberloam:all-erased", "");
        forget_address();
        leptos::task::spawn_local(async move {
            let left = erase::everything().await;
            self.shelved.set(Vec::new());
            self.deleted.set(None);
            self.unread.set(String::new());
            self.sure.set(false);
            let told =
                if left.is_empty() { said::ALL_ERASED.into() } else { said::still_there(&left) };
            self.tell(format!("{told} {}", said::CANT_ERASE));
        });
    }
}

/// The fold with the shelf.
pub fn reports(page: Page) -> AnyView {
    let reports = SavedReports::new(page);
    let changed = move || {
        if reports.open.get_untracked() {
            reports.read();
        }
    };
    hear("emberloam:shelf-changed", Box::new(move |_| changed()));
    let erased = move || {
        page.erase();
        page.before.set(None);
        if let Some(body) = document().body() {
            body.set_text_content(Some(said::ERASED_ELSEWHERE));
        }
    };
    database::hear(changed, erased);
    let toggled = unfolds(move |open| {
        reports.open.set(open);
        if open {
            reports.read();
            reports.fill();
        }
    });
    // Another report was pasted, or another entry opened, while the shelf was in sight.
    Effect::new(move |_| {
        page.report.look(|_| ());
        page.origin.look(|_| ());
        let none = page.origin.with_untracked(|origin| origin.opened.is_none());
        if reports.open.get_untracked() && none {
            reports.fill();
        }
    });
    let shut = move || flag(move || reports.shut.get().is_some());
    view! {
        <details id="shelf" class="keep" on:toggle=toggled>
            <summary>
                <h2 class="report-title">{said::SHELF}</h2>
            </summary>
            <p id="shelf-shut" class="told" hidden=flag(move || reports.shut.get().is_none())>
                {text(move || reports.shut.get().map_or("", Shut::words))}
            </p>
            <p id="shelf-file" hidden=!is_a_file()>{said::FILE_STORAGE}</p>
            <div hidden=shut()>{form(reports)}</div>
            {told(reports)}
            <div hidden=shut()>{list(reports)} {years(reports)} {whole(reports)}</div>
            {all_away(reports)}
        </details>
    }
    .into_any()
}

fn told(reports: SavedReports) -> impl IntoView {
    view! {
        <div class="told" hidden=flag(move || reports.told.look(String::is_empty))>
            <p id="shelf-told">{text(move || reports.told.get())}</p>
            <button
                type="button"
                id="shelf-put-back"
                hidden=flag(move || reports.deleted.look(Option::is_none))
                on:click=press(move || reports.put_back())
            >
                {words::TAKE_BACK}
            </button>
        </div>
    }
}

/// A field of the form.
fn field(
    id: &'static str,
    name: &'static str,
    kind: &'static str,
    of: RwSignal<String>,
) -> AnyView {
    view! {
        <label class="field">
            <span class="field-name">{name}</span>
            <input
                id=id
                type=kind
                autocomplete="off"
                prop:value=text(move || of.get())
                on:input=changed(move |event| of.set(event_target_value(&event)))
            />
        </label>
    }
    .into_any()
}

fn form(reports: SavedReports) -> impl IntoView {
    let page = reports.page;
    let nothing = move || page.text.look(String::is_empty);
    let opened = move || page.origin.look(|origin| origin.opened.is_some());
    view! {
        <fieldset class="keep-form" hidden=flag(nothing)>
            <legend>{said::SAVE_THIS}</legend>
            {field("shelf-name", said::SAVE_NAME, "text", reports.name)}
            {field("shelf-place", said::SAVE_PLACE, "text", reports.place)}
            {field("shelf-date", said::SAVE_DATE, "date", reports.date)}
            <div class="buttons">
                <button type="button" id="shelf-save" on:click=press(move || reports.save(false))>
                    {text(move || if opened() { said::SAVE_CHANGES } else { said::SAVE })}
                </button>
                <button
                    type="button"
                    id="shelf-save-new"
                    hidden=flag(move || !opened())
                    on:click=press(move || reports.save(true))
                >
                    {said::SAVE_NEW}
                </button>
            </div>
        </fieldset>
    }
}

fn list(reports: SavedReports) -> impl IntoView {
    let all = Memo::new(move |_| reports.entries());
    let found = move || {
        let find = reports.find.get();
        all.look(|all| all.iter().filter(|e| e.matches(&find)).cloned().collect::<Vec<_>>())
    };
    let closed = move || {
        reports.shelved.look(|shelved| {
            shelved
                .iter()
                .filter_map(|(id, json)| match Held::read(json) {
                    Held::Entry(_) => None,
                    Held::Newer(name) => Some((id.clone(), said::newer_entry(&name), json.clone())),
                    Held::Damaged => {
                        Some((id.clone(), said::DAMAGED_ENTRY.to_string(), json.clone()))
                    }
                })
                .collect::<Vec<_>>()
        })
    };
    let none = move || {
        if reports.shelved.look(Vec::is_empty) {
            said::SHELF_EMPTY
        } else if found().is_empty() && !reports.find.look(String::is_empty) {
            said::NOTHING_FOUND
        } else {
            ""
        }
    };
    view! {
        <label class="field" hidden=flag(move || all.look(|all| all.len() < 2))>
            <span class="field-name">{said::FIND}</span>
            <input
                id="shelf-find"
                type="search"
                autocomplete="off"
                on:input=changed(move |event| reports.find.set(event_target_value(&event)))
            />
        </label>
        <p class="soft">{text(none)}</p>
        <ul id="shelf-list" class="plain">
            {keyed(found, |entry: &Entry| entry.id.clone(), move |entry| item(reports, entry))}
            {keyed(
                closed,
                |(id, ..): &Closed| id.clone(),
                move |item| closed_item(reports, item),
            )}
        </ul>
    }
}

/// One that can't be opened: its id, why, and its JSON as it is.
type Closed = (String, String, String);

fn closed_item(reports: SavedReports, item: Memo<Closed>) -> impl IntoView {
    view! {
        <li class="closed-entry">
            <p>{text(move || item.look(|(_, why, _)| why.clone()))}</p>
            <div class="buttons">
                <button
                    type="button"
                    class="quiet closed-save"
                    on:click=press(move || {
                        let json = item.with_untracked(|(.., json)| json.clone());
                        save_file("saved-report.json", "application/json", &json);
                    })
                >
                    {said::SAVE_FILE}
                </button>
                <button
                    type="button"
                    class="quiet closed-delete"
                    on:click=press(move || {
                        reports.delete(item.with_untracked(|(id, ..)| id.clone()));
                    })
                >
                    {said::DELETE}
                </button>
            </div>
        </li>
    }
}

fn item(reports: SavedReports, entry: Memo<Entry>) -> impl IntoView {
    let id = move || entry.look(|entry| entry.id.clone());
    let name = move || entry.look(|entry| entry.name.clone());
    let day =
        move || entry.look(|entry| day::parse(&entry.date).map_or_else(String::new, day::spoken));
    let place = move || entry.look(|entry| entry.place.clone());
    let is_open = move || {
        reports.page.origin.look(|origin| origin.opened.as_ref().is_some_and(|o| o.id == id()))
    };
    let renaming = move || reports.renaming.look(|now| *now == id());
    let new_name = RwSignal::new(String::new());
    let button = move |word: &'static str, does: Box<dyn Fn()>| {
        view! {
            <button
                type="button"
                class="quiet"
                aria-label=text(move || said::does_to(word, &name()))
                on:click=press(does)
            >
                {word}
            </button>
        }
    };
    view! {
        <li class="entry" data-name=name>
            <p>
                <strong translate="no">{text(name)}</strong>
                " "
                <span class="soft">{text(day)}</span>
                " "
                <span class="soft" translate="no">
                    {text(place)}
                </span>
                " "
                <span class="soft">
                    {text(move || if entry.look(Entry::is_trial) { said::IS_A_TRIAL } else { "" })}
                </span>
                " "
                <span class="soft">{text(move || if is_open() { said::OPEN_NOW } else { "" })}</span>
            </p>
            <div class="buttons">
                {button(said::OPEN, Box::new(move || reports.open(&entry.get_untracked())))}
                {button(
                    said::RENAME,
                    Box::new(move || {
                        new_name.set(untrack(name));
                        reports.renaming.set(untrack(id));
                        focus("shelf-new-name");
                    }),
                )}
                {button(said::DUPLICATE, Box::new(move || reports.duplicate(&entry.get_untracked())))}
                {button(said::DELETE, Box::new(move || reports.delete(untrack(id))))}
            </div>
            {move || {
                renaming()
                    .then(|| {
                        view! {
                            <div class="keep-form">
                                {field("shelf-new-name", said::SAVE_NAME, "text", new_name)}
                                <div class="buttons">
                                    <button
                                        type="button"
                                        id="shelf-rename"
                                        on:click=press(move || {
                                            reports.rename(untrack(id), &new_name.get_untracked());
                                        })
                                    >
                                        {said::RENAME}
                                    </button>
                                    <button
                                        type="button"
                                        on:click=press(move || reports.renaming.set(String::new()))
                                    >
                                        {words::CANCEL}
                                    </button>
                                </div>
                            </div>
                        }
                    })
            }}
        </li>
    }
}

/// The whole shelf: out and in.
fn whole(reports: SavedReports) -> impl IntoView {
    let chosen = changed(move |event| {
        let input: HtmlInputElement = event_target(&event);
        if let Some(file) = input.files().and_then(|files| files.get(0)) {
            reports.bring_in(file);
        }
        // So that the same file can be chosen again.
        input.set_value("");
    });
    view! {
        <div class="keep-whole">
            <button
                type="button"
                id="shelf-out"
                hidden=flag(move || reports.shelved.look(Vec::is_empty))
                on:click=press(move || reports.take_out())
            >
                {said::TAKE_OUT}
            </button>
            <label class="field">
                <span class="field-name">{said::BRING_IN}</span>
                <input id="shelf-in" class="file" type="file" accept=".json,application/json" on:change=chosen />
            </label>
            {unread(reports)}
        </div>
    }
}

/// What could not be read of a file, to be seen and saved.
fn unread(reports: SavedReports) -> impl IntoView {
    let raw = move || reports.unread.get();
    view! {
        <div id="shelf-unread" hidden=flag(move || reports.unread.look(String::is_empty))>
            <label class="field">
                <span class="field-name">{said::RAW}</span>
                <textarea rows="4" readonly translate="no" prop:value=text(raw)></textarea>
            </label>
            <div class="buttons">
                <button
                    type="button"
                    id="shelf-unread-save"
                    on:click=press(move || {
                        save_file("not-read.txt", "text/plain", &reports.unread.get_untracked());
                    })
                >
                    {said::SAVE_FILE}
                </button>
                <button
                    type="button"
                    class="quiet"
                    on:click=press(move || reports.unread.set(String::new()))
                >
                    {said::CLOSE}
                </button>
            </div>
        </div>
    }
}

/// Everything away, also where the shelf can't be opened.
fn all_away(reports: SavedReports) -> impl IntoView {
    let sure = move || reports.sure.get();
    view! {
        <div class="keep-whole">
            <button
                type="button"
                id="shelf-erase"
                aria-expanded=move || sure().to_string()
                on:click=press(move || {
                    reports.sure.set(true);
                    focus("shelf-erase-not");
                })
            >
                {said::ERASE_ALL}
            </button>
            <div class="told" role="alert" hidden=flag(move || !sure())>
                <p>{text(move || if sure() { said::erase_sure(reports.shelved.look(Vec::len)) } else { String::new() })}</p>
                <div class="buttons">
                    <button
                        type="button"
                        id="shelf-erase-not"
                        on:click=press(move || {
                            reports.sure.set(false);
                            focus("shelf-erase");
                        })
                    >
                        {said::ERASE_NOT}
                    </button>
                    <button type="button" id="shelf-erase-yes" on:click=press(move || reports.erase_all())>
                        {said::ERASE_YES}
                    </button>
                </div>
            </div>
        </div>
    }
}
