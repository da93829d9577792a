//! The answer: one plain structure for the page, the tests, the calendar and
//! the command line.

use std::borrow::Cow;

use serde::Serialize;

use crate::case::Case;
use crate::plan::{Plan, plan};
use crate::quantity::{Figure, Unit};
use crate::question::Question;
use crate::ranges::Finding;
use crate::region::CropNames;
use crate::report::{Origin, Place, SampleReport, Unread};
use crate::soil::{Amount, Method, Property};
use crate::sources::Citation;
use crate::survey::{Judged, Survey, survey_of};

/// The version of [`Outcome`] this engine writes.
pub const OUTCOME_VERSION: u32 = 2;

/// Everything the engine concludes from a [`crate::case::Case`].
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Outcome {
    /// The version of this shape.
    pub version: u32,
    /// The samples of the report, each judged and planned.
    pub samples: Vec<SampleOutcome>,
    /// Which sample the bed was taken from; `derived` and `plan` below are its own.
    pub sample: usize,
    /// Everything in the report that could not be placed.
    pub unread: Vec<Unread>,
    /// What must be known before more can be said, the most telling first.
    pub questions: Vec<Question>,
    /// The chemistry of the chosen sample.
    pub derived: Vec<Figure>,
    /// The plan for the chosen sample.
    pub plan: Plan,
    /// How the report was read, where there was a choice.
    pub notes: Vec<String>,
}

impl Outcome {
    /// Every citation the chosen sample's findings, chemistry and plan rest on.
    pub fn citations(&self) -> impl Iterator<Item = &Citation> {
        let findings =
            self.samples.get(self.sample).into_iter().flat_map(|s| &s.readings).flat_map(|r| {
                std::iter::once(&r.finding.grounds)
                    .chain(r.finding.second_opinions.iter().map(|o| &o.grounds))
            });
        findings
            .chain(self.derived.iter().map(|f| &f.grounds))
            .chain(self.plan.grounds())
            .flat_map(|grounds| &grounds.sources)
    }
}

/// One sample, judged and planned.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SampleOutcome {
    /// Its name.
    pub name: String,
    /// Its readings with their judgement.
    pub readings: Vec<JudgedReading>,
    /// What of this sample could not be placed.
    pub unread: Vec<Unread>,
    /// What this sample's report leaves open.
    pub questions: Vec<Question>,
    /// Its chemistry.
    pub derived: Vec<Figure>,
    /// Its plan.
    pub plan: Plan,
}

/// A reading in the engine's units, with its judgement.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct JudgedReading {
    /// What was measured.
    pub property: Property,
    /// The number, when there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<f64>,
    /// The limit, when the result is only "below" or "above" it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bound: Option<Bound>,
    /// The unit of the number; `None` until it is known.
    pub unit: Option<Unit>,
    /// The method; `None` until it is known.
    pub method: Option<Method>,
    /// How the method is known.
    pub method_from: Option<Origin>,
    /// The result as printed, with its unit.
    pub original: String,
    /// The name as printed.
    pub name: String,
    /// Where it stands in the source.
    pub place: Place,
    /// The laboratory's own rating or range, as printed.
    pub lab_rating: Option<String>,
    /// Our judgement, flattened: `level`, `range`, `source` and more.
    #[serde(flatten)]
    pub finding: Finding,
    /// Conversions and inferences made on the way, for the reader.
    pub notes: Vec<String>,
}

/// A result that is only a limit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// Below this.
    Below(f64),
    /// Above this.
    Above(f64),
}

/// The whole path after reading: each sample is surveyed and planned once.
///
/// A case without samples gives an outcome without samples and a plan that
/// says so; nothing here fails.
pub fn interpret(case: &Case) -> Outcome {
    let of = |(at, sample)| outcome_of(&survey_of(Cow::Borrowed(case), at), Some(sample));
    let samples = case.report.samples.iter().enumerate().map(of).collect();
    gathered(case, samples)
}

