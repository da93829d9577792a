//! What a report is put together in while its rows are read.

use std::collections::{BTreeMap, BTreeSet};

use super::about::{
    AboutSample, NO_TEXTURE, Statement, about_sample, behind_texture, covers, is_of_other_matter,
    methods, texture_alone, unit_for_all,
};
use super::advice::{self, Under};
use super::fold::{clauses, first_chars, fold, is_letter, is_word, squash};
use super::grid::filled;
use super::label::Label;
use super::layout::{Role, is_result, role};
use super::lines::{RowSays, is_scale, read_row};
use super::marks::is_page_number;
use super::names::Word;
use super::new_list::{Beside, MOST_HEADINGS, is_sample, lists, may_be_heading, plain_heading};
use super::number::{Decimal, is_range, is_year, parse_amount};
use super::place::{Draft, place};
use super::prose;
use super::sample_names::{is_laboratory_number, names_nothing, what_was_tested};
use super::second_look::second_look;
use super::sections::{Matter, begins_rates, is_other_matter};
use super::settle::{self, UnitSaid, settle};
use super::spelling::is_quoted;
use super::split::is_endless;
use super::textures::clay_of;
use super::{Cell, Grid, Pairing, Place, Reading, Report, SampleReport, Trouble, Unread};
use crate::quantity::{Unit, significant};
use crate::soil::{Amount, MethodKind, Property};

/// The most samples in one report.
pub const MOST_SAMPLES: usize = 20_000;

/// The most results of one sample: a laboratory gives a few dozen. Each is compared with all
/// others of its sample.
pub(super) const MOST_READINGS: usize = 500;

/// So few results without a name, beside so many, are asked about. Our choice.
const STRAY: usize = 4;
const FULL: usize = 6;

/// Unread lines beyond this are counted, not listed.
const MOST_UNREAD: usize = 500;

/// The longest text of an unread line that is listed, characters.
const LONGEST_UNREAD: usize = 400;

/// The most methods that are named for a whole report; each is weighed for every result.
const MOST_STATEMENTS: usize = 50;

/// The most cells one after the other that bring no result. A field book or a chapter may stand
/// before the results; what goes on for longer is something else.
const MOST_IDLE: usize = 30_000;

/// Whether a cell has no letter.
pub(super) fn is_wordless(cell: &Cell) -> bool {
    !cell.text.bytes().any(|b| b.is_ascii_alphabetic() || b > 127)
}

/// Methods for all results in a line that holds results: `Results (Mehlich-3): pH 6.2, …`
/// and `pH 6.2; P 18 ppm; method: Mehlich-3`.
fn methods_beside(line: &str, number: u32) -> Vec<Statement> {
    let ahead = line.split_once(": ").map_or("", |(ahead, _)| ahead);
    let mut found = Vec::new();
    for clause in [ahead, line.rsplit_once("  ").map_or("", |(_, last)| last)] {
        let squashed = squash(clause);
        let said = squashed.starts_with("method") || squashed.starts_with("extract");
        if (said || clause == ahead) && Label::of(clause).properties.is_empty() {
            found.extend(methods(clause, number));
        }
    }
    found
}

/// `pH 6.3   Mehlich-1 extractable`: an extractant in a cell of its own, in a row where nothing
/// is extracted, is that of the results below.
fn methods_apart(row: &[Cell], drafts: &[Draft]) -> Vec<Statement> {
    let only = filled(row).filter(|c| Label::of(&c.text).only_method().is_some());
    let extracts = |s: &Statement| {
        s.method.kind() == MethodKind::Extractant
            && !drafts.iter().any(|d| covers(s.method, d.quantity.property))
    };
    only.flat_map(|c| methods(&c.text, c.place.line)).filter(extracts).collect()
}

/// `Sample: Kale field Extract: Mehlich-3`, two statements in one cell, as two cells.
fn statements_apart(cell: &Cell) -> Option<[Cell; 2]> {
    let first = cell.text.find(':')?;
    let second = first + 1 + cell.text[first + 1..].find(':')?;
    // The word before the second colon, or the two before it, say what follows.
    let before = cell.text[..second].trim_end();
    let starts = before.rmatch_indices(' ').map(|(at, _)| at + 1).take(2);
    let known = |text: &str| {
        let label = Label::of(text);
        let about = |w: &Word| {
            matches!(w, Word::Sample(_) | Word::Depth | Word::Texture | Word::MethodColumn)
        };
        let squashed = squash(text);
        label.unknown.is_empty() && label.words.len() == 1 && about(&label.words[0])
            || [
                "extract",
                "extractant",
                "extraction",
                "method",
                "crop",
                "date",
                "lab",
                "client",
                "recommendations",
                "recommendation",
                "comments",
            ]
            .contains(&squashed.as_str())
    };
    let at = starts.filter(|&at| at > first + 1 && known(&before[at..])).last()?;
    let part = |from: usize, to: usize| {
        let text = cell.text[from..to].trim();
        let start = cell.place.start + cell.text[..from].chars().count() as u32;
        let end = start + cell.text[from..to].trim_end().chars().count() as u32;
        Cell { text: text.into(), place: Place { start, end, ..cell.place } }
    };
    let parts = [part(0, at), part(at, cell.text.len())];
    let named = Label::of(&cell.text[..first]).words.iter().any(|w| matches!(w, Word::Sample(_)));
    named.then_some(parts)
}

/// Beginnings of words for some of the results, folded: `Additional tests (119): B 0,9`.
const ANALYSES: [&str; 22] = [
    "additional",
    "analy",
    "anali",
    "rozbor",
    "untersuch",
    "badan",
    "tests",
    "result",
    "ergebnis",
    "risultat",
    "wynik",
    "vysledk",
    "micro",
    "macro",
    "trace",
    "oligo",
    "mikro",
    "makro",
    "spuren",
    "other",
    "andere",
    "weitere",
];

/// A name without the next word of the form and what stands behind that: `East 4 Folio : 9034`.
fn without_next(name: &str) -> &str {
    let Some(ahead) = name.split_once(" : ").map(|(ahead, _)| ahead) else { return name };
    ahead.rsplit_once(' ').map_or(name, |(name, _)| name)
}

