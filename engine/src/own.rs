//! A region's own file: an educator's rows beside those that are built in.
//!
//! The file is one text with commas. A line that holds only the name of a table (`sources`,
//! `regions`, `ranges`, `lime`, `rates`) begins that table; the line below it is its head, and the
//! rows are those of `engine/facts`. Publications and regions that are built in may be named.

use crate::facts::{
    Cited, Fact, LimeRow, RangeRow, RateRow, RegionRow, Rows, SourceRow, Table, Wrong, rows_of,
};
use crate::quantity::Band;
use crate::ranges::Scheme;
use crate::region::{CropRate, Region, RegionalLime};
use crate::soil::Soils;
use crate::sources::{Citation, Source, Words, all_sources};

/// The most that a region's own file may hold, bytes. Our choice.
pub const MOST_BYTES: usize = 200_000;

/// The tables of a region's own file, kept for as long as the program runs.
#[derive(Debug, Default)]
pub struct OwnFacts {
    /// Its publications.
    pub sources: &'static [Source],
    /// Its regions.
    pub regions: &'static [Region],
    /// Its ranges.
    pub ranges: &'static [Scheme],
    /// Its lime tables.
    pub lime: &'static [RegionalLime],
    /// Its dressings.
    pub rates: &'static [CropRate],
}

impl PartialEq for OwnFacts {
    /// The same file, kept once.
    fn eq(&self, other: &OwnFacts) -> bool {
        std::ptr::eq(self, other)
    }
}

/// The names that begin a table.
const TABLES: [&str; 5] = ["sources", "regions", "ranges", "lime", "rates"];

/// Keeps what a static would hold.
fn kept<T>(all: Vec<T>) -> &'static [T] {
    Box::leak(all.into_boxed_slice())
}

fn text(text: String) -> &'static str {
    Box::leak(text.into_boxed_str())
}

/// The rows of each table, under its name.
fn parts(file: &str, whole: &str) -> Result<Vec<(&'static str, Table)>, Vec<Wrong>> {
    let wrong = |line, what: String| vec![Wrong { file: file.into(), line, what }];
    if whole.len() > MOST_BYTES {
        return Err(wrong(1, format!("the file is larger than {} kB", MOST_BYTES / 1000)));
    }
    let mut found: Vec<(&str, Rows)> = Vec::new();
    for (line, mut row) in rows_of(whole) {
        // A spreadsheet fills every row to the same length.
        while row.last().is_some_and(|cell| cell.trim().is_empty()) {
            row.pop();
        }
        if let [only] = row.as_slice()
            && let Some(name) = TABLES.into_iter().find(|name| *name == only.trim())
        {
            found.push((name, Vec::new()));
        } else if let Some((_, rows)) = found.last_mut() {
            rows.push((line, row));
        } else {
            return Err(wrong(
                line,
                format!("write the name of a table above it, alone: {}", TABLES.join(", ")),
            ));
        }
    }
    if found.is_empty() {
        return Err(wrong(
            1,
            format!("no table; a table begins with its name: {}", TABLES.join(", ")),
        ));
    }
    Ok(found.into_iter().map(|(name, rows)| (name, Table::of(file, rows))).collect())
}

/// Reads a region's own file.
///
/// # Errors
/// Every row that is wrong, with its line and what would be right.
pub fn read(file: &str, whole: &str) -> Result<OwnFacts, Vec<Wrong>> {
    let parts = parts(file, whole)?;
    let tables = |name: &'static str| parts.iter().filter(move |part| part.0 == name).map(|p| &p.1);
    let mut own = OwnFacts::default();
    let mut sources = Vec::new();
    for table in tables("sources") {
        sources.extend(table.read(&SourceRow::COLUMNS, &[], SourceRow::read)?);
    }
    own.sources = kept(sources.into_iter().map(source).collect());
    let regions: Vec<RegionRow> = facts(tables("regions"), &own, None)?;
    own.regions = kept(regions.into_iter().map(|row| region(row, &own)).collect());
    let places: Vec<&str> = Region::all()
        .iter()
        .chain(own.regions)
        .map(|region| region.id)
        .chain(["anywhere"])
        .collect();
    let ranges: Vec<RangeRow> = facts(tables("ranges"), &own, Some(&places))?;
    own.ranges = kept(
        ranges
            .into_iter()
            .map(|row| {
                let cited = citations(&row.cited, &own);
                Scheme::of(row, cited)
            })
            .collect(),
    );
    let lime: Vec<LimeRow> = facts(tables("lime"), &own, Some(&places))?;
    own.lime = kept(lime.into_iter().map(|row| lime_table(row, &own)).collect());
    let rates: Vec<RateRow> = facts(tables("rates"), &own, Some(&places))?;
    own.rates = kept(rates.into_iter().map(|row| crop_rate(row, &own)).collect());
    Ok(own)
}

