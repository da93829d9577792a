//! A web page, or a table copied from one.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| emberloam_fuzz::file(bytes));
