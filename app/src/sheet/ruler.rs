//! A level as a mark on a ruler. Every step of the published scheme gets the
//! same width, so that a number can be read beside its neighbours whatever its
//! size; the sufficient stretch is drawn thick.

use emberloam_engine::quantity::{Unit, significant};
use emberloam_engine::ranges::{Level, Range, Step};
use leptos::prelude::*;

use crate::in_place::{Look, keyed, text};

/// Where a value stands on the ruler of a range, in per cent from the left.
fn position(range: &Range, value: f64) -> f64 {
    let ends: Vec<f64> = range.steps.iter().filter_map(|step| step.up_to).collect();
    let count = range.steps.len().max(1);
    let is_past = |step: &&Step| {
        step.up_to.is_some_and(|end| value > end || (value == end && !step.inclusive))
    };
    let step = range.steps.iter().take_while(is_past).count().min(count - 1);
    let width = |from: f64, to: f64| (to - from).abs().max(f64::MIN_POSITIVE);
    let within = match (step.checked_sub(1).and_then(|i| ends.get(i)), ends.get(step)) {
        (Some(from), Some(to)) => (value - from) / width(*from, *to),
        // The lowest step begins at nothing, but a pH has no zero.
        (None, Some(to)) => {
            let from = if range.unit == Unit::None { to - 2.0 } else { to.min(0.0) };
            (value - from) / width(from, *to)
        }
        // The highest step has no end: come near to it, never reach it.
        (Some(from), None) => {
            let size = if range.unit == Unit::None { 2.0 } else { from.abs() };
            let beyond = (value - from) / width(0.0, size);
            beyond / (beyond + 1.0)
        }
        (None, None) => 0.5,
    };
    (step as f64 + within.clamp(0.04, 0.96)) / count as f64 * 100.0
}

/// Where the sufficient stretch begins and ends, in per cent from the left.
fn stretch(range: &Range) -> Option<(f64, f64)> {
    let count = range.steps.len() as f64;
    let is_enough = |step: &&Step| step.level == Level::Sufficient;
    let first = range.steps.iter().position(|step| is_enough(&step))?;
    let last = range.steps.iter().rposition(|step| is_enough(&step))?;
    Some((first as f64 / count * 100.0, (last + 1) as f64 / count * 100.0))
}

/// The boundaries between steps: place in per cent from the left, and number.
fn ticks(range: &Range) -> Vec<(f64, String)> {
    let count = range.steps.len();
    let ends = range.steps.iter().filter_map(|step| step.up_to);
    ends.enumerate()
        .filter(|(i, _)| i + 1 < count)
        .map(|(i, end)| ((i + 1) as f64 / count as f64 * 100.0, significant(end, 3)))
        .collect()
}

/// Where a value stands on the ruler that all properties share, five levels of the same width, in
/// per cent from the left.
fn common_position(mark: &Mark) -> f64 {
    let Mark { range, value, level } = mark;
    let steps = range.steps.len().max(1) as f64;
    let at = position(range, *value) / 100.0 * steps;
    let of_level = |step: &Step| step.level == *level;
    let first = range.steps.iter().position(of_level).unwrap_or(0) as f64;
    let count = range.steps.iter().filter(|step| of_level(step)).count().max(1) as f64;
    let within = ((at - first) / count).clamp(0.08, 0.92);
    (f64::from(*level as u8) + within) / 5.0 * 100.0
}

/// The ruler that all properties share: a mark among five levels, the middle one drawn thick.
pub fn common_ruler(mark: impl Fn() -> Option<Mark> + Send + Sync + 'static) -> impl IntoView {
    let mark = Memo::new(move |_| mark().map(|mark| (common_position(&mark), mark.level)));
    let at = move || mark.get().map(|(at, _)| at).unwrap_or_default();
    view! {
        <span class="common-ruler" aria-hidden="true">
            <svg
                class="ruler-mark"
                viewBox="0 0 24 24"
                hidden=move || mark.look(Option::is_none)
                style=("--at", text(move || per_cent(at())))
            >
                <path d=text(move || mark.get().map_or("", |(_, level)| shape(level))) />
            </svg>
        </span>
    }
}

/// What a ruler shows.
#[derive(Clone, PartialEq)]
pub struct Mark {
    /// The published range.
    pub range: Range,
    /// The number, or the limit when only that is known.
    pub value: f64,
    /// Our level for it.
    pub level: Level,
}