/// `3 Mill End` without the number that counts it in a list.
fn without_counter(name: &str) -> &str {
    let rest = name.trim_start_matches(|c: char| c.is_ascii_digit());
    let short = name.len() - rest.len() < 3;
    let rest = rest.trim_start_matches(['.', ')', ' ']);
    if short && rest.starts_with(is_letter) && rest.contains(|c: char| !is_letter(c)) {
        rest
    } else {
        name
    }
}

/// So many lines below the name of a sample a line of its results in a year may stand.
const NEAR_YEAR: u32 = 8;

/// `Pond plot (1 ac): pH 6.3, P 64 lb/A (H)`: the name of a sample before its results.
fn named_line(row: &[Cell], decimal: Decimal) -> Option<(String, Vec<Cell>)> {
    let (first, others) = row.split_first()?;
    let marks = [": ", " - ", " – ", " — "].iter().filter_map(|mark| first.text.split_once(mark));
    let (name, behind) = marks.min_by_key(|(name, _)| name.len())?;
    let name = name.trim_start_matches(['•', '*', ' ']);
    // What a bracket adds, as "(1 ac)", is no name.
    let label = Label::of(name.split('(').next().unwrap_or(name));
    let sample = |w: &Word| matches!(w, Word::Sample(_) | Word::Plain);
    let bare = label.properties.is_empty() && label.methods.is_empty() && label.unit.is_none();
    let word = |w: &Word| matches!(w, Word::Sample(_));
    let named = label.words.iter().all(sample)
        && (!label.unknown.is_empty() || label.words.iter().any(word));
    let folded = fold(name);
    let of_analyses = folded.split(' ').any(|word| ANALYSES.iter().any(|w| word.starts_with(w)));
    let other = of_analyses
        || is_of_other_matter(name)
        || is_other_matter(name)
        || is_result(without_counter(name), decimal) && !is_year(name);
    if !bare || !named || other || name.split(' ').count() > 6 {
        return None;
    }
    let skipped = first.text.len() - behind.len();
    let start = first.place.start + first.text[..skipped].chars().count() as u32;
    let cell = Cell { text: behind.trim().into(), place: Place { start, ..first.place } };
    let results: Vec<Cell> = [vec![cell], others.to_vec()].concat();
    let drafts = read_row(&results, decimal).drafts;
    let at_once = drafts.first().is_some_and(|d| behind.trim_start().starts_with(d.name.trim()));
    let several = drafts.iter().any(|d| d.quantity.property != drafts[0].quantity.property);
    (several && at_once).then(|| (name.trim().to_string(), results))
}

fn has_result_column(line: &str) -> bool {
    Label::of(first_chars(line, 60)).has(Word::ResultColumn)
}

/// Whether the head of a list says that the result comes before its limits, as `Test Unit Result
/// Low High`; `None` where a line heads nothing.
fn says_first(line: &str) -> Option<bool> {
    // The words first all at once: nearly every line ends here.
    let teneur = fold(line).contains("teneur");
    let sample = Label::of(first_chars(line, 60));
    let sample = is_sample(&sample) && !sample.has(Word::ResultColumn);
    if line.len() > 160 || !teneur && !sample && !has_result_column(line) {
        return None;
    }
    // "Sample 1" before "Guidelines" is the result too.
    let counted = |word: &str| word.len() < 3 && word.bytes().all(|b| b.is_ascii_digit());
    if line.split(' ').any(|word| is_result(word, Decimal::Point) && !counted(word)) {
        return None;
    }
    let of = |word: &str| {
        let label = Label::of(word);
        let result =
            label.has(Word::ResultColumn) || fold(word) == "teneur" || sample && is_sample(&label);
        let other = label.has(Word::RangeColumn) || label.has(Word::RatingColumn);
        let before = |w: &Word| matches!(w, Word::Other(_));
        if result { Some(true) } else { (other || label.words.iter().any(before)).then_some(false) }
    };
    let said: Vec<bool> = line.split(' ').filter_map(of).collect();
    // A sample's name says it only before limits.
    let told =
        said.len() > 1 && said.contains(&true) && (!sample || said[0] && said.contains(&false));
    told.then(|| said[0])
}

/// The clay that the name of a soil stands for: the middle of its span.
fn clay_by_name(name: &str, said: &str, place: Place, (from, to): (f64, f64)) -> Reading {
    let middle = (from + to) / 2.0;
    Reading {
        property: Property::Clay,
        amount: Some(Amount::Exactly(middle)),
        unit: Some(Unit::Percent),
        method: None,
        rating: None,
        name: name.split([':', ' ']).next().unwrap_or(name).into(),
        original: said.into(),
        depth_cm: None,
        pairing: Pairing::Together,
        place,
        notes: vec![format!(
            "“{said}” stands for {from} to {to} % of clay; the middle of it is taken"
        )],
    }
}

/// A row as one text, and where it stands.
pub(super) fn whole(row: &[Cell]) -> (String, Place) {
    let filled: Vec<&Cell> = filled(row).collect();
    let text = filled.iter().map(|c| c.text.as_str()).collect::<Vec<_>>().join("  ");
    let place = match (filled.first(), filled.last()) {
        (Some(first), Some(last)) => Place { end: last.place.end, ..first.place },
        _ => Place::default(),
    };
    (text, place)
}

/// Why advice is none.
const ADVICE: &str = "a recommendation, not a result";

/// Why a line of another letter is none.
const QUOTED: &str = "quoted from another letter";

/// Whether a row says how much of the three nutrients of a fertiliser to spread: `N 95  P2O5 35
/// K2O 0`.
fn is_fertiliser(row: &[Cell]) -> bool {
    let words: Vec<&str> = row
        .iter()
        .flat_map(|c| c.text.split([' ', ',', ';', ':', '(']))
        .filter(|w| !w.is_empty())
        .collect();
    let figure = |w: Option<&&str>| w.is_some_and(|w| w.starts_with(|c: char| c.is_ascii_digit()));
    let told = |name: &str| (0..words.len()).any(|i| words[i] == name && figure(words.get(i + 1)));
    told("N") && told("P2O5") && told("K2O")
}

