//! A case: the answers of a person, from a saved file or from a link.
#![no_main]

use emberloam_engine::Case;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    if let Ok(mut case) = serde_json::from_slice::<Case>(bytes) {
        const REPORT: &[u8] = b"pH 6.1\nP 18 ppm Mehlich-3\nK 120 ppm\nCa 900 ppm\nCEC 8\nNO3-N 22 ppm";
        let grid = emberloam_engine::report::open(REPORT).expect("a sound report");
        case.report = emberloam_engine::report::read(&grid).expect("a sound report");
        emberloam_fuzz::case(case, "");
    }
});
