//! What latitude and height tell of a place: which half of the year is cool, a
//! kind of winter, and roughly when the frosts are. It is offered, never used
//! as if the person had said it.

use time::{Date, Duration};

use crate::case::{Season, Winter};
use crate::quantity::{Band, Grounds, Measures, Unit, shown, significant};
use crate::season::climate::{Climate, is_southern};
use crate::season::{Dated, day};
use crate::sources::{HOPKINS_LAW, NCEI_NORMALS, OUR_CHOICE};

/// Beyond this the dates of frost no longer follow the latitude, °.
/// Source: the stations of Alaska (derived).
const FARTHEST: f64 = 50.0;

/// Where it is warmer than this latitude at sea level, frost is no yearly
/// guest, °. Source: our choice.
const FROST_FROM: f64 = 30.0;

/// The day of a northern year at 40° and sea level, the days that a degree and
/// 100 m add to it, and how far stations lie about that.
type Rule = (f64, f64, f64, [f64; 2]);

/// The spring day by which half of all years have seen their last frost.
/// Source: NCEI normals, least squares on 62 stations, moved to the middle of
/// what it misses; the bounds take in nine tenths of them (derived). That it
/// holds elsewhere is our choice.
const LAST: Rule = (92.0, 3.8, 2.4, [-50.0, 35.0]);

/// The autumn day of the first frost. Source: as above (derived).
const FIRST: Rule = (309.0, -3.2, -2.0, [-38.0, 47.0]);

/// The usual last and first frost as days of the year (1–365), in the year's
/// own order: a southern first frost comes before the last. `None` in the
/// tropics, and where frost is no yearly guest.
pub fn frost_days(latitude: f64, elevation: f64) -> Option<[Band; 2]> {
    let climate = Climate { latitude: Some(latitude), elevation, rain: None, temperatures: None };
    if climate.winter() == Some(Winter::None) || climate.as_if_at()? < FROST_FROM {
        return None;
    }
    let half_a_year = if latitude < 0.0 { 182.0 } else { 0.0 };
    let of = |(at_40, degree, hundred, [early, late]): Rule| {
        let likely = at_40
            + degree * (latitude.abs().min(FARTHEST) - 40.0)
            + hundred * elevation.max(0.0) / 100.0
            + half_a_year;
        Band { low: likely + early, likely, high: likely + late }
    };
    Some([of(LAST), of(FIRST)])
}

/// A place as its latitude and height tell it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Place {
    /// What it is like, in a few sentences.
    pub text: String,
    /// The kind of winter it probably has.
    pub winter: Option<Winter>,
    /// The last and the first frost to come, each a rough stretch of days.
    pub frosts: Vec<Dated>,
    /// What it rests on.
    pub grounds: Grounds,
}

/// The frost to come whose likely day lies in the year after today.
fn coming(days: Band, today: Date) -> Option<(Date, Date, Date)> {
    let on = |year: i32| {
        let first = Date::from_ordinal_date(year, 1).ok()?;
        first.checked_add(Duration::days(days.likely.round() as i64 - 1))
    };
    let likely = [-1, 0, 1, 2]
        .into_iter()
        .find_map(|years| on(today.year().checked_add(years)?).filter(|likely| *likely > today))?;
    let by = |days: f64| likely.checked_add(Duration::days(days.round() as i64));
    Some((by(days.low - days.likely)?, likely, by(days.high - days.likely)?))
}

/// The likely first frost by this estimate, for windows that nobody's own date
/// bounds. What rests on it must say so.
pub(crate) fn guessed_frost(season: &Season) -> Option<Date> {
    let (climate, _) = Climate::of(season);
    let [_, first] = frost_days(climate.latitude?, climate.elevation)?;
    Some(coming(first, season.today?)?.1)
}

/// What latitude and height tell; `None` until a latitude is given.
pub fn place(season: &Season, measures: Measures) -> Option<Place> {
    season.latitude?;
    let (climate, wrong) = Climate::of(season);
    let Some(latitude) = climate.latitude else {
        return Some(Place { text: wrong.join(" "), ..Place::default() });
    };
    let mut text = of_winter(season, &climate);
    let grounds = of_frosts(season, latitude, climate.elevation, measures);
    let mut frosts = Vec::new();
    if let Some(days) = frost_days(latitude, climate.elevation) {
        text.push_str(" The dates of frost below are rough, six weeks either way. They are not used as yours: ask a neighbour, a weather station or an extension office, and give your own above.");
        let names = ["Last spring frost, a rough guess", "First autumn frost, a rough guess"];
        for (name, days) in names.into_iter().zip(days) {
            let Some((from, likely, to)) = season.today.and_then(|t| coming(days, t)) else {
                continue;
            };
            frosts.push(Dated {
                what: name.into(),
                from: Some(from),
                to: Some(to),
                reason: format!("Most likely about {}.", day::spoken(likely)),
                grounds: grounds.clone(),
            });
        }
    } else if season.winter.or(climate.winter()) != Some(Winter::None) {
        text.push_str(" Frost is rare there or never comes, so no date is guessed.");
    }
    for why in wrong {
        text.push(' ');
        text.push_str(why);
    }
    Some(Place { text, winter: climate.winter(), frosts, grounds })
}

/// Which months are cool, and what winter is like.
fn of_winter(season: &Season, climate: &Climate) -> String {
    let winter = climate.winter();
    let mut text = match (season.winter.or(winter), is_southern(season)) {
        (Some(Winter::None), _) => {
            "Near the tropics there is no cool season: think in wet and dry months. Give the rain of each month, and the wet half of the year is found."
        }
        (_, Some(true)) => "South of the equator: the cool months are April to September.",
        _ => "North of the equator: the cool months are October to March.",
    }
    .to_string();
    text.push_str(match winter {
        Some(Winter::Frost) => {
            " Such a place usually has a winter with frost; on a mild coast it may only be wet."
        }
        Some(Winter::MildWet) => " The winter is probably mild and wet, with little frost or none.",
        _ => "",
    });
    if let Some(given) = season.winter.filter(|given| Some(*given) != winter) {
        text.push_str(match given {
            Winter::None => " You say there is no winter, and that is what counts.",
            Winter::Frost => " You say that frost stops growth, and that is what counts.",
            Winter::MildWet => " You say the winter is mild and wet, and that is what counts.",
        });
    }
    text
}

/// What the dates of frost rest on.
fn of_frosts(season: &Season, latitude: f64, elevation: f64, measures: Measures) -> Grounds {
    let grounds = Grounds::new(
        "Dates of frost: 3.8 days later in spring and 3.2 earlier in autumn for each degree from the equator, 2.4 and 2.0 for each 100 m up; wide bounds about that.",
        &[NCEI_NORMALS.derived(), HOPKINS_LAW.second_hand(), OUR_CHOICE.unsourced()],
    )
    .input("latitude", format!("{}°", significant(latitude, 4).replace('-', "−")))
    .assume("Fitted to stations in the United States. Elsewhere, by the sea, in a hollow or in a town it can be weeks off.");
    if season.elevation_m.is_none() {
        return grounds.assume("Nobody gave the height above the sea; taken as none.");
    }
    let height = shown(&Band::exactly(elevation), Unit::Metre, measures);
    grounds.input("height above the sea", height)
}
