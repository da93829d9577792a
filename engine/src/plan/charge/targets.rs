//! How much of each nutrient the biochar should be given: what it would
//! otherwise hold back from the bed by the effect model, and, where the soil is
//! short, a first feed. What the soil has too much of is a limit and no goal.

use crate::plan::charge::sources::{NUTRIENTS, Nutrient};
use crate::plan::ledger::{Bringer, Ledger, NITROGEN, Substance};
use crate::plan::rate::Dose;
use crate::quantity::{Band, Grounds, Measures, Unit, shown};
use crate::ranges::Level;
use crate::soil::Property;
use crate::sources::{ARITHMETIC, ILAN_2020, OUR_CHOICE, PHREEQC_EXCHANGE, UMASS_RATES};
use crate::survey::Survey;

/// Of the year's nitrogen so much goes in before planting, and so may go into the charge.
/// Source: UMass Extension, half before planting and half later (opened).
const BEFORE_PLANTING: f64 = 0.5;

/// Exchange sites of `kg` of biochar of `cec` cmol(c)/kg, mol(c).
pub fn sites(kg: f64, cec: f64) -> f64 {
    kg * cec / 100.0
}

/// What is wanted of one nutrient.
#[derive(Clone, Debug, PartialEq)]
pub struct Target {
    /// The nutrient.
    pub nutrient: Nutrient,
    /// Grams wanted for the whole dose; nothing where the soil or the biochar has enough.
    pub wanted: Band,
    /// The most the charge may bring, g, where a ceiling holds it.
    pub at_most: Option<f64>,
    /// Why, in a sentence.
    pub because: &'static str,
    /// What it rests on.
    pub grounds: Grounds,
}

impl Nutrient {
    /// The property that judges it.
    pub(crate) fn property(self) -> Property {
        match self {
            Nutrient::Nitrogen => Property::NitrateN,
            Nutrient::Phosphorus => Property::Phosphorus,
            Nutrient::Potassium => Property::Potassium,
            Nutrient::Calcium => Property::Calcium,
            Nutrient::Magnesium => Property::Magnesium,
        }
    }

    /// Its accounts in the ledger.
    pub(crate) fn accounts(self) -> &'static [Substance] {
        match self {
            Nutrient::Nitrogen => &NITROGEN,
            Nutrient::Phosphorus => &[Substance::Phosphorus],
            Nutrient::Potassium => &[Substance::Potassium],
            Nutrient::Calcium => &[Substance::Calcium],
            Nutrient::Magnesium => &[Substance::Magnesium],
        }
    }
}

pub(super) fn targets(survey: &Survey<'_>, dose: &Dose, ledger: &Ledger) -> [Target; NUTRIENTS] {
    Nutrient::ALL.map(|nutrient| target(survey, dose, ledger, nutrient))
}

fn target(survey: &Survey<'_>, dose: &Dose, ledger: &Ledger, nutrient: Nutrient) -> Target {
    let accounts = nutrient.accounts();
    let level = survey.findings.level(nutrient.property());
    let surplus = level.is_some_and(Level::is_surplus);
    let all = |of: &dyn Fn(Substance) -> Band| {
        accounts.iter().fold(Band::exactly(0.0), |sum, s| sum.plus(of(*s)))
    };
    let held = all(&|s| ledger.of(s).held);
    let own = all(&|s| ledger.of(s).by(Bringer::Biochar));
    let ties = less(held, own);
    let feed = if surplus { Band::exactly(0.0) } else { first_feed(ledger, nutrient, ties) };
    let room = accounts.iter().map(|s| ledger.room(*s)).fold(f64::INFINITY, f64::min);
    let grounds = Grounds::new(
        "what fresh biochar holds back in its first month, less its own; where the soil is short, \
         also a first feed: half the year's nitrogen, the year's phosphorus and potassium",
        &[
            ILAN_2020.derived(),
            PHREEQC_EXCHANGE.derived(),
            UMASS_RATES.opened(),
            ARITHMETIC.derived(),
            OUR_CHOICE.unsourced(),
        ],
    )
    .input("biochar, dry", shown(&dose.mass, Unit::Kg, Measures::Metric))
    .input("in the soil", level.map_or("not judged", Level::label))
    .input("held back", shown(&held, Unit::Gram, Measures::Metric))
    .input("the biochar's own", shown(&own, Unit::Gram, Measures::Metric))
    .input("first feed", shown(&feed, Unit::Gram, Measures::Metric));
    Target {
        nutrient,
        wanted: ties.plus(feed).map(|g| g.min(room)),
        at_most: room.is_finite().then_some(room),
        because: because(surplus, ties, feed),
        grounds,
    }
}

/// What is left of one after another is taken off; the ends cross.
fn less(of: Band, off: Band) -> Band {
    Band::new(
        (of.low - off.high).max(0.0),
        (of.likely - off.likely).max(0.0),
        (of.high - off.low).max(0.0),
    )
}

/// What the plants lack beside what the biochar holds back.
fn first_feed(ledger: &Ledger, nutrient: Nutrient, ties: Band) -> Band {
    let share = match nutrient {
        Nutrient::Nitrogen => BEFORE_PLANTING,
        Nutrient::Phosphorus | Nutrient::Potassium => 1.0,
        Nutrient::Calcium | Nutrient::Magnesium => return Band::exactly(0.0),
    };
    less(ledger.missing(nutrient.accounts()), ties).map(|g| g * share)
}

fn because(surplus: bool, ties: Band, feed: Band) -> &'static str {
    match (surplus, ties.likely > 0.0, feed.likely > 0.0) {
        (true, true, _) => "Little: only what fresh biochar would hold back. The soil has plenty.",
        (true, false, _) => "None: the soil has more than enough.",
        (false, true, true) => {
            "What fresh biochar would hold back, and a first feed: the plants will want it."
        }
        (false, true, false) => "What fresh biochar would otherwise hold back from the plants.",
        (false, false, true) => "A first feed: the soil is short or the plants will want it.",
        (false, false, false) => "None: the biochar brings enough itself.",
    }
}
