//! Which columns of a table name its samples.

use std::collections::BTreeSet;

use super::Cell;
use super::fold::{fold, is_letter, squash};
use super::grid::{cell_at, joined, text_at, words_of};
use super::label::Label;
use super::layout::{Role, role};
use super::names::Word;
use super::no_samples::is_of_pages;
use super::number::{Decimal, Said, is_rating, said};
use super::stacked_heads::is_code;
use super::textures::texture;
use crate::soil::Amount;

/// The longest list of samples without results.
const MOST: usize = 2_000;

/// Headings of what is said of a sample and does not name it: beginnings of words, folded.
const NO_NAMES: [&str; 31] = [
    "crop",
    "cultur",
    "kultur",
    "cultivo",
    "gewas",
    "coltura",
    "uprawa",
    "plodin",
    "groda",
    "afgrode",
    "previous",
    "next",
    "date",
    "datum",
    "fecha",
    "data",
    "client",
    "grower",
    "farm",
    "county",
    "soil",
    "boden",
    "lab",
    "uso",
    "treatment",
    "variant",
    "behandlung",
    "traitement",
    "tratamiento",
    "tratamento",
    "trattamento",
];

/// Whether a heading is of what is said of a sample beside its name: `Soil type`, `Last crop`.
pub(super) fn heads_no_names(heading: &str) -> bool {
    let heading = squash(heading);
    NO_NAMES.iter().any(|word| heading.starts_with(word))
}

/// Words for the soil itself, folded, one text: they say what was sent in, and not from where.
const SOILS: [&str; 22] = [
    "soil",
    "soils",
    "soilsample",
    "terreno",
    "terrenoagrario",
    "terrenoagricolo",
    "suelo",
    "suelos",
    "sueloagricola",
    "suolo",
    "solo",
    "boden",
    "bodenprobe",
    "erde",
    "sol",
    "terre",
    "grond",
    "bodem",
    "gleba",
    "puda",
    "почва",
    "土壤",
];

/// Words behind one for a sample that make a heading of it, folded.
const OF_A_SAMPLE: [&str; 14] = [
    "history",
    "information",
    "info",
    "details",
    "submitted",
    "received",
    "type",
    "data",
    "report",
    "results",
    "analysis",
    "date",
    "no",
    "number",
];

/// Words for a page of results and for what was done, folded: they call the page, and no sample.
const OF_THE_PAGE: [&str; 40] = [
    "report",
    "presentation",
    "certificate",
    "bulletin",
    "analysis",
    "analyses",
    "results",
    "result",
    "test",
    "tests",
    "testing",
    "paste",
    "summary",
    "bericht",
    "prufbericht",
    "bodenanalyse",
    "bodenuntersuchung",
    "ergebnis",
    "ergebnisse",
    "analyse",
    "rapport",
    "resultats",
    "analisis",
    "informe",
    "resultados",
    "laudo",
    "analise",
    "relatorio",
    "boletim",
    "analisi",
    "rapporto",
    "risultati",
    "verslag",
    "analyserapport",
    "uitslag",
    "wyniki",
    "badania",
    "sprawozdanie",
    "protokol",
    "rozbor",
];

/// Words between those and the name of what was tested.
const OF: [&str; 16] = [
    "of", "for", "from", "fur", "von", "vom", "aus", "de", "del", "du", "des", "da", "do", "di",
    "van", "dla",
];
const THE: [&str; 14] =
    ["the", "our", "my", "der", "die", "das", "dem", "la", "le", "les", "el", "o", "a", "il"];

fn is_of_the_page(word: &str) -> bool {
    let word = squash(word);
    OF_THE_PAGE.contains(&word.as_str()) || SOILS.contains(&word.as_str())
}

/// What a heading calls: `ball field` of `Analysis of the ball field`.
pub(super) fn what_was_tested(heading: &str) -> &str {
    let mut rest = heading;
    while let Some((word, behind)) = rest.split_once(' ')
        && is_of_the_page(word)
    {
        rest = behind;
    }
    let Some((of, name)) = rest.split_once(' ') else { return heading };
    if rest.len() == heading.len() || !OF.contains(&squash(of).as_str()) {
        return heading;
    }
    match name.split_once(' ') {
        Some((the, name)) if THE.contains(&squash(the).as_str()) => name,
        _ => name,
    }
}

