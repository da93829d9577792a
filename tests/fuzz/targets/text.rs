//! A paste.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| emberloam_fuzz::text(bytes));
