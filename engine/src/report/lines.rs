//! Results in free lines: `Phosphorus (Mehlich-3): 18 ppm  Low`.

use super::about::{covers, depth_at, is_of_other_matter};
use super::fold::first_chars;
use super::grid::filled;
use super::label::{Label, saturation_of};
use super::names::Word;
use super::number::{Decimal, Said, bound_in_words, is_range, is_rating, said};
use super::place::{Draft, Tail, is_half_step};
use super::units::{Printed, unit_at};
use super::{Cell, Place, fold};
use crate::quantity::Unit;
use crate::soil::{Method, MethodKind, Property};

/// Text beyond this is not looked at for the beginning of a result.
const REACH: usize = 200;

/// A line beyond this, in bytes, is no list of results.
const LONGEST_LINE: usize = 2_000;

/// What one row of cells says.
#[derive(Debug, Default)]
pub(super) struct RowSays {
    pub drafts: Vec<Draft>,
    /// Names of results that are none, or that can't be told.
    pub refused: Option<String>,
    /// Whether a soil property is named at all.
    pub soil_word: bool,
}

/// A name and where its result begins.
struct Split {
    label: Label,
    name_end: usize,
    result: usize,
}

/// Reads a row as names with results.
pub(super) fn read_row(cells: &[Cell], decimal: Decimal) -> RowSays {
    if let Some(why) = filled(cells).next().and_then(|first| no_results_of(&first.text)) {
        return RowSays { refused: Some(why.into()), soil_word: true, ..RowSays::default() };
    }
    let Some(group) = Group::of(cells, decimal) else { return plain_row(cells, decimal) };
    let mut says = plain_row(&group.rest, decimal);
    says.drafts.iter_mut().for_each(|draft| group.give(draft));
    says
}

/// Why the numbers behind the first words of a row are no results of this soil: `Target levels
/// (ppm): P 20   K 40`.
fn no_results_of(first: &str) -> Option<&'static str> {
    // "3. Recommendation N 60   P2O5 0"
    let words = first.trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | ' '));
    let word = words.split(' ').next().unwrap_or(words).to_ascii_lowercase();
    if ["recommendation", "recommendations", "recommended", "recomendación", "recomendação"]
        .contains(&word.trim_end_matches(':'))
    {
        return Some("a recommendation, not a result");
    }
    let (ahead, _) = first.split_once(": ").or_else(|| Some((first.strip_suffix(':')?, "")))?;
    let label = Label::of(ahead);
    let named = !label.properties.is_empty() || !label.methods.is_empty();
    if !named && is_of_other_matter(ahead) {
        return Some("it stands in another analysis, not in a soil test");
    }
    label.words.iter().filter(|_| !named).find_map(|word| match word {
        // "Note: P 18 ppm" is one; "Ratings (ppm): P 20  K 40" are none.
        Word::RatingColumn if label.unit.is_none() => None,
        Word::RangeColumn | Word::RatingColumn => Some("a target or a range, not a result"),
        Word::Advice => Some("a recommendation, not a result"),
        Word::Other(why) => Some(*why),
        _ => None,
    })
}

/// Whether a text tells the classes of one property: `Zn < 2 low, 2 - 4 medium`.
pub(super) fn is_scale(text: &str, decimal: Decimal) -> bool {
    let Some(from) = text.find(|c: char| c.is_ascii_digit() || matches!(c, '<' | '>' | '≤' | '≥'))
    else {
        return false;
    };
    let class = |part: &str| {
        let part = part.trim();
        let words = part.find(|c: char| fold::is_letter(c)).unwrap_or(part.len());
        let (number, word) = part.split_at(words);
        let range = is_range(number.trim(), decimal) || part.starts_with(['<', '>', '≤', '≥']);
        range && is_rating(word.split(" a ").next().unwrap_or(word))
    };
    let classes = text[from..].replace("; ", ", ");
    classes.contains(", ") && classes.split(", ").all(class)
}

