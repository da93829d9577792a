//! The columns of a table: their edges, and on which side of their headings
//! numbers stand.

use super::lines::{Cell, Line};

/// A column of a table.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub lo: f64,
    pub hi: f64,
    /// Where its cells begin.
    pub lefts: Edges,
    /// Where its cells end.
    pub rights: Edges,
}

/// Where cells begin or end, each place once, with how often.
#[derive(Clone, Debug, Default)]
pub(super) struct Edges(Vec<(f64, usize)>);

impl Column {
    /// A column that begins with one cell.
    pub fn of(cell: &Cell) -> Column {
        let edge = |x| Edges(vec![(x, 1)]);
        Column { lo: cell.x0, hi: cell.x1, lefts: edge(cell.x0), rights: edge(cell.x1) }
    }
}

impl Edges {
    /// Takes a further edge.
    pub fn put(&mut self, x: f64) {
        if let Some(edge) = self.0.iter_mut().find(|e| (e.0 - x).abs() < 0.2) {
            edge.1 += 1;
        } else if self.0.len() < MOST_EDGES {
            self.0.push((x, 1));
        }
    }

    /// How many cells have their edge here.
    pub fn near(&self, x: f64) -> usize {
        self.0.iter().filter(|e| (e.0 - x).abs() < SAME).map(|e| e.1).sum()
    }

    /// Pairs of cells that share an edge, about.
    pub fn agreement(&self) -> usize {
        self.0.iter().map(|e| e.1 * e.1).sum()
    }
}

/// How a cell is laid over columns it shares no stretch with.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Side {
    /// Part of a head: its lines stand over one another.
    Head,
    /// It stands at the left edge of its column.
    Left,
    /// It stands at the right edge of its column.
    Right,
    /// Nothing tells.
    #[default]
    Either,
}

/// Edges are the same within so many points.
const SAME: f64 = 0.8;
/// Edges that are told apart in one table.
const MOST_EDGES: usize = 300;

/// A number, a limit such as `<0.5`: what a result looks like. `1:1 water`
/// and `0-6 in` are none.
pub(super) fn is_result(text: &str) -> bool {
    if ["ND", "N.D.", "nd", "n.d.", "BDL"].contains(&text) {
        return true;
    }
    let bare = text.trim_start_matches(['<', '>', '≤', '≥', '=', '~', '±', '+', '-', '−', ' ']);
    let rest = bare.trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | ','));
    if rest.len() == bare.len() || !bare.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
        return false;
    }
    let solution = rest.starts_with("N ") || rest.starts_with("M ");
    // The second line of "meq/" over "100 g".
    let unit = bare.starts_with("100") && (rest.starts_with(" g") || rest.starts_with(" cm"));
    !solution && !unit && !rest.starts_with([':', '-', '–', '/', '(', ')'])
}

/// Whether a line holds a result.
pub(super) fn has_result(line: &Line) -> bool {
    line.cells.iter().any(|c| is_result(&c.text))
}

/// What a report says of itself: "Client: …", a date.
pub(super) fn is_about(text: &str) -> bool {
    let digits = text.chars().filter(char::is_ascii_digit).count();
    text.contains(": ") || text.ends_with(':') || digits >= 6
}

/// How far a cell and a stretch lie over one another; below 0 they are apart.
pub(super) fn overlap(lo: f64, hi: f64, cell: &Cell) -> f64 {
    hi.min(cell.x1) - lo.max(cell.x0)
}

/// On which side of their headings results stand: by those that share a
/// stretch with one heading, or else by those that all but touch one, as the
/// numbers of a sheet do that stand at the right edge of their column.
pub(super) fn side_of_headings(head: &[Line], body: &[Line]) -> Side {
    let (mut left, mut right) = (0usize, 0usize);
    let (mut close_left, mut close_right, mut apart) = (0usize, 0usize, 0usize);
    let headings = || head.iter().flat_map(|l| &l.cells);
    for line in body.iter().take(50) {
        // Words stand at the left, and a limit such as `<0.5` may be a word.
        let results = line.cells.iter().skip(1).filter(|c| is_result(&c.text));
        for cell in results.filter(|c| !c.text.starts_with(['<', '>'])) {
            let mut over = headings().filter(|h| overlap(h.x0, h.x1, cell) > 0.0);
            match (over.next(), over.next()) {
                (Some(one), None) => {
                    let off = cell.x0 + cell.x1 - one.x0 - one.x1;
                    left += usize::from(off < -1.0);
                    right += usize::from(off > 1.0);
                }
                (None, _) => {
                    let close = |gap: f64| (0.0..0.35 * line.em).contains(&gap);
                    close_right += usize::from(headings().any(|h| close(h.x0 - cell.x1)));
                    close_left += usize::from(headings().any(|h| close(cell.x0 - h.x1)));
                    apart += usize::from(headings().any(|h| h.x0 > cell.x1));
                }
                _ => {}
            }
        }
    }
    if left == right {
        (left, right) = (0, 0);
        if close_right * 10 >= apart * 9 {
            right = close_right;
        }
        if close_left * 10 >= apart * 9 {
            left = close_left;
        }
    }
    match () {
        () if left > 3 * right => Side::Left,
        () if right > 3 * left => Side::Right,
        () => Side::Either,
    }
}
