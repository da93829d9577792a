//! How a property stands for the plants.

use crate::named::named;

named! { "level", label:
    /// How a property stands, by the published probability that plants respond.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum Level {
        /// A response is nearly certain.
        VeryLow = "very-low", "very low";
        /// A response is likely.
        Low = "low", "low";
        /// Enough; a response is unlikely.
        Sufficient = "sufficient", "sufficient";
        /// More than enough; no response.
        High = "high", "high";
        /// So much that the source says to stop adding it.
        Excess = "excess", "excess";
    }
}

impl Level {
    /// Below sufficient.
    pub fn is_short(self) -> bool {
        self < Level::Sufficient
    }

    /// Above sufficient.
    pub fn is_surplus(self) -> bool {
        self > Level::Sufficient
    }

    /// On which side of enough it stands: −1 below, 0 on it, 1 above.
    pub fn side(self) -> i8 {
        i8::from(self.is_surplus()) - i8::from(self.is_short())
    }
}
