//! The samples of a report side by side: the chosen one, and others in turn.

use std::ops::Range;

use emberloam_engine::outcome::{Outcome, SampleOutcome};
use emberloam_engine::ranges::Level;
use emberloam_engine::summary::amount;
use leptos::prelude::*;

use crate::in_place::{Look, flag, press, unfolds};
use crate::sheet::ruler::mark_of;
use crate::state::Page;
use crate::words;

/// How many samples stand beside the chosen one.
const BESIDE: usize = 4;

/// What the table shows.
#[derive(Clone, Default, PartialEq)]
struct Table {
    /// Which samples, and their names.
    samples: Vec<(usize, String)>,
    rows: Vec<Row>,
}

#[derive(Clone, PartialEq)]
struct Row {
    name: String,
    /// Whether the levels, where there are any, are not all the same.
    differs: bool,
    cells: Vec<Option<(String, Option<Level>)>>,
}

/// The fold with the table; nothing is worked out while it is closed.
pub fn compare(page: Page) -> AnyView {
    let open = RwSignal::new(false);
    let from = RwSignal::new(0_usize);
    let table =
        Memo::new(move |_| if open.get() { table(page, from.get()) } else { Table::default() });
    let last = move || page.count().saturating_sub(1);
    view! {
        <details
            id="compare"
            class="fold"
            hidden=flag(move || page.count() < 2)
            on:toggle=unfolds(move |now| open.set(now))
        >
            <summary>{words::COMPARE}</summary>
            <div class="buttons" hidden=flag(move || page.count() <= BESIDE + 1)>
                <button
                    type="button"
                    disabled=flag(move || from.get() == 0)
                    on:click=press(move || from.update(|at| *at = at.saturating_sub(BESIDE)))
                >
                    {words::EARLIER_SAMPLES}
                </button>
                <button
                    type="button"
                    disabled=flag(move || from.get() + BESIDE >= last())
                    on:click=press(move || from.update(|at| *at += BESIDE))
                >
                    {words::LATER_SAMPLES}
                </button>
            </div>
            <div class="wide" tabindex="0" role="region" aria-label=words::COMPARE>
                <table class="compare">{move || table.look(|table| head(page, table))}
                {move || table.look(body)}</table>
            </div>
        </details>
    }
    .into_any()
}

fn head(page: Page, table: &Table) -> AnyView {
    let chosen = table.samples.first().map(|(at, _)| *at);
    let column = |(at, name): (usize, String)| {
        let here = chosen == Some(at);
        let translate = words::translate(&name);
        view! {
            <th scope="col">
                <button
                    type="button"
                    class="quiet"
                    aria-pressed=here.to_string()
                    translate=translate
                    on:click=press(move || page.answer(|case| case.sample = at))
                >
                    {name}
                </button>
            </th>
        }
    };
    view! {
        <thead>
            <tr>
                <td></td>
                {table.samples.iter().cloned().map(column).collect_view()}
            </tr>
        </thead>
    }
    .into_any()
}

fn body(table: &Table) -> AnyView {
    let cell = |cell: Option<(String, Option<Level>)>| {
        let (amount, level) = cell.unwrap_or_default();
        view! {
            <td>
                {amount}
                {level
                    .map(|level| {
                        view! {
                            <strong class="level" data-level=level.name()>
                                {mark_of(move || Some(level))}
                                {level.label()}
                            </strong>
                        }
                    })}
            </td>
        }
    };
    let row = |row: Row| {
        view! {
            <tr>
                <th scope="row">
                    {row.name}
                    {row.differs.then(|| view! { <span class="soft">{words::LEVELS_DIFFER}</span> })}
                </th>
                {row.cells.into_iter().map(cell).collect_view()}
            </tr>
        }
    };
    view! { <tbody>{table.rows.iter().cloned().map(row).collect_view()}</tbody> }.into_any()
}

