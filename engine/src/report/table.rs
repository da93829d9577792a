//! Tables: one sample a row, or one property a row.

use std::collections::{BTreeMap, BTreeSet};

use super::about::{AboutSample, NO_DEPTH_UNIT, NO_TEXTURE, about_sample, covers, depth, depth_at};
use super::column_heads::headed;
use super::element_rows::element_rows;
use super::fold::squash;
use super::grid::{cell_at, filled, text_at};
use super::label::{Label, Quantity, saturation_of};
use super::languages::HOW_FAR_OFF;
use super::layout::{Role, head, is_result, names_property, role, speaks_for_itself};
use super::lines::read_row;
use super::names::{Form, Word};
use super::no_samples::{calls_a_side, is_aim, is_of_several};
use super::number::{Decimal, is_range, is_rating, is_year};
use super::place::{Draft, suits};
use super::reader::{MOST_READINGS, Reader, whole};
use super::sample_names::{self, Names, ranked};
use super::stacked_heads::is_code;
use super::textures::texture;
use super::units::Printed;
use super::{Cell, Pairing, Trouble};
use crate::quantity::Unit;
use crate::soil::{Method, Property};

/// How many rows are looked at for the names of the samples.
const NEAR: usize = 200;

/// A column of results with what its heading, and a row of units, say of it.
struct Column {
    index: usize,
    draft: Draft,
    /// A column of ratings or units right beside it.
    rating: Option<usize>,
}

/// The columns of results.
fn columns(reader: &mut Reader, heading: &[Cell], roles: &[Role]) -> Vec<Column> {
    let mut columns: Vec<Column> = Vec::new();
    for (index, role) in roles.iter().enumerate() {
        let Cell { text, place } = &heading[index];
        match role {
            Role::Results(_) if columns.len() >= MOST_READINGS => {
                let reason = "the table has more results than any laboratory gives";
                reader.unread(None, text, reason, *place);
            }
            Role::Results(quantity) => {
                let draft = Draft::of((**quantity).clone(), text, *place, reader.decimal);
                columns.push(Column { index, draft, rating: None });
            }
            Role::Ratings => {
                if let Some(left) = columns.last_mut().filter(|c| c.index + 1 == index) {
                    left.rating = Some(index);
                }
            }
            _ => {}
        }
    }
    columns
}

/// Reads a table with one sample a row, the first of them at `from`; returns the row after it.
pub(super) fn samples_down(
    reader: &mut Reader,
    rows: &[Vec<Cell>],
    from: usize,
    heading: &[Cell],
    roles: &[Role],
) -> Result<usize, Trouble> {
    let decimal = reader.decimal;
    let columns = columns(reader, heading, roles);
    let first = columns.first().map_or(0, |c| c.index);
    // An average of the samples is none.
    // "Lower" beside "Hoop 1" and "Garlic" is a place; beside "Upper" it may be a limit.
    let sides = |row: &&Vec<Cell>| filled(row).next().is_some_and(|c| calls_a_side(&c.text));
    let lone_side = rows[from..].iter().take(NEAR).filter(sides).count() == 1;
    let about = |row: &Vec<Cell>| {
        let first = filled(row).next().filter(|c| !(lone_side && calls_a_side(&c.text)));
        first.is_some_and(|c| matches!(called(&c.text), Role::Ratings))
            || is_of_limits(row, decimal)
    };
    let holds = |row: &&Vec<Cell>| {
        columns.iter().any(|c| is_result(text_at(row, c.index), decimal)) && !about(row)
    };
    // A narrower table below is another.
    let full = rows[from..].iter().find(holds).map_or(0, Vec::len);
    let narrow = |row: &&Vec<Cell>| row.len() > 1 && row.len() * 2 < full;
    let near = rows[from..].iter().take(NEAR).take_while(|row| !narrow(row));
    let held: Vec<&Vec<Cell>> = near.filter(holds).collect();
    let names = sample_names::names(&held, heading, roles, first);
    let named = held.iter().filter(|r| names.is_some_and(|n| !n.of(r).is_empty())).count();
    let mut table = Samples {
        lone_side,
        heading,
        roles,
        names,
        all_named: named > 1 && named * 2 > held.len(),
        columns,
        two_depths: two_depths(heading, roles),
        seen: vec![false; roles.len()],
        unclear: BTreeMap::new(),
        surplus: None,
        count: 0,
        last: 0,
        name: None,
        before: reader.report.samples.len(),
    };
    let mut described = 0;
    let mut end = from;
    while let Some(row) = rows.get(end) {
        reader.look_at(row)?;
        let filled = filled(row).count();
        let holds = table
            .columns
            .iter()
            .map(|c| text_at(row, c.index))
            .any(|text| is_result(text, decimal) || is_rating(text) && filled > 2);
        if is_again(row, heading) {
            // The head once more, at a page break.
        } else if !holds && table.count == 0 && described < 3 && describe(row, &mut table.columns) {
            described += 1;
        } else if holds
            && fits(row, &table.columns, decimal)
            && !names_results(row, &table.columns, decimal)
        {
            table.take(reader, row, rows.get(end + 1).map_or(&[], Vec::as_slice))?;
        } else if let Some((names, taken)) = sample_names::identities(rows, end) {
            reader.aliases.extend(names);
            end += taken;
            continue;
        } else if table.count > 0
            && (head(rows, end, decimal).is_some() || headed(rows, end, decimal).is_some())
        {
            break;
        } else if filled > 2
            && filled * 2 > table.columns.len()
            && !holds
            && (table.columns.is_empty() || read_row(row, decimal).drafts.is_empty())
        {
            let (text, place) = whole(row);
            reader.unread(None, &text, "a row of the table without results", place);
        } else {
            reader.end_table(table.count, table.last);
            let before = reader.stated_name().map(String::from);
            reader.free_row(row)?;
            // The name of the next sample: what follows is a table of its own.
            if table.count > 0 && reader.stated_name().map(String::from) != before {
                end += 1;
                break;
            }
        }
        end += 1;
    }
    table.list_what_is_left(reader);
    reader.end_table(table.count, table.last);
    Ok(end)
}

