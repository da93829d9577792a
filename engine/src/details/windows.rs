//! The rests between the crops of a bed, what each allows, and what stands in
//! the way.

use time::Date;

use crate::case::{Crop, Season, Winter};
use crate::quantity::Grounds;
use crate::season::{
    Dated, LEAST_DAYS, Rest, Window, guessed_frost, is_southern, longest, rests, wet_months, window,
};
use crate::soil::Property;
use crate::sources::{COMMON_PRACTICE, NCEI_NORMALS, NGUYEN_2017, OUR_CHOICE, UMASS_FALL};
use crate::survey::Survey;

/// The rests of a bed and what stands in the way of biochar.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Windows {
    /// The rests in their order.
    pub rests: Vec<Dated>,
    /// What stands in the way, each with the days it is about.
    pub conflicts: Vec<Dated>,
}

fn named(name: &str, otherwise: &str) -> String {
    let name = name.trim();
    if name.is_empty() { otherwise.into() } else { name.into() }
}

fn dated(mut grounds: Grounds, season: &Season, dates: &[(&str, Option<Date>)]) -> Grounds {
    let frost = ("first frost", season.first_frost);
    for (name, date) in dates.iter().chain([&("today", season.today), &frost]) {
        if let Some(date) = date {
            grounds = grounds.input(*name, date.to_string());
        }
    }
    grounds
}

/// The rests between the crops, and every conflict of their dates.
pub fn windows(survey: &Survey<'_>) -> Windows {
    let season = &survey.case.season;
    if season.today.is_none() || season.crops.is_empty() && season.planting.is_none() {
        return Windows::default();
    }
    let best = longest(season);
    let rests: Vec<Dated> =
        rests(season).into_iter().map(|rest| offer(survey, rest, best == Some(rest))).collect();
    Windows { rests, conflicts: conflicts(season) }
}

/// A frost that lies farther back than this is that of another winter, days.
/// Source: our choice.
const HALF_A_YEAR: i64 = 182;

/// What one rest allows.
fn offer(survey: &Survey<'_>, rest: Rest<'_>, best: bool) -> Dated {
    let season = &survey.case.season;
    let winterless = season.winter == Some(Winter::None);
    let frost = season.first_frost.or_else(|| guessed_frost(season)).filter(|_| !winterless);
    let planting = rest.before.map(|(_, planting)| planting);
    // Only the frost of this rest's own winter bounds it.
    let own_frost = frost
        .filter(|frost| planting.is_none_or(|p| *frost < p))
        .filter(|frost| (rest.from - *frost).whole_days() < HALF_A_YEAR);
    let rule = "A rest runs from the harvest of one crop to the planting of the next; uncharged biochar wants four weeks of it, better eight.";
    let sources = [NGUYEN_2017.second_hand(), UMASS_FALL.opened(), OUR_CHOICE.unsourced()];
    let mut grounds = dated(
        Grounds::new(rule, &sources),
        season,
        &[("from", Some(rest.from)), ("planting", planting)],
    );
    let (to, mut reason) = match window(Some(rest.from), planting, rest.days(), own_frost, false) {
        Window::Open { to, notes, .. } => {
            let to = to.or(planting);
            (to, open(survey, rest, to, best, &notes, own_frost.is_some(), &mut grounds))
        }
        _ => {
            let days = rest.days().unwrap_or(0);
            (
                planting,
                format!(
                    "Too short for uncharged biochar: it needs {LEAST_DAYS} days before planting to take up what is loose, and this is {days}. Charged biochar can go in here."
                ),
            )
        }
    };
    if rest.before.is_none() {
        reason.push_str(
            " Nothing is planned after it. Give the next planting to see the last good day.",
        );
    }
    let to = to.map(|to| to.max(rest.from));
    Dated { what: between(rest), from: Some(rest.from), to, reason, grounds }
}

