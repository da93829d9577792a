//! Weighs a built page as a web server would send it.

use std::path::Path;

use crate::build::is_kept;
use crate::files;

/// What may weigh how much, in bytes of brotli.
const BOX_BUDGET: usize = 19_600;
const ANSWER_BUDGET: usize = 621_000;
/// What every visitor keeps offline; a language, the trial and the licences count apart.
const KEPT_BUDGET: usize = 1_528_700;

/// As a host would store it once.
const BEST: i32 = 11;

/// What a file is first needed for.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Needed {
    /// To read the empty page and to paste into its box.
    Box,
    /// To answer what was pasted.
    Answer,
    /// For what follows the answer, and to be kept offline.
    Later,
}

/// Prints the weight of every file and of what is fetched together.
///
/// # Errors
/// When something is over its budget.
pub(crate) fn weigh(dist: &Path) -> Result<(), String> {
    let (mut to_box, mut to_answer, mut kept) = (0, 0, 0);
    println!(
        "{:>9}  {:>9}  bytes plain and as brotli (1 the box, 2 the answer)",
        "plain", "brotli"
    );
    for (name, content) in files::all(dist)? {
        let packed = files::packed(&content, BEST)?.len();
        let needed = needed(&name);
        if is_kept(&name) {
            kept += packed;
        }
        let mark = match needed {
            Needed::Box => "1",
            Needed::Answer => "2",
            Needed::Later => " ",
        };
        to_box += if needed == Needed::Box { packed } else { 0 };
        to_answer += if needed == Needed::Later { 0 } else { packed };
        println!("{:>9}  {packed:>9}  {mark} {name}", content.len());
    }
    println!("To paste into the box:   {to_box} of {BOX_BUDGET} bytes");
    println!("Before the first answer: {to_answer} of {ANSWER_BUDGET} bytes");
    println!("Kept offline:            {kept} of {KEPT_BUDGET} bytes");
    if kept == 0 {
        return Err(format!("No built page in {}. Run `cargo run -- build`.", dist.display()));
    }
    if to_box > BOX_BUDGET || to_answer > ANSWER_BUDGET || kept > KEPT_BUDGET {
        return Err("The page is heavier than its budget.".to_owned());
    }
    Ok(())
}

/// What a file is first needed for. Other icons and anything loaded on first use are only fetched
/// to be kept offline.
fn needed(name: &str) -> Needed {
    const BOX: [&str; 7] = [
        "index.html",
        "language.js",
        "boot.js",
        "files.js",
        "look.js",
        "manifest.webmanifest",
        "icons/mark.svg",
    ];
    // Imported by app.js is later.js; what it fetches comes once the page stands.
    const ANSWER: [&str; 4] = ["app.js", "app_bg.wasm", "later.js", "service-worker.js"];
    if BOX.contains(&name) || name.starts_with("css/") {
        Needed::Box
    } else if ANSWER.contains(&name) || name.starts_with("snippets/") {
        // Snippets are scripts of libraries that app.js imports.
        Needed::Answer
    } else {
        Needed::Later
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn packing_shortens_what_repeats_and_keeps_its_content() {
        let content = b"pH 6.5 ".repeat(1000);
        let len = files::packed(&content, BEST).unwrap().len();
        assert!(len < 100, "{len}");
        assert!(len > 0);
    }

    #[test]
    fn what_a_page_fetches_is_needed_in_turn() {
        for name in ["index.html", "css/parts.css", "boot.js"] {
            assert_eq!(needed(name), Needed::Box, "{name}");
        }
        for name in ["app.js", "app_bg.wasm", "later.js", "snippets/x/inline0.js"] {
            assert_eq!(needed(name), Needed::Answer, "{name}");
        }
        for name in ["icons/mark-512.png", "opener_bg.wasm", "open-worker.js", "split_later.wasm"] {
            assert_eq!(needed(name), Needed::Later, "{name}");
        }
    }
}
