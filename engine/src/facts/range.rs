//! A published range: the steps of one table for one property.

use super::fact::Fact;
use super::oxide::Oxide;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::quantity::Unit;
use crate::soil::{Level, Method, PlantGroup, Property, SoilGroup, Texture};
use crate::sources::Grade;

/// One table for one property.
#[derive(Clone, Debug, PartialEq)]
pub struct RangeRow {
    /// A kebab-case name, unique among the ranges.
    pub id: String,
    /// The region it was published for.
    pub region: String,
    /// What it judges.
    pub property: Property,
    /// The methods it was made for; empty when the method does not matter.
    pub methods: Vec<Method>,
    /// The unit of its ends.
    pub unit: Unit,
    /// The oxide its ends are counted as; `None` for the element.
    pub oxide: Option<Oxide>,
    /// The smallest difference between printed ends.
    pub printed_to: f64,
    /// The soils it was made for.
    pub soils: SoilsRow,
    /// The steps, low to high.
    pub steps: Vec<StepRow>,
    /// The plants it was made for.
    pub plants: Vec<PlantGroup>,
    /// Those of them that are judged by it where no region is known.
    pub judges: Vec<PlantGroup>,
    /// Those for which it stands as a second opinion where no region is known.
    pub second: Vec<PlantGroup>,
    /// The publications.
    pub cited: Vec<Cited>,
    /// What its steps mean for the plants; empty when the publication says nothing.
    pub meaning: String,
    /// What a reader must know of it.
    pub note: String,
}

/// The soils a table was made for; every soil where nothing is said.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SoilsRow {
    /// Any of these groups.
    pub groups: Vec<SoilGroup>,
    /// Any of these textures.
    pub textures: Vec<Texture>,
    /// And each of these properties above the first number and up to the second.
    pub within: Vec<(Property, f64, f64)>,
}

/// One step: `their word = our level to 25`.
#[derive(Clone, Debug, PartialEq)]
pub struct StepRow {
    /// The table's own word.
    pub word: String,
    /// Our level.
    pub level: Level,
    /// Its upper end; none for the last step.
    pub up_to: Option<f64>,
    /// Whether the upper end belongs to this step (`to`) or to the next (`below`).
    pub inclusive: bool,
}

