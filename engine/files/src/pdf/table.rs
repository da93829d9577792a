//! Lines to tables: which cells stand below one another.

use super::columns::{Column, Edges, Side, has_result, is_about, overlap, side_of_headings};
use super::lines::{Cell, Line, Rules, Seam};

/// A row of a page.
#[derive(Clone, Debug)]
pub(super) struct Row {
    /// Base lines of its first and its last line.
    pub y: f64,
    pub last: f64,
    /// The cells by column; blank ones are empty.
    pub cells: Vec<String>,
    /// It is prose, or a title over a table: its one cell is in no column.
    pub alone: bool,
}

/// A table's lines, with the column of each cell.
#[derive(Clone, Debug, Default)]
pub(super) struct Table {
    pub columns: Vec<Column>,
    pub lines: Vec<(Line, Vec<usize>)>,
    em: f64,
    /// Left edges and right edges of the cells in rows of results.
    edges: (Edges, Edges),
    /// The side of cells that stand at neither edge more than at the other.
    doubtful: Side,
    /// The side on which the results stand of the headings they share a stretch with.
    of_headings: Side,
    /// Columns the head has.
    headed: usize,
    /// It has a head, so that columns of an earlier table say nothing.
    pub own_head: bool,
}

/// A line with more cells is of a drawing, such as a map.
const MOST_COLUMNS: usize = 300;
/// How many earlier tables one may go on from.
const MOST_BEFORE: usize = 12;

/// Cuts the lines of a page into tables and prose. A table without a head that
/// goes on from one of those `before` takes its columns.
pub(super) fn rows(lines: Vec<Line>, rules: &Rules, before: &mut Vec<Table>) -> Vec<Row> {
    let mut rows = Vec::new();
    for block in blocks(lines) {
        let drawing = block.iter().any(|l| l.cells.len() > MOST_COLUMNS);
        if drawing || block.iter().all(|l| l.cells.len() < 2) {
            rows.extend(block.into_iter().map(|line| Row {
                y: line.y,
                last: line.y,
                cells: line.cells.into_iter().map(|c| c.text).collect(),
                alone: true,
            }));
            continue;
        }
        let mut table = Table::new(&block, before);
        rows.extend(table.rows(rules));
        table.lines.clear();
        if before.len() == MOST_BEFORE {
            before.remove(0);
        }
        before.push(table);
    }
    rows
}

/// Stretches of lines that may be one table.
fn blocks(lines: Vec<Line>) -> Vec<Vec<Line>> {
    let mut blocks: Vec<Vec<Line>> = Vec::new();
    let mut pitch = 0.0f64;
    for line in lines {
        if let Some(block) = blocks.last_mut()
            && let Some(last) = block.last()
        {
            let gap = line.y - last.y;
            let em = line.em.min(last.em);
            let spans = line.cells.len() == 1
                && !line.cells[0]
                    .seams
                    .iter()
                    .any(|s| last.cells.iter().any(|c| (c.x0 - s.x0).abs() < 0.8))
                && gap > 0.95 * em
                && last.cells.len() > 1
                && last.cells.iter().filter(|c| overlap(c.x0, c.x1, &line.cells[0]) > 0.0).count()
                    > 1;
            let prose = last.cells.len() == 1
                && line.cells.len() > 1
                && gap > 0.95 * em
                && line.cells.iter().filter(|c| overlap(c.x0, c.x1, &last.cells[0]) > 0.0).count()
                    > 1;
            let near = gap <= (3.5 * em).max(1.8 * pitch);
            if near && !spans && !prose && !begins(last, &line) {
                pitch = pitch.max(gap);
                block.push(line);
                continue;
            }
        }
        pitch = 0.0;
        blocks.push(vec![line]);
    }
    blocks
}

/// Whether a line is the head of a new table below lines about the report,
/// such as "Client: …  Depth: …".
fn begins(last: &Line, line: &Line) -> bool {
    let apart = line.y - last.y > 0.95 * line.em.min(last.em);
    let other = |cell: &Cell| {
        is_about(&cell.text)
            || line.cells.iter().filter(|c| overlap(c.x0, c.x1, cell) > 0.0).count() > 1
    };
    apart
        && line.cells.len() > last.cells.len().max(2)
        && !has_result(line)
        && !has_result(last)
        && last.cells.iter().any(other)
}

