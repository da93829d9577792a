//! Reads a case told in sentences. Every word must be known: a slip of the pen
//! is an error, not a case that checks nothing.
//!
//! A case is a paragraph. Its first line is its name, in free words; the rest
//! are the sentences that [`Told::hear`] lists, and last the source of the
//! expectation, again in free words.

use emberloam_engine::biochar::{Path, RULES};
use emberloam_engine::case::{BagState, BedKind, Case, Feedstock, Winter};
use emberloam_engine::report;
use emberloam_engine::soil::{Method, PlantGroup, Texture};
use time::{Date, Month};

/// A case with what is expected of it.
pub struct Told {
    /// Its name.
    pub name: String,
    /// What the engine is given.
    pub case: Case,
    /// The path expected.
    pub path: Path,
    /// Whether the path may still turn, where that was said.
    pub provisional: Option<bool>,
    /// Rules that must speak for the path.
    pub for_it: Vec<&'static str>,
    /// Rules that must hold and speak against the path.
    pub against_it: Vec<&'static str>,
    /// Rules that must not hold.
    pub not_because_of: Vec<&'static str>,
    /// Words of the headline.
    pub headline: Option<String>,
}

/// What has been heard so far.
#[derive(Default)]
struct Heard {
    case: Case,
    report: String,
    results: usize,
    path: Option<Path>,
    provisional: Option<bool>,
    for_it: Vec<&'static str>,
    against_it: Vec<&'static str>,
    not_because_of: Vec<&'static str>,
    headline: Option<String>,
}

type Heed<T> = Result<T, String>;

impl Told {
    /// Every case of a text. Lines that begin with `#` are remarks.
    pub fn all(text: &str) -> Heed<Vec<Told>> {
        text.split("\n\n")
            .map(|paragraph| {
                let lines = paragraph.lines().filter(|line| !line.starts_with('#'));
                lines.map(str::trim).filter(|line| !line.is_empty()).collect::<Vec<_>>()
            })
            .filter(|lines| !lines.is_empty())
            .map(|lines| Told::one(&lines).map_err(|why| format!("{}: {why}", lines[0])))
            .collect()
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

impl Heard {
    /// One sentence.
    fn hear(&mut self, sentence: &str) -> Heed<()> {
        let season = &mut self.case.season;
        let begins = |with: &str| sentence.strip_prefix(with);
        match sentence {
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
                } else if let Some(bag) = begins("The bag is ") {
                    return self.bag(bag);
                } else if let Some(label) = begins("Its certificate gives ") {
                    return self.certificate(label);
                } else if let Some(answer) = begins("Answer: ") {
                    return self.answer(answer);
                } else if let Some(rules) = begins("For it: ") {
                    self.for_it = named(rules)?;
                } else if let Some(rules) = begins("Against it: ") {
                    self.against_it = named(rules)?;
                } else if let Some(rules) = begins("Not because of: ") {
                    self.not_because_of = named(rules)?;
                } else if let Some(words) = begins("The headline says: ") {
                    self.headline = Some(words.into());
                } else if let Some(bed) = begins("A ").or(begins("An ")) {
                    return self.bed(bed);
                } else {
                    return Err("no such sentence is known".into());
                }
            }
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
            let of = |name: &str, unit: &str| {
                let number = figure.strip_prefix(name)?.strip_suffix(unit)?;
                number.trim().parse::<f64>().ok()
            };
            if let Some(ph) = of("pH ", "") {
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

    /// `charged (provisional)`.
    fn answer(&mut self, words: &str) -> Heed<()> {
        let (path, certainty) = match words.split_once(" (") {
            Some((path, certainty)) => (path, Some(certainty)),
            None => (words, None),
        };
        self.path = Some(match path {
            "no biochar now" => Path::None,
            other => known(other)?,
        });
        self.provisional = match certainty {
            None => None,
            Some("provisional)") => Some(true),
            Some("settled)") => Some(false),
            Some(other) => return Err(format!("“{other}” is neither provisional nor settled")),
        };
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
        Ok(Told {
            name: name.to_string(),
            case: self.case,
            path: self.path.ok_or("no answer is expected")?,
            provisional: self.provisional,
            for_it: self.for_it,
            against_it: self.against_it,
            not_because_of: self.not_because_of,
            headline: self.headline,
        })
    }
}

/// A kind by the name that JSON gives it, with spaces for hyphens.
fn known<T: serde::de::DeserializeOwned>(words: &str) -> Heed<T> {
    let name = words.replace(' ', "-").to_lowercase();
    serde_json::from_value(name.into()).map_err(|why| why.to_string())
}

fn day(words: &str) -> Heed<Date> {
    let why = || format!("{words} is no date");
    let parts: Vec<i32> = words.split('-').filter_map(|part| part.parse().ok()).collect();
    let &[year, month, day] = parts.as_slice() else { return Err(why()) };
    let small = |number: i32| u8::try_from(number).map_err(|_| why());
    let month = Month::try_from(small(month)?).map_err(|_| why())?;
    Date::from_calendar_date(year, month, small(day)?).map_err(|_| why())
}

/// Rules by their names.
fn named(words: &str) -> Heed<Vec<&'static str>> {
    words
        .split(", ")
        .map(|name| {
            let rule = RULES.iter().find(|rule| rule.name == name);
            rule.map(|rule| rule.name).ok_or(format!("there is no rule {name}"))
        })
        .collect()
}
