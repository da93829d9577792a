//! A table of facts: a head, and rows that know where they stand.

use std::fmt;

use super::plain::decimal;
use crate::named::Named;

/// What is wrong with a row, and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// The file.
    pub file: String,
    /// The line in it, from 1.
    pub line: u64,
    /// What is wrong, and what would be right.
    pub what: String,
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, line {}: {}", self.file, self.line, self.what)
    }
}

/// A table as it was read: its head, and its rows with their lines.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// The file.
    pub file: String,
    /// The names of the columns.
    pub heads: Vec<String>,
    /// Each row's line, from 1, and its cells.
    pub rows: Rows,
}

/// Rows with their lines, from 1.
pub type Rows = Vec<(u64, Vec<String>)>;

/// The rows of a text with commas, each with its line, from 1; empty ones are left out.
pub fn rows_of(text: &str) -> Rows {
    let mut reader = csv_core::Reader::new();
    let mut left = text.strip_prefix('\u{feff}').unwrap_or(text).as_bytes();
    let (mut cells, mut ends) = (vec![0; text.len() + 1], vec![0; text.len() + 2]);
    let mut rows = Vec::new();
    loop {
        let line = reader.line();
        let (result, read, written, parts) = reader.read_record(left, &mut cells, &mut ends);
        left = &left[read..];
        match result {
            csv_core::ReadRecordResult::End => return rows,
            // There is room for the whole text: the input is empty, and the next call ends.
            csv_core::ReadRecordResult::InputEmpty
            | csv_core::ReadRecordResult::OutputFull
            | csv_core::ReadRecordResult::OutputEndsFull => {
                let (_, _, more, parts) =
                    reader.read_record(&[], &mut cells[written..], &mut ends[parts..]);
                push(&mut rows, line, &cells[..written + more], &ends[..parts]);
                return rows;
            }
            csv_core::ReadRecordResult::Record => {
                push(&mut rows, line, &cells[..written], &ends[..parts]);
            }
        }
    }
}

fn push(rows: &mut Rows, line: u64, cells: &[u8], ends: &[usize]) {
    let mut from = 0;
    let mut row = Vec::new();
    for &end in ends {
        row.push(String::from_utf8_lossy(cells.get(from..end).unwrap_or_default()).into_owned());
        from = end;
    }
    if row.iter().any(|cell| !cell.trim().is_empty()) {
        rows.push((line, row));
    }
}

impl Table {
    /// The table of a file: its first row is the head.
    pub fn of(file: &str, rows: Rows) -> Table {
        let mut rows = rows.into_iter();
        let heads = rows.next().map(|(_, heads)| heads).unwrap_or_default();
        let heads = heads.iter().map(|head| head.trim().to_owned()).collect();
        Table { file: file.into(), heads, rows: rows.collect() }
    }

    /// Every row by `read`, or what is wrong with each that can't be read.
    ///
    /// # Errors
    /// A column that is missing or that nobody knows; a row of another length; what `read` says.
    pub fn read<T>(
        &self,
        columns: &[&str],
        may_lack: &[&str],
        read: impl Fn(Row<'_>) -> Result<T, Wrong>,
    ) -> Result<Vec<T>, Vec<Wrong>> {
        let mut wrong = Vec::new();
        let mut at_head = |what| wrong.push(Wrong { file: self.file.clone(), line: 1, what });
        for head in &self.heads {
            if !columns.contains(&head.as_str()) {
                at_head(format!(
                    "“{head}” is no column here; the columns are: {}",
                    columns.join(", ")
                ));
            }
        }
        for column in columns.iter().filter(|column| !may_lack.contains(column)) {
            if !self.heads.iter().any(|head| head == column) {
                at_head(format!("the column “{column}” is missing"));
            }
        }
        let mut found = Vec::new();
        if wrong.is_empty() {
            for (line, cells) in &self.rows {
                match read(Row { table: self, line: *line, cells }) {
                    Ok(row) => found.push(row),
                    Err(why) => wrong.push(why),
                }
            }
        }
        if wrong.is_empty() { Ok(found) } else { Err(wrong) }
    }
}

/// One row.
#[derive(Clone, Copy, Debug)]
pub struct Row<'a> {
    table: &'a Table,
    line: u64,
    cells: &'a [String],
}

impl<'a> Row<'a> {
    /// What is wrong with this row.
    pub fn wrong(&self, what: impl Into<String>) -> Wrong {
        Wrong { file: self.table.file.clone(), line: self.line, what: what.into() }
    }

