//! Limits of quality standards for biochar, a table a standard.

use std::collections::BTreeSet;

use crate::facts::{LimitRow, Wrong};
use crate::shared::{citations, rows};

const FILE: &str = "limits.csv";

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<LimitRow> = rows(FILE, known)?;
    // The rows of a standard stand together, in the order a reader sees them.
    let standards: Vec<&[LimitRow]> =
        rows.chunk_by(|one, next| one.standard == next.standard).collect();
    let mut code = format!("static TABLES: [Table; {}] = [\n", standards.len());
    for limits in standards {
        let LimitRow { standard, cited, .. } = &limits[0];
        if let Some(other) = limits.iter().find(|limit| limit.cited != *cited) {
            let what = format!("{standard}: {} cites another publication", other.figure.name());
            return Err(vec![Wrong { file: FILE.into(), line: 1, what }]);
        }
        let limits: Vec<String> = limits
            .iter()
            .map(|row| format!("(CertificateItem::{:?}, Limit::{:?})", row.figure, row.limit))
            .collect();
        code += &format!(
            "Table {{ name: {standard:?}, citations: {}, limits: &[{}] }},\n",
            citations(cited),
            limits.join(", ")
        );
    }
    Ok(code + "];\n")
}
