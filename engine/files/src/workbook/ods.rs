//! The sheets of an OpenDocument workbook, from its `content.xml`. Read here
//! and not by the library, which doesn't tell per cent from other numbers.

use std::collections::HashSet;
use std::io::{BufReader, Cursor};

use quick_xml::events::{BytesStart, Event};
use zip::ZipArchive;

use super::shown::{self, Mark, Shown};
use super::{DAMAGED, MOST_COLUMNS, MOST_ROWS, Sheet};
use crate::Refusal;
use crate::decimal::shortest;

/// A cell under way.
#[derive(Default)]
struct Cell {
    kind: String,
    value: String,
    failed: bool,
    formula: bool,
    covered: bool,
    text: String,
    repeated: u32,
}

pub(super) fn sheets(zip: &mut ZipArchive<Cursor<&[u8]>>) -> Result<Vec<Sheet>, Refusal> {
    if locked(zip) {
        return Err(Refusal::LockedWorkbook);
    }
    let content = zip.by_name("content.xml").map_err(|_| DAMAGED)?;
    let mut reader = quick_xml::Reader::from_reader(BufReader::new(content));
    let mut buffer = Vec::new();
    let mut sheets: Vec<Sheet> = Vec::new();
    let mut hidden: HashSet<String> = HashSet::new();
    let mut style = String::new();
    let (mut row, mut column, mut rows) = (0u32, 0u32, 1u32);
    let mut cell: Option<Cell> = None;
    // Within a comment on a cell, which is no part of it; tables within tables.
    let (mut aside, mut tables) = (0, 0);
    // The cells of the row under way.
    let mut line: Vec<(u32, Cell)> = Vec::new();
    loop {
        buffer.clear();
        let event = reader.read_event_into(&mut buffer).map_err(|_| DAMAGED)?;
        let empty = matches!(event, Event::Empty(_));
        match event {
            Event::Start(start) | Event::Empty(start) => match start.name().as_ref() {
                "style:style" => style = attribute(&start, "style:name"),
                "style:table-properties" if attribute(&start, "table:display") == "false" => {
                    hidden.insert(style.clone());
                }
                "table:table" if !empty => {
                    tables += 1;
                    if tables == 1 {
                        (row, column) = (0, 0);
                        sheets.push(Sheet {
                            name: attribute(&start, "table:name"),
                            hidden: hidden.contains(&attribute(&start, "table:style-name")),
                            ..Sheet::default()
                        });
                    }
                }
                "table:table-row" if tables == 1 => {
                    rows = repeated(&start, "table:number-rows-repeated");
                    column = 0;
                    line.clear();
                    if empty {
                        row = row.saturating_add(rows);
                    }
                }
                name @ ("table:table-cell" | "table:covered-table-cell") if tables == 1 => {
                    let begun = begun(&start, name == "table:covered-table-cell");
                    if empty {
                        finish(begun, &mut column, &mut line);
                    } else {
                        cell = Some(begun);
                    }
                }
                "office:annotation" if !empty => aside += 1,
                "text:s" | "text:tab" | "text:line-break" => {
                    if let Some(cell) = cell.as_mut().filter(|_| aside == 0) {
                        cell.text.push(' ');
                    }
                }
                _ => {}
            },
            Event::End(end) => match end.name().as_ref() {
                "table:table" => tables -= i32::from(tables > 0),
                "table:table-row" if tables == 1 => {
                    let sheet = sheets.last_mut().ok_or(DAMAGED)?;
                    place(sheet, row, rows, &line)?;
                    row = row.saturating_add(rows);
                }
                "table:table-cell" | "table:covered-table-cell" if tables == 1 => {
                    if let Some(done) = cell.take() {
                        finish(done, &mut column, &mut line);
                    }
                }
                "office:annotation" => aside -= i32::from(aside > 0),
                "text:p" => {
                    if let Some(cell) = cell.as_mut().filter(|_| aside == 0) {
                        cell.text.push(' ');
                    }
                }
                _ => {}
            },
            Event::Text(said) => {
                if let Some(cell) = cell.as_mut().filter(|_| aside == 0) {
                    cell.text.push_str(&said);
                }
            }
            Event::GeneralRef(entity) => {
                if let Some(cell) = cell.as_mut().filter(|_| aside == 0) {
                    let entity = format!("&{};", &*entity);
                    cell.text.push_str(&quick_xml::escape::unescape(&entity).unwrap_or_default());
                }
            }
            Event::Eof => break,
            _ => {}
        }
    }
    if tables != 0 || sheets.is_empty() {
        return Err(DAMAGED);
    }
    Ok(sheets)
}

