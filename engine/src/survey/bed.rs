//! The bed: its size, its depth, its soil's weight, and what stands in it.

use time::Date;

use crate::case::{self, BedKind, Case, Season};
use crate::chemistry::Chemistry;
use crate::quantity::{Band, Grounds, Measures, Unit, shown, significant};
use crate::ranges::{Finding, has_free_lime};
use crate::season::Timing;
use crate::soil::{Measure, PEAT_MATTER, PlantGroup, Property, Soil, SoilGroup, Texture};
use crate::sources::{ADAMS_1973, BULK_DENSITY, Citation, OUR_CHOICE};

/// The area until somebody says, m²: one square metre, or 100 square feet, by which guides count.
/// Our choice.
fn usual_area(measures: Measures) -> f64 {
    match measures {
        Measures::Metric => 1.0,
        Measures::Us => 9.290_304,
    }
}
/// What the area of a bed can be, m². Our choice: a hand's breadth to ten hectares.
pub(crate) const AREAS: std::ops::RangeInclusive<f64> = 0.01..=100_000.0;
/// Worked depth until somebody says, cm: as deep as most garden samples.
/// Our choice.
const USUAL_DEPTH: f64 = 15.0;
/// What a depth can be, cm. Our choice.
pub(crate) const DEPTHS: std::ops::RangeInclusive<f64> = 1.0..=100.0;
/// What a density can be, g/cm³. Our choice.
const DENSITIES: std::ops::RangeInclusive<f64> = 0.05..=2.2;

/// Density of the organic part of a soil, g/cm³. Source: Adams 1973 (from memory).
const ORGANIC_PART: f64 = 0.244;
/// How far the density of a garden soil lies either way. Source: our choice, as 1.1 to 1.5
/// lies about 1.3.
const DENSITY_WITHIN: f64 = 0.15;
/// Organic matter nobody measured, %. Our choice.
const USUAL_ORGANIC_MATTER: f64 = 3.0;
/// Density of dry potting mix, g/cm³. Source: common practice (0.1–0.4).
const POTTING_MIX: Band = Band { low: 0.1, likely: 0.25, high: 0.4 };

/// Organic matter from which a soil is an organic one, %.
/// Source: our choice; soil classes draw the line at 20 to 35 %.
pub(crate) const ORGANIC_FROM: f64 = 20.0;
/// From here on results begin to be judged by volume, %. Our choice, so that no line is a cliff.
const VOLUME_FROM: f64 = 10.0;
/// Density of the mineral soils that ranges are published for, g/cm³. Common practice.
const OF_TABLES: f64 = 1.3;

/// One fact of the bed.
#[derive(Clone, Debug, PartialEq)]
pub struct Fact<T> {
    /// What it is.
    pub value: T,
    /// Whether it was said or measured, not assumed.
    pub known: bool,
    /// What it rests on.
    pub grounds: Grounds,
}

impl<T> Fact<T> {
    fn known(value: T, name: &str, text: String) -> Fact<T> {
        Fact { value, known: true, grounds: Grounds::default().input(name, text) }
    }

    fn assumed(value: T, why: String, sources: &[Citation]) -> Fact<T> {
        Fact { value, known: false, grounds: Grounds::new("", sources).assume(why) }
    }

    /// Adds what the fact rests on to the grounds of what is worked out from it.
    pub(crate) fn add_to(&self, grounds: Grounds) -> Grounds {
        grounds.with(&self.grounds)
    }
}

/// What the roots stand in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// Mineral soil.
    Mineral,
    /// Peat, muck and the like.
    Organic,
    /// A mix for pots.
    PottingMix,
}

/// What stands in the bed now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Nothing.
    Clear,
    /// A crop, off by this day.
    Until(Date),
    /// A crop, nobody said for how long.
    Open,
    /// Grass, a tree or shrubs: roots all year.
    Lasting,
}

/// The bed.
#[derive(Clone, Debug, PartialEq)]
pub struct Bed {
    /// Its area, m²; one square metre until somebody says.
    pub area: Fact<f64>,
    /// How deep it is worked, cm.
    pub depth: Fact<f64>,
    /// From where to where the sample was taken, cm; what is printed comes before an answer.
    pub sampled: Option<(f64, f64)>,
    /// Density of the dry soil, g/cm³.
    pub density: Fact<Band>,
    /// How it is worked, where somebody said.
    pub kind: Option<BedKind>,
    /// What the roots stand in.
    pub ground: Ground,
    /// Free lime was found.
    pub limy: bool,
    /// What stands in it now.
    pub standing: Standing,
    /// What a result by weight is multiplied by to be judged as one of a mineral soil.
    volume_factor: f64,
}

