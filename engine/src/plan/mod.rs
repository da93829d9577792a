//! What to do with the bed: one plan, decided once, in this order: hazards,
//! path, rate, charge, lime and feeds, jobs, cautions.

mod calibration;
pub mod cautions;
mod ceilings;
pub mod charge;
mod effect;
mod facts;
mod hazards;
mod headline;
mod heap;
mod job;
mod jobs;
pub mod ledger;
mod lines;
mod load;
pub mod needs;
mod path;
mod questions;
mod rate;
mod washing;

use serde::Serialize;
use time::Date;

use crate::case::BagState;
use crate::plan::cautions::{Caution, cautions};
use crate::plan::charge::ChargePlan;
use crate::plan::jobs::Work;
use crate::plan::ledger::{Bringer, Ledger, Substance};
use crate::plan::needs::{Need, NeedKind};
use crate::quantity::{Band, Figure, Grounds};
use crate::question::Question;
use crate::season::Window;
use crate::soil::Property;
use crate::survey::Survey;

pub use calibration::{Calibrated, calibrate};
pub use effect::Effect;
pub(crate) use effect::{A_MONTH, Laid, Part, available, laid_out, laid_out_with};
pub use hazards::Hazard;
pub use heap::charge_alone;
pub use job::{Job, JobKind};
pub use path::{Decision, Path, RULES, Reason, Rule, RuleName, Speaks, decide};
pub(crate) use rate::{Before, Cap, caps, kg_per_m2, percent, rise_in_the_end, wanted};
pub use rate::{Dose, litres_per_m2, mass_percent, tonnes_per_ha};

/// The plan of one bed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Plan {
    /// The biochar path.
    pub path: Path,
    /// The answer in one sentence.
    pub headline: String,
    /// Whether something still to be answered could change the path.
    pub provisional: bool,
    /// What stops or changes everything else, the worst first.
    pub hazards: Vec<Hazard>,
    /// Every rule that fired, both ways.
    pub reasons: Vec<Reason>,
    /// What answer or finding would change the path.
    pub would_change: Vec<String>,
    /// Published lines that are near, and what lies beyond them.
    pub lines: Vec<String>,
    /// How much biochar, for this bed; empty when the path is none.
    pub amounts: Vec<Figure>,
    /// What held the amount down, when something did.
    pub capped_by: Vec<String>,
    /// How to charge it; `None` when nothing needs charging.
    pub charge: Option<ChargePlan>,
    /// Lime, acid, gypsum and nutrients: what is still missing after all else.
    pub needs: Vec<Need>,
    /// What is in store, wanted, brought, held and missing of each substance.
    pub ledger: Ledger,
    /// What the biochar should do to each property in the first month.
    pub effects: Vec<Effect>,
    /// What to do when.
    pub jobs: Vec<Job>,
    /// What can hurt, and whom to ask.
    pub cautions: Vec<Caution>,
    /// Whether lime comes before all else but a hazard.
    #[serde(skip)]
    pub lime_first: bool,
    /// The dose of biochar.
    #[serde(skip)]
    pub dose: Dose,
}

impl Plan {
    /// Whether any biochar is used.
    pub fn uses_biochar(&self) -> bool {
        self.path != Path::None
    }

    /// All that the plan's numbers and sentences rest on.
    pub fn grounds(&self) -> impl Iterator<Item = &Grounds> {
        let figures = self.amounts.iter().map(|f| &f.grounds);
        let charge = self.charge.iter().flat_map(ChargePlan::grounds);
        let needs = self.needs.iter().map(|need| &need.grounds);
        figures
            .chain(charge)
            .chain(needs)
            .chain(self.effects.iter().flat_map(Effect::figures).map(|figure| &figure.grounds))
            .chain(self.reasons.iter().map(|r| &r.grounds))
            .chain(self.jobs.iter().map(|job| &job.grounds))
            .chain(self.cautions.iter().map(|c| &c.grounds))
    }
}

/// Plans the bed of a survey; also what must be asked to firm the plan up.
pub fn plan(survey: &Survey<'_>) -> (Plan, Vec<Question>) {
    let hazards = hazards::hazards(survey);
    let decision = decide(survey);
    let path = decision.path;
    let dose = rate::dose(survey);
    let mut questions = Vec::new();
    let Balance { ledger, needs, charge, late } =
        balance(survey, &hazards, path, &dose, &mut questions);

    let alternatives = questions::alternatives(survey, &decision);
    let gives = needs.iter().any(|need| need.given().is_some());
    let limed = needs.iter().any(|n| n.kind == NeedKind::Lime && n.given().is_some());
    let recipe = charge.is_some();
    questions.extend(questions::questions(survey, &decision, &alternatives, recipe, gives));
    let charge_of = charge.as_ref();
    // Where a hazard decides, and no answer would lead elsewhere, nothing is only for now.
    let settled = !hazards.is_empty() && alternatives.is_empty();
    let work =
        Work { survey, path, hazards: &hazards, dose: &dose, charge: charge_of, needs: &needs };
    let jobs = jobs::jobs(&work);
    let uses = path != Path::None;
    let with = charge_of.map(ChargePlan::sources).unwrap_or_default();
    let plan = Plan {
        headline: headline::headline(survey, &decision, &hazards, &needs, late),
        lime_first: headline::lime_first(survey, &needs).is_some(),
        provisional: !settled
            && (provisional(&decision, &alternatives) || rests_on_unjudged(survey, path)),
        reasons: decision.reasons(),
        would_change: alternatives.iter().map(questions::Alternative::sentence).collect(),
        lines: lines::near_lines(survey),
        effects: if uses { effect::effects(survey, path, &dose, &ledger) } else { Vec::new() },
        cautions: cautions(survey, path, &hazards, &with, limed),
        amounts: if uses { dose.figures.clone() } else { Vec::new() },
        capped_by: if uses { dose.capped_by.clone() } else { Vec::new() },
        path,
        hazards,
        charge,
        needs,
        ledger,
        jobs,
        dose,
    };
    (plan, questions)
}

