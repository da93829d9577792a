//! Numbers as reports print them: points or commas, limits, ratings glued on.

use super::fold::{first_chars, fold, fold_char, is_letter, is_word, squash, words};
use super::languages::is_rating_abroad;
use super::units::unit_at;
use crate::soil::Amount;

/// The longest number, bytes: a laboratory prints a dozen digits, and a longer run of them is
/// none of its results.
const LONGEST: usize = 40;

/// Which mark stands before the decimals, decided once for a whole report.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Decimal {
    /// 1,450.5
    #[default]
    Point,
    /// 1.450,5
    Comma,
}

/// What the numbers of a report say about its decimal mark.
#[derive(Clone, Debug, Default)]
pub(super) struct Evidence {
    points: usize,
    commas: usize,
    /// The first number that could be either, for example `1,450`.
    either_comma: Option<String>,
    either_point: Option<String>,
}

impl Evidence {
    /// Looks at every number in a text.
    pub fn look_at(&mut self, text: &str) {
        let bytes = text.as_bytes();
        let mut i = 0;
        while i < bytes.len() {
            if !bytes[i].is_ascii_digit() {
                i += 1;
                continue;
            }
            let start = i;
            while i < bytes.len()
                && (bytes[i].is_ascii_digit()
                    || matches!(bytes[i], b'.' | b',')
                        && bytes.get(i + 1).is_some_and(u8::is_ascii_digit))
            {
                i += 1;
            }
            let joined = |b: u8| b.is_ascii_alphanumeric() || matches!(b, b':' | b'/' | b'_');
            let before = start.checked_sub(1).map(|b| bytes[b]);
            if !before.is_some_and(joined) && bytes.get(i) != Some(&b'/') {
                self.weigh(&text[start..i]);
            }
        }
    }

    fn weigh(&mut self, token: &str) {
        let commas = token.matches(',').count();
        let points = token.matches('.').count();
        match (commas, points) {
            (0, 0) => {}
            (1, 1..) | (1.., 1) if commas + points > 1 => {
                // The mark that comes last, and once, is the decimal mark.
                if token.rfind(',') > token.rfind('.') {
                    self.commas += usize::from(commas == 1);
                } else {
                    self.points += usize::from(points == 1);
                }
            }
            (1, 0) if could_be_thousands(token, ',') => {
                self.either_comma.get_or_insert_with(|| token.into());
            }
            (0, 1) if could_be_thousands(token, '.') => {
                self.either_point.get_or_insert_with(|| token.into());
            }
            (1, 0) => self.commas += 1,
            (0, 1) => self.points += 1,
            (_, 0) if could_be_thousands(token, ',') => self.points += 1,
            (0, _) if could_be_thousands(token, '.') => self.commas += 1,
            _ => {}
        }
    }

    /// The decision, and what to tell the reader when there was a choice.
    pub fn decide(&self) -> (Decimal, Option<String>) {
        let decimal = if self.commas > self.points { Decimal::Comma } else { Decimal::Point };
        let doubtful = match decimal {
            // A lone 1.450 may be thousands too.
            Decimal::Point => self
                .either_comma
                .as_ref()
                .or(self.either_point.as_ref().filter(|_| self.points == 0 || self.commas > 0)),
            Decimal::Comma => self.either_point.as_ref().or(self.either_comma.as_ref()),
        };
        let mixed = self.commas > 0 && self.points > 0;
        let read = |text: &str| number(text, decimal).map_or(String::new(), |(v, _)| v.to_string());
        let mark = match decimal {
            Decimal::Point => "point",
            Decimal::Comma => "comma",
        };
        let mut note = match (decimal, doubtful) {
            (Decimal::Point, None) if !mixed => return (decimal, None),
            (Decimal::Comma, None) => "Decimal commas were found, as in 3,4.".to_string(),
            (Decimal::Point, None) => String::new(),
            (_, Some(text)) => {
                let why = match (decimal, self.points) {
                    (Decimal::Comma, _) => "the report uses decimal commas",
                    (_, 0) => "no other number in the report shows a decimal comma",
                    _ => "the report uses decimal points",
                };
                format!("{text} was read as {}, because {why}.", read(text))
            }
        };
        if mixed {
            note = format!(
                "Both decimal points and decimal commas were found; where a number could be read \
                 both ways, the decimal {mark} was taken. {note}"
            );
        }
        (decimal, Some(note.trim().to_string()))
    }
}

