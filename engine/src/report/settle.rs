//! What is left when all lines are read: methods and units named for the
//! whole report go to the readings that lack them, and a result that stands
//! twice is kept once.

use super::about::{Statement, method_for};
use super::label::saturation_of;
use super::place::NO_UNIT;
use super::units::Printed;
use super::{Known, Origin, Pairing, Reading, SampleReport, Unread};
use crate::quantity::{Context, Unit, convert};
use crate::soil::{Method, Property};

/// Settles one sample.
pub(super) fn settle(sample: &mut SampleReport, statements: &[Statement], units: &[UnitSaid]) {
    for reading in &mut sample.readings {
        infer_method(reading, statements);
        infer_unit(reading, units);
        of_the_extract(reading);
    }
    shares_by_their_sum(sample);
    usual_beside_others(sample);
    fractions_in_one_unit(sample);
    shares_without_lime(sample);
    indices_to_ratings(sample);
    once_each(sample);
}

fn infer_method(reading: &mut Reading, statements: &[Statement]) {
    if reading.method.is_some() {
        return;
    }
    let Some(found) = method_for(statements, reading.property) else { return };
    let said = format!("line {} names {} for the whole report", found.line, found.method.label());
    if found.method == Method::CaCl2 && reading.property == Property::Ph {
        reading.property = Property::SaltPh;
        reading.notes.push(format!("{said}, so this is salt pH"));
    }
    reading.method = Some(Known { value: found.method, from: Origin::Inferred(said) });
}

/// A unit that a line without results names.
#[derive(Clone, Debug)]
pub(super) struct UnitSaid {
    pub printed: Printed,
    pub line: u32,
    /// Only for the results below it, as in `TRACE ELEMENTS (mg/kg)`.
    pub below: bool,
}

fn infer_unit(reading: &mut Reading, units: &[UnitSaid]) {
    if reading.unit.is_some() || !reading.property.shares_unit() {
        return;
    }
    let above = units.iter().rev().find(|u| u.below && u.line < reading.place.line);
    if let Some(UnitSaid { printed, line, .. }) = above.or_else(|| units.iter().find(|u| !u.below))
    {
        reading.unit = Some(printed.unit);
        reading.notes.push(format!("line {line} gives the unit {}", printed.unit.symbol()));
    }
}

/// A potting mix is extracted by its volume, and what is found is counted in the extract: there
/// ppm is mg in a litre.
fn of_the_extract(reading: &mut Reading) {
    let of_mix = reading.method.as_ref().is_some_and(|m| m.value == Method::SaturatedMedia);
    if of_mix && reading.unit == Some(Unit::MgPerKg) {
        reading.unit = Some(Unit::MgPerL);
        reading.notes.push("ppm of this extract is mg/L".into());
    }
}

/// Where other results by charge have another unit, the usual one does not go without saying.
fn usual_beside_others(sample: &mut SampleReport) {
    let other = |r: &Reading| matches!(r.unit, Some(Unit::MeqPer100cm3 | Unit::MmolcPerKg));
    if !sample.readings.iter().any(other) {
        return;
    }
    sample
        .readings
        .iter_mut()
        .filter(|r| r.unit == Some(Unit::MeqPer100g))
        .for_each(ask_usual_unit);
}

/// Leaves the unit open that was taken because it is usual.
pub(super) fn ask_usual_unit(reading: &mut Reading) {
    let usual = |note: &String| note.starts_with(NO_UNIT);
    if reading.notes.iter().any(usual) {
        reading.unit = None;
        reading.notes.retain(|note| !usual(note));
    }
}

