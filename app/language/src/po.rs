//! Reads a catalogue: the part of the PO format that ours are written in.
//! Source: GNU gettext manual, "The Format of PO Files" (from memory).

use std::fmt;

/// One text with its translation.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The English text, with holes in braces.
    pub english: String,
    /// The same in the other language; empty where it is still to be done.
    pub said: String,
}

/// Why a catalogue can't be read, and in which line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damage {
    /// The line, counted from 1.
    pub line: usize,
    /// What is wrong with it.
    pub why: &'static str,
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}: {}", self.line, self.why)
    }
}

/// The entries of a catalogue, without its head. Comments are passed over.
///
/// # Errors
/// When a line is none of a comment, `msgid`, `msgstr` or a quoted text, as in
/// a catalogue that was cut off, or one with contexts or plurals, which ours
/// do without.
pub fn entries(text: &str) -> Result<Vec<Entry>, Damage> {
    let mut all: Vec<Entry> = Vec::new();
    let mut in_english = false;
    for (at, line) in text.lines().enumerate() {
        let damaged = |why| Damage { line: at + 1, why };
        let line = line.trim();
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        let quoted = if let Some(rest) = line.strip_prefix("msgid ") {
            all.push(Entry { english: String::new(), said: String::new() });
            in_english = true;
            rest
        } else if let Some(rest) = line.strip_prefix("msgstr ") {
            in_english = false;
            rest
        } else {
            line
        };
        let text = unquoted(quoted.trim()).ok_or(damaged("a quoted text is expected here"))?;
        let entry = all.last_mut().ok_or(damaged("the first text has no msgid"))?;
        if in_english {
            entry.english += &text;
        } else {
            entry.said += &text;
        }
    }
    if in_english {
        return Err(Damage { line: text.lines().count(), why: "the last text has no msgstr" });
    }
    // The head is the translation of nothing.
    all.retain(|entry| !entry.english.is_empty());
    Ok(all)
}

/// The text between quotes.
fn unquoted(text: &str) -> Option<String> {
    let inside = text.strip_prefix('"')?.strip_suffix('"')?;
    let mut out = String::with_capacity(inside.len());
    let mut signs = inside.chars();
    while let Some(sign) = signs.next() {
        match sign {
            '\\' => out.push(match signs.next()? {
                'n' => '\n',
                't' => '\t',
                other @ ('"' | '\\') => other,
                _ => return None,
            }),
            '"' => return None,
            sign => out.push(sign),
        }
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_comments_the_head_and_broken_lines_are_read() {
        let read = entries(
            "# a room\nmsgid \"\"\nmsgstr \"Language: es\\n\"\n\n#. remark\nmsgid \"bed\"\nmsgstr \"bancal\"\n\n\
             msgid \"\"\n\"a \\\"b\\\" \"\n\"c\"\nmsgstr \"\"\n",
        );
        let entry =
            |english: &str, said: &str| Entry { english: english.into(), said: said.into() };
        assert_eq!(read, Ok(vec![entry("bed", "bancal"), entry("a \"b\" c", "")]));
    }

    #[test]
    fn what_is_damaged_is_named_by_its_line() {
        let line = |text| entries(text).map_err(|damage| damage.line);
        assert_eq!(line("msgid \"a\"\nmsgstr \"b"), Err(2));
        assert_eq!(line("msgstr \"b\""), Err(1));
        assert_eq!(line("msgid \"a\"\n"), Err(1));
        assert_eq!(line("msgid \"a\"\nmsgid_plural \"b\"\nmsgstr \"c\""), Err(2));
    }
}
