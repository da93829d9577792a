//! What a report says about all its results: methods, units, depth, texture
//! and the sample's name, in lines that hold no result.

use super::Cell;
use super::fold::{clauses, fold, fold_char, is_letter, is_word, sentences, squash, words};
use super::label::Label;
use super::names::{Meaning, Word, meaning_at};
use super::number::{Decimal, is_date, number};
use super::textures::texture;
use super::units::Printed;
use crate::quantity::Unit;
use crate::soil::{Method, MethodKind, Property, SoilGroup, Texture};

/// Beginnings of words for what else is tested, folded.
const OTHERS: [&str; 23] = [
    "water",
    "compost",
    "manure",
    "leaf",
    "leaves",
    "petiole",
    "irrigation",
    "rain",
    "agua",
    "eau",
    "wasser",
    "kompost",
    "vatten",
    "woda",
    "acqua",
    "mulch",
    "foliar",
    "foliair",
    "fogliar",
    "blattanaly",
    "bladanaly",
    "листов",
    "διαφυλλ",
];

/// Whether what stands before a colon is not of a soil: `Well water: pH 7.8`.
pub(super) fn is_of_other_matter(name: &str) -> bool {
    let folded = fold(name);
    let mut words = folded.split(|c| !is_word(c));
    words.any(|word| OTHERS.iter().any(|other| word.starts_with(other)))
}

/// Why a depth stays open.
pub(super) const NO_DEPTH_UNIT: &str = "a depth without in or cm; answer the depth question";

/// Why a texture stays open.
pub(super) const NO_TEXTURE: &str =
    "not one of the twelve texture classes, such as loam or sandy loam";

/// A method named for the whole report, or for some properties of it.
#[derive(Clone, Debug)]
pub(super) struct Statement {
    pub method: Method,
    /// Empty: all it is known for.
    pub only: Vec<Property>,
    pub line: u32,
}

/// The methods a line names. `P by Olsen; K by ammonium acetate` gives each its own.
pub(super) fn methods(text: &str, line: u32) -> Vec<Statement> {
    let mut found: Vec<Statement> = Vec::new();
    let mut only: Vec<Property> = Vec::new();
    for part in sentences(text).into_iter().flat_map(clauses) {
        let label = Label::of(part);
        only.extend(label.properties.iter().map(|p| p.0));
        if label.methods.is_empty() {
            continue;
        }
        let named = std::mem::take(&mut only);
        let spelled = |m: &&Method| {
            // M3 or MM alone may be a bed's name; a full word, or "extract", is not.
            let squashed = squash(part);
            let about = ["extract", "exchang", "method", "analys", "buffer", "test", "nh4", "hco3"];
            squashed.len() >= 4
                && m.label()
                    .split([' ', '-'])
                    .any(|w| w.len() >= 4 && squashed.contains(&squash(w)))
                || about.iter().any(|a| squashed.contains(a))
                || !named.is_empty()
                || m.kind() == MethodKind::Suspension
        };
        found.extend(label.methods.iter().filter(spelled).map(|&method| Statement {
            method,
            only: named.clone(),
            line,
        }));
    }
    found
}

/// The properties a method is known for, so that one named for a whole report
/// isn't spread to others.
/// Source: common practice, no source.
pub(super) fn covers(method: Method, property: Property) -> bool {
    use Property::{AmmoniumN, BufferPh, Ec, NitrateN, OrganicMatter, Ph, Phosphorus};
    match method {
        Method::Mehlich3Colorimetric => property == Phosphorus,
        Method::Kcl => matches!(property, NitrateN | AmmoniumN),
        Method::TotalAcid => {
            matches!(property, Property::Lead | Property::Arsenic | Property::Cadmium)
        }
        Method::SaturatedPaste => property == Ec,
        Method::CaCl2 => property == Ph,
        // The mix's own water is what its pH and its salts are read in, too.
        Method::SaturatedMedia => {
            matches!(property, Ph | Ec | NitrateN | AmmoniumN) || property.is_extracted()
        }
        _ => match method.kind() {
            MethodKind::Extractant => property.is_extracted() && method.extracts(property),
            MethodKind::Suspension => matches!(property, Ph | Ec),
            MethodKind::OrganicMatter => property == OrganicMatter,
            MethodKind::Buffer => property == BufferPh,
        },
    }
}