/// A table with one sample a row, while it is read.
struct Samples<'a> {
    heading: &'a [Cell],
    roles: &'a [Role],
    columns: Vec<Column>,
    /// The columns that name the samples, and whether most rows have a name.
    names: Option<Names>,
    all_named: bool,
    two_depths: Option<(usize, usize)>,
    /// Whether one sample is called by its side alone, as `Lower`.
    lone_side: bool,
    /// Columns that hold something beside the results.
    seen: Vec<bool>,
    /// Columns about the samples that could not be understood, and why.
    unclear: BTreeMap<usize, &'static str>,
    /// Whether the first row has numbers beyond the last heading, as all have where the last
    /// column lacks its name.
    surplus: Option<bool>,
    /// How many samples there are, the last of them in the report, and its name.
    count: usize,
    last: usize,
    name: Option<String>,
    /// How many samples stood before this table.
    before: usize,
}

impl Samples<'_> {
    /// The codes of a row's sample, by which a later table may call it.
    fn codes<'r>(&self, row: &'r [Cell]) -> Vec<&'r str> {
        let first = self.columns.first().map_or(0, |c| c.index);
        let told =
            |i: &usize| matches!(self.roles[*i], Role::Sample(_) | Role::Other | Role::Blank);
        let texts = (0..first.min(self.roles.len())).filter(told).map(|i| text_at(row, i));
        texts.filter(|text| text.len() > 1 && is_code(text)).collect()
    }

    /// Takes a row of results, or of ratings below them.
    fn take(&mut self, reader: &mut Reader, row: &[Cell], next: &[Cell]) -> Result<(), Trouble> {
        for (seen, cell) in self.seen.iter_mut().zip(row) {
            *seen |= !cell.is_blank();
        }
        let named = match self.names.map(|n| text_at(row, n.best)) {
            Some(name) if self.lone_side && calls_a_side(name) => Role::Other,
            name => name.map_or(Role::Blank, called),
        };
        let first = filled(row).next();
        if self.count > 0 && first.is_some_and(is_unit_or_share) {
            let (text, place) = whole(row);
            let reason = "the same results in another unit, or sums of them";
            reader.unread(None, &text, reason, place);
            return Ok(());
        }
        // "Critical limit" may stretch over the columns before the results.
        let begins = || first.map_or(Role::Blank, |c| called(&c.text));
        // A texture may be medium as well.
        let texture = matches!(self.roles.first(), Some(Role::Texture));
        let nameless = self.names.map_or(!texture, |n| text_at(row, n.best).is_empty());
        let says_so =
            matches!(named, Role::Ratings) || nameless && matches!(begins(), Role::Ratings);
        // "MIN" may be the class of a mineral soil.
        let spelled_out = first.is_some_and(|c| c.text.len() > 3);
        let depths: Vec<&Cell> = (0..self.roles.len())
            .filter(|i| matches!(self.roles[*i], Role::Depth))
            .filter_map(|i| cell_at(row, i))
            .collect();
        let deep = !depths.is_empty();
        // The sum over several depths is that of no sample.
        if depths.iter().any(|c| matches!(called(&c.text), Role::Ratings)) {
            let (text, place) = whole(row);
            reader.unread(None, &text, "a row about the results, not a result", place);
            return Ok(());
        }
        // Where samples have names, numbers without one above them are limits.
        let lead = self.columns.first().map_or(0, |c| c.index);
        let bare = !(0..lead).any(|i| cell_at(row, i).is_some());
        if self.count == 0 && self.all_named && lead > 0 && bare && !deep {
            let (text, place) = whole(row);
            reader.unread(None, &text, "numbers without the name of a sample", place);
            return Ok(());
        }
        if says_so && spelled_out && self.count == 0 {
            let (text, place) = whole(row);
            reader.unread(None, &text, "a row about the results, not a result", place);
            return Ok(());
        }
        if self.count > 0 && (says_so || filled(row).all(|c| is_rating(&c.text))) {
            self.rate(reader, row, says_so);
            return Ok(());
        }
        if is_of_limits(row, reader.decimal) {
            let (text, place) = whole(row);
            reader.unread(None, &text, "a target or a range, not a result", place);
            return Ok(());
        }
        // "Base dressing" is none either.
        if first.is_some_and(|c| Label::of(&c.text).has(Word::Advice)) && self.count > 0 {
            let (text, place) = whole(row);
            reader.unread(None, &text, "a recommendation, not a result", place);
            return Ok(());
        }
        // "Result" names no sample.
        let names = self.names.filter(|_| !matches!(named, Role::Values));
        let below = |c: &Column| is_result(text_at(next, c.index), reader.decimal);
        let name = match names.map(|n| n.of(row)) {
            // One name over the rows of several depths.
            Some(name) if name.is_empty() && deep => self.name.clone(),
            Some(name) if name.is_empty() && self.count == 0 => None,
            name => name,
        };
        self.name.clone_from(&name);
        let properties = || self.columns.iter().map(|c| c.draft.quantity.property).collect();
        self.last = match name.as_deref() {
            None if self.count == 0 && !self.columns.iter().any(below) => {
                let of = |c: &Column| {
                    let unit = c.draft.unit.or(c.draft.quantity.unit).map(|u| u.unit);
                    (c.draft.quantity.property, text_at(row, c.index), unit)
                };
                let results: Vec<_> = self.columns.iter().map(of).collect();
                reader.of_strip(&results)?
            }
            Some(name) => reader.of_row(name, &self.codes(row), &properties(), self.before)?,
            None => reader.begin(None)?,
        };
        self.count += 1;
        let surplus = has_surplus(row, self.heading.len(), reader.decimal);
        let all = *self.surplus.get_or_insert(surplus);
        // What is asked about was brought into columns, wherever it stands in its line.
        let held = reader.pairing == Pairing::Together && is_parted_by_blanks(row);
        let moved = held && is_moved(self.heading, self.roles, row);
        if moved || surplus && !all || all && held {
            let (text, place) = whole(row);
            reader.unread(Some(self.last), &text, SURPLUS, place);
            return Ok(());
        }
        self.take_depth_and_texture(reader, row);
        beyond_the_head(reader, self.last, row, self.heading.len());
        self.take_results(reader, row);
        Ok(())
    }

    /// Gives the last sample the ratings in a row of them. Without "Rating" before it, as in the
    /// legend of a chart, such a row says nothing.
    fn rate(&self, reader: &mut Reader, row: &[Cell], says_so: bool) {
        let (text, place) = whole(row);
        if !says_so {
            return reader.unread(None, &text, "ratings without a result beside them", place);
        }
        if !filled(row.get(1..).unwrap_or(&[])).all(|c| is_rating(&c.text)) {
            let reason = "a row about the results, not a result";
            return reader.unread(Some(self.last), &text, reason, place);
        }
        let readings = &mut reader.report.samples[self.last].readings;
        for Column { index, draft, .. } in &self.columns {
            let rating = text_at(row, *index);
            let mut of_column = readings
                .iter_mut()
                .filter(|r| r.property == draft.quantity.property && r.name == draft.name);
            if is_rating(rating)
                && let Some(reading) = of_column.next()
            {
                reading.rating = Some(rating.into());
            }
        }
    }

    fn take_depth_and_texture(&mut self, reader: &mut Reader, row: &[Cell]) {
        let decimal = reader.decimal;
        if let Some((top, bottom)) = self.two_depths
            && let Some(below) = cell_at(row, bottom)
        {
            let said = format!("{}-{}", text_at(row, top), below.text);
            let unit = format!("{} {}", self.heading[top].text, self.heading[bottom].text);
            match depth_at(&said, &unit, decimal) {
                Some(found) => reader.report.samples[self.last].depth_cm = Some(found),
                None => [top, bottom].into_iter().for_each(|i| {
                    self.unclear.entry(i).or_insert(NO_DEPTH_UNIT);
                }),
            }
        }
        for (i, role) in self.roles.iter().enumerate() {
            let Some(cell) = cell_at(row, i) else { continue };
            let heading = &self.heading[i].text;
            let deep = match role {
                Role::Depth if self.two_depths.is_none() => true,
                Role::Texture => false,
                _ => continue,
            };
            match take_about(reader, self.last, cell, deep, heading) {
                // A code says the same of every sample; a word belongs to its own.
                Err(why) if deep || is_result(&cell.text, decimal) => {
                    self.unclear.entry(i).or_insert(why);
                }
                Err(why) => {
                    let text = format!("{heading}: {}", cell.text);
                    reader.unread(Some(self.last), &text, why, cell.place);
                }
                Ok(()) => {}
            }
        }
    }

    fn take_results(&self, reader: &mut Reader, row: &[Cell]) {
        reader.report.samples[self.last].readings.reserve(self.columns.len());
        // A column of methods speaks for every result of its row that the method is known for.
        let column = self.roles.iter().position(|r| matches!(r, Role::Methods));
        let methods = column.map_or(Vec::new(), |i| Label::of(text_at(row, i)).methods);
        for Column { index, draft, rating } in &self.columns {
            let Some(cell) = cell_at(row, *index) else { continue };
            let said = methods.iter().copied().find(|m| covers(*m, draft.quantity.property));
            let draft = Draft {
                result: cell.text.clone(),
                place: cell.place,
                method: draft.method.or(said),
                rating: rating.and_then(|i| cell_at(row, i)).map(|c| c.text.clone()),
                ..draft.clone()
            };
            reader.put(self.last, &draft);
        }
        for (i, role) in self.roles.iter().enumerate() {
            if matches!(role, Role::Refused(_) | Role::Other)
                && let Some(cell) = cell_at(row, i)
            {
                reader.advise(self.last, &[&self.heading[i], cell]);
            }
        }
    }

    /// Lists the columns that were not understood.
    fn list_what_is_left(&self, reader: &mut Reader) {
        for (i, role) in self.roles.iter().enumerate() {
            if !self.seen[i] || self.names.is_some_and(|n| n.has(i)) {
                continue;
            }
            let reason = match role {
                Role::Refused(reason) => reason.as_str(),
                Role::Other => "no soil property in this heading",
                Role::Ratings | Role::Units | Role::Values | Role::Names
                    if !self.columns.iter().any(|c| c.rating == Some(i)) =>
                {
                    "it is not clear which result this column belongs to"
                }
                _ => continue,
            };
            reader.unread(None, &self.heading[i].text, reason, self.heading[i].place);
        }
        for (&i, &reason) in &self.unclear {
            reader.unread(None, &self.heading[i].text, reason, self.heading[i].place);
        }
    }
}

