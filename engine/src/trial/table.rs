//! From the text to columns with roles: what a person pasted, or a report whose sample names
//! tell the plots.

use std::collections::{BTreeMap, BTreeSet};

use super::heads::{control_rank, is_rate, role_of};
use super::names::{Parts, parts};
use super::{Column, MOST_PLOTS, MOST_PROPERTIES, MOST_TEXT, Refusal, Role, Trial};
use crate::quantity::{Context, Unit, convert};
use crate::report::{self, Grid, Reading, Report, parse_amount};
use crate::soil::{Amount, Property};

/// A table of plots: its columns, and the cells of each row.
#[derive(Clone, Debug, Default)]
pub(super) struct Table {
    pub columns: Vec<Column>,
    /// The line each row stands in, and its cells, one for each column.
    pub rows: Vec<(u32, Vec<String>)>,
    pub notes: Vec<String>,
}

/// The most texts that are listed of a column, to choose from.
const MOST_LEVELS: usize = 40;

const NO_TABLE: &str = "No table of plots was found. Give each plot a line, with a head above each column: Treatment, Block, pH and so on.";

/// A table with more lines is read by its heads alone, where they name the treatments: the
/// reader of reports takes its time over each line.
const MOST_READ: usize = 300;

/// The most lines of a report whose samples are plots: some results each on a line of its own.
const MOST_LINES: usize = 20 * MOST_PLOTS;

/// Numbers beyond this are no results, as in `quantity`. Our choice.
const BEYOND: f64 = 1e15;

impl Table {
    /// The columns of a role.
    pub fn of(&self, role: Role) -> impl Iterator<Item = usize> {
        self.columns.iter().enumerate().filter(move |(_, c)| c.role == role).map(|(at, _)| at)
    }

    /// A refusal that keeps what is known of the columns.
    pub fn refuse(&self, message: impl Into<String>) -> Refusal {
        Refusal { message: message.into(), columns: self.columns.clone() }
    }

    fn levels(&self, column: usize) -> Vec<&str> {
        let mut seen: BTreeSet<&str> = BTreeSet::new();
        let cells = self.rows.iter().map(|(_, cells)| cells[column].as_str());
        cells.filter(|cell| !cell.is_empty() && seen.insert(cell)).collect()
    }

    fn add(&mut self, head: &str, cells: Vec<String>) {
        self.columns.push(column(head.into()));
        for ((_, row), cell) in self.rows.iter_mut().zip(cells) {
            row.push(cell);
        }
    }
}

impl Column {
    /// Takes over what a reading under its head is of.
    fn is_of(&mut self, reading: &Reading) {
        self.property = Some(reading.property);
        self.unit = reading.unit;
        self.method = reading.method.as_ref().map(|known| known.value);
    }
}

fn column(head: String) -> Column {
    Column {
        head,
        role: Role::LeaveOut,
        why: String::new(),
        property: None,
        unit: None,
        method: None,
        levels: Vec::new(),
        numbers: 0,
    }
}

/// A result in a cell; none where there is none, and where it is beyond measure.
pub(super) fn result_in(cell: &str) -> Option<Amount> {
    parse_amount(cell).filter(|amount| amount.number().abs() < BEYOND)
}

/// Whether a cell stands for a missing result.
pub(super) fn is_missing(cell: &str) -> bool {
    let small = cell.to_lowercase();
    ["", "na", "n/a", "-", "–", "—", ".", "nan", "missing", "lost"].contains(&small.trim())
}