/// The same for a case of one sample that is surveyed already.
pub fn interpret_survey(survey: &Survey<'_>) -> Outcome {
    let case = survey.case();
    gathered(case, vec![outcome_of(survey, case.report.samples.first())])
}

fn gathered(case: &Case, samples: Vec<SampleOutcome>) -> Outcome {
    let chosen = case.sample.min(samples.len().saturating_sub(1));
    let unread =
        case.report.unread.iter().chain(samples.iter().flat_map(|s| &s.unread)).cloned().collect();
    let no_sample;
    let chosen_one = match samples.get(chosen) {
        Some(sample) => sample,
        None => {
            no_sample = outcome_of(&survey_of(Cow::Borrowed(case), 0), None);
            &no_sample
        }
    };
    Outcome {
        version: OUTCOME_VERSION,
        sample: chosen,
        unread,
        questions: chosen_one.questions.clone(),
        derived: chosen_one.derived.clone(),
        plan: chosen_one.plan.clone(),
        notes: case
            .report
            .notes
            .iter()
            .cloned()
            .chain(region_read(case))
            .chain(crop_read(case))
            .collect(),
        samples,
    }
}

/// Whose tables judge, where the report's own words said so.
fn region_read(case: &Case) -> Option<String> {
    let [region] = case.report.regions.as_slice() else { return None };
    if case.reading.region.is_some() {
        return None;
    }
    Some(format!(
        "The report's own words fit this region: {}. Its tables judge first. Say so if the soil lies elsewhere.",
        region.name
    ))
}

/// What grows there, where the report's own words said so.
fn crop_read(case: &Case) -> Option<String> {
    let crop = CropNames::by_id(case.report.crop?)?.name;
    // A surveyed case has the crop among its answers.
    let taken = case.season.crops.iter().any(|of_bed| of_bed.name == crop);
    (taken || case.crop_read().is_some()).then(|| format!(
        "The report names this crop: {crop}. All is worked out for it. Say so if other plants grow there."
    ))
}

fn outcome_of(survey: &Survey<'_>, sample: Option<&SampleReport>) -> SampleOutcome {
    let (plan, more) = plan(survey);
    SampleOutcome {
        name: sample.map(|s| s.name.clone()).unwrap_or_default(),
        readings: survey.readings.iter().map(judged).collect(),
        unread: sample.map(|s| s.unread.clone()).unwrap_or_default(),
        questions: in_order(survey.questions.iter().cloned().chain(more)),
        derived: survey.chemistry.figures.clone(),
        plan,
    }
}

/// The readings of a sample as they are judged, without its plan: for what
/// goes through many samples.
pub fn judged_readings(case: &Case, sample: usize) -> Vec<JudgedReading> {
    survey_of(Cow::Borrowed(case), sample).readings.iter().map(judged).collect()
}

fn judged(Judged { reading, finding }: &Judged) -> JudgedReading {
    let (value, bound, unit) = match &reading.measure {
        Ok(m) => match m.amount {
            Amount::Exactly(v) => (Some(v), None, Some(m.unit)),
            Amount::Below(v) => (None, Some(Bound::Below(v)), Some(m.unit)),
            Amount::Above(v) => (None, Some(Bound::Above(v)), Some(m.unit)),
        },
        Err(_) => (reading.printed, None, reading.unit),
    };
    let reading = reading.clone();
    JudgedReading {
        property: reading.property,
        value,
        bound,
        unit,
        method: reading.method.as_ref().map(|m| m.value),
        method_from: reading.method.map(|m| m.from),
        original: reading.original,
        name: reading.name,
        place: reading.place,
        lab_rating: reading.rating,
        finding: finding.clone(),
        notes: reading.notes,
    }
}

/// The most telling question first, each once: the page has one control for
/// each.
fn in_order(asked: impl Iterator<Item = Question>) -> Vec<Question> {
    let mut questions: Vec<Question> = Vec::new();
    for question in asked {
        let at = questions.partition_point(|q| q.id < question.id);
        if questions.get(at).is_none_or(|q| q.id != question.id) {
            questions.insert(at, question);
        }
    }
    questions
}
