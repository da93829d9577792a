//! A published scheme of steps, and where a result falls on it.

use crate::facts::{Oxide, RangeRow};
use crate::quantity::{Context, Grounds, Note, Unit, convert, significant};
use crate::ranges::{Finding, Level, Opinion, Range, Step};
use crate::soil::{Amount, Measure, Method, MethodKind, PlantGroup, Property, Soils};
use crate::sources::{Citation, Grade};

/// One published table for one property: its steps in its own words and unit.
#[derive(Debug)]
pub struct Scheme {
    /// Its name in tests.
    #[cfg_attr(not(feature = "scheme-names"), allow(dead_code, reason = "only tests read it"))]
    pub(crate) id: Name,
    /// The region it was published for.
    pub region: &'static str,
    /// What it judges.
    pub property: Property,
    /// The methods it was made for; empty when the method does not matter.
    pub methods: &'static [Method],
    /// The soils it was made for.
    pub soils: Soils,
    /// The unit of its ends, as printed.
    pub unit: Unit,
    /// The oxide that its ends are counted as; `None` for the element.
    pub oxide: Option<Oxide>,
    /// The steps, low to high.
    pub(crate) steps: Steps,
    /// The smallest difference between printed ends: 1 where it prints
    /// `0–25, 26–50`, 0 where the end of one step is the start of the next.
    pub printed_to: f64,
    /// The plants it was made for.
    pub plants: &'static [PlantGroup],
    /// Those judged by it where no region is known.
    pub judges: &'static [PlantGroup],
    /// Those for which it stands as a second opinion where no region is known.
    pub second: &'static [PlantGroup],
    /// The publication, with its grade.
    pub citations: &'static [Citation],
    /// What its steps mean for the plants, as the publication says it;
    /// [`NO_CHANCE`] when it doesn't.
    pub meaning: &'static str,
    /// What a reader must know of it; empty when there is nothing.
    pub note: Note,
}

/// A kebab-case name, unique among the schemes. Only tests ask for it, so the
/// page is built without these names.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Name(#[cfg(feature = "scheme-names")] &'static str);

pub(crate) const fn named(name: &'static str) -> Name {
    #[cfg(feature = "scheme-names")]
    return Name(name);
    #[cfg(not(feature = "scheme-names"))]
    {
        let _ = name;
        Name()
    }
}

/// A step of a scheme without its end, which many tables share.
#[derive(Debug)]
pub(crate) struct Rung {
    pub(crate) word: &'static str,
    pub(crate) level: Level,
    pub(crate) inclusive: bool,
}

/// The steps of a scheme and their upper ends; the last has none.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Steps(pub(crate) &'static [Rung], pub(crate) &'static [f64]);

/// The meaning of steps whose publication gives none.
pub const NO_CHANCE: &str = "The publication gives no chance that plants respond.";

/// Where a result falls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Placed<'a> {
    /// On this step.
    On(&'a Step),
    /// On this step or one still further out: the laboratory gives only a limit.
    OnOrBeyond(&'a Step),
    /// Anywhere between two levels: the limit is too coarse to tell.
    Between(Level, Level),
}

/// Where `amount` falls on `steps`, which must be in the same unit.
pub fn place(steps: &[Step], amount: Amount) -> Placed<'_> {
    let last = steps.len() - 1;
    let first_where = |f: &dyn Fn(&Step) -> bool| steps.iter().position(f).unwrap_or(last);
    // The steps a result may be on, with the one nearest to sufficiency first.
    let (nearest, span) = match amount {
        Amount::Exactly(v) => return Placed::On(&steps[first_where(&|s| s.reaches(v))]),
        Amount::Below(limit) => {
            let top = first_where(&|s| s.up_to.is_none_or(|end| end >= limit));
            (&steps[top], &steps[..=top])
        }
        Amount::Above(limit) => {
            let bottom = first_where(&|s| s.up_to.is_none_or(|end| end > limit));
            (&steps[bottom], &steps[bottom..])
        }
    };
    let same_side = match amount {
        Amount::Below(_) => span.iter().all(|s| s.level.is_short()),
        _ => span.iter().all(|s| s.level.is_surplus()),
    };
    if span.iter().all(|s| s.level == nearest.level) {
        Placed::On(nearest)
    } else if same_side {
        Placed::OnOrBeyond(nearest)
    } else {
        Placed::Between(span[0].level, span[span.len() - 1].level)
    }
}

