//! What biochar should do to each nutrient in the first month.

use emberloam_engine::plan::Effect as SoilEffect;
use emberloam_engine::quantity::{Unit, significant};
use leptos::prelude::*;
use plotters::element::{PathElement, Polygon, Rectangle};
use plotters::prelude::Color;
use plotters::style::text_anchor::HPos;

use crate::control::tick;
use crate::deferred::soon_of;
use crate::figure::value;
use crate::grounds::opened_grounds;
use crate::in_place::{flag, settled, text};
use crate::specialists::chart::{Pen, Repaint, Sheet, chart};
use crate::state::Page;
use crate::words;
use crate::words::trial as trial_words;

/// Height of a row and of the axis, page pixels.
const ROW: f64 = 30.0;
const AXIS: f64 = 34.0;
/// The widest the axis gets, %: one huge bar must not flatten all others. A
/// bar that goes on ends in an arrow; the table has its number.
const MOST: f64 = 100.0;

/// The chart and its table.
pub fn effects(page: Page) -> AnyView {
    let found = soon_of(move || page.of_plan(|plan| plan.effects.clone()));
    let all = move || found.get();
    let drawn = move || {
        // A change of pH is not a change in per cent: it stands in the table.
        let mut drawn = all();
        drawn.retain(|effect| effect.change.unit == Unit::Percent);
        drawn
    };
    let trial = move || page.said(|case| case.trial.clone());
    let name = move || trial().map(|trial| trial_words::your_trial(&trial.name));
    let say = move |on: bool| {
        page.answer(move |case| {
            if let Some(trial) = &mut case.trial {
                trial.off = !on;
            }
        });
    };
    let height = move || drawn().len() as f64 * ROW + AXIS;
    let repaint = expect_context::<Repaint>();
    view! {
        <div hidden=flag(move || all().is_empty())>
            <h3>{words::EFFECTS}</h3>
            <div id="with-trial" hidden=flag(move || trial().is_none())>
                {tick(
                    trial_words::SAY_IT,
                    flag(move || trial().is_some_and(|trial| !trial.off)),
                    Box::new(say),
                    flag(|| false),
                )}
                <p class="soft">{text(move || name().unwrap_or_default())} ". " {trial_words::STILL_DEFAULT}</p>
            </div>
            <figure>
                <figcaption>{words::EFFECTS_HOW_TO_READ}</figcaption>
                {chart(
                    repaint,
                    || words::EFFECTS_CHART.into(),
                    height,
                    move |sheet, pen| draw(sheet, pen, &drawn()),
                )}
            </figure>
            <details class="fold">
            <summary>{words::AS_A_TABLE}</summary>
            <div class="scroll" tabindex="0" role="region" aria-label=words::EFFECTS>
                <table>
                    <thead>
                        <tr>
                            <th scope="col">{words::COLUMN_PROPERTY}</th>
                            <th scope="col">{words::COLUMN_DIRECTION}</th>
                            <th scope="col">{words::COLUMN_CHANGE}</th>
                            <th scope="col">{words::title(words::GROUNDS)}</th>
                        </tr>
                    </thead>
                    <tbody>
                        {settled(all, move |effect| row(page, effect))}
                    </tbody>
                </table>
            </div>
            </details>
        </div>
    }
    .into_any()
}

/// A row of the table.
fn row(page: Page, effect: SoilEffect) -> impl IntoView {
    let behind = effect.change.grounds.clone();
    let label = effect.property.label();
    let with = effect.with_trial.clone().map(|with| {
        let said = text(move || value(page, &with));
        view! { <p class="with-trial">{trial_words::WITH_TRIAL} " " {said}</p> }
    });
    let with_behind =
        effect.with_trial.as_ref().map(|with| opened_grounds(label, with.grounds.clone()));
    view! {
        <tr data-effect=effect.property.name()>
            <th scope="row">{words::title(effect.property.label())}</th>
            <td>{effect.direction}</td>
            <td>{text(move || value(page, &effect.change))} {with}</td>
            <td>{opened_grounds(effect.property.label(), behind)} {with_behind}</td>
        </tr>
    }
}