/// Takes the depth or the texture of a sample.
///
/// # Errors
/// Why it stays open.
fn take_about(
    reader: &mut Reader,
    sample: usize,
    cell: &Cell,
    deep: bool,
    heading: &str,
) -> Result<(), &'static str> {
    let sample = &mut reader.report.samples[sample];
    if deep {
        sample.depth_cm = Some(depth(&cell.text, heading, reader.decimal).ok_or(NO_DEPTH_UNIT)?);
    } else {
        sample.texture = Some(texture(&cell.text).ok_or(NO_TEXTURE)?);
    }
    Ok(())
}

/// Whether a row is the head of its table once more, as on a new page.
fn is_again(row: &[Cell], heading: &[Cell]) -> bool {
    row.len() == heading.len()
        && row.iter().zip(heading).all(|(a, b)| {
            a.text == b.text || a.text.len() > 1 && squash(&a.text) == squash(&b.text)
        })
}

/// A row of a table has results where results belong; a free line that
/// happens to hold a number does not.
fn fits(row: &[Cell], columns: &[Column], decimal: Decimal) -> bool {
    filled(row).count() > 2 || columns.len() < 3 || read_row(row, decimal).drafts.is_empty()
}

/// Whether the name of a property stands where results belong, or where a sample's name does:
/// `pH  5.4` below a table of nutrients is no row of it.
fn names_results(row: &[Cell], columns: &[Column], decimal: Decimal) -> bool {
    let named = |cell: &Cell| {
        cell.text.chars().count() > 1
            // Not available, as data files have it.
            && cell.text != "NA"
            && !is_result(&cell.text, decimal)
            && !is_rating(&cell.text)
            && names_property(cell, decimal)
    };
    let first = filled(row).next().is_some_and(named);
    (first || columns.iter().filter_map(|c| cell_at(row, c.index)).any(named))
        && !read_row(row, decimal).drafts.is_empty()
}

