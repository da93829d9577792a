//! One shopping list for all beds.

use leptos::prelude::*;

use crate::state::Page;

/// The list.
pub fn shopping(_page: Page) -> AnyView {
    ().into_any()
}
