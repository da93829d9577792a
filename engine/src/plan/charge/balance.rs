//! How much of each source: the nutrient that is scarcest is filled first, by
//! the first source that brings it, within what the biochar can hold.

use crate::plan::charge::sources::NUTRIENTS;

/// What bounds a source beside its own amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Room {
    /// Litres of what is mixed in.
    Solid,
    /// Litres of what is soaked up.
    Liquid,
    /// Stirred in; it takes no room.
    None,
}

/// A source that may be used.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// g of each nutrient in one unit of it.
    pub brings: [f64; NUTRIENTS],
    /// The most of it, units.
    pub at_most: f64,
    /// What it takes room in.
    pub room: Room,
}

/// What bounds the mixture.
#[derive(Clone, Debug, PartialEq)]
pub struct Bounds {
    /// g wanted of each nutrient.
    pub wanted: [f64; NUTRIENTS],
    /// The most of each nutrient, g; without bound where nothing forbids it.
    pub at_most: [f64; NUTRIENTS],
    /// Litres for all that is mixed in.
    pub solid: f64,
    /// Litres for all that is soaked up.
    pub liquid: f64,
}

/// Less than this of anything is nothing, in any unit.
/// Our choice: far below what anybody can measure.
const NOTHING: f64 = 1e-9;

/// Units of each part that bring the mixture as near to what is wanted as its
/// bounds allow.
///
/// In each round the nutrient of which the smallest share is reached is taken,
/// and with it the first part that brings more than traces of it and has room. Parts stand in the
/// order in which they should be used.
pub fn fill(bounds: &Bounds, parts: &[Part]) -> Vec<f64> {
    let mut amounts = vec![0.0; parts.len()];
    let mut given_up = [false; NUTRIENTS];
    loop {
        let brought = totals(parts, &amounts);
        let mut scarcest: Option<(usize, f64)> = None;
        for at in 0..NUTRIENTS {
            let wanted = bounds.wanted[at];
            if wanted <= NOTHING || given_up[at] {
                continue;
            }
            let share = brought[at] / wanted;
            if share < 1.0 - NOTHING && scarcest.is_none_or(|(_, least)| share < least) {
                scarcest = Some((at, share));
            }
        }
        let Some((scarce, _)) = scarcest else { return amounts };
        let missing = bounds.wanted[scarce] - brought[scarce];
        let next = (0..parts.len()).find_map(|at| {
            if !helps(bounds, &parts[at], scarce) {
                return None;
            }
            let per_unit = parts[at].brings[scarce];
            let units = room_for(bounds, parts, &amounts, &brought, at).min(missing / per_unit);
            (units * per_unit > NOTHING * bounds.wanted[scarce]).then_some((at, units))
        });
        match next {
            Some((at, units)) => amounts[at] += units,
            None => given_up[scarce] = true,
        }
    }
}

/// A part is used for the sake of a nutrient unless it uses up what another
/// may be at most ten times as fast: no blood meal for its potassium.
/// Our choice.
const TRACE: f64 = 0.1;

/// Whether a part is used for the sake of a nutrient.
fn helps(bounds: &Bounds, part: &Part, nutrient: usize) -> bool {
    let fills = part.brings[nutrient] / bounds.wanted[nutrient];
    // By a bound of nothing this is without end, and nothing helps.
    let uses_up = |at: usize| {
        if part.brings[at] > 0.0 { part.brings[at] / bounds.at_most[at] } else { 0.0 }
    };
    let fastest = (0..NUTRIENTS).map(uses_up).fold(0.0, f64::max);
    fills > 0.0 && fills >= TRACE * fastest
}

