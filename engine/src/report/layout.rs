//! Where the tables are in a grid, and what each of their columns holds.

use super::Cell;
use super::about::texture_alone;
use super::fold::squash;
use super::grid::{cell_at, filled, text_at};
use super::label::{Label, Quantity};
use super::lines::read_row;
use super::names::Word;
use super::no_samples::{calls_a_place, is_aim, is_of_several};
use super::number::{Decimal, Said, is_range, is_rating, is_year, said};
use super::place::Tail;

/// What a column holds.
#[derive(Clone, Debug)]
pub(super) enum Role {
    /// Results of a property.
    Results(Box<Quantity>),
    /// Something like a property that can't be taken, and why.
    Refused(String),
    /// The sample's name; the lower, the better.
    Sample(u8),
    /// The sampling depth.
    Depth,
    /// The texture class.
    Texture,
    /// Names of properties.
    Names,
    /// Results of the property the row names.
    Values,
    /// Units of the row's result.
    Units,
    /// Ratings of the row's result.
    Ratings,
    /// Methods of the row's result.
    Methods,
    /// No heading.
    Blank,
    /// Anything else.
    Other,
}

/// What a row is the head of.
#[derive(Clone, Debug)]
pub(super) enum Head {
    /// One sample a row.
    Samples(Vec<Role>),
    /// One property a row; the columns are samples, or one column of results
    /// with its unit and rating beside it.
    Properties(Vec<Role>),
    /// One result a row, with the names of its sample and its property.
    Results(Vec<Role>),
}

/// What the heading of a column says it holds.
pub(super) fn role(text: &str) -> Role {
    if text.is_empty() {
        return Role::Blank;
    }
    // Over samples it is theirs; in a line of its own it is the customer's.
    if ["name", "nom", "nombre", "nome", "naam", "navn"].contains(&squash(text).as_str()) {
        return Role::Sample(2);
    }
    // "RESULT2/" has the number of a footnote.
    if let Some(ahead) = text.strip_suffix('/') {
        let bare = ahead.trim_end_matches(|c: char| c.is_ascii_digit());
        if bare.len() < ahead.len() && !bare.is_empty() {
            return role(bare.trim_end());
        }
    }
    let label = Label::of(text);
    let has = |w| label.has(w);
    if has(Word::Depth) && !has(Word::Advice) {
        return Role::Depth;
    }
    if has(Word::Texture) && label.properties.is_empty() {
        return Role::Texture;
    }
    let rating = has(Word::RatingColumn) || has(Word::RangeColumn);
    // "ppm", "% saturation"
    let unit = label.unit.is_some() && label.properties.is_empty() && label.methods.is_empty();
    if unit
        && label.unknown.is_empty()
        && label.words.iter().all(|w| matches!(w, Word::Saturation | Word::Sat))
    {
        return Role::Values;
    }
    if rating && label.unit.is_none() && !label.properties.is_empty() && label.unknown.len() < 3 {
        return Role::Ratings;
    }
    // The B of "Plot B" is no boron.
    let letter = text.rsplit(' ').next().is_some_and(|last| last.len() == 1);
    let sampled = label.words.iter().any(|w| matches!(w, Word::Sample(_)));
    if letter && sampled && label.only_symbols && label.unit.is_none() && label.unknown.is_empty() {
        return Role::Sample(0);
    }
    match label.quantity() {
        Ok(quantity) => return Role::Results(Box::new(quantity)),
        Err(why) if label.is_soil() || !why.starts_with("no soil") => return Role::Refused(why),
        Err(_) => {}
    }
    let rank = label.words.iter().filter_map(|w| match w {
        Word::Sample(rank) => Some(*rank),
        _ => None,
    });
    if is_aim(text) {
        return Role::Ratings;
    }
    if calls_a_place(text) {
        return Role::Other;
    }
    if let Some(rank) = rank.min() {
        return Role::Sample(rank + if label.unknown.is_empty() { 0 } else { 10 });
    }
    if label.unknown.len() > 1 {
        return Role::Other;
    }
    if has(Word::RatingColumn) || has(Word::RangeColumn) || has(Word::Index) {
        Role::Ratings
    } else if has(Word::UnitColumn) {
        Role::Units
    } else if has(Word::MethodColumn) || text.eq_ignore_ascii_case("method") {
        Role::Methods
    } else if has(Word::ResultColumn) {
        Role::Values
    } else if has(Word::NameColumn) {
        Role::Names
    } else if text.len() > 2 && text.split_whitespace().all(is_rating) {
        // "Very Low", "Optimum": limits of the laboratory's steps, or a bar.
        Role::Ratings
    } else {
        Role::Other
    }
}

