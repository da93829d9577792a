//! Web pages and tables copied from them: a table row is a line with tabs, all
//! other text is lines.

use html5gum::{StartTag, Token, Tokenizer};

use crate::{Kind, Opened, Refusal, text};

/// Rows and columns that one cell may span, columns of a table, and cells of the whole page.
const MOST_SPAN: usize = 1_000;
const MOST_COLUMNS: usize = 2_000;
const MOST_CELLS: usize = 5_000_000;

/// Elements whose content is not seen.
const UNSEEN: &[&[u8]] = &[
    b"script",
    b"style",
    b"template",
    b"noscript",
    b"title",
    b"select",
    b"textarea",
    b"svg",
    b"object",
];

/// Elements that begin a line of their own.
const BLOCKS: &[&[u8]] = &[
    b"p",
    b"div",
    b"h1",
    b"h2",
    b"h3",
    b"h4",
    b"h5",
    b"h6",
    b"li",
    b"ul",
    b"ol",
    b"dl",
    b"dt",
    b"dd",
    b"section",
    b"article",
    b"header",
    b"footer",
    b"main",
    b"pre",
    b"blockquote",
    b"hr",
    b"form",
    b"caption",
    b"address",
    b"center",
    b"figure",
    b"figcaption",
    b"body",
    b"html",
];

/// Elements without an end.
const VOID: &[&[u8]] = &[
    b"br", b"hr", b"img", b"input", b"meta", b"link", b"col", b"area", b"base", b"embed",
    b"source", b"track", b"wbr",
];

pub(crate) fn open(bytes: &[u8]) -> Result<Opened, Refusal> {
    let whole = text::decode(bytes)?;
    let mut page = Page::default();
    for Ok(token) in Tokenizer::new(fragment(&whole)) {
        match token {
            Token::StartTag(tag) => page.begin(&tag),
            Token::EndTag(tag) => page.end(&tag.name),
            Token::String(said) => page.say(&String::from_utf8_lossy(&said)),
            _ => {}
        }
        if page.cells > MOST_CELLS {
            return Err(Refusal::Swells);
        }
    }
    // A title left open hides the end of the page, but not the tables begun before it.
    page.unseen.clear();
    while !page.tables.is_empty() {
        page.end(b"table");
    }
    page.end_line();
    if page.text.trim().is_empty() {
        return Err(Refusal::Empty);
    }
    Ok(Opened { kind: Kind::WebPage, text: page.text, notes: Vec::new() })
}

/// What was copied, when the clipboard says where it begins.
fn fragment(text: &str) -> &str {
    let cut = |text: &'_ str| -> Option<(usize, usize)> {
        let start = text.find("<!--StartFragment")?;
        let start = start + text[start..].find("-->")? + 3;
        let end = text[start..].find("<!--EndFragment").map_or(text.len(), |e| start + e);
        Some((start, end))
    };
    let Some((start, end)) = cut(text) else { return text };
    // Some programs set the mark inside the table; the rows need its beginning.
    let before = &text[..start];
    let table = before.rfind("<table").or_else(|| before.rfind("<TABLE"));
    let closed = before.rfind("</table").or_else(|| before.rfind("</TABLE"));
    match table {
        Some(table) if closed.is_none_or(|c| c < table) => &text[table..end],
        _ => &text[start..end],
    }
}

#[derive(Default)]
struct Page {
    text: String,
    /// The line under way outside tables.
    line: String,
    /// The tables under way, the innermost last.
    tables: Vec<Table>,
    /// Elements within one that is not seen, itself counted, by name.
    unseen: Vec<Vec<u8>>,
    /// How many `pre` are open.
    as_typed: usize,
    /// Whether a raised text is open.
    raised: bool,
    cells: usize,
}

#[derive(Default)]
struct Table {
    rows: Vec<Vec<String>>,
    /// For each column, in how many more rows a cell from above fills it.
    filled: Vec<usize>,
    /// The cell under way, and the rows and columns it spans.
    cell: Option<(String, usize, usize)>,
    in_row: bool,
    /// A caption is no cell.
    caption: String,
    in_caption: bool,
}

