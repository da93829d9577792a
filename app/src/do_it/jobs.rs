//! The jobs. A tick stays on this device; why a job is done, and why then,
//! opens behind it.

use emberloam_engine::plan::{Job, JobKind};
use emberloam_engine::season::Dated;
use emberloam_engine::season::day::when;
use leptos::prelude::*;

use crate::deferred::soon_of;
use crate::do_it::recipe::recipe;
use crate::grounds::{behind, opened_grounds, opens};
use crate::in_place::{Look, changed, flag, keyed, settled, text};
use crate::state::Page;
use crate::words;

/// A job, and what tells it from the others of its bed.
type Keyed = (String, Job);

/// The list.
pub fn jobs(page: Page) -> impl IntoView {
    let found = soon_of(move || page.of_plan(|plan| keys(&plan.jobs)));
    view! {
        <p hidden=flag(move || !found.look(Vec::is_empty))>{words::NO_TASKS}</p>
        <ol id="jobs" class="jobs plain">
            {keyed(move || found.get(), |(key, _)| key.clone(), move |item| job(page, item))}
        </ol>
    }
}

/// Two jobs of one kind are told apart by their order.
fn keys(jobs: &[Job]) -> Vec<Keyed> {
    let mut all: Vec<Keyed> = Vec::new();
    for job in jobs {
        let before = all.iter().filter(|(_, other)| other.kind == job.kind).count();
        all.push((format!("{} {before}", job.kind.name()), job.clone()));
    }
    all
}

fn job(page: Page, item: Memo<Keyed>) -> impl IntoView {
    let opened = RwSignal::new(false);
    let (key, Job { kind, .. }) = item.get_untracked();
    let mark = move || format!("{} {key}", page.chosen());
    let of_mark = mark.clone();
    let done = move || page.done.look(|done| done.contains(&of_mark()));
    let ticked = done.clone();
    view! {
        <li class="job" class:done=flag(done) data-kind=kind.name()>
            <label class="job-tick">
                <input
                    type="checkbox"
                    aria-label=text(move || item.look(|(_, job)| words::done(&job.task)))
                    prop:checked=flag(ticked)
                    on:change=changed(move |event| {
                        let (mark, now) = (mark(), event_target_checked(&event));
                        page.done.update(|done| {
                            done.retain(|other| *other != mark);
                            done.extend(now.then_some(mark));
                        });
                    })
                />
            </label>
            <details on:toggle=opens(opened)>
                <summary>
                    <span class="job-when">
                        {text(move || item.look(|(_, job)| when(job.from, job.to)))}
                    </span>
                    " "
                    <span class="job-what">{text(move || item.look(|(_, job)| job.task.clone()))}</span>
                </summary>
                <p>{text(move || item.look(|(_, job)| job.reason.clone()))}</p>
                {behind(opened, move || item.look(|(_, job)| job.grounds.clone()))}
            </details>
            {(kind == JobKind::Charge).then(|| recipe(page))}
        </li>
    }
}

/// What has days, with the reason and what it rests on.
pub fn dated_list(all: Box<dyn Fn() -> Vec<Dated> + Send + Sync>) -> AnyView {
    let one = |dated: Dated| {
        view! {
            <li>
                <p class="task-when">{when(dated.from, dated.to)}</p>
                <div>
                    <p class="task-what">{dated.what.clone()}</p>
                    <p class="soft">{dated.reason}</p>
                    {opened_grounds(&dated.what, dated.grounds)}
                </div>
            </li>
        }
    };
    view! { <ol class="tasks plain">{settled(all, one)}</ol> }.into_any()
}
