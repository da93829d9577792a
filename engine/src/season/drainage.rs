//! How much water drains through in the cool or wet season: by month from rain
//! and evaporation, or by class.

use time::{Date, Month};

use crate::case::{Season, WetSeason, Winter};
use crate::quantity::{Band, Grounds, Measures, Unit, shown};
use crate::season::climate::{Climate, is_southern};
use crate::season::evaporation;
use crate::soil::Texture;
use crate::soil::water;
use crate::sources::{AHDB_RAIN, FAO_56, OUR_CHOICE, SAXTON_RAWLS};

/// The layer the water must pass, cm: where most roots of vegetables are.
/// Source: our choice.
pub(crate) const ROOTED: f64 = 30.0;

/// The wet season lasts so long, days. Source: AHDB, October to March (opened).
const HALF_A_YEAR: i64 = 182;

/// A year's rain in parts of the usual. Source: our choice.
const YEARS: Band = Band { low: 0.75, likely: 1.0, high: 1.25 };

/// What bare or thinly grown soil evaporates, in parts of what short grass
/// does, from the year with most drainage to the one with least.
/// Source: grass 1, bare soil lower (derived); the numbers are our choice.
const OF_GRASS: Band = Band { low: 0.6, likely: 0.85, high: 1.1 };

/// Mean temperatures and how far a day swings, °C, where nobody gave them, in
/// a cool season. Our choice.
const COOL: [(f64, f64); 3] = [(0.0, 5.0), (8.0, 8.0), (18.0, 12.0)];
/// The same in a wet season without winter. Our choice.
const WARM: [(f64, f64); 3] = [(20.0, 6.0), (25.0, 9.0), (30.0, 12.0)];

/// What drains through in a wet season, mm.
///
/// Source: AHDB, excess winter rainfall: low below 150 mm, moderate to 250,
/// high above (opened); the outer ends are our choice.
pub fn drainage(season: Option<WetSeason>) -> Band {
    let (low, likely, high) = match season {
        Some(WetSeason::Dry) => (30.0, 100.0, 150.0),
        Some(WetSeason::Moderate) => (150.0, 200.0, 250.0),
        Some(WetSeason::Wet) => (250.0, 320.0, 450.0),
        None => (30.0, 200.0, 450.0),
    };
    Band { low, likely, high }
}

/// A month's water: what drains, and what the soil then lacks of being full,
/// both mm. `room` is the most it can lack: the water plants can draw from it.
///
/// Source: AHDB defines excess winter rain so: rain − evaporation − what the
/// soil lacks (opened).
pub fn bucket(lacks: f64, room: f64, rain: f64, evaporation: f64) -> (f64, f64) {
    let over = rain - evaporation - lacks;
    if over > 0.0 { (over, 0.0) } else { (0.0, (-over).min(room)) }
}

/// One month of the cool season.
#[derive(Clone, Debug, PartialEq)]
pub struct WetMonth {
    /// Which month, 1 is January; `None` where nobody said on which side of the
    /// equator the place lies.
    pub number: Option<u8>,
    /// Its usual rain, mm; `None` where only the class is known.
    pub rain: Option<f64>,
    /// What evaporates, mm.
    pub evaporation: Option<Band>,
    /// What drains, mm.
    pub drains: Band,
}

/// The water of a cool or wet season.
#[derive(Clone, Debug, PartialEq)]
pub struct WetMonths {
    /// The months in their order.
    pub months: Vec<WetMonth>,
    /// What drains in all, mm.
    pub total: Band,
    /// Whether it was worked out from rain by month, not from a class.
    pub from_rain: bool,
    /// What it rests on.
    pub grounds: Grounds,
}

/// The first of the six months in which water drains, 0 is January.
///
/// Source: AHDB, 1 October to 31 March (opened); half a year on in the south
/// (derived); without a winter the six wettest months on end (our choice).
fn first_month(season: &Season, climate: &Climate) -> Option<usize> {
    if season.winter.or(climate.winter()) == Some(Winter::None) {
        let rain = climate.rain?;
        let of = |first: usize| (first..first + 6).map(|m| rain[m % 12]).sum::<f64>();
        return (0..12).reduce(|best, next| if of(next) > of(best) { next } else { best });
    }
    is_southern(season).map(|south| if south { 3 } else { 9 })
}

/// The first day of the wet season that is under way or next to come on a day; `None` where
/// nobody said where the place lies.
pub(crate) fn wet_season_from(season: &Season, on: Date) -> Option<Date> {
    let (climate, _) = Climate::of(season);
    let month = Month::try_from(first_month(season, &climate)? as u8 + 1).ok()?;
    // A season that began less than half a year ago is under way.
    [on.year() - 1, on.year(), on.year() + 1]
        .into_iter()
        .filter_map(|year| Date::from_calendar_date(year, month, 1).ok())
        .find(|begins| (on - *begins).whole_days() < HALF_A_YEAR)
}

/// What drains month by month through the top 30 cm of such a soil: from the
/// rain and the place where both are known, else from the class, evenly.
pub fn wet_months(
    season: &Season,
    texture: Option<Texture>,
    organic_matter: Option<f64>,
    measures: Measures,
) -> WetMonths {
    let (climate, _) = Climate::of(season);
    let first = first_month(season, &climate);
    match (climate.latitude, climate.rain, first) {
        (Some(latitude), Some(rain), Some(first)) => {
            let soil = (texture, organic_matter);
            by_month(season, &climate, (latitude, rain, first), soil, measures)
        }
        _ => by_class(season, first),
    }
}

