//! Lines to tables: which cells stand below one another, and which lines are
//! one row.

use super::lines::{Cell, Line, Rules};

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

/// A column of a table.
#[derive(Clone, Debug)]
pub(super) struct Column {
    lo: f64,
    hi: f64,
    lefts: Edges,
    rights: Edges,
}

/// Where cells begin or end, each place once, with how often.
#[derive(Clone, Debug, Default)]
struct Edges(Vec<(f64, usize)>);

impl Edges {
    fn put(&mut self, x: f64) {
        if let Some(edge) = self.0.iter_mut().find(|e| (e.0 - x).abs() < 0.2) {
            edge.1 += 1;
        } else if self.0.len() < MOST_EDGES {
            self.0.push((x, 1));
        }
    }

    fn near(&self, x: f64) -> usize {
        self.0.iter().filter(|e| (e.0 - x).abs() < SAME).map(|e| e.1).sum()
    }

    /// Pairs of cells that share an edge, about.
    fn agreement(&self) -> usize {
        self.0.iter().map(|e| e.1 * e.1).sum()
    }
}

/// A table's lines, with the column of each cell.
#[derive(Clone, Debug, Default)]
pub(super) struct Table {
    columns: Vec<Column>,
    lines: Vec<(Line, Vec<usize>)>,
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
    own_head: bool,
}

/// How a cell is laid over columns it shares no stretch with.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Side {
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
    !solution && !rest.starts_with([':', '-', '–', '/', '(', ')'])
}

fn has_result(line: &Line) -> bool {
    line.cells.iter().any(|c| is_result(&c.text))
}

/// How many earlier tables one may go on from.
const MOST_BEFORE: usize = 12;

