//! What a wet season takes of the nitrate, with and without biochar: figures,
//! chart and table.

use emberloam_engine::case::WetSeason;
use emberloam_engine::details::{MonthLoss, winter_loss};
use emberloam_engine::quantity::{Band, Measures, Unit, shown};
use leptos::prelude::*;
use plotters::element::{PathElement, Polygon};
use plotters::prelude::Color;
use plotters::style::text_anchor::HPos;

use crate::control::choice;
use crate::deferred::soon;
use crate::figure::figures;
use crate::in_place::{Look, flag, text};
use crate::specialists::chart::{Pen, Repaint, Sheet, chart, level_line};
use crate::state::Page;
use crate::words;

const HEIGHT: f64 = 240.0;

/// The section.
pub fn winter(page: Page) -> AnyView {
    let loss = soon(page, winter_loss);
    let of = move || loss.look(|loss| loss.clone().unwrap_or_default());
    let months =
        move || loss.look(|loss| loss.as_ref().map_or_else(Vec::new, |l| l.months.clone()));
    let classes = WetSeason::ALL.map(|class| (class, words::wet_season(class))).into();
    let repaint = expect_context::<Repaint>();
    view! {
        <section id="winter" hidden=flag(move || loss.look(Option::is_none))>
            <h3>{words::WINTER_LOSS}</h3>
            <p>{text(move || of().text)}</p>
            {choice(
                page,
                words::WET_SEASON,
                classes,
                |case| case.season.wet_season,
                |case, value| case.season.wet_season = value,
            )}
            {figures(page, move || of().figures)}
            <figure>
                <figcaption>{words::LOSS_HOW_TO_READ}</figcaption>
                {chart(
                    repaint,
                    || words::LOSS_CHART.into(),
                    move || if months().is_empty() { 0.0 } else { HEIGHT },
                    move |sheet, pen| draw(sheet, pen, &months(), page.measures()),
                )}
            </figure>
            <details class="fold">
                <summary>{words::AS_A_TABLE}</summary>
                <table>
                    <thead>
                        <tr>
                            <th scope="col">{words::COLUMN_MONTH}</th>
                            <th scope="col">{words::COLUMN_DRAINS}</th>
                            <th scope="col">{words::COLUMN_BURNS}</th>
                            <th scope="col">{words::COLUMN_SCOTTER}</th>
                            <th scope="col">{words::COLUMN_WITH}</th>
                        </tr>
                    </thead>
                    <tbody>{move || rows(&months(), page.measures())}</tbody>
                </table>
            </details>
        </section>
    }
    .into_any()
}

fn rows(months: &[MonthLoss], measures: Measures) -> Vec<AnyView> {
    months
        .iter()
        .enumerate()
        .map(|(at, month)| {
            let lost = |band: &Band| shown(band, month.unit, measures);
            view! {
                <tr>
                    <th scope="row">{words::month(month.month, at)}</th>
                    <td>{shown(&month.drains, Unit::Mm, measures)}</td>
                    <td>{lost(&month.burns)}</td>
                    <td>{lost(&month.scotter)}</td>
                    <td>{month.with.as_ref().map_or_else(|| "–".into(), lost)}</td>
                </tr>
            }
            .into_any()
        })
        .collect()
}

/// Both likely lines within the band of what is possible, and the line with
/// biochar as dashes, so that it can be told without its colour.
fn draw(sheet: &Sheet, pen: &Pen, months: &[MonthLoss], measures: Measures) {
    let (width, height) = sheet.dim_in_pixel();
    let (left, right) = (pen.px(84.0), width as i32 - pen.px(16.0));
    let (top, bottom) = (pen.px(14.0), height as i32 - pen.px(40.0));
    let most = months.iter().map(|m| m.burns.high.max(m.scotter.high)).fold(0.0, f64::max);
    let Some(unit) = months.first().map(|month| month.unit).filter(|_| most > 0.0) else {
        return;
    };
    let span = f64::from(right - left) / months.len() as f64;
    let x = |month: usize| left + (month as f64 * span).round() as i32;
    let y = |lost: f64| bottom - (lost / most * f64::from(bottom - top)).round() as i32;
    // Ignored throughout: a canvas that can't be drawn on stays blank; the
    // table has the same numbers.
    for share in [0.0, 0.5, 1.0] {
        let number = shown(&Band::exactly(share * most), unit, measures);
        level_line(sheet, pen, (left, right), y(share * most), share == 0.0, &number);
    }
    let line = |of: fn(&MonthLoss) -> f64| {
        let points = months.iter().enumerate().map(|(at, month)| (x(at + 1), y(of(month))));
        std::iter::once((x(0), y(0.0))).chain(points).collect::<Vec<_>>()
    };
    let upper = line(|m| m.burns.high.max(m.scotter.high));
    let lower = line(|m| m.burns.low.min(m.scotter.low));
    let band: Vec<_> = upper.into_iter().chain(lower.into_iter().rev()).collect();
    let _ = sheet.draw(&Polygon::new(band, pen.possible.filled()));
    for points in [line(|m| m.burns.likely), line(|m| m.scotter.likely)] {
        let _ = sheet.draw(&PathElement::new(points, pen.line(pen.likely.mix(1.0), 2.0)));
    }
    if months.iter().all(|month| month.with.is_some()) {
        for ends in line(|m| m.with.map_or(0.0, |with| with.likely)).windows(2) {
            dashes(sheet, pen, ends[0], ends[1]);
        }
    }
    for (at, month) in months.iter().enumerate() {
        let name = words::month(month.month, at);
        let short: String = match month.month {
            Some(_) => name.chars().take(3).collect(),
            None => (at + 1).to_string(),
        };
        let middle = (x(at) + x(at + 1)) / 2;
        pen.write(sheet, &short, (middle, bottom + pen.px(18.0)), HPos::Center);
    }
}

/// A broken line between two points.
fn dashes(sheet: &Sheet, pen: &Pen, from: (i32, i32), to: (i32, i32)) {
    const COUNT: i32 = 9;
    let at = |part: i32| {
        (from.0 + (to.0 - from.0) * part / COUNT, from.1 + (to.1 - from.1) * part / COUNT)
    };
    for part in (0..COUNT).step_by(2) {
        let line = pen.line(pen.ink.mix(1.0), 2.0);
        let _ = sheet.draw(&PathElement::new([at(part), at(part + 1)], line));
    }
}
