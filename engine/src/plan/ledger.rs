//! The ledger of a bed: for each nutrient, for sodium and for alkalinity what is
//! in store, what is wanted, what each source brings, what is held, what is
//! lost, and how much may come in at the most. What is brought is the sum of its
//! entries; what is missing is what is still wanted after all of them.

use serde::Serialize;

use crate::case::ChargeSource;
use crate::named::named;
use crate::quantity::{Band, Grounds};
use crate::soil::Property;
use crate::survey::Survey;

/// P in P2O5. Source: atomic masses (derived).
pub(crate) const P_IN_P2O5: f64 = 0.4364;
/// K in K2O. Source: atomic masses (derived).
pub(crate) const K_IN_K2O: f64 = 0.8302;

named! { "substance":
    /// What an account is kept of. All in grams for the whole bed, as the element;
    /// alkalinity as calcium carbonate.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Substance {
        /// Nitrate nitrogen.
        NitrateN = "nitrate-n";
        /// Ammonium nitrogen.
        AmmoniumN = "ammonium-n";
        /// Nitrogen that works only as it breaks down.
        OrganicN = "organic-n";
        /// Phosphorus.
        Phosphorus = "phosphorus";
        /// Potassium.
        Potassium = "potassium";
        /// Calcium.
        Calcium = "calcium";
        /// Magnesium.
        Magnesium = "magnesium";
        /// Sulfur.
        Sulfur = "sulfur";
        /// Sodium.
        Sodium = "sodium";
        /// Alkalinity, as CaCO3.
        Alkalinity = "alkalinity";
    }
}

/// What a soil test measures of each.
const IN_STORE: [(Substance, Property); 8] = [
    (Substance::NitrateN, Property::NitrateN),
    (Substance::AmmoniumN, Property::AmmoniumN),
    (Substance::Phosphorus, Property::Phosphorus),
    (Substance::Potassium, Property::Potassium),
    (Substance::Calcium, Property::Calcium),
    (Substance::Magnesium, Property::Magnesium),
    (Substance::Sulfur, Property::Sulfur),
    (Substance::Sodium, Property::Sodium),
];

/// How many substances there are.
const SUBSTANCES: usize = Substance::ALL.len();

/// The forms that plants take up as nitrogen this year, and what becomes one.
pub const NITROGEN: [Substance; 3] =
    [Substance::NitrateN, Substance::AmmoniumN, Substance::OrganicN];

/// Who brings something.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bringer {
    /// The biochar itself.
    Biochar,
    /// What it is charged with.
    Charge(ChargeSource),
    /// Compost spread on the bed.
    Compost,
    /// Lime.
    Lime,
    /// Sulfur, which takes alkalinity away.
    Sulfur,
    /// Gypsum.
    Gypsum,
    /// The bag of fertiliser on hand.
    Fertiliser,
    /// What is still to be fed.
    Feed,
}

/// What one source brings of one substance.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Entry {
    /// Who brings it.
    pub by: Bringer,
    /// All of it, g; less than nothing where alkalinity is taken away.
    pub amount: Band,
    /// What of it works in the year of the plan, g.
    pub works: Band,
    /// What of it counts against the ceiling, g: all that is likely, but of a biochar's
    /// phosphorus only what comes free in time.
    pub counts: f64,
}

/// The most of a substance that may come in, whatever brings it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ceiling {
    /// g for the whole bed.
    pub most: f64,
    /// Why, in a sentence.
    pub why: String,
    /// What it rests on.
    pub grounds: Grounds,
    /// Whether it held something down.
    pub binds: bool,
}

/// The account of one substance.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Account {
    /// Of what.
    pub of: Substance,
    /// What the worked soil holds, as the laboratory extracts it, g; `None` where nobody measured.
    pub in_store: Option<Band>,
    /// What should come in this year, g.
    pub wanted: Band,
    /// What comes in.
    pub brought: Vec<Entry>,
    /// What the biochar holds back in its first month, g.
    pub held: Band,
    /// What the wet season to come takes, g; `None` where it can't be told.
    pub lost: Option<Band>,
    /// The most that may come in.
    pub ceiling: Option<Ceiling>,
}

impl Account {
    /// All that is brought, g.
    pub fn total(&self) -> Band {
        sum(self.brought.iter().map(|entry| entry.amount))
    }

    /// What of it works this year, g.
    pub fn works(&self) -> Band {
        sum(self.brought.iter().map(|entry| entry.works))
    }

    /// What counts against the ceiling, g.
    pub fn counts(&self) -> f64 {
        self.brought.iter().map(|entry| entry.counts).sum()
    }

    /// What one source brings in all, g.
    pub fn by(&self, by: Bringer) -> Band {
        sum(self.brought.iter().filter(|entry| entry.by == by).map(|entry| entry.amount))
    }
}

/// The sum of some bands.
fn sum(bands: impl Iterator<Item = Band>) -> Band {
    bands.fold(Band::exactly(0.0), Band::plus)
}

/// The accounts of a bed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ledger {
    /// One for each substance, in their order.
    pub accounts: Vec<Account>,
}

