//! What a person tells the engine: the report, the answers about it, the bed,
//! the plants, the season, and what is on hand. Every field may be missing.

mod bed_trial;
mod bounds;
mod own_bed;

use serde::{Deserialize, Serialize};
use time::Date;

pub use self::bed_trial::{BedTrial, TrialFinding};
pub use self::bounds::{Beyond, MOST_CROPS};
pub use self::own_bed::{BedAnswer, OwnBed};
pub use crate::facts::{CertificateItem, ChargeSource, Feedstock};
use crate::named::named;
use crate::own::OwnFacts;
use crate::quantity::{Measures, Unit};
use crate::report::{NamedLine, Place, Reading, Report};
use crate::soil::{Method, PlantGroup, Property, Texture};

/// The version of [`Case`] this engine writes and reads.
pub const CASE_VERSION: u32 = 1;

/// A report with everything the person has answered.
///
/// In JSON every key is kebab-case and may be left out; an unknown key is an
/// error, so that a slip of the pen is not silently ignored. Dates are
/// `"2027-04-20"`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Case {
    /// The version of this shape.
    #[serde(deserialize_with = "known_version")]
    pub version: u32,
    /// The report that was read. It is no part of the JSON: the report itself
    /// is kept, and read again.
    #[serde(skip)]
    pub report: Report,
    /// A region's own file, as an educator wrote it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub own_file: Option<String>,
    /// The same once it is read. It is no part of the JSON: who fills in `own_file` reads it.
    #[serde(skip)]
    pub own: Option<&'static OwnFacts>,
    /// Which sample of the report the bed was taken from, from 0.
    pub sample: usize,
    /// Answers about the report itself.
    pub reading: ReadingAnswers,
    /// The bed.
    pub bed: Bed,
    /// The plants.
    pub plants: Option<PlantGroup>,
    /// A trial in this bed, said beside what the plan foretells.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trial: Option<BedTrial>,
    /// What was said of the bed of one sample alone; it stands before `bed`, `plants`, `trial` and the
    /// dates of planting, harvest and crops.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub beds: Vec<OwnBed>,
    /// The season's dates.
    pub season: Season,
    /// The biochar on hand.
    pub biochar: Bag,
    /// What there is to charge biochar with.
    pub charge_with: Vec<ChargeSource>,
    /// How it is charged.
    pub charge: Charge,
    /// What there is to lime and feed with.
    pub feeds: Feeds,
    /// The measures the recipe and the tasks are written in.
    pub measures: Measures,
}

impl Default for Case {
    fn default() -> Case {
        Case {
            version: CASE_VERSION,
            report: Report::default(),
            own_file: None,
            own: None,
            sample: 0,
            reading: ReadingAnswers::default(),
            bed: Bed::default(),
            plants: None,
            trial: None,
            beds: Vec::new(),
            season: Season::default(),
            biochar: Bag::default(),
            charge_with: Vec::new(),
            charge: Charge::default(),
            feeds: Feeds::default(),
            measures: Measures::default(),
        }
    }
}

/// Refuses a case written by a newer engine, whose answers may mean more than
/// this one knows.
fn known_version<'de, D: serde::Deserializer<'de>>(from: D) -> Result<u32, D::Error> {
    let version = u32::deserialize(from)?;
    if version > CASE_VERSION {
        return Err(serde::de::Error::custom(format!(
            "this case is of version {version}, newer than this program (version {CASE_VERSION}); \
             use a newer program"
        )));
    }
    Ok(version)
}

/// Answers to what the report doesn't say, and corrections.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct ReadingAnswers {
    /// The extractants of nutrients that name none; each is taken for the
    /// nutrients it is used for (Olsen for phosphorus, DTPA for metals, …).
    pub extractants: Vec<Method>,
    /// The unit of nutrients that name none.
    pub nutrient_unit: Option<Unit>,
    /// The lime buffer, when a buffer pH names none.
    pub buffer: Option<Method>,
    /// How soil and water were mixed for the salts reading, when it doesn't say.
    pub ec_method: Option<Method>,
    /// Whether names and numbers that stand apart in the report, and were counted off against
    /// each other, belong together.
    pub counted_off: Option<bool>,
    /// The sampling depth, cm from the surface.
    pub depth_cm: Option<f64>,
    /// The region whose tables judge, by its name in `facts/regions.csv`.
    pub region: Option<String>,
    /// Corrections of single readings.
    pub corrections: Vec<Correction>,
    /// Corrections of every reading of one name, in all samples. A correction
    /// of a single reading comes before them.
    pub in_all_samples: Vec<CommonCorrection>,
    /// Lines that could not be placed, each with what the person said it is.
    pub named_lines: Vec<NamedLine>,
}

