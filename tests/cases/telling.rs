//! Reads a case told in sentences. Every word must be known: a slip of the pen
//! is an error, not a case that checks nothing.
//!
//! A case is a paragraph. Its first line is its name, in free words; the rest
//! are the sentences of what is given and what is expected, and last the source of
//! the expectation, again in free words.

use emberloam_engine::case::{
    BagState, BedKind, Case, CertificateFigure, CertificateItem, ChargeSource, Crop, Feedstock,
    Winter,
};
use emberloam_engine::quantity::Measures;
use emberloam_engine::region::Region;
use emberloam_engine::report;
use emberloam_engine::soil::{Method, PlantGroup, Texture};
use time::{Date, Month};

use crate::expecting::Expected;

/// A case with what is expected of it.
pub struct Told {
    /// Its name.
    pub name: String,
    /// What the engine is given.
    pub case: Case,
    /// What is expected of its plan.
    pub expected: Expected,
}

/// What has been heard so far.
#[derive(Default)]
struct Heard {
    case: Case,
    report: String,
    results: usize,
    corrections: Vec<(String, String)>,
    expected: Expected,
}

/// What is understood, or the word that is not.
pub type Heed<T> = Result<T, String>;

impl Told {
    /// Every case of a text, or all that is wrong in it. Lines that begin with `#` are remarks.
    pub fn all(text: &str) -> Heed<Vec<Told>> {
        let told = text
            .split("\n\n")
            .map(|paragraph| {
                let lines = paragraph.lines().filter(|line| !line.starts_with('#'));
                lines.map(str::trim).filter(|line| !line.is_empty()).collect::<Vec<_>>()
            })
            .filter(|lines| !lines.is_empty())
            .map(|lines| Told::one(&lines).map_err(|why| format!("{}: {why}", lines[0])));
        let (heard, wrong): (Vec<_>, Vec<_>) = told.partition(Result::is_ok);
        match wrong.into_iter().filter_map(Result::err).collect::<Vec<_>>() {
            wrong if wrong.is_empty() => Ok(heard.into_iter().flatten().collect()),
            wrong => Err(wrong.join("\n")),
        }
    }

    fn one(lines: &[&str]) -> Heed<Told> {
        let (name, rest) = lines.split_first().ok_or("nothing is told")?;
        let rest = rest.join(" ");
        let (told, source) = rest.split_once("Source: ").ok_or("no source is given")?;
        if source.len() < 10 {
            return Err("the source says nothing".into());
        }
        let mut heard = Heard::default();
        let told = told.trim_end().strip_suffix('.').ok_or("the last sentence has no end")?;
        for sentence in told.split(". ") {
            heard.hear(sentence.trim()).map_err(|why| format!("“{sentence}”: {why}"))?;
        }
        heard.understood(name.trim_end_matches('.'))
    }
}

/// The region that has this word in its name or among what its reports print.
fn region(name: &str) -> Heed<&'static Region> {
    let says = |region: &&Region| region.name.contains(name) || region.clues.contains(&name);
    Region::all().iter().find(says).ok_or(format!("{name} is no region"))
}

impl Heard {
    /// One sentence.
    fn hear(&mut self, sentence: &str) -> Heed<()> {
        if self.expected.hear(sentence)? {
            return Ok(());
        }
        let season = &mut self.case.season;
        let begins = |with: &str| sentence.strip_prefix(with);
        match sentence {
            "The measures are metric" => self.case.measures = Measures::Metric,
            "The measures are US" => self.case.measures = Measures::Us,
            "Winter brings frost" => season.winter = Some(Winter::Frost),
            "Winter is mild and wet" => season.winter = Some(Winter::MildWet),
            "There is no winter" => season.winter = Some(Winter::None),
            "There is no biochar yet" => self.case.biochar.state = Some(BagState::NoneYet),
            _ => {
                if let Some(results) = begins("The report gives ") {
                    return self.results(results);
                } else if let Some(extract) = begins("The extract is ") {
                    self.report += &format!("Extraction: {extract}\n");
                } else if let Some(depth) = begins("The sample reaches from ") {
                    self.report += &format!("Sample depth: {}\n", depth.replace(" to ", "-"));
                } else if let Some(method) = begins("The gardener asked the laboratory: it used ") {
                    self.case.reading.extractants.push(known::<Method>(method)?);
                } else if let Some(right) = begins("The person corrects ") {
                    let (name, result) = right.split_once(" to ").ok_or("to what?")?;
                    self.corrections.push((name.into(), result.into()));
                } else if let Some(date) = begins("Today is ") {
                    season.today = Some(day(date)?);
                } else if let Some(date) = begins("The bed is clear on ") {
                    season.harvest = Some(day(date)?);
                } else if let Some(date) = begins("Planting is on ").or(begins("Planting was on "))
                {
                    season.planting = Some(day(date)?);
                } else if let Some(date) = begins("The first frost is on ") {
                    season.first_frost = Some(day(date)?);
                } else if let Some(date) = begins("The last frost is on ") {
                    season.last_frost = Some(day(date)?);
                } else if let Some(degrees) = begins("The latitude is ") {
                    season.latitude = Some(number(degrees, "")?);
                } else if let Some(name) = begins("The region is ") {
                    self.case.reading.region = Some(region(name)?.id.into());
                } else if let Some(name) = begins("The crop is ").or(begins("The grass is ")) {
                    season.crops.push(Crop { name: name.into(), planting: None, harvest: None });
                } else if let Some(bag) = begins("The bag is ") {
                    return self.bag(bag);
                } else if let Some(label) = begins("Its certificate gives ") {
                    return self.certificate(label);
                } else {
                    return self.bed_or_shed(sentence);
                }
            }
        }
        Ok(())
    }

