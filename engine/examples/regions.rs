//! `cargo run -q -p emberloam-engine --example regions`
//!
//! What each region's answer rests on: how many of its ranges, lime columns and dressings were
//! read in their publication or where it is quoted, and how many are from memory.
#![allow(clippy::disallowed_methods, clippy::disallowed_macros, reason = "this prints")]

use std::io::Write;

use emberloam_engine::ranges::schemes;
use emberloam_engine::region::{CropRate, Region, RegionalLime};
use emberloam_engine::sources::{Citation, Grade};

/// `12 read, 3 from memory`; a dash where there is none.
fn told<'a>(rows: impl Iterator<Item = &'a [Citation]>) -> String {
    let (mut read, mut remembered) = (0, 0);
    for citations in rows {
        // The figure's own publication stands first.
        if citations.first().is_none_or(|cited| cited.grade >= Grade::FromMemory) {
            remembered += 1;
        } else {
            read += 1;
        }
    }
    match (read, remembered) {
        (0, 0) => "–".into(),
        (read, 0) => format!("{read} read"),
        (0, remembered) => format!("{remembered} from memory"),
        (read, remembered) => format!("{read} read, {remembered} from memory"),
    }
}

fn main() {
    let mut out = std::io::stdout().lock();
    let mut say = |line: String| {
        // Ignored: a reader that has seen enough, such as `head`, may hang up.
        let _ = writeln!(out, "{line}");
    };
    say("| Region | Ranges | Lime by pH | Dressings |".into());
    say("|---|---|---|---|".into());
    let mut regions: Vec<&Region> = Region::all().iter().collect();
    regions.sort_by_key(|region| region.name);
    for region in regions {
        let ranges = schemes().filter(|s| s.region == region.id).map(|s| s.citations);
        let lime = RegionalLime::all().iter().filter(|t| t.region == region.id);
        let rates = CropRate::all().iter().filter(|r| r.region == region.id);
        say(format!(
            "| {} | {} | {} | {} |",
            region.name,
            told(ranges),
            told(lime.map(|t| t.citations)),
            told(rates.map(|r| r.citations))
        ));
    }
}