/// Whether a cell is a result: a number, a limit, "not detected".
pub(super) fn is_result(text: &str, decimal: Decimal) -> bool {
    matches!(said(text, decimal), Said::Amount(..) | Said::NotDetected)
}

/// Whether a cell is the name of a property and nothing else.
pub(super) fn names_property(cell: &Cell, decimal: Decimal) -> bool {
    !cell.is_blank()
        && !calls_a_plot(&cell.text)
        && Label::of(&cell.text).quantity().is_ok()
        && !is_result(&cell.text, decimal)
        && read_row(std::slice::from_ref(cell), decimal).drafts.is_empty()
}

/// Whether a text is a plot's short code, whatever else its letters mean: `NT-1`, `K-03`.
fn calls_a_plot(text: &str) -> bool {
    let code = text.trim().split_once('-');
    code.is_some_and(|(letters, digits)| {
        (1..4).contains(&letters.len())
            && letters.bytes().all(|b| b.is_ascii_uppercase())
            && !digits.is_empty()
            && digits.bytes().all(|b| b.is_ascii_digit())
    })
}

/// Whether row `at` is the head of a table.
pub(super) fn head(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Head> {
    let row = rows.get(at)?;
    if filled(row).count() < 2 {
        return None;
    }
    results_down(rows, at, decimal)
        .or_else(|| samples_down(rows, at, decimal))
        .or_else(|| properties_down(rows, at, decimal))
}

/// The roles of a head's columns. "Level" over words, beside a column of results, holds
/// their ratings.
fn roles(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Vec<Role> {
    let mut roles: Vec<Role> = rows[at].iter().map(|c| role(&c.text)).collect();
    let below = |i: usize| rows.iter().skip(at + 1).take(6).filter_map(move |r| cell_at(r, i));
    // Whether a column of results stands to the left, in the same panel.
    let mut beside = false;
    for (i, role) in roles.iter_mut().enumerate() {
        let words = || below(i).next().is_some() && below(i).all(|c| is_rating(&c.text));
        let numbers = i > 1 && below(i - 1).any(|c| is_result(&c.text, decimal));
        // "Results" over two columns: the second holds the units.
        let units = || {
            let mut all =
                rows.iter().skip(at + 1).take(12).filter_map(|r| cell_at(r, i)).peekable();
            all.peek().is_some() && all.all(|c| Label::of(&c.text).only_unit().is_some())
        };
        match role {
            Role::Blank | Role::Other if beside && units() => *role = Role::Units,
            Role::Names => beside = false,
            // "Level" behind the numbers of two years holds words.
            Role::Values if (beside || numbers) && words() => *role = Role::Ratings,
            Role::Values => beside |= below(i).any(|c| is_result(&c.text, decimal)),
            _ => {}
        }
    }
    roles
}

fn results_down(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Head> {
    let roles = roles(rows, at, decimal);
    let find = |wanted: fn(&Role) -> bool| roles.iter().position(wanted);
    find(|r| matches!(r, Role::Sample(_)))?;
    let name = find(|r| matches!(r, Role::Names))?;
    let value = find(|r| matches!(r, Role::Values))?;
    // The first result may be missing; another of the first ones is not.
    let holds = |r: &Vec<Cell>| cell_at(r, name).is_some() && is_result(text_at(r, value), decimal);
    rows.iter().skip(at + 1).take(4).any(holds).then_some(Head::Results(roles))
}

fn samples_down(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Head> {
    let row = &rows[at];
    // "24hr respiration" is a heading, whatever its number.
    let bare = |c: &Cell| match said(&c.text, decimal) {
        Said::Amount(_, end) => Tail::of(&c.text[end..], decimal).left.is_none(),
        Said::NotDetected => true,
        _ => false,
    };
    if row.iter().any(bare) {
        return None;
    }
    let roles: Vec<Role> = row.iter().map(|c| role(&c.text)).collect();
    let results = || roles.iter().enumerate().filter(|(_, r)| matches!(r, Role::Results(_)));
    let count = results().count();
    let others = roles.iter().any(|r| matches!(r, Role::Sample(_) | Role::Depth | Role::Texture));
    // `pH   Lime need` over one row of numbers: the second is no result, but heads its column.
    let refused = roles.iter().filter(|r| matches!(r, Role::Refused(_))).count();
    let numbers =
        |r: &Vec<Cell>| r.len() == row.len() && r.iter().all(|c| is_result(&c.text, decimal));
    let strip = count + refused == row.len() && rows.get(at + 1).is_some_and(numbers);
    if count == 0 || count == 1 && !others && !strip {
        return None;
    }
    if results().any(|(i, _)| !read_row(&row[i..=i], decimal).drafts.is_empty()) {
        return None;
    }
    // Names of properties down the side: the letters above are samples.
    let strip =
        strip || matches!(roles[0], Role::Results(_)) && rows.get(at + 1).is_some_and(numbers);
    let mut sides: Vec<&str> = rows
        .iter()
        .skip(at + 1)
        .take(3)
        .filter_map(|r| r.first())
        .filter(|c| names_property(c, decimal))
        .map(|c| c.text.as_str())
        .collect();
    // "K1", "K2", "K3" under many names are plots.
    let stem = |text: &str| text.trim_end_matches(|c: char| c.is_ascii_digit()).len();
    let plots =
        count > 3 && sides.iter().all(|s| stem(s) < 3 && s[..stem(s)] == sides[0][..stem(s)]);
    if plots {
        sides.truncate(1);
    }
    sides.dedup();
    if sides.len() > 1 && !strip {
        return None;
    }
    // The next row must hold results under the names; rows of units may come between.
    let holds = |r: &Vec<Cell>| results().any(|(i, _)| is_result(text_at(r, i), decimal));
    let below = rows.iter().skip(at + 1).take(4).find(|r| !unit_like(r)).is_some_and(holds);
    let rated =
        || rows.get(at + 1).is_some_and(|r| results().any(|(i, _)| is_rating(text_at(r, i))));
    (below || rated()).then_some(Head::Samples(roles))
}

/// So many rows without a number may stand below a head.
const MOST_TITLES: usize = 4;

fn properties_down(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Head> {
    let row = &rows[at];
    let first_names = |r: &Vec<Cell>| r.first().is_some_and(|c| names_property(c, decimal));
    let results_in =
        |r: &Vec<Cell>| r.iter().skip(1).filter(|c| is_result(&c.text, decimal)).count();
    let holds = |r: &Vec<Cell>| first_names(r) && results_in(r) > 0;
    // "Sample: 1   Depth: 0-8 in" says its piece; it heads nothing.
    let labelled = row.len() == 2 && row[0].text.ends_with(':');
    if labelled || row.iter().any(|c| c.text.contains(": ")) {
        return None;
    }
    if first_names(row) {
        return headless(rows, at, decimal, &holds, &results_in);
    }
    let mut roles = roles(rows, at, decimal);
    if heads_nothing(row, &roles, decimal) {
        return None;
    }
    // A head that names both its names and its results may begin with properties unknown here.
    let sure = matches!(roles.first(), Some(Role::Names))
        && roles.iter().any(|r| matches!(r, Role::Values));
    let reach = if sure { 12 } else { 3 };
    let first = roles.first()?.clone();
    // A row about the samples, such as their depths, may come first.
    let about = |r: &Vec<Cell>| {
        r.first().is_some_and(|c| matches!(role(&c.text), Role::Depth | Role::Texture))
    };
    // A title of the first results, and `Colour   red   grey`, say nothing of the columns.
    let digit = |r: &Vec<Cell>| r.iter().any(|c| c.text.bytes().any(|b| b.is_ascii_digit()));
    let piece = |r: &Vec<Cell>| says_otherwise(r) || r.iter().any(|c| c.text.contains(':'));
    let all = digit(row);
    let says =
        |r: &&Vec<Cell>| all || digit(r) || first_names(r) || unit_like(r) || about(r) || piece(r);
    let below = rows.iter().skip(at + 1).take(reach + MOST_TITLES);
    let next: Vec<&Vec<Cell>> = below.filter(says).take(reach).collect();
    let follows = next.first().is_some_and(|r| first_names(r) || unit_like(r) || about(r));
    if !next.iter().any(|r| holds(r)) || !follows && !matches!(first, Role::Names) {
        return None;
    }
    // Between a head and its rows nothing else is said, and no other head stands.
    if next.iter().take_while(|r| !first_names(r)).any(|r| says_otherwise(r)) {
        return None;
    }
    let listed = roles.iter().skip(1).any(|r| matches!(r, Role::Values | Role::Units));
    let called = matches!(first, Role::Names | Role::Blank | Role::Sample(_));
    let many = next.iter().filter(|r| results_in(r) > 1).count() > 1;
    // "Lawn  Garden" over rows of three: which column is whose can't be told.
    let short = next.iter().any(|r| first_names(r) && r.len() > row.len());
    if !(listed || called || many && !short) {
        return None;
    }
    roles[0] = Role::Names;
    let has_values = roles.iter().any(|r| matches!(r, Role::Values));
    // "Upper" over results, and no "Lower" beside the name of a sample, is a place and no limit.
    let place = |c: &Cell| ["upper", "lower"].contains(&squash(&c.text).as_str());
    let places = row.iter().skip(1).filter(|c| place(c)).count();
    let others =
        roles.iter().skip(1).filter(|r| matches!(r, Role::Other | Role::Sample(_))).count();
    let placed = !has_values && (places == 1 || others == 0);
    for (i, role) in roles.iter_mut().enumerate().skip(1) {
        // Beside one column of results, other columns describe it; else each is a sample.
        // "Change" and "Previous" are no samples either.
        let other = matches!(role, Role::Refused(_))
            && Label::of(text_at(row, i)).words.iter().any(|w| matches!(w, Word::Other(_)));
        let placed = placed && place(&row[i]);
        let describes = matches!(role, Role::Units | Role::Ratings | Role::Methods | Role::Blank);
        let described = !placed && (other || describes);
        let name = text_at(row, i);
        let limit = Label::of(name).has(Word::RangeColumn) && !calls_a_place(name);
        let aim = limit || is_of_several(name);
        let sample = !described && !has_values && (placed || !aim);
        let under = next.iter().any(|r| is_result(text_at(r, i), decimal));
        if sample && under {
            *role = Role::Sample(0);
        } else if matches!(role, Role::Blank) && under && !has_values {
            *role = Role::Values;
        }
    }
    let any = roles.iter().any(|r| matches!(r, Role::Sample(_) | Role::Values));
    any.then_some(Head::Properties(roles))
}

/// Whether a row can't head a table of properties: it is a result whose name isn't known, a
/// title, or a line about the sample such as `Garden   silt loam   lbs/acre`.
fn heads_nothing(row: &[Cell], roles: &[Role], decimal: Decimal) -> bool {
    let heads = matches!(roles.first(), Some(Role::Names | Role::Blank | Role::Sample(_)));
    let texture = row.iter().any(|c| texture_alone(&[&c.text]).is_some());
    // "VLow Low Med High": over bars, and not over samples.
    let over_bars = |c: &Cell| {
        c.text.split_whitespace().count() > 2 && c.text.split_whitespace().all(is_rating)
    };
    let texture = texture || row.iter().any(over_bars);
    // "Gravel  5  8" is a result that nobody knows.
    let unknown = || row.iter().skip(1).any(|c| is_result(&c.text, decimal) && !is_year(&c.text));
    // No sample is called "6.9", and none by its texture or depth where it has a name.
    let decimals = row.iter().skip(1).any(|c| {
        c.text.contains(['.', ',']) && is_result(&c.text, decimal) && !c.text.contains('/')
    });
    // "Rating  high  low" says something of the results above it.
    let about = matches!(roles.first(), Some(Role::Depth | Role::Texture | Role::Ratings));
    // "The dog dug up bed three, again" is a sentence.
    let sentence = matches!(roles.first(), Some(Role::Sample(10..)))
        && Label::of(&row[0].text).unknown.len() > 2;
    let other = is_title(row) || texture || sentence || decimals || about;
    !heads && (holds_result(row, decimal) || unknown()) || other
}

/// Whether a row holds a result: a number with its unit, in one cell or the next. Such a row is
/// a result whose name isn't known, and heads nothing.
fn holds_result(row: &[Cell], decimal: Decimal) -> bool {
    let cells: Vec<&Cell> = filled(row).skip(1).collect();
    cells.iter().enumerate().any(|(i, cell)| {
        let Said::Amount(_, end) = said(&cell.text, decimal) else { return false };
        let unit = |c: &&Cell| Label::of(&c.text).only_unit().is_some();
        Tail::of(&cell.text[end..], decimal).unit.is_some() || cells.get(i + 1).is_some_and(unit)
    })
}

/// Whether a row says something of its own, or begins with the word for names as a head does.
fn says_otherwise(row: &[Cell]) -> bool {
    let names = |c: &Cell| matches!(role(&c.text), Role::Names);
    filled(row).count() > 1
        && (filled(row).any(|c| c.text.contains(": ")) || row.first().is_some_and(names))
}

/// `SOIL TEST REPORT        Maine`: the title of a page with a word to its right, which is not
/// the head of a table of that name.
fn is_title(row: &[Cell]) -> bool {
    let cells: Vec<&Cell> = filled(row).collect();
    let [title, _] = cells[..] else { return false };
    names_a_report(&title.text)
}

/// Whether a text is the title of a page.
pub(super) fn names_a_report(text: &str) -> bool {
    let squashed = squash(text);
    const TITLES: [&str; 16] = [
        "report",
        "bericht",
        "befund",
        "analys",
        "analis",
        "soiltest",
        "informe",
        "rapport",
        "boletim",
        "onderzoek",
        "verslag",
        "laudo",
        "relatorio",
        "certifica",
        "untersuchung",
        "boletin",
    ];
    TITLES.iter().any(|word| squashed.contains(word)) && squashed.len() > 11
}

/// Whether a row of cells says several results, each with its own name: `Zinc  1.4  HIGH
/// Copper  0.6`. Such a row belongs to no table with one name a row.
pub(super) fn speaks_for_itself(row: &[Cell], decimal: Decimal) -> bool {
    let named = |c: &&Cell| {
        if is_result(&c.text, decimal) {
            return false;
        }
        let label = Label::of(&c.text);
        c.text.chars().count() > 1 && !is_rating(&c.text) && label.quantity().is_ok()
    };
    if filled(row).skip(1).filter(named).count() == 0 {
        return false;
    }
    let drafts = read_row(row, decimal).drafts;
    let held = drafts.iter().filter(|d| is_result(&d.result, decimal));
    let properties: Vec<_> = held.map(|d| d.quantity.property).collect();
    properties.len() > 1 && properties.iter().any(|p| *p != properties[0])
}

/// A row of units or methods, or one tagged as comments, below a head.
fn unit_like(row: &[Cell]) -> bool {
    row.len() > 1
        && (row.iter().map(|c| Label::of(&c.text)).any(|l| l.only_unit().is_some())
            || row.iter().filter(|c| Label::of(&c.text).only_method().is_some()).count() > 1
            || matches!(squash(&row[0].text).as_str(), "units" | "comment" | "comments" | "method"))
        && !row.iter().any(|c| matches!(said(&c.text, Decimal::Point), Said::Amount(..)))
}

/// Property names down the side with several results each, and no head over them.
fn headless(
    rows: &[Vec<Cell>],
    at: usize,
    decimal: Decimal,
    holds: &impl Fn(&Vec<Cell>) -> bool,
    results_in: &impl Fn(&Vec<Cell>) -> usize,
) -> Option<Head> {
    let width = results_in(&rows[at]);
    if width < 2 {
        return None;
    }
    let same =
        |r: &&Vec<Cell>| holds(r) && results_in(r) == width && !speaks_for_itself(r, decimal);
    if rows.iter().skip(at).take(3).filter(same).count() < 3 {
        return None;
    }
    let near = || rows.iter().skip(at).take(12).filter(|r| holds(r) && r.len() > 1);
    let of_column = |i: usize| {
        let cells = || near().filter_map(move |r| cell_at(r, i));
        let limits = cells()
            .filter(|c| is_range(&c.text, decimal) || c.text.starts_with(['<', '>', '≤', '≥']))
            .count();
        if Label::of(text_at(&rows[at], i)).only_unit().is_some() {
            Role::Units
        } else if limits > 1 {
            // Aims have ranges among them, and results have none.
            Role::Ratings
        } else if cells().any(|c| is_result(&c.text, decimal)) {
            Role::Sample(0)
        } else {
            Role::Other
        }
    };
    let mut roles = vec![Role::Names];
    roles.extend((1..rows[at].len()).map(of_column));
    // Beside aims, one column of results is that of the one sample.
    let mut samples = roles.iter_mut().filter(|r| matches!(r, Role::Sample(_)));
    if let (Some(only), None) = (samples.next(), samples.next()) {
        *only = Role::Values;
    }
    Some(Head::Properties(roles))
}
