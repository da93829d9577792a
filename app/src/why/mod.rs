//! Why: every rule that fired, both ways; what to watch next; what all of it rests on.

pub mod references;
mod watch;

use std::sync::Arc;

use leptos::prelude::*;

use crate::deferred::soon_of;
use crate::grounds::{Statement, once_opened, opens, statements};
use crate::in_place::{Look, flag, text};
use crate::layer::{Stratum, layer};
use crate::state::Page;
use crate::why::watch::watch;
use crate::words;

/// The layer.
pub fn why(page: Page) -> impl IntoView {
    layer(
        Stratum::Clay,
        "why",
        words::WHY,
        view! { {side(page, words::SPEAKS_FOR, true)} {side(page, words::SPEAKS_AGAINST, false)} {watch(page)} {sources(page)} },
    )
}

/// So many reasons of a side stand there; the rules that fired are in the order of their weight.
const FIRST: usize = 2;

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
    let first = move || found.look(|all| all.iter().take(FIRST).cloned().collect());
    let rest = move || found.look(|all| all.iter().skip(FIRST).cloned().collect::<Vec<_>>());
    view! {
        <div hidden=flag(move || found.look(Vec::is_empty))>
            <h3 class="sr-only">{title}</h3>
            <ul class="plain reasons" class:against=!speaks_for>
                {statements(Box::new(first))}
            </ul>
            <details class="fold" hidden=flag(move || rest().is_empty())>
                <summary>
                    {text(move || words::more_reasons(rest().len(), speaks_for))}
                </summary>
                <ul class="plain reasons" class:against=!speaks_for>
                    {statements(Box::new(rest))}
                </ul>
            </details>
        </div>
    }
}

/// The sources, listed when they are opened.
fn sources(page: Page) -> impl IntoView {
    let opened = RwSignal::new(false);
    view! {
        <details id="sources" class="fold" on:toggle=opens(opened)>
            <summary>{words::SOURCES}</summary>
            <p class="soft">{words::SOURCES_INTRO}</p>
            {once_opened(opened, Arc::new(move |parts| (parts.references)(page)))}
        </details>
    }
}