/// Reads a row in which each name stands for itself.
fn plain_row(cells: &[Cell], decimal: Decimal) -> RowSays {
    let mut says = RowSays::default();
    let cells: Vec<&Cell> = filled(cells).collect();
    // The draft under way, and whether it has its result.
    let mut open: Option<(Draft, bool)> = None;
    for (i, cell) in cells.iter().enumerate() {
        let next_is_amount =
            cells.get(i + 1).is_some_and(|c| matches!(said(&c.text, decimal), Said::Amount(..)));
        // The units of other columns stand between a name and a number that isn't its own.
        let units = |(draft, full): &(Draft, bool)| {
            !full && draft.unit.is_some() && Label::of(&cell.text).only_unit().is_some()
        };
        if open.as_ref().is_some_and(units) {
            open = None;
            continue;
        }
        if let Some((draft, full)) = &mut open
            && goes_with(draft, full, cell, next_is_amount, decimal)
        {
            continue;
        }
        let mut begun = begin(cell, decimal, &mut says);
        if begun.as_ref().is_none_or(|b| b.iter().all(|d| !d.1)) && cells.len() == 1 {
            let other = in_step(cell, decimal).or_else(|| value_first(cell, decimal));
            begun = other.or(begun);
        }
        if begun.is_none()
            && let Some((draft, true)) = &mut open
        {
            draft.left.get_or_insert_with(|| cell.text.clone());
            continue;
        }
        for new in begun.into_iter().flatten() {
            says.drafts.extend(open.take().filter(|o| o.1).map(|o| o.0));
            open = Some(new);
        }
    }
    says.drafts.extend(open.filter(|o| o.1).map(|o| o.0));
    if let Some(method) = cells.last().and_then(|last| method_of_row(&last.text))
        && says.drafts.len() > 1
    {
        for draft in &mut says.drafts {
            let covered = covers(method, draft.quantity.property);
            let own = draft.method.filter(|m| *m != method);
            draft.method = own.or(covered.then_some(method));
        }
    }
    says
}

/// `Mg 75 ppm (method: Egnér-Riehm)`: a bracket at the end of a row that says it is the method
/// is that of all its results.
fn method_of_row(last: &str) -> Option<Method> {
    let (_, inner) = last.strip_suffix(')')?.rsplit_once('(')?;
    let label = Label::of(inner);
    label.only_method().filter(|_| label.has(Word::MethodColumn))
}

/// What the first words of a row say of the results behind them: `Exchangeable cations
/// (cmol/kg): Ca 1.9   Mg 0.4`, `Base saturation, %   Calcium 49   Magnesium 5`.
struct Group {
    unit: Printed,
    /// The cells of the results.
    rest: Vec<Cell>,
}

impl Group {
    fn of(cells: &[Cell], decimal: Decimal) -> Option<Group> {
        let cells: Vec<&Cell> = filled(cells).collect();
        let [first, others @ ..] = cells.as_slice() else { return None };
        let (ahead, behind) = first.text.split_once(": ").unwrap_or((&first.text, ""));
        if ahead.len() == first.text.len() && others.is_empty() {
            return None;
        }
        let label = Label::of(ahead.trim_end_matches(':'));
        let shares = label.is_saturation();
        let named = label.properties.iter().any(|p| p.0 != Property::BaseSaturation);
        let unit = label.unit.filter(|u| shares == (u.unit == Unit::Percent))?;
        // Without a colon only the word for the whole tells a group from a name.
        let colon = first.text.contains(':');
        if named || label.has(Word::Advice) || !label.unknown.is_empty() || !colon && !shares {
            return None;
        }
        let mut rest: Vec<Cell> = others.iter().map(|c| (*c).clone()).collect();
        if !behind.trim().is_empty() {
            let place = span(first, first.text.len() - behind.len(), first.text.len());
            rest.insert(0, Cell { text: behind.trim().into(), place });
        }
        // What follows must begin with a result of its own name.
        let one = std::slice::from_ref(rest.first()?);
        let two = rest.get(..2).unwrap_or(one);
        let begins = |cells: &[Cell]| !plain_row(cells, decimal).drafts.is_empty();
        let own =
            matches!(said(&rest[0].text, decimal), Said::Text) && (begins(one) || begins(two));
        own.then_some(Group { unit, rest })
    }

    /// Gives a result what the group says, where it says nothing of its own.
    fn give(&self, draft: &mut Draft) {
        let bare = draft.unit.is_none() && draft.quantity.unit.is_none();
        let percent = self.unit.unit == Unit::Percent;
        let share = saturation_of(draft.quantity.property).filter(|_| percent);
        if bare && (share.is_some() || draft.quantity.property.shares_unit()) {
            draft.unit = Some(self.unit);
            draft.quantity.property = share.unwrap_or(draft.quantity.property);
        }
    }
}

