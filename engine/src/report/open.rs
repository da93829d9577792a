//! Bytes or pasted text to a [`Grid`]. Knows text and tables, no soil.

use std::borrow::Cow;

use super::drawn::without_drawings;
use super::marks::has_pages;
use super::split::{MOST_LINES, rows};
use super::{Grid, Trouble};

/// The most text that is read, bytes: room for 20,000 samples in 60 columns.
pub const MOST_BYTES: usize = 12_000_000;

/// Opens a source: text in UTF-8 or Windows-1252, as lines, as a delimited
/// table (tab, semicolon, bar, comma), as a table held by blanks, or mixed.
///
/// # Errors
/// When it is empty, too large or no text.
pub fn open(bytes: &[u8]) -> Result<Grid, Trouble> {
    if let Some(looks_like) = no_text(bytes) {
        return Err(Trouble::Binary { looks_like });
    }
    if bytes.len() > MOST_BYTES {
        return Err(Trouble::TooLarge { allowed: MOST_BYTES });
    }
    let text = decode(bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes))?;
    let rows =
        rows(&without_drawings(&text)).ok_or(Trouble::TooManyLines { allowed: MOST_LINES })?;
    if rows.is_empty() { Err(Trouble::Empty) } else { Ok(Grid { rows, paged: has_pages(&text) }) }
}

/// What the first bytes are when they are no text.
fn no_text(bytes: &[u8]) -> Option<&'static str> {
    const MARKS: &[(&[u8], &str)] = &[
        (b"%PDF", "a PDF file"),
        (b"PK\x03\x04", "a workbook or a zip file"),
        (b"\xD0\xCF\x11\xE0", "an old Office file"),
        (b"\x89PNG", "a picture"),
        (b"\xFF\xD8\xFF", "a photo"),
        (b"GIF8", "a picture"),
        (b"{\\rtf", "a rich-text document"),
        (b"\x1F\x8B", "a compressed file"),
        (b"\xFF\xFE", "text saved as UTF-16"),
        (b"\xFE\xFF", "text saved as UTF-16"),
    ];
    MARKS
        .iter()
        .find(|(mark, _)| bytes.starts_with(mark))
        .map(|&(_, name)| name)
        .or_else(|| bytes.contains(&0).then_some("data, not text"))
}

fn decode(bytes: &[u8]) -> Result<Cow<'_, str>, Trouble> {
    if let Ok(text) = std::str::from_utf8(bytes) {
        return plausible(Cow::Borrowed(text));
    }
    plausible(Cow::Owned(bytes.iter().map(|&b| windows_1252(b)).collect()))
}

/// Text has few control characters.
fn plausible(text: Cow<'_, str>) -> Result<Cow<'_, str>, Trouble> {
    let control = |c: &char| c.is_control() && !matches!(c, '\n' | '\r' | '\t' | '\x0C');
    let controls = text.chars().filter(control).count();
    if controls * 50 > text.chars().count() {
        return Err(Trouble::Binary { looks_like: "data, not text" });
    }
    Ok(text)
}

/// One byte of Windows-1252, the encoding of older spreadsheets.
/// Source: WHATWG Encoding standard, index windows-1252 (from memory).
fn windows_1252(byte: u8) -> char {
    const HIGH: [char; 32] = [
        '€', '\u{81}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{8D}', 'Ž',
        '\u{8F}', '\u{90}', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{9D}',
        'ž', 'Ÿ',
    ];
    match byte {
        0x80..=0x9F => HIGH[usize::from(byte - 0x80)],
        _ => char::from(byte),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn trouble(bytes: &[u8]) -> Trouble {
        open(bytes).unwrap_err()
    }

    #[test]
    fn what_is_no_text_is_named() {
        assert_eq!(trouble(b"%PDF-1.7\n"), Trouble::Binary { looks_like: "a PDF file" });
        assert!(matches!(trouble(b"PK\x03\x04rest"), Trouble::Binary { .. }));
        assert!(matches!(trouble(b"pH 6.2\0\0"), Trouble::Binary { .. }));
        assert!(matches!(trouble(&[1, 2, 3, 4, 5, 200, 201, 202]), Trouble::Binary { .. }));
    }

    #[test]
    fn emptiness_and_bulk_have_their_own_trouble() {
        assert_eq!(trouble(b""), Trouble::Empty);
        assert_eq!(trouble(" \n\t\u{a0}\n".as_bytes()), Trouble::Empty);
        assert_eq!(trouble(b"\xEF\xBB\xBF"), Trouble::Empty);
        let bulk = vec![b'a'; MOST_BYTES + 1];
        assert_eq!(trouble(&bulk), Trouble::TooLarge { allowed: MOST_BYTES });
        let lines = "1\n".repeat(MOST_LINES + 1);
        assert_eq!(trouble(lines.as_bytes()), Trouble::TooManyLines { allowed: MOST_LINES });
    }

    #[test]
    fn windows_text_is_text() {
        let grid = open(b"Lehm \xFCber Ton\n5 \xB5S/cm").unwrap();
        assert_eq!(grid.rows[0][0].text, "Lehm über Ton");
        assert_eq!(grid.rows[1][0].text, "5 µS/cm");
    }
}
