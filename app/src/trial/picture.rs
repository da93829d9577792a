//! The pictures of a trial, as SVG: on the page in its own ink, and as a file.

use std::fmt::Write as _;

use emberloam_engine::quantity::significant;
use emberloam_engine::trial::{Evaluation, Interval, TrialResult, Verdict};

use crate::markup::escaped;
use crate::words::trial as words;

/// The width that all is drawn in: it can be read on a small phone.
const WIDE: f64 = 360.0;
/// The sheet reaches so far to either side of nought, standard deviations, or as far as it must.
const REACH: f64 = 2.0;
/// What lies farther than this stands at its edge.
const FARTHEST: f64 = 40.0;
const ROW: f64 = 46.0;

/// A text at a place.
fn write_at(svg: &mut String, x: f64, y: f64, anchor: &str, text: &str) {
    let plain = escaped(text);
    // Ignored, here and below: writing into a text can't fail.
    let _ = write!(
        svg,
        "<text x=\"{x:.0}\" y=\"{y:.0}\" text-anchor=\"{anchor}\" font-size=\"14\" font-family=\"sans-serif\" fill=\"currentColor\">{plain}</text>"
    );
}

fn open(high: f64) -> String {
    format!("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDE} {high:.0}\">")
}

/// A line of the sheet: what, its difference with its span in standard deviations, the verdict.
struct Line {
    name: String,
    span: Option<Interval>,
    verdict: Verdict,
}

fn lines_of(found: &Evaluation, say: &dyn Fn(&str) -> String) -> Vec<Line> {
    let several = found.treatments.len() > 2;
    let mut all = Vec::new();
    for result in &found.results {
        for of in &result.comparisons {
            let label = say(&result.label);
            let treatment = found.treatments.get(of.treatment).map(|level| level.name.as_str());
            let name = match treatment.filter(|_| several) {
                Some(treatment) => format!("{label}: {treatment}"),
                None => label,
            };
            let scatter = result.residual_sd.filter(|sd| *sd > 0.0);
            let span = scatter.and_then(|sd| {
                let Interval { low, high, .. } = of.guarded.or(of.interval)?;
                Some(Interval { low: low / sd, value: of.difference / sd, high: high / sd })
            });
            all.push(Line { name, span, verdict: of.verdict });
        }
    }
    all
}

/// All properties on one sheet of standardised differences.
fn drawn(found: &Evaluation, say: &dyn Fn(&str) -> String) -> (String, f64) {
    let lines = lines_of(found, say);
    let ends = lines.iter().filter_map(|line| line.span).flat_map(|span| [span.low, span.high]);
    let reach = ends.map(f64::abs).fold(REACH, f64::max).min(FARTHEST).ceil();
    let at = |sd: f64| 180.0 + sd.clamp(-reach, reach) / reach * 168.0;
    let high = lines.len() as f64 * ROW + 30.0;
    let mut svg = String::new();
    let _ = write!(
        svg,
        "<path d=\"M180 4V{0:.0}M12 {0:.0}H348\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"1\" opacity=\"0.5\"/>",
        high - 22.0
    );
    for mark in [-1.0, -0.5, 0.0, 0.5, 1.0].map(|share| share * reach) {
        write_at(
            &mut svg,
            at(mark).clamp(14.0, 346.0),
            high - 4.0,
            "middle",
            &significant(mark, 2),
        );
    }
    for (row, line) in lines.iter().enumerate() {
        let top = row as f64 * ROW;
        let arrow = match line.verdict {
            Verdict::Rose => "▲",
            Verdict::Fell => "▼",
            _ => "",
        };
        write_at(&mut svg, 4.0, top + 16.0, "start", &line.name);
        let (verdict, right) = (say(words::verdict(line.verdict)), 356.0);
        let beside = if arrow.is_empty() { right } else { right - 18.0 };
        write_at(&mut svg, beside, top + 16.0, "end", &verdict);
        write_at(&mut svg, right, top + 16.0, "end", arrow);
        let Some(Interval { low, value, high }) = line.span else { continue };
        let solid = if arrow.is_empty() { "none" } else { "currentColor" };
        let y = top + 30.0;
        let _ = write!(
            svg,
            "<path d=\"M{:.1} {y}H{:.1}\" stroke=\"currentColor\" stroke-width=\"3\" stroke-linecap=\"round\"/><circle cx=\"{:.1}\" cy=\"{y}\" r=\"5\" fill=\"{solid}\" stroke=\"currentColor\" stroke-width=\"2\"/>",
            at(low),
            at(high),
            at(value)
        );
    }
    (svg, high)
}