/// Whether a heading calls the page alone: `Soil Report (Mehlich 3)`.
fn calls_the_page(text: &str) -> bool {
    let ahead = text.split(['(', '[']).next().unwrap_or(text);
    let mut words = ahead.split(|c: char| !is_letter(c)).filter(|w| !w.is_empty()).peekable();
    words.peek().is_some() && words.all(is_of_the_page)
}

/// Whether a text is no name of a sample, wherever it stands: a range or a limit, a unit, the word
/// for soil, a heading of other things.
pub(super) fn names_nothing(text: &str, decimal: Decimal) -> bool {
    let limit = match said(text, decimal) {
        // "24-3317" is a number that a laboratory gives.
        Said::Range => !text.contains(is_letter) && text.contains(' '),
        Said::Amount(Amount::Above(_) | Amount::Below(_), _) => true,
        _ => false,
    };
    if limit
        || SOILS.contains(&squash(text).as_str())
        || calls_the_page(text)
        || is_of_pages(&fold(text))
    {
        return true;
    }
    let label = Label::of(text);
    let unit = label.unit.is_some() && label.unknown.is_empty() && label.properties.is_empty();
    let of_columns = |w: &Word| {
        matches!(w, Word::ResultColumn | Word::UnitColumn | Word::MethodColumn | Word::NameColumn)
    };
    let column = label.unknown.is_empty() && label.words.iter().any(of_columns);
    let sample = label.words.iter().any(|w| matches!(w, Word::Sample(0..2)));
    let others = label.unknown.iter().all(|w| OF_A_SAMPLE.contains(&squash(w).as_str()));
    // "Field name" asks for one.
    let asks = label.unknown.is_empty()
        && label.words.iter().any(|w| matches!(w, Word::Sample(_)))
        && squash(text).ends_with("name");
    let heads = text.split(' ').filter(|w| NO_NAMES.iter().any(|n| squash(w).starts_with(n)));
    unit || column || asks || sample && others && label.properties.is_empty() || heads.count() > 1
}

/// Whether a name is the number that a laboratory gave: `24-3317`, and not the `A2` of a customer.
pub(super) fn is_laboratory_number(name: &str) -> bool {
    let digits = name.bytes().filter(u8::is_ascii_digit).count();
    digits > 3 && !name.split(|c| !is_letter(c)).any(|word| word.chars().count() > 2)
}

/// The rank of a heading in a list of codes that says nothing of samples.
const UNSAID: u8 = 30;

/// The column that names the samples, and a second one where the first calls two the same.
#[derive(Clone, Copy, Debug)]
pub(super) struct Names {
    pub best: usize,
    also: Option<usize>,
}

impl Names {
    /// The name of a row's sample.
    pub fn of(self, row: &[Cell]) -> String {
        let also = self.also.map_or("", |i| text_at(row, i));
        let both = [text_at(row, self.best), also];
        both.into_iter().filter(|t| !t.is_empty()).collect::<Vec<_>>().join(" ")
    }

    /// Whether a column names the samples.
    pub fn has(self, column: usize) -> bool {
        self.best == column || self.also == Some(column)
    }
}

/// The columns that may name the samples, each with its rank.
pub(super) fn ranked(roles: &[Role]) -> impl Iterator<Item = (u8, usize)> {
    roles.iter().enumerate().filter_map(|(i, role)| match role {
        Role::Sample(rank) => Some((*rank, i)),
        _ => None,
    })
}

/// Which columns name the samples of some rows; `first` is the first column of results.
pub(super) fn names(
    rows: &[&Vec<Cell>],
    heading: &[Cell],
    roles: &[Role],
    first: usize,
) -> Option<Names> {
    // A column that is empty throughout names nothing.
    let filled = |i: usize| rows.iter().take(20).any(|r| cell_at(r, i).is_some());
    if let Some((_, best)) = ranked(roles).filter(|&(_, i)| filled(i)).min() {
        return Some(better(rows, heading, roles, best, first));
    }
    // Numbers under a heading that nobody knows, beside depths, are results: `N*`.
    let deep = roles.iter().any(|r| matches!(r, Role::Depth));
    let numbers = |i: usize| {
        let lettered = |row: &&Vec<Cell>| text_at(row, i).contains(is_letter);
        heading.get(i).is_some_and(|c| !c.is_blank()) && !rows.iter().any(lettered)
    };
    let other = |i: &usize| {
        matches!(roles[*i], Role::Other | Role::Blank | Role::Names) && !(deep && numbers(*i))
    };
    let best = (0..first).find(|i| other(i) && filled(*i))?;
    Some(better(rows, heading, roles, best, first))
}

