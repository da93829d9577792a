//! Sulfur and trace elements: as what they are given, and how much at the most.

use std::collections::BTreeSet;

use crate::facts::{TraceElementRow, Wrong};
use crate::shared::{citations, rows};

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<TraceElementRow> = rows("trace_elements.csv", known)?;
    let mut code = String::from("static ALL: &[TraceElement] = &[\n");
    for row in &rows {
        let TraceElementRow { element, salt, percent, most, most_of_own, ph, hurts, cited } = row;
        code += &format!(
            "TraceElement {{ element: Dressed::{element:?}, salt: {salt:?}, percent: {percent:?}, \
             most: {most:?}, most_of_own: {most_of_own:?}, ph: {ph:?}, hurts: &{hurts:?}, \
             citations: {} }},\n",
            citations(cited)
        );
    }
    Ok(code + "];\n")
}
