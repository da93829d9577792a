//! Salts: the classes hold for saturated paste; other mixes of soil and water
//! are brought to it by every published equation, and judged only where all
//! of them agree.

use crate::quantity::{Band, Grounds, Unit};
use crate::ranges::scheme::{Placed, Scheme, add_opinion, amount_text, place};
use crate::ranges::{Finding, Setting, Step, tables};
use crate::soil::{Amount, Measure, Method, Property, Texture};
use crate::sources::{
    AUSTRALIA_14B1, Citation, HOGG_SUSPENSION, NRCS_SALINITY, OUR_CHOICE, SALT_REVIEW, SONMEZ,
};

/// The table for salts in this mix of soil and water; the classes are those of saturated paste.
fn table_for(mix: Method) -> Option<&'static Scheme> {
    tables::all().find(|s| s.property == Property::Ec && s.methods.contains(&mix))
}

/// Texture as the equations know it.
#[derive(Clone, Copy, PartialEq)]
enum Grain {
    Coarse,
    Medium,
    Fine,
    Any,
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

const fn line(
    method: Method,
    grain: Grain,
    slope: f64,
    intercept: f64,
    citation: Citation,
) -> Line {
    Line { method, grain, slope, intercept, citation }
}

/// Every published line we know of, but for one (1.79 EC + 1.46) that gives
/// salts to a soil without any.
static LINES: &[Line] = &[
    line(Method::Water1To1, Grain::Coarse, 3.01, -0.06, SALT_REVIEW.opened()),
    line(Method::Water1To1, Grain::Medium, 3.01, -0.77, SALT_REVIEW.opened()),
    line(Method::Water1To1, Grain::Fine, 2.66, -0.97, SALT_REVIEW.opened()),
    line(Method::Water1To1, Grain::Fine, 2.96, -0.95, SALT_REVIEW.opened()),
    line(Method::Water1To1, Grain::Coarse, 2.42, 0.0, SALT_REVIEW.opened()),
    line(Method::Water1To1, Grain::Medium, 2.06, 0.0, SALT_REVIEW.opened()),
    line(Method::Water1To1, Grain::Any, 2.11, 0.0, SALT_REVIEW.opened()),
    line(Method::Water1To1, Grain::Any, 1.85, 0.0, SALT_REVIEW.opened()),
    line(Method::Water1To1, Grain::Any, 3.0, 0.0, SALT_REVIEW.opened()),
    line(Method::Water1To2, Grain::Coarse, 2.79, 0.71, SALT_REVIEW.opened()),
    line(Method::Water1To2, Grain::Medium, 2.35, -0.36, SALT_REVIEW.opened()),
    line(Method::Water1To2, Grain::Fine, 2.16, 0.03, SALT_REVIEW.opened()),
    line(Method::Water1To2, Grain::Coarse, 3.58, 0.10, HOGG_SUSPENSION.second_hand()),
    line(Method::Water1To2, Grain::Medium, 3.23, -0.67, HOGG_SUSPENSION.second_hand()),
    line(Method::Water1To2, Grain::Fine, 3.12, -0.59, HOGG_SUSPENSION.second_hand()),
    line(Method::Water1To2, Grain::Coarse, 4.30, 0.17, SONMEZ.second_hand()),
    line(Method::Water1To2, Grain::Medium, 3.84, 0.35, SONMEZ.second_hand()),
    line(Method::Water1To2, Grain::Fine, 3.68, 0.22, SONMEZ.second_hand()),
    line(Method::Water1To5, Grain::Coarse, 8.22, -0.33, SONMEZ.second_hand()),
    line(Method::Water1To5, Grain::Medium, 7.58, 0.06, SONMEZ.second_hand()),
    line(Method::Water1To5, Grain::Fine, 7.36, -0.24, SONMEZ.second_hand()),
    line(Method::Water1To5, Grain::Any, 6.4, 0.0, AUSTRALIA_14B1.opened()),
    line(Method::Water1To5, Grain::Any, 6.5, 0.0, AUSTRALIA_14B1.opened()),
    line(Method::Water1To5, Grain::Any, 6.44, -0.102, AUSTRALIA_14B1.opened()),
    line(Method::Water1To5, Grain::Any, 6.08, -0.937, AUSTRALIA_14B1.opened()),
    line(Method::Water1To5, Grain::Any, 6.29, -0.27, AUSTRALIA_14B1.opened()),
];

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
    let mut finding = Finding { source: Some(NRCS_SALINITY.title), ..Finding::default() };
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
