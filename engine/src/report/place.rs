//! A name and a result to a [`Reading`], or the reason why not.

use super::about::{depth, depth_at};
use super::fold::first_chars;
use super::label::{Label, Quantity, one_form, saturation_of};
use super::names::{Form, Word};
use super::number::{Decimal, Said, is_range, is_rating, number, parse_amount, said};
use super::oxide::{Share, share};
use super::plausible::impossible;
use super::short_names::{RT_ABOVE_PH, danish, only_beside_percent};
use super::units::{Printed, unit_at};
use super::usual::is_far_out;
use super::{Known, Origin, Pairing, Place, Reading, fold};
use crate::quantity::{Unit, significant};
use crate::soil::{Amount, Method, MethodKind, Property};

/// A result as it stands in the report, with what stands beside it.
#[derive(Clone, Debug)]
pub(super) struct Draft {
    pub quantity: Quantity,
    pub name: String,
    pub result: String,
    pub place: Place,
    pub unit: Option<Printed>,
    pub method: Option<Method>,
    pub rating: Option<String>,
    /// Text after the result that nobody understood.
    pub left: Option<String>,
    /// Whether a head says that of several numbers the first is the result.
    pub first: bool,
    /// The depth in its name, as in `Nitrate-N 0-24 in`.
    pub depth_cm: Option<(f64, f64)>,
}

impl Draft {
    /// What a name says by itself: its result is still to come.
    pub fn of(quantity: Quantity, name: &str, place: Place, decimal: Decimal) -> Draft {
        Draft {
            quantity,
            name: name.into(),
            result: String::new(),
            place,
            unit: None,
            method: None,
            rating: None,
            left: None,
            first: false,
            depth_cm: depth(name, "", decimal),
        }
    }
}

/// What follows a number: its unit, a rating, a method, and what is left.
#[derive(Clone, Debug, Default)]
pub(super) struct Tail {
    pub unit: Option<Printed>,
    /// Bytes of the text that the unit takes, from its start.
    pub unit_end: usize,
    pub rating: Option<String>,
    pub method: Option<Method>,
    pub left: Option<String>,
    /// `± 2`: how far the laboratory says the number may be off.
    pub spread: Option<String>,
}

/// Whose word a rating is.
const WHO: [&str; 6] = ["lab", "labo", "labor", "laboratory", "laboratoire", "rating"];

impl Tail {
    /// Takes apart what follows a number.
    pub fn of(text: &str, decimal: Decimal) -> Tail {
        let (before, text) = text.split_at(spread(text, decimal));
        let mut tail = Tail::default();
        let rest = tail.take_unit(text);
        if !rest.is_empty() {
            tail.take_words(rest, decimal);
        }
        if !before.is_empty() {
            tail.unit_end += before.len();
            tail.spread = Some(before.trim().into());
        }
        tail
    }

    /// Takes the unit that a text begins with; returns what is left to be understood.
    fn take_unit<'a>(&mut self, text: &'a str) -> &'a str {
        let words = fold::words(first_chars(text, 60));
        if let Some((unit, length)) = unit_at(&words, 0) {
            self.unit = Some(unit);
            self.unit_end = words[length - 1].end;
        }
        let rest = text[self.unit_end..]
            .trim_matches(|c: char| c.is_whitespace() || matches!(c, ',' | ';' | ':' | '|'));
        let rest = rest.strip_prefix("– ").or_else(|| rest.strip_prefix("- ")).unwrap_or(rest);
        // "ppm P" says the element once more.
        let again = self.unit.is_some()
            && rest.len() <= 2
            && Label::of(rest).properties.len() == 1
            && !is_rating(rest);
        // Marks of footnotes, and the full stop of a sentence.
        if again || is_only_marks(rest) { "" } else { rest }
    }

    /// Takes a rating or a method; the rest is left.
    fn take_words(&mut self, rest: &str, decimal: Decimal) {
        // "640 S": sufficient, since sulfur would bring its own number.
        if self.unit.is_none() && rest == "S" {
            self.rating = Some(rest.into());
            return;
        }
        // "(H), K 120 ppm" and "(Mehlich 3), K 120 ppm": a rating or a method, and then more.
        if let Some((first, more)) = rest.split_once([',', ';'])
            && !more.trim().is_empty()
        {
            if is_rating(first) {
                self.rating = Some(first.trim_matches(['(', ')', ' ']).into());
            } else {
                self.method = Label::of(first).only_method();
            }
            if self.rating.is_some() || self.method.is_some() {
                self.left = Some(more.trim().into());
                return;
            }
        }
        // "18 L ppm": the rating stands before the unit.
        if let Some((first, more)) = rest.split_once(' ')
            && self.unit.is_none()
            && is_rating(first)
            && let Some(unit) = Label::of(more).only_unit()
        {
            (self.rating, self.unit) = (Some(first.into()), Some(unit));
            return;
        }
        // "(labo : élevé)": the laboratory's own word.
        if let Some((who, word)) = rest.trim_matches(['(', ')']).split_once(':')
            && WHO.contains(&fold::squash(who).as_str())
            && word.split_whitespace().count() <= 3
            && !word.contains(|c: char| c.is_ascii_digit())
        {
            self.rating = Some(word.trim().into());
            return;
        }
        let label = Label::of(rest);
        let index = label.has(Word::Index) && label.properties.is_empty();
        if is_half_step(rest) || is_rating(rest) || is_range(rest, decimal) || index {
            self.rating = Some(rest.trim_matches(['(', ')']).into());
        } else {
            let paste = label.has(Word::Paste) && label.unknown.is_empty() && !label.is_soil();
            self.method = label.only_method().or(paste.then_some(Method::SaturatedPaste));
            self.left = self.method.is_none().then(|| rest.into());
        }
    }
}

