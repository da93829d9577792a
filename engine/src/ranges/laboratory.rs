//! The laboratory's own class or range, where we hold no table; and beside ours where we do.

use crate::facts::{decimal, small};
use crate::quantity::{Grounds, Note};
use crate::ranges::Finding;
use crate::ranges::scheme::add_opinion;
use crate::region::Region;
use crate::soil::Level;
use crate::sources::{COMMON_PRACTICE, LABORATORY};

/// What a laboratory's word means.
struct Rating {
    word: &'static str,
    level: Level,
    /// Empty where it means this everywhere.
    region: &'static str,
}

include!(concat!(env!("OUT_DIR"), "/ratings.rs"));

/// What stands before a class.
const CLASS: [&str; 6] =
    ["gehaltsklasse", "gehaltsstufe", "versorgungsstufe", "klasse", "stufe", "class"];

/// The level that the laboratory's word or printed range means for a result; `None` where its
/// word means different things to different laboratories.
fn level_of(rating: &str, result: Option<f64>, region: Option<&Region>) -> Option<Level> {
    let word = small(rating.trim().trim_matches(['(', ')', '.', '*']));
    // "Gehaltsklasse B" says B; so does "class B".
    let word = match word.split_once(' ') {
        Some((before, class)) if CLASS.contains(&before) => class.to_string(),
        _ => word,
    };
    let here = |r: &&Rating| r.region.is_empty() || region.is_some_and(|x| x.id == r.region);
    if let Some(known) = RATINGS.iter().filter(here).find(|r| r.word == word) {
        return Some(known.level);
    }
    let (from, to) = word.split_once(['-', '–'])?;
    let (from, to) = (decimal(from.trim())?, decimal(to.trim())?);
    let result = result.filter(|_| from < to)?;
    Some(if result < from {
        Level::Low
    } else if result <= to {
        Level::Sufficient
    } else {
        Level::High
    })
}

/// Whether a table's word and a laboratory's rating are the same index: `Index 2−` and `2-`.
fn is_index(word: &str, rating: &str) -> bool {
    let bare = |text: &str| small(text).replace("index", "").replace('−', "-").trim().to_string();
    small(word).contains("index") && bare(word) == bare(rating)
}

/// The laboratory's own class as the answer.
fn by_class(level: Level, rating: &str, why: &str) -> Finding {
    Finding {
        level: Some(level),
        source: Some(&LABORATORY),
        grounds: Grounds::new(
            format!("The laboratory's own class: “{}”. {why}", rating.trim()),
            &[LABORATORY.opened(), COMMON_PRACTICE.unsourced()],
        ),
        ..Finding::default()
    }
}

/// Puts the laboratory's own class beside a finding: as the answer where there is no other, and
/// with the reason where the two differ. `result` is the number as printed.
pub fn beside(
    finding: &mut Finding,
    rating: &str,
    result: Option<f64>,
    region: Option<&'static Region>,
) {
    let theirs = level_of(rating, result, region);
    let same_index = finding.range.as_ref().is_some_and(|range| is_index(range.word, rating));
    let agrees =
        same_index || theirs.is_some_and(|t| finding.level.is_some_and(|l| l.side() == t.side()));
    if agrees && finding.rests_on_memory() {
        // What two say apart from each other no longer rests on memory alone.
        finding.grounds.sources.insert(0, LABORATORY.opened());
        finding.grounds.assumed.push("The laboratory's own class agrees.".into());
    }
    let said = theirs.is_some() && finding.level.is_some();
    let Some(theirs) = theirs else {
        finding.laboratory_agrees = same_index.then_some(true);
        return;
    };
    match finding.level {
        None => {
            let not_judged = finding.not_judged.take();
            *finding = by_class(theirs, rating, "We hold no table of our own for it.");
            finding.grounds.assumed.extend(not_judged.map(Note::from));
        }
        // The laboratory knows its own soils; a table of elsewhere does not.
        Some(ours) if ours.side() != theirs.side() && finding.of_elsewhere => {
            let hold = "We hold no table of this region for it.";
            let other = std::mem::replace(finding, by_class(theirs, rating, hold));
            add_opinion(finding, other);
        }
        Some(ours) if ours.side() != theirs.side() => {
            finding.grounds.assumed.push(format!(
                "The laboratory calls it “{}”. Its scheme parts the numbers elsewhere than this table; what it advises for its own soils comes first.",
                rating.trim()
            ).into());
        }
        Some(_) => {}
    }
    finding.laboratory_agrees =
        said.then(|| finding.level.is_some_and(|level| level.side() == theirs.side()));
}