/// The one method that statements give a property; the narrowest wins, and
/// two of the same width give none.
pub(super) fn method_for(statements: &[Statement], property: Property) -> Option<&Statement> {
    let width = |s: &Statement| {
        if s.only.is_empty() {
            Property::ALL.iter().filter(|&&p| covers(s.method, p)).count()
        } else {
            0
        }
    };
    let fitting: Vec<&Statement> = statements
        .iter()
        .filter(|s| match s.only.as_slice() {
            [] => covers(s.method, property),
            // "Ca, Mg, Al (KCl)": said of a property by name, an extractant may take it.
            only => {
                let extracts = property.is_extracted()
                    && s.method.kind() == MethodKind::Extractant
                    && s.method.extracts(property);
                only.contains(&property) && (extracts || covers(s.method, property))
            }
        })
        .collect();
    let first = fitting.iter().copied().min_by_key(|s| width(s))?;
    let rival = fitting.iter().any(|s| s.method != first.method && width(s) == width(first));
    (!rival).then_some(first)
}

/// The unit a line gives to all nutrients, as `All results in ppm`.
pub(super) fn unit_for_all(text: &str) -> Option<Printed> {
    unit_of_clause(text)
        .or_else(|| text.split([';', ',', '.']).find_map(unit_of_clause))
        .or_else(|| unit_in_bracket(text))
}

/// Whether nutrients in general are printed in a unit.
fn is_of_nutrients(unit: Unit) -> bool {
    matches!(unit, Unit::MgPerKg | Unit::MgPerL | Unit::MgPer100g | Unit::LbPerAcre | Unit::KgPerHa)
}

/// `TRACE ELEMENTS (parts per million)`: a heading with its unit, whatever its words.
fn unit_in_bracket(heading: &str) -> Option<Printed> {
    let (ahead, rest) = heading.split_once('(')?;
    let (inner, _) = rest.split_once(')')?;
    let label = Label::of(ahead);
    let bare = label.properties.is_empty() && !label.has(Word::Advice) && label.words.len() < 3;
    let few = ahead.split_whitespace().count() < 4 && !ahead.contains(|c: char| c.is_ascii_digit());
    Label::of(inner).only_unit().filter(|u| is_of_nutrients(u.unit) && bare && few)
}

fn unit_of_clause(text: &str) -> Option<Printed> {
    let label = Label::of(text);
    let unit = label.unit?;
    let column = |w: &Word| matches!(w, Word::ResultColumn | Word::NameColumn);
    let nutrient =
        is_of_nutrients(unit.unit) || unit.unit == Unit::GPerKg && label.words.iter().any(column);
    let number = text.chars().any(|c| c.is_ascii_digit()) && label.methods.is_empty();
    // The "as" of "expressed as mg/kg" is no arsenic.
    let arsenic = |p: &(Property, _)| p.0 == Property::Arsenic;
    let named = label.properties.iter().all(arsenic) && label.unknown.len() <= 4;
    let about = label.words.iter().any(|w| {
        matches!(w, Word::Plain | Word::ResultColumn | Word::UnitColumn | Word::NameColumn)
    });
    let about = about || !label.methods.is_empty() && label.unknown.is_empty();
    (nutrient && named && about && !number && !label.has(Word::Advice)).then_some(unit)
}

/// A sampling depth, cm: `0-6 in`, `0–15 cm`, `6 inches`. `heading` may hold the unit.
/// The first number with a unit of its own is the depth: the 3 of
/// `Mehlich-3, depth 0-20 cm` is none.
pub(super) fn depth(text: &str, heading: &str, decimal: Decimal) -> Option<(f64, f64)> {
    let mut first = None;
    let mut before = b' ';
    for (at, byte) in text.bytes().enumerate() {
        if byte.is_ascii_digit() && !before.is_ascii_digit() && before != b'.' {
            first.get_or_insert(at);
            if let Some(found) = depth_at(&text[at..], "", decimal) {
                return Some(found);
            }
        }
        before = byte;
    }
    depth_at(&text[first?..], heading, decimal)
}

/// The depth that a text begins with.
pub(super) fn depth_at(text: &str, heading: &str, decimal: Decimal) -> Option<(f64, f64)> {
    let (first, length) = number(text, decimal)?;
    let mut rest = text[length..].trim_start();
    let mut last = None;
    let plain =
        rest.trim_start_matches(|c: char| matches!(c, '"' | '″' | '”') || c.is_whitespace());
    // "0 in - 6 in" and "0-6".
    let after_unit = plain
        .strip_prefix("in ")
        .or_else(|| plain.strip_prefix("cm "))
        .unwrap_or(plain)
        .trim_start();
    let joined = match after_unit.chars().next().map(fold_char) {
        Some('-') => after_unit.chars().next().map(|c| &after_unit[c.len_utf8()..]),
        _ => after_unit.strip_prefix("to "),
    };
    if let Some(second) = joined.map(str::trim_start)
        && let Some((value, length)) = number(second, decimal)
    {
        last = Some(value);
        rest = second[length..].trim_start();
    }
    let cm = cm_per(rest).or_else(|| heading_unit(heading))?;
    let (top, bottom) = last.map_or((0.0, first), |l| (first, l));
    (bottom > top && top >= 0.0 && bottom * cm <= 300.0).then_some((top * cm, bottom * cm))
}

