//! What a year's crops are given where the bed lies, as the region's own guides say.

use crate::facts::{Dressed, Way, small};
use crate::quantity::{Band, Grounds};
use crate::region::{CropNames, CropRate, Region};
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
    /// What is given in which month, kg/ha.
    pub months: &'static [(u8, Band)],
    /// Whether it is for the very crops of the bed.
    pub own: bool,
}

/// The crops that were named for this bed and have rates, by their ids.
pub(super) fn named(survey: &Survey<'_>) -> Vec<&'static str> {
    survey
        .case
        .season
        .crops
        .iter()
        .filter_map(|crop| {
            let typed = small(crop.name.trim());
            // One or several, and a grass with its lawn or without.
            let ways = [
                typed.clone(),
                typed.strip_suffix("es").unwrap_or_default().into(),
                typed.strip_suffix('s').unwrap_or_default().into(),
                format!("{typed} lawn"),
            ];
            let known = |way: &String| CropNames::of(way).map(|crop| crop.id);
            ways.iter().filter(|way| !way.is_empty()).find_map(known)
        })
        .collect()
}

/// What stands for the plants of the bed where no crop of it has a rate of its own. Wood gets no
/// nitrogen by what vegetables get.
fn of_the_group(survey: &Survey<'_>, nutrient: Dressed) -> &'static [&'static str] {
    match (survey.plants(), nutrient) {
        (PlantGroup::MixedVegetables, _) => &["mixed-garden", "any"],
        (PlantGroup::Lawn, Dressed::S) => &["lawn-cool-season", "any"],
        (PlantGroup::Lawn, _) => &["lawn-cool-season"],
        (PlantGroup::AcidLovers, Dressed::N) => &["blueberry-highbush"],
        (PlantGroup::OrnamentalsAndTrees, Dressed::N) => &["shrubs", "shade-trees"],
        _ => &["any"],
    }
}

/// What the ids of all lawns begin with.
const ANY_GRASS: &str = "lawn-";

/// The rates of a nutrient for some crops in one place, or in every place where it is empty, in
/// one way, with their bands on a soil of this level.
fn rates(
    survey: &Survey<'_>,
    (nutrient, way, level): (Dressed, Way, Option<Level>),
    (place, crops): (&str, &[&str]),
) -> Vec<(&'static CropRate, Band)> {
    // Whatever grass it is.
    let grass = |crop: &str| crops == [ANY_GRASS] && crop.starts_with(ANY_GRASS);
    survey
        .crop_rates()
        .filter(|row| place.is_empty() || row.region == place)
        .filter(|row| row.nutrient == nutrient && row.way == way)
        .filter(|row| row.crops.iter().any(|crop| crops.contains(crop) || grass(crop)))
        .filter_map(|row| {
            let at = |wanted| row.rates.iter().find(|(level, _)| *level == wanted);
            let (_, band) = level.and_then(|level| at(Some(level))).or_else(|| at(None))?;
            Some((row, *band))
        })
        .collect()
}

/// The year's dressing in this region on a soil of this level; `None` where its guides are silent.
pub(super) fn dressing(
    survey: &Survey<'_>,
    nutrient: Dressed,
    level: Option<Level>,
) -> Option<Dressing> {
    dressing_by(survey, (nutrient, Way::Soil, level))
}

/// The same in one way: for the crops that were named, else for the plants; in the region, else
/// by guides that are for no one region. A grass that was named is fed as next door before as
/// another grass; nitrogen for a crop without a rate here, and for acid-lovers, as all guides do.
pub(super) fn dressing_by(
    survey: &Survey<'_>,
    what: (Dressed, Way, Option<Level>),
) -> Option<Dressing> {
    let (named, group) = (named(survey), of_the_group(survey, what.0));
    let region = survey.region.map(|region| (region.id, region.name));
    let near = survey.region.filter(|_| survey.is_lawn()).map_or(&[][..], |region| region.near);
    let near = near.iter().filter_map(|id| Region::of(id));
    let near = near.map(|region| ((region.id, region.name), &named[..], true));
    // First next door where the months are named.
    let by_month = near.clone().filter(|((id, _), crops, _)| {
        rates(survey, what, (id, crops)).iter().any(|(row, _)| !row.months.is_empty())
    });
    let places = region.into_iter().chain([("anywhere", "")]);
    let of_all: &[&str] = match (what.0, survey.plants()) {
        (Dressed::N, _) if !named.is_empty() => &named,
        (Dressed::N, PlantGroup::AcidLovers) => group,
        _ => &[],
    };
    let grass: &[&str] = if survey.is_lawn() { &[ANY_GRASS] } else { &[] };
    let tiers = places.flat_map(|place| {
        [(place, &named[..], true), (place, group, false), (place, grass, false)]
    });
    let first = region.map(|place| (place, &named[..], true));
    let all = first.into_iter().chain(by_month).chain(near.clone()).chain(tiers).chain([(
        ("", ""),
        of_all,
        true,
    )]);
    all.into_iter().find_map(|((place, name), crops, own)| {
        let found = rates(survey, what, (place, crops));
        (!found.is_empty()).then(|| together(&found, name, own))
    })
}

/// Several crops of one bed are fed as one: their middle, within the widest of their bands.
fn together(found: &[(&'static CropRate, Band)], region: &'static str, own: bool) -> Dressing {
    let many = found.len() as f64;
    let rate = Band::new(
        found.iter().map(|(_, band)| band.low).fold(f64::INFINITY, f64::min),
        found.iter().map(|(_, band)| band.likely).sum::<f64>() / many,
        found.iter().map(|(_, band)| band.high).fold(0.0, f64::max),
    );
    let mut grounds = Grounds::new("A year's dressing by the region's own guides.", &[]);
    if region.is_empty() {
        grounds.rule = "A year's dressing by the guides of several regions.".into();
    } else {
        grounds = grounds.input("region", region);
    }
    for (row, _) in found {
        for crop in row.crops {
            grounds = grounds.input("crop", CropNames::by_id(crop).map_or(*crop, |crop| crop.name));
        }
        grounds.cite(row.citations);
        if !row.note.is_none() && !grounds.assumed.contains(&row.note) {
            grounds = grounds.assume(row.note.clone());
        }
    }
    let when = Some(found[0].0.when).filter(|when| !when.is_empty());
    let months = if let [(only, _)] = found { only.months } else { &[] };
    Dressing { rate, grounds, when, months, own }
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
