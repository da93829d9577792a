//! The register of publications: nothing in it is idle, and no number stands without a ground.

use std::path::{Path, PathBuf};

use emberloam_engine::sources::all_sources;

#[path = "../../engine/examples/sources/scan.rs"]
#[allow(dead_code, reason = "the command line that prints the register uses the rest")]
mod scan;

fn engine(folder: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../engine").join(folder)
}

fn items() -> Vec<scan::Item> {
    scan::items(&engine("src"))
}

/// The rooms whose numbers are facts or choices about soil.
const ROOMS: [&str; 9] = [
    "bag/",
    "chemistry/",
    "details/",
    "plan/",
    "quantity/",
    "ranges/",
    "season/",
    "soil/",
    "survey/",
];

#[test]
fn every_publication_is_leaned_on() {
    let items = items();
    let rows = scan::rows(&engine("facts"));
    assert!(rows.len() > 800, "only {} citations in rows", rows.len());
    let idle: Vec<_> = all_sources()
        .filter(|source| {
            let name = scan::name(source.id());
            !items.iter().any(|item| item.names(&name))
                && !rows.iter().any(|cited| cited.source == name)
        })
        .map(|source| source.id())
        .collect();
    assert!(idle.is_empty(), "nothing rests on {idle:?}");
}

#[test]
fn every_number_says_its_ground() {
    let items = items();
    let tables = items.iter().filter(|item| {
        item.is_table
            && item.holds_a_number()
            && ROOMS.iter().any(|room| item.file.starts_with(room))
    });
    let (mut all, mut bare) = (0, Vec::new());
    for table in tables {
        all += 1;
        // What a file's other items cite holds for a number that they name.
        let by_another = || {
            items.iter().any(|item| {
                item.file == table.file && item.names(&table.name) && !item.cited().is_empty()
            })
        };
        if !table.says_its_ground() && !by_another() {
            bare.push(format!("{}: {}", table.file, table.name));
        }
    }
    assert!(all > 150, "only {all} tables were looked at");
    assert!(bare.is_empty(), "{} of {all} say no ground:\n{}", bare.len(), bare.join("\n"));
}

/// A file that its `main.rs` doesn't name is not even compiled.
#[test]
fn no_file_of_checks_is_left_out() {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files = 0;
    for folder in ["outside", "rules", "gardens", "cases", "words"] {
        let main = std::fs::read_to_string(tests.join(folder).join("main.rs")).expect("a main");
        for entry in std::fs::read_dir(tests.join(folder)).expect("a folder of checks") {
            let path = entry.expect("an entry").path();
            let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
            if path.extension().is_some_and(|end| end == "rs") && name != "main" {
                files += 1;
                assert!(main.contains(&format!("mod {name};")), "{} is left out", path.display());
            }
        }
    }
    assert!(files > 40, "only {files} files");
}
