//! Why: every rule that fired, both ways, and what would change the answer.

use leptos::prelude::*;

use crate::grounds::{Statement, statements};
use crate::later::later;
use crate::layer::{Stratum, layer};
use crate::living::{flag, lines};
use crate::soon::soon_of;
use crate::state::Page;
use crate::words;

/// The layer.
pub fn why(page: Page) -> impl IntoView {
    layer(
        Stratum::Ochre,
        "why",
        words::WHY,
        view! {
            <div class="two-sides">
                {side(page, words::SPEAKS_FOR, true)} {side(page, words::SPEAKS_AGAINST, false)}
            </div>
            {would_change(page)}
            {later(move |parts| (parts.holding)(page))}
            {later(move |parts| (parts.effects)(page))}
            {later(move |parts| (parts.course)(page))}
        },
    )
}

fn side(page: Page, title: &'static str, speaks_for: bool) -> impl IntoView {
    let found = soon_of(move || {
        page.of_plan(|plan| {
            let reasons = plan.reasons.iter();
            let reasons = reasons.filter(|r| r.speaks_for == speaks_for);
            reasons
                .map(|r| Statement {
                    rule: Some(r.rule.name()),
                    text: r.text.clone(),
                    grounds: r.grounds.clone(),
                })
                .collect::<Vec<_>>()
        })
    });
    let list = move || found.get();
    view! {
        <div hidden=flag(move || list().is_empty())>
            <h3>{title}</h3>
            <ul class="plain reasons" class:against=!speaks_for>
                {statements(Box::new(list))}
            </ul>
        </div>
    }
}

fn would_change(page: Page) -> impl IntoView {
    let found = soon_of(move || page.of_plan(|plan| plan.would_change.clone()));
    let list = move || found.get();
    view! {
        <div hidden=flag(move || list().is_empty())>
            <h3>{words::WOULD_CHANGE}</h3>
            <ul>
                {lines(list)}
            </ul>
        </div>
    }
}
