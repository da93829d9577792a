//! Workbooks: each visible sheet as its rows, with the numbers as the cells
//! hold them and everything that could mislead said in a note.

mod ods;
mod shown;
mod xls;

use std::fmt::Write as _;
use std::io::{Cursor, Read};

use calamine::{Data, Reader, SheetType, SheetVisible, Xlsb, XlsbError, Xlsx, XlsxError};
use zip::ZipArchive;

use crate::kind::part_names;
use crate::{Kind, Opened, Refusal};
use shown::{Mark, Shown};

/// Rows and columns beyond these are left out, with a note: no soil report is longer.
const MOST_ROWS: u32 = 50_000;
const MOST_COLUMNS: u32 = 1_000;

/// The most that the parts of a workbook may unfold to, bytes.
const MOST_UNFOLDED: u64 = 400_000_000;

/// The most text that a workbook may come to, bytes: the engine reads no more than 12 MB, and
/// more than this takes long to lay out before it is refused.
const MOST_TEXT: usize = 13_000_000;

/// Cells named in a note before it says how many more there are.
const NAMED: usize = 5;

const DAMAGED: Refusal = Refusal::Damaged { what: "workbook" };

/// A sheet as it is read.
#[derive(Default)]
struct Sheet {
    name: String,
    hidden: bool,
    /// Row, column and text of each cell that shows something.
    cells: Vec<(u32, u32, String)>,
    /// Cells to tell about.
    marked: Vec<(Mark, u32, u32)>,
    /// Whether cells lie beyond what is read.
    beyond: bool,
    /// The length of all its texts.
    size: usize,
}

impl Sheet {
    fn put(&mut self, row: u32, column: u32, shown: Shown) -> Result<(), Refusal> {
        if row >= MOST_ROWS || column >= MOST_COLUMNS {
            self.beyond |= !shown.text.is_empty();
            return Ok(());
        }
        // One long text may stand in a million cells.
        self.size += shown.text.len() + 1;
        if self.size > MOST_TEXT {
            return Err(Refusal::Swells);
        }
        if let Some(mark) = shown.mark {
            self.marked.push((mark, row, column));
        }
        if !shown.text.is_empty() {
            self.cells.push((row, column, shown.text));
        }
        Ok(())
    }
}

pub(crate) fn open(bytes: &[u8]) -> Result<Opened, Refusal> {
    let (sheets, formats_known) = if bytes.starts_with(b"PK") {
        let mut zip = ZipArchive::new(Cursor::new(bytes)).map_err(|_| DAMAGED)?;
        unfolds(&mut zip)?;
        let names = part_names(&zip);
        let has = |end: &str| names.iter().any(|n| n.ends_with(end));
        if has("xl/workbook.xml") {
            (xlsx(bytes)?, true)
        } else if has("xl/workbook.bin") {
            (xlsb(bytes)?, false)
        } else {
            (ods::sheets(&mut zip)?, true)
        }
    } else {
        (xls::sheets(bytes)?, true)
    };
    written(sheets, formats_known)
}

/// Unfolds the parts without keeping them: what they claim to be can't be trusted.
fn unfolds(zip: &mut ZipArchive<Cursor<&[u8]>>) -> Result<(), Refusal> {
    let mut left = MOST_UNFOLDED;
    for index in 0..zip.len() {
        let Ok(part) = zip.by_index(index) else { continue };
        let needed = |name: &str| name.ends_with(".xml") || name.ends_with(".bin");
        if !part.name().is_ok_and(|name| needed(&name)) {
            continue;
        }
        let mut part = part.take(left + 1);
        // A damaged part is refused, or not needed, when it is read.
        let taken = std::io::copy(&mut part, &mut std::io::sink()).unwrap_or(0);
        left = left.checked_sub(taken).ok_or(Refusal::Swells)?;
    }
    Ok(())
}