/// The table of a trial with the role of each column.
pub(super) fn table_of(trial: &Trial) -> Result<Table, Refusal> {
    let later = trial.later.as_deref().filter(|text| !text.trim().is_empty());
    // Of two reports each may hold one bed alone.
    let least = if later.is_some() { 1 } else { 2 };
    let mut table = raw(&trial.text, "", least)?;
    if let Some(later) = later {
        let later = raw(later, "The second text: ", least)?;
        table = one_after_the_other(table, later);
    }
    if table.rows.len() > MOST_PLOTS {
        let rows = table.rows.len();
        return Err(table.refuse(format!(
            "There are {rows} lines of plots, and at most {MOST_PLOTS} are judged at once. Paste one trial at a time."
        )));
    }
    take_names_apart(&mut table, trial);
    guess(&mut table);
    answered(&mut table, trial)?;
    describe(&mut table);
    keep_only(&mut table, trial)?;
    let readings = table.of(Role::Reading).count();
    if readings > MOST_PROPERTIES {
        return Err(table.refuse(format!(
            "There are {readings} columns of results, and at most {MOST_PROPERTIES} are judged at once. Leave some out."
        )));
    }
    Ok(table)
}

fn raw(text: &str, which: &str, least: usize) -> Result<Table, Refusal> {
    let refuse = |message: String| Refusal { message, columns: Vec::new() };
    if text.trim().is_empty() {
        return Err(refuse(format!(
            "{which}There is nothing here yet. Paste a table with a line for each plot: its treatment, its block if it has one, and its results."
        )));
    }
    if text.len() > MOST_TEXT {
        return Err(refuse(format!(
            "{which}This is too long for a trial. Paste the table of plots alone, at most {MOST_PLOTS} lines."
        )));
    }
    let grid =
        report::open(text.as_bytes()).map_err(|trouble| refuse(format!("{which}{trouble}")))?;
    // A table that names its treatments is taken as it stands; else a report's samples are plots.
    let names_treatments = |table: &Table| {
        let said = |c: &Column| {
            matches!(role_of(&c.head), Some(Role::Treatment | Role::Block | Role::Names))
        };
        table.columns.iter().any(said)
    };
    let mut pasted = pasted(&grid).filter(|table| table.rows.len() >= least);
    let long = grid.rows.len() > MOST_READ;
    if long && pasted.as_ref().is_some_and(names_treatments) || grid.rows.len() > MOST_LINES {
        return pasted.map(with_properties).ok_or_else(|| refuse(format!("{which}{NO_TABLE}")));
    }
    let read = report::read(&grid).ok();
    if let (Some(table), Some(report)) = (&mut pasted, &read) {
        known_properties(table, &grid, report);
    }
    let pasted = pasted.map(with_properties);
    let samples = read.as_ref().and_then(of_samples).filter(|table| table.rows.len() >= least);
    match (pasted, samples) {
        (Some(table), Some(samples)) => {
            Ok(if names_treatments(&table) || samples.rows.len() < table.rows.len() {
                table
            } else {
                samples
            })
        }
        (Some(table), None) | (None, Some(table)) => Ok(table),
        (None, None) => Err(refuse(format!("{which}{NO_TABLE}"))),
    }
}

/// Whether the numbers of a table have decimal commas: one does that can be nothing else, and
/// none has a decimal point.
fn has_commas(cells: &[&str]) -> bool {
    let plain = |cell: &str, mark: char| {
        let cell = cell.trim_start_matches(['<', '>', '≤', '≥', ' ', '-', '−', '+']);
        let parts: Vec<&str> = cell.split(mark).collect();
        let [whole, rest] = parts[..] else { return false };
        let digits = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
        digits(whole) && digits(rest) && (rest.len() != 3 || whole == "0" || whole.len() > 3)
    };
    cells.iter().any(|cell| plain(cell, ',')) && !cells.iter().any(|cell| plain(cell, '.'))
}