/// The chosen sample, then those from `from` on without it.
fn table(page: Page, from: usize) -> Table {
    let chosen = page.chosen();
    let mut shown = page.outcome_of(chosen..chosen + 1).map_or_else(Vec::new, samples);
    let mut places = vec![chosen];
    for part in beside(from, chosen, page.count()) {
        places.extend(part.clone());
        shown.extend(page.outcome_of(part).map_or_else(Vec::new, samples));
    }
    let names = places.into_iter().zip(shown.iter().map(|sample| sample.name.clone()));
    Table { samples: names.collect(), rows: rows(&shown) }
}

fn samples(outcome: Outcome) -> Vec<SampleOutcome> {
    outcome.samples
}

/// Which samples stand beside the chosen one: so many of the others, from the
/// given place among them.
fn beside(from: usize, chosen: usize, count: usize) -> [Range<usize>; 2] {
    let to = (from + BESIDE).min(count.saturating_sub(1));
    let from = from.min(to);
    // Places from the chosen one on lie one further in the report.
    [from.min(chosen)..to.min(chosen), from.max(chosen) + 1..to.max(chosen) + 1]
}

/// A row for what to do, then one for each property in each method.
fn rows(samples: &[SampleOutcome]) -> Vec<Row> {
    let mut kinds = Vec::new();
    for reading in samples.iter().flat_map(|sample| &sample.readings) {
        let kind = (reading.property, reading.method);
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    }
    kinds.sort_by_key(|(property, _)| *property as u8);
    let plan = Row {
        name: words::WHAT_TO_DO.into(),
        differs: samples.iter().any(|s| s.plan.path != samples[0].plan.path),
        cells: samples.iter().map(|s| Some((s.plan.headline.clone(), None))).collect(),
    };
    let of_kind = kinds.into_iter().map(|(property, method)| {
        let cells: Vec<_> = samples
            .iter()
            .map(|sample| {
                let found =
                    sample.readings.iter().find(|r| (r.property, r.method) == (property, method));
                found.map(|r| (amount(r), r.finding.level))
            })
            .collect();
        let levels = || cells.iter().flatten().filter_map(|(_, level)| *level);
        let differs = levels().any(|level| Some(level) != levels().next());
        let name = words::title(property.label());
        let name = match method {
            Some(method) => words::by_method(&name, method.label()),
            None => name,
        };
        Row { name, differs, cells }
    });
    std::iter::once(plan).chain(of_kind).collect()
}

#[cfg(test)]
mod tests {
    use emberloam_engine::{Case, interpret, report};

    use super::*;

    #[test]
    fn the_others_come_in_turn_and_each_once() {
        let all = |chosen, count| {
            let mut seen = Vec::new();
            for from in (0..count).step_by(BESIDE) {
                seen.extend(beside(from, chosen, count).into_iter().flatten());
            }
            seen
        };
        assert_eq!(all(0, 6), [1, 2, 3, 4, 5]);
        assert_eq!(all(2, 6), [0, 1, 3, 4, 5]);
        assert_eq!(all(5, 6), [0, 1, 2, 3, 4]);
        assert_eq!(all(0, 2), [1]);
        assert_eq!(all(1, 2), [0]);
        assert_eq!(all(0, 1), [0; 0]);
    }

    #[test]
    fn a_row_says_where_the_levels_differ_and_leaves_blanks_blank() {
        let text = "Sample,pH,Olsen P ppm,Zn DTPA ppm\nA,6.5,4,1.2\nB,6.6,60,\n";
        let read = report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).unwrap();
        let shown = interpret(&Case { report: read, ..Case::default() }).samples;
        let rows = rows(&shown);
        let row = |start: &str| rows.iter().find(|r| r.name.starts_with(start)).unwrap();
        assert!(row("Phosphorus").differs && !row("pH").differs);
        assert!(row("Zinc").cells[1].is_none() && row("Zinc").cells[0].is_some());
        assert_eq!(rows[0].cells.len(), 2);
    }
}