/// The column of names, in place of one of codes, if it tells the same samples apart.
pub(super) fn better(
    rows: &[&Vec<Cell>],
    heading: &[Cell],
    roles: &[Role],
    best: usize,
    first: usize,
) -> Names {
    let near: Vec<&Vec<Cell>> =
        rows.iter().copied().filter(|row| cell_at(row, best).is_some()).collect();
    let told = |columns: &[usize]| {
        let texts = |row: &&Vec<Cell>| -> Vec<String> {
            columns.iter().map(|&i| text_at(row, i).to_string()).collect()
        };
        near.iter().map(texts).collect::<BTreeSet<_>>().len()
    };
    let words =
        |i: usize| near.iter().all(|row| cell_at(row, i).is_some_and(|c| !is_code(&c.text)));
    let alone = |best| Names { best, also: None };
    let deep = roles.iter().any(|r| matches!(r, Role::Depth));
    let apart = told(&[best]);
    let others: Vec<usize> = {
        let mut all: Vec<(u8, usize)> = ranked(roles).filter(|&(_, i)| i != best).collect();
        all.sort_unstable();
        all.into_iter().map(|(_, i)| i).collect()
    };
    let lettered = |i: usize| near.iter().all(|row| text_at(row, i).contains(is_letter));
    let may_name = |i: usize| !heading.get(i).is_some_and(|c| heads_no_names(&c.text));
    // Another column of words, whose heading names nothing else.
    let free = |i: &usize| {
        *i != best
            && matches!(
                roles.get(*i),
                Some(Role::Sample(_) | Role::Other | Role::Blank | Role::Names)
            )
            && lettered(*i)
            && may_name(*i)
    };
    // A name that all rows have is that of the farm.
    if apart == 1 && near.len() > 1 {
        let wordy = |i: &usize| free(i) && told(&[*i]) > 1 && words(*i);
        if let Some(i) = others.iter().copied().chain(0..first).find(wordy) {
            return alone(i);
        }
    }
    if !near.iter().all(|row| is_code(text_at(row, best))) {
        // A code with a letter before a number, which is often that of the laboratory.
        let second = || {
            let mut all = others.clone();
            all.sort_by_key(|&i| !lettered(i));
            all.into_iter().find(|&i| told(&[best, i]) == near.len())
        };
        let also = if apart < near.len() && !deep { second() } else { None };
        return Names { best, also };
    }
    // With their depths, names that stand once for several tell as many samples apart.
    let depth = roles.iter().position(|r| matches!(r, Role::Depth));
    let named = |i: &usize| {
        let at_depth = || depth.is_some_and(|d| told(&[*i, d]) >= told(&[best, d]));
        words(*i) && (told(&[*i]) == apart || at_depth())
    };
    if let Some(&i) = others.iter().find(|i| named(i)) {
        return alone(i);
    }
    // Columns with a heading that nobody knows, to the left of the results.
    let unknown = |i: &usize| {
        *i != best
            && matches!(roles.get(*i), Some(Role::Other | Role::Blank | Role::Names))
            && may_name(*i)
            && named(i)
            && !near.iter().any(|r| is_rating(text_at(r, *i)) || texture(text_at(r, *i)).is_some())
    };
    if let Some(i) = (0..first).find(unknown) {
        return alone(i);
    }
    // A code with a letter is a name; a number that only counts is none.
    let counts =
        near.iter().enumerate().all(|(nth, row)| text_at(row, best) == (nth + 1).to_string());
    // Where nothing else calls them, each is its grower's.
    let of_grower = |i: &usize| {
        let grower = ["farmer", "grower", "owner", "kisan"];
        let own = heading.get(*i).map_or(String::new(), |c| squash(&c.text));
        *i != best && lettered(*i) && grower.iter().any(|w| own.starts_with(w))
    };
    if counts
        && near.len() > 1
        && let Some(i) = (0..first).find(free).or_else(|| (0..first).find(of_grower))
    {
        let also = (told(&[i]) < near.len() && !deep).then_some(best);
        return Names { best: i, also };
    }
    let number = |row: &&&Vec<Cell>| !text_at(row, best).contains(is_letter);
    let numbers = near.iter().all(|row| number(&row));
    match others.iter().copied().find(|&i| numbers && words(i)) {
        Some(i) => Names { best: i, also: Some(best) },
        None => alone(best),
    }
}