/// One to three digits, then groups of exactly three: 1,450 or 2.000.000.
fn could_be_thousands(token: &str, mark: char) -> bool {
    let mut groups = token.split(mark);
    let first = groups.next().unwrap_or("");
    (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && groups.all(|g| g.len() == 3 && g.bytes().all(|b| b.is_ascii_digit()))
}

/// The number a text begins with, and the bytes it takes; more than [`LONGEST`] is no number.
pub(super) fn number(text: &str, decimal: Decimal) -> Option<(f64, usize)> {
    if let Some(value) = plain_number(text, decimal) {
        return Some((value, text.len()));
    }
    let mut chars = text.char_indices().peekable();
    let mut sign = 1.0;
    let mut digits = String::new();
    let mut end = 0;
    if let Some(&(_, c)) = chars.peek()
        && matches!(fold_char(c), '-' | '+')
    {
        sign = if fold_char(c) == '-' { -1.0 } else { 1.0 };
        chars.next();
    }
    for (at, c) in chars {
        let next = text[at + c.len_utf8()..].bytes().take(4);
        let next_digits = next.take_while(u8::is_ascii_digit).count();
        let group = next_digits == 3 && !digits.is_empty() && !digits.contains(['.', ',']);
        match c {
            '0'..='9' => digits.push(c),
            '.' | ',' if next_digits > 0 => digits.push(c),
            '\u{a0}' | '\u{202f}' | '\u{2009}' | '\'' | '’' if group => {}
            _ => break,
        }
        end = at + c.len_utf8();
        if end > LONGEST {
            return None;
        }
    }
    if !digits.starts_with(|c: char| c.is_ascii_digit() || c == '.') || digits == "." {
        return None;
    }
    let plain = plain_digits(&digits, decimal)?;
    let (exponent, more) = exponent(&text[end..]);
    let exponent = exponent.trim_start_matches(['e', 'E', '+']).parse().unwrap_or(0);
    let value = value_of(&plain, exponent);
    value.is_finite().then_some((sign * value, end + more))
}

/// A text that is digits with at most one decimal mark and nothing else, as most cells of a
/// table are: read without a copy.
fn plain_number(text: &str, decimal: Decimal) -> Option<f64> {
    let mark = if decimal == Decimal::Comma { b',' } else { b'.' };
    let mut marks = 0;
    if text.len() > LONGEST {
        return None;
    }
    for byte in text.bytes() {
        match byte {
            b'0'..=b'9' => {}
            _ if byte == mark => marks += 1,
            _ => return None,
        }
    }
    let digit = |b: Option<&u8>| b.is_some_and(u8::is_ascii_digit);
    let whole = marks < 2 && digit(text.as_bytes().first()) && digit(text.as_bytes().last());
    whole.then(|| value_of(text, 0)).filter(|v| v.is_finite())
}

/// The value of plain digits with at most one point, times ten to the power
/// of `exponent`. Exact to the last bit up to 15 digits, which is more than a
/// laboratory prints. The standard library's exact reading of any number
/// would add 12 kB to the page.
fn value_of(plain: &str, exponent: i32) -> f64 {
    let (mut whole, mut power) = (0u64, exponent);
    let mut decimals = false;
    for byte in plain.bytes() {
        match byte {
            b'0'..=b'9' if whole < 100_000_000_000_000_000 => {
                whole = whole * 10 + u64::from(byte - b'0');
                power -= i32::from(decimals);
            }
            b'0'..=b'9' => power += i32::from(!decimals),
            _ => decimals = true,
        }
    }
    let whole = whole as f64;
    if power < 0 { whole / 10f64.powi(-power) } else { whole * 10f64.powi(power) }
}

/// The digits with thousands marks off and a point for decimals.
fn plain_digits(digits: &str, decimal: Decimal) -> Option<String> {
    let commas = digits.matches(',').count();
    let points = digits.matches('.').count();
    let without = |mark: char| digits.replace(mark, "");
    let grouped = |mark: char, rest: char| {
        let whole = digits.split(rest).next().unwrap_or("");
        could_be_thousands(whole, mark)
    };
    Some(match (commas, points) {
        (0, 0) => digits.into(),
        (0, 1) => match decimal {
            Decimal::Comma if could_be_thousands(digits, '.') => without('.'),
            _ => digits.into(),
        },
        (1, 0) => match decimal {
            Decimal::Point if could_be_thousands(digits, ',') => without(','),
            _ => digits.replace(',', "."),
        },
        (_, 0) if could_be_thousands(digits, ',') => without(','),
        (0, _) if could_be_thousands(digits, '.') => without('.'),
        (_, 1) if digits.rfind('.') > digits.rfind(',') && grouped(',', '.') => without(','),
        (1, _) if digits.rfind(',') > digits.rfind('.') && grouped('.', ',') => {
            without('.').replace(',', ".")
        }
        _ => return None,
    })
}

fn exponent(rest: &str) -> (&str, usize) {
    let mut bytes = rest.bytes();
    if !matches!(bytes.next(), Some(b'e' | b'E')) {
        return ("", 0);
    }
    let signed = usize::from(matches!(bytes.next(), Some(b'+' | b'-')));
    let digits = rest.bytes().skip(1 + signed).take(4);
    let count = digits.take_while(u8::is_ascii_digit).count();
    if count == 0 || count > 3 {
        ("", 0)
    } else {
        (&rest[..1 + signed + count], 1 + signed + count)
    }
}

/// A single result as a person types it: `18`, `3,4`, `<2`. `None` when it is
/// anything else, or has something after the number.
pub fn parse_amount(typed: &str) -> Option<Amount> {
    let mut evidence = Evidence::default();
    evidence.look_at(typed);
    match said(typed, evidence.decide().0) {
        Said::Amount(amount, end) if typed[end..].trim().is_empty() => Some(amount),
        _ => None,
    }
}

/// What a result cell says.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Said {
    /// A number or a limit; what follows it begins at this byte.
    Amount(Amount, usize),
    /// Not detected, and no limit given.
    NotDetected,
    /// Two numbers: a range, not a result.
    Range,
    /// Not measured.
    Missing,
    /// Words.
    Text,
}

