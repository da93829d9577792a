//! What to buy and carry, in every measure, and the years it is spread over.

use emberloam_engine::details::{self, Column, Repeats, repeats};
use emberloam_engine::quantity::{Unit, shown};
use leptos::prelude::*;

use crate::bed::bag_litres;
use crate::control::number;
use crate::deferred::soon;
use crate::figure::figures;
use crate::grounds::opened_grounds;
use crate::in_place::{Look, flag, lines, text};
use crate::state::Page;
use crate::words;

/// The section, folded away until somebody goes shopping.
pub fn purchase(page: Page) -> AnyView {
    let worked_out = soon(page, details::purchase);
    let of = move || worked_out.look(|found| found.clone().unwrap_or_default());
    let measures = move || {
        let rows = of().same.into_iter();
        rows.map(|(name, amount)| {
            view! {
                <div>
                    <dt>{words::title(name)}</dt>
                    <dd>{amount}</dd>
                </div>
            }
        })
        .collect_view()
    };
    view! {
        <details
            id="purchase"
            class="fold"
            hidden=flag(move || worked_out.look(Option::is_none))
        >
            <summary>{words::PURCHASE}</summary>
            <div class="controls">{inputs(page)}</div>
            <ul class="notes">{lines(move || of().doubts)}</ul>
            {figures(page, move || of().figures)}
            <details class="fold">
                <summary>{words::SAME_IN_MEASURES}</summary>
                <dl class="inputs">{measures}</dl>
                {move || opened_grounds(words::SAME_IN_MEASURES, of().grounds)}
            </details>
            {schedule(page)}
        </details>
    }
    .into_any()
}

fn inputs(page: Page) -> impl IntoView {
    view! {
        {bag_litres(page)}
        {number(
            page,
            words::BAG_PRICE,
            Unit::None,
            |case| case.biochar.price,
            |case, value| case.biochar.price = value,
        )}
        {number(
            page,
            words::MOISTURE,
            Unit::Percent,
            |case| case.biochar.moisture_percent,
            |case, value| case.biochar.moisture_percent = value,
        )}
        {number(
            page,
            words::YEARS,
            Unit::None,
            |case| case.biochar.years.map(f64::from),
            // Part of a year is the whole of it; too many are told of by the plan.
            |case, value| case.biochar.years = value.map(|years| years.ceil() as u32),
        )}
    }
}

/// The years one after the other.
fn schedule(page: Page) -> impl IntoView {
    let found = soon(page, repeats);
    let said = move || found.look(|r| r.as_ref().map_or_else(String::new, |r| r.text.clone()));
    let stops = move || {
        let stops = |r: &Repeats| {
            r.stops.iter().map(|(year, why)| words::stopped(*year, why)).collect::<Vec<_>>()
        };
        found.look(|r| r.as_ref().map(stops)).unwrap_or_default()
    };
    view! {
        <section id="schedule" hidden=flag(move || found.look(Option::is_none))>
            <h4>{words::SCHEDULE}</h4>
            <p>{text(said)}</p>
            <ul class="notes">{lines(stops)}</ul>
            {move || found.get().map(|found| table(page, found))}
        </section>
    }
}

/// A column for each year, a row for each thing; what the numbers rest on below.
fn table(page: Page, of: Repeats) -> impl IntoView {
    let years = of.columns.first().map_or(0, |column| column.years.len());
    let heads: Vec<_> =
        (1..=years).map(|year| view! { <th scope="col">{words::year(year)}</th> }).collect();
    let row = |column: &Column| {
        let unit = column.unit;
        let cells: Vec<_> = column
            .years
            .iter()
            .map(|band| view! { <td>{shown(band, unit, page.measures())}</td> })
            .collect();
        view! { <tr><th scope="row">{words::title(column.label)}</th>{cells}</tr> }
    };
    let rows: Vec<_> = of.columns.iter().map(row).collect();
    let grounds: Vec<_> = of
        .columns
        .iter()
        .map(|column| {
            let name = words::title(column.label);
            view! { <p class="aside-word">{name.clone()}</p> {opened_grounds(&name, column.grounds.clone())} }
        })
        .collect();
    view! {
        <div class="wide" tabindex="0" role="region" aria-label=words::SCHEDULE>
            <table class="compare">
                <thead>
                    <tr>
                        <td></td>
                        {heads}
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
        {opened_grounds(words::SCHEDULE, of.grounds)}
        <details class="fold">
            <summary>{words::SCHEDULE_GROUNDS}</summary>
            {grounds}
        </details>
    }
}
