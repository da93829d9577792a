//! A bed over the years: the results of one place from every saved report, a
//! series for each property in each method. Results by different extractants
//! are different series, and never joined.

use std::ops::Range;

use emberloam_engine::outcome::{Bound, JudgedReading};
use emberloam_engine::quantity::Unit;
use emberloam_engine::ranges::Level;
use emberloam_engine::report;
use emberloam_engine::season::day;
use emberloam_engine::soil::{Method, Property};
use emberloam_engine::summary::amount;
use emberloam_engine::{Case, judged_readings};
use time::Date;

use crate::saved::entry::Entry;

/// One result.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// When the soil was sampled, or the report saved when nobody said.
    pub day: Date,
    /// The number, or the limit when there is only one.
    pub value: f64,
    /// Whether it is only a limit.
    pub limit: bool,
    /// The result in words.
    pub shown: String,
    /// Its level, when it is judged.
    pub level: Option<Level>,
}

/// The results for one property by one method in one unit, by date.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    /// What was measured.
    pub property: Property,
    /// By what method; `None` where the report doesn't say.
    pub method: Option<Method>,
    /// In what unit.
    pub unit: Option<Unit>,
    /// The results.
    pub points: Vec<Point>,
}

impl Series {
    /// The stretches that a line may join: numbers of one known method in one
    /// known unit. What is only a limit stands alone.
    pub fn lines(&self) -> Vec<Range<usize>> {
        let mut lines = Vec::new();
        let mut from = 0;
        for at in 0..=self.points.len() {
            if self.points.get(at).is_none_or(|point| point.limit) {
                if at > from + 1 {
                    lines.push(from..at);
                }
                from = at + 1;
            }
        }
        let known = self.method.is_some() || !has_methods(self.property);
        let joins = known && self.unit.is_some();
        lines.retain(|_| joins);
        lines
    }
}

/// Whether laboratories measure it in ways that give different numbers.
fn has_methods(property: Property) -> bool {
    !matches!(property, Property::Sand | Property::Silt | Property::Clay)
}

/// The results of every bed in one saved report.
#[derive(Clone, Debug, PartialEq)]
pub struct Beds {
    day: Date,
    beds: Vec<(String, Vec<JudgedReading>)>,
}

/// Reads a saved report again. Nothing, when it can't be read or has no date.
pub fn beds(entry: &Entry) -> Option<Beds> {
    let date = if entry.date.is_empty() { entry.created.get(..10)? } else { &entry.date };
    Some(Beds { day: day::parse(date)?, beds: samples(entry)? })
}

/// The samples of a saved report with their readings, as they were put right. Nothing, when it
/// can't be read.
pub fn samples(entry: &Entry) -> Option<Vec<(String, Vec<JudgedReading>)>> {
    let kept = entry.kept()?;
    let report = report::open(kept.text.as_bytes()).and_then(|grid| report::read(&grid)).ok()?;
    let chosen = kept.answers.sample.min(report.samples.len().saturating_sub(1));
    let case = Case { report, ..kept.answers };
    let samples = case.report.samples.iter().enumerate().map(|(at, sample)| {
        let place = entry.place.trim();
        let name = sample.name.trim();
        let name = match (at == chosen && !place.is_empty(), name.is_empty()) {
            (true, _) => place,
            (false, false) => name,
            (false, true) => entry.name.trim(),
        };
        (name.to_string(), judged_readings(&case, at))
    });
    Some(samples.collect())
}

/// The names of all beds, each once.
pub fn places(all: &[Beds]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for (name, _) in all.iter().flat_map(|beds| &beds.beds) {
        if !names.iter().any(|known| is_same(known, name)) {
            names.push(name.clone());
        }
    }
    names.sort();
    names
}

fn is_same(one: &str, other: &str) -> bool {
    one.to_lowercase() == other.to_lowercase()
}

/// The series of one bed.
pub fn series(all: &[Beds], place: &str) -> Vec<Series> {
    let mut found: Vec<Series> = Vec::new();
    for beds in all {
        for (_, readings) in beds.beds.iter().filter(|(name, _)| is_same(name, place)) {
            for reading in readings {
                let Some(point) = point(beds.day, reading) else { continue };
                let kind = (reading.property, reading.method, reading.unit);
                match found.iter_mut().find(|s| (s.property, s.method, s.unit) == kind) {
                    Some(series) => series.points.push(point),
                    None => {
                        let (property, method, unit) = kind;
                        found.push(Series { property, method, unit, points: vec![point] });
                    }
                }
            }
        }
    }
    for series in &mut found {
        series.points.sort_by_key(|point| point.day);
    }
    found.sort_by_key(|series| series.property as u8);
    found
}

