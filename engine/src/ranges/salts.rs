//! Salts: the classes hold for saturated paste; other mixes of soil and water
//! are brought to it by every published equation, and judged only where all
//! of them agree.

use crate::facts::Grain;
use crate::quantity::{Band, Grounds, Unit};
use crate::ranges::scheme::{Placed, Scheme, add_opinion, amount_text, place};
use crate::ranges::{Finding, Setting, Step, tables};
use crate::soil::{Amount, Measure, Method, Property, Texture};
use crate::sources::*;

/// The table for salts in this mix of soil and water; the classes are those of saturated paste.
fn table_for(mix: Method) -> Option<&'static Scheme> {
    tables::all().find(|s| s.property == Property::Ec && s.methods.contains(&mix))
}

/// One published line from a mix of soil and water to saturated paste:
/// ECe = slope × EC + intercept, both in dS/m.
struct Line {
    method: Method,
    grain: Grain,
    slope: f64,
    intercept: f64,
    citation: Citation,
}

// From `engine/facts/salt_lines.csv`: every published line we know of, but for one
// (1.79 EC + 1.46) that gives salts to a soil without any.
include!(concat!(env!("OUT_DIR"), "/salt_lines.rs"));

fn grain(texture: Texture) -> Grain {
    match texture {
        Texture::Sand | Texture::LoamySand | Texture::SandyLoam => Grain::Coarse,
        Texture::Loam | Texture::SiltLoam | Texture::Silt | Texture::SandyClayLoam => Grain::Medium,
        _ => Grain::Fine,
    }
}

/// Salts as of saturated paste (ECe), dS/m, with the equations it rests on.
///
/// `None` for a mix that no equation is published for. With no method given,
/// the band takes in every mix.
pub fn as_saturated_paste(
    ec: f64,
    method: Option<Method>,
    texture: Option<Texture>,
) -> Option<(Band, Vec<Citation>)> {
    if method == Some(Method::SaturatedPaste) {
        return Some((Band::exactly(ec), Vec::new()));
    }
    let texture = texture.map(grain);
    let lines: Vec<&Line> = LINES
        .iter()
        .filter(|l| method.is_none_or(|m| m == l.method))
        .filter(|l| texture.is_none_or(|t| t == l.grain || l.grain == Grain::Any))
        .collect();
    // Paste holds less water than any of these mixes, so it can't be weaker.
    let mut values: Vec<f64> = Vec::new();
    let converted = lines.iter().map(|l| (l.slope * ec + l.intercept).max(ec));
    for value in converted.chain(method.is_none().then_some(ec)) {
        values.insert(values.partition_point(|v| *v < value), value);
    }
    let (low, high) = (*values.first()?, *values.last()?);
    let mut sources: Vec<Citation> = Vec::new();
    for l in lines {
        if !sources.contains(&l.citation) {
            sources.push(l.citation);
        }
    }
    Some((Band::new(low, values[values.len() / 2], high), sources))
}

/// Whether the salinity class hangs on how soil and water were mixed.
pub fn method_decides(measure: &Measure, texture: Option<Texture>) -> bool {
    measure.method.is_none() && class(measure, texture).is_none()
}

/// The class that all equations agree on.
fn class(measure: &Measure, texture: Option<Texture>) -> Option<Step> {
    let (band, _) = as_saturated_paste(measure.amount.number(), measure.method, texture)?;
    let classes = table_for(Method::SaturatedPaste)?.steps();
    let at = |v: f64| match place(&classes, measure.amount.with(v)) {
        Placed::On(step) | Placed::OnOrBeyond(step) => Some(step.clone()),
        Placed::Between(..) => None,
    };
    let (low, high) = (at(band.low)?, at(band.high)?);
    (low.level == high.level).then_some(low)
}

/// Judges salts.
pub(super) fn judge(measure: &Measure, setting: &Setting) -> Finding {
    if measure.method == Some(Method::SaturatedPaste) {
        let classes = table_for(Method::SaturatedPaste);
        return classes.and_then(|s| s.judge(measure, None)).unwrap_or_default();
    }
    let Some((band, sources)) =
        as_saturated_paste(measure.amount.number(), measure.method, setting.texture)
    else {
        return Finding::not_judged(
            "No published equation brings this mix of soil and water to saturated paste.",
        );
    };
    let paste = |v: f64| amount_text(Amount::Exactly((v * 100.0).round() / 100.0), Unit::DsPerM);
    let mut grounds = Grounds::new(
        "Brought to saturated paste by every published equation, then put in the salinity classes: non-saline below 2 dS/m, saline from 4.",
        &sources,
    )
    .input(measure.property.label(), amount_text(measure.amount, measure.unit))
    .input("as saturated paste", format!("{} to {}", paste(band.low), paste(band.high)))
    .assume("Paste holds less water than the mix, so its salts are not weaker.");
    grounds.sources.push(NRCS_SALINITY.opened());
    grounds.sources.push(OUR_CHOICE.unsourced());
    match measure.method {
        Some(method) => grounds = grounds.input("method", method.label()),
        None => {
            grounds =
                grounds.assume("The mix of soil and water is not known; every mix was tried.");
        }
    }
    let mut finding = Finding { source: Some(&NRCS_SALINITY), ..Finding::default() };
    match class(measure, setting.texture) {
        Some(step) => {
            finding.level = Some(step.level);
            grounds.rule = format!("{} This is {}.", grounds.rule, step.word);
        }
        None if measure.method.is_none() => {
            finding.not_judged = Some(
                "What this means depends on how the lab mixed soil and water. Say which: saturated paste, 1:1, 1:2 or 1:5.".into(),
            );
        }
        None => {
            finding.not_judged = Some(format!(
                "As saturated paste this is {} to {}, and that crosses a class. Only a paste test can tell.",
                paste(band.low),
                paste(band.high)
            ));
        }
    }
    finding.grounds = grounds;
    let own = measure.method.and_then(table_for);
    if let Some(other) = own.and_then(|scheme| scheme.judge(measure, None)) {
        add_opinion(&mut finding, other);
    }
    finding
}
