//! Rows of facts as Rust statics.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Debug;

use crate::facts::{
    BaseSaturationRow, Cited, LimeRow, RangeRow, RatingRow, RegionRow, SoilsRow, SourceRow,
    StepRow, Wrong,
};
use crate::table;

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
    let limes = table("lime.csv")?.read(&LimeRow::COLUMNS, |row| {
        let lime = LimeRow::read(row)?;
        if !places.contains(lime.region.as_str()) {
            return Err(
                row.wrong(format!("the region “{}” stands in no row of regions.csv", lime.region))
            );
        }
        cited_are_known(&lime.cited, &known).map_err(|what| row.wrong(what))?;
        Ok(lime)
    })?;
    let shares = table("base_saturation.csv")?.read(&BaseSaturationRow::COLUMNS, |row| {
        let share = BaseSaturationRow::read(row)?;
        cited_are_known(&share.cited, &known).map_err(|what| row.wrong(what))?;
        Ok(share)
    })?;
    let ratings = table("ratings.csv")?.read(&RatingRow::COLUMNS, RatingRow::read)?;
    no_two("lime.csv", limes.iter().map(|lime| lime.id.as_str()))?;
    no_two("sources.csv", sources.iter().map(|source| source.id.as_str()))?;
    no_two("regions.csv", regions.iter().map(|region| region.id.as_str()))?;
    no_two("ranges.csv", rows.iter().map(|range| range.id.as_str()))?;
    let lists = [
        regions.iter().map(|row| &row.cited).collect::<Vec<_>>(),
        rows.iter().map(|row| &row.cited).collect(),
        limes.iter().map(|row| &row.cited).collect(),
        shares.iter().map(|row| &row.cited).collect(),
    ];
    let cited: BTreeSet<&str> =
        lists.iter().flatten().copied().flatten().map(|cited| cited.id.as_str()).collect();
    Ok(vec![
        ("sources.rs", register(&sources) + &cited_by_facts(&cited)),
        ("regions.rs", regions_of(&regions)),
        ("ranges.rs", ranges(&rows)),
        ("ratings.rs", ratings_of(&ratings)),
        ("lime.rs", lime(&limes) + &base_saturation(&shares)),
    ])
}

fn cited_are_known(cited: &[Cited], known: &BTreeSet<&str>) -> Result<(), String> {
    match cited.iter().find(|cited| !known.contains(cited.id.as_str())) {
        Some(cited) => Err(format!("the source “{}” stands in no row of sources.csv", cited.id)),
        None => Ok(()),
    }
}

fn no_two<'a>(file: &str, ids: impl Iterator<Item = &'a str>) -> Result<(), Vec<Wrong>> {
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
fn shouted(id: &str) -> String {
    id.to_uppercase().replace('-', "_")
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

/// The publications that any row of facts rests on.
fn cited_by_facts(cited: &BTreeSet<&str>) -> String {
    let ids: Vec<&str> = cited.iter().copied().collect();
    format!("static CITED: &[&str] = &{ids:?};\n")
}

/// What many rows share stands once.
#[derive(Default)]
struct Shared {
    code: String,
    names: BTreeMap<String, String>,
}

impl Shared {
    /// The name of a list that stands once.
    fn list(&mut self, of: &str, items: &str) -> String {
        let key = format!("&[{of}] = &[{items}]");
        let next = format!("SHARED_{}", self.names.len());
        if let Some(name) = self.names.get(&key) {
            return name.clone();
        }
        self.code += &format!("static {next}: {key};\n");
        self.names.insert(key, next.clone());
        next
    }

    fn kinds<T: Debug>(&mut self, of: &str, kinds: &[T]) -> String {
        let items: Vec<String> = kinds.iter().map(|kind| format!("{of}::{kind:?}")).collect();
        self.list(of, &items.join(", "))
    }
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
    let soils = soils(&row.soils, shared);
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

/// The soils a table is for.
fn soils(soils: &SoilsRow, shared: &mut Shared) -> String {
    let textures = shared.kinds("Texture", &soils.textures);
    let within: Vec<String> = soils
        .within
        .iter()
        .map(|(of, above, up_to)| {
            format!("(Property::{of:?}, {}, {})", number(*above), number(*up_to))
        })
        .collect();
    let within = shared.list("(Property, f64, f64)", &within.join(", "));
    format!("Soils {{ textures: {textures}, within: {within} }}")
}

fn lime(rows: &[LimeRow]) -> String {
    let mut shared = Shared::default();
    let mut code = String::from("static ALL: &[LimeTable] = &[\n");
    for row in rows {
        let uses = shared.kinds("GroundUse", &row.uses);
        let soils = soils(&row.soils, &mut shared);
        let points: Vec<String> =
            row.points.iter().map(|(ph, rate)| format!("({ph:?}, {rate:?})")).collect();
        let citations: Vec<String> = row.cited.iter().map(citation).collect();
        let citations = shared.list("Citation", &citations.join(", "));
        let LimeRow { region, by, target, depth_cm, note, .. } = row;
        code += &format!(
            "LimeTable {{ region: {region:?}, uses: {uses}, soils: {soils}, by: Reckoned::{by:?}, \
             target: {target:?}, points: &[{}], depth_cm: {depth_cm:?}, citations: {citations}, \
             note: {note:?} }},\n",
            points.join(", ")
        );
    }
    code += "];\n";
    shared.code + &code
}

fn base_saturation(rows: &[BaseSaturationRow]) -> String {
    let mut code = String::from("static WANTED: &[WantedSaturation] = &[\n");
    for row in rows {
        let BaseSaturationRow { region, plants, wanted, cited, note, .. } = row;
        let plants: Vec<String> = plants.iter().map(|p| format!("PlantGroup::{p:?}")).collect();
        let citations: Vec<String> = cited.iter().map(citation).collect();
        code += &format!(
            "WantedSaturation {{ region: {region:?}, plants: &[{}], wanted: {wanted:?}, \
             citations: &[{}], note: {note:?} }},\n",
            plants.join(", "),
            citations.join(", ")
        );
    }
    code + "];\n"
}

fn ratings_of(rows: &[RatingRow]) -> String {
    let rows: Vec<String> = rows
        .iter()
        .map(|RatingRow { word, level, region }| {
            format!("Rating {{ word: {word:?}, level: Level::{level:?}, region: {region:?} }}")
        })
        .collect();
    format!("static RATINGS: &[Rating] = &[{}];\n", rows.join(", "))
}

fn number(value: f64) -> String {
    match value {
        f64::INFINITY => "f64::INFINITY".into(),
        f64::NEG_INFINITY => "f64::NEG_INFINITY".into(),
        value => format!("{value:?}"),
    }
}

fn rung(step: &StepRow) -> String {
    let StepRow { word, level, inclusive, .. } = step;
    format!("Rung {{ word: {word:?}, level: Level::{level:?}, inclusive: {inclusive} }}")
}

fn citation(cited: &Cited) -> String {
    format!("Citation {{ source: &{}, grade: Grade::{:?} }}", shouted(&cited.id), cited.grade)
}