/// Why a line without a result is none.
fn no_result(line: &str, soil_word: bool) -> &'static str {
    let label = Label::of(line);
    if label.has(Word::Advice) {
        ADVICE
    } else if label.has(Word::Nitrogen) {
        "nitrogen, but not which: write nitrate-N, ammonium-N or total N"
    } else if soil_word {
        "a soil property is named, but no result stands beside it"
    } else {
        NOTHING
    }
}

/// Why a line of other things is no result.
const NOTHING: &str = "no soil property in this line";

/// `Plot A, 15–60 cm`, or in inches where the report says so.
fn name_with_depth(name: &str, (top, bottom): (f64, f64), inches: bool) -> String {
    let (by, unit) = if inches { (CM_PER_INCH, "in") } else { (1.0, "cm") };
    format!("{name}, {}–{} {unit}", significant(top / by, 3), significant(bottom / by, 3))
}

/// Whether a depth was given in inches: whole ones, while in cm it is none.
fn in_inches((top, bottom): (f64, f64)) -> bool {
    let whole = |x: f64| (x - x.round()).abs() < 1e-6;
    whole(top / CM_PER_INCH) && whole(bottom / CM_PER_INCH) && !(whole(top) && whole(bottom))
}

/// By definition.
const CM_PER_INCH: f64 = 2.54;

/// The report under way.
#[derive(Default)]
pub(super) struct Reader {
    pub decimal: Decimal,
    pub report: Report,
    pub statements: Vec<Statement>,
    /// A unit named for all nutrients, and on which line.
    pub units: Vec<UnitSaid>,
    /// What lines before the first sample say of every sample.
    pub before: SampleReport,
    /// How good the name of the current sample is; lower is better.
    rank: Option<u8>,
    /// The sample that free lines belong to.
    current: Option<usize>,
    /// A table of several samples came last, so a free line belongs to none.
    after_table: bool,
    /// How the results under way come to their names.
    pub pairing: Pairing,
    /// Whether the last head says that of several numbers the first is the result.
    first_is_result: bool,
    /// What the last heading says of the lines below it.
    under: Under,
    /// Titles and page numbers run through the source.
    paged: bool,
    /// The sheet under way.
    sheet: String,
    /// What was said before the first sheet, for all of them.
    for_all: Option<ForAll>,
    /// Lines that may head a list, and what lines say of a sample, each with its line.
    headings: Vec<(u32, String)>,
    facts: Vec<(u32, AboutSample)>,
    /// The names of samples by their codes, from a list without results.
    pub aliases: BTreeMap<String, String>,
    /// The samples by their names and codes in tables; `None` for what calls several.
    called: BTreeMap<String, Option<usize>>,
    /// How many samples have their methods, units and names.
    settled: usize,
    /// Cells looked at since the last result.
    idle: usize,
    /// Unread lines that are only counted.
    more_unread: usize,
    /// What the rows under way are about, if not the soil.
    pub section: Option<Matter>,
    /// What the first such rows with figures were about.
    other: Option<Matter>,
}

/// Beginnings of words by which a line speaks of all results: `All values in ppm`, while the unit
/// of `TRACE ELEMENTS (mg/kg)` is that of the results below it.
const OF_ALL: &[&str] = &[
    "all ",
    "alle ",
    "tous",
    "toutes",
    "todos",
    "todas",
    "tutti",
    "results",
    "ergebnis",
    "resultat",
    "resultad",
    "risultat",
    "values",
    "werte",
    "varden",
    "vardena",
    "verdier",
    "waarden",
    "wartosci",
    "hodnoty",
    "tulokset",
    "valeurs",
    "valores",
    "valori",
    "expressed",
    "reported",
    "angaben",
    "exprim",
    "expres",
    "units",
    "unit ",
    "einheit",
    "unite",
    "unidad",
    "nutrients",
    "nahrstoff",
    "wynik",
    "uitslag",
    "eenheid",
    "jednotk",
    "enhet",
    "единиц",
];

fn is_for_all(line: &str) -> bool {
    let folded = fold(line);
    let starts = folded.match_indices(' ').map(|(at, _)| at + 1);
    [0].into_iter().chain(starts).any(|at| OF_ALL.iter().any(|w| folded[at..].starts_with(w)))
}

/// What the text before the first sheet says of every sheet.
#[derive(Clone)]
struct ForAll {
    statements: Vec<Statement>,
    units: Vec<UnitSaid>,
    before: SampleReport,
}

impl Reader {
    /// Begins a report whose decimals and pages are known.
    pub fn new(decimal: Decimal, paged: bool) -> Reader {
        Reader { decimal, paged, ..Reader::default() }
    }

    /// Goes on to the next sheet: what the last one said holds no longer.
    pub fn turn_to_sheet(&mut self, name: &str) {
        self.settle_samples();
        let for_all = self.for_all.get_or_insert_with(|| ForAll {
            statements: std::mem::take(&mut self.statements),
            units: std::mem::take(&mut self.units),
            // What is advised is for one sample, not for every sheet.
            before: SampleReport { advice: Vec::new(), ..std::mem::take(&mut self.before) },
        });
        self.statements.clone_from(&for_all.statements);
        self.units.clone_from(&for_all.units);
        self.before = for_all.before.clone();
        self.sheet = name.into();
        (self.rank, self.current, self.after_table) = (None, None, false);
        self.called.clear();
        self.under = Under::Nothing;
    }