fn by_class(season: &Season, first: Option<usize>) -> WetMonths {
    let total = drainage(season.wet_season);
    let mut grounds = Grounds::new(
        "What drains through in a cool season, by class, spread evenly over six months.",
        &[AHDB_RAIN.opened(), OUR_CHOICE.unsourced()],
    );
    if season.wet_season.is_none() {
        grounds =
            grounds.assume("Nobody said how wet the cool season is; all classes are taken in.");
    }
    let month = |at: usize| WetMonth {
        number: first.map(|first| ((first + at) % 12) as u8 + 1),
        rain: None,
        evaporation: None,
        drains: total.map(|mm| mm / 6.0),
    };
    WetMonths { months: (0..6).map(month).collect(), total, from_rain: false, grounds }
}

/// A year's rain in parts of the usual, evaporation in parts of that of grass, the water the soil
/// can lack (mm), and which of the assumed temperatures it is.
type Year = (f64, f64, f64, usize);

fn by_month(
    season: &Season,
    climate: &Climate,
    (latitude, rain, first): (f64, [f64; 12], usize),
    (texture, organic_matter): (Option<Texture>, Option<f64>),
    measures: Measures,
) -> WetMonths {
    let room = room(texture, organic_matter);
    let winterless = season.winter.or(climate.winter()) == Some(Winter::None);
    // From the least water through to the most: little rain, much evaporation,
    // a soil with much room; and the other way about.
    let years: [Year; 3] = [
        (YEARS.low, OF_GRASS.high, room.high, 2),
        (YEARS.likely, OF_GRASS.likely, room.likely, 1),
        (YEARS.high, OF_GRASS.low, room.low, 0),
    ];
    let assumed = if winterless { WARM } else { COOL };
    let [least, likely, most] =
        years.map(|year| six_months(climate, (latitude, rain, first), assumed, year));
    let months: Vec<WetMonth> = (0..6)
        .map(|at| WetMonth {
            number: Some(((first + at) % 12) as u8 + 1),
            rain: Some(rain[(first + at) % 12]),
            evaporation: Some(Band::new(most[at].0, likely[at].0, least[at].0)),
            drains: Band::new(least[at].1, likely[at].1, most[at].1),
        })
        .collect();
    let total = months.iter().fold(Band::exactly(0.0), |sum, month| sum.plus(month.drains));
    let rain = Band::exactly(months.iter().filter_map(|m| m.rain).sum());
    let mut grounds = of_months(latitude)
        .input("rain in the six months", shown(&rain, Unit::Mm, measures))
        .input("water the top soil can lack", shown(&room, Unit::Mm, measures));
    if climate.temperatures.is_none() {
        grounds = grounds.assume(if winterless {
            "Nobody gave the temperatures; taken as 25 (20–30) °C on the mean of day and night."
        } else {
            "Nobody gave the temperatures; taken as 8 (0–18) °C on the mean of day and night, and the soil as half dry when the season begins."
        });
    }
    WetMonths { months, total, from_rain: true, grounds }
}

/// What evaporates and what drains in each of the six months from the first on, mm.
fn six_months(
    climate: &Climate,
    (latitude, rain, first): (f64, [f64; 12], usize),
    assumed: [(f64, f64); 3],
    (wet, share, room, warmth): Year,
) -> [(f64, f64); 6] {
    let water = |month: usize| {
        let (mean, swing) = assumed[warmth];
        let taken = (mean - swing / 2.0, mean + swing / 2.0);
        let temperatures = climate.temperatures.map_or(taken, |all| all[month]);
        (wet * rain[month], share * evaporation::monthly(latitude, month, temperatures))
    };
    let mut lacks = match climate.temperatures {
        // Two years on from a full soil: by then it lacks what it lacks each autumn.
        Some(_) => (first..first + 24).fold(0.0, |lacks, month| {
            let (rain, dry) = water(month % 12);
            bucket(lacks, room, rain, dry).1
        }),
        None => room * warmth as f64 / 2.0,
    };
    [0, 1, 2, 3, 4, 5].map(|at| {
        let (rain, dry) = water((first + at) % 12);
        let (drains, after) = bucket(lacks, room, rain, dry);
        lacks = after;
        (dry, drains)
    })
}

/// What the water of single months rests on.
fn of_months(latitude: f64) -> Grounds {
    Grounds::new(
        "Month by month: rain − evaporation − what the soil still lacks of being full. Evaporation by Hargreaves from latitude and temperature.",
        &[
            AHDB_RAIN.opened(),
            FAO_56.second_hand(),
            SAXTON_RAWLS.second_hand(),
            OUR_CHOICE.unsourced(),
        ],
    )
    .input("latitude", format!("{latitude}°"))
    .assume("A dry year has three quarters of the usual rain, a wet one a quarter more.")
    .assume("Bare soil evaporates 0.85 (0.6–1.1) of what short grass does.")
    .assume("Snow counts in the month it falls. Nothing runs off.")
}

/// The water that plants can draw from the top 30 cm, mm.
fn room(texture: Option<Texture>, organic_matter: Option<f64>) -> Band {
    let organic = organic_matter.unwrap_or(2.5).clamp(0.5, 7.9);
    let of = |texture: Texture| {
        let (sand, clay) = water::middle(texture);
        water::held(sand, clay, organic)
            .map_or(15.0, |w| (w.field_capacity - w.wilting_point) * 100.0)
    };
    let percent = match texture {
        Some(texture) => {
            let likely = of(texture);
            // The equations' own error in field capacity. Source: Saxton and Rawls (from memory).
            Band::new((likely - 5.0).max(2.0), likely, likely + 5.0)
        }
        None => Band::new(of(Texture::Sand), of(Texture::Loam), of(Texture::SiltLoam) + 5.0),
    };
    percent.map(|percent| percent / 100.0 * ROOTED * 10.0)
}
