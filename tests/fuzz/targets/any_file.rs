//! Any bytes: what a file is, is decided by its bytes.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| emberloam_fuzz::file(bytes));