impl Fact for RangeRow {
    const COLUMNS: &'static [&'static str] = &[
        "id",
        "region",
        "property",
        "method",
        "unit",
        "printed_to",
        "soils",
        "steps",
        "plants",
        "judges",
        "second",
        "sources",
        "meaning",
        "note",
    ];

    fn read(row: Row<'_>) -> Result<RangeRow, Wrong> {
        let (unit, oxide) = unit(row)?;
        let property: Property = row.kind("property")?;
        if let Some(oxide) = oxide
            && !fits(oxide, property)
        {
            return Err(row.wrong(format!("{} is not {}", oxide.symbol(), property.label())));
        }
        let judges = row.kinds("judges")?;
        let second = row.kinds("second")?;
        let mut plants: Vec<PlantGroup> = row.kinds("plants")?;
        for plant in judges.iter().chain(&second) {
            if !plants.contains(plant) {
                plants.push(*plant);
            }
        }
        if plants.is_empty() {
            return Err(row.wrong("no plants: say which it is for, or all"));
        }
        let cited = row.cited()?;
        let mut note = String::from(row.cell("note"));
        // A table that nobody read says so.
        if cited.iter().all(|cited| cited.grade >= Grade::FromMemory)
            && !note.contains("from memory")
        {
            let gap = if note.is_empty() { "" } else { " " };
            note = format!("{note}{gap}Written from memory.");
        }
        Ok(RangeRow {
            id: row.id("id")?,
            region: row.id("region")?,
            property,
            methods: row.kinds("method")?,
            unit,
            oxide,
            printed_to: row.number_or_none("printed_to")?.unwrap_or(0.0),
            soils: soils(row)?,
            steps: steps(row)?,
            plants,
            judges,
            second,
            cited,
            meaning: row.cell("meaning").into(),
            note,
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }

    fn region(&self) -> Option<&str> {
        Some(&self.region)
    }
}

fn fits(oxide: Oxide, property: Property) -> bool {
    let of = match oxide {
        Oxide::P2O5 => Property::Phosphorus,
        Oxide::K2O => Property::Potassium,
        Oxide::MgO => Property::Magnesium,
        Oxide::CaO => Property::Calcium,
        Oxide::SO3 => Property::Sulfur,
    };
    of == property
}

/// A unit, with ` as P2O5` behind it where the numbers count the oxide.
fn unit(row: Row<'_>) -> Result<(Unit, Option<Oxide>), Wrong> {
    let Some((unit, of)) = row.cell("unit").split_once(" as ") else {
        return Ok((row.kind("unit")?, None));
    };
    let oxide = Oxide::ALL.into_iter().find(|oxide| oxide.symbol() == of.trim());
    let oxide = oxide.ok_or_else(|| {
        row.wrong(format!("“{of}” is no oxide; it is one of: P2O5, K2O, MgO, CaO"))
    })?;
    Ok((row.named(unit.trim())?, Some(oxide)))
}

pub(super) fn soils(row: Row<'_>) -> Result<SoilsRow, Wrong> {
    let mut soils = SoilsRow::default();
    for part in row.list("soils") {
        match part.split_once(' ') {
            None => match SoilGroup::ALL.into_iter().find(|group| group.name() == part) {
                Some(group) => soils.groups.push(group),
                None => soils.textures.push(row.named(part)?),
            },
            Some((property, ends)) => {
                let (above, up_to) = stretch(row, ends)?;
                if above >= up_to {
                    return Err(row.wrong(format!("“{part}” holds no soil")));
                }
                soils.within.push((row.named(property)?, above, up_to));
            }
        }
    }
    Ok(soils)
}

/// `15 to 35`, `above 35`, `up to 15`.
fn stretch(row: Row<'_>, ends: &str) -> Result<(f64, f64), Wrong> {
    let end = |text: &str| row.parse("soils", text.trim());
    if let Some(from) = ends.strip_prefix("above ") {
        Ok((end(from)?, f64::INFINITY))
    } else if let Some(to) = ends.strip_prefix("up to ") {
        Ok((f64::NEG_INFINITY, end(to)?))
    } else if let Some((from, to)) = ends.split_once(" to ") {
        Ok((end(from)?, end(to)?))
    } else {
        Err(row.wrong(format!(
            "“{ends}” under “soils”: write textures, or as: clay 15 to 35, clay above 35"
        )))
    }
}

fn steps(row: Row<'_>) -> Result<Vec<StepRow>, Wrong> {
    let cell = row.some("steps")?;
    let steps: Vec<StepRow> =
        cell.split('|').map(|text| step(row, text.trim())).collect::<Result<_, _>>()?;
    let Some((last, closed)) = steps.split_last().filter(|(_, closed)| !closed.is_empty()) else {
        return Err(row.wrong("a table has two steps or more"));
    };
    if last.up_to.is_some() {
        return Err(row.wrong(format!("“{}” is the last step: leave its end out", last.word)));
    }
    let ends: Vec<f64> = closed.iter().filter_map(|step| step.up_to).collect();
    if ends.len() < closed.len() {
        return Err(row.wrong("a step before the last has no end"));
    }
    if ends.windows(2).any(|two| two[0] >= two[1]) {
        return Err(row.wrong("the ends don't rise from step to step"));
    }
    if steps.windows(2).any(|two| two[0].level > two[1].level) {
        return Err(row.wrong("a level stands after a higher one"));
    }
    Ok(steps)
}

/// `low = low to 25`, `deficient = low below 25`, `high = high`.
fn step(row: Row<'_>, text: &str) -> Result<StepRow, Wrong> {
    let (word, rest) = text.rsplit_once('=').ok_or_else(|| {
        row.wrong(format!("“{text}” is no step; write it as: their word = low to 25"))
    })?;
    let mut parts = rest.split_whitespace();
    let level = row.named(parts.next().unwrap_or_default())?;
    let (up_to, inclusive) = match (parts.next(), parts.next(), parts.next()) {
        (None, ..) => (None, true),
        (Some("to"), Some(end), None) => (Some(row.parse("steps", end)?), true),
        (Some("below"), Some(end), None) => (Some(row.parse("steps", end)?), false),
        _ => {
            return Err(
                row.wrong(format!("“{text}” ends in neither “to” nor “below” and a number"))
            );
        }
    };
    Ok(StepRow { word: word.trim().into(), level, up_to, inclusive })
}
