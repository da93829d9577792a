//! The decimal mark of a country.

/// Puts the mark in place of the point in each decimal number. What only looks
/// like one stays: more than one point, and a number that letters touch.
pub(crate) fn marked(text: &str, mark: char) -> String {
    let signs: Vec<char> = text.chars().collect();
    let digit =
        |at: Option<usize>| at.and_then(|at| signs.get(at)).is_some_and(char::is_ascii_digit);
    let mut out = String::with_capacity(text.len());
    for (at, &sign) in signs.iter().enumerate() {
        let decimal =
            sign == '.' && digit(at.checked_sub(1)) && digit(Some(at + 1)) && alone(&signs, at);
        out.push(if decimal { mark } else { sign });
    }
    out
}

/// Whether the point is the only one of its number, and no letter touches it.
fn alone(signs: &[char], point: usize) -> bool {
    let part = |sign: &&char| sign.is_ascii_digit() || **sign == '.';
    let before: Vec<&char> = signs[..point].iter().rev().take_while(part).collect();
    let after: Vec<&char> = signs[point + 1..].iter().take_while(part).collect();
    let points = before.iter().chain(&after).filter(|sign| ***sign == '.').count();
    // A full stop may end the sentence right after the number.
    let last_is_stop = usize::from(after.last() == Some(&&'.'));
    let letter = |at: Option<usize>| {
        at.and_then(|at| signs.get(at))
            .is_some_and(|sign| sign.is_ascii_alphabetic() || *sign == '/')
    };
    points == last_is_stop && !letter(point.checked_sub(before.len() + 1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_decimal_points_become_commas() {
        let comma = |text| marked(text, ',');
        assert_eq!(comma("pH 6.4, of 0.05–1.5 L."), "pH 6,4, of 0,05–1,5 L.");
        assert_eq!(comma("It is 6.5."), "It is 6,5.");
        assert_eq!(comma("version 1.2.3, v2.1, 10 cm. 5 L"), "version 1.2.3, v2.1, 10 cm. 5 L");
        assert_eq!(comma("https://a.org/10.1016/x"), "https://a.org/10.1016/x");
        assert_eq!(comma("2.0–1.5kg"), "2,0–1,5kg");
    }
}
