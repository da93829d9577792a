//! The licences of all that is compiled into the page, as one text.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::process::Command;

use serde_json::Value;

/// The file that is served beside the page.
pub(crate) const FILE: &str = "licences.txt";

/// What the page and its opener are made from.
const ROOTS: [&str; 2] = ["emberloam-app", "emberloam-opener"];

/// A package that is compiled in.
struct Package {
    name: String,
    version: String,
    licence: String,
    place: String,
    /// The texts that came with it.
    texts: Vec<String>,
}

/// What cargo knows of the packages, for what the page is compiled to.
fn metadata(project: &Path) -> Result<Value, String> {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let asked = Command::new(cargo)
        .current_dir(project)
        .args(["metadata", "--format-version", "1", "--locked"])
        .args(["--filter-platform", "wasm32-unknown-unknown"])
        .output()
        .map_err(|why| format!("cargo metadata: {why}"))?;
    if !asked.status.success() {
        return Err(format!("cargo metadata: {}", String::from_utf8_lossy(&asked.stderr)));
    }
    serde_json::from_slice(&asked.stdout).map_err(|why| format!("cargo metadata: {why}"))
}

fn list<'a>(value: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> {
    value[key].as_array().into_iter().flatten()
}

fn word(value: &Value, key: &str) -> String {
    value[key].as_str().unwrap_or_default().to_owned()
}

/// Whether a package only runs while others are compiled.
fn is_macro(package: &Value) -> bool {
    list(package, "targets").any(|target| list(target, "kind").any(|kind| kind == "proc-macro"))
}

/// The ids of all packages that are compiled in.
fn compiled_in(metadata: &Value) -> BTreeSet<String> {
    let packages: BTreeMap<&str, &Value> =
        list(metadata, "packages").filter_map(|p| Some((p["id"].as_str()?, p))).collect();
    let nodes: BTreeMap<&str, &Value> =
        list(&metadata["resolve"], "nodes").filter_map(|n| Some((n["id"].as_str()?, n))).collect();
    let is_root =
        |id: &&&str| packages.get(**id).is_some_and(|p| ROOTS.iter().any(|r| p["name"] == *r));
    let mut left: Vec<&str> = nodes.keys().filter(is_root).copied().collect();
    let mut found = BTreeSet::new();
    while let Some(id) = left.pop() {
        let (Some(package), Some(node)) = (packages.get(id), nodes.get(id)) else { continue };
        if is_macro(package) || !found.insert(id.to_owned()) {
            continue;
        }
        let used =
            list(node, "deps").filter(|dep| list(dep, "dep_kinds").any(|k| k["kind"].is_null()));
        left.extend(used.filter_map(|dep| dep["pkg"].as_str()));
    }
    found
}

/// The packages of others that are compiled in, by name.
fn packages(project: &Path) -> Result<Vec<Package>, String> {
    let metadata = metadata(project)?;
    let ids = compiled_in(&metadata);
    let mut packages = Vec::new();
    for package in list(&metadata, "packages") {
        // What has no source is our own.
        if !ids.contains(&word(package, "id")) || package["source"].is_null() {
            continue;
        }
        let manifest = word(package, "manifest_path");
        let folder = Path::new(&manifest).parent().unwrap_or(project);
        packages.push(Package {
            name: word(package, "name"),
            version: word(package, "version"),
            licence: word(package, "license"),
            place: word(package, "repository"),
            texts: texts(folder)?,
        });
    }
    packages.sort_by(|one, other| (&one.name, &one.version).cmp(&(&other.name, &other.version)));
    Ok(packages)
}

/// The texts of licences in a folder.
fn texts(folder: &Path) -> Result<Vec<String>, String> {
    let trouble = |why: std::io::Error| format!("{} can't be read: {why}", folder.display());
    let mut names = Vec::new();
    for entry in fs::read_dir(folder).map_err(trouble)? {
        let entry = entry.map_err(trouble)?;
        let upper = entry.file_name().to_string_lossy().to_uppercase();
        let is_one = ["LICEN", "COPYING", "UNLICENSE", "NOTICE", "COPYRIGHT"];
        if is_one.iter().any(|begin| upper.starts_with(begin)) && entry.path().is_file() {
            names.push(entry.path());
        }
    }
    names.sort();
    Ok(names.iter().filter_map(|path| fs::read_to_string(path).ok()).collect())
}

