//! What a year's crops are given where the bed lies, as the region's own guides say.

use crate::facts::{Dressed, Way, small};
use crate::quantity::{Band, Grounds};
use crate::region::{CropNames, CropRate};
use crate::soil::{Level, PlantGroup};
use crate::sources::*;
use crate::survey::Survey;

/// What the region's guides give the crops of this bed.
pub(super) struct Dressing {
    /// kg/ha in a year.
    pub rate: Band,
    /// The region and the crops, with the publications.
    pub grounds: Grounds,
    /// How it is split.
    pub when: Option<&'static str>,
}

/// The crops of the bed that have rates: those that are named, else what stands for the group.
fn crops(survey: &Survey<'_>) -> Vec<&'static str> {
    let named: Vec<&str> = survey
        .case
        .season
        .crops
        .iter()
        .filter_map(|crop| {
            let name = small(crop.name.trim());
            let known = |CropNames(.., names): &&CropNames| names.contains(&name.as_str());
            CropNames::all().iter().find(known).map(|CropNames(id, ..)| *id)
        })
        .collect();
    if !named.is_empty() {
        return named;
    }
    match survey.plants() {
        PlantGroup::MixedVegetables => vec!["mixed-garden", "any"],
        PlantGroup::Lawn => vec!["lawn-cool-season"],
        _ => vec!["any"],
    }
}

/// The year's dressing in this region on a soil of this level; `None` where its guides are silent.
pub(super) fn dressing(
    survey: &Survey<'_>,
    nutrient: Dressed,
    level: Option<Level>,
) -> Option<Dressing> {
    let region = survey.region?;
    let crops = crops(survey);
    let found: Vec<(&CropRate, Band)> = survey
        .crop_rates()
        .filter(|row| row.region == region.id && row.nutrient == nutrient)
        .filter(|row| row.way == Way::Soil)
        .filter(|row| crops.contains(&row.crop))
        .filter_map(|row| {
            let at = |wanted| row.rates.iter().find(|(level, _)| *level == wanted);
            let (_, band) = level.and_then(|level| at(Some(level))).or_else(|| at(None))?;
            Some((row, *band))
        })
        .collect();
    let many = found.len() as f64;
    let first = found.first()?;
    // Several crops of one bed are fed as one: their middle, within the widest of their bands.
    let rate = Band::new(
        found.iter().map(|(_, band)| band.low).fold(f64::INFINITY, f64::min),
        found.iter().map(|(_, band)| band.likely).sum::<f64>() / many,
        found.iter().map(|(_, band)| band.high).fold(0.0, f64::max),
    );
    let mut grounds = Grounds::new("A year's dressing by the region's own guides.", &[])
        .input("region", region.name);
    for (row, _) in &found {
        let named = CropNames::all().iter().find(|CropNames(id, ..)| *id == row.crop);
        grounds = grounds.input("crop", named.map_or(row.crop, |CropNames(_, name, _)| name));
        for citation in row.citations {
            if !grounds.sources.contains(citation) {
                grounds.sources.push(*citation);
            }
        }
        if !row.note.is_empty() && !grounds.assumed.iter().any(|note| note == row.note) {
            grounds = grounds.assume(row.note);
        }
    }
    let when = Some(first.0.when).filter(|when| !when.is_empty());
    Some(Dressing { rate, grounds, when })
}

impl Dressing {
    /// What is remembered doesn't stand alone: the band reaches to what was read elsewhere.
    pub fn beside(mut self, read: Band, sources: &[Citation]) -> Dressing {
        if self.grounds.rests_on_memory() {
            let Band { low, likely, high } = self.rate;
            self.rate = Band::new(low.min(read.low), likely, high.max(read.likely));
            self.grounds.assumed.push(
                "The guide's figure is from memory, so the band reaches to what other guides give."
                    .into(),
            );
            self.grounds.sources.extend(sources);
        }
        self
    }
}