/// 2- and 2+ are halves of an index step.
pub(super) fn is_half_step(sign: &str) -> bool {
    matches!(sign, "-" | "+" | "−")
}

/// The bytes of `± 2` or `+/- 2` that a text begins with.
fn spread(text: &str, decimal: Decimal) -> usize {
    let inner = text.trim_start();
    let Some(after) = inner.strip_prefix('±').or_else(|| inner.strip_prefix("+/-")) else {
        return 0;
    };
    let figure = after.trim_start();
    number(figure, decimal).map_or(0, |(_, length)| text.len() - figure.len() + length)
}

/// A number with its unit in the bracket behind a rating: the 44 of `Very Low (44 ppm)`.
fn in_bracket(result: &str, decimal: Decimal) -> Option<(Amount, Printed, &str)> {
    let (rating, rest) = result.split_once('(')?;
    let inner = rest.trim_end().strip_suffix(')')?;
    let Said::Amount(amount @ Amount::Exactly(_), end) = said(inner, decimal) else { return None };
    let tail = Tail::of(&inner[end..], decimal);
    let bare = tail.left.is_none() && tail.rating.is_none();
    Some((amount, tail.unit.filter(|_| bare)?, rating.trim()))
}

/// Stars of footnotes and of bar charts, and full stops.
fn is_only_marks(text: &str) -> bool {
    text.chars().all(|c| matches!(c, '*' | '†' | '‡' | '§' | '.'))
}

/// Why of several numbers none is taken.
fn several(property: Property) -> String {
    format!("more than one number stands beside {}; leave only the result", property.label())
}

/// `17 B 9 M`: another number follows, past a rating, that is no end of a range.
fn goes_on(left: &str, decimal: Decimal) -> bool {
    // "22 ppm / 25 ppm": two samples, or two years.
    let beside = left.strip_prefix("/ ").or_else(|| left.strip_prefix("| "));
    if beside.is_some_and(|rest| number(rest.trim_start(), decimal).is_some()) {
        return true;
    }
    let mut words = left.split_whitespace().skip_while(|w| is_rating(w));
    let whole = |w: &str| number(w, decimal).is_some_and(|(_, length)| length == w.len());
    let range = |w: &str| matches!(w, "-" | "–" | "to" | "a" | "à" | "bis" | "do" | "до");
    words.next().is_some_and(whole) && !words.next().is_some_and(range)
}