/// The licences of all that is compiled in: the packages, then each text once with whom it is of.
///
/// # Errors
/// When cargo can't say what is compiled in, or a package can't be read.
pub(crate) fn text(project: &Path) -> Result<String, String> {
    let mut whole = String::from(
        "Emberloam is compiled together with the packages below, and with the standard library of\n\
         Rust (MIT OR Apache-2.0, The Rust Project Contributors). Emberloam itself: MIT OR Apache-2.0.\n\n",
    );
    let mut each: Vec<(String, String, Vec<String>)> = Vec::new();
    for Package { name, version, licence, place, texts } in packages(project)? {
        whole += &format!("{name} {version}: {licence}  {place}\n");
        for text in texts {
            let words: String = text.split_whitespace().collect::<Vec<_>>().join(" ");
            match each.iter_mut().find(|(known, ..)| *known == words) {
                Some((.., names)) => names.push(name.clone()),
                None => each.push((words, text.trim().to_owned(), vec![name.clone()])),
            }
        }
    }
    for (_, text, mut names) in each {
        names.dedup();
        whole += &format!(
            "\n----------------------------------------\n{}\n\n{text}\n",
            names.join(", ")
        );
    }
    Ok(whole.replace("\r\n", "\n"))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What may be compiled in. Common practice, no source: each lets a program be passed on under
    /// terms of its own, with the licence beside it.
    const ALLOWED: [&str; 13] = [
        "MIT",
        "Apache-2.0",
        "Apache-2.0 WITH LLVM-exception",
        "BSD-1-Clause",
        "BSD-2-Clause",
        "BSD-3-Clause",
        "BSL-1.0",
        "0BSD",
        "ISC",
        "Zlib",
        "Unicode-3.0",
        "Unlicense",
        "CC0-1.0",
    ];
    /// What only builds or tests the page may have these as well; they are not passed on.
    const ALLOWED_TOOLS: [&str; 2] = ["MPL-2.0", "CDLA-Permissive-2.0"];

    /// Whether an SPDX expression can be met by what is allowed.
    fn is_met(expression: &str, allowed: &dyn Fn(&str) -> bool) -> bool {
        let expression = expression.replace('/', " OR ");
        let mut words: Vec<String> = Vec::new();
        for word in expression.replace('(', " ( ").replace(')', " ) ").split_whitespace() {
            words.push(word.to_owned());
        }
        let mut at = 0;
        let met = either(&words, &mut at, allowed);
        met && at == words.len()
    }

    fn either(words: &[String], at: &mut usize, allowed: &dyn Fn(&str) -> bool) -> bool {
        let mut met = both(words, at, allowed);
        while words.get(*at).is_some_and(|word| word == "OR") {
            *at += 1;
            met |= both(words, at, allowed);
        }
        met
    }

    fn both(words: &[String], at: &mut usize, allowed: &dyn Fn(&str) -> bool) -> bool {
        let mut met = one(words, at, allowed);
        while words.get(*at).is_some_and(|word| word == "AND") {
            *at += 1;
            met &= one(words, at, allowed);
        }
        met
    }

    fn one(words: &[String], at: &mut usize, allowed: &dyn Fn(&str) -> bool) -> bool {
        let Some(word) = words.get(*at) else { return false };
        *at += 1;
        if word == "(" {
            let met = either(words, at, allowed);
            *at += 1;
            return met;
        }
        let mut name = word.clone();
        if words.get(*at).is_some_and(|word| word == "WITH") {
            name = format!("{name} WITH {}", words.get(*at + 1).map_or("", String::as_str));
            *at += 2;
        }
        allowed(&name)
    }

    #[test]
    fn an_expression_is_met_as_spdx_says() {
        let allowed = |name: &str| ["MIT", "Apache-2.0 WITH LLVM-exception"].contains(&name);
        for (expression, met) in [
            ("MIT", true),
            ("GPL-3.0", false),
            ("GPL-3.0 OR MIT", true),
            ("GPL-3.0/MIT", true),
            ("GPL-3.0 AND MIT", false),
            ("(MIT OR GPL-3.0) AND MIT", true),
            ("MIT AND (GPL-3.0 OR Apache-2.0 WITH LLVM-exception)", true),
            ("Apache-2.0", false),
            ("", false),
        ] {
            assert_eq!(is_met(expression, &allowed), met, "{expression}");
        }
    }

    #[test]
    fn every_licence_is_allowed() {
        let project = crate::files::project();
        let metadata = metadata(&project).unwrap();
        let inside = compiled_in(&metadata);
        let mut refused = Vec::new();
        let mut count = 0;
        for package in list(&metadata, "packages").filter(|p| !p["source"].is_null()) {
            let compiled = inside.contains(&word(package, "id"));
            count += usize::from(compiled);
            let allowed =
                |name: &str| ALLOWED.contains(&name) || !compiled && ALLOWED_TOOLS.contains(&name);
            let licence = word(package, "license");
            if !is_met(&licence, &allowed) {
                refused.push(format!("{}: {licence:?}", word(package, "name")));
            }
        }
        assert!(count > 30, "only {count} packages were found");
        assert!(refused.is_empty(), "not allowed:\n{}", refused.join("\n"));
    }

    #[test]
    fn the_text_names_each_package_and_holds_each_text_once() {
        let text = super::text(&crate::files::project()).unwrap();
        for name in ["leptos ", "serde_json ", "calamine ", "idb "] {
            assert!(text.contains(&format!("\n{name}")), "{name} is missing");
        }
        assert!(!text.contains("\nproptest "), "what only tests is listed");
        let apache = "TERMS AND CONDITIONS FOR USE, REPRODUCTION, AND DISTRIBUTION";
        let times = text.matches(apache).count();
        assert!((1..30).contains(&times), "{times} times");
    }
}
