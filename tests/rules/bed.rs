//! A bed put together by hand: levels and numbers on a report that no
//! laboratory wrote.

use std::sync::Mutex;

use emberloam_engine::case::{BagState, Case, Feedstock};
use emberloam_engine::outcome::Outcome;
use emberloam_engine::plan::{Plan, RuleName, decide};
use emberloam_engine::quantity::Unit;
use emberloam_engine::question::QuestionId;
use emberloam_engine::ranges::Level;
use emberloam_engine::report::{Known, Origin, Pairing, Place, Reading, SampleReport};
use emberloam_engine::soil::{Amount, Method, Property, Texture};
use emberloam_engine::{interpret, judged_readings};

use crate::{day, surveyed};

use Property::{Calcium, Magnesium, NitrateN, Ph, Phosphorus, Potassium, Sulfur};

/// A bed and the report on its soil.
#[derive(Clone, Default)]
pub struct Bed {
    pub case: Case,
}

impl Bed {
    /// A loam, pH 6.5, everything sufficient, nothing asked for.
    pub fn content() -> Bed {
        let mut bed = Bed::default().texture(Some(Texture::Loam));
        for property in [NitrateN, Phosphorus, Potassium, Calcium, Magnesium, Sulfur] {
            bed = bed.level(property, Level::Sufficient);
        }
        bed.measure(Ph, 6.5, Unit::None, None)
    }

    /// More nitrate, potassium and calcium than is needed.
    pub fn surplus() -> Bed {
        let high = |bed: Bed, property| bed.level(property, Level::High);
        [NitrateN, Potassium, Calcium].into_iter().fold(Bed::content(), high)
    }

    /// A nutrient at a level, by Mehlich-3 where it is extracted.
    pub fn level(self, property: Property, level: Level) -> Bed {
        let method = (property != NitrateN).then_some(Method::Mehlich3);
        self.level_by(property, level, method)
    }

    /// A nutrient at a level of a method.
    pub fn level_by(self, property: Property, level: Level, method: Option<Method>) -> Bed {
        self.measure(property, value_at(property, level, method), Unit::MgPerKg, method)
    }

    pub fn measure(
        self,
        property: Property,
        value: f64,
        unit: Unit,
        method: Option<Method>,
    ) -> Bed {
        let mut bed = self.without(property);
        let samples = &mut bed.case.report.samples;
        if samples.is_empty() {
            samples.push(SampleReport { name: "bed".into(), ..SampleReport::default() });
        }
        let readings = &mut samples[0].readings;
        readings.push(Reading {
            property,
            amount: Some(Amount::Exactly(value)),
            unit: Some(unit),
            method: method.map(|value| Known { value, from: Origin::Stated }),
            rating: None,
            name: property.label().into(),
            original: value.to_string(),
            depth_cm: None,
            pairing: Pairing::Together,
            place: Place { line: readings.len() as u32 + 1, start: 0, end: 1 },
            notes: Vec::new(),
        });
        bed
    }

    pub fn without(mut self, property: Property) -> Bed {
        for sample in &mut self.case.report.samples {
            sample.readings.retain(|reading| reading.property != property);
        }
        self
    }

    pub fn ppm(self, property: Property, value: f64) -> Bed {
        self.measure(property, value, Unit::MgPerKg, Some(Method::Mehlich3))
    }

    /// Salts of the saturated paste, dS/m.
    pub fn ece(self, value: f64) -> Bed {
        self.measure(Property::Ec, value, Unit::DsPerM, Some(Method::SaturatedPaste))
    }

    /// Exchangeable sodium, %.
    pub fn esp(self, value: f64) -> Bed {
        self.measure(Property::SodiumSaturation, value, Unit::Percent, None)
    }

    /// Exchange capacity, meq/100 g.
    pub fn cec(self, value: f64) -> Bed {
        self.measure(Property::Cec, value, Unit::MeqPer100g, None)
    }

    pub fn texture(self, texture: Option<Texture>) -> Bed {
        self.with(|case| case.bed.texture = texture)
    }

    pub fn state(self, state: BagState) -> Bed {
        self.with(|case| case.biochar.state = Some(state))
    }

    pub fn feedstock(self, feedstock: Feedstock) -> Bed {
        self.with(|case| case.biochar.feedstock = Some(feedstock))
    }

    pub fn with(mut self, change: impl Fn(&mut Case)) -> Bed {
        change(&mut self.case);
        self
    }

    /// Autumn in the north: harvest is over, planting in April.
    pub fn autumn(self) -> Bed {
        self.with(|c| {
            c.season.today = day(2026, 9, 20);
            c.season.harvest = day(2026, 10, 1);
            c.season.first_frost = day(2026, 10, 25);
            c.season.planting = day(2027, 4, 20);
        })
    }

    /// Planting `days` from an empty bed today.
    pub fn planting_in(self, days: i64) -> Bed {
        self.with(|c| {
            c.season.today = day(2026, 9, 20);
            c.season.harvest = None;
            c.season.planting = Some(day(2026, 9, 20).unwrap() + time::Duration::days(days));
        })
    }

    pub fn outcome(&self) -> Outcome {
        interpret(&self.case)
    }

    pub fn plan(&self) -> Plan {
        self.outcome().plan
    }

    pub fn asked(&self) -> Vec<QuestionId> {
        self.outcome().questions.into_iter().map(|q| q.id).collect()
    }

    pub fn fired(&self) -> Vec<RuleName> {
        decide(&surveyed(&self.case)).fired.iter().map(|rule| rule.name).collect()
    }
}

/// A number that is judged so, mg/kg. Some tables know no "high": all that is more
/// than enough is excess there.
fn value_at(property: Property, level: Level, method: Option<Method>) -> f64 {
    type Found = Vec<((Property, Level, Option<Method>), f64)>;
    static FOUND: Mutex<Found> = Mutex::new(Vec::new());
    let wanted = (property, level, method);
    let known = |found: &Found| found.iter().find(|(what, _)| *what == wanted).map(|f| f.1);
    if let Some(value) = known(&FOUND.lock().unwrap()) {
        return value;
    }
    let judged = |value: f64| {
        let alone = Bed::default().measure(property, value, Unit::MgPerKg, method);
        judged_readings(&alone.case, 0)[0].finding.level
    };
    let at = |level: Level| -> Vec<f64> {
        let tried = (0..240).map(|step| 0.5 * 1.05_f64.powi(step));
        tried.filter(|value| judged(*value) == Some(level)).collect()
    };
    let mut fitting = at(level);
    if fitting.is_empty() && level == Level::High {
        fitting = at(Level::Excess);
    }
    // Not far above where a level begins: the last has no end.
    let middle = fitting.len().min(12) / 2;
    let value = *fitting.get(middle).unwrap_or_else(|| panic!("{property:?}: no {level:?}"));
    FOUND.lock().unwrap().push((wanted, value));
    value
}
