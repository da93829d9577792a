//! Twelve numbers, one for each month, as a person types or pastes them.

use crate::quantity::{Measures, Unit, from_readers, in_readers, significant};
use crate::report::parse_amount;
use crate::soil::Amount;

/// Reads twelve numbers, January to December, in the reader's measures of
/// `unit` (millimetres or degrees Celsius): parted by spaces, lines, tabs,
/// semicolons or commas. An empty text is no answer.
///
/// # Errors
/// What is wrong, and what to do, in a sentence.
pub fn twelve(text: &str, unit: Unit, measures: Measures) -> Result<Option<[f64; 12]>, String> {
    let spaced = |c: char| c.is_whitespace() || c == ';';
    let mut parts: Vec<&str> = text.split(spaced).map(|p| p.trim_matches(',')).collect();
    parts.retain(|part| !part.is_empty());
    if parts.is_empty() {
        return Ok(None);
    }
    // “45,38,50” has no other mark between its numbers; “4,5 3,8” has.
    if parts.len() == 1 {
        parts = parts[0].split(',').collect();
    }
    if parts.len() != 12 {
        return Err(format!(
            "That makes {}. Give twelve numbers, January to December, with spaces between them.",
            if parts.len() == 1 { "one number".into() } else { format!("{} numbers", parts.len()) },
        ));
    }
    let mut all = [0.0; 12];
    for (number, part) in all.iter_mut().zip(parts) {
        let (sign, digits) = match part.strip_prefix(['-', '−']) {
            Some(digits) => (-1.0, digits),
            None => (1.0, part),
        };
        match parse_amount(digits) {
            Some(Amount::Exactly(value)) if value >= 0.0 => {
                *number = back(sign * value, unit, measures);
            }
            _ => return Err(format!("“{part}” is not a number. Write it like 45 or 4.5.")),
        }
    }
    Ok(Some(all))
}

/// Twelve numbers as the reader writes them.
pub fn written(all: &[f64; 12], unit: Unit, measures: Measures) -> String {
    let texts: Vec<String> = all
        .iter()
        .map(|value| {
            let value = match (unit, measures) {
                (Unit::Celsius, Measures::Us) => value * 1.8 + 32.0,
                _ => in_readers(*value, unit, measures),
            };
            significant((value * 1e6).round() / 1e6, 4)
        })
        .collect();
    texts.join(" ")
}

fn back(typed: f64, unit: Unit, measures: Measures) -> f64 {
    match (unit, measures) {
        (Unit::Celsius, Measures::Us) => (typed - 32.0) / 1.8,
        _ => from_readers(typed, unit, measures),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn twelve_numbers_are_read_however_they_are_parted() {
        let wanted: Vec<f64> = (1..=12).map(f64::from).collect();
        for text in [
            "1 2 3 4 5 6 7 8 9 10 11 12",
            "1,2,3,4,5,6,7,8,9,10,11,12",
            "1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12",
            "1\t2\t3\t4\t5\t6\n7;8;9;10;11;12\n",
        ] {
            let read = twelve(text, Unit::Mm, Measures::Metric).unwrap().unwrap();
            assert_eq!(read.to_vec(), wanted, "{text}");
        }
        let signed = "-1,5 −2 0 4,25 5 6 7 8 9 10 11 12";
        let read = twelve(signed, Unit::Celsius, Measures::Metric).unwrap().unwrap();
        assert_eq!(read[..4], [-1.5, -2.0, 0.0, 4.25]);
    }

    #[test]
    fn what_is_no_twelve_numbers_is_told_and_nothing_is_no_answer() {
        let read = |text| twelve(text, Unit::Mm, Measures::Metric);
        assert_eq!(read("  \n"), Ok(None));
        assert!(read("1 2 3").unwrap_err().contains("3 numbers"));
        assert!(read("45").unwrap_err().contains("one number"));
        assert!(read("1 2 3 4 5 6 7 8 9 10 11 much").unwrap_err().contains("“much”"));
        assert!(read("1 2 3 4 5 6 7 8 9 10 11 <12").unwrap_err().contains("“<12”"));
        assert!(read("1 2 3 4 5 6 7 8 9 10 11 --12").is_err());
    }

    #[test]
    fn us_measures_go_there_and_back() {
        let text = "1 1.5 2 2.5 3 3.5 4 4.5 5 5.5 6 6.5";
        let inches = twelve(text, Unit::Mm, Measures::Us).unwrap().unwrap();
        assert!((inches[1] - 38.1).abs() < 1e-9);
        assert_eq!(written(&inches, Unit::Mm, Measures::Us), text);
        let text = "14 32 50 50 50 50 50 50 50 50 50 50";
        let degrees = twelve(text, Unit::Celsius, Measures::Us).unwrap().unwrap();
        assert!((degrees[0] + 10.0).abs() < 1e-9 && degrees[1].abs() < 1e-9);
        assert_eq!(written(&degrees, Unit::Celsius, Measures::Us), text);
    }
}
