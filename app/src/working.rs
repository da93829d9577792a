//! The working: every number the chemistry gave, each with its grounds.

use leptos::prelude::*;

use crate::figure::figures;
use crate::later::later;
use crate::layer::{Stratum, layer};
use crate::living::Look;
use crate::soon::soon_of;
use crate::state::Page;
use crate::words;

/// The layer.
pub fn working(page: Page) -> impl IntoView {
    let found = soon_of(move || {
        page.outcome.look(|o| o.as_ref().map(|o| o.derived.clone()).unwrap_or_default())
    });
    let list = move || found.get();
    layer(
        Stratum::Marl,
        "working",
        words::WORKING,
        view! {
            <p>{words::WORKING_INTRO}</p>
            {figures(page, list)}
            {later(move |parts| (parts.traits)(page))}
            {later(move |parts| (parts.certificate)(page))}
        },
    )
}
