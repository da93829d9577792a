//! Pages to text; the parts of a sheet too wide for one page side by side.

use super::table::{Row, is_result};

/// The text of all pages.
pub(super) fn text(pages: Vec<Vec<Row>>, _notes: &mut Vec<String>) -> String {
    let mut text = String::new();
    for (number, rows) in (1..).zip(&pages) {
        text.push_str(&format!("[page {number}]\n"));
        for row in rows {
            text.push_str(row.cells.join("\t").trim_end_matches('\t'));
            text.push('\n');
        }
    }
    text
}
