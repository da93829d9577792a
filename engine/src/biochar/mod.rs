//! Which biochar, how much, how charged, and what it should do.

mod advice;
pub mod certificate;
pub mod charge;
mod charging;
mod course;
mod effect;
pub mod exchange;
mod facts;
mod liming;
mod material;
mod path;
pub mod permanence;
pub mod purchase;
mod questions;
mod rate;
mod reaction;
pub mod repeats;
mod sensitivity;
mod shift;
mod spread;
pub mod standards;
pub mod work_in;

use crate::case::{BagState, Case};
use crate::cautions::cautions;
use crate::chemistry::Chemistry;
use crate::quantity::{Band, Unit, measured_out, shown};
use crate::question::Question;
use crate::ranges::Findings;
use crate::season::{Plan, Window, tasks};
use crate::soil::{Soil, Texture};

pub use advice::{Advice, Charging, Effect, Path, Reason};
pub use charge::{ChargePlan, charge_plan};
pub use charging::{taken_up, water_to_wet};
pub use course::{Course, Grown, WEEKS, courses};
pub use liming::ph_rise;
pub use material::Material;
pub use path::{Decision, RULES, Rule, Speaks, decide};
pub use rate::{litres_per_m2, mass_percent, tonnes_per_ha};
pub use reaction::{Reaction, ph_buffering, ph_with, reaction};
pub use sensitivity::{Sensitivity, Trial, Turn, sensitivity};
pub use shift::{Shift, exchange_shift};

/// All that the plan is made from.
#[derive(Clone, Copy, Debug)]
pub struct Situation<'a> {
    /// The person's answers.
    pub case: &'a Case,
    /// The sample in the engine's units.
    pub soil: &'a Soil,
    /// The judgement of each property.
    pub findings: &'a Findings,
    /// The chemistry.
    pub chemistry: &'a Chemistry,
    /// The texture, answered or read.
    pub texture: Option<Texture>,
}

/// What the plan is made from: the path, the biochar, how much of it, and its charge.
pub(crate) struct Prepared {
    pub decision: Decision,
    pub material: Material,
    pub dose: rate::Dose,
    pub recipe: Option<charging::Recipe>,
}

impl Prepared {
    pub fn of(situation: &Situation<'_>) -> Prepared {
        let decision = decide(situation);
        let case = situation.case;
        let material = Material::of(&case.biochar);
        let dose = rate::dose(situation, &material);
        let path = decision.path;
        let needs_charge = match path {
            Path::ChargeFirst => true,
            Path::Charged => case.biochar.state != Some(BagState::Charged),
            _ => false,
        };
        let recipe =
            needs_charge.then(|| charging::recipe(&decision.facts, path, case, &dose, &material));
        Prepared { decision, material, dose, recipe }
    }
}

/// The plan, and what must be asked to firm it up.
pub fn advise(situation: &Situation<'_>) -> (Advice, Vec<Question>) {
    let Prepared { decision, material, dose, recipe } = Prepared::of(situation);
    let path = decision.path;
    let case = situation.case;
    let uses = path != Path::None;
    let alternatives = questions::alternatives(situation, &decision);
    let questions = questions::questions(situation, &decision, &alternatives, recipe.is_some());

    let amount = measured_out(dose.litres, case.measures);
    let depth = shown(&Band::exactly(dose.depth), Unit::Cm, case.measures);
    let season = tasks(&Plan {
        path,
        timing: &decision.facts.timing,
        kind: case.bed.kind,
        charging_days: recipe.as_ref().map(|r| r.days.likely),
        amount: &amount,
        depth: &depth,
        first: first(&decision),
    });
    let effects = if uses {
        effect::effects(situation, path, &dose, &material, recipe.as_ref())
    } else {
        Vec::new()
    };
    let charging_with = recipe.as_ref().map(|r| r.sources.as_slice()).unwrap_or_default();
    let advice = Advice {
        path,
        headline: headline(&decision),
        provisional: provisional(&decision, &alternatives),
        reasons: decision.reasons(),
        would_change: alternatives.iter().map(questions::Alternative::sentence).collect(),
        effects,
        season,
        cautions: cautions(situation, path, charging_with),
        charging: recipe.map(|r| r.charging),
        amounts: if uses { dose.figures } else { Vec::new() },
        capped_by: if uses { dose.capped_by } else { Vec::new() },
    };
    (advice, questions)
}

/// The answer in one sentence.
fn headline(decision: &Decision) -> String {
    let facts = &decision.facts;
    match decision.path {
        Path::UnchargedAfterHarvest => {
            if facts.timing.winter == Some(crate::case::Winter::None) {
                "Hold this surplus: work in uncharged biochar after harvest, before the main rains."
            } else if facts.timing.winter_is_ahead() {
                "Hold this surplus: work in uncharged biochar after harvest, before winter."
            } else {
                "Hold this surplus: work uncharged biochar into the clear bed, well before planting."
            }
        }
        Path::Charged if facts.growing_on() => {
            "Use charged biochar: beside the plants now, or before the next planting."
        }
        Path::Charged => "Use charged biochar, mixed in before you plant.",
        Path::ChargeFirst => "Charge the biochar you have first, then mix it in before you plant.",
        Path::None if decision.fired("nothing-judged") => {
            "No plan yet: answer what the report leaves open about nitrogen, phosphorus and \
             potassium first."
        }
        Path::None => match first(decision) {
            Some(_) if decision.fired("sodic") => "No biochar now: cure the sodium first.",
            Some(_) if decision.fired("saline") || decision.fired("salty-1-1") => {
                "No biochar now: wash the salts out first."
            }
            _ if decision.fired("acid-lovers") => "No biochar for acid-loving plants.",
            _ if decision.fired("salty-biochar") || decision.fired("manure-on-phosphorus") => {
                "Don't use this biochar here; another might do."
            }
            _ if ["ph-past-limit", "ash-on-alkaline", "limes-above-range"]
                .iter()
                .any(|name| decision.fired(name)) =>
            {
                "No biochar now: the pH is too high for it."
            }
            _ if decision.fired("roots-all-year") => {
                "No biochar needed: the plants hold this surplus themselves."
            }
            _ => "No biochar needed: nothing here calls for it.",
        },
    }
    .to_string()
}

/// What comes before any biochar.
fn first(decision: &Decision) -> Option<&'static str> {
    if decision.path != Path::None {
        None
    } else if decision.fired("nothing-judged") {
        Some(
            "Answer the questions about the report, or have nitrate, phosphorus and potassium tested.",
        )
    } else if decision.fired("sodic") {
        Some("Mend the drainage, then bring gypsum and leach it through. Have it sized locally.")
    } else if decision.fired("saline") || decision.fired("salty-1-1") {
        Some("Wash the salts down with clean water, where the soil drains.")
    } else {
        None
    }
}

/// Whether an open question, a missing date or a weak ground could turn the path.
fn provisional(decision: &Decision, alternatives: &[questions::Alternative]) -> bool {
    let facts = &decision.facts;
    let dates_missing = decision.path == Path::UnchargedAfterHarvest
        && match &facts.timing.window {
            Window::Open { to, .. } => to.is_none(),
            Window::Unknown(_) => true,
            Window::Closed => false,
        };
    decision.fired("nothing-judged")
        || decision.fired("judged-from-memory")
        || decision.fired("growing-now")
        || facts.only_stale_nitrate()
        || dates_missing
        || alternatives.iter().any(|a| a.question.is_some())
}
