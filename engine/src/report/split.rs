//! Lines to cells: which mark parts them is decided for each stretch of lines.

use super::marks::{Mark, mark};
use super::{Cell, Place};

/// The marks that part cells, the surest first.
const MARKS: [char; 4] = ['\t', ';', '|', ','];

/// A quoted cell that is not closed within so many bytes was no quoted cell.
const LONGEST_QUOTED: usize = 1_000;

/// A text with so many quotes that never close quotes no cells.
const MOST_UNCLOSED: usize = 1_000;

/// The most cells of a line. Laboratories list some hundred samples side by side; a line with
/// more than this is no row of a soil test, and stays one cell.
const MOST_CELLS: usize = 2_000;

/// The longest line that blanks part into cells, bytes.
const LONGEST_LINE: usize = 20_000;

/// The longest line that a mark parts into cells, bytes.
const LONGEST_ROW: usize = 200_000;

/// The most lines: one for each of 40 results of 20,000 samples, and some more.
pub(super) const MOST_LINES: usize = 1_000_000;

/// Whether a line that stayed one cell is longer, or has more columns, than any line of a soil
/// test.
pub(super) fn is_endless(text: &str) -> bool {
    text.len() > LONGEST_LINE
        || MARKS.iter().any(|&m| text.len() > MOST_CELLS && text.matches(m).count() > MOST_CELLS)
}

/// One line of the source; longer when a quoted cell holds line breaks.
struct Line<'a> {
    text: &'a str,
    number: u32,
    /// `[sheet Results]`: the border between two sheets.
    is_sheet: bool,
    /// The quotes as they are at its start.
    quotes: Quotes,
    /// How often each mark stands outside quotes.
    counts: [usize; 4],
    commas: Commas,
}

/// Commas by what stands round them, to tell `1,5 and 2,5` from a table.
#[derive(Clone, Copy, Default)]
struct Commas {
    in_number: usize,
    before_blank: usize,
    bare: usize,
}

/// All rows that hold something; `None` when there are more than [`MOST_LINES`].
pub(super) fn rows(text: &str) -> Option<Vec<Vec<Cell>>> {
    let lines = lines(text)?;
    let marks = marks_of(&lines);
    let mut rows = Vec::new();
    let mut i = 0;
    while i < lines.len() {
        let line = &lines[i];
        let mut end = i + 1;
        match marks[i] {
            _ if line.is_sheet => rows.push(one_cell(line)),
            Some('|') => {
                // One line that ends a cell at its start does not frame the whole table.
                end = (i + 1..lines.len()).find(|&j| marks[j] != Some('|')).unwrap_or(lines.len());
                let table = &lines[i..end];
                let framed = table.iter().filter(|l| l.text.trim_start().starts_with('|'));
                let framed = framed.count() * 2 >= table.len();
                for line in table {
                    let cells = cells_at_mark(line, '|');
                    rows.push(if line.is_sheet {
                        one_cell(line)
                    } else {
                        in_bars(cells, line, framed)
                    });
                }
            }
            Some(mark) => rows.push(cells_at_mark(line, mark)),
            None => {
                let goes_on = |j: usize| {
                    let next = lines[j].number == lines[j - 1].number + 1;
                    next && marks[j].is_none() && !lines[j].is_sheet
                };
                while end < lines.len() && goes_on(end) {
                    end += 1;
                }
                rows.extend(unmarked(&lines[i..end]));
            }
        }
        i = end;
    }
    rows.retain(|row| row.iter().any(|cell| !cell.text.is_empty()) && !is_rule(row));
    Some(rows)
}

/// A drawn line: `|---|---|` or `=====`.
fn is_rule(row: &[Cell]) -> bool {
    row.iter().all(|c| c.text.chars().all(|c| matches!(c, '-' | '=' | '+' | ':' | '_' | ' ' | '*')))
        && row.iter().map(|c| c.text.len()).sum::<usize>() > 2
}

