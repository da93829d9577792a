//! The region's own way to lime, where no buffer was measured: its table by pH and soil, or the
//! base saturation it wants.

use crate::facts::Reckoned;
use crate::plan::needs::lime_by_buffer::Published;
use crate::quantity::{Band, Grounds, Unit, significant};
use crate::region::{RegionalLime, WantedSaturation};
use crate::soil::Property;
use crate::sources::*;
use crate::survey::{Reaction, Survey, WATER_OVER_SALT};

/// The depth that lime by base saturation is for, cm.
/// Source: agronomists' page of 2010 on liming in Brazil (second-hand).
const SATURATED_DEPTH: f64 = 20.0;

/// The amount by base saturation: t/ha = (V₂ − V₁) × T ÷ 100, for pure lime and 20 cm, where T is
/// the exchange capacity at pH 7 by volume (cmol(c)/dm³) and V the base saturation (%).
///
/// Source: agronomists' page of 2010 on liming in Brazil (second-hand).
pub(super) fn by_base_saturation(survey: &Survey<'_>) -> Option<Published> {
    let region = survey.region?;
    let wanted = WantedSaturation::all()
        .iter()
        .find(|row| row.region == region.id && row.plants.contains(&survey.plants()))?;
    let now = survey.soil.value(Property::BaseSaturation)?;
    let capacity = survey.soil.get(Property::Cec)?.amount.exact().filter(|cec| *cec > 0.0)?;
    let rate = saturation_lime(now, wanted.wanted, capacity);
    let mut grounds = Grounds::new(
        "Lime by base saturation: (wanted − found) × exchange capacity at pH 7 ÷ 100 = t/ha of pure lime for 20 cm.",
        &[BR_CALAGEM_EXAMPLES_2010.second_hand()],
    )
    .input("base saturation", survey.shown(&Band::exactly(now), Unit::Percent))
    .input("wanted", survey.shown(&Band::exactly(wanted.wanted), Unit::Percent))
    .input("exchange capacity at pH 7, cmol(c)/dm³", significant(capacity, 3))
    .input("region", region.name);
    grounds.sources.extend(wanted.citations);
    if !wanted.note.is_none() {
        grounds = grounds.assume(wanted.note.clone());
    }
    let rate = Band::exactly(rate);
    Some(Published { rate, depth_cm: SATURATED_DEPTH, grounds, for_turf: false, other: None })
}

/// Pure lime, t/ha for 20 cm, from one base saturation (%) to another by the exchange capacity at
/// pH 7 (cmol(c)/dm³); none where the soil has what is wanted.
pub fn saturation_lime(found: f64, wanted: f64, capacity: f64) -> f64 {
    ((wanted - found) * capacity / 100.0).max(0.0)
}

/// The amount by the region's table. Where the texture is not known, the band reaches over
/// the columns of all textures. `None` where the region has no table for this ground.
pub(super) fn by_region(survey: &Survey<'_>, reaction: &Reaction) -> Option<Published> {
    let (tables, known) = survey.lime_tables_of_here();
    // A printed table in the solution that was measured comes first.
    let salt = survey.soil.value(Property::SaltPh);
    let measured = |table: &&RegionalLime| (table.by == Reckoned::Salt) == salt.is_some();
    let own: Vec<&RegionalLime> = tables.iter().copied().filter(measured).collect();
    let tables = if own.is_empty() { tables } else { own };
    let rate = |table: &&RegionalLime| match table.by {
        Reckoned::Water => table.rate(reaction.ph, reaction.target),
        Reckoned::Salt => {
            let ph = salt.unwrap_or(reaction.ph - WATER_OVER_SALT);
            table.rate(ph, reaction.target - WATER_OVER_SALT)
        }
    };
    let mut rates: Vec<f64> = tables.iter().filter_map(rate).collect();
    rates.sort_unstable_by(f64::total_cmp);
    let (low, high) = (*rates.first()?, *rates.last()?);
    let likely = rates[rates.len() / 2];
    let first = *tables.first()?;
    Some(Published {
        rate: Band::new(low, likely, high),
        depth_cm: first.depth_cm,
        grounds: grounds(survey, &tables, known, salt),
        for_turf: survey.is_lawn(),
        other: None,
    })
}

fn grounds(
    survey: &Survey<'_>,
    tables: &[&RegionalLime],
    known: bool,
    salt: Option<f64>,
) -> Grounds {
    let mut citations: Vec<Citation> = Vec::new();
    for citation in tables.iter().flat_map(|table| table.citations) {
        if !citations.contains(citation) {
            citations.push(*citation);
        }
    }
    let mut grounds = Grounds::new(
        "The lime table of the region: row by pH, column by the kind of soil, straight lines between, down to the pH to reach.",
        &citations,
    );
    if let Some(region) = survey.region {
        grounds = grounds.input("region", region.name);
    }
    if let Some(texture) = survey.texture.filter(|_| known) {
        grounds = grounds.input("texture", texture.label());
    }
    if let Some(salt) = salt {
        grounds = grounds.input("pH in salt solution", significant(salt, 2));
    } else if tables.iter().any(|table| table.by == Reckoned::Salt) {
        grounds = grounds.assume("The table goes by pH in salt solution, taken to be 0.5 lower.");
    }
    if !known {
        grounds = grounds.assume(
            "What the table parts soils by is not known: the band reaches over all of its columns.",
        );
    }
    if let [only] = tables {
        grounds =
            grounds.input("for a layer of", survey.shown(&Band::exactly(only.depth_cm), Unit::Cm));
        if !only.note.is_none() {
            grounds = grounds.assume(only.note.clone());
        }
    }
    grounds
}
