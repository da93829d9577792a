//! What an answer would change: the decision is run again with each answer
//! that is still open.

use std::sync::Arc;

use time::Duration;

use crate::case::{Bag, BagState, Case, Feedstock, Winter};
use crate::plan::facts::LOW_CEC;
use crate::plan::path::{Decision, Path, RuleName, decide};
use crate::quantity::{Band, Unit};
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
    let mut turns =
        Turns { survey, now: decision.path, rooted: decision.facts.rooted(), found: Vec::new() };
    turns.by_date();
    turns.by_bag();
    turns.by_plants();
    turns.by_soil(decision.facts.holding_is_known());
    if decision.facts.judged() {
        turns.by_nitrate();
    }
    turns.found
}

/// What turns the path, as it is found.
struct Turns<'a> {
    survey: &'a Survey<'a>,
    now: Path,
    rooted: bool,
    found: Vec<Alternative>,
}

impl Turns<'_> {
    fn offer(&mut self, other: &Survey<'_>, if_: &'static str, question: Option<QuestionId>) {
        let path = decide(other).path;
        if path != self.now && self.found.iter().all(|a| a.if_ != if_) {
            self.found.push(Alternative { if_, path, question });
        }
    }

    fn with_case(
        &mut self,
        if_: &'static str,
        question: Option<QuestionId>,
        change: &dyn Fn(&mut Case),
    ) {
        let survey = self.survey;
        self.offer(&survey.with_case(change), if_, question);
    }

    fn by_date(&mut self) {
        let season = &self.survey.case.season;
        // Where roots last nothing is cleared for a planting.
        let base = self.survey.timing.clear_from.or(season.today).filter(|_| !self.rooted);
        let Some(base) = base else { return };
        let open = season.planting.is_none().then_some(QuestionId::Planting);
        for (days, if_) in [
            (21, "you plant within three weeks of clearing the bed"),
            (84, "you plant twelve weeks or more after clearing the bed"),
        ] {
            let planting = base.saturating_add(Duration::days(days));
            self.with_case(if_, open, &|c| c.season.planting = Some(planting));
        }
    }

    fn by_bag(&mut self) {
        let bag = &self.survey.case.biochar;
        let open = bag.state.is_none().then_some(QuestionId::BagState);
        for (state, if_) in [
            (BagState::Uncharged, "the bag you have is uncharged"),
            (BagState::Charged, "the bag is charged already"),
        ] {
            if bag.state != Some(state) {
                self.with_case(if_, open, &|c| c.biochar.state = Some(state));
            }
        }
        if bag.feedstock != Some(Feedstock::Softwood) {
            self.with_case("you take a softwood biochar, low in ash and salts", None, &|c| {
                let state = c.biochar.state;
                let feedstock = Some(Feedstock::Softwood);
                let share_percent = c.biochar.share_percent;
                c.biochar = Bag { state, feedstock, share_percent, ..Bag::default() };
            });
        }
    }

    fn by_plants(&mut self) {
        let plants = self.survey.case.plants;
        let (other, if_) = if plants == Some(PlantGroup::AcidLovers) {
            (PlantGroup::MixedVegetables, "you grow other than acid-loving plants")
        } else {
            (PlantGroup::AcidLovers, "you grow acid-loving plants")
        };
        let open = plants.is_none().then_some(QuestionId::Plants);
        self.with_case(if_, open, &|c| c.plants = Some(other));
    }

    fn by_soil(&mut self, known: bool) {
        if !known {
            for (texture, if_) in [
                (Texture::Sand, "the soil is sandy"),
                (Texture::Loam, "the soil is a loam or clay"),
            ] {
                let open = Some(QuestionId::Texture);
                self.with_case(if_, open, &|c| c.bed.texture = Some(texture));
            }
        }
        let cec = self.survey.chemistry.cec;
        let Some(cec) = cec.filter(|cec| cec.low < LOW_CEC && cec.high >= LOW_CEC) else { return };
        let (value, if_) = if cec.likely < LOW_CEC {
            (LOW_CEC, "the exchange capacity is 5 meq/100 g or more")
        } else {
            (LOW_CEC - 0.1, "the exchange capacity is below 5 meq/100 g")
        };
        let mut other = self.survey.clone();
        Arc::make_mut(&mut other.chemistry).cec = Some(Band::exactly(value));
        self.offer(&other, if_, None);
    }

    fn by_nitrate(&mut self) {
        if self.survey.findings.level(Property::NitrateN).is_some() {
            return;
        }
        for (level, if_) in [
            (Level::High, "a nitrate test comes out high"),
            (Level::Low, "a nitrate test comes out low"),
        ] {
            let mut other = self.survey.clone();
            let finding = Finding { level: Some(level), ..Finding::default() };
            Arc::make_mut(&mut other.findings).set(Property::NitrateN, finding);
            self.offer(&other, if_, None);
        }
    }
}