fn point(day: Date, reading: &JudgedReading) -> Option<Point> {
    let (value, limit) = match (reading.value, reading.bound) {
        (_, Some(Bound::Below(limit) | Bound::Above(limit))) => (limit, true),
        (Some(value), None) => (value, false),
        (None, None) => return None,
    };
    Some(Point { day, value, limit, shown: amount(reading), level: reading.finding.level })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::saved::entry::tests::an_entry;

    fn of(date: &str, place: &str, text: &str) -> Beds {
        let entry =
            Entry { date: date.into(), place: place.into(), ..an_entry(date, "Saved", text) };
        beds(&entry).unwrap()
    }

    fn phosphorus(all: &[Beds], place: &str) -> Vec<Series> {
        let mut found = series(all, place);
        found.retain(|s| s.property == Property::Phosphorus);
        found
    }

    #[test]
    fn a_bed_is_followed_over_the_years_in_order() {
        let all = [
            of("2027-03-01", "Back bed", "Mehlich-3 P 40 ppm\npH 6.5"),
            of("2025-03-01", "back bed ", "Mehlich-3 P 80 ppm\npH 6.1"),
            of("2026-03-01", "Front", "Mehlich-3 P 7 ppm\npH 6.1"),
        ];
        assert_eq!(places(&all), ["Back bed", "Front"]);
        let found = phosphorus(&all, "BACK BED");
        assert_eq!(found.len(), 1);
        let values: Vec<f64> = found[0].points.iter().map(|p| p.value).collect();
        assert_eq!(values, [80.0, 40.0]);
        assert_eq!(found[0].lines(), vec![Range { start: 0, end: 2 }]);
    }

    #[test]
    fn different_extractants_are_never_joined() {
        let all = [
            of("2025-03-01", "Bed", "Mehlich-3 P 80 ppm\npH 6.1"),
            of("2026-03-01", "Bed", "Olsen P 20 ppm\npH 6.1"),
            of("2027-03-01", "Bed", "Mehlich-3 P 60 ppm\npH 6.1"),
        ];
        let found = phosphorus(&all, "Bed");
        let methods: Vec<_> = found.iter().map(|s| (s.method, s.points.len())).collect();
        assert_eq!(methods, [(Some(Method::Mehlich3), 2), (Some(Method::Olsen), 1)]);
        assert!(found[1].lines().is_empty());
    }

    #[test]
    fn a_limit_and_an_unknown_method_stand_alone() {
        let all = [
            of("2024-03-01", "Bed", "Olsen P 4 ppm\npH 6.1"),
            of("2025-03-01", "Bed", "Olsen P 5 ppm\npH 6.1"),
            of("2026-03-01", "Bed", "Olsen P <2 ppm\npH 6.1"),
            of("2027-03-01", "Bed", "Olsen P 6 ppm\npH 6.1"),
        ];
        let found = phosphorus(&all, "Bed");
        assert_eq!(found[0].points.iter().filter(|p| p.limit).count(), 1);
        assert_eq!(found[0].lines(), vec![Range { start: 0, end: 2 }]);
        let unknown = [
            of("2025-03-01", "Bed", "Phosphorus 80 ppm\npH 6.1"),
            of("2026-03-01", "Bed", "Phosphorus 60 ppm\npH 6.1"),
        ];
        assert!(phosphorus(&unknown, "Bed").iter().all(|s| s.lines().is_empty()));
    }

    #[test]
    fn samples_keep_their_own_names_and_the_chosen_one_the_given_place() {
        let two = of("2025-03-01", "Apple row", "Sample,pH\nA,6.5\nB,6.6\n");
        assert_eq!(places(&[two]), ["Apple row", "B"]);
    }

    #[test]
    fn an_entry_that_holds_no_report_is_passed_over() {
        assert_eq!(beds(&an_entry("a", "Empty", "")), None);
    }
}