/// Takes a row of units, methods or wrapped heading words below the head.
fn describe(row: &[Cell], columns: &mut [Column]) -> bool {
    let mut said = 0;
    let mut other = 0;
    let mut found: Vec<(usize, Option<Printed>, Option<Method>)> = Vec::new();
    for (i, column) in columns.iter().enumerate() {
        let Some(cell) = cell_at(row, column.index) else { continue };
        // The heading and the word below it, read as one name.
        let joined = Label::of(&format!("{} {}", column.draft.name, cell.text)).quantity();
        let own = Label::of(&cell.text);
        if own.unit.is_some() && unit_alone(cell).is_none() {
            continue;
        }
        match joined {
            Ok(q)
                if q.property == column.draft.quantity.property
                    && (own.unit.is_some() || !own.methods.is_empty()) =>
            {
                said += 1;
                found.push((i, own.unit, q.method.or(own.methods.first().copied())));
            }
            _ if own.only_unit().is_some() => {
                said += 1;
                found.push((i, own.unit, None));
            }
            _ => other += 1,
        }
    }
    let tagged = row.first().is_some_and(|c| {
        matches!(squash(&c.text).as_str(), "units" | "unit" | "method" | "methods" | "comment")
    });
    if !tagged && (said == 0 || other > said) {
        return false;
    }
    for (i, unit, method) in found {
        let draft = &mut columns[i].draft;
        draft.unit = unit.or(draft.unit);
        draft.method = draft.method.or(method);
    }
    true
}

/// The columns of a sample's upper and lower end, as `B Depth` and `E Depth`.
fn two_depths(heading: &[Cell], roles: &[Role]) -> Option<(usize, usize)> {
    let mut deep = (0..roles.len()).filter(|&i| matches!(roles[i], Role::Depth));
    let (top, bottom) = (deep.next()?, deep.next()?);
    let first = squash(&heading[top].text);
    let begins = ["b", "top", "upper", "from", "start", "min"];
    let begins = begins.iter().any(|b| first.starts_with(b) || first.ends_with(b));
    // "DepthTop_in"
    let begins =
        begins || ["depthtop", "depthfrom", "depthupper"].iter().any(|b| first.contains(b));
    (deep.next().is_none() && begins).then_some((top, bottom))
}

/// Whether a row gives what results should be: `> 20` and `60-70` under the headings, where a
/// laboratory's own limits are lower ones.
fn is_of_limits(row: &[Cell], decimal: Decimal) -> bool {
    let above = |c: &&Cell| c.text.starts_with('>') && is_result(&c.text, decimal);
    let range = |c: &&Cell| c.text.contains(['-', '–', '~']) && is_range(&c.text, decimal);
    let limits = filled(row).skip(1).filter(|c| above(c) || range(c)).count();
    let plain = |c: &&Cell| is_result(&c.text, decimal) && !c.text.starts_with(['<', '>']);
    // "Deficient <" and "High >" before numbers.
    let called = filled(row).next().is_some_and(|c| {
        let word = c.text.trim_matches(['<', '>', '≤', '≥', ' ']);
        word.len() > 3 && word.len() < c.text.len() && is_rating(word)
    });
    called || limits > 1 && limits >= filled(row).skip(1).filter(plain).count()
}

/// What a row is when words such as "Result" or "Rating" stand in place of a sample's name.
fn called(name: &str) -> Role {
    let label = Label::of(name);
    // "CV (%)" and "LSD (0.05)"
    let figures = |w: &String| w.bytes().all(|b| b.is_ascii_digit());
    if label.words.contains(&HOW_FAR_OFF) && label.unknown.iter().all(figures) {
        return Role::Ratings;
    }
    if is_of_several(name) {
        return Role::Ratings;
    }
    // "Upper field" is a place too.
    if label.words.iter().any(|w| matches!(w, Word::Sample(_))) {
        return Role::Other;
    }
    // "Ideal coffee", "Critical limit for maize"; while "Lower terrace" is a place.
    if !label.unknown.is_empty() && is_aim(name) {
        return Role::Ratings;
    }
    if !label.unknown.is_empty() || !label.properties.is_empty() || label.unit.is_some() {
        Role::Other
    } else if label.has(Word::RangeColumn) {
        // "Critical level", though a level alone is a result.
        Role::Ratings
    } else if label.has(Word::ResultColumn) {
        Role::Values
    } else if label.has(Word::RatingColumn) {
        Role::Ratings
    } else {
        Role::Other
    }
}

/// Reads a table with one result a row; returns the row after it.
pub(super) fn results_down(
    reader: &mut Reader,
    rows: &[Vec<Cell>],
    at: usize,
    roles: &[Role],
) -> Result<usize, Trouble> {
    let find = |wanted: fn(&Role) -> bool| roles.iter().position(wanted);
    let (Some((_, best)), Some(what), Some(value)) = (
        ranked(roles).min(),
        find(|r| matches!(r, Role::Names)),
        find(|r| matches!(r, Role::Values)),
    ) else {
        return Ok(at + 1);
    };
    let held: Vec<&Vec<Cell>> = rows[at + 1..].iter().take(NEAR).collect();
    let who = sample_names::better(&held, &rows[at], roles, best, 0).best;
    let mut table = Results {
        heading: &rows[at],
        roles,
        who,
        samples: BTreeMap::new(),
        refused: BTreeSet::new(),
    };
    let mut end = at + 1;
    while let Some(row) = rows.get(end) {
        reader.look_at(row)?;
        match (cell_at(row, what), cell_at(row, value)) {
            (Some(_), Some(_)) if is_again(row, &rows[at]) => {}
            (Some(name), Some(result)) => table.take(reader, row, name, result)?,
            (name, _) => {
                // A running title goes past; a new head, or a line with more, ends the table.
                let missing = cell_at(row, who).is_some()
                    && name.is_some_and(|c| Label::of(&c.text).quantity().is_ok());
                if filled(row).count() > 1 && name.is_none()
                    || !missing && head(rows, end, reader.decimal).is_some()
                {
                    break;
                }
                if name.is_none() {
                    reader.end_table(2, 0);
                    reader.free_row(row)?;
                }
            }
        }
        end += 1;
    }
    reader.end_table(table.samples.len(), table.samples.values().copied().max().unwrap_or(0));
    Ok(end)
}