/// Why uncharged biochar can go in between the first and the last good day.
fn open(
    survey: &Survey<'_>,
    rest: Rest<'_>,
    to: Option<Date>,
    best: bool,
    notes: &[String],
    ends_at_frost: bool,
    grounds: &mut Grounds,
) -> String {
    let mut reason = if best {
        "The longest clear time, over the cool season where there is one: this is where uncharged biochar goes."
    } else {
        "Long enough for uncharged biochar, but not the best of the year."
    }
    .to_string();
    for note in notes {
        reason.push(' ');
        reason.push_str(note);
    }
    if survey.case.season.first_frost.is_none() && ends_at_frost {
        reason.push_str(
            " Provisional: its first frost is only a rough guess by latitude. Give your own first frost.",
        );
        grounds.sources.push(NCEI_NORMALS.derived());
        grounds.assumed.push("First frost guessed from latitude and height.".into());
    }
    if let Some(wet) = wet_through(survey, rest.from, to) {
        reason.push_str(&wet);
        grounds.sources.push(COMMON_PRACTICE.unsourced());
    }
    reason
}

/// What a rest is called.
fn between(rest: Rest<'_>) -> String {
    let after = rest.after.map(|name| named(name, "the crop there now"));
    match (after, rest.before) {
        (Some(after), Some((next, _))) => {
            format!("Between {after} and {}", named(next, "the next planting"))
        }
        (Some(after), None) => format!("After the harvest of {after}"),
        (None, Some((next, _))) => format!("Before {}", named(next, "the next planting")),
        (None, None) => "The bed is empty".to_string(),
    }
}

/// From which month of a rest on the soil is usually wet through, in a
/// sentence; nothing for sand, which can be dug at any time.
fn wet_through(survey: &Survey<'_>, from: Date, to: Option<Date>) -> Option<String> {
    let case = survey.case();
    if survey.texture.is_some_and(|texture| texture.is_sandy()) {
        return None;
    }
    let organic = survey.soil.value(Property::OrganicMatter);
    let water = wet_months(&case.season, survey.texture, organic, case.measures);
    if !water.from_rain {
        return None;
    }
    let mut wet = water.months.iter().filter(|m| m.drains.likely > 0.0).filter_map(|m| m.number);
    let first = wet.next()?;
    let begins_in = u8::from(from.month());
    if begins_in == first || wet.any(|number| number == begins_in) {
        return Some(
            " The soil is usually wet through by then: mix biochar in on a day when a handful crumbles."
                .into(),
        );
    }
    let month = time::Month::try_from(first).ok()?;
    let first_of = |year: i32| Date::from_calendar_date(year, month, 1).ok();
    let begins = [from.year(), from.year().checked_add(1)?]
        .into_iter()
        .find_map(|year| first_of(year).filter(|day| *day >= from))?;
    if to.is_some_and(|to| begins > to) {
        return None;
    }
    Some(format!(
        " From {month} on the soil is usually wet through: mix biochar in before, or on a day when a handful crumbles."
    ))
}

/// Every conflict of the crops' dates.
fn conflicts(season: &Season) -> Vec<Dated> {
    let mut found: Vec<Dated> =
        season.crops.iter().filter_map(|crop| of_one_crop(season, crop)).collect();
    for (at, one) in season.crops.iter().enumerate() {
        found.extend(season.crops[at + 1..].iter().filter_map(|other| of_two(season, one, other)));
    }
    found.extend(of_next_planting(season));
    found
}

fn conflict(
    season: &Season,
    what: String,
    from: Option<Date>,
    to: Option<Date>,
    reason: &str,
) -> Dated {
    let grounds = Grounds::new(
        "The dates of the crops, put beside each other.",
        &[COMMON_PRACTICE.unsourced()],
    );
    let grounds = dated(grounds, season, &[("from", from), ("to", to)]);
    Dated { what, from, to, reason: reason.into(), grounds }
}

fn name_of(crop: &Crop) -> String {
    named(&crop.name, "A crop without a name")
}

