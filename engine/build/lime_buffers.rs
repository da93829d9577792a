//! Printed tables of lime.

use std::collections::BTreeSet;

use crate::facts::{LimeBufferRow, LimeTable, Wrong};
use crate::shared::rows;

const FILE: &str = "lime_buffers.csv";

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<LimeBufferRow> = rows(FILE, known)?;
    let tables = LimeTable::ALL.map(|table| {
        let mut lines: Vec<&LimeBufferRow> = rows.iter().filter(|row| row.table == table).collect();
        lines.sort_by_key(|line| line.reading);
        one_table(table, &lines)
    });
    let tables = tables.into_iter().collect::<Result<Vec<String>, _>>()?;
    Ok(format!("static LIME_TABLES: [Table; {}] = [{}];\n", tables.len(), tables.join(", ")))
}

fn one_table(table: LimeTable, lines: &[&LimeBufferRow]) -> Result<String, Vec<Wrong>> {
    let wrong = |what: &str| {
        let what = format!("{}: {what}", table.name());
        Err(vec![Wrong { file: FILE.into(), line: 1, what }])
    };
    let targets =
        |line: &LimeBufferRow| -> Vec<f64> { line.rates.iter().map(|(ph, _)| *ph).collect() };
    let Some(first) = lines.first() else { return wrong("it has no row") };
    if lines.iter().any(|line| targets(line) != targets(first)) {
        return wrong("its rows are not all for the same target pH");
    }
    if lines.iter().any(|line| line.region != first.region) {
        return wrong("its rows are not all of one region");
    }
    if lines.windows(2).any(|two| two[0].reading == two[1].reading) {
        return wrong("two rows have the same reading");
    }
    let readings: Vec<u16> = lines.iter().map(|line| line.reading).collect();
    let rates: Vec<u16> =
        lines.iter().flat_map(|line| line.rates.iter().map(|(_, lime)| *lime)).collect();
    Ok(format!(
        "Table {{ region: {:?}, targets: &{:?}, readings: &{readings:?}, rates: &{rates:?} }}",
        first.region,
        targets(first)
    ))
}
