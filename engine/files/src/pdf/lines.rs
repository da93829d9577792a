//! Runs to lines of cells.

use super::content::{Drawn, Rule};
use super::matrix::Point;
use super::run::{EXACT, Run, Way};

/// A stretch of a line that stands apart from its neighbours.
#[derive(Clone, Debug)]
pub(super) struct Cell {
    pub text: String,
    pub x0: f64,
    pub x1: f64,
    pub y: f64,
    /// Where the cell may be two that touch.
    pub seams: Vec<Seam>,
}

/// Between two pieces that were drawn apart but touch.
#[derive(Clone, Copy, Debug)]
pub(super) struct Seam {
    /// Byte in the text where the right piece begins.
    pub at: usize,
    /// Right edge of the left piece.
    pub x1: f64,
    /// Left edge of the right piece.
    pub x0: f64,
    /// The right piece was drawn where the pen stood after the left one.
    pub goes_on: bool,
}

/// What stands on one base line.
#[derive(Clone, Debug)]
pub(super) struct Line {
    pub y: f64,
    pub em: f64,
    pub cells: Vec<Cell>,
}

/// The ruled lines of a page, to ask whether one lies between two places.
#[derive(Default)]
pub(super) struct Rules {
    /// x, top, bottom; by x.
    upright: Vec<(f64, f64, f64)>,
    /// y, left, right; by y.
    level: Vec<(f64, f64, f64)>,
}

impl Rules {
    fn new(rules: &[Rule], way: Way) -> Rules {
        let mut sorted = Rules::default();
        for rule in rules {
            let (a, b) = (way.upright(rule.from), way.upright(rule.to));
            if (a.0 - b.0).abs() < (a.1 - b.1).abs() {
                sorted.upright.push((a.0, a.1.min(b.1), a.1.max(b.1)));
            } else {
                sorted.level.push((a.1, a.0.min(b.0), a.0.max(b.0)));
            }
        }
        sorted.upright.sort_by(|a, b| a.0.total_cmp(&b.0));
        sorted.level.sort_by(|a, b| a.0.total_cmp(&b.0));
        sorted
    }

    fn any(list: &[(f64, f64, f64)], from: f64, to: f64, crosses: (f64, f64)) -> bool {
        let start = list.partition_point(|r| r.0 < from);
        list[start..].iter().take_while(|r| r.0 <= to).any(|r| r.1 <= crosses.0 && r.2 >= crosses.1)
    }

    /// Whether an upright rule stands between two places of a line.
    fn parts(&self, from: f64, to: f64, y: f64) -> bool {
        Rules::any(&self.upright, from, to, (y, y))
    }

    /// Whether a level rule lies between two lines, over or under a cell.
    pub fn divides(&self, from: f64, to: f64, cell: &Cell) -> bool {
        let middle = (cell.x0 + cell.x1) / 2.0;
        from < to && Rules::any(&self.level, from, to, (middle, middle))
    }
}

/// How the program that made a document draws text.
#[derive(Clone, Copy, Debug)]
pub(super) struct Habits {
    /// Words are parted by blanks, not by moving the pen.
    pub draws_blanks: bool,
    /// Each cell is a text object, and text objects rarely touch.
    pub cells_are_objects: bool,
}

impl Habits {
    /// The habits that show in all pages together.
    pub fn of(pages: &[Drawn]) -> Habits {
        let sum = |part: fn(&Drawn) -> usize| pages.iter().map(part).sum::<usize>();
        let (blanks, letters) = (sum(|d| d.blanks), sum(|d| d.letters));
        let count =
            |what: fn(&Run) -> bool| pages.iter().flat_map(|d| &d.runs).filter(|r| what(r)).count();
        Habits {
            draws_blanks: blanks > 1 && blanks * 200 > letters,
            cells_are_objects: count(|r| r.touches) * 4 < count(|r| r.anew),
        }
    }
}

/// Whether the second of two texts that touch may be a cell of its own: a
/// word is not broken, nor a number.
fn may_begin(left: &str, right: &str) -> bool {
    let number = left.ends_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '<'));
    let mut letters = right.chars();
    match (letters.next(), letters.next()) {
        (Some(c), _) if c.is_ascii_digit() => !number,
        // "pH", "dS/m"
        (Some(a), Some(b)) if a.is_lowercase() => b.is_uppercase(),
        (Some(c), _) => c.is_uppercase() || matches!(c, '<' | '>'),
        (None, _) => false,
    }
}

