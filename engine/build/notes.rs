//! The words that stand with rows of facts, each once, apart from the rows.

use std::cell::RefCell;

#[derive(Default)]
pub struct Notes(RefCell<Vec<String>>);

impl Notes {
    /// A row's note as the code writes it.
    pub fn place(&self, note: &str) -> String {
        if note.is_empty() {
            return "Note::NONE".into();
        }
        let mut notes = self.0.borrow_mut();
        let at = notes.iter().position(|other| other == note).unwrap_or_else(|| {
            notes.push(note.into());
            notes.len() - 1
        });
        format!("Note::Row({at})")
    }

    /// All of them.
    pub fn statics(&self) -> String {
        format!("static NOTES: &[&str] = &{:?};\n", self.0.borrow())
    }
}
