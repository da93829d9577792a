//! A second look at every reading that would be used unasked. The readers of tables and lines
//! take a report for what it looks like; here is weighed what speaks against it, whichever of
//! them read it. What is doubted is asked, with the reason beside it, and nothing is dropped.

use std::collections::BTreeMap;

use super::fold::{fold, is_letter};
use super::label::Label;
use super::number::bound_in_words;
use super::place::A_RANGE;
use super::plausible::doubt;
use super::settle::{SECOND, ask_usual_unit};
use super::usual::is_far_out;
use super::{Cell, Grid, Pairing, Reading, Report, SampleReport};
use crate::quantity::Unit;
use crate::soil::Property;

/// So many results that stand with their names are a list, beside which a sentence may tell of
/// another soil or another year. Our choice.
const LIST: usize = 6;

/// Whether the number stands in a bracket that its name opens: the 5 of `pH (1:2,5)`.
fn in_a_bracket(reading: &Reading) -> bool {
    let count = |text: &str, mark: char| text.matches(mark).count();
    count(&reading.name, '(') > count(&reading.name, ')')
        && count(&reading.original, ')') > count(&reading.original, '(')
}

/// Whether the words before the number make it a limit: `Copper: more than 30 mg/kg`.
fn behind_a_bound(reading: &Reading) -> bool {
    let name = fold(&reading.name);
    let left = || reading.notes.iter().any(|n| n.ends_with("was not understood"));
    bound_in_words(&fold(&reading.original)) && left()
        || name.match_indices(' ').any(|(at, _)| bound_in_words(&name[at + 1..]))
        || bound_in_words(&name)
}

/// How the reason begins for which a result is asked.
const ASKED: &str = "asked, because ";

/// How far above a result the head of its column is looked for.
const MOST_ROWS: usize = 60;

/// Looks at all readings of a report once more.
pub(super) fn second_look(report: &mut Report, grid: &Grid) {
    let lines = lines(grid);
    let readings = || report.samples.iter().flat_map(|s| &s.readings);
    let listed = readings().filter(|r| r.pairing == Pairing::Together).count();
    let reaction_in_salt = readings().any(|r| r.property == Property::SaltPh);
    // In a list of thousands the names are few.
    let mut bounds: BTreeMap<String, bool> = BTreeMap::new();
    // Few reports name a salt, and a list of thousands must not be searched for it at each pH.
    let chloride = |c: &Cell| c.text.as_bytes().windows(2).any(|w| w.eq_ignore_ascii_case(b"cl"));
    let salt_may_be_named = grid.rows.iter().flatten().any(chloride);
    let in_salt = salt_may_be_named && grid.rows.iter().flatten().any(says_reaction_in_salt);
    let few = is_mostly_unread(report);
    let volume = names_unit(grid, &[Unit::MeqPer100cm3]);
    for sample in &mut report.samples {
        for reading in &mut sample.readings {
            if reading.pairing == Pairing::Sentence && listed >= LIST {
                ask(reading, "asked, because a sentence beside the results may tell of others");
            }
            if few {
                ask(reading, "asked, because most numbers of the page were not read");
            }
            if reading.notes.iter().any(|note| note.starts_with(ASKED)) {
                reading.pairing = Pairing::CountedOff;
            }
            if reading.unit == Some(Unit::Percent) && reading.property.is_extracted() {
                ask(reading, "asked, because what plants can reach is hardly told in %");
            }
            if is_no_index(reading) {
                reading.unit = None;
                ask(reading, "asked, because no index is so high");
            }
            if far_out(reading) {
                ask(reading, "asked, because few soils have such a number");
            }
            if follows_a_number(reading) {
                ask(reading, "asked, because another number stands before it");
            }
            if follows_a_sentence(reading) {
                ask(reading, "asked, because it stands in a sentence with other words");
            }
            if in_a_bracket(reading) {
                ask(reading, "asked, because it stands within a bracket of other words");
            }
            let bound = match bounds.get(&reading.name) {
                Some(known) => *known,
                None => *bounds.entry(reading.name.clone()).or_insert(behind_a_bound(reading)),
            };
            if bound {
                ask(reading, "asked, because words for a limit stand before it");
            }
            if volume && reading.unit == Some(Unit::MeqPer100g) {
                ask_usual_unit(reading);
            }
            if salt_may_be_named
                && !reaction_in_salt
                && reading.property == Property::Ph
                && reading.method.is_none()
                && (in_salt || says_salt(&lines, reading))
            {
                ask(reading, "asked, because a salt solution is named beside it");
            }
            open_unit(reading);
            other_unit_in_its_line(&lines, reading);
        }
        aluminium_beside_bases(sample);
        among_ranges(sample);
        mixed(sample);
    }
    rates_beside_results(&mut report.samples);
}

