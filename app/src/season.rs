//! When: the dated tasks, and how long charging takes.

use emberloam_engine::season::Task;
use leptos::prelude::*;

use crate::grounds::opened_grounds;
use crate::later::later;
use crate::layer::{Stratum, layer};
use crate::living::{flag, settled};
use crate::soon::soon_of;
use crate::state::Page;
use crate::{date, words};

/// The layer.
pub fn season(page: Page) -> impl IntoView {
    let found = soon_of(move || page.of_plan(|plan| plan.season.clone()));
    let tasks = move || found.get();
    layer(
        Stratum::Clay,
        "season",
        words::WHEN,
        view! {
            <p hidden=flag(move || !tasks().is_empty())>{words::NO_TASKS}</p>
            {task_list(Box::new(tasks))}
            {later(move |parts| (parts.calendar)(page))}
            {later(move |parts| (parts.place)(page))}
            {later(move |parts| (parts.winter)(page))}
            {later(move |parts| (parts.uptake)(page))}
        },
    )
}

/// Tasks with their days, the reason and what it rests on.
pub fn task_list(tasks: Box<dyn Fn() -> Vec<Task> + Send + Sync>) -> AnyView {
    let one = |task: Task| {
        view! {
            <li>
                <p class="task-when">{when(&task)}</p>
                <div>
                    <p class="task-what">{task.task}</p>
                    <p class="soft">{task.reason}</p>
                    {opened_grounds(task.grounds)}
                </div>
            </li>
        }
    };
    view! { <ol class="tasks plain">{settled(tasks, one)}</ol> }.into_any()
}

/// The days of a task, in words.
pub fn when(task: &Task) -> String {
    match (task.from, task.to) {
        (Some(from), Some(to)) => date::span(from, to),
        (Some(from), None) => words::from_day(&date::spoken(from)),
        (None, Some(to)) => words::by_day(&date::spoken(to)),
        (None, None) => words::NO_DATE_YET.into(),
    }
}
