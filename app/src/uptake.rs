//! How fast biochar takes up a charge.

use leptos::prelude::*;
use plotters::element::{PathElement, Polygon};
use plotters::prelude::Color;
use plotters::style::text_anchor::HPos;

use crate::chart::{Pen, Repaint, Sheet, chart, level_line};
use crate::living::flag;
use crate::soon::soon_of;
use crate::state::Page;
use crate::words;

/// Day, and the low, likely and high share taken up, in per cent.
type Point = (f64, f64, f64, f64);

const HEIGHT: f64 = 220.0;

/// The chart and its table.
pub fn uptake(page: Page) -> AnyView {
    let found = soon_of(move || {
        page.of_plan(|plan| plan.charging.as_ref().map(|c| c.uptake.clone())).unwrap_or_default()
    });
    let points = move || found.get();
    let repaint = expect_context::<Repaint>();
    view! {
        <div hidden=flag(move || points().is_empty())>
            <h3>{words::UPTAKE}</h3>
            <figure>
                <figcaption>{words::UPTAKE_HOW_TO_READ}</figcaption>
                {chart(
                    repaint,
                    || words::UPTAKE_CHART.into(),
                    move || if points().is_empty() { 0.0 } else { HEIGHT },
                    move |sheet, pen| draw(sheet, pen, &points()),
                )}
            </figure>
            <details class="fold">
                <summary>{words::AS_A_TABLE}</summary>
                <table>
                    <thead>
                        <tr>
                            <th scope="col">{words::COLUMN_DAY}</th>
                            <th scope="col">{words::COLUMN_LOW}</th>
                            <th scope="col">{words::COLUMN_LIKELY}</th>
                            <th scope="col">{words::COLUMN_HIGH}</th>
                        </tr>
                    </thead>
                    <tbody>
                        {move || {
                            points()
                                .into_iter()
                                .map(|(day, low, likely, high)| {
                                    view! {
                                        <tr>
                                            <th scope="row">{format!("{day:.0}")}</th>
                                            <td>{per_cent(low)}</td>
                                            <td>{per_cent(likely)}</td>
                                            <td>{per_cent(high)}</td>
                                        </tr>
                                    }
                                })
                                .collect_view()
                        }}
                    </tbody>
                </table>
            </details>
        </div>
    }
    .into_any()
}

fn per_cent(share: f64) -> String {
    format!("{share:.0}\u{a0}%")
}

/// The likely line within the band of what is possible.
fn draw(sheet: &Sheet, pen: &Pen, points: &[Point]) {
    let Some(last) = points.last().map(|point| point.0).filter(|day| *day > 0.0) else { return };
    let (width, height) = sheet.dim_in_pixel();
    let (left, right) = (pen.px(52.0), width as i32 - pen.px(16.0));
    let (top, bottom) = (pen.px(14.0), height as i32 - pen.px(40.0));
    let x = |day: f64| left + (day / last * f64::from(right - left)).round() as i32;
    let y = |share: f64| bottom - (share / 100.0 * f64::from(bottom - top)).round() as i32;
    // Ignored throughout: a canvas that can't be drawn on stays blank; the
    // table has the same numbers.
    for share in [0.0, 25.0, 50.0, 75.0, 100.0] {
        level_line(sheet, pen, (left, right), y(share), share == 0.0, &per_cent(share));
    }
    let upper = points.iter().map(|&(day, _, _, high)| (x(day), y(high)));
    let lower = points.iter().rev().map(|&(day, low, _, _)| (x(day), y(low)));
    let band: Vec<_> = upper.chain(lower).collect();
    let _ = sheet.draw(&Polygon::new(band, pen.possible.filled()));
    let likely: Vec<_> = points.iter().map(|&(day, _, likely, _)| (x(day), y(likely))).collect();
    let _ = sheet.draw(&PathElement::new(likely, pen.line(pen.likely.mix(1.0), 2.5)));
    for day in [0.0, (last / 2.0).round(), last] {
        let anchor = if day == 0.0 {
            HPos::Left
        } else if day == last {
            HPos::Right
        } else {
            HPos::Center
        };
        let at = (x(day), bottom + pen.px(18.0));
        pen.write(sheet, &words::day(day), at, anchor);
    }
}