/// The questions whose answer would change this plan.
pub fn questions(
    survey: &Survey<'_>,
    decision: &Decision,
    alternatives: &[Alternative],
    recipe: bool,
    gives: bool,
) -> Vec<Question> {
    let uses = decision.path != Path::None;
    let mut asked = Asked { survey, decision, alternatives, questions: Vec::new() };
    asked.what_turns();
    asked.dates(uses);
    if uses || gives {
        asked.sizes();
    }
    if recipe && survey.case.charge_with.is_empty() {
        let suggestion = if decision.facts.surplus(Property::Phosphorus) {
            "Phosphorus is high: a nitrogen fertiliser without phosphorus."
        } else {
            "Finished compost is the simplest."
        };
        asked.ask(
            QuestionId::ChargeWith,
            "What do you have to charge biochar with?",
            "The recipe is made for what you have.",
            Some(suggestion),
        );
    }
    asked.questions
}

/// The questions as they are asked.
struct Asked<'a> {
    survey: &'a Survey<'a>,
    decision: &'a Decision<'a>,
    alternatives: &'a [Alternative],
    questions: Vec<Question>,
}

impl Asked<'_> {
    fn ask(&mut self, id: QuestionId, text: &str, changes: &str, suggestion: Option<&str>) {
        self.questions.push(Question {
            id,
            text: text.to_string(),
            changes: changes.to_string(),
            about: Vec::new(),
            suggestion: suggestion.map(str::to_string),
        });
    }

    /// What the plan turns into with the answers; nothing where none turns it.
    fn turns(&self, id: QuestionId) -> Option<String> {
        let with_it = self.alternatives.iter().filter(|a| a.question == Some(id));
        let sentences: Vec<String> = with_it.map(Alternative::sentence).collect();
        (!sentences.is_empty()).then(|| sentences.join(" "))
    }

    fn what_turns(&mut self) {
        for (id, text, suggestion) in [
            (QuestionId::Plants, "What grows, or will grow, in this bed?", None),
            (
                QuestionId::Texture,
                "Is the soil sandy, loamy or clayey?",
                Some(
                    "Rub it moist: sand feels gritty and holds no shape, clay rolls into a thread.",
                ),
            ),
            (
                QuestionId::BagState,
                "Do you have biochar already, and is it charged?",
                Some("A plain bag of biochar is uncharged unless it says otherwise."),
            ),
        ] {
            if let Some(changes) = self.turns(id) {
                self.ask(id, text, &changes, suggestion);
            }
        }
    }

    fn dates(&mut self, uses: bool) {
        let (timing, season) = (&self.survey.timing, &self.survey.case.season);
        // Crops may say it as well.
        let planted = timing.planting.is_some() && !timing.planting_assumed;
        if uses && season.planting.is_none() && !planted {
            let changes = self.turns(QuestionId::Planting);
            let changes = changes.unwrap_or_else(|| "It puts dates on the tasks.".into());
            let text = "When do you next plant or sow in this bed?";
            self.ask(QuestionId::Planting, text, &changes, None);
        }
        let growing = self.decision.fired(RuleName::GrowingNow);
        let frost_open = timing.first_frost.is_none()
            && timing.winter.is_none_or(|winter| winter == Winter::Frost);
        let harvest_open = matches!(timing.window, Window::Unknown(_)) && timing.today.is_some();
        let holds = self.decision.path == Path::UnchargedAfterHarvest;
        if (holds || growing) && (frost_open || harvest_open) {
            let changes = if growing {
                "With time after the harvest, uncharged biochar could hold the surplus."
            } else {
                "It sets the days between which the biochar should go in."
            };
            let text = "When is the crop now in the bed off, and when is the first autumn frost?";
            self.ask(QuestionId::Winter, text, changes, None);
        }
        if uses && season.today.is_none() {
            let changes = "It shows which tasks there is still time for.";
            self.ask(QuestionId::Today, "What is today's date?", changes, None);
        }
    }

    /// Area and depth; what was given and can't be is asked again in words.
    fn sizes(&mut self) {
        let (bed, given) = (&self.survey.bed, &self.survey.case.bed);
        if !bed.area.known {
            let text = match given.area_m2 {
                None => "How large is the bed?",
                Some(_) => {
                    "How large is the bed? What was given can't be a bed: from 0.01 m² (a tenth of a square foot) to ten hectares."
                }
            };
            let one = self.survey.shown(&Band::exactly(bed.area.value), Unit::SquareMetre);
            let changes = format!("The amounts are for {one} until you say.");
            self.ask(QuestionId::Area, text, &changes, None);
        }
        if !bed.depth.known {
            let text = match given.depth_cm {
                None => "How deep is the bed worked?",
                Some(_) => {
                    "How deep is the bed worked? It must be 1 to 100 cm (half an inch to 3 feet)."
                }
            };
            let usual = Some("15 cm (6 inches) is usual for a bed.");
            let changes = "Twice as deep takes twice as much.";
            self.ask(QuestionId::WorkedDepth, text, changes, usual);
        }
    }
}