/// What laboratories print for "not measured", squashed.
const MISSING: &str = "na nt nottested notrun notapplicable notavailable null nan missing nr \
                       notreported nichtbestimmt nondetermine nodeterminado \
                       nichtuntersucht nichtanalysiert nonanalyse nonmesure nondemande nosolicitado \
                       noanalizado naoanalisado naodeterminado naosolicitado nondeterminato nonrichiesto \
                       nietbepaald nietgemeten nieoznaczono niebadano nestanoveno nestanovene \
                       ikkeanalysert ikkeanalyseret ejanalyserad nemvizsgalt nedeterminat неопределяли \
                       неопределялось невизначали";

/// What laboratories print for "not detected", folded.
const NOT_DETECTED: &str = "not detected|n.d.|nd|n.n.|nicht nachweisbar|non detecte|\
                            no detectado|bdl|below detection limit|below detection|\
                            nao detectado|nao detetado|non rilevato|non rilevabile|niet aantoonbaar|\
                            nie wykryto|ej pavisad|ikke pavist|не обнаружено|не виявлено|不検出|불검출";

/// Names of the limit of detection or of reporting.
const LIMITS: [&str; 6] = ["dl", "lod", "mdl", "loq", "rl", "mrl"];

/// Reads a result.
pub(super) fn said(text: &str, decimal: Decimal) -> Said {
    if let Some(value) = plain_number(text, decimal) {
        return Said::Amount(Amount::Exactly(value), text.len());
    }
    let squashed = squash(text);
    if squashed.is_empty() && !text.contains(['<', '>'])
        || MISSING.split(' ').any(|word| word == squashed)
    {
        return Said::Missing;
    }
    let words_end = not_detected(text);
    let start = words_end.unwrap_or(text.len() - text.trim_start().len());
    let rest =
        text[start..].trim_start_matches(|c: char| c.is_whitespace() || matches!(c, '(' | ','));
    let (bound, rest) = bound(rest);
    let inner = rest.trim_start();
    let Some((value, length)) = number(inner, decimal) else {
        let limit = squash(inner);
        let below = bound == Some('<') && LIMITS.iter().any(|n| limit.starts_with(n));
        // "ND: not detectable" explains the letters.
        let words = inner.split(|c| !is_letter(c)).filter(|w| w.len() > 2).count();
        let none = words_end.is_some() && words < 2;
        return if none || below { Said::NotDetected } else { Said::Text };
    };
    let (value, length) = with_blank_thousands(inner, value, length, decimal);
    let after = text.len() - inner.len() + length;
    if bound.is_none() && goes_on_as_range(&text[after..], decimal) {
        return Said::Range;
    }
    if is_no_amount(inner, length) || runs_into_a_word(&text[after..]) {
        return Said::Text;
    }
    match bound {
        Some('<') => Said::Amount(Amount::Below(value), after),
        Some(_) => Said::Amount(Amount::Above(value), after),
        None if words_end.is_some() => Said::NotDetected,
        None => Said::Amount(Amount::Exactly(value), after),
    }
}