fn ask(reading: &mut Reading, why: &str) {
    if reading.pairing != Pairing::CountedOff {
        reading.pairing = Pairing::CountedOff;
        reading.notes.push(why.into());
    }
}

/// So few results, beside so many numbers in lines that were not read. Our choice.
const FEW: usize = 4;
const MANY: usize = 15;

/// Whether nearly nothing of a page that is full of numbers was read: what was may stand in a note
/// or a legend.
fn is_mostly_unread(report: &Report) -> bool {
    let number = |word: &&str| {
        word.starts_with(|c: char| c.is_ascii_digit())
            && word.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b','))
    };
    let read: usize = report.samples.iter().map(|s| s.readings.len()).sum();
    let listed = report.unread.iter().map(|u| u.text.split(' ').filter(number).count());
    read <= FEW && listed.filter(|count| *count > 2).sum::<usize>() > MANY
}

/// Whether another sentence ends before the name, or more words follow the number than a list has:
/// `Yeah stop. pH 6.5 is money`.
fn follows_a_sentence(reading: &Reading) -> bool {
    let ends = reading.name.split_once(". ").is_some_and(|(before, after)| {
        let word = before.rsplit(' ').next().unwrap_or(before);
        before.contains(' ')
            && word.chars().count() > 3
            && word.chars().all(is_letter)
            && !after.is_empty()
    });
    ends && reading.notes.iter().any(|n| n.starts_with("passed over"))
}

/// The rows by their lines.
fn lines(grid: &Grid) -> BTreeMap<u32, &Vec<Cell>> {
    grid.rows.iter().filter_map(|row| Some((row.first()?.place.line, row))).collect()
}

fn names_unit(grid: &Grid, units: &[Unit]) -> bool {
    let named = |text: &str| Label::of(text).unit.is_some_and(|u| units.contains(&u.unit));
    let may = |c: &&Cell| c.text.contains('/') || c.text.contains("cm");
    grid.rows.iter().flatten().filter(may).any(|c| named(&c.text))
}

fn far_out(reading: &Reading) -> bool {
    let exact = reading.amount.and_then(|a| a.exact());
    // Nothing at all of what every soil holds is a rate that need not be spread.
    let held = matches!(
        reading.property,
        Property::Phosphorus | Property::Potassium | Property::Calcium | Property::Magnesium
    );
    // What can hardly be in its unit is refused with that reason, and peat can be as sour as pH 3.
    let told = |n: f64| reading.unit.is_some_and(|unit| doubt(reading.property, n, unit).is_some());
    let reaction = matches!(reading.property, Property::Ph | Property::SaltPh);
    exact.is_some_and(|n| {
        n == 0.0 && held || !reaction && !told(n) && is_far_out(reading.property, reading.unit, n)
    })
}

/// The highest index of those that are counted from nought. Source: Fertiliser Manual RB209 (from
/// memory); indices that run to 100 and more are those of other laboratories.
const HIGHEST_INDEX: f64 = 9.0;

