//! What the bed needs beside biochar: lime or acid, gypsum, and nutrients, in
//! amounts for this bed, or "none" where that is the answer.
//!
//! [`needs`] is a call of its own, beside [`crate::interpret`]: the page asks
//! for it when a reader goes down to it, so that the first answer needn't wait.

mod acidify;
mod feeds;
mod gypsum;
mod lime;
mod lime_by_buffer;
mod lime_rate;
mod lime_tables;
mod nutrients;
mod reaction;

pub use feeds::weight_for;
pub use nutrients::{KG_PER_HA_IN_LB_PER_1000_SQ_FT, stock};

use crate::case::Case;
use crate::outcome::situated;
use crate::quantity::{Figure, Grounds};
use crate::question::Question;

pub use acidify::{SulfurSoil, sulfur_for_free_lime, sulfur_michigan};
pub use gypsum::{gypsum_oster, gypsum_per_meq};
pub(crate) use lime::lime_requirement;
pub use lime_rate::*;

/// What the chosen sample's bed needs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Needs {
    /// What was looked into, the most telling first: each with its answer.
    pub list: Vec<Need>,
    /// What must be known before more can be said.
    pub questions: Vec<Question>,
}

/// One thing a bed may need.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Need {
    /// A kebab-case name: `lime`, `acidify`, `gypsum`, `nitrogen`, `phosphate`, `potash`,
    /// `magnesium`, `sulfur`.
    pub name: &'static str,
    /// The answer in a word.
    pub verdict: Verdict,
    /// The answer in one plain sentence: how much, none, none and stop, or why it can't be said.
    pub answer: String,
    /// The amounts: kg/ha as published, and kg for the bed.
    pub figures: Vec<Figure>,
    /// What to do, step by step: doses, times, depth.
    pub steps: Vec<String>,
    /// What can hurt, and whom to ask.
    pub cautions: Vec<String>,
    /// What other publications give for the same soil, in a sentence each.
    pub others: Vec<String>,
    /// What the answer rests on.
    pub grounds: Grounds,
}

/// Whether something is to be given.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Verdict {
    /// It can't be said.
    #[default]
    Unknown,
    /// Give it.
    Give,
    /// None is needed.
    Enough,
    /// None, and nothing that brings it.
    Stop,
}

/// All that a need is worked out from: the same as a plan.
pub use crate::biochar::Situation as Ground;

/// Works out what the chosen sample's bed needs. Without a sample the list is empty.
pub fn needs(case: &Case) -> Needs {
    situated(case, of_ground).unwrap_or_default()
}

/// Works out what the bed of a sample needs.
pub fn of_ground(ground: &Ground<'_>) -> Needs {
    let mut questions = Vec::new();
    let mut list: Vec<Need> = Vec::new();
    list.extend(lime::need(ground, &mut questions));
    list.extend(acidify::need(ground, &mut questions));
    list.extend(gypsum::need(ground));
    list.extend(nutrients::nitrogen(ground, &mut questions));
    list.extend(nutrients::phosphate(ground, &mut questions));
    list.extend(nutrients::potash(ground, &mut questions));
    list.extend(nutrients::magnesium(ground, &mut questions));
    list.extend(nutrients::sulfur(ground));
    let fed = [feeds::fertiliser(ground, &list), feeds::compost(ground, &list)];
    list.extend(fed.into_iter().flatten());
    questions.sort_by_key(|q: &Question| q.id);
    questions.dedup_by_key(|q| q.id);
    Needs { list, questions }
}