/// The rows of all tables of a kind; each cites what is known, and lies in a region that is.
fn facts<'a, T: Fact>(
    tables: impl Iterator<Item = &'a Table>,
    own: &OwnFacts,
    places: Option<&[&str]>,
) -> Result<Vec<T>, Vec<Wrong>> {
    let mut all = Vec::new();
    for table in tables {
        all.extend(table.read(T::COLUMNS, T::MAY_LACK, |row| {
            let fact = T::read(row)?;
            if let Some(cited) = fact.cited().iter().find(|cited| found(cited, own).is_none()) {
                return Err(row.wrong(format!(
                    "the source “{}” stands neither in this file nor in the program",
                    cited.id
                )));
            }
            if let (Some(region), Some(places)) = (fact.region(), places)
                && !places.contains(&region)
            {
                return Err(row.wrong(format!(
                    "the region “{region}” stands neither in this file nor in the program"
                )));
            }
            Ok(fact)
        })?);
    }
    Ok(all)
}

fn found(cited: &Cited, own: &OwnFacts) -> Option<&'static Source> {
    own.sources.iter().chain(all_sources()).find(|source| source.id() == cited.id)
}

fn citations(cited: &[Cited], own: &OwnFacts) -> &'static [Citation] {
    kept(
        cited
            .iter()
            .filter_map(|cited| Some(Citation { source: found(cited, own)?, grade: cited.grade }))
            .collect(),
    )
}

fn source(row: SourceRow) -> Source {
    Source::Own(Words { id: text(row.id), title: text(row.title), place: text(row.place) })
}

fn texts(all: Vec<String>) -> &'static [&'static str] {
    kept(all.into_iter().map(text).collect())
}

fn region(row: RegionRow, own: &OwnFacts) -> Region {
    Region {
        citations: citations(&row.cited, own),
        id: text(row.id),
        name: text(row.name),
        within: text(row.within),
        near: texts(row.near),
        phosphorus: kept(row.phosphorus),
        cations: kept(row.cations),
        salt_ph: row.salt_ph,
        clues: texts(row.clues),
    }
}

fn lime_table(row: LimeRow, own: &OwnFacts) -> RegionalLime {
    RegionalLime {
        citations: citations(&row.cited, own),
        region: text(row.region),
        uses: kept(row.uses),
        soils: Soils {
            groups: kept(row.soils.groups),
            textures: kept(row.soils.textures),
            within: kept(row.soils.within),
        },
        by: row.by,
        target: row.target,
        points: kept(row.points),
        depth_cm: row.depth_cm,
        note: row.note.into(),
    }
}

fn crop_rate(row: RateRow, own: &OwnFacts) -> CropRate {
    let band = |[low, likely, high]: [f64; 3]| Band::new(low, likely, high);
    CropRate {
        citations: citations(&row.cited, own),
        region: text(row.region),
        crops: kept(row.crops.into_iter().map(text).collect()),
        nutrient: row.nutrient,
        rates: kept(row.rates.into_iter().map(|(level, rate)| (level, band(rate))).collect()),
        way: row.way,
        when: text(row.when),
        months: kept(row.months.into_iter().map(|(month, rate)| (month, band(rate))).collect()),
        note: row.note.into(),
    }
}