impl Default for Ledger {
    fn default() -> Ledger {
        let none = Band::exactly(0.0);
        let account = |of| Account {
            of,
            in_store: None,
            wanted: none,
            brought: Vec::new(),
            held: none,
            lost: None,
            ceiling: None,
        };
        Ledger { accounts: Substance::ALL.map(account).into() }
    }
}

impl Ledger {
    /// Enters what the worked soil holds of what was measured by weight.
    pub(crate) fn open(&mut self, survey: &Survey<'_>) {
        let soil = survey.bed.soil_per_m2().map(|kg| kg * survey.bed.area.value);
        for (substance, property) in IN_STORE {
            let measured = survey.soil.value(property).filter(|v| *v >= 0.0);
            // mg/kg × kg ÷ 1000 = g.
            self.account(substance).in_store = measured.map(|mg| soil.map(|kg| mg * kg / 1000.0));
        }
    }

    /// Nothing of what biochar and its charge bring works this year.
    pub(crate) fn credit_nothing(&mut self) {
        let of_biochar = |by| matches!(by, Bringer::Biochar | Bringer::Charge(_));
        for account in &mut self.accounts {
            account.held = Band::exactly(0.0);
            for entry in account.brought.iter_mut().filter(|entry| of_biochar(entry.by)) {
                entry.works = Band::exactly(0.0);
            }
        }
    }

    /// Marks the ceilings that hold something down.
    pub(crate) fn close(&mut self) {
        for account in &mut self.accounts {
            let total = account.counts();
            if let Some(ceiling) = &mut account.ceiling {
                ceiling.binds = total > 0.0 && total >= ceiling.most * (1.0 - 1e-6);
            }
        }
    }

    /// The account of a substance.
    pub fn of(&self, substance: Substance) -> &Account {
        &self.accounts[substance as usize]
    }

    /// The account of a substance, to write in.
    pub(crate) fn account(&mut self, substance: Substance) -> &mut Account {
        &mut self.accounts[substance as usize]
    }

    /// Enters what a source brings, in the order of [`Substance::ALL`]: all of it,
    /// and what works this year. Nothing is entered for nothing.
    pub(crate) fn enter(&mut self, by: Bringer, brings: &Brings) {
        for (account, (amount, works)) in self.accounts.iter_mut().zip(brings.0) {
            if amount.high != 0.0 || amount.low != 0.0 {
                account.brought.push(Entry { by, amount, works, counts: amount.likely });
            }
        }
    }

    /// Says how much of what one source brings counts against the ceiling, g.
    pub(crate) fn count(&mut self, by: Bringer, substance: Substance, counts: f64) {
        let entries = self.account(substance).brought.iter_mut();
        entries.filter(|entry| entry.by == by).for_each(|entry| entry.counts = counts);
    }

    /// What works this year of some substances together, g.
    pub fn works(&self, substances: &[Substance]) -> Band {
        sum(substances.iter().map(|s| self.of(*s).works()))
    }

    /// What is still missing of some substances together after all that works, g:
    /// wanted and held, less what is brought; nothing where nothing is wanted.
    pub fn missing(&self, substances: &[Substance]) -> Band {
        let all = |of: &dyn Fn(&Account) -> Band| sum(substances.iter().map(|s| of(self.of(*s))));
        let (wanted, held, works) = (all(&|a| a.wanted), all(&|a| a.held), all(&Account::works));
        if wanted.high <= 0.0 {
            return wanted;
        }
        Band::new(
            (wanted.low + held.low - works.high).max(0.0),
            (wanted.likely + held.likely - works.likely).max(0.0),
            (wanted.high + held.high - works.low).max(0.0),
        )
    }

    /// How much more of a substance may come in, g; without bound where nothing forbids it.
    pub(crate) fn room(&self, substance: Substance) -> f64 {
        let account = self.of(substance);
        account.ceiling.as_ref().map_or(f64::INFINITY, |c| (c.most - account.counts()).max(0.0))
    }
}

/// What a source brings of each substance: all of it, and what works this year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Brings([(Band, Band); SUBSTANCES]);

impl Brings {
    /// Nothing yet.
    pub fn nothing() -> Brings {
        Brings([(Band::exactly(0.0), Band::exactly(0.0)); SUBSTANCES])
    }

    /// With so much of a substance, of which `works` works this year.
    pub fn with(mut self, substance: Substance, amount: Band, works: Band) -> Brings {
        self.0[substance as usize] = (amount, works);
        self
    }

    /// With so much of a substance, all of which works.
    pub fn with_all(self, substance: Substance, amount: Band) -> Brings {
        self.with(substance, amount, amount)
    }

    /// All that it brings of a substance.
    pub fn of(&self, substance: Substance) -> Band {
        self.0[substance as usize].0
    }

    /// So many times as much.
    pub fn times(self, factor: f64) -> Brings {
        Brings(
            self.0.map(|(amount, works)| (amount.map(|g| g * factor), works.map(|g| g * factor))),
        )
    }
}