fn xlsx(bytes: &[u8]) -> Result<Vec<Sheet>, Refusal> {
    let mut book = Xlsx::new(Cursor::new(bytes)).map_err(|e| match e {
        XlsxError::Password => Refusal::LockedWorkbook,
        _ => DAMAGED,
    })?;
    let mut sheets = Vec::new();
    for about in book.sheets_metadata().to_vec() {
        let Some(mut sheet) = begun(&about) else { continue };
        if !sheet.hidden {
            let mut blanks = false;
            let mut reader = book.worksheet_cells_reader(&about.name).map_err(|_| DAMAGED)?;
            let formats: Vec<Option<String>> = reader
                .styles()
                .iter()
                .map(|s| s.number_format.as_ref().map(|f| f.format_code.clone()))
                .collect();
            while let Some((cell, style)) = reader.next_cell_with_style_id().map_err(|_| DAMAGED)? {
                let (row, column) = cell.get_position();
                let value = Data::from(cell.get_value().clone());
                blanks |= value == Data::Empty;
                let format = formats.get(style).and_then(Option::as_deref).unwrap_or("");
                sheet.put(row, column, shown::cell(&value, format))?;
            }
            drop(reader);
            if blanks {
                unfinished(&mut book, &mut sheet)?;
            }
        }
        sheets.push(sheet);
    }
    Ok(sheets)
}

/// Finds formulas that no program has worked out yet.
fn unfinished(book: &mut Xlsx<Cursor<&[u8]>>, sheet: &mut Sheet) -> Result<(), Refusal> {
    let mut reader = book.worksheet_cells_reader(&sheet.name).map_err(|_| DAMAGED)?;
    while let Some(cell) = reader.next_cell_with_formula_metadata().map_err(|_| DAMAGED)? {
        if cell.formula.is_some() && matches!(Data::from(cell.value), Data::Empty) {
            sheet.put(cell.pos.0, cell.pos.1, Shown::unfinished())?;
        }
    }
    Ok(())
}

fn xlsb(bytes: &[u8]) -> Result<Vec<Sheet>, Refusal> {
    let mut book = Xlsb::new(Cursor::new(bytes)).map_err(|e| match e {
        XlsbError::Password => Refusal::LockedWorkbook,
        _ => DAMAGED,
    })?;
    let mut sheets = Vec::new();
    for about in book.sheets_metadata().to_vec() {
        let Some(mut sheet) = begun(&about) else { continue };
        if !sheet.hidden {
            let mut reader = book.worksheet_cells_reader(&about.name).map_err(|_| DAMAGED)?;
            while let Some(cell) = reader.next_cell().map_err(|_| DAMAGED)? {
                let (row, column) = cell.get_position();
                sheet.put(row, column, shown::cell(&Data::from(cell.get_value().clone()), ""))?;
            }
        }
        sheets.push(sheet);
    }
    Ok(sheets)
}

fn begun(about: &calamine::Sheet) -> Option<Sheet> {
    (about.typ == SheetType::WorkSheet).then(|| Sheet {
        name: about.name.clone(),
        hidden: about.visible != SheetVisible::Visible,
        ..Sheet::default()
    })
}

/// The sheets as text.
fn written(mut sheets: Vec<Sheet>, formats_known: bool) -> Result<Opened, Refusal> {
    let mut notes = Vec::new();
    let hidden: Vec<String> = sheets.iter().filter(|s| s.hidden).map(|s| s.name.clone()).collect();
    if !hidden.is_empty() {
        notes.push(format!("Left out, because hidden in the workbook: {}.", hidden.join(", ")));
    }
    sheets.retain(|s| !s.hidden && !s.cells.is_empty());
    if sheets.is_empty() {
        return Err(Refusal::EmptyWorkbook);
    }
    // 1.234 could be read as thousands where words in the workbook use decimal commas.
    let commas = sheets.iter().flat_map(|s| &s.cells).any(|(.., text)| has_decimal_comma(text));
    let mut text = String::new();
    for sheet in &mut sheets {
        sheet.cells.sort_by_key(|&(row, column, _)| (row, column));
        let width = sheet.cells.iter().map(|c| c.1 + 1).max().unwrap_or(1);
        let name = one_line(&sheet.name);
        let _ = writeln!(text, "[sheet {name}]");
        let mut cells = sheet.cells.iter().peekable();
        let mut row = 0;
        while let Some(&&(next, ..)) = cells.peek() {
            text.extend(std::iter::repeat_n('\n', (next - row) as usize));
            row = next;
            for column in 0..width {
                if column > 0 {
                    text.push('\t');
                }
                while let Some((.., said)) = cells.next_if(|c| c.0 == row && c.1 == column) {
                    push_cell(&mut text, said, commas);
                }
            }
            if text.len() > MOST_TEXT {
                return Err(Refusal::Swells);
            }
        }
        text.push('\n');
        tell(sheet, &name, &mut notes);
    }
    let percent = sheets.iter().flat_map(|s| &s.cells).any(|(.., text)| text.contains('%'));
    let fraction = |text: &str| text.starts_with("0.");
    if !formats_known && percent && sheets.iter().flat_map(|s| &s.cells).any(|c| fraction(&c.2)) {
        notes.push(
            "This kind of workbook doesn't tell which cells are shown as per cent: a cell that shows \
             3.4% may stand here as 0.034. Compare the numbers that begin with 0, or save the \
             workbook as XLSX and open that."
                .to_string(),
        );
    }
    Ok(Opened { kind: Kind::Workbook, text, notes })
}