/// Whether a cell belongs to the draft under way: its result, unit, rating or method.
fn goes_with(
    draft: &mut Draft,
    full: &mut bool,
    cell: &Cell,
    next_is_amount: bool,
    decimal: Decimal,
) -> bool {
    let text = &cell.text;
    if !*full {
        let result = said(text, decimal);
        let label = Label::of(text);
        // "Potassium  K  96" says its symbol once more, and "Calcium  S  604" that it suffices.
        let spelled = draft.name.chars().count() > 3 && !draft.name.contains(' ');
        let same = label.quantity().is_ok_and(|q| q.property == draft.quantity.property);
        if next_is_amount && spelled && text.len() < 3 && (same || text == "S") {
            if !same {
                draft.rating = Some(text.clone());
            }
            return true;
        }
        if matches!(result, Said::Text) && !is_rating(text) {
            // A method or unit may stand between the name and the result.
            let (unit, method) = (label.only_unit(), label.only_method());
            draft.unit = unit.or(draft.unit);
            draft.method = method.or(draft.method);
            return unit.is_some() || method.is_some();
        }
        draft.result.clone_from(text);
        draft.place = cell.place;
        *full = true;
        return true;
    }
    let label = Label::of(text);
    if next_is_amount && label.quantity().is_ok() {
        return false;
    }
    if let Some(unit) = label.only_unit().filter(|_| draft.unit.is_none()) {
        draft.unit = Some(unit);
        return true;
    }
    let range = is_range(text, decimal)
        || text.starts_with(['<', '>', '≤', '≥'])
        || label.has(Word::RangeColumn);
    let index = label.has(Word::Index) && label.properties.is_empty();
    if is_rating(text) || range || index {
        match &mut draft.rating {
            Some(before) => before.extend([", ", text]),
            None => draft.rating = Some(text.clone()),
        }
        return true;
    }
    if let Some(method) = label.only_method().filter(|_| draft.method.is_none()) {
        // A pH is extracted by nothing: such a method is that of other results.
        let extracts = method.kind() == MethodKind::Extractant && method != Method::Kcl;
        if !(extracts && is_reaction(draft.quantity.property)) {
            draft.method = Some(method);
        }
        return true;
    }
    // "Lime requirement: 0 t/ha" beside a pH is a statement of its own, and no result.
    is_reaction(draft.quantity.property)
        && text.starts_with(fold::is_letter)
        && label.has(Word::Advice)
        && text.contains(|c: char| c.is_ascii_digit())
}

fn is_reaction(property: Property) -> bool {
    matches!(property, Property::Ph | Property::SaltPh | Property::BufferPh)
}

/// The drafts that begin in a cell; the last may still lack its result.
fn begin(cell: &Cell, decimal: Decimal, says: &mut RowSays) -> Option<Vec<(Draft, bool)>> {
    if cell.text.len() > LONGEST_LINE {
        return None;
    }
    let mut drafts = Vec::new();
    let mut from = 0;
    // A line may hold several results one after the other; each turn eats some text.
    while let Some(split) = split(&cell.text[from..], decimal, says) {
        let text = &cell.text[from..];
        let mut draft = draft(&split.label, &text[..split.name_end], cell.place, decimal)?;
        let rest = &text[split.result..];
        // Where the next result begins.
        let mut next = None;
        let end = match said(rest, decimal) {
            Said::Amount(_, end) => {
                let tail = Tail::of(&rest[end..], decimal);
                // "K mg/kg 187 meq/100 g 0,48": the second unit is that of the number behind it.
                if let (Some(own), Some(unit)) = (draft.quantity.unit, tail.unit)
                    && own.unit != unit.unit
                    && let Some(left) = tail.left.as_deref()
                    && let Said::Amount(_, length) = said(left, decimal)
                {
                    let at = |from: usize, to: usize| span(cell, from, to);
                    let from = from + split.result;
                    let second = rest.len() - rest[end..].trim_start().len();
                    let behind = second + rest[second..].rfind(left).unwrap_or(0);
                    let mut again = draft.clone();
                    (again.quantity.unit, again.unit) = (None, Some(unit));
                    again.result = left[..length].into();
                    again.place = at(from + behind, from + behind + length);
                    draft.result = rest[..end].trim().into();
                    draft.place = at(from, from + end);
                    drafts.extend([(draft, true), (again, true)]);
                    return Some(drafts);
                }
                draft.unit = tail.unit.or(draft.unit);
                draft.method = draft.method.or(tail.method);
                draft.rating = tail.rating.filter(|r| !is_half_step(r));
                let glued_sign = rest[end..].starts_with(['-', '+', '−']) && draft.rating.is_none();
                let mut end = end + tail.unit_end;
                if glued_sign && tail.unit.is_none() {
                    end += rest[end..].chars().next().map_or(0, char::len_utf8);
                }
                if let Some(left) = tail.left {
                    let at = rest.rfind(&left).unwrap_or(rest.len());
                    let mut probe = RowSays::default();
                    if at > 0 && self::split(&left, decimal, &mut probe).is_some() {
                        next = Some(from + split.result + at);
                    } else {
                        draft.left = Some(left);
                    }
                }
                end
            }
            _ => rest.len(),
        };
        draft.result = rest[..end].trim().to_string();
        draft.place = span(cell, from + split.result, from + split.result + end);
        drafts.push((draft, true));
        let Some(next) = next else { return Some(drafts) };
        from = next;
    }
    if !drafts.is_empty() {
        return Some(drafts);
    }
    let label = Label::of(cell.text.trim_end_matches([':', '=']));
    match label.quantity() {
        Ok(_) => {
            says.soil_word = true;
            draft(&label, &cell.text, cell.place, decimal).map(|d| vec![(d, false)])
        }
        Err(why) => {
            if !why.starts_with("no soil") {
                says.soil_word |= label.is_soil();
                says.refused.get_or_insert(why);
            }
            None
        }
    }
}