/// A reading put right by the person. It holds while the source still says
/// `original` at `place`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Correction {
    /// Where the reading stands in the source.
    pub place: Place,
    /// What the source says there.
    pub original: String,
    /// What was measured, when the engine took it for something else.
    #[serde(default)]
    pub property: Option<Property>,
    /// The result as the person typed it, for example `18` or `<2`.
    #[serde(default)]
    pub result: Option<String>,
    /// Its unit.
    #[serde(default)]
    pub unit: Option<Unit>,
    /// Its method.
    #[serde(default)]
    pub method: Option<Method>,
    /// Leave the reading out.
    #[serde(default)]
    pub leave_out: bool,
}

/// A correction that holds for one name in every sample of the report: a
/// column, or a row, whose heading was misread or says too little.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct CommonCorrection {
    /// The name as printed.
    pub name: String,
    /// The unit as printed, which tells two columns of one name apart.
    #[serde(default)]
    pub printed_unit: Option<Unit>,
    /// What was measured, when the engine took it for something else.
    #[serde(default)]
    pub property: Option<Property>,
    /// Its unit.
    #[serde(default)]
    pub unit: Option<Unit>,
    /// Its method.
    #[serde(default)]
    pub method: Option<Method>,
    /// Leave the readings out.
    #[serde(default)]
    pub leave_out: bool,
}

impl ReadingAnswers {
    /// The correction that holds for a reading: its own, and where that says
    /// nothing, the one for all samples.
    pub fn correction_of(&self, reading: &Reading) -> Option<Correction> {
        let own = self.corrections.iter().find(|c| c.is_of(reading));
        let Some(common) = self.in_all_samples.iter().find(|c| c.is_of(reading)) else {
            return own.cloned();
        };
        let mut both = own.cloned().unwrap_or_else(|| Correction::of_nothing(reading));
        both.property = both.property.or(common.property);
        both.unit = both.unit.or(common.unit);
        both.method = both.method.or(common.method);
        both.leave_out |= common.leave_out;
        Some(both)
    }

    /// Whether what is said of a reading holds in all samples.
    pub fn holds_in_all(&self, reading: &Reading) -> bool {
        self.in_all_samples.iter().any(|c| c.is_of(reading))
    }

    /// Changes the correction of a reading. With `in_all` all of it but the
    /// result is said of every reading of that name, in all samples. One that
    /// says nothing any more is removed.
    pub fn put_right(
        &mut self,
        reading: &Reading,
        in_all: bool,
        change: impl FnOnce(&mut Correction),
    ) {
        let mut own =
            self.correction_of(reading).unwrap_or_else(|| Correction::of_nothing(reading));
        change(&mut own);
        self.corrections.retain(|c| !c.is_of(reading));
        self.in_all_samples.retain(|c| !c.is_of(reading));
        if in_all {
            let common = CommonCorrection {
                name: reading.name.clone(),
                printed_unit: reading.unit,
                property: own.property.take(),
                unit: own.unit.take(),
                method: own.method.take(),
                leave_out: std::mem::take(&mut own.leave_out),
            };
            if common.property.is_some()
                || common.unit.is_some()
                || common.method.is_some()
                || common.leave_out
            {
                self.in_all_samples.push(common);
            }
        }
        if own != Correction::of_nothing(reading) {
            self.corrections.push(own);
        }
    }
}

impl CommonCorrection {
    fn is_of(&self, reading: &Reading) -> bool {
        self.name == reading.name && self.printed_unit == reading.unit
    }
}

impl Correction {
    fn is_of(&self, reading: &Reading) -> bool {
        self.place == reading.place && self.original == reading.original
    }

    /// A correction that says nothing yet.
    fn of_nothing(reading: &Reading) -> Correction {
        Correction {
            place: reading.place,
            original: reading.original.clone(),
            property: None,
            result: None,
            unit: None,
            method: None,
            leave_out: false,
        }
    }
}