/// What is brought and what is still wanted.
struct Balance {
    ledger: Ledger,
    needs: Vec<Need>,
    charge: Option<ChargePlan>,
    /// The biochar comes into the ground only when the plants are in.
    late: bool,
}

/// Enters everything in the ledger: ceilings, store, wants, biochar, charge, lime, feeds.
fn balance(
    survey: &Survey<'_>,
    hazards: &[Hazard],
    path: Path,
    dose: &Dose,
    questions: &mut Vec<Question>,
) -> Balance {
    let mut ledger = Ledger::default();
    ceilings::enter(survey, &mut ledger);
    ledger.open(survey);
    let nutrients = needs::wanted(survey, hazards, &mut ledger);
    if path != Path::None {
        enter_biochar(survey, dose, &mut ledger);
    }
    let before = ledger.clone();
    let charged = |ledger: &mut Ledger, spread| charged(survey, path, dose, ledger, spread);
    let mut charge = charged(&mut ledger, None);
    let mut needs = needs::still_wanted(survey, &mut ledger, nutrients.clone(), questions);
    let work = Work { survey, path, hazards, dose, charge: charge.as_ref(), needs: &needs };
    let (late, spread) = (work.comes_after_planting(), work.spread_from());
    if !late && charge.as_ref().is_some_and(ChargePlan::harvest_waits) {
        // Harvests wait from the day it is spread, which may be long after it is charged.
        ledger = before.clone();
        charge = charged(&mut ledger, spread);
        needs = needs::still_wanted(survey, &mut ledger, nutrients.clone(), questions);
    }
    if late {
        // What isn't in the ground before the plants feeds none of them this season: they
        // are fed first, and the charge gets what may come in beside.
        let held: Vec<Band> = before.accounts.iter().map(|account| account.held).collect();
        ledger = before;
        ledger.credit_nothing();
        needs = needs::still_wanted(survey, &mut ledger, nutrients, questions);
        for (account, held) in ledger.accounts.iter_mut().zip(held) {
            account.held = held;
        }
        charge = charged(&mut ledger, spread);
        ledger.credit_nothing();
    }
    ledger.close();
    Balance { ledger, needs, charge, late }
}

fn enter_biochar(survey: &Survey<'_>, dose: &Dose, ledger: &mut Ledger) {
    ledger.enter(Bringer::Biochar, &effect::own_content(survey, dose.mass));
    for substance in [Substance::Phosphorus, Substance::Potassium, Substance::Sodium] {
        let counts = ceilings::load(survey, substance) * dose.mass.likely;
        ledger.count(Bringer::Biochar, substance, counts);
    }
    for (substance, held) in effect::held_back(survey, dose) {
        ledger.account(substance).held = held;
    }
}

/// The charge of a dose, where it needs one.
fn charged(
    survey: &Survey<'_>,
    path: Path,
    dose: &Dose,
    ledger: &mut Ledger,
    spread: Option<Date>,
) -> Option<ChargePlan> {
    let needs_one = match path {
        Path::ChargeFirst => true,
        Path::Charged => survey.case.biochar.state != Some(BagState::Charged),
        Path::UnchargedAfterHarvest | Path::None => false,
    };
    let known = path == Path::ChargeFirst || !survey.case.charge_with.is_empty();
    if known {
        return needs_one.then(|| charge::charge(survey, dose, ledger, spread));
    }
    // Nobody has it yet, and how a bought one is charged nobody knows: the recipe is for
    // who charges it at home, and nothing of it is counted on.
    needs_one.then(|| charge::charge(survey, dose, &mut ledger.clone(), spread))
}

/// Whether a reading that the plan rests on was measured and not judged, or biochar that
/// may lift the pH goes into a soil whose pH nobody knows.
fn rests_on_unjudged(survey: &Survey<'_>, path: Path) -> bool {
    let rests_on = [Property::NitrateN, Property::Phosphorus, Property::Potassium, Property::Ph];
    rests_on.into_iter().any(|p| survey.findings.get(p).is_some_and(|f| f.level.is_none()))
        || path != Path::None && survey.water_ph().is_none()
}

/// Whether an open question, a missing date or a weak ground could turn the path.
fn provisional(decision: &Decision<'_>, alternatives: &[questions::Alternative]) -> bool {
    let facts = &decision.facts;
    let timing = &facts.survey.timing;
    let dates_missing = decision.path == Path::UnchargedAfterHarvest
        && match &timing.window {
            Window::Open { to, .. } => to.is_none(),
            Window::Unknown(_) => true,
            Window::Closed => false,
        };
    let weak = [RuleName::NothingJudged, RuleName::JudgedFromMemory, RuleName::GrowingNow];
    weak.into_iter().any(|name| decision.fired(name))
        || facts.only_stale_nitrate()
        || dates_missing
        || alternatives.iter().any(|a| a.question.is_some())
}