/// A table with one result a row, while it is read.
struct Results<'a> {
    heading: &'a [Cell],
    roles: &'a [Role],
    /// The column that names the samples.
    who: usize,
    /// The samples by name and depth: two depths of one sample are two samples.
    samples: BTreeMap<(&'a str, &'a str), usize>,
    /// Names of what no sample can use: each is listed once, not for each sample.
    refused: BTreeSet<&'a str>,
}

impl<'a> Results<'a> {
    fn take(
        &mut self,
        reader: &mut Reader,
        row: &'a [Cell],
        name: &'a Cell,
        result: &Cell,
    ) -> Result<(), Trouble> {
        let find = |wanted: fn(&Role) -> bool| {
            let column = self.roles.iter().position(wanted)?;
            Some((column, cell_at(row, column)?))
        };
        let two = two_depths(self.heading, self.roles);
        let deep = match two {
            Some((_, bottom)) => cell_at(row, bottom).map(|cell| (bottom, cell)),
            None => find(|r| matches!(r, Role::Depth)),
        };
        let whose = (text_at(row, self.who), deep.map_or("", |(_, c)| c.text.as_str()));
        let sample = match self.samples.get(&whose) {
            Some(&sample) => sample,
            None => reader.begin(Some(whose.0))?,
        };
        let target = &mut reader.report.samples[sample];
        if let (Some((top, bottom)), Some((_, cell))) = (two, deep) {
            let said = format!("{}-{}", text_at(row, top), cell.text);
            let unit = format!("{} {}", self.heading[top].text, self.heading[bottom].text);
            target.depth_cm = depth_at(&said, &unit, reader.decimal);
        } else if let Some((i, cell)) = deep {
            target.depth_cm = depth(&cell.text, &self.heading[i].text, reader.decimal);
        }
        if let Some((_, cell)) = find(|r| matches!(r, Role::Texture)) {
            target.texture = texture(&cell.text);
        }
        match Label::of(&name.text).quantity() {
            Ok(quantity) => {
                let method = find(|r| matches!(r, Role::Methods));
                let draft = Draft {
                    result: result.text.clone(),
                    unit: find(|r| matches!(r, Role::Units)).and_then(|(_, c)| unit_alone(c)),
                    method: method.and_then(|(_, c)| first_method(c)),
                    rating: find(|r| matches!(r, Role::Ratings)).map(|(_, c)| c.text.clone()),
                    ..Draft::of(quantity, &name.text, result.place, reader.decimal)
                };
                reader.put(sample, &draft);
            }
            Err(reason) => {
                let unit = find(|r| matches!(r, Role::Units)).map(|(_, c)| c);
                let cells: Vec<&Cell> = [name, result].into_iter().chain(unit).collect();
                reader.advise(sample, &cells);
                if self.refused.insert(&name.text) {
                    reader.unread(None, &name.text, reason, name.place);
                }
            }
        }
        self.samples.insert(whose, sample);
        Ok(())
    }
}

/// Reads a table with one property a row, or several such tables side by
/// side; returns the row after it.
pub(super) fn panels(
    reader: &mut Reader,
    rows: &[Vec<Cell>],
    at: usize,
    roles: &[Role],
) -> Result<usize, Trouble> {
    let last = roles.iter().rposition(|r| matches!(r, Role::Values)).unwrap_or(0);
    let mut borders: Vec<usize> = (1..=last).filter(|&i| matches!(roles[i], Role::Names)).collect();
    borders.push(usize::MAX);
    let (mut from, mut end) = (0, rows.len());
    let mut after = None;
    for to in borders {
        let panel = Panel { rows: &rows[..end], from, to };
        end = properties_down(reader, &panel, at, &roles[from..to.min(roles.len())])?;
        after.get_or_insert(end);
        from = to;
    }
    Ok(after.unwrap_or(end))
}

/// Some columns of the rows: one of several tables side by side, or all there is.
struct Panel<'a> {
    rows: &'a [Vec<Cell>],
    from: usize,
    to: usize,
}

impl<'a> Panel<'a> {
    fn row(&self, at: usize) -> &'a [Cell] {
        let row = &self.rows[at];
        row.get(self.from..self.to.min(row.len())).unwrap_or(&[])
    }

    fn is_whole(&self) -> bool {
        self.from == 0 && self.to == usize::MAX
    }

    /// Whether a row is the head of another table.
    fn is_head(&self, at: usize, decimal: Decimal) -> bool {
        if self.is_whole() {
            return head(self.rows, at, decimal).is_some();
        }
        // A head is told by its own row and a dozen below it.
        let near = self.rows.len().min(at + 13);
        let cut: Vec<Vec<Cell>> = (at..near).map(|i| self.row(i).to_vec()).collect();
        head(&cut, 0, decimal).is_some()
    }
}

