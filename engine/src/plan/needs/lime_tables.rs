//! The printed lime tables, from `engine/facts/lime_buffers.csv`.

use crate::facts::LimeTable;

/// Lime by a reading and the target pH.
pub(super) struct Table {
    /// The region whose soils it was made for; empty where it goes by its buffer alone.
    pub region: &'static str,
    /// Target pH of the columns.
    pub targets: &'static [f64],
    /// Readings of the rows, tenths, rising.
    pub readings: &'static [u16],
    /// Row after row, tenths of the unit the table is printed in.
    pub rates: &'static [u16],
}

include!(concat!(env!("OUT_DIR"), "/lime_buffers.rs"));

impl Table {
    /// The table of this name.
    pub fn of(table: LimeTable) -> &'static Table {
        &LIME_TABLES[table as usize]
    }
}
