//! The sources: every publication this answer leans on.

use emberloam_engine::Outcome;
use emberloam_engine::sources::Citation;
use leptos::prelude::*;

use crate::grounds::citation;
use crate::later::later;
use crate::layer::{Stratum, layer};
use crate::living::Look;
use crate::state::Page;
use crate::words;

/// The layer.
pub fn references(page: Page) -> impl IntoView {
    layer(
        Stratum::Rock,
        "sources",
        words::SOURCES,
        view! {
            <p>{words::SOURCES_INTRO}</p>
            {later(move |parts| (parts.references)(page))}
        },
    )
}

/// The list.
pub fn list(page: Page) -> AnyView {
    let list = move || page.outcome.look(|o| o.as_ref().map(cited).unwrap_or_default());
    view! {
        <ul class="citations">
            {move || {
                list()
                    .into_iter()
                    .map(|source| view! { <li>{citation(source)}</li> })
                    .collect_view()
            }}
        </ul>
    }
    .into_any()
}

/// Every source once, by title; with the weakest grade that was used, so that
/// nothing looks better read than it is.
fn cited(outcome: &Outcome) -> Vec<Citation> {
    let mut weakest: Vec<Citation> = Vec::new();
    for citation in outcome.citations() {
        let title = citation.source.title;
        let at = weakest.partition_point(|kept| kept.source.title < title);
        match weakest.get_mut(at).filter(|kept| kept.source.title == title) {
            Some(kept) => kept.grade = kept.grade.max(citation.grade),
            None => weakest.insert(at, *citation),
        }
    }
    weakest
}