/// Whether an amount is taken for its index: `18 (2)` under `Phosphorus (Index)`.
fn is_no_index(reading: &Reading) -> bool {
    let beside = |text: &str| {
        text.strip_prefix('(').is_some_and(|t| t.starts_with(|c: char| c.is_ascii_digit()))
    };
    let high = reading.amount.is_some_and(|amount| amount.number() > HIGHEST_INDEX);
    let index = reading.rating.as_deref().is_some_and(beside)
        || reading.notes.iter().any(|note| note.trim_start_matches('“').starts_with('('));
    reading.unit == Some(Unit::Index) && high && index
}

/// Whether the name ends in a number that is none of its own words: `CEC (meq/100 g)   18` before
/// a `7`.
fn follows_a_number(reading: &Reading) -> bool {
    let Some((before, last)) = reading.name.trim_end().rsplit_once(' ') else { return false };
    let number = last.bytes().any(|b| b.is_ascii_digit())
        && last.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b','));
    // "Mehlich 3" and "Bray 1" are names.
    let named = || Label::of(&reading.name).methods.len() > Label::of(before).methods.len();
    // "CTC pH 7,0" says at which pH the exchange is counted.
    let at_ph = || reading.property == Property::Cec && fold(before).ends_with("ph");
    number && !named() && !at_ph()
}

/// Whether a salt in which a pH is read is named in the line of one, or over and under the `pH`
/// that heads its column.
fn says_salt(lines: &BTreeMap<u32, &Vec<Cell>>, reading: &Reading) -> bool {
    let salt = |cell: &Cell| {
        let text = fold(&cell.text);
        text.contains("kcl") || text.contains("cacl2")
    };
    let line = reading.place.line;
    if lines.get(&line).is_some_and(|row| row.iter().any(salt)) {
        return true;
    }
    let Some((head, cell)) = lines
        .range(..line)
        .rev()
        .take(MOST_ROWS)
        .find_map(|(at, row)| Some((*at, row.iter().find(|c| c.text == reading.name)?)))
    else {
        return false;
    };
    let meets = |c: &Cell| c.place.start < cell.place.end && cell.place.start < c.place.end;
    let near = head.saturating_sub(2)..=(head + 2).min(line);
    lines.range(near).any(|(_, row)| row.iter().any(|c| salt(c) && meets(c)))
}

/// Whether a note says of all pH that it is read in a salt: `pH-KCl; P and K in mg/100 g`.
fn says_reaction_in_salt(cell: &Cell) -> bool {
    let text = fold(&cell.text);
    text.match_indices("ph").any(|(at, _)| {
        let rest = text[at + 2..].trim_start_matches([' ', '-', '(', ':', '_']);
        let rest = rest.strip_prefix("in ").unwrap_or(rest);
        rest.starts_with("kcl") || rest.starts_with("cacl")
    })
}

/// A unit from a heading that the number can't have is left open; one that stands with the number
/// is what the laboratory says.
fn open_unit(reading: &mut Reading) {
    let Some((unit, amount)) = reading.unit.zip(reading.amount) else { return };
    if doubt(reading.property, amount.number(), unit).is_some()
        && matches!(unit, Unit::MgPerKg | Unit::MgPerL)
        && amount.exact().is_some()
        && Label::of(&reading.original).unit.is_none()
    {
        leave_open(reading, unit);
    }
}

/// A column that holds ranges too is what somebody aims at, whatever its head is called.
fn among_ranges(sample: &mut SampleReport) {
    let ranges = sample.unread.iter().filter(|u| u.reason.starts_with(A_RANGE)).count();
    if ranges > 1 {
        for reading in &mut sample.readings {
            ask(reading, "asked, because ranges stand among these results");
        }
    }
}

/// Whether the result was printed as an oxide, the form in which rates of fertiliser are told.
fn as_oxide(reading: &Reading) -> bool {
    reading.notes.iter().any(|n| n.starts_with("P2O5 ×") || n.starts_with("K2O ×"))
}

/// Whether it could be a rate: an amount for an area, or one of which nothing says what it is.
fn may_be_rate(reading: &Reading) -> bool {
    matches!(reading.unit, None | Some(Unit::LbPerAcre | Unit::KgPerHa))
}

