//! One sample and its bed, surveyed once: every fact that a plan rests on, each
//! in one place with its grounds. Nothing below this room works a fact out again.

mod bed;
pub mod buffering;
pub mod capacity;
mod half_year;
mod nitrate;
mod per_area;
mod reaction;

use std::borrow::Cow;
use std::sync::Arc;

use crate::bag::Material;
use crate::case::{Case, Crop};
use crate::chemistry::{self, Chemistry, Derived};
use crate::facts::GroundUse;
use crate::normalise::{NormalReading, Normalised, normalise};
use crate::own::OwnFacts;
use crate::quantity::{Band, Unit, shown, weighed};
use crate::question::{Question, QuestionId};
use crate::ranges::{Finding, Findings, Scheme, Setting, beside_the_laboratory, judge};
use crate::region::{CropRate, Region, RegionalLime};
use crate::report::{Advice, SampleReport, parse_amount};
use crate::season::Timing;
use crate::soil::{Amount, Fit, Measure, PlantGroup, Property, Soil, SoilGroup, Texture, listed};

pub use bed::{Bed, Fact, Ground, Standing};
pub use reaction::Reaction;
pub(crate) use reaction::WATER_OVER_SALT;

/// A reading in the engine's units, with its judgement.
#[derive(Clone, Debug)]
pub(crate) struct Judged {
    pub reading: NormalReading,
    pub finding: Finding,
}

/// A sample with all that is known of it and of its bed.
///
/// What the laboratory says is shared between the variations of a survey.
#[derive(Clone, Debug)]
pub struct Survey<'a> {
    pub(crate) case: Cow<'a, Case>,
    /// Its readings, in the order of the report.
    pub(crate) readings: Arc<Vec<Judged>>,
    /// The usable measures.
    pub(crate) soil: Arc<Soil>,
    /// The judgement of each property.
    pub(crate) findings: Arc<Findings>,
    pub(crate) chemistry: Arc<Chemistry>,
    /// What the report leaves open.
    pub(crate) questions: Arc<Vec<Question>>,
    /// What the laboratory advises.
    pub(crate) advice: Arc<Vec<Advice>>,
    /// The texture, answered or read.
    pub(crate) texture: Option<Texture>,
    /// The group that its region counts the soil to, as read.
    pub(crate) group: Option<SoilGroup>,
    /// The pH that the laboratory aims at, as its report prints it.
    pub(crate) target_ph: Option<f64>,
    /// The region, answered or read.
    pub(crate) region: Option<&'static Region>,
    /// The tables of a region's own file.
    pub(crate) own: Option<&'static OwnFacts>,
    /// The bed.
    pub bed: Bed,
    /// What the dates allow.
    pub(crate) timing: Timing,
    /// The biochar on hand.
    pub(crate) material: Material,
}

