//! How a number is rounded and which units a reader sees. Views never round.

use crate::named::named;

use crate::quantity::convert::KG_PER_HA_IN_LB_PER_ACRE;
use crate::quantity::{Band, Unit};

named! { "system of measures":
    /// Which measures the reader wants to see.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
    pub enum Measures {
        /// Litres, kilograms, centimetres.
        #[default]
        Metric = "metric";
        /// US gallons and cubic feet, pounds, inches.
        Us = "us";
    }
}

/// Nothing in a garden is counted or measured beyond this, or finer than one part of it.
/// Our choice.
const BEYOND: f64 = 1e15;

/// `value` to `digits` significant digits, without trailing zeros; `–` for what is no number or
/// beyond measure, `0` for what is too small to be measured.
pub fn significant(value: f64, digits: i32) -> String {
    let digits = digits.clamp(1, 15);
    let size = value.abs();
    if size < 1.0 / BEYOND {
        return "0".into();
    }
    if size.is_nan() || size >= BEYOND {
        return "–".into();
    }
    let decimals = digits - 1 - value.abs().log10().floor() as i32;
    if decimals <= 0 {
        let step = 10f64.powi(-decimals);
        return format!("{:.0}", (value / step).round() * step);
    }
    let text = format!("{value:.*}", decimals as usize);
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}

/// A band in the reader's measures, as text: `4 (2–8) L`, `0 (−11 to 10) %`,
/// or `5 %` when exact. Digits far finer than the band is wide are dropped. A
/// weight is told as [`weighed`] tells it.
pub fn shown(band: &Band, unit: Unit, measures: Measures) -> String {
    match unit {
        Unit::Gram if is_heavy(band.likely, measures) => {
            return shown(&band.map(|grams| grams / 1000.0), Unit::Kg, measures);
        }
        Unit::Kg if !is_heavy(1000.0 * band.likely, measures) => {
            return shown(&band.map(|kg| 1000.0 * kg), Unit::Gram, measures);
        }
        _ => {}
    }
    let (factor, symbol) = match (measures, unit) {
        _ if unit == Unit::Bags && *band == Band::exactly(1.0) => (1.0, "bag"),
        // As the recipe measures it out; only bags are sold by the cubic foot.
        (Measures::Us, Unit::Litre) => (1.0 / LITRES_PER_GALLON, "gal"),
        (Measures::Metric, Unit::GPerM2 | Unit::GPerM2OfLawn) if band.likely >= 1000.0 => {
            (0.001, "kg/m²")
        }
        _ => in_measures(unit, measures),
    };
    let widest = (band.low.abs().max(band.likely.abs()).max(band.high.abs())) * factor;
    let can_be_shown = widest > 0.0 && widest < BEYOND;
    let finest = if can_be_shown { 10f64.powi(widest.log10().floor() as i32 - 2) } else { 0.0 };
    let at = |v: f64| {
        let value = v * factor;
        // A depth is measured to half an inch.
        let halves = measures == Measures::Us && unit == Unit::Cm && value.abs() >= 2.0;
        let value = if halves { (2.0 * value).round() / 2.0 } else { value };
        if value.abs() < 5.0 * finest {
            return "0".into();
        }
        // Bags are counted and money is paid to the last coin.
        let counted = matches!(unit, Unit::Bags | Unit::Money);
        let digits = if counted { 9 } else { 2.max(digits_before_point(value)) };
        significant(value, digits).replace('-', "−")
    };
    let (low, likely, high) = (at(band.low), at(band.likely), at(band.high));
    let space = if symbol.is_empty() { "" } else { "\u{a0}" };
    if low == high {
        format!("{likely}{space}{symbol}")
    } else {
        let to = if band.low < 0.0 { " to " } else { "–" };
        format!("{likely} ({low}{to}{high}){space}{symbol}")
    }
}

/// A weight to measure out: `40 g`, `1.4 oz`, `2.2 lb`.
pub fn weighed(grams: f64, measures: Measures) -> String {
    let heavy = is_heavy(grams, measures);
    let (value, unit) = if heavy { (grams / 1000.0, Unit::Kg) } else { (grams, Unit::Gram) };
    let text = significant(in_readers(value, unit, measures), 2);
    format!("{text}\u{a0}{}", readers_symbol(unit, measures))
}

/// Whether so many grams are told in kilograms or pounds.
fn is_heavy(grams: f64, measures: Measures) -> bool {
    let from = match measures {
        Measures::Metric => 1000.0,
        Measures::Us => 1000.0 * KG_PER_POUND,
    };
    grams.abs() >= from
}

