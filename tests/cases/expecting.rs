//! What is expected of a plan, sentence by sentence, and whether the plan keeps it.

use emberloam_engine::plan::needs::NeedKind;
use emberloam_engine::plan::{Job, JobKind, Path, Plan, RuleName};
use emberloam_engine::quantity::Measures;
use emberloam_engine::summary::{self, Block};
use emberloam_engine::{Outcome, interpret};
use time::Date;

use crate::telling::{Heed, Told, day, known};

/// All that is expected of one garden's plan. What was not said is not checked. Words are
/// looked for without regard to capitals and as parts of words: "eye" is held by "eyes".
#[derive(Default)]
pub struct Expected {
    /// The path.
    pub path: Option<Path>,
    provisional: Option<bool>,
    for_it: Vec<RuleName>,
    against_it: Vec<RuleName>,
    not_because_of: Vec<RuleName>,
    headline: Vec<String>,
    not_in_headline: Vec<String>,
    brought: Vec<(Good, f64, f64)>,
    jobs: Vec<(JobKind, Option<Date>, Option<Date>)>,
    no_job: Vec<Unwanted>,
    care: Vec<String>,
    said: Vec<String>,
    never_said: Vec<String>,
}

/// A job that must not stand in the list.
enum Unwanted {
    Kind(JobKind),
    /// Whatever digs, forks or mixes in.
    Dig,
}

/// What is carried to a bed, each counted in the unit that people carry it in.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Good {
    /// Litres of biochar.
    Biochar,
    /// What the bed needs beside.
    Need(NeedKind),
}

/// The name of each good, its unit, and how many of the engine's units that is.
const GOODS: [(&str, Good, &str, f64); 13] = [
    ("biochar", Good::Biochar, "L", 1.0),
    ("lime", Good::Need(NeedKind::Lime), "kg", 1000.0),
    ("sulfur", Good::Need(NeedKind::Acid), "kg", 1000.0),
    ("gypsum", Good::Need(NeedKind::Gypsum), "kg", 1000.0),
    ("nitrogen", Good::Need(NeedKind::Nitrogen), "g", 1.0),
    ("phosphate", Good::Need(NeedKind::Phosphate), "g", 1.0),
    ("potash", Good::Need(NeedKind::Potash), "g", 1.0),
    ("Epsom salt", Good::Need(NeedKind::Magnesium), "g", 1.0),
    ("gypsum for sulfur", Good::Need(NeedKind::Sulfur), "g", 1.0),
    ("borax", Good::Need(NeedKind::Boron), "g", 1.0),
    ("zinc sulfate", Good::Need(NeedKind::Zinc), "g", 1.0),
    ("manganese sulfate", Good::Need(NeedKind::Manganese), "g", 1.0),
    ("copper sulfate", Good::Need(NeedKind::Copper), "g", 1.0),
];

/// Words by which a step asks to open the soil.
const DIGGING: [&str; 5] = ["mix it in", "dig it", "dig in", "fork it", "work it in"];

impl Expected {
    /// Whether a sentence says what is expected.
    pub fn hear(&mut self, sentence: &str) -> Heed<bool> {
        let Some((what, words)) = sentence.split_once(": ") else { return Ok(false) };
        let listed = || words.split(", ");
        match what {
            "Answer" => self.answer(words)?,
            "For it" => self.for_it = listed().map(known).collect::<Heed<_>>()?,
            "Against it" => self.against_it = listed().map(known).collect::<Heed<_>>()?,
            "Not because of" => self.not_because_of = listed().map(known).collect::<Heed<_>>()?,
            "The headline says" => self.headline.push(words.into()),
            "The headline does not say" => self.not_in_headline.push(words.into()),
            "Brought" => {
                for amount in words.split("; ") {
                    self.brought.push(amount_of(amount)?);
                }
            }
            "Not brought" => {
                for name in listed() {
                    let row = GOODS.iter().find(|row| row.0 == name);
                    let (_, good, ..) = row.ok_or(format!("{name} is nothing to bring"))?;
                    self.brought.push((*good, 0.0, 0.0));
                }
            }
            "Jobs" => self.jobs = listed().map(job_of).collect::<Heed<_>>()?,
            "No job" => {
                for name in listed() {
                    self.no_job.push(match name {
                        "dig" => Unwanted::Dig,
                        _ => Unwanted::Kind(known(name)?),
                    });
                }
            }
            "Care" => self.care.extend(listed().map(String::from)),
            "Said" => self.said.extend(listed().map(String::from)),
            "Never said" => self.never_said.extend(listed().map(String::from)),
            _ => return Ok(false),
        }
        Ok(true)
    }

