//! Lines to rows: which lines are one row whose cells wrap.

use super::columns::{has_result, is_about, is_result};
use super::lines::{Cell, Line, Rules};
use super::table::{Row, Table};

impl Table {
    /// The usual distance of two rows of results, those that wrap left aside.
    fn pitch(&self) -> Option<f64> {
        let mut pitches: Vec<f64> = self
            .lines
            .windows(2)
            .filter(|w| has_result(&w[0].0) && has_result(&w[1].0))
            .map(|w| (w[1].0.y - w[0].0.y, w[1].0.em.min(w[0].0.em)))
            .filter(|(gap, em)| *gap > 0.95 * em)
            .map(|(gap, _)| gap)
            .collect();
        pitches.sort_by(f64::total_cmp);
        pitches.get(pitches.len() / 4).copied()
    }

    /// Its rows from top to bottom.
    pub fn rows(&self, rules: &Rules) -> Vec<Row> {
        let first_result = self.lines.iter().position(|(l, _)| has_result(l));
        let results = self
            .lines
            .iter()
            .map(|(l, _)| l.cells.iter().filter(|c| is_result(&c.text)).count())
            .max()
            .unwrap_or(0);
        let ys: Vec<f64> = self.lines.iter().filter(|l| has_result(&l.0)).map(|l| l.0.y).collect();
        let least = ys.windows(2).map(|w| w[1] - w[0]).min_by(f64::total_cmp);
        let spacing = Spacing { rules, pitch: self.pitch(), least, results };
        let mut rows: Vec<Joined> = Vec::new();
        for (i, (line, places)) in self.lines.iter().enumerate() {
            // Names may wrap below the head, before the first result.
            let below = rows.iter().rev().skip(1).any(|r| r.parts.len() > 1);
            let head = first_result.is_none_or(|f| i < f) && !below;
            let next = self.lines.get(i + 1).map(|l| l.0.y - line.y);
            match rows.last_mut() {
                Some(row) if spacing.joins(row, line, places, head, next) => {
                    row.add(line, places);
                }
                _ => rows.push(Joined::new(line, places)),
            }
        }
        let kept = |&c: &usize| !self.own_head || self.lines.iter().any(|l| l.1.contains(&c));
        let columns: Vec<usize> = (0..self.columns.len()).filter(kept).collect();
        let last = rows.len().saturating_sub(1);
        rows.iter()
            .enumerate()
            .map(|(i, row)| {
                let cells: Vec<String> = columns.iter().map(|&c| row.text(c)).collect();
                let mut filled = cells.iter().filter(|c| !c.is_empty());
                // A title over a table or a remark below it is no cell of it.
                let alone = (i == 0 || i == last)
                    && filled.next().is_some_and(|c| !is_result(c))
                    && filled.next().is_none();
                Row { y: row.y, last: row.last, cells, alone }
            })
            .collect()
    }
}

/// What tells two lines of one row from two rows.
struct Spacing<'a> {
    rules: &'a Rules,
    /// The usual distance of two rows of results.
    pitch: Option<f64>,
    /// The least distance of two lines with results, whatever stands between.
    least: Option<f64>,
    /// The most results in one row.
    results: usize,
}

impl Spacing<'_> {
    /// Whether the line is a further line of the row. `head`: it stands over all
    /// results; `next`: how far below it the next line stands.
    fn joins(
        &self,
        row: &Joined,
        line: &Line,
        places: &[usize],
        head: bool,
        next: Option<f64>,
    ) -> bool {
        let gap = line.y - row.last;
        let em = row.em.min(line.em);
        let ruled = || {
            line.cells
                .iter()
                .chain(&row.cells)
                .any(|c| self.rules.divides(row.last + 0.05 * em, line.y - 0.55 * em, c))
        };
        // So close that they are no two lines of text: the cells are set to the
        // middle of a row whose other cells wrap.
        if gap < 0.95 * em {
            let clash = places.iter().zip(&line.cells).any(|(place, cell)| {
                row.parts.iter().rfind(|p| p.0 == *place).is_some_and(|(_, y, text)| {
                    let step = (cell.y - y) / em;
                    !(0.9..1.6).contains(&step) || is_result(text) && is_result(&cell.text)
                })
            });
            return !clash;
        }
        if gap > 1.6 * em || row.result && has_result(line) || ruled() {
            return false;
        }
        if (row.em - line.em).abs() > 0.15 * em {
            return false;
        }
        let tight = self.pitch.is_none() && self.least.is_some_and(|l| gap * 2.2 < l)
            || self.pitch.is_some_and(|p| gap < 0.92 * p)
            || self.pitch.is_none() && head && next.is_some_and(|n| gap < 0.92 * n);
        // A number below a heading is no part of it.
        let headed = |(place, cell): (&usize, &Cell)| row.has(*place) && is_result(&cell.text);
        if places.iter().zip(&line.cells).any(headed) {
            return false;
        }
        let within = places.iter().all(|p| row.has(*p));
        if !head {
            return tight && (!row.result || within);
        }
        // What a report says of itself over the table is no part of a head.
        let lone = row.parts.len() == 1 && row.has(0);
        if lone && (places == [0] || !places.contains(&0))
            || row.parts.iter().any(|p| is_about(&p.2))
        {
            return false;
        }
        if tight {
            return true;
        }
        // No more room between the lines of the head than between rows: only what
        // can't be a line of its own is joined.
        let around = row.parts.iter().all(|p| places.contains(&p.0));
        if places.contains(&0) != row.has(0) {
            return if row.has(0) { within } else { around };
        }
        self.results >= 3 && row.parts.len() > 2 && places.len() > 1 && (within || around)
    }
}

/// Lines that make one row.
struct Joined {
    y: f64,
    last: f64,
    em: f64,
    result: bool,
    /// Column, base line, text.
    parts: Vec<(usize, f64, String)>,
    cells: Vec<Cell>,
}

impl Joined {
    fn new(line: &Line, places: &[usize]) -> Joined {
        let mut row = Joined {
            y: line.y,
            last: line.y,
            em: line.em,
            result: false,
            parts: Vec::new(),
            cells: Vec::new(),
        };
        row.add(line, places);
        row
    }

    fn add(&mut self, line: &Line, places: &[usize]) {
        self.last = line.y;
        self.result |= has_result(line);
        for (cell, &place) in line.cells.iter().zip(places) {
            self.parts.push((place, cell.y, cell.text.clone()));
            self.cells.push(cell.clone());
        }
    }

    fn has(&self, column: usize) -> bool {
        self.parts.iter().any(|p| p.0 == column)
    }

    fn text(&self, column: usize) -> String {
        let mut text = String::new();
        for (_, _, part) in self.parts.iter().filter(|p| p.0 == column) {
            // "Nitrate-" over "nitrogen", "mg/" over "100 g".
            let bound =
                text.strip_suffix(['-', '/']).is_some_and(|t| t.ends_with(char::is_alphabetic));
            if !bound && !text.is_empty() {
                text.push(' ');
            }
            text.push_str(part);
        }
        text
    }
}