/// `ammonium acetate 1 M pH 7`, `CEC at pH 7`: 7 and 8.2 are what extractants are brought to.
fn is_of_extractant(draft: &Draft, amount: Amount) -> bool {
    let brought_to = [7.0, 8.2].contains(&amount.number());
    let reaction = matches!(draft.quantity.property, Property::Ph | Property::SaltPh);
    if !brought_to || !reaction {
        return false;
    }
    let label = Label::of(&draft.name);
    let salt = |m: &Method| matches!(m, Method::Kcl | Method::CaCl2);
    let extracts = |m: &Method| m.kind() == MethodKind::Extractant && !salt(m);
    // "0.5 mol/L, pH 7" goes on with a line about an extractant.
    let strength = draft.name.starts_with(|c: char| c.is_ascii_digit());
    // "acetato sódico pH 8,2"
    let squashed = fold::squash(&draft.name);
    let acetate = squashed.contains("acet") || squashed.contains("azet");
    label.methods.iter().any(extracts) || acetate || strength && squashed.contains("mol")
}

/// `24 inches`, `30 days`: what no soil property is measured in.
fn is_length_or_time(left: &str) -> bool {
    const WORDS: [&str; 16] = [
        "inch", "inches", "feet", "foot", "yards", "cores", "acres", "minutes", "hours", "days",
        "weeks", "months", "years", "tage", "jahre", "ans",
    ];
    let word = fold::words(first_chars(left, 12)).into_iter().next();
    word.is_some_and(|word| WORDS.contains(&word.text.as_str()))
}

/// `g/dm3`: something per something.
fn looks_like_unit(text: &str) -> bool {
    let text = text.trim_start_matches([' ', '(', '[']);
    text.starts_with(|c: char| c.is_ascii_alphabetic()) && text.contains('/')
}

/// What `MO` stands for: organic matter in Romance languages, or molybdenum.
/// Its unit tells, or its writing; `None` when neither does.
fn mo_is(name: &str, unit: Option<Unit>) -> Option<Property> {
    match unit {
        Some(Unit::Percent | Unit::GPerKg | Unit::GPerL) => Some(Property::OrganicMatter),
        Some(_) => Some(Property::Molybdenum),
        None if name.contains('.') => Some(Property::OrganicMatter),
        None if name.contains("Mo") => Some(Property::Molybdenum),
        None => None,
    }
}

/// Makes the reading; `None` when nothing was measured.
///
/// # Errors
/// Why it can't be placed.
pub(super) fn place(draft: &Draft, decimal: Decimal) -> Result<Option<Reading>, String> {
    let Some(mut placing) = Placing::of(draft, decimal)? else { return Ok(None) };
    placing.tell_mo()?;
    placing.take_left()?;
    let unit = placing.own_unit();
    placing.settle_property(unit)?;
    placing.reading(unit).map(Some)
}

/// A result on its way to a reading.
struct Placing<'a> {
    draft: &'a Draft,
    decimal: Decimal,
    property: Property,
    form: Form,
    amount: Option<Amount>,
    unit: Option<Printed>,
    /// A unit that is printed but not known here rules out the usual one.
    foreign: bool,
    method: Option<Method>,
    rating: Option<String>,
    notes: Vec<String>,
}

