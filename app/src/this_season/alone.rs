//! Charging without a report.

use leptos::prelude::*;

use crate::state::Page;

/// The part.
pub fn alone(_page: Page) -> AnyView {
    ().into_any()
}
