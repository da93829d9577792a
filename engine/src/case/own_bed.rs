//! What is said of one sample's bed alone, and how it stands before what is said for all.

use serde::{Deserialize, Serialize};
use time::Date;

use super::{Bed, BedTrial, Case, Crop};
use crate::named::named;
use crate::region::CropNames;
use crate::report::Report;
use crate::soil::PlantGroup;

named! { "answer about a bed":
    /// An answer that belongs to a bed, and may differ from one bed to the next.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum BedAnswer {
        /// Its area.
        Area = "area";
        /// How deep it is worked.
        Depth = "depth";
        /// Its soil's texture.
        Texture = "texture";
        /// How it is worked.
        Kind = "kind";
        /// Its plants.
        Plants = "plants";
        /// Its next planting.
        Planting = "planting";
        /// When it is clear.
        Harvest = "harvest";
        /// The crops of the year.
        Crops = "crops";
        /// A trial in it.
        Trial = "trial";
    }
}

/// What a person said of the bed of one sample. What is given here stands before the answer
/// that is shared by all samples; what isn't given is shared.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct OwnBed {
    /// The sample, from 0.
    pub sample: usize,
    /// The bed.
    #[serde(default)]
    pub bed: Bed,
    /// The plants.
    #[serde(default)]
    pub plants: Option<PlantGroup>,
    /// A trial in this bed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trial: Option<BedTrial>,
    /// The next planting or sowing in this bed.
    #[serde(default, with = "crate::day")]
    pub planting: Option<Date>,
    /// When the crop now in the bed is off.
    #[serde(default, with = "crate::day")]
    pub harvest: Option<Date>,
    /// The crops this bed bears in the year to come.
    #[serde(default)]
    pub crops: Vec<Crop>,
    /// What nobody knows of this bed, though it was answered for all.
    #[serde(default)]
    pub open: Vec<BedAnswer>,
}

impl OwnBed {
    /// The answers of a case that belong to a bed.
    fn of(case: &Case) -> OwnBed {
        OwnBed {
            bed: case.bed.clone(),
            plants: case.plants,
            trial: case.trial.clone(),
            planting: case.season.planting,
            harvest: case.season.harvest,
            crops: case.season.crops.clone(),
            ..OwnBed::default()
        }
    }

    /// Puts them back into a case.
    fn into_case(self, case: &mut Case) {
        case.bed = self.bed;
        case.plants = self.plants;
        case.trial = self.trial;
        case.season.planting = self.planting;
        case.season.harvest = self.harvest;
        case.season.crops = self.crops;
    }

    /// Takes one answer over.
    fn take(&mut self, answer: BedAnswer, from: &OwnBed) {
        match answer {
            BedAnswer::Area => self.bed.area_m2 = from.bed.area_m2,
            BedAnswer::Depth => self.bed.depth_cm = from.bed.depth_cm,
            BedAnswer::Texture => self.bed.texture = from.bed.texture,
            BedAnswer::Kind => self.bed.kind = from.bed.kind,
            BedAnswer::Plants => self.plants = from.plants,
            BedAnswer::Planting => self.planting = from.planting,
            BedAnswer::Harvest => self.harvest = from.harvest,
            BedAnswer::Crops => self.crops = from.crops.clone(),
            BedAnswer::Trial => self.trial = from.trial.clone(),
        }
    }

    /// Whether one answer is the same in both.
    fn agrees(&self, answer: BedAnswer, other: &OwnBed) -> bool {
        let mut turned = self.clone();
        turned.take(answer, other);
        turned == *self
    }

    fn gives(&self, answer: BedAnswer) -> bool {
        !self.agrees(answer, &OwnBed::default())
    }

    /// Says nothing of its own about an answer any more.
    fn forget(&mut self, answer: BedAnswer) {
        self.take(answer, &OwnBed::default());
        self.open.retain(|open| *open != answer);
    }

    /// Says an answer of its own, where that is another than the one for all.
    fn say(&mut self, answer: BedAnswer, said: &OwnBed, for_all: &OwnBed) {
        self.forget(answer);
        if said.agrees(answer, for_all) {
            return;
        }
        self.take(answer, said);
        if !said.gives(answer) {
            self.open.push(answer);
        }
    }

    fn is_empty(&self) -> bool {
        *self == OwnBed { sample: self.sample, ..OwnBed::default() }
    }
}

