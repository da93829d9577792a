//! The drawing of a page, followed for its text and its ruled lines.

use std::collections::BTreeMap;
use std::rc::Rc;

use hayro_syntax::content::UntypedIter;
use hayro_syntax::object::dict::keys;
use hayro_syntax::object::{Array, Dict, Name, Object, Stream};
use hayro_syntax::page::{Page, Resources};

use super::font::{Font, UNKNOWN};
use super::matrix::{Matrix, Point};
use super::run::{Glyph, Run, Runs, Way};

/// Drawings within drawings that are followed.
const DEEPEST: usize = 12;
/// Steps of drawing that are followed in one document.
const MOST_STEPS: usize = 4_000_000;
/// Ruled lines that are kept of one page.
const MOST_RULES: usize = 20_000;

/// A straight line, upright or level, that may part cells.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rule {
    pub from: Point,
    pub to: Point,
}

/// What stands on a page.
pub(super) struct Drawn {
    pub runs: Vec<Run>,
    pub rules: Vec<Rule>,
    /// Blanks drawn.
    pub blanks: usize,
    /// Letters without ink, as text recognition lays over a scan.
    pub hidden: usize,
    /// Letters drawn.
    pub letters: usize,
    /// Letters no text is known for.
    pub unknown: usize,
}

/// Fonts met so far, and the steps that are left.
#[derive(Default)]
pub(super) struct Shelf {
    numbers: BTreeMap<usize, usize>,
    fonts: Vec<Rc<Font>>,
    steps: usize,
}

impl Shelf {
    fn font(&mut self, dict: &Dict<'_>) -> usize {
        // Where its bytes lie tells a font from every other.
        let key = dict.data().as_ptr() as usize;
        *self.numbers.entry(key).or_insert_with(|| {
            self.fonts.push(Rc::new(Font::new(dict)));
            self.fonts.len() - 1
        })
    }

    /// Whether the text of a font is not what a person sees.
    pub fn is_garbled(&self, font: usize) -> bool {
        self.fonts.get(font).is_some_and(|f| f.is_garbled())
    }

    /// Whether drawing was cut short because there was too much.
    pub fn is_spent(&self) -> bool {
        self.steps >= MOST_STEPS
    }
}

/// What the drawing operators set.
#[derive(Clone)]
struct State {
    page: Matrix,
    font: Option<usize>,
    size: f64,
    letter_space: f64,
    word_space: f64,
    stretch: f64,
    leading: f64,
    rise: f64,
    hidden: bool,
}

/// Follows the drawing of a page.
pub(super) fn follow(page: &Page<'_>, shelf: &mut Shelf) -> Drawn {
    let mut walk = Walk {
        shelf,
        runs: Runs::default(),
        rules: Vec::new(),
        path: Vec::new(),
        at: (0.0, 0.0),
        start: (0.0, 0.0),
        hidden: 0,
        unknown: 0,
        moved: false,
        anew: false,
        size: page.render_dimensions(),
    };
    let state = State {
        page: Matrix(page.initial_transform(true).as_coeffs()),
        font: None,
        size: 0.0,
        letter_space: 0.0,
        word_space: 0.0,
        stretch: 1.0,
        leading: 0.0,
        rise: 0.0,
        hidden: false,
    };
    if let Some(bytes) = page.page_stream() {
        walk.draw(bytes, page.resources(), state, 0);
    }
    let letters = walk.runs.letters;
    Drawn {
        blanks: walk.runs.all_blanks,
        runs: walk.runs.finish(),
        rules: walk.rules,
        hidden: walk.hidden,
        letters,
        unknown: walk.unknown,
    }
}

struct Walk<'s> {
    shelf: &'s mut Shelf,
    runs: Runs,
    rules: Vec<Rule>,
    /// The path so far, as straight lines.
    path: Vec<Rule>,
    at: Point,
    start: Point,
    hidden: usize,
    unknown: usize,
    moved: bool,
    anew: bool,
    size: (f32, f32),
}

