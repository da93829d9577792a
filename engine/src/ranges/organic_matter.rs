//! Organic matter by texture.

use crate::ranges::scheme::{Placed, Scheme, add_opinion, place};
use crate::ranges::tables;
use crate::ranges::{Finding, Level, Setting};
use crate::soil::{Measure, Property, Soil, Texture};
use crate::sources::RUTGERS_ORGANIC_MATTER;

/// The tables for organic matter that judge, one for some textures each.
fn columns() -> impl DoubleEndedIterator<Item = &'static Scheme> {
    tables::all().filter(|s| s.property == Property::OrganicMatter && !s.judges.is_empty())
}

/// The column for a texture. Sand takes the loamy sand column; all that is finer than loam takes
/// the silt loam column, as the table says of clay loam and clay.
fn column_of(texture: Texture) -> Option<&'static Scheme> {
    columns().find(|column| column.soils.include(&Soil::default(), Some(texture), None))
}

/// Whether the texture decides the level of this organic matter.
pub fn texture_decides(measure: &Measure) -> bool {
    common_level(measure).is_none()
}

/// The level that all textures agree on.
fn common_level(measure: &Measure) -> Option<Level> {
    let mut levels = columns().map(|scheme| match place(&scheme.steps(), measure.amount) {
        Placed::On(step) | Placed::OnOrBeyond(step) => Some(step.level),
        Placed::Between(..) => None,
    });
    let first = levels.next()??;
    levels.all(|level| level == Some(first)).then_some(first)
}

/// Judges organic matter, %.
pub(super) fn judge(measure: &Measure, setting: &Setting) -> Finding {
    let column = match setting.texture {
        Some(texture) => column_of(texture),
        // All columns agree, so that any of them will do; the finest is the widest.
        None if !texture_decides(measure) => columns().next_back(),
        None => {
            return Finding {
                source: Some(&RUTGERS_ORGANIC_MATTER),
                ..Finding::not_judged(
                    "How much organic matter is enough depends on the texture. Say whether the soil is sandy, loamy or clayey.",
                )
            };
        }
    };
    let Some(mut finding) = column.and_then(|column| column.judge(measure, None)) else {
        return Finding::not_judged("Organic matter is judged in %. Put the unit right.");
    };
    finding.grounds = match setting.texture {
        Some(texture) => finding.grounds.input("texture", texture.label()),
        None => finding.grounds.assume("The texture is not known; every texture gives this level."),
    };
    if measure.amount.number() > 10.0 {
        finding.grounds = finding.grounds.assume(
            "More than 10 % is not recommended for a general growing medium by the same source.",
        );
    }
    let others = tables::all().filter(|s| s.property == measure.property && !s.second.is_empty());
    for other in others.filter_map(|scheme| scheme.judge(measure, None)) {
        add_opinion(&mut finding, other);
    }
    finding
}
