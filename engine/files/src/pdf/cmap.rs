//! Maps from the codes of a font: to characters (`ToUnicode`), to glyph
//! numbers (`Encoding` of a composite font).

/// The most entries that are kept of one map.
const MOST: usize = 70_000;

/// What a stretch of codes stands for.
#[derive(Clone, Debug)]
struct Entry {
    from: u32,
    to: u32,
    /// The text of the first code, in UTF-16; the last unit counts up.
    text: Vec<u16>,
    /// The glyph number of the first code.
    glyph: u32,
}

/// A map of codes.
#[derive(Clone, Debug, Default)]
pub(super) struct CMap {
    entries: Vec<Entry>,
    /// Stretches of first bytes that are whole codes.
    one_byte: Vec<(u32, u32)>,
    two_bytes: bool,
}

enum Token<'a> {
    Bytes(Vec<u8>),
    Word(&'a [u8]),
    Open,
    Close,
}

impl CMap {
    /// Reads a map; what can't be read is left out.
    pub fn read(bytes: &[u8]) -> CMap {
        let mut map = CMap::default();
        let mut rest = bytes;
        let mut section: &[u8] = b"";
        let mut held: Vec<Vec<u8>> = Vec::new();
        let mut list: Option<u32> = None;
        while let Some(token) = next(&mut rest) {
            match token {
                Token::Word(word) => {
                    if let Some(kind) = word.strip_prefix(b"begin") {
                        section = kind;
                        held.clear();
                    } else if word.starts_with(b"end") {
                        section = b"";
                    } else if section.starts_with(b"cid")
                        && let Some(glyph) = decimal(word)
                    {
                        map.put(&held, Vec::new(), glyph);
                        held.clear();
                    }
                }
                Token::Open => list = Some(0),
                Token::Close => {
                    list = None;
                    held.clear();
                }
                Token::Bytes(bytes) => match (section, held.len(), list) {
                    (b"codespacerange", 1, _) => {
                        match bytes.len() {
                            1 => map.one_byte.push((code(&held[0]), code(&bytes))),
                            _ => map.two_bytes = true,
                        }
                        held.clear();
                    }
                    (b"bfchar", 1, _) => {
                        map.put(&held, utf16(&bytes), 0);
                        held.clear();
                    }
                    (b"bfrange", 2, None) => {
                        map.put(&held, utf16(&bytes), 0);
                        held.clear();
                    }
                    (b"bfrange", 2, Some(at)) => {
                        let from = code(&held[0]).saturating_add(at).to_be_bytes();
                        map.put(&[from.to_vec()], utf16(&bytes), 0);
                        list = Some(at.saturating_add(1));
                    }
                    _ => held.push(bytes),
                },
            }
            if map.entries.len() > MOST {
                break;
            }
        }
        map.entries.sort_by_key(|e| e.from);
        map
    }

    fn put(&mut self, codes: &[Vec<u8>], text: Vec<u16>, glyph: u32) {
        if let (Some(from), Some(to)) = (codes.first(), codes.last()) {
            self.entries.push(Entry { from: code(from), to: code(to), text, glyph });
        }
    }

    /// Whether the map says nothing.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    fn entry(&self, code: u32) -> Option<(&Entry, u32)> {
        let after = self.entries.partition_point(|e| e.from <= code);
        // A later entry for the same code mends an earlier one.
        let entry = self.entries[..after].iter().rev().take(4).find(|e| e.to >= code)?;
        Some((entry, code - entry.from))
    }

    /// The text of a code.
    pub fn text(&self, code: u32) -> Option<String> {
        let (entry, step) = self.entry(code)?;
        let mut units = entry.text.clone();
        let last = units.last_mut()?;
        *last = last.checked_add(u16::try_from(step).ok()?)?;
        String::from_utf16(&units).ok()
    }

    /// The glyph number of a code.
    pub fn glyph(&self, code: u32) -> Option<u32> {
        let (entry, step) = self.entry(code)?;
        entry.glyph.checked_add(step)
    }

    /// How many bytes the code takes that begins with `first`.
    pub fn length(&self, first: u8) -> usize {
        let first = u32::from(first);
        let one = self.one_byte.iter().any(|&(from, to)| (from..=to).contains(&first));
        if one || !self.one_byte.is_empty() && !self.two_bytes { 1 } else { 2 }
    }
}

