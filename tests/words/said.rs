//! Everything the engine says about many gardens: real reports of the corpus
//! and the samples, each with answers drawn from all that a person can give.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::fmt::Debug;
use std::fs;
use std::path::{Path, PathBuf};

use emberloam_engine::case::{
    BagState, BedKind, BedTrial, Case, CertificateFigure, CertificateItem, ChargeSource, Crop,
    Feedstock, SourceFigures, TrialFinding, WetSeason, Winter,
};
use emberloam_engine::details::standards::standards;
use emberloam_engine::details::work_in::work_in;
use emberloam_engine::details::{
    courses, exchange_shift, permanence, purchase, reaction, repeats, sensitivity, traits, windows,
    winter_loss,
};
use emberloam_engine::quantity::Measures;
use emberloam_engine::report::Report;
use emberloam_engine::season::place;
use emberloam_engine::soil::{Method, PlantGroup, Property, Texture};
use emberloam_engine::{charge_alone, interpret, report, summary, survey};
use emberloam_files::open_file;
use time::{Date, Duration, Month};

use crate::trials;

/// A row of numbers that looks like chance and is the same in every run.
struct Draw(u64);

impl Draw {
    fn next(&mut self, below: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % below as u64) as usize
    }

    fn maybe<T: Clone>(&mut self, of: &[T]) -> Option<T> {
        (self.next(3) > 0).then(|| of[self.next(of.len())].clone())
    }

    fn several<T: Clone>(&mut self, of: &[T], most: usize) -> Vec<T> {
        (0..self.next(most + 1)).map(|_| of[self.next(of.len())].clone()).collect()
    }
}

fn files_of(folder: &Path) -> Vec<PathBuf> {
    let mut all: Vec<PathBuf> = fs::read_dir(folder)
        .expect("a folder of reports")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.is_file())
        .collect();
    all.sort();
    all
}

/// Every report of the samples and the corpus that can be read.
fn reports(said: &mut BTreeSet<String>) -> Vec<Report> {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    let mut files = files_of(&root.join("../public/samples"));
    files.extend(files_of(&root.join("corpus/files")));
    let mut all = Vec::new();
    for file in files {
        let bytes = fs::read(&file).expect("a report");
        let text = match open_file(&bytes) {
            Ok(opened) => opened.text,
            Err(refused) => {
                said.insert(refused.to_string());
                continue;
            }
        };
        match report::open(text.as_bytes()).and_then(|grid| report::read(&grid)) {
            Ok(report) => all.push(report),
            Err(trouble) => {
                said.insert(trouble.to_string());
            }
        }
    }
    all
}

