//! What a trial says in the plan of the bed: put in, found to be other, taken out.

use emberloam_engine::case::BedTrial;
use emberloam_engine::trial::evaluate;
use leptos::prelude::*;

use crate::in_place::{flag, press, settled, text};
use crate::trial::view::{AtWork, foretold};
use crate::words::trial as words;

/// The part; nothing without a report and a treatment beside a control.
pub fn in_plan(at_work: AtWork) -> AnyView {
    let AtWork { page, trial, .. } = at_work;
    let treatments = move || {
        at_work.of(|found| {
            let many = found.treatments.len();
            let beside = found
                .control
                .into_iter()
                .flat_map(|control| (0..many).filter(move |at| *at != control));
            beside.map(|at| (at, found.treatments[at].name.clone())).collect::<Vec<_>>()
        })
    };
    let nothing = RwSignal::new(false);
    let held = move || page.said(|case| case.trial.clone());
    let now = move |name: &str| {
        at_work.of(|found| {
            let at = found.treatments.iter().position(|level| level.name == name);
            at.map(|at| found.findings(at)).unwrap_or_default()
        })
    };
    let put = move |(at, name): (usize, String)| {
        let say = press(move || {
            let mut found = untrack(|| at_work.of(|found| found.findings(at)));
            if trial.with_untracked(|trial| trial.foretold.is_empty()) {
                // It was judged without what the plan foretells.
                let foretold = untrack(|| foretold(page));
                trial.update(|trial| trial.foretold = foretold);
                let again = trial.with_untracked(evaluate);
                found = again.map(|found| found.findings(at)).unwrap_or_default();
            }
            nothing.set(found.is_empty());
            if found.is_empty() {
                return;
            }
            let name = untrack(|| at_work.of(|found| found.treatments[at].name.clone()));
            page.answer(move |case| {
                case.trial = Some(BedTrial { name, off: false, found });
            });
        });
        view! {
            <button type="button" class="into-plan" on:click=say>
                {words::PUT_IN_PLAN} " " <span translate="no">{name}</span>
            </button>
        }
    };
    let told = move || match held() {
        _ if nothing.get() => words::NOTHING_FORETOLD,
        Some(held) if now(&held.name) != held.found => words::PLAN_HAS_OTHER,
        Some(_) => words::PLAN_HAS_IT,
        None => "",
    };
    let hidden = move || !page.has_report() || treatments().is_empty();
    view! {
        <div id="trial-in-plan" hidden=flag(hidden)>
            <p class="field-name">{words::IN_PLAN}</p>
            <p class="soft">{words::IN_PLAN_MEANS}</p>
            <div class="buttons">
                {settled(treatments, put)}
                <button
                    type="button"
                    hidden=flag(move || held().is_none())
                    on:click=press(move || page.answer(|case| case.trial = None))
                >
                    {words::OUT_OF_PLAN}
                </button>
            </div>
            <p role="status">{text(told)}</p>
        </div>
    }
    .into_any()
}
