//! What biochar should do to one property over a year, with its parts.

use emberloam_engine::details::{Course, WEEKS, courses, exchange_shift};
use emberloam_engine::quantity::{Band, Unit, significant};
use emberloam_engine::soil::Property;
use leptos::prelude::*;
use plotters::element::{PathElement, Polygon};
use plotters::prelude::Color;
use plotters::style::text_anchor::HPos;

use crate::deferred::soon;
use crate::figure::{figures, value};
use crate::grounds::opened_grounds;
use crate::in_place::{Look, changed, flag, text};
use crate::specialists::chart::{Pen, Repaint, Sheet, chart, level_line};
use crate::specialists::reaction::reaction;
use crate::state::Page;
use crate::words;

const HEIGHT: f64 = 240.0;
/// A change beyond this goes off the chart, %; the table has its number.
const MOST: f64 = 200.0;

/// The choice of a property, its chart and its table.
pub fn course(page: Page) -> AnyView {
    let all = soon(page, courses);
    let wanted = RwSignal::new(Property::NitrateN);
    let shown = move || {
        all.look(|all| {
            let wanted = wanted.get();
            all.iter().find(|c| c.property == wanted).or(all.first()).cloned()
        })
    };
    let options = move || {
        all.look(|all| all.iter().map(|c| (c.property, c.label)).collect::<Vec<_>>())
            .into_iter()
            .map(|(property, label)| {
                let chosen = flag(move || shown().is_some_and(|c| c.property == property));
                view! {
                    <option value=property.name() prop:selected=chosen>
                        {words::title(label)}
                    </option>
                }
            })
            .collect_view()
    };
    let choose = move |event: web_sys::Event| {
        let picked = event_target_value(&event);
        if let Some(property) = Property::ALL.into_iter().find(|p| p.name() == picked) {
            wanted.set(property);
        }
    };
    let repaint = expect_context::<Repaint>();
    view! {
        <section id="course" hidden=flag(move || shown().is_none())>
            <h3>{words::COURSE}</h3>
            <label class="field">
                <span class="field-name">{words::COURSE_OF}</span>
                <select on:change=changed(choose)>{options}</select>
            </label>
            <figure>
                <figcaption>{words::COURSE_HOW_TO_READ}</figcaption>
                {chart(
                    repaint,
                    || words::COURSE_CHART.into(),
                    move || if shown().is_some() { HEIGHT } else { 0.0 },
                    move |sheet, pen| {
                        if let Some(course) = shown() {
                            draw(sheet, pen, &course);
                        }
                    },
                )}
            </figure>
            {move || shown().map(|course| table(page, course))} {reaction(page)} {exchange(page)}
        </section>
    }
    .into_any()
}

/// The cations on the exchange before and after.
fn exchange(page: Page) -> impl IntoView {
    let shift = soon(page, exchange_shift);
    let of = move || shift.look(|shift| shift.clone().unwrap_or_default());
    view! {
        <div id="exchange" hidden=flag(move || shift.look(Option::is_none))>
            <h3>{words::EXCHANGE}</h3>
            <p>{text(move || of().text)}</p>
            <details class="fold">
                <summary>{words::EXCHANGE_SHARES}</summary>
                {figures(page, move || of().figures)}
            </details>
        </div>
    }
}

