//! Before a report is in: a picture of an answer.

use leptos::prelude::*;

/// The picture.
pub fn example() -> impl IntoView {
    ().into_any()
}
