//! The register of publications: nothing in it is idle, and no number stands without a ground.

use std::path::Path;

use emberloam_engine::ranges::{Level, schemes};

#[path = "../../engine/examples/sources/scan.rs"]
#[allow(dead_code, reason = "the command line that prints the register uses the rest")]
mod scan;

fn items() -> Vec<scan::Item> {
    scan::items(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../engine/src"))
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
    let names = scan::names(&items);
    assert!(names.len() > 100, "only {} publications were found", names.len());
    let used = |name: &str| {
        items.iter().any(|item| !item.file.starts_with("sources/") && item.names(name))
    };
    let idle: Vec<_> = names.iter().filter(|(name, _)| !used(name)).collect();
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
        // A table of steps that a scheme names has the scheme's citation.
        let by_scheme = || {
            items.iter().any(|item| {
                item.file == table.file && item.names(&table.name) && !item.cited().is_empty()
                    || item.file == table.file && item.name == "SCHEMES" && item.names(&table.name)
            })
        };
        if !table.says_its_ground() && !by_scheme() {
            bare.push(format!("{}: {}", table.file, table.name));
        }
    }
    assert!(all > 150, "only {all} tables were looked at");
    assert!(bare.is_empty(), "{} of {all} say no ground:\n{}", bare.len(), bare.join("\n"));
}

/// Steps rise, the last has no end, and no level comes back after a higher one.
#[test]
fn no_steps_overlap_or_leave_a_gap() {
    let mut count = 0;
    for scheme in schemes() {
        let steps = scheme.steps();
        let what = format!("{:?} {:?}", scheme.property, scheme.citations);
        assert!(!scheme.citations.is_empty(), "{what}: uncited");
        assert!(steps.len() >= 2, "{what}");
        let ends: Vec<Option<f64>> = steps.iter().map(|step| step.up_to).collect();
        assert_eq!(ends.last(), Some(&None), "{what}: the last step must be open");
        let closed: Vec<f64> = ends.iter().flatten().copied().collect();
        assert_eq!(closed.len() + 1, steps.len(), "{what}: a step in the middle is open");
        assert!(closed.windows(2).all(|two| two[0] < two[1]), "{what}: {closed:?}");
        let levels: Vec<Level> = steps.iter().map(|step| step.level).collect();
        assert!(levels.windows(2).all(|two| two[0] <= two[1]), "{what}: {levels:?}");
        count += 1;
    }
    assert!(count > 100, "only {count} schemes");
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