/// The table as it stands in the text.
fn pasted(grid: &Grid) -> Option<Table> {
    let texts: Vec<&str> = grid.rows.iter().flatten().map(|cell| cell.text.as_str()).collect();
    let commas = has_commas(&texts);
    let plain = |text: &str| {
        let text = text.trim();
        if commas && !text.chars().any(char::is_alphabetic) {
            text.replace('.', "").replace(',', ".")
        } else {
            text.to_string()
        }
    };
    let rows: Vec<Vec<String>> =
        grid.rows.iter().map(|row| row.iter().map(|cell| plain(&cell.text)).collect()).collect();
    let filled = |row: &[String]| row.iter().filter(|cell| !cell.is_empty()).count();
    let numbers = |row: &[String]| row.iter().filter(|c| result_in(c).is_some()).count();
    let is_head = |row: &[String]| filled(row) >= 2 && 2 * numbers(row) < filled(row);
    let is_row = |row: &[String]| filled(row) >= 2 && numbers(row) >= 1;
    // The last row of words before the first row with results.
    let first = (0..rows.len()).find(|at| {
        *at > 0 && is_row(&rows[*at]) && (0..*at).any(|before| is_head(&rows[before]))
    })?;
    let mut head = (0..first).rev().find(|at| is_head(&rows[*at]))?;
    // A row of units below the names.
    let mut units: Option<usize> = None;
    if head > 0 && is_head(&rows[head - 1]) && is_of_units(&rows[head], &rows[first]) {
        units = Some(head);
        head -= 1;
    }
    let width = rows[head..].iter().map(Vec::len).max()?;
    let mut table = Table::default();
    for at in 0..width {
        let name = rows[head].get(at).map_or("", |text| text.as_str());
        let unit = units.and_then(|row| rows[row].get(at)).map_or("", |text| text.as_str());
        let mut name =
            if name.is_empty() { format!("column {}", at + 1) } else { name.to_string() };
        if !unit.is_empty() {
            name = format!("{name} ({unit})");
        }
        let same = table.columns.iter().filter(|c| c.head == name).count();
        if same > 0 {
            name = format!("{name} #{}", at + 1);
        }
        table.columns.push(column(name));
    }
    let mut without = Vec::new();
    for (at, row) in rows.iter().enumerate().skip(first) {
        let line = grid.rows[at].first().map_or(0, |cell| cell.place.line);
        if !is_row(row) {
            without.push(line.to_string());
            continue;
        }
        let mut cells = row.clone();
        cells.resize(width, String::new());
        table.rows.push((line, cells));
    }
    match without.len() {
        0 => {}
        1 => table.notes.push(format!("Line {} holds no result and was left out.", without[0])),
        more => table.notes.push(format!("{more} lines hold no result and were left out.")),
    }
    Some(table)
}

/// Whether a row holds units: blank where the first column of a plot stands, or all of it short
/// and over results.
fn is_of_units(row: &[String], results: &[String]) -> bool {
    let over = |at: usize| results.get(at).is_some_and(|cell| result_in(cell).is_some());
    let mut filled = row.iter().enumerate().filter(|(_, cell)| !cell.is_empty()).peekable();
    filled.peek().is_some()
        && filled.all(|(at, cell)| {
            over(at) && (cell.contains(['/', '%', '²', '³']) || cell.chars().count() <= 4)
        })
}

/// The properties that the reader of reports finds under each head.
fn known_properties(table: &mut Table, grid: &Grid, report: &Report) {
    let mut columns: BTreeMap<(u32, u32), usize> = BTreeMap::new();
    for row in &grid.rows {
        for (at, cell) in row.iter().enumerate() {
            columns.insert((cell.place.line, cell.place.start), at);
        }
    }
    let mut found: BTreeMap<usize, Vec<&Reading>> = BTreeMap::new();
    for reading in report.samples.iter().flat_map(|sample| &sample.readings) {
        let Some(&at) = columns.get(&(reading.place.line, reading.place.start)) else { continue };
        // Where the number was worked into another, as P of P2O5, the head's own name stays.
        let row = table.rows.binary_search_by_key(&reading.place.line, |(line, _)| *line).ok();
        let own = row.and_then(|row| result_in(&table.rows[row].1[at]));
        let same = own.zip(reading.amount).is_some_and(|(own, read)| {
            (own.number() - read.number()).abs() <= 1e-9 * own.number().abs()
        });
        if same {
            found.entry(at).or_default().push(reading);
        }
    }
    for (at, all) in found {
        if all.iter().all(|other| other.property == all[0].property) {
            table.columns[at].is_of(all[0]);
        }
    }
}