fn cm_per(text: &str) -> Option<f64> {
    let text = text.trim_start();
    if text.starts_with(['"', '″', '”']) {
        return Some(2.54);
    }
    let word: String = text.chars().map(fold_char).take_while(|c| is_letter(*c)).take(12).collect();
    match word.as_str() {
        "in" | "inch" | "inches" | "ins" => Some(2.54),
        "cm" | "см" | "εκ" | "centimetre" | "centimeter" | "centimetres" | "centimeters" => {
            Some(1.0)
        }
        "mm" => Some(0.1),
        _ => None,
    }
}

fn heading_unit(heading: &str) -> Option<f64> {
    heading.split(|c: char| !is_letter(c)).find_map(cm_per)
}

/// `silt loam` in a cell of its own, and `Soil: silt loam`. A class of one word, as clay or sand,
/// may be anything there.
pub(super) fn texture_alone(filled: &[&str]) -> Option<Texture> {
    let [only] = filled else { return None };
    let soil =
        |name: &str| ["soil", "boden", "suelo", "solo", "sol"].contains(&squash(name).as_str());
    match only.split_once(':') {
        Some((name, class)) => texture(class).filter(|_| soil(name)),
        None => {
            let class = only.split('(').next().unwrap_or(only).trim();
            let two_words = |t: &Texture| t.label().contains(' ');
            let is = |t: &Texture| class.eq_ignore_ascii_case(t.label());
            Texture::ALL.into_iter().find(|t| two_words(t) && is(t))
        }
    }
}

/// What follows the word for texture in a text.
pub(super) fn behind_texture(text: &str) -> String {
    let words = words(text);
    let texture = |i: &usize| match meaning_at(&words, *i) {
        Some((Meaning::Word(Word::Texture), length)) => Some(words[i + length - 1].end),
        _ => None,
    };
    let end = (0..words.len()).find_map(|i| texture(&i)).unwrap_or(text.len());
    text[end..].trim().to_string()
}

/// The group of soils that a line names: `Region: Piedmont`, `Peat soil`, `Peat`.
fn soil_group(whole: &str) -> Option<SoilGroup> {
    let said = whole.split_once(':').map_or(whole, |(name, said)| {
        let of_soil = ["soil", "soiltype", "soilgroup", "region", "soilregion", "area", "province"];
        if of_soil.contains(&squash(name).as_str()) { said } else { "" }
    });
    let said = squash(said);
    let said = said.strip_suffix("soils").or(said.strip_suffix("soil")).unwrap_or(&said);
    SoilGroup::ALL.into_iter().find(|group| squash(group.label()) == said)
}

/// The pH that a line says is aimed at: `Target pH 6.5`.
fn target_ph(whole: &str, decimal: Decimal) -> Option<f64> {
    let folded = fold(whole);
    let ahead = ["target ph", "ph target", "desired ph", "target soil ph"];
    let said = ahead.iter().find_map(|words| folded.strip_prefix(words))?;
    let said = said.trim_start_matches([':', '=', ' ']).trim_end();
    let (value, length) = number(said, decimal)?;
    (length == said.len() && (4.0..=8.0).contains(&value)).then_some(value)
}

/// `Soil Test Site A:`, `Probe 2`, `Muestra 3 –`: a line of its own that begins a sample with the
/// word for one and its letter or number.
fn begins_sample(filled: &[&str]) -> Option<AboutSample> {
    let [only] = filled else { return None };
    let line = only.trim_end_matches([':', ' ', '-', '–', '*', '#']);
    let line = line.trim_start_matches(['*', '#', ' ', '=', '-']);
    let words: Vec<&str> = line.split_whitespace().collect();
    let [ahead @ .., word, tag] = words.as_slice() else { return None };
    let short = tag.chars().count() <= 3 && tag.chars().all(is_word);
    let counted = tag.bytes().any(|b| b.is_ascii_digit()) || tag.len() == 1 && is_capital(tag);
    if words.len() > 5 || !short || !counted || word.ends_with(':') {
        return None;
    }
    let label = Label::of(word);
    let [Word::Sample(rank @ 0..4)] = label.words[..] else { return None };
    let titles = Label::of(&ahead.join(" "));
    let title = titles.properties.is_empty() && titles.unit.is_none() && titles.unknown.is_empty();
    let bare = label.properties.is_empty() && label.unknown.is_empty();
    (title && bare).then(|| AboutSample::Name(format!("{word} {tag}"), rank))
}

