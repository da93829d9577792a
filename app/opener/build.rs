//! Gives the module that opens files a memory with an end: a small file that unfolds without end
//! must end its own reading, and not the page's.

/// 512 MB: what the largest workbook that is read takes, four times (see engine/files).
const MOST: usize = 512 << 20;

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    if std::env::var("CARGO_CFG_TARGET_ARCH").is_ok_and(|arch| arch == "wasm32") {
        println!("cargo::rustc-link-arg-cdylib=--max-memory={MOST}");
    }
}
