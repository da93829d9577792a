//! Whether the path holds when what is uncertain lies at its ends.

use std::borrow::Cow;

use time::Duration;

use crate::case::{BagState, Case, Feedstock};
use crate::plan::{Path, decide};
use crate::report::parse_amount;
use crate::soil::{Amount, Property, Texture};
use crate::survey::survey;

/// How far two tests of one bed lie apart: this many times more or less.
/// Source: our choice; sampling alone gives a fifth or more.
const SAMPLING: f64 = 1.25;
/// The same for pH, units. Source: our choice.
const PH_SAMPLING: f64 = 0.3;
/// How far a planting date moves, days. Source: our choice.
const DAYS: i64 = 28;

/// What is varied by the share above.
const VARIED: [Property; 10] = [
    Property::NitrateN,
    Property::Phosphorus,
    Property::Potassium,
    Property::Calcium,
    Property::Magnesium,
    Property::Sulfur,
    Property::OrganicMatter,
    Property::Cec,
    Property::Sodium,
    Property::Ec,
];

/// One way in which things may be other than taken.
#[derive(Clone, Debug, PartialEq)]
pub struct Turn {
    /// What is other, for example `phosphorus a quarter more`.
    pub what: String,
    /// The path it leads to.
    pub path: Path,
}

/// Whether the path holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Sensitivity {
    /// The path of the plan.
    pub path: Path,
    /// In how many of the variations it is the same.
    pub holds: usize,
    /// How many were tried.
    pub of: usize,
    /// Those that lead elsewhere.
    pub turns: Vec<Turn>,
    /// What it comes to, in a sentence.
    pub text: String,
}

/// Works the chosen sample out again with each uncertain thing at its ends;
/// `None` without a sample.
pub fn sensitivity(case: &Case) -> Option<Sensitivity> {
    let mut trial = Trial::of(case)?;
    loop {
        match trial.step() {
            Ok(found) => return Some(found),
            Err(unfinished) => trial = unfinished,
        }
    }
}

/// The variations one by one: together they take as long as dozens of answers.
#[derive(Debug)]
pub struct Trial {
    path: Path,
    of: usize,
    left: std::vec::IntoIter<(String, Case)>,
    turns: Vec<Turn>,
}

impl Trial {
    /// Before the first variation; `None` without a sample.
    pub fn of(case: &Case) -> Option<Trial> {
        // What is varied is what holds for this bed.
        let own = case.has_own_bed(chosen(case)).then(|| case.of_sample_alone(chosen(case)));
        let case = own.as_ref().unwrap_or(case);
        let path = path_of(case)?;
        let left = variations(&put_right(case)).into_iter();
        Some(Trial { path, of: left.len(), left, turns: Vec::new() })
    }

    /// Tries one more variation; what they all come to when none is left.
    ///
    /// # Errors
    /// The trial itself while it isn't finished.
    pub fn step(mut self) -> Result<Sensitivity, Trial> {
        let Some((what, other)) = self.left.next() else { return Ok(self.told()) };
        if let Some(path) = path_of(&other).filter(|path| *path != self.path) {
            self.turns.push(Turn { what, path });
        }
        Err(self)
    }

    fn told(self) -> Sensitivity {
        let Trial { path, of, turns, .. } = self;
        let holds = of - turns.len();
        let text = in_words(holds, of, &turns);
        Sensitivity { path, holds, of, turns, text }
    }
}

fn path_of(case: &Case) -> Option<Path> {
    let survey = survey(Cow::Borrowed(case));
    (!case.report.samples.is_empty()).then(|| decide(&survey).path)
}

/// What it comes to, in a sentence.
fn in_words(holds: usize, of: usize, turns: &[Turn]) -> String {
    let depends = || {
        let mut what: Vec<&str> = turns.iter().map(|turn| turn.what.as_str()).collect();
        what.truncate(4);
        what.join("; ")
    };
    if of == 0 {
        "Nothing here is uncertain.".into()
    } else if holds == of {
        format!("The answer holds in all {of} variations tried.")
    } else if holds * 5 >= of * 4 {
        format!(
            "The answer holds in most: {holds} of {of} variations. It turns with: {}.",
            depends()
        )
    } else {
        format!(
            "The answer depends: it holds in {holds} of {of} variations only. It turns with: {}.",
            depends()
        )
    }
}

/// The case with what the person put right in the place of what is printed, so that it is
/// varied as well.
fn put_right(case: &Case) -> Case {
    let mut right = case.clone();
    for sample in &mut right.report.samples {
        sample.readings.retain_mut(|reading| {
            let Some(correction) = case.reading.correction_of(reading) else { return true };
            reading.property = correction.property.unwrap_or(reading.property);
            let typed = correction.result.as_deref().map(parse_amount);
            reading.amount = typed.unwrap_or(reading.amount);
            !correction.leave_out
        });
    }
    for correction in &mut right.reading.corrections {
        correction.result = None;
    }
    right
}

