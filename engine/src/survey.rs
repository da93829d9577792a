//! The chosen sample, read, judged and worked out: what all stands on that is
//! worked out beside the first answer.

use std::borrow::Cow;

use crate::biochar::Situation;
use crate::case::Case;
use crate::chemistry::{self, Chemistry};
use crate::normalise::{NormalReading, normalise};
use crate::outcome::{finding_of, setting};
use crate::ranges::Findings;
use crate::report::SampleReport;
use crate::soil::{Measure, Property, Soil, Texture};

/// The chosen sample with all that is known of it. Who asks for several things
/// of one sample surveys it once.
#[derive(Debug)]
pub struct Survey<'a> {
    pub(crate) case: Cow<'a, Case>,
    /// Its readings in the engine's units, in the same order.
    readings: Vec<NormalReading>,
    /// The usable measures.
    pub(crate) soil: Soil,
    /// The judgement of each property.
    findings: Findings,
    pub(crate) chemistry: Chemistry,
    /// The texture, answered or read.
    pub(crate) texture: Option<Texture>,
}

/// The chosen sample of a case as it was read.
fn chosen(case: &Case) -> Option<&SampleReport> {
    let samples = &case.report.samples;
    samples.get(case.sample.min(samples.len().saturating_sub(1)))
}

/// Surveys the chosen sample; `None` without one.
pub fn survey(case: Cow<'_, Case>) -> Option<Survey<'_>> {
    let sample = chosen(&case)?;
    let read = normalise(sample, &case.reading);
    let setting = setting(&case, sample, &read.soil);
    let texture = setting.texture;
    let chemistry = chemistry::work_out(&read.soil, &setting);
    let mut findings = Findings::default();
    for reading in &read.readings {
        findings.add(reading.property, &finding_of(reading, &read.soil, &setting));
    }
    Some(Survey { case, readings: read.readings, soil: read.soil, findings, chemistry, texture })
}

impl Survey<'_> {
    /// The person's answers.
    pub fn case(&self) -> &Case {
        &self.case
    }

    /// The sample as the plan sees it.
    pub fn situation(&self) -> Situation<'_> {
        Situation {
            case: &self.case,
            soil: &self.soil,
            findings: &self.findings,
            chemistry: &self.chemistry,
            texture: self.texture,
        }
    }

    /// The usable readings of a property, each with the slice of soil it speaks for: top and
    /// bottom, cm from the surface, where that is known.
    pub(crate) fn slices(
        &self,
        property: Property,
    ) -> impl Iterator<Item = (&NormalReading, Measure, Option<(f64, f64)>)> {
        let answered = self.case.reading.depth_cm.filter(|depth| *depth > 0.0);
        let sample = chosen(&self.case);
        let common = answered.map(|depth| (0.0, depth)).or(sample.and_then(|s| s.depth_cm));
        let raw = sample.into_iter().flat_map(|sample| &sample.readings);
        self.readings.iter().zip(raw).filter_map(move |(normal, raw)| {
            let measure = normal.measure.as_ref().ok().filter(|m| m.property == property)?;
            Some((normal, *measure, raw.depth_cm.or(common)))
        })
    }
}