fn push_cell(text: &mut String, said: &str, commas: bool) {
    let said = one_line(said);
    if let Some(inner) = said.strip_prefix('"') {
        // A cell that begins with a quote would run on to the next one.
        let _ = write!(text, "\"\"\"{}\"", inner.replace('"', "\"\""));
        return;
    }
    text.push_str(&said);
    let thousands = said.split_once('.').is_some_and(|(whole, rest)| {
        let digits = |t: &str| t.bytes().all(|b| b.is_ascii_digit());
        (1..=3).contains(&whole.len()) && digits(whole) && rest.len() == 3 && digits(rest)
    });
    if commas && thousands {
        text.push('0');
    }
}

/// A digit on both sides of a comma.
fn has_decimal_comma(text: &str) -> bool {
    text.as_bytes()
        .windows(3)
        .any(|w| w[1] == b',' && w[0].is_ascii_digit() && w[2].is_ascii_digit())
}

/// Without tabs and line breaks, which would part cells and rows.
fn one_line(text: &str) -> String {
    if text.contains(|c: char| c.is_control()) {
        let words = text.split(|c: char| c.is_control()).map(str::trim);
        words.filter(|w| !w.is_empty()).collect::<Vec<_>>().join(" ")
    } else {
        text.trim().to_string()
    }
}

/// Tells about the cells of a sheet that a person should look at.
fn tell(sheet: &Sheet, name: &str, notes: &mut Vec<String>) {
    for mark in [Mark::Time, Mark::Yearless, Mark::Failed, Mark::Unfinished] {
        let mut of: Vec<(u32, u32)> =
            sheet.marked.iter().filter(|m| m.0 == mark).map(|m| (m.1, m.2)).collect();
        if of.is_empty() {
            continue;
        }
        of.sort_unstable();
        let named: Vec<String> = of.iter().take(NAMED).map(|&(r, c)| cell_name(r, c)).collect();
        let mut cells = named.join(", ");
        if of.len() > NAMED {
            let _ = write!(cells, " and {} more", of.len() - NAMED);
        }
        let says = match mark {
            Mark::Time => {
                "a time of day; a ratio such as 1:10 may have been typed. Not read as a number"
            }
            Mark::Yearless => {
                "a day and a month; a range such as 1-10 may have been typed. Not read as a number"
            }
            Mark::Failed => "the error of a formula, so no result",
            Mark::Unfinished => {
                "a formula that was never worked out, so blank here. Open the workbook in your \
                 spreadsheet program, save it and open it again"
            }
        };
        notes.push(format!("Sheet {name}, {cells}: {says}."));
    }
    if sheet.beyond {
        notes.push(format!(
            "Sheet {name}: cells below row {MOST_ROWS} or right of column {MOST_COLUMNS} were left out."
        ));
    }
}

/// `C5`.
fn cell_name(row: u32, column: u32) -> String {
    let mut letters = Vec::new();
    let mut rest = column + 1;
    while rest > 0 {
        letters.push(char::from(b'A' + ((rest - 1) % 26) as u8));
        rest = (rest - 1) / 26;
    }
    letters.iter().rev().collect::<String>() + &(row + 1).to_string()
}