fn answers(draw: &mut Draw, report: Report) -> Case {
    let day = |year, month: u8, day| {
        Date::from_calendar_date(year, Month::try_from(month).expect("a month"), day).ok()
    };
    let today = day(2027, 1 + draw.next(12) as u8, 14);
    let in_days = |draw: &mut Draw, most: usize| {
        let days = draw.next(most) as i64 - 20;
        (draw.next(3) > 0).then(|| today.map(|d| d + Duration::days(days))).flatten()
    };
    let mut case = Case { report, ..Case::default() };
    case.sample = draw.next(case.report.samples.len().max(1));
    case.measures = [Measures::Metric, Measures::Us][draw.next(2)];
    case.plants = draw.maybe(&PlantGroup::ALL);
    case.reading.extractants = draw.several(&Method::ALL, 2);
    case.reading.buffer = draw.maybe(&Method::ALL).filter(|m| m.label().contains("buffer"));
    case.reading.depth_cm = draw.maybe(&[15.0, 20.0, 30.0, 60.0]);
    case.bed.area_m2 = draw.maybe(&[0.5, 4.0, 12.0, 100.0]);
    case.bed.depth_cm = draw.maybe(&[5.0, 10.0, 20.0, 30.0, 300.0]);
    case.bed.texture = draw.maybe(&Texture::ALL);
    case.bed.kind = draw.maybe(&BedKind::ALL);
    case.season.today = if draw.next(8) > 0 { today } else { None };
    case.season.planting = in_days(draw, 200);
    case.season.harvest = in_days(draw, 120);
    case.season.first_frost = in_days(draw, 120);
    case.season.last_frost = in_days(draw, 240);
    case.season.winter = draw.maybe(&Winter::ALL);
    case.season.wet_season = draw.maybe(&WetSeason::ALL);
    case.season.latitude = draw.maybe(&[47.0, 33.0, -35.0, 3.0, 60.0, 120.0]);
    case.season.elevation_m = draw.maybe(&[0.0, 300.0, 1500.0, 9000.0]);
    case.season.rain = draw.maybe(&[
        [90.0, 80.0, 70.0, 50.0, 40.0, 30.0, 20.0, 30.0, 50.0, 80.0, 100.0, 100.0],
        [5.0; 12],
        [9000.0; 12],
    ]);
    case.season.lowest_c = draw.maybe(&[[4.0; 12], [-10.0; 12]]);
    case.season.highest_c = draw.maybe(&[[14.0; 12], [-12.0; 12]]);
    for name in draw.several(&["Kale", ""], 3) {
        let crop =
            Crop { name: name.into(), planting: in_days(draw, 300), harvest: in_days(draw, 400) };
        case.season.crops.push(crop);
    }
    let bag = &mut case.biochar;
    bag.state = draw.maybe(&BagState::ALL);
    bag.feedstock = draw.maybe(&Feedstock::ALL);
    bag.share_percent = draw.maybe(&[0.5, 2.0, 5.0, 10.0, 30.0]);
    bag.bag_litres = draw.maybe(&[30.0, 50.0, -4.0]);
    bag.ph = draw.maybe(&[5.0, 7.5, 9.6, 15.0]);
    bag.liming_percent = draw.maybe(&[0.0, 4.0, 12.0, 200.0]);
    bag.bulk_density = draw.maybe(&[120.0, 250.0, 9000.0]);
    bag.ec = draw.maybe(&[0.2, 3.0, 900.0]);
    bag.price = draw.maybe(&[12.5, -3.0]);
    bag.moisture_percent = draw.maybe(&[5.0, 30.0, 99.0]);
    bag.years = draw.maybe(&[1, 3, 9, 99]);
    for what in draw.several(&CertificateItem::ALL, 9) {
        let value = [0.05, 0.4, 3.0, 60.0, 450.0][draw.next(5)];
        bag.certificate.push(CertificateFigure { what, value });
    }
    case.charge_with = draw.several(&ChargeSource::ALL, 4);
    case.charge.temperature_c = draw.maybe(&[-2.0, 5.0, 15.0, 25.0, 70.0]);
    case.charge.bucket_litres = draw.maybe(&[5.0, 10.0]);
    for source in case.charge_with.clone() {
        case.charge.sources.push(SourceFigures {
            source,
            litres: draw.maybe(&[1.0, 40.0, 400.0]),
            n_p2o5_k2o: draw.maybe(&[[5.0, 0.0, 5.0], [10.0, 5.0, 5.0], [90.0, 90.0, 9.0]]),
        });
    }
    case.feeds.lime_percent = draw.maybe(&[90.0, 400.0]);
    case.feeds.target_ph = draw.maybe(&[6.5, 5.5, 9.0]);
    case.feeds.fertiliser = draw.maybe(&[[10.0, 10.0, 10.0], [5.0, 0.0, 0.0], [80.0, 80.0, 3.0]]);
    case.feeds.compost_litres = draw.maybe(&[40.0, 2000.0]);
    case
}

/// Fields whose text no reader sees, which hold what the report says, or the
/// title of a publication.
const NOT_SAID: [&str; 8] = [
    "id: ",
    "rule: ",
    "original: ",
    "lab_rating: Some(",
    "title: ",
    "place: ",
    "Unread { text: ",
    "name: ",
];
/// Names that are said.
const SAID: [&str; 2] = ["Input { name: ", "Grown { name: "];

