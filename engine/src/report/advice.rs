//! What a laboratory advises, as `Lime req (Arable) 4.0 t/ha`. It is never a result, and never
//! made from one. A line is taken only where every word of it is understood, so that
//! `Lime history: 1 ton per acre` is not.

use super::fold::{fold, is_letter, is_word};
use super::grid::filled;
use super::number::{Decimal, number};
use super::{Cell, Place};

/// An amount that the laboratory advises to spread.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// Of what.
    pub what: Advised,
    /// How much, in its own unit; 0 where it prints that none is needed.
    pub amount: f64,
    /// The unit.
    pub unit: AdviceUnit,
    /// What the ground is used for, where the line says so.
    pub land: Option<Land>,
    /// The line as printed.
    pub text: String,
    /// Where it stands in the source.
    pub place: Place,
}

/// What is advised.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Advised {
    /// Lime.
    Lime(LimeAs),
    /// Nitrogen (N).
    Nitrogen,
    /// Phosphate (P2O5).
    Phosphate,
    /// Potash (K2O).
    Potash,
}

/// What an amount of lime is counted as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimeAs {
    /// Pure calcium carbonate.
    CaCO3,
    /// Calcium oxide.
    CaO,
    /// Ground limestone as it is bought.
    Limestone,
}

/// What the ground is used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Land {
    /// Dug or ploughed.
    Tilled,
    /// Grass.
    Grass,
}

/// A unit of what is spread; tons are of 2000 lb.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AdviceUnit {
    /// Tonnes per hectare.
    TonnePerHa,
    /// Kilograms per hectare.
    KgPerHa,
    /// Decitonnes (100 kg) per hectare.
    DecitonnePerHa,
    /// Tons of 2000 lb per acre.
    TonPerAcre,
    /// Pounds per acre.
    LbPerAcre,
    /// Pounds per 1000 square feet.
    LbPer1000SqFt,
    /// Pounds per 100 square feet.
    LbPer100SqFt,
    /// Grams per square metre.
    GramPerM2,
}

impl AdviceUnit {
    /// How it is printed.
    pub const fn symbol(self) -> &'static str {
        match self {
            AdviceUnit::TonnePerHa => "t/ha",
            AdviceUnit::KgPerHa => "kg/ha",
            AdviceUnit::DecitonnePerHa => "dt/ha",
            AdviceUnit::TonPerAcre => "ton/acre",
            AdviceUnit::LbPerAcre => "lb/acre",
            AdviceUnit::LbPer1000SqFt => "lb/1000 sq ft",
            AdviceUnit::LbPer100SqFt => "lb/100 sq ft",
            AdviceUnit::GramPerM2 => "g/m²",
        }
    }

    /// g on a square metre in one of it.
    /// Source: legal definitions of the pound, the acre and the foot (derived).
    pub const fn grams_per_m2(self) -> f64 {
        match self {
            AdviceUnit::TonnePerHa => 100.0,
            AdviceUnit::KgPerHa => 0.1,
            AdviceUnit::DecitonnePerHa => 10.0,
            AdviceUnit::TonPerAcre => 224.170_231,
            AdviceUnit::LbPerAcre => 0.112_085_116,
            AdviceUnit::LbPer1000SqFt => 4.882_427_64,
            AdviceUnit::LbPer100SqFt => 48.824_276_4,
            AdviceUnit::GramPerM2 => 1.0,
        }
    }

    /// Whether no result of a soil is given in it.
    const fn is_only_spread(self) -> bool {
        matches!(self, AdviceUnit::LbPer1000SqFt | AdviceUnit::LbPer100SqFt)
    }
}

/// No laboratory advises more lime, g/m². Our choice: 40 t/ha.
const MOST_LIME: f64 = 4000.0;
/// No laboratory advises more of a nutrient, g/m². Our choice: 1000 kg/ha.
const MOST_NUTRIENT: f64 = 100.0;
/// Longer text is a sentence. Our choice, in bytes.
const LONGEST: usize = 120;
/// Name, amount, unit and what it is counted as may each have a cell of their own.
const MOST_CELLS: usize = 4;

/// What the lines below a heading are about.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Under {
    /// Anything.
    #[default]
    Nothing,
    /// What is advised.
    Advice,
    /// What was spread before.
    Past,
}

