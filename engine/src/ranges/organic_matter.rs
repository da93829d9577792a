//! Organic matter by texture.

use crate::quantity::Unit;
use crate::ranges::Level::{High, Low, Sufficient, VeryLow};
use crate::ranges::scheme::{
    ALL_PLANTS, BLANK, Placed, Scheme, Steps, add_opinion, named, place, rungs,
};
use crate::ranges::{Finding, Level, Setting};
use crate::soil::{Measure, Property, Texture};
use crate::sources::{RUTGERS_ORGANIC_MATTER, UMN_GARDEN};

rungs! {
    COLUMN_STEPS: below "very low" VeryLow, below "low" Low, below "medium" Sufficient,
        to "high" Sufficient, to "very high" High;
    MINNESOTA_STEPS: to "low" Low, to "medium" Sufficient, to "high" High, to "organic soil" High;
}

const fn rutgers(id: &'static str, steps: Steps) -> Scheme {
    Scheme {
        unit: Unit::Percent,
        judges: ALL_PLANTS,
        citations: const { &[RUTGERS_ORGANIC_MATTER.opened()] },
        note: "“Medium” and “high” are both taken as enough.",
        ..BLANK.table(id, Property::OrganicMatter, steps)
    }
}

/// The columns of the table, coarse to fine, and Minnesota's own classes.
pub(super) static SCHEMES: &[Scheme] = &[
    rutgers("rutgers-om-loamy-sand", Steps(COLUMN_STEPS, &[0.5, 1.0, 1.5, 2.0])),
    rutgers("rutgers-om-sandy-loam", Steps(COLUMN_STEPS, &[1.0, 1.5, 2.0, 2.5])),
    rutgers("rutgers-om-loam", Steps(COLUMN_STEPS, &[1.5, 2.0, 3.0, 4.0])),
    rutgers("rutgers-om-silt-loam", Steps(COLUMN_STEPS, &[1.5, 2.5, 4.0, 5.0])),
    Scheme {
        id: named("umn-om"),
        property: Property::OrganicMatter,
        unit: Unit::Percent,
        steps: Steps(MINNESOTA_STEPS, &[3.0, 4.5, 19.0]),
        printed_to: 0.1,
        second: ALL_PLANTS,
        citations: const { &[UMN_GARDEN.from_memory()] },
        note: "The ends of these classes are written from memory; two printed examples agree.",
        ..BLANK
    },
];

/// The table's column for a texture. Sand takes the loamy sand column; all
/// that is finer than loam takes the silt loam column, as the table says of
/// clay loam and clay.
fn column_of(texture: Texture) -> &'static Scheme {
    &SCHEMES[match texture {
        Texture::Sand | Texture::LoamySand => 0,
        Texture::SandyLoam => 1,
        Texture::Loam => 2,
        _ => 3,
    }]
}

/// Whether the texture decides the level of this organic matter.
pub fn texture_decides(measure: &Measure) -> bool {
    common_level(measure).is_none()
}

/// The level that all textures agree on.
fn common_level(measure: &Measure) -> Option<Level> {
    let mut levels =
        SCHEMES[..4].iter().map(|scheme| match place(&scheme.steps(), measure.amount) {
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
        None if !texture_decides(measure) => &SCHEMES[3],
        None => {
            return Finding {
                source: Some(RUTGERS_ORGANIC_MATTER.title),
                ..Finding::not_judged(
                    "How much organic matter is enough depends on the texture. Say whether the soil is sandy, loamy or clayey.",
                )
            };
        }
    };
    let Some(mut finding) = column.judge(measure, None) else {
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
    if let Some(other) = SCHEMES[4].judge(measure, None) {
        add_opinion(&mut finding, other);
    }
    finding
}