/// Reads a table with one property a row; returns the row after it.
fn properties_down(
    reader: &mut Reader,
    panel: &Panel<'_>,
    at: usize,
    roles: &[Role],
) -> Result<usize, Trouble> {
    let heading = panel.row(at);
    let headless = Label::of(&heading[0].text).quantity().is_ok();
    let samples = samples_across(reader, panel, at, roles, headless)?;
    let mut table = Properties { heading, headless, roles, samples, over: None, shares: false };
    let mut end = at + usize::from(!headless);
    while end < panel.rows.len() {
        let row = panel.row(end);
        reader.look_at(row)?;
        if filled(row).next().is_none() || end > at && is_again(row, heading) {
            // Nothing, or the head once more.
        } else if end > at
            && panel.is_whole()
            && element_rows(panel.rows, end, reader.decimal).is_some()
        {
            break;
        } else if let Some(name) = cell_at(row, 0) {
            let label = Label::of(&name.text);
            let new_head = end > at
                && table.may_be_head(row, &label, reader.decimal)
                && panel.is_head(end, reader.decimal);
            if new_head {
                break;
            }
            table.take(reader, row, name, &label)?;
            // A line among the rows may begin the next sample.
            if let [only] = &mut table.samples[..]
                && matches!(roles.get(only.0), Some(Role::Values))
            {
                only.1 = reader.current()?;
            }
        } else if filled(row).filter(|c| heading_unit(c).is_some()).count() > 1
            && panel.is_head(end, reader.decimal)
        {
            // Another table, whose columns are the units of its results.
            break;
        } else {
            let (text, place) = whole(row);
            reader.unread(None, &text, "a row without the name of a property", place);
        }
        end += 1;
    }
    for (i, cell) in heading.iter().enumerate().skip(1).filter(|_| !headless) {
        let used = matches!(
            roles.get(i),
            Some(Role::Sample(_) | Role::Values | Role::Units | Role::Ratings | Role::Methods)
        );
        if !used && (at + 1..end).any(|r| cell_at(panel.row(r), i).is_some()) {
            reader.unread(None, &cell.text, "it is not clear what this column holds", cell.place);
        }
    }
    reader.end_table(table.count(), table.last());
    Ok(end)
}

/// The columns of results, each with its sample.
fn samples_across(
    reader: &mut Reader,
    panel: &Panel<'_>,
    at: usize,
    roles: &[Role],
    headless: bool,
) -> Result<Vec<(usize, usize)>, Trouble> {
    let heading = panel.row(at);
    let values = || {
        let columns = roles.iter().enumerate();
        columns.filter(|(_, role)| matches!(role, Role::Sample(_) | Role::Values))
    };
    let only = values().count() == 1;
    let mut sample = |(i, role): (usize, &Role)| match role {
        Role::Values if only || heading_unit(&heading[i]).is_some() => reader.current(),
        _ if headless => reader.begin(None),
        // "Result" and "Result" below "Garden" and "Lawn".
        Role::Values if panel.is_whole() => reader.begin(name_above(panel.rows, at, i)),
        Role::Values => reader.begin(None),
        _ if is_year(&heading[i].text) => {
            let over = reader.heading_above(heading[i].place.line);
            let over = over.or_else(|| reader.stated_name().map(String::from));
            let name = over.map(|over| format!("{over}, {}", heading[i].text));
            reader.begin(Some(name.as_ref().unwrap_or(&heading[i].text)))
        }
        // "0-30 cm" under "Plot: Mill End": a depth of that plot.
        _ if heading[i].text.starts_with(|c: char| c.is_ascii_digit())
            && depth(&heading[i].text, "cm", reader.decimal).is_some() =>
        {
            let name = reader.stated_name().map(|name| format!("{name}, {}", heading[i].text));
            reader.begin(Some(name.as_ref().unwrap_or(&heading[i].text)))
        }
        _ => reader.begin(Some(&heading[i].text)),
    };
    values().map(|column| Ok((column.0, sample(column)?))).collect()
}

/// A table with one property a row, while it is read.
struct Properties<'a> {
    heading: &'a [Cell],
    headless: bool,
    roles: &'a [Role],
    /// The columns of results, each with its sample.
    samples: Vec<(usize, usize)>,
    /// The name whose aim stood in the row above.
    over: Option<Cell>,
    /// Whether the rows stand under a row that heads shares of the exchange.
    shares: bool,
}

