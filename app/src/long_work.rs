//! Long work, a slice at a time: the page stays awake, shows how far it is, and
//! it can be stopped. What is done within its first slice is not shown.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::time::Duration;

use leptos::prelude::*;

use crate::in_place::{Look, flag, focus, press, text};
use crate::state::Page;
use crate::words;

/// How long a slice may take, ms.
pub const SLICE: f64 = 40.0;

/// How far a work is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Done {
    /// The parts done.
    pub parts: usize,
    /// All parts.
    pub of: usize,
}

/// What is to be done.
pub struct Work {
    /// What a reader calls it.
    pub name: &'static str,
    /// What is said when it is done; nothing where the page says so itself.
    pub said: &'static str,
    /// Does a slice; gives how far it is by then. Nothing of nothing: there is
    /// nothing to do any more.
    pub slice: Box<dyn FnMut() -> Done>,
    /// Undoes what is seen of it, when it is stopped.
    pub undo: Box<dyn FnOnce()>,
    /// The control that it began at; a newer work from there takes its place.
    pub from: &'static str,
}

/// What is shown of it: its name, and how far it is.
type Shown = (&'static str, Done);

thread_local! {
    /// The works in the order they came; the first is under way.
    static WORKS: RefCell<VecDeque<Work>> = const { RefCell::new(VecDeque::new()) };
    static SHOWN: Cell<Option<RwSignal<Option<Shown>>>> = const { Cell::new(None) };
    static AWAKE: Cell<bool> = const { Cell::new(false) };
}

/// Begins a work, or puts it behind those under way.
pub fn begin(page: Page, work: Work) {
    WORKS.with_borrow_mut(|works| match works.iter_mut().find(|old| old.from == work.from) {
        Some(old) => *old = work,
        None => works.push_back(work),
    });
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
    let Some(mut work) = WORKS.with_borrow_mut(VecDeque::pop_front) else { return };
    let done = untrack(|| (work.slice)());
    if done.parts >= done.of {
        let was_shown = name_shown() == Some(work.name);
        end(work.from);
        if was_shown {
            let nothing_done = done.of == 0;
            page.said.set(if nothing_done { String::new() } else { work.said.into() });
        }
        if !WORKS.with_borrow(VecDeque::is_empty) {
            later(page, false);
        }
        return;
    }
    let name = work.name;
    let is_new = name_shown() != Some(name);
    show(Some((name, done)));
    WORKS.with_borrow_mut(|works| works.push_front(work));
    if is_new {
        page.said.set(name.into());
    }
    later(page, is_new);
}

/// Goes on in a turn; first after a frame, so that it is seen.
fn later(page: Page, after_frame: bool) {
    AWAKE.set(true);
    // A hidden tab has no frames: there a pause must do.
    let hidden = document().hidden();
    let next = move || set_timeout(move || go_on(page), Duration::ZERO);
    if after_frame && !hidden { request_animation_frame(next) } else { next() }
}

fn name_shown() -> Option<&'static str> {
    SHOWN.get()?.with_untracked(|shown| shown.map(|(name, _)| name))
}

/// Hides it; who stood at its button is led back.
fn end(from: &'static str) {
    let at_button = document().active_element().is_some_and(|at| at.id() == "stop-work");
    show(None);
    if at_button {
        focus(from);
    }
}

/// Stops what is under way; what waits behind it goes on.
fn stop(page: Page) {
    if let Some(work) = WORKS.with_borrow_mut(VecDeque::pop_front) {
        end(work.from);
        (work.undo)();
        page.said.set(words::STOPPED.into());
    }
}

/// How far it is, and the button that stops it.
pub fn long_work(page: Page) -> AnyView {
    let shown = RwSignal::new(None::<Shown>);
    SHOWN.set(Some(shown));
    let of = move |take: fn(Done) -> usize| {
        shown.get().map_or_else(String::new, |(_, done)| take(done).to_string())
    };
    view! {
        <div id="work" hidden=flag(move || shown.look(Option::is_none))>
            <label class="field">
                <span class="field-name">{text(move || shown.get().map_or("", |s| s.0))}</span>
                <progress
                    value=text(move || of(|done| done.parts))
                    max=text(move || of(|done| done.of))
                ></progress>
            </label>
            <button type="button" id="stop-work" on:click=press(move || stop(page))>
                {words::CANCEL}
            </button>
        </div>
    }
    .into_any()
}