    /// Gives the samples since the last sheet what was said of them all.
    fn settle_samples(&mut self) {
        let from = self.settled;
        self.part_lists(from);
        self.part_depths(from);
        self.call_by_aliases(from);
        self.settled = self.report.samples.len();
        let above = if self.before.name.is_empty() { &self.sheet } else { &self.before.name };
        let nameless = self.report.samples[from..].iter().filter(|s| s.name.is_empty()).count();
        if let [only] = &mut self.report.samples[from..] {
            only.advice.append(&mut self.before.advice);
        }
        let deep: Vec<_> = self.report.samples[from..]
            .iter()
            .filter(|s| s.name.is_empty())
            .map(|s| s.depth_cm)
            .collect();
        // Rows that only their depths tell apart.
        let by_depth =
            nameless > 1 && deep.iter().all(Option::is_some) && deep.iter().any(|d| *d != deep[0]);
        let most = self.report.samples[from..].iter().map(|s| s.readings.len()).max().unwrap_or(0);
        let others_named = nameless < self.report.samples.len() - from;
        let (mut count, mut last) = (0, (String::new(), None));
        for (i, sample) in self.report.samples.iter_mut().enumerate().skip(from) {
            sample.depth_cm = sample.depth_cm.or(self.before.depth_cm);
            sample.texture = sample.texture.or(self.before.texture);
            sample.group = sample.group.or(self.before.group);
            sample.target_ph = sample.target_ph.or(self.before.target_ph);
            if sample.name.is_empty() {
                // Nothing names it, though another sample is named: it may be of a letter, a legend,
                // a neighbour or another year.
                if !by_depth && (others_named || sample.readings.len() <= STRAY && most >= FULL) {
                    for reading in &mut sample.readings {
                        reading.pairing = Pairing::CountedOff;
                    }
                }
                count += 1;
                sample.name = match (above.as_str(), nameless) {
                    (above, _) if by_depth => {
                        let depth = sample.depth_cm.unwrap_or_default();
                        let name = name_with_depth(above, depth, in_inches(depth));
                        name.trim_start_matches([',', ' ']).into()
                    }
                    ("", _) => format!("Sample {}", i + 1),
                    (above, 1) => above.into(),
                    _ => format!("{above}, sample {count}"),
                };
            }
            // One name over two depths: the second says how deep it lies.
            let same = last.0 == sample.name;
            match sample.depth_cm {
                Some(depth) if same && last.1 != Some(depth) => {
                    let inches = in_inches(depth);
                    sample.name = name_with_depth(&last.0, depth, inches);
                }
                depth if !same => last = (sample.name.clone(), depth),
                _ => {}
            }
            settle(sample, &self.statements, &self.units);
        }
    }

    /// Calls samples by the names that a list of codes gives them, wherever it stands: `Probe 1` by
    /// that of `1`.
    fn call_by_aliases(&mut self, from: usize) {
        if self.aliases.is_empty() {
            return;
        }
        for sample in &mut self.report.samples[from..] {
            let code = match sample.name.rsplit_once(' ') {
                Some((word, code)) if matches!(role(word), Role::Sample(_)) => code,
                _ => &sample.name,
            };
            if let Some(name) = self.aliases.get(code) {
                sample.name.clone_from(name);
            }
        }
    }

    /// Makes a sample of each depth below the first in which a property of one sample was found.
    fn part_depths(&mut self, from: usize) {
        let samples = self.report.samples.split_off(from);
        for mut sample in samples {
            let deep = |r: &Reading| r.depth_cm.filter(|d| d.0 > 0.0);
            let again = |r: &Reading, all: &[Reading]| {
                let other = |o: &Reading| o.property == r.property && o.depth_cm != r.depth_cm;
                deep(r).is_some() && all.iter().any(other)
            };
            let readings = std::mem::take(&mut sample.readings);
            let (deeper, own): (Vec<Reading>, Vec<Reading>) =
                readings.iter().cloned().partition(|r| again(r, &readings));
            sample.readings = own;
            let name = sample.name.clone();
            self.report.samples.push(sample);
            let mut depths: Vec<(f64, f64)> = deeper.iter().filter_map(deep).collect();
            depths.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
            depths.dedup();
            for depth in depths {
                if self.report.samples.len() >= MOST_SAMPLES {
                    return;
                }
                let of = deeper.iter().filter(|r| r.depth_cm == Some(depth)).cloned();
                let name = name_with_depth(&name, depth, in_inches(depth));
                self.report.samples.push(SampleReport {
                    name: name.trim_start_matches([',', ' ']).into(),
                    readings: of.map(|r| Reading { depth_cm: None, ..r }).collect(),
                    depth_cm: Some(depth),
                    ..SampleReport::default()
                });
            }
        }
    }

    /// Makes samples of their own of lists that begin anew within one.
    fn part_lists(&mut self, from: usize) {
        let beside = Beside { headings: &self.headings, facts: &self.facts };
        let samples = self.report.samples.split_off(from);
        for mut sample in samples {
            let lists = lists(&mut sample, &beside);
            let room = MOST_SAMPLES - self.report.samples.len().min(MOST_SAMPLES);
            if lists.is_empty() || lists.len() > room {
                self.report.samples.push(sample);
            } else {
                self.report.samples.extend(lists);
            }
        }
        self.headings.clear();
        self.facts.clear();
    }

    /// The line right above a table that may be its heading.
    pub fn heading_above(&self, line: u32) -> Option<String> {
        let (above, text) = self.headings.last()?;
        (above + 3 > line).then(|| plain_heading(text))
    }

    /// Begins a sample.
    pub fn begin(&mut self, name: Option<&str>) -> Result<usize, Trouble> {
        let index = self.report.samples.len();
        if index >= MOST_SAMPLES {
            return Err(Trouble::TooManySamples { allowed: MOST_SAMPLES });
        }
        // A result is no name.
        let number = |name: &&str| name.contains(['.', ',']) && parse_amount(name).is_some();
        let spelled = |name: &&str| name.chars().any(is_word);
        let names = |name: &&str| !number(name) && spelled(name);
        let names = |name: &&str| names(name) && !names_nothing(name, self.decimal);
        let name = what_was_tested(name.filter(names).unwrap_or_default().trim()).to_string();
        self.report.samples.push(SampleReport { name, ..SampleReport::default() });
        Ok(index)
    }

