//! Usual analyses of what biochar is charged with.

use std::collections::BTreeSet;

use crate::facts::{AnalysisRow, Wrong};
use crate::shared::{band, citations, one_each, rows};

const FILE: &str = "analyses.csv";

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows = one_each(FILE, rows(FILE, known)?, |row: &AnalysisRow| row.source)?;
    let maybe = |of: Option<_>| of.map_or("None".into(), |of| format!("Some({})", band(of)));
    let three = |of: [_; 3]| format!("[{}]", of.map(band).join(", "));
    let mut code = format!("static ANALYSES: [Analysis; {}] = [\n", rows.len());
    for row in rows {
        let AnalysisRow { phosphorus_works, ammonium, dissolved, .. } = row;
        code += &format!(
            "Analysis {{ density: {}, label: {}, more: {}, mineral: {}, \
             phosphorus_works: {phosphorus_works:?}, ammonium: {ammonium:?}, \
             dissolved: {dissolved:?}, salts: {}, citations: {} }},\n",
            band(row.density),
            three(row.label),
            three(row.more),
            maybe(row.mineral),
            maybe(row.salts),
            citations(&row.cited)
        );
    }
    Ok(code + "];\n")
}