/// The table with the properties of columns that only their own heads tell.
fn with_properties(mut table: Table) -> Table {
    // Too many are refused in the end.
    if table.rows.len() <= MOST_PLOTS {
        (0..table.columns.len()).for_each(|at| known_alone(&mut table, at));
    }
    table
}

/// The property of a column that the reader of reports did not find in the whole: read alone.
fn known_alone(table: &mut Table, at: usize) {
    let least = table.rows.len().min(2);
    let cells = || table.rows.iter().map(|(_, cells)| cells[at].as_str());
    let results: Vec<&str> = cells().filter(|cell| result_in(cell).is_some()).take(4).collect();
    let filled = cells().filter(|cell| !is_missing(cell)).count();
    let is_numbers = 2 * cells().filter(|cell| result_in(cell).is_some()).count() >= filled;
    let head = &table.columns[at].head;
    if table.columns[at].property.is_some() || results.len() < least || !is_numbers {
        return;
    }
    // Beside another column, as in a report.
    let lines = results.iter().enumerate().map(|(n, cell)| format!("\nbed {n}\t2{n}\t{cell}"));
    let lines: String = lines.collect();
    let text = format!("Sample\tClay (%)\t{}{lines}", head.replace(['\t', '\n'], " "));
    let read = report::open(text.as_bytes()).ok().and_then(|grid| report::read(&grid).ok());
    let Some(read) = read else { return };
    // Behind “bed 0”, “20” and two tabs.
    let from = 9;
    let found: Vec<_> = read
        .samples
        .iter()
        .flat_map(|sample| &sample.readings)
        .filter(|reading| reading.place.start >= from)
        .zip(&results)
        .filter(|(reading, own)| reading.amount == result_in(own))
        .map(|(reading, _)| reading)
        .collect();
    if found.len() == results.len() && found.iter().all(|r| r.property == found[0].property) {
        table.columns[at].is_of(found[0]);
    }
}

/// The samples of a report as plots.
fn of_samples(report: &Report) -> Option<Table> {
    let mut table = Table::default();
    table.columns.push(column("Sample".into()));
    let mut keys: Vec<(Property, Option<Unit>)> = Vec::new();
    for reading in report.samples.iter().flat_map(|sample| &sample.readings) {
        if !keys.iter().any(|(property, _)| *property == reading.property) {
            keys.push((reading.property, reading.unit));
            let mut new = column(reading.property.label().to_string());
            new.is_of(reading);
            table.columns.push(new);
        }
    }
    for sample in &report.samples {
        let line = sample.readings.first().map_or(0, |reading| reading.place.line);
        let mut cells = vec![sample.name.clone()];
        for (property, unit) in &keys {
            let reading = sample.readings.iter().find(|r| r.property == *property);
            let amount = reading.and_then(|reading| in_unit(reading, *property, *unit));
            cells.push(amount.map_or(String::new(), written));
        }
        table.rows.push((line, cells));
    }
    (table.columns.len() >= 2).then_some(table)
}

/// A reading in the unit of the others; none where it can't be converted.
fn in_unit(reading: &report::Reading, property: Property, unit: Option<Unit>) -> Option<Amount> {
    let amount = reading.amount?;
    match (reading.unit, unit) {
        (from, to) if from == to => Some(amount),
        (Some(from), Some(to)) => {
            let context = Context::NONE.with_charge(property.mg_per_mmolc());
            let number = convert(amount.number(), from, to, &context).ok()?;
            Some(amount.with(number))
        }
        _ => None,
    }
}