    /// The sample of a row that has its name or one of its codes: one of those before this table
    /// goes on, unless it has one of these properties already.
    pub fn of_row(
        &mut self,
        name: &str,
        codes: &[&str],
        properties: &BTreeSet<Property>,
        before: usize,
    ) -> Result<usize, Trouble> {
        let alias = self.aliases.get(name).cloned();
        let name = alias.as_deref().unwrap_or(name);
        let called = || [name].into_iter().chain(codes.iter().copied()).filter(|t| !t.is_empty());
        let same: BTreeSet<usize> = called().filter_map(|t| *self.called.get(t)?).collect();
        let known = |r: &Reading| properties.contains(&r.property);
        let goes_on = match (same.first(), same.len()) {
            (Some(&only), 1) if only < before => {
                let fresh = !self.report.samples[only].readings.iter().any(known);
                fresh.then_some(only)
            }
            _ => None,
        };
        let index = goes_on.map_or_else(|| self.begin(Some(name)), Ok)?;
        for text in called() {
            let of = self.called.entry(text.into()).or_insert(Some(index));
            *of = of.filter(|&of| of == index);
        }
        Ok(index)
    }

    /// The sample that free lines and single-column lists belong to.
    pub fn current(&mut self) -> Result<usize, Trouble> {
        if let Some(index) = self.current {
            return Ok(index);
        }
        let index = self.begin(None)?;
        let before = std::mem::take(&mut self.before.name);
        self.report.samples[index].name = before;
        self.current = Some(index);
        Ok(index)
    }

    /// The name that was said of the samples to come.
    pub fn stated_name(&self) -> Option<&str> {
        let name = match self.current {
            Some(index) => &self.report.samples[index].name,
            None => &self.before.name,
        };
        Some(name.as_str()).filter(|name| !name.is_empty())
    }

    /// The sample of a strip: a table with one row of results and no name. It goes on with
    /// the sample under way, unless that has one of these properties already.
    /// The same number once more, or another in another unit, is no second result.
    pub fn of_strip(
        &mut self,
        results: &[(Property, &str, Option<Unit>)],
    ) -> Result<usize, Trouble> {
        let differs = |r: &Reading| {
            let of = results.iter().filter(|(property, ..)| *property == r.property);
            let same = |unit: Option<Unit>| unit.is_none() || r.unit.is_none() || unit == r.unit;
            of.into_iter().any(|(_, text, unit)| *text != r.original && same(*unit))
        };
        let shares = |readings: &[Reading]| {
            let said = |r: &Reading| {
                results.iter().any(|(p, text, _)| *p == r.property && *text == r.original)
            };
            let known = |r: &Reading| results.iter().any(|(p, ..)| *p == r.property);
            !readings.iter().any(known) || readings.iter().any(said)
        };
        match self.current.map(|c| (c, &self.report.samples[c].readings)) {
            Some((current, readings)) if shares(readings) && !readings.iter().any(differs) => {
                Ok(current)
            }
            None if !self.after_table => self.current(),
            _ => self.begin(None),
        }
    }

    /// A table ended that gave every sample its own row or column.
    pub fn end_table(&mut self, samples: usize, last: usize) {
        self.after_table = samples > 1;
        self.current = (samples == 1).then_some(last);
    }

    /// Lists something that could not be placed.
    pub fn unread(
        &mut self,
        sample: Option<usize>,
        text: &str,
        reason: impl Into<String>,
        place: Place,
    ) {
        let list = match sample {
            Some(index) => &mut self.report.samples[index].unread,
            None => &mut self.report.unread,
        };
        if list.len() >= MOST_UNREAD {
            self.more_unread += 1;
            return;
        }
        let shown = first_chars(text, LONGEST_UNREAD);
        let more = if shown.len() < text.len() { "…" } else { "" };
        let text = format!("{shown}{more}");
        list.push(Unread { text, reason: reason.into(), place });
    }

    /// Takes notice that a row is looked at.
    ///
    /// # Errors
    /// When there was no result for so long that none can be awaited.
    pub fn look_at(&mut self, row: &[Cell]) -> Result<(), Trouble> {
        self.idle += row.len();
        if self.idle > MOST_IDLE { Err(Trouble::NoEnd) } else { Ok(()) }
    }

    /// Takes methods named for the whole report, each once.
    fn state(&mut self, found: Vec<Statement>) {
        for new in found {
            let known = |s: &Statement| s.method == new.method && s.only == new.only;
            if self.statements.len() < MOST_STATEMENTS && !self.statements.iter().any(known) {
                self.statements.push(new);
            }
        }
    }

    /// Places a result in a sample.
    pub fn put(&mut self, sample: usize, draft: &Draft) {
        if self.report.samples[sample].readings.len() >= MOST_READINGS {
            let text = format!("{}: {}", draft.name, draft.result);
            let reason = "the sample has more results than any laboratory gives";
            return self.unread(Some(sample), &text, reason, draft.place);
        }
        match place(draft, self.decimal) {
            Ok(Some(reading)) => {
                self.idle = 0;
                let mut reading = Reading { pairing: self.pairing, ..reading };
                if self.pairing == Pairing::Sentence {
                    reading.notes.push("read from a sentence".into());
                }
                if self.pairing == Pairing::CountedOff {
                    settle::ask_usual_unit(&mut reading);
                }
                self.report.samples[sample].readings.push(reading);
            }
            Ok(None) => {}
            Err(reason) => {
                let text = format!("{}: {}", draft.name, draft.result);
                self.unread(Some(sample), &text, reason, draft.place);
            }
        }
    }