/// Whether the parts are encrypted.
fn locked(zip: &mut ZipArchive<Cursor<&[u8]>>) -> bool {
    let mut manifest = String::new();
    zip.by_name("META-INF/manifest.xml")
        .is_ok_and(|mut part| std::io::Read::read_to_string(&mut part, &mut manifest).is_ok())
        && manifest.contains("encryption-data")
}

fn attribute(start: &BytesStart<'_>, name: &str) -> String {
    let found = start.attributes().flatten().find(|a| a.key.as_ref() == name);
    found.map_or(String::new(), |a| {
        quick_xml::escape::unescape(&a.value).map_or_else(|_| a.value.to_string(), Into::into)
    })
}

fn repeated(start: &BytesStart<'_>, name: &str) -> u32 {
    attribute(start, name).parse().unwrap_or(1).max(1)
}

fn begun(start: &BytesStart<'_>, covered: bool) -> Cell {
    let mut cell = Cell { covered, repeated: 1, ..Cell::default() };
    for a in start.attributes().flatten() {
        let said = || quick_xml::escape::unescape(&a.value).unwrap_or_default().into_owned();
        match a.key.as_ref() {
            "office:value-type" => cell.kind = said(),
            "calcext:value-type" => cell.failed = said() == "error",
            "office:value"
            | "office:date-value"
            | "office:time-value"
            | "office:boolean-value"
            | "office:string-value" => cell.value = said(),
            "table:formula" => cell.formula = true,
            "table:number-columns-repeated" => cell.repeated = said().parse().unwrap_or(1).max(1),
            _ => {}
        }
    }
    cell
}

fn finish(cell: Cell, column: &mut u32, line: &mut Vec<(u32, Cell)>) {
    let at = *column;
    *column = column.saturating_add(cell.repeated);
    let blank = cell.kind.is_empty() && cell.text.trim().is_empty() && !cell.formula;
    if !blank && !cell.covered {
        line.push((at, cell));
    }
}

fn place(sheet: &mut Sheet, row: u32, rows: u32, line: &[(u32, Cell)]) -> Result<(), Refusal> {
    for (at, cell) in line {
        let last_row = row.saturating_add(rows).min(MOST_ROWS + 1);
        let last_column = at.saturating_add(cell.repeated).min(MOST_COLUMNS + 1);
        for row in row..last_row.max(row + 1) {
            for column in *at..last_column.max(at + 1) {
                sheet.put(row, column, shown(cell))?;
            }
        }
    }
    Ok(())
}

fn shown(cell: &Cell) -> Shown {
    let text = cell.text.trim();
    if cell.failed {
        return Shown::marked(text, Mark::Failed);
    }
    match (cell.kind.as_str(), cell.value.parse::<f64>()) {
        ("percentage", Ok(number)) => Shown::text(shown::percent(number)),
        ("float" | "currency", Ok(number)) => Shown::text(shortest(number)),
        ("date", _) => shown::iso_date(&cell.value),
        ("time", _) => shown::duration(&cell.value),
        ("boolean", _) => Shown::truth(cell.value == "true"),
        ("string", _) if text.is_empty() => Shown::text(cell.value.as_str()),
        ("", _) if text.is_empty() && cell.formula => Shown::unfinished(),
        _ => Shown::text(text),
    }
}
