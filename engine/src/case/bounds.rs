//! The most and the least that a garden can have. What goes beyond is refused at every door
//! through which answers come: a field, a link, a file, the saved reports.

use super::{Bag, Bed, BedTrial, Case, Charge, Crop, Feeds, ReadingAnswers, Season};
use crate::own::MOST_BYTES;

/// Crops in a year on one bed. Four in a row and two beside each other is much.
pub const MOST_CROPS: usize = 40;
/// Beds with answers of their own, and corrections of readings.
const MOST_SAID: usize = 2_000;
/// Things of a kind that is listed by name, such as sources to charge with.
const MOST_NAMED: usize = 100;
/// Characters of a name or of a result.
const LONGEST: usize = 2_000;

/// An answer that no garden has.
#[derive(Clone, Debug, PartialEq)]
pub enum Beyond {
    /// A number.
    Number {
        /// What it is, with its unit.
        what: &'static str,
        /// The number.
        value: f64,
        /// The least that is taken.
        least: f64,
        /// The most.
        most: f64,
    },
    /// Too many of a kind.
    Many {
        /// What there are, in the plural.
        what: &'static str,
        /// How many.
        count: usize,
        /// The most that are taken.
        most: usize,
    },
    /// A text that is no name and no result.
    Long {
        /// What it is.
        what: &'static str,
        /// The most characters.
        most: usize,
    },
}

impl std::fmt::Display for Beyond {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Beyond::Number { what, value, least, most } => {
                write!(f, "{what} can be {least} to {most}; ")?;
                if value.abs() < 1e9 && (value.abs() >= 1e-3 || *value == 0.0) {
                    write!(f, "here it is {value}.")
                } else {
                    f.write_str("here it is far beyond that.")
                }
            }
            Beyond::Many { what, count, most } => {
                write!(f, "There are {count} {what}; at most {most} are taken.")
            }
            Beyond::Long { what, most } => {
                write!(f, "{what} is longer than {most} characters.")
            }
        }
    }
}

fn number(what: &'static str, value: Option<f64>, least: f64, most: f64) -> Result<(), Beyond> {
    match value {
        // No number at all is beyond too.
        Some(value) if !(least..=most).contains(&value) => {
            Err(Beyond::Number { what, value, least, most })
        }
        _ => Ok(()),
    }
}

fn many(what: &'static str, count: usize, most: usize) -> Result<(), Beyond> {
    if count > most { Err(Beyond::Many { what, count, most }) } else { Ok(()) }
}

fn long(what: &'static str, text: &str) -> Result<(), Beyond> {
    // Bytes first: characters of a text without end are not counted.
    let is_long = text.len() > 4 * LONGEST || text.chars().count() > LONGEST;
    if is_long { Err(Beyond::Long { what, most: LONGEST }) } else { Ok(()) }
}

impl Case {
    /// Whether every answer is one that a garden can have.
    ///
    /// # Errors
    /// The first that isn't, in words for the reader.
    pub fn within_bounds(&self) -> Result<(), Beyond> {
        let region_file = self.own_file.as_ref().map_or(0, String::len);
        many("characters in the region's own file", region_file, MOST_BYTES)?;
        many("beds with answers of their own", self.beds.len(), MOST_SAID)?;
        many("things to charge with", self.charge_with.len(), MOST_NAMED)?;
        reading(&self.reading)?;
        bed(&self.bed)?;
        trial(self.trial.as_ref())?;
        crops(&self.season.crops)?;
        for own in &self.beds {
            bed(&own.bed)?;
            trial(own.trial.as_ref())?;
            crops(&own.crops)?;
            many("open answers of a bed", own.open.len(), MOST_NAMED)?;
        }
        season(&self.season)?;
        bag(&self.biochar)?;
        charge(&self.charge)?;
        feeds(&self.feeds)
    }
}

fn reading(said: &ReadingAnswers) -> Result<(), Beyond> {
    many("extractants", said.extractants.len(), MOST_NAMED)?;
    number("The sampling depth in cm", said.depth_cm, 0.1, 300.0)?;
    long("The region's name", said.region.as_deref().unwrap_or_default())?;
    let corrections = said.corrections.len() + said.in_all_samples.len() + said.named_lines.len();
    many("corrections", corrections, MOST_SAID)?;
    for correction in &said.corrections {
        long("A corrected result", &correction.original)?;
        long("A corrected result", correction.result.as_deref().unwrap_or_default())?;
    }
    said.in_all_samples.iter().try_for_each(|correction| long("A corrected name", &correction.name))
}

fn bed(bed: &Bed) -> Result<(), Beyond> {
    // From a pot to ten hectares.
    number("The area in m²", bed.area_m2, 0.0, 100_000.0)?;
    number("The depth in cm", bed.depth_cm, 0.0, 200.0)
}

fn trial(trial: Option<&BedTrial>) -> Result<(), Beyond> {
    let Some(trial) = trial else { return Ok(()) };
    long("The name of the trial", &trial.name)?;
    many("properties of the trial", trial.found.len(), MOST_NAMED)?;
    let all =
        trial.found.iter().flat_map(|finding| finding.foretold.into_iter().chain(finding.found));
    all.into_iter().try_for_each(|one| number("A change in the trial in %", Some(one), -1e6, 1e6))
}

