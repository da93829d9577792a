//! A [`Grid`] to a [`Report`].

use std::borrow::Cow;
use std::ops::Range;

use super::about::{AboutSample, about_sample};
use super::across_by_place::across_by_place;
use super::apart::Lines;
use super::cell_a_line::cell_a_line;
use super::column_heads::{headed, is_years, with_first_as_group};
use super::counters::without_counters;
use super::crop::crop_of;
use super::element_rows::element_rows;
use super::fold::fold;
use super::grid::{filled, joined, words_of};
use super::label::Label;
use super::layout::{Head, Role, head, is_result, names_property, role};
use super::likely_columns::{likely_columns, likely_records};
use super::likely_rows::likely_rows;
use super::listed_heads::listed_heads;
use super::lost_lines::lost_lines;
use super::marks::{Mark, mark};
use super::names::Word;
use super::nested_names::out_of_their_nest;
use super::number::{Decimal, Evidence, Said, said};
use super::place::Tail;
use super::poured::poured;
use super::reader::{Reader, is_wordless, whole};
use super::run_together::{RunTogether, run_together};
use super::sample_names::{heads_no_names, identities};
use super::scanned::as_scanned;
use super::sections::parts;
use super::slashes::parted_by_slashes;
use super::spelling::plainly;
use super::stacked_heads::stacked;
use super::table;
use super::{Cell, Grid, Pairing, Place, Report, Trouble};
use crate::region::Region;

/// Reads a grid.
///
/// # Errors
/// When nothing in it is a soil result.
pub fn read(grid: &Grid) -> Result<Report, Trouble> {
    let (scanned, scan) = as_scanned(&grid.rows);
    let mut evidence = Evidence::default();
    for cell in scanned.iter().flatten() {
        evidence.look_at(&cell.text);
    }
    let (decimal, note) = evidence.decide();
    let mut reader = Reader::new(decimal, grid.paged);
    reader.report.notes.extend(scan.into_iter().chain(note));
    let plain = without_counters(plainly(&scanned), decimal);
    let mut rows = out_of_their_nest(parted_by_slashes(plain, decimal), decimal);
    let lines = rows.iter().enumerate();
    let poured: Vec<_> = lines
        .filter_map(|(i, row)| {
            Some((i, lost_lines(row, decimal).or_else(|| poured(row, decimal))?))
        })
        .collect();
    for (at, own) in poured.into_iter().rev() {
        rows.to_mut().splice(at..=at, own);
    }
    let mut from = 0;
    for (end, matter) in parts(&rows, decimal) {
        reader.section = matter;
        read_sheets(&mut reader, &rows[from..end])?;
        from = end;
    }
    let mut report = reader.finish(grid)?;
    report.crop = crop_of(&grid.rows);
    report.regions = Region::named_in(grid.rows.iter().flatten().map(|cell| cell.text.as_str()));
    Ok(report)
}

/// Reads rows of one or more sheets.
fn read_sheets(reader: &mut Reader, rows: &[Vec<Cell>]) -> Result<(), Trouble> {
    let mut at = 0;
    while at < rows.len() {
        if let Some(name) = sheet_name(&rows[at]) {
            reader.turn_to_sheet(name);
            at += 1;
        }
        let rest = &rows[at..];
        let end = rest.iter().position(|r| sheet_name(r).is_some()).unwrap_or(rest.len());
        if reader.section.is_some() {
            rest[..end].iter().try_for_each(|row| reader.row_of_section(row))?;
        } else {
            read_part(reader, &from_the_margin(&rest[..end], reader.decimal))?;
        }
        at += end;
    }
    Ok(())
}

/// The name of the sheet that begins at a row.
fn sheet_name(row: &[Cell]) -> Option<&str> {
    let [only] = row else { return None };
    match mark(&only.text)? {
        Mark::Sheet(name) => Some(name),
        Mark::Page(_) => None,
    }
}

