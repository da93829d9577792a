//! An open exchange file in XML.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| emberloam_fuzz::file(&[b"<?xml version=\"1.0\"?>\n<ModusResult>", bytes].concat()));