/// Cuts the lines of a page into tables and prose. A table without a head that
/// goes on from one of those `before` takes its columns.
pub(super) fn rows(lines: Vec<Line>, rules: &Rules, before: &mut Vec<Table>) -> Vec<Row> {
    let mut rows = Vec::new();
    for block in blocks(lines) {
        if block.iter().all(|l| l.cells.len() < 2) {
            rows.extend(block.into_iter().map(|line| Row {
                y: line.y,
                last: line.y,
                cells: line.cells.into_iter().map(|c| c.text).collect(),
                alone: true,
            }));
            continue;
        }
        let mut table = Table::new(block, before);
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
            if near && !spans && !prose {
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

fn overlap(lo: f64, hi: f64, cell: &Cell) -> f64 {
    hi.min(cell.x1) - lo.max(cell.x0)
}

/// On which side of their headings results stand: by those that share a
/// stretch with one heading, or else by those that all but touch one, as the
/// numbers of a sheet do that stand at the right edge of their column.
fn side_of_headings(head: &[Line], body: &[Line]) -> Side {
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

impl Table {
    fn new(block: Vec<Line>, before: &[Table]) -> Table {
        let em = block.iter().max_by_key(|l| l.cells.len()).map_or(0.0, |l| l.em);
        let goes_on = before.iter().rev().filter_map(|b| b.going_on(&block));
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
            table.fill(block.clone());
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
            let block = std::mem::take(&mut table.lines).into_iter().map(|l| l.0).collect();
            table.columns.clear();
            table.fill(block);
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
            table.put(line.clone(), &places);
        }
        table.part_seams();
        Some((cost, table))
    }

    /// Places all lines: first the head, since it says which columns there are,
    /// then the rows of results, then the rest; of each the fullest first.
    fn fill(&mut self, block: Vec<Line>) {
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
            self.put(block[i].clone(), &places);
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
        if !head && n == m && n == self.headed {
            let stands = |(i, cell): (usize, &Cell)| {
                let under = |c: &Column| overlap(c.lo, c.hi, cell) > 0.0;
                under(&self.columns[i]) || !self.columns.iter().any(under)
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
        let told = left > 2 && right == 1 || right > 2 && left == 1;
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

    fn put(&mut self, line: Line, places: &[Option<usize>]) {
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
                    column.lo = column.lo.min(cell.x0.max(low));
                    column.hi = column.hi.max(cell.x1.min(high));
                    column.lefts.put(cell.x0);
                    column.rights.put(cell.x1);
                    at
                }
                None => {
                    let after = self.columns[next..].iter().position(|c| c.lo > cell.x0);
                    let at = after.map_or(self.columns.len(), |p| p + next);
                    // Never past the column of the next cell of this line.
                    let bound = places[own.len()..].iter().flatten().next();
                    let at = bound.map_or(at, |b| at.min(b + shift));
                    self.columns.insert(
                        at,
                        Column {
                            lo: cell.x0,
                            hi: cell.x1,
                            lefts: Edges(vec![(cell.x0, 1)]),
                            rights: Edges(vec![(cell.x1, 1)]),
                        },
                    );
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
                let edge = |seam: &&super::lines::Seam| {
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
                            .map(|s| super::lines::Seam {
                                at: (s.at - seam.at).max(cut) - cut,
                                ..*s
                            })
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

    /// The usual distance of two rows of results.
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
        pitches.get(pitches.len() / 2).copied()
    }

    fn rows(&self, rules: &Rules) -> Vec<Row> {
        let pitch = self.pitch();
        let first_result = self.lines.iter().position(|(l, _)| has_result(l));
        let results = self
            .lines
            .iter()
            .map(|(l, _)| l.cells.iter().filter(|c| is_result(&c.text)).count())
            .max()
            .unwrap_or(0);
        let mut rows: Vec<Joined> = Vec::new();
        for (i, (line, places)) in self.lines.iter().enumerate() {
            let head = first_result.is_none_or(|f| i < f);
            let next = self.lines.get(i + 1).map(|l| l.0.y - line.y);
            match rows.last_mut() {
                Some(row) if row.takes(line, places, rules, pitch, head, results, next) => {
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

    /// Whether the line is a further line of this row.
    fn takes(
        &self,
        line: &Line,
        places: &[usize],
        rules: &Rules,
        pitch: Option<f64>,
        head: bool,
        results: usize,
        next: Option<f64>,
    ) -> bool {
        let gap = line.y - self.last;
        let em = self.em.min(line.em);
        let ruled = || {
            line.cells
                .iter()
                .chain(&self.cells)
                .any(|c| rules.divides(self.last + 0.05 * em, line.y - 0.55 * em, c))
        };
        // So close that they are no two lines of text: the cells are set to the
        // middle of a row whose other cells wrap.
        if gap < 0.95 * em {
            let clash = self.parts.iter().any(|(column, y, text)| {
                places.iter().zip(&line.cells).any(|(p, cell)| {
                    p == column
                        && (cell.y - y < 0.9 * em || is_result(text) && is_result(&cell.text))
                })
            });
            return !clash;
        }
        if gap > 1.6 * em || self.result && has_result(line) || ruled() {
            return false;
        }
        if (self.em - line.em).abs() > 0.15 * em {
            return false;
        }
        let tight = pitch.is_some_and(|p| gap < 0.92 * p)
            || pitch.is_none() && head && next.is_some_and(|n| gap < 0.92 * n);
        let within = places.iter().all(|p| self.has(*p));
        if tight {
            return if self.result { within } else { true };
        }
        if !head || self.result || has_result(line) {
            return false;
        }
        // No more room between the lines of the head than between rows: only what
        // can't be a line of its own is joined.
        let about = |text: &str| {
            text.contains(": ")
                || text.ends_with(':')
                || text.starts_with(|c: char| c.is_ascii_digit())
        };
        if self.parts.iter().any(|p| about(&p.2)) {
            return false;
        }
        let around = self.parts.iter().all(|p| places.contains(&p.0));
        if places.contains(&0) != self.has(0) {
            return if self.has(0) { within } else { around };
        }
        results >= 3 && self.parts.len() > 2 && places.len() > 1 && (within || around)
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
