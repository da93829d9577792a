//! Rows and columns of a table of samples that are of no one sample: means, sums, aims.

use super::fold::squash;
use super::label::Label;
use super::names::Word;

/// What begins the name of a row or a column that is of several samples, of none, or of an
/// earlier one: means, sums, aims, folded.
const OF_SEVERAL: [&str; 36] = [
    "mean",
    "average",
    "averages",
    "avg",
    "mittel",
    "mittelwert",
    "durchschnitt",
    "moyenne",
    "promedio",
    "media",
    "medias",
    "gemiddelde",
    "medelvarde",
    "genomsnitt",
    "gennemsnit",
    "gjennomsnitt",
    "srednia",
    "prumer",
    "keskiarvo",
    "среднее",
    "ortalama",
    "atlag",
    "total",
    "totals",
    "summe",
    "gesamt",
    "sum",
    "somme",
    "suma",
    "soma",
    "estimated",
    "suggested",
    "recommended",
    "lastyear",
    "previous",
    "previousyear",
];

/// What ends the name of a mean, and nothing else, folded: `North fields average`.
const MEANS: [&str; 24] = [
    "mean",
    "average",
    "durchschnitt",
    "mittelwert",
    "moyenne",
    "promedio",
    "gemiddelde",
    "medelvarde",
    "genomsnitt",
    "gennemsnit",
    "gjennomsnitt",
    "keskiarvo",
    "srednia",
    "prumer",
    "ortalama",
    "keskmine",
    "vidurkis",
    "videjais",
    "середне",
    "середнє",
    "среднее",
    "prosjek",
    "averages",
    "snitt",
];

/// What a column of what is to be grown says, folded.
const OF_CROPS: [&str; 6] =
    ["cropchoice", "1stcrop", "2ndcrop", "nextcrop", "previouscrop", "yieldgoal"];

/// Whether a text counts pages, slides or columns: `Slide 8`, and `Col3` of a table that was
/// converted.
pub(super) fn is_of_pages(folded: &str) -> bool {
    let words = ["slide", "page", "seite", "pagina", "folie", "col", "column", "unnamed:"];
    let digits = |rest: &str| !rest.is_empty() && rest.bytes().all(|b| b.is_ascii_digit());
    words.iter().any(|w| folded.strip_prefix(w).is_some_and(|rest| digits(rest.trim())))
}

/// What begins the name of an aim or a limit, folded.
const AIMS: [&str; 17] = [
    "ideal",
    "optimum",
    "optimal",
    "optimale",
    "critical",
    "umbral",
    "target",
    "desired",
    "guidance",
    "guideline",
    "guidelines",
    "norms",
    "niveles",
    "nivel",
    "richtwert",
    "sollwert",
    "optimo",
];

/// Whether words begin or end with an aim: `Guidance for gardens`, `Club target`.
pub(super) fn is_aim(name: &str) -> bool {
    let aim = |word: Option<&str>| word.is_some_and(|w| AIMS.contains(&squash(w).as_str()));
    let mut words = name.split(' ');
    // "6.5 (optimum)" is a result with its class.
    let class = name.starts_with(|c: char| c.is_ascii_digit()) || name.ends_with(')');
    name.contains(' ') && (aim(words.next()) || !class && aim(words.next_back()))
}

/// Whether a word says on which side something lies.
pub(super) fn calls_a_side(word: &str) -> bool {
    ["lower", "upper"].iter().any(|side| word.eq_ignore_ascii_case(side))
}

/// Whether words call a place by where it lies: `Lower plots`, while `Lower limit` is none.
pub(super) fn calls_a_place(name: &str) -> bool {
    // Nearly every text ends here.
    let Some((_, rest)) = name.split_once(' ').filter(|(first, _)| calls_a_side(first)) else {
        return false;
    };
    let label = Label::of(rest);
    let limit = |w: &Word| matches!(w, Word::RangeColumn | Word::RatingColumn | Word::ResultColumn);
    label.properties.is_empty() && label.unit.is_none() && !label.words.iter().any(limit)
}

/// Whether a row or a column of that name is none of a sample: `Mean of 5 fields`, `Summe 0-90 cm`.
pub(super) fn is_of_several(name: &str) -> bool {
    let name = name.trim_start_matches(['#', '*', ' ']);
    let first = squash(name.split(' ').next().unwrap_or(name));
    let last = squash(name.rsplit(' ').next().unwrap_or(name));
    let begins = OF_SEVERAL.contains(&first.as_str()) || MEANS.contains(&last.as_str());
    let whole = squash(name);
    begins || OF_SEVERAL.contains(&whole.as_str()) || OF_CROPS.iter().any(|w| whole.contains(w))
}