/// Where the words for "not detected" end that a text begins with.
fn not_detected(text: &str) -> Option<usize> {
    let folded = fold(text);
    let mut after = NOT_DETECTED.split('|').filter_map(|w| folded.trim_start().strip_prefix(w));
    let rest = after.find(|rest| !rest.starts_with(is_word))?;
    // Folding keeps the count of characters, not of bytes.
    Some(first_chars(text, folded.chars().count() - rest.chars().count()).len())
}

/// Whether a text, in brackets or not, is two numbers from which to which.
pub(super) fn is_range(text: &str, decimal: Decimal) -> bool {
    said(text.trim_matches(['(', ')', '[', ']']), decimal) == Said::Range
}

/// `1 450 ppm` and `9 850,00 mg/kg`: a blank parts thousands when the unit says that the number
/// ends there.
fn with_blank_thousands(text: &str, value: f64, length: usize, decimal: Decimal) -> (f64, usize) {
    let digits = |t: &str| t.bytes().all(|b| b.is_ascii_digit());
    let Some(behind) = text[length..].strip_prefix(' ') else { return (value, length) };
    let Some(group) = behind.get(..3).filter(|group| digits(group)) else { return (value, length) };
    let (more, end) = number(behind, decimal).unwrap_or((0.0, 0));
    let rest = &behind[end..];
    let whole = end == 3 || behind[3..].starts_with(['.', ',']) && more < 1000.0;
    let joined = length <= 3 && value >= 1.0 && digits(&text[..length]) && !group.is_empty();
    let unit = unit_at(&words(rest.get(..40).unwrap_or(rest)), 0).is_some();
    if joined && whole && unit {
        (value * 1000.0 + more, length + 1 + end)
    } else {
        (value, length)
    }
}

/// Words for `<` and `>`.
const BOUNDS: &[(&str, char)] = &[
    ("less than", '<'),
    ("below", '<'),
    ("weniger als", '<'),
    ("unter", '<'),
    ("moins de", '<'),
    ("menos de", '<'),
    ("more than", '>'),
    ("above", '>'),
    ("mehr als", '>'),
    ("plus de", '>'),
    ("mais de", '>'),
    ("inferior a", '<'),
    ("menor que", '<'),
    ("inferiore a", '<'),
    ("minore di", '<'),
    ("meno di", '<'),
    ("minder dan", '<'),
    ("kleiner als", '<'),
    ("mindre end", '<'),
    ("менее", '<'),
    ("менше", '<'),
    ("acima de", '>'),
    ("abaixo de", '<'),
    ("au-dela de", '>'),
    ("au-dessus de", '>'),
    ("au-dessous de", '<'),
    ("por encima de", '>'),
    ("por debajo de", '<'),
    ("superior a", '>'),
    ("mayor que", '>'),
    ("maior que", '>'),
    ("superiore a", '>'),
    ("maggiore di", '>'),
    ("meer dan", '>'),
    ("mere end", '>'),
    ("более", '>'),
    ("більше", '>'),
];

/// Whether a text begins with words for `<` or `>`.
pub(super) fn bound_in_words(text: &str) -> bool {
    !text.starts_with(['<', '>']) && bound(text).0.is_some()
}

