//! Marks that an opened file leaves in its text: `[page 2]` before the lines of
//! a page, `[sheet Results]` before the rows of a sheet.

use std::fmt;

use super::Place;

/// A mark, alone on its line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mark<'a> {
    /// A new page: a table may go on across it.
    Page(&'a str),
    /// A new sheet: nothing goes on across it.
    Sheet(&'a str),
}

/// The mark that a line is, if it is one.
pub(super) fn mark(line: &str) -> Option<Mark<'_>> {
    let inner = line.trim().strip_prefix('[')?.strip_suffix(']')?;
    if let Some(name) = inner.strip_prefix("sheet ") {
        return Some(Mark::Sheet(name.trim()));
    }
    let page = inner.strip_prefix("page ")?;
    page.bytes().all(|b| b.is_ascii_digit()).then_some(Mark::Page(page))
}

/// Whether a text has marks of pages.
pub(super) fn has_pages(text: &str) -> bool {
    text.lines().any(|line| matches!(mark(line), Some(Mark::Page(_))))
}

/// `Page 2 of 3`, `Seite 2/3`, `- 2 -`: a running line that says nothing of a soil.
pub(super) fn is_page_number(text: &str) -> bool {
    let bare = text.trim_matches(|c: char| !c.is_ascii_alphanumeric());
    let word = ["page", "seite", "pagina", "p."]
        .iter()
        .find(|w| bare.get(..w.len()).is_some_and(|t| t.eq_ignore_ascii_case(w)));
    let numbers = &bare[word.map_or(0, |w| w.len())..];
    let framed = word.is_some() || text.starts_with("- ") && text.ends_with(" -");
    let mut words = numbers.split([' ', '/', ':']).filter(|w| !w.is_empty());
    let number = |w: &str| w.len() < 5 && w.bytes().all(|b| b.is_ascii_digit());
    framed
        && words.next().is_some_and(number)
        && words.all(|w| number(w) || matches!(w, "of" | "von" | "de" | "sur"))
}

/// A place in words for the reader: `page 2, line 5`, `sheet Results, cell C7` or `line 12`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Whereabouts {
    /// A line of a page, both from 1.
    Page {
        /// The page's number.
        page: String,
        /// The line on that page.
        line: u32,
    },
    /// A cell of a sheet.
    Cell {
        /// The sheet's name.
        sheet: String,
        /// The cell as a spreadsheet names it, for example `C7`.
        cell: String,
    },
    /// A line of the text, from 1.
    Line(u32),
}

impl fmt::Display for Whereabouts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Whereabouts::Page { page, line } => write!(f, "page {page}, line {line}"),
            Whereabouts::Cell { sheet, cell } => write!(f, "sheet {sheet}, cell {cell}"),
            Whereabouts::Line(line) => write!(f, "line {line}"),
        }
    }
}

/// The lines of a text and the marks among them, to say where places lie.
pub struct Lines<'a> {
    lines: Vec<&'a str>,
    /// The marks, each with its line from 1.
    marks: Vec<(u32, Mark<'a>)>,
}

impl<'a> Lines<'a> {
    /// The lines of the text that the places come from.
    pub fn of(text: &'a str) -> Lines<'a> {
        let mut lines = Vec::new();
        let mut rest = text;
        while !rest.is_empty() {
            let end = rest.find(['\n', '\r']).unwrap_or(rest.len());
            lines.push(&rest[..end]);
            let two = rest[end..].starts_with("\r\n");
            rest = rest.get(end + 1 + usize::from(two)..).unwrap_or("");
        }
        let marks = (1..).zip(&lines).filter_map(|(at, line)| Some((at, mark(line)?))).collect();
        Lines { lines, marks }
    }

    /// The lines, in their order.
    pub fn iter(&self) -> impl Iterator<Item = &'a str> {
        self.lines.iter().copied()
    }

    /// Where a place lies for the reader.
    pub fn whereabouts(&self, place: Place) -> Whereabouts {
        let before = self.marks.partition_point(|(at, _)| *at < place.line);
        let here = self.lines.get(place.line.wrapping_sub(1) as usize);
        match (here, before.checked_sub(1).map(|last| self.marks[last])) {
            (Some(_), Some((at, Mark::Page(page)))) => {
                Whereabouts::Page { page: page.into(), line: place.line - at }
            }
            (Some(here), Some((at, Mark::Sheet(name)))) => {
                let tabs = here.chars().take(place.start as usize).filter(|c| *c == '\t');
                let cell = format!("{}{}", column(tabs.count()), place.line - at);
                Whereabouts::Cell { sheet: name.into(), cell }
            }
            _ => Whereabouts::Line(place.line),
        }
    }
}

/// Where one place lies for the reader of the text it was read from.
pub fn whereabouts(text: &str, place: Place) -> Whereabouts {
    Lines::of(text).whereabouts(place)
}

/// The letters of a column, from 0: `A`, `Z`, `AA`.
fn column(mut index: usize) -> String {
    let mut letters = String::new();
    loop {
        letters.insert(0, char::from(b'A' + (index % 26) as u8));
        if index < 26 {
            return letters;
        }
        index = index / 26 - 1;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_are_alone_on_their_line() {
        assert_eq!(mark("[page 12]"), Some(Mark::Page("12")));
        assert_eq!(mark("[sheet Bed [2], north]\r"), Some(Mark::Sheet("Bed [2], north")));
        for text in ["[page]", "[page two]", "see [page 2]", "[sheet", "page 2", "[120-160]"] {
            assert_eq!(mark(text), None, "{text}");
        }
    }

    #[test]
    fn running_lines_are_known() {
        for text in ["Page 2 of 3", "page 2", "Seite 2/3", "- 2 -", "Page: 1 of 10"] {
            assert!(is_page_number(text), "{text}");
        }
        for text in ["2", "P 2", "Page Farm", "Page 2 pH 6.2", "2-", "Page of"] {
            assert!(!is_page_number(text), "{text}");
        }
    }

    #[test]
    fn a_place_in_words() {
        let at = |text: &str, line, start| {
            whereabouts(text, Place { line, start, end: start + 1 }).to_string()
        };
        let pages = "[page 1]\npH 6.2\n\r\n[page 2]\r\nOne\n\nP 18\n";
        assert_eq!(at(pages, 2, 3), "page 1, line 1");
        assert_eq!(at(pages, 7, 2), "page 2, line 3");
        let sheets = "Title\n[sheet North]\n\nName\tpH\tµ\tx\n";
        assert_eq!(at(sheets, 4, 5), "sheet North, cell B2");
        assert_eq!(at(sheets, 4, 10), "sheet North, cell D2");
        assert_eq!(at(sheets, 1, 0), "line 1");
        assert_eq!(at("", 3, 0), "line 3");
        let names: Vec<String> = [0, 25, 26, 51, 52, 701, 702].map(column).into();
        assert_eq!(names, ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]);
    }
}
