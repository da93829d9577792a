//! How much plots treated alike usually differ.

use std::collections::BTreeSet;

use crate::facts::{UsualSpreadRow, Wrong};
use crate::shared::{band, citations, rows};

const FILE: &str = "usual_spreads.csv";

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<UsualSpreadRow> = rows(FILE, known)?;
    let mut code = String::from("static SPREADS: &[UsualSpread] = &[\n");
    for (at, UsualSpreadRow { property, cv, cited, note }) in rows.iter().enumerate() {
        if rows[..at].iter().any(|row| row.property == *property) {
            let what = format!("“{}” has two rows", property.name());
            return Err(vec![Wrong { file: FILE.into(), line: at as u64 + 2, what }]);
        }
        code += &format!(
            "UsualSpread {{ property: Property::{property:?}, cv: {}, citations: {}, note: {note:?} }},\n",
            band(*cv),
            citations(cited)
        );
    }
    Ok(code + "];\n")
}
