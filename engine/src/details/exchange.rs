//! Which cations sit on the exchange and which are in the water, in soil and
//! biochar mixed: the Gaines–Thomas convention, solved as one equation.

/// The cations that take part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cation {
    /// Ca²⁺.
    Calcium,
    /// Mg²⁺.
    Magnesium,
    /// K⁺.
    Potassium,
    /// NH₄⁺.
    Ammonium,
    /// Na⁺.
    Sodium,
    /// Exchangeable acidity, as Al³⁺.
    Acidity,
}

/// How many cations take part.
/// Our choice: those that a soil test reports.
pub const CATIONS: usize = 6;

/// An amount for each cation, in the order of [`Cation::ALL`].
pub type PerCation = [f64; CATIONS];

impl Cation {
    /// Every cation.
    pub const ALL: [Cation; CATIONS] = [
        Cation::Calcium,
        Cation::Magnesium,
        Cation::Potassium,
        Cation::Ammonium,
        Cation::Sodium,
        Cation::Acidity,
    ];

    /// Charges of one ion.
    pub fn charge(self) -> f64 {
        match self {
            Cation::Calcium | Cation::Magnesium => 2.0,
            Cation::Potassium | Cation::Ammonium | Cation::Sodium => 1.0,
            Cation::Acidity => 3.0,
        }
    }

    /// log₁₀ of the constant of Mᶻ⁺ + z X⁻ = MX_z with concentrations in mol/L.
    ///
    /// Source: USGS PHREEQC, phreeqc.dat, EXCHANGE_SPECIES (opened). They are for soils; taking
    /// them for biochar too is our choice.
    pub fn log_k(self) -> f64 {
        match self {
            Cation::Calcium => 0.8,
            Cation::Magnesium => 0.6,
            Cation::Potassium => 0.7,
            Cation::Ammonium => 0.6,
            Cation::Sodium => 0.0,
            Cation::Acidity => 0.41,
        }
    }
}

/// All the exchangeable and dissolved cations of 1 kg of dry material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pool {
    /// Exchange capacity, mol of charge per kg.
    pub capacity: f64,
    /// Water held, L per kg.
    pub water: f64,
    /// Cations on the exchange and in the water, mol per kg.
    pub totals: PerCation,
}

/// Where the cations of a pool sit at equilibrium.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exchange {
    /// Share of the exchange that each holds, 0–1; together 1.
    pub shares: PerCation,
    /// In the water, mol/L.
    pub dissolved: PerCation,
}

impl Pool {
    /// A pool whose exchange holds these shares and whose water holds these
    /// concentrations (mol/L).
    pub fn of(capacity: f64, water: f64, shares: &PerCation, dissolved: &PerCation) -> Pool {
        let mut totals = [0.0; CATIONS];
        for (at, cation) in Cation::ALL.into_iter().enumerate() {
            totals[at] = capacity * shares[at] / cation.charge() + water * dissolved[at];
        }
        Pool { capacity, water, totals }
    }

    /// This pool with a share (0–1 by mass) of another mixed in.
    pub fn mixed(&self, other: &Pool, share: f64) -> Pool {
        let both = |a: f64, b: f64| (1.0 - share) * a + share * b;
        let mut totals = [0.0; CATIONS];
        for (at, total) in totals.iter_mut().enumerate() {
            *total = both(self.totals[at], other.totals[at]);
        }
        Pool {
            capacity: both(self.capacity, other.capacity),
            water: both(self.water, other.water),
            totals,
        }
    }

    /// This pool with so many more sites, mol of charge per kg, and the calcium that fills them.
    pub fn with_calcium(&self, sites: f64) -> Pool {
        let mut more = *self;
        more.capacity += sites;
        more.totals[Cation::Calcium as usize] += sites / Cation::Calcium.charge();
        more
    }

    /// Where its cations sit at equilibrium; `None` when it has no exchange or
    /// no water, when a number is negative or not finite, or when there are
    /// fewer charges than the exchange needs to be full.
    ///
    /// With `x` the activity of the empty site, cᵢ = Tᵢ ÷ (water + capacity ÷ zᵢ × Kᵢ × xᶻ) and
    /// the shares Kᵢ × cᵢ × xᶻ sum to 1: their sum rises with `x`, so halving
    /// the stretch that holds `x` finds it.
    pub fn settled(&self) -> Option<Exchange> {
        let sound = |v: f64| v.is_finite() && v >= 0.0;
        if !(sound(self.capacity) && sound(self.water) && self.totals.iter().all(|t| sound(*t))) {
            return None;
        }
        if self.capacity <= 0.0 || self.water <= 0.0 {
            return None;
        }
        let charges: f64 = Cation::ALL
            .iter()
            .zip(&self.totals)
            .map(|(cation, total)| cation.charge() * total)
            .sum();
        if charges <= self.capacity * (1.0 + 1e-12) {
            return None;
        }
        let at = |ln_x: f64| {
            let mut found = Exchange { shares: [0.0; CATIONS], dissolved: [0.0; CATIONS] };
            for (i, cation) in Cation::ALL.into_iter().enumerate() {
                let z = cation.charge();
                // From here on the product only overflows where all of it is held.
                let pull = (cation.log_k() * std::f64::consts::LN_10 + z * ln_x).exp();
                let c = self.totals[i] / (self.water + self.capacity / z * pull);
                found.dissolved[i] = c;
                // Not pull × c, which may be infinity × 0.
                let held = self.totals[i] - self.water * c;
                found.shares[i] = held.max(0.0) * z / self.capacity;
            }
            found
        };
        let (mut low, mut high) = (-200.0_f64, 200.0_f64);
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            if at(middle).shares.iter().sum::<f64>() < 1.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some(at(0.5 * (low + high)))
    }

    /// The pool after its water has run off and `fresh` (mol/L) has come in its place.
    pub fn leached(&self, fresh: &PerCation) -> Option<Pool> {
        let now = self.settled()?;
        let mut totals = self.totals;
        for (at, total) in totals.iter_mut().enumerate() {
            *total += self.water * (fresh[at] - now.dissolved[at]);
        }
        Some(Pool { totals, ..*self })
    }
}

impl Exchange {
    /// Of one cation: its share of the exchange, and what is in the water, mol/L.
    pub fn of(&self, cation: Cation) -> (f64, f64) {
        (self.shares[cation as usize], self.dissolved[cation as usize])
    }
}
