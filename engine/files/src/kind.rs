//! What a file is, by its content.

use crate::Refusal;

/// The kinds of file that are opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A PDF document.
    Pdf,
    /// A workbook: XLSX, XLS or ODS.
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
    /// What `bytes` are.
    pub(crate) fn of(bytes: &[u8]) -> Result<Kind, Refusal> {
        if bytes.starts_with(b"%PDF") {
            return Ok(Kind::Pdf);
        }
        Ok(Kind::Text)
    }
}