/// Rows of one list stand so near. Our choice.
const NEAR: u32 = 8;

/// Phosphate and potash for an area, where the report tells what the soil holds of these elsewhere
/// and otherwise, are rates, and so is what is told with them.
fn rates_beside_results(samples: &mut [SampleReport]) {
    let all = || samples.iter().flat_map(|s| &s.readings);
    let found: Vec<Property> = all()
        .filter(|r| r.unit.is_some() && !(may_be_rate(r) && as_oxide(r)))
        .map(|r| r.property)
        .collect();
    for sample in samples {
        let rates: Vec<(u32, Option<Unit>)> = sample
            .readings
            .iter()
            .filter(|r| as_oxide(r) && may_be_rate(r) && found.contains(&r.property))
            .map(|r| (r.place.line, r.unit))
            .collect();
        for reading in sample.readings.iter_mut().filter(|r| r.property.is_extracted()) {
            let with = |(line, unit): &(u32, Option<Unit>)| {
                reading.unit == *unit && reading.place.line.abs_diff(*line) <= NEAR
            };
            if rates.iter().any(with) {
                ask(reading, "asked, because it may be a rate of fertiliser");
            }
        }
    }
}

/// Aluminium stands in one group with the bases: where their unit can't be right, neither can its.
fn aluminium_beside_bases(sample: &mut SampleReport) {
    let opened = |r: &Reading, unit: Unit| {
        matches!(r.property, Property::Calcium | Property::Magnesium)
            && r.notes.iter().any(|n| *n == column_says(unit))
    };
    for unit in [Unit::MgPerKg, Unit::MgPerL] {
        if sample.readings.iter().any(|r| opened(r, unit)) {
            let own = |r: &&mut Reading| r.property == Property::Aluminum && r.unit == Some(unit);
            sample.readings.iter_mut().filter(own).for_each(|r| leave_open(r, unit));
        }
    }
}

/// A unit that was said further up does not go without saying where the line of the result heads
/// its results with another: `Trace elements (mg/kg)  Zinc 1.9  Copper 2.7`.
fn other_unit_in_its_line(lines: &BTreeMap<u32, &Vec<Cell>>, reading: &mut Reading) {
    let inferred = |n: &String| n.starts_with("line ") && n.contains("gives the unit");
    if !reading.notes.iter().any(inferred) {
        return;
    }
    let before = |c: &&Cell| c.place.start <= reading.place.start;
    let row = lines.get(&reading.place.line).map_or(&[][..], |row| &row[..]);
    let words = row.iter().filter(before).flat_map(|c| c.text.split([' ', '(', ')', ':', ',']));
    let units = words.filter(|w| w.contains('/')).filter_map(|w| Label::of(w).only_unit());
    let units = units.filter(|u| matches!(u.unit, Unit::MgPerKg | Unit::GPerKg | Unit::MgPerL));
    let other = units.map(|u| u.unit).find(|unit| Some(*unit) != reading.unit);
    if let Some(unit) = other.filter(|_| reading.unit.is_some()) {
        reading.notes.retain(|n| !inferred(n));
        reading.unit = None;
        reading.notes.push(format!("{} stands in its line too", unit.symbol()));
    }
}

fn leave_open(reading: &mut Reading, unit: Unit) {
    reading.unit = None;
    reading.notes.push(column_says(unit));
}

fn column_says(unit: Unit) -> String {
    format!("its column says {}, which can hardly be", unit.symbol())
}

/// Where many properties have two numbers each, two samples were taken for one.
fn mixed(sample: &mut SampleReport) {
    let twice = |r: &&Reading| r.notes.iter().any(|n| n.contains(SECOND));
    for reading in sample.readings.iter_mut().filter(|r| twice(&&**r)) {
        ask(reading, "asked, because the report gives two numbers for it");
    }
    if sample.readings.iter().filter(twice).count() * 4 >= sample.readings.len() {
        for reading in &mut sample.readings {
            ask(reading, "asked, because the results of two samples may be mixed here");
        }
    }
}
