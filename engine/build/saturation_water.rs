//! Water at saturation.

use std::collections::BTreeSet;

use crate::facts::{SaturationWaterRow, Wrong};
use crate::shared::rows;

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<SaturationWaterRow> = rows("saturation_water.csv", known)?;
    let mut code = format!("static ROWS: [Row; {}] = [\n", rows.len());
    for SaturationWaterRow { texture, clay, water, .. } in &rows {
        code += &format!(
            "Row {{ texture: Texture::{texture:?}, clay: {clay:?}, water: {water:?} }},\n"
        );
    }
    Ok(code + "];\n")
}
