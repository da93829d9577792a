//! Reads the engine's own source text for what rests on which publication:
//! which items hold numbers, and which publications they name, in which grade.

use std::path::Path;

/// The words of the code that grade a citation, as `SOURCE.opened()`.
pub const GRADES: [&str; 5] = ["opened", "second_hand", "derived", "from_memory", "unsourced"];

/// A constant, table or function, with its doc comment.
pub struct Item {
    /// The file, from `engine/src`, with `/`.
    pub file: String,
    /// Its name in the code.
    pub name: String,
    /// Whether it is a constant or a table, and no function.
    pub is_table: bool,
    /// Its doc comment.
    pub doc: String,
    /// Its text, without comments.
    pub text: String,
}

/// One naming of a publication in the code.
pub struct Cited {
    /// The publication's name in the code.
    pub source: String,
    /// The grade, one of [`GRADES`].
    pub grade: &'static str,
    /// What rests on it: a scheme's or a rule's own id, else the item's name.
    pub what: String,
    /// The file it stands in.
    pub file: String,
}

impl Item {
    /// The publications this item names.
    pub fn cited(&self) -> Vec<Cited> {
        let mut found = Vec::new();
        let mut what = self.name.clone();
        let mut before = "";
        for line in self.text.lines() {
            let is_id = |id: &&str| !id.is_empty() && id.chars().all(|c| is_word(c) || c == '-');
            let after = |key| line.split_once(key).map(|(_, rest)| rest);
            // The first of what a call is given may stand on a line of its own.
            let first = line.trim_start().strip_prefix('"').filter(|_| before.ends_with('('));
            let own = [after("id: \""), after("name: \""), after("(\""), first];
            let id = |rest: &str| rest.split('"').next().filter(is_id).map(str::to_string);
            if let Some(id) = own.into_iter().flatten().find_map(id) {
                what = id;
            }
            before = line;
            for grade in GRADES {
                for (at, _) in line.match_indices(&format!(".{grade}()")) {
                    let start = line[..at].rfind(|c| !is_word(c)).map_or(0, |i| i + 1);
                    found.push(Cited {
                        source: line[start..at].to_string(),
                        grade,
                        what: what.clone(),
                        file: self.file.clone(),
                    });
                }
            }
        }
        found
    }

    /// Whether its text holds a number: digits that are no part of a name, a
    /// type (`[Step; 4]`) or a text.
    pub fn holds_a_number(&self) -> bool {
        let value = self.text.split_once(" = ").map_or("", |(_, value)| value);
        let mut before = ' ';
        let mut quoted = false;
        for c in value.chars() {
            if c == '"' && before != '\\' {
                quoted = !quoted;
            }
            if c.is_ascii_digit() && !quoted && !is_word(before) {
                return true;
            }
            before = c;
        }
        false
    }

    /// Whether it says itself what it rests on: a graded publication, or in
    /// its doc comment a source, or that it is a choice or common practice.
    pub fn says_its_ground(&self) -> bool {
        let doc = self.doc.to_lowercase();
        !self.cited().is_empty()
            || ["source:", "our choice", "common practice"].iter().any(|word| doc.contains(word))
    }

    /// Whether its text names another item.
    pub fn names(&self, other: &str) -> bool {
        self.text.match_indices(other).any(|(at, _)| {
            !self.text[..at].ends_with(is_word)
                && !self.text[at + other.len()..].starts_with(is_word)
        })
    }
}

fn is_word(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_'
}

/// Every item of the engine, in the order of files; tests are left out.
pub fn items(engine_src: &Path) -> Vec<Item> {
    let mut files = Vec::new();
    list(engine_src, &mut files);
    files.sort();
    files
        .iter()
        .flat_map(|path| {
            let text = std::fs::read_to_string(path).unwrap_or_default();
            let file = path.strip_prefix(engine_src).unwrap_or(path);
            items_of(&file.to_string_lossy().replace('\\', "/"), &text)
        })
        .collect()
}

/// What each row of the facts in a folder names: `id:grade`, anywhere in it.
pub fn rows(facts: &Path) -> Vec<Cited> {
    let mut files: Vec<_> =
        std::fs::read_dir(facts).into_iter().flatten().flatten().map(|e| e.path()).collect();
    files.sort();
    let mut found = Vec::new();
    for path in files {
        let file = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        for row in std::fs::read_to_string(&path).unwrap_or_default().lines() {
            let what = row.split(',').next().unwrap_or_default();
            for (source, grade) in row.split([',', ';', '"']).filter_map(|p| p.split_once(':')) {
                let grade = GRADES.into_iter().find(|name| name.replace('_', "-") == grade.trim());
                found.extend(grade.map(|grade| Cited {
                    source: name(source.trim()),
                    grade,
                    what: what.into(),
                    file: format!("facts/{file}"),
                }));
            }
        }
    }
    found
}

fn list(folder: &Path, files: &mut Vec<std::path::PathBuf>) {
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            list(&path, files);
        } else if path.extension().is_some_and(|e| e == "rs") {
            files.push(path);
        }
    }
}

fn items_of(file: &str, text: &str) -> Vec<Item> {
    let mut items: Vec<Item> = Vec::new();
    let mut doc = String::new();
    for line in text.lines() {
        if line.trim() == "#[cfg(test)]" {
            break;
        }
        let bare = line.trim_start();
        let depth = line.len() - bare.len();
        if let Some(words) = bare.strip_prefix("///") {
            doc.push_str(words);
            doc.push('\n');
            continue;
        }
        if bare.starts_with("//") || bare.starts_with("#[") {
            continue;
        }
        // Items of a file, and those of an `impl` block, one step in.
        if let Some((name, is_table)) = begins(bare).filter(|_| depth <= 4) {
            let doc = std::mem::take(&mut doc);
            items.push(Item { file: file.into(), name, is_table, doc, text: String::new() });
        }
        if !bare.is_empty() && begins(bare).is_none() {
            // A doc comment of a field belongs to the item it stands in.
            if let Some(item) = items.last_mut() {
                item.doc.push_str(&std::mem::take(&mut doc));
            }
            doc.clear();
        }
        if let Some(item) = items.last_mut() {
            item.text.push_str(line);
            item.text.push('\n');
        }
    }
    items
}

/// The name of the item that a line begins, and whether it is a table.
fn begins(line: &str) -> Option<(String, bool)> {
    let mut rest = line;
    for lead in ["pub(crate) ", "pub(super) ", "pub "] {
        rest = rest.strip_prefix(lead).unwrap_or(rest);
    }
    let (is_table, after) = if let Some(after) = rest.strip_prefix("const fn ") {
        (false, after)
    } else if let Some(after) = rest.strip_prefix("fn ") {
        (false, after)
    } else if let Some(after) = rest.strip_prefix("const ") {
        (true, after)
    } else if let Some(after) = rest.strip_prefix("static ") {
        (true, after)
    } else {
        // Kinds of items without numbers: they end the item before them.
        let kinds = ["struct ", "enum ", "impl ", "impl<", "trait ", "mod ", "use ", "type "];
        return kinds.iter().any(|k| rest.starts_with(k)).then(|| (String::new(), false));
    };
    let name: String = after.chars().take_while(|c| is_word(*c)).collect();
    Some((name, is_table))
}

/// A publication's name in the code, from its id.
pub fn name(id: &str) -> String {
    id.to_uppercase().replace('-', "_")
}
