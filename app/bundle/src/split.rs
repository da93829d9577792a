//! Cuts the page's program into what shows an answer and what is fetched later.

use std::fs;
use std::path::{Path, PathBuf};

use walrus::ModuleConfig;
use wasm_split_cli_support::{Options, transform};

/// The name of the first piece, bound or not.
pub(crate) const FIRST: &str = "app";

/// Cuts `module` where the app says so, puts the later pieces and the script
/// that fetches them into `dist`, and gives the first piece, still to be bound.
pub(crate) fn split(module: &Path, dist: &Path) -> Result<PathBuf, String> {
    let whole =
        fs::read(module).map_err(|why| format!("{} can't be read: {why}", module.display()))?;
    let first = module.with_file_name(FIRST).with_extension("wasm");
    let script = format!("./{FIRST}.js");
    let mut options = Options::new(&whole);
    options.output_dir = dist;
    options.main_out_path = &first;
    options.main_module = &script;
    options.link_name = "./later.js";
    let pieces = transform(options)
        .map_err(|why| format!("{} can't be cut: {why:#}", module.display()))?
        .split_modules;
    pieces.iter().try_for_each(|piece| slim(piece))?;
    Ok(first)
}

/// Writes a module anew without the names of its functions and the linker's
/// records, and with its numbers in as few bytes as they need: the linker left
/// room to change them.
pub(crate) fn slim(piece: &Path) -> Result<(), String> {
    let mut reader = ModuleConfig::new();
    reader.generate_name_section(false).generate_producers_section(false);
    let slimmed = reader.parse_file(piece).and_then(|mut module| {
        let records = |name: &str| name == "linking" || name.starts_with("reloc.");
        let found: Vec<_> =
            module.customs.iter().filter(|(_, c)| records(c.name())).map(|(id, _)| id).collect();
        for id in found {
            module.customs.delete(id);
        }
        module.emit_wasm_file(piece)
    });
    slimmed.map_err(|why| format!("{} can't be slimmed: {why:#}", piece.display()))
}