/// A row for each effect: a thin bar from the low to the high end, a thick
/// one from no change to the likely change.
fn draw(sheet: &Sheet, pen: &Pen, effects: &[SoilEffect]) {
    let (width, height) = sheet.dim_in_pixel();
    let (width, height) = (width as i32, height as i32);
    let ends = effects.iter().flat_map(SoilEffect::figures).flat_map(|f| [f.band.low, f.band.high]);
    let reach = ends.fold(10.0_f64, |reach, end| reach.max(end.abs())).min(MOST);
    let names = pen.px(if f64::from(width) / pen.scale < 420.0 { 96.0 } else { 150.0 });
    let margin = pen.px(30.0);
    let span = f64::from(width - names - 2 * margin);
    let x = |change: f64| names + margin + ((change / reach + 1.0) / 2.0 * span).round() as i32;
    let bottom = height - pen.px(AXIS);
    let step = axis_step(reach);
    let mut mark = -(reach / step).floor() * step;
    while mark <= reach {
        let line = pen.line(pen.faint.mix(if mark == 0.0 { 1.0 } else { 0.35 }), 1.0);
        // Ignored, here and below: a canvas that can't be drawn on stays blank;
        // the table has the same numbers.
        let _ = sheet.draw(&PathElement::new([(x(mark), 0), (x(mark), bottom)], line));
        let sign = match mark {
            up if up > 0.0 => "+",
            down if down < 0.0 => "−",
            _ => "",
        };
        let label = format!("{sign}{}\u{a0}%", significant(mark.abs(), 3));
        let at = (x(mark), bottom + pen.px(16.0));
        pen.write(sheet, &label, at, HPos::Center);
        mark += step;
    }
    for (row, effect) in effects.iter().enumerate() {
        let y = pen.px((row as f64 + 0.5) * ROW);
        let band = effect.change.band.map(|change| change.clamp(-reach, reach));
        let bar = |from: f64, to: f64, half: f64, colour: plotters::style::RGBAColor| {
            let half = pen.px(half).max(1);
            Rectangle::new([(x(from), y - half), (x(to), y + half)], colour.filled())
        };
        let _ = sheet.draw(&bar(band.low, band.high, 7.0, pen.possible.mix(1.0)));
        let goes_on = [(effect.change.band.low < -reach, -1), (effect.change.band.high > reach, 1)];
        for (_, way) in goes_on.into_iter().filter(|(beyond, _)| *beyond) {
            let tip = x(f64::from(way) * reach);
            let corners = vec![
                (tip, y - pen.px(10.0)),
                (tip + way * pen.px(10.0), y),
                (tip, y + pen.px(10.0)),
            ];
            let _ = sheet.draw(&Polygon::new(corners, pen.possible.filled()));
        }
        let (a, b) = (band.likely.min(0.0), band.likely.max(0.0));
        let _ = sheet.draw(&bar(a, b, 3.0, pen.likely.mix(1.0)));
        if let Some(with) = &effect.with_trial {
            let with = with.band.map(|change| change.clamp(-reach, reach));
            let [low, likely, high] = [with.low, with.likely, with.high].map(x);
            let below = y + pen.px(11.0);
            let line = pen.line(pen.ink.mix(1.0), 2.0);
            let _ = sheet.draw(&PathElement::new([(low, below), (high, below)], line));
            let half = pen.px(4.0);
            let mark = vec![
                (likely - half, below),
                (likely, below - half),
                (likely + half, below),
                (likely, below + half),
            ];
            let _ = sheet.draw(&Polygon::new(mark, pen.ink.filled()));
        }
        let tick = pen.px(1.5);
        let _ = sheet.draw(&Rectangle::new(
            [(x(band.likely) - tick, y - pen.px(9.0)), (x(band.likely) + tick, y + pen.px(9.0))],
            pen.ink.filled(),
        ));
        let name = words::title(effect.property.label());
        pen.write(sheet, &name, (names - pen.px(6.0), y), HPos::Right);
    }
}

/// The distance between the marks of an axis that reaches `reach` both ways:
/// 1, 2 or 5 times a power of ten, two or three marks on each side.
fn axis_step(reach: f64) -> f64 {
    let rough = reach / 2.5;
    let power = 10f64.powf(rough.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|times| times * power)
        .find(|step| *step >= rough)
        .unwrap_or(power)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_axis_has_round_marks_and_not_many() {
        for (reach, step) in [(10.0, 5.0), (25.0, 10.0), (60.0, 50.0), (48.0, 20.0), (100.0, 50.0)]
        {
            assert_eq!(axis_step(reach), step, "{reach}");
            assert!((1.0..=3.0).contains(&(reach / step).floor()), "{reach}");
        }
    }
}
