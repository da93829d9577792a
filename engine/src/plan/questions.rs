//! What an answer would change: the decision is run again with each answer
//! that is still open.

use std::sync::Arc;

use time::Duration;

use crate::case::{BagState, Case, Feedstock, Winter};
use crate::plan::facts::LOW_CEC;
use crate::plan::path::{Decision, Path, RuleName, decide};
use crate::quantity::Band;
use crate::question::{Question, QuestionId};
use crate::ranges::{Finding, Level};
use crate::season::Window;
use crate::soil::{PlantGroup, Property, Texture};
use crate::survey::Survey;

/// An answer or a finding that would lead to another path.
pub struct Alternative {
    /// The answer in words, to follow "if".
    if_: &'static str,
    /// The path it leads to.
    path: Path,
    /// The open question it would answer; `None` when nothing is open there.
    pub question: Option<QuestionId>,
}

impl Alternative {
    /// For the reader.
    pub fn sentence(&self) -> String {
        format!("If {}: {}.", self.if_, words(self.path))
    }
}

/// A path in words, to follow a colon.
fn words(path: Path) -> &'static str {
    match path {
        Path::UnchargedAfterHarvest => "uncharged biochar after harvest",
        Path::Charged => "charged biochar",
        Path::ChargeFirst => "charge the biochar first",
        Path::None => "no biochar now",
    }
}

/// Every answer or finding that would lead to another path.
pub fn alternatives(survey: &Survey<'_>, decision: &Decision) -> Vec<Alternative> {
    let case = survey.case();
    let mut found: Vec<Alternative> = Vec::new();
    let mut offer = |path: Path, if_: &'static str, question: Option<QuestionId>| {
        if path != decision.path && found.iter().all(|a| a.if_ != if_) {
            found.push(Alternative { if_, path, question });
        }
    };
    let with_case = |change: &dyn Fn(&mut Case)| path_of(&survey.with_case(change));

    // Where roots last nothing is cleared for a planting.
    let base = survey.timing.clear_from.or(case.season.today);
    if let Some(base) = base.filter(|_| !decision.facts.rooted()) {
        let open = case.season.planting.is_none().then_some(QuestionId::Planting);
        for (days, if_) in [
            (21, "you plant within three weeks of clearing the bed"),
            (84, "you plant twelve weeks or more after clearing the bed"),
        ] {
            let planting = base.saturating_add(Duration::days(days));
            offer(with_case(&|c| c.season.planting = Some(planting)), if_, open);
        }
    }
    let bag = &case.biochar;
    let open = bag.state.is_none().then_some(QuestionId::BagState);
    for (state, if_) in [
        (BagState::Uncharged, "the bag you have is uncharged"),
        (BagState::Charged, "the bag is charged already"),
    ] {
        if bag.state != Some(state) {
            offer(with_case(&|c| c.biochar.state = Some(state)), if_, open);
        }
    }
    if bag.feedstock != Some(Feedstock::Softwood) {
        let path = with_case(&|c| {
            c.biochar.feedstock = Some(Feedstock::Softwood);
            c.biochar.liming_percent = None;
            c.biochar.ec = None;
            c.biochar.ph = None;
            c.biochar.certificate.clear();
        });
        offer(path, "you take a softwood biochar, low in ash and salts", None);
    }
    if case.plants != Some(PlantGroup::AcidLovers) {
        let open = case.plants.is_none().then_some(QuestionId::Plants);
        let path = with_case(&|c| c.plants = Some(PlantGroup::AcidLovers));
        offer(path, "you grow acid-loving plants", open);
    } else {
        let path = with_case(&|c| c.plants = Some(PlantGroup::MixedVegetables));
        offer(path, "you grow other than acid-loving plants", None);
    }
    if !decision.facts.holding_is_known() {
        for (texture, if_) in
            [(Texture::Sand, "the soil is sandy"), (Texture::Loam, "the soil is a loam or clay")]
        {
            let path = with_case(&|c| c.bed.texture = Some(texture));
            offer(path, if_, Some(QuestionId::Texture));
        }
    }
    if let Some(cec) = survey.chemistry.cec.filter(|cec| cec.low < LOW_CEC && cec.high >= LOW_CEC) {
        let (value, if_) = if cec.likely < LOW_CEC {
            (LOW_CEC, "the exchange capacity is 5 meq/100 g or more")
        } else {
            (LOW_CEC - 0.1, "the exchange capacity is below 5 meq/100 g")
        };
        let mut other = survey.clone();
        Arc::make_mut(&mut other.chemistry).cec = Some(Band::exactly(value));
        offer(path_of(&other), if_, None);
    }
    let tested = survey.findings.level(Property::NitrateN).is_some();
    if decision.facts.judged() && !tested {
        for (level, if_) in [
            (Level::High, "a nitrate test comes out high"),
            (Level::Low, "a nitrate test comes out low"),
        ] {
            let mut other = survey.clone();
            let finding = Finding { level: Some(level), ..Finding::default() };
            Arc::make_mut(&mut other.findings).set(Property::NitrateN, finding);
            offer(path_of(&other), if_, None);
        }
    }
    found
}

