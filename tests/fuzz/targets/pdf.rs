//! A PDF.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| emberloam_fuzz::begins_with(b"%PDF-1.7", bytes));
