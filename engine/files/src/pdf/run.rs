//! Letters to runs: stretches of text drawn in one go.

use super::matrix::Point;

/// Which way text is read on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    Right,
    Down,
    Left,
    Up,
}

impl Way {
    /// The way of a line of text; `None` when it is slanted, as a watermark is.
    pub fn of(dx: f64, dy: f64) -> Option<Way> {
        if dy.abs() < 0.1 * dx.abs() {
            Some(if dx > 0.0 { Way::Right } else { Way::Left })
        } else if dx.abs() < 0.1 * dy.abs() {
            Some(if dy > 0.0 { Way::Down } else { Way::Up })
        } else {
            None
        }
    }

    /// A point, after the page is turned so that text of this way reads to the right.
    pub fn upright(self, (x, y): Point) -> Point {
        match self {
            Way::Right => (x, y),
            Way::Down => (y, -x),
            Way::Left => (-x, -y),
            Way::Up => (-y, x),
        }
    }
}

/// One letter as it was drawn.
pub(super) struct Glyph<'a> {
    pub text: &'a str,
    /// Start and end of its base line.
    pub from: Point,
    pub to: Point,
    /// Where the next letter would stand.
    pub pen: Point,
    /// Type size on the page.
    pub em: f64,
    pub way: Way,
    /// Number of its font.
    pub font: usize,
    /// The pen was moved since the last letter.
    pub moved: bool,
    /// A new text object was begun since the last letter.
    pub anew: bool,
}

/// Text drawn in one go, without a gap that may part cells. Before the page
/// is turned upright, the numbers are along and across its own way.
#[derive(Clone, Debug)]
pub(super) struct Run {
    pub text: String,
    pub x0: f64,
    pub x1: f64,
    /// The base line, downward.
    pub y: f64,
    pub em: f64,
    pub way: Way,
    pub font: usize,
    /// It goes on where the run drawn before it ended: one blank apart, or none.
    pub goes_on: bool,
    /// It begins a text object of its own.
    pub anew: bool,
    /// It begins a text object exactly where the run before it ended.
    pub touches: bool,
}

/// How far from the end of the last letter text may be set down and still go on.
pub(super) const EXACT: f64 = 0.03;

/// Builds the runs of a page.
#[derive(Default)]
pub(super) struct Runs {
    done: Vec<Run>,
    open: Option<Run>,
    /// Along, across: where the next letter is expected.
    pen: Point,
    /// Blanks since the last letter.
    blanks: u32,
    /// Letters and blanks drawn.
    pub letters: usize,
    pub all_blanks: usize,
}

impl Runs {
    /// Takes the next letter.
    pub fn put(&mut self, glyph: &Glyph<'_>) {
        let (x0, y) = glyph.way.upright(glyph.from);
        let (x1, _) = glyph.way.upright(glyph.to);
        let pen = glyph.way.upright(glyph.pen);
        let same = self.open.as_ref().is_some_and(|run| {
            run.way == glyph.way && (run.y - y).abs() < 0.12 * run.em.max(glyph.em)
        });
        let gap = x0 - self.pen.0;
        let near = same && gap > -0.3 * glyph.em && gap < 0.35 * glyph.em;
        if glyph.text.trim().is_empty() {
            if glyph.text.is_empty() {
                return;
            }
            if !near {
                self.close();
            }
            self.blanks += 1;
            self.all_blanks += 1;
            self.pen = pen;
            return;
        }
        self.letters += 1;
        // One blank parts words, however wide it is drawn; more part cells. After a
        // full stop two are usual.
        let wide = self.open.as_ref().is_some_and(|run| {
            self.blanks > 2 || self.blanks == 2 && !run.text.ends_with(['.', ':', ';', '!', '?'])
        });
        let gap_blank = gap > 0.12 * glyph.em;
        let one_go = !glyph.moved && self.open.as_ref().is_some_and(|r| r.font == glyph.font);
        if near && !wide && one_go {
            if let Some(run) = &mut self.open {
                if self.blanks > 0 || gap_blank {
                    run.text.push(' ');
                }
                run.text.push_str(glyph.text);
                run.x1 = run.x1.max(x1);
                run.em = run.em.max(glyph.em);
            }
        } else {
            let spaced = self.blanks > 0 || gap_blank;
            let exact = gap.abs() < EXACT * glyph.em.max(2.0);
            // An index stands a little higher or lower, but goes on all the same.
            let base = self
                .open
                .as_ref()
                .filter(|run| {
                    run.way == glyph.way && (run.y - y).abs() < 0.6 * run.em.max(glyph.em)
                })
                .filter(|run| exact && (run.y != y || glyph.em != run.em))
                .map(|run| if glyph.em < 0.95 * run.em { run.y } else { y });
            // A word drawn letter by letter is set down anew at every letter, a little off.
            let kerned = !glyph.moved || self.blanks > 0 || !gap_blank;
            let goes_on = !wide && (near && kerned && (!glyph.anew || exact) || base.is_some());
            let touches = goes_on && glyph.anew && base.is_none() && self.blanks == 0;
            let y = base.unwrap_or(y);
            self.close();
            self.open = Some(Run {
                text: if goes_on && spaced {
                    format!(" {}", glyph.text)
                } else {
                    glyph.text.to_string()
                },
                x0,
                x1,
                y,
                em: glyph.em,
                way: glyph.way,
                font: glyph.font,
                goes_on,
                anew: glyph.anew,
                touches,
            });
        }
        self.blanks = 0;
        self.pen = pen;
    }

    fn close(&mut self) {
        self.blanks = 0;
        if let Some(run) = self.open.take() {
            // Bold type and shadows are drawn twice.
            let twice = self.done.iter().rev().take(80).any(|other| {
                other.way == run.way
                    && (other.x0 - run.x0).abs() < 0.15 * run.em
                    && (other.y - run.y).abs() < 0.15 * run.em
                    && other.text.trim() == run.text.trim()
            });
            if !twice {
                self.done.push(run);
            }
        }
    }

    /// All runs.
    pub fn finish(mut self) -> Vec<Run> {
        self.close();
        self.done
    }
}
