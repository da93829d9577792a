//! Tables: one sample a row, or one property a row.

use std::collections::BTreeMap;

use super::about::{NO_DEPTH_UNIT, NO_TEXTURE, covers, depth, depth_at, texture};
use super::fold::squash;
use super::label::{Label, Quantity};
use super::layout::{Role, head, is_result};
use super::lines::read_row;
use super::names::Form;
use super::number::{Decimal, is_rating};
use super::place::Draft;
use super::read::{MOST_READINGS, Reader, whole};
use super::units::Printed;
use super::{Cell, Trouble};
use crate::quantity::Unit;
use crate::soil::{Method, Property};

/// A column of results with what its heading, and a row of units, say of it.
struct Column {
    index: usize,
    name: String,
    quantity: Quantity,
    unit: Option<Printed>,
    method: Option<Method>,
    /// The depth in its name.
    depth_cm: Option<(f64, f64)>,
    /// A column of ratings or units right beside it.
    rating: Option<usize>,
}

/// Reads a table with one sample a row; returns the row after it.
pub(super) fn samples_down(
    reader: &mut Reader,
    rows: &[Vec<Cell>],
    at: usize,
    roles: &[Role],
) -> Result<usize, Trouble> {
    let heading = &rows[at];
    let mut columns: Vec<Column> = Vec::new();
    for (index, role) in roles.iter().enumerate() {
        match role {
            Role::Results(_) if columns.len() >= MOST_READINGS => {
                let cell = &heading[index];
                let reason = "the table has more results than any laboratory gives";
                reader.unread(None, &cell.text, reason, cell.place);
            }
            Role::Results(quantity) => columns.push(Column {
                index,
                name: heading[index].text.clone(),
                quantity: (**quantity).clone(),
                unit: None,
                method: None,
                depth_cm: depth(&heading[index].text, "", reader.decimal),
                rating: None,
            }),
            Role::Ratings => {
                if let Some(left) = columns.last_mut().filter(|c| c.index + 1 == index) {
                    left.rating = Some(index);
                }
            }
            _ => {}
        }
    }
    let name_column = name_column(rows, at, roles, &columns);
    let two_depths = two_depths(heading, roles);
    let mut described = 0;
    // Columns about the samples that could not be understood, and why.
    let mut unclear: Vec<Option<&'static str>> = vec![None; roles.len()];
    let mut end = at + 1;
    let (mut samples, mut last) = (0, 0);
    let mut seen = vec![false; roles.len()];
    while end < rows.len() {
        let row = &rows[end];
        reader.look_at(row)?;
        let filled = row.iter().filter(|c| !c.text.is_empty()).count();
        let holds = columns.iter().any(|c| {
            row.get(c.index).is_some_and(|cell| {
                is_result(&cell.text, reader.decimal) || is_rating(&cell.text) && filled > 2
            })
        });
        if is_again(row, heading) {
            // The head once more, at a page break.
        } else if !holds && samples == 0 && described < 3 && describe(row, &mut columns) {
            described += 1;
        } else if holds && fits(row, &columns, reader) {
            for (seen, cell) in seen.iter_mut().zip(row) {
                *seen |= !cell.text.is_empty();
            }
            let table = Heads { heading, roles, columns: &columns, two_depths };
            let named = name_column.map_or(Role::Blank, |i| called(text_of(row)(i)));
            let rated = row.iter().all(|c| c.text.is_empty() || is_rating(&c.text));
            if samples > 0 && (matches!(named, Role::Ratings) || rated) {
                rate(reader, last, row, &table, matches!(named, Role::Ratings));
                end += 1;
                continue;
            }
            // "Result" names no sample.
            let name = name_column.filter(|_| !matches!(named, Role::Values)).map(text_of(row));
            let alone = || {
                let next = rows.get(end + 1).map_or(&[][..], Vec::as_slice);
                let held = |c: &Column| next.get(c.index).map_or("", |cell| cell.text.as_str());
                samples == 0 && !columns.iter().any(|c| is_result(held(c), reader.decimal))
            };
            last = match name {
                None if alone() => {
                    let of = |c: &Column| c.quantity.property;
                    reader.of_strip(&columns.iter().map(of).collect::<Vec<_>>())?
                }
                name => reader.begin(name)?,
            };
            sample_row(reader, last, row, &table, &mut unclear);
            samples += 1;
        } else if samples > 0 && head(rows, end, reader.decimal).is_some() {
            break;
        } else if filled > 2
            && filled * 2 > columns.len()
            && !holds
            && read_row(row, reader.decimal).drafts.is_empty()
        {
            let (text, place) = whole(row);
            reader.unread(None, &text, "a row of the table without results", place);
        } else {
            reader.end_table(samples, last);
            reader.free_row(row)?;
        }
        end += 1;
    }
    let mut described = vec![false; roles.len()];
    columns.iter().filter_map(|c| c.rating).for_each(|i| described[i] = true);
    for (index, role) in
        roles.iter().enumerate().filter(|(i, _)| seen[*i] && Some(*i) != name_column)
    {
        let cell = &heading[index];
        let described = described[index];
        match role {
            Role::Refused(reason) => reader.unread(None, &cell.text, reason.clone(), cell.place),
            Role::Other => {
                reader.unread(None, &cell.text, "no soil property in this heading", cell.place);
            }
            Role::Ratings | Role::Units | Role::Values | Role::Names if !described => {
                reader.unread(
                    None,
                    &cell.text,
                    "it is not clear which result this column belongs to",
                    cell.place,
                );
            }
            _ => {}
        }
    }
    for (index, reason) in unclear.into_iter().enumerate() {
        let Some(reason) = reason else { continue };
        reader.unread(None, &heading[index].text, reason, heading[index].place);
    }
    reader.end_table(samples, last);
    Ok(end)
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
fn fits(row: &[Cell], columns: &[Column], reader: &Reader) -> bool {
    let filled: Vec<&Cell> = row.iter().filter(|c| !c.text.is_empty()).collect();
    if filled.len() > 2 || columns.len() < 3 {
        return true;
    }
    read_row(row, reader.decimal).drafts.is_empty()
}

/// Which column names the samples.
fn name_column(rows: &[Vec<Cell>], at: usize, roles: &[Role], columns: &[Column]) -> Option<usize> {
    let ranked = roles.iter().enumerate().filter_map(|(i, r)| match r {
        Role::Sample(rank) => Some((*rank, i)),
        _ => None,
    });
    // A column that is empty throughout names nothing.
    let filled = |i: usize| {
        rows.iter().skip(at + 1).take(20).any(|r| r.get(i).is_some_and(|c| !c.text.is_empty()))
    };
    if let Some((_, index)) = ranked.filter(|&(_, i)| filled(i)).min() {
        return Some(index);
    }
    let first = columns.first().map_or(0, |c| c.index);
    (0..first).find(|&i| matches!(roles[i], Role::Other | Role::Blank | Role::Names) && filled(i))
}

/// Takes a row of units, methods or wrapped heading words below the head.
fn describe(row: &[Cell], columns: &mut [Column]) -> bool {
    let mut said = 0;
    let mut other = 0;
    let mut found: Vec<(usize, Option<Printed>, Option<Method>)> = Vec::new();
    for (i, column) in columns.iter().enumerate() {
        let Some(cell) = row.get(column.index).filter(|c| !c.text.is_empty()) else { continue };
        // The heading and the word below it, read as one name.
        let joined = Label::of(&format!("{} {}", column.name, cell.text)).quantity();
        let own = Label::of(&cell.text);
        if own.unit.is_some() && unit_alone(cell).is_none() {
            continue;
        }
        match joined {
            Ok(q)
                if q.property == column.quantity.property
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
        let column = &mut columns[i];
        column.unit = unit.or(column.unit);
        column.method = column.method.or(method);
    }
    true
}

/// What the head of a table says of its rows.
struct Heads<'a> {
    heading: &'a [Cell],
    roles: &'a [Role],
    columns: &'a [Column],
    two_depths: Option<(usize, usize)>,
}

/// The columns of a sample's upper and lower end, as `B Depth` and `E Depth`.
fn two_depths(heading: &[Cell], roles: &[Role]) -> Option<(usize, usize)> {
    let mut deep = (0..roles.len()).filter(|&i| matches!(roles[i], Role::Depth));
    let (top, bottom) = (deep.next()?, deep.next()?);
    let first = squash(&heading[top].text);
    let begins = ["b", "top", "upper", "from", "start", "min"];
    (deep.next().is_none() && begins.iter().any(|b| first.starts_with(b) || first.ends_with(b)))
        .then_some((top, bottom))
}

/// What a row is when words such as "Result" or "Rating" stand in place of a sample's name.
fn called(name: &str) -> Role {
    use super::names::Word;
    let label = Label::of(name);
    if !label.unknown.is_empty() || !label.properties.is_empty() || label.unit.is_some() {
        Role::Other
    } else if label.has(Word::ResultColumn) {
        Role::Values
    } else if label.has(Word::RatingColumn) || label.has(Word::RangeColumn) {
        Role::Ratings
    } else {
        Role::Other
    }
}

/// The text of a column in a row.
fn text_of<'a>(row: &'a [Cell]) -> impl Fn(usize) -> &'a str {
    move |i| row.get(i).map_or("", |c| c.text.as_str())
}

