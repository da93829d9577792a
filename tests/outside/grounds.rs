//! Every check here names what it rests on.

use std::fs;
use std::path::Path;

/// What the lines over a test say.
fn said_over(lines: &[&str], test: usize) -> String {
    let above = lines[..test].iter().rev().map(|line| line.trim());
    let doc = above.take_while(|line| line.starts_with("///") || line.starts_with("#["));
    let mut doc: Vec<&str> = doc.map(|line| line.trim_start_matches('/').trim()).collect();
    doc.reverse();
    doc.join(" ")
}

/// Whether it names a source, or owns to be a second copy, and says how well that was read.
fn names_a_source(said: &str) -> bool {
    let grades = ["opened", "second-hand", "derived", "from memory"];
    ["Source:", "Double entry:"].iter().any(|word| said.contains(word))
        && grades.iter().any(|grade| said.contains(grade))
}

/// Source: the files of this folder as they stand (opened).
#[test]
fn every_check_names_its_source_or_is_marked_as_double_entry() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("outside");
    let (mut all, mut without) = (0, Vec::new());
    for entry in fs::read_dir(folder).expect("the folder of these checks") {
        let path = entry.expect("an entry").path();
        if path.extension().is_none_or(|end| end != "rs") {
            continue;
        }
        let text = fs::read_to_string(&path).expect("a source");
        let lines: Vec<&str> = text.lines().collect();
        for (at, _) in lines.iter().enumerate().filter(|(_, line)| line.trim() == "#[test]") {
            all += 1;
            if !names_a_source(&said_over(&lines, at)) {
                let test = lines[at + 1..].iter().find(|line| line.contains("fn ")).unwrap_or(&"");
                without.push(format!("{}: {}", path.display(), test.trim()));
            }
        }
    }
    assert!(all > 150, "only {all} checks were found");
    assert!(without.is_empty(), "{} of {all}:\n{}", without.len(), without.join("\n"));
}

/// Source: one line of each kind, by hand (derived).
#[test]
fn a_check_without_a_source_is_found() {
    let over = |doc: &str| {
        let text = format!("fn other() {{}}\n\n{doc}\n#[test]\nfn check() {{}}");
        let lines: Vec<&str> = text.lines().collect();
        let test = lines.iter().position(|line| *line == "#[test]").unwrap();
        names_a_source(&said_over(&lines, test))
    };
    assert!(over("/// Source: a publication (opened)."));
    assert!(over("/// It holds.\n/// Double entry: a table,\n/// second page (second-hand)."));
    assert!(!over("/// It holds."));
    assert!(!over("/// Source: common practice, no source."));
    assert!(!over(""));
}