impl Bed {
    pub(super) fn of(
        case: &Case,
        soil: &Soil,
        chemistry: &Chemistry,
        (texture, group): (Option<Texture>, Option<SoilGroup>),
        timing: &Timing,
        sampled: Option<(f64, f64)>,
    ) -> Bed {
        let matter = chemistry.organic_matter(soil).map(|om| om.likely.clamp(0.0, 100.0));
        // A report that says peat, and no more, is of organic soil.
        let matter = matter.or((group == Some(SoilGroup::Peat)).then_some(PEAT_MATTER));
        let kind = case.bed.kind;
        let ground = ground(kind, matter, texture);
        let density = density(soil, matter, texture, ground, case.measures);
        let far = match ground {
            Ground::PottingMix => 1.0,
            _ => matter.map_or(0.0, |om| {
                ((om - VOLUME_FROM) / (ORGANIC_FROM - VOLUME_FROM)).clamp(0.0, 1.0)
            }),
        };
        let volume_factor = 1.0 + far * ((density.value.likely / OF_TABLES).min(1.0) - 1.0);
        Bed {
            area: area(&case.bed, case.measures),
            depth: depth(&case.bed, case.measures),
            sampled,
            density,
            kind,
            ground,
            limy: has_free_lime(soil),
            standing: standing(case, timing),
            volume_factor,
        }
    }

    /// A result by weight as it is judged: light soils hold fewer roots' worth of
    /// nutrients in a litre than their weight tells.
    pub(super) fn by_volume(&self, measure: &Measure) -> Measure {
        if !self.is_lightened(measure) {
            return *measure;
        }
        let amount = measure.amount;
        Measure { amount: amount.with(amount.number() * self.volume_factor), ..*measure }
    }

    fn is_lightened(&self, measure: &Measure) -> bool {
        measure.unit == Unit::MgPerKg && self.lightens(measure.property) < 1.0
    }

    /// What a result of a property by weight is multiplied by before it is judged.
    pub(crate) fn lightens(&self, property: Property) -> f64 {
        let nutrient = property.is_extracted() || property == Property::NitrateN;
        if nutrient { self.volume_factor } else { 1.0 }
    }

    /// Says in a finding that it was judged by volume.
    pub(super) fn say_volume(&self, measure: &Measure, finding: &mut Finding) {
        if self.is_lightened(measure) {
            let judged = measure.amount.number() * self.volume_factor;
            finding.judged_as = Some(judged);
            finding.grounds.assumed.push(format!(
                "This soil is light: a litre of it holds no more than a litre of mineral soil at {} mg/kg, and that is judged.",
                significant(judged, 2)
            ).into());
            finding.grounds.sources.push(OUR_CHOICE.unsourced());
        }
    }

    /// Whether it is grass.
    pub(crate) fn is_lawn(&self) -> bool {
        self.kind == Some(BedKind::Lawn)
    }

    /// Whether it is pots.
    pub(crate) fn is_potted(&self) -> bool {
        self.kind == Some(BedKind::Container)
    }

    /// Whether anything may be dug in at all: not where roots last, nor where the
    /// gardener doesn't dig.
    pub(crate) fn is_dug(&self) -> bool {
        self.standing != Standing::Lasting
            && !matches!(self.kind, Some(BedKind::NoDig | BedKind::Lawn | BedKind::TreePit))
    }

    /// kg of dry soil on 1 m² of the worked depth.
    pub(crate) fn soil_per_m2(&self) -> Band {
        // 1 cm of 1 m² is 10 L.
        self.density.value.map(|density| 10.0 * self.depth.value * density)
    }

    /// The sampled slice, or where nobody said the worked depth, cm.
    pub(crate) fn sampled_or_worked(&self) -> (f64, f64) {
        self.sampled.unwrap_or((0.0, self.depth.value))
    }
}

fn area(bed: &case::Bed, measures: Measures) -> Fact<f64> {
    match bed.area_m2.filter(|area| AREAS.contains(area)) {
        Some(area) => {
            Fact::known(area, "area", shown(&Band::exactly(area), Unit::SquareMetre, measures))
        }
        None => {
            let usual = usual_area(measures);
            let told = shown(&Band::exactly(usual), Unit::SquareMetre, measures);
            Fact::assumed(usual, format!("{told}: the area of the bed isn't known."), &[])
        }
    }
}

