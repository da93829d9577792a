//! What the targets have in common.

use std::borrow::Cow;
use std::io::{Cursor, Write};

use emberloam_engine::{Case, details, export, interpret, report, season, survey};
use emberloam_files::open_file;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

/// The whole way of a file, as the page goes it.
pub fn file(bytes: &[u8]) {
    if let Ok(opened) = open_file(bytes) {
        text(opened.text.as_bytes());
    }
}

/// A file that is taken for what its first bytes say, whatever follows.
pub fn begins_with(mark: &[u8], bytes: &[u8]) {
    file(&[mark, bytes.get(mark.len()..).unwrap_or(&[])].concat());
}

/// The whole way of a pasted text.
pub fn text(bytes: &[u8]) {
    if let Ok(read) = report::open(bytes).and_then(|grid| report::read(&grid)) {
        case(Case { report: read, ..Case::default() }, &String::from_utf8_lossy(bytes));
    }
}

/// A text that was kept or sent, with its answers.
pub fn kept(text: &str, answers: Case) {
    let grid = report::open(text.as_bytes());
    let read = grid.and_then(|grid| report::read(&grid)).unwrap_or_default();
    case(Case { report: read, ..answers }, text);
}

/// From a case on, with the text its report was read from.
pub fn case(case: Case, text: &str) {
    let outcome = interpret(&case);
    let surveyed = survey(Cow::Borrowed(&case));
    details::traits(&surveyed);
    details::windows(&surveyed);
    details::courses(&surveyed, &outcome.plan);
    details::exchange_shift(&surveyed, &outcome.plan);
    details::winter_loss(&surveyed, &outcome.plan);
    season::place(&case.season, case.measures);
    assert!(export::csv(&case.report, &outcome, text).lines().count() > 0);
}

/// A zip whose parts are stored as they are, so that damage reaches the readers.
pub fn zipped(parts: &[(&str, &[u8])]) -> Vec<u8> {
    let mut packed = ZipWriter::new(Cursor::new(Vec::new()));
    let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
    for (name, content) in parts {
        packed.start_file(*name, stored).expect("a part begins");
        packed.write_all(content).expect("memory takes it");
    }
    packed.finish().expect("the zip is written").into_inner()
}