/// The sheet for the page.
pub fn sheet(found: &Evaluation, say: &dyn Fn(&str) -> String) -> String {
    let (inside, high) = drawn(found, say);
    open(high) + &inside + "</svg>"
}

/// The sheet for a slide, 16 by 9, under its headline.
pub fn slide(found: &Evaluation, say: &dyn Fn(&str) -> String) -> String {
    let (inside, high) = drawn(found, say);
    let scale = (700.0 / high).min(3.4);
    let left = (1600.0 - WIDE * scale) / 2.0;
    let mut svg = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1600\" height=\"900\" viewBox=\"0 0 1600 900\" color=\"#2b2118\"><rect width=\"1600\" height=\"900\" fill=\"#f3ebdd\"/><g transform=\"translate(60 66) scale(2.4)\">",
    );
    write_at(&mut svg, 0.0, 14.0, "start", &say(&found.headline));
    let _ = write!(
        svg,
        "</g><g transform=\"translate({left:.0} 150) scale({scale:.2})\">{inside}</g></svg>"
    );
    svg
}

/// Each plot as a dot, a line for the mean of each treatment; what stands in one block is joined.
pub fn plots(result: &TrialResult, found: &Evaluation) -> String {
    let values = || result.groups.iter().flat_map(|group| group.readings.iter().map(|r| r.value));
    let (low, high) =
        values().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
    if !(low.is_finite() && high.is_finite()) {
        return String::new();
    }
    let width = if high > low { high - low } else { 1.0 };
    let at = |value: f64| 16.0 + (value - low) / width * 328.0;
    let tall = result.groups.len() as f64 * ROW + 24.0;
    let mut svg = open(tall);
    let row = |at: usize| at as f64 * ROW + 30.0;
    for (upper, pair) in result.groups.windows(2).enumerate() {
        for reading in pair[0].readings.iter().filter(|reading| !reading.block.is_empty()) {
            let other = pair[1].readings.iter().find(|other| other.block == reading.block);
            let Some(other) = other else { continue };
            let _ = write!(
                svg,
                "<path d=\"M{:.1} {}L{:.1} {}\" stroke=\"currentColor\" opacity=\"0.35\"/>",
                at(reading.value),
                row(upper),
                at(other.value),
                row(upper + 1)
            );
        }
    }
    for (line, group) in result.groups.iter().enumerate() {
        let y = row(line);
        let name = found.treatments.get(group.treatment).map_or("", |level| level.name.as_str());
        write_at(&mut svg, 4.0, y - 14.0, "start", name);
        for reading in &group.readings {
            let fill = if reading.at_limit { "none" } else { "currentColor" };
            let _ = write!(
                svg,
                "<circle cx=\"{:.1}\" cy=\"{y}\" r=\"4.5\" fill=\"{fill}\" stroke=\"currentColor\" opacity=\"0.75\"/>",
                at(reading.value)
            );
        }
        let _ = write!(
            svg,
            "<path d=\"M{0:.1} {1}V{2}\" stroke=\"currentColor\" stroke-width=\"2.5\"/>",
            at(group.mean.clamp(low, high)),
            y - 9.0,
            y + 9.0
        );
    }
    write_at(&mut svg, 16.0, tall - 2.0, "start", &significant(low, 3));
    write_at(&mut svg, 344.0, tall - 2.0, "end", &significant(high, 3));
    svg + "</svg>"
}