/// The rows with every table moved to the left margin: a sheet may begin in its second
/// column, and in a PDF a centred table may stand to the right of a title.
fn from_the_margin(rows: &[Vec<Cell>], decimal: Decimal) -> Cow<'_, [Vec<Cell>]> {
    let mut moved = Cow::Borrowed(rows);
    let mut at = 0;
    for block in rows.chunk_by(|a, b| (a.len() > 1) == (b.len() > 1)) {
        let blank = |r: &Vec<Cell>| r.iter().take_while(|c| c.text.is_empty()).count();
        let margin = block.iter().map(blank).min().unwrap_or(0);
        // Results in the first row go on below the head of a table further up.
        let goes_on = || block[0].iter().any(|c| is_result(&c.text, decimal));
        if margin > 0 && !goes_on() {
            let block = &mut moved.to_mut()[at..at + block.len()];
            block.iter_mut().for_each(|row| drop(row.drain(..margin)));
        }
        at += block.len();
    }
    moved
}

/// Reads a sheet, or a source without sheets.
fn read_part(reader: &mut Reader, rows: &[Vec<Cell>]) -> Result<(), Trouble> {
    let decimal = reader.decimal;
    let lines = Lines::of(rows, decimal);
    let mut at = 0;
    while at < rows.len() {
        // Numbers without a word are no head and no result; a damaged sheet may have thousands.
        if rows[at].iter().all(is_wordless) && !is_years(&rows[at]) {
            let (text, place) = whole(&rows[at]);
            if rows[at].len() == 1 {
                reader.in_no_place(&text, place, "no soil property in this line".into());
            } else if !text.is_empty() {
                reader.unread(None, &text, "numbers without a name", place);
            }
            at += 1;
            continue;
        }
        if let Some((left, right)) = side_by_side(rows, at, decimal) {
            read_part(reader, &left)?;
            read_part(reader, &right)?;
            at += left.len().max(right.len());
            continue;
        }
        if let Some((names, taken)) = identities(rows, at) {
            reader.aliases.extend(names);
            at += taken;
            continue;
        }
        if let Some(pairs) = says_what_follows(&rows[at]) {
            pairs.iter().try_for_each(|pair| reader.free_row(pair))?;
            at += 1;
            continue;
        }
        if let Some(pairs) = named_below(rows, at) {
            pairs.iter().try_for_each(|pair| reader.free_row(pair))?;
            at += 2;
            continue;
        }
        if let Some(table) = element_rows(rows, at, decimal) {
            table.results.iter().try_for_each(|pair| reader.free_row(pair))?;
            for row in table.limits {
                let (text, place) = whole(row);
                reader.unread(None, &text, "a target or a range, not a result", place);
            }
            at += table.taken;
            continue;
        }
        if let Some(table) = across_by_place(rows, at, decimal) {
            read_run_together(reader, rows, at, &table)?;
            at += table.taken;
            continue;
        }
        // What stands right above such a list is no head of another table.
        let next =
            (at + 1..rows.len().min(at + 5)).any(|i| across_by_place(rows, i, decimal).is_some());
        if next && !rows[at].iter().any(|c| is_result(&c.text, decimal)) {
            reader.free_row(&rows[at])?;
            at += 1;
            continue;
        }
        if let Some(table) = stacked(rows, at, decimal) {
            for row in &table.unused {
                let (text, place) = whole(row);
                reader.in_no_place(&text, place, "it says nothing of the results".into());
            }
            at += table.gone + table::panels(reader, &table.rows, 0, &table.roles)?;
            continue;
        }
        if let Some(table) = headed(rows, at, decimal) {
            for row in &table.ranges {
                let (text, place) = whole(row);
                reader.unread(None, &text, "a target or a range, not a result", place);
            }
            let from = at + table.heads;
            let (rows, from) = match &table.rows {
                Some(shaped) => (&shaped[..], 0),
                None => (rows, from),
            };
            let end = table::samples_down(reader, rows, from, &table.heading, &table.roles)?;
            at += table.heads + end - from;
            continue;
        }
        if let Some(table) = cell_a_line(&lines, at, decimal) {
            table::panels(reader, &table.rows, 0, &table.roles)?;
            at += table.taken;
            continue;
        }
        let listed = lines.may_list_heads(at).then(|| listed_heads(rows, at, decimal)).flatten();
        if let Some(apart) = listed.or_else(|| lines.apart(at)) {
            for &i in &apart.between {
                reader.free_row(&rows[i])?;
            }
            reader.pairing = if apart.sure { Pairing::Together } else { Pairing::CountedOff };
            table::samples_down(reader, &apart.rows, 0, &apart.heading, &apart.roles)?;
            reader.pairing = Pairing::Together;
            at += apart.taken;
            continue;
        }
        at = match head(rows, at, decimal) {
            Some(Head::Samples(roles))
                if table::is_out_of_line(&rows[at], &roles, &rows[at + 1..], decimal)
                    && let Some(table) = likely_columns(rows, at, decimal) =>
            {
                read_run_together(reader, rows, at, &table)?;
                at + table.taken
            }
            Some(Head::Samples(roles)) => {
                let roles = with_first_as_group(&rows[at], &rows[at + 1..], roles, decimal);
                table::samples_down(reader, rows, at + 1, &rows[at], &roles)?
            }
            Some(Head::Properties(roles)) => {
                // Without a head nobody knows whether its columns are samples.
                let headless = rows[at].first().is_some_and(|c| names_property(c, decimal));
                let nameless =
                    |(role, cell): &(&Role, &Cell)| matches!(role, Role::Values) && cell.is_blank();
                let headless = headless || roles.iter().zip(&rows[at]).filter(nameless).count() > 1;
                // One blank apart, an unknown word may head the names or be the first sample's.
                let close = |pair: &[Cell]| pair[1].place.start == pair[0].place.end + 1;
                let head = rows[at][0].text.as_str();
                let open = matches!(role(head), Role::Other) && rows[at].windows(2).all(close);
                // One column of results beside their aims is that of the one sample.
                let several = roles.iter().any(|r| matches!(r, Role::Sample(_)));
                let aims = roles.iter().any(|r| matches!(r, Role::Ratings));
                let asked = headless && (several || !aims) || open;
                let pairing = if asked { Pairing::CountedOff } else { Pairing::Together };
                reader.pairing = pairing;
                let end = table::panels(reader, rows, at, &roles)?;
                reader.pairing = Pairing::Together;
                end
            }
            Some(Head::Results(roles)) => table::results_down(reader, rows, at, &roles)?,
            None if let Some(table) = run_together(rows, at, decimal)
                .or_else(|| likely_columns(rows, at, decimal))
                .or_else(|| likely_records(rows, at, decimal))
                .or_else(|| likely_rows(rows, at, decimal)) =>
            {
                read_run_together(reader, rows, at, &table)?;
                at + table.taken
            }
            None if let Some((row, between)) = found_below(rows, at, decimal) => {
                reader.free_row(&row)?;
                for row in &rows[between.clone()] {
                    let (text, place) = whole(row);
                    reader.unread(None, &text, "a target or a range, not a result", place);
                }
                between.end + 1
            }
            None => match result_below(rows, at, decimal) {
                Some(row) => {
                    reader.free_row(&row)?;
                    at + 2
                }
                None => {
                    reader.free_row(&rows[at])?;
                    at + 1
                }
            },
        };
    }
    Ok(())
}

