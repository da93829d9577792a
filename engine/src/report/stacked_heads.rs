//! A table with one property a row whose samples have several rows of heads: laboratory number,
//! name, code, depth. The best of them names the samples, and a column of units or of ratings may
//! stand between what the heads say and the results.

use super::Cell;
use super::about::depth_at;
use super::grid::{filled, with_their_own};
use super::label::Label;
use super::layout::{Role, is_result, names_property, role};
use super::names::Word;
use super::number::{Decimal, is_date};

/// No table has more rows of heads.
const MOST_HEADS: usize = 8;

/// How many rows of such a table are brought into columns.
const REACH: usize = 600;

/// A name worse than any that `names.rs` ranks is none.
const NO_NAME: u8 = 20;

/// What a code is worse than a name, and what heads are that call two samples the same.
const CODE: u8 = 5;
const SAME: u8 = 8;

/// Such a table with its rows in equal columns.
pub(super) struct Stacked {
    pub rows: Vec<Vec<Cell>>,
    pub roles: Vec<Role>,
    /// The rows of heads that say nothing that is used.
    pub unused: Vec<Vec<Cell>>,
    /// How many rows of heads are gone from `rows`.
    pub gone: usize,
}

/// The table that begins at a row, where several rows head it or its rows have more cells.
pub(super) fn stacked(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Stacked> {
    by_columns(rows, at, decimal).or_else(|| by_count(rows, at, decimal))
}

/// The table of a file, whose columns are known: those of a least, a most or an aim beside the
/// samples are none, and a name stands over the rows below it that lack theirs.
fn by_columns(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Stacked> {
    let width = rows[at].len();
    let named = |row: &Vec<Cell>| {
        let soil = |c: &Cell| names_property(&plain(c), decimal) || Label::of(&c.text).is_soil();
        let results = row.iter().skip(1).filter(|c| is_result(&c.text, decimal)).count();
        row.len() == width && results > 0 && row.first().is_some_and(soil)
    };
    let near = &rows[at..rows.len().min(at + MOST_HEADS + 1)];
    let count = near.iter().position(named)?;
    let (heads, below) = (&near[..count], &rows[at + count..rows.len().min(at + count + REACH)]);
    let decimals = |c: &Cell| c.text.contains(['.', ',']) && is_result(&c.text, decimal);
    let heads_it = |row: &Vec<Cell>| row.len() == width && filled(row).count() > 1;
    // "Result  Status  Result  Status" gives each sample several columns.
    let several =
        |row: &Vec<Cell>| row.iter().filter(|c| matches!(role(&c.text), Role::Values)).count() > 1;
    if count < 2 || !heads.iter().all(heads_it) || heads.iter().any(several) {
        return None;
    }
    let data: Vec<&Vec<Cell>> = below.iter().take(60).filter(|row| named(row)).collect();
    let roles = columns_of(heads, &data, decimal);
    let samples: Vec<usize> = (1..width).filter(|&i| matches!(roles[i], Role::Sample(_))).collect();
    let first = *samples.first()?;
    if data.len() < 2 || samples.len() < 2 {
        return None;
    }
    let heads: Vec<Vec<Cell>> = heads.iter().map(|head| spread(head, &samples, decimal)).collect();
    let heads = &heads[..];
    // The words for what a head says stand left of the samples.
    let of_samples = |head: &Vec<Cell>| -> Vec<Cell> {
        // "Analysis  Unit" over the names of the tests and their units.
        let names = |c: &&Cell| matches!(role(&plain(c).text), Role::Names);
        let label = filled(&head[..first]).find(names);
        let label = label.or_else(|| filled(&head[..first]).last()).unwrap_or(&head[0]);
        [label].into_iter().chain(samples.iter().map(|&i| &head[i])).cloned().collect()
    };
    let about = |head: &Vec<Cell>| {
        matches!(role(&plain(&of_samples(head)[0]).text), Role::Depth | Role::Texture)
    };
    // Names that are the same over several depths tell the samples apart with these.
    let deep = heads.iter().any(about);
    let rank = |head: &Vec<Cell>| {
        let mut head = of_samples(head);
        // Over the names of the tests, and over nothing, stands what each column is called.
        if matches!(role(&head[0].text), Role::Names | Role::Blank) {
            head[0].text = "Field".into();
        }
        let same = if deep && has_same(&head[1..]) { SAME } else { 0 };
        rank(&head, decimal) - same
    };
    let full =
        |head: &&Vec<Cell>| samples.iter().all(|&i| !head[i].is_blank() && !decimals(&head[i]));
    let ranked = heads.iter().enumerate().filter(|(_, head)| full(head));
    let (rank, best) = ranked.map(|(i, head)| (rank(head), i)).min()?;
    // "Result  Guide  Rating" are no samples.
    let result =
        samples.iter().any(|&i| matches!(role(&plain(&heads[best][i]).text), Role::Values));
    if rank >= NO_NAME || result {
        return None;
    }
    let mut shaped = vec![heads[best].clone()];
    let labelled = |head: &Vec<Cell>| {
        let mut head = head.clone();
        head[0] = of_samples(&head)[0].clone();
        head
    };
    shaped.extend(heads.iter().filter(|head| about(head)).map(labelled));
    let unused = heads.iter().enumerate().filter(|(i, head)| *i != best && !about(head));
    let unused: Vec<Vec<Cell>> = unused.map(|(_, head)| head.clone()).collect();
    let gone = count - shaped.len();
    let mut over: Option<Cell> = None;
    for row in below {
        let mut row = row.clone();
        if row.len() == width && row[0].is_blank() {
            row[0] = over.clone().unwrap_or_else(|| row[0].clone());
        } else {
            over = row.first().cloned();
        }
        shaped.push(row);
    }
    Some(Stacked { rows: shaped, roles, unused, gone })
}

/// A head whose names stand over several samples each, with the name over every one of them; one
/// of depths gets the word for them.
fn spread(head: &[Cell], samples: &[usize], decimal: Decimal) -> Vec<Cell> {
    let mut head = head.to_vec();
    let filled = samples.iter().filter(|&&i| !head[i].is_blank()).count();
    for pair in samples.windows(2) {
        if filled > 1 && head[pair[1]].is_blank() {
            head[pair[1]] = head[pair[0]].clone();
        }
    }
    let deep = samples.iter().all(|&i| depth_at(&head[i].text, "", decimal).is_some());
    if deep && head[..samples[0]].iter().all(Cell::is_blank) {
        head[0].text = "Depth".into();
    }
    head
}

/// What each column holds, by its heads and by what stands in it.
fn columns_of(heads: &[Vec<Cell>], data: &[&Vec<Cell>], decimal: Decimal) -> Vec<Role> {
    let width = heads[0].len();
    // A head with blanks to its right stands over them too.
    let over = |head: &Vec<Cell>, i: usize| {
        head[..=i].iter().rev().find(|c| !c.is_blank()).map(|c| Label::of(&c.text))
    };
    let among = |i: usize, wanted: &dyn Fn(&Cell) -> bool| {
        data.iter().filter(|row| wanted(&row[i])).count()
    };
    let mut roles = vec![Role::Names];
    for i in 1..width {
        let about = heads
            .iter()
            .filter_map(|head| over(head, i))
            .any(|label| label.has(Word::RangeColumn) || label.has(Word::RatingColumn));
        let number = among(i, &|c| is_result(&c.text, decimal)) * 2 > data.len();
        let unit = among(i, &|c| Label::of(&c.text).only_unit().is_some()) > 0;
        let method = among(i, &|c| !Label::of(&c.text).methods.is_empty()) > 0;
        roles.push(match (about, number) {
            (true, _) => Role::Ratings,
            (_, true) => Role::Sample(0),
            _ if unit => Role::Units,
            _ if method => Role::Methods,
            _ => Role::Ratings,
        });
    }
    roles
}

/// The table whose rows have as many cells as its heads, or one more for a unit.
fn by_count(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Stacked> {
    let first = bare(&rows[at]);
    let count = first.len().checked_sub(1).filter(|count| *count > 1)?;
    let is_one = |row: &&Vec<Cell>| bare(row).len() == count + 1 && is_head(bare(row), decimal);
    let heads: Vec<&[Cell]> =
        rows[at..].iter().take_while(is_one).take(MOST_HEADS).map(|r| bare(r)).collect();
    let (rank, best) = heads.iter().enumerate().map(|(i, head)| (rank(head, decimal), i)).min()?;
    if rank >= NO_NAME {
        return None;
    }
    let mut from = at + heads.len();
    let group = rows.get(from).and_then(|row| group(bare(row), count));
    from += usize::from(group.is_some());
    let width = 1 + count * group.unwrap_or(1);
    // "Analyte  Units  Screening level": a column behind the samples that is none of theirs.
    let limits = rows.get(from).map_or(0, |row| limits_behind(bare(row)));
    from += usize::from(limits > 0);
    let below = &rows[from.min(rows.len())..rows.len().min(from + REACH)];
    let below: Vec<Vec<Cell>> = match group {
        Some(_) => below.to_vec(),
        None if limits > 0 => below.iter().map(|row| without_limits(row, width, limits)).collect(),
        None => below.iter().map(|row| with_words(row, width, decimal)).collect(),
    };
    let fits = |row: &&Vec<Cell>| {
        let row = bare_name(row);
        row.first().is_some_and(|c| names_property(&plain(c), decimal))
            && row.len() <= width + 1
            && row.iter().skip(1).any(|c| is_result(&c.text, decimal))
    };
    let results: Vec<&Vec<Cell>> = below.iter().take(12).filter(fits).collect();
    let units = results.iter().any(|row| has_unit(row, width, decimal));
    let dotted = plain(&first[0]).text != first[0].text;
    if results.len() < 2 || heads.len() < 2 && !units && !dotted && group.is_none() {
        return None;
    }
    let columns = Columns { units, width, step: group.unwrap_or(1) };
    let about = |head: &[Cell]| matches!(role(&plain(&head[0]).text), Role::Depth | Role::Texture);
    let mut top = heads[best].to_vec();
    if rank >= CODE
        && let Some(names) = above(rows, at, count, decimal)
    {
        top.splice(1.., names);
    }
    let mut shaped = vec![columns.head(&top)];
    shaped.extend(heads.iter().filter(|head| about(head)).map(|head| columns.head(head)));
    let unused: Vec<Vec<Cell>> = (0..heads.len())
        .filter(|&i| i != best && !about(heads[i]))
        .map(|i| heads[i].to_vec())
        .collect();
    let gone = from - at - shaped.len();
    shaped.extend(below.iter().map(|row| columns.row(row, decimal)));
    Some(Stacked { rows: shaped, roles: columns.roles(), unused, gone })
}

/// How many columns of limits a row names behind those of names and units.
fn limits_behind(row: &[Cell]) -> usize {
    let roles: Vec<Role> = filled(row).map(|c| role(&c.text)).collect();
    let limits = roles.iter().rev().take_while(|r| matches!(r, Role::Ratings)).count();
    let names = |r: &Role| matches!(r, Role::Names | Role::Units | Role::Methods);
    let only = roles.len() < 5 && roles[..roles.len() - limits].iter().all(names);
    if only && matches!(roles.first(), Some(Role::Names)) { limits } else { 0 }
}

/// A row without its limits, where it has all its cells.
fn without_limits(row: &[Cell], width: usize, limits: usize) -> Vec<Cell> {
    let row = bare_name(row);
    let unit = row.get(1).is_some_and(|c| Label::of(&c.text).only_unit().is_some());
    let full = row.len() == width + usize::from(unit) + limits;
    row[..if full { row.len() - limits } else { row.len() }].to_vec()
}

/// A row with the words behind each result in its cell: `6.7  slightly acid  4.9  acid`.
fn with_words(row: &[Cell], width: usize, decimal: Decimal) -> Vec<Cell> {
    let row = bare_name(row);
    if row.len() <= width + 1 {
        return row.to_vec();
    }
    with_their_own(row, |last, cell| {
        let words = !cell.is_blank() && !is_result(&cell.text, decimal);
        words && is_result(&last.text, decimal) && Label::of(&cell.text).only_unit().is_none()
    })
}

/// The names in the rows above the heads, where these have codes only: each stands over a sample,
/// and nothing over the names of the tests.
fn above(rows: &[Vec<Cell>], at: usize, count: usize, decimal: Decimal) -> Option<Vec<Cell>> {
    let names = |row: &&Vec<Cell>| {
        let row = bare(row);
        let word = |c: &Cell| {
            !c.is_blank()
                && !is_code(&c.text)
                && !is_result(&c.text, decimal)
                && !c.text.contains(": ")
        };
        row.len() == count && row.iter().all(word)
    };
    let from = at.saturating_sub(2);
    let named: Vec<&Vec<Cell>> = rows[from..at].iter().filter(names).collect();
    let (first, others) = named.split_first()?;
    let mut joined = bare(first).to_vec();
    for row in others {
        for (name, more) in joined.iter_mut().zip(bare(row)) {
            name.text = format!("{} {}", name.text, more.text);
        }
    }
    Some(joined)
}

/// A row without the blank cells at its ends.
fn bare(row: &[Cell]) -> &[Cell] {
    let from = row.iter().take_while(|c| c.is_blank()).count();
    bare_name(&row[from..])
}

/// A row without the blank cells at its end.
fn bare_name(row: &[Cell]) -> &[Cell] {
    &row[..row.iter().rposition(|c| !c.is_blank()).map_or(0, |last| last + 1)]
}

/// A name without the row of dots that leads to its results.
fn plain(cell: &Cell) -> Cell {
    let text = cell.text.trim_end_matches(['.', ' ', ':', '…', '_']);
    // The full stop of "No." and the colon before no dots stay.
    let dots = cell.text.len() - text.len() > 2;
    Cell { text: if dots { text.into() } else { cell.text.clone() }, place: cell.place }
}

/// Whether a row says something of each sample: no property, no result, nothing that heads
/// another sort of table.
fn is_head(row: &[Cell], decimal: Decimal) -> bool {
    let [name, others @ ..] = row else { return false };
    let name = plain(name);
    if filled(row).count() < row.len() || row.iter().any(|c| plain(c).text.contains(": ")) {
        return false;
    }
    let label = Label::of(&name.text);
    if label.is_soil() || label.quantity().is_ok() {
        return false;
    }
    // "Gravel  5  8  12" is a result that nobody knows, and heads nothing.
    let unknown = !matches!(role(&name.text), Role::Sample(_) | Role::Depth | Role::Texture);
    if unknown && others.iter().any(|c| is_result(&c.text, decimal)) {
        return false;
    }
    // "Sample: Orchard   Rec'd 28/12/2017" says its pieces.
    if others.iter().any(|c| is_date(&c.text)) && !others.iter().all(|c| is_date(&c.text)) {
        return false;
    }
    !others.iter().any(|c| {
        let heads = matches!(
            role(&c.text),
            Role::Results(_) | Role::Refused(_) | Role::Values | Role::Names | Role::Units
        );
        // A lone letter or symbol may be a sample's name.
        heads && c.text.chars().count() > 2
    })
}

/// How good the names of a head are; lower is better.
fn rank(head: &[Cell], decimal: Decimal) -> u8 {
    let name = plain(&head[0]);
    let Role::Sample(rank) = role(name.text.trim_end_matches(':')) else {
        return NO_NAME + SAME;
    };
    // "The dog dug up bed three" is a sentence.
    if Label::of(&name.text).unknown.len() > 1 {
        return NO_NAME + SAME;
    }
    let names = &head[1..];
    let codes = names.iter().all(|c| is_code(&c.text) || is_result(&c.text, decimal));
    rank + if codes { CODE } else { 0 } + if has_same(names) { SAME } else { 0 }
}

/// Whether a head calls two samples the same.
fn has_same(names: &[Cell]) -> bool {
    names.iter().any(|c| names.iter().filter(|n| n.text == c.text).count() > 1)
}

/// Whether a name is a number or a code with more digits than letters.
pub(super) fn is_code(text: &str) -> bool {
    let digits = text.bytes().filter(u8::is_ascii_digit).count();
    digits > 0 && digits > text.chars().filter(|c| super::fold::is_letter(*c)).count()
}

/// `Result  Status  Result  Status`: how many columns each sample has.
fn group(row: &[Cell], count: usize) -> Option<usize> {
    let step = row.len() / count;
    if step < 2 || row.len() != step * count {
        return None;
    }
    let fits = |(i, cell): (usize, &Cell)| match role(&cell.text) {
        Role::Values => i % step == 0,
        Role::Ratings => i % step > 0,
        _ => false,
    };
    row.iter().enumerate().all(fits).then_some(step)
}

/// Whether a unit, or a blank for one, stands between a row's name and its results.
fn has_unit(row: &[Cell], width: usize, decimal: Decimal) -> bool {
    let row = bare_name(row);
    row.get(1).is_some_and(|c| {
        Label::of(&c.text).only_unit().is_some()
            || row.len() == width + 1 && !is_result(&c.text, decimal)
    })
}

/// The columns that the rows are brought into.
struct Columns {
    units: bool,
    width: usize,
    /// How many columns a sample has.
    step: usize,
}

impl Columns {
    fn roles(&self) -> Vec<Role> {
        let mut roles = vec![Role::Names];
        roles.extend(self.units.then_some(Role::Units));
        roles.extend(
            (1..self.width)
                .map(|i| if (i - 1) % self.step == 0 { Role::Sample(0) } else { Role::Ratings }),
        );
        roles
    }

    fn head(&self, head: &[Cell]) -> Vec<Cell> {
        let blank = |at: &Cell| Cell { text: String::new(), place: at.place };
        let mut row = vec![plain(&head[0])];
        row.extend(self.units.then(|| blank(&head[0])));
        for cell in &head[1..] {
            row.push(cell.clone());
            row.extend((1..self.step).map(|_| blank(cell)));
        }
        row
    }

    fn row(&self, row: &[Cell], decimal: Decimal) -> Vec<Cell> {
        let bare = bare_name(row);
        if bare.len() < 2 || bare.len() > self.width + 1 || bare[0].is_blank() {
            return row.to_vec();
        }
        let mut shaped = bare.to_vec();
        shaped[0] = plain(&shaped[0]);
        if self.units && !has_unit(bare, self.width, decimal) {
            shaped.insert(1, Cell { text: String::new(), place: bare[0].place });
        }
        shaped
    }
}
