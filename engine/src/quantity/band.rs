//! An uncertain number, and what it rests on.

use serde::Serialize;

use crate::quantity::{Note, Unit};
use crate::sources::{Citation, Grade, Source};

/// An uncertain value: low, likely and high. Always `low <= likely <= high`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Band {
    /// The low end.
    pub low: f64,
    /// The single most likely value.
    pub likely: f64,
    /// The high end.
    pub high: f64,
}

impl Band {
    /// A band from its three numbers, put in order. One that is no number (NaN) counts as
    /// another of the three, the likely one first, and as 0 where none is a number.
    pub fn new(low: f64, likely: f64, high: f64) -> Band {
        let known = [likely, low, high].into_iter().find(|v| !v.is_nan()).unwrap_or(0.0);
        let [low, likely, high] = [low, likely, high].map(|v| if v.is_nan() { known } else { v });
        let (low, high) = (low.min(high), low.max(high));
        Band { low, likely: likely.clamp(low, high), high }
    }

    /// A value that is known as well as its inputs are.
    pub fn exactly(value: f64) -> Band {
        Band::new(value, value, value)
    }

    /// Applies a function that rises or falls throughout to all three numbers.
    pub fn map(self, f: impl Fn(f64) -> f64) -> Band {
        Band::new(f(self.low), f(self.likely), f(self.high))
    }

    /// The product with another band, both taken as not negative.
    pub fn times(self, other: Band) -> Band {
        Band::new(self.low * other.low, self.likely * other.likely, self.high * other.high)
    }

    /// The sum with another band.
    pub fn plus(self, other: Band) -> Band {
        Band::new(self.low + other.low, self.likely + other.likely, self.high + other.high)
    }

    /// Whether the three numbers are the same.
    pub fn is_exact(&self) -> bool {
        self.low == self.high
    }
}

/// One thing a conclusion was worked out from, in words a reader can check.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Input {
    /// What it is, for example `calcium`.
    pub name: String,
    /// Its value with its unit, for example `1096 mg/kg`.
    pub value: String,
    /// The publication whose word the value is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub by: Option<&'static Source>,
}

impl Input {
    /// What went in.
    pub fn new(name: impl Into<String>, value: impl Into<String>) -> Input {
        Input { name: name.into(), value: value.into(), by: None }
    }
}

/// What a number or a conclusion rests on: every number a reader sees can be
/// opened to show this.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Grounds {
    /// The rule or formula, in one line.
    pub rule: String,
    /// What went in.
    pub inputs: Vec<Input>,
    /// What was assumed because nobody said.
    pub assumed: Vec<Note>,
    /// The publications it rests on, each with its grade.
    pub sources: Vec<Citation>,
}

impl Grounds {
    /// Grounds that state a rule and its sources.
    pub fn new(rule: impl Into<String>, sources: &[Citation]) -> Grounds {
        Grounds { rule: rule.into(), sources: sources.to_vec(), ..Grounds::default() }
    }

    /// Adds an input.
    pub fn input(mut self, name: impl Into<String>, value: impl Into<String>) -> Grounds {
        self.inputs.push(Input::new(name, value));
        self
    }

    /// Whether the figure itself, whose publication stands first, was not read: it may not
    /// stand alone.
    pub fn rests_on_memory(&self) -> bool {
        self.sources.first().is_none_or(|cited| cited.grade >= Grade::FromMemory)
    }

    /// Cites what is not cited yet.
    pub fn cite<'a>(&mut self, citations: impl IntoIterator<Item = &'a Citation>) {
        for citation in citations {
            if !self.sources.contains(citation) {
                self.sources.push(*citation);
            }
        }
    }

    /// Takes in all that another number on its way rests on, but its rule.
    pub fn with(mut self, other: &Grounds) -> Grounds {
        self.inputs.extend(other.inputs.iter().cloned());
        self.assumed.extend(other.assumed.iter().cloned());
        self.cite(&other.sources);
        self
    }

    /// Adds an assumption.
    pub fn assume(mut self, assumption: impl Into<Note>) -> Grounds {
        self.assumed.push(assumption.into());
        self
    }
}

/// A worked-out number with its name, its bounds, its unit and its grounds.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Figure {
    /// A kebab-case trade name, for example `cec` or `calcium-saturation`.
    pub name: &'static str,
    /// What it is called in a sentence, for example `calcium saturation`.
    pub label: &'static str,
    /// The value and its bounds.
    #[serde(flatten)]
    pub band: Band,
    /// Its unit.
    pub unit: Unit,
    /// What it rests on.
    pub grounds: Grounds,
}

impl Figure {
    /// A worked-out number.
    pub fn new(
        name: &'static str,
        label: &'static str,
        band: Band,
        unit: Unit,
        grounds: Grounds,
    ) -> Figure {
        Figure { name, label, band, unit, grounds }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::EXTREMES;

    #[test]
    fn a_band_is_in_order_whatever_it_is_made_of() {
        let in_order = |b: Band| assert!(b.low <= b.likely && b.likely <= b.high, "{b:?}");
        for a in EXTREMES {
            for b in EXTREMES {
                for c in EXTREMES {
                    let band = Band::new(a, b, c);
                    in_order(band);
                    in_order(band.times(Band::new(c, a, b)));
                    in_order(band.plus(Band::new(b, c, a)));
                    in_order(band.map(|v| v * c));
                    in_order(Band::exactly(a));
                }
            }
        }
    }

    #[test]
    fn what_is_no_number_counts_as_the_numbers_beside_it() {
        let three = |b: Band| (b.low, b.likely, b.high);
        assert_eq!(three(Band::new(f64::NAN, 4.0, 8.0)), (4.0, 4.0, 8.0));
        assert_eq!(three(Band::new(2.0, f64::NAN, 8.0)), (2.0, 2.0, 8.0));
        assert_eq!(three(Band::new(f64::NAN, f64::NAN, 8.0)), (8.0, 8.0, 8.0));
        assert_eq!(three(Band::exactly(f64::NAN)), (0.0, 0.0, 0.0));
    }
}