    /// A row outside every table.
    pub fn free_row(&mut self, row: &[Cell]) -> Result<(), Trouble> {
        let filled: Vec<&Cell> = filled(row).collect();
        if filled.is_empty() {
            return Ok(());
        }
        self.look_at(row)?;
        if let Some(left) = self.without_advice(row) {
            return self.free_row(&left);
        }
        let said_before = is_quoted(filled[0]);
        if filled.iter().any(|cell| is_scale(&cell.text, self.decimal)) {
            let (text, place) = whole(row);
            self.unread(None, &text, "a target or a range, not a result", place);
            return Ok(());
        }
        if said_before || is_fertiliser(row) || begins_rates(&filled[0].text) {
            let (text, place) = whole(row);
            let reason = if said_before { QUOTED } else { ADVICE };
            self.unread(None, &text, reason, place);
            return Ok(());
        }
        let (whole, at) = whole(row);
        if filled.len() == 1 && is_endless(&whole) {
            self.unread(None, &whole, "longer than any line of a soil test", at);
            return Ok(());
        }
        if let Some(parts) = self.parts(&filled) {
            return parts.iter().try_for_each(|part| self.free_row(part));
        }
        if let [cell] = filled[..]
            && let Some(parts) = statements_apart(cell)
        {
            return parts.into_iter().try_for_each(|part| self.free_row(&[part]));
        }
        if let Some(about) = about_sample(row, self.decimal) {
            if matches!(about, AboutSample::Depth(..)) {
                // "Mehlich-3, 0-6 in depth" says both.
                self.state(methods(&whole, at.line));
            }
            if matches!(about, AboutSample::Texture(_) | AboutSample::Unclear(NO_TEXTURE))
                && self.separates(&whole, at)?
                && matches!(about, AboutSample::Unclear(_))
            {
                return Ok(());
            }
            return self.about(about, &whole, at);
        }
        if let Some((name, results)) = named_line(row, self.decimal) {
            // "2023: pH 6.1, P 37 mg/L" below the name of the block.
            let year = is_year(name.trim_start_matches(|c: char| !c.is_ascii_digit()));
            let near = self.headings.last().filter(|(line, _)| line + NEAR_YEAR > at.line);
            let over = near.map(|(_, over)| plain_heading(over));
            let over = over.or_else(|| self.stated_name().map(String::from)).unwrap_or_default();
            let over =
                over.split(", ").filter(|part| !is_year(part)).collect::<Vec<_>>().join(", ");
            let (name, rank) = match (year, over.is_empty()) {
                (true, false) => (format!("{over}, {name}"), 0),
                // A year alone calls nothing.
                (true, true) => (String::new(), 0),
                (false, _) => (name, 2),
            };
            if !name.is_empty() {
                self.about(AboutSample::Name(name, rank), &whole, at)?;
            }
            return self.free_row(&results);
        }
        let mut says = read_row(row, self.decimal);
        says.drafts.retain(|draft| prose::may_tell(&whole, draft.name.trim()));
        if let Some(told) = self.told(&filled, &says) {
            // "Straight topsoil. The nitrate came to 19 ppm": what the paragraph is about.
            if let Some((ahead, _)) = whole.split_once(". ")
                && ahead.split(' ').count() < 5
                && may_be_heading(ahead)
                && self.headings.len() < MOST_HEADINGS
            {
                self.headings.push((at.line, ahead.into()));
            }
            self.pairing = Pairing::Sentence;
            self.free_results(&told, &whole, at)?;
            self.pairing = Pairing::Together;
            return Ok(());
        }
        if !says.drafts.is_empty() {
            if !self.after_table {
                self.state(methods_apart(row, &says.drafts));
            }
            return self.free_results(&says.drafts, &whole, at);
        }
        if let Some(first) = says_first(&whole) {
            self.first_is_result = first;
        }
        let clauses = filled.iter().map(|c| c.text.as_str()).collect::<Vec<_>>().join("; ");
        if !self.says_of_all(&clauses, &says, &whole, at) {
            let reason = says.refused.unwrap_or_else(|| no_result(&whole, says.soil_word).into());
            self.in_no_place(&whole, at, reason);
        }
        Ok(())
    }

    /// The results that a row tells in sentences, where it says more in them than as a list.
    fn told(&self, filled: &[&Cell], says: &RowSays) -> Option<Vec<Draft>> {
        let told: Vec<Draft> =
            filled.iter().flat_map(|cell| prose::told(cell, self.decimal)).collect();
        // The name of a result that was read as one of a list has few words.
        let listed = |d: &Draft| d.name.split(' ').count() < 5 && !prose::has_verb(&d.name);
        let listed = says.drafts.iter().all(listed);
        let more = told.len() > says.drafts.len();
        (more || told.len() == says.drafts.len() && !listed).then_some(told)
    }

    /// A row without the advice in it, which goes to its sample; `None` where there is none.
    fn without_advice(&mut self, row: &[Cell]) -> Option<Vec<Cell>> {
        match advice::heading(row) {
            Under::Nothing => {}
            under => self.under = under,
        }
        let (found, left) = advice::apart(row, self.decimal, self.under);
        if found.is_empty() || self.after_table {
            return None;
        }
        for one in &found {
            self.in_no_place(&one.text, one.place, ADVICE.into());
        }
        self.about_to().advice.extend(found);
        Some(left)
    }

    /// Takes what cells of a table advise for a sample.
    pub fn advise(&mut self, sample: usize, cells: &[&Cell]) {
        let found = advice::of_cells(cells, self.decimal, Under::Nothing);
        self.report.samples[sample].advice.extend(found);
    }