/// `FIELD ID  Sect 14 NE  SAMPLE ID  FIELD NAME  Beets 24`: words that each say what stands behind
/// them, and no head of columns. Each word with what is said of it.
fn says_what_follows(row: &[Cell]) -> Option<Vec<Vec<Cell>>> {
    let cells: Vec<&Cell> = filled(row).collect();
    let digit = |c: &Cell| c.text.contains(|c: char| c.is_ascii_digit());
    let word = |c: &&Cell| matches!(role(&c.text), Role::Sample(0..10)) && !digit(c);
    if let Some(pairs) = of_a_form(&cells) {
        return Some(pairs);
    }
    let [first, second, others @ ..] = &cells[..] else { return None };
    let each = word(first) && digit(second) && !word(second) && others.iter().any(&word);
    each.then(|| {
        // "SAMPLE ID" with nothing behind it was not filled in, and a name comes before a code.
        let pairs = cells.chunk_by(|_, next| !word(next)).filter(|pair| pair.len() > 1);
        let two = pairs.map(|pair| pair.iter().take(2).map(|c| (*c).clone()).collect());
        let mut two: Vec<Vec<Cell>> = two.collect();
        two.sort_by_key(|pair| !["nam", "nom"].iter().any(|n| fold(&pair[0].text).contains(n)));
        two
    })
}

