//! The twelve months to come, with the jobs on them. What the picture shows is
//! said in its words, and the jobs stand below as a list.

use emberloam_engine::plan::JobKind;
use emberloam_engine::summary::{self, MonthOfJobs};
use leptos::prelude::*;

use crate::deferred::soon_of;
use crate::in_place::{Look, flag, text};
use crate::specialists::chart::Repaint;
use crate::state::Page;
use crate::{date, language, words};

/// A month's width and the picture's height.
const WIDE: usize = 30;
const HIGH: usize = 54;

/// A month as it is drawn: its name, and its jobs with whether each begins in it.
pub type Drawn = (usize, Vec<(JobKind, bool)>);

/// The strip.
pub fn months(page: Page) -> impl IntoView {
    let found = soon_of(move || the_months(page));
    // The words in the picture are said anew in another language.
    let repaint = expect_context::<Repaint>();
    let said = move || {
        repaint.track();
        found.look(|all| {
            let with_jobs = all.iter().filter(|(_, jobs)| !jobs.is_empty());
            let month = |(at, jobs): &Drawn| {
                let mut names: Vec<_> =
                    jobs.iter().map(|(kind, _)| language::say(words::job(*kind))).collect();
                names.dedup();
                format!("{}: {}", language::say(words::MONTHS[*at]), names.join(", "))
            };
            with_jobs.map(month).collect::<Vec<_>>().join(". ")
        })
    };
    view! {
        <svg
            id="months"
            class="months"
            viewBox=format!("0 0 {} {HIGH}", 12 * WIDE)
            role="img"
            aria-label=text(said)
            translate="no"
            hidden=flag(move || found.look(Vec::is_empty))
        >
            {move || {
                repaint.track();
                found.look(|all| all.iter().enumerate().map(one).collect_view())
            }}
        </svg>
    }
}

/// The twelve months to come with their jobs.
pub fn the_months(page: Page) -> Vec<Drawn> {
    page.of_plan(|plan| drawn(&summary::months(plan, date::today()), plan))
}

/// So many letters of a month's name, in the language of the page.
pub fn named(month: usize, letters: usize) -> String {
    // Some languages write a month's name small.
    words::title(&language::say(words::MONTHS[month])).chars().take(letters).collect()
}

fn drawn(all: &[MonthOfJobs], plan: &emberloam_engine::Plan) -> Vec<Drawn> {
    let of = |month: &MonthOfJobs| {
        let jobs = month.jobs.iter().zip(&month.starts);
        let jobs = jobs.filter_map(|(at, begins)| Some((plan.jobs.get(*at)?.kind, *begins)));
        (usize::from(u8::from(month.month)) - 1, jobs.collect())
    };
    all.iter().map(of).collect()
}

fn one((place, (month, jobs)): (usize, &Drawn)) -> AnyView {
    let left = place * WIDE;
    // The months with jobs are named, and the first.
    let initial = named(*month, usize::from(!jobs.is_empty() || place == 0));
    let marks = jobs.iter().enumerate().map(|(row, (kind, begins))| {
        let (x, y) = (left + 4, 20 + row * 9);
        view! {
            <g transform=format!("translate({x} {y})") class:begins=*begins>
                <path d=shape(*kind) />
            </g>
        }
    });
    view! {
        <g class:busy=!jobs.is_empty()>
            <rect x=left + 1 y="1" width=WIDE - 2 height=HIGH - 2 rx="3" />
            <text x=left + WIDE / 2 y="14" text-anchor="middle">
                {initial}
            </text>
            {marks.take(4).collect_view()}
        </g>
    }
    .into_any()
}

/// A job's mark in a box of 22 by 8: a shape of its own, so that no colour has to tell it.
pub fn shape(kind: JobKind) -> &'static str {
    match kind {
        JobKind::SpreadBiochar => "M2 1H20V7H2Z",
        JobKind::Charge => "M2 7L6 1 11 7 15 1 20 7Z",
        JobKind::Lime | JobKind::Gypsum | JobKind::Sulfur => {
            "M3 4A2 2 0 1 0 7 4 2 2 0 1 0 3 4ZM9 4A2 2 0 1 0 13 4 2 2 0 1 0 9 4ZM15 4A2 2 0 1 0 19 4 2 2 0 1 0 15 4Z"
        }
        JobKind::Feed | JobKind::Spray => "M3 7L7 1 11 7ZM11 7L15 1 19 7Z",
        JobKind::Plant => "M11 8C11 4 8 2 3 1 3 5 7 7 11 8ZM11 8C11 4 14 2 19 1 19 5 15 7 11 8Z",
        JobKind::CoverCrop => "M2 7C4 1 6 1 8 7ZM8 7C10 1 12 1 14 7ZM14 7C16 1 18 1 20 7Z",
        JobKind::Retest => "M8 1H14V2H13V6A2 2 0 0 1 9 6V2H8Z",
        JobKind::Hazard | JobKind::WashSalts => "M11 0L20 8H2Z",
        JobKind::Clear => "M2 3H20V5H2Z",
    }
}
