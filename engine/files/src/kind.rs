//! What a file is, by its content.

use std::io::Cursor;

use zip::ZipArchive;

use crate::{Refusal, modus, text};

/// The kinds of file that are opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A PDF document.
    Pdf,
    /// A workbook: XLSX, XLSB, XLS or ODS.
    Workbook,
    /// A lab exchange file of the Modus standard, XML or JSON.
    Modus,
    /// A web page or a table copied from one.
    WebPage,
    /// A report with its answers, saved by this program.
    Saved,
    /// Text of any other kind: a paste, CSV, TSV.
    Text,
}

impl Kind {
    /// The kind in words.
    pub fn label(self) -> &'static str {
        match self {
            Kind::Pdf => "a PDF file",
            Kind::Workbook => "a workbook",
            Kind::Modus => "a lab exchange file (Modus)",
            Kind::WebPage => "a web page or copied table",
            Kind::Saved => "a report saved here",
            Kind::Text => "a text file",
        }
    }

    /// What `bytes` are.
    ///
    /// # Errors
    /// When they are of a kind that is not opened.
    pub(crate) fn of(bytes: &[u8]) -> Result<Kind, Refusal> {
        // Mail programs and scanners put lines before the mark; readers of PDF look this far.
        let head = &bytes[..bytes.len().min(1_024)];
        if head.windows(6).any(|w| w.starts_with(b"%PDF-") && w[5].is_ascii_digit()) {
            return Ok(Kind::Pdf);
        }
        if bytes.starts_with(b"PK\x03\x04") || bytes.starts_with(b"PK\x05\x06") {
            return zipped(bytes);
        }
        if bytes.starts_with(b"\xD0\xCF\x11\xE0") {
            return compound(bytes);
        }
        if let Some(refusal) = by_mark(bytes) {
            return Err(refusal);
        }
        written(&text::decode(bytes)?)
    }
}

/// Kinds that their first bytes tell and that hold no text.
/// Source: the formats' own specifications (from memory).
fn by_mark(bytes: &[u8]) -> Option<Refusal> {
    let begins = |marks: &[&[u8]]| marks.iter().any(|m| bytes.starts_with(m));
    let inside = |at: usize, marks: &[&[u8]]| {
        bytes.get(at..).is_some_and(|rest| marks.iter().any(|m| rest.starts_with(m)))
    };
    if begins(&[b"{\\rtf"]) {
        Some(Refusal::RichText)
    } else if begins(&[b"RIFF"]) && inside(8, &[b"WAVE"])
        || begins(&[b"ID3", b"OggS", b"fLaC", b"\xFF\xFB", b"\xFF\xF3", b"\xFF\xF1"])
        || inside(4, &[b"ftypM4A"])
    {
        Some(Refusal::Sound)
    } else if begins(&[b"\x89PNG", b"\xFF\xD8\xFF", b"GIF8", b"II*\0", b"MM\0*", b"\x1A\x45\xDF\xA3"])
        || begins(&[b"RIFF"]) && inside(8, &[b"WEBP", b"AVI "])
        || begins(&[b"BM"]) && inside(5, &[b"\0\0\0\0\0"])
        // HEIC photos and films.
        || inside(4, &[b"ftyp"])
    {
        Some(Refusal::Picture)
    } else if begins(&[
        b"\x1F\x8B",
        b"7z\xBC\xAF",
        b"Rar!\x1A",
        b"BZh",
        b"\xFD7zXZ",
        b"\x28\xB5\x2F\xFD",
    ]) {
        Some(Refusal::Compressed)
    } else {
        None
    }
}

/// A workbook, a document or anything else in a zip.
fn zipped(bytes: &[u8]) -> Result<Kind, Refusal> {
    const DAMAGED: Refusal = Refusal::Damaged { what: "workbook or zip file" };
    let mut zip = ZipArchive::new(Cursor::new(bytes)).map_err(|_| DAMAGED)?;
    let names = part_names(&zip);
    let has = |end: &str| names.iter().any(|n| n.ends_with(end));
    if has("xl/workbook.xml") || has("xl/workbook.bin") {
        return Ok(Kind::Workbook);
    }
    if has("word/document.xml") {
        return Err(Refusal::Document);
    }
    if has("ppt/presentation.xml") {
        return Err(Refusal::Slides);
    }
    if has(".iwa") {
        return Err(Refusal::OtherWorkbook);
    }
    let mut mime = String::new();
    if let Ok(file) = zip.by_name("mimetype") {
        let mut short = std::io::Read::take(file, 200);
        std::io::Read::read_to_string(&mut short, &mut mime).map_err(|_| DAMAGED)?;
    }
    match mime.trim().strip_prefix("application/vnd.oasis.opendocument.") {
        Some(what) if what.starts_with("spreadsheet") => Ok(Kind::Workbook),
        Some(what) if what.starts_with("presentation") => Err(Refusal::Slides),
        Some(_) => Err(Refusal::Document),
        None => Err(Refusal::Zip),
    }
}