/// The codes and names of samples in a list that holds no results, and how many rows it takes:
/// `Lab no.  Identification` over `24-5071  Upper field`.
pub(super) fn identities(rows: &[Vec<Cell>], at: usize) -> Option<(Vec<(String, String)>, usize)> {
    // Nearly every row ends here.
    let code = |row: Option<&Vec<Cell>>| {
        row.and_then(|row| row.first())
            .is_some_and(|c| is_code(c.text.split(' ').next().unwrap_or("")))
    };
    if code(rows.get(at)) || !code(rows.get(at + 1)) {
        return None;
    }
    let head = cells(&rows[at]);
    let ranks: Vec<Option<u8>> = head
        .iter()
        .map(|c| match role(&c.text) {
            Role::Sample(rank) => Some(rank),
            // "Bezeichnung" beside "Probe-Nr." is one word for many things.
            Role::Names | Role::Other => Some(UNSAID),
            _ => None,
        })
        .collect();
    let says_so = matches!(ranks.first()?, Some(..UNSAID));
    let results = head.iter().any(|c| matches!(role(&c.text), Role::Results(_) | Role::Values));
    if results || ranks.iter().flatten().count() < 2 || !says_so {
        return None;
    }
    let deep = head.iter().position(|c| matches!(role(&c.text), Role::Depth));
    let mut found: Vec<(String, String, String)> = Vec::new();
    for row in rows[at + 1..].iter().take(MOST) {
        let row = match (&row[..], head.len()) {
            // A line whose columns stand one blank apart: the code, and then the name.
            ([only], 2) => match only.text.split_once(' ') {
                Some((code, name)) => vec![code.to_string(), name.to_string()],
                None => break,
            },
            (row, width) if row.len() == width => row.iter().map(|c| c.text.clone()).collect(),
            _ => break,
        };
        let Some(code) = row.first().filter(|text| is_code(text)) else { break };
        // The best name that is none itself, with its depth.
        let best = (1..row.len())
            .filter(|&i| ranks[i].is_some() && row[i].contains(is_letter) && !is_code(&row[i]))
            .min_by_key(|&i| ranks[i]);
        let Some(best) = best else { break };
        let depth = deep.map_or(String::new(), |i| row[i].clone());
        found.push((code.clone(), row[best].clone(), depth));
    }
    let twice = |name: &str| found.iter().filter(|f| f.1 == name).count() > 1;
    let named = found.iter().map(|(code, name, depth)| {
        let both = format!("{name} {depth}");
        (code.clone(), if twice(name) { both.trim().into() } else { name.clone() })
    });
    (!found.is_empty()).then(|| (named.collect(), found.len() + 1))
}

/// The cells of a head; of two words one blank apart, each is one.
fn cells(row: &[Cell]) -> Vec<Cell> {
    match row {
        // "Code / Name of the sample / Depth"
        [only] if only.text.matches(" / ").count() > 1 => {
            let cell = |text: &str| Cell { text: text.trim().into(), place: only.place };
            only.text.split(" / ").map(cell).collect()
        }
        [only] if only.text.split(' ').count() < 5 => {
            let words = words_of(only);
            let sample = |words: &[Cell]| matches!(role(&joined(words).text), Role::Sample(_));
            match (1..words.len()).find(|&i| sample(&words[..i]) && sample(&words[i..])) {
                Some(i) => vec![joined(&words[..i]), joined(&words[i..])],
                None => vec![only.clone()],
            }
        }
        _ => row.to_vec(),
    }
}
