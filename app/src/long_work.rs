//! Long work, a slice at a time: the page stays awake, shows how far it is, and
//! it can be stopped. Short work is done before any of this is seen.

use std::cell::{Cell, RefCell};
use std::time::Duration;

use leptos::prelude::*;

use crate::living::{Look, flag, focus, press, text};
use crate::state::Page;
use crate::words;

/// How long a slice may take, ms.
pub const SLICE: f64 = 40.0;

/// What is under way.
pub struct Work {
    /// What a reader calls it.
    pub name: &'static str,
    /// What is said when it is done; nothing where the page says so itself.
    pub said: &'static str,
    /// In how many parts it is counted.
    pub of: usize,
    /// Does a slice; gives how many parts are done by then.
    pub slice: Box<dyn FnMut() -> usize>,
    /// Undoes what is seen of it, when it is stopped.
    pub undo: Box<dyn FnOnce()>,
    /// The control that it began at.
    pub from: &'static str,
}

/// What is shown of it: its name, the parts done, and all of them.
type Shown = (&'static str, usize, usize);

thread_local! {
    static UNDER_WAY: RefCell<Option<Work>> = const { RefCell::new(None) };
    static SHOWN: Cell<Option<RwSignal<Option<Shown>>>> = const { Cell::new(None) };
    static AWAKE: Cell<bool> = const { Cell::new(false) };
}

/// Begins a work, in place of one that is under way.
pub fn begin(page: Page, work: Work) {
    UNDER_WAY.set(Some(work));
    if !AWAKE.get() {
        go_on(page);
    }
}

fn show(shown: Option<Shown>) {
    if let Some(signal) = SHOWN.get() {
        signal.set(shown);
    }
}

/// One slice.
fn go_on(page: Page) {
    AWAKE.set(false);
    let Some(mut work) = UNDER_WAY.take() else { return };
    let done = untrack(|| (work.slice)());
    if done >= work.of {
        let was_shown = is_shown();
        end(work.from);
        if was_shown && !work.said.is_empty() {
            page.said.set(work.said.into());
        }
        return;
    }
    let was_shown = is_shown();
    show(Some((work.name, done, work.of)));
    let name = work.name;
    UNDER_WAY.set(Some(work));
    AWAKE.set(true);
    let next = move || set_timeout(move || go_on(page), Duration::ZERO);
    if was_shown {
        next();
    } else {
        // It is seen before it goes on. Frames alone would stop in a hidden tab.
        page.said.set(name.into());
        request_animation_frame(next);
    }
}

fn is_shown() -> bool {
    SHOWN.get().is_some_and(|shown| shown.with_untracked(Option::is_some))
}

/// Hides it; who stood at its button is led back.
fn end(from: &'static str) {
    let at_button = document().active_element().is_some_and(|at| at.id() == "stop-work");
    show(None);
    if at_button {
        focus(from);
    }
}

fn stop(page: Page) {
    if let Some(work) = UNDER_WAY.take() {
        end(work.from);
        (work.undo)();
        page.said.set(words::STOPPED.into());
    }
}

/// How far it is, and the button that stops it.
pub fn long_work(page: Page) -> AnyView {
    let shown = RwSignal::new(None::<Shown>);
    SHOWN.set(Some(shown));
    let of = move |take: fn(Shown) -> usize| {
        shown.get().map_or_else(String::new, |s| take(s).to_string())
    };
    view! {
        <div id="work" hidden=flag(move || shown.look(Option::is_none))>
            <label class="field">
                <span class="field-name">{text(move || shown.get().map_or("", |s| s.0))}</span>
                <progress
                    value=text(move || of(|(_, done, _)| done))
                    max=text(move || of(|(_, _, all)| all))
                ></progress>
            </label>
            <button type="button" id="stop-work" on:click=press(move || stop(page))>
                {words::CANCEL}
            </button>
        </div>
    }
    .into_any()
}
