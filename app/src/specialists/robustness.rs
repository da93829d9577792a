//! Whether the answer holds when what is uncertain lies at its ends.

use emberloam_engine::details::{Trial, Turn};
use leptos::prelude::*;

use crate::deferred::step_by_step;
use crate::in_place::{Look, flag, settled, text};
use crate::state::Page;
use crate::words;

/// The section.
pub fn robustness(page: Page) -> AnyView {
    let found = step_by_step(page, |soil| Trial::of(soil.case()), Trial::step);
    let said = move || found.look(|f| f.as_ref().map_or_else(String::new, |f| f.text.clone()));
    let turns = move || found.look(|f| f.as_ref().map_or_else(Vec::new, |f| f.turns.clone()));
    view! {
        <section id="holding" hidden=flag(move || found.look(Option::is_none))>
            <h3>{words::HOLDING}</h3>
            <p class="soft">{words::HOLDING_INTRO}</p>
            <p>{text(said)}</p>
            <ul>
                {settled(
                    turns,
                    |turn: Turn| {
                        view! { <li>{words::title(&turn.what)} " → " {words::path(turn.path)}</li> }
                    },
                )}
            </ul>
        </section>
    }
    .into_any()
}
