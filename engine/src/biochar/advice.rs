//! The plan: path, reasons, amounts, charging, effects, season, cautions.

use serde::Serialize;

use crate::named::by_name;

use crate::cautions::Caution;
use crate::quantity::{Figure, Grounds};
use crate::season::Task;
use crate::soil::Property;

/// The biochar path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Path {
    /// Uncharged biochar after harvest, to hold a surplus over winter.
    UnchargedAfterHarvest,
    /// Charged biochar.
    Charged,
    /// Charge the uncharged biochar on hand first.
    ChargeFirst,
    /// No biochar now.
    None,
}

by_name! { Path, "path",
    UnchargedAfterHarvest: "uncharged-after-harvest",
    Charged: "charged",
    ChargeFirst: "charge-first",
    None: "none",
}

/// The plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Advice {
    /// The path.
    pub path: Path,
    /// The answer in one sentence.
    pub headline: String,
    /// Whether something still to be answered could change the path.
    pub provisional: bool,
    /// Every rule that fired, both ways.
    pub reasons: Vec<Reason>,
    /// What answer or finding would change the path.
    pub would_change: Vec<String>,
    /// How much, for this bed; empty when the path is none.
    pub amounts: Vec<Figure>,
    /// What held the amount down, when something did.
    pub capped_by: Vec<String>,
    /// How to charge it; `None` when nothing needs charging.
    pub charging: Option<Charging>,
    /// What it should do to each property in the first month.
    pub effects: Vec<Effect>,
    /// What to do when.
    pub season: Vec<Task>,
    /// What can hurt, and whom to ask.
    pub cautions: Vec<Caution>,
}

/// One rule that fired.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Reason {
    /// The reason in one sentence.
    pub text: String,
    /// Whether it speaks for the chosen path.
    #[serde(rename = "for")]
    pub speaks_for: bool,
    /// The rule's name.
    pub rule: &'static str,
    /// What it rests on.
    pub grounds: Grounds,
}

/// How to charge biochar.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Charging {
    /// The mass balance: water, target, what each source brings, share reached, days.
    pub figures: Vec<Figure>,
    /// What to do, step by step.
    pub steps: Vec<String>,
    /// Share of the charge taken up by day, for the chart: (day, low, likely, high), in %.
    pub uptake: Vec<(f64, f64, f64, f64)>,
}

/// What biochar should do to one property in the first month.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Effect {
    /// The property.
    pub property: Property,
    /// The change: % of the extractable amount, or pH units.
    pub change: Figure,
    /// The direction in words: `down`, `up`, `down or unsure`, `up or unsure`, `unsure`.
    pub direction: &'static str,
}
