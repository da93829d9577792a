//! What to take care of, each with what it rests on behind it.

use emberloam_engine::plan::cautions::Caution;
use emberloam_engine::summary;
use leptos::prelude::*;

use crate::deferred::soon_of;
use crate::grounds::{Statement, statements};
use crate::in_place::{flag, text};
use crate::state::Page;
use crate::words;

/// Cautions that always show; the others fold away. The engine names what hurts people first.
const FIRST: usize = 3;

/// Cautions as statements.
pub fn said(cautions: &[Caution]) -> Vec<Statement> {
    cautions
        .iter()
        .map(|c| Statement { rule: None, text: c.text.clone(), grounds: c.grounds.clone() })
        .collect()
}

/// The cautions.
pub fn care(page: Page) -> impl IntoView {
    let part = |first: bool| {
        let found = soon_of(move || {
            page.of_plan(|plan| {
                // Those of the charge stand beside the recipe.
                let by_recipe = |c: &Caution| {
                    plan.charge.as_ref().is_some_and(|charge| charge.cautions.contains(c))
                };
                let mut all = summary::cautions(plan);
                all.retain(|caution| !by_recipe(caution));
                let (leading, rest) = all.split_at(all.len().min(FIRST));
                said(if first { leading } else { rest })
            })
        });
        move || found.get()
    };
    let (first, rest) = (part(true), part(false));
    view! {
        <div class="cautions" hidden=flag(move || first().is_empty())>
            <h3>{words::TAKE_CARE}</h3>
            <ul class="plain">{statements(Box::new(first))}</ul>
            <details class="fold" hidden=flag(move || rest().is_empty())>
                <summary>{text(move || words::more_cautions(rest().len()))}</summary>
                <ul class="plain">{statements(Box::new(rest))}</ul>
            </details>
        </div>
    }
}
