//! What a trial in this bed found, kept with the bed so that its plan can say it.

use serde::{Deserialize, Serialize};

use crate::quantity::Band;
use crate::soil::Property;

/// A trial of this bed, as far as the plan says it beside its own foretelling.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct BedTrial {
    /// What the person calls it.
    pub name: String,
    /// Kept, but not said.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub off: bool,
    /// What it found.
    pub found: Vec<TrialFinding>,
}

/// The change of one property in a trial: % of the control, or pH units.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct TrialFinding {
    /// The property.
    pub property: Property,
    /// What the model foretold for the trial: low, likely, high.
    pub foretold: [f64; 3],
    /// What was found, within its 95 % interval: low, found, high.
    pub found: [f64; 3],
}

impl TrialFinding {
    /// What the model foretold.
    pub fn model(&self) -> Band {
        let [low, likely, high] = self.foretold;
        Band::new(low, likely, high)
    }

    /// What was found.
    pub fn seen(&self) -> Band {
        let [low, likely, high] = self.found;
        Band::new(low, likely, high)
    }
}

impl BedTrial {
    /// What it found of a property, unless it is switched off.
    pub fn of(&self, property: Property) -> Option<&TrialFinding> {
        self.found.iter().find(|finding| !self.off && finding.property == property)
    }
}