impl Scheme {
    /// The table of a row that was read, kept for as long as the program runs.
    pub(crate) fn of(row: RangeRow, citations: &'static [Citation]) -> Scheme {
        let ends: Vec<f64> = row.steps.iter().filter_map(|step| step.up_to).collect();
        let rungs: Vec<Rung> = row
            .steps
            .into_iter()
            .map(|step| Rung {
                word: step.word.leak(),
                level: step.level,
                inclusive: step.inclusive,
            })
            .collect();
        Scheme {
            id: named(row.id.leak()),
            region: row.region.leak(),
            property: row.property,
            methods: row.methods.leak(),
            soils: Soils {
                groups: row.soils.groups.leak(),
                textures: row.soils.textures.leak(),
                within: row.soils.within.leak(),
            },
            unit: row.unit,
            oxide: row.oxide,
            steps: Steps(rungs.leak(), ends.leak()),
            printed_to: row.printed_to,
            plants: row.plants.leak(),
            judges: row.judges.leak(),
            second: row.second.leak(),
            citations,
            meaning: if row.meaning.is_empty() { NO_CHANCE } else { row.meaning.leak() },
            note: row.note.into(),
        }
    }

    /// The steps as printed, low to high; the last has no end.
    pub fn steps(&self) -> Vec<Step> {
        let Steps(rungs, ends) = self.steps;
        (0..)
            .zip(rungs)
            .map(|(i, &Rung { word, level, inclusive })| Step {
                word,
                level,
                up_to: ends.get(i).copied(),
                inclusive,
            })
            .collect()
    }

    /// The steps with their ends in `unit`; `None` when the table can't be
    /// compared with it, as mg/L with mg/kg without the soil's density.
    fn steps_in(&self, unit: Unit, density: Option<f64>) -> Option<Vec<Step>> {
        let mut steps = self.steps();
        for end in steps.iter_mut().filter_map(|step| step.up_to.as_mut()) {
            *end = self.end_in(*end, unit, density)?;
        }
        Some(steps)
    }

    /// Whether a result in `unit` can be compared with it.
    pub(crate) fn compares(&self, unit: Unit, density: Option<f64>) -> bool {
        let Steps(_, ends) = self.steps;
        ends.iter().all(|end| self.end_in(*end, unit, density).is_some())
    }

    fn end_in(&self, end: f64, unit: Unit, density: Option<f64>) -> Option<f64> {
        let context =
            Context { density, ..Context::FURROW_SLICE.with_charge(self.property.mg_per_mmolc()) };
        let element = self.oxide.map_or(1.0, Oxide::element);
        convert(end * element, self.unit, unit, &context).ok()
    }

    /// Its kebab-case name, unique among the schemes.
    #[cfg(feature = "scheme-names")]
    pub fn id(&self) -> &'static str {
        self.id.0
    }

    /// Whether nobody has read it in its publication, or where that is quoted.
    pub fn is_from_memory(&self) -> bool {
        self.citations.iter().all(|c| c.grade >= Grade::FromMemory)
    }

    /// Whether it was made for this method.
    pub fn is_for(&self, method: Option<Method>) -> bool {
        // What is taken out of a potting mix is no soil's, in whatever table.
        if method == Some(Method::SaturatedMedia) {
            return self.methods.contains(&Method::SaturatedMedia);
        }
        // How soil and water were mixed moves a pH by little; it moves salts by much.
        let by_extract = self.property.is_extracted() || self.property == Property::Ec;
        self.methods.is_empty()
            || !by_extract
                && !self.methods.contains(&Method::SaturatedMedia)
                && method.is_none_or(|m| m.kind() != MethodKind::Extractant)
            || method.is_some_and(|m| self.methods.contains(&m))
    }

    /// The sufficient stretch in words, as printed and in the reader's unit.
    fn text(&self, unit: Unit, density: Option<f64>) -> String {
        let printed = stretch(&self.steps(), self.printed_to, self.unit, &|end| end);
        let printed = match self.oxide {
            None if unit == self.unit => return printed,
            None => printed,
            Some(oxide) => format!("{printed} of {}", oxide.symbol()),
        };
        let here = stretch(&self.steps(), self.printed_to, unit, &|end| {
            self.end_in(end, unit, density).unwrap_or(end)
        });
        format!("{here} (printed as {printed})")
    }

    /// The judgement of a measure by this scheme alone; `None` when their
    /// units can't be compared. With the soil's `density` (g/cm³) a result by
    /// volume can be compared with a table by weight, and the other way round.
    pub fn judge(&self, measure: &Measure, density: Option<f64>) -> Option<Finding> {
        let steps = self.steps_in(measure.unit, density)?;
        let text = self.text(measure.unit, density);
        let mut finding = judge_on(&steps, &text, measure, self.citations);
        finding.grounds.rule = format!("{} {}", finding.grounds.rule, self.meaning);
        if !self.note.is_none() {
            finding.grounds.assumed.push(self.note.clone());
        }
        Some(finding)
    }
}