/// A result as a cell.
fn written(amount: Amount) -> String {
    match amount {
        Amount::Exactly(v) => format!("{v}"),
        Amount::Below(v) => format!("<{v}"),
        Amount::Above(v) => format!(">{v}"),
    }
}

/// Two tables of the same plots as one, with a column for when.
fn one_after_the_other(mut before: Table, later: Table) -> Table {
    let key = |column: &Column| (column.property, column.head.clone());
    let mut places = Vec::new();
    for new in &later.columns {
        let by_property = |c: &Column| c.property.is_some() && c.property == new.property;
        let at = before.columns.iter().position(|c| key(c) == key(new));
        let at = at.or_else(|| before.columns.iter().position(by_property));
        places.push(at.unwrap_or_else(|| {
            before.columns.push(new.clone());
            before.rows.iter_mut().for_each(|(_, cells)| cells.push(String::new()));
            before.columns.len() - 1
        }));
    }
    let mut apart: Vec<String> = Vec::new();
    let mut two_ways: Vec<String> = Vec::new();
    let one_bed = before.rows.len() == 1 && later.rows.len() == 1;
    let mut whens = vec!["before".to_string(); before.rows.len()];
    let width = before.columns.len();
    for (line, cells) in later.rows {
        let mut row = vec![String::new(); width];
        for (from, (cell, at)) in cells.into_iter().zip(&places).enumerate() {
            let (had, has) = (&before.columns[*at], &later.columns[from]);
            if had.method.zip(has.method).is_some_and(|(had, has)| had != has) {
                if !two_ways.contains(&had.head) {
                    two_ways.push(had.head.clone());
                }
                continue;
            }
            row[*at] = match (had.unit, has.unit, result_in(&cell)) {
                (Some(to), Some(unit), Some(amount)) if to != unit => {
                    let charge = had.property.and_then(Property::mg_per_mmolc);
                    let context = Context::NONE.with_charge(charge);
                    match convert(amount.number(), unit, to, &context) {
                        Ok(number) => written(amount.with(number)),
                        Err(_) => {
                            let head = had.head.clone();
                            if !apart.contains(&head) {
                                apart.push(head);
                            }
                            String::new()
                        }
                    }
                }
                _ => cell,
            };
        }
        before.rows.push((line, row));
        whens.push("after".into());
    }
    before.notes.extend(later.notes);
    for head in apart {
        before.notes.push(format!(
            "“{head}” stands in two units that can't be converted into each other, so its later results were left out."
        ));
    }
    for head in two_ways {
        before.notes.push(format!(
            "“{head}” was measured in two ways that give different numbers, so its later results were left out."
        ));
    }
    before.add("When", whens);
    let when = before.columns.len() - 1;
    (before.columns[when].role, before.columns[when].why) =
        (Role::When, "Its head says so.".into());
    // Two reports of one bed are of one plot, whatever each calls it.
    if one_bed {
        before.add("Plot", vec!["1".into(); 2]);
        for column in before.columns.iter_mut().filter(|column| is_name(column)) {
            (column.role, column.why) =
                (Role::LeaveOut, "Each report holds one sample: they are of one plot.".into());
        }
    }
    before
}

/// Whether a column holds names of samples.
fn is_name(column: &Column) -> bool {
    matches!(role_of(&column.head), Some(Role::Names)) && column.property.is_none()
}

