//! A crop: what it is called, and what it wants and bears.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::soil::PlantGroup;

/// A crop.
#[derive(Clone, Debug, PartialEq)]
pub struct CropRow {
    /// A kebab-case name, unique among the crops.
    pub id: String,
    /// What it is called in a sentence.
    pub name: String,
    /// What else people call it, in any language; no other crop has any of these names.
    pub names: Vec<String>,
    /// The plants it is grown among; `None` for a field crop.
    pub group: Option<PlantGroup>,
    /// The pH in water that it does well in, from and to.
    pub ph: Option<(f64, f64)>,
    /// The pH that lime or sulfur is meant to reach.
    pub target_ph: Option<f64>,
    /// Salts of the saturated paste up to which it loses nothing, dS/m, and what each dS/m above
    /// costs, % of the yield.
    pub salts: Option<(f64, f64)>,
    /// The publications.
    pub cited: Vec<Cited>,
}

impl Fact for CropRow {
    const COLUMNS: &'static [&'static str] = &[
        "id",
        "name",
        "names",
        "group",
        "ph_from",
        "ph_to",
        "target_ph",
        "salt_dsm",
        "salt_slope",
        "sources",
    ];

    fn read(row: Row<'_>) -> Result<CropRow, Wrong> {
        let pair =
            |one: &str, other: &str| match (row.number_or_none(one)?, row.number_or_none(other)?) {
                (None, None) => Ok(None),
                (Some(first), Some(second)) => Ok(Some((first, second))),
                _ => Err(row.wrong(format!("“{one}” and “{other}” go together: fill in both"))),
            };
        let (ph, target_ph) = (pair("ph_from", "ph_to")?, row.number_or_none("target_ph")?);
        if let Some((from, to)) = ph {
            if !(3.0 <= from && from < to && to <= 9.0) {
                return Err(row.wrong(format!("no crop wants a pH of {from} to {to}")));
            }
            if let Some(target) = target_ph.filter(|target| !(from..=to).contains(target)) {
                return Err(row.wrong(format!("the target pH {target} is outside {from} to {to}")));
            }
        }
        let salts = pair("salt_dsm", "salt_slope")?;
        if salts.is_some_and(|(threshold, slope)| threshold < 0.0 || slope <= 0.0) {
            return Err(row.wrong("salts take yield away: the slope is above 0"));
        }
        Ok(CropRow {
            id: row.id("id")?,
            name: row.some("name")?.into(),
            names: row.list("names").map(str::to_owned).collect(),
            group: if row.cell("group").is_empty() { None } else { Some(row.kind("group")?) },
            ph,
            target_ph,
            salts,
            cited: row.cited()?,
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }
}

#[cfg(test)]
mod tests {
    use super::super::fact::read_one;
    use super::*;

    #[test]
    fn a_wrong_row_is_named_with_its_line() {
        let row = |target, slope| {
            read_one::<CropRow>(&format!(
                "potato,potato,papa; Kartoffel,root-crops,4.8,6.5,{target},1.7,{slope},maas-1990:opened"
            ))
        };
        let right = row("5.2", "12").unwrap();
        assert_eq!((right.ph, right.salts), (Some((4.8, 6.5)), Some((1.7, 12.0))));
        assert_eq!(right.names, ["papa", "Kartoffel"]);
        let why = row("6.8", "12").unwrap_err();
        assert_eq!(why, "facts.csv, line 7: the target pH 6.8 is outside 4.8 to 6.5");
        let why = row("5.2", "").unwrap_err();
        assert!(why.contains("“salt_dsm” and “salt_slope” go together"), "{why}");
    }
}