impl<'a> Placing<'a> {
    /// What the result itself says.
    fn of(draft: &'a Draft, decimal: Decimal) -> Result<Option<Placing<'a>>, String> {
        let Draft { quantity, result, .. } = draft;
        let label = quantity.property.label();
        let mut new = Placing {
            draft,
            decimal,
            property: quantity.property,
            form: quantity.form,
            amount: None,
            unit: draft.unit,
            foreign: false,
            method: quantity.method.or(draft.method),
            rating: draft.rating.clone(),
            notes: quantity.notes.clone(),
        };
        match said(result, decimal) {
            Said::Missing => return Ok(None),
            Said::Amount(amount, end) => {
                new.amount = Some(amount);
                let tail = Tail::of(&result[end..], decimal);
                if tail.left.as_deref().is_some_and(is_length_or_time) {
                    return Err(format!("a length or a time, not a result for {label}"));
                }
                if let Some(joined) = thousands_by_blanks(draft) {
                    new.notes.push("asked, because the blank may part two numbers".into());
                    new.amount = Some(amount.with(joined));
                    return Ok(Some(new));
                }
                let more = |left: &str| !draft.first && goes_on(left, decimal);
                let parted = tail.left.as_deref().is_some_and(|l| l.starts_with(['/', '|']));
                let numbers = |left: &str| {
                    let number = |word: &&str| {
                        word.starts_with(|c: char| c.is_ascii_digit())
                            && parse_amount(word).is_some()
                    };
                    !draft.first && left.split(' ').filter(number).count() > 2
                };
                if tail.left.as_deref().is_some_and(numbers) {
                    return Err(several(quantity.property));
                }
                let second = tail.left.as_deref().is_some_and(|left| {
                    let left = left.trim_start_matches(['/', '|', ' ']);
                    tail.unit.is_some() && left.starts_with(|c: char| c.is_ascii_digit())
                });
                if (tail.unit.is_none() || parted) && tail.left.as_deref().is_some_and(more)
                    || parted && second
                {
                    return Err(several(quantity.property));
                }
                if [" x", " ×"].iter().any(|by| draft.name.trim_end().ends_with(by)) {
                    return Err("what something is multiplied by, not a result".into());
                }
                if is_of_extractant(draft, amount) {
                    return Err("the pH of an extractant, not of the soil".into());
                }
                new.take_tail(amount, tail);
            }
            Said::NotDetected => {
                new.notes.push("not detected; the report gives no limit".into());
            }
            Said::Range => {
                return Err(format!("{A_RANGE}: no number of your own stands beside {label}"));
            }
            // "Nitrate   N 121": so much of each nutrient to spread.
            Said::Text if ["N ", "P2O5 ", "K2O "].iter().any(|n| result.starts_with(n)) => {
                return Err("a recommendation, not a result".into());
            }
            Said::Text if !is_rating(result) => {
                return Err(format!("not a number, so not a result for {label}"));
            }
            Said::Text => {
                if let Some((amount, printed, word)) = in_bracket(result, decimal) {
                    new.rating.get_or_insert_with(|| word.into());
                    (new.amount, new.unit) = (Some(amount), Some(printed));
                } else {
                    new.rating.get_or_insert_with(|| result.clone());
                    new.notes.push("only a rating is printed, no number".into());
                }
            }
        }
        Ok(Some(new))
    }

    fn take_tail(&mut self, amount: Amount, tail: Tail) {
        self.unit = tail.unit.or(self.unit);
        self.method = self.method.or(tail.method);
        if let Some(mut own) = tail.rating {
            if is_half_step(&own) {
                own = format!("{}{own}", significant(amount.number(), 4));
            }
            self.rating = Some(match &self.rating {
                Some(beside) => format!("{own}, {beside}"),
                None => own,
            });
        }
        if let Some(spread) = tail.spread {
            self.notes.push(format!("the laboratory gives it as {spread}"));
        }
        if let Some(text) = tail.left {
            self.foreign |= looks_like_unit(&text);
            self.notes.push(format!("“{text}” after the result was not understood"));
        }
    }

    /// `MO` is one thing or the other.
    fn tell_mo(&mut self) -> Result<(), String> {
        let either = matches!(self.property, Property::OrganicMatter | Property::Molybdenum);
        if either && fold::squash(&self.draft.name) == "mo" {
            let unit = self.unit.or(self.draft.quantity.unit);
            self.property = mo_is(&self.draft.name, unit.map(|u| u.unit)).ok_or(
                "MO can be organic matter (matière organique) or molybdenum (Mo): write which",
            )?;
        }
        Ok(())
    }

    /// What stands beside the result.
    fn take_left(&mut self) -> Result<(), String> {
        let Some(text) = self.draft.left.as_deref() else { return Ok(()) };
        // "V% = 100 x SB / T", "Na 1ª parte"
        if ["x ", "× ", "* ", "ª", "º"].iter().any(|by| text.starts_with(by)) {
            return Err("part of a sum or a count, not a result".into());
        }
        let label = Label::of(text);
        if label.has(Word::Advice) || fold::squash(text).contains("00sq") {
            // "1.5 lb/1000 sq ft recommended": no soil is measured in such a unit.
            return Err("a recommendation, not a result".into());
        }
        if is_length_or_time(text) {
            let label = self.draft.quantity.property.label();
            return Err(format!("a length or a time, not a result for {label}"));
        }
        if self.unit.is_none() && !self.draft.first && goes_on(text, self.decimal) {
            return Err(several(self.property));
        }
        if is_only_marks(text) {
            return Ok(());
        }
        let own = label.properties.first().filter(|p| p.0 == self.draft.quantity.property);
        if text.starts_with(['(', '=']) && label.unit.is_some() {
            // "1.2 meq/100g = 146 ppm (NH4OAc)"
            self.notes.push(format!("“{text}” was taken as the same result in another unit"));
            self.method = self.method.or(label.methods.first().copied());
        } else if let (Some(&(_, said)), Some(printed), None) = (own, label.unit, self.unit) {
            // "24 mg P2O5/100 g" names the form within the unit.
            self.form = one_form(self.form, said);
            self.unit = Some(printed);
        } else {
            self.foreign |= looks_like_unit(text);
            self.notes.push(format!("“{text}” beside the result was not understood"));
        }
        Ok(())
    }

    /// The unit, with the number brought to it.
    fn own_unit(&mut self) -> Option<Unit> {
        let Printed { unit, scale } = self.unit.or(self.draft.quantity.unit)?;
        if let Some(amount) = self.amount.as_mut().filter(|_| scale != 1.0) {
            *amount = amount.with(amount.number() * scale);
            self.notes.push(format!("× {scale} to {}", unit.symbol()));
        }
        Some(unit)
    }

    /// What name, unit and number together say of the property.
    fn settle_property(&mut self, unit: Option<Unit>) -> Result<(), String> {
        let Draft { quantity, name, .. } = self.draft;
        if quantity.lime_index
            && let Some(amount) = self.amount.as_mut().filter(|a| a.number() > 14.0)
        {
            let (index, ph) = (significant(amount.number(), 4), amount.number() / 10.0);
            self.notes.push(format!("lime test index {index} ÷ 10 = buffer pH {ph}"));
            *amount = amount.with(ph);
        }
        if unit == Some(Unit::Percent)
            && let Some(share) = saturation_of(self.property)
        {
            self.notes.push("in %, so its share of the exchange capacity".into());
            self.property = share;
        }
        if quantity.share_if_percent && unit.is_none() {
            return Err("“sat” can mean a share of the exchange or a saturated paste: write % \
                        beside it"
                .into());
        }
        if self.property == Property::Sodium
            && name.contains("NA")
            && matches!(unit, Some(Unit::MeqPer100g | Unit::MeqPer100cm3))
        {
            return Err("NA in meq can be sodium or neutralizable acidity: write which".into());
        }
        if let Some((of, _)) = danish(name) {
            if unit.is_some_and(|u| of == Property::SaltPh || u != Unit::MgPer100g) {
                return Err(format!("{name} is a Danish number, which has no such unit"));
            }
            if let Some(rt) = self.amount.as_mut().filter(|_| of == Property::SaltPh) {
                self.notes.push(format!("Rt {} − {RT_ABOVE_PH} = pH", significant(rt.number(), 4)));
                *rt = rt.with(rt.number() - RT_ABOVE_PH);
            }
        }
        if unit != Some(Unit::Percent) && only_beside_percent(name) {
            return Err(format!("{name} stands for other things too: write % beside it"));
        }
        let by_charge =
            matches!(unit, Some(Unit::MeqPer100g | Unit::MeqPer100cm3 | Unit::MmolcPerKg));
        if self.property == Property::Sulfur && by_charge && fold::squash(name) == "s" {
            return Err("S by its charge can be the sum of bases: write which".into());
        }
        let salt = self.method.filter(|m| matches!(m, Method::Kcl | Method::CaCl2));
        if let (Property::Ph, Some(method)) = (self.property, salt) {
            self.property = Property::SaltPh;
            self.notes.push(format!("{} stands beside it, so this is salt pH", method.label()));
        }
        wrong_unit(self.property, unit).map_or(Ok(()), Err)
    }

    fn reading(mut self, unit: Option<Unit>) -> Result<Reading, String> {
        let (property, draft) = (self.property, self.draft);
        // "34 kg/ha (0-60 cm)"
        let deep = self.rating.as_deref().and_then(|r| depth_at(r, "", self.decimal));
        let unit = if self.foreign && unit.is_none() {
            None
        } else if unit.is_none() && self.method == Some(Method::QuickTest) {
            // Quick test units are an index of their own.
            Some(Unit::Index)
        } else {
            unit_or_usual(property, unit, self.amount, &mut self.notes)
        };
        if let Some(Share { from, to, factor }) = share(self.form) {
            if matches!(unit, Some(Unit::MeqPer100g | Unit::MmolcPerKg | Unit::MeqPer100cm3)) {
                self.notes.push(format!("counted by charge, so {from} is the same as {to}"));
            } else if let Some(amount) = &mut self.amount {
                *amount = amount.with(amount.number() * factor);
                self.notes.push(format!("{from} × {} = {to}", significant(factor, 4)));
            }
        }
        if let Some(why) = self.amount.and_then(|a| impossible(property, a.number(), unit)) {
            return Err(why);
        }
        Ok(Reading {
            depth_cm: draft.depth_cm.or(deep),
            property,
            amount: self.amount,
            unit,
            method: self.method.map(|value| Known { value, from: Origin::Stated }),
            rating: self.rating.filter(|_| deep.is_none()),
            name: draft.name.clone(),
            original: draft.result.clone(),
            pairing: Pairing::Together,
            place: draft.place,
            notes: self.notes,
        })
    }
}

/// Units that this property never has: the column is something else.
pub(super) fn wrong_unit(property: Property, unit: Option<Unit>) -> Option<String> {
    let unit = unit?;
    let bare = property.unit() == Unit::None;
    let wrong = bare && !matches!(unit, Unit::None | Unit::Index)
        || property.is_share() && !matches!(unit, Unit::Percent | Unit::Index)
        || property == Property::Phosphorus && unit == Unit::Percent
        || property != Property::Ec
            && matches!(unit, Unit::DsPerM | Unit::UsPerCm)
        // Salts by weight are a conductivity times a factor that each laboratory has of its own.
        || property == Property::Ec
            && matches!(unit, Unit::MgPerKg | Unit::MgPerL | Unit::MgPer100g | Unit::Percent);
    wrong.then(|| format!("{} is never given in {}", property.label(), unit.symbol()))
}

/// How the reason begins for which a cell with two limits is no result.
pub(super) const A_RANGE: &str = "a range, not a result";

/// The whole number that `2 480` is where blanks part thousands.
fn thousands_by_blanks(draft: &Draft) -> Option<f64> {
    let mut groups = draft.result.trim().split(' ');
    let digits = |g: &str| g.bytes().all(|b| b.is_ascii_digit());
    let first = groups.next().filter(|g| digits(g) && (1..4).contains(&g.len()))?;
    let rest: Vec<&str> = groups.collect();
    let whole = !rest.is_empty() && !first.starts_with('0') && !draft.first;
    let (number, _) = number(&format!("{first}{}", rest.concat()), Decimal::Point)?;
    let (property, unit) = (draft.quantity.property, draft.unit.map(|u| u.unit));
    (whole
        && rest.iter().all(|g| g.len() == 3 && digits(g))
        && property.is_extracted()
        && !is_far_out(property, unit.or(draft.quantity.unit.map(|u| u.unit)), number))
    .then_some(number)
}

/// How the note begins that says so.
pub(super) const NO_UNIT: &str = "no unit printed;";

/// The unit, or the one that goes without saying, with a note that it was not said.
fn unit_or_usual(
    property: Property,
    unit: Option<Unit>,
    amount: Option<Amount>,
    notes: &mut Vec<String>,
) -> Option<Unit> {
    if unit.is_some() {
        return unit;
    }
    let usual = match property.unit() {
        Unit::None => return Some(Unit::None),
        // 34 of organic matter may be g/kg, and 110 of exchange capacity mmol/kg.
        Unit::Percent
            if !matches!(property, Property::TotalN | Property::FreeLime)
                && amount.is_some_and(|a| a.number() <= most_in_percent(property)) =>
        {
            Unit::Percent
        }
        Unit::MeqPer100g if amount.is_none_or(|a| a.number() <= 60.0) => Unit::MeqPer100g,
        Unit::GPerCm3 => Unit::GPerCm3,
        _ => return None,
    };
    notes.push(format!("{NO_UNIT} taken as {}, the usual one", usual.symbol()));
    Some(usual)
}

/// The most that a number without a unit can be and still be taken for per cent.
fn most_in_percent(property: Property) -> f64 {
    match property {
        Property::OrganicMatter => 20.0,
        Property::OrganicCarbon => 12.0,
        _ => 110.0,
    }
}

/// Whether the unit of a whole column can be that of this property: pH has none, and
/// organic matter in a column of ppm is still in per cent.
pub(super) fn suits(property: Property, printed: Printed) -> bool {
    property.unit() == Unit::MgPerKg || property.unit() == printed.unit
}