/// Whether what stands before a text in a programmer's print says that it is
/// said to the reader.
fn is_said(before: &str) -> bool {
    let ends = |fields: &[&str]| fields.iter().any(|field| before.ends_with(field));
    ends(&SAID) || !ends(&NOT_SAID)
}

/// Every text in what can be printed for a programmer.
fn take(from: &impl Debug, into: &mut BTreeSet<String>) {
    let printed = format!("{from:?}");
    let mut from = 0;
    while let Some(start) = printed[from..].find('"').map(|at| from + at) {
        let mut text = String::new();
        let mut signs = printed[start + 1..].char_indices();
        let mut end = printed.len();
        while let Some((at, sign)) = signs.next() {
            match sign {
                '"' => {
                    end = start + 1 + at + 1;
                    break;
                }
                '\\' => match signs.next() {
                    Some((_, 'n')) => text.push('\n'),
                    Some((_, 't')) => text.push('\t'),
                    Some((_, 'u')) => {
                        let code: String = signs
                            .by_ref()
                            .map(|(_, c)| c)
                            .skip(1)
                            .take_while(|c| *c != '}')
                            .collect();
                        text.extend(u32::from_str_radix(&code, 16).ok().and_then(char::from_u32));
                    }
                    Some((_, other)) => text.push(other),
                    None => break,
                },
                sign => text.push(sign),
            }
        }
        if is_said(&printed[..start]) {
            into.insert(text);
        }
        from = end;
    }
}

/// All that is said of one garden.
fn of_garden(case: &Case, said: &mut BTreeSet<String>) {
    let outcome = interpret(case);
    take(&summary::plan(&outcome, case.measures), said);
    take(&outcome, said);
    take(&summary::carry(&outcome, case), said);
    let mut handout = summary::handout(&outcome, case);
    // A sample's own name is nobody's to translate.
    handout.retain(|block| !matches!(block, summary::Block::Title(_)));
    take(&handout, said);
    take(&summary::shopping(case), said);
    for sample in &outcome.samples {
        take(&summary::verdict_in_words(&sample.plan), said);
    }
    let litres = [0.0, 0.4, 12.0, 340.0][case.sample % 4];
    take(&charge_alone(litres, &case.charge_with, &case.charge, case.measures), said);
    take(&permanence(case), said);
    take(&standards(&case.biochar), said);
    take(&place(&case.season, case.measures), said);
    take(&sensitivity(case), said);
    let (bed, plan) = (survey(Cow::Borrowed(case)), &outcome.plan);
    take(&traits(&bed), said);
    take(&windows(&bed), said);
    take(&courses(&bed, plan), said);
    take(&exchange_shift(&bed, plan), said);
    take(&reaction(&bed, plan), said);
    take(&winter_loss(&bed, plan), said);
    take(&purchase(&bed, plan), said);
    take(&repeats(&bed, plan), said);
    take(&work_in(&bed, plan), said);
}

/// All that the engine says of so many gardens.
pub fn everything(gardens: usize) -> BTreeSet<String> {
    let mut said = BTreeSet::new();
    let reports = reports(&mut said);
    let mut draw = Draw(0x9E37_79B9_7F4A_7C15);
    for at in 0..gardens {
        let mut case = answers(&mut draw, reports[at % reports.len()].clone());
        case.trial = (at % 4 == 0).then(tried);
        of_garden(&case, &mut said);
    }
    said.extend(trials::everything());
    said.extend(beyond());
    said
}

/// A trial that found something of every property.
fn tried() -> BedTrial {
    let found =
        |property| TrialFinding { property, foretold: [-4.0, 1.5, 9.25], found: [0.5, 3.75, 7.0] };
    let found = Property::ALL.map(found).to_vec();
    BedTrial { name: "By the fence".into(), off: false, found }
}

