//! Rows of facts as Rust statics.

use std::collections::BTreeSet;

use crate::facts::{RangeRow, RegionRow, SourceRow, StepRow, Wrong};
use crate::shared::{Shared, citation, cited_are_known, no_two, number, shouted};
use crate::{table, tables};

/// Every file to be written, with its code.
pub fn all() -> Result<Vec<(&'static str, String)>, Vec<Wrong>> {
    let sources = table("sources.csv")?.read(&SourceRow::COLUMNS, SourceRow::read)?;
    let known: BTreeSet<&str> = sources.iter().map(|source| source.id.as_str()).collect();
    let regions = table("regions.csv")?.read(&RegionRow::COLUMNS, |row| {
        let region = RegionRow::read(row)?;
        cited_are_known(&region.cited, &known).map_err(|what| row.wrong(what))?;
        Ok(region)
    })?;
    let mut places: BTreeSet<&str> = regions.iter().map(|region| region.id.as_str()).collect();
    places.insert("anywhere");
    let rows = table("ranges.csv")?.read(&RangeRow::COLUMNS, |row| {
        let range = RangeRow::read(row)?;
        if !places.contains(range.region.as_str()) {
            return Err(
                row.wrong(format!("the region “{}” stands in no row of regions.csv", range.region))
            );
        }
        cited_are_known(&range.cited, &known).map_err(|what| row.wrong(what))?;
        Ok(range)
    })?;
    no_two("sources.csv", sources.iter().map(|source| source.id.as_str()))?;
    no_two("regions.csv", regions.iter().map(|region| region.id.as_str()))?;
    no_two("ranges.csv", rows.iter().map(|range| range.id.as_str()))?;
    let mut files = vec![
        ("sources.rs", register(&sources)),
        ("regions.rs", regions_of(&regions)),
        ("ranges.rs", ranges(&rows)),
    ];
    files.extend(tables::all(&known)?);
    Ok(files)
}

fn register(sources: &[SourceRow]) -> String {
    let mut code = String::new();
    for source in sources {
        let SourceRow { id, title, place, about, .. } = source;
        let name = shouted(id);
        code += &format!(
            "/// {about}\npub static {name}: Source = Source {{ id: {id:?}, title: {title:?}, place: {place:?} }};\n"
        );
    }
    let names: Vec<String> =
        sources.iter().map(|source| format!("&{}", shouted(&source.id))).collect();
    code += &format!("static ALL: &[&Source] = &[{}];\n", names.join(", "));
    let read: Vec<String> =
        sources.iter().map(|source| format!("({:?}, {:?})", source.id, source.read)).collect();
    code += &format!("static READ: &[(&str, &str)] = &[{}];\n", read.join(", "));
    code
}

fn ranges(rows: &[RangeRow]) -> String {
    let mut shared = Shared::default();
    let mut code = String::from("static ALL: &[Scheme] = &[\n");
    for row in rows {
        code += &scheme(row, &mut shared);
    }
    code += "];\n";
    shared.code + &code
}

fn regions_of(rows: &[RegionRow]) -> String {
    let mut code = String::from("static ALL: &[Region] = &[\n");
    for row in rows {
        let RegionRow { id, name, near, phosphorus, cations, salt_ph, clues, cited } = row;
        let methods = |list: &[_]| {
            let items: Vec<String> = list.iter().map(|kind| format!("Method::{kind:?}")).collect();
            items.join(", ")
        };
        let citations: Vec<String> = cited.iter().map(citation).collect();
        code += &format!(
            "Region {{ id: {id:?}, name: {name:?}, near: &{near:?}, phosphorus: &[{}], \
             cations: &[{}], salt_ph: {salt_ph}, clues: &{clues:?}, citations: &[{}] }},\n",
            methods(phosphorus),
            methods(cations),
            citations.join(", ")
        );
    }
    code + "];\n"
}

fn scheme(row: &RangeRow, shared: &mut Shared) -> String {
    let methods = shared.kinds("Method", &row.methods);
    let [plants, judges, second] =
        [&row.plants, &row.judges, &row.second].map(|list| shared.kinds("PlantGroup", list));
    let rungs: Vec<String> = row.steps.iter().map(rung).collect();
    let rungs = shared.list("Rung", &rungs.join(", "));
    let ends: Vec<f64> = row.steps.iter().filter_map(|step| step.up_to).collect();
    let textures = shared.kinds("Texture", &row.soils.textures);
    let within: Vec<String> = row
        .soils
        .within
        .iter()
        .map(|(of, above, up_to)| {
            format!("(Property::{of:?}, {}, {})", number(*above), number(*up_to))
        })
        .collect();
    let within = shared.list("(Property, f64, f64)", &within.join(", "));
    let soils = format!("Soils {{ textures: {textures}, within: {within} }}");
    let oxide = match row.oxide {
        None => "None".into(),
        Some(oxide) => format!("Some(Oxide::{oxide:?})"),
    };
    let citations: Vec<String> = row.cited.iter().map(citation).collect();
    let citations = shared.list("Citation", &citations.join(", "));
    let meaning =
        if row.meaning.is_empty() { "NO_CHANCE".into() } else { format!("{:?}", row.meaning) };
    let RangeRow { id, region, property, unit, printed_to, note, .. } = row;
    format!(
        "Scheme {{ id: named({id:?}), region: {region:?}, property: Property::{property:?}, \
         methods: {methods}, soils: {soils}, unit: Unit::{unit:?}, oxide: {oxide}, \
         steps: Steps({rungs}, &{ends:?}), printed_to: {printed_to:?}, plants: {plants}, \
         judges: {judges}, second: {second}, citations: {citations}, meaning: {meaning}, \
         note: {note:?} }},\n"
    )
}

fn rung(step: &StepRow) -> String {
    let StepRow { word, level, inclusive, .. } = step;
    format!("Rung {{ word: {word:?}, level: Level::{level:?}, inclusive: {inclusive} }}")
}
