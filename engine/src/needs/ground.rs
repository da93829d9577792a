//! The chosen sample, read, judged and worked out: what needs and traits stand on.

use crate::case::Case;
use crate::chemistry::{self, Chemistry};
use crate::needs::Ground;
use crate::normalise::{NormalReading, normalise};
use crate::ranges::{Finding, Findings, Setting, judge};
use crate::report::SampleReport;
use crate::soil::{Measure, Property, Soil, Texture};

/// The chosen sample with all that is known of it.
pub(crate) struct Survey<'a> {
    /// The person's answers.
    pub case: &'a Case,
    /// The sample as it was read.
    pub sample: &'a SampleReport,
    /// Its readings in the engine's units, in the same order.
    pub readings: Vec<NormalReading>,
    /// The usable measures.
    pub soil: Soil,
    /// The judgement of each property.
    pub findings: Findings,
    /// The chemistry.
    pub chemistry: Chemistry,
    /// The texture, answered or read.
    pub texture: Option<Texture>,
}

/// Surveys the chosen sample; `None` without one.
pub(crate) fn survey(case: &Case) -> Option<Survey<'_>> {
    let samples = &case.report.samples;
    let sample = samples.get(case.sample.min(samples.len().saturating_sub(1)))?;
    let read = normalise(sample, &case.reading);
    let texture = case.bed.texture.or(sample.texture).or_else(|| read.soil.texture());
    let setting = Setting { plants: case.plants, texture };
    let chemistry = chemistry::work_out(&read.soil, &setting);
    let mut findings = Findings::default();
    for measure in &read.soil.measures {
        let finding: Finding = judge(measure, &read.soil, &setting);
        // A later reading that can be judged is better than an earlier one that can't.
        if findings.get(measure.property).is_none()
            || findings.level(measure.property).is_none() && finding.level.is_some()
        {
            findings.set(measure.property, finding);
        }
    }
    Some(Survey {
        case,
        sample,
        readings: read.readings,
        soil: read.soil,
        findings,
        chemistry,
        texture,
    })
}

impl Survey<'_> {
    /// What a need is worked out from.
    pub fn ground(&self) -> Ground<'_> {
        Ground {
            case: self.case,
            soil: &self.soil,
            findings: &self.findings,
            chemistry: &self.chemistry,
            texture: self.texture,
        }
    }

    /// The usable readings of a property, each with the slice of soil it speaks for: top and
    /// bottom, cm from the surface, where that is known.
    pub fn slices(
        &self,
        property: Property,
    ) -> impl Iterator<Item = (&NormalReading, Measure, Option<(f64, f64)>)> {
        let answered = self.case.reading.depth_cm.filter(|depth| *depth > 0.0);
        let common = answered.map(|depth| (0.0, depth)).or(self.sample.depth_cm);
        self.readings.iter().zip(&self.sample.readings).filter_map(move |(normal, raw)| {
            let measure = normal.measure.as_ref().ok().filter(|m| m.property == property)?;
            Some((normal, *measure, raw.depth_cm.or(common)))
        })
    }
}