impl Table {
    /// Sets the cell under way; gives the count of cells that this makes.
    fn end_cell(&mut self) -> usize {
        let Some((text, down, across)) = self.cell.take() else { return 0 };
        let row = match self.rows.last_mut() {
            Some(row) if self.in_row => row,
            _ => return 0,
        };
        let before = row.len();
        while self.filled.get(row.len()).is_some_and(|left| *left > 0) {
            row.push(String::new());
        }
        let from = row.len();
        if from + across > MOST_COLUMNS {
            return MOST_CELLS + 1;
        }
        row.push(squeezed(&text));
        row.extend(std::iter::repeat_n(String::new(), across - 1));
        if self.filled.len() < row.len() {
            self.filled.resize(row.len(), 0);
        }
        // One more than below, since the end of this row takes one off.
        self.filled[from..].iter_mut().take(across).for_each(|left| *left = down);
        row.len() - before
    }

    fn end_row(&mut self) -> usize {
        let added = self.end_cell();
        if self.in_row
            && let Some(row) = self.rows.last_mut()
        {
            while row.len() < self.filled.len()
                && self.filled[row.len()..].iter().any(|left| *left > 0)
            {
                row.push(String::new());
            }
            self.filled.iter_mut().for_each(|left| *left = left.saturating_sub(1));
        }
        self.in_row = false;
        added
    }

    fn begin_row(&mut self) {
        self.rows.push(Vec::new());
        self.in_row = true;
    }

    /// The rows up to here, and what the cell under way has said, which are then no longer its own.
    fn said_so_far(&mut self) -> Vec<String> {
        let cell = self.cell.as_mut().map(|(text, ..)| std::mem::take(text)).unwrap_or_default();
        let rows = std::mem::take(&mut self.rows);
        if self.in_row {
            self.begin_row();
        }
        let rows = rows.iter().map(|row| row.join("\t").trim_end().to_string());
        let lines = rows.chain(cell.split('\n').map(squeezed));
        lines.filter(|line| !line.is_empty()).collect()
    }

    /// A table that only holds other things in place, not cells in columns.
    fn is_layout(&self) -> bool {
        self.rows.iter().all(|r| r.iter().filter(|c| !c.is_empty()).count() < 2)
    }
}

impl Page {
    fn begin(&mut self, tag: &StartTag<()>) {
        let name: &[u8] = &tag.name;
        let void = VOID.contains(&name);
        if !self.unseen.is_empty() || UNSEEN.contains(&name) || is_hidden(tag) {
            if !void && !tag.self_closing {
                self.unseen.push(name.to_vec());
            }
            return;
        }
        match name {
            b"table" => {
                if self.tables.is_empty() {
                    self.end_line();
                }
                self.tables.push(Table::default());
            }
            b"br" => self.break_line(),
            b"tr" => {
                if let Some(table) = self.tables.last_mut() {
                    self.cells += table.end_row();
                    table.begin_row();
                }
            }
            b"td" | b"th" => {
                if let Some(table) = self.tables.last_mut() {
                    self.cells += table.end_cell();
                    if !table.in_row {
                        table.begin_row();
                    }
                    let span = |key: &[u8]| {
                        let said = tag
                            .attributes
                            .get(key)
                            .map(|v| String::from_utf8_lossy(v).into_owned());
                        said.and_then(|v| v.trim().parse().ok()).unwrap_or(1).clamp(1, MOST_SPAN)
                    };
                    table.cell = Some((String::new(), span(b"rowspan"), span(b"colspan")));
                }
            }
            b"caption" if !self.tables.is_empty() => {
                if let Some(table) = self.tables.last_mut() {
                    table.in_caption = true;
                }
            }
            b"sup" => self.raised = true,
            _ => {
                self.as_typed += usize::from(name == b"pre");
                if BLOCKS.contains(&name) {
                    self.break_line();
                }
            }
        }
    }

    fn end(&mut self, name: &[u8]) {
        if !self.unseen.is_empty() {
            // An element left open inside ends with the one around it.
            if let Some(at) = self.unseen.iter().rposition(|n| n == name) {
                self.unseen.truncate(at);
            }
            return;
        }
        match name {
            b"table" => self.end_table(),
            b"tr" => {
                if let Some(table) = self.tables.last_mut() {
                    self.cells += table.end_row();
                }
            }
            b"td" | b"th" => {
                if let Some(table) = self.tables.last_mut() {
                    self.cells += table.end_cell();
                }
            }
            b"caption" => {
                if let Some(table) = self.tables.last_mut() {
                    table.in_caption = false;
                }
            }
            b"sup" => self.raised = false,
            _ => {
                self.as_typed -= usize::from(name == b"pre" && self.as_typed > 0);
                if BLOCKS.contains(&name) {
                    self.break_line();
                }
            }
        }
    }

