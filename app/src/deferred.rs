//! What lies below the answer is worked out after the answer has been drawn, a
//! little at a time: a change of the pen is answered within a frame, and the
//! page stays awake while the rest follows.
//!
//! One effect follows the answers for all parts, and a part wakes what it shows
//! only when that has changed: an effect for each would cost more than the work.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::rc::Rc;
use std::time::Duration;

use emberloam_engine::{Plan, Survey};
use leptos::prelude::*;

use crate::state::Page;

/// How long the parts may work before the page gets a turn, ms.
const TURN: f64 = 4.0;

/// What a part has done when it was asked.
#[derive(Clone, Copy, PartialEq)]
pub enum Done {
    /// Nothing has changed.
    Same,
    /// What it shows has changed, and is drawn as soon as this turn ends.
    Changed,
    /// It is not finished, and wants to be asked again.
    NotYet,
}

/// A part's work; it is told whether it begins anew.
type Work = Rc<dyn Fn(bool) -> Done>;

/// What a part waits for.
#[derive(Clone, Copy, PartialEq)]
enum Waits {
    Nothing,
    ToBegin,
    ToGoOn,
}

struct Part {
    number: usize,
    /// Whether it is asked at once when another sample is chosen or comes.
    with_the_sample: bool,
    waits: Waits,
    work: Work,
}

thread_local! {
    static PARTS: RefCell<Vec<Part>> = const { RefCell::new(Vec::new()) };
    static NUMBERS: Cell<usize> = const { Cell::new(0) };
    /// Whether a turn is on its way.
    static AWAKE: Cell<bool> = const { Cell::new(false) };
    /// Counts the samples that were chosen or came: what was said of another must not stay.
    static SAMPLES: Cell<u32> = const { Cell::new(0) };
}

/// Asks all parts anew after every change, for as long as the page lives.
pub fn follow(page: Page) {
    Effect::new(move |before: Option<(usize, String)>| {
        page.follow_measures();
        page.report.track();
        PARTS.with_borrow_mut(|parts| {
            parts.iter_mut().for_each(|part| part.waits = Waits::ToBegin);
        });
        let sample = (page.chosen(), page.of_sample(|sample| sample.name.clone()));
        if before.as_ref() != Some(&sample) {
            SAMPLES.set(SAMPLES.get() + 1);
            page.let_go_of_old_parts();
            follow_the_sample();
        }
        wake();
        sample
    });
}

/// Asks at once those parts that must not show another bed under this one's name.
fn follow_the_sample() {
    let works: Vec<Work> = PARTS.with_borrow_mut(|parts| {
        let parts = parts.iter_mut().filter(|part| part.with_the_sample);
        parts
            .map(|part| {
                part.waits = Waits::Nothing;
                part.work.clone()
            })
            .collect()
    });
    for work in works {
        untrack(|| work(true));
    }
}