fn lines(text: &str) -> Option<Vec<Line<'_>>> {
    let mut lines = Vec::new();
    let mut number = 1;
    let mut rest = text;
    let mut quotes = Quotes::default();
    while !rest.is_empty() {
        let at_start = quotes;
        let (line, after) = one_line(rest, &mut quotes);
        let mark = mark(line);
        let is_sheet = matches!(mark, Some(Mark::Sheet(_)));
        if !line.trim().is_empty() && (mark.is_none() || is_sheet) {
            let (counts, commas) =
                if is_sheet { ([0; 4], Commas::default()) } else { count(line, at_start) };
            lines.push(Line { text: line, number, is_sheet, quotes: at_start, counts, commas });
        }
        if lines.len() > MOST_LINES {
            return None;
        }
        number += breaks(&rest[..rest.len() - after.len()]);
        rest = after;
    }
    Some(lines)
}

/// Line breaks in a stretch: `\n`, `\r\n` or a lone `\r`.
fn breaks(text: &str) -> u32 {
    let bytes = text.as_bytes();
    let ends =
        |(i, b): (usize, &u8)| *b == b'\n' || *b == b'\r' && bytes.get(i + 1) != Some(&b'\n');
    bytes.iter().enumerate().filter(|&e| ends(e)).count() as u32
}

/// The first line of a text, over line breaks inside a quoted cell.
fn one_line<'a>(text: &'a str, quotes: &mut Quotes) -> (&'a str, &'a str) {
    let bytes = text.as_bytes();
    let mut i = 0;
    let mut at_start = true;
    while i < bytes.len() {
        match bytes[i] {
            b'\n' | b'\r' => {
                let two = bytes[i] == b'\r' && bytes.get(i + 1) == Some(&b'\n');
                return (&text[..i], &text[i + 1 + usize::from(two)..]);
            }
            b'"' if at_start => {
                i = quotes.closing(bytes, i).unwrap_or(i) + 1;
                at_start = false;
            }
            b => {
                at_start = matches!(b, b'\t' | b';' | b'|' | b',') || at_start && b == b' ';
                i += 1;
            }
        }
    }
    (text, "")
}

/// The quotes that opened a cell and never closed it, as an inch mark or a sign for "the same".
/// Each is looked for afar, so there is an end to it.
#[derive(Clone, Copy, Default)]
struct Quotes {
    unclosed: usize,
}

impl Quotes {
    /// Where the quoted cell that opens at `open` closes.
    fn closing(&mut self, bytes: &[u8], open: usize) -> Option<usize> {
        if self.unclosed > MOST_UNCLOSED {
            return None;
        }
        let close = closing_quote(bytes, open);
        self.unclosed += usize::from(close.is_none());
        close
    }
}

/// Where the quoted cell that opens at `open` closes: at a quote followed by
/// a mark or the line's end.
fn closing_quote(bytes: &[u8], open: usize) -> Option<usize> {
    let mut i = open + 1;
    let end = bytes.len().min(open + LONGEST_QUOTED);
    while i < end {
        if bytes[i] == b'"' {
            match bytes.get(i + 1) {
                Some(b'"') => i += 1,
                None | Some(b'\t' | b';' | b'|' | b',' | b'\n' | b'\r' | b' ') => return Some(i),
                _ => {}
            }
        }
        i += 1;
    }
    None
}

