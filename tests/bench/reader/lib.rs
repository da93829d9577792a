//! What the page does with text, without the page.

use emberloam_engine::report;
use wasm_bindgen::prelude::wasm_bindgen;

/// Parts a text into cells; gives how many.
#[wasm_bindgen]
pub fn cells(text: &[u8]) -> usize {
    report::open(text).map_or(0, |grid| grid.rows.iter().map(Vec::len).sum())
}

/// Reads a text as a soil report; gives how many results.
#[wasm_bindgen]
pub fn results(text: &[u8]) -> usize {
    report::open(text)
        .and_then(|grid| report::read(&grid))
        .map_or(0, |report| report.samples.iter().map(|s| s.readings.len()).sum())
}
