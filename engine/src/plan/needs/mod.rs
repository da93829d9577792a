//! What the bed needs beside biochar: lime or acid, gypsum, and nutrients, in
//! amounts for this bed, or "none" where that is the answer. First what a year
//! wants is entered in the ledger; when all else is entered too, what is still
//! missing is said.

mod acidify;
mod crop_rates;
mod feeds;
mod gypsum;
mod laboratory;
mod lime;
mod lime_by_buffer;
mod lime_by_region;
mod lime_rate;
mod lime_tables;
mod limits;
mod nutrients;
mod pots;
mod salts;
mod trace_elements;

use serde::Serialize;

use crate::facts::Way;
use crate::named::named;
use crate::plan::hazards::Hazard;
use crate::plan::ledger::{Ceiling, Ledger};
use crate::quantity::{Band, Figure, Grounds};
use crate::question::Question;
use crate::sources::COMMON_PRACTICE;
use crate::survey::Survey;

pub use acidify::{SulfurSoil, sulfur_for_free_lime, sulfur_michigan};
pub use feeds::weight_for;
pub use gypsum::{gypsum_oster, gypsum_per_meq};
pub(crate) use lime::lime_requirement;
pub use lime_by_region::saturation_lime;
pub use lime_rate::*;
pub(crate) use limits::MOST_FEEDS;
pub use limits::{KG_PER_HA_IN_LB_PER_1000_SQ_FT, stock};

named! { "need":
    /// What a bed may need.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum NeedKind {
        /// Lime.
        Lime = "lime";
        /// Sulfur, to lower the pH.
        Acid = "acidify";
        /// Gypsum.
        Gypsum = "gypsum";
        /// Nitrogen.
        Nitrogen = "nitrogen";
        /// Phosphate.
        Phosphate = "phosphate";
        /// Potash.
        Potash = "potash";
        /// Magnesium.
        Magnesium = "magnesium";
        /// Sulfur, to feed.
        Sulfur = "sulfur";
        /// Boron.
        Boron = "boron";
        /// Zinc.
        Zinc = "zinc";
        /// Manganese.
        Manganese = "manganese";
        /// Copper.
        Copper = "copper";
        /// Iron.
        Iron = "iron";
        /// The bag of fertiliser on hand.
        Fertiliser = "fertiliser";
        /// The compost on hand.
        Compost = "compost";
    }
}

impl NeedKind {
    /// What a reader calls it.
    pub const fn label(self) -> &'static str {
        match self {
            NeedKind::Lime => "Lime",
            NeedKind::Acid => "Lowering the pH",
            NeedKind::Gypsum => "Gypsum",
            NeedKind::Nitrogen => "Nitrogen",
            NeedKind::Phosphate => "Phosphate",
            NeedKind::Potash => "Potash",
            NeedKind::Magnesium => "Magnesium",
            NeedKind::Sulfur => "Sulfur",
            NeedKind::Boron => "Boron",
            NeedKind::Zinc => "Zinc",
            NeedKind::Manganese => "Manganese",
            NeedKind::Copper => "Copper",
            NeedKind::Iron => "Iron",
            NeedKind::Fertiliser => "The bag you have",
            NeedKind::Compost => "The compost you have",
        }
    }
}

/// One thing a bed may need, with its answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Need {
    /// What it is.
    pub kind: NeedKind,
    /// The answer in a word.
    pub verdict: Verdict,
    /// The answer in one plain sentence: how much, none, none and stop, or why it can't be said.
    pub answer: String,
    /// What is to be brought to the bed, g: of the nutrient (phosphate and potash as
    /// oxides), or of the lime, sulfur, gypsum or salt as bought. Nothing where none is.
    pub for_bed: Option<Band>,
    /// In how many doses, half a year or a season apart; 0 where nothing is given.
    pub doses: u32,
    /// The most of it in one dose, g for the bed; `None` where nothing is given.
    pub at_once: Option<Ceiling>,
    /// The most of it in all doses together, g for the bed; likewise.
    pub in_all: Option<Ceiling>,
    /// What it is bought as, and how it gets to the plants, where that is a salt of its own.
    #[serde(skip)]
    pub(crate) salt: Option<(&'static str, Way)>,
    /// What of it the guide gives in which month, 1 is January; empty where it names none.
    #[serde(skip)]
    pub(crate) months: &'static [(u8, Band)],
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

impl Need {
    /// An answer without an amount.
    pub(crate) fn said(
        kind: NeedKind,
        verdict: Verdict,
        answer: impl Into<String>,
        grounds: Grounds,
    ) -> Need {
        Need {
            kind,
            verdict,
            answer: answer.into(),
            for_bed: None,
            doses: 0,
            at_once: None,
            in_all: None,
            salt: None,
            months: &[],
            figures: Vec::new(),
            steps: Vec::new(),
            cautions: Vec::new(),
            others: Vec::new(),
            grounds,
        }
    }

    /// Whether it is to be given, and how much, g for the bed.
    pub fn given(&self) -> Option<Band> {
        self.for_bed.filter(|grams| self.verdict == Verdict::Give && grams.likely > 0.0)
    }
}

/// Whether something is to be given.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
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

/// What a year's plants want, before anything is brought. It is entered in the ledger. A
/// hazard comes first: until it is mended nothing is fed.
pub(crate) fn wanted(survey: &Survey<'_>, hazards: &[Hazard], ledger: &mut Ledger) -> Vec<Need> {
    if let Some(hazard) = hazards.first() {
        return vec![not_yet(*hazard)];
    }
    if survey.bed.is_potted() {
        return vec![pots::by_the_water(survey)];
    }
    let nutrients = [
        nutrients::nitrogen(survey, ledger),
        nutrients::phosphate(survey, ledger),
        nutrients::potash(survey, ledger),
        nutrients::magnesium(survey, ledger),
        nutrients::sulfur(survey, ledger),
    ];
    nutrients.into_iter().flatten().chain(trace_elements::needs(survey)).collect()
}

fn not_yet(hazard: Hazard) -> Need {
    let answer = match hazard {
        Hazard::Lead => {
            "Nothing is fed here: food grows in raised beds of clean soil, which have a test of their own."
        }
        Hazard::Sodium => "Nothing is fed yet: the sodium comes first. Test again after that.",
        Hazard::Salts => "Nothing is fed yet: feed is salt too. Wash first, then test again.",
    };
    let grounds = Grounds::new("a hazard comes before feeding", &[COMMON_PRACTICE.unsourced()]);
    Need::said(NeedKind::Nitrogen, Verdict::Unknown, answer, grounds)
}

/// All needs once biochar and charge are entered, the most telling first: lime for the
/// acidity that is left, then the compost and the bag on hand, and what is still missing.
pub(crate) fn still_wanted(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    mut nutrients: Vec<Need>,
    questions: &mut Vec<Question>,
) -> Vec<Need> {
    let soil = [
        lime::need(survey, ledger, questions),
        acidify::need(survey, ledger, questions),
        gypsum::need(survey, ledger),
    ];
    let compost = feeds::compost(survey, ledger, &nutrients);
    nutrients::settle(survey, ledger, &mut nutrients);
    let bag = feeds::fertiliser(survey, ledger, &nutrients);
    soil.into_iter().flatten().chain(nutrients).chain(bag).chain(compost).collect()
}