    fn end_table(&mut self) {
        let Some(mut table) = self.tables.pop() else { return };
        self.cells += table.end_row();
        let caption = squeezed(&table.caption);
        if let Some(outer) = self.tables.last_mut() {
            // A table in a cell: a table of its own when it has columns, else words of the cell.
            if table.is_layout()
                && let Some((cell, ..)) = &mut outer.cell
            {
                for word in std::iter::once(&caption).chain(table.rows.iter().flatten()) {
                    cell.push(' ');
                    cell.push_str(word);
                }
                return;
            }
        }
        // What the tables around it have said stands before it.
        for outer in &mut self.tables {
            for line in outer.said_so_far() {
                self.text.push_str(&line);
                self.text.push('\n');
            }
        }
        if !caption.is_empty() {
            self.text.push_str(&caption);
            self.text.push('\n');
        }
        let width = table.rows.iter().map(Vec::len).max().unwrap_or(0);
        for row in table.rows.iter().filter(|r| r.iter().any(|c| !c.is_empty())) {
            self.text.push_str(&row.join("\t"));
            self.text.extend(std::iter::repeat_n('\t', width - row.len()));
            self.text.push('\n');
        }
        // Two tables are two.
        self.text.push('\n');
    }

    fn say(&mut self, said: &str) {
        if !self.unseen.is_empty() {
            return;
        }
        if let Some(table) = self.tables.last_mut() {
            if table.in_caption {
                table.caption.push_str(said);
                return;
            }
            if let Some((cell, ..)) = &mut table.cell {
                if self.raised && is_footnote(cell, said) {
                    return;
                }
                // A new line in the source is a blank; one that an element begins is kept.
                cell.extend(said.chars().map(|c| if c == '\n' { ' ' } else { c }));
                return;
            }
            if said.trim().is_empty() {
                return;
            }
        }
        if self.as_typed > 0 {
            let mut lines = said.split('\n');
            self.line.push_str(lines.next().unwrap_or("").trim_end_matches('\r'));
            for line in lines {
                self.end_line();
                self.line.push_str(line.trim_end_matches('\r'));
            }
            return;
        }
        for c in said.chars() {
            let blank = c.is_whitespace() && c != '\u{a0}';
            if !blank {
                self.line.push(c);
            } else if !self.line.is_empty() && !self.line.ends_with(' ') {
                self.line.push(' ');
            }
        }
    }

    /// A new line outside tables, a blank within a cell.
    fn break_line(&mut self) {
        match self.tables.last_mut() {
            Some(Table { cell: Some((cell, ..)), .. }) => cell.push('\n'),
            Some(_) => {}
            None => self.end_line(),
        }
    }

    fn end_line(&mut self) {
        let line = std::mem::take(&mut self.line);
        if !line.trim().is_empty() {
            self.text.push_str(line.trim_end());
            self.text.push('\n');
        }
    }
}

/// Whether the page hides an element.
fn is_hidden(tag: &StartTag<()>) -> bool {
    let style = tag.attributes.get(&b"style"[..]).map(|s| {
        let said = String::from_utf8_lossy(s).to_ascii_lowercase();
        said.chars().filter(|c| !c.is_whitespace()).collect::<String>()
    });
    tag.attributes.contains_key(&b"hidden"[..])
        || style.is_some_and(|s| s.contains("display:none") || s.contains("visibility:hidden"))
}

/// Words with one blank between them.
/// Whether what is raised behind a word points to a footnote: the `a` of `pH<sup>a</sup>`, while
/// that of `cm<sup>3</sup>` is a power.
fn is_footnote(before: &str, raised: &str) -> bool {
    let word = before.rsplit(|c: char| !c.is_alphanumeric()).next().unwrap_or("");
    let length = ["m", "cm", "dm", "mm", "ft", "in", "yd"].contains(&word);
    match raised.trim().as_bytes() {
        [b'a'..=b'f' | b'*'] => !word.is_empty(),
        [b'1'..=b'9'] => !length && word.ends_with(char::is_alphabetic),
        _ => false,
    }
}

fn squeezed(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
