//! `cargo run -q -p emberloam-engine --example sources`
//!
//! Prints every publication in the register: its title, where it is found,
//! and what rests on it, by the grade of the reading.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "this reads the engine's own source text and prints"
)]

#[allow(dead_code, reason = "the audit of the register uses the rest")]
mod scan;

use std::io::Write;
use std::path::Path;

use emberloam_engine::sources::all_sources;

fn main() {
    let items = scan::items(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"));
    let names = scan::names(&items);
    let cited: Vec<scan::Cited> = items.iter().flat_map(scan::Item::cited).collect();
    let mut out = std::io::stdout().lock();
    for source in all_sources() {
        let name = names.iter().find(|(_, id)| id == source.id).map(|(name, _)| name.as_str());
        // Ignored: a reader that has seen enough, such as `head`, may hang up.
        let _ = writeln!(out, "{}\n  {}", source.title, source.place);
        for grade in scan::GRADES {
            let mut rests: Vec<String> = cited
                .iter()
                .filter(|c| Some(c.source.as_str()) == name && c.grade == grade)
                .map(|c| format!("{} ({})", c.what, c.file))
                .collect();
            rests.dedup();
            if !rests.is_empty() {
                let _ = writeln!(out, "  {}: {}", grade.replace('_', " "), rests.join(", "));
            }
        }
    }
}