impl Table {
    fn new(block: &[Line], before: &[Table]) -> Table {
        let em = block.iter().max_by_key(|l| l.cells.len()).map_or(0.0, |l| l.em);
        let goes_on = before.iter().rev().filter_map(|b| b.going_on(block));
        if let Some((_, table)) = goes_on.min_by(|a, b| a.0.total_cmp(&b.0)) {
            return table;
        }
        // Where nothing tells at which edge of their columns the numbers stand, the
        // guess that needs the fewest columns is right: a wrong one leaves numbers
        // without a heading.
        let mut best: Option<Table> = None;
        for doubtful in [Side::Either, Side::Right, Side::Left] {
            // Where this table does not tell, an earlier one of the document may.
            let usual = before.iter().rev().map(|t| t.of_headings).find(|s| *s != Side::Either);
            let of_headings = usual.unwrap_or_default();
            let mut table = Table { em, doubtful, of_headings, ..Table::default() };
            table.fill(block);
            let told = table.of_headings != Side::Either
                || table.edges.0.agreement() != table.edges.1.agreement();
            if best.as_ref().is_none_or(|b| table.columns.len() < b.columns.len()) {
                best = Some(table);
            }
            if told {
                break;
            }
        }
        let mut table = best.unwrap_or_default();
        if table.part_seams() {
            let parted: Vec<Line> =
                std::mem::take(&mut table.lines).into_iter().map(|l| l.0).collect();
            table.columns.clear();
            table.fill(&parted);
        }
        table
    }

    /// The block as a part of this table, when it has no head of its own and
    /// every cell stands in one of the columns; and how well they stand.
    fn going_on(&self, block: &[Line]) -> Option<(f64, Table)> {
        if !block.iter().find(|l| l.cells.len() > 1).is_some_and(has_result) {
            return None;
        }
        let mut table = Table {
            columns: self.columns.clone(),
            lines: Vec::new(),
            em: self.em,
            edges: self.edges.clone(),
            doubtful: self.doubtful,
            of_headings: self.of_headings,
            headed: self.headed,
            own_head: block.len() > 1
                && !has_result(&block[0])
                && block[1].y - block[0].y > 0.95 * block[0].em,
        };
        let mut cost = 0.0;
        for line in block {
            let places = table.places(line, false);
            for (cell, place) in line.cells.iter().zip(&places) {
                let column = (*place)?;
                if overlap(table.columns[column].lo, table.columns[column].hi, cell) <= 0.0 {
                    return None;
                }
                cost += table.cost(cell, Side::Either, column);
            }
            table.put(line.clone(), &places, has_result(line));
        }
        table.part_seams();
        Some((cost, table))
    }

    /// Places all lines: first the head, since it says which columns there are,
    /// then the rows of results, then the rest; of each the fullest first.
    fn fill(&mut self, block: &[Line]) {
        let body = block.iter().position(has_result).unwrap_or(block.len());
        let mut head_from = body;
        while head_from > 0 {
            let above = &block[head_from - 1];
            let gap = block.get(head_from).map_or(0.0, |next| next.y - above.y);
            if head_from < body && gap > 1.6 * above.em {
                break;
            }
            head_from -= 1;
        }
        let mut order: Vec<usize> = (0..block.len()).collect();
        order.sort_by_key(|&i| {
            let class = if (head_from..body).contains(&i) {
                0
            } else if has_result(&block[i]) {
                1
            } else {
                2
            };
            (class, usize::MAX - block[i].cells.len())
        });
        self.edges = <(Edges, Edges)>::default();
        for cell in block.iter().filter(|l| has_result(l)).flat_map(|l| &l.cells) {
            self.edges.0.put(cell.x0);
            self.edges.1.put(cell.x1);
        }
        match side_of_headings(&block[head_from..body], &block[body..]) {
            Side::Either => {}
            told => self.of_headings = told,
        }
        for i in order {
            let in_head = (head_from..body).contains(&i);
            let head = !has_result(&block[i]);
            let mut places = self.places(&block[i], in_head);
            // A heading within the table, a title over it: no column of its own.
            if head
                && let [None] = places[..]
                && !(head_from..body).contains(&i)
            {
                let cell = &block[i].cells[0];
                let apart = |c: &Column| (c.lo - cell.x0).abs();
                places[0] = (0..self.columns.len())
                    .min_by(|&a, &b| apart(&self.columns[a]).total_cmp(&apart(&self.columns[b])));
            }
            self.put(block[i].clone(), &places, in_head || !head);
            if in_head {
                self.headed = self.columns.len();
            }
        }
        self.lines.sort_by(|a, b| a.0.y.total_cmp(&b.0.y));
    }

