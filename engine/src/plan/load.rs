//! What a job carries to the bed: the job's sentence and the list of things to carry are both
//! made from it, so that they can't say two amounts.

use crate::plan::needs::NeedKind;
use crate::quantity::{Measures, Portion, Powder, measured, portion, weighed};

/// One thing that a job carries to the bed, by weight.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Load {
    /// What it is for.
    pub kind: NeedKind,
    /// How much of it, g.
    pub grams: f64,
    /// What it is like to measure; `None` for what is only weighed.
    pub powder: Option<Powder>,
    /// What it is called.
    pub what: &'static str,
}

impl Load {
    /// As the job says it: `1 kg`, `1.2 lb (about 2 cups)`.
    pub(crate) fn told(&self, measures: Measures) -> String {
        match self.powder {
            Some(powder) => measured(self.grams, powder, measures),
            None => weighed(self.grams, measures),
        }
    }

    /// As it is carried, with one number.
    pub(crate) fn portion(&self, measures: Measures) -> Portion {
        match self.powder {
            Some(powder) => portion(self.grams, powder, measures),
            None => Portion::weighed(self.grams, measures),
        }
    }
}