/// `P/K/Mg: 45/120/88 ppm`: as many names as numbers, in the same order.
fn in_step(cell: &Cell, decimal: Decimal) -> Option<Vec<(Draft, bool)>> {
    let (names, values) = cell.text.split_once(':')?;
    let numbers = values.find(|c: char| fold::is_letter(c) || c == '%').unwrap_or(values.len());
    let tail = Tail::of(&values[numbers..], decimal);
    let count = names.split('/').count();
    // "Ca/Mg: 7/1" is a ratio.
    let ratio = count == 2 && tail.unit.is_none();
    if count < 2 || ratio || values[..numbers].split('/').count() != count {
        return None;
    }
    let mut at = names.len() + 1;
    let mut drafts = Vec::new();
    for (name, value) in names.split('/').zip(values[..numbers].split('/')) {
        let label = Label::of(name);
        let Said::Amount(_, end) = said(value, decimal) else { return None };
        if !label.unknown.is_empty() || !value[end..].trim().is_empty() {
            return None;
        }
        let mut draft = draft(&label, name, span(cell, at, at + value.len()), decimal)?;
        draft.result = value.trim().into();
        draft.unit = tail.unit;
        drafts.push((draft, true));
        at += value.len() + 1;
    }
    Some(drafts)
}

/// `6.4 pH`, `18 ppm phosphorus`: the number first. A lone symbol needs a unit before it.
fn value_first(cell: &Cell, decimal: Decimal) -> Option<Vec<(Draft, bool)>> {
    let text = &cell.text;
    let Said::Amount(_, end) = said(text, decimal) else { return None };
    if !text[end..].starts_with(' ') || depth_at(text, "", decimal).is_some() || text.len() > 60 {
        return None;
    }
    let words = fold::words(&text[end..]);
    let unit = unit_at(&words, 0);
    let after = end + unit.map_or(0, |(_, length)| words[length - 1].end);
    let label = Label::of(&text[after..]);
    if !label.unknown.is_empty() || label.only_symbols && unit.is_none() {
        return None;
    }
    let mut draft = draft(&label, &text[after..], span(cell, 0, after), decimal)?;
    draft.result = text[..after].trim().into();
    Some(vec![(draft, true)])
}

fn draft(label: &Label, name: &str, place: Place, decimal: Decimal) -> Option<Draft> {
    let shown = name.trim_end_matches(|c: char| {
        c.is_whitespace() || matches!(c, ':' | '=' | ',' | '.' | '…' | '-' | '–' | '|')
    });
    Some(Draft::of(label.quantity().ok()?, shown.trim(), place, decimal))
}

/// The place of some bytes of a cell.
fn span(cell: &Cell, from: usize, to: usize) -> Place {
    let text = &cell.text;
    let (from, to) = (from.min(text.len()), to.min(text.len()));
    let blank = text[from..to].len() - text[from..to].trim_start().len();
    let start = cell.place.start + text[..from + blank].chars().count() as u32;
    let end = start + text[from..to].trim().chars().count() as u32;
    Place { line: cell.place.line, start, end: end.min(cell.place.end.max(start)) }
}

