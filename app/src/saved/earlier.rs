//! The earlier states: what each visit held last, and what was replaced in it, so that neither a
//! wrong file nor a fault loses a report. They stay on this device, only so many of them.

use std::future::Future;
use std::pin::Pin;
use std::time::Duration;

use emberloam_engine::season::day;
use js_sys::{Array, Date, Promise};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::{JsFuture, future_to_promise, spawn_local};

use crate::in_place::{Look, flag, focus, keyed, press, text, unfolds};
use crate::report::files::{hear, save as save_file};
use crate::saved::backup::Shelved;
use crate::saved::database::{self, Change, Place};
use crate::state::{Before, Page};
use crate::store::{self, Kept, Latest, SET_ASIDE, named, storage, visit};
use crate::words;
use crate::words::keeping as said;

/// How many states are kept.
const MOST: usize = 20;
/// How long they may be together, bytes.
const MOST_BYTES: usize = 20_000_000;
/// How long a change waits until it is kept, with those that follow it.
const PAUSE: Duration = Duration::from_millis(250);
/// How long the page waits for them before it begins, ms.
const PATIENCE: i32 = 800;

/// A state.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct State {
    /// Since when, ms.
    when: f64,
    /// Whether it is what a visit held last, and not what was replaced in it.
    last: bool,
    kept: Kept,
}

impl State {
    fn of(json: &str) -> Option<State> {
        serde_json::from_str(json).ok()
    }

    fn to_json(&self) -> String {
        // A struct of texts and numbers always has a JSON.
        serde_json::to_string(self).unwrap_or_default()
    }
}

/// The tab of a state, by the name it is kept under: a visit, and for what was replaced a number.
fn tab(id: &str) -> &str {
    id.split('-').next().unwrap_or_default()
}

/// All states that can be read, the newest first.
fn states(all: &[Shelved]) -> Vec<(String, State)> {
    let mut states: Vec<(String, State)> =
        all.iter().filter_map(|(id, json)| Some((id.clone(), State::of(json)?))).collect();
    states.sort_by(|(_, one), (_, other)| other.when.total_cmp(&one.when));
    states
}

/// What was held last beyond what was kept last, by this tab if it has kept anything.
fn newest(all: &[Shelved], latest: Option<&Latest>) -> Option<Kept> {
    let (when, mine) = latest.map_or((0.0, ""), |latest| (latest.when, &latest.visit));
    let mut states = states(all).into_iter();
    let found = states
        .find(|(id, state)| state.last && state.when > when && (mine.is_empty() || *id == mine));
    found.map(|(_, state)| state.kept)
}

/// Puts a replaced state beside those there are; what is too many or too long goes, the oldest
/// first, but never what this visit holds.
fn put_beside(all: &[Shelved], id: String, state: &State, mine: &str) -> Vec<Change> {
    let before = states(all);
    if before.iter().any(|(_, known)| !known.last && known.kept == state.kept) {
        return Vec::new();
    }
    let json = state.to_json();
    let length = |id: &str| all.iter().find(|(known, _)| known == id).map_or(0, |(_, j)| j.len());
    let mut bytes = json.len() + length(mine);
    let mut count = 2;
    let mut changes = Vec::new();
    for (known, _) in before.iter().filter(|(known, _)| known != mine) {
        bytes += length(known);
        count += 1;
        if count > MOST || bytes > MOST_BYTES {
            changes.push(Change::Remove(known.clone()));
        }
    }
    // What can't be read is no state.
    let lost = all.iter().filter(|(known, _)| before.iter().all(|(id, _)| id != known));
    changes.extend(lost.map(|(known, _)| Change::Remove(known.clone())));
    if json.len() <= MOST_BYTES {
        changes.push(Change::Put((id, json)));
    }
    changes
}

/// Those of a tab, and those that say what is to be forgotten.
fn of_tab(all: &[Shelved], mine: &str, gone: &[Kept]) -> Vec<String> {
    let states = states(all);
    let theirs = states.iter().filter(|(id, state)| {
        tab(id) == tab(mine) || gone.iter().any(|gone| gone.text == state.kept.text)
    });
    theirs.map(|(id, _)| id.clone()).collect()
}

/// What [`newer`] comes to.
pub type Newer = Pin<Box<dyn Future<Output = Option<Kept>>>>;

