//! What kind of soil this is: how it holds water, its sodium and salts and
//! what they do to crops, carbon, nitrate in the ground, phosphorus that water
//! carries off, and metals.
//!
//! [`traits`] is a call of its own, beside [`crate::interpret`]: the page asks
//! for it when a reader goes down to it.

pub mod carbon;
pub mod metals;
pub mod nitrogen;
pub mod phosphorus;
pub mod salt_tolerance;
pub mod salts;
mod slice;
pub mod sodicity;
pub mod water;

use std::borrow::Cow;

use crate::case::Case;
use crate::quantity::{Band, Figure, Grounds, Unit, shown};
use crate::question::{Question, QuestionId};
use crate::soil::{PlantGroup, Property};
use crate::survey::{Survey, survey};

/// What the chosen sample says of its soil.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Traits {
    /// Every worked-out number. The yields of crops share one name, `yield-in-salts`, and are
    /// told apart by their label.
    pub figures: Vec<Figure>,
    /// What it means, a sentence or a few each.
    pub sayings: Vec<Saying>,
    /// What must be known before more can be said.
    pub questions: Vec<Question>,
}

/// Something to know of this soil.
#[derive(Clone, Debug, PartialEq)]
pub struct Saying {
    /// A kebab-case name: `water`, `sodicity`, `salts-and-crops`, `carbon`, `nitrate`,
    /// `phosphorus-and-water`, `metals`.
    pub name: &'static str,
    /// What it is, and what to do.
    pub text: String,
    /// What it rests on.
    pub grounds: Grounds,
}

/// Works out what the chosen sample says of its soil. Without a sample nothing is said.
pub fn traits(case: &Case) -> Traits {
    survey(Cow::Borrowed(case)).map_or_else(Traits::default, |survey| of_survey(&survey))
}

/// Works out what a surveyed sample says of its soil.
pub fn of_survey(survey: &Survey<'_>) -> Traits {
    let mut traits = Traits::default();
    water::work_out(survey, &mut traits);
    let paste = salts::paste(survey, &mut traits);
    sodicity::work_out(survey, paste.as_ref(), &mut traits);
    salt_tolerance::work_out(survey, paste.as_ref(), &mut traits);
    carbon::work_out(survey, &mut traits);
    nitrogen::work_out(survey, &mut traits);
    phosphorus::work_out(survey, &mut traits);
    metals::work_out(survey, &mut traits);
    traits
}

impl Traits {
    /// A worked-out number by its name.
    pub fn get(&self, name: &str) -> Option<&Figure> {
        self.figures.iter().find(|f| f.name == name)
    }

    /// Adds a number; one beyond all counting is left out.
    fn figure(
        &mut self,
        name: &'static str,
        label: &'static str,
        band: Band,
        unit: Unit,
        grounds: &Grounds,
    ) {
        if band.low.is_finite() && band.high.is_finite() {
            let grounds = without_repeats(grounds.clone());
            self.figures.push(Figure { name, label, band, unit, grounds });
        }
    }

    fn say(&mut self, name: &'static str, text: impl Into<String>, grounds: Grounds) {
        let grounds = without_repeats(grounds);
        self.sayings.push(Saying { name, text: text.into(), grounds });
    }

    /// Asks, once for each question; what asks again adds what it is about.
    fn ask(&mut self, id: QuestionId, text: &str, changes: &str, about: &[Property]) {
        if let Some(asked) = self.questions.iter_mut().find(|q| q.id == id) {
            asked.about.extend(about);
            asked.changes = format!("{} {changes}", asked.changes);
            return;
        }
        self.questions.push(Question {
            id,
            text: text.into(),
            changes: changes.into(),
            about: about.to_vec(),
            suggestion: None,
        });
    }
}

/// Each input and each citation once: numbers that lead to a saying share some.
fn without_repeats(mut grounds: Grounds) -> Grounds {
    for i in (1..grounds.inputs.len()).rev() {
        if grounds.inputs[..i].contains(&grounds.inputs[i]) {
            grounds.inputs.remove(i);
        }
    }
    for i in (1..grounds.sources.len()).rev() {
        if grounds.sources[..i].contains(&grounds.sources[i]) {
            grounds.sources.remove(i);
        }
    }
    grounds
}

impl Survey<'_> {
    /// A band in the reader's measures.
    fn shown(&self, band: &Band, unit: Unit) -> String {
        shown(band, unit, self.case.measures)
    }

    /// Whether the plants are vegetables of any kind.
    fn grows_vegetables(&self) -> bool {
        use PlantGroup::{FruitingVegetables, LeafyVegetables, MixedVegetables, RootCrops};
        matches!(
            self.case.plants.unwrap_or_default(),
            MixedVegetables | LeafyVegetables | FruitingVegetables | RootCrops
        )
    }

    /// Organic matter, %: measured, or from organic carbon.
    fn organic_matter(&self) -> Option<Band> {
        let measured = self.soil.value(Property::OrganicMatter).map(Band::exactly);
        measured.or_else(|| self.chemistry.get("organic-matter").map(|f| f.band))
    }
}
