//! Numbers as a person would write them.

/// The shortest decimal that is the same number to 15 digits, as spreadsheets
/// keep them: 0.1 + 0.2 is 0.3.
pub(crate) fn shortest(number: f64) -> String {
    let rounded = format!("{number:.14e}").parse().unwrap_or(number);
    // The sign of zero says nothing.
    let rounded = if rounded == 0.0 { 0.0 } else { rounded };
    let size = f64::abs(rounded);
    if size != 0.0 && !(1e-9..1e15).contains(&size) {
        format!("{rounded:e}")
    } else {
        rounded.to_string()
    }
}
