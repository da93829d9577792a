//! A file of saved reports.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    for (text, answers) in emberloam_app::arriving::shelf(&String::from_utf8_lossy(bytes)) {
        emberloam_fuzz::kept(&text, answers);
    }
});
