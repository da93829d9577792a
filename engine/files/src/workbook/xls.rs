//! The sheets of an old workbook (XLS, BIFF5 and BIFF8). Read here and not by
//! the library: that one panics on damaged files, asks for memory by what a
//! damaged file claims, and doesn't tell per cent from other numbers.
//!
//! Source: \[MS-CFB\] for the file in the file, \[MS-XLS\] for its records
//! (from memory; checked against workbooks that an office program wrote).

use std::collections::HashMap;

use calamine::{Data, ExcelDateTime, ExcelDateTimeType};

use super::shown::{self, Mark, Shown};
use super::{DAMAGED, Sheet};
use crate::Refusal;
use crate::text::windows_1252;

pub(super) fn sheets(bytes: &[u8]) -> Result<Vec<Sheet>, Refusal> {
    let file = Compound::of(bytes).ok_or(DAMAGED)?;
    let stream = file.stream("Workbook").or_else(|| file.stream("Book")).ok_or(DAMAGED)?;
    Book::of(&stream)?.sheets()
}

fn u16_at(bytes: &[u8], at: usize) -> Option<u16> {
    Some(u16::from_le_bytes(bytes.get(at..at.checked_add(2)?)?.try_into().ok()?))
}

fn u32_at(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_le_bytes(bytes.get(at..at.checked_add(4)?)?.try_into().ok()?))
}

fn f64_at(bytes: &[u8], at: usize) -> Option<f64> {
    Some(f64::from_le_bytes(bytes.get(at..at.checked_add(8)?)?.try_into().ok()?))
}

/// The file in the file: streams in chains of sectors.
struct Compound<'a> {
    bytes: &'a [u8],
    shift: u16,
    /// The sector after each sector.
    next: Vec<u32>,
    small_next: Vec<u32>,
    /// The stream that holds the small streams, and the directory.
    small: Vec<u8>,
    directory: Vec<u8>,
}

/// Sectors of small streams, and up to which size a stream is small, bytes.
const SMALL_SECTOR: usize = 64;
const SMALL: usize = 4_096;

/// Numbers from here on mark the end of a chain, or no sector.
const NO_SECTOR: u32 = 0xFFFF_FFFA;

impl<'a> Compound<'a> {
    fn of(bytes: &'a [u8]) -> Option<Compound<'a>> {
        let shift = u16_at(bytes, 30).filter(|s| matches!(s, 9 | 12))?;
        let mut file = Compound {
            bytes,
            shift,
            next: Vec::new(),
            small_next: Vec::new(),
            small: Vec::new(),
            directory: Vec::new(),
        };
        let numbers = |bytes: &[u8]| -> Vec<u32> {
            bytes.as_chunks::<4>().0.iter().map(|&n| u32::from_le_bytes(n)).collect()
        };
        let mut tables = numbers(bytes.get(76..512)?);
        let mut more = u32_at(bytes, 68)?;
        let most = bytes.len() >> shift;
        for _ in 0..=most {
            if more >= NO_SECTOR {
                break;
            }
            tables.extend(numbers(file.sector(more)?));
            more = tables.pop()?;
        }
        for table in tables.into_iter().filter(|&t| t < NO_SECTOR).take(most + 1) {
            let sector = file.sector(table)?;
            file.next.extend(numbers(sector));
        }
        file.directory = file.chain(u32_at(bytes, 48)?)?;
        let root = file.directory.get(..128)?;
        let start = u32_at(root, 116)?;
        if start < NO_SECTOR {
            file.small = file.chain(start)?;
            file.small_next = numbers(&file.chain(u32_at(bytes, 60)?)?);
        }
        Some(file)
    }

    fn sector(&self, number: u32) -> Option<&'a [u8]> {
        let from = (number as usize).checked_add(1)?.checked_mul(1 << self.shift)?;
        // The last one may be cut short.
        let to = from.checked_add(1 << self.shift)?.min(self.bytes.len());
        self.bytes.get(from..to).filter(|s| !s.is_empty())
    }

    fn chain(&self, start: u32) -> Option<Vec<u8>> {
        let mut found = Vec::new();
        let mut at = start;
        while at < NO_SECTOR {
            found.extend_from_slice(self.sector(at)?);
            // A chain that bites its own tail.
            if found.len() > self.bytes.len() {
                return None;
            }
            at = *self.next.get(at as usize)?;
        }
        Some(found)
    }

