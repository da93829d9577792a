//! A list of the beds with the verdict of each in a word or two. The verdicts
//! are worked out one in a turn of the page: a plan takes some milliseconds.

use std::cell::RefCell;
use std::rc::Rc;
use std::time::Duration;

use emberloam_engine::{Case, summary};
use leptos::prelude::*;

use crate::in_place::{Look, changed, flag, keyed, text};
use crate::state::Page;
use crate::words;

/// More beds than these are looked for by name instead.
pub const MOST: usize = 24;

/// A bed: its place in the report, its name, its verdict once it is known, whether it is chosen.
type Bed = (usize, String, &'static str, bool);

/// The list; nothing where there are too many to look through.
pub fn list(page: Page) -> impl IntoView {
    let verdicts = RwSignal::new(Vec::<&'static str>::new());
    let round = StoredValue::new(0_u32);
    // Which bed is looked at changes none of them.
    let answers = Memo::new(move |_| Case { sample: 0, ..page.answers.get() });
    Effect::new(move |_| {
        page.report.track();
        answers.track();
        round.update_value(|round| *round += 1);
        let count = untrack(|| page.count());
        if (2..=MOST).contains(&count) {
            fill(page, verdicts, round, round.get_value(), count);
        }
    });
    let beds = move || {
        let chosen = page.chosen();
        page.report.look(|report| {
            let samples = report.as_ref().map_or(&[][..], |report| &report.samples);
            if samples.len() > MOST {
                return Vec::new();
            }
            verdicts.look(|verdicts| {
                let bed = |(at, name): (usize, &String)| {
                    (at, name.clone(), verdicts.get(at).copied().unwrap_or_default(), at == chosen)
                };
                samples.iter().map(|sample| &sample.name).enumerate().map(bed).collect()
            })
        })
    };
    view! {
        <div role="radiogroup" aria-label=words::BEDS hidden=flag(move || page.count() > MOST)>
            <ul class="bed-list plain">
                {keyed(beds, |(at, ..): &Bed| at.to_string(), move |item| one(page, item))}
            </ul>
        </div>
    }
}

/// Works the verdicts out, one in each turn of the page; a newer round ends an older one.
fn fill(
    page: Page,
    verdicts: RwSignal<Vec<&'static str>>,
    round: StoredValue<u32>,
    mine: u32,
    count: usize,
) {
    fn turn(step: Rc<dyn Fn() -> bool>) {
        set_timeout(
            move || {
                if step() {
                    turn(step);
                }
            },
            Duration::ZERO,
        );
    }
    let found = RefCell::new(Vec::with_capacity(count));
    turn(Rc::new(move || {
        if round.get_value() != mine {
            return false;
        }
        let mut found = found.borrow_mut();
        let at = found.len();
        let outcome = untrack(|| page.outcome_of(at..at + 1));
        found.push(outcome.map_or("", |outcome| summary::verdict_in_words(&outcome.plan)));
        let more = found.len() < count;
        if !more {
            verdicts.set(std::mem::take(&mut *found));
        }
        more
    }));
}

fn one(page: Page, item: Memo<Bed>) -> impl IntoView {
    let (at, name, ..) = item.get_untracked();
    view! {
        <li>
            <label class="bed">
                <input
                    type="radio"
                    name="bed"
                    class="sr-only"
                    prop:checked=flag(move || item.look(|(.., chosen)| *chosen))
                    on:change=changed(move |_| page.answer(|case| case.sample = at))
                />
                <span translate=words::translate(&name)>{name.clone()}</span>
                <span class="verdict-word">{text(move || item.look(|(_, _, verdict, _)| *verdict))}</span>
            </label>
        </li>
    }
}
