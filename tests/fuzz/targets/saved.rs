//! A report that the page saved.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| emberloam_fuzz::file(&[b"{\"emberloam\":1,\"text\":", bytes].concat()));
