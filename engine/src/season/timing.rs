//! What the dates allow.

use time::{Date, Duration};

use crate::case::{Season, Winter};
use crate::season::drainage::wet_season_from;
use crate::season::rest::longest;

/// Uncharged biochar takes nitrogen up most in its first month: this long
/// before planting at the least.
/// Source: Nguyen et al. 2017 (second-hand).
pub const LEAST_DAYS: i64 = 28;

/// The better distance to planting, days.
/// Source: our choice: twice the least.
pub const BETTER_DAYS: i64 = 56;

/// A bed that lies empty this long lies through a winter, days.
/// Source: our choice.
const LONG_REST_DAYS: i64 = 120;

/// When uncharged biochar can go in.
#[derive(Clone, Debug, PartialEq)]
pub enum Window {
    /// From the first to the last good day; `None` where a date is missing.
    Open {
        /// The first good day.
        from: Option<Date>,
        /// The last good day.
        to: Option<Date>,
        /// What the dates made us settle for.
        notes: Vec<String>,
    },
    /// Too near to planting.
    Closed,
    /// A date is missing; the text says which.
    Unknown(&'static str),
}

/// The season's dates, put in relation.
#[derive(Clone, Debug, PartialEq)]
pub struct Timing {
    /// Today.
    pub today: Option<Date>,
    /// The next planting; a date not after today belongs to the crop now growing.
    pub planting: Option<Date>,
    /// The planting date is the last spring frost, until the person gives it.
    pub planting_assumed: bool,
    /// When the crop now in the bed is off.
    pub harvest: Option<Date>,
    /// The first autumn frost.
    pub first_frost: Option<Date>,
    /// What the cool season is like.
    pub winter: Option<Winter>,
    /// A crop is growing now.
    pub growing: bool,
    /// The first day the bed is clear.
    pub clear_from: Option<Date>,
    /// Days from the clear bed to planting.
    pub days_to_planting: Option<i64>,
    /// When uncharged biochar can go in.
    pub window: Window,
}

impl Timing {
    /// What these dates allow. Only their order matters, so both hemispheres
    /// are the same. With several crops it is the rest between them that suits
    /// uncharged biochar best.
    pub fn of(season: &Season) -> Timing {
        let Season { today, planting, harvest, first_frost, last_frost, winter, .. } = *season;
        let (planting, harvest) = match (season.crops.is_empty(), today) {
            (false, Some(today)) => between_crops(season, today),
            _ => (planting, harvest),
        };
        let is_past = |date: Date| today.is_some_and(|t| date <= t);
        let planted = planting.is_some_and(is_past);
        let planting = planting.filter(|p| !is_past(*p));
        // Most beds are planted from the last frost on.
        let stand_in = last_frost.filter(|f| !is_past(*f) && winter != Some(Winter::None));
        let planting_assumed = planting.is_none() && stand_in.is_some();
        let planting = planting.or(stand_in);
        // A harvest after the next planting is that of the crop still to come.
        let harvest = harvest.filter(|h| planting.is_none_or(|p| *h < p));
        let growing = match harvest {
            Some(h) => today.is_some_and(|t| h > t),
            None => planted,
        };
        let clear_from = match (today, harvest) {
            (Some(t), Some(h)) => Some(t.max(h)),
            (None, Some(h)) => Some(h),
            (Some(t), None) if !growing => Some(t),
            _ => None,
        };
        let days_to_planting = planting.zip(clear_from).map(|(p, clear)| (p - clear).whole_days());
        let frost = first_frost.filter(|_| winter != Some(Winter::None));
        let window = window(clear_from, planting, days_to_planting, frost, growing);
        // Where no frost ends the season, the rains do.
        let rains = clear_from
            .filter(|_| frost.is_none() && matches!(winter, Some(Winter::MildWet | Winter::None)))
            .and_then(|clear| Some((clear, wet_season_from(season, clear)?)));
        let window = match rains {
            Some((clear, begins)) => before_the_rains(window, clear, begins),
            None => window,
        };
        Timing {
            today,
            planting,
            planting_assumed,
            harvest,
            first_frost: frost,
            winter,
            growing,
            clear_from,
            days_to_planting,
            window,
        }
    }

    /// Planting comes before uncharged biochar has had its month.
    pub fn planting_is_soon(&self) -> bool {
        self.window == Window::Closed
    }

    /// The cold or the rains still lie between the clear bed and planting, as
    /// far as the dates say.
    pub fn winter_is_ahead(&self) -> bool {
        match (self.first_frost, self.clear_from, self.days_to_planting) {
            (Some(frost), Some(clear), _) if frost >= clear => {
                self.planting.is_none_or(|planting| frost < planting)
            }
            (_, _, Some(days)) => days >= LONG_REST_DAYS,
            _ => true,
        }
    }

    /// The dates say that the bed lies bare over the cold or the rains.
    pub fn rests_over_winter(&self) -> bool {
        let frost = self.first_frost.zip(self.clear_from).is_some_and(|(frost, clear)| {
            frost >= clear && self.planting.is_none_or(|planting| frost < planting)
        });
        frost || self.days_to_planting.is_some_and(|days| days >= LONG_REST_DAYS)
    }

    /// Some days before planting.
    pub fn before_planting(&self, days: i64) -> Option<Date> {
        Some(self.planting?.saturating_sub(Duration::days(days)))
    }
}

/// The window ends when the wet season begins; where that has begun, the sooner the better.
fn before_the_rains(window: Window, clear: Date, begins: Date) -> Window {
    let Window::Open { from, to, mut notes } = window else { return window };
    let last = if begins > clear {
        begins
    } else {
        notes.push("The wet season has begun: the sooner it is in, the less is lost.".to_string());
        clear.saturating_add(Duration::days(LEAST_DAYS))
    };
    Window::Open { from, to: Some(to.map_or(last, |to| to.min(last))), notes }
}

/// The planting and the harvest about the best rest; without one, a bed in
/// which something grows on.
fn between_crops(season: &Season, today: Date) -> (Option<Date>, Option<Date>) {
    match longest(season) {
        Some(rest) => (
            rest.before.map(|(_, planting)| planting),
            Some(rest.from).filter(|from| *from > today),
        ),
        None => (Some(today), None),
    }
}

/// When uncharged biochar can go in, from the clear bed to planting.
pub(crate) fn window(
    clear_from: Option<Date>,
    planting: Option<Date>,
    days: Option<i64>,
    frost: Option<Date>,
    growing: bool,
) -> Window {
    if clear_from.is_none() {
        return Window::Unknown(if growing {
            "when the crop now in the bed is off"
        } else {
            "today's date"
        });
    }
    let mut notes = Vec::new();
    let before = |days| planting.map(|p| p.saturating_sub(Duration::days(days)));
    let last = match days {
        Some(d) if d < LEAST_DAYS => return Window::Closed,
        Some(d) if d < BETTER_DAYS => {
            notes.push("There are four weeks to planting, but not the better eight.".to_string());
            before(LEAST_DAYS)
        }
        _ => before(BETTER_DAYS),
    };
    let to = match (frost, clear_from) {
        (Some(frost), Some(clear)) if frost < clear => {
            notes.push(
                "Frost comes before the bed is clear: spread on a day when the soil isn't frozen."
                    .to_string(),
            );
            last
        }
        (Some(frost), _) => Some(last.map_or(frost, |l| l.min(frost))),
        (None, _) => last,
    };
    Window::Open { from: clear_from, to, notes }
}
