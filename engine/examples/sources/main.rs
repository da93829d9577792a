//! `cargo run -q -p emberloam-engine --example sources`
//!
//! The audit of citations: every publication in the register with its title, where it is found,
//! how it was read, and what rests on it by the grade of the reading.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "this reads the engine's own source text and prints"
)]

#[allow(dead_code, reason = "the audit of the register uses the rest")]
mod scan;

use std::io::Write;
use std::path::Path;

use emberloam_engine::sources::{all_sources, how_read};

fn main() {
    let engine = Path::new(env!("CARGO_MANIFEST_DIR"));
    let items = scan::items(&engine.join("src"));
    let mut cited: Vec<scan::Cited> = items.iter().flat_map(scan::Item::cited).collect();
    cited.extend(scan::rows(&engine.join("facts")));
    let mut out = std::io::stdout().lock();
    for source in all_sources() {
        let name = scan::name(source.id());
        // Ignored: a reader that has seen enough, such as `head`, may hang up.
        let _ =
            writeln!(out, "{}\n  {}\n  read: {}", source.title(), source.place(), how_read(source));
        for grade in scan::GRADES {
            let mut rests: Vec<String> = cited
                .iter()
                .filter(|c| c.source == name && c.grade == grade)
                .map(|c| format!("{} ({})", c.what, c.file))
                .collect();
            rests.dedup();
            if !rests.is_empty() {
                let _ = writeln!(out, "  {}: {}", grade.replace('_', " "), rests.join(", "));
            }
        }
    }
}
