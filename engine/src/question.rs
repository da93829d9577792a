//! What must be asked, and what the answer would change.

use serde::Serialize;

use crate::soil::Property;

/// Something that must be asked, and what the answer would change.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Question {
    /// Which question it is; the page has one control for each.
    pub id: QuestionId,
    /// The question in one sentence.
    pub text: String,
    /// What the answer would change.
    pub changes: String,
    /// The properties it is about.
    pub about: Vec<Property>,
    /// A suggested answer and its reason, when there is one.
    pub suggestion: Option<String>,
}

impl Question {
    /// A question without a suggested answer.
    pub fn new(
        id: QuestionId,
        text: impl Into<String>,
        changes: impl Into<String>,
        about: &[Property],
    ) -> Question {
        let (text, changes) = (text.into(), changes.into());
        Question { id, text, changes, about: about.to_vec(), suggestion: None }
    }

    /// The same with a suggested answer and its reason.
    pub fn suggesting(mut self, answer: impl Into<String>) -> Question {
        self.suggestion = Some(answer.into());
        self
    }
}

/// The questions the engine can ask. Each is answered by one field of the case.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum QuestionId {
    /// `reading.region`
    Region,
    /// `reading.extractants`
    Extractant,
    /// `reading.nutrient-unit`
    NutrientUnit,
    /// A unit that can't be right, or that is missing for one reading: `reading.corrections`
    ReadingUnit,
    /// `reading.counted-off`
    CountedOff,
    /// `reading.depth-cm`
    SamplingDepth,
    /// `reading.buffer`
    Buffer,
    /// `reading.ec-method`
    EcMethod,
    /// `bed.texture`
    Texture,
    /// `plants`
    Plants,
    /// `biochar.state`
    BagState,
    /// `season.planting`
    Planting,
    /// `season.harvest` and `season.first-frost`
    Winter,
    /// `season.today`
    Today,
    /// `bed.area-m2`
    Area,
    /// `bed.depth-cm`
    WorkedDepth,
    /// `charge-with`
    ChargeWith,
}
