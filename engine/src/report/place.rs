//! A name and a result to a [`Reading`], or the reason why not.

use super::about::depth_at;
use super::label::{Label, Quantity, one_form, saturation_of};
use super::names::Word;
use super::number::{Decimal, Said, is_rating, number, said};
use super::oxide::share;
use super::plausible::impossible;
use super::units::{Printed, unit_at};
use super::{Known, Origin, Place, Reading, fold};
use crate::quantity::{Unit, significant};
use crate::soil::{Amount, Method, Property};

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
    /// The depth in its name, as in `Nitrate-N 0-24 in`.
    pub depth_cm: Option<(f64, f64)>,
}

/// What became of a result.
#[derive(Clone, Debug)]
pub(super) enum Placed {
    Reading(Reading),
    /// Nothing was measured.
    Missing,
    /// Why it can't be placed.
    Unread(String),
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

impl Tail {
    /// Takes apart what follows a number.
    pub fn of(text: &str, decimal: Decimal) -> Tail {
        let (before, text) = text.split_at(spread(text, decimal));
        let mut tail = Tail::behind_spread(text, decimal);
        if !before.is_empty() {
            tail.unit_end += before.len();
            tail.spread = Some(before.trim().into());
        }
        tail
    }

    fn behind_spread(text: &str, decimal: Decimal) -> Tail {
        let mut tail = Tail::default();
        if text.is_empty() {
            return tail;
        }
        let near: &str = &text[..text.char_indices().nth(60).map_or(text.len(), |(b, _)| b)];
        let words = fold::words(near);
        if let Some((unit, length)) = unit_at(&words, 0) {
            tail.unit = Some(unit);
            tail.unit_end = words[length - 1].end;
        }
        let mut rest = text[tail.unit_end..]
            .trim_matches(|c: char| c.is_whitespace() || matches!(c, ',' | ';' | ':' | '|'));
        rest = rest.strip_prefix("– ").or_else(|| rest.strip_prefix("- ")).unwrap_or(rest);
        // Marks of footnotes, and the full stop of a sentence.
        if is_only_marks(rest) {
            rest = "";
        }
        // "640 S": sufficient, since sulfur would bring its own number.
        if tail.unit.is_none() && rest == "S" {
            tail.rating = Some(rest.to_string());
            return tail;
        }
        // "ppm P" says the element once more.
        if tail.unit.is_some()
            && rest.len() <= 2
            && Label::of(rest).properties.len() == 1
            && !is_rating(rest)
        {
            rest = "";
        }
        if rest.is_empty() {
            return tail;
        }
        // "(H), K 120 ppm" and "(Mehlich 3), K 120 ppm": a rating or a method, and then more.
        if let Some((first, more)) = rest.split_once([',', ';'])
            && !more.trim().is_empty()
        {
            if is_rating(first) {
                tail.rating = Some(first.trim_matches(['(', ')', ' ']).to_string());
            } else {
                tail.method = Label::of(first).only_method();
            }
            if tail.rating.is_some() || tail.method.is_some() {
                tail.left = Some(more.trim().to_string());
                return tail;
            }
        }
        // "18 L ppm": the rating stands before the unit.
        if let Some((first, more)) = rest.split_once(' ')
            && tail.unit.is_none()
            && is_rating(first)
            && let Some(unit) = Label::of(more).only_unit()
        {
            tail.rating = Some(first.to_string());
            tail.unit = Some(unit);
            return tail;
        }
        let label = Label::of(rest);
        let range = matches!(said(rest.trim_matches(['(', ')', '[', ']']), decimal), Said::Range);
        let index = label.has(Word::Index) && label.properties.is_empty();
        if matches!(rest, "-" | "+" | "−") || is_rating(rest) || range || index {
            tail.rating = Some(rest.trim_matches(['(', ')']).to_string());
        } else if let Some(method) = label.only_method() {
            tail.method = Some(method);
        } else {
            tail.left = Some(rest.to_string());
        }
        tail
    }
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

/// Makes the reading.
pub(super) fn place(draft: &Draft, decimal: Decimal) -> Placed {
    let Draft { quantity, name, result, place, .. } = draft;
    let (mut rating, left) = (draft.rating.clone(), draft.left.clone());
    let mut property = quantity.property;
    let mut notes = quantity.notes.clone();
    // A unit that is printed but not known here rules out the usual one.
    let mut foreign = false;
    let mut unit = draft.unit;
    let mut stated = quantity.method.or(draft.method);
    let amount = match said(result, decimal) {
        Said::Missing => return Placed::Missing,
        Said::Amount(amount, end) => {
            let tail = Tail::of(&result[end..], decimal);
            unit = tail.unit.or(unit);
            stated = stated.or(tail.method);
            if let Some(own) = tail.rating {
                // 2- and 2+ are halves of an index step.
                let own = match own.as_str() {
                    "-" | "+" | "−" => format!("{}{own}", significant(amount.number(), 4)),
                    _ => own,
                };
                rating = Some(rating.map_or(own.clone(), |r| format!("{own}, {r}")));
            }
            if let Some(spread) = tail.spread {
                notes.push(format!("the laboratory gives it as {spread}"));
            }
            if let Some(text) = tail.left {
                foreign |= looks_like_unit(&text);
                notes.push(format!("“{text}” after the result was not understood"));
            }
            Some(amount)
        }
        Said::NotDetected => {
            notes.push("not detected; the report gives no limit".into());
            None
        }
        Said::Range => {
            return Placed::Unread(format!(
                "a range, not a result: no number of your own stands beside {}",
                property.label()
            ));
        }
        Said::Text if is_rating(result) => match in_bracket(result, decimal) {
            Some((amount, printed, word)) => {
                rating.get_or_insert_with(|| word.into());
                unit = Some(printed);
                Some(amount)
            }
            None => {
                rating.get_or_insert_with(|| result.clone());
                notes.push("only a rating is printed, no number".into());
                None
            }
        },
        Said::Text => {
            return Placed::Unread(format!(
                "not a number, so not a result for {}",
                property.label()
            ));
        }
    };
    let om_or_mo = matches!(property, Property::OrganicMatter | Property::Molybdenum);
    if om_or_mo && fold::squash(name) == "mo" {
        match mo_is(name, unit.or(quantity.unit).map(|u| u.unit)) {
            Some(found) => property = found,
            None => {
                return Placed::Unread(
                    "MO can be organic matter (matière organique) or molybdenum (Mo): write which"
                        .into(),
                );
            }
        }
    }
    if let Some(text) = left.as_deref()
        && (Label::of(text).has(Word::Advice) || fold::squash(text).contains("00sq"))
    {
        // "1.5 lb/1000 sq ft recommended": no soil is measured in such a unit.
        return Placed::Unread("a recommendation, not a result".into());
    }
    let mut form = quantity.form;
    if let Some(text) = left.filter(|t| !is_only_marks(t)) {
        let label = Label::of(&text);
        let own = label.properties.first().filter(|p| p.0 == quantity.property);
        if text.starts_with(['(', '=']) && label.unit.is_some() {
            // "1.2 meq/100g = 146 ppm (NH4OAc)"
            notes.push(format!("“{text}” was taken as the same result in another unit"));
            stated = stated.or(label.methods.first().copied());
        } else if let (Some(&(_, said)), Some(printed), None) = (own, label.unit, unit) {
            // "24 mg P2O5/100 g" names the form within the unit.
            form = one_form(form, said);
            unit = Some(printed);
        } else {
            foreign |= looks_like_unit(&text);
            notes.push(format!("“{text}” beside the result was not understood"));
        }
    }
    let unit = unit.or(quantity.unit);
    let (mut amount, unit) = match (amount, unit) {
        (Some(a), Some(p)) if p.scale != 1.0 => {
            notes.push(format!("× {} to {}", p.scale, p.unit.symbol()));
            (Some(a.with(a.number() * p.scale)), Some(p.unit))
        }
        (amount, unit) => (amount, unit.map(|u| u.unit)),
    };
    if quantity.lime_index
        && let Some(a) = amount.filter(|a| a.number() > 14.0)
    {
        let ph = a.number() / 10.0;
        notes.push(format!("lime test index {} ÷ 10 = buffer pH {ph}", significant(a.number(), 4)));
        amount = Some(a.with(ph));
    }
    if unit == Some(Unit::Percent)
        && let Some(share) = saturation_of(property)
    {
        notes.push("in %, so its share of the exchange capacity".into());
        property = share;
    }
    if quantity.share_if_percent && unit.is_none() {
        return Placed::Unread(
            "“sat” can mean a share of the exchange or a saturated paste: write % beside it".into(),
        );
    }
    if property == Property::Sodium
        && name.contains("NA")
        && matches!(unit, Some(Unit::MeqPer100g | Unit::MeqPer100cm3))
    {
        return Placed::Unread(
            "NA in meq can be sodium or neutralizable acidity: write which".into(),
        );
    }
    if let Some(why) = wrong_unit(property, unit) {
        return Placed::Unread(why);
    }
    // "34 kg/ha (0-60 cm)"
    let deep = rating.as_deref().and_then(|r| depth_at(r, "", decimal));
    let rating = rating.filter(|_| deep.is_none());
    let unit = if foreign && unit.is_none() {
        None
    } else {
        unit_or_usual(property, unit, amount, &mut notes)
    };
    if let Some(share) = share(form) {
        if matches!(unit, Some(Unit::MeqPer100g | Unit::MmolcPerKg | Unit::MeqPer100cm3)) {
            notes.push(format!("counted by charge, so {} is the same as {}", share.from, share.to));
        } else if let Some(a) = amount {
            amount = Some(a.with(a.number() * share.factor));
            notes.push(format!("{} × {} = {}", share.from, significant(share.factor, 4), share.to));
        }
    }
    if let Some(why) = amount.and_then(|a| impossible(property, a.number(), unit)) {
        return Placed::Unread(why);
    }
    Placed::Reading(Reading {
        depth_cm: draft.depth_cm.or(deep),
        property,
        amount,
        unit,
        method: stated.map(|value| Known { value, from: Origin::Stated }),
        rating,
        name: name.clone(),
        original: result.clone(),
        place: *place,
        notes,
    })
}

/// Units that this property never has: the column is something else.
fn wrong_unit(property: Property, unit: Option<Unit>) -> Option<String> {
    let unit = unit?;
    let bare = property.unit() == Unit::None;
    let wrong = bare && !matches!(unit, Unit::None | Unit::Index)
        || property.is_share() && !matches!(unit, Unit::Percent | Unit::Index)
        || property == Property::Phosphorus && unit == Unit::Percent;
    wrong.then(|| format!("{} is never given in {}", property.label(), unit.symbol()))
}

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
    notes.push(format!("no unit printed; taken as {}, the usual one", usual.symbol()));
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