/// What a word says of an amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Says {
    /// Lime, counted as limestone unless it says otherwise.
    Limestone,
    /// Lime, which may be counted as oxide or as carbonate: the line must say which.
    SomeLime,
    Counted(LimeAs),
    Nutrient(Advised),
    Land(Land),
    /// An amount to apply.
    Advice,
    /// Share of pure lime; 100 % makes it carbonate.
    Purity,
    Filler,
}

/// Words in the languages of the reports, accents off.
/// Source: spellings of public reports and bulletins; the rest common practice, no source.
const WORDS: &[(Says, &str)] = &[
    (
        Says::Limestone,
        "lime|limestone|ground limestone|ground lime|aglime|ag lime|agricultural lime|\
         agricultural limestone|garden lime|dolomitic lime|dolomitic limestone|calcitic lime|\
         calcitic limestone|limestone requirement|calagem|calcario|calcario agricola|encalado|\
         encalamiento|caliza|caliza molida|cal agricola|cal dolomita|calcare|calcare macinato|\
         kohlensaurer kalk",
    ),
    (
        Says::SomeLime,
        "kalk|kalkbedarf|kalkgabe|kalkempfehlung|kalkdungung|kalkung|aufkalkung|\
         erhaltungskalkung|gesundungskalkung|chaux|chaulage|besoin en bases|cal|calce|kalkgift|\
         kalkbehoefte|bekalking",
    ),
    (
        Says::Counted(LimeAs::CaCO3),
        "caco3|calcium carbonate|carbonato de calcio|carbonato di calcio|carbonato calcico|\
         carbonate de calcium|as calcium carbonate",
    ),
    (Says::Counted(LimeAs::CaO), "cao|nw|as cao"),
    (Says::Nutrient(Advised::Nitrogen), "n|nitrogen|stickstoff|azote|nitrogeno|nitrogenio|azoto"),
    (
        Says::Nutrient(Advised::Phosphate),
        "p2o5|phosphate|phosphate p2o5|phosphat|phosphat p2o5|phosphorus as p2o5|\
         phosphorus p2o5|phosphore p2o5|fosforo p2o5",
    ),
    (
        Says::Nutrient(Advised::Potash),
        "k2o|potash|potash k2o|kali|kali k2o|potasse|potasse k2o|potassium as k2o|\
         potassium k2o|kalium k2o|potasio k2o|potassio k2o",
    ),
    (
        Says::Land(Land::Tilled),
        "arable|tillage|vegetable garden|vegetables|garden|cropland|ackerland|acker",
    ),
    (Says::Land(Land::Grass), "grass|grassland|lawn|turf|turfgrass|pasture|grunland"),
    (
        Says::Advice,
        "recommendation|recommendations|recommended|recommend|rec|recs|req|reqd|requirement|\
         requirements|required|require|need|needs|needed|apply|add|spread|rate|advice|advised|\
         suggested|empfehlung|empfohlen|bedarf|gabe|dungeempfehlung|\
         dungebedarf|recomendacao|recomendacion|recomendado|recomendada|dose|dosis|\
         adubacao|necessidade|necessidade de|necesidad|necesidad de|besoin|besoins|conseil|\
         conseille|conseillee|apporter|preconise|fabbisogno|consigliato|consigliata|\
         advies",
    ),
    (Says::Purity, "env|ecce|cce|ecc|prnt|rnv"),
    (
        Says::Filler,
        "of|as|in|de|em|en|di|da|do|pure|actual|the|fertilizer|fertiliser|nutrient|apport|\
         dungung|abonado",
    ),
];

/// A word, number or mark of a line.
#[derive(Clone, Debug, PartialEq)]
enum Token {
    Word(String),
    Number(f64),
    Slash,
    Dash,
}

impl Token {
    fn word(&self) -> &str {
        match self {
            Token::Word(word) => word,
            _ => "",
        }
    }
}