/// The ruler. It repeats what the words beside it say, so it is hidden from
/// readers that listen.
pub fn ruler(mark: impl Fn() -> Option<Mark> + Send + Sync + 'static) -> impl IntoView {
    keyed(
        move || mark().into_iter().filter(|mark| !mark.range.steps.is_empty()).collect(),
        |_| String::new(),
        |mark: Memo<Mark>| {
            let enough = move || mark.look(|m| stretch(&m.range));
            let at = move || per_cent(mark.look(|m| position(&m.range, m.value)));
            view! {
                <div class="ruler" aria-hidden="true" data-level=move || mark.look(|m| m.level.name())>
                    <div class="ruler-line"></div>
                    {move || {
                        enough()
                            .map(|(from, to)| {
                                view! {
                                    <div
                                        class="ruler-enough"
                                        style=("--from", per_cent(from))
                                        style=("--to", per_cent(100.0 - to))
                                    ></div>
                                }
                            })
                    }}
                    {move || {
                        mark.look(|m| ticks(&m.range))
                            .into_iter()
                            .map(|(at, number)| {
                                view! {
                                    <div class="ruler-tick" style=("--at", per_cent(at))>
                                        <span>{number}</span>
                                    </div>
                                }
                            })
                            .collect_view()
                    }}
                    <svg class="ruler-mark" viewBox="0 0 24 24" style=("--at", at)>
                        <path d=text(move || shape(mark.look(|m| m.level))) />
                    </svg>
                </div>
            }
        },
    )
}

fn per_cent(value: f64) -> String {
    format!("{value:.2}%")
}

/// The mark's shape: it points down for short and up for surplus, twice when
/// far; enough is a seed.
fn shape(level: Level) -> &'static str {
    match level {
        Level::VeryLow => "M2 1H22L12 12ZM2 12H22L12 23Z",
        Level::Low => "M1 4H23L12 21Z",
        Level::Sufficient => "M12 2C18 6 20 10 20 14A8 8 0 0 1 4 14C4 10 6 6 12 2Z",
        Level::High => "M1 20H23L12 3Z",
        Level::Excess => "M2 23H22L12 12ZM2 12H22L12 1Z",
    }
}

/// The mark alone, for beside a word.
pub fn mark_of(level: impl Fn() -> Option<Level> + Send + Sync + 'static) -> impl IntoView {
    move || {
        level().map(|level| {
            view! {
                <svg class="level-mark" viewBox="0 0 24 24" aria-hidden="true">
                    <path d=shape(level) />
                </svg>
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn range(unit: Unit, ends: &[(Level, Option<f64>)]) -> Range {
        let step = |&(level, up_to)| Step { word: "", level, up_to, inclusive: true };
        Range {
            sufficient_from: None,
            sufficient_to: None,
            unit,
            steps: ends.iter().map(step).collect(),
            text: String::new(),
            word: "",
        }
    }

    fn four_steps() -> Range {
        range(
            Unit::MgPerKg,
            &[
                (Level::Low, Some(25.0)),
                (Level::Sufficient, Some(50.0)),
                (Level::High, Some(100.0)),
                (Level::Excess, None),
            ],
        )
    }

    #[test]
    fn a_value_stands_in_its_own_step() {
        let cases = [
            (0.0, 0.0, 25.0),
            (25.0, 0.0, 25.0),
            (26.0, 25.0, 50.0),
            (50.0, 25.0, 50.0),
            (51.0, 50.0, 75.0),
            (101.0, 75.0, 100.0),
            (1e9, 75.0, 100.0),
        ];
        for (value, from, to) in cases {
            let at = position(&four_steps(), value);
            assert!(from < at && at < to, "{value} at {at}");
        }
    }

    #[test]
    fn a_value_on_an_end_that_is_not_part_of_its_step_stands_in_the_next() {
        let mut range = four_steps();
        range.steps[0].inclusive = false;
        let at = position(&range, 25.0);
        assert!((25.0..50.0).contains(&at), "{at}");
    }

    #[test]
    fn more_stands_further_right() {
        let mut last = -1.0;
        for value in [2.0, 10.0, 24.0, 30.0, 49.0, 60.0, 99.0, 120.0, 500.0] {
            let at = position(&four_steps(), value);
            assert!(at > last, "{value}");
            last = at;
        }
    }

    #[test]
    fn a_low_ph_does_not_hug_the_edge_of_its_step() {
        let ph = range(
            Unit::None,
            &[(Level::Low, Some(6.0)), (Level::Sufficient, Some(7.0)), (Level::High, None)],
        );
        let at = position(&ph, 5.0);
        assert!((16.0..18.0).contains(&at), "{at}");
    }

    #[test]
    fn on_the_common_ruler_a_value_stands_in_its_level_and_more_stands_further_right() {
        let at = |value, level| common_position(&Mark { range: four_steps(), value, level });
        let all = [
            at(5.0, Level::Low),
            at(20.0, Level::Low),
            at(40.0, Level::Sufficient),
            at(60.0, Level::High),
            at(99.0, Level::High),
            at(500.0, Level::Excess),
        ];
        assert!(all.is_sorted(), "{all:?}");
        let slots = all.map(|at| (at / 20.0) as u8);
        assert_eq!(slots, [1, 1, 2, 3, 3, 4]);
    }

    #[test]
    fn the_thick_stretch_is_the_sufficient_steps() {
        assert_eq!(stretch(&four_steps()), Some((25.0, 50.0)));
        assert_eq!(stretch(&range(Unit::None, &[(Level::Low, None)])), None);
        let ticks: Vec<_> = ticks(&four_steps()).into_iter().map(|(_, text)| text).collect();
        assert_eq!(ticks, ["25", "50", "100"]);
    }
}
