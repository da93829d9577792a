//! Levels for metals in soil.

use std::collections::BTreeSet;

use crate::facts::{LeadLevelRow, MetalRow, Wrong};
use crate::shared::{citation, citations, rows, rows_of_regions};

pub fn statics(known: &BTreeSet<&str>, places: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<MetalRow> = rows_of_regions("metals.csv", known, places)?;
    let mut code = format!("static LEVELS: [Level; {}] = [\n", rows.len());
    for MetalRow { metal, whose, set, levels, region, cited } in &rows {
        code += &format!(
            "Level {{ metal: Property::{metal:?}, whose: {whose:?}, set: {set:?}, \
             levels: {levels:?}, region: {region:?}, citations: {} }},\n",
            citations(cited)
        );
    }
    Ok(code + "];\n")
}

/// The levels for lead in turn.
pub fn lead(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let mut rows: Vec<LeadLevelRow> = rows("lead_levels.csv", known)?;
    rows.sort_by_key(|row| row.from);
    let mut code = format!(
        "/// The US levels for lead in turn.\npub static LEAD_LEVELS: [LeadLevel; {}] = [\n",
        rows.len()
    );
    for row in &rows {
        let LeadLevelRow { from, since, screening, with_other_sources, removal, cited } = row;
        code += &format!(
            "LeadLevel {{ from: {from:?}, since: {since:?}, screening: {screening:?}, \
             with_other_sources: {with_other_sources:?}, removal: {removal:?}, citation: {} }},\n",
            citation(&cited[0])
        );
    }
    Ok(code + "];\n")
}