/// Beginnings of what a form asks for beside the sample, folded.
const OF_A_FORM: [&str; 16] = [
    "client", "customer", "grower", "farm", "report", "lab", "date", "received", "crop", "county",
    "order", "kunde", "auftrag", "datum", "cliente", "fecha",
];

/// `Client   M. Ruiz   Field   Upper 14   Report   AB-20417`: words and what is said of each, cell
/// by cell.
fn of_a_form(cells: &[&Cell]) -> Option<Vec<Vec<Cell>>> {
    let pairs = cells.chunks_exact(2);
    let word = |c: &Cell| !c.text.contains(|c: char| c.is_ascii_digit());
    let asks = |c: &Cell| OF_A_FORM.iter().any(|w| fold(&c.text).starts_with(w));
    let sample = |c: &Cell| matches!(role(&c.text), Role::Sample(0..10));
    let named = |pair: &&[&Cell]| {
        sample(pair[0]) && ![pair[0], pair[1]].into_iter().any(asks) && !sample(pair[1])
    };
    // Nearly every line ends here.
    if cells.len() < 4
        || !cells.len().is_multiple_of(2)
        || !cells.iter().step_by(2).any(|c| asks(c))
    {
        return None;
    }
    let each = pairs.clone().all(|pair| word(pair[0]) && (asks(pair[0]) || sample(pair[0])));
    (each && pairs.clone().any(|pair| named(&pair)))
        .then(|| pairs.filter(named).map(|pair| vec![pair[0].clone(), pair[1].clone()]).collect())
}

/// `Sample ID   Field ID   Last crop` over `H2   Home   Maize`: what each says of the one sample, the
/// heads of names with what stands below them.
fn named_below(rows: &[Vec<Cell>], at: usize) -> Option<Vec<[Cell; 2]>> {
    let (head, below) = (&rows[at], rows.get(at + 1)?);
    let named = |c: &Cell| matches!(role(&c.text), Role::Sample(0..4)) && !c.text.ends_with(':');
    // Nearly every line ends here.
    if head.len() != below.len() || !head.first().is_some_and(|c| !c.is_blank() && named(c)) {
        return None;
    }
    let other = |c: &Cell| {
        matches!(role(&c.text), Role::Sample(_) | Role::Other | Role::Blank | Role::Refused(_))
    };
    let digit = |c: &Cell| c.text.contains(|c: char| c.is_ascii_digit());
    // A second row of names is a table, and of forms with a cell a line the next says its piece.
    let goes_on = || match rows.get(at + 2).map(Vec::as_slice) {
        Some([next]) if head.len() == 1 => {
            !matches!(role(&next.text), Role::Sample(_) | Role::Texture | Role::Depth)
        }
        Some(row) if head.len() > 1 => row.len() == head.len() && filled(row).count() > 1,
        _ => head.len() == 1,
    };
    let soil = |c: &Cell| matches!(role(&c.text), Role::Results(_));
    let says = |c: &Cell| c.is_blank() || matches!(role(&c.text), Role::Sample(0..10));
    let none = below.iter().all(says) || below.iter().any(soil);
    // "Soil type  Loamy" says its own piece.
    let own = below.first().is_some_and(|c| heads_no_names(&c.text));
    if head.iter().any(|c| !other(c) || digit(c)) || none || own || goes_on() {
        return None;
    }
    // A name comes before a code.
    let pair = |(head, name): (&Cell, &Cell)| match role(&head.text) {
        Role::Sample(rank) if !name.is_blank() => Some((rank, [head.clone(), name.clone()])),
        _ => None,
    };
    let mut pairs: Vec<(u8, [Cell; 2])> = head.iter().zip(below).filter_map(pair).collect();
    pairs.sort_by_key(|(rank, _)| *rank);
    Some(pairs.into_iter().map(|(_, pair)| pair).collect())
}

