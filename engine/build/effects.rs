//! The parameters of what biochar does.

use std::collections::BTreeSet;

use crate::facts::{EffectRow, Wrong};
use crate::shared::{band, citations, one_each, rows};

const FILE: &str = "effects.csv";

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows = one_each(FILE, rows(FILE, known)?, |row: &EffectRow| row.parameter)?;
    let bands: Vec<String> = rows.iter().map(|row| band(row.band)).collect();
    let cited: Vec<String> = rows.iter().map(|row| citations(&row.cited)).collect();
    Ok(format!(
        "static BANDS: [Band; {n}] = [{}];\nstatic CITED: [&[Citation]; {n}] = [{}];\n",
        bands.join(", "),
        cited.join(", "),
        n = rows.len()
    ))
}