fn code(bytes: &[u8]) -> u32 {
    bytes.iter().fold(0, |sum: u32, &b| sum.wrapping_shl(8) | u32::from(b))
}

fn utf16(bytes: &[u8]) -> Vec<u16> {
    match bytes {
        [one] => vec![u16::from(*one)],
        _ => bytes.chunks_exact(2).map(|c| u16::from_be_bytes([c[0], c[1]])).collect(),
    }
}

fn decimal(word: &[u8]) -> Option<u32> {
    std::str::from_utf8(word).ok()?.parse().ok()
}

fn next<'a>(rest: &mut &'a [u8]) -> Option<Token<'a>> {
    loop {
        let first = *rest.first()?;
        match first {
            b'%' => {
                let end = rest.iter().position(|b| matches!(b, b'\n' | b'\r'));
                *rest = &rest[end.unwrap_or(rest.len())..];
            }
            b'[' | b']' => {
                *rest = &rest[1..];
                return Some(if first == b'[' { Token::Open } else { Token::Close });
            }
            b'<' if rest.get(1) != Some(&b'<') => {
                let end = rest.iter().position(|&b| b == b'>').unwrap_or(rest.len());
                let digits: Vec<u8> = rest[1..end]
                    .iter()
                    .filter_map(|&b| char::from(b).to_digit(16).map(|d| d as u8))
                    .collect();
                *rest = rest.get(end + 1..).unwrap_or_default();
                let pairs = digits.chunks(2);
                return Some(Token::Bytes(
                    pairs.map(|p| p[0] << 4 | p.get(1).copied().unwrap_or(0)).collect(),
                ));
            }
            _ if first.is_ascii_alphanumeric() => {
                let end = rest
                    .iter()
                    .position(|b| !b.is_ascii_alphanumeric() && *b != b'-')
                    .unwrap_or(rest.len());
                let (word, after) = rest.split_at(end);
                *rest = after;
                return Some(Token::Word(word));
            }
            _ => *rest = &rest[1..],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn characters_ranges_and_lists_are_read() {
        let map = CMap::read(
            b"/CIDInit /ProcSet findresource begin 12 dict begin begincmap\n\
            1 begincodespacerange <0000> <FFFF> endcodespacerange\n\
            2 beginbfchar <0003> <0020> <0010> <006600660069> endbfchar\n\
            2 beginbfrange <0024> <0026> <0041> <0030> <0031> [<00B5> <D835DC00>] endbfrange\n\
            endcmap",
        );
        assert_eq!(map.text(3).as_deref(), Some(" "));
        assert_eq!(map.text(0x10).as_deref(), Some("ffi"));
        assert_eq!(map.text(0x26).as_deref(), Some("C"));
        assert_eq!(map.text(0x30).as_deref(), Some("µ"));
        assert_eq!(map.text(0x31).as_deref(), Some("\u{1d400}"));
        assert_eq!(map.text(0x27), None);
        assert_eq!(map.length(0), 2);
    }

    #[test]
    fn codes_become_glyph_numbers() {
        let map = CMap::read(
            b"1 begincodespacerange <00> <80> endcodespacerange \
            1 begincidrange <20> <7e> 1 endcidrange 1 begincidchar <80> 200 endcidchar",
        );
        assert_eq!(map.glyph(0x21), Some(2));
        assert_eq!(map.glyph(0x80), Some(200));
        assert_eq!(map.length(0x41), 1);
    }

    #[test]
    fn nonsense_gives_an_empty_map() {
        for bytes in [&b""[..], b"<", b"beginbfchar <", b"beginbfrange [ <00> ] <", b"endbfchar"] {
            assert!(CMap::read(bytes).is_empty());
        }
    }
}
