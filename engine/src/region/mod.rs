//! Where a soil lies: whose tables judge it, and which methods are usual there.

mod lime;
mod rates;

use crate::facts::small;
use crate::soil::{Method, Property};
use crate::sources::*;

pub use lime::{RegionalLime, WantedSaturation};
pub use rates::{CropNames, CropRate};

/// A region that publishes how its soil tests are to be read.
#[derive(Debug, PartialEq)]
pub struct Region {
    /// A kebab-case name, unique among the regions.
    pub id: &'static str,
    /// What a gardener calls it.
    pub name: &'static str,
    /// The larger region that it is a part of; empty where there is none.
    pub(crate) within: &'static str,
    /// Other regions whose tables are next best, the best first.
    pub(crate) near: &'static [&'static str],
    pub(crate) phosphorus: &'static [Method],
    pub(crate) cations: &'static [Method],
    /// Whether its laboratories print pH in a salt solution.
    pub salt_ph: bool,
    /// Words that only its reports print.
    pub clues: &'static [&'static str],
    /// Where this was read.
    pub citations: &'static [Citation],
}

include!(concat!(env!("OUT_DIR"), "/regions.rs"));

/// A table without a region of its own is held against every region's last.
const ANYWHERE: &str = "anywhere";
/// Usual extractants where no region is known, the most usual first.
/// Source: common practice, no source.
const USUAL_PHOSPHORUS: [Method; 5] =
    [Method::Mehlich3, Method::Olsen, Method::BrayP1, Method::ModifiedMorgan, Method::Mehlich1];
/// The same for potassium, calcium and magnesium.
/// Source: common practice, no source.
const USUAL_CATIONS: [Method; 4] =
    [Method::Mehlich3, Method::AmmoniumAcetate, Method::ModifiedMorgan, Method::Mehlich1];

/// How much of a report is looked through for where it comes from, bytes. Our choice.
const MOST_LOOKED_AT: usize = 12_000;

impl Region {
    /// Every region, in the order of their names.
    pub fn all() -> &'static [Region] {
        ALL
    }

    /// The region of this name.
    pub fn of(id: &str) -> Option<&'static Region> {
        ALL.iter().find(|region| region.id == id)
    }

    /// How near the tables of another region are: 0 for its own; `None` where they are
    /// not for here.
    pub fn nearness(&self, of: &str) -> Option<usize> {
        if of == self.id {
            return Some(0);
        }
        if of == ANYWHERE {
            return Some(self.near.len() + 1);
        }
        self.near.iter().position(|near| *near == of).map(|at| at + 1)
    }

    /// The regions that a report's own words speak for, where no other has more of them.
    pub fn named_in<'a>(cells: impl Iterator<Item = &'a str>) -> Vec<&'static Region> {
        let mut text = String::new();
        for cell in cells {
            text.push_str(&small(cell));
            text.push('\n');
            if text.len() > MOST_LOOKED_AT {
                break;
            }
        }
        let own = count_clues(&mut text);
        // A part of a larger region has the words of the whole behind its own.
        let words = |at: usize| {
            let whole = ALL.iter().position(|r| r.id == ALL[at].within);
            if own[at] == 0 { 0 } else { own[at] + whole.map_or(0, |whole| own[whole]) }
        };
        let most = (0..ALL.len()).map(words).max().unwrap_or(0);
        (0..ALL.len()).filter(|at| most > 0 && words(*at) == most).map(|at| &ALL[at]).collect()
    }
}

/// How many of its clues each region finds in the text. A longer clue comes first and takes its
/// place away from shorter ones, so that “Northern Ireland” is no “Ireland”.
fn count_clues(text: &mut String) -> Vec<usize> {
    let mut found = vec![0; ALL.len()];
    let clues = ALL.iter().enumerate().flat_map(|(at, r)| r.clues.iter().map(move |c| (at, *c)));
    let mut clues: Vec<(usize, &str)> = clues.collect();
    clues.sort_unstable_by_key(|(_, clue)| (std::cmp::Reverse(clue.len()), *clue));
    for same in clues.chunk_by(|one, other| one.1 == other.1) {
        let clue = same[0].1;
        if stands_in(clue, text) {
            same.iter().for_each(|(at, _)| found[*at] += 1);
            *text = text.replace(clue, "\n");
        }
    }
    found
}

/// Whether a clue stands in a text as words of its own.
fn stands_in(clue: &str, text: &str) -> bool {
    text.match_indices(clue).any(|(at, _)| {
        // By range, not by the standard library's tables, which the page would carry.
        let ends = |c: Option<char>| c.is_none_or(|c| !c.is_ascii_alphanumeric() && c < 'À');
        ends(text[..at].chars().next_back()) && ends(text[at + clue.len()..].chars().next())
    })
}

/// The usual extractants of a property in a region, the most usual first.
pub fn usual_extractants(region: Option<&Region>, property: Property) -> Vec<Method> {
    let list: &[Method] = match (property, region) {
        (Property::Phosphorus, Some(region)) => region.phosphorus,
        (Property::Phosphorus, None) => &USUAL_PHOSPHORUS,
        (_, Some(region)) => region.cations,
        (_, None) => &USUAL_CATIONS,
    };
    list.iter().copied().filter(|method| method.extracts(property)).collect()
}
