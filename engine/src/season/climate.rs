//! What a person says about the place, checked before anything rests on it.

use crate::case::{Season, Winter};

/// Nearer to the equator than this there is no cool season, °.
/// Source: our choice.
const TROPICAL: f64 = 10.0;

/// Metres upwards that cool a place like one degree of latitude.
/// Source: the fit of frost dates in `place` (derived).
const METRES_PER_DEGREE: f64 = 160.0;

/// Where the place lies, as far as the person said and it can be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Climate {
    /// Degrees, south below zero.
    pub latitude: Option<f64>,
    /// Metres above the sea; 0 when nobody said.
    pub elevation: f64,
    /// Rain of each month from January, mm.
    pub rain: Option<[f64; 12]>,
    /// Mean daily lowest and highest temperature of each month, °C.
    pub temperatures: Option<[(f64, f64); 12]>,
}

impl Climate {
    /// The climate of a season's answers, and what of them can't be.
    pub fn of(season: &Season) -> (Climate, Vec<&'static str>) {
        let mut wrong = Vec::new();
        let mut ok = |holds: bool, why: &'static str| {
            if !holds {
                wrong.push(why);
            }
            holds
        };
        let latitude = season.latitude.filter(|l| {
            ok(
                (-90.0..=90.0).contains(l),
                "A latitude lies between 90 north and 90 south (−90). Check the one you gave.",
            )
        });
        let elevation = season.elevation_m.filter(|e| {
            ok(
                (-450.0..=5500.0).contains(e),
                "No garden lies that high or low. Check the height you gave.",
            )
        });
        let rain = season.rain.filter(|rain| {
            ok(
                rain.iter().all(|mm| (0.0..=3000.0).contains(mm)),
                "The rain of a month lies between nothing and 3000 mm (118 in). Check the numbers you gave.",
            )
        });
        let both = season.lowest_c.zip(season.highest_c).map(|(low, high)| {
            let mut both = [(0.0, 0.0); 12];
            for (month, pair) in both.iter_mut().enumerate() {
                *pair = (low[month], high[month]);
            }
            both
        });
        let temperatures = both.filter(|all| {
            ok(
                all.iter().all(|(low, high)| -60.0 <= *low && low <= high && *high <= 55.0),
                "In each month the lowest temperature must be below the highest. Check the numbers you gave.",
            )
        });
        ok(
            season.lowest_c.is_some() == season.highest_c.is_some(),
            "Give both the lowest and the highest temperatures; one without the other can't be used.",
        );
        let elevation = elevation.unwrap_or(0.0);
        (Climate { latitude, elevation, rain, temperatures }, wrong)
    }

    /// The latitude at sea level with about this warmth, °, north and south alike.
    pub fn as_if_at(&self) -> Option<f64> {
        Some(self.latitude?.abs() + self.elevation.max(0.0) / METRES_PER_DEGREE)
    }

    /// What kind of winter such a place has: by its temperatures where they are
    /// known, else by where it lies.
    ///
    /// Source: no month below 18 °C is a tropical climate (from memory); growth
    /// stops below about 5 °C (common practice); the latitudes are our choice.
    pub fn winter(&self) -> Option<Winter> {
        if let Some(all) = self.temperatures {
            let coldest = all.iter().map(|(l, h)| f64::midpoint(*l, *h)).fold(f64::MAX, f64::min);
            return Some(match coldest {
                c if c >= 18.0 => Winter::None,
                c if c >= 5.0 => Winter::MildWet,
                _ => Winter::Frost,
            });
        }
        let latitude = self.latitude?.abs();
        Some(match self.as_if_at()? {
            _ if latitude < TROPICAL => Winter::None,
            at if at < 23.5 => Winter::None,
            at if at < 33.0 => Winter::MildWet,
            _ => Winter::Frost,
        })
    }
}

/// Whether it is winter there in June; `None` when nothing tells.
pub fn is_southern(season: &Season) -> Option<bool> {
    match season.latitude {
        Some(latitude) if latitude.abs() <= 90.0 => Some(latitude < 0.0),
        _ => match (season.first_frost, season.last_frost) {
            (Some(first), _) => Some(u8::from(first.month()) <= 6),
            (_, Some(last)) => Some(u8::from(last.month()) > 6),
            _ => None,
        },
    }
}