impl Properties<'_> {
    fn last(&self) -> usize {
        self.samples.last().map_or(0, |s| s.1)
    }

    /// How many samples the columns are of: "ppm" and "lb/acre" are two of one.
    fn count(&self) -> usize {
        let last = self.last();
        1 + self.samples.iter().filter(|(_, sample)| *sample != last).count()
    }

    /// The columns of results that hold something in a row.
    fn held<'r>(&self, row: &'r [Cell]) -> impl Iterator<Item = (usize, &'r Cell)> {
        self.samples.iter().filter_map(|&(i, _)| Some((i, cell_at(row, i)?)))
    }

    /// Whether a row has words where results belong, and they say nothing of the samples.
    fn may_be_head(&self, row: &[Cell], label: &Label, decimal: Decimal) -> bool {
        // A result where results belong is a row, whatever its name; only samples may be numbered.
        let numbered = label.words.iter().any(|w| matches!(w, Word::Sample(_)));
        let result = self.held(row).any(|(i, c)| {
            (!numbered || matches!(self.roles[i], Role::Values)) && is_result(&c.text, decimal)
        });
        let about = label.has(Word::Depth)
            && self.held(row).any(|(_, c)| depth(&c.text, "cm", decimal).is_some())
            || label.has(Word::Texture) && self.held(row).any(|(_, c)| texture(&c.text).is_some());
        // "Colour   red   grey" under a head of samples tells of them.
        let first = row.first().map_or("", |c| c.text.as_str());
        let told = self.heading.first().is_some_and(Cell::is_blank)
            && matches!(role(first), Role::Other)
            && row.len() <= self.heading.len();
        self.held(row).next().is_some() && !result && !about && !told && label.quantity().is_err()
    }

    /// `CALCIUM:  Desired value  2290` and below it `lbs / acre  Value found  1866`: the first is
    /// an aim, and the second the result of the name above it.
    fn aim_or_found(
        &mut self,
        reader: &mut Reader,
        row: &[Cell],
        name: &Cell,
        label: &Label,
    ) -> Option<Result<(), Trouble>> {
        let first = self.samples.first().map_or(0, |s| s.0);
        let beside = |word: Word| {
            let cells = row.get(..first).unwrap_or(&[]).iter().filter(|c| !c.is_blank());
            cells.map(|c| Label::of(&c.text)).any(|l| l.has(word) && l.properties.is_empty())
        };
        if beside(Word::RangeColumn) && !label.properties.is_empty() {
            self.over = Some(name.clone());
            let (text, place) = whole(row);
            reader.unread(None, &text, "a target or a range, not a result", place);
            return Some(Ok(()));
        }
        let over = self.over.clone()?;
        if !label.properties.is_empty() || !beside(Word::ResultColumn) {
            return None;
        }
        self.over = None;
        let unit = label.unit.map_or("", |_| name.text.as_str());
        let text = format!("{} {unit}", over.text.trim_end_matches(':'));
        let quantity = Label::of(&text).quantity().ok()?;
        self.take_results(reader, row, &Cell { text, place: name.place }, &quantity);
        Some(Ok(()))
    }

    fn take(
        &mut self,
        reader: &mut Reader,
        row: &[Cell],
        name: &Cell,
        label: &Label,
    ) -> Result<(), Trouble> {
        let holds = self.held(row).next().is_some();
        if filled(row).count() == 1 {
            self.shares = label.is_saturation() && label.unknown.is_empty();
        }
        if self.speaks_for_itself(row, name, reader.decimal) {
            reader.end_table(self.count(), self.last());
            return reader.free_row(row);
        }
        if let Some(moved) = self.unit_moved(row, reader.decimal) {
            let name = &moved[0];
            return self.take(reader, &moved, name, &Label::of(&name.text));
        }
        // "SODIUM   (blank)   43   44" under two samples: all stand one column off.
        let first = self.samples.first().map_or(0, |s| s.0);
        if self.samples.len() > 1
            && !self.headless
            && has_surplus(row, self.heading.len(), reader.decimal)
            && row.get(first).is_some_and(Cell::is_blank)
        {
            let (text, place) = whole(row);
            reader.unread(None, &text, SURPLUS, place);
            return Ok(());
        }
        if holds && !self.headless {
            beyond_the_head(reader, self.last(), row, self.heading.len());
        }
        if holds && let Some(aim) = self.aim_or_found(reader, row, name, label) {
            return aim;
        }
        match label.quantity() {
            Ok(quantity) if holds => self.take_results(reader, row, name, &quantity),
            _ if holds && self.take_about(reader, row, name, label) => {}
            Err(reason) if holds && row.len() >= self.heading.len().min(3) => {
                let units = self.roles.iter().position(|r| matches!(r, Role::Units));
                let unit = units.and_then(|i| cell_at(row, i));
                for (i, cell) in self.held(row) {
                    let sample = self.samples.iter().find(|s| s.0 == i).map_or(0, |s| s.1);
                    let cells: Vec<&Cell> = [name, cell].into_iter().chain(unit).collect();
                    reader.advise(sample, &cells);
                }
                let (text, place) = whole(row);
                reader.unread(None, &text, reason, place);
            }
            _ => {
                reader.end_table(self.count(), self.last());
                reader.free_row(row)?;
            }
        }
        Ok(())
    }

    /// Whether a row holds its names and results in its own way, and not in the table's.
    fn speaks_for_itself(&self, row: &[Cell], name: &Cell, decimal: Decimal) -> bool {
        // "Sample name:  River block" among the rows begins another.
        if name.text.ends_with(':')
            && matches!(about_sample(row, decimal), Some(AboutSample::Name(..)))
        {
            return true;
        }
        let bare = self.held(row).any(|(_, cell)| is_result(&cell.text, decimal));
        let holds = |cell: &Cell| !read_row(std::slice::from_ref(cell), decimal).drafts.is_empty();
        let other = || self.held(row).any(|(_, cell)| holds(cell));
        !bare && (holds(name) || other() || name.text.contains(": "))
            || self.samples.len() < 2 && speaks_for_itself(row, decimal)
    }

    /// A row with its unit where the one column of results stands, and its result behind that:
    /// brought into the columns of the head.
    fn unit_moved(&self, row: &[Cell], decimal: Decimal) -> Option<Vec<Cell>> {
        if self.samples.len() > 1 {
            return self.unit_between(row, decimal);
        }
        let [(index, _)] = self.samples[..] else { return None };
        let unit = cell_at(row, index).filter(|c| Label::of(&c.text).only_unit().is_some())?;
        let behind = (index + 1..row.len()).find(|&i| !row[i].is_blank())?;
        if !is_result(&row[behind].text, decimal) {
            return None;
        }
        let mut row = row.to_vec();
        row[0].text = format!("{} {}", row[0].text, unit.text);
        row.drain(index..behind);
        Some(row)
    }

    /// A row with its unit in a cell of its own, for which the head of several samples has no
    /// column: without that cell.
    fn unit_between(&self, row: &[Cell], decimal: Decimal) -> Option<Vec<Cell>> {
        let last = row.iter().rposition(|c| !c.is_blank())?;
        let (first, _) = *self.samples.first()?;
        let unit = cell_at(row, 1).filter(|c| Label::of(&c.text).only_unit().is_some())?;
        let moved = first == 1
            && last >= self.heading.len()
            && row.get(2).is_some_and(|c| is_result(&c.text, decimal));
        moved.then(|| {
            let mut row = row.to_vec();
            row[0].text = format!("{} {}", row[0].text, unit.text);
            row.remove(1);
            row
        })
    }

    fn take_results(&self, reader: &mut Reader, row: &[Cell], name: &Cell, quantity: &Quantity) {
        let roles = self.roles;
        let cells = |from: usize, to: usize, wanted: fn(&Role) -> bool| {
            let columns = (from..to).filter(move |&i| wanted(&roles[i]));
            columns.filter_map(|i| cell_at(row, i))
        };
        let unit = cells(1, roles.len(), |r| matches!(r, Role::Units)).find_map(unit_alone);
        let method = cells(1, roles.len(), |r| matches!(r, Role::Methods)).find_map(first_method);
        for (nth, &(index, sample)) in self.samples.iter().enumerate() {
            let Some(result) = cell_at(row, index) else { continue };
            let of_column = heading_unit(&self.heading[index])
                .filter(|_| !self.headless && quantity.unit.is_none());
            // "% of CEC" beside "mg/kg".
            let share = saturation_of(quantity.property).filter(|_| {
                match quantity.unit.or(unit).or(of_column) {
                    Some(printed) => of_column.is_some() && printed.unit == Unit::Percent,
                    None => self.shares,
                }
            });
            let property = share.unwrap_or(quantity.property);
            let of_column = of_column.filter(|unit| suits(property, *unit));
            let quantity = &Quantity { property, ..quantity.clone() };
            // Of several results each has its own ratings, to its right.
            let from = if self.samples.len() == 1 { 1 } else { index + 1 };
            let to = self.samples.get(nth + 1).map_or(roles.len(), |next| next.0);
            let ratings: Vec<&str> = cells(from, to, |r| matches!(r, Role::Ratings))
                .map(|cell| cell.text.as_str())
                .collect();
            let draft = Draft {
                result: result.text.clone(),
                unit: unit.or(of_column),
                method,
                rating: (!ratings.is_empty()).then(|| ratings.join(", ")),
                ..Draft::of(quantity.clone(), &name.text, result.place, reader.decimal)
            };
            reader.put(sample, &draft);
        }
    }

    /// Takes a row of depths or textures of the samples.
    fn take_about(&self, reader: &mut Reader, row: &[Cell], name: &Cell, label: &Label) -> bool {
        let deep = label.has(Word::Depth);
        if !deep && !label.has(Word::Texture) {
            return false;
        }
        // The unit of a depth may stand in the name or in the column of units.
        let units = self.roles.iter().position(|r| matches!(r, Role::Units));
        let heading = format!("{} {}", name.text, units.map_or("", |i| text_at(row, i)));
        for &(index, sample) in &self.samples {
            let Some(cell) = cell_at(row, index) else { continue };
            if let Err(why) = take_about(reader, sample, cell, deep, &heading) {
                let text = format!("{}: {}", name.text, cell.text);
                reader.unread(Some(sample), &text, why, cell.place);
            }
        }
        true
    }
}