fn crops(crops: &[Crop]) -> Result<(), Beyond> {
    many("crops on one bed", crops.len(), MOST_CROPS)?;
    crops.iter().try_for_each(|crop| long("The name of a crop", &crop.name))
}

fn season(season: &Season) -> Result<(), Beyond> {
    number("Latitude in degrees", season.latitude, -90.0, 90.0)?;
    number("Height above the sea in m", season.elevation_m, -500.0, 9_000.0)?;
    let each = |what, months: Option<[f64; 12]>, least, most| {
        months.into_iter().flatten().try_for_each(|one| number(what, Some(one), least, most))
    };
    each("Rain of a month in mm", season.rain, 0.0, 10_000.0)?;
    each("Temperature in °C", season.lowest_c, -90.0, 60.0)?;
    each("Temperature in °C", season.highest_c, -90.0, 60.0)
}

fn bag(bag: &Bag) -> Result<(), Beyond> {
    number("The share of biochar in %", bag.share_percent, 0.0, 100.0)?;
    number("The size of a bag in litres", bag.bag_litres, 0.0, 10_000.0)?;
    number("The biochar's pH", bag.ph, 0.0, 14.0)?;
    number("The biochar's liming value in %", bag.liming_percent, 0.0, 200.0)?;
    number("The biochar's density in kg/m³", bag.bulk_density, 0.0, 2_500.0)?;
    number("The biochar's salts in dS/m", bag.ec, 0.0, 500.0)?;
    number("The price of a bag", bag.price, 0.0, 1e9)?;
    number("Water in the biochar in %", bag.moisture_percent, 0.0, 100.0)?;
    number("Years to spread it over", bag.years.map(f64::from), 0.0, 100.0)?;
    many("figures of the certificate", bag.certificate.len(), MOST_NAMED)?;
    let figures = bag.certificate.iter();
    figures.into_iter().try_for_each(|f| number("A certificate's figure", Some(f.value), 0.0, 1e6))
}

fn charge(charge: &Charge) -> Result<(), Beyond> {
    number("The temperature in °C", charge.temperature_c, -60.0, 80.0)?;
    number("The bucket's size in litres", charge.bucket_litres, 0.0, 10_000.0)?;
    many("sources with figures of their own", charge.sources.len(), MOST_NAMED)?;
    for source in &charge.sources {
        number("Litres on hand", source.litres, 0.0, 1e7)?;
        shares(source.n_p2o5_k2o)?;
    }
    Ok(())
}

fn feeds(feeds: &Feeds) -> Result<(), Beyond> {
    number("The lime's value in %", feeds.lime_percent, 0.0, 200.0)?;
    number("The pH wanted", feeds.target_ph, 0.0, 14.0)?;
    shares(feeds.fertiliser)?;
    number("Compost in litres", feeds.compost_litres, 0.0, 1e7)
}

fn shares(label: Option<[f64; 3]>) -> Result<(), Beyond> {
    let all = label.into_iter().flatten();
    all.into_iter().try_for_each(|one| number("N, P2O5 or K2O in %", Some(one), 0.0, 100.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::case::OwnBed;

    #[test]
    fn what_no_garden_has_is_refused_in_words() {
        let crop = |name: &str| Crop { name: name.into(), planting: None, harvest: None };
        let refused = |change: fn(&mut Case)| {
            let mut case = Case::default();
            change(&mut case);
            case.within_bounds().map_err(|beyond| beyond.to_string())
        };
        assert_eq!(Case::default().within_bounds(), Ok(()));
        let mut case = Case::default();
        case.season.crops = vec![crop("kale"); MOST_CROPS];
        assert_eq!(case.within_bounds(), Ok(()));
        case.season.crops.push(crop("leek"));
        let said = "There are 41 crops on one bed; at most 40 are taken.";
        assert_eq!(case.within_bounds().unwrap_err().to_string(), said);
        // Also where they are of one bed alone.
        case.beds =
            vec![OwnBed { crops: std::mem::take(&mut case.season.crops), ..OwnBed::default() }];
        assert_eq!(case.within_bounds().unwrap_err().to_string(), said);

        let said = "The area in m² can be 0 to 100000; here it is far beyond that.";
        assert_eq!(refused(|case| case.bed.area_m2 = Some(1e300)), Err(said.into()));
        let said = "The depth in cm can be 0 to 200; here it is -5.";
        assert_eq!(refused(|case| case.bed.depth_cm = Some(-5.0)), Err(said.into()));
        assert!(refused(|case| case.feeds.target_ph = Some(f64::NAN)).is_err());
        assert!(refused(|case| case.season.rain = Some([f64::INFINITY; 12])).is_err());
        assert!(refused(|case| case.biochar.years = Some(u32::MAX)).is_err());
        case.beds.clear();
        case.season.crops = vec![crop(&"ä".repeat(LONGEST + 1))];
        let said = "The name of a crop is longer than 2000 characters.";
        assert_eq!(case.within_bounds().unwrap_err().to_string(), said);
    }
}