    /// Whether nothing at all is expected.
    pub fn is_empty(&self) -> bool {
        self.path.is_none()
            && self.headline.is_empty()
            && self.not_in_headline.is_empty()
            && self.brought.is_empty()
            && self.jobs.is_empty()
            && self.no_job.is_empty()
            && self.care.is_empty()
            && self.said.is_empty()
            && self.never_said.is_empty()
    }

    /// `charged (provisional)`.
    fn answer(&mut self, words: &str) -> Heed<()> {
        let (path, certainty) = match words.split_once(" (") {
            Some((path, certainty)) => (path, Some(certainty)),
            None => (words, None),
        };
        self.path = Some(match path {
            "no biochar now" => Path::None,
            other => known(other)?,
        });
        self.provisional = match certainty {
            None => None,
            Some("provisional)") => Some(true),
            Some("settled)") => Some(false),
            Some(other) => return Err(format!("“{other}” is neither provisional nor settled")),
        };
        Ok(())
    }
}

/// `lime 2 to 6 kg`; a number alone is meant within a tenth.
fn amount_of(words: &str) -> Heed<(Good, f64, f64)> {
    let why = || format!("{words} is no amount");
    let longest = |row: &&(&str, Good, &str, f64)| row.0.len();
    let row = GOODS.iter().filter(|row| words.starts_with(row.0)).max_by_key(longest);
    let row = row.ok_or_else(why)?;
    let (name, good, unit, grams) = *row;
    let number = words[name.len()..].strip_suffix(unit).ok_or_else(why)?;
    let ends: Vec<f64> = number.split(" to ").filter_map(|n| n.trim().parse().ok()).collect();
    match (ends.as_slice(), number.contains(" to ")) {
        (&[low, high], true) if low < high => Ok((good, low * grams, high * grams)),
        (&[about], false) => Ok((good, about * 0.9 * grams, about * 1.1 * grams)),
        _ => Err(why()),
    }
}

/// `spread biochar from 2026-10-20 by 2026-11-10`.
fn job_of(words: &str) -> Heed<(JobKind, Option<Date>, Option<Date>)> {
    let (words, by) = match words.split_once(" by ") {
        Some((words, by)) => (words, Some(day(by)?)),
        None => (words, None),
    };
    let (kind, from) = match words.split_once(" from ") {
        Some((kind, from)) => (kind, Some(day(from)?)),
        None => (words, None),
    };
    Ok((known(kind)?, from, by))
}

fn holds(text: &str, words: &str) -> bool {
    text.to_lowercase().contains(&words.to_lowercase())
}

/// All that a plan says to a person, but for the titles of publications, in which any
/// word may stand.
pub fn all_said(outcome: &Outcome) -> String {
    let plan = &outcome.plan;
    let blocks: Vec<Block> = summary::plan(outcome, Measures::default())
        .into_iter()
        .filter(|block| !matches!(block, Block::Sources(_)))
        .collect();
    let reasons = plan.jobs.iter().map(|job| job.reason.as_str());
    let answers = plan.needs.iter().map(|need| need.answer.as_str());
    let all = [summary::text(&blocks), plan.headline.clone()];
    all.iter().map(String::as_str).chain(reasons).chain(answers).collect::<Vec<_>>().join("\n")
}

/// All that a plan warns of: cautions, and the jobs that come before all else.
fn warnings(plan: &Plan) -> String {
    let mut all: Vec<String> = summary::cautions(plan).into_iter().map(|c| c.text).collect();
    if !plan.hazards.is_empty() {
        all.push(plan.headline.clone());
    }
    let first = |job: &&Job| matches!(job.kind, JobKind::Hazard | JobKind::WashSalts);
    all.extend(plan.jobs.iter().filter(first).map(|job| job.task.clone()));
    // A recipe begins with how to protect oneself.
    all.extend(plan.charge.iter().filter_map(|charge| charge.steps.first().cloned()));
    all.join("\n")
}

/// Where a plan asks to open the soil, if anywhere.
fn digs(plan: &Plan) -> Option<&str> {
    let asks = |text: &&str| DIGGING.iter().any(|words| holds(text, words));
    let given = plan.needs.iter().filter(|need| need.given().is_some());
    let steps = given.flat_map(|need| &need.steps).map(String::as_str);
    let job = plan.jobs.iter().find(|job| job.digs).map(|job| job.task.as_str());
    let recipe = plan.charge.iter().flat_map(|charge| &charge.steps).map(String::as_str);
    let tasks = plan.jobs.iter().map(|job| job.task.as_str());
    job.or_else(|| tasks.chain(steps).chain(recipe).find(asks))
}

impl Told {
    /// What of the plan is not as it was told.
    pub fn faults(&self) -> Vec<String> {
        let outcome = interpret(&self.case);
        let (plan, expected) = (&outcome.plan, &self.expected);
        let mut wrong = Vec::new();
        expected.in_answer(plan, &mut wrong);
        expected.in_amounts(plan, &mut wrong);
        expected.in_jobs(plan, &mut wrong);
        expected.in_words(&outcome, &mut wrong);
        wrong
    }
}

