//! What to watch next: what would change the answer, and which published lines are near.

use leptos::prelude::*;

use crate::deferred::soon_of;
use crate::in_place::{Look, flag, lines};
use crate::state::Page;
use crate::words;

/// The part.
pub fn watch(page: Page) -> impl IntoView {
    let found = soon_of(move || {
        page.of_plan(|plan| {
            plan.would_change.iter().chain(&plan.lines).cloned().collect::<Vec<_>>()
        })
    });
    view! {
        <div id="watch" hidden=flag(move || found.look(Vec::is_empty))>
            <h3>{words::WATCH}</h3>
            <ul>{lines(move || found.get())}</ul>
        </div>
    }
}