    /// The parts of a row in which a cell says something of the sample by itself, as
    /// `Sample: 1   Depth: 0-8 in` or `Texture clay loam   pH 6.1   P 12 ppm`: each such cell,
    /// and what stands between them.
    fn parts(&self, filled: &[&Cell]) -> Option<Vec<Vec<Cell>>> {
        if filled.len() < 2 {
            return None;
        }
        let says = |c: &Cell| about_sample(std::slice::from_ref(c), self.decimal);
        let with_colon =
            |c: &Cell| c.text.contains(':') && !c.text.ends_with(':') && says(c).is_some();
        let sampled = |c: &Cell| {
            let about = says(c);
            let open = matches!(about, Some(AboutSample::Unclear(NO_TEXTURE)));
            let told = matches!(
                about,
                Some(
                    AboutSample::Depth(..)
                        | AboutSample::Texture(_)
                        | AboutSample::Group(_)
                        | AboutSample::TargetPh(_)
                )
            );
            (open || told) && read_row(std::slice::from_ref(c), self.decimal).drafts.is_empty()
        };
        let own: Vec<bool> = filled.iter().map(|c| with_colon(c) || sampled(c)).collect();
        let others: Vec<Cell> =
            filled.iter().zip(&own).filter(|(_, own)| !**own).map(|(c, _)| (*c).clone()).collect();
        let results = || !read_row(&others, self.decimal).drafts.is_empty();
        let colon = filled.iter().any(|c| with_colon(c));
        // "silt loam" says what it is without a word before it.
        let cells: Vec<Cell> = filled.iter().map(|c| (*c).clone()).collect();
        let class = |c: &&Cell| {
            texture_alone(&[&c.text]).is_some() || matches!(says(c), Some(AboutSample::Group(_)))
        };
        let alone = || {
            filled.len() > 2
                && filled.iter().any(class)
                && about_sample(&cells, self.decimal).is_none()
        };
        if !own.contains(&true) || !colon && !results() && !alone() {
            return None;
        }
        let mut parts: Vec<Vec<Cell>> = Vec::new();
        let mut last_own = true;
        for (cell, own) in filled.iter().zip(own) {
            // A pair such as `pH   6.2` stays together; other statements are each their own.
            let alone = || read_row(std::slice::from_ref(*cell), self.decimal).drafts.is_empty();
            let statement = own || cell.text.contains(": ") && alone();
            match parts.last_mut().filter(|_| !statement && !last_own) {
                Some(part) => part.push((*cell).clone()),
                None => parts.push(vec![(*cell).clone()]),
            }
            last_own = statement;
        }
        Some(parts)
    }

    /// A row of a part that is not about the soil: what is advised is taken, and what the rows
    /// say of methods; no result. Of leaves or water nothing is taken.
    pub fn row_of_section(&mut self, row: &[Cell]) -> Result<(), Trouble> {
        let Some(matter) = self.section else { return Ok(()) };
        let (text, place) = whole(row);
        let figures = text.bytes().any(|b| b.is_ascii_digit());
        if figures {
            self.other.get_or_insert(matter);
        }
        if matter.is_about_soil() {
            return self.free_row(row);
        }
        self.look_at(row)?;
        if figures {
            self.unread(None, &text, matter.reason(), place);
        }
        Ok(())
    }

    /// Results in a line of their own.
    fn free_results(&mut self, drafts: &[Draft], whole: &str, at: Place) -> Result<(), Trouble> {
        if let Some(matter) = self.section {
            self.unread(None, whole, matter.reason(), at);
            return Ok(());
        }
        // "OM 5-10 %, CEC <20" tells ranges.
        let limit = |d: &Draft| d.result.starts_with(['<', '>', '≤', '≥']);
        let range = |d: &Draft| is_range(&d.result, self.decimal);
        if drafts.iter().any(range) && drafts.iter().all(|d| limit(d) || range(d)) {
            self.unread(None, whole, "a target or a range, not a result", at);
            return Ok(());
        }
        if self.after_table {
            let reason = "it stands outside the table, so its sample isn't known";
            self.unread(None, whole, reason, at);
            return Ok(());
        }
        self.state(methods_beside(whole, at.line));
        self.under = Under::Nothing;
        let sample = self.current()?;
        for draft in drafts {
            self.put(sample, &Draft { first: self.first_is_result, ..draft.clone() });
        }
        Ok(())
    }

    /// Takes the sand, silt and clay that stand with a texture, as `sandig (Ton 20 %)`, or the
    /// clay that its name stands for. Says whether there were any.
    fn separates(&mut self, whole: &str, at: Place) -> Result<bool, Trouble> {
        let said = behind_texture(whole);
        let mut found = false;
        for part in clauses(&said).into_iter().flat_map(|c| c.split(['(', ')', ':'])) {
            let cell = Cell { text: part.trim().into(), place: at };
            let drafts = read_row(&[cell], self.decimal).drafts;
            let soil = |d: &&Draft| {
                matches!(d.quantity.property, Property::Sand | Property::Silt | Property::Clay)
            };
            // "1 sand, 2 loam" are codes.
            let told = drafts.iter().any(|d| d.unit.is_some()) || drafts.len() > 2;
            for draft in drafts.iter().filter(|d| told && soil(d)) {
                let sample = self.current()?;
                self.put(sample, draft);
                found = true;
            }
        }
        let name = said.trim_start_matches([':', ' ']);
        if let Some(clay) = clay_of(whole, name).filter(|_| !found) {
            let sample = self.current()?;
            let reading = clay_by_name(whole, name, at, clay);
            self.report.samples[sample].readings.push(reading);
        }
        Ok(found)
    }

    /// Takes what a line without results says of all of them: methods and a unit.
    fn says_of_all(&mut self, clauses: &str, says: &RowSays, whole: &str, at: Place) -> bool {
        if says.refused.as_deref().is_some_and(|r| r.starts_with("a recommendation")) {
            return false;
        }
        let statements = methods(clauses, at.line);
        // "To be added (lbs/acre)" says nothing of the results.
        let own = self.section.is_none();
        let unit = unit_for_all(clauses).filter(|_| own);
        if statements.is_empty() && unit.is_none() {
            return false;
        }
        if let Some(printed) = unit.filter(|_| self.units.len() < MOST_STATEMENTS) {
            let below = !is_for_all(whole);
            self.units.push(UnitSaid { printed, line: at.line, below });
        }
        self.state(statements);
        let label = Label::of(whole);
        let measured = says.soil_word || label.unit.is_some();
        let digits = |w: &String| w.contains(|c: char| c.is_ascii_digit());
        if measured && label.unknown.iter().any(digits) {
            self.unread(None, whole, "its method was read, but not its number", at);
        }
        true
    }