    fn small_chain(&self, start: u32) -> Option<Vec<u8>> {
        let mut found = Vec::new();
        let mut at = start;
        while at < NO_SECTOR {
            let from = (at as usize).checked_mul(SMALL_SECTOR)?;
            let to = from.checked_add(SMALL_SECTOR)?.min(self.small.len());
            found.extend_from_slice(self.small.get(from..to)?);
            if found.len() > self.small.len() {
                return None;
            }
            at = *self.small_next.get(at as usize)?;
        }
        Some(found)
    }

    fn stream(&self, name: &str) -> Option<Vec<u8>> {
        let wanted: Vec<u8> = name.encode_utf16().flat_map(u16::to_le_bytes).collect();
        let entry = self.directory.as_chunks::<128>().0.iter().find(|entry| {
            let length = u16_at(&entry[..], 64).map_or(0, usize::from);
            length == wanted.len() + 2 && entry[..wanted.len()].eq_ignore_ascii_case(&wanted)
        })?;
        let (start, size) = (u32_at(entry, 116)?, u32_at(entry, 120)? as usize);
        let mut found = if size < SMALL { self.small_chain(start) } else { self.chain(start) }?;
        if found.len() < size {
            return None;
        }
        found.truncate(size);
        Some(found)
    }
}

/// One record.
struct Record<'a> {
    kind: u16,
    body: &'a [u8],
    /// Where the next one begins.
    after: usize,
}

fn record(stream: &[u8], at: usize) -> Option<Record<'_>> {
    let (kind, length) = (u16_at(stream, at)?, u16_at(stream, at + 2)?);
    let after = at + 4 + usize::from(length);
    Some(Record { kind, body: stream.get(at + 4..after)?, after })
}

const BEGIN: u16 = 0x0809;
const END: u16 = 0x000A;
const CONTINUE: u16 = 0x003C;

struct Book<'a> {
    stream: &'a [u8],
    /// Text in UTF-16 (BIFF8) or in the bytes of a code page (BIFF5).
    wide: bool,
    from_1904: bool,
    sheets: Vec<(Sheet, usize)>,
    strings: Vec<String>,
    formats: HashMap<u16, String>,
    /// The number format of each cell style.
    styles: Vec<u16>,
}

