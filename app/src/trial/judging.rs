//! The plots judged, a slice at a time where there are many: the page stays awake, shows how far
//! it is, and it can be stopped.

use std::time::Duration;

use emberloam_engine::trial::{Judging, Trial};
use leptos::prelude::*;

use crate::in_place::{flag, press, text};
use crate::long_work::SLICE;
use crate::trial::view::AtWork;
use crate::words;
use crate::words::trial as trial_words;

/// A longer table waits until nothing is typed for a moment, bytes and ms.
const LONG: usize = 30_000;
const PAUSE: Duration = Duration::from_millis(300);

/// How far it is, and the turn that it belongs to: a newer one ends it.
#[derive(Clone, Copy)]
pub struct Progress {
    turn: StoredValue<u32>,
    shown: RwSignal<Option<(usize, usize)>>,
}

impl Progress {
    /// Nothing under way.
    pub fn new() -> Progress {
        Progress { turn: StoredValue::new(0), shown: RwSignal::new(None) }
    }

    /// Ends what is under way.
    fn next(self) -> u32 {
        self.turn.update_value(|turn| *turn += 1);
        self.shown.set(None);
        self.turn.get_value()
    }
}

/// Judges a trial, in the place of what was judged before.
pub fn judge(at_work: AtWork, asked: Trial) {
    let turn = at_work.progress.next();
    if asked.text.trim().is_empty() {
        return at_work.found.set(None);
    }
    let is_long = asked.text.len() + asked.later.as_ref().map_or(0, String::len) > LONG;
    let begin = move || {
        if at_work.progress.turn.get_value() != turn {
            return;
        }
        match Judging::of(&asked) {
            Ok(judging) if is_long => {
                set_timeout(move || go_on(at_work, judging, turn), Duration::ZERO);
            }
            Ok(judging) => go_on(at_work, judging, turn),
            Err(refused) => at_work.found.set(Some(Err(refused))),
        }
    };
    if is_long { set_timeout(begin, PAUSE) } else { begin() }
}

/// One slice.
fn go_on(at_work: AtWork, mut judging: Judging, turn: u32) {
    let progress = at_work.progress;
    if progress.turn.get_value() != turn {
        return;
    }
    let begun = js_sys::Date::now();
    while judging.step() {
        if js_sys::Date::now() - begun >= SLICE {
            progress.shown.set(Some(judging.done()));
            return set_timeout(move || go_on(at_work, judging, turn), Duration::ZERO);
        }
    }
    progress.shown.set(None);
    at_work.found.set(Some(Ok(judging.told())));
}

/// How far it is, and the button that stops it.
pub fn progress(at_work: AtWork) -> AnyView {
    let shown = at_work.progress.shown;
    let of = move |take: fn((usize, usize)) -> usize| {
        text(move || shown.get().map_or_else(String::new, |done| take(done).to_string()))
    };
    view! {
        <div id="trial-progress" hidden=flag(move || shown.get().is_none())>
            <label class="field">
                <span class="field-name">{trial_words::JUDGING}</span>
                <progress value=of(|(done, _)| done) max=of(|(_, all)| all)></progress>
            </label>
            <button
                type="button"
                id="trial-stop"
                on:click=press(move || {
                    at_work.progress.next();
                    at_work.found.set(None);
                    at_work.told.set(trial_words::STOPPED.into());
                })
            >
                {words::CANCEL}
            </button>
        </div>
    }
    .into_any()
}
