//! Text files, in whichever encoding they were written.

use crate::{Kind, Opened, Refusal};

pub(crate) fn open(bytes: &[u8], kind: Kind) -> Result<Opened, Refusal> {
    Ok(Opened { kind, text: decode(bytes)?, notes: Vec::new() })
}

/// The text that bytes hold: UTF-8, UTF-16 with or without its mark, or
/// Windows-1252, the encoding of older spreadsheets.
///
/// # Errors
/// When they are no text, or none at all.
pub(crate) fn decode(bytes: &[u8]) -> Result<String, Refusal> {
    let text = if let Some(rest) = bytes.strip_prefix(b"\xEF\xBB\xBF") {
        String::from_utf8_lossy(rest).into_owned()
    } else if let Some(rest) = bytes.strip_prefix(b"\xFF\xFE") {
        utf_16(rest, u16::from_le_bytes)
    } else if let Some(rest) = bytes.strip_prefix(b"\xFE\xFF") {
        utf_16(rest, u16::from_be_bytes)
    } else if let Some(order) = unmarked_utf_16(bytes) {
        utf_16(bytes, order)
    } else {
        match std::str::from_utf8(bytes) {
            Ok(text) => text.to_string(),
            Err(_) => bytes.iter().map(|&b| windows_1252(b)).collect(),
        }
    };
    let (mut letters, mut controls) = (0, 0);
    for c in text.chars() {
        letters += 1;
        controls += usize::from(c.is_control() && !matches!(c, '\n' | '\r' | '\t' | '\x0C'));
        if c == '\0' {
            return Err(Refusal::NotText);
        }
    }
    if controls * 50 > letters {
        return Err(Refusal::NotText);
    }
    if text.trim().is_empty() { Err(Refusal::Empty) } else { Ok(text) }
}

type ByteOrder = fn([u8; 2]) -> u16;

fn utf_16(bytes: &[u8], order: ByteOrder) -> String {
    let units = bytes.as_chunks::<2>().0.iter().map(|&pair| order(pair));
    char::decode_utf16(units).map(|c| c.unwrap_or(char::REPLACEMENT_CHARACTER)).collect()
}

/// Text of the West in UTF-16 has a zero in nearly every second byte.
fn unmarked_utf_16(bytes: &[u8]) -> Option<ByteOrder> {
    let head = &bytes[..bytes.len().min(1_000)];
    let pairs = head.as_chunks::<2>().0;
    let zeros = |at: usize| pairs.iter().filter(|p| p[at] == 0).count();
    let many = |count: usize| pairs.len() >= 4 && count * 10 > pairs.len() * 7;
    match (zeros(0), zeros(1)) {
        (0, odd) if many(odd) => Some(u16::from_le_bytes),
        (even, 0) if many(even) => Some(u16::from_be_bytes),
        _ => None,
    }
}

/// One byte of Windows-1252.
/// Source: WHATWG Encoding standard, index windows-1252 (from memory).
pub(crate) fn windows_1252(byte: u8) -> char {
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

    #[test]
    fn text_is_read_in_its_encoding() {
        let utf_16 = |order: fn(u16) -> [u8; 2], mark: &[u8]| -> Vec<u8> {
            mark.iter()
                .copied()
                .chain("pH;6,2\nBoden: müde".encode_utf16().flat_map(order))
                .collect()
        };
        let cases: [&[u8]; 7] = [
            "pH;6,2\nBoden: müde".as_bytes(),
            "\u{FEFF}pH;6,2\nBoden: müde".as_bytes(),
            b"pH;6,2\nBoden: m\xFCde",
            &utf_16(u16::to_le_bytes, b"\xFF\xFE"),
            &utf_16(u16::to_be_bytes, b"\xFE\xFF"),
            &utf_16(u16::to_le_bytes, b""),
            &utf_16(u16::to_be_bytes, b""),
        ];
        for bytes in cases {
            assert_eq!(decode(bytes).as_deref(), Ok("pH;6,2\nBoden: müde"), "{bytes:?}");
        }
        assert_eq!(decode(b"5 \xB5S/cm \x80").as_deref(), Ok("5 µS/cm €"));
    }

    #[test]
    fn data_is_no_text() {
        assert_eq!(decode(b"pH 6.2\0\0"), Err(Refusal::NotText));
        assert_eq!(decode(&[1, 2, 3, 4, 5, 200, 201, 202]), Err(Refusal::NotText));
        assert_eq!(decode(b""), Err(Refusal::Empty));
        assert_eq!(decode("\u{FEFF} \n\t\u{a0}".as_bytes()), Err(Refusal::Empty));
    }
}
