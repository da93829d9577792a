//! A file, whatever it is, to the plain text that the engine reads.
//!
//! What a file is, its bytes say, never its name. The text is what a person
//! sees in the paste box and may mend: one line for each line of a page or
//! row of a sheet, a tab between cells, a blank cell left blank. Two marks say
//! where a line comes from, each alone on its line:
//!
//! - `[page 2]` before the lines of a page: line 5 after it is line 5 of that page;
//! - `[sheet Results]` before the rows of a sheet: line 5 after it is row 5 of the
//!   sheet, and the text after the second tab is column C.
//!
//! The engine reads past the marks and shows them with each reading.

mod decimal;
mod html;
mod kind;
mod modus;
mod pdf;
mod refusal;
mod text;
mod workbook;

pub use kind::Kind;
pub use refusal::Refusal;

/// The largest file that is opened, bytes.
pub const MOST_BYTES: usize = 20_000_000;

/// A file as text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened {
    /// What the file is.
    pub kind: Kind,
    /// The text, as the module's documentation says.
    pub text: String,
    /// What the person should know of how it was opened, for example that a
    /// hidden sheet was left out.
    pub notes: Vec<String>,
}

/// Opens a file.
///
/// # Errors
/// When it is too large, damaged, locked, or of a kind that holds no text.
pub fn open_file(bytes: &[u8]) -> Result<Opened, Refusal> {
    if bytes.len() > MOST_BYTES {
        return Err(Refusal::TooLarge { allowed: MOST_BYTES });
    }
    match Kind::of(bytes)? {
        Kind::Pdf => pdf::open(bytes),
        Kind::Workbook => workbook::open(bytes),
        Kind::Modus => modus::open(bytes),
        Kind::WebPage => html::open(bytes),
        kind @ (Kind::Text | Kind::Saved) => text::open(bytes, kind),
    }
}
