//! When a bed with several crops lies empty.

use time::{Date, Duration};

use crate::case::Season;

/// A stretch of days on which nothing grows in the bed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rest<'a> {
    /// What was there before; `None` where the bed is empty already.
    pub after: Option<&'a str>,
    /// The first day without it.
    pub from: Date,
    /// What comes next, and when; `None` where nothing is planned.
    pub before: Option<(&'a str, Date)>,
}

/// Days on which one thing stands in the bed; `None` is "before all we know"
/// and "after all we know".
type Stand<'a> = (&'a str, Option<Date>, Option<Date>);

impl Rest<'_> {
    /// Its length, days; `None` where nothing is planned.
    pub fn days(&self) -> Option<i64> {
        Some((self.before?.1 - self.from).whole_days())
    }

    /// Whether a day lies in it.
    pub fn holds(&self, day: Date) -> bool {
        self.from <= day && self.before.is_none_or(|(_, planting)| day <= planting)
    }
}

/// Everything that stands in the bed at some time: the crops, and the single
/// planting and harvest where they say more.
fn stands(season: &Season) -> Vec<Stand<'_>> {
    let mut all: Vec<Stand<'_>> =
        season.crops.iter().map(|c| (c.name.as_str(), c.planting, c.harvest)).collect();
    let to_come = season.planting.filter(|p| season.today.is_some_and(|t| *p > t));
    if season.crops.is_empty() {
        // A past planting stands until its harvest; a harvest after the next
        // planting is that of the crop still to come.
        match (to_come, season.harvest) {
            (Some(p), Some(h)) if h < p => all.extend([("", None, Some(h)), ("", to_come, None)]),
            (Some(_), harvest) => all.push(("", to_come, harvest)),
            (None, harvest) => all.push(("", season.planting, harvest)),
        }
    } else {
        if to_come.is_some_and(|p| all.iter().all(|stand| stand.1 != Some(p))) {
            all.push(("", to_come, None));
        }
        if season.harvest.is_some_and(|h| all.iter().all(|stand| stand.2 != Some(h))) {
            all.push(("", None, season.harvest));
        }
    }
    all.retain(|(_, planting, harvest)| match (planting, harvest) {
        (Some(planting), Some(harvest)) => planting <= harvest,
        (None, None) => false,
        _ => true,
    });
    all
}

/// The stretches from today on in which the bed is empty, in their order.
pub fn rests(season: &Season) -> Vec<Rest<'_>> {
    let Some(today) = season.today else { return Vec::new() };
    let stands = stands(season);
    let mut rests: Vec<Rest<'_>> = Vec::new();
    let starts = std::iter::once((None, today))
        .chain(stands.iter().filter_map(|(name, _, harvest)| Some((Some(*name), (*harvest)?))));
    for (after, from) in starts.filter(|(_, from)| *from >= today) {
        let taken = stands.iter().any(|(_, planting, harvest)| {
            planting.is_none_or(|p| p <= from) && harvest.is_none_or(|h| h > from)
        });
        if taken || rests.iter().any(|rest| rest.from == from) {
            continue;
        }
        let mut before: Option<(&str, Date)> = None;
        for (name, planting, _) in &stands {
            if let Some(p) = planting.filter(|p| *p > from && before.is_none_or(|b| *p < b.1)) {
                before = Some((name, p));
            }
        }
        let at = rests.iter().take_while(|rest| rest.from < from).count();
        rests.insert(at, Rest { after, from, before });
    }
    rests
}

/// A rest after which nothing is planned counts as this long, so that a winter
/// between two crops comes before it, days. Source: our choice.
const OPEN_DAYS: i64 = 120;

/// More days than any rest has. Source: our choice.
const OVER_ANY: i64 = 10_000_000;

/// The rest that suits uncharged biochar best: one the first frost falls into
/// before others, the longest of those. `None` when there is none.
pub fn longest(season: &Season) -> Option<Rest<'_>> {
    let worth = |rest: &Rest<'_>| {
        let days = rest.days().unwrap_or(OPEN_DAYS);
        let cool = season.first_frost.is_some_and(|frost| {
            // A bed cleared some days after the frost is clear over the winter too.
            rest.holds(frost) || rest.holds(frost.saturating_add(Duration::days(30)))
        });
        days + if cool { OVER_ANY } else { 0 }
    };
    let mut best = None;
    for rest in rests(season) {
        if best.as_ref().is_none_or(|other| worth(&rest) > worth(other)) {
            best = Some(rest);
        }
    }
    best
}