/// The bed: the area to be treated.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Bed {
    /// Its area, m².
    pub area_m2: Option<f64>,
    /// How deep the biochar will be mixed in, cm.
    pub depth_cm: Option<f64>,
    /// The soil's texture, as the person feels or knows it.
    pub texture: Option<Texture>,
    /// How the bed is worked.
    pub kind: Option<BedKind>,
}

named! { "way of working a bed":
    /// How a bed is worked, which decides how biochar gets in.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum BedKind {
        /// Dug or tilled.
        Dug = "dug";
        /// Never dug; fed from above.
        NoDig = "no-dig";
        /// Grass.
        Lawn = "lawn";
        /// Pots and tubs.
        Container = "container";
        /// Round a tree.
        TreePit = "tree-pit";
    }
}

/// The season: dates are always the person's (or the device's) to give.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Season {
    /// Today.
    #[serde(with = "crate::day")]
    pub today: Option<Date>,
    /// The next planting or sowing in this bed.
    #[serde(with = "crate::day")]
    pub planting: Option<Date>,
    /// When the crop now in the bed is off; leave it out when the bed is empty.
    #[serde(with = "crate::day")]
    pub harvest: Option<Date>,
    /// The usual first autumn frost to come.
    #[serde(with = "crate::day")]
    pub first_frost: Option<Date>,
    /// The usual last spring frost to come; it stands for the planting date
    /// until that is given.
    #[serde(with = "crate::day")]
    pub last_frost: Option<Date>,
    /// Whether the place has a winter with frost; `None` when nobody said.
    pub winter: Option<Winter>,
    /// How much rain drains through in the cool or wet season.
    pub wet_season: Option<WetSeason>,
    /// Latitude in degrees, south below zero.
    pub latitude: Option<f64>,
    /// Height above the sea, m.
    pub elevation_m: Option<f64>,
    /// Rain of each month from January, mm.
    pub rain: Option<[f64; 12]>,
    /// The mean lowest temperature of a day in each month from January, °C.
    pub lowest_c: Option<[f64; 12]>,
    /// The mean highest, °C.
    pub highest_c: Option<[f64; 12]>,
    /// The crops this bed bears in the year to come, in any order.
    pub crops: Vec<Crop>,
}

/// One crop of a bed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Crop {
    /// What the person calls it.
    pub name: String,
    /// When it is sown or planted.
    #[serde(default, with = "crate::day")]
    pub planting: Option<Date>,
    /// When it is off the bed.
    #[serde(default, with = "crate::day")]
    pub harvest: Option<Date>,
}

named! { "wet season":
    /// How much rain drains through the soil in the cool or wet season.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum WetSeason {
        /// Less than 150 mm.
        Dry = "dry";
        /// 150 to 250 mm.
        Moderate = "moderate";
        /// More than 250 mm.
        Wet = "wet";
    }
}

named! { "kind of winter":
    /// What the cool season is like.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Winter {
        /// Frost stops growth.
        Frost = "frost";
        /// Mild and wet: growth slows, rain leaches.
        MildWet = "mild-wet";
        /// No winter: wet and dry seasons.
        None = "none";
    }
}

/// The biochar on hand.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Bag {
    /// Whether it is charged.
    pub state: Option<BagState>,
    /// What it was made from.
    pub feedstock: Option<Feedstock>,
    /// The share of biochar wanted, % of the worked depth by volume.
    pub share_percent: Option<f64>,
    /// The size of a bag, litres.
    pub bag_litres: Option<f64>,
    /// Its pH, from the bag or a certificate.
    pub ph: Option<f64>,
    /// Its liming value, % CaCO3, from the bag or a certificate.
    pub liming_percent: Option<f64>,
    /// Its bulk density, kg/m³ dry.
    pub bulk_density: Option<f64>,
    /// Its electrical conductivity, dS/m.
    pub ec: Option<f64>,
    /// The price of one bag, in whatever money the person pays.
    pub price: Option<f64>,
    /// Water in it, % of its weight as it comes.
    pub moisture_percent: Option<f64>,
    /// Over how many years the share wanted is spread; 1 when nobody says.
    pub years: Option<u32>,
    /// What its certificate or laboratory sheet says, beside the above.
    pub certificate: Vec<CertificateFigure>,
}

