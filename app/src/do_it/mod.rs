//! Do it: the jobs in their order with boxes to tick, the one recipe within
//! them, what to take care of, and the bed drawn to scale.

mod bed_section;
pub mod care;
pub mod jobs;
pub mod recipe;

use leptos::prelude::*;

use crate::do_it::bed_section::bed_section;
use crate::do_it::care::care;
use crate::do_it::jobs::jobs;
use crate::layer::{Stratum, layer};
use crate::state::Page;
use crate::words;

/// The layer.
pub fn do_it(page: Page) -> impl IntoView {
    layer(
        Stratum::Loam,
        "do",
        words::DO_IT,
        view! { {jobs(page)} {care(page)} {bed_section(page)} },
    )
}
