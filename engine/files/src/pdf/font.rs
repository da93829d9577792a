//! A font: what its codes say, and how wide they are.

use std::cell::RefCell;

use hayro_syntax::object::{Array, Dict, Name, Object, Stream};

use super::cmap::CMap;
use super::encoding::Encoding;
use super::glyph_names;
use super::widths::Builtin;

/// Stands for a code that no text is known for.
pub(super) const UNKNOWN: &str = "\u{fffd}";

/// One code of a shown string.
pub(super) struct Letter<'a> {
    /// Its text; may be more than one character, or none.
    pub text: &'a str,
    /// Its width, in parts of the type size.
    pub width: f32,
    /// Whether it is the single byte 32, which word spacing widens.
    pub blank: bool,
}

enum Codes {
    /// One byte a code: text and width of each.
    Bytes(Vec<(String, f32)>),
    /// Codes of one or two bytes.
    Many(Composite),
}

struct Composite {
    text: CMap,
    /// Glyph numbers, where they are not the codes.
    glyphs: Option<CMap>,
    /// The codes are UTF-16.
    is_unicode: bool,
    usual_width: f32,
    /// First and last glyph number, and the width of each.
    widths: Vec<(u32, u32, f32)>,
}

/// A font.
pub(super) struct Font {
    codes: Codes,
    /// How far the codes rose in the order of their first use, for a font
    /// that does not say what they mean.
    unsaid: Option<RefCell<FirstUse>>,
}

/// Codes in the order they are first used.
struct FirstUse {
    seen: [bool; 256],
    count: u32,
    last: u8,
    rising: bool,
}

impl Font {
    /// Reads a font.
    pub fn new(dict: &Dict<'_>) -> Font {
        let kind = dict.get::<Name<'_>>("Subtype");
        match kind.as_deref() {
            Some(b"Type0") => Font { codes: Codes::Many(composite(dict)), unsaid: None },
            kind => simple(dict, kind.unwrap_or_default()),
        }
    }

    /// Calls `each` with every code of a string.
    pub fn letters(&self, bytes: &[u8], each: &mut dyn FnMut(Letter<'_>)) {
        match &self.codes {
            Codes::Bytes(table) => {
                for &byte in bytes {
                    if let Some(first_use) = &self.unsaid {
                        first_use.borrow_mut().see(byte);
                    }
                    let (text, width) = &table[usize::from(byte)];
                    each(Letter { text, width: *width, blank: byte == b' ' });
                }
            }
            Codes::Many(font) => {
                let mut rest = bytes;
                while !rest.is_empty() {
                    let length = font.glyphs.as_ref().map_or(2, |g| g.length(rest[0]));
                    let (head, tail) = rest.split_at(length.min(rest.len()));
                    rest = tail;
                    let code = head.iter().fold(0, |sum: u32, &b| sum << 8 | u32::from(b));
                    let text = font.text_of(code);
                    let blank = length == 1 && code == 32;
                    each(Letter { text: &text, width: font.width_of(code), blank });
                }
            }
        }
    }

    /// Whether the codes were numbered as they came up, so that what was read
    /// from them is not what a person sees.
    pub fn is_garbled(&self) -> bool {
        self.unsaid.as_ref().is_some_and(|first_use| {
            let first_use = first_use.borrow();
            first_use.rising && first_use.count >= 5
        })
    }
}

impl FirstUse {
    fn see(&mut self, byte: u8) {
        let seen = &mut self.seen[usize::from(byte)];
        if !*seen && byte != b' ' {
            *seen = true;
            self.rising &= self.count == 0 || byte == self.last.wrapping_add(1);
            self.last = byte;
            self.count += 1;
        }
    }
}

impl Composite {
    fn text_of(&self, code: u32) -> String {
        let said = self.text.text(code).map(|t| readable(&t, "")).filter(|t| t != UNKNOWN);
        let own = || char::from_u32(code).filter(|_| self.is_unicode).map(String::from);
        said.or_else(own).unwrap_or_else(|| UNKNOWN.to_string())
    }

