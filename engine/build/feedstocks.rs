//! Usual properties of biochar by its feedstock.

use std::collections::BTreeSet;

use crate::facts::{FeedstockRow, Wrong};
use crate::shared::{band, citations, one_each, rows};

const FILE: &str = "feedstocks.csv";

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows = one_each(FILE, rows(FILE, known)?, |row: &FeedstockRow| row.feedstock)?;
    let mut code = format!("static USUAL: [Usual; {}] = [\n", rows.len());
    for row in &rows {
        code += &format!(
            "Usual {{ bulk_density: {}, ph: {}, liming: {}, cec: {}, water: {}, totals: {:?} }},\n",
            band(row.bulk_density),
            band(row.ph),
            band(row.liming),
            band(row.cec),
            band(row.water),
            row.totals
        );
    }
    let cited: Vec<String> = rows.iter().map(|row| citations(&row.cited)).collect();
    code += "];\n";
    code +=
        &format!("static USUAL_CITED: [&[Citation]; {}] = [{}];\n", rows.len(), cited.join(", "));
    Ok(code)
}
