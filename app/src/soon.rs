//! What lies below the answer is worked out after the answer has been drawn,
//! one part at a time: a change of the pen is answered within a frame, and the
//! page stays awake while the rest follows.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::sync::Arc;
use std::time::Duration;

use emberloam_engine::Case;
use leptos::prelude::*;

use crate::state::Page;

/// A part still to be worked out.
struct Job {
    /// Which part it is; of two for one part only the newer is done.
    part: usize,
    work: Box<dyn FnOnce()>,
}

thread_local! {
    static WAITING: RefCell<VecDeque<Job>> = const { RefCell::new(VecDeque::new()) };
    static PARTS: Cell<usize> = const { Cell::new(0) };
}

/// Something of the case, worked out anew soon after any answer has changed;
/// the default until then, and without a report.
pub fn soon<T>(page: Page, of: impl Fn(&Case) -> T + Send + Sync + 'static) -> RwSignal<T>
where
    T: Clone + Default + PartialEq + Send + Sync + 'static,
{
    soon_of(page, move || page.case().map(|case| of(&case)).unwrap_or_default())
}

/// Something of the page's state, followed soon after any answer has changed:
/// for what is drawn.
pub fn soon_of<T>(page: Page, of: impl Fn() -> T + Send + Sync + 'static) -> RwSignal<T>
where
    T: Clone + Default + PartialEq + Send + Sync + 'static,
{
    let found = RwSignal::new(T::default());
    let of = Arc::new(of);
    each_change(
        page,
        Box::new(move || {
            let of = of.clone();
            Box::new(move || {
                let now = of();
                if found.with_untracked(|before| *before != now) {
                    found.set(now);
                }
            })
        }),
    );
    found
}

/// Puts a part's work into the queue after each change.
fn each_change(page: Page, job: Box<dyn Fn() -> Box<dyn FnOnce()>>) {
    let part = PARTS.replace(PARTS.get() + 1);
    Effect::new(move |_: Option<()>| {
        page.answers.track();
        page.report.track();
        WAITING.with_borrow_mut(|waiting| {
            let idle = waiting.is_empty();
            waiting.retain(|waits| waits.part != part);
            waiting.push_back(Job { part, work: job() });
            if idle {
                request_animation_frame(|| next(Duration::ZERO));
            }
        });
    });
}

/// Does one part, then leaves the page a turn before the next.
fn next(after: Duration) {
    set_timeout(
        || {
            let Some(job) = WAITING.with_borrow_mut(VecDeque::pop_front) else { return };
            untrack(job.work);
            if !WAITING.with_borrow(VecDeque::is_empty) {
                next(Duration::ZERO);
            }
        },
        after,
    );
}