/// Every variation with its name.
fn variations(case: &Case) -> Vec<(String, Case)> {
    let mut all = of_readings(case);
    all.extend(of_answers(case));
    all
}

/// The case with one thing changed.
fn changed(case: &Case, change: impl FnOnce(&mut Case)) -> Case {
    let mut other = case.clone();
    change(&mut other);
    other
}

fn chosen(case: &Case) -> usize {
    case.sample.min(case.report.samples.len().saturating_sub(1))
}

/// The case with every number of a property in the chosen sample changed.
fn scaled(case: &Case, property: Property, change: impl Fn(f64) -> f64) -> Case {
    changed(case, |case| {
        let at = chosen(case);
        let Some(sample) = case.report.samples.get_mut(at) else { return };
        for reading in sample.readings.iter_mut().filter(|r| r.property == property) {
            if let Some(Amount::Exactly(value)) = reading.amount {
                reading.amount = Some(Amount::Exactly(change(value)));
            }
        }
    })
}

/// What another sample of the bed might have given.
fn of_readings(case: &Case) -> Vec<(String, Case)> {
    let sample = case.report.samples.get(chosen(case));
    let readings = sample.map_or(&[][..], |sample| &sample.readings);
    let measured = |property: &Property| {
        readings
            .iter()
            .any(|r| r.property == *property && matches!(r.amount, Some(Amount::Exactly(_))))
    };
    let mut all = Vec::new();
    for property in VARIED.into_iter().filter(measured) {
        let label = property.label();
        let more = scaled(case, property, |v| v * SAMPLING);
        let less = scaled(case, property, |v| v / SAMPLING);
        all.extend([
            (format!("{label} a quarter more"), more),
            (format!("{label} a fifth less"), less),
        ]);
    }
    for property in [Property::Ph, Property::SaltPh].into_iter().filter(measured) {
        let label = property.label();
        let higher = scaled(case, property, |v| v + PH_SAMPLING);
        let lower = scaled(case, property, |v| v - PH_SAMPLING);
        all.extend([
            (format!("{label} 0.3 higher"), higher),
            (format!("{label} 0.3 lower"), lower),
        ]);
    }
    if case.bed.texture.is_none() && sample.is_some_and(|s| s.texture.is_none()) {
        all.extend([Texture::Sand, Texture::Loam, Texture::Clay].map(|texture| {
            let what = format!("the soil is {}", texture.label());
            (what, changed(case, |c| c.bed.texture = Some(texture)))
        }));
    }
    all
}

/// What the person may answer, or do, otherwise.
fn of_answers(case: &Case) -> Vec<(String, Case)> {
    let mut all: Vec<(String, Case)> = Vec::new();
    let mut add = |what: &str, change: &dyn Fn(&mut Case)| {
        all.push((what.into(), changed(case, change)));
    };
    if case.biochar.state.is_none() {
        for (state, words) in [
            (BagState::Uncharged, "the biochar on hand is fresh"),
            (BagState::Charged, "the biochar on hand is charged"),
        ] {
            add(words, &|c| c.biochar.state = Some(state));
        }
    }
    if case.biochar.feedstock.is_none() {
        for (feedstock, words) in [
            (Feedstock::Softwood, "the biochar is of softwood"),
            (Feedstock::GrassOrStraw, "the biochar is of straw"),
            (Feedstock::Manure, "the biochar is of manure"),
        ] {
            add(words, &|c| c.biochar.feedstock = Some(feedstock));
        }
    }
    if let Some(planting) = case.season.planting {
        for (days, words) in
            [(DAYS, "planting four weeks later"), (-DAYS, "planting four weeks sooner")]
        {
            let moved = planting.checked_add(Duration::days(days)).unwrap_or(planting);
            add(words, &|c| c.season.planting = Some(moved));
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::{open, read};

    #[test]
    fn what_was_put_right_is_varied_and_what_was_left_out_is_not() {
        let report = read(&open(b"Olsen P 10 ppm\nPotassium 150 ppm\n").unwrap()).unwrap();
        let mut case = Case { report, ..Case::default() };
        let readings = case.report.samples[0].readings.clone();
        case.reading.put_right(&readings[0], false, |c| c.result = Some("40".into()));
        case.reading.put_right(&readings[1], false, |c| c.leave_out = true);
        let tried = variations(&put_right(&case));
        let of = |start: &str| tried.iter().filter(|(what, _)| what.starts_with(start)).count();
        assert_eq!((of("phosphorus"), of("potassium")), (2, 0));
        let (_, more) = tried.iter().find(|(what, _)| what == "phosphorus a quarter more").unwrap();
        let judged = crate::judged_readings(more, 0);
        assert_eq!(judged.first().and_then(|r| r.value), Some(50.0));
    }
}
