//! Lines from a mix of soil and water to saturated paste.

use std::collections::BTreeSet;

use crate::facts::{SaltLineRow, Wrong};
use crate::shared::{citation, rows};

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<SaltLineRow> = rows("salt_lines.csv", known)?;
    let mut code = format!("static LINES: [Line; {}] = [\n", rows.len());
    for SaltLineRow { method, grain, slope, intercept, cited } in &rows {
        code += &format!(
            "Line {{ method: Method::{method:?}, grain: Grain::{grain:?}, slope: {slope:?}, \
             intercept: {intercept:?}, citation: {} }},\n",
            citation(&cited[0])
        );
    }
    Ok(code + "];\n")
}