/// Looks for what the earlier states hold beyond what was kept last; not for long.
pub fn newer() -> Newer {
    Box::pin(async {
        let asked = future_to_promise(async {
            let all = database::all(Place::Earlier).await.unwrap_or_default();
            let found = newest(&all, store::latest().as_ref());
            Ok(found.map_or(JsValue::NULL, |kept| {
                JsValue::from_str(&serde_json::to_string(&kept).unwrap_or_default())
            }))
        });
        let late = Promise::new(&mut |done, _| {
            // Ignored: without a clock the answer is waited for.
            let _ = window().set_timeout_with_callback_and_timeout_and_arguments_0(&done, PATIENCE);
        });
        let first = JsFuture::from(Promise::race(&Array::of2(&asked, &late))).await.ok()?;
        serde_json::from_str(&first.as_string()?).ok()
    })
}

/// What is in sight of the earlier states.
#[derive(Clone, Copy)]
struct Earlier {
    page: Page,
    all: RwSignal<Vec<Shelved>>,
    /// What could not be read, as it was.
    aside: RwSignal<Option<String>>,
    /// A write is on its way, or waits for its turn.
    writing: StoredValue<bool>,
}

impl Earlier {
    fn read(self) {
        self.aside.set(aside());
        spawn_local(async move {
            if let Ok(all) = database::all(Place::Earlier).await {
                self.all.set(all);
            }
        });
    }

    /// Keeps what the page holds as what this visit held last.
    fn keep(self) {
        let (mine, before) = visit();
        let kept = untrack(|| self.page.kept());
        let mut changes = vec![Change::Remove(before)];
        if !kept.is_blank() {
            let state = State { when: Date::now(), last: true, kept };
            changes.push(Change::Put((mine, state.to_json())));
        } else if self.page.erasings() == 0 && self.all.with_untracked(|all| !all.is_empty()) {
            changes.push(Change::Remove(mine));
        } else {
            // An empty page makes no database anew.
            return self.writing.set_value(false);
        }
        spawn_local(async move {
            // Ignored: the state is kept in a second place, which says when it can't be.
            let _ = database::write(Place::Earlier, changes).await;
            self.writing.set_value(false);
        });
    }

    fn put_by(self, all: Vec<Kept>) {
        spawn_local(async move {
            for kept in all {
                let state = State { when: Date::now(), last: false, kept };
                let mine = visit().0;
                let id = format!("{mine}-{}", state.when);
                // Ignored: the page itself holds the last one, and offers it.
                let _ = database::change(Place::Earlier, move |there| {
                    (put_beside(there, id, &state, &mine), ())
                })
                .await;
            }
            self.read();
        });
    }

    /// Forgets this tab's states, and removes the database where none are left.
    fn forget(self, gone: Vec<Kept>) {
        spawn_local(async move {
            let left = database::change(Place::Earlier, move |there| {
                let gone = of_tab(there, &visit().0, &gone);
                let left = there.len() - gone.len();
                (gone.into_iter().map(Change::Remove).collect(), left)
            })
            .await;
            if left != Ok(0) {
                return self.read();
            }
            // Ignored: it is empty.
            let _ = database::erase(Place::Earlier).await;
            self.all.set(Vec::new());
        });
    }

    fn remove(self, id: String) {
        spawn_local(async move {
            // Ignored: then it is still in the list.
            let _ = database::write(Place::Earlier, vec![Change::Remove(id)]).await;
            self.read();
            focus("earlier-title");
        });
    }
}

/// What was kept and could not be read, as it was.
fn aside() -> Option<String> {
    storage()?.get_item(&named(SET_ASIDE)).ok().flatten()
}

/// Keeps the earlier states, and shows them where there are any.
pub fn earlier(page: Page) -> AnyView {
    let earlier = Earlier {
        page,
        all: RwSignal::new(Vec::new()),
        aside: RwSignal::new(None),
        writing: StoredValue::new(false),
    };
    earlier.read();
    Effect::new(move |first: Option<()>| {
        let blank = page.kept().is_blank();
        if first.is_none() && blank || earlier.writing.get_value() {
            return;
        }
        earlier.writing.set_value(true);
        set_timeout(move || earlier.keep(), PAUSE);
    });
    Effect::new(move |_| {
        let all = page.replaced.get();
        if !all.is_empty() {
            page.replaced.set(Vec::new());
            earlier.put_by(all);
        }
    });
    hear(
        "emberloam:erased",
        Box::new(move |_| {
            let gone = page.before.with_untracked(|before| before.clone().map(|b| b.kept));
            let now = untrack(|| page.kept());
            earlier.forget(
                [Some(now), gone].into_iter().flatten().filter(|k| !k.text.is_empty()).collect(),
            );
        }),
    );
    offer_the_last(page);
    view(earlier)
}

