//! The soils that a table was made for.

use crate::soil::{Property, Soil, Texture};

/// The soils that a table was made for, where its publication parts them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Soils {
    /// Any of these textures; every one where none is said.
    pub textures: &'static [Texture],
    /// And each property measured above the first number and up to the second.
    pub within: &'static [(Property, f64, f64)],
}

impl Soils {
    /// Whether this soil is one of them; `None` where that is not known.
    pub fn fit(self, soil: &Soil, texture: Option<Texture>) -> Option<bool> {
        let mut fits = Some(true);
        if !self.textures.is_empty() {
            fits = texture.map(|texture| self.textures.contains(&texture));
        }
        for &(property, above, up_to) in self.within {
            match soil.value(property).map(|v| v > above && v <= up_to) {
                Some(true) => {}
                Some(false) => return Some(false),
                None => fits = fits.filter(|fits| !fits),
            }
        }
        fits
    }

    /// Whether this soil is known to be one of them.
    pub fn include(self, soil: &Soil, texture: Option<Texture>) -> bool {
        self.fit(soil, texture) == Some(true)
    }
}
