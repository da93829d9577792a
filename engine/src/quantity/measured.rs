//! Weights as a gardener measures them: a cup, a spoon, a bag.

use super::display::KG_PER_POUND;
use super::{Measures, Portion, Vessel, in_fractions, weighed};

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

/// Nobody counts the bags of more than this, kg. Our choice.
const MOST: f64 = 100_000.0;

/// Less than this, a quarter of a teaspoon, can't be measured with a spoon, cups.
/// Source: common practice, no source.
const LEAST: f64 = 0.25 / 48.0;

/// A weight of a powder as it is carried: in bags, cups or spoons where they hold about so much.
pub(crate) fn portion(grams: f64, powder: Powder, measures: Measures) -> Portion {
    let cups = 2.0 * grams / OUNCE / powder.ounces_in_a_pint();
    let kg = grams / 1000.0;
    let halves = |value: f64| (2.0 * value).round() / 2.0;
    let counted = |count: f64, vessel, name: &str| Portion {
        count: Some(count),
        vessel,
        amount: format!("{} {name}", in_fractions(count)),
    };
    match measures {
        Measures::Metric if (1.5 * BAG.0..MOST).contains(&kg) => {
            counted(halves(kg / BAG.0), Vessel::Bag, "bags of 20\u{a0}kg")
        }
        Measures::Us if (1.5 * BAG.1..MOST).contains(&kg) => {
            counted(halves(kg / BAG.1), Vessel::Bag, "bags of 40\u{a0}lb")
        }
        // A little of borax is a matter of the spoon everywhere.
        Measures::Metric if powder == Powder::Borax && (LEAST..0.5).contains(&cups) => spoons(cups),
        Measures::Us if (1.5..=32.0).contains(&cups) => counted(halves(cups), Vessel::Cup, "cups"),
        Measures::Us if (LEAST..1.5).contains(&cups) => spoons(cups),
        _ => Portion::weighed(grams, measures),
    }
}

impl Portion {
    /// A powder as it is bought: whole bags, rounded up, where one and a half or more are
    /// wanted; less is weighed.
    pub(crate) fn bought(grams: f64, measures: Measures) -> Portion {
        let kg = grams / 1000.0;
        let (bag, name) = match measures {
            Measures::Metric => (BAG.0, "bags of 20\u{a0}kg"),
            Measures::Us => (BAG.1, "bags of 40\u{a0}lb"),
        };
        if !(1.5 * bag..MOST).contains(&kg) {
            return Portion::weighed(grams, measures);
        }
        let count = (kg / bag - 1e-9).ceil();
        let amount = format!("{} {name}", in_fractions(count));
        Portion { count: Some(count), vessel: Vessel::Bag, amount }
    }
}

/// A weight of a powder, with the bags, cups or spoons that hold about so much.
pub(crate) fn measured(grams: f64, powder: Powder, measures: Measures) -> String {
    let text = weighed(grams, measures);
    let Portion { vessel, amount, .. } = portion(grams, powder, measures);
    if vessel == Vessel::Weight { text } else { format!("{text} (about {amount})") }
}

/// So many cups in spoons: 16 tablespoons in a cup, 3 teaspoons in a tablespoon. Below three
/// quarters of a teaspoon to the quarter below, so that little never becomes too much.
fn spoons(cups: f64) -> Portion {
    let tablespoons = 16.0 * cups;
    let teaspoons = 3.0 * tablespoons;
    let quarters = |value: f64| (4.0 * value).round() / 4.0;
    let (count, name) = if tablespoons >= 3.0 {
        ((2.0 * tablespoons).round() / 2.0, "tablespoons")
    } else if tablespoons >= 1.5 {
        (quarters(tablespoons), "tablespoons")
    } else if teaspoons >= 0.75 {
        (quarters(teaspoons), "teaspoons")
    } else {
        ((4.0 * teaspoons).floor() / 4.0, "teaspoons")
    };
    // `1 teaspoons` and `½ teaspoons` are nobody's words.
    let name = if count > 1.0 { name } else { name.trim_end_matches('s') };
    let amount = format!("{} {name}", in_fractions(count));
    Portion { count: Some(count), vessel: Vessel::Spoon, amount }
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
        assert_eq!(us(0.25 * OUNCE, Powder::Borax), "0.25\u{a0}oz (about 1½ teaspoons)");
        assert_eq!(
            us(120.0 * 16.0 * OUNCE, Powder::Limestone),
            "120\u{a0}lb (about 3 bags of 40\u{a0}lb)"
        );
        let metric = |grams| measured(grams, Powder::Gypsum, Measures::Metric);
        assert_eq!(metric(60_000.0), "60\u{a0}kg (about 3 bags of 20\u{a0}kg)");
        assert_eq!(metric(600.0), "600\u{a0}g");
        assert_eq!(us(0.1 * OUNCE, Powder::Borax), "0.1\u{a0}oz (about ½ teaspoon)");
    }

    #[test]
    fn what_is_carried_is_near_what_is_wanted() {
        for step in 0..6000 {
            let grams = 1.004_f64.powi(step) * 0.1;
            let carried = portion(grams, Powder::Borax, Measures::Us);
            let cups = 2.0 * grams / OUNCE / Powder::Borax.ounces_in_a_pint();
            let said = match (carried.vessel, carried.count) {
                (Vessel::Spoon, Some(count)) if carried.amount.contains("table") => count / 16.0,
                (Vessel::Spoon, Some(count)) => count / 48.0,
                (Vessel::Cup, Some(count)) => count,
                (Vessel::Bag, Some(count)) => count * BAG.1 * 1000.0 * cups / grams,
                _ => continue,
            };
            let most = if carried.vessel == Vessel::Bag { 1.2 } else { 1.18 };
            assert!((0.5..most).contains(&(said / cups)), "{grams} g: {carried:?}");
        }
    }
}
