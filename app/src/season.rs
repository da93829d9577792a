//! When: the dated jobs.

use emberloam_engine::season::Dated;
use emberloam_engine::season::day::when;
use leptos::prelude::*;

use crate::grounds::opened_grounds;
use crate::later::later;
use crate::layer::{Stratum, layer};
use crate::living::{flag, settled};
use crate::soon::soon_of;
use crate::state::Page;
use crate::words;

/// The layer.
pub fn season(page: Page) -> impl IntoView {
    let found = soon_of(move || {
        page.of_plan(|plan| plan.jobs.iter().cloned().map(Dated::from).collect::<Vec<_>>())
    });
    let jobs = move || found.get();
    layer(
        Stratum::Clay,
        "season",
        words::WHEN,
        view! {
            <p hidden=flag(move || !jobs().is_empty())>{words::NO_TASKS}</p>
            {dated_list(Box::new(jobs))}
            {later(move |parts| (parts.calendar)(page))}
            {later(move |parts| (parts.place)(page))}
            {later(move |parts| (parts.winter)(page))}
        },
    )
}

/// What has days, with the reason and what it rests on.
pub fn dated_list(all: Box<dyn Fn() -> Vec<Dated> + Send + Sync>) -> AnyView {
    let one = |dated: Dated| {
        view! {
            <li>
                <p class="task-when">{when(dated.from, dated.to)}</p>
                <div>
                    <p class="task-what">{dated.what}</p>
                    <p class="soft">{dated.reason}</p>
                    {opened_grounds(dated.grounds)}
                </div>
            </li>
        }
    };
    view! { <ol class="tasks plain">{settled(all, one)}</ol> }.into_any()
}