/// Cations one after the other without a unit that come to 100 are shares of the exchange.
fn shares_by_their_sum(sample: &mut SampleReport) {
    let open = |r: &Reading| r.unit.is_none() || r.notes.iter().any(|n| n.starts_with(NO_UNIT));
    let share = |r: &Reading| saturation_of(r.property).filter(|_| open(r));
    let mut from = 0;
    while from < sample.readings.len() {
        let rest = &sample.readings[from..];
        let of = |n: usize| rest[..n].iter().any(|r| r.property == rest[n].property);
        let length = (0..rest.len()).take_while(|&n| share(&rest[n]).is_some() && !of(n)).count();
        let run = &mut sample.readings[from..from + length];
        let sum: f64 = run.iter().filter_map(|r| r.amount).map(|a| a.number()).sum();
        let bases = [Property::Calcium, Property::Magnesium, Property::Potassium];
        let all = bases.iter().all(|p| run.iter().any(|r| r.property == *p));
        if all && length > 3 && (sum - 100.0).abs() < 1.0 {
            for reading in run {
                reading.property = saturation_of(reading.property).unwrap_or(reading.property);
                ask_usual_unit(reading);
                reading.unit = Some(Unit::Percent);
                reading.notes.push("these come to 100, so they are shares of the exchange".into());
            }
        }
        from += length.max(1);
    }
}

/// Sand, silt and clay have one unit. Where they come to a thousand it is g/kg; where they come to
/// neither that nor a hundred, none goes without saying.
fn fractions_in_one_unit(sample: &mut SampleReport) {
    let fraction = |r: &Reading| {
        matches!(r.property, Property::Sand | Property::Silt | Property::Clay)
            && r.depth_cm.is_none()
    };
    let own: Vec<&Reading> = sample.readings.iter().filter(|r| fraction(r)).collect();
    let usual = |r: &Reading| r.unit.is_none() || r.notes.iter().any(|n| n.starts_with(NO_UNIT));
    let open = own.iter().filter(|r| usual(r)).count();
    let stated = own.iter().find(|r| !usual(r)).map(|r| r.unit);
    let sum: f64 = own.iter().filter_map(|r| r.amount).map(|a| a.number()).sum();
    let about = |whole: f64| own.len() == 3 && (sum / whole - 1.0).abs() < OFF_THE_WHOLE;
    let unit = match stated {
        _ if open == 0 => return,
        _ if about(1000.0) => Some(Unit::GPerKg),
        Some(Some(Unit::GPerKg)) => None,
        _ if own.len() < 3 || about(100.0) => return,
        _ => None,
    };
    for reading in sample.readings.iter_mut().filter(|r| fraction(r) && usual(r)) {
        ask_usual_unit(reading);
        reading.unit = unit;
        if let Some(unit) = unit {
            let why = format!("sand, silt and clay come to 1000, so in {}", unit.symbol());
            reading.notes.push(why);
        }
    }
}

/// How far fractions may be off the whole: laboratories round. Our choice.
const OFF_THE_WHOLE: f64 = 0.03;

/// The bases hold more than all of the exchange only where lime is counted with them; elsewhere
/// such a number is a slip.
fn shares_without_lime(sample: &mut SampleReport) {
    let number = |r: &Reading| r.amount.map_or(0.0, |a| a.number());
    let limy = sample.readings.iter().any(|r| match r.property {
        Property::Ph => number(r) >= LIMY_FROM_PH,
        Property::FreeLime => number(r) > 0.0,
        _ => false,
    });
    let slip = |r: &mut Reading| {
        r.property == Property::BaseSaturation && !limy && number(r) > MOST_WITHOUT_LIME
    };
    for reading in sample.readings.extract_if(.., slip) {
        let reason = format!(
            "base saturation {} % can't be where the soil has no lime. Check the column it stands in.",
            reading.original
        );
        sample.unread.push(Unread {
            text: format!("{}: {}", reading.name, reading.original),
            reason,
            place: reading.place,
        });
    }
}

/// From this pH a soil has free lime as a rule. Source: common practice, no source.
const LIMY_FROM_PH: f64 = 7.5;
/// The most that bases can hold where there is none, %: a tenth is left for the laboratory. Our
/// choice.
const MOST_WITHOUT_LIME: f64 = 110.0;

