//! `read FILE` prints what is read from a file, and what is not; with `CELLS=1` its cells first.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "this is a command line: it reads files and prints"
)]

use emberloam_engine::quantity::Unit;
use emberloam_engine::report;
use emberloam_files::open_file;

fn main() {
    let path = std::env::args().nth(1).expect("a file");
    let bytes = std::fs::read(path).expect("a file that can be read");
    let report = open_file(&bytes)
        .map_err(|why| why.to_string())
        .and_then(|opened| report::open(opened.text.as_bytes()).map_err(|why| why.to_string()))
        .inspect(|grid| {
            if std::env::var("CELLS").is_ok() {
                for row in &grid.rows {
                    println!("{:?}", row.iter().map(|c| c.text.as_str()).collect::<Vec<_>>());
                }
            }
        })
        .and_then(|grid| report::read(&grid).map_err(|why| why.to_string()));
    let report = match report {
        Ok(report) => report,
        Err(why) => return println!("{why}"),
    };
    for sample in &report.samples {
        println!("{} {:?} {:?}", sample.name, sample.depth_cm, sample.texture);
        for r in &sample.readings {
            let unit = r.unit.map_or("?", Unit::symbol);
            let method = r.method.as_ref().map_or("", |m| m.value.label());
            let rating = r.rating.as_deref().unwrap_or("");
            let name = r.property.name();
            println!(
                "  {name} {:?} {unit} {method} {rating}  <- {}: {} {:?} {}",
                r.amount,
                r.name,
                r.original,
                r.pairing,
                r.notes.join("; ")
            );
        }
        for unread in &sample.unread {
            println!("  unread {:?}: {}", unread.text, unread.reason);
        }
    }
    for unread in &report.unread {
        println!("unread {:?}: {}", unread.text, unread.reason);
    }
    for note in &report.notes {
        println!("note {note}");
    }
}