/// `<` or `>` before a number, and what follows it.
fn bound(text: &str) -> (Option<char>, &str) {
    let folded_first = text.chars().next().map(fold_char);
    if let Some(mark @ ('<' | '>')) = folded_first {
        let rest = text.trim_start_matches(|c| matches!(fold_char(c), '<' | '>' | '='));
        return (Some(mark), rest);
    }
    for &(words, mark) in BOUNDS {
        if text.get(..words.len()).is_some_and(|t| t.eq_ignore_ascii_case(words)) {
            return (Some(mark), &text[words.len()..]);
        }
    }
    (None, text)
}

/// ` - 100`, `–100`, ` to 100`, ` bis 100` after a number.
fn goes_on_as_range(rest: &str, decimal: Decimal) -> bool {
    let rest = rest.trim_start();
    let after = match rest.chars().next().map(fold_char) {
        Some('-' | '~' | '～') => Some(&rest[rest.chars().next().map_or(0, char::len_utf8)..]),
        _ => {
            ["to ", "bis ", "à ", "a ", "até ", "hasta "].iter().find_map(|w| rest.strip_prefix(w))
        }
    };
    after.is_some_and(|a| {
        let a = a.trim_start();
        a.starts_with(|c: char| c.is_ascii_digit()) && number(a, decimal).is_some()
    })
}

/// `96hrminC`: a word begins where the number ends, and it is no unit and no rating.
fn runs_into_a_word(rest: &str) -> bool {
    let word: String = rest.chars().take_while(|c| is_word(*c)).collect();
    word.starts_with(is_letter)
        && !is_rating(&word)
        && unit_at(&words(first_chars(rest, 40)), 0).is_none()
}

/// `12/28/2017`, `3.4.24`
pub(super) fn is_date(text: &str) -> bool {
    let part = |p: &str| (1..5).contains(&p.len()) && p.bytes().all(|b| b.is_ascii_digit());
    let parts = || text.split(['/', '.', '-']);
    parts().count() == 3 && parts().all(part)
}

/// A number that is part of a date, a ratio, or a strength such as `0.01 M`.
fn is_no_amount(text: &str, length: usize) -> bool {
    let rest = &text[length..];
    let mut after = rest.chars();
    let (first, second) = (after.next(), after.next());
    // The 10 of "E.C. x 10^3" is part of a unit.
    if matches!(first, Some('^' | '⁰' | '¹' | '²' | '³' | '⁴'..='⁹')) {
        return true;
    }
    if matches!(first, Some(':' | '/')) && second.is_some_and(|c| c.is_ascii_digit()) {
        return true;
    }
    let strength = rest.trim_start();
    ["M ", "N ", "mol/L", "mol "].iter().any(|s| {
        strength.strip_prefix(s).is_some_and(|salt| {
            let salt = squash(salt);
            ["cacl", "calciumchl", "kcl", "nh4", "potassiumchl", "ammonium", "nahco"]
                .iter()
                .any(|s| salt.starts_with(s))
        })
    })
}

/// Ratings in letters.
const LETTERS: &str = "vl l ml m mh o h vh eh e def suff lr mr hr opt med exc ex none vhigh vlow";

/// Words that a rating begins with.
const RATINGS: &str = "low medium high optimum optimal sufficient deficient adequate excess \
                       excessive normal good fair poor below above very slightly moderately \
                       strongly acid acidic alkaline neutral ok satisfactory marginal trace \
                       extremely ideal toxic too";

/// Whether a number as it stands is a year of this century or the last.
pub(super) fn is_year(text: &str) -> bool {
    text.len() == 4 && (text.starts_with("19") || text.starts_with("20"))
}