/// On an empty page, where nothing was kept last: a fault may have come before the browser kept it.
fn offer_the_last(page: Page) {
    if store::latest().is_some() {
        return;
    }
    spawn_local(async move {
        let all = database::all(Place::Earlier).await.unwrap_or_default();
        let blank =
            untrack(|| page.kept()).is_blank() && page.before.with_untracked(Option::is_none);
        if let Some(kept) = newest(&all, None).filter(|_| blank && page.erasings() == 0) {
            let origin = page.origin.get_untracked();
            page.before.set(Some(Before { kept, origin, said: words::FOUND }));
        }
    });
}

/// One in the list: its id, its first line, when it was, and its JSON as a file.
#[derive(Clone, Debug, PartialEq)]
struct Item {
    id: String,
    line: String,
    when: String,
    kept: Kept,
}

fn items(all: &[Shelved], now: &Kept) -> Vec<Item> {
    let mut items: Vec<Item> = Vec::new();
    for (id, State { when, kept, .. }) in states(all) {
        let known = kept == *now || items.iter().any(|item| item.kept == kept);
        let line = kept.text.lines().map(str::trim).find(|line| !line.is_empty());
        let line = line.unwrap_or_default().chars().take(60).collect();
        if !known && !kept.text.is_empty() {
            items.push(Item { id, line, when: clock(when), kept });
        }
    }
    items
}

/// The day and the time of a moment, as its reader's clock shows it.
fn clock(when: f64) -> String {
    let date = Date::new(&when.into());
    let two = |number: u32| format!("{number:02}");
    let iso = [two(date.get_full_year()), two(date.get_month() + 1), two(date.get_date())];
    let day = day::parse(&iso.join("-")).map_or_else(String::new, day::spoken);
    format!("{day}, {}:{}", two(date.get_hours()), two(date.get_minutes()))
}

fn view(earlier: Earlier) -> AnyView {
    let page = earlier.page;
    let open = RwSignal::new(false);
    let all = move || {
        // Only what is in sight follows every change of the page.
        let now = if open.get() { page.kept() } else { untrack(|| page.kept()) };
        earlier.all.look(|all| items(all, &now))
    };
    let list = Memo::new(move |_| all());
    let none = move || list.look(Vec::is_empty) && earlier.aside.look(Option::is_none);
    let toggled = unfolds(move |now| {
        open.set(now);
        if now {
            earlier.read();
        }
    });
    view! {
        <details id="earlier" class="fold" hidden=flag(none) on:toggle=toggled>
            <summary id="earlier-title">{said::EARLIER}</summary>
            <p class="soft">{said::EARLIER_INTRO}</p>
            <ul class="plain">
                {keyed(
                    move || list.get(),
                    |item: &Item| item.id.clone(),
                    move |item| view! { {one(earlier, item)} },
                )}
            </ul>
            {move || earlier.aside.get().map(|json| put_aside(earlier, json))}
        </details>
    }
    .into_any()
}

fn one(earlier: Earlier, item: Memo<Item>) -> impl IntoView {
    let page = earlier.page;
    let button = move |word: &'static str, does: Box<dyn Fn()>| {
        view! {
            <button
                type="button"
                class="quiet"
                aria-label=text(move || item.look(|item| said::does_to(word, &item.line)))
                on:click=press(does)
            >
                {word}
            </button>
        }
    };
    let save = move || {
        let kept = item.with_untracked(|item| item.kept.clone());
        if let Some(json) = (store::PENS.to_saved)(&kept) {
            save_file("earlier.emberloam.json", "application/json", &json);
        }
    };
    view! {
        <li class="entry">
            <p>
                <span translate="no">{text(move || item.look(|item| item.line.clone()))}</span>
                " "
                <span class="soft">{text(move || item.look(|item| item.when.clone()))}</span>
            </p>
            <div class="buttons">
                {button(
                    said::OPEN,
                    Box::new(move || {
                        page.restore(item.with_untracked(|item| item.kept.clone()));
                        page.origin.update(|origin| origin.opened = None);
                        focus("answer-title");
                    }),
                )} {button(said::SAVE_FILE, Box::new(save))}
                {button(
                    said::DELETE,
                    Box::new(move || earlier.remove(item.with_untracked(|item| item.id.clone()))),
                )}
            </div>
        </li>
    }
}

