//! Weights as a gardener measures them: a cup, a spoon, a bag.

use super::display::KG_PER_POUND;
use super::{Measures, significant, weighed};

/// What is spread by weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Powder {
    Limestone,
    Sulfur,
    Gypsum,
    EpsomSalts,
    Borax,
}

impl Powder {
    /// Ounces in a US pint, loosely filled.
    ///
    /// Source: LSU AgCenter, fertilizer conversions for small areas: flowers of sulfur 10 (opened);
    /// the others from memory of such tables, to be used as "about".
    fn ounces_in_a_pint(self) -> f64 {
        match self {
            Powder::Limestone => 23.0,
            Powder::Sulfur => 10.0,
            Powder::Gypsum | Powder::Borax => 16.0,
            Powder::EpsomSalts => 13.0,
        }
    }
}

/// Grams in an ounce. Source: legal definition (derived).
const OUNCE: f64 = 1000.0 * KG_PER_POUND / 16.0;

/// A bag, kg, where the reader measures in kilograms and in pounds. Source: common practice, no source.
const BAG: (f64, f64) = (20.0, 40.0 * KG_PER_POUND);

/// Less than this, a quarter of a teaspoon, can't be measured with a spoon, cups.
/// Source: common practice, no source.
const LEAST: f64 = 0.25 / 48.0;

/// A weight of a powder, with the bags, cups or spoons that hold about so much.
pub(crate) fn measured(grams: f64, powder: Powder, measures: Measures) -> String {
    let text = weighed(grams, measures);
    let number = |value: f64| significant(value, 2);
    let cups = 2.0 * grams / OUNCE / powder.ounces_in_a_pint();
    let kg = grams / 1000.0;
    match measures {
        Measures::Metric if kg >= 1.5 * BAG.0 => {
            format!("{text} ({} bags of 20\u{a0}kg)", number(kg / BAG.0))
        }
        Measures::Us if kg >= 1.5 * BAG.1 => {
            format!("{text} ({} bags of 40\u{a0}lb)", number(kg / BAG.1))
        }
        // A little of borax is a matter of the spoon everywhere.
        Measures::Metric if powder == Powder::Borax && (LEAST..0.5).contains(&cups) => {
            format!("{text} ({})", spoons(cups))
        }
        Measures::Us if (1.5..=32.0).contains(&cups) => {
            format!("{text} (about {} cups)", number(cups))
        }
        Measures::Us if (LEAST..1.5).contains(&cups) => format!("{text} ({})", spoons(cups)),
        _ => text,
    }
}

/// So many cups in spoons: 16 tablespoons in a cup, 3 teaspoons in a tablespoon.
fn spoons(cups: f64) -> String {
    let tablespoons = 16.0 * cups;
    if tablespoons >= 1.5 {
        format!("about {} tablespoons", significant(tablespoons, 2))
    } else {
        format!("about {} teaspoons", significant(3.0 * tablespoons, 2))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: a pint is two cups and 32 tablespoons; 10 oz of sulfur fill it.
    #[test]
    fn a_weight_is_told_in_cups_spoons_and_bags() {
        let us = |grams, powder| measured(grams, powder, Measures::Us);
        assert_eq!(us(10.0 * OUNCE, Powder::Sulfur), "10\u{a0}oz (about 2 cups)");
        assert_eq!(us(OUNCE, Powder::Borax), "1\u{a0}oz (about 2 tablespoons)");
        assert_eq!(us(0.25 * OUNCE, Powder::Borax), "0.25\u{a0}oz (about 1.5 teaspoons)");
        assert_eq!(
            us(120.0 * 16.0 * OUNCE, Powder::Limestone),
            "120\u{a0}lb (3 bags of 40\u{a0}lb)"
        );
        let metric = |grams| measured(grams, Powder::Gypsum, Measures::Metric);
        assert_eq!(metric(60_000.0), "60\u{a0}kg (3 bags of 20\u{a0}kg)");
        assert_eq!(metric(600.0), "600\u{a0}g");
    }
}
