//! A PDF to text: the letters with their places, put together to lines and
//! tables.

mod cmap;
mod columns;
mod content;
mod encoding;
mod font;
mod glyph_names;
mod lines;
mod matrix;
mod rows;
mod run;
mod sheets;
mod table;
mod widths;

#[cfg(test)]
mod tests;

use hayro_syntax::{DecryptionError, LoadPdfError, Pdf};

use crate::{Kind, Opened, Refusal};

/// Pages that are read.
const MOST_PAGES: usize = 500;

/// Opens a PDF.
pub(crate) fn open(bytes: &[u8]) -> Result<Opened, Refusal> {
    let damaged = Refusal::Damaged { what: "PDF file" };
    let pdf = Pdf::new(bytes.to_vec()).map_err(|error| match error {
        LoadPdfError::Decryption(
            DecryptionError::PasswordProtected | DecryptionError::UnsupportedAlgorithm,
        ) => Refusal::LockedPdf,
        _ => damaged.clone(),
    })?;
    if pdf.pages().is_empty() {
        return Err(damaged);
    }
    let mut notes = Vec::new();
    let mut shelf = content::Shelf::default();
    let mut drawn: Vec<content::Drawn> =
        pdf.pages().iter().take(MOST_PAGES).map(|page| content::follow(page, &mut shelf)).collect();
    let letters: usize = drawn.iter().map(|d| d.letters).sum();
    if letters == 0 {
        return Err(Refusal::ScannedPdf);
    }
    let mut unknown = drawn.iter().map(|d| d.unknown).sum::<usize>();
    for run in drawn.iter_mut().flat_map(|d| &mut d.runs) {
        if shelf.is_garbled(run.font) {
            unknown += run.text.chars().count();
            run.text = font::UNKNOWN.to_string();
        }
    }
    if unknown * 2 > letters {
        return Err(Refusal::NoLetters);
    }
    if unknown > 0 {
        notes.push("Some letters of this PDF have no text behind them. They show as \u{fffd}; write them in.".into());
    }
    if drawn.iter().any(|d| d.hidden > 0) {
        notes.push(
            "This PDF comes from a scan whose text a program recognised. Check each number against the page."
                .into(),
        );
    }
    if pdf.pages().len() > MOST_PAGES {
        notes.push(format!("Only the first {MOST_PAGES} pages were read."));
    }
    if shelf.is_spent() {
        notes.push("This PDF holds more drawing than is read; its last pages are missing.".into());
    }
    let habits = lines::Habits::of(&drawn);
    let mut before = Vec::new();
    let pages = drawn
        .into_iter()
        .map(|page| {
            let (lines, rules) = lines::lines(page, habits);
            table::rows(lines, &rules, &mut before)
        })
        .collect();
    let text = sheets::text(pages, &mut notes);
    Ok(Opened { kind: Kind::Pdf, text, notes })
}
