//! How long to wait from the charge to the harvest of what is eaten.

use serde::Serialize;
use time::{Date, Duration};

use crate::case::ChargeSource;
use crate::plan::charge::sources::label;
use crate::quantity::{Band, Grounds};
use crate::sources::{
    COMMON_PRACTICE, KIRCHMANN_1995, NOP_205_203, NOSB_TEA_2004, UGA_MANURE, WHO_EXCRETA_2006,
};
use crate::survey::Survey;

/// Days from raw manure to the harvest of crops whose eaten part touches the soil.
/// Source: 7 CFR 205.203(c) (opened).
pub const RAW_TOUCHING: i64 = 120;

/// The same for other crops. Source: 7 CFR 205.203(c) (opened).
pub const RAW_OTHER: i64 = 90;

/// Days from stored urine to the harvest. Source: WHO 2006, one month (second-hand).
pub const URINE: i64 = 30;

/// What must be waited for with one source.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Interval {
    /// The source.
    pub source: ChargeSource,
    /// What a reader calls it.
    pub label: &'static str,
    /// Days from spreading to harvest where the eaten part touches the soil, and
    /// where it doesn't; 0 where no wait is published.
    pub days: (i64, i64),
    /// The first days of harvest, where the day is known on which the biochar is
    /// spread.
    #[serde(skip)]
    pub harvest_from: Option<(Date, Date)>,
    /// Crops of the bed that are off it sooner.
    pub too_soon: Vec<String>,
    /// What to do, in plain words.
    pub text: String,
    /// What it rests on.
    pub grounds: Grounds,
}

/// The waits for the sources used, from the day of spreading.
pub(super) fn intervals(
    survey: &Survey<'_>,
    used: &[ChargeSource],
    spread: Option<Date>,
) -> Vec<Interval> {
    used.iter().filter_map(|source| interval(survey, *source, spread)).collect()
}

/// The day on which what is begun today is charged.
pub(super) fn ready(survey: &Survey<'_>, days: Band) -> Option<Date> {
    later(survey.case.season.today?, days.likely as i64)
}

/// Crops of the bed that are harvested after `spread`, each with its day.
fn harvests<'s>(survey: &'s Survey<'_>, spread: Date) -> impl Iterator<Item = (&'s str, Date)> {
    let named = |name: &'s str| if name.trim().is_empty() { "a crop without a name" } else { name };
    let crops = survey.case.season.crops.iter().map(move |c| (named(&c.name), c.harvest));
    let standing = std::iter::once(("the crop now in the bed", survey.timing.harvest));
    crops
        .chain(standing)
        .filter_map(move |(name, harvest)| Some((name, harvest.filter(|h| *h > spread)?)))
}

fn later(day: Date, days: i64) -> Option<Date> {
    day.checked_add(Duration::days(days))
}

/// How long after raw manure.
const RAW: &str = "From spreading to harvest: 120 days where the part you eat touches the soil, 90 \
               days for others.";

/// The wait for a source, days for crops that touch the soil and for others, with what to do.
fn rule(source: ChargeSource) -> Option<((i64, i64), String, Grounds)> {
    Some(match source {
        ChargeSource::AgedManure => (
            (RAW_TOUCHING, RAW_OTHER),
            format!(
                "{RAW} Aged manure counts as raw: only heat makes it safe, 55 to 77 °C (131 to \
                 170 °F) for 3 days in a vessel, or for 15 days in a heap turned 5 times. Days of \
                 frost don't count. Never use manure of pigs, dogs or cats."
            ),
            Grounds::new(
                "raw manure is worked in 120 or 90 days before harvest",
                &[NOP_205_203.opened(), UGA_MANURE.opened()],
            ),
        ),
        ChargeSource::CompostTea => (
            (RAW_TOUCHING, RAW_OTHER),
            format!(
                "{RAW} This holds for tea brewed with molasses, kelp or the like, which can breed \
                 germs, and for tea nobody tested. Use drinking water, and keep it off what you eat."
            ),
            Grounds::new(
                "tea with additives counts as raw manure",
                &[NOSB_TEA_2004.opened(), NOP_205_203.opened()],
            ),
        ),
        ChargeSource::Urine => (
            (RAW_TOUCHING, RAW_OTHER),
            format!(
                "{RAW} We treat urine as raw manure, to be safe. The World Health Organization asks \
                 for less: store it closed for a month, six months when others eat the crop, and \
                 give none in the last {URINE} days before harvest. Only from healthy people who \
                 take no medicine."
            ),
            Grounds::new(
                "the stricter of the two rules",
                &[
                    NOP_205_203.derived(),
                    WHO_EXCRETA_2006.second_hand(),
                    KIRCHMANN_1995.opened(),
                    COMMON_PRACTICE.unsourced(),
                ],
            ),
        ),
        ChargeSource::Compost | ChargeSource::Vermicompost => (
            (0, 0),
            "No wait, if it is finished and any manure in it went through the heat: 55 to 77 °C \
             (131 to 170 °F) for 3 days in a vessel, or for 15 days in a heap turned 5 times. If \
             not, it counts as raw manure: 120 and 90 days."
                .to_string(),
            Grounds::new("compost made by the rule needs no wait", &[NOP_205_203.opened()]),
        ),
        ChargeSource::PlantLiquid | ChargeSource::FishHydrolysate => (
            (0, 0),
            "No wait is published that we know of. Keep it off leaves and fruit, and wash what you \
             eat."
                .to_string(),
            Grounds::new("care with liquids that rot", &[COMMON_PRACTICE.unsourced()]),
        ),
        _ => return None,
    })
}

fn interval(survey: &Survey<'_>, source: ChargeSource, spread: Option<Date>) -> Option<Interval> {
    let eaten = survey.is_eaten();
    let (days, text, grounds) = rule(source)?;
    let harvest_from = spread
        .filter(|_| days.0 > 0 && eaten)
        .and_then(|day| Some((later(day, days.0)?, later(day, days.1)?)));
    let too_soon = match (harvest_from, spread) {
        (Some((touching, _)), Some(spread)) => harvests(survey, spread)
            .filter(|(_, off)| *off < touching)
            .map(|(name, _)| name.to_string())
            .collect(),
        _ => Vec::new(),
    };
    let text = if eaten || days.0 == 0 {
        text
    } else {
        "Nothing here is eaten, so no wait for a harvest. Keep children and pets off until rain or \
         water has washed it in."
            .to_string()
    };
    let days = if eaten { days } else { (0, 0) };
    Some(Interval { source, label: label(source), days, harvest_from, too_soon, text, grounds })
}
