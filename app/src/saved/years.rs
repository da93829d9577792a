//! One bed over the years: a chart and a table for each method of a property.

use emberloam_engine::quantity::{Unit, significant};
use emberloam_engine::season::day;
use emberloam_engine::soil::{Method, Property};
use leptos::prelude::*;
use plotters::element::{Circle, PathElement};
use plotters::prelude::Color;
use plotters::style::text_anchor::HPos;

use crate::in_place::{Look, changed, flag, unfolds};
use crate::saved::trend::{Series, beds, places, series};
use crate::saved::view::SavedReports;
use crate::specialists::chart::{Pen, Repaint, Sheet, chart, level_line};
use crate::words;
use crate::words::keeping as said;

const HEIGHT: f64 = 200.0;

/// The fold; nothing is worked out while it is closed.
pub fn years(reports: SavedReports) -> AnyView {
    let open = RwSignal::new(false);
    let all = Memo::new(move |_| {
        if open.get() { reports.entries().iter().filter_map(beds).collect() } else { Vec::new() }
    });
    let names = Memo::new(move |_| all.look(|all| places(all)));
    let wanted = RwSignal::new(String::new());
    let place = Memo::new(move |_| {
        let wanted = wanted.get();
        names.look(|names| names.iter().find(|n| **n == wanted).or(names.first()).cloned())
    });
    let found = Memo::new(move |_| {
        place.get().map_or_else(Vec::new, |place| all.look(|all| series(all, &place)))
    });
    let property = RwSignal::new(Property::Ph);
    let shown = Memo::new(move |_| {
        let wanted = property.get();
        found.look(|found| {
            let first = found.iter().find(|s| s.property == wanted).or(found.first());
            first.map(|series| series.property)
        })
    });
    let place_options = move || {
        let now = place.get();
        let names = names.get();
        names
            .into_iter()
            .map(|name| {
                let chosen = now.as_ref() == Some(&name);
                let value = name.clone();
                view! { <option value=value translate="no" prop:selected=chosen>{name}</option> }
            })
            .collect_view()
    };
    let property_options = move || {
        let now = shown.get();
        let mut all = found.look(|found| found.iter().map(|s| s.property).collect::<Vec<_>>());
        all.dedup();
        all.into_iter()
            .map(|property| {
                view! {
                    <option value=property.name() prop:selected=now == Some(property)>
                        {words::title(property.label())}
                    </option>
                }
            })
            .collect_view()
    };
    let repaint = expect_context::<Repaint>();
    let charts = move || {
        let shown = shown.get();
        let all = found.look(|found| {
            found.iter().filter(|s| Some(s.property) == shown).cloned().collect::<Vec<_>>()
        });
        all.into_iter().map(|series| one(repaint, series)).collect_view()
    };
    view! {
        <details
            id="years"
            class="fold"
            hidden=flag(move || reports.shelved.look(Vec::is_empty))
            on:toggle=unfolds(move |now| open.set(now))
        >
            <summary>{said::YEARS}</summary>
            <p class="soft">{said::YEARS_INTRO}</p>
            <label class="field">
                <span class="field-name">{said::YEARS_PLACE}</span>
                <select
                    id="years-place"
                    on:change=changed(move |event| wanted.set(event_target_value(&event)))
                >
                    {place_options}
                </select>
            </label>
            <label class="field">
                <span class="field-name">{words::COURSE_OF}</span>
                <select
                    id="years-property"
                    on:change=changed(move |event| {
                        let picked = event_target_value(&event);
                        if let Some(picked) = Property::ALL.into_iter().find(|p| p.name() == picked) {
                            property.set(picked);
                        }
                    })
                >
                    {property_options}
                </select>
            </label>
            {charts}
        </details>
    }
    .into_any()
}

/// The name of a series: property, method, unit.
fn name(series: &Series) -> String {
    let name = words::title(series.property.label());
    let method = series.method.map_or(words::METHOD_UNKNOWN, Method::label);
    let name = words::by_method(&name, method);
    match series.unit.map(Unit::symbol) {
        Some(symbol) if !symbol.is_empty() => words::by_method(&name, symbol),
        _ => name,
    }
}

fn one(repaint: Repaint, series: Series) -> impl IntoView {
    let name = name(&series);
    let label = said::trend_chart(&name);
    let rows: Vec<_> = series
        .points
        .iter()
        .map(|point| {
            let level = point.level.map_or(words::NOT_JUDGED, |level| level.label());
            view! {
                <tr>
                    <th scope="row">{day::spoken(point.day)}</th>
                    <td>{point.shown.clone()}</td>
                    <td>{level}</td>
                </tr>
            }
        })
        .collect();
    view! {
        <section class="trend">
            <h3>{name}</h3>
            <figure>
                {chart(
                    repaint,
                    move || label.clone(),
                    || HEIGHT,
                    move |sheet, pen| draw(sheet, pen, &series),
                )}
            </figure>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{said::COLUMN_DATE}</th>
                        <th scope="col">{words::RESULT}</th>
                        <th scope="col">{said::COLUMN_LEVEL}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </section>
    }
}

/// The results by date: a disc for each number, a ring for a limit, a line
/// where the same method was used in turn.
fn draw(sheet: &Sheet, pen: &Pen, series: &Series) {
    let (width, height) = sheet.dim_in_pixel();
    let (left, right) = (pen.px(60.0), width as i32 - pen.px(24.0));
    let (top, bottom) = (pen.px(14.0), height as i32 - pen.px(40.0));
    let values = || series.points.iter().map(|point| point.value);
    let (low, high) = (values().fold(f64::MAX, f64::min), values().fold(f64::MIN, f64::max));
    let (Some(first), Some(last)) = (series.points.first(), series.points.last()) else { return };
    // One result, or the same one every year, lies in the middle.
    let room = if high > low { (high - low) * 0.1 } else { high.abs().max(1.0) * 0.1 };
    let (low, high) = (low - room, high + room);
    let days = (last.day - first.day).whole_days();
    let x = |day: time::Date| {
        let share = match days {
            0 => 0.5,
            days => (day - first.day).whole_days() as f64 / days as f64,
        };
        left + (share * f64::from(right - left)).round() as i32
    };
    let y = |value: f64| {
        bottom - ((value - low) / (high - low) * f64::from(bottom - top)).round() as i32
    };
    // Ignored throughout: a canvas that can't be drawn on stays blank; the
    // table has the same numbers.
    for mark in [low + room, high - room] {
        level_line(sheet, pen, (left, right), y(mark), false, &significant(mark, 3));
    }
    for line in series.lines() {
        let points: Vec<_> = series.points[line].iter().map(|p| (x(p.day), y(p.value))).collect();
        let _ = sheet.draw(&PathElement::new(points, pen.line(pen.likely.mix(1.0), 2.5)));
    }
    for point in &series.points {
        let at = (x(point.day), y(point.value));
        let style =
            if point.limit { pen.line(pen.likely.mix(1.0), 2.0) } else { pen.likely.filled() };
        let _ = sheet.draw(&Circle::new(at, pen.px(5.0), style));
    }
    let ends = if days == 0 {
        vec![(first.day, HPos::Center)]
    } else {
        vec![(first.day, HPos::Left), (last.day, HPos::Right)]
    };
    for (day, anchor) in ends {
        let at = (x(day), bottom + pen.px(22.0));
        pen.write(sheet, &day::spoken(day), at, anchor);
    }
}
