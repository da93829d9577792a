//! Which half of the year is cold where the bed lies.

use time::{Date, Month};

use crate::season;
use crate::survey::Survey;

/// Regions south of the equator, by how their ids begin. Source: an atlas (common practice).
const SOUTHERN: [&str; 7] = ["australia", "new-zealand", "south-africa", "br", "ar", "cl", "pe"];

/// The months in which nothing that is fed is taken up, where nobody gave the frosts.
/// Source: common practice, no source; the southern ones are half a year on.
const DEAD: [Month; 4] = [Month::November, Month::December, Month::January, Month::February];

/// The months in which wood must ripen, so that it is fed no more.
/// Source: University of Maine, nitrogen before June (opened, in the cases); from July to the end
/// of winter is common practice.
const RIPENING: [Month; 8] = [
    Month::July,
    Month::August,
    Month::September,
    Month::October,
    Month::November,
    Month::December,
    Month::January,
    Month::February,
];

impl Survey<'_> {
    /// Whether the bed lies south of the equator: by its latitude, a frost, or its region; `None`
    /// where nothing tells.
    pub(crate) fn is_southern(&self) -> Option<bool> {
        let lies_there = |id: &str| {
            SOUTHERN.iter().any(|south| id == *south || id.starts_with(&format!("{south}-")))
        };
        let by_region = self.region.map(|region| lies_there(region.id));
        season::is_southern(&self.case.season).or(by_region)
    }

    /// Whether a day lies in the dead of winter. Where nobody knows the half of the earth, a
    /// northern winter is meant.
    pub(crate) fn is_dead_of_winter(&self, day: Date) -> bool {
        DEAD.contains(&self.as_if_north(day))
    }

    /// Whether wood ripens on a day, or rests.
    pub(crate) fn is_wood_ripening(&self, day: Date) -> bool {
        RIPENING.contains(&self.as_if_north(day))
    }

    /// The month that it would be in the north.
    fn as_if_north(&self, day: Date) -> Month {
        let months = if self.is_southern() == Some(true) { 6 } else { 0 };
        day.month().nth_next(months)
    }
}
