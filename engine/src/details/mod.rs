//! What a reader goes down to: views of a survey and its plan, worked out when
//! they are opened. None of them advises anything that the plan doesn't.

mod batch;
pub mod carbon;
mod course;
pub mod exchange;
pub mod metals;
pub mod nitrate;
pub mod permanence;
pub mod phosphorus;
mod purchase;
mod reaction;
mod repeats;
mod salts_and_crops;
mod sensitivity;
mod shift;
mod sodicity;
pub mod standards;
mod water;
mod windows;
mod winter_loss;
pub mod work_in;

use crate::quantity::{Band, Figure, Grounds, Unit};
use crate::question::{Question, QuestionId};
use crate::soil::Property;
use crate::survey::Survey;

pub use batch::batch;
pub use course::{Course, Grown, WEEKS, changes_with, courses};
pub use permanence::permanence;
pub use purchase::{Purchase, as_it_comes, purchase};
pub use reaction::{PhToCome, ph_buffering, ph_with, reaction};
pub use repeats::{Column, Repeats, repeats};
pub use sensitivity::{Sensitivity, Trial, Turn, sensitivity};
pub use shift::{Shift, exchange_shift};
pub use windows::{Windows, windows};
pub use winter_loss::{MonthLoss, WinterLoss, burns, lessened, scotter, winter_loss};

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

/// What a surveyed sample says of its soil.
pub fn traits(survey: &Survey<'_>) -> Traits {
    let mut traits = Traits::default();
    water::work_out(survey, &mut traits);
    sodicity::work_out(survey, &mut traits);
    salts_and_crops::work_out(survey, &mut traits);
    carbon::work_out(survey, &mut traits);
    nitrate::work_out(survey, &mut traits);
    phosphorus::work_out(survey, &mut traits);
    metals::work_out(survey, &mut traits);
    traits
}

/// Asks for the depth of the sample.
fn ask_depth(traits: &mut Traits, about: Property, changes: &str) {
    traits.ask(QuestionId::SamplingDepth, "How deep was the sample taken?", changes, &[about]);
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
            self.figures.push(Figure::new(name, label, band, unit, grounds));
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
        self.questions.push(Question::new(id, text, changes, about));
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
