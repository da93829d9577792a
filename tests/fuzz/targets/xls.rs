//! An old workbook.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| emberloam_fuzz::begins_with(b"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1", bytes));
