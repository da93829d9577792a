//! Markup that is written as text: pictures for a file, tables of the person's own words.

/// A text in which nothing means markup.
pub fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}
