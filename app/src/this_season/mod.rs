//! This season: the verdict, what to carry to the bed, the twelve months with
//! their jobs, and the few answers that would sharpen it.

pub mod alone;
mod carry;
mod chips;
pub mod months;
pub mod picture;

use emberloam_engine::season::day::when;
use leptos::prelude::*;

use crate::in_place::{flag, text};
use crate::layer::{Stratum, edge, turf};
use crate::state::Page;
use crate::this_season::carry::carry;
use crate::this_season::chips::chips;
use crate::this_season::months::months;
use crate::words;

/// The layer.
pub fn this_season(page: Page) -> impl IntoView {
    let path = move || page.of_plan(|plan| Some(plan.path.name()));
    let headline = move || page.of_plan(|plan| plan.headline.clone());
    let provisional = move || page.of_plan(|plan| plan.provisional);
    view! {
        <section id="answer" class="layer humus" data-path=path aria-labelledby="answer-title">
            {turf()} {edge(Stratum::Humus)}
            <div class="layer-inside">
                <p class="kicker">
                    {words::THIS_SEASON} " · "
                    <span translate=text(move || {
                        words::translate(&page.bed_name())
                    })>{text(move || page.bed_name())}</span>
                    <span class="provisional" hidden=flag(move || !provisional())>
                        " · "
                        {words::PROVISIONAL}
                    </span>
                </p>
                <h2 id="answer-title" class="headline" tabindex="-1">
                    {text(headline)}
                </h2>
                {carry(page)} {next(page)} {months(page)} {chips(page)}
            </div>
        </section>
    }
}

/// The next job in a few words; all of them stand below.
fn next(page: Page) -> impl IntoView {
    // The jobs stand in the order they are done, dated or not.
    let days = move || {
        let first = page.of_plan(|plan| plan.jobs.first().map(|job| (job.from, job.to)));
        first.map_or_else(String::new, |(from, to)| when(from, to.filter(|_| from.is_none())))
    };
    let what = move || {
        page.of_plan(|plan| plan.jobs.first().map(|job| words::job(job.kind))).unwrap_or_default()
    };
    view! {
        <p class="next" hidden=flag(move || what().is_empty())>
            {words::NEXT} ": " <strong>{text(days)}</strong> ", " <span>{text(what)}</span>
        </p>
    }
}