/// The tokens of a line; `None` where it holds a mark that leaves it open, as `<` or `?`.
fn tokens(text: &str, decimal: Decimal) -> Option<Vec<Token>> {
    let text = fold(text);
    let mut tokens = Vec::new();
    let mut at = 0;
    let mut before = ' ';
    while let Some(c) = text[at..].chars().next() {
        let rest = &text[at..];
        let digit_next = rest[c.len_utf8()..].starts_with(|d: char| d.is_ascii_digit());
        let mut length = c.len_utf8();
        match c {
            _ if c.is_ascii_digit() || c == '.' && digit_next => {
                let (value, taken) = number(rest, decimal)?;
                length = taken;
                tokens.push(Token::Number(value));
            }
            _ if is_letter(c) => {
                length = rest.find(|c| !is_word(c)).unwrap_or(rest.len());
                tokens.push(Token::Word(rest[..length].into()));
            }
            '%' | '#' => tokens.push(Token::Word(c.into())),
            '/' => tokens.push(Token::Slash),
            // Nobody advises less than nothing.
            '-' if before == ' ' && digit_next => return None,
            '-' => tokens.push(Token::Dash),
            ' ' | ':' | '=' | '(' | ')' | '[' | ']' | ',' | '.' | '*' | '|' => {}
            _ => return None,
        }
        before = rest[..length].chars().next_back().unwrap_or(' ');
        at += length;
    }
    Some(tokens)
}

/// What the words from here on say, and how many they are; the longest phrase counts.
fn says_at(tokens: &[Token]) -> Option<(Says, usize)> {
    let mut phrase = String::new();
    let mut found = None;
    for (count, token) in tokens.iter().take(3).enumerate() {
        let word = token.word();
        if word.is_empty() {
            break;
        }
        if count > 0 {
            phrase.push(' ');
        }
        phrase.push_str(word);
        let known = WORDS.iter().find(|(_, all)| all.split('|').any(|one| one == phrase));
        found = known.map(|(says, _)| (*says, count + 1)).or(found);
    }
    found
}

/// A line under way.
#[derive(Default)]
struct Line {
    amounts: Vec<f64>,
    unit: Option<AdviceUnit>,
    /// Three amounts in one: `3-1-2`.
    triple: bool,
    limestone: bool,
    some_lime: bool,
    counted: Option<LimeAs>,
    nutrients: Vec<Advised>,
    land: Option<Land>,
    advice: bool,
}

impl Line {
    fn take(&mut self, says: Says) -> Option<()> {
        match says {
            Says::Limestone => self.limestone = true,
            Says::SomeLime => self.some_lime = true,
            Says::Counted(form) => {
                if self.counted.is_some_and(|known| known != form) {
                    return None;
                }
                self.counted = Some(form);
            }
            Says::Nutrient(one) => {
                if !self.nutrients.contains(&one) {
                    self.nutrients.push(one);
                }
            }
            Says::Land(land) => {
                if self.land.is_some_and(|known| known != land) {
                    return None;
                }
                self.land = Some(land);
            }
            Says::Advice => self.advice = true,
            Says::Purity | Says::Filler => {}
        }
        Some(())
    }

    /// Takes the unit that begins here, with what is named within it, as in `kg CaO/ha`;
    /// gives how many tokens it takes.
    fn unit(&mut self, tokens: &[Token]) -> Option<usize> {
        let mass = match tokens.first()?.word() {
            "t" | "ton" | "tons" | "tonne" | "tonnes" | "tonelada" | "toneladas" => Mass::Ton,
            "kg" => Mass::Kg,
            "dt" => Mass::Decitonne,
            "lb" | "lbs" | "pound" | "pounds" | "#" => Mass::Pound,
            "g" | "gram" | "grams" => Mass::Gram,
            _ => return None,
        };
        let mut at = 1;
        let mut within = Vec::new();
        while let Some(token) = tokens.get(at) {
            if *token == Token::Slash || matches!(token.word(), "per" | "pro" | "par" | "por") {
                break;
            }
            if let Some(length) = pure(&tokens[at..]) {
                within.push(Says::Counted(LimeAs::CaCO3));
                at += length;
                continue;
            }
            let (says, length) = says_at(&tokens[at..])?;
            within.push(says);
            at += length;
        }
        let (area, length) = area(tokens.get(at + 1..)?)?;
        let short = tokens[0].word() != "t" && !tokens[0].word().starts_with("tonn");
        let unit = match (mass, area) {
            (Mass::Ton, Area::Hectare) => AdviceUnit::TonnePerHa,
            (Mass::Kg, Area::Hectare) => AdviceUnit::KgPerHa,
            (Mass::Decitonne, Area::Hectare) => AdviceUnit::DecitonnePerHa,
            // A “t” per acre may be of 2000 or of 2205 lb.
            (Mass::Ton, Area::Acre) if short => AdviceUnit::TonPerAcre,
            (Mass::Pound, Area::Acre) => AdviceUnit::LbPerAcre,
            (Mass::Pound, Area::SquareFeet(1000)) => AdviceUnit::LbPer1000SqFt,
            (Mass::Pound, Area::SquareFeet(100)) => AdviceUnit::LbPer100SqFt,
            (Mass::Gram, Area::SquareMetre) => AdviceUnit::GramPerM2,
            _ => return None,
        };
        for says in within {
            self.take(says)?;
        }
        self.unit = Some(unit);
        Some(at + 1 + length)
    }