impl Expected {
    fn in_answer(&self, plan: &Plan, wrong: &mut Vec<String>) {
        let fired = |rule: RuleName, speaks_for: bool| {
            plan.reasons.iter().any(|r| r.rule == rule && r.speaks_for == speaks_for)
        };
        if let Some(path) = self.path.filter(|path| *path != plan.path) {
            let rules: Vec<&str> = plan.reasons.iter().map(|r| r.rule.name()).collect();
            wrong.push(format!("{:?}, where {path:?} was told [{}]", plan.path, rules.join(", ")));
        }
        if self.provisional.is_some_and(|expected| expected != plan.provisional) {
            wrong.push(format!("provisional is {}: {:?}", plan.provisional, plan.would_change));
        }
        for rule in self.for_it.iter().filter(|rule| !fired(**rule, true)) {
            wrong.push(format!("{} doesn't speak for it", rule.name()));
        }
        for rule in self.against_it.iter().filter(|rule| !fired(**rule, false)) {
            wrong.push(format!("{} doesn't speak against it", rule.name()));
        }
        for rule in &self.not_because_of {
            if fired(*rule, true) || fired(*rule, false) {
                wrong.push(format!("{} holds", rule.name()));
            }
        }
    }

    fn in_amounts(&self, plan: &Plan, wrong: &mut Vec<String>) {
        for (good, low, high) in &self.brought {
            let amount = match good {
                Good::Biochar if plan.uses_biochar() => plan.dose.litres,
                Good::Biochar => 0.0,
                Good::Need(kind) => {
                    let need = plan.needs.iter().find(|need| need.kind == *kind);
                    need.and_then(|need| need.given()).map_or(0.0, |grams| grams.likely)
                }
            };
            if !(*low..=*high).contains(&amount) {
                let (name, _, unit, grams) =
                    GOODS.iter().find(|row| row.1 == *good).expect("every good has a name");
                let answer = plan.needs.iter().find(|need| Good::Need(need.kind) == *good);
                wrong.push(format!(
                    "{name} {:.3} {unit}, where {} to {} was told: {}",
                    amount / grams,
                    low / grams,
                    high / grams,
                    answer.map_or("", |need| need.answer.as_str())
                ));
            }
        }
    }

    fn in_jobs(&self, plan: &Plan, wrong: &mut Vec<String>) {
        let list = || {
            let of = |date: Option<Date>| date.map_or("?".into(), |date| date.to_string());
            let job = |j: &Job| format!("{} {}..{}", j.kind.name(), of(j.from), of(j.to));
            plan.jobs.iter().map(job).collect::<Vec<_>>().join(", ")
        };
        let mut rest = plan.jobs.iter();
        for (kind, from, by) in &self.jobs {
            let Some(job) = rest.find(|job| job.kind == *kind) else {
                wrong.push(format!("no {} in its place: {}", kind.name(), list()));
                break;
            };
            if from.is_some_and(|from| job.from.is_none_or(|day| day < from)) {
                wrong.push(format!("{} begins before {}: {}", kind.name(), from.unwrap(), list()));
            }
            if by.is_some_and(|by| job.to.is_none_or(|day| day > by)) {
                wrong.push(format!("{} isn't over by {}: {}", kind.name(), by.unwrap(), list()));
            }
        }
        for unwanted in &self.no_job {
            match unwanted {
                Unwanted::Dig => {
                    wrong.extend(digs(plan).map(|text| format!("it digs: {text}")));
                }
                Unwanted::Kind(kind) => {
                    let found = plan.jobs.iter().find(|job| job.kind == *kind);
                    wrong.extend(found.map(|job| format!("unwanted: {}", job.task)));
                }
            }
        }
    }

    fn in_words(&self, outcome: &Outcome, wrong: &mut Vec<String>) {
        let headline = &outcome.plan.headline;
        for words in self.headline.iter().filter(|words| !holds(headline, words)) {
            wrong.push(format!("“{headline}” doesn't say “{words}”"));
        }
        for words in self.not_in_headline.iter().filter(|words| holds(headline, words)) {
            wrong.push(format!("“{headline}” says “{words}”"));
        }
        let warned = warnings(&outcome.plan);
        for words in self.care.iter().filter(|words| !holds(&warned, words)) {
            wrong.push(format!("no care is asked for: {words}"));
        }
        let said = all_said(outcome);
        for words in self.said.iter().filter(|words| !holds(&said, words)) {
            wrong.push(format!("nowhere said: {words}"));
        }
        for words in self.never_said.iter().filter(|words| holds(&said, words)) {
            let line = said.lines().find(|line| holds(line, words)).unwrap_or_default();
            wrong.push(format!("“{words}” is said: {line}"));
        }
    }
}