fn depth(bed: &case::Bed, measures: Measures) -> Fact<f64> {
    let said = |cm| shown(&Band::exactly(cm), Unit::Cm, measures);
    match bed.depth_cm {
        Some(depth) if DEPTHS.contains(&depth) => Fact::known(depth, "worked depth", said(depth)),
        given => Fact::assumed(
            USUAL_DEPTH,
            match given {
                None => "Worked 15 cm (6 in) deep; nobody said.".into(),
                Some(_) => "Worked 15 cm (6 in) deep; a depth must be 1 to 100 cm.".into(),
            },
            &[OUR_CHOICE.unsourced()],
        ),
    }
}

fn ground(kind: Option<BedKind>, matter: Option<f64>, texture: Option<Texture>) -> Ground {
    if matter.is_some_and(|om| om >= ORGANIC_FROM) {
        Ground::Organic
    } else if kind == Some(BedKind::Container) && matter.is_none() && texture.is_none() {
        Ground::PottingMix
    } else {
        Ground::Mineral
    }
}

/// Measured, or from organic matter and texture: the organic part and the mineral
/// part each at its own density.
///
/// Source: Adams 1973 (from memory).
fn density(
    soil: &Soil,
    matter: Option<f64>,
    texture: Option<Texture>,
    ground: Ground,
    measures: Measures,
) -> Fact<Band> {
    let said = |band: &Band| shown(band, Unit::GPerCm3, measures);
    let measured = soil.value(Property::BulkDensity).filter(|d| DENSITIES.contains(d));
    if let Some(measured) = measured.map(Band::exactly) {
        return Fact::known(measured, "density of dry soil", said(&measured));
    }
    if ground == Ground::PottingMix {
        let why = format!("Dry potting mix weighs {}.", said(&POTTING_MIX));
        return Fact::assumed(POTTING_MIX, why, &[OUR_CHOICE.unsourced()]);
    }
    let om = matter.unwrap_or(USUAL_ORGANIC_MATTER);
    let likely = 100.0 / (om / ORGANIC_PART + (100.0 - om) / mineral_part(texture));
    let band = Band::new(likely * (1.0 - DENSITY_WITHIN), likely, likely * (1.0 + DENSITY_WITHIN));
    let sources = [ADAMS_1973.from_memory(), BULK_DENSITY.opened(), OUR_CHOICE.unsourced()];
    Fact::assumed(band, format!("Dry soil weighs {}; nobody weighed it.", said(&band)), &sources)
}

/// Density of the mineral part, g/cm³, so that an ordinary loam comes to 1.3.
/// Source: our choice, in the order of the densities that roots bear.
fn mineral_part(texture: Option<Texture>) -> f64 {
    match texture {
        Some(t) if t.is_sandy() => 1.65,
        Some(t) if t.is_clayey() => 1.4,
        _ => 1.5,
    }
}

/// A planting to come means that nothing lasting stands there yet.
fn standing(case: &Case, timing: &Timing) -> Standing {
    let lasts = lasts(case);
    let to_come = timing.planting.is_some() && !timing.planting_assumed;
    if lasts && !to_come {
        Standing::Lasting
    } else if timing.growing {
        timing.harvest.map_or(Standing::Open, Standing::Until)
    } else {
        Standing::Clear
    }
}

/// Whether what grows here stands for years.
fn lasts(case: &Case) -> bool {
    use PlantGroup::{AcidLovers, Berries, Lawn, OrnamentalsAndTrees};
    matches!(case.bed.kind, Some(BedKind::Lawn | BedKind::TreePit))
        || matches!(case.plants, Some(Lawn | Berries | AcidLovers))
        || case.plants == Some(OrnamentalsAndTrees) && was_planted_long_ago(&case.season)
}

/// Flowers and bulbs are planted anew; what has stood for a year stays.
fn was_planted_long_ago(season: &Season) -> bool {
    season
        .planting
        .zip(season.today)
        .is_some_and(|(planted, today)| (today - planted).whole_days() > 365)
}

/// What the dates allow. The last frost says nothing of when a lawn or a shrub is planted.
pub(super) fn timing(case: &Case) -> Timing {
    if !lasts(case) {
        return Timing::of(&case.season);
    }
    Timing::of(&Season { last_frost: None, ..case.season.clone() })
}
