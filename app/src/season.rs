//! When: the dated tasks, and how long charging takes.

use emberloam_engine::season::Task;
use leptos::prelude::*;

use crate::grounds::opened_grounds;
use crate::layer::{Stratum, layer};
use crate::living::{flag, keyed, text};
use crate::state::Page;
use crate::uptake::uptake;
use crate::{date, words};

/// The layer.
pub fn season(page: Page) -> impl IntoView {
    let tasks = Memo::new(move |_| page.of_plan(|plan| plan.season.clone()));
    layer(
        Stratum::Clay,
        "season",
        words::WHEN,
        view! {
            <p hidden=flag(move || !tasks.with(Vec::is_empty))>{words::NO_TASKS}</p>
            <ol class="tasks plain">
                {keyed(
                    move || tasks.get(),
                    |task| task.task.clone(),
                    |task: Memo<Task>| {
                        view! {
                            <li>
                                <p class="task-when">{text(move || task.with(when))}</p>
                                <div>
                                    <p class="task-what">{text(move || task.with(|t| t.task.clone()))}</p>
                                    <p class="soft">{text(move || task.with(|t| t.reason.clone()))}</p>
                                    {opened_grounds(move || task.with(|t| t.grounds.clone()))}
                                </div>
                            </li>
                        }
                    },
                )}
            </ol>
            {uptake(page)}
        },
    )
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