    fn width_of(&self, code: u32) -> f32 {
        let glyph = self.glyphs.as_ref().map_or(Some(code), |g| g.glyph(code)).unwrap_or(0);
        let found = self.widths.iter().find(|(from, to, _)| (*from..=*to).contains(&glyph));
        found.map_or(self.usual_width, |w| w.2)
    }
}

fn to_unicode(dict: &Dict<'_>) -> CMap {
    dict.get::<Stream<'_>>("ToUnicode")
        .and_then(|s| s.decoded_data().ok())
        .map(|data| CMap::read(&data))
        .unwrap_or_default()
}

fn composite(dict: &Dict<'_>) -> Composite {
    let own = dict
        .get::<Array<'_>>("DescendantFonts")
        .and_then(|a| a.iter::<Dict<'_>>().next())
        .unwrap_or_default();
    let glyphs = dict
        .get::<Stream<'_>>("Encoding")
        .and_then(|s| s.decoded_data().ok())
        .map(|data| CMap::read(&data));
    let encoding = dict.get::<Name<'_>>("Encoding");
    let is_unicode = encoding.is_some_and(|n| {
        let name = n.as_str();
        name.starts_with("Uni") && (name.contains("UCS2") || name.contains("UTF16"))
    });
    Composite {
        text: to_unicode(dict),
        glyphs,
        is_unicode,
        usual_width: own.get::<f32>("DW").unwrap_or(1000.0) / 1000.0,
        widths: own.get::<Array<'_>>("W").map(|w| glyph_widths(&w)).unwrap_or_default(),
    }
}

/// `c [w w w]` and `first last w`.
fn glyph_widths(array: &Array<'_>) -> Vec<(u32, u32, f32)> {
    let mut widths = Vec::new();
    let mut held: Vec<u32> = Vec::new();
    for object in array.iter::<Object<'_>>() {
        match object {
            Object::Number(number) if held.len() == 2 => {
                widths.push((held[0], held[1], number.as_f32() / 1000.0));
                held.clear();
            }
            Object::Number(number) => held.push(number.as_i64().clamp(0, 0xFFFF) as u32),
            Object::Array(list) => {
                if let [from] = held[..] {
                    let each = list.iter::<f32>().zip(from..);
                    widths.extend(each.map(|(w, glyph)| (glyph, glyph, w / 1000.0)));
                }
                held.clear();
            }
            _ => held.clear(),
        }
    }
    widths
}

fn simple(dict: &Dict<'_>, kind: &[u8]) -> Font {
    let base = dict.get::<Name<'_>>("BaseFont");
    let name = base.as_ref().map_or("", |n| n.as_str());
    let descriptor = dict.get::<Dict<'_>>("FontDescriptor").unwrap_or_default();
    let embedded =
        ["FontFile", "FontFile2", "FontFile3"].iter().any(|key| descriptor.contains_key(key));
    let symbolic = descriptor.get::<i32>("Flags").unwrap_or(0) & 4 != 0;
    let said = to_unicode(dict);
    let encoding = dict.get::<Dict<'_>>("Encoding");
    let named = dict
        .get::<Name<'_>>("Encoding")
        .or_else(|| encoding.as_ref()?.get::<Name<'_>>("BaseEncoding"))
        .and_then(|n| Encoding::called(&n));
    let own = own_encoding(&descriptor);
    let base = named.unwrap_or(if name.contains("Symbol") {
        Encoding::Symbol
    } else if kind == b"TrueType" {
        Encoding::Windows
    } else {
        Encoding::Standard
    });
    let pictures = ["Dingbats", "Wingdings", "Webdings"].iter().any(|p| name.contains(p));

    let mut names: Vec<Option<String>> = own.unwrap_or_else(|| vec![None; 256]);
    let mut differs = false;
    if let Some(list) = encoding.and_then(|e| e.get::<Array<'_>>("Differences")) {
        let mut code = 0usize;
        for object in list.iter::<Object<'_>>() {
            match object {
                Object::Number(number) => code = number.as_i64().clamp(0, 256) as usize,
                Object::Name(glyph) => {
                    if let Some(slot) = names.get_mut(code) {
                        *slot = Some(glyph.as_str().to_string());
                        differs = true;
                    }
                    code += 1;
                }
                _ => {}
            }
        }
    }

    // A Type 3 font measures in units of its own.
    let unit = match kind {
        b"Type3" => dict
            .get::<Array<'_>>("FontMatrix")
            .and_then(|m| m.iter::<f32>().next())
            .filter(|u| *u != 0.0)
            .map_or(0.001, f32::abs),
        _ => 0.001,
    };
    let first = dict.get::<i32>("FirstChar").unwrap_or(0).clamp(0, 255) as usize;
    let given: Option<Vec<f32>> =
        dict.get::<Array<'_>>("Widths").map(|w| w.iter::<f32>().take(256).collect());
    let missing = descriptor.get::<f32>("MissingWidth").unwrap_or(0.0);
    let builtin = Builtin::called(name);

    let table = (0..=255u8)
        .map(|code| {
            let at = usize::from(code);
            let mut text = said.text(u32::from(code)).map_or(String::new(), |t| readable(&t, name));
            if text.is_empty() || text == UNKNOWN {
                text.clear();
                let found = match &names[at] {
                    Some(glyph) => glyph_names::text_of(glyph, &mut text),
                    None => base.character(code).inspect(|&c| text.push(c)).is_some(),
                };
                if pictures {
                    text = "•".into();
                } else if found {
                    text = readable(&text, name);
                } else if text.is_empty() {
                    text = UNKNOWN.into();
                }
            }
            let width = match &given {
                Some(widths) => {
                    at.checked_sub(first).and_then(|i| widths.get(i).copied()).unwrap_or(missing)
                }
                None => builtin.width(text.chars().next().unwrap_or(' ')),
            };
            (text, width * unit)
        })
        .collect();
    let unsaid = said.is_empty()
        && embedded
        && !differs
        && (named.is_none() || symbolic)
        && !pictures
        && base != Encoding::Symbol;
    let first_use = FirstUse { seen: [false; 256], count: 0, last: 0, rising: true };
    Font { codes: Codes::Bytes(table), unsaid: unsaid.then(|| RefCell::new(first_use)) }
}

/// The encoding inside a Type 1 font: `dup 65 /A put`.
fn own_encoding(descriptor: &Dict<'_>) -> Option<Vec<Option<String>>> {
    let stream = descriptor.get::<Stream<'_>>("FontFile")?;
    let data = stream.decoded_data().ok()?;
    let end = data.windows(5).position(|w| w == b"eexec").unwrap_or(0);
    let text = String::from_utf8_lossy(&data[..end]);
    let from = text.find("/Encoding")?;
    let mut names = vec![None; 256];
    let mut found = false;
    let mut words = text[from..].split_ascii_whitespace();
    while let Some(word) = words.next() {
        match word {
            "dup" => {
                let code = words.next().and_then(|w| w.parse::<usize>().ok());
                let glyph = words.next().and_then(|w| w.strip_prefix('/'));
                if let (Some(code), Some(glyph)) = (code, glyph)
                    && let Some(slot) = names.get_mut(code)
                {
                    *slot = Some(glyph.to_string());
                    found = true;
                }
            }
            "def" | "readonly" if found => break,
            _ => {}
        }
    }
    found.then_some(names)
}

/// Text as a person would type it: no ligatures, no odd blanks, nothing of a
/// private area.
fn readable(text: &str, font: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '\u{fb00}' => out.push_str("ff"),
            '\u{fb01}' => out.push_str("fi"),
            '\u{fb02}' => out.push_str("fl"),
            '\u{fb03}' => out.push_str("ffi"),
            '\u{fb04}' => out.push_str("ffl"),
            '\u{a0}' | '\u{2000}'..='\u{200a}' | '\u{202f}' | '\u{3000}' | '\t' | '\n' | '\r' => {
                out.push(' ');
            }
            '\u{ad}' | '\u{2010}' | '\u{2011}' => out.push('-'),
            '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}' | '\u{feff}' => {}
            // Fonts of pictures and symbols lie here, and so does plain text of careless programs.
            '\u{f020}'..='\u{f0ff}' => {
                let code = (c as u32 & 0xFF) as u8;
                let found = if font.contains("Symbol") {
                    Encoding::Symbol.character(code)
                } else if font.contains("dings") || font.contains("Dingbats") {
                    Some('•')
                } else {
                    Encoding::Windows.character(code)
                };
                out.push(found.unwrap_or('\u{fffd}'));
            }
            '\u{e000}'..='\u{f8ff}' => out.push('\u{fffd}'),
            c if c.is_control() => out.push('\u{fffd}'),
            c => out.push(c),
        }
    }
    if out.contains('\u{fffd}') { UNKNOWN.to_string() } else { out }
}