fn path_of(survey: &Survey<'_>) -> Path {
    decide(survey).path
}

/// The questions whose answer would change this plan.
pub fn questions(
    survey: &Survey<'_>,
    decision: &Decision,
    alternatives: &[Alternative],
    recipe: bool,
    gives: bool,
) -> Vec<Question> {
    let case = survey.case();
    let path = decision.path;
    let uses = path != Path::None;
    let timing = &survey.timing;
    let turns = |id: QuestionId| alternatives.iter().filter(move |a| a.question == Some(id));
    // What the plan turns into, or what the answer is needed for.
    let changes = |id: QuestionId, otherwise: &str| {
        let sentences: Vec<String> = turns(id).map(Alternative::sentence).collect();
        if sentences.is_empty() { otherwise.to_string() } else { sentences.join(" ") }
    };
    let mut questions = Vec::new();
    let mut ask = |id: QuestionId, text: &str, changes: String, suggestion: Option<&str>| {
        questions.push(Question {
            id,
            text: text.to_string(),
            changes,
            about: Vec::new(),
            suggestion: suggestion.map(str::to_string),
        });
    };
    let could_turn = |id: QuestionId| turns(id).next().is_some();

    if case.plants.is_none() && could_turn(QuestionId::Plants) {
        ask(
            QuestionId::Plants,
            "What grows, or will grow, in this bed?",
            changes(QuestionId::Plants, ""),
            None,
        );
    }
    if could_turn(QuestionId::Texture) {
        ask(
            QuestionId::Texture,
            "Is the soil sandy, loamy or clayey?",
            changes(QuestionId::Texture, ""),
            Some("Rub it moist: sand feels gritty and holds no shape, clay rolls into a thread."),
        );
    }
    if case.biochar.state.is_none() && could_turn(QuestionId::BagState) {
        ask(
            QuestionId::BagState,
            "Do you have biochar already, and is it charged?",
            changes(QuestionId::BagState, ""),
            Some("A plain bag of biochar is uncharged unless it says otherwise."),
        );
    }
    // Crops may say it as well.
    let planted = timing.planting.is_some() && !timing.planting_assumed;
    if uses && case.season.planting.is_none() && !planted {
        ask(
            QuestionId::Planting,
            "When do you next plant or sow in this bed?",
            changes(QuestionId::Planting, "It puts dates on the tasks."),
            None,
        );
    }
    if path == Path::UnchargedAfterHarvest || decision.fired(RuleName::GrowingNow) {
        let frost_open = timing.first_frost.is_none()
            && timing.winter.is_none_or(|winter| winter == Winter::Frost);
        let harvest_open = matches!(timing.window, Window::Unknown(_)) && timing.today.is_some();
        if frost_open || harvest_open {
            ask(
                QuestionId::Winter,
                "When is the crop now in the bed off, and when is the first autumn frost?",
                if decision.fired(RuleName::GrowingNow) {
                    "With time after the harvest, uncharged biochar could hold the surplus."
                } else {
                    "It sets the days between which the biochar should go in."
                }
                .to_string(),
                None,
            );
        }
    }
    if uses && case.season.today.is_none() {
        ask(
            QuestionId::Today,
            "What is today's date?",
            "It shows which tasks there is still time for.".to_string(),
            None,
        );
    }
    let amounts = uses || gives;
    if amounts && !survey.bed.area.known {
        ask(
            QuestionId::Area,
            match case.bed.area_m2 {
                None => "How large is the bed?",
                Some(_) => {
                    "How large is the bed? What was given can't be a bed: from 0.01 m² (a tenth of a square foot) to ten hectares."
                }
            },
            "The amounts are for 1 m² (11 sq ft) until you say.".to_string(),
            None,
        );
    }
    if amounts && !survey.bed.depth.known {
        ask(
            QuestionId::WorkedDepth,
            match case.bed.depth_cm {
                None => "How deep is the bed worked?",
                Some(_) => {
                    "How deep is the bed worked? It must be 1 to 100 cm (half an inch to 3 feet)."
                }
            },
            "Twice as deep takes twice as much.".to_string(),
            Some("15 cm (6 inches) is usual for a bed."),
        );
    }
    if recipe && case.charge_with.is_empty() {
        ask(
            QuestionId::ChargeWith,
            "What do you have to charge biochar with?",
            "The recipe is made for what you have.".to_string(),
            Some(if decision.facts.surplus(Property::Phosphorus) {
                "Phosphorus is high: a nitrogen fertiliser without phosphorus."
            } else {
                "Finished compost is the simplest."
            }),
        );
    }
    questions
}