/// Stretches of a line outside quoted cells, and the quoted cells.
fn count(line: &str, mut quotes: Quotes) -> ([usize; 4], Commas) {
    let bytes = line.as_bytes();
    let mut counts = [0; 4];
    let mut commas = Commas::default();
    let mut i = 0;
    let mut at_start = true;
    while i < bytes.len() {
        if bytes[i] == b'"' && at_start {
            i = quotes.closing(bytes, i).unwrap_or(i) + 1;
            at_start = false;
            continue;
        }
        let mark = MARKS.iter().position(|&m| m as u8 == bytes[i]);
        if let Some(mark) = mark {
            counts[mark] += 1;
        }
        if bytes[i] == b',' {
            let digit =
                |at: Option<usize>| at.and_then(|a| bytes.get(a)).is_some_and(u8::is_ascii_digit);
            if digit(i.checked_sub(1)) && digit(Some(i + 1)) {
                commas.in_number += 1;
            } else if bytes.get(i + 1) == Some(&b' ') {
                commas.before_blank += 1;
            } else if i + 1 == bytes.len() && counts[mark.unwrap_or(0)] == 1 {
                // "Dear all,"
            } else {
                commas.bare += 1;
            }
        }
        at_start = mark.is_some() || at_start && bytes[i] == b' ';
        i += 1;
    }
    (counts, commas)
}