/// Why answers that no garden has are refused.
fn beyond() -> BTreeSet<String> {
    let twelve = |number: &str| format!("[{}]", [number; 12].join(","));
    let many = |one: &str| format!("[{}]", vec![one; 2_001].join(","));
    let long = "x".repeat(2_001);
    let place = r#"{"line":0,"start":0,"end":1}"#;
    let mut cases = vec![
        format!(r#"{{"season":{{"rain":{}}}}}"#, twelve("1e9")),
        format!(r#"{{"season":{{"lowest-c":{}}}}}"#, twelve("-1e9")),
        format!(r#"{{"season":{{"crops":{}}}}}"#, many(r#"{"name":"kale"}"#)),
        format!(r#"{{"season":{{"crops":[{{"name":"{long}"}}]}}}}"#),
        format!(r#"{{"trial":{{"name":"{long}"}}}}"#),
        format!(r#"{{"trial":{{"found":{}}}}}"#, many(FOUND)),
        format!(r#"{{"trial":{{"found":[{}]}}}}"#, FOUND.replace("1", "1e99")),
        format!(r#"{{"beds":{}}}"#, many(r#"{"sample":1}"#)),
        format!(r#"{{"beds":[{{"sample":1,"open":{}}}]}}"#, many(r#""area""#)),
        format!(r#"{{"charge-with":{}}}"#, many(r#""compost""#)),
        format!(r#"{{"own-file":"{}"}}"#, "x".repeat(200_001)),
        format!(r#"{{"reading":{{"region":"{long}"}}}}"#),
        format!(r#"{{"reading":{{"extractants":{}}}}}"#, many(r#""mehlich-3""#)),
        format!(r#"{{"reading":{{"in-all-samples":{}}}}}"#, many(r#"{"name":"P"}"#)),
        format!(r#"{{"reading":{{"in-all-samples":[{{"name":"{long}"}}]}}}}"#),
        format!(r#"{{"reading":{{"corrections":[{{"place":{place},"original":"{long}"}}]}}}}"#),
        format!(r#"{{"charge":{{"sources":{}}}}}"#, many(r#"{"source":"compost"}"#)),
        r#"{"charge":{"sources":[{"source":"compost","litres":1e99}]}}"#.into(),
        format!(r#"{{"biochar":{{"certificate":{}}}}}"#, many(CERTIFIED)),
        format!(r#"{{"biochar":{{"certificate":[{}]}}}}"#, CERTIFIED.replace("1", "1e99")),
    ];
    for (part, keys) in [
        ("reading", &["depth-cm"] as &[&str]),
        ("bed", &["area-m2", "depth-cm"]),
        ("season", &["latitude", "elevation-m"]),
        (
            "biochar",
            &[
                "share-percent",
                "bag-litres",
                "ph",
                "liming-percent",
                "bulk-density",
                "ec",
                "price",
                "moisture-percent",
            ],
        ),
        ("charge", &["temperature-c", "bucket-litres"]),
        ("feeds", &["lime-percent", "target-ph", "compost-litres"]),
    ] {
        cases.extend(keys.iter().map(|key| format!(r#"{{"{part}":{{"{key}":1e99}}}}"#)));
    }
    cases.push(r#"{"biochar":{"years":4000000000}}"#.into());
    cases.push(r#"{"bed":{"depth-cm":-5}}"#.into());
    cases.push(r#"{"feeds":{"fertiliser":[1e99,0,0]}}"#.into());
    let refused = |json: &String| {
        let case: Case = serde_json::from_str(json).unwrap_or_else(|e| panic!("{json:.99}: {e}"));
        case.within_bounds().expect_err(json).to_string()
    };
    cases.iter().map(refused).collect()
}

/// A figure of a certificate.
const FOUND: &str = r#"{"property":"ph","foretold":[0,1,1],"found":[0,1,1]}"#;
const CERTIFIED: &str = r#"{"what":"ash","value":1}"#;