/// Something of the chosen sample and its plan, worked out anew soon after any
/// answer has changed, until then as it was; the default before the first time,
/// and without a report.
pub fn soon<T>(page: Page, of: impl Fn(&Survey<'_>, &Plan) -> T + 'static) -> RwSignal<T>
where
    T: Default + PartialEq + Send + Sync + 'static,
{
    soon_of(move || {
        let survey = page.survey.get();
        survey.map(|survey| page.of_plan(|plan| of(&survey, plan))).unwrap_or_default()
    })
}

/// Something of the page's state, followed soon after any answer has changed:
/// for what is drawn.
pub fn soon_of<T>(of: impl Fn() -> T + 'static) -> RwSignal<T>
where
    T: Default + PartialEq + Send + Sync + 'static,
{
    soon_after(Box::new(move |_| of()))
}

/// The same, but at once when another sample is chosen or comes.
pub fn with_the_sample<T>(of: impl Fn() -> T + 'static) -> RwSignal<T>
where
    T: Default + PartialEq + Send + Sync + 'static,
{
    let found = RwSignal::new(T::default());
    add_part(Rc::new(move |_| put(found, of())), true);
    found
}

/// The same, for what depends on how it was before.
pub fn soon_after<T>(of: Box<dyn Fn(&T) -> T>) -> RwSignal<T>
where
    T: Default + PartialEq + Send + Sync + 'static,
{
    let found = RwSignal::new(T::default());
    part(Rc::new(move |_| {
        let now = of(&found.read_untracked());
        put(found, now)
    }));
    found
}

/// The same, with what there is now to begin with: for what answers for itself
/// while the rest follows, as a control does.
pub fn followed<T>(of: impl Fn() -> T + 'static) -> RwSignal<T>
where
    T: PartialEq + Send + Sync + 'static,
{
    let found = RwSignal::new(untrack(&of));
    part(Rc::new(move |_| put(found, of())));
    found
}

/// Something of the chosen sample that takes long: `step` is asked until it is
/// done, with turns for the page in between.
pub fn step_by_step<S: 'static, T>(
    page: Page,
    begin: fn(&Survey<'_>) -> Option<S>,
    step: fn(S) -> Result<T, S>,
) -> RwSignal<Option<T>>
where
    T: PartialEq + Send + Sync + 'static,
{
    let found = RwSignal::new(None);
    let begun = RefCell::new(None::<S>);
    let of_sample = Cell::new(0);
    part(Rc::new(move |anew| {
        if of_sample.replace(SAMPLES.get()) != SAMPLES.get() {
            put(found, None);
        }
        let now =
            if anew { page.survey.get().and_then(|survey| begin(&survey)) } else { begun.take() };
        match now.map(step) {
            None => put(found, None),
            Some(Ok(whole)) => put(found, Some(whole)),
            Some(Err(more)) => {
                begun.replace(Some(more));
                Done::NotYet
            }
        }
    }));
    found
}

fn put<T: PartialEq + Send + Sync + 'static>(found: RwSignal<T>, now: T) -> Done {
    if found.with_untracked(|before| *before == now) {
        return Done::Same;
    }
    found.set(now);
    Done::Changed
}

fn part(work: Work) {
    add_part(work, false);
}

/// Adds a part until the view it is made for goes.
fn add_part(work: Work, with_the_sample: bool) {
    let number = NUMBERS.replace(NUMBERS.get() + 1);
    let part = Part { number, with_the_sample, waits: Waits::ToBegin, work };
    PARTS.with_borrow_mut(|parts| parts.push(part));
    on_cleanup(move || PARTS.with_borrow_mut(|parts| parts.retain(|part| part.number != number)));
    wake();
}

thread_local! {
    /// What is to be made, a turn each.
    static TO_MAKE: RefCell<VecDeque<Box<dyn FnOnce()>>> = const { RefCell::new(VecDeque::new()) };
}

/// Does this in a turn of its own, after what was to be done before it.
pub fn in_turn(make: impl FnOnce() + 'static) {
    let owner = Owner::current();
    boxed_in_turn(Box::new(move || match owner {
        Some(owner) => owner.with(make),
        None => make(),
    }));
}

fn boxed_in_turn(make: Box<dyn FnOnce()>) {
    let is_first = TO_MAKE.with_borrow_mut(|all| {
        all.push_back(make);
        all.len() == 1
    });
    if is_first {
        set_timeout(make_next, Duration::ZERO);
    }
}

fn make_next() {
    let next = TO_MAKE.with_borrow_mut(VecDeque::pop_front);
    // What is made may itself ask for a turn; then it has set one.
    let others = TO_MAKE.with_borrow(|all| !all.is_empty());
    if let Some(make) = next {
        make();
    }
    if others {
        set_timeout(make_next, Duration::ZERO);
    }
}

/// A part of the page that is made in a turn of its own; its place is empty until then.
pub fn placed<V: IntoAny>(make: impl Fn() -> V + Send + 'static) -> AnyView {
    boxed_placed(Box::new(move || make().into_any()))
}

fn boxed_placed(make: Box<dyn Fn() -> AnyView + Send>) -> AnyView {
    let turn = RwSignal::new(false);
    in_turn(move || {
        // Ignored: the place may be gone by then.
        let _ = turn.try_set(true);
    });
    // Made once: what it reads while it is made must not make it again.
    let view = move || turn.get().then(|| untrack(&make));
    view.into_any()
}

/// Begins after the next frame, if nobody is at work yet.
fn wake() {
    if !AWAKE.replace(true) {
        request_animation_frame(|| set_timeout(turn, Duration::ZERO));
    }
}

/// Asks parts until one has something to draw or the time is up, then leaves
/// the page a turn.
fn turn() {
    let begun = js_sys::Date::now();
    loop {
        let next = PARTS.with_borrow_mut(|parts| {
            let part = parts.iter_mut().find(|part| part.waits != Waits::Nothing)?;
            let anew = part.waits == Waits::ToBegin;
            part.waits = Waits::Nothing;
            Some((part.number, anew, part.work.clone()))
        });
        let Some((number, anew, work)) = next else { break AWAKE.set(false) };
        let done = untrack(|| work(anew));
        if done == Done::NotYet {
            PARTS.with_borrow_mut(|parts| {
                let part = parts.iter_mut().find(|part| part.number == number);
                if let Some(part) = part.filter(|part| part.waits == Waits::Nothing) {
                    part.waits = Waits::ToGoOn;
                }
            });
        }
        if done == Done::Changed || js_sys::Date::now() - begun >= TURN {
            break set_timeout(turn, Duration::ZERO);
        }
    }
}
