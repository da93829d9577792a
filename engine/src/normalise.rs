//! Readings in one unit system, with the person's answers and corrections
//! applied; what is missing becomes a question.

use crate::case::ReadingAnswers;
use crate::quantity::Unit;
use crate::question::Question;
use crate::report::{Known, Place, SampleReport};
use crate::soil::{Measure, Method, Property, Soil};

/// A sample ready to be judged.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Normalised {
    /// Every reading, usable or not.
    pub readings: Vec<NormalReading>,
    /// The usable measures.
    pub soil: Soil,
    /// What must be asked.
    pub questions: Vec<Question>,
}

/// A reading with answers and corrections applied.
#[derive(Clone, Debug, PartialEq)]
pub struct NormalReading {
    /// What was measured.
    pub property: Property,
    /// In the engine's units, or why it can't be used yet.
    pub measure: Result<Measure, String>,
    /// The number as printed, when there is one.
    pub printed: Option<f64>,
    /// The unit as printed or answered.
    pub unit: Option<Unit>,
    /// The method and how it is known.
    pub method: Option<Known<Method>>,
    /// The laboratory's own rating.
    pub rating: Option<String>,
    /// The name as printed.
    pub name: String,
    /// The result as printed.
    pub original: String,
    /// Where it stands.
    pub place: Place,
    /// What was done to it.
    pub notes: Vec<String>,
}

/// Applies answers and corrections and converts to the engine's units.
pub fn normalise(sample: &SampleReport, answers: &ReadingAnswers) -> Normalised {
    let _ = (sample, answers);
    Normalised::default()
}
