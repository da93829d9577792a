//! The soil's chemistry, with grounds and bounds.

use crate::quantity::{Band, Figure};
use crate::question::Question;
use crate::ranges::Setting;
use crate::soil::Soil;

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
pub fn work_out(soil: &Soil, setting: &Setting) -> Chemistry {
    let _ = (soil, setting);
    Chemistry::default()
}