/// One figure of a biochar's certificate.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct CertificateFigure {
    /// What was measured.
    pub what: CertificateItem,
    /// The figure, on a dry basis, in the unit of the item.
    pub value: f64,
}

named! { "state of a bag":
    /// Whether biochar carries nutrients yet.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum BagState {
        /// Nothing on hand yet: the answer decides what to get.
        NoneYet = "none-yet";
        /// Fresh, uncharged.
        Uncharged = "uncharged";
        /// Charged already.
        Charged = "charged";
    }
}

/// How biochar is charged.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Charge {
    /// How warm it is where it is charged, °C.
    pub temperature_c: Option<f64>,
    /// The size of the bucket it is measured with, litres.
    pub bucket_litres: Option<f64>,
    /// What is known of a source, in place of what is usual.
    pub sources: Vec<SourceFigures>,
}

/// What one source brings, as its label or an analysis says.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct SourceFigures {
    /// The source.
    pub source: ChargeSource,
    /// Litres of it on hand, when there is only so much.
    #[serde(default)]
    pub litres: Option<f64>,
    /// N, P2O5 and K2O, % of its weight.
    #[serde(default)]
    pub n_p2o5_k2o: Option<[f64; 3]>,
}

/// What there is to lime and feed the bed with, as its bags say.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Feeds {
    /// Calcium carbonate equivalent of the lime on hand, %.
    pub lime_percent: Option<f64>,
    /// The pH wanted, when it isn't the usual one of the plants.
    pub target_ph: Option<f64>,
    /// N, P2O5 and K2O of the bag of fertiliser on hand, %.
    pub fertiliser: Option<[f64; 3]>,
    /// Compost to be spread this year, litres for the whole bed.
    pub compost_litres: Option<f64>,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::Pairing;

    #[test]
    fn a_correction_is_made_spread_to_all_samples_and_taken_back() {
        let reading = Reading {
            property: Property::Phosphorus,
            amount: None,
            unit: None,
            method: None,
            rating: None,
            name: "P".into(),
            original: "182".into(),
            depth_cm: None,
            pairing: Pairing::Together,
            place: Place { line: 3, start: 0, end: 3 },
            notes: Vec::new(),
        };
        let mut next = reading.clone();
        next.place.line = 4;
        let mut answers = ReadingAnswers::default();
        answers.put_right(&reading, false, |c| c.result = Some("18".into()));
        answers.put_right(&reading, false, |c| c.unit = Some(Unit::LbPerAcre));
        assert_eq!(answers.corrections.len(), 1);
        assert_eq!(answers.correction_of(&next), None);

        answers.put_right(&reading, true, |_| ());
        assert!(answers.holds_in_all(&next));
        let mine = answers.correction_of(&reading).unwrap();
        assert_eq!((mine.result.as_deref(), mine.unit), (Some("18"), Some(Unit::LbPerAcre)));
        let other = answers.correction_of(&next).unwrap();
        assert_eq!((other.result, other.unit), (None, Some(Unit::LbPerAcre)));

        // A change made at another sample changes it for all.
        answers.put_right(&next, true, |c| c.unit = Some(Unit::MgPerKg));
        assert_eq!(answers.correction_of(&reading).unwrap().unit, Some(Unit::MgPerKg));
        answers.put_right(&next, true, |c| c.unit = None);
        answers.put_right(&reading, false, |c| c.result = None);
        assert_eq!(answers, ReadingAnswers::default());
    }

    #[test]
    fn a_case_may_leave_out_everything_but_not_say_what_nobody_knows() {
        let read = |json: &str| serde_json::from_str::<Case>(json).map_err(|e| e.to_string());
        assert_eq!(read("{}").unwrap(), Case::default());
        assert_eq!(read(r#"{"version": 1}"#).unwrap(), Case::default());
        assert!(read(r#"{"version": 9}"#).unwrap_err().contains("newer"));
        assert!(read(r#"{"garden": {}}"#).unwrap_err().contains("garden"));
        assert!(read(r#"{"plants": "cactus"}"#).unwrap_err().contains("mixed-vegetables"));
    }
}