impl Case {
    /// The case as it holds for one sample: its bed's own answers laid over the shared ones.
    pub fn of_sample(&self, at: usize) -> Case {
        let mut case = self.clone();
        case.lay_over(at);
        case
    }

    /// The same with that sample as the only one of its report. A report may hold thousands,
    /// which must not be copied for each bed.
    pub(crate) fn of_sample_alone(&self, at: usize) -> Case {
        let samples = self.report.samples.get(at).cloned().into_iter().collect();
        let report = Report {
            samples,
            unread: self.report.unread.clone(),
            notes: self.report.notes.clone(),
            regions: self.report.regions.clone(),
            crop: self.report.crop,
        };
        let mut case = Case { report, ..self.answers() };
        case.lay_over(at);
        case.sample = 0;
        case
    }

    /// All but the report.
    fn answers(&self) -> Case {
        Case {
            version: self.version,
            report: Report::default(),
            own_file: self.own_file.clone(),
            own: self.own,
            sample: self.sample,
            reading: self.reading.clone(),
            bed: self.bed.clone(),
            plants: self.plants,
            trial: self.trial.clone(),
            beds: self.beds.clone(),
            season: self.season.clone(),
            biochar: self.biochar.clone(),
            charge_with: self.charge_with.clone(),
            charge: self.charge.clone(),
            feeds: self.feeds.clone(),
            measures: self.measures,
        }
    }

    /// Lays the own answers of a sample's bed over the shared ones, and chooses it.
    pub(crate) fn lay_over(&mut self, at: usize) {
        self.sample = at;
        let beds = std::mem::take(&mut self.beds);
        let Some(own) = beds.iter().find(|own| own.sample == at) else { return };
        let mut laid = OwnBed::of(self);
        for answer in BedAnswer::ALL {
            if own.gives(answer) || own.open.contains(&answer) {
                laid.take(answer, own);
            }
        }
        laid.into_case(self);
    }