/// What could not be read, to be seen, saved or deleted.
fn put_aside(earlier: Earlier, json: String) -> AnyView {
    let shown = json.clone();
    view! {
        <div id="put-aside">
            <p>{said::PUT_ASIDE}</p>
            <textarea rows="4" readonly aria-label=said::RAW translate="no" prop:value=shown></textarea>
            <div class="buttons">
                <button
                    type="button"
                    id="put-aside-save"
                    on:click=press(move || save_file("put-aside.txt", "text/plain", &json))
                >
                    {said::SAVE_FILE}
                </button>
                <button
                    type="button"
                    id="put-aside-delete"
                    on:click=press(move || {
                        if let Some(storage) = storage() {
                            // Ignored: then it is still there to be seen.
                            let _ = storage.remove_item(&named(SET_ASIDE));
                        }
                        earlier.read();
                        focus("report-text");
                    })
                >
                    {said::DELETE}
                </button>
            </div>
        </div>
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kept(text: &str) -> Kept {
        Kept { text: text.into(), ..Kept::default() }
    }

    fn state(when: f64, last: bool, text: &str) -> State {
        State { when, last, kept: kept(text) }
    }

    fn shelved(id: &str, state: &State) -> Shelved {
        (id.into(), state.to_json())
    }

    fn made(all: &mut Vec<Shelved>, changes: Vec<Change>) {
        for change in changes {
            match change {
                Change::Put(new) => {
                    all.retain(|(id, _)| *id != new.0);
                    all.push(new);
                }
                Change::Remove(gone) => all.retain(|(id, _)| *id != gone),
            }
        }
    }

    #[test]
    fn what_was_held_last_is_found_where_it_is_newer_and_of_this_tab() {
        let all = [
            shelved("a-1", &state(10.0, true, "one")),
            shelved("b-1", &state(20.0, true, "two")),
            shelved("b-1-15", &state(30.0, false, "replaced")),
        ];
        let latest = |when, visit: &str| Latest { when, visit: visit.into(), ..Latest::default() };
        assert_eq!(newest(&all, None), Some(kept("two")));
        assert_eq!(newest(&all, Some(&latest(15.0, ""))), Some(kept("two")));
        assert_eq!(newest(&all, Some(&latest(25.0, ""))), None);
        assert_eq!(newest(&all, Some(&latest(5.0, "a-1"))), Some(kept("one")));
        assert_eq!(newest(&all, Some(&latest(10.0, "a-1"))), None);
    }

    #[test]
    fn only_so_many_are_kept_the_newest_and_what_this_visit_holds() {
        let mut all = vec![shelved("me-1", &state(0.0, true, "mine")), ("x".into(), "{".into())];
        for at in 1..60 {
            let new = state(f64::from(at), false, &format!("text {at}"));
            let changes = put_beside(&all, format!("me-1-{at}"), &new, "me-1");
            made(&mut all, changes);
        }
        assert_eq!(all.len(), MOST);
        let texts: Vec<String> = states(&all).into_iter().map(|(_, s)| s.kept.text).collect();
        assert_eq!((texts[0].as_str(), texts[MOST - 1].as_str()), ("text 59", "mine"));
        // The same once more is no other state.
        assert!(
            put_beside(&all, "me-1-60".into(), &state(60.0, false, "text 59"), "me-1").is_empty()
        );
    }

    #[test]
    fn they_are_no_longer_together_than_they_may_be() {
        let mut all = Vec::new();
        for at in 1..9 {
            let long = state(f64::from(at), false, &format!("{at}").repeat(6_000_000));
            let changes = put_beside(&all, format!("me-1-{at}"), &long, "me-1");
            made(&mut all, changes);
        }
        assert!(all.iter().map(|(_, json)| json.len()).sum::<usize>() <= MOST_BYTES);
        assert_eq!(all.len(), 3);
        let far_too_long = state(9.0, false, &"x".repeat(MOST_BYTES));
        assert!(
            put_beside(&[], "me-1-9".into(), &far_too_long, "me-1").is_empty(),
            "one that leaves no room was kept"
        );
    }

    #[test]
    fn clearing_forgets_the_tab_and_the_same_report_elsewhere() {
        let all = [
            shelved("a-1", &state(1.0, true, "one")),
            shelved("a-2-9", &state(2.0, false, "two")),
            shelved("b-1", &state(3.0, true, "one")),
            shelved("c-1", &state(4.0, true, "three")),
        ];
        let mut gone = of_tab(&all, "a-3", &[kept("one")]);
        gone.sort();
        assert_eq!(gone, ["a-1", "a-2-9", "b-1"]);
    }
}
