//! What every kind of fact needs on its way into a static.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Debug;

use crate::facts::{Cited, Fact, SoilsRow, Wrong};
use crate::named::Named;
use crate::table;

/// The facts of a file: no name stands twice, and every publication is known.
pub fn rows<T: Fact>(file: &str, known: &BTreeSet<&str>) -> Result<Vec<T>, Vec<Wrong>> {
    let seen = RefCell::new(BTreeSet::new());
    table(file)?.read(T::COLUMNS, T::MAY_LACK, |row| {
        let fact = T::read(row)?;
        if !seen.borrow_mut().insert(row.id("id")?) {
            return Err(row.wrong(format!("“{}” stands twice", row.cell("id"))));
        }
        cited_are_known(fact.cited(), known).map_err(|what| row.wrong(what))?;
        Ok(fact)
    })
}

/// The facts of a file, each of a region that is known.
pub fn rows_of_regions<T: Fact>(
    file: &str,
    known: &BTreeSet<&str>,
    places: &BTreeSet<&str>,
) -> Result<Vec<T>, Vec<Wrong>> {
    let rows: Vec<T> = rows(file, known)?;
    let wrong: Vec<Wrong> = (2..)
        .zip(&rows)
        .filter_map(|(line, row)| {
            let region = row.region().filter(|region| !places.contains(region))?;
            let what = format!("the region “{region}” stands in no row of regions.csv");
            Some(Wrong { file: file.into(), line, what })
        })
        .collect();
    if wrong.is_empty() { Ok(rows) } else { Err(wrong) }
}

/// The facts in the order of what each is about; what is wrong if one is missing.
pub fn one_each<K: Named + PartialEq, T>(
    file: &str,
    mut rows: Vec<T>,
    about: fn(&T) -> K,
) -> Result<Vec<T>, Vec<Wrong>> {
    let place = |kind| K::ALL.iter().position(|other| *other == kind);
    let missing = |kind: &&K| !rows.iter().any(|row| about(row) == **kind);
    let wrong: Vec<Wrong> = K::ALL
        .iter()
        .filter(missing)
        .map(|kind| {
            let what = format!("the {} “{}” has no row", K::WHAT, kind.name());
            Wrong { file: file.into(), line: 1, what }
        })
        .collect();
    rows.sort_by_key(|row| place(about(row)));
    if wrong.is_empty() { Ok(rows) } else { Err(wrong) }
}

/// Whether every publication cited stands in the register; what is wrong if not.
pub fn cited_are_known(cited: &[Cited], known: &BTreeSet<&str>) -> Result<(), String> {
    match cited.iter().find(|cited| !known.contains(cited.id.as_str())) {
        Some(cited) => Err(format!("the source “{}” stands in no row of sources.csv", cited.id)),
        None => Ok(()),
    }
}

/// What is wrong where a name stands twice.
pub fn no_two<'a>(file: &str, ids: impl Iterator<Item = &'a str>) -> Result<(), Vec<Wrong>> {
    let mut seen = BTreeSet::new();
    let wrong: Vec<Wrong> = (2..)
        .zip(ids)
        .filter(|(_, id)| !seen.insert(*id))
        .map(|(line, id)| Wrong {
            file: file.into(), line, what: format!("“{id}” stands twice")
        })
        .collect();
    if wrong.is_empty() { Ok(()) } else { Err(wrong) }
}

/// A name in the code: `umass-report` as `UMASS_REPORT`.
pub fn shouted(id: &str) -> String {
    id.to_uppercase().replace('-', "_")
}

/// A number as the code writes it.
pub fn number(value: f64) -> String {
    match value {
        f64::INFINITY => "f64::INFINITY".into(),
        f64::NEG_INFINITY => "f64::NEG_INFINITY".into(),
        value => format!("{value:?}"),
    }
}

/// A citation as the code writes it.
pub fn citation(cited: &Cited) -> String {
    format!("Citation {{ source: &{}, grade: Grade::{:?} }}", shouted(&cited.id), cited.grade)
}

/// A row's citations as the code writes them.
pub fn citations(cited: &[Cited]) -> String {
    let all: Vec<String> = cited.iter().map(citation).collect();
    format!("&[{}]", all.join(", "))
}

/// A band as the code writes it.
pub fn band([low, likely, high]: [f64; 3]) -> String {
    format!("Band {{ low: {low:?}, likely: {likely:?}, high: {high:?} }}")
}

/// What many rows share stands once.
#[derive(Default)]
pub struct Shared {
    /// The statics of the lists.
    pub code: String,
    names: BTreeMap<String, String>,
}

impl Shared {
    /// The name of a list that stands once.
    pub fn list(&mut self, of: &str, items: &str) -> String {
        let key = format!("&[{of}] = &[{items}]");
        let next = format!("SHARED_{}", self.names.len());
        if let Some(name) = self.names.get(&key) {
            return name.clone();
        }
        self.code += &format!("static {next}: {key};\n");
        self.names.insert(key, next.clone());
        next
    }

    /// The name of a list of kinds.
    pub fn kinds<T: Debug>(&mut self, of: &str, kinds: &[T]) -> String {
        let items: Vec<String> = kinds.iter().map(|kind| format!("{of}::{kind:?}")).collect();
        self.list(of, &items.join(", "))
    }
}

/// The soils a table is for.
pub fn soils(soils: &SoilsRow, shared: &mut Shared) -> String {
    let groups = shared.kinds("SoilGroup", &soils.groups);
    let textures = shared.kinds("Texture", &soils.textures);
    let within: Vec<String> = soils
        .within
        .iter()
        .map(|(of, above, up_to)| {
            format!("(Property::{of:?}, {}, {})", number(*above), number(*up_to))
        })
        .collect();
    let within = shared.list("(Property, f64, f64)", &within.join(", "));
    format!("Soils {{ groups: {groups}, textures: {textures}, within: {within} }}")
}
