//! Weighs a built page as a web server would send it.

use std::path::Path;

use crate::build::is_kept;
use crate::files;

/// What the first load may weigh, in bytes of brotli.
const FIRST_LOAD_BUDGET: usize = 630_000;
/// What all that every visitor keeps offline may weigh, in bytes of brotli; a language counts apart.
const KEPT_BUDGET: usize = 1_440_000;

/// Prints the weight of every file and of the whole.
///
/// # Errors
/// When the first load or the whole is over its budget.
pub(crate) fn weigh(dist: &Path) -> Result<(), String> {
    let (mut first_load, mut kept) = (0, 0);
    println!("{:>9}  {:>9}  bytes plain and as brotli (* first load)", "plain", "brotli");
    for (name, content) in files::all(dist)? {
        let packed = packed_len(&content)?;
        let first = is_first_load(&name);
        if is_kept(&name) {
            kept += packed;
        }
        if first {
            first_load += packed;
        }
        println!("{:>9}  {packed:>9}  {}{name}", content.len(), if first { "* " } else { "  " });
    }
    println!("First load:   {first_load} of {FIRST_LOAD_BUDGET} bytes");
    println!("Kept offline: {kept} of {KEPT_BUDGET} bytes");
    if kept == 0 {
        return Err(format!("No built page in {}. Run `cargo run -- build`.", dist.display()));
    }
    if first_load > FIRST_LOAD_BUDGET || kept > KEPT_BUDGET {
        return Err("The page is heavier than its budget.".to_owned());
    }
    Ok(())
}

/// What a browser fetches before the page answers. Other icons and anything
/// loaded on first use are only fetched to be kept offline.
fn is_first_load(name: &str) -> bool {
    const NAMED: [&str; 11] = [
        "index.html",
        "language.js",
        "boot.js",
        "files.js",
        "look.js",
        "app.js",
        "app_bg.wasm",
        // Imported by app.js; what it fetches comes once the page stands.
        "later.js",
        "manifest.webmanifest",
        "service-worker.js",
        "icons/mark.svg",
    ];
    // Snippets are scripts of libraries that app.js imports.
    NAMED.contains(&name) || name.starts_with("css/") || name.starts_with("snippets/")
}

/// The length under brotli at its best setting, as a host would store it once.
fn packed_len(content: &[u8]) -> Result<usize, String> {
    let settings = brotli::enc::BrotliEncoderParams { quality: 11, ..Default::default() };
    let mut packed = Vec::new();
    brotli::BrotliCompress(&mut &content[..], &mut packed, &settings)
        .map_err(|why| format!("brotli failed: {why}"))?;
    Ok(packed.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn packing_shortens_what_repeats_and_keeps_its_content() {
        let content = b"pH 6.5 ".repeat(1000);
        let len = packed_len(&content).unwrap();
        assert!(len < 100, "{len}");
        assert!(len > 0);
    }

    #[test]
    fn first_load_is_what_the_page_fetches_to_answer() {
        for name in
            ["index.html", "css/parts.css", "app_bg.wasm", "later.js", "snippets/x/inline0.js"]
        {
            assert!(is_first_load(name), "{name}");
        }
        let later = [
            "icons/mark-512.png",
            "opener_bg.wasm",
            "opener.js",
            "open-worker.js",
            "split_later.wasm",
        ];
        for name in later {
            assert!(!is_first_load(name), "{name}");
        }
    }
}
