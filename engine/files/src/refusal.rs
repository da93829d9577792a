//! Why a file is not opened, and what to do about it.

use std::fmt;

/// Why a file is not opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Larger than is opened.
    TooLarge {
        /// The most bytes that are opened.
        allowed: usize,
    },
    /// A PDF whose pages are pictures.
    ScannedPdf,
    /// A PDF whose fonts do not say which letters they draw.
    NoLetters,
    /// A PDF that needs a password.
    LockedPdf,
    /// Damaged, or not what its first bytes say.
    Damaged {
        /// What it seems to be, for example `PDF file`.
        what: &'static str,
    },
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::TooLarge { allowed } => write!(
                f,
                "This file is larger than {} MB. Cut it into parts, or copy the table out of it and paste it.",
                allowed / 1_000_000
            ),
            Refusal::ScannedPdf => f.write_str(
                "The pages of this PDF are pictures, so there is no text to read. Ask the laboratory \
                 for the report as a file with text, or type the results in.",
            ),
            Refusal::NoLetters => f.write_str(
                "This PDF shows its letters as drawings without saying which letters they are, so they \
                 can't be read. Ask the laboratory for the report as a spreadsheet, or type the results in.",
            ),
            Refusal::LockedPdf => f.write_str(
                "This PDF is locked with a password. Open it with the password, print it to a new \
                 PDF or copy the table, and use that.",
            ),
            Refusal::Damaged { what } => write!(
                f,
                "This {what} is damaged and can't be read. Ask for it again, or copy what you can see of it and paste it.",
            ),
        }
    }
}

impl std::error::Error for Refusal {}
