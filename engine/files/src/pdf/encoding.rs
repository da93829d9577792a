//! Byte codes to characters for fonts whose codes are one byte.

/// The named encodings of the PDF standard, and Symbol's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Encoding {
    /// Of Adobe's text fonts.
    Standard,
    /// Windows-1252.
    Windows,
    /// Mac OS Roman.
    Mac,
    /// Of the font Symbol.
    Symbol,
}

impl Encoding {
    /// The encoding a PDF calls so.
    pub fn called(name: &[u8]) -> Option<Encoding> {
        match name {
            b"WinAnsiEncoding" => Some(Encoding::Windows),
            b"MacRomanEncoding" => Some(Encoding::Mac),
            b"StandardEncoding" => Some(Encoding::Standard),
            _ => None,
        }
    }

    /// The character of a code.
    pub fn character(self, code: u8) -> Option<char> {
        let (from, table) = match self {
            Encoding::Standard => (160, STANDARD),
            Encoding::Windows => (128, WINDOWS),
            Encoding::Mac => (128, MAC),
            Encoding::Symbol => (32, SYMBOL),
        };
        let found = match code.checked_sub(from) {
            Some(at) => table.chars().nth(usize::from(at)).filter(|&c| c != '\0'),
            None => Some(char::from(code)).filter(|c| (' '..='~').contains(c)),
        };
        match found {
            Some('\'') if self == Encoding::Standard && code == b'\'' => Some('’'),
            Some('`') if self == Encoding::Standard && code == b'`' => Some('‘'),
            other => other,
        }
    }
}

/// The code of a character in Windows-1252.
pub(super) fn windows_code(c: char) -> Option<u8> {
    if c.is_ascii() {
        return u8::try_from(c).ok();
    }
    let c = match c {
        'μ' => 'µ',
        '−' => '–',
        other => other,
    };
    let at = WINDOWS.chars().position(|w| w == c)?;
    u8::try_from(at + 128).ok()
}

// Source: PDF 32000-1:2008 annex D (opened as the tables of reportlab and Python).
const STANDARD: &str = "\0¡¢£⁄¥ƒ§¤'“«‹›ﬁﬂ\0–†‡·\0¶•‚„”»…‰\0¿\0`´ˆ˜¯˘˙¨\0˚¸\0˝˛ˇ—\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0Æ\0ª\0\0\0\0ŁØŒº\0\0\0\0\0æ\0\0\0ı\0\0łøœß\0\0\0\0";
const WINDOWS: &str = "€•‚ƒ„…†‡ˆ‰Š‹Œ•Ž••‘’“”•–—˜™š›œ•žŸ ¡¢£¤¥¦§¨©ª«¬-®¯°±²³´µ¶·¸¹º»¼½¾¿ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖ×ØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõö÷øùúûüýþÿ";
const MAC: &str = "ÄÅÇÉÑÖÜáàâäãåçéèêëíìîïñóòôöõúùûü†°¢£§•¶ß®©™´¨≠ÆØ∞±≤≥¥µ∂∑∏π∫ªºΩæø¿¡¬√ƒ≈∆«»… ÀÃÕŒœ–—“”‘’÷◊ÿŸ⁄€‹›ﬁﬂ‡·‚„‰ÂÊÁËÈÍÎÏÌÓÔ\0ÒÚÛÙıˆ˜¯˘˙˚¸˝˛ˇ";
const SYMBOL: &str = " !∀#∃%&∋()∗+,−./0123456789:;<=>?≅ΑΒΧ∆ΕΦΓΗΙϑΚΛΜΝΟΠΘΡΣΤΥςΩΞΨΖ[∴]⊥_\0αβχδεφγηιϕκλμνοπθρστυϖωξψζ{|}∼\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0€ϒ′≤⁄∞ƒ♣♦♥♠↔←↑→↓°±″≥×∝∂•÷≠≡≈…\0\0↵ℵℑℜ℘⊗⊕∅∩∪⊃⊇⊄⊂⊆∈∉∠∇®©™∏√⋅¬∧∨⇔⇐⇑⇒⇓◊〈®©™∑\0\0\0\0\0\0\0\0\0\0\0〉∫⌠\0⌡";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_become_characters() {
        for (encoding, code, expected) in [
            (Encoding::Windows, 0xB5, Some('µ')),
            (Encoding::Windows, 0xFC, Some('ü')),
            (Encoding::Windows, b'A', Some('A')),
            (Encoding::Windows, 3, None),
            (Encoding::Mac, 0x9F, Some('ü')),
            (Encoding::Mac, 0xB5, Some('µ')),
            (Encoding::Standard, 0xAE, Some('\u{fb01}')),
            (Encoding::Standard, 0x27, Some('’')),
            (Encoding::Standard, 0x80, None),
            (Encoding::Symbol, 0x6D, Some('μ')),
            (Encoding::Symbol, 0xA3, Some('≤')),
            (Encoding::Symbol, 0xB3, Some('≥')),
            (Encoding::Symbol, 0xB1, Some('±')),
        ] {
            assert_eq!(encoding.character(code), expected, "{encoding:?} {code:#x}");
        }
        assert_eq!(windows_code('ü'), Some(0xFC));
        assert_eq!(windows_code('漢'), None);
    }
}