/// Litres in a US gallon.
/// Source: legal definition, 231 cubic inches (derived).
pub(crate) const LITRES_PER_GALLON: f64 = 3.785_411_784;
/// Litres in a cubic foot. Source: legal definition (derived).
pub(crate) const LITRES_PER_CUBIC_FOOT: f64 = 28.316_846_592;
/// Kilograms in a pound. Source: legal definition (derived).
pub(crate) const KG_PER_POUND: f64 = 0.453_592_37;
/// lb/1000 sq ft in 1 g/m². Source: legal definitions (derived).
pub(crate) const LB_PER_1000_SQ_FT_IN_G_PER_M2: f64 = 0.204_816_143;
/// US tons an acre in 1 t/ha. Source: legal definitions (derived).
const TON_PER_ACRE_IN_T_PER_HA: f64 = 0.446_089_56;

/// `value` of `unit` as a number in the reader's measures, for an input box.
pub fn in_readers(value: f64, unit: Unit, measures: Measures) -> f64 {
    value * in_measures(unit, measures).0
}

/// A number typed in the reader's measures, back in `unit`.
pub fn from_readers(typed: f64, unit: Unit, measures: Measures) -> f64 {
    typed / in_measures(unit, measures).0
}

/// How `unit` is written in the reader's measures.
pub fn readers_symbol(unit: Unit, measures: Measures) -> &'static str {
    in_measures(unit, measures).1
}

/// The factor and the symbol that bring `unit` into the reader's measures.
fn in_measures(unit: Unit, measures: Measures) -> (f64, &'static str) {
    match (measures, unit) {
        (Measures::Us, Unit::Litre) => (1.0 / LITRES_PER_CUBIC_FOOT, "cu ft"),
        (Measures::Us, Unit::Kg) => (1.0 / KG_PER_POUND, "lb"),
        (Measures::Us, Unit::Gram) => (1.0 / 28.349_523_125, "oz"),
        (Measures::Us, Unit::Cm) => (1.0 / 2.54, "in"),
        (Measures::Us, Unit::Mm) => (1.0 / 25.4, "in"),
        (Measures::Us, Unit::Metre) => (1.0 / 0.3048, "ft"),
        (Measures::Us, Unit::SquareMetre) => (1.0 / 0.092_903_04, "sq ft"),
        (Measures::Us, Unit::KgPerHa) => (1.0 / KG_PER_HA_IN_LB_PER_ACRE, "lb/acre"),
        (Measures::Us, Unit::TonnePerHa) => (TON_PER_ACRE_IN_T_PER_HA, "ton/acre"),
        (Measures::Us, Unit::GPerM2) => (LB_PER_1000_SQ_FT_IN_G_PER_M2 / 10.0, "lb/100 sq ft"),
        (Measures::Us, Unit::GPerM2OfLawn) => (LB_PER_1000_SQ_FT_IN_G_PER_M2, "lb/1000 sq ft"),
        _ => (1.0, unit.symbol()),
    }
}

