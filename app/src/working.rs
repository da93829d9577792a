//! The working: every number the chemistry gave, each with its grounds.

use leptos::prelude::*;

use crate::figure::figures;
use crate::later::later;
use crate::layer::{Stratum, layer};
use crate::living::Look;
use crate::state::Page;
use crate::words;

/// The layer.
pub fn working(page: Page) -> impl IntoView {
    layer(
        Stratum::Marl,
        "working",
        words::WORKING,
        view! {
            <p>{words::WORKING_INTRO}</p>
            {later(move |parts| (parts.working)(page))}
        },
    )
}

/// The numbers.
pub fn numbers(page: Page) -> AnyView {
    let list =
        move || page.outcome.look(|o| o.as_ref().map(|o| o.derived.clone()).unwrap_or_default());
    figures(page, list).into_any()
}