/// The mark that parts each line, or `None` where none does.
fn marks_of(lines: &[Line<'_>]) -> Vec<Option<char>> {
    let mut in_run = vec![[false; 4]; lines.len()];
    for mark in 0..MARKS.len() {
        let mut start = 0;
        while start < lines.len() {
            let mut end = start + 1;
            while end < lines.len()
                && lines[start].counts[mark] > 0
                && alike(lines[end - 1].counts[mark], lines[end].counts[mark])
            {
                end += 1;
            }
            let run = &lines[start..end];
            if run.len() > 1
                && run[0].counts[mark] > 0
                && (MARKS[mark] != ',' || is_comma_table(run))
            {
                in_run[start..end].iter_mut().for_each(|l| l[mark] = true);
            }
            start = end;
        }
    }
    lines
        .iter()
        .zip(in_run)
        .map(|(line, run)| {
            (0..4)
                .find(|&m| run[m])
                .or_else(|| (0..3).find(|&m| line.counts[m] > 0))
                .map(|m| MARKS[m])
        })
        .collect()
}

/// Whether two lines can be rows of one table: ragged ends are common.
fn alike(a: usize, b: usize) -> bool {
    b > 0 && a.abs_diff(b) <= if a >= 2 { (a / 4).max(1) } else { 0 }
}

/// Commas part cells unless they are decimals, or only ever part phrases.
fn is_comma_table(run: &[Line<'_>]) -> bool {
    let sum = |part: fn(&Commas) -> usize| run.iter().map(|l| part(&l.commas)).sum::<usize>();
    let (in_number, before_blank, bare) =
        (sum(|c| c.in_number), sum(|c| c.before_blank), sum(|c| c.bare));
    if !run.iter().any(|l| l.text.contains(|c: char| c.is_ascii_digit())) {
        return false;
    }
    if bare == 0 {
        // "Organic matter, 3,4 %" and "Zinc, ppm   1.2" are lines, not rows.
        let wide = run.iter().any(|l| l.text.trim().contains("  "));
        return before_blank > 0 && in_number == 0 && run[0].counts[3] > 1 && !wide;
    }
    true
}

/// A line as one cell.
fn one_cell(line: &Line<'_>) -> Vec<Cell> {
    vec![cell(line, &mut Chars::new(line.text), 0, line.text.len())]
}

fn cells_at_mark(line: &Line<'_>, mark: char) -> Vec<Cell> {
    let marks = MARKS.iter().zip(line.counts).find(|&(&m, _)| m == mark);
    if line.text.len() > LONGEST_ROW || marks.is_some_and(|(_, count)| count > MOST_CELLS) {
        return one_cell(line);
    }
    let bytes = line.text.as_bytes();
    let mut quotes = line.quotes;
    let mut cells = Vec::new();
    let mut places = Chars::new(line.text);
    let mut start = 0;
    let mut i = 0;
    let mut at_start = true;
    loop {
        if i >= bytes.len() || bytes[i] == mark as u8 {
            cells.push(cell(line, &mut places, start, i));
            if i >= bytes.len() {
                break;
            }
            start = i + 1;
            at_start = true;
        } else if bytes[i] == b'"' && at_start {
            i = quotes.closing(bytes, i).unwrap_or(i);
            at_start = false;
        } else {
            at_start &= bytes[i] == b' ';
        }
        i += 1;
    }
    cells
}

/// The cells without those outside the bars at both ends, which are the table's frame.
fn in_bars(mut cells: Vec<Cell>, line: &Line<'_>, framed: bool) -> Vec<Cell> {
    if cells.last().is_some_and(|c| c.text.is_empty()) {
        cells.pop();
    }
    if framed && line.text.trim_start().starts_with('|') && !cells.is_empty() {
        cells.remove(0);
    }
    cells
}

/// Counts characters up to a byte, moving forward only.
struct Chars<'a> {
    text: &'a str,
    byte: usize,
    count: u32,
}

impl<'a> Chars<'a> {
    fn new(text: &'a str) -> Chars<'a> {
        Chars { text, byte: 0, count: 0 }
    }

    fn before(&mut self, byte: usize) -> u32 {
        if byte > self.byte {
            self.count += self.text[self.byte..byte].chars().count() as u32;
            self.byte = byte;
        }
        self.count
    }
}

/// The cell between two bytes, without blanks and quotes.
fn cell(line: &Line<'_>, places: &mut Chars<'_>, start: usize, end: usize) -> Cell {
    let raw = &line.text[start..end];
    let trimmed = raw.trim();
    let from = start + (raw.len() - raw.trim_start().len());
    let inner = trimmed.strip_prefix('"').and_then(|t| t.strip_suffix('"'));
    let text = match inner {
        Some(inner) => one_blank(&inner.replace("\"\"", "\"")),
        None => trimmed.to_string(),
    };
    let first = places.before(from);
    // A blank cell between two marks has no width, in quotes or not.
    let line_one = if text.is_empty() { "" } else { trimmed };
    let shown = line_one.split(['\n', '\r']).next().unwrap_or("").chars().count() as u32;
    // Counting goes on from the start of this cell: the next cell lies further right.
    Cell { text, place: Place { line: line.number, start: first, end: first + shown } }
}

/// Line breaks inside a cell are blanks to a reader.
fn one_blank(text: &str) -> String {
    if text.contains(['\n', '\r']) {
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    } else {
        text.trim().to_string()
    }
}

/// Lines that no mark parts: a table held by blanks, or lines of text.
fn unmarked(lines: &[Line<'_>]) -> Vec<Vec<Cell>> {
    let wide = |line: &Line<'_>| match quoted(line) {
        Some(cells) => cells,
        None if line.text.len() > LONGEST_LINE => one_cell(line),
        None => parted(line, 2),
    };
    let wide: Vec<Vec<Cell>> = lines.iter().map(wide).collect();
    if wide.iter().all(|row| row.len() == 1)
        && let Some(narrow) = single_blanks(lines)
    {
        return narrow;
    }
    align(headings_parted(wide))
}

/// The headings that stand one blank apart over as many numbers: `Zn(ppm) Mn(ppm) Cu(ppm)`.
fn headings_parted(mut rows: Vec<Vec<Cell>>) -> Vec<Vec<Cell>> {
    for i in 1..rows.len() {
        let (before, rest) = rows.split_at_mut(i);
        let (head, below) = (&mut before[i - 1], &rest[0]);
        if head.len() > 1 && head.len() < below.len() {
            let parted: Vec<Cell> = head.iter().flat_map(|c| heading_parted(c, below)).collect();
            *head = parted;
        }
    }
    rows
}

fn heading_parted(heading: &Cell, below: &[Cell]) -> Vec<Cell> {
    let mut words: Vec<Cell> = Vec::new();
    let mut start = heading.place.start;
    for word in heading.text.split(' ') {
        let end = start + word.chars().count() as u32;
        words.push(Cell { text: word.into(), place: Place { start, end, ..heading.place } });
        start = end + 1;
    }
    let near = |a: Place, b: Place| a.end + 1 > b.start && b.end + 1 > a.start;
    let under: Vec<&Cell> = below.iter().filter(|c| near(c.place, heading.place)).collect();
    let number = |c: &Cell| c.text.starts_with(|c: char| c.is_ascii_digit() || c == '<');
    let each = words.len() == under.len()
        && words.iter().zip(&under).all(|(w, c)| near(w.place, c.place) && number(c));
    let bracketed = words.iter().all(|w| w.text.ends_with(')') && w.text.len() > 2);
    if each && words.len() > 1 && (bracketed || words.len() > 2) {
        words
    } else {
        vec![heading.clone()]
    }
}

/// A line that is one quoted cell, as the title over a delimited table.
fn quoted(line: &Line<'_>) -> Option<Vec<Cell>> {
    let inner = line.text.trim().strip_prefix('"')?.strip_suffix('"')?;
    (!inner.contains('"')).then(|| one_cell(line))
}

/// The cells of a line parted by at least so many blanks.
fn parted(line: &Line<'_>, blanks: usize) -> Vec<Cell> {
    let mut cells: Vec<Cell> = Vec::new();
    let mut text = String::new();
    let (mut start, mut end, mut gap) = (0, 0, 0);
    let mut push = |text: &mut String, start: u32, end: u32| {
        if !text.is_empty() {
            let place = Place { line: line.number, start, end };
            cells.push(Cell { text: std::mem::take(text), place });
        }
    };
    for (at, c) in (0..).zip(line.text.chars()) {
        if c.is_whitespace() {
            gap += 1;
            continue;
        }
        if gap >= blanks {
            push(&mut text, start, end);
        } else if !text.is_empty() {
            text.extend(std::iter::repeat_n(' ', gap));
        }
        if text.is_empty() {
            start = at;
        }
        text.push(c);
        end = at + 1;
        gap = 0;
    }
    push(&mut text, start, end);
    cells
}

/// A table whose columns are one blank apart, as text copied from a PDF: a
/// line of words over lines that end in as many numbers, one at least.
fn single_blanks(lines: &[Line<'_>]) -> Option<Vec<Vec<Cell>>> {
    let [head, body @ ..] = lines else { return None };
    let numeric =
        |c: &Cell| c.text.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '<' | '>'));
    if head.text.len() > LONGEST_LINE {
        return None;
    }
    let mut head = parted(head, 1);
    // "Sample ID" and "Lab No." are one heading.
    let second = head.get(1)?.text.to_ascii_lowercase();
    if matches!(second.trim_end_matches('.'), "id" | "no" | "name" | "number" | "#") {
        join_first(&mut head, 2);
    }
    if head.len() < 3 || head.iter().any(numeric) {
        return None;
    }
    let columns = head.len();
    let mut rows = vec![head];
    for line in body {
        let mut row = parted(line, 1);
        let spare = row.len().checked_sub(columns)?;
        if row[..spare + 1].iter().skip(1).any(numeric) || !row[spare + 1..].iter().all(numeric) {
            return None;
        }
        join_first(&mut row, spare + 1);
        rows.push(row);
    }
    (rows.len() > 1).then_some(rows)
}

/// Makes one cell of the first few.
fn join_first(row: &mut Vec<Cell>, count: usize) {
    let rest = row.split_off(count);
    let text = row.iter().map(|c| c.text.as_str()).collect::<Vec<_>>().join(" ");
    let place = Place { end: row[count - 1].place.end, ..row[0].place };
    row.clear();
    row.push(Cell { text, place });
    row.extend(rest);
}

/// So many rows may stand between a head that lacks its first cell and the first full row.
const MOST_BETWEEN: usize = 5;

/// Puts the cells of shorter rows under the heading they stand below, so that
/// a blank cell does not shift its row.
fn align(mut rows: Vec<Vec<Cell>>) -> Vec<Vec<Cell>> {
    // A head that stands wholly to the right of the names below it lacks its first cell; a title
    // of the first results, and rows that lack their last cells, may stand between.
    for i in 1..rows.len() {
        let (before, rest) = rows.split_at_mut(i);
        let head = &mut before[i - 1];
        if head.len() < 2 {
            continue;
        }
        let start = head[0].place.start;
        let left = rest.iter().take(MOST_BETWEEN).take_while(|row| row[0].place.end < start);
        let figures = head.iter().any(|c| c.text.bytes().any(|b| b.is_ascii_digit()));
        let columns = left.into_iter().take(if figures { 1 } else { MOST_BETWEEN });
        if let Some(columns) = columns.into_iter().find(|row| row.len() > head.len())
            && let Some(placed) = under(columns, head)
        {
            *head = placed;
        }
    }
    let mut head: Option<Vec<Cell>> = None;
    for row in &mut rows {
        if row.len() < 2 {
            continue;
        }
        match &head {
            Some(columns) if row.len() < columns.len() => {
                if let Some(placed) = under(columns, row) {
                    *row = placed;
                }
            }
            _ => head = Some(row.clone()),
        }
    }
    rows
}

fn under(columns: &[Cell], row: &[Cell]) -> Option<Vec<Cell>> {
    let line = row[0].place.line;
    let mut placed: Vec<Cell> = columns
        .iter()
        .map(|c| Cell { text: String::new(), place: Place { line, ..c.place } })
        .collect();
    let mut free = 0;
    for cell in row {
        let apart = |c: &Cell| {
            let (a, b) = (cell.place, c.place);
            if a.end > b.start && b.end > a.start {
                0
            } else {
                b.start.abs_diff(a.end).min(a.start.abs_diff(b.end)) + 1
            }
        };
        // The columns stand from left to right: once they lie further off, so do all others.
        let mut best = free;
        let mut least = apart(columns.get(free)?);
        for (i, column) in columns.iter().enumerate().skip(free + 1) {
            let now = apart(column);
            if now > least {
                break;
            }
            if now < least {
                (best, least) = (i, now);
            }
        }
        placed[best] = cell.clone();
        free = best + 1;
    }
    Some(placed)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rows(text: &str) -> Vec<Vec<Cell>> {
        super::rows(text).expect("few lines")
    }

    fn shown(text: &str) -> Vec<String> {
        rows(text)
            .iter()
            .map(|r| r.iter().map(|c| c.text.as_str()).collect::<Vec<_>>().join("¦"))
            .collect()
    }

    #[test]
    fn each_mark_parts_its_table() {
        for mark in ["\t", ";", "|", ",", "    "] {
            let text = ["Sample", "pH", "P\nA", "6.2", "18\nB", "5.6", "12"].join(mark);
            assert_eq!(shown(&text), ["Sample¦pH¦P", "A¦6.2¦18", "B¦5.6¦12"], "{mark:?}");
        }
        assert_eq!(
            shown("Sample pH P\nA 6.2 18\nB 5.6 12"),
            ["Sample¦pH¦P", "A¦6.2¦18", "B¦5.6¦12"]
        );
    }

    #[test]
    fn a_bar_table_loses_its_frame_and_rules() {
        let text = "| Test | Result |\n|------|-------:|\n| pH | 6.2 |\n| P | |";
        assert_eq!(shown(text), ["Test¦Result", "pH¦6.2", "P¦"]);
    }

    #[test]
    fn decimal_commas_part_nothing() {
        assert_eq!(shown("pH 6,2\nP 18,5"), ["pH 6,2", "P 18,5"]);
        assert_eq!(
            shown("Organic matter, 3,4 %\nCEC, 11,4"),
            ["Organic matter, 3,4 %", "CEC, 11,4"]
        );
    }

    #[test]
    fn quotes_hold_marks_and_line_breaks() {
        let text = "a,b,c\n\"1,450\",\"say \"\"no\"\"\",\"two\nlines\"\n1,2,3";
        assert_eq!(shown(text), ["a¦b¦c", "1,450¦say \"no\"¦two lines", "1¦2¦3"]);
        let rows = rows(text);
        assert_eq!(rows[2][0].place, Place { line: 4, start: 0, end: 1 });
        assert_eq!(rows[1][1].place, Place { line: 2, start: 8, end: 20 });
    }

    #[test]
    fn a_quote_that_never_closes_swallows_nothing() {
        assert_eq!(shown("\"pH,6.2\nP,18"), ["\"pH¦6.2", "P¦18"]);
    }

    #[test]
    fn quotes_that_never_close_are_looked_for_only_so_often() {
        let far = "x\t1\n".repeat(LONGEST_QUOTED);
        let text = |unclosed: usize| "\"x\t1\n".repeat(unclosed) + &far + "\"a\tb\"\t2";
        let last = |text: &str| shown(text).pop().unwrap();
        assert_eq!(last(&text(MOST_UNCLOSED)), "a\tb¦2");
        assert_eq!(last(&text(MOST_UNCLOSED + 1)), "\"a¦b\"¦2");
    }

    #[test]
    fn a_line_without_end_stays_one_cell() {
        let wide = |cells: usize| vec!["6.5"; cells].join("\t");
        let widths = |text: &str| rows(text).iter().map(Vec::len).collect::<Vec<_>>();
        assert_eq!(widths(&format!("{}\n{}", wide(2_001), wide(2_002))), [2_001, 1]);
        assert_eq!(widths(&format!("pH  6.5\n{}", "pH  6.5  ".repeat(3_000))), [2, 1]);
        let long_cell = format!("P\t18{}\nK\t120", " ± 2".repeat(50_000));
        for text in [wide(2_002), "7".repeat(300_000), long_cell] {
            assert!(is_endless(&rows(&text)[0][0].text));
        }
        assert!(!is_endless("Method: Mehlich-3, soil sampled in spring"));
    }

    #[test]
    fn a_blank_cell_of_an_aligned_table_stays_blank() {
        let text = "Sample     pH    Buffer   P\nA          6.2   6.8      18\nB          7.1            56";
        assert_eq!(shown(text), ["Sample¦pH¦Buffer¦P", "A¦6.2¦6.8¦18", "B¦7.1¦¦56"]);
    }

    #[test]
    fn a_head_without_its_first_cell_stays_over_its_columns() {
        let text = "          Lawn    Garden\npH        5.8     6.7\nP ppm     44      188";
        assert_eq!(shown(text), ["¦Lawn¦Garden", "pH¦5.8¦6.7", "P ppm¦44¦188"]);
    }

    #[test]
    fn one_mark_more_at_the_end_of_a_row_breaks_no_table() {
        assert_eq!(
            shown("Sample,pH,P\nA,6.2,18,\nB,5.6,12,"),
            ["Sample¦pH¦P", "A¦6.2¦18¦", "B¦5.6¦12¦"]
        );
    }

    #[test]
    fn preamble_lines_and_a_table_live_together() {
        let text = "Alder Row Lab\nMethod: Mehlich-3\nSample,pH,P\nA,6.2,18";
        assert_eq!(shown(text), ["Alder Row Lab", "Method: Mehlich-3", "Sample¦pH¦P", "A¦6.2¦18"]);
    }

    #[test]
    fn places_count_characters_from_the_line_start() {
        let rows = rows("\n  Bör  <0.2 ppm");
        assert_eq!(rows[0][0].place, Place { line: 2, start: 2, end: 5 });
        assert_eq!(rows[0][1].place, Place { line: 2, start: 7, end: 15 });
    }
}