impl<'a> Book<'a> {
    fn of(stream: &'a [u8]) -> Result<Book<'a>, Refusal> {
        let first = record(stream, 0).filter(|r| r.kind == BEGIN).ok_or(DAMAGED)?;
        let mut book = Book {
            stream,
            wide: u16_at(first.body, 0) == Some(0x0600),
            from_1904: false,
            sheets: Vec::new(),
            strings: Vec::new(),
            formats: HashMap::new(),
            styles: Vec::new(),
        };
        let mut at = first.after;
        loop {
            let Record { kind, body, after } = record(stream, at).ok_or(DAMAGED)?;
            match kind {
                END => return Ok(book),
                // Encrypted from here on.
                0x002F => return Err(Refusal::LockedWorkbook),
                0x0022 => book.from_1904 = u16_at(body, 0) == Some(1),
                0x0085 if body.get(5) == Some(&0) => {
                    let name = book.short_text(body, 6).ok_or(DAMAGED)?;
                    let sheet = Sheet { name, hidden: body[4] & 3 != 0, ..Sheet::default() };
                    book.sheets.push((sheet, u32_at(body, 0).ok_or(DAMAGED)? as usize));
                }
                0x00E0 => book.styles.push(u16_at(body, 2).ok_or(DAMAGED)?),
                0x041E => {
                    let code =
                        if book.wide { book.text(body, 2) } else { book.short_text(body, 2) };
                    if let (Some(id), Some(code)) = (u16_at(body, 0), code) {
                        book.formats.insert(id, code);
                    }
                }
                0x00FC => {
                    let mut parts = vec![body];
                    let mut next = after;
                    while let Some(more) = record(stream, next).filter(|r| r.kind == CONTINUE) {
                        parts.push(more.body);
                        next = more.after;
                    }
                    book.strings = shared(&parts).ok_or(DAMAGED)?;
                }
                _ => {}
            }
            at = after;
        }
    }

    fn sheets(mut self) -> Result<Vec<Sheet>, Refusal> {
        let mut read = Vec::new();
        for (mut sheet, at) in std::mem::take(&mut self.sheets) {
            if !sheet.hidden {
                self.read(&mut sheet, at)?;
            }
            read.push(sheet);
        }
        Ok(read)
    }

    fn read(&self, sheet: &mut Sheet, mut at: usize) -> Result<(), Refusal> {
        record(self.stream, at).filter(|r| r.kind == BEGIN).ok_or(DAMAGED)?;
        let mut depth = 0;
        // The formula whose text comes in the next record.
        let mut awaiting: Option<(u32, u32)> = None;
        loop {
            let Record { kind, body, after } = record(self.stream, at).ok_or(DAMAGED)?;
            at = after;
            match kind {
                BEGIN => depth += 1,
                END => depth -= 1,
                // A chart within the sheet has records of its own.
                _ if depth > 1 => {}
                0x0207 => {
                    if let Some((row, column)) = awaiting.take() {
                        let text = self.text(body, 0).unwrap_or_default();
                        sheet.put(row, column, Shown::text(text))?;
                    }
                }
                _ => {
                    if let Some(place) = self.cell(sheet, kind, body)? {
                        awaiting = Some(place);
                    }
                }
            }
            if depth <= 0 {
                return Ok(());
            }
        }
    }

    /// Reads a record that holds cells; gives the place of a formula whose text follows.
    fn cell(
        &self,
        sheet: &mut Sheet,
        kind: u16,
        body: &[u8],
    ) -> Result<Option<(u32, u32)>, Refusal> {
        if !matches!(kind, 0x0203 | 0x027E | 0x00BD | 0x00FD | 0x0204 | 0x00D6 | 0x0205 | 0x0006) {
            return Ok(None);
        }
        let part = |at: usize| u16_at(body, at).ok_or(DAMAGED);
        let (row, column) = (u32::from(part(0)?), u32::from(part(2)?));
        let style = part(4)?;
        let shown = match kind {
            0x0203 => self.number(f64_at(body, 6).ok_or(DAMAGED)?, style),
            0x027E => self.number(short_number(u32_at(body, 6).ok_or(DAMAGED)?), style),
            0x00BD => {
                let each = body[4..].as_chunks::<6>().0;
                for (i, one) in (0..).zip(each) {
                    let style = u16::from_le_bytes([one[0], one[1]]);
                    let number = u32::from_le_bytes([one[2], one[3], one[4], one[5]]);
                    sheet.put(row, column + i, self.number(short_number(number), style))?;
                }
                return Ok(None);
            }
            0x00FD => {
                let index = u32_at(body, 6).ok_or(DAMAGED)? as usize;
                Shown::text(self.strings.get(index).ok_or(DAMAGED)?.as_str())
            }
            0x0204 | 0x00D6 => Shown::text(self.text(body, 6).ok_or(DAMAGED)?),
            0x0205 => truth_or_error(part(6)? as u8, body.get(7) == Some(&1)),
            _ => {
                let result = body.get(6..14).ok_or(DAMAGED)?;
                match (result[0], &result[6..]) {
                    (0, [0xFF, 0xFF]) => return Ok(Some((row, column))),
                    (what @ (1 | 2), [0xFF, 0xFF]) => truth_or_error(result[2], what == 2),
                    (_, [0xFF, 0xFF]) => Shown::default(),
                    _ => self.number(f64_at(result, 0).ok_or(DAMAGED)?, style),
                }
            }
        };
        sheet.put(row, column, shown)?;
        Ok(None)
    }

    fn number(&self, number: f64, style: u16) -> Shown {
        let id = self.styles.get(usize::from(style)).copied().unwrap_or(0);
        let format = self.formats.get(&id).map_or_else(|| built_in(id), String::as_str);
        let value = match time_of(format) {
            Some(kind) => Data::DateTime(ExcelDateTime::new(number, kind, self.from_1904)),
            None => Data::Float(number),
        };
        shown::cell(&value, format)
    }

    /// A text whose length stands in one byte.
    fn short_text(&self, body: &[u8], at: usize) -> Option<String> {
        self.characters(body, at + 1, usize::from(*body.get(at)?))
    }

    /// A text whose length stands in two bytes.
    fn text(&self, body: &[u8], at: usize) -> Option<String> {
        self.characters(body, at + 2, usize::from(u16_at(body, at)?))
    }

    fn characters(&self, body: &[u8], at: usize, count: usize) -> Option<String> {
        if !self.wide {
            return Some(body.get(at..at + count)?.iter().map(|&b| windows_1252(b)).collect());
        }
        if body.get(at)? & 1 == 0 {
            return Some(
                body.get(at + 1..at + 1 + count)?.iter().map(|&b| char::from(b)).collect(),
            );
        }
        let pairs = body.get(at + 1..at + 1 + count * 2)?.as_chunks::<2>().0;
        let units: Vec<u16> = pairs.iter().map(|&p| u16::from_le_bytes(p)).collect();
        Some(String::from_utf16_lossy(&units))
    }
}

/// The shared texts, which may run on from one record into the next.
fn shared(parts: &[&[u8]]) -> Option<Vec<String>> {
    let count = u32_at(parts[0], 4)?;
    let mut texts = Vec::new();
    let (mut part, mut at) = (0, 8);
    for _ in 0..count {
        while at >= parts.get(part)?.len() {
            (part, at) = (part + 1, 0);
        }
        let length = usize::from(u16_at(parts[part], at)?);
        let mut flags = *parts[part].get(at + 2)?;
        at += 3;
        // Formatting runs and phonetic text come after the characters.
        let mut skip = 0;
        if flags & 8 != 0 {
            skip += 4 * usize::from(u16_at(parts[part], at)?);
            at += 2;
        }
        if flags & 4 != 0 {
            skip += u32_at(parts[part], at)? as usize;
            at += 4;
        }
        let mut units: Vec<u16> = Vec::new();
        while units.len() < length {
            if at >= parts[part].len() {
                part += 1;
                flags = *parts.get(part)?.first()?;
                at = 1;
                continue;
            }
            if flags & 1 == 0 {
                units.push(u16::from(parts[part][at]));
                at += 1;
            } else {
                units.push(u16_at(parts[part], at)?);
                at += 2;
            }
        }
        texts.push(String::from_utf16_lossy(&units));
        while skip > 0 {
            let here = parts.get(part)?.len().saturating_sub(at).min(skip);
            at += here;
            skip -= here;
            if skip > 0 {
                (part, at) = (part + 1, 0);
            }
        }
    }
    Some(texts)
}

/// A number in 30 bits: whole or the upper half of a float, perhaps a hundredth.
fn short_number(packed: u32) -> f64 {
    let number = if packed & 2 == 0 {
        f64::from_bits(u64::from(packed & !3) << 32)
    } else {
        f64::from(packed as i32 >> 2)
    };
    if packed & 1 == 0 { number } else { number / 100.0 }
}

fn truth_or_error(code: u8, error: bool) -> Shown {
    let text = match code {
        _ if !error => return Shown::truth(code != 0),
        0x00 => "#NULL!",
        0x07 => "#DIV/0!",
        0x0F => "#VALUE!",
        0x17 => "#REF!",
        0x1D => "#NAME?",
        0x24 => "#NUM!",
        _ => "#N/A",
    };
    Shown::marked(text, Mark::Failed)
}

/// The built-in number formats that matter here.
fn built_in(id: u16) -> &'static str {
    match id {
        9 | 10 => "0%",
        14 | 15 | 17 | 22 | 27..=36 | 50..=58 => "yy-mm-dd",
        16 => "d-mmm",
        18..=21 | 45 | 47 => "h:mm",
        46 => "[h]:mm",
        _ => "",
    }
}

/// Whether a number format shows a date or a time, or a span of time.
fn time_of(format: &str) -> Option<ExcelDateTimeType> {
    if format.eq_ignore_ascii_case("general") {
        return None;
    }
    let (mut quoted, mut escaped, mut bracket) = (false, false, false);
    for (at, c) in format.char_indices() {
        match c {
            _ if escaped => escaped = false,
            '\\' | '_' | '*' => escaped = true,
            '"' => quoted = !quoted,
            _ if quoted => {}
            '[' => {
                if format[at + 1..].starts_with(['h', 'H', 'm', 'M', 's', 'S'])
                    && format[at + 1..].find(']').is_some_and(|end| end <= 2)
                {
                    return Some(ExcelDateTimeType::TimeDelta);
                }
                bracket = true;
            }
            ']' => bracket = false,
            _ if bracket => {}
            ';' => return None,
            'd' | 'm' | 'y' | 'h' | 's' | 'D' | 'M' | 'Y' | 'H' | 'S' => {
                return Some(ExcelDateTimeType::DateTime);
            }
            _ => {}
        }
    }
    None
}