/// `Sample name Raised beds`: the words for the name and then the name.
fn named_without_colon(line: &str) -> Option<AboutSample> {
    let words = words(line);
    let (Meaning::Word(Word::Sample(rank @ 0..4)), length) = meaning_at(&words, 0)? else {
        return None;
    };
    let name = line[words[length - 1].end..].trim();
    // "圃場名 北ハウス": in such writing one word names the field.
    let pair = line.split_whitespace().count() == 2 && !line.is_ascii() && rank > 0;
    if pair && words[length - 1].end < line.len() && !words[0].text.is_ascii() {
        return Some(AboutSample::Name(name.into(), rank));
    }
    if rank > 0 {
        return None;
    }
    let few = (1..7).contains(&name.split_whitespace().count());
    (length > 1 && few && !name.contains(':')).then(|| AboutSample::Name(name.into(), 0))
}

/// What follows two words for a sample's name or more, as `Field name`.
fn behind_a_label(text: &str) -> Option<&str> {
    let words = words(text);
    let (Meaning::Word(Word::Sample(_)), length) = meaning_at(&words, 0)? else { return None };
    let name = text[words[length - 1].end..].trim_start();
    (length > 1 && !name.is_empty()).then_some(name)
}

fn is_capital(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_uppercase())
}

/// What a line without results says of the sample.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum AboutSample {
    Name(String, u8),
    Depth(f64, f64),
    Texture(Texture),
    Group(SoilGroup),
    /// The pH that the laboratory aims at.
    TargetPh(f64),
    /// A depth or texture that can't be read, and why.
    Unclear(&'static str),
}

