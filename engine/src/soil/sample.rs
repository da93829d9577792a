//! One sample in the engine's own units: what the judging and the chemistry
//! work on.

use serde::{Deserialize, Serialize};

use crate::quantity::Unit;
use crate::soil::{Method, Property, Texture};

/// A result: a number, or only a bound.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Amount {
    /// A measured number.
    Exactly(f64),
    /// Below this reporting limit.
    Below(f64),
    /// Above this upper limit.
    Above(f64),
}

impl Amount {
    /// The number, when there is one.
    pub fn exact(self) -> Option<f64> {
        match self {
            Amount::Exactly(v) => Some(v),
            _ => None,
        }
    }

    /// The number or the limit.
    pub fn number(self) -> f64 {
        match self {
            Amount::Exactly(v) | Amount::Below(v) | Amount::Above(v) => v,
        }
    }

    /// The same kind of result with another number.
    pub fn with(self, number: f64) -> Amount {
        match self {
            Amount::Exactly(_) => Amount::Exactly(number),
            Amount::Below(_) => Amount::Below(number),
            Amount::Above(_) => Amount::Above(number),
        }
    }
}

/// One property of one sample, in the engine's unit for it (or in mg/L where
/// the laboratory measured by volume).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// What was measured.
    pub property: Property,
    /// The result.
    pub amount: Amount,
    /// Its unit.
    pub unit: Unit,
    /// The method, when it is known.
    pub method: Option<Method>,
}

/// One sample: the usable measures, at most one for each property and method.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Soil {
    /// The measures, in the order they were read.
    pub measures: Vec<Measure>,
}

impl Soil {
    /// The first measure of a property.
    pub fn get(&self, property: Property) -> Option<&Measure> {
        self.measures.iter().find(|m| m.property == property)
    }

    /// The number measured for a property in the engine's own unit; `None`
    /// when it is only a bound, or was measured by volume.
    pub fn value(&self, property: Property) -> Option<f64> {
        self.get(property).filter(|m| m.unit == property.unit())?.amount.exact()
    }

    /// The texture class, when sand, silt and clay were measured (two of the
    /// three are enough).
    pub fn texture(&self) -> Option<Texture> {
        let part = |p| self.value(p);
        let (sand, silt, clay) = (part(Property::Sand), part(Property::Silt), part(Property::Clay));
        match (sand, silt, clay) {
            (Some(s), Some(z), Some(c)) => Texture::from_separates(s, z, c),
            (Some(s), None, Some(c)) => Texture::from_separates(s, 100.0 - s - c, c),
            (Some(s), Some(z), None) => Texture::from_separates(s, z, 100.0 - s - z),
            (None, Some(z), Some(c)) => Texture::from_separates(100.0 - z - c, z, c),
            _ => None,
        }
    }
}