/// How many more units of a part there is room for.
fn room_for(
    bounds: &Bounds,
    parts: &[Part],
    amounts: &[f64],
    brought: &[f64; NUTRIENTS],
    at: usize,
) -> f64 {
    let part = &parts[at];
    let used = |room: Room| -> f64 {
        parts.iter().zip(amounts).filter(|(p, _)| p.room == room).map(|(_, units)| units).sum()
    };
    let mut units = part.at_most - amounts[at];
    match part.room {
        Room::Solid => units = units.min(bounds.solid - used(Room::Solid)),
        Room::Liquid => units = units.min(bounds.liquid - used(Room::Liquid)),
        Room::None => {}
    }
    for ((brings, at_most), brought) in part.brings.iter().zip(bounds.at_most).zip(brought) {
        if *brings > 0.0 {
            units = units.min((at_most - brought) / brings);
        }
    }
    units.max(0.0)
}

/// g of each nutrient that the amounts bring together.
pub fn totals(parts: &[Part], amounts: &[f64]) -> [f64; NUTRIENTS] {
    let mut sums = [0.0; NUTRIENTS];
    for (part, units) in parts.iter().zip(amounts) {
        for (sum, grams) in sums.iter_mut().zip(part.brings) {
            *sum += grams * units;
        }
    }
    sums
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Numbers that come back the same every time: a congruential series.
    struct Series(u64);

    impl Series {
        fn next(&mut self) -> f64 {
            self.0 = self
                .0
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            (self.0 >> 11) as f64 / (1u64 << 53) as f64
        }
    }

    #[test]
    fn no_bound_is_passed_and_no_gram_appears_or_is_lost() {
        let mut series = Series(7);
        for round in 0..5000 {
            let mut numbers = |scale: f64| -> [f64; NUTRIENTS] {
                std::array::from_fn(|_| {
                    let number = series.next();
                    if number < 0.2 { 0.0 } else { number * scale }
                })
            };
            let wanted = numbers(50.0);
            let extra = numbers(40.0);
            let forbidden = numbers(1.0);
            let at_most = std::array::from_fn(|i| {
                if forbidden[i] > 0.8 { wanted[i] + extra[i] } else { f64::INFINITY }
            });
            let parts: Vec<Part> = (0..round % 7)
                .map(|i| Part {
                    brings: numbers(10.0),
                    at_most: numbers(30.0)[0],
                    room: [Room::Solid, Room::Liquid, Room::None][i % 3],
                })
                .collect();
            let [solid, liquid, ..] = numbers(20.0);
            let bounds = Bounds { wanted, at_most, solid, liquid };
            let amounts = fill(&bounds, &parts);
            let brought = totals(&parts, &amounts);
            let fits = |value: f64, most: f64| value <= most + 1e-9 * (1.0 + most.abs());
            for room in [Room::Solid, Room::Liquid] {
                let litres: f64 = parts
                    .iter()
                    .zip(&amounts)
                    .filter(|(p, _)| p.room == room)
                    .map(|(_, a)| a)
                    .sum();
                assert!(fits(litres, if room == Room::Solid { solid } else { liquid }));
            }
            for (part, amount) in parts.iter().zip(&amounts) {
                assert!(*amount >= 0.0 && fits(*amount, part.at_most));
            }
            for at in 0..NUTRIENTS {
                assert!(fits(brought[at], at_most[at]), "{brought:?} {at_most:?}");
                // On hand = used + left over.
                let on_hand: f64 = parts.iter().map(|p| p.brings[at] * p.at_most).sum();
                let left: f64 =
                    parts.iter().zip(&amounts).map(|(p, a)| p.brings[at] * (p.at_most - a)).sum();
                assert!((on_hand - left - brought[at]).abs() <= 1e-9 * (1.0 + on_hand));
            }
            // Nothing more could be done for a nutrient that is still short.
            for at in 0..NUTRIENTS {
                if brought[at] < wanted[at] * (1.0 - 1e-6) {
                    for (i, part) in parts.iter().enumerate() {
                        let room = room_for(&bounds, &parts, &amounts, &brought, i);
                        let more = part.brings[at] * room;
                        assert!(!helps(&bounds, part, at) || more <= 1e-6 * wanted[at]);
                    }
                }
            }
        }
    }
}