    /// Lists a line that says nothing here. A running title is listed once, however many pages
    /// repeat it, and page numbers never.
    pub fn in_no_place(&mut self, whole: &str, at: Place, reason: String) {
        if self.section.is_none() && self.headings.len() < MOST_HEADINGS {
            // "Lower block, young trees" was parted at its comma.
            let parted = whole.chars().count() == (at.end - at.start) as usize;
            let heading = if parted { whole.replace("  ", ", ") } else { whole.into() };
            if may_be_heading(&heading) && !is_page_number(whole) {
                self.headings.push((at.line, heading));
            }
        }
        // "Hi Karen," is nothing that a reader would miss.
        let figures = whole.bytes().any(|b| b.is_ascii_digit());
        if !figures && reason == NOTHING {
            return;
        }
        let known = || self.report.unread.iter().rev().take(50).any(|u| u.text == whole);
        if !(self.paged && (is_page_number(whole) || known())) {
            self.unread(None, whole, reason, at);
        }
    }

    fn about(&mut self, about: AboutSample, whole: &str, at: Place) -> Result<(), Trouble> {
        if self.facts.len() < MOST_HEADINGS {
            self.facts.push((at.line, about.clone()));
        }
        match about {
            AboutSample::Name(name, _) if names_nothing(without_next(&name), self.decimal) => {
                self.in_no_place(whole, at, NOTHING.into());
            }
            AboutSample::Name(name, rank) => {
                let name = without_next(&name).to_string();
                // What the laboratory counts it by is its name where it has no other.
                let counted = rank > 0 && is_laboratory_number(&name);
                let rank = if counted { rank + 10 } else { rank };
                if self.current.is_some_and(|c| self.report.samples[c].name == name) {
                    // The head of a sample that goes on, on its next page.
                    return Ok(());
                }
                let begun =
                    self.current.is_some_and(|c| !self.report.samples[c].readings.is_empty());
                if begun && self.rank.is_none_or(|r| rank <= r) {
                    let index = self.begin(Some(&name))?;
                    self.current = Some(index);
                } else if self.rank.is_none_or(|r| rank < r) && !begun
                    // Below a table of several depths it is the name of the next plot.
                    || self.after_table && self.rank.is_none_or(|r| rank <= r)
                {
                    match self.current {
                        Some(c) => self.report.samples[c].name = name,
                        None => {
                            // Those above have the name that was said so far.
                            let said = std::mem::replace(&mut self.before.name, name);
                            let above = self.report.samples[self.settled..].iter_mut();
                            above
                                .filter(|s| s.name.is_empty())
                                .for_each(|s| s.name.clone_from(&said));
                        }
                    }
                } else {
                    self.unread(None, whole, "a second name of the sample", at);
                    return Ok(());
                }
                (self.after_table, self.under) = (false, Under::Nothing);
                self.rank = Some(rank);
            }
            AboutSample::Depth(top, bottom) => {
                let known = self.before.depth_cm;
                let to = self.about_to();
                let deeper = to.depth_cm.or(known).is_some_and(|d| d != (top, bottom));
                if deeper && !to.readings.is_empty() {
                    // A second depth in the same place is a sample of its own.
                    let name = to.name.clone();
                    self.current = Some(self.begin(Some(&name))?);
                }
                self.about_to().depth_cm = Some((top, bottom));
            }
            AboutSample::Texture(texture) => self.about_to().texture = Some(texture),
            AboutSample::Group(group) => self.about_to().group = Some(group),
            AboutSample::TargetPh(ph) => {
                self.about_to().target_ph = Some(ph);
                self.unread(self.current, whole, "a target or a range, not a result", at);
            }
            AboutSample::Unclear(reason) => self.unread(self.current, whole, reason, at),
        }
        Ok(())
    }

    /// Where a line about the sample goes: to the sample under way, or to all.
    fn about_to(&mut self) -> &mut SampleReport {
        match self.current {
            Some(index) => &mut self.report.samples[index],
            None => &mut self.before,
        }
    }

    pub fn finish(mut self, grid: &Grid) -> Result<Report, Trouble> {
        self.settle_samples();
        second_look(&mut self.report, grid);
        let found = self.report.samples.iter().flat_map(|s| &s.readings);
        if !found.into_iter().any(|r| r.amount.is_some() || r.rating.is_some()) {
            return Err(self.trouble(grid));
        }
        let mut extra = self.more_unread;
        let mut shorten = |unread: &mut Vec<Unread>| {
            extra += unread.len().saturating_sub(MOST_UNREAD);
            unread.truncate(MOST_UNREAD);
        };
        shorten(&mut self.report.unread);
        self.report.samples.iter_mut().for_each(|s| shorten(&mut s.unread));
        if extra > 0 {
            self.report.notes.push(format!("More lines that could not be placed: {extra}."));
        }
        Ok(self.report)
    }

    /// Why there is no result at all.
    fn trouble(&self, grid: &Grid) -> Trouble {
        let tabular = grid.rows.iter().filter(|r| r.len() > 1).count() * 2 > grid.rows.len();
        let refused = self.report.samples.iter().any(|s| !s.unread.is_empty());
        if grid.rows.iter().any(|r| matches!(&r[..], [only] if is_endless(&only.text))) {
            return Trouble::EndlessLine;
        }
        // A lone S or B is a letter; a full name or two symbols are soil words.
        let mut symbols = 0;
        let soil_words = |cell: &Cell| {
            let label = Label::of(&cell.text);
            if label.is_soil() && label.unknown.len() < 2 {
                symbols += if label.only_symbols { label.properties.len() } else { 2 };
            }
            symbols > 1
        };
        if refused || grid.rows.iter().flatten().filter(|c| !is_wordless(c)).any(soil_words) {
            return self.not_of_soil(Trouble::NoResults);
        }
        if tabular {
            let names = grid.rows.iter().find(|r| r.len() > 1).into_iter().flatten();
            let names = names
                .map(|c| c.text.chars().take(24).collect::<String>())
                .filter(|n| !squash(n).is_empty() && !is_result(n, self.decimal))
                .take(4)
                .collect();
            return Trouble::NoSoilWords { names };
        }
        self.not_of_soil(Trouble::Prose)
    }

    /// What the page seems to be, where it says so; else another trouble.
    fn not_of_soil(&self, otherwise: Trouble) -> Trouble {
        self.other.map_or(otherwise, |matter| Trouble::NotOfSoil { what: matter.what() })
    }
}