/// Reads a line about the sample.
pub(super) fn about_sample(cells: &[Cell], decimal: Decimal) -> Option<AboutSample> {
    let filled: Vec<&str> =
        cells.iter().map(|c| c.text.as_str()).filter(|t| !t.is_empty()).collect();
    let whole = filled.join("  ");
    if whole.len() > 120 {
        return None;
    }
    let (name, rest) = match whole.find([':', '=']) {
        Some(at) => (whole[..at].to_string(), whole[at + 1..].trim().to_string()),
        None if filled.len() > 1 => (filled[0].to_string(), filled[1..].join(" ")),
        None => (whole.clone(), String::new()),
    };
    if let Some(name) = begins_sample(&filled) {
        return Some(name);
    }
    let label = Label::of(&name);
    if let Some(texture) = texture_alone(&filled) {
        return Some(AboutSample::Texture(texture));
    }
    if let Some(group) = soil_group(&whole) {
        return Some(AboutSample::Group(group));
    }
    if let Some(ph) = target_ph(&whole, decimal) {
        return Some(AboutSample::TargetPh(ph));
    }
    if label.has(Word::Depth) || squash(&name).starts_with("sampled") {
        let tail = whole.find(|c: char| c.is_ascii_digit()).map_or("", |at| &whole[at..]);
        return Some(match depth(tail, &name, decimal) {
            Some((top, bottom)) => AboutSample::Depth(top, bottom),
            None if tail.is_empty() || !label.has(Word::Depth) => return None,
            None => AboutSample::Unclear(NO_DEPTH_UNIT),
        });
    }
    if label.has(Word::Texture) {
        // "Soil texture sandy loam", and "Textura arcillosa: arena 22 %".
        let beside = behind_texture(&name);
        let said = if rest.is_empty() || texture(&beside).is_some() { beside } else { rest };
        if said.is_empty() {
            return None;
        }
        return Some(match texture(&said) {
            Some(texture) => AboutSample::Texture(texture),
            None => AboutSample::Unclear(NO_TEXTURE),
        });
    }
    if let Some(name) = named_without_colon(&whole) {
        return Some(name);
    }
    let rank = label.words.iter().find_map(|w| match w {
        Word::Sample(rank) => Some(*rank),
        _ => None,
    })?;
    // "Lower block, young trees" is a name, and no word with a name behind it.
    let place = label.words.iter().any(|w| matches!(w, Word::RangeColumn | Word::RatingColumn));
    if place && !whole.contains([':', '=']) && !rest.is_empty() {
        return None;
    }
    // The B of "Bed B" is no boron.
    if !label.properties.is_empty() && !label.only_symbols || label.unknown.len() > 1 {
        return None;
    }
    // "FIELD ID: SAMPLE ID" was not filled in, and "Field ID: Field name East 4" says it twice.
    let mut rest = rest;
    while let Some(behind) = behind_a_label(&rest) {
        rest = behind.into();
    }
    // In India a block is a part of a district.
    let rank = if squash(&name) == "block" { 25 } else { rank };
    // "Plot: Upper field – block 4 – 0-25 cm": the name, and more of it.
    let rest = match rest.split_once(" – ").or_else(|| rest.split_once(" - ")) {
        Some((name, _)) if rest.len() > 40 => name.trim().to_string(),
        _ => rest,
    };
    // "Orchard   Rec'd  28/12/2017": when it came is said behind a wide gap.
    let dated = rest.ends_with(|c: char| c.is_ascii_digit()) && rest.contains(['/', '.']);
    let rest = match rest.split_once("  ") {
        Some((name, when)) if dated && is_date(when.rsplit(' ').next().unwrap_or("")) => {
            name.into()
        }
        _ => rest,
    };
    if rest.len() > 60 {
        return None;
    }
    if rest.is_empty() {
        let short = whole.split_whitespace().count() == 2
            && !whole.ends_with(':')
            && rank < 4
            && label.words.len() == 1;
        return short.then(|| AboutSample::Name(whole.clone(), rank));
    }
    // "Plot: pH 6.2, K 120 ppm" has no name but results.
    let first = Label::of(rest.split(' ').next().unwrap_or(&rest));
    if rest.contains(|c: char| c.is_ascii_digit()) && first.is_soil() && !first.only_symbols {
        return None;
    }
    // "Sample 1: Front lawn" has its number and its name.
    let numbered = label.unknown.iter().all(|w| w.bytes().all(|b| b.is_ascii_digit()));
    numbered.then_some(AboutSample::Name(rest, rank))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_method_goes_only_to_what_it_is_known_for() {
        let line = |text: &str| methods(text, 2);
        let given = |text: &str, p| method_for(&line(text), p).map(|s| s.method);
        assert_eq!(given("Extraction: Mehlich 3", Property::Zinc), Some(Method::Mehlich3));
        assert_eq!(given("Olsen P", Property::Phosphorus), Some(Method::Olsen));
        assert_eq!(given("Olsen P", Property::Potassium), None);
        assert_eq!(
            given("Modified Morgan extract", Property::Phosphorus),
            Some(Method::ModifiedMorgan)
        );
        assert_eq!(given("Morgan's solution, extract", Property::Potassium), Some(Method::Morgan));
        let mixed = "P by Olsen; K and Mg by ammonium nitrate";
        assert_eq!(given(mixed, Property::Phosphorus), Some(Method::Olsen));
        assert_eq!(given(mixed, Property::Magnesium), Some(Method::AmmoniumNitrate));
        assert_eq!(given(mixed, Property::Calcium), None);
        let broad = "Methods: Mehlich-3, Olsen, DTPA";
        assert_eq!(given(broad, Property::Phosphorus), Some(Method::Olsen));
        assert_eq!(given(broad, Property::Zinc), Some(Method::Dtpa));
        assert_eq!(given(broad, Property::Potassium), Some(Method::Mehlich3));
        assert_eq!(given("Bray P1, Olsen methods", Property::Phosphorus), None);
        assert_eq!(line("Field M3").len(), 0);
    }

    #[test]
    fn depths_are_read_with_their_unit_or_not_at_all() {
        let cases = [
            ("0-6 in", "", Some((0.0, 15.24))),
            ("0–15 cm", "", Some((0.0, 15.0))),
            ("6 inches", "", Some((0.0, 15.24))),
            ("0 to 8\"", "", Some((0.0, 8.0 * 2.54))),
            ("0 - 12", "Depth (in)", Some((0.0, 30.48))),
            ("0 - 12", "depth range", None),
            ("0-6", "", None),
            ("3, depth 0-20 cm", "Mehlich 3, depth", Some((0.0, 20.0))),
            ("3 extract of 0-6 in", "", Some((0.0, 15.24))),
        ];
        for (text, heading, expected) in cases {
            let found = depth(text, heading, Decimal::Point);
            match (found, expected) {
                (Some(f), Some(e)) => {
                    let e: (f64, f64) = e;
                    assert!((f.0 - e.0).abs() < 1e-9 && (f.1 - e.1).abs() < 1e-9, "{text}: {f:?}");
                }
                _ => assert_eq!(found, expected, "{text}"),
            }
        }
    }
}
