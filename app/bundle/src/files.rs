//! The project's folder and the files of a built page.

use std::fs;
use std::path::{Path, PathBuf};

/// The project's top folder, fixed when this program is compiled.
pub(crate) fn project() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).unwrap_or(here).to_owned()
}

/// Where the built page is put.
pub(crate) fn dist(project: &Path) -> PathBuf {
    project.join("target/dist")
}

/// Every file under `folder`: its path from there with `/` between the parts, and its
/// content. Sorted, so that a hash over them does not depend on the file system.
pub(crate) fn all(folder: &Path) -> Result<Vec<(String, Vec<u8>)>, String> {
    let mut found = Vec::new();
    gather(folder, "", &mut found)
        .map_err(|why| format!("{} can't be read: {why}", folder.display()))?;
    found.sort();
    Ok(found)
}

fn gather(folder: &Path, under: &str, found: &mut Vec<(String, Vec<u8>)>) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let name = format!("{under}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            gather(&entry.path(), &format!("{name}/"), found)?;
        } else {
            found.push((name, fs::read(entry.path())?));
        }
    }
    Ok(())
}

/// Writes `content` at `path`, making the folders on the way.
pub(crate) fn write(path: &Path, content: &[u8]) -> Result<(), String> {
    let written = match path.parent() {
        Some(folder) => fs::create_dir_all(folder).and_then(|()| fs::write(path, content)),
        None => fs::write(path, content),
    };
    written.map_err(|why| format!("{} can't be written: {why}", path.display()))
}

/// A file's content under brotli.
pub(crate) fn packed(content: &[u8], quality: i32) -> Result<Vec<u8>, String> {
    let settings = brotli::enc::BrotliEncoderParams { quality, ..Default::default() };
    let mut packed = Vec::new();
    brotli::BrotliCompress(&mut &content[..], &mut packed, &settings)
        .map_err(|why| format!("brotli failed: {why}"))?;
    Ok(packed)
}
