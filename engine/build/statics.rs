//! Rows of facts as Rust statics.

use std::collections::BTreeSet;

use crate::facts::{RangeRow, RatingRow, RegionRow, SourceRow, StepRow, Wrong};
use crate::notes::Notes;
use crate::shared::{Shared, citation, no_two, rows, rows_of_regions, shouted, soils};
use crate::{rates, regional_lime, table, tables};

/// Every file to be written, with its code.
pub fn all() -> Result<Vec<(&'static str, String)>, Vec<Wrong>> {
    let sources = table("sources.csv")?.read(&SourceRow::COLUMNS, &[], SourceRow::read)?;
    no_two("sources.csv", sources.iter().map(|source| source.id.as_str()))?;
    let known: BTreeSet<&str> = sources.iter().map(|source| source.id.as_str()).collect();
    let regions: Vec<RegionRow> = rows("regions.csv", &known)?;
    let mut places: BTreeSet<&str> = regions.iter().map(|region| region.id.as_str()).collect();
    places.insert("anywhere");
    let notes = Notes::default();
    let mut files = vec![
        ("sources.rs", register(&sources)),
        ("regions.rs", regions_of(&regions)),
        ("ranges.rs", ranges(&rows_of_regions("ranges.csv", &known, &places)?, &notes)),
        (
            "ratings.rs",
            ratings(&table("ratings.csv")?.read(&RatingRow::COLUMNS, &[], RatingRow::read)?),
        ),
        ("lime.rs", regional_lime::statics(&known, &places, &notes)?),
        ("rates.rs", rates::statics(&known, &places, &notes)?),
    ];
    files.push(("notes.rs", notes.statics()));
    files.extend(tables::all(&known, &places)?);
    Ok(files)
}

fn register(sources: &[SourceRow]) -> String {
    let mut code = String::new();
    for (at, SourceRow { id, about, .. }) in sources.iter().enumerate() {
        let name = shouted(id);
        code += &format!("/// {about}\npub static {name}: Source = Source::Registered({at});\n");
    }
    let names: Vec<String> =
        sources.iter().map(|source| format!("&{}", shouted(&source.id))).collect();
    code += &format!("static ALL: &[&Source] = &[{}];\n", names.join(", "));
    let ids: Vec<&str> = sources.iter().map(|source| source.id.as_str()).collect();
    let read: Vec<&str> = sources.iter().map(|source| source.read.as_str()).collect();
    let titles: Vec<(&str, &str)> =
        sources.iter().map(|source| (source.title.as_str(), source.place.as_str())).collect();
    // A list each: the first piece of a page that comes in two looks names up, and nothing else.
    code += &format!("static IDS: &[&str] = &{ids:?};\n");
    code += &format!("static TITLES: &[(&str, &str)] = &{titles:?};\n");
    code += &format!("static READ: &[&str] = &{read:?};\n");
    code
}

fn ranges(rows: &[RangeRow], notes: &Notes) -> String {
    let mut shared = Shared::default();
    let mut code = String::from("static ALL: &[Scheme] = &[\n");
    for row in rows {
        code += &scheme(row, &mut shared, notes);
    }
    code += "];\n";
    shared.code + &code
}

fn regions_of(rows: &[RegionRow]) -> String {
    let mut code = String::from("static ALL: &[Region] = &[\n");
    for row in rows {
        let RegionRow { id, name, within, near, phosphorus, cations, salt_ph, clues, cited } = row;
        let methods = |list: &[_]| {
            let items: Vec<String> = list.iter().map(|kind| format!("Method::{kind:?}")).collect();
            items.join(", ")
        };
        let citations: Vec<String> = cited.iter().map(citation).collect();
        code += &format!(
            "Region {{ id: {id:?}, name: {name:?}, within: {within:?}, near: &{near:?}, phosphorus: &[{}], \
             cations: &[{}], salt_ph: {salt_ph}, clues: &{clues:?}, citations: &[{}] }},\n",
            methods(phosphorus),
            methods(cations),
            citations.join(", ")
        );
    }
    code + "];\n"
}

fn scheme(row: &RangeRow, shared: &mut Shared, notes: &Notes) -> String {
    let methods = shared.kinds("Method", &row.methods);
    let [plants, judges, second] =
        [&row.plants, &row.judges, &row.second].map(|list| shared.kinds("PlantGroup", list));
    let rungs: Vec<String> = row.steps.iter().map(rung).collect();
    let rungs = shared.list("Rung", &rungs.join(", "));
    let ends: Vec<f64> = row.steps.iter().filter_map(|step| step.up_to).collect();
    let soils = soils(&row.soils, shared);
    let oxide = match row.oxide {
        None => "None".into(),
        Some(oxide) => format!("Some(Oxide::{oxide:?})"),
    };
    let citations: Vec<String> = row.cited.iter().map(citation).collect();
    let citations = shared.list("Citation", &citations.join(", "));
    let meaning =
        if row.meaning.is_empty() { "NO_CHANCE".into() } else { format!("{:?}", row.meaning) };
    let note = notes.place(&row.note);
    let RangeRow { id, region, property, unit, printed_to, .. } = row;
    format!(
        "Scheme {{ id: named({id:?}), region: {region:?}, property: Property::{property:?}, \
         methods: {methods}, soils: {soils}, unit: Unit::{unit:?}, oxide: {oxide}, \
         steps: Steps({rungs}, &{ends:?}), printed_to: {printed_to:?}, plants: {plants}, \
         judges: {judges}, second: {second}, citations: {citations}, meaning: {meaning}, \
         note: {note} }},\n"
    )
}

fn rung(step: &StepRow) -> String {
    let StepRow { word, level, inclusive, .. } = step;
    format!("Rung {{ word: {word:?}, level: Level::{level:?}, inclusive: {inclusive} }}")
}

fn ratings(rows: &[RatingRow]) -> String {
    let rows: Vec<String> = rows
        .iter()
        .map(|RatingRow { word, level, region }| {
            format!("Rating {{ word: {word:?}, level: Level::{level:?}, region: {region:?} }}")
        })
        .collect();
    format!("static RATINGS: &[Rating] = &[{}];\n", rows.join(", "))
}