/// Columns for what the names of samples hold.
fn take_names_apart(table: &mut Table, trial: &Trial) {
    let said = |at: usize, role| {
        let answer = trial.roles.iter().find(|r| r.head == table.columns[at].head);
        answer.is_some_and(|answer| answer.role == role)
    };
    let any_treatment = (0..table.columns.len()).any(|at| {
        said(at, Role::Treatment) || role_of(&table.columns[at].head) == Some(Role::Treatment)
    });
    let is_text = |at: &usize| {
        let numbers = table.rows.iter().filter(|(_, cells)| result_in(&cells[*at]).is_some());
        2 * numbers.count() < table.rows.len()
    };
    let names = (0..table.columns.len()).filter(is_text).find(|at| {
        let distinct = table.levels(*at).len() * 3 > table.rows.len() * 2
            || role_of(&table.columns[*at].head) == Some(Role::Names);
        said(*at, Role::Names) || (!any_treatment && distinct)
    });
    let Some(names) = names else { return };
    let all: Vec<Parts> = table.rows.iter().map(|(_, cells)| parts(&cells[names])).collect();
    let head = table.columns[names].head.clone();
    let mut treatments: Vec<&str> = all.iter().map(|p| p.treatment.as_str()).collect();
    treatments.sort_unstable();
    treatments.dedup();
    // One sample of each can be any report; a control among them makes it a trial.
    let is_first = |row: &(u32, Vec<String>)| row.1.last().is_some_and(|cell| cell == "before");
    let at_once = match trial.later.as_deref().map(str::trim) {
        Some(later) if !later.is_empty() => table.rows.iter().filter(|row| is_first(row)).count(),
        _ => table.rows.len(),
    };
    let again =
        treatments.len() < at_once || treatments.iter().any(|name| control_rank(name).is_some());
    let tells = (2..=super::MOST_TREATMENTS).contains(&treatments.len())
        && again
        && !treatments.contains(&"");
    if !tells && !said(names, Role::Names) && !all.iter().any(|p| !p.when.is_empty()) {
        return;
    }
    table.columns[names].role = Role::Names;
    table.columns[names].why = "The names tell the plots.".into();
    let mut push = |what: &str, role: Role, of: fn(&Parts) -> &String| {
        let cells: Vec<String> = all.iter().map(|p| of(p).clone()).collect();
        if cells.iter().any(|cell| !cell.is_empty()) {
            table.add(&format!("{what} in {head}"), cells);
            let last = table.columns.len() - 1;
            table.columns[last].role = role;
            table.columns[last].why = "Taken from the names.".into();
        }
    };
    push("treatment", Role::Treatment, |p| &p.treatment);
    push("block", Role::Block, |p| &p.block);
    push("when", Role::When, |p| &p.when);
    push("plot", Role::Plot, |p| &p.plot);
}

/// The role of each column that has none yet.
fn guess(table: &mut Table) {
    let rows = table.rows.len();
    for at in 0..table.columns.len() {
        let cells = || table.rows.iter().map(|(_, cells)| cells[at].as_str());
        let filled = cells().filter(|cell| !is_missing(cell)).count();
        let numbers = cells().filter(|cell| result_in(cell).is_some()).count();
        let levels = table.levels(at).len();
        let head = role_of(&table.columns[at].head);
        let property = table.columns[at].property;
        table.columns[at].numbers = numbers;
        if !table.columns[at].why.is_empty() {
            continue;
        }
        let (role, why) = match head {
            _ if filled == 0 => (Role::LeaveOut, "It is empty."),
            _ if property.is_some() => (Role::Reading, "Its head names a property."),
            Some(Role::Names) => (Role::Plot, "Its head says so."),
            // A result may be named after a bed or a day; nearly all numbers, mostly different.
            Some(Role::Treatment) if levels <= super::MOST_TREATMENTS => {
                (Role::Treatment, "Its head says so.")
            }
            Some(role) if levels < rows || role == Role::Plot => (role, "Its head says so."),
            _ if 2 * numbers >= filled => (Role::Reading, "It holds numbers."),
            _ if levels < 2 => (Role::LeaveOut, "It says the same in every line."),
            _ if levels == rows => (Role::LeaveOut, "It holds another word in every line."),
            _ => (Role::Factor, "It holds words that come back."),
        };
        (table.columns[at].role, table.columns[at].why) = (role, why.into());
    }
    if table.of(Role::Treatment).next().is_none() {
        let many = |at: &usize| (2..=super::MOST_TREATMENTS).contains(&table.levels(*at).len());
        let words = table.of(Role::Factor).find(many);
        let rate = |at: &usize| {
            is_rate(&table.columns[*at].head) && many(at) && table.levels(*at).len() * 2 <= rows
        };
        let chosen = words.or_else(|| table.of(Role::Reading).find(rate));
        if let Some(at) = chosen {
            table.columns[at].role = Role::Treatment;
            table.columns[at].why =
                "No head names the treatment, and this column can be it.".into();
        }
    }
    // Only one column says what was done; the others of that head describe it or are factors.
    let more: Vec<usize> = table.of(Role::Treatment).skip(1).collect();
    for at in more {
        table.columns[at].role = Role::Factor;
    }
    let more: Vec<usize> = table.of(Role::Block).skip(1).collect();
    for at in more {
        (table.columns[at].role, table.columns[at].why) =
            (Role::LeaveOut, "Another column holds the blocks.".into());
    }
    set_by_treatment(table);
}

