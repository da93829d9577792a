//! How a trial is judged: what each column holds, the design, the control, and whether the
//! plan's own word stands beside it. What was found is shown and can be changed.

use emberloam_engine::trial::{Column, Role, RoleOf};
use leptos::prelude::*;

use crate::control::{pick, tick};
use crate::in_place::{changed, flag, keyed, lines, settled, text};
use crate::trial::view::{AtWork, foretold};
use crate::words::trial as words;

/// The fold.
pub fn judged(at_work: AtWork) -> AnyView {
    let AtWork { page, trial, found, .. } = at_work;
    let columns = move || {
        found.with(|found| match found {
            Some(Ok(found)) => found.columns.clone(),
            Some(Err(refused)) => refused.columns.clone(),
            None => Vec::new(),
        })
    };
    let stated = move || at_work.of(|found| found.stated.clone());
    let designs = move || {
        let could = at_work.of(|found| found.could_be.clone());
        let said = move || trial.with(|trial| trial.design);
        let choices = could.into_iter().map(|design| (design, design.label())).collect();
        pick(words::DESIGN, words::AS_FOUND, choices, said, move |design| {
            trial.update(|trial| trial.design = design);
        })
    };
    let later = move || trial.with(|trial| trial.later.clone()).unwrap_or_default();
    view! {
        <details id="trial-judged" class="fold" hidden=flag(move || columns().is_empty())>
            <summary>{words::JUDGED}</summary>
            <p>{text(stated)}</p>
            <p>{text(move || at_work.of(|found| found.guard.clone()))}</p>
            <ul class="notes">{lines(move || at_work.of(|found| found.notes.clone()))}</ul>
            <div class="controls">
                {designs}
                {control(at_work)}
                {tick(
                    words::EVERY_PAIR,
                    flag(move || trial.with(|trial| trial.every_pair)),
                    Box::new(move |every| trial.update(|trial| trial.every_pair = every)),
                    flag(|| false),
                )}
                <div hidden=flag(move || !page.has_report())>
                    {tick(
                        words::FORETOLD,
                        flag(move || trial.with(|trial| !trial.foretold.is_empty())),
                        Box::new(move |beside| {
                            let said =
                                if beside { untrack(|| foretold(page)) } else { Vec::new() };
                            trial.update(|trial| trial.foretold = said);
                        }),
                        flag(|| false),
                    )}
                </div>
                {keyed(columns, |column| column.head.clone(), move |column| role(at_work, column))}
            </div>
            <label class="field">
                <span class="field-name">{words::LATER}</span>
                <span class="soft">{words::LATER_INTRO}</span>
                <textarea
                    spellcheck="false"
                    wrap="off"
                    rows="4"
                    prop:value=text(later)
                    on:change=changed(move |event| {
                        let table = Some(event_target_value(&event)).filter(|t| !t.trim().is_empty());
                        trial.update(|trial| trial.later = table);
                    })
                ></textarea>
            </label>
            <p class="field-name">{words::SOURCES}</p>
            <ul class="citations">
                {settled(
                    move || at_work.of(|found| found.sources.clone()),
                    |source| view! { <li>{crate::grounds::citation(source)}</li> },
                )}
            </ul>
        </details>
    }
    .into_any()
}

/// What the treatments are compared with.
fn control(at_work: AtWork) -> impl IntoView {
    let trial = at_work.trial;
    let names = move || {
        at_work
            .of(|found| found.treatments.iter().map(|level| level.name.clone()).collect::<Vec<_>>())
    };
    let chosen = move || {
        at_work
            .of(|found| found.control.and_then(|at| Some(found.treatments.get(at)?.name.clone())))
    };
    view! {
        <label class="field">
            <span class="field-name">{words::COMPARED_WITH}</span>
            <select on:change=changed(move |event| {
                let name = event_target_value(&event);
                trial.update(|trial| trial.control = Some(name));
            })>
                {move || {
                    let chosen = chosen();
                    let option = |name: String| {
                        let selected = chosen.as_ref() == Some(&name);
                        view! { <option selected=selected translate="no">{name}</option> }
                    };
                    names().into_iter().map(option).collect_view()
                }}
            </select>
        </label>
    }
}

/// What a column holds.
fn role(at_work: AtWork, column: Memo<Column>) -> impl IntoView {
    let trial = at_work.trial;
    let head = column.with_untracked(|column| column.head.clone());
    let label = words::column(&head);
    let change = move |event| {
        let role = event_target_value(&event)
            .parse()
            .ok()
            .and_then(|at: usize| Role::ALL.get(at).copied());
        let Some(role) = role else { return };
        trial.update(|trial| {
            trial.roles.retain(|other| other.head != head);
            trial.roles.push(RoleOf { head: head.clone(), role });
        });
    };
    let options = move || {
        let now = column.with(|column| column.role);
        let option = |(at, role): (usize, &Role)| {
            view! { <option value=at selected={*role == now}>{role.label()}</option> }
        };
        Role::ALL.iter().enumerate().map(option).collect_view()
    };
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <select on:change=changed(change)>{options}</select>
            <span class="soft">{text(move || column.with(|column| column.why.clone()))}</span>
        </label>
    }
}