fn digits_before_point(value: f64) -> i32 {
    if value.abs() < 1.0 {
        1
    } else {
        (value.abs().log10().floor() as i32).saturating_add(1).min(3)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{EXTREMES, measured_out};

    #[test]
    fn significant_digits_drop_what_nobody_measured() {
        let cases = [
            (0.0, 2, "0"),
            (4.0, 2, "4"),
            (3.146_59, 3, "3.15"),
            (1096.2, 3, "1100"),
            (0.012_34, 2, "0.012"),
            (99.96, 3, "100"),
            (-2.55, 2, "-2.5"),
        ];
        for (value, digits, text) in cases {
            assert_eq!(significant(value, digits), text, "{value} to {digits}");
        }
    }

    #[test]
    fn no_number_is_shown_as_what_no_gardener_reads() {
        let fine = |text: &str| {
            let odd = ["inf", "NaN", "-0", "−0", "e"].contains(&text);
            let begins =
                |sign| text.strip_prefix(sign).is_some_and(|t| t == "0" || t.starts_with("0 "));
            let odd = odd || text.contains("inf") || text.contains("NaN");
            assert!(!odd && !begins('-') && !begins('−') && text.len() < 200, "{text}");
        };
        for a in EXTREMES {
            for digits in [i32::MIN, -1, 0, 1, 2, 9, 40, i32::MAX] {
                fine(&significant(a, digits));
                fine(&significant(-a, digits));
            }
            for measures in [Measures::Metric, Measures::Us] {
                fine(&measured_out(a, measures));
                for (b, c, unit) in each_of() {
                    fine(&shown(&Band::new(a, b, c), unit, measures));
                    fine(&shown(&Band { low: a, likely: b, high: c }, unit, measures));
                }
                for unit in Unit::ALL {
                    fine(&significant(in_readers(a, unit, measures), 4));
                    fine(&significant(from_readers(a, unit, measures), 4));
                }
            }
        }
    }

    /// Two extremes and a unit of each kind.
    fn each_of() -> impl Iterator<Item = (f64, f64, Unit)> {
        let units = [Unit::Litre, Unit::Bags, Unit::None, Unit::TonnePerHa];
        let pairs = EXTREMES.into_iter().flat_map(|b| EXTREMES.map(|c| (b, c)));
        pairs.flat_map(move |(b, c)| units.map(|unit| (b, c, unit)))
    }

    #[test]
    fn what_is_too_small_or_too_large_to_be_measured_says_so() {
        assert_eq!(significant(-5e-324, 3), "0");
        assert_eq!(significant(f64::MAX, 2), "–");
        let litres =
            |low, likely, high| shown(&Band::new(low, likely, high), Unit::Litre, Measures::Metric);
        assert_eq!(litres(2.0, 4.0, f64::INFINITY), "4 (2––)\u{a0}L");
    }

    #[test]
    fn a_figure_says_the_same_gallons_as_the_recipe() {
        let (amount, recipe) = (Band::exactly(70.0), measured_out(70.0, Measures::Us));
        assert_eq!(shown(&amount, Unit::Litre, Measures::Us), "18\u{a0}gal");
        assert!(recipe.starts_with("18\u{a0}gal"), "{recipe}");
    }

    #[test]
    fn nitrogen_for_a_field_is_told_in_pounds_an_acre() {
        let nitrogen = Band::new(56.0, 112.0, 224.0);
        assert_eq!(shown(&nitrogen, Unit::KgPerHa, Measures::Us), "100 (50–200)\u{a0}lb/acre");
    }

    #[test]
    fn a_number_typed_in_the_readers_measures_comes_back_as_typed() {
        for measures in [Measures::Metric, Measures::Us] {
            for unit in [Unit::SquareMetre, Unit::Cm, Unit::Litre] {
                let stored = from_readers(12.5, unit, measures);
                assert!((in_readers(stored, unit, measures) - 12.5).abs() < 1e-12);
            }
        }
        let six_inches = from_readers(6.0, Unit::Cm, Measures::Us);
        assert!((six_inches - 15.24).abs() < 1e-12, "{six_inches}");
    }

    #[test]
    fn a_band_around_zero_can_be_read() {
        let around = Band::new(-11.2, 0.0081, 9.6);
        assert_eq!(shown(&around, Unit::Percent, Measures::Us), "0 (−11 to 9.6)\u{a0}%");
        let small = Band::new(0.0, 0.37, 1.7);
        assert_eq!(shown(&small, Unit::Percent, Measures::Us), "0.37 (0–1.7)\u{a0}%");
    }

    #[test]
    fn a_depth_is_told_to_half_an_inch() {
        let of = |cm| shown(&Band::exactly(cm), Unit::Cm, Measures::Us);
        assert_eq!((of(15.0), of(11.5)), ("6\u{a0}in".into(), "4.5\u{a0}in".into()));
    }

    #[test]
    fn much_is_told_in_the_larger_measure() {
        let of = |grams, measures| shown(&Band::exactly(grams), Unit::Gram, measures);
        assert_eq!(of(872_000.0, Measures::Metric), "872\u{a0}kg");
        assert_eq!(of(999.0, Measures::Metric), "999\u{a0}g");
        assert_eq!(of(18_900.0, Measures::Us), "42\u{a0}lb");
        assert_eq!(of(400.0, Measures::Us), "14\u{a0}oz");
        let little = Band::new(0.07, 0.16, 0.29);
        assert_eq!(shown(&little, Unit::Kg, Measures::Metric), "160 (70–290)\u{a0}g");
    }

    #[test]
    fn bags_and_money_are_not_rounded() {
        let of = |value, unit| shown(&Band::exactly(value), unit, Measures::Metric);
        assert_eq!(of(1.0, Unit::Bags), "1\u{a0}bag");
        assert_eq!(of(39.8, Unit::Money), "39.8");
        assert_eq!(of(1234.0, Unit::Bags), "1234\u{a0}bags");
    }

    #[test]
    fn a_band_shows_its_bounds_and_an_exact_value_does_not() {
        assert_eq!(
            shown(&Band::new(2.0, 4.0, 8.0), Unit::Litre, Measures::Metric),
            "4 (2–8)\u{a0}L"
        );
        assert_eq!(shown(&Band::exactly(5.0), Unit::Percent, Measures::Us), "5\u{a0}%");
    }
}