/// Where a name ends and its result begins.
fn split(text: &str, decimal: Decimal, says: &mut RowSays) -> Option<Split> {
    let near = first_chars(text, REACH);
    let mut attempt = |name_end: usize, result: usize, sure: bool| -> Option<Split> {
        let label = Label::of(&near[..name_end]);
        says.soil_word |= label.is_soil();
        match label.quantity() {
            // The number behind "Mehlich" is the method's, unless a bracket parts them.
            Ok(_) if !label.ends_half || sure || near[..name_end].trim_end().ends_with(')') => {
                Some(Split { label, name_end, result })
            }
            Ok(_) => None,
            Err(why) => {
                if !why.starts_with("no soil") {
                    says.refused = Some(why);
                }
                None
            }
        }
    };
    let mut depth = 0_i32;
    let (mut before, mut before_that) = (' ', ' ');
    let mut tried = 0;
    for (at, c) in near.char_indices() {
        let inside_number = matches!(before, '.' | ',' | ':' | '/') && before_that.is_ascii_digit();
        // A dot parts only as a row of leader dots.
        let inside_word = before == '.' && !matches!(before_that, '.' | ' ');
        let parted = before_word(before) && !inside_number && !inside_word;
        if depth == 0 && at > 0 && parted && tried < 12 && opens_result(&near[at..], before) {
            tried += 1;
            let water = near[at..].starts_with("2O") && near[..at].trim_end().ends_with('H');
            if water || is_footnote(&near[at..]) || is_formula(&near[..at]) {
                (before_that, before) = (before, c);
                continue;
            }
            let result = said(&near[at..], decimal);
            // The 0-24 of "Nitrate-N 0-24 in 45 lb/A" is part of the name.
            let part = result == Said::Range && depth_at(&near[at..], "", decimal).is_some();
            if !part
                && !matches!(result, Said::Text | Said::Missing)
                && let Some(found) = attempt(at, at, false)
            {
                return Some(found);
            }
        }
        if depth == 0 && matches!(c, ':' | '=') && !is_ratio_colon(near, at) {
            let result = at + 1;
            let rest = near[result..].trim();
            let missing = !rest.is_empty() && matches!(said(rest, decimal), Said::Missing);
            if (is_rating(rest) || missing)
                && let Some(found) = attempt(at, result, true)
            {
                return Some(found);
            }
        }
        match c {
            '(' | '[' => depth += 1,
            // The bracket of "2) Sulfur" closes nothing.
            ')' | ']' => depth = (depth - 1).max(0),
            _ => {}
        }
        (before_that, before) = (before, c);
    }
    rating_only(near, &mut attempt)
}

/// The `4/` of `Zinc (Zn) 4/ mg/dm3`: the mark of a footnote.
fn is_footnote(text: &str) -> bool {
    let digits = text.bytes().take_while(u8::is_ascii_digit).count();
    let rest = &text[digits..];
    (1..=2).contains(&digits)
        && rest.strip_prefix('/').is_some_and(|r| r.is_empty() || r.starts_with([' ', ')']))
}

/// `P = P2O5 ×` and `K2O ±`: what stands behind is a factor, or how far a result may be off.
fn is_formula(before: &str) -> bool {
    before.trim_end().ends_with(['×', '÷', '±'])
}

/// Whether a text begins as a result does: with a number, a limit, or words for none.
fn opens_result(text: &str, before: char) -> bool {
    let mut rest = text.chars();
    let first = rest.next().unwrap_or(' ');
    let digit_follows = rest.next().is_some_and(|c| c.is_ascii_digit());
    let number = match fold::fold_char(first) {
        '<' | '>' => true,
        '-' => before.is_whitespace() && digit_follows,
        _ => first.is_ascii_digit() || first == '.' && digit_follows,
    };
    number || before_word(before) && is_not_detected(text)
}

/// `Potassium VH`: every word of the name is known and the rest is a rating.
fn rating_only(
    text: &str,
    attempt: &mut impl FnMut(usize, usize, bool) -> Option<Split>,
) -> Option<Split> {
    // "Potassium Very Low (44 ppm)": the number in its bracket is part of the result.
    let words = text.split('(').next().unwrap_or(text);
    if text.len() > 60 || words.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let blanks = words.char_indices().filter(|(_, c)| c.is_whitespace()).map(|(b, _)| b);
    for at in blanks.collect::<Vec<_>>() {
        let rest = text[at..].trim();
        let names = || Label::of(rest).is_soil();
        if words[at..].split_whitespace().count() <= 3 && is_rating(rest) && !names() {
            return attempt(at, at, false).filter(|s| s.label.unknown.is_empty());
        }
    }
    None
}

fn before_word(before: char) -> bool {
    before.is_whitespace() || matches!(before, ':' | '=' | ',' | '|' | '…' | '.' | ')')
}

fn is_not_detected(text: &str) -> bool {
    let head: String = text.chars().take(17).map(fold::fold_char).collect();
    bound_in_words(text)
        || ["nd", "n.d.", "n.n.", "bdl", "not detected", "nicht nachweisbar"]
            .iter()
            .any(|w| head.strip_prefix(w).is_some_and(|r| !r.starts_with(fold::is_word)))
}

fn is_ratio_colon(text: &str, at: usize) -> bool {
    let digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
    digit(text[..at].chars().next_back()) && digit(text[at + 1..].chars().next())
}