    /// The cell under a head; empty where there is none.
    pub fn cell(&self, head: &str) -> &'a str {
        let at = self.table.heads.iter().position(|h| h == head);
        at.and_then(|at| self.cells.get(at)).map_or("", |cell| cell.trim())
    }

    /// A cell that must not be empty.
    ///
    /// # Errors
    /// It is empty.
    pub fn some(&self, head: &str) -> Result<&'a str, Wrong> {
        match self.cell(head) {
            "" => Err(self.wrong(format!("“{head}” is empty"))),
            cell => Ok(cell),
        }
    }

    /// A cell that is a name: lower-case letters, digits and hyphens.
    ///
    /// # Errors
    /// It is empty, or holds something else.
    pub fn id(&self, head: &str) -> Result<String, Wrong> {
        let cell = self.some(head)?;
        let fits = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if cell.chars().all(fits) {
            Ok(cell.into())
        } else {
            Err(self
                .wrong(format!("“{cell}” under “{head}” is no name: use a–z, digits and hyphens")))
        }
    }

    /// The parts of a cell between semicolons.
    pub fn list(&self, head: &str) -> impl Iterator<Item = &'a str> {
        self.cell(head).split(';').map(str::trim).filter(|part| !part.is_empty())
    }

    /// A number.
    ///
    /// # Errors
    /// It is no number, or not finite.
    pub fn number(&self, head: &str) -> Result<f64, Wrong> {
        self.parse(head, self.some(head)?)
    }

    /// A number, or none where the cell is empty.
    ///
    /// # Errors
    /// It is no number, or not finite.
    pub fn number_or_none(&self, head: &str) -> Result<Option<f64>, Wrong> {
        match self.cell(head) {
            "" => Ok(None),
            cell => self.parse(head, cell).map(Some),
        }
    }

    /// A number with its bounds: `110 | 170 | 260`, low, likely and high; or one number that is
    /// all three.
    ///
    /// # Errors
    /// One is no number, there are not three, or they fall.
    pub fn band(&self, head: &str) -> Result<[f64; 3], Wrong> {
        let cell = self.some(head)?;
        let numbers: Vec<f64> =
            cell.split('|').map(|text| self.parse(head, text.trim())).collect::<Result<_, _>>()?;
        match numbers[..] {
            [exactly] => Ok([exactly; 3]),
            [low, likely, high] if low <= likely && likely <= high => Ok([low, likely, high]),
            _ => Err(self.wrong(format!(
                "“{cell}” under “{head}” is no band; write it as: low | likely | high"
            ))),
        }
    }

    /// A number with its bounds, or none where the cell is empty.
    ///
    /// # Errors
    /// As for [`Row::band`].
    pub fn band_or_none(&self, head: &str) -> Result<Option<[f64; 3]>, Wrong> {
        if self.cell(head).is_empty() { Ok(None) } else { self.band(head).map(Some) }
    }

    /// `text` from under `head` as a number.
    pub(super) fn parse(&self, head: &str, text: &str) -> Result<f64, Wrong> {
        decimal(text).ok_or_else(|| {
            self.wrong(format!(
                "“{text}” under “{head}” is no number; write it as 12.5, without its unit"
            ))
        })
    }

    /// What a cell's word stands for, by a list of words and factors.
    ///
    /// # Errors
    /// The word is none of them.
    pub(super) fn factor(&self, head: &str, known: &[(&str, f64)]) -> Result<f64, Wrong> {
        self.known(self.cell(head), head, known)
    }

    /// What `text` from under `head` stands for, likewise.
    pub(super) fn known(
        &self,
        text: &str,
        head: &str,
        known: &[(&str, f64)],
    ) -> Result<f64, Wrong> {
        known.iter().find(|(name, _)| *name == text).map(|(_, factor)| *factor).ok_or_else(|| {
            let names: Vec<&str> = known.iter().map(|(name, _)| *name).collect();
            self.wrong(format!("“{text}” under “{head}”: one of {}", names.join(", ")))
        })
    }

    /// `text` from under `head` as a kind.
    pub(crate) fn named<T: Named>(&self, text: &str) -> Result<T, Wrong> {
        T::ALL.iter().copied().find(|kind| kind.name() == text).ok_or_else(|| {
            let names: Vec<&str> = T::ALL.iter().map(|kind| kind.name()).collect();
            self.wrong(format!("“{text}” is no {}; it is one of: {}", T::WHAT, names.join(", ")))
        })
    }

    /// A cell that names a kind.
    pub(crate) fn kind<T: Named>(&self, head: &str) -> Result<T, Wrong> {
        self.named(self.cell(head))
    }

    /// A cell that lists kinds; `all` is every one.
    pub(crate) fn kinds<T: Named>(&self, head: &str) -> Result<Vec<T>, Wrong> {
        if self.cell(head) == "all" {
            return Ok(T::ALL.to_vec());
        }
        self.list(head).map(|name| self.named(name)).collect()
    }
}