/// The names of the parts of a zip; some programs write them with backslashes.
pub(crate) fn part_names(zip: &ZipArchive<Cursor<&[u8]>>) -> Vec<String> {
    zip.file_names().flatten().map(|n| n.replace('\\', "/")).collect()
}

/// An office file from before 2007, or a locked one of today in its shell.
fn compound(bytes: &[u8]) -> Result<Kind, Refusal> {
    // The names of its parts stand in it as UTF-16.
    let has = |name: &str| {
        let wide: Vec<u8> = name.encode_utf16().flat_map(u16::to_le_bytes).chain([0, 0]).collect();
        bytes.windows(wide.len()).any(|w| w == wide)
    };
    if has("EncryptedPackage") {
        Err(Refusal::LockedWorkbook)
    } else if has("Workbook") || has("Book") {
        Ok(Kind::Workbook)
    } else if has("WordDocument") {
        Err(Refusal::Document)
    } else if has("PowerPoint Document") {
        Err(Refusal::Slides)
    } else {
        Err(Refusal::Damaged { what: "old office file" })
    }
}

/// What a text is.
fn written(text: &str) -> Result<Kind, Refusal> {
    let text = text.trim_start();
    // What the clipboard of one system puts above a copied table.
    if text.starts_with("Version:") && text.contains("StartHTML:") {
        return Ok(Kind::WebPage);
    }
    let mut chars = text.chars();
    let first = chars.next();
    let second = chars.find(|c| !c.is_whitespace());
    match first {
        // `[sheet Results]` begins a text of ours.
        Some('{') if matches!(second, Some('"' | '}')) => modus::json_kind(text),
        Some('[') if second == Some('{') => modus::json_kind(text),
        Some('<') => marked_up(text),
        _ => Ok(Kind::Text),
    }
}

/// A text that begins with `<`: XML, a web page, or `<2 ppm`.
fn marked_up(text: &str) -> Result<Kind, Refusal> {
    let declared = text.starts_with("<?xml");
    let Some(root) = root(text) else {
        return if declared { Err(Refusal::Damaged { what: "XML file" }) } else { Ok(Kind::Text) };
    };
    let local = root.rsplit(':').next().unwrap_or(root);
    if matches!(local, "ModusResult" | "ModusSubmit") {
        return Ok(Kind::Modus);
    }
    if local == "Workbook" && text.contains("urn:schemas-microsoft-com:office:spreadsheet") {
        return Err(Refusal::XmlWorkbook);
    }
    const HTML: &[&str] = &[
        "html", "head", "body", "meta", "title", "style", "script", "table", "thead", "tbody",
        "tr", "td", "th", "div", "span", "p", "pre", "h1", "h2", "h3", "h4", "b", "i", "font",
        "center", "br", "ul", "ol", "dl", "section", "article", "main", "a",
    ];
    if HTML.iter().any(|tag| tag.eq_ignore_ascii_case(local)) {
        Ok(Kind::WebPage)
    } else if declared || text.contains(&format!("</{root}")) {
        Err(Refusal::OtherXml)
    } else {
        Ok(Kind::Text)
    }
}

/// The name of the first element; `html` for a page that only declares itself.
fn root(mut text: &str) -> Option<&str> {
    loop {
        text = text.trim_start();
        let rest = text.strip_prefix('<')?;
        let end = if rest.starts_with("!--") {
            rest.find("-->")? + 3
        } else if rest.starts_with('?') {
            rest.find("?>")? + 2
        } else if rest.get(..8).is_some_and(|d| d.eq_ignore_ascii_case("!doctype")) {
            if rest.get(8..).is_some_and(|r| {
                r.trim_start().get(..4).is_some_and(|h| h.eq_ignore_ascii_case("html"))
            }) {
                return Some("html");
            }
            // A list of entities may stand within brackets.
            let close = rest.find('>')?;
            match rest.find('[').filter(|&open| open < close) {
                Some(open) => open + rest[open..].find("]>")? + 2,
                None => close + 1,
            }
        } else {
            let name =
                rest.find(|c: char| !c.is_ascii_alphanumeric() && !matches!(c, ':' | '_' | '-'));
            let name = &rest[..name.unwrap_or(rest.len())];
            let named = name.starts_with(|c: char| c.is_ascii_alphabetic());
            return named.then_some(name);
        };
        text = &rest[end..];
    }
}