/// Two forms beside each other, each under the name of its sample, as the rows of the one and of
/// the other. Blanks hold them, so that their places in the line tell which is which.
#[allow(clippy::type_complexity, reason = "two forms")]
fn side_by_side(
    rows: &[Vec<Cell>],
    at: usize,
    decimal: Decimal,
) -> Option<(Vec<Vec<Cell>>, Vec<Vec<Cell>>)> {
    let names: Vec<&Cell> = filled(&rows[at]).collect();
    let [first, second] = names[..] else { return None };
    let name = |cell: &Cell| {
        cell.text.contains(": ")
            && matches!(
                about_sample(std::slice::from_ref(cell), decimal),
                Some(AboutSample::Name(..))
            )
    };
    let border = second.place.start;
    let kind = |cell: &Cell| cell.text.split(':').next().map(fold);
    if border < first.place.end + 3 || !name(first) || !name(second) || kind(first) != kind(second)
    {
        return None;
    }
    let across =
        |row: &Vec<Cell>| filled(row).any(|c| c.place.start + 2 < border && c.place.end > border);
    let both: Vec<&Vec<Cell>> = rows[at..].iter().take_while(|row| !across(row)).collect();
    let half = |right: bool| -> Vec<Vec<Cell>> {
        let own = |cell: &&Cell| (cell.place.start + 2 >= border) == right;
        both.iter().map(|row| filled(row).filter(own).cloned().collect()).collect()
    };
    (both.len() > 3).then(|| (half(false), half(true)))
}

/// Reads a table whose columns stand one blank apart.
fn read_run_together(
    reader: &mut Reader,
    rows: &[Vec<Cell>],
    at: usize,
    table: &RunTogether,
) -> Result<(), Trouble> {
    for &at in &table.unnamed {
        reader.free_row(&rows[at])?;
    }
    reader.pairing = if table.sure { Pairing::Together } else { Pairing::CountedOff };
    table::samples_down(reader, &table.rows, 0, &table.heading, &table.roles)?;
    reader.pairing = Pairing::Together;
    for &at in &table.unmet {
        let (text, place) = whole(&rows[at]);
        reader.unread(None, &text, table::SURPLUS, place);
    }
    let taken = (at..at + table.taken).filter(|at| !table.unmet.contains(at));
    list_uncounted(reader, taken.map(|at| &rows[at]), table);
    Ok(())
}