    /// The bed's size, what is wanted, and what is on hand.
    fn bed_or_shed(&mut self, sentence: &str) -> Heed<()> {
        let begins = |with: &str| sentence.strip_prefix(with);
        let Case { bed, biochar, feeds, charge_with, .. } = &mut self.case;
        if let Some(share) = begins("The share wanted is ") {
            biochar.share_percent = Some(number(share, "%")?);
        } else if let Some(litres) = begins("A bag holds ") {
            biochar.bag_litres = Some(number(litres, "litres")?);
        } else if let Some(sources) = begins("To charge with there are ") {
            *charge_with = sources.split(", ").map(known::<ChargeSource>).collect::<Heed<_>>()?;
        } else if let Some(litres) = begins("On hand are ") {
            feeds.compost_litres = Some(number(litres, "litres of compost")?);
        } else if let Some(label) = begins("The fertiliser bag is ") {
            let parts = label.split('-').map(|part| number(part, ""));
            let parts: Vec<f64> = parts.collect::<Heed<_>>()?;
            feeds.fertiliser =
                Some(parts.try_into().map_err(|_| "a bag has three numbers".to_string())?);
        } else if let Some(percent) = begins("The lime has ") {
            feeds.lime_percent = Some(number(percent, "% CCE")?);
        } else if let Some(ph) = begins("The pH wanted is ") {
            feeds.target_ph = Some(number(ph, "")?);
        } else if let Some(depth) = begins("It is worked ") {
            bed.depth_cm = Some(number(depth, "cm deep")?);
        } else if let Some(area) = begins("The bed is ") {
            bed.area_m2 = Some(number(area, "m2")?);
        } else if let Some(bed) = begins("A ").or(begins("An ")) {
            return self.bed(bed);
        } else {
            return Err("no such sentence is known".into());
        }
        Ok(())
    }

    /// `pH 6.5; nitrate-N 15 ppm; P (Olsen) 40 ppm`, written down as a report
    /// would have it.
    fn results(&mut self, results: &str) -> Heed<()> {
        for result in results.split("; ") {
            let starts = |word: &str| word.starts_with(|c: char| c.is_ascii_digit() || c == '<');
            let at = result
                .match_indices(' ')
                .map(|(at, _)| at)
                .find(|at| starts(&result[at + 1..]))
                .ok_or(format!("{result} has no number"))?;
            self.report += &format!("{}: {}\n", &result[..at], &result[at + 1..]);
            self.results += 1;
        }
        Ok(())
    }

    /// `sandy loam no-dig bed of root crops`: texture, way of working, plants.
    fn bed(&mut self, words: &str) -> Heed<()> {
        let (bed, plants) = match words.split_once(" of ") {
            Some((bed, "acid-loving plants")) => (bed, Some("acid lovers")),
            Some((bed, plants)) => (bed, Some(plants)),
            None => (words, words.ends_with("lawn").then_some("lawn")),
        };
        let kinds = [
            ("no-dig bed", Some(BedKind::NoDig)),
            ("dug bed", Some(BedKind::Dug)),
            ("bed", None),
            ("lawn", Some(BedKind::Lawn)),
            ("pot", Some(BedKind::Container)),
            ("tree pit", Some(BedKind::TreePit)),
        ];
        let (texture, kind) = kinds
            .into_iter()
            .find_map(|(word, kind)| Some((bed.strip_suffix(word)?.trim(), kind)))
            .ok_or("no such bed is known")?;
        self.case.bed.kind = kind;
        self.case.bed.texture =
            if texture.is_empty() { None } else { Some(known::<Texture>(texture)?) };
        self.case.plants = plants.map(known::<PlantGroup>).transpose()?;
        Ok(())
    }