/// Surveys the chosen sample. A report without samples is surveyed as an empty one.
pub fn survey(case: Cow<'_, Case>) -> Survey<'_> {
    let last = case.report.samples.len().saturating_sub(1);
    let chosen = case.sample.min(last);
    survey_of(case, chosen)
}

/// The case with the crop that the report itself names, where nobody said what grows there.
fn with_the_crop(case: Cow<'_, Case>) -> Cow<'_, Case> {
    let Some(crop) = case.crop_read() else { return case };
    let mut case = case.into_owned();
    case.plants = crop.group;
    case.season.crops.push(Crop { name: crop.name.into(), planting: None, harvest: None });
    Cow::Owned(case)
}

/// Surveys one sample of the report, by what was said of its bed.
pub(crate) fn survey_of(case: Cow<'_, Case>, at: usize) -> Survey<'_> {
    let (case, at) = match case {
        Cow::Borrowed(shared) if shared.has_own_bed(at) || shared.crop_read().is_some() => {
            (Cow::Owned(shared.of_sample_alone(at)), 0)
        }
        Cow::Owned(mut own) if own.has_own_bed(at) => {
            own.lay_over(at);
            (Cow::Owned(own), at)
        }
        shared => (shared, at),
    };
    let case = with_the_crop(case);
    let empty;
    let sample = match case.report.samples.get(at) {
        Some(sample) => sample,
        None => {
            empty = SampleReport::default();
            &empty
        }
    };
    let Normalised { readings, soil, mut questions } = normalise(sample, &case.reading);
    let texture = case.bed.texture.or(sample.texture).or_else(|| soil.texture());
    let region = region_of(&case);
    let own: &'static [Scheme] = case.own.map_or(&[], |own| own.ranges);
    let group = sample.group;
    let setting = Setting { plants: case.plants, texture, group, region, own };
    let chemistry = chemistry::work_out(&soil, &setting);
    questions.extend(chemistry.questions.iter().cloned());
    let (timing, material) = (bed::timing(&case), Material::of(&case.biochar));
    let sampled = sample.depth_cm.or(case.reading.depth_cm.filter(|d| *d > 0.0).map(|d| (0.0, d)));
    let bed = Bed::of(&case, &soil, &chemistry, (texture, group), &timing, sampled);
    let readings = judged(readings, &soil, &setting, &bed);
    questions.extend(asked_by(&readings, &questions));
    if let Some(where_) = which_region(&case, region, &readings) {
        questions.insert(0, where_);
    }
    let mut findings = Findings::default();
    for Judged { reading, finding } in &readings {
        findings.add(reading.property, finding);
    }
    Survey {
        readings: Arc::new(readings),
        soil: Arc::new(soil),
        findings: Arc::new(findings),
        chemistry: Arc::new(chemistry),
        questions: Arc::new(questions),
        advice: Arc::new(sample.advice.clone()),
        texture,
        group,
        target_ph: sample.target_ph,
        region,
        own: case.own,
        bed,
        timing,
        material,
        case,
    }
}

/// The region that was answered, else the one that the report's own words speak for.
fn region_of(case: &Case) -> Option<&'static Region> {
    let read = match case.report.regions.as_slice() {
        [only] => Some(*only),
        _ => None,
    };
    let of_own = |id: &str| case.own?.regions.iter().find(|region| region.id == id);
    let answered = case.reading.region.as_deref();
    answered.and_then(|id| of_own(id).or_else(|| Region::of(id))).or(read)
}

/// Where the soil lies, where that would judge what is open.
fn which_region(
    case: &Case,
    region: Option<&'static Region>,
    readings: &[Judged],
) -> Option<Question> {
    let open: Vec<Property> =
        readings.iter().filter(|r| r.finding.wants_region).map(|r| r.reading.property).collect();
    if region.is_some() || open.is_empty() {
        return None;
    }
    let names: Vec<&str> = case.report.regions.iter().map(|region| region.name).collect();
    let suggestion = match names.as_slice() {
        [] => "A laboratory near you uses the tests that are usual there.".to_string(),
        names => format!("The report's words fit: {}.", names.join("; ")),
    };
    let question = Question::new(
        QuestionId::Region,
        "Where does the soil lie?",
        "Each region reads soil tests by tables of its own, and has its own way to lime and feed.",
        &open,
    );
    Some(question.suggesting(suggestion))
}

/// The texture, where a table parts by it and nobody asked yet.
fn asked_by(readings: &[Judged], asked: &[Question]) -> Option<Question> {
    let open: Vec<Property> =
        readings.iter().filter(|r| r.finding.wants_texture).map(|r| r.reading.property).collect();
    if open.is_empty() || asked.iter().any(|q| q.id == QuestionId::Texture) {
        return None;
    }
    Some(Question::new(
        QuestionId::Texture,
        "Is the soil sandy, loamy or clayey?",
        format!("How much is enough of {} depends on it.", listed(&open)),
        &open,
    ))
}

/// Each reading with its judgement; of one that can't be used, why.
fn judged(readings: Vec<NormalReading>, soil: &Soil, setting: &Setting, bed: &Bed) -> Vec<Judged> {
    let finding = |reading: &NormalReading| match &reading.measure {
        Ok(measure) => judge(&bed.by_volume(measure), soil, setting),
        Err(why) => Finding { not_judged: Some(why.clone()), ..Finding::default() },
    };
    readings
        .into_iter()
        .map(|reading| {
            let mut finding = finding(&reading);
            if let Ok(measure) = &reading.measure {
                bed.say_volume(measure, &mut finding);
            }
            let unsaid = reading.property == Property::Ph && reading.method.is_none();
            if let Some(region) = setting.region.filter(|region| unsaid && region.salt_ph) {
                finding.grounds.assumed.push(format!(
                    "Taken as pH in water. Laboratories there often measure it in salt solution, half a unit lower ({}): correct the reading if yours did.",
                    region.name
                ).into());
            }
            if let Some(rating) = &reading.rating {
                let printed = parse_amount(&reading.original).and_then(Amount::exact);
                beside_the_laboratory(&mut finding, rating, printed, setting.region);
            }
            Judged { finding, reading }
        })
        .collect()
}

impl<'a> Survey<'a> {
    /// What ranges depend on beside the soil.
    pub(crate) fn setting(&self) -> Setting {
        Setting {
            plants: self.case.plants,
            texture: self.texture,
            group: self.group,
            region: self.region,
            own: self.own.map_or(&[], |own| own.ranges),
        }
    }

    /// Every region's lime tables, the own file's first.
    pub(crate) fn lime_tables(&self) -> impl Iterator<Item = &'static RegionalLime> {
        let own: &'static [RegionalLime] = self.own.map_or(&[], |own| own.lime);
        own.iter().chain(RegionalLime::all())
    }

    /// The lime tables of the region for this ground, and whether the soil is known to be theirs:
    /// without what they part soils by every column may be the one.
    pub(crate) fn lime_tables_of_here(&self) -> (Vec<&'static RegionalLime>, bool) {
        let Some(region) = self.region else { return (Vec::new(), false) };
        let ground = if self.is_lawn() { GroundUse::Grass } else { GroundUse::Tilled };
        let of_here = || {
            self.lime_tables()
                .filter(|table| table.region == region.id && table.uses.contains(&ground))
        };
        let fit = |t: &&RegionalLime| t.soils.fit(&self.soil, self.texture, self.group);
        let exact: Vec<_> = of_here().filter(|t| fit(t) >= Fit::IfMineral).collect();
        if !exact.is_empty() {
            return (exact, true);
        }
        (of_here().filter(|t| fit(t) == Fit::Unknown).collect(), false)
    }

    /// Every region's dressings, the own file's first.
    pub(crate) fn crop_rates(&self) -> impl Iterator<Item = &'static CropRate> {
        let own: &'static [CropRate] = self.own.map_or(&[], |own| own.rates);
        own.iter().chain(CropRate::all())
    }

    /// The person's answers.
    pub fn case(&self) -> &Case {
        &self.case
    }

    /// The same sample with other answers about bed, plants, season or bag. The
    /// report is not read or judged again.
    pub(crate) fn with_case(&self, change: &dyn Fn(&mut Case)) -> Survey<'a> {
        let case = &self.case;
        // The report, which may hold thousands of samples, is not looked at again and
        // must not be copied.
        let mut other = Case {
            bed: case.bed.clone(),
            plants: case.plants,
            trial: case.trial.clone(),
            season: case.season.clone(),
            biochar: case.biochar.clone(),
            charge_with: case.charge_with.clone(),
            charge: case.charge.clone(),
            feeds: case.feeds.clone(),
            measures: case.measures,
            ..Case::default()
        };
        change(&mut other);
        let (timing, material) = (bed::timing(&other), Material::of(&other.biochar));
        let texture = other.bed.texture.or(self.texture);
        let sampled = self.bed.sampled;
        let bed =
            Bed::of(&other, &self.soil, &self.chemistry, (texture, self.group), &timing, sampled);
        Survey { case: Cow::Owned(other), bed, timing, material, texture, ..self.clone() }
    }

    /// The usable readings of a property, each with the slice of soil it speaks for: top and
    /// bottom, cm from the surface, where that is known.
    pub(crate) fn slices(
        &self,
        property: Property,
    ) -> impl Iterator<Item = (&NormalReading, Measure, Option<(f64, f64)>)> {
        self.readings.iter().filter_map(move |Judged { reading, .. }| {
            let measure = reading.measure.as_ref().ok().filter(|m| m.property == property)?;
            Some((reading, *measure, reading.slice.or(self.bed.sampled)))
        })
    }

    /// A weight as it is measured out, from grams.
    pub(crate) fn weighed(&self, grams: f64) -> String {
        weighed(grams, self.case.measures)
    }

    /// An amount, said to be for one square metre while nobody gave the area.
    pub(crate) fn on_bed(&self, amount: String) -> String {
        if self.bed.area.known {
            return amount;
        }
        let one = shown(&Band::exactly(self.bed.area.value), Unit::SquareMetre, self.case.measures);
        format!("{amount} on {one}")
    }

    /// Salts of the saturated paste, dS/m.
    pub(crate) fn ece(&self) -> Option<Band> {
        self.chemistry.band(Derived::Ece)
    }

    /// Organic matter, %: measured, or from organic carbon.
    pub(crate) fn organic_matter(&self) -> Option<Band> {
        self.chemistry.organic_matter(&self.soil)
    }

    /// The plants; mixed vegetables until somebody says.
    pub(crate) fn plants(&self) -> PlantGroup {
        self.case.plants.unwrap_or_default()
    }

    /// Whether the plants are vegetables of any kind.
    pub(crate) fn grows_vegetables(&self) -> bool {
        use PlantGroup::{FruitingVegetables, LeafyVegetables, MixedVegetables, RootCrops};
        matches!(self.plants(), MixedVegetables | LeafyVegetables | FruitingVegetables | RootCrops)
    }

    /// Whether anything of this bed is eaten.
    pub(crate) fn is_eaten(&self) -> bool {
        self.grows_vegetables()
            || matches!(self.plants(), PlantGroup::Berries | PlantGroup::AcidLovers)
    }

    /// Whether the bed is grass.
    pub(crate) fn is_lawn(&self) -> bool {
        self.plants() == PlantGroup::Lawn || self.bed.is_lawn()
    }
}