/// What is the same in all plots of a treatment, or of a block, describes it, and is neither a
/// result nor a factor of its own.
fn set_by_treatment(table: &mut Table) {
    let Some(treatment) = table.of(Role::Treatment).next() else { return };
    let block = table.of(Role::Block).next();
    for at in 0..table.columns.len() {
        let Column { role, property, .. } = table.columns[at];
        let follows = |of: usize| {
            let mut seen: BTreeMap<&str, &str> = BTreeMap::new();
            let same = table.rows.iter().all(|(_, cells)| {
                let (of, cell) = (cells[of].as_str(), cells[at].as_str());
                *seen.entry(of).or_insert(cell) == cell
            });
            same && seen.len() < table.rows.len()
        };
        let (words, number) = (role == Role::Factor, role == Role::Reading && property.is_none());
        let levels = table.levels(at).len();
        let set = words && follows(treatment) || number && levels > 2 && follows(treatment);
        let of_block = words && block.is_some_and(follows);
        let why = match (set, of_block) {
            (true, _) => "It is the same in all plots of a treatment.",
            (_, true) => "It is the same in all plots of a block.",
            _ => continue,
        };
        (table.columns[at].role, table.columns[at].why) = (Role::LeaveOut, why.into());
    }
}

/// Roles that a person gave.
fn answered(table: &mut Table, trial: &Trial) -> Result<(), Refusal> {
    for answer in &trial.roles {
        let Some(at) = table.columns.iter().position(|c| c.head == answer.head) else {
            return Err(table.refuse(format!(
                "No column is called “{}” any more. Choose its role again, or take that answer back.",
                answer.head
            )));
        };
        (table.columns[at].role, table.columns[at].why) = (answer.role, "You said so.".into());
    }
    Ok(())
}

/// Leaves out the rows that are no part of the trial.
fn keep_only(table: &mut Table, trial: &Trial) -> Result<(), Refusal> {
    for only in &trial.only {
        let Some(at) = table.columns.iter().position(|c| c.head == only.head) else {
            return Err(table.refuse(format!(
                "No column is called “{}” any more. Choose its role again, or take that answer back.",
                only.head
            )));
        };
        let mut kept = table.clone();
        kept.rows.retain(|(_, cells)| only.values.iter().any(|value| *value == cells[at]));
        if kept.rows.len() < 2 {
            return Err(table.refuse(format!(
                "Hardly a line is left where “{}” holds what you chose. Choose more of it.",
                only.head
            )));
        }
        *table = kept;
    }
    Ok(())
}

/// Lists what stands in the columns that hold no results, in all rows, so that others can be
/// chosen.
fn describe(table: &mut Table) {
    for at in 0..table.columns.len() {
        if table.columns[at].role != Role::Reading {
            let levels = table.levels(at).into_iter().take(MOST_LEVELS);
            let levels: Vec<String> = levels.map(str::to_string).collect();
            table.columns[at].levels = levels;
        }
    }
}
