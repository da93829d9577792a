//! Crops: those whose tolerance of salts is held.

use std::collections::{BTreeMap, BTreeSet};

use crate::facts::{CropRow, Wrong};
use crate::shared::rows;

const FILE: &str = "crops.csv";

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<CropRow> = rows(FILE, known)?;
    one_name_one_crop(&rows)?;
    let crops: Vec<String> = rows.iter().filter_map(salt_tolerance).collect();
    Ok(format!(
        "/// The crops whose tolerance is held.\npub static CROPS: [Crop; {}] = [\n{}];\n",
        crops.len(),
        crops.concat()
    ))
}

fn salt_tolerance(row: &CropRow) -> Option<String> {
    let (group, (threshold, slope)) = (row.group?, row.salts?);
    Some(format!(
        "Crop {{ name: {:?}, threshold: {threshold:?}, slope: {slope:?}, \
         group: PlantGroup::{group:?} }},\n",
        row.name
    ))
}

/// A name that two crops share tells neither.
fn one_name_one_crop(rows: &[CropRow]) -> Result<(), Vec<Wrong>> {
    let mut of: BTreeMap<String, &str> = BTreeMap::new();
    let mut wrong = Vec::new();
    for (line, row) in (2..).zip(rows) {
        let names: BTreeSet<String> =
            row.names.iter().chain([&row.name]).map(|name| name.to_lowercase()).collect();
        for name in names {
            if let Some(other) = of.insert(name.clone(), &row.id) {
                let what = format!("“{name}” is a name of {other} too: leave it to one of them");
                wrong.push(Wrong { file: FILE.into(), line, what });
            }
        }
    }
    if wrong.is_empty() { Ok(()) } else { Err(wrong) }
}