/// The lines of a page from top to bottom, and its ruled lines.
pub(super) fn lines(drawn: Drawn, habits: Habits) -> (Vec<Line>, Rules) {
    let way = most_used(&drawn.runs);
    let rules = Rules::new(&drawn.rules, way);
    let mut runs: Vec<(usize, Run)> = drawn
        .runs
        .into_iter()
        .enumerate()
        .filter(|(_, run)| !is_bar(run.text.trim()))
        .filter_map(|(order, run)| Some((order, turned(run, way)?)))
        .collect();
    runs.sort_by(|a, b| a.1.y.total_cmp(&b.1.y));
    let mut lines = Vec::new();
    let mut rest = &runs[..];
    while let Some(((_, first), _)) = rest.split_first() {
        // A line is as high as its largest type: an index below or above belongs to it.
        let mut base = first.y;
        let mut em = first.em;
        let mut count = 0;
        for (_, run) in rest {
            let small = run.em < 0.8 * em || em < 0.8 * run.em;
            if run.y - base > if small { 0.4 } else { 0.25 } * run.em.max(em) {
                break;
            }
            if run.em > em * 1.05 {
                (base, em) = (run.y, run.em);
            }
            count += 1;
        }
        let (own, after) = rest.split_at(count.max(1));
        rest = after;
        lines.push(line(own.to_vec(), base, em, habits, &rules));
    }
    lines.retain(|l| !l.cells.is_empty());
    (lines, rules)
}

/// The way most of the text is read.
fn most_used(runs: &[Run]) -> Way {
    let weight =
        |way: Way| runs.iter().filter(|r| r.way == way).map(|r| r.text.len()).sum::<usize>();
    let ways = [Way::Left, Way::Down, Way::Up, Way::Right];
    ways.into_iter().max_by_key(|&w| weight(w)).unwrap_or(Way::Right)
}

/// A run on the page as it is read; `None` when it stands on its head.
fn turned(run: Run, way: Way) -> Option<Run> {
    if run.way == way {
        return Some(run);
    }
    // Back to the page as drawn, then upright.
    let drawn = |along: f64, across: f64| -> Point {
        match run.way {
            Way::Right => (along, across),
            Way::Down => (-across, along),
            Way::Left => (-along, -across),
            Way::Up => (across, -along),
        }
    };
    let a = way.upright(drawn(run.x0, run.y));
    let b = way.upright(drawn(run.x1, run.y));
    if (a.0 - b.0).abs() > (a.1 - b.1).abs() {
        return None;
    }
    // Headings that climb stand on the left of their base line, those that fall on its right.
    let (left, right) = if b.1 < a.1 { (0.8, 0.2) } else { (0.2, 0.8) };
    Some(Run {
        x0: a.0 - left * run.em,
        x1: a.0 + right * run.em,
        y: a.1.max(b.1),
        goes_on: false,
        ..run
    })
}

/// A bar of a chart made of letters or signs: `PPPPPPP`.
fn is_bar(text: &str) -> bool {
    let mut letters = text.chars().filter(|c| *c != ' ');
    let Some(first) = letters.next() else { return true };
    let same = letters.clone().all(|c| c == first);
    let blocks = ('\u{2580}'..='\u{259f}').contains(&first) || first == '\u{25a0}';
    same && !first.is_ascii_digit()
        && (blocks || letters.count() >= 3)
        && !matches!(first, '\u{fffd}' | '.')
}

fn line(mut runs: Vec<(usize, Run)>, y: f64, em: f64, habits: Habits, rules: &Rules) -> Line {
    runs.sort_by(|a, b| a.1.x0.total_cmp(&b.1.x0));
    // Where words are parted by moving the pen only, a small gap says nothing.
    let draws_blanks = habits.draws_blanks;
    let widest = if draws_blanks { 0.35 } else { 0.75 };
    let mut cells: Vec<Cell> = Vec::new();
    let mut before = usize::MAX;
    for (order, run) in runs {
        let text = run.text.trim_end();
        if let Some(cell) = cells.last_mut() {
            let gap = (run.x0 - cell.x1) / em;
            let ruled = rules.parts(
                (cell.x1 - 0.3 * em).min(run.x0 - 0.01),
                run.x0 + 0.3 * em,
                y - 0.3 * em,
            );
            let follows = run.goes_on && order == before.wrapping_add(1);
            // Where blanks are drawn, text set down a little off stands in a cell of its own.
            let joins = gap > -0.3 && gap < widest && (!draws_blanks || gap.abs() < EXACT);
            let own = habits.cells_are_objects && run.touches && may_begin(&cell.text, text);
            if !ruled && !own && (follows && gap > -0.3 || joins) {
                let at = cell.text.len();
                if follows {
                    cell.text.push_str(text);
                } else {
                    if gap > 0.12 {
                        cell.text.push(' ');
                    }
                    cell.text.push_str(text.trim_start());
                }
                if run.anew || !follows {
                    cell.seams.push(Seam { at, x1: cell.x1, x0: run.x0, goes_on: follows });
                }
                cell.x1 = cell.x1.max(run.x1);
                before = order;
                continue;
            }
        }
        let text = text.trim_start().to_string();
        cells.push(Cell { text, x0: run.x0, x1: run.x1, y: run.y, seams: Vec::new() });
        before = order;
    }
    Line { y, em, cells }
}