/// A laboratory's index beside an amount of the same nutrient is its rating.
fn indices_to_ratings(sample: &mut SampleReport) {
    let is_index = |r: &Reading| r.unit == Some(Unit::Index);
    if !sample.readings.iter().any(is_index) {
        return;
    }
    let amount_of = |property: Property| {
        sample
            .readings
            .iter()
            .position(|r| r.property == property && !is_index(r) && r.amount.is_some())
    };
    let mut ratings = Vec::new();
    sample.readings.iter().filter(|r| is_index(r)).for_each(|r| {
        if let Some(i) = amount_of(r.property) {
            let text = r.rating.clone().unwrap_or_else(|| r.original.clone());
            ratings.push((i, format!("index {text}")));
        }
    });
    for (i, text) in &ratings {
        let rating = &mut sample.readings[*i].rating;
        *rating = Some(rating.take().map_or(text.clone(), |r| format!("{r}, {text}")));
    }
    let rated: Vec<Property> =
        ratings.iter().map(|r: &(usize, String)| sample.readings[r.0].property).collect();
    sample.readings.retain(|r| !is_index(r) || !rated.contains(&r.property));
}

/// What a note says where the report gives a second number.
pub(super) const SECOND: &str = " for it too";

/// How far two units of one result may be apart where both are rounded. Our choice.
const ROUNDED: f64 = 0.08;

/// Whether two readings say the same in two units.
fn is_the_same(a: &Reading, b: &Reading) -> bool {
    let (Some(from), Some(to)) = (a.unit, b.unit) else { return false };
    let (Some(x), Some(y)) = (a.amount, b.amount) else { return false };
    let context = Context::FURROW_SLICE.with_charge(a.property.mg_per_mmolc());
    let same = |x: f64| (x - y.number()).abs() <= ROUNDED * x.max(y.number());
    from != to && convert(x.number(), from, to, &context).is_ok_and(same)
}

/// Keeps one reading for each property and method. Of two, the first stays,
/// unless only the second can be used without the sampling depth.
fn once_each(sample: &mut SampleReport) {
    let key = |r: &Reading| (r.property, r.method.as_ref().map(|m| m.value));
    let again = |(i, r): (usize, &Reading)| sample.readings[..i].iter().any(|k| key(k) == key(r));
    if !sample.readings.iter().enumerate().any(again) {
        return;
    }
    let mut kept: Vec<Reading> = Vec::with_capacity(sample.readings.len());
    for mut reading in std::mem::take(&mut sample.readings) {
        let Some(index) = kept.iter().position(|k| key(k) == key(&reading)) else {
            kept.push(reading);
            continue;
        };
        let per_area = |r: &Reading| matches!(r.unit, Some(Unit::LbPerAcre | Unit::KgPerHa));
        // A sentence may tell of another soil; a list does not.
        let told = |r: &Reading| r.pairing == Pairing::Sentence;
        let better = told(&kept[index]) && !told(&reading)
            || kept[index].amount.is_none() && reading.amount.is_some()
            || (per_area(&kept[index]) || kept[index].unit.is_none())
                && !per_area(&reading)
                && reading.unit.is_some();
        if better {
            std::mem::swap(&mut kept[index], &mut reading);
        }
        let (stays, goes) = (&kept[index], reading);
        let label = goes.property.label();
        let reason = if is_the_same(&goes, stays) {
            format!("the same {label} again, in another unit")
        } else if goes.unit != stays.unit {
            format!("{label} again in another unit; the one on line {} is used", stays.place.line)
        } else if goes.amount == stays.amount {
            format!("the same {label} again")
        } else {
            format!(
                "a second {label} for the same sample; {} on line {} is used",
                stays.original, stays.place.line
            )
        };
        let second = goes.original.contains(|c: char| c.is_ascii_digit());
        if goes.unit == stays.unit && goes.amount != stays.amount && second && !told(&goes) {
            // Said at the reading too: nobody but the reader knows which of the two is right.
            let note = format!(
                "line {} gives {}{SECOND}; correct this one if that is right",
                goes.place.line, goes.original
            );
            kept[index].notes.push(note);
        }
        sample.unread.push(Unread {
            text: format!("{}: {}", goes.name, goes.original),
            reason,
            place: goes.place,
        });
    }
    sample.readings = kept;
}