    /// The column of each cell of a line: the cheapest way to lay the cells in
    /// order over the columns; `None` where a cell needs a column of its own.
    fn places(&self, line: &Line, head: bool) -> Vec<Option<usize>> {
        let (n, m) = (line.cells.len(), self.columns.len());
        // As many cells as headings: one each, unless a cell stands under another one.
        if n == m && n == self.headed {
            let stands = |(i, cell): (usize, &Cell)| {
                let under = |c: &Column| overlap(c.lo, c.hi, cell) > 0.0;
                let free = !head || i == 0;
                under(&self.columns[i]) || free && !self.columns.iter().any(under)
            };
            if line.cells.iter().enumerate().all(stands) {
                return (0..n).map(Some).collect();
            }
        }
        let alone = self.em * if head { 3.0 } else { 7.0 };
        let sides: Vec<Side> =
            line.cells.iter().map(|c| if head { Side::Head } else { self.side(c) }).collect();
        let cost_of = |i: usize, j: usize| self.cost(&line.cells[i], sides[i], j);
        // cost[i][j]: the first i cells over the first j columns.
        let width = m + 1;
        let mut cost = vec![0.0f64; (n + 1) * width];
        for i in 1..=n {
            cost[i * width] = alone * i as f64;
            for j in 1..=m {
                let fits = cost[(i - 1) * width + j - 1] + cost_of(i - 1, j - 1);
                let apart = cost[(i - 1) * width + j] + alone;
                cost[i * width + j] = cost[i * width + j - 1].min(fits).min(apart);
            }
        }
        let mut places = vec![None; n];
        let (mut i, mut j) = (n, m);
        while i > 0 {
            let here = cost[i * width + j];
            if j > 0 && here == cost[i * width + j - 1] {
                j -= 1;
            } else if j > 0 && here == cost[(i - 1) * width + j - 1] + cost_of(i - 1, j - 1) {
                i -= 1;
                j -= 1;
                places[i] = Some(j);
            } else {
                i -= 1;
            }
        }
        places
    }

    /// At which edge of its column a cell of a row of results stands.
    fn side(&self, cell: &Cell) -> Side {
        let (mut left, mut right) = (self.edges.0.near(cell.x0), self.edges.1.near(cell.x1));
        let told = left > 2 && left >= 3 * right || right > 2 && right >= 3 * left;
        if !told && self.of_headings != Side::Either {
            return self.of_headings;
        }
        if left == right {
            // Figures of one width stand at both; the rest of the table tells.
            (left, right) = (self.edges.0.agreement(), self.edges.1.agreement());
        }
        match left.cmp(&right) {
            std::cmp::Ordering::Greater => Side::Left,
            std::cmp::Ordering::Less => Side::Right,
            std::cmp::Ordering::Equal => self.doubtful,
        }
    }

