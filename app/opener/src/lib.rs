//! Opens files for the page. `public/open-worker.js` runs it: each file in a
//! fresh instance, so that a file that breaks it breaks nothing else.

use emberloam_files::Kind;
use wasm_bindgen::prelude::wasm_bindgen;

/// A file as text.
#[wasm_bindgen(getter_with_clone)]
pub struct Opened {
    /// What the file is, in words.
    pub kind: String,
    /// Whether it is a report with its answers, saved by the page; `text` is
    /// then its JSON.
    pub saved: bool,
    /// Whether the text is parted into sheets by marks of its own.
    pub sheets: bool,
    /// The text.
    pub text: String,
    /// What the person should know of how it was opened.
    pub notes: Vec<String>,
}

/// Opens a file.
///
/// # Errors
/// The refusal, in words for the reader.
#[wasm_bindgen]
pub fn open_file(bytes: &[u8]) -> Result<Opened, String> {
    let opened = emberloam_files::open_file(bytes).map_err(|refusal| refusal.to_string())?;
    Ok(Opened {
        kind: opened.kind.label().to_string(),
        saved: opened.kind == Kind::Saved,
        sheets: opened.kind == Kind::Workbook,
        text: opened.text,
        notes: opened.notes,
    })
}