    /// What the line advises; `under` a heading that says so, it needs no word for it.
    fn advised(&self, under: Under) -> Option<Vec<(Advised, f64)>> {
        let unit = self.unit?;
        let said = self.advice || under == Under::Advice;
        let lime = self.limestone || self.some_lime;
        let whats = match (self.nutrients.as_slice(), self.counted) {
            ([], Some(form)) if lime || said => vec![Advised::Lime(form)],
            ([], None) if self.limestone && !self.some_lime => {
                vec![Advised::Lime(LimeAs::Limestone)]
            }
            // A soil's own nitrate or phosphate is printed per hectare too.
            (nutrients, None) if !lime && (said || unit.is_only_spread()) => nutrients.to_vec(),
            _ => return None,
        };
        let in_order = [Advised::Nitrogen, Advised::Phosphate, Advised::Potash];
        let fits = if self.triple { whats == in_order } else { whats.len() == 1 };
        let can_be = |(what, amount): &(Advised, f64)| {
            let lime = matches!(what, Advised::Lime(_));
            let most = if lime { MOST_LIME } else { MOST_NUTRIENT };
            amount * unit.grams_per_m2() <= most
        };
        let all: Vec<_> = whats.into_iter().zip(self.amounts.iter().copied()).collect();
        (fits && !all.is_empty() && all.iter().all(can_be)).then_some(all)
    }
}

#[derive(Clone, Copy)]
enum Mass {
    Ton,
    Kg,
    Decitonne,
    Pound,
    Gram,
}

#[derive(Clone, Copy)]
enum Area {
    Hectare,
    Acre,
    SquareFeet(u32),
    SquareMetre,
}

/// The area that begins here, and how many tokens it takes.
fn area(tokens: &[Token]) -> Option<(Area, usize)> {
    let word = |at: usize| tokens.get(at).map_or("", Token::word);
    if let Some(Token::Number(feet)) =
        tokens.first().filter(|n| matches!(n, Token::Number(f) if f.fract() == 0.0))
    {
        let length = match (word(1), word(2)) {
            ("sqft" | "ft2" | "sf", _) => 2,
            ("sq" | "square", "ft" | "feet" | "foot") => 3,
            _ => return None,
        };
        return Some((Area::SquareFeet(*feet as u32), length));
    }
    Some(match word(0) {
        "ha" | "hectare" | "hectares" | "hectar" | "hektar" | "hectarea" => (Area::Hectare, 1),
        "acre" | "acres" | "ac" | "a" => (Area::Acre, 1),
        "m2" | "qm" | "sqm" => (Area::SquareMetre, 1),
        "square" if word(1).starts_with("met") => (Area::SquareMetre, 2),
        _ => return None,
    })
}

/// `100 % ENV`, `100ECCE`, `PRNT 100 %`: how many tokens it takes.
fn pure(tokens: &[Token]) -> Option<usize> {
    let is_purity = |at: usize| matches!(says_at(&tokens[at..]), Some((Says::Purity, 1)));
    let percent = |at: usize| usize::from(tokens.get(at).is_some_and(|t| t.word() == "%"));
    let hundred = Token::Number(100.0);
    if *tokens.first()? == hundred {
        let next = 1 + percent(1);
        return (next < tokens.len() && is_purity(next)).then_some(next + 1);
    }
    (is_purity(0) && tokens.get(1) == Some(&hundred)).then(|| 2 + percent(2))
}

/// `to pH 6.5`: how many tokens it takes.
fn to_ph(tokens: &[Token]) -> Option<usize> {
    let target = usize::from(tokens.get(1).is_some_and(|t| t.word() == "target"));
    let [first, ph, Token::Number(_)] =
        [tokens.first()?, tokens.get(1 + target)?, tokens.get(2 + target)?]
    else {
        return None;
    };
    (matches!(first.word(), "to" | "for") && ph.word() == "ph").then_some(3 + target)
}

