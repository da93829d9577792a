//! The answer: one plain structure for the page, the tests, the calendar and
//! the command line.

use std::borrow::Cow;

use serde::Serialize;

use crate::biochar::{self, Advice, Situation};
use crate::case::Case;
use crate::chemistry;
use crate::normalise::{NormalReading, Normalised, normalise};
use crate::quantity::{Figure, Unit};
use crate::question::Question;
use crate::ranges::{Finding, Findings, Setting, judge};
use crate::report::{Origin, Place, SampleReport, Unread};
use crate::soil::{Amount, Method, Property, Soil};
use crate::sources::Citation;
use crate::survey::survey;

/// The version of [`Outcome`] this engine writes.
pub const OUTCOME_VERSION: u32 = 1;

/// Everything the engine concludes from a [`crate::case::Case`].
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Outcome {
    /// The version of this shape.
    pub version: u32,
    /// The samples of the report, each judged and advised on.
    pub samples: Vec<SampleOutcome>,
    /// Which sample the bed was taken from; `derived` and `advice` below are its own.
    pub sample: usize,
    /// Everything in the report that could not be placed.
    pub unread: Vec<Unread>,
    /// What must be known before more can be said, the most telling first.
    pub questions: Vec<Question>,
    /// The chemistry of the chosen sample.
    pub derived: Vec<Figure>,
    /// The plan for the chosen sample.
    pub advice: Advice,
    /// How the report was read, where there was a choice.
    pub notes: Vec<String>,
}

impl Outcome {
    /// Every citation the chosen sample's findings, chemistry and plan rest on.
    pub fn citations(&self) -> impl Iterator<Item = &Citation> {
        let advice = &self.advice;
        let findings =
            self.samples.get(self.sample).into_iter().flat_map(|s| &s.readings).flat_map(|r| {
                std::iter::once(&r.finding.grounds)
                    .chain(r.finding.second_opinions.iter().map(|o| &o.grounds))
            });
        let charging = advice.charging.iter().flat_map(|c| &c.figures);
        let figures =
            self.derived.iter().chain(&advice.amounts).chain(charging).map(|f| &f.grounds);
        findings
            .chain(figures)
            .chain(advice.effects.iter().map(|e| &e.change.grounds))
            .chain(advice.reasons.iter().map(|r| &r.grounds))
            .chain(advice.season.iter().map(|t| &t.grounds))
            .chain(advice.cautions.iter().map(|c| &c.grounds))
            .flat_map(|grounds| &grounds.sources)
    }
}

/// One sample, judged and advised on.
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
    pub advice: Advice,
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

/// The whole path after reading: normalise, judge, chemistry, plan.
///
/// A case without samples gives an outcome without samples and a plan that
/// says so; nothing here fails.
pub fn interpret(case: &Case) -> Outcome {
    let samples: Vec<SampleOutcome> =
        case.report.samples.iter().map(|sample| interpret_sample(case, sample)).collect();
    let chosen = case.sample.min(samples.len().saturating_sub(1));
    let unread =
        case.report.unread.iter().chain(samples.iter().flat_map(|s| &s.unread)).cloned().collect();
    let no_sample;
    let plan = match samples.get(chosen) {
        Some(sample) => sample,
        None => {
            no_sample = interpret_sample(case, &SampleReport::default());
            &no_sample
        }
    };
    Outcome {
        version: OUTCOME_VERSION,
        sample: chosen,
        unread,
        questions: plan.questions.clone(),
        derived: plan.derived.clone(),
        advice: plan.advice.clone(),
        notes: case.report.notes.clone(),
        samples,
    }
}

fn interpret_sample(case: &Case, sample: &SampleReport) -> SampleOutcome {
    let Normalised { readings, soil, mut questions } = normalise(sample, &case.reading);
    let setting = setting(case, sample, &soil);
    let texture = setting.texture;
    let chemistry = chemistry::work_out(&soil, &setting);
    questions.extend(chemistry.questions.iter().cloned());

    let readings: Vec<_> =
        readings.into_iter().map(|reading| judged(reading, &soil, &setting)).collect();
    let mut findings = Findings::default();
    for JudgedReading { property, finding, .. } in &readings {
        findings.add(*property, finding);
    }

    let situation =
        Situation { case, soil: &soil, findings: &findings, chemistry: &chemistry, texture };
    let (advice, more) = biochar::advise(&situation);
    questions.extend(more);
    let questions = in_order(questions);
    SampleOutcome {
        name: sample.name.clone(),
        readings,
        unread: sample.unread.clone(),
        questions,
        derived: chemistry.figures,
        advice,
    }
}

/// The readings of a sample as they are judged, without its plan: for what
/// goes through many samples.
pub fn judged_readings(case: &Case, sample: &SampleReport) -> Vec<JudgedReading> {
    let Normalised { readings, soil, .. } = normalise(sample, &case.reading);
    let setting = setting(case, sample, &soil);
    readings.into_iter().map(|reading| judged(reading, &soil, &setting)).collect()
}

/// What a sample's readings are judged in.
pub(crate) fn setting(case: &Case, sample: &SampleReport, soil: &Soil) -> Setting {
    let texture = case.bed.texture.or(sample.texture).or_else(|| soil.texture());
    Setting { plants: case.plants, texture }
}

/// The judgement of a reading; of one that can't be used, why.
pub(crate) fn finding_of(reading: &NormalReading, soil: &Soil, setting: &Setting) -> Finding {
    match &reading.measure {
        Ok(measure) => judge(measure, soil, setting),
        Err(why) => Finding { not_judged: Some(why.clone()), ..Finding::default() },
    }
}

fn judged(reading: NormalReading, soil: &Soil, setting: &Setting) -> JudgedReading {
    let finding = finding_of(&reading, soil, setting);
    let (value, bound, unit) = match &reading.measure {
        Ok(m) => match m.amount {
            Amount::Exactly(v) => (Some(v), None, Some(m.unit)),
            Amount::Below(v) => (None, Some(Bound::Below(v)), Some(m.unit)),
            Amount::Above(v) => (None, Some(Bound::Above(v)), Some(m.unit)),
        },
        Err(_) => (reading.printed, None, reading.unit),
    };
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
        finding,
        notes: reading.notes,
    }
}

/// Looks at the chosen sample as the plan sees it: for what is worked out
/// beside the first answer. `None` without a sample.
pub fn situated<R>(case: &Case, look: impl FnOnce(&Situation<'_>) -> R) -> Option<R> {
    survey(Cow::Borrowed(case)).map(|survey| look(&survey.situation()))
}

/// The most telling question first, each once: the page has one control for
/// each.
fn in_order(asked: Vec<Question>) -> Vec<Question> {
    let mut questions: Vec<Question> = Vec::new();
    for question in asked {
        let at = questions.partition_point(|q| q.id < question.id);
        if questions.get(at).is_none_or(|q| q.id != question.id) {
            questions.insert(at, question);
        }
    }
    questions
}