    /// The crop that the report names, where nobody said what grows there.
    pub(crate) fn crop_read(&self) -> Option<&'static CropNames> {
        let unsaid = self.plants.is_none() && self.season.crops.is_empty();
        self.report.crop.filter(|_| unsaid).and_then(CropNames::by_id)
    }

    /// Whether anything was said of this sample's bed alone.
    pub fn has_own_bed(&self, at: usize) -> bool {
        self.beds.iter().any(|own| own.sample == at)
    }

    /// Changes what holds for one sample. Answers that belong to a bed are then its own, or
    /// with `for_all` those of every bed; any other answer is shared as it always was.
    pub fn answer(&mut self, at: usize, for_all: bool, change: impl FnOnce(&mut Case)) {
        let (mut beds, shared, chosen) =
            (std::mem::take(&mut self.beds), OwnBed::of(self), self.sample);
        self.beds = beds.iter().filter(|own| own.sample == at).cloned().collect();
        self.lay_over(at);
        let before = OwnBed::of(self);
        change(self);
        if self.sample == at {
            self.sample = chosen;
        }
        let after = OwnBed::of(self);
        let mut for_every = shared;
        let mut own = match beds.iter().position(|own| own.sample == at) {
            Some(place) => beds.remove(place),
            None => OwnBed { sample: at, ..OwnBed::default() },
        };
        for answer in BedAnswer::ALL {
            if before.agrees(answer, &after) {
                continue;
            }
            if for_all {
                for_every.take(answer, &after);
                own.forget(answer);
                beds.iter_mut().for_each(|other| other.forget(answer));
            } else {
                own.say(answer, &after, &for_every);
            }
        }
        for_every.into_case(self);
        beds.push(own);
        beds.retain(|own| !own.is_empty());
        beds.sort_by_key(|own| own.sample);
        self.beds = beds;
    }

    /// Counts the beds anew where the report keeps its samples only from `first` on.
    pub fn count_beds_from(&mut self, first: usize) {
        self.beds.retain(|own| own.sample >= first);
        self.beds.iter_mut().for_each(|own| own.sample -= first);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::case::BedKind;
    use crate::quantity::Measures;
    use crate::soil::Texture;

    fn day(text: &str) -> Option<Date> {
        crate::day::parse(text)
    }

    /// Numbers that come back the same every time: a congruential series.
    struct Series(u64);

    impl Series {
        fn below(&mut self, most: u64) -> u64 {
            self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (self.0 >> 33) % most
        }
    }

    /// One answer or several, each given or taken back.
    fn change(case: &mut Case, series: &mut Series) {
        for answer in BedAnswer::ALL {
            if series.below(3) > 0 {
                continue;
            }
            let to = series.below(4);
            let number = (to > 0).then_some(to as f64);
            let date = [None, day("2027-04-20"), day("2027-05-01"), day("2027-06-09")][to as usize];
            let crop = |name: &str| Crop { name: name.into(), planting: date, harvest: None };
            match answer {
                BedAnswer::Area => case.bed.area_m2 = number,
                BedAnswer::Depth => case.bed.depth_cm = number,
                BedAnswer::Texture => {
                    case.bed.texture = number.map(|_| Texture::ALL[to as usize]);
                }
                BedAnswer::Kind => case.bed.kind = number.map(|_| BedKind::ALL[to as usize]),
                BedAnswer::Plants => case.plants = number.map(|_| PlantGroup::ALL[to as usize]),
                BedAnswer::Planting => case.season.planting = date,
                BedAnswer::Harvest => case.season.harvest = date,
                BedAnswer::Trial => {
                    let trial = |n: f64| BedTrial { name: n.to_string(), ..BedTrial::default() };
                    case.trial = number.map(trial);
                }
                BedAnswer::Crops => {
                    case.season.crops = number.iter().map(|_| crop("Kale")).collect();
                }
            }
        }
        if series.below(4) == 0 {
            case.season.today = day("2027-03-01");
            case.biochar.share_percent = Some(series.below(9) as f64);
            case.measures = Measures::Us;
        }
    }

    #[test]
    fn what_was_answered_holds_for_its_bed_and_no_other_changes() {
        let mut series = Series(11);
        for _ in 0..300 {
            let mut case = Case { sample: 2, ..Case::default() };
            for _ in 0..12 {
                let (at, for_all) = (series.below(4) as usize, series.below(4) == 0);
                let before = case.clone();
                let mut wanted = Case::default();
                case.answer(at, for_all, |case| {
                    change(case, &mut series);
                    wanted = case.clone();
                });
                assert_eq!(case.of_sample(at), wanted, "{case:#?}");
                assert_eq!(case.sample, 2);
                for other in (0..5).filter(|other| *other != at) {
                    let (was, is) = (before.of_sample(other), case.of_sample(other));
                    let (was, is) = (OwnBed::of(&was), OwnBed::of(&is));
                    let (old, new) = (OwnBed::of(&before.of_sample(at)), OwnBed::of(&wanted));
                    for answer in BedAnswer::ALL {
                        let meant = if for_all && !old.agrees(answer, &new) { &new } else { &was };
                        assert!(is.agrees(answer, meant), "{answer:?} of {other}: {case:#?}");
                    }
                    assert_eq!(case.of_sample(other).biochar, wanted.biochar);
                }
                assert!(case.beds.iter().all(|own| !own.is_empty()));
                let json = serde_json::to_string(&case).unwrap();
                assert_eq!(serde_json::from_str::<Case>(&json).unwrap(), case);
            }
        }
    }

    #[test]
    fn a_bed_with_an_area_of_its_own_leaves_the_others_alone() {
        let mut case = Case::default();
        case.answer(0, true, |case| case.bed.area_m2 = Some(10.0));
        case.answer(1, false, |case| case.bed.area_m2 = Some(4.0));
        let areas = |case: &Case| [0, 1, 2].map(|at| case.of_sample(at).bed.area_m2);
        assert_eq!(areas(&case), [Some(10.0), Some(4.0), Some(10.0)]);
        // Nobody knows it any more, and the others still do.
        case.answer(1, false, |case| case.bed.area_m2 = None);
        assert_eq!(areas(&case), [Some(10.0), None, Some(10.0)]);
        case.answer(2, true, |case| case.bed.area_m2 = Some(7.0));
        assert_eq!(areas(&case), [Some(7.0); 3]);
        assert!(case.beds.is_empty());
    }

    #[test]
    fn an_unknown_key_of_a_bed_is_an_error() {
        let read = |json: &str| serde_json::from_str::<Case>(json);
        let case = read(r#"{"beds": [{"sample": 1, "bed": {"area-m2": 4}}]}"#).unwrap();
        assert_eq!(case.of_sample(1).bed.area_m2, Some(4.0));
        assert!(read(r#"{"beds": [{"sample": 1, "area": 4}]}"#).is_err());
        assert!(read(r#"{"beds": [{"plants": "lawn"}]}"#).is_err());
        assert!(!serde_json::to_string(&Case::default()).unwrap().contains("beds"));
    }
}