/// Gives the last sample the ratings in a row of them. Without "Rating" before it, as in the
/// legend of a chart, such a row says nothing.
fn rate(reader: &mut Reader, sample: usize, row: &[Cell], table: &Heads<'_>, says_so: bool) {
    let (text, place) = whole(row);
    if !says_so {
        return reader.unread(None, &text, "ratings without a result beside them", place);
    }
    let of = text_of(row);
    let rest = || row.iter().skip(1).filter(|c| !c.text.is_empty());
    if !rest().all(|c| is_rating(&c.text)) {
        return reader.unread(Some(sample), &text, "a row about the results, not a result", place);
    }
    for column in table.columns.iter().filter(|c| is_rating(of(c.index))) {
        let readings = &mut reader.report.samples[sample].readings;
        let rated = |r: &&mut super::Reading| {
            r.property == column.quantity.property && r.name == column.name
        };
        if let Some(reading) = readings.iter_mut().find(rated) {
            reading.rating = Some(of(column.index).into());
        }
    }
}

fn sample_row(
    reader: &mut Reader,
    sample: usize,
    row: &[Cell],
    table: &Heads<'_>,
    unclear: &mut [Option<&'static str>],
) {
    let &Heads { heading, roles, columns, two_depths, .. } = table;
    let text = text_of(row);
    reader.report.samples[sample].readings.reserve(columns.len());
    if let Some((top, bottom)) = two_depths
        && !text(bottom).is_empty()
    {
        let said = format!("{}-{}", text(top), text(bottom));
        let unit = format!("{} {}", heading[top].text, heading[bottom].text);
        match depth_at(&said, &unit, reader.decimal) {
            Some(found) => reader.report.samples[sample].depth_cm = Some(found),
            None => {
                unclear[top].get_or_insert(NO_DEPTH_UNIT);
                unclear[bottom].get_or_insert(NO_DEPTH_UNIT);
            }
        }
    }
    for (i, role) in roles.iter().enumerate() {
        let cell = match row.get(i) {
            Some(cell) if !cell.text.is_empty() => cell,
            _ => continue,
        };
        match role {
            Role::Depth if two_depths.is_some() => {}
            Role::Depth => match depth(&cell.text, &heading[i].text, reader.decimal) {
                Some(found) => reader.report.samples[sample].depth_cm = Some(found),
                None => {
                    unclear[i].get_or_insert(NO_DEPTH_UNIT);
                }
            },
            Role::Texture => match texture(&cell.text) {
                Some(found) => reader.report.samples[sample].texture = Some(found),
                // A code says the same of every sample; a word belongs to its own.
                None if is_result(&cell.text, reader.decimal) => {
                    unclear[i].get_or_insert(NO_TEXTURE);
                }
                None => {
                    let text = format!("{}: {}", heading[i].text, cell.text);
                    reader.unread(Some(sample), &text, NO_TEXTURE, cell.place);
                }
            },
            _ => {}
        }
    }
    // A column of methods speaks for every result of its row that the method is known for.
    let column = roles.iter().position(|r| matches!(r, Role::Methods));
    let methods = column.map_or(Vec::new(), |i| Label::of(text(i)).methods);
    beyond_the_head(reader, sample, row, heading.len());
    for column in columns {
        let said = methods.iter().copied().find(|m| covers(*m, column.quantity.property));
        let Some(cell) = row.get(column.index).filter(|c| !c.text.is_empty()) else { continue };
        let rating = column.rating.map(&text).filter(|t| !t.is_empty()).map(str::to_string);
        reader.put(
            sample,
            &Draft {
                quantity: column.quantity.clone(),
                name: column.name.clone(),
                result: cell.text.clone(),
                place: cell.place,
                unit: column.unit,
                method: column.method.or(said),
                rating,
                left: None,
                depth_cm: column.depth_cm,
            },
        );
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
    let best = roles.iter().enumerate().filter_map(|(i, r)| match r {
        Role::Sample(rank) => Some((*rank, i)),
        _ => None,
    });
    let (Some((_, who)), Some(what), Some(value)) =
        (best.min(), find(|r| matches!(r, Role::Names)), find(|r| matches!(r, Role::Values)))
    else {
        return Ok(at + 1);
    };
    let (unit, rating, method) = (
        find(|r| matches!(r, Role::Units)),
        find(|r| matches!(r, Role::Ratings)),
        find(|r| matches!(r, Role::Methods)),
    );
    let (deep, feel) = (find(|r| matches!(r, Role::Depth)), find(|r| matches!(r, Role::Texture)));
    let mut samples: BTreeMap<String, usize> = BTreeMap::new();
    // A map of the same kind: another kind would weigh on the page.
    let mut refused: BTreeMap<String, usize> = BTreeMap::new();
    let mut end = at + 1;
    while let Some(row) = rows.get(end) {
        reader.look_at(row)?;
        let cell = |i: usize| row.get(i).filter(|c| !c.text.is_empty());
        let of = |i: Option<usize>| i.and_then(cell);
        let (Some(name), Some(said)) = (cell(what), cell(value)) else {
            // A running title goes past; a new head, or a line with more, ends the table.
            let filled = row.iter().filter(|c| !c.text.is_empty()).count();
            let missing = cell(who).is_some()
                && cell(what).is_some_and(|c| Label::of(&c.text).quantity().is_ok());
            if filled > 1 && cell(what).is_none()
                || !missing && head(rows, end, reader.decimal).is_some()
            {
                break;
            }
            if cell(what).is_none() {
                reader.end_table(2, 0);
                reader.free_row(row)?;
            }
            end += 1;
            continue;
        };
        if is_again(row, &rows[at]) {
            end += 1;
            continue;
        }
        let name_of_sample = cell(who).map_or("", |c| c.text.as_str());
        // Two depths of one sample are two samples.
        let whose = format!("{name_of_sample}\t{}", of(deep).map_or("", |c| c.text.as_str()));
        let sample = match samples.get(&whose) {
            Some(&sample) => sample,
            None => {
                let sample = reader.begin(Some(name_of_sample))?;
                samples.insert(whose, sample);
                sample
            }
        };
        let target = &mut reader.report.samples[sample];
        if let (Some(cell), Some(i)) = (of(deep), deep) {
            target.depth_cm = depth(&cell.text, &rows[at][i].text, reader.decimal);
        }
        if let Some(cell) = of(feel) {
            target.texture = texture(&cell.text);
        }
        match Label::of(&name.text).quantity() {
            Ok(quantity) => reader.put(
                sample,
                &Draft {
                    quantity,
                    name: name.text.clone(),
                    result: said.text.clone(),
                    place: said.place,
                    unit: of(unit).and_then(unit_alone),
                    method: of(method).and_then(|c| Label::of(&c.text).methods.first().copied()),
                    rating: of(rating).map(|c| c.text.clone()),
                    left: None,
                    depth_cm: depth(&name.text, "", reader.decimal),
                },
            ),
            // What no sample can use is listed once, not for each sample.
            Err(reason) => {
                if refused.insert(name.text.clone(), end).is_none() {
                    reader.unread(None, &name.text, reason, name.place);
                }
            }
        }
        end += 1;
    }
    reader.end_table(samples.len(), samples.values().copied().max().unwrap_or(0));
    Ok(end)
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
    let values: Vec<usize> =
        (0..roles.len()).filter(|&i| matches!(roles[i], Role::Sample(_) | Role::Values)).collect();
    let mut samples: Vec<(usize, usize)> = Vec::new();
    for &index in &values {
        let sample = match roles[index] {
            Role::Values if values.len() == 1 => reader.current()?,
            Role::Values if heading_unit(&heading[index]).is_some() => reader.current()?,
            _ if headless => reader.begin(None)?,
            // "Result" and "Result" below "Garden" and "Lawn".
            Role::Values if panel.is_whole() => reader.begin(name_above(panel.rows, at, index))?,
            Role::Values => reader.begin(None)?,
            _ => reader.begin(Some(&heading[index].text))?,
        };
        samples.push((index, sample));
    }
    let describes = |role: fn(&Role) -> bool| (1..roles.len()).filter(move |&i| role(&roles[i]));
    let mut end = at + usize::from(!headless);
    while end < panel.rows.len() {
        let row = panel.row(end);
        reader.look_at(row)?;
        if row.iter().all(|c| c.text.is_empty()) || end > at && is_again(row, heading) {
            end += 1;
            continue;
        }
        let Some(name) = row.first().filter(|c| !c.text.is_empty()) else {
            let (text, place) = whole(row);
            reader.unread(None, &text, "a row without the name of a property", place);
            end += 1;
            continue;
        };
        let holds = values.iter().any(|&i| row.get(i).is_some_and(|c| !c.text.is_empty()));
        let label = Label::of(&name.text);
        // A result where results belong is a row, whatever its name.
        let result = values.iter().any(|&i| {
            matches!(roles[i], Role::Values)
                && row.get(i).is_some_and(|c| is_result(&c.text, reader.decimal))
        });
        let new_head = end > at
            && holds
            && !result
            && !describes_samples(&label, row, &values, reader)
            && label.quantity().is_err()
            && panel.is_head(end, reader.decimal);
        if new_head {
            break;
        }
        let cell = |i: usize| row.get(i).filter(|c| !c.text.is_empty());
        if holds
            && !headless
            && let Some(&(_, last)) = samples.last()
        {
            beyond_the_head(reader, last, row, heading.len());
        }
        match label.quantity() {
            Ok(quantity) if holds => {
                let unit =
                    describes(|r| matches!(r, Role::Units)).find_map(|i| unit_alone(cell(i)?));
                let method = describes(|r| matches!(r, Role::Methods))
                    .find_map(|i| Label::of(&cell(i)?.text).methods.first().copied());
                for (nth, &(index, sample)) in samples.iter().enumerate() {
                    let Some(result) = cell(index) else { continue };
                    let of_column = heading_unit(&heading[index]).filter(|u| {
                        !headless && quantity.unit.is_none() && suits(quantity.property, *u)
                    });
                    let unit = unit.or(of_column);
                    // Of several results each has its own ratings, to its right.
                    let from = if values.len() == 1 { 1 } else { index + 1 };
                    let to = values.get(nth + 1).map_or(roles.len(), |next| *next);
                    let rating: Vec<&str> = (from..to)
                        .filter(|&i| matches!(roles[i], Role::Ratings))
                        .filter_map(|i| Some(cell(i)?.text.as_str()))
                        .collect();
                    let rating = (!rating.is_empty()).then(|| rating.join(", "));
                    reader.put(
                        sample,
                        &Draft {
                            quantity: quantity.clone(),
                            name: name.text.clone(),
                            result: result.text.clone(),
                            place: result.place,
                            unit,
                            method,
                            rating,
                            left: None,
                            depth_cm: depth(&name.text, "", reader.decimal),
                        },
                    );
                }
            }
            _ if holds && about_row(reader, &label, name, roles, &samples, row) => {}
            Err(reason) if holds && (row.len() >= heading.len().min(3)) => {
                let (text, place) = whole(row);
                reader.unread(None, &text, reason, place);
            }
            _ => {
                let last = samples.last().map_or(0, |s| s.1);
                reader.end_table(samples.len(), last);
                reader.free_row(row)?;
            }
        }
        end += 1;
    }
    for (i, cell) in heading.iter().enumerate().skip(1).filter(|_| !headless) {
        let used = matches!(
            roles.get(i),
            Some(Role::Sample(_) | Role::Values | Role::Units | Role::Ratings | Role::Methods)
        );
        let filled =
            || (at + 1..end).any(|r| panel.row(r).get(i).is_some_and(|c| !c.text.is_empty()));
        if !used && filled() {
            reader.unread(None, &cell.text, "it is not clear what this column holds", cell.place);
        }
    }
    reader.end_table(samples.len(), samples.last().map_or(0, |s| s.1));
    Ok(end)
}

/// The name that stands over a column of results in the row above their head.
fn name_above(rows: &[Vec<Cell>], at: usize, column: usize) -> Option<&str> {
    let above = rows.get(at.checked_sub(1)?)?;
    let fits = above.len() == rows[at].len() && above[0].text.is_empty();
    let name = above.get(..=column)?.iter().rev().find(|c| !c.text.is_empty())?;
    fits.then_some(name.text.as_str())
}

/// Whether a row holds depths or textures of the samples, and no names of a new head.
fn describes_samples(label: &Label, row: &[Cell], values: &[usize], reader: &Reader) -> bool {
    use super::names::Word;
    let any = |holds: &dyn Fn(&str) -> bool| {
        values.iter().any(|&i| row.get(i).is_some_and(|c| holds(&c.text)))
    };
    label.has(Word::Depth) && any(&|t| depth(t, "cm", reader.decimal).is_some())
        || label.has(Word::Texture) && any(&|t| texture(t).is_some())
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

/// The unit in the heading of a column of results, as `Result (ppm)` or `lb/acre`.
fn heading_unit(heading: &Cell) -> Option<Printed> {
    let label = Label::of(&heading.text);
    label.unit.filter(|_| label.properties.is_empty() && label.unknown.is_empty())
}

/// Whether the unit of a whole column can be that of this property: pH has none, and
/// organic matter in a column of ppm is still in per cent.
fn suits(property: Property, printed: Printed) -> bool {
    property.unit() == Unit::MgPerKg || property.unit() == printed.unit
}

/// A row of depths or textures of the samples.
fn about_row(
    reader: &mut Reader,
    label: &Label,
    name: &Cell,
    roles: &[Role],
    samples: &[(usize, usize)],
    row: &[Cell],
) -> bool {
    use super::names::Word;
    let of = |i: usize| row.get(i).filter(|c| !c.text.is_empty());
    let deep = label.has(Word::Depth);
    if !deep && !label.has(Word::Texture) {
        return false;
    }
    // The unit of a depth may stand in the name or in the column of units.
    let units = roles.iter().position(|r| matches!(r, Role::Units)).and_then(of);
    let heading = format!("{} {}", name.text, units.map_or("", |c| c.text.as_str()));
    for &(index, sample) in samples {
        let Some(cell) = of(index) else { continue };
        let target = &mut reader.report.samples[sample];
        let done = if deep {
            depth(&cell.text, &heading, reader.decimal).map(|d| target.depth_cm = Some(d)).is_some()
        } else {
            texture(&cell.text).map(|t| target.texture = Some(t)).is_some()
        };
        if !done {
            let reason = if deep { NO_DEPTH_UNIT } else { NO_TEXTURE };
            reader.unread(
                Some(sample),
                &format!("{}: {}", name.text, cell.text),
                reason,
                cell.place,
            );
        }
    }
    true
}
