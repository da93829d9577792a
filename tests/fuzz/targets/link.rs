//! A link: its fragment, and one whose packing is sound and whose JSON is anything.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    let text = String::from_utf8_lossy(bytes);
    emberloam_app::arriving::fragment(&text);
    if let Some((text, answers)) = emberloam_app::arriving::link(&text) {
        emberloam_fuzz::kept(&text, answers);
    }
});