/// Dates of one crop that are missing, can't be, or keep the bed from resting.
fn of_one_crop(season: &Season, crop: &Crop) -> Option<Dated> {
    let name = name_of(crop);
    let (from, to, what, reason) = match (crop.planting, crop.harvest) {
        (Some(planting), Some(harvest)) if harvest < planting => (
            Some(harvest),
            Some(planting),
            format!("{name}: the harvest comes before the planting"),
            "One of the two dates is wrong, perhaps its year. Until it is put right this crop is left out.",
        ),
        (Some(planting), None) => (
            Some(planting),
            None,
            format!("{name}: no harvest date"),
            "Until it is given, the bed is taken to be full from this planting on.",
        ),
        (None, None) => (
            None,
            None,
            format!("{name}: no dates"),
            "Give its planting and its harvest. Until then it is left out.",
        ),
        (Some(planting), Some(harvest)) if stays_over_winter(season, planting, harvest) => (
            Some(planting),
            Some(harvest),
            format!("{name} stays in the bed over the cool season"),
            "So the bed isn't clear then. Mix biochar in before it is planted, or after its harvest; beside growing plants only charged biochar. It also takes up some of the nitrate that rain would wash out.",
        ),
        _ => return None,
    };
    Some(conflict(season, what, from, to, reason))
}

/// Two crops that stand in the bed at one time.
fn of_two(season: &Season, one: &Crop, other: &Crop) -> Option<Dated> {
    let (p1, h1, p2, h2) = (one.planting?, one.harvest?, other.planting?, other.harvest?);
    let (from, to) = (p1.max(p2), h1.min(h2));
    if from >= to || p1 > h1 || p2 > h2 {
        return None;
    }
    let (first, second) = if p1 <= p2 { (one, other) } else { (other, one) };
    let first = named(&first.name, "a crop without a name");
    Some(conflict(
        season,
        format!("{} is planted before {first} is off", name_of(second)),
        Some(from),
        Some(to),
        "The bed is not clear between them. If they share it, put charged biochar between the rows, or wait for the next rest. If not, one date is wrong.",
    ))
}

/// A crop that still stands when the next is to be planted.
fn of_next_planting(season: &Season) -> Option<Dated> {
    let planting =
        season.planting.filter(|planting| season.today.is_some_and(|t| *planting > t))?;
    let crop = season.crops.iter().find(|crop| {
        crop.planting.is_some_and(|p| p < planting) && crop.harvest.is_some_and(|h| h > planting)
    })?;
    Some(conflict(
        season,
        format!("{} still stands at the next planting", name_of(crop)),
        Some(planting),
        crop.harvest,
        "The next planting you gave above falls before its harvest. Change one of them.",
    ))
}

/// Whether a crop stands in the bed at the turn of the cool season, 1 January or
/// 1 July. Without a winter, and where nobody said on which side of the equator
/// the bed lies, no crop does.
fn stays_over_winter(season: &Season, planting: Date, harvest: Date) -> bool {
    if season.winter == Some(Winter::None) {
        return false;
    }
    let Some(south) = is_southern(season) else { return false };
    let middle = if south { time::Month::July } else { time::Month::January };
    [planting.year(), planting.year().saturating_add(1)].into_iter().any(|year| {
        Date::from_calendar_date(year, middle, 1)
            .is_ok_and(|midwinter| planting < midwinter && midwinter < harvest)
    })
}

/// The first crop that stands in the bed over the cool season.
pub(super) fn over_winter(season: &Season) -> Option<&Crop> {
    season.crops.iter().find(|crop| match (crop.planting, crop.harvest) {
        (Some(planting), Some(harvest)) => stays_over_winter(season, planting, harvest),
        _ => false,
    })
}

/// A crop's name for a sentence.
pub(super) fn crop_name(crop: &Crop) -> String {
    named(&crop.name, "The crop that stays over winter")
}