/// What a text advises, where every word of it is understood.
fn advised(text: &str, decimal: Decimal, under: Under) -> Option<(Line, Vec<(Advised, f64)>)> {
    if text.len() > LONGEST || under == Under::Past || !text.bytes().any(|b| b.is_ascii_digit()) {
        return None;
    }
    // An exponent instead of a slash: "t ha-1".
    let text = fold(text).replace(" ha-1", "/ha");
    let tokens = tokens(&text, decimal)?;
    let mut line = Line::default();
    let mut at = 0;
    while at < tokens.len() {
        let rest = &tokens[at..];
        at += if let Some(length) = pure(rest) {
            line.take(Says::Counted(LimeAs::CaCO3))?;
            length
        } else if let Some(length) = to_ph(rest) {
            length
        } else if let [
            Token::Number(n),
            Token::Dash,
            Token::Number(p),
            Token::Dash,
            Token::Number(k),
            ..,
        ] = rest
        {
            line.triple = true;
            line.amounts.extend([n, p, k]);
            5
        } else if let Token::Number(amount) = rest[0] {
            line.amounts.push(amount);
            1
        } else if let Some(length) = line.unit.is_none().then(|| line.unit(rest)).flatten() {
            length
        } else if rest[0] == Token::Dash {
            1
        } else {
            let (says, length) = says_at(rest)?;
            line.take(says)?;
            length
        };
    }
    let amounts = if line.triple { 3 } else { 1 };
    if line.amounts.len() != amounts {
        return None;
    }
    let all = line.advised(under)?;
    Some((line, all))
}

/// What cells of a row, joined, advise.
pub(super) fn of_cells(cells: &[&Cell], decimal: Decimal, under: Under) -> Vec<Advice> {
    let text = cells.iter().map(|c| c.text.as_str()).collect::<Vec<_>>().join(" ");
    let Some((line, all)) = advised(&text, decimal, under) else { return Vec::new() };
    let (Some(unit), Some(first), Some(last)) = (line.unit, cells.first(), cells.last()) else {
        return Vec::new();
    };
    let place = Place { end: last.place.end.max(first.place.start), ..first.place };
    let of =
        |(what, amount)| Advice { what, amount, unit, land: line.land, text: text.clone(), place };
    all.into_iter().map(of).collect()
}

/// The advice in a row, and the row without it: `pH 4.9   Lime req 6.0 t/ha` holds both.
pub(super) fn apart(row: &[Cell], decimal: Decimal, under: Under) -> (Vec<Advice>, Vec<Cell>) {
    let cells: Vec<&Cell> = filled(row).collect();
    let (mut advice, mut left) = (Vec::new(), Vec::new());
    let mut at = 0;
    while at < cells.len() {
        let most = (at + MOST_CELLS).min(cells.len());
        let found = (at + 1..=most).rev().find_map(|end| {
            let found = of_cells(&cells[at..end], decimal, under);
            (!found.is_empty()).then_some((end, found))
        });
        match found {
            Some((end, found)) => {
                advice.extend(found);
                at = end;
            }
            None => {
                left.push(cells[at].clone());
                at += 1;
            }
        }
    }
    (advice, left)
}

/// What a line that holds no number says of the lines below it.
pub(super) fn heading(row: &[Cell]) -> Under {
    let text = filled(row).map(|c| c.text.as_str()).collect::<Vec<_>>().join(" ");
    let plain = !text.bytes().any(|b| b.is_ascii_digit()) && text.len() <= 60;
    let Some(tokens) = tokens(&text, Decimal::Point).filter(|_| plain) else {
        return Under::Nothing;
    };
    let has = |all: &[&str]| tokens.iter().any(|token| all.contains(&token.word()));
    if has(&["history", "previous", "past", "last", "applied", "anterior", "bisher"]) {
        return Under::Past;
    }
    let says = |token: &Token| {
        WORDS.iter().any(|(says, all)| {
            *says == Says::Advice && all.split('|').any(|one| one == token.word())
        })
    };
    if tokens.len() <= 5 && tokens.iter().any(says) { Under::Advice } else { Under::Nothing }
}