/// Lists the results of rows that were counted off under no name, so that none is lost in silence.
fn list_uncounted<'a>(
    reader: &mut Reader,
    rows: impl Iterator<Item = &'a Vec<Cell>>,
    table: &RunTogether,
) {
    let mut used: Vec<Place> = table.rows.iter().flatten().map(|c| c.place).collect();
    used.sort_unstable();
    let is_used = |place: Place| {
        let after = used.partition_point(|p| (p.line, p.start) <= (place.line, place.start));
        after > 0 && used[after - 1].line == place.line && used[after - 1].end > place.start
    };
    for row in rows {
        let words = filled(row).flat_map(words_of);
        let left: Vec<Cell> =
            words.filter(|w| is_result(&w.text, reader.decimal) && !is_used(w.place)).collect();
        // The laboratory's number and a field's are no results.
        if left.len() > 2 || left.iter().any(|c| c.text.contains(['.', ','])) {
            let left = joined(&left);
            reader.unread(None, &left.text, UNCOUNTED, left.place);
        }
    }
}

/// Why a number is listed that was counted off under no name.
const UNCOUNTED: &str = "numbers of a row that stand under no name that was found";

/// A name alone on its line with its result alone on the next, as one row.
fn result_below(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Vec<Cell>> {
    let [name] = rows.get(at)?.as_slice() else { return None };
    let [result] = rows.get(at + 1)?.as_slice() else { return None };
    let Said::Amount(_, end) = said(&result.text, decimal) else { return None };
    let clear = Tail::of(&result.text[end..], decimal).left.is_none();
    // Of several numbers one below the other none is dropped in silence.
    let bare = |text: &str| text.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b','));
    let more = |row: &Vec<Cell>| row.len() == 1 && bare(&row[0].text) && bare(&result.text);
    if of_a_block(rows, at, decimal) || rows.get(at + 2).is_some_and(more) {
        return None;
    }
    (clear && names_property(name, decimal)).then(|| vec![name.clone(), result.clone()])
}

/// No name has more lines of limits before its result.
const MOST_LIMITS: usize = 4;

/// A name alone on its line and, below lines with its limits, one that says which number was
/// found: `Kalium`, `Mangel unter 90`, `Messwert 486 mg/kg`. The name with its result, and the
/// lines between.
fn found_below(
    rows: &[Vec<Cell>],
    at: usize,
    decimal: Decimal,
) -> Option<(Vec<Cell>, Range<usize>)> {
    let [name] = rows[at].as_slice() else { return None };
    // Nearly every line ends here.
    let near = rows.iter().skip(at + 1).take(1 + MOST_LIMITS).flatten();
    if !near.into_iter().any(|c| c.text.bytes().any(|b| b.is_ascii_digit()))
        || name.text.contains(|c: char| c.is_ascii_digit() && !name.text.ends_with(')'))
        || Label::of(&name.text).quantity().is_err()
    {
        return None;
    }
    for (i, row) in rows.iter().enumerate().skip(at + 1).take(1 + MOST_LIMITS) {
        let (text, place) = whole(row);
        let next = place.line == name.place.line + (i - at) as u32;
        let from = text.find(|c: char| c.is_ascii_digit() || matches!(c, '<' | '>'))?;
        let ahead = Label::of(text[..from].trim_end_matches([':', ' ', '=']));
        let found = ahead.unknown.is_empty() && ahead.properties.is_empty();
        if !next || !ahead.properties.is_empty() {
            return None;
        }
        if found && ahead.has(Word::ResultColumn) && !ahead.has(Word::RangeColumn) {
            let start = place.start + text[..from].chars().count() as u32;
            let result = Cell { text: text[from..].into(), place: Place { start, ..place } };
            let one = is_result(result.text.split(' ').next().unwrap_or(""), decimal);
            return one.then(|| (vec![name.clone(), result], at + 1..i));
        }
    }
    None
}

/// Whether a name is the last of a block of names, and the number below it the first of a block
/// of numbers: then the two do not belong together.
fn of_a_block(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> bool {
    let alone = |i: usize| match rows.get(i).map(Vec::as_slice) {
        Some([only]) => Some(only),
        _ => None,
    };
    let name = at.checked_sub(1).and_then(alone).is_some_and(|c| names_property(c, decimal));
    name && alone(at + 2).is_some_and(|c| is_result(&c.text, decimal))
}
