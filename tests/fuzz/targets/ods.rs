//! The content of an open document sheet, behind the zip.
#![no_main]

use emberloam_fuzz::{file, zipped};

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    file(&zipped(&[
        ("mimetype", b"application/vnd.oasis.opendocument.spreadsheet"),
        ("content.xml", bytes),
    ]));
});
