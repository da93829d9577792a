//! How well a figure is known to stand in the source it names.

use crate::named::named;

named! { "grade", words:
    /// How well a figure is known to stand in the source it names.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum Grade {
        /// Read in the text itself.
        Opened = "opened", "read in the source";
        /// Read in a text that quotes the source.
        SecondHand = "second-hand", "read where the source is quoted";
        /// Worked out by arithmetic from a figure that was read.
        Derived = "derived", "worked out from the source";
        /// Written from memory; never the only ground of a recommendation.
        FromMemory = "from-memory", "from memory, not checked against the source";
        /// Our own engineering choice, or common practice: no publication.
        Unsourced = "unsourced", "no publication behind it";
    }
}