fn number(object: Option<&Object<'_>>) -> f64 {
    match object {
        Some(Object::Number(n)) => Some(n.as_f64()).filter(|n| n.is_finite()).unwrap_or(0.0),
        _ => 0.0,
    }
}

impl Walk<'_> {
    fn draw(&mut self, bytes: &[u8], resources: &Resources<'_>, mut state: State, depth: usize) {
        let mut saved: Vec<State> = Vec::new();
        let mut line = Matrix::STILL;
        let mut text = Matrix::STILL;
        let mut steps = UntypedIter::new(bytes);
        while let Some(step) = steps.next() {
            self.shelf.steps += 1;
            if self.shelf.is_spent() {
                return;
            }
            let operand = |i: usize| step.operands().nth(i);
            let n = |i: usize| number(operand(i));
            let six = || Matrix([n(0), n(1), n(2), n(3), n(4), n(5)]);
            let shift = |x: f64, y: f64| Matrix([1.0, 0.0, 0.0, 1.0, x, y]);
            let operator: &[u8] = step.operator;
            self.anew |= operator == b"BT";
            self.moved |= matches!(operator, b"BT" | b"Td" | b"TD" | b"Tm" | b"T*" | b"'" | b"\"");
            match operator {
                b"q" if saved.len() < 512 => saved.push(state.clone()),
                b"Q" => state = saved.pop().unwrap_or(state),
                b"cm" => state.page = six().then(state.page),
                b"BT" => {
                    line = Matrix::STILL;
                    text = Matrix::STILL;
                }
                b"Tf" => {
                    state.size = n(1);
                    if let Some(Object::Name(name)) = operand(0) {
                        state.font = resources.get_font(name).map(|dict| self.shelf.font(&dict));
                    }
                }
                b"Tc" => state.letter_space = n(0),
                b"Tw" => state.word_space = n(0),
                b"Tz" => state.stretch = n(0) / 100.0,
                b"TL" => state.leading = n(0),
                b"Ts" => state.rise = n(0),
                b"Tr" => state.hidden = matches!(n(0) as i64, 3 | 7),
                b"Tm" => {
                    line = six();
                    text = line;
                }
                b"Td" | b"TD" => {
                    if operator == b"TD" {
                        state.leading = -n(1);
                    }
                    line = shift(n(0), n(1)).then(line);
                    text = line;
                }
                b"T*" => {
                    line = shift(0.0, -state.leading).then(line);
                    text = line;
                }
                b"Tj" => self.show(operand(0), &state, &mut text),
                b"'" | b"\"" => {
                    if operator == b"\"" {
                        state.word_space = n(0);
                        state.letter_space = n(1);
                    }
                    line = shift(0.0, -state.leading).then(line);
                    text = line;
                    self.show(operand(if operator == b"'" { 0 } else { 2 }), &state, &mut text);
                }
                b"TJ" => {
                    if let Some(Object::Array(list)) = operand(0) {
                        for item in list.iter::<Object<'_>>() {
                            if let Object::Number(_) = item {
                                let back = number(Some(&item)) / 1000.0;
                                text = shift(-back * state.size * state.stretch, 0.0).then(text);
                            } else {
                                self.show(Some(&item), &state, &mut text);
                            }
                        }
                    }
                }
                b"Do" => {
                    if let Some(Object::Name(name)) = operand(0)
                        && let Some(form) = resources.get_x_object(name)
                    {
                        self.form(&form, resources, &state, depth);
                    }
                }
                b"gs" => {
                    if let Some(Object::Name(name)) = operand(0)
                        && let Some(set) = resources.get_ext_g_state(name)
                        && let Some(font) = set.get::<Array<'_>>("Font")
                    {
                        let mut parts = font.flex_iter();
                        state.font = parts.next::<Dict<'_>>().map(|d| self.shelf.font(&d));
                        state.size = parts.next::<f32>().map_or(state.size, f64::from);
                    }
                }
                b"m" => {
                    self.start = state.page.at((n(0), n(1)));
                    self.at = self.start;
                }
                b"l" => self.line_to(state.page.at((n(0), n(1)))),
                b"c" => self.at = state.page.at((n(4), n(5))),
                b"v" | b"y" => self.at = state.page.at((n(2), n(3))),
                b"h" => self.line_to(self.start),
                b"re" => {
                    let (x, y, w, h) = (n(0), n(1), n(2), n(3));
                    self.at = state.page.at((x, y));
                    for corner in [(x + w, y), (x + w, y + h), (x, y + h), (x, y)] {
                        self.line_to(state.page.at(corner));
                    }
                }
                b"S" | b"s" | b"f" | b"F" | b"f*" | b"B" | b"B*" | b"b" | b"b*" => {
                    if matches!(operator, b"s" | b"b" | b"b*") {
                        self.line_to(self.start);
                    }
                    if self.rules.len() < MOST_RULES {
                        self.rules.append(&mut self.path);
                    }
                    self.path.clear();
                }
                b"n" => self.path.clear(),
                _ => {}
            }
        }
    }

    fn line_to(&mut self, to: Point) {
        let (dx, dy) = ((to.0 - self.at.0).abs(), (to.1 - self.at.1).abs());
        if dx.min(dy) < 0.5 && dx.max(dy) > 3.0 && self.path.len() < MOST_RULES {
            self.path.push(Rule { from: self.at, to });
        }
        self.at = to;
    }

    fn form(&mut self, form: &Stream<'_>, around: &Resources<'_>, state: &State, depth: usize) {
        let dict = form.dict();
        let is_form = dict.get::<Name<'_>>(keys::SUBTYPE).as_deref() == Some(b"Form");
        if depth >= DEEPEST || !is_form {
            return;
        }
        let Ok(bytes) = form.decoded_data() else { return };
        let mut inner = state.clone();
        if let Some(matrix) = dict.get::<Array<'_>>(keys::MATRIX) {
            let mut six = [0.0; 6];
            for (slot, value) in six.iter_mut().zip(matrix.iter::<f32>()) {
                *slot = f64::from(value);
            }
            inner.page = Matrix(six).then(state.page);
        }
        match dict.get::<Dict<'_>>(keys::RESOURCES) {
            Some(own) => self.draw(&bytes, &Resources::new(own), inner, depth + 1),
            None => self.draw(&bytes, around, inner, depth + 1),
        }
    }

    fn show(&mut self, string: Option<&Object<'_>>, state: &State, text: &mut Matrix) {
        let (Some(Object::String(string)), Some(number)) = (string, state.font) else { return };
        let font = Rc::clone(&self.shelf.fonts[number]);
        font.letters(string.as_bytes(), &mut |letter| {
            self.shelf.steps += 1;
            let space = state.letter_space + if letter.blank { state.word_space } else { 0.0 };
            let ink = f64::from(letter.width) * state.size * state.stretch;
            let ahead = ink + space * state.stretch;
            let place = text.then(state.page);
            let from = place.at((0.0, state.rise));
            let to = place.at((ink, state.rise));
            let pen = place.at((ahead, state.rise));
            *text = Matrix([1.0, 0.0, 0.0, 1.0, ahead, 0.0]).then(*text);
            let m = place.0;
            let em = (m[2] * m[2] + m[3] * m[3]).sqrt() * state.size.abs();
            let sign = state.size.signum() * state.stretch.signum();
            let Some(way) = Way::of(m[0] * sign, m[1] * sign) else { return };
            let (width, height) = (f64::from(self.size.0), f64::from(self.size.1));
            let on_page = (-1.0..width + 1.0).contains(&from.0)
                && (-1.0..height + em).contains(&from.1)
                && em.is_finite();
            if !on_page || em < 0.5 {
                return;
            }
            self.hidden += usize::from(state.hidden);
            self.unknown += usize::from(letter.text == UNKNOWN);
            let text = letter.text;
            let moved = std::mem::take(&mut self.moved);
            let anew = std::mem::take(&mut self.anew);
            self.runs.put(&Glyph { text, from, to, pen, em, way, font: number, moved, anew });
        });
    }
}