    /// `uncharged softwood`: its state, what it was made from, or both.
    fn bag(&mut self, words: &str) -> Heed<()> {
        let (state, stuff) = match words.split_once(' ') {
            Some((state, stuff)) => (state, stuff),
            None => (words, ""),
        };
        let stuff = match state {
            "charged" | "uncharged" => {
                self.case.biochar.state = Some(known(state)?);
                stuff
            }
            _ => words,
        };
        if !stuff.is_empty() {
            let stuff = if stuff == "straw" { "grass or straw" } else { stuff };
            self.case.biochar.feedstock = Some(known::<Feedstock>(stuff)?);
        }
        Ok(())
    }

    /// `pH 9.6, liming value 12 %, salts 30 dS/m`.
    fn certificate(&mut self, words: &str) -> Heed<()> {
        let bag = &mut self.case.biochar;
        for figure in words.split(", ") {
            let of = |name: &str, unit: &str| number(figure.strip_prefix(name)?, unit).ok();
            let totals = [
                ("phosphorus ", CertificateItem::Phosphorus),
                ("potassium ", CertificateItem::Potassium),
                ("sodium ", CertificateItem::Sodium),
            ];
            let total = totals.iter().find_map(|(name, what)| Some((*what, of(name, "%")?)));
            if let Some((what, value)) = total {
                bag.certificate.push(CertificateFigure { what, value });
            } else if let Some(ph) = of("pH ", "") {
                bag.ph = Some(ph);
            } else if let Some(percent) = of("liming value ", "%") {
                bag.liming_percent = Some(percent);
            } else if let Some(salts) = of("salts ", "dS/m") {
                bag.ec = Some(salts);
            } else if let Some(density) = of("bulk density ", "kg/m³") {
                bag.bulk_density = Some(density);
            } else {
                return Err(format!("{figure} is no known figure"));
            }
        }
        Ok(())
    }

    /// The case, once all of it is heard.
    fn understood(mut self, name: &str) -> Heed<Told> {
        let grid = report::open(self.report.as_bytes());
        self.case.report = match grid.and_then(|grid| report::read(&grid)) {
            Ok(report) => report,
            Err(_) if self.results == 0 => report::Report::default(),
            Err(why) => return Err(format!("the report can't be read: {why:?}")),
        };
        let read: usize = self.case.report.samples.iter().map(|s| s.readings.len()).sum();
        if read != self.results {
            return Err(format!("{read} of {} results were read: {}", self.results, self.report));
        }
        for (name, result) in &self.corrections {
            let readings = self.case.report.samples.iter().flat_map(|sample| &sample.readings);
            let reading = readings.clone().find(|reading| reading.name.eq_ignore_ascii_case(name));
            let reading = reading.ok_or(format!("the report gives no {name}"))?;
            let (result, unit) = result.split_once(' ').unwrap_or((result, ""));
            if !reading.original.ends_with(unit) {
                return Err(format!("{} is put right in the report's own unit", reading.original));
            }
            self.case.reading.put_right(reading, false, |c| c.result = Some(result.into()));
        }
        if self.expected.is_empty() {
            return Err("nothing is expected".into());
        }
        Ok(Told { name: name.to_string(), case: self.case, expected: self.expected })
    }
}

/// A number with its unit after it.
fn number(words: &str, unit: &str) -> Heed<f64> {
    let number = words.strip_suffix(unit).and_then(|number| number.trim().parse().ok());
    number.ok_or(format!("{words} is no number of {unit}"))
}

/// A kind by the name that JSON gives it, with spaces for hyphens.
pub fn known<T: serde::de::DeserializeOwned>(words: &str) -> Heed<T> {
    let name = words.replace(' ', "-").to_lowercase();
    serde_json::from_value(name.into()).map_err(|why| why.to_string())
}

/// `2026-10-05`.
pub fn day(words: &str) -> Heed<Date> {
    let why = || format!("{words} is no date");
    let parts: Vec<i32> = words.split('-').filter_map(|part| part.parse().ok()).collect();
    let &[year, month, day] = parts.as_slice() else { return Err(why()) };
    let small = |number: i32| u8::try_from(number).map_err(|_| why());
    let month = Month::try_from(small(month)?).map_err(|_| why())?;
    Date::from_calendar_date(year, month, small(day)?).map_err(|_| why())
}
