//! Between the rows of a table.

/// The value at `x` on straight lines between points with rising `xs`;
/// `None` outside them.
pub fn between(xs: &[f64], ys: &[f64], x: f64) -> Option<f64> {
    // A target such as 6.3 is not exact in binary; a hair beyond an end is the end.
    let x = match (xs.first(), xs.last()) {
        (Some(first), Some(last)) if x >= first - 1e-9 && x <= last + 1e-9 => {
            x.clamp(*first, *last)
        }
        _ => return None,
    };
    let right = xs.iter().position(|end| x <= *end)?;
    let left = right.saturating_sub(1);
    let share = if left == right { 0.0 } else { (x - xs[left]) / (xs[right] - xs[left]) };
    Some(ys[left] + share * (ys[right] - ys[left]))
}
