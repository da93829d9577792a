//! Cuts the page's program into what shows an answer and what is fetched later.

use std::fs;
use std::path::{Path, PathBuf};

use walrus::ModuleConfig;
use wasm_split_cli_support::{Options, transform};

use crate::{order, stops};

/// The name of the first piece, bound or not.
pub(crate) const FIRST: &str = "app";

/// What the page's program exports to say that it has stopped.
const TOLD: &str = "stopped";

/// Cuts `module` where the app says so, puts the later pieces and the script
/// that fetches them into `dist`, and gives the first piece, still to be bound.
pub(crate) fn split(module: &Path, dist: &Path) -> Result<PathBuf, String> {
    let whole = shortened(module, Some(TOLD))?;
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
    for piece in &pieces {
        slim(piece)?;
        ordered(piece)?;
    }
    Ok(first)
}

/// Takes out of a module what nothing leads to, without cutting it; it is still to be bound.
pub(crate) fn whole(module: &Path, name: &str) -> Result<PathBuf, String> {
    let linked = shortened(module, None)?;
    let used = module.with_file_name(name).with_extension("wasm");
    let mut options = Options::new(&linked);
    options.output_dir = module.parent().unwrap_or(module);
    options.main_out_path = &used;
    transform(options).map_err(|why| format!("{} can't be read: {why:#}", module.display()))?;
    Ok(used)
}

/// A linked module in which what can only stop is short.
fn shortened(module: &Path, told: Option<&str>) -> Result<Vec<u8>, String> {
    let linked =
        fs::read(module).map_err(|why| format!("{} can't be read: {why}", module.display()))?;
    stops::shorten(&linked, told).map_err(|why| format!("{}: {why}", module.display()))
}

/// Writes a module anew in the order that packs best.
pub(crate) fn ordered(module: &Path) -> Result<(), String> {
    let written = fs::read(module)
        .map_err(|why| why.to_string())
        .and_then(|bytes| order::by_likeness(&bytes))
        .and_then(|ordered| fs::write(module, ordered).map_err(|why| why.to_string()));
    written.map_err(|why| format!("{} can't be put in order: {why}", module.display()))
}

/// Writes a module anew without the names of its functions, and with its
/// numbers in as few bytes as they need: the linker left room to change them.
fn slim(piece: &Path) -> Result<(), String> {
    let mut reader = ModuleConfig::new();
    reader.generate_name_section(false).generate_producers_section(false);
    let slimmed = reader.parse_file(piece).and_then(|mut module| module.emit_wasm_file(piece));
    slimmed.map_err(|why| format!("{} can't be slimmed: {why:#}", piece.display()))
}
