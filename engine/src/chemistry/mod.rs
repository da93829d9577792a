//! The soil's chemistry, with grounds and bounds.

mod acidity;
mod exchange;
mod organic;
mod phosphorus;
mod salts;

use crate::quantity::{Band, Figure, Grounds};
use crate::question::Question;
use crate::ranges::Setting;
use crate::soil::Soil;

pub(crate) use acidity::{MEHLICH_PER_PH, MEHLICH_START, base_unsaturation, found_by_buffer};

/// What the chemistry says of one sample.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chemistry {
    /// Every worked-out number.
    pub figures: Vec<Figure>,
    /// Exchange capacity, meq/100 g, measured or by summation.
    pub cec: Option<Band>,
    /// What must be known before more can be worked out.
    pub questions: Vec<Question>,
}

impl Chemistry {
    /// A worked-out number by its name.
    pub fn get(&self, name: &str) -> Option<&Figure> {
        self.figures.iter().find(|f| f.name == name)
    }
}

/// Works out the chemistry of one sample.
///
/// What the report doesn't allow is left out, and asked for where an answer
/// would help. The names of the figures: `cec`, `cec-by-summation`,
/// `base-saturation`, `calcium-saturation`, `magnesium-saturation`,
/// `potassium-saturation`, `sodium-saturation`, `acidity-saturation` (where
/// acidity is counted), `organic-matter`, `nitrogen-release`,
/// `p-saturation-ratio`, `ece`.
pub fn work_out(soil: &Soil, setting: &Setting) -> Chemistry {
    let mut chemistry = Chemistry::default();
    exchange::work_out(soil, setting, &mut chemistry);
    organic::work_out(soil, setting, &mut chemistry);
    phosphorus::work_out(soil, &mut chemistry);
    salts::work_out(soil, setting, &mut chemistry);
    chemistry
}

/// Adds to the grounds of one number what another number on its way rests on.
fn with_grounds_of(mut grounds: Grounds, other: &Grounds) -> Grounds {
    grounds.inputs.extend(other.inputs.iter().cloned());
    grounds.assumed.extend(other.assumed.iter().cloned());
    for citation in &other.sources {
        if !grounds.sources.contains(citation) {
            grounds.sources.push(*citation);
        }
    }
    grounds
}