/// The judgement of a measure on steps that are in its own unit.
pub(crate) fn judge_on(
    steps: &[Step],
    text: &str,
    measure: &Measure,
    citations: &[Citation],
) -> Finding {
    let value = amount_text(measure.amount, measure.unit);
    let mut grounds = Grounds::new("", citations).input(measure.property.label(), value.clone());
    if let Some(method) = measure.method {
        grounds = grounds.input("method", method.label());
    }
    let (level, word) = match place(steps, measure.amount) {
        Placed::On(step) => (step.level, step.word),
        Placed::OnOrBeyond(step) => {
            grounds = grounds.assume(format!(
                "The lab gives only a limit, {value}: this is {}, or further out.",
                step.level.label()
            ));
            (step.level, step.word)
        }
        Placed::Between(from, to) => {
            grounds.rule = format!("Sufficient: {text}.");
            let why = format!(
                "The lab gives only a limit, {value}. That may be anything from {} to {}. Ask the lab for the number.",
                from.label(),
                to.label()
            );
            return Finding {
                not_judged: Some(why),
                source: Some(citations[0].source),
                grounds,
                ..Finding::default()
            };
        }
    };
    grounds.rule = format!("Sufficient: {text}. {value} is “{word}” in this table.");
    let (sufficient_from, sufficient_to) = ends(steps);
    Finding {
        level: Some(level),
        range: Some(Range {
            sufficient_from,
            sufficient_to,
            unit: measure.unit,
            steps: steps.to_vec(),
            text: text.into(),
            word,
        }),
        source: Some(citations[0].source),
        grounds,
        ..Finding::default()
    }
}

/// Puts what another scheme says beside a finding.
pub(crate) fn add_opinion(finding: &mut Finding, other: Finding) {
    if let (Some(level), Some(range), Some(source)) = (other.level, other.range, other.source) {
        // A table without an upper end has no word for more than enough.
        let ours_is_open = finding.range.as_ref().is_some_and(|r| r.sufficient_to.is_none());
        let silent = |own: Level, open: bool, theirs: Level| {
            own == Level::Sufficient && open && theirs.is_surplus()
        };
        let theirs_is_open = range.sufficient_to.is_none();
        finding.second_opinions.push(Opinion {
            level,
            range,
            source,
            disagrees: finding.level.is_some_and(|ours| {
                ours != level
                    && !silent(level, theirs_is_open, ours)
                    && !silent(ours, ours_is_open, level)
            }),
            grounds: other.grounds,
        });
    }
}

/// A result as text: `38 mg/kg`, `below 5 mg/kg`.
pub(crate) fn amount_text(amount: Amount, unit: Unit) -> String {
    let number = number(amount.number(), unit);
    let word = match amount {
        Amount::Exactly(_) => "",
        Amount::Below(_) => "below ",
        Amount::Above(_) => "above ",
    };
    with_unit(format!("{word}{number}"), unit)
}

/// Where the sufficient stretch begins and ends.
fn ends(steps: &[Step]) -> (Option<f64>, Option<f64>) {
    let (before, last) = around_sufficient(steps);
    (before.and_then(|s| s.up_to), last.and_then(|s| s.up_to))
}

/// The step before the sufficient ones, and the last sufficient one.
fn around_sufficient(steps: &[Step]) -> (Option<&Step>, Option<&Step>) {
    let first = steps.iter().position(|s| s.level == Level::Sufficient);
    let before = first.and_then(|i| i.checked_sub(1)).map(|i| &steps[i]);
    (before, steps.iter().rfind(|s| s.level == Level::Sufficient))
}

/// The sufficient stretch of `steps` in words; `show` brings a printed end
/// into `unit`.
pub(crate) fn stretch(
    steps: &[Step],
    printed_to: f64,
    unit: Unit,
    show: &dyn Fn(f64) -> f64,
) -> String {
    let number = |end: f64| number(show(end), unit);
    let (before, last) = around_sufficient(steps);
    let words = match (
        before.and_then(|s| Some((s.up_to?, s.inclusive))),
        last.and_then(|s| Some((s.up_to?, s.inclusive))),
    ) {
        (Some((from, inclusive)), Some((to, _))) => {
            let from = if inclusive { from + printed_to } else { from };
            format!("{}–{}", number(from), number(to))
        }
        (Some((from, true)), None) => format!("above {}", number(from)),
        (Some((from, false)), None) => {
            return format!("{} or more", with_unit(number(from), unit));
        }
        (None, Some((to, true))) => format!("up to {}", number(to)),
        (None, Some((to, false))) => format!("below {}", number(to)),
        (None, None) => "any".into(),
    };
    with_unit(words, unit)
}

/// A number as it is printed: pH keeps its tenth.
fn number(value: f64, unit: Unit) -> String {
    match unit {
        Unit::None => format!("{value:.1}"),
        _ => significant(value, 4),
    }
}

fn with_unit(words: String, unit: Unit) -> String {
    let symbol = unit.symbol();
    if symbol.is_empty() { words } else { format!("{words} {symbol}") }
}
