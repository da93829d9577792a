//! What kind of soil it is: water, sodium, salts, carbon and metals, worked
//! out beside the first answer.

use emberloam_engine::details::{self, Saying};
use leptos::prelude::*;

use crate::deferred::soon;
use crate::figure::figures;
use crate::grounds::{Statement, statements};
use crate::in_place::Look;
use crate::state::Page;
use crate::words;

/// The section.
pub fn traits(page: Page) -> AnyView {
    let all = soon(page, |survey, _| details::traits(survey));
    let sayings = move || {
        let said = all.look(|traits| traits.sayings.clone());
        let statement = |saying: Saying| Statement {
            rule: Some(saying.name),
            text: saying.text,
            grounds: saying.grounds,
        };
        said.into_iter().map(statement).collect()
    };
    view! {
        <section id="traits" aria-labelledby="traits-title">
            <h3 id="traits-title">{words::TRAITS}</h3>
            <ul class="plain">{statements(Box::new(sayings))}</ul>
            {figures(page, move || all.look(|traits| traits.figures.clone()))}
        </section>
    }
    .into_any()
}