/// The name that stands over a column of results in the row above their head.
fn name_above(rows: &[Vec<Cell>], at: usize, column: usize) -> Option<&str> {
    let above = rows.get(at.checked_sub(1)?)?;
    let fits = above.len() == rows[at].len() && above[0].text.is_empty();
    let name = above.get(..=column)?.iter().rev().find(|c| !c.text.is_empty())?;
    fits.then_some(name.text.as_str())
}

/// Why no number of a row is taken.
pub(super) const SURPLUS: &str =
    "its numbers don't stand under the headings, so it is not clear which is whose";

/// `ppm` or `% Sat` in place of a sample's name.
fn is_unit_or_share(cell: &Cell) -> bool {
    let label = Label::of(&cell.text);
    let share = label.words.iter().all(|w| matches!(w, Word::Saturation | Word::Sat));
    let bare = label.properties.is_empty() && label.methods.is_empty() && label.unknown.is_empty();
    label.unit.is_some() && share && bare
}

/// Whether numbers stand beyond the last heading. A heading may be missing anywhere then, and
/// every number may stand one column off.
fn has_surplus(row: &[Cell], width: usize, decimal: Decimal) -> bool {
    row.get(width..).unwrap_or(&[]).iter().any(|cell| is_result(&cell.text, decimal))
}

/// Whether blanks alone part the cells of a row, so that none can be left empty: the gaps are
/// wide and not all of one width.
fn is_parted_by_blanks(row: &[Cell]) -> bool {
    let cells: Vec<&Cell> = filled(row).collect();
    let gap = |pair: &[&Cell]| pair[1].place.start.saturating_sub(pair[0].place.end);
    let gaps: Vec<u32> = cells.windows(2).map(gap).collect();
    gaps.iter().all(|g| *g > 1) && gaps.iter().any(|g| *g != gaps[0])
}

/// Whether a result stands under the heading of another column, and not under its own, where
/// blanks part them.
fn is_moved(heading: &[Cell], roles: &[Role], row: &[Cell]) -> bool {
    let under = |cell: &Cell, i: usize| {
        let (a, b) = (cell.place, heading[i].place);
        !heading[i].is_blank() && a.end > b.start && b.end > a.start
    };
    let result = |i: &usize| matches!(roles[*i], Role::Results(_));
    is_parted_by_blanks(heading)
        && (0..heading.len()).filter(result).any(|c| {
            let other = |cell: &Cell| (0..heading.len()).any(|i| under(cell, i));
            cell_at(row, c).is_some_and(|cell| !under(cell, c) && other(cell))
        })
}

/// Whether no row near a head of samples has its numbers under its names.
pub(super) fn is_out_of_line(
    heading: &[Cell],
    roles: &[Role],
    below: &[Vec<Cell>],
    decimal: Decimal,
) -> bool {
    let numbers = |row: &&Vec<Cell>| row.iter().filter(|c| is_result(&c.text, decimal)).count() > 2;
    let mut near = below.iter().take(4).filter(numbers).take(3).peekable();
    let out = |row: &Vec<Cell>| {
        let parted = is_parted_by_blanks(row);
        parted && (is_moved(heading, roles, row) || has_surplus(row, heading.len(), decimal))
    };
    near.peek().is_some() && near.all(out)
}

/// Lists numbers that stand in columns without a heading.
fn beyond_the_head(reader: &mut Reader, sample: usize, row: &[Cell], width: usize) {
    for cell in row.get(width..).unwrap_or(&[]) {
        if is_result(&cell.text, reader.decimal) {
            reader.unread(Some(sample), &cell.text, "its column has no heading", cell.place);
        }
    }
}

/// The unit in a cell of units. One that names a form, as `mg P2O5/100 g`, would need the
/// form too, so it stays open.
fn unit_alone(cell: &Cell) -> Option<Printed> {
    let label = Label::of(&cell.text);
    label.unit.filter(|_| label.properties.iter().all(|p| p.1 == Form::Element))
}

fn first_method(cell: &Cell) -> Option<Method> {
    Label::of(&cell.text).methods.first().copied()
}

/// The unit in the heading of a column of results, as `Result (ppm)`, `lb/acre` or `% of CEC`.
fn heading_unit(heading: &Cell) -> Option<Printed> {
    let label = Label::of(&heading.text);
    let share = label.unit.is_some_and(|u| u.unit == Unit::Percent)
        && label.properties.iter().all(|p| p.0 == Property::Cec);
    let bare = label.properties.is_empty() || share;
    label.unit.filter(|_| bare && label.unknown.is_empty())
}