/// The words for the directions, the numbers by week, and the parts.
fn table(page: Page, course: Course) -> impl IntoView {
    let [week, month, year] = course.directions;
    let unit = course.unit;
    let effect = page.of_plan(|plan| {
        plan.effects
            .iter()
            .find(|effect| effect.property == course.property)
            .cloned()
            .into_iter()
            .collect::<Vec<_>>()
    });
    let with_trial = effect.into_iter().next().and_then(|effect| {
        let with = value(page, effect.with_trial.as_ref()?);
        let said = words::trial::month_with_trial(&with, &value(page, &effect.change));
        Some(view! { <p class="with-trial">{said}</p> })
    });
    let cells = move |band: &Band| {
        view! {
            <td>{amount(band.low, unit)}</td>
            <td>{amount(band.likely, unit)}</td>
            <td>{amount(band.high, unit)}</td>
        }
    };
    let rows: Vec<_> = WEEKS
        .iter()
        .zip(&course.change)
        .map(|(week, band)| {
            view! { <tr><th scope="row">{words::week(*week)}</th>{cells(band)}</tr> }
        })
        .collect();
    let last = WEEKS.len() - 1;
    let parts: Vec<_> = course
        .parts
        .iter()
        .map(|part| {
            let name = words::title(part.name);
            view! { <tr><th scope="row">{name}</th>{cells(&part.change[last])}</tr> }
        })
        .collect();
    let head = |first: &'static str| {
        view! {
            <thead>
                <tr>
                    <th scope="col">{first}</th>
                    <th scope="col">{words::COLUMN_LOW}</th>
                    <th scope="col">{words::COLUMN_LIKELY}</th>
                    <th scope="col">{words::COLUMN_HIGH}</th>
                </tr>
            </thead>
        }
    };
    view! {
        <p>{words::course_directions(week, month, year)}</p>
        {with_trial}
        {opened_grounds(course.label, course.grounds)}
        <details class="fold">
            <summary>{words::AS_A_TABLE}</summary>
            <table>{head(words::COLUMN_WEEK)}<tbody>{rows}</tbody></table>
            <p class="aside-word">{words::COURSE_PARTS}</p>
            <table>{head(words::COLUMN_PART)}<tbody>{parts}</tbody></table>
        </details>
    }
}

fn amount(value: f64, unit: Unit) -> String {
    let sign = if value > 0.0 { "+" } else { "" };
    let number = significant(value, 2).replace('-', "−");
    let symbol = if unit == Unit::Percent { "\u{a0}%" } else { "" };
    format!("{sign}{number}{symbol}")
}

/// The likely line within the band of what is possible, over the weeks.
fn draw(sheet: &Sheet, pen: &Pen, course: &Course) {
    let (width, height) = sheet.dim_in_pixel();
    let (left, right) = (pen.px(60.0), width as i32 - pen.px(16.0));
    let (top, bottom) = (pen.px(14.0), height as i32 - pen.px(40.0));
    let least = if course.unit == Unit::Percent { 10.0 } else { 0.2 };
    let most = if course.unit == Unit::Percent { MOST } else { 4.0 };
    let ends = |pick: fn(&Band) -> f64| course.change.iter().map(pick);
    let low = ends(|b| b.low).fold(-least, f64::min).max(-most);
    let high = ends(|b| b.high).fold(least, f64::max).min(most);
    let x = |week: f64| left + (week / 52.0 * f64::from(right - left)).round() as i32;
    let y = |change: f64| {
        let share = (change.clamp(low, high) - low) / (high - low);
        bottom - (share * f64::from(bottom - top)).round() as i32
    };
    // Ignored throughout: a canvas that can't be drawn on stays blank; the
    // table has the same numbers.
    for mark in [low, 0.0, high] {
        let number = amount(mark, course.unit);
        level_line(sheet, pen, (left, right), y(mark), mark == 0.0, &number);
    }
    let weeks = || WEEKS.iter().zip(&course.change);
    let upper = weeks().map(|(week, band)| (x(*week), y(band.high)));
    let lower = weeks().rev().map(|(week, band)| (x(*week), y(band.low)));
    let band: Vec<_> = upper.chain(lower).collect();
    let _ = sheet.draw(&Polygon::new(band, pen.possible.filled()));
    let likely: Vec<_> = weeks().map(|(week, band)| (x(*week), y(band.likely))).collect();
    let _ = sheet.draw(&PathElement::new(likely, pen.line(pen.likely.mix(1.0), 2.5)));
    for week in [0.0, 12.0, 26.0, 39.0, 52.0] {
        let anchor = match week {
            0.0 => HPos::Left,
            52.0 => HPos::Right,
            _ => HPos::Center,
        };
        let at = (x(week), bottom + pen.px(18.0));
        pen.write(sheet, &words::week(week), at, anchor);
    }
}