/// Whether a text is a laboratory's rating: `L`, `VH`, `Optimum`, `2-`.
pub(super) fn is_rating(text: &str) -> bool {
    let plain = squash(text);
    if plain.is_empty() || text.len() > 60 {
        return false;
    }
    // 2- and 2+ are halves of an index step.
    let stepped = text
        .trim()
        .strip_suffix(['-', '+', '−'])
        .is_some_and(|t| (1..=2).contains(&t.len()) && t.bytes().all(|b| b.is_ascii_digit()));
    if stepped || LETTERS.split(' ').any(|letters| letters == plain) {
        return true;
    }
    let folded = fold(text);
    let first = folded.trim_start().trim_start_matches('(').split(|c| !is_letter(c)).next();
    RATINGS.split(' ').any(|word| Some(word) == first) || is_rating_abroad(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn decided(numbers: &[&str]) -> (Decimal, Option<String>) {
        let mut evidence = Evidence::default();
        for text in numbers {
            evidence.look_at(text);
        }
        evidence.decide()
    }

    #[test]
    fn the_decimal_mark_is_decided_by_all_the_numbers() {
        assert_eq!(decided(&["6.2", "18", "1450"]), (Decimal::Point, None));
        assert_eq!(decided(&["5,9", "12", "3,1"]).0, Decimal::Comma);
        assert_eq!(decided(&["2,3", "2.000"]).0, Decimal::Comma);
        assert!(decided(&["2,3", "2.000"]).1.unwrap().contains("2.000 was read as 2000"));
        assert_eq!(decided(&["1,450"]).0, Decimal::Point);
        assert!(decided(&["1,450"]).1.unwrap().contains("1,450 was read as 1450"));
        assert!(decided(&["1,450", "6.2"]).1.unwrap().contains("decimal points"));
        assert_eq!(decided(&["3/14/2022", "1:2.5", "P2.5"]), (Decimal::Point, None));
    }

    #[test]
    fn numbers_as_printed() {
        use Decimal::{Comma, Point};
        let cases = [
            ("1,450", Point, Some((1450.0, 5))),
            ("1,450", Comma, Some((1.45, 5))),
            ("3,4 %", Point, Some((3.4, 3))),
            ("2.000", Comma, Some((2000.0, 5))),
            ("2.000", Point, Some((2.0, 5))),
            ("1.450,5", Point, Some((1450.5, 7))),
            ("1,450.5", Comma, Some((1450.5, 7))),
            ("1\u{202f}450", Point, Some((1450.0, 7))),
            ("1.2e3", Point, Some((1200.0, 5))),
            ("18E", Point, Some((18.0, 2))),
            (".5", Point, Some((0.5, 2))),
            ("−4", Point, Some((-4.0, 4))),
            ("abc", Point, None),
            ("1.2.3", Point, None),
        ];
        for (text, decimal, expected) in cases {
            assert_eq!(number(text, decimal), expected, "{text} {decimal:?}");
        }
    }

    #[test]
    fn a_run_of_digits_that_nobody_prints_is_no_number() {
        let run = |digits: usize| "7".repeat(digits);
        assert!(number(&run(LONGEST), Decimal::Point).is_some());
        for text in [run(LONGEST + 1), format!("{} ppm", run(300_000)), "7,7".repeat(50)] {
            assert_eq!(number(&text, Decimal::Point), None);
            assert_eq!(said(&text, Decimal::Point), Said::Text);
        }
    }

    #[test]
    fn results_as_printed() {
        let cases = [
            ("< 0.2", Said::Amount(Amount::Below(0.2), 5)),
            ("≤0.2", Said::Amount(Amount::Below(0.2), 6)),
            ("ND <5", Said::Amount(Amount::Below(5.0), 5)),
            (">300", Said::Amount(Amount::Above(300.0), 4)),
            ("18L", Said::Amount(Amount::Exactly(18.0), 2)),
            ("2-", Said::Amount(Amount::Exactly(2.0), 1)),
            ("ND (u)", Said::NotDetected),
            ("<LOD", Said::NotDetected),
            ("BDL", Said::NotDetected),
            ("50-100", Said::Range),
            ("2.000 bis 150.000", Said::Range),
            ("20 – 40", Said::Range),
            ("n/a", Said::Missing),
            ("N.A.", Said::Missing),
            ("–", Said::Missing),
            ("", Said::Missing),
            ("5/14/2021", Said::Text),
            ("1:1", Said::Text),
            ("0.01 M CaCl2", Said::Text),
            ("VH", Said::Text),
        ];
        for (text, expected) in cases {
            assert_eq!(said(text, Decimal::Point), expected, "{text}");
        }
    }
}