    /// How badly a cell stands in a column.
    fn cost(&self, cell: &Cell, side: Side, column: usize) -> f64 {
        let c = &self.columns[column];
        let shared = overlap(c.lo, c.hi, cell);
        let edge = c.lefts.near(cell.x0) + c.rights.near(cell.x1) > 0;
        let bonus = if edge { 0.0 } else { 0.4 * self.em };
        if shared > 0.0 {
            let least = (cell.x1 - cell.x0).min(c.hi - c.lo).max(0.1);
            return bonus + self.em * (1.0 - (shared / least).min(1.0));
        }
        // A number at the right edge of its column has its heading on its left, even where
        // the next one is nearer; one at the left edge has it on its right.
        let right_of = cell.x0 > c.hi;
        let apart = match side {
            Side::Right if right_of => -0.25 * shared,
            Side::Left if !right_of => -0.25 * shared,
            Side::Left | Side::Right => 6.0 * self.em - shared,
            Side::Head => 3.0 * self.em,
            Side::Either => -shared,
        };
        bonus + 1.5 * self.em + apart
    }

    /// Puts a line in; `grows`: its cells widen their columns.
    fn put(&mut self, line: Line, places: &[Option<usize>], grows: bool) {
        let mut own = Vec::with_capacity(places.len());
        let mut shift = 0;
        let mut next = 0;
        for (cell, place) in line.cells.iter().zip(places) {
            let at = match place {
                Some(p) => {
                    let at = p + shift;
                    let low = at.checked_sub(1).map_or(f64::MIN, |b| self.columns[b].hi);
                    let high = self.columns.get(at + 1).map_or(f64::MAX, |c| c.lo);
                    let column = &mut self.columns[at];
                    if grows {
                        column.lo = column.lo.min(cell.x0.max(low));
                        column.hi = column.hi.max(cell.x1.min(high));
                        column.lefts.put(cell.x0);
                        column.rights.put(cell.x1);
                    }
                    at
                }
                None => {
                    let after = self.columns[next..].iter().position(|c| c.lo > cell.x0);
                    let at = after.map_or(self.columns.len(), |p| p + next);
                    // Never past the column of the next cell of this line.
                    let bound = places[own.len()..].iter().flatten().next();
                    let at = bound.map_or(at, |b| at.min(b + shift));
                    self.columns.insert(at, Column::of(cell));
                    for (_, others) in &mut self.lines {
                        others.iter_mut().filter(|o| **o >= at).for_each(|o| *o += 1);
                    }
                    shift += 1;
                    at
                }
            };
            next = at + 1;
            own.push(at);
        }
        self.lines.push((line, own));
    }

    /// Parts cells at a seam where the right piece stands at the edge of a
    /// column further right. Says whether any was.
    fn part_seams(&mut self) -> bool {
        let columns = &self.columns;
        let mut parted = false;
        for (line, places) in &mut self.lines {
            let mut i = 0;
            while i < line.cells.len() {
                let free = places.get(i + 1).copied().unwrap_or(columns.len());
                let cell = &line.cells[i];
                let edge = |seam: &&Seam| {
                    (places[i] + 1..free).any(|c| {
                        let column = &columns[c];
                        column.lefts.near(seam.x0) > 0 || column.rights.near(cell.x1) > 1
                    }) || !seam.goes_on && free > places[i] + 1 && seam.x0 > columns[places[i]].hi
                };
                if let Some(seam) = cell.seams.iter().find(edge).copied() {
                    let column =
                        (places[i] + 1..free).find(|&c| columns[c].hi > seam.x0).unwrap_or(free);
                    let cell = &mut line.cells[i];
                    let text = cell.text.split_off(seam.at);
                    let seams = cell.seams.iter().filter(|s| s.at > seam.at);
                    let cut = text.len() - text.trim_start().len();
                    let right = Cell {
                        text: text.trim().to_string(),
                        x0: seam.x0,
                        x1: cell.x1,
                        y: cell.y,
                        seams: seams
                            .map(|s| Seam { at: (s.at - seam.at).max(cut) - cut, ..*s })
                            .collect(),
                    };
                    cell.x1 = seam.x1;
                    cell.seams.retain(|s| s.at < seam.at);
                    cell.text.truncate(cell.text.trim_end().len());
                    line.cells.insert(i + 1, right);
                    places.insert(i + 1, column.min(columns.len() - 1));
                    parted = true;
                }
                i += 1;
            }
        }
        parted
    }
}
