//! How the engine is built: rooms in one order, arrows one way, functions that
//! can be read at a glance.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// The rooms from the ground up. Each may use those before it.
const ROOMS: [&str; 23] = [
    "named",
    "day",
    "sources",
    "quantity",
    "soil",
    "facts",
    "region",
    "question",
    "report",
    "ranges",
    "own",
    "case",
    "season",
    "bag",
    "normalise",
    "chemistry",
    "survey",
    "plan",
    "trial",
    "details",
    "outcome",
    "summary",
    "export",
];

fn engine() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../engine/src")
}

/// Every file of the engine with its module path and its code, without its tests and remarks.
fn files() -> BTreeMap<Vec<String>, String> {
    let mut found = BTreeMap::new();
    let mut folders = vec![engine()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("a folder of the engine") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            let inside = path.strip_prefix(engine()).expect("inside").with_extension("");
            let mut module: Vec<String> =
                inside.iter().map(|part| part.to_string_lossy().into_owned()).collect();
            if module.last().is_some_and(|last| last == "mod") {
                module.pop();
            }
            let text = fs::read_to_string(&path).expect("a file of the engine");
            let code = text.split("#[cfg(test)]").next().unwrap_or_default();
            let code: Vec<&str> =
                code.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
            found.insert(module, code.join("\n"));
        }
    }
    found
}

/// The paths that a text names after `crate::` or `super::`, groups in braces taken apart.
fn paths(code: &str, module: &[String]) -> BTreeSet<Vec<String>> {
    let mut found = BTreeSet::new();
    let parent = &module[..module.len().saturating_sub(1)];
    for (word, base) in [("crate::", &[][..]), ("super::", parent)] {
        for (at, _) in code.match_indices(word) {
            let before = code[..at].chars().next_back();
            if before.is_none_or(|c| !c.is_alphanumeric() && c != '_' && c != ':') {
                take_path(&code[at + word.len()..], base.to_vec(), &mut found);
            }
        }
    }
    found
}

fn take_path(text: &str, mut base: Vec<String>, into: &mut BTreeSet<Vec<String>>) {
    let mut rest = text;
    loop {
        if let Some(group) = rest.strip_prefix('{') {
            for part in parts(group) {
                take_path(part.trim(), base.clone(), into);
            }
            return;
        }
        let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(rest.len());
        if end == 0 {
            return;
        }
        base.push(rest[..end].to_string());
        match rest[end..].strip_prefix("::") {
            Some(next) => rest = next,
            None => {
                into.insert(base);
                return;
            }
        }
    }
}

/// The parts of a group up to its closing brace.
fn parts(group: &str) -> Vec<&str> {
    let (mut depth, mut start, mut all) = (0, 0, Vec::new());
    for (at, sign) in group.char_indices() {
        match sign {
            '{' => depth += 1,
            '}' if depth == 0 => {
                all.push(&group[start..at]);
                return all;
            }
            '}' => depth -= 1,
            ',' if depth == 0 => {
                all.push(&group[start..at]);
                start = at + 1;
            }
            _ => {}
        }
    }
    all
}

fn room(module: &[String]) -> Option<usize> {
    ROOMS.iter().position(|name| module.first().is_some_and(|first| first == name))
}

#[test]
fn every_arrow_between_rooms_points_down() {
    let files = files();
    assert!(files.len() > 100, "only {} files were found", files.len());
    let (mut wrong, mut arrows) = (Vec::new(), 0);
    for (module, code) in &files {
        // The root names all rooms.
        let Some(here) = room(module) else {
            assert_eq!(module, &["lib"], "a room without a place in the order");
            continue;
        };
        for path in paths(code, module) {
            let Some(there) = room(&path) else { continue };
            arrows += usize::from(there != here);
            if there > here {
                wrong.push(format!("{} uses {}", module.join("::"), path.join("::")));
            }
        }
    }
    assert!(arrows > 300, "only {arrows} arrows were read");
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// The file that a path leads to; what a room hands on itself is no file's.
fn file_of<'f>(
    path: &[String],
    files: &'f BTreeMap<Vec<String>, String>,
) -> Option<&'f Vec<String>> {
    (1..=path.len()).rev().find_map(|end| Some(files.get_key_value(&path[..end])?.0))
}

#[test]
fn no_files_use_each_other_in_a_circle() {
    let files = files();
    let mut uses: BTreeMap<&Vec<String>, BTreeSet<&Vec<String>>> = BTreeMap::new();
    for (module, code) in &files {
        let of_file = paths(code, module);
        let to = of_file.iter().filter_map(|path| file_of(path, &files));
        // A room's own front door hands on what its files hold.
        uses.insert(module, to.filter(|to| !module.starts_with(to)).collect());
    }
    let mut circles = Vec::new();
    for start in uses.keys() {
        let mut seen: BTreeSet<&Vec<String>> = BTreeSet::new();
        let mut open: Vec<&Vec<String>> = uses[start].iter().copied().collect();
        while let Some(file) = open.pop() {
            if file.starts_with(start) {
                continue;
            }
            if seen.insert(file) {
                open.extend(uses.get(file).into_iter().flatten().copied());
            }
        }
        if seen.iter().any(|file| uses[*file].contains(start)) {
            circles.push(start.join("::"));
        }
    }
    assert!(circles.is_empty(), "in circles: {circles:?}");
}
