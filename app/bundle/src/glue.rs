//! The script that binds a module to the browser, as short as it can be fetched.
//!
//! The binder writes it to be read: with remarks, and each function of the browser under its long
//! name and a hash, which the module holds as well.

use std::collections::BTreeMap;
use std::convert::Infallible;
use std::fs;
use std::path::Path;

use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{ImportSection, Module};
use wasmparser::{ImportSectionReader, Parser, Payload};

/// Shortens the script and the module of `name`.
///
/// # Errors
/// When they do not fit each other.
pub(crate) fn shorten(dist: &Path, name: &str) -> Result<(), String> {
    let script = dist.join(format!("{name}.js"));
    let module = dist.join(format!("{name}_bg.wasm"));
    let bytes = fs::read(&module).map_err(|why| why.to_string())?;
    let text = fs::read_to_string(&script).map_err(|why| why.to_string())?;
    let names = short_names(&bytes, &format!("./{name}_bg.js"))?;
    let text = with_names(&plain(&text), &names)?;
    let mut renamed = Module::new();
    Renamed(names)
        .parse_core_module(&mut renamed, Parser::new(0), &bytes)
        .map_err(|why| why.to_string())?;
    fs::write(&script, text)
        .and_then(|()| fs::write(&module, renamed.finish()))
        .map_err(|why| format!("{name} can't be written: {why}"))
}

/// A short name for each that the module imports from its script.
fn short_names(module: &[u8], script: &str) -> Result<BTreeMap<String, String>, String> {
    let mut names = BTreeMap::new();
    for payload in Parser::new(0).parse_all(module) {
        let Payload::ImportSection(reader) = payload.map_err(|why| why.to_string())? else {
            continue;
        };
        for import in reader.into_imports() {
            let import = import.map_err(|why| why.to_string())?;
            if import.module == script {
                let next = letters(names.len());
                names.entry(import.name.to_owned()).or_insert(next);
            }
        }
    }
    Ok(names)
}

/// `a` to `z`, then `aa` and so on.
fn letters(number: usize) -> String {
    let last = char::from(b'a' + (number % 26) as u8);
    let before = if number < 26 { String::new() } else { letters(number / 26 - 1) };
    format!("{before}{last}")
}

/// A script without remarks and margins.
fn plain(script: &str) -> String {
    let mut in_remark = false;
    let lines = script.lines().map(str::trim).filter(|line| {
        let is_remark = in_remark || line.starts_with("/*") || line.starts_with("//");
        in_remark = (in_remark || line.starts_with("/*")) && !line.ends_with("*/");
        !is_remark && !line.is_empty()
    });
    lines.flat_map(|line| [line, "\n"]).collect()
}

/// The script with each function under its short name.
fn with_names(script: &str, names: &BTreeMap<String, String>) -> Result<String, String> {
    let mut met = 0;
    let mut text = String::with_capacity(script.len());
    for line in script.lines() {
        let named = line.split_once(": ").and_then(|(name, rest)| Some((names.get(name)?, rest)));
        match named {
            Some((short, rest)) => {
                met += 1;
                text.extend([short, ": ", rest]);
            }
            None => text += line,
        }
        text.push('\n');
    }
    if met == names.len() {
        Ok(text)
    } else {
        Err(format!("{met} functions in the script, {} in the module", names.len()))
    }
}

struct Renamed(BTreeMap<String, String>);

impl Reencode for Renamed {
    type Error = Infallible;

    fn parse_import_section(
        &mut self,
        imports: &mut ImportSection,
        section: ImportSectionReader<'_>,
    ) -> Result<(), Error<Self::Error>> {
        for import in section.into_imports() {
            let import = import?;
            let kind = self.entity_type(import.ty)?;
            let name = self.0.get(import.name).map_or(import.name, String::as_str);
            imports.import(import.module, name, kind);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use wasm_encoder::{EntityType, TypeSection};

    use super::*;

    #[test]
    fn names_are_letters_and_no_two_are_alike() {
        assert_eq!([0, 25, 26, 27, 701, 702].map(letters), ["a", "z", "aa", "ab", "zz", "aaa"]);
    }

    #[test]
    fn remarks_and_margins_go_and_code_stays() {
        let script = "/**\n * @returns {any}\n */\n  a() {\n  // why\n    b(\"//c\"); // d\n}\n";
        assert_eq!(plain(script), "a() {\nb(\"//c\"); // d\n}\n");
    }

    #[test]
    fn script_and_module_are_renamed_alike() {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        let mut imports = ImportSection::new();
        imports.import("./x_bg.js", "__wbg_open_0123", EntityType::Function(0));
        imports.import("later", "stays", EntityType::Function(0));
        let mut module = Module::new();
        module.section(&types).section(&imports);
        let dist = std::env::temp_dir().join(format!("emberloam-glue-{}", std::process::id()));
        fs::create_dir_all(&dist).unwrap();
        fs::write(dist.join("x_bg.wasm"), module.finish()).unwrap();
        fs::write(dist.join("x.js"), "  __wbg_open_0123: function() {},\n").unwrap();
        shorten(&dist, "x").unwrap();
        let bytes = fs::read(dist.join("x_bg.wasm")).unwrap();
        let script = fs::read_to_string(dist.join("x.js")).unwrap();
        // A script that lacks one is not let through.
        fs::write(dist.join("x.js"), "none: 1\n").unwrap();
        let refused = shorten(&dist, "x");
        fs::remove_dir_all(&dist).unwrap();
        assert!(refused.is_err());
        assert_eq!(script, "a: function() {},\n");
        wasmparser::validate(&bytes).unwrap();
        assert_eq!(short_names(&bytes, "./x_bg.js").unwrap().keys().collect::<Vec<_>>(), ["a"]);
        assert_eq!(short_names(&bytes, "later").unwrap().keys().collect::<Vec<_>>(), ["stays"]);
    }
}
