//! Draws gardens: every kind of bed, soil, crop, season, bag, source and answer, as a person
//! could give them, and with [`Kind::Wild`] also what nobody should.

use emberloam_engine::case::{
    Bag, BagState, Bed, BedKind, Case, CertificateFigure, CertificateItem, Charge, ChargeSource,
    CommonCorrection, Correction, Crop, Feeds, Feedstock, ReadingAnswers, Season, SourceFigures,
    WetSeason, Winter,
};
use emberloam_engine::quantity::Measures;
use emberloam_engine::quantity::Unit;
use emberloam_engine::report::{
    self, Advice, AdviceUnit, Advised, Known, Land, LimeAs, Origin, Pairing, Place, Reading,
    Report, SampleReport,
};
use emberloam_engine::soil::{Amount, Method, PlantGroup, Property, Texture};
use proptest::collection::vec;
use proptest::option::weighted as maybe;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use time::{Date, Duration, Month};

use crate::told::told;

/// A drawn garden. Its Debug tells it in a sentence.
#[derive(Clone)]
pub struct Garden(pub Case);

impl std::fmt::Debug for Garden {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&told(&self.0))
    }
}

/// What kind of numbers and dates a garden has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// What gardens have.
    Ordinary,
    /// Also nothing, less than nothing, and numbers and days without bounds.
    Wild,
}

type Drawn<T> = BoxedStrategy<T>;

/// A whole garden.
pub fn garden(kind: Kind) -> Drawn<Garden> {
    let about = (reports(kind), bed(kind), maybe(0.8, one_of(&PlantGroup::ALL)), season(kind));
    let on_hand = (
        bag(kind),
        prop_oneof![
            3 => Just(Vec::new()),
            5 => vec(one_of(&ChargeSource::ALL), 1..4),
            1 => Just(ChargeSource::ALL.to_vec()),
        ],
        charge(kind),
        feeds(kind),
        one_of(&Measures::ALL),
    );
    (about, on_hand)
        .prop_map(
            |((reports, bed, plants, season), (bag, charge_with, charge, feeds, measures))| {
                let (report, sample, reading) = reports;
                let rest = Case::default();
                Garden(Case {
                    report,
                    sample,
                    reading,
                    bed,
                    plants,
                    season,
                    biochar: bag,
                    charge_with,
                    charge,
                    feeds,
                    measures,
                    ..rest
                })
            },
        )
        .boxed()
}

fn one_of<T: Clone + std::fmt::Debug + 'static>(all: &'static [T]) -> Drawn<T> {
    select(all).boxed()
}

/// Numbers that can't be, and numbers without bounds. Not a number and without end come from
/// no file; a slip of the program could make them.
fn impossible() -> Drawn<f64> {
    let all = [
        0.0,
        -0.0,
        -1.0,
        -3.7,
        -1e9,
        1e-300,
        1e-9,
        1e6,
        1e9,
        1e15,
        1e300,
        f64::MAX,
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
    ];
    select(all.to_vec()).boxed()
}

/// A number from one end to the other, each part of its size as likely, as a person writes it.
fn number(kind: Kind, low: f64, high: f64) -> Drawn<f64> {
    let usual = if low > 0.0 {
        (low.ln()..high.ln()).prop_map(f64::exp).boxed()
    } else {
        (low..high).boxed()
    };
    let usual = usual.prop_map(written).boxed();
    match kind {
        Kind::Ordinary => usual,
        Kind::Wild => prop_oneof![8 => usual, 1 => impossible()].boxed(),
    }
}

/// To three digits, as a report or a person writes it.
fn written(value: f64) -> f64 {
    format!("{value:.2e}").parse().expect("a number")
}

/// Low, high and how often a report has it.
fn usual(property: Property) -> (f64, f64, f64) {
    match property {
        Property::Ph => (4.2, 8.8, 0.85),
        Property::SaltPh => (3.8, 8.0, 0.08),
        Property::BufferPh => (5.0, 7.2, 0.35),
        Property::ExchangeableAcidity => (0.05, 12.0, 0.08),
        Property::OrganicMatter => (0.5, 80.0, 0.6),
        Property::OrganicCarbon => (0.3, 40.0, 0.08),
        Property::TotalN => (0.02, 1.5, 0.08),
        Property::NitrateN => (1.0, 150.0, 0.55),
        Property::AmmoniumN => (0.5, 30.0, 0.1),
        Property::Phosphorus => (1.0, 600.0, 0.8),
        Property::Potassium => (10.0, 1200.0, 0.8),
        Property::Calcium => (40.0, 8000.0, 0.6),
        Property::Magnesium => (5.0, 1200.0, 0.6),
        Property::Sodium => (1.0, 3000.0, 0.4),
        Property::Sulfur => (1.0, 200.0, 0.4),
        Property::Boron => (0.05, 5.0, 0.1),
        Property::Zinc => (0.1, 80.0, 0.2),
        Property::Manganese => (0.5, 200.0, 0.15),
        Property::Copper => (0.1, 50.0, 0.12),
        Property::Iron => (1.0, 400.0, 0.12),
        Property::Aluminum => (10.0, 2000.0, 0.08),
        Property::Molybdenum => (0.01, 2.0, 0.04),
        Property::Chloride => (1.0, 200.0, 0.05),
        Property::Cec => (0.5, 60.0, 0.45),
        Property::BaseSaturation => (5.0, 100.0, 0.1),
        Property::CalciumSaturation | Property::MagnesiumSaturation => (1.0, 90.0, 0.08),
        Property::PotassiumSaturation => (0.5, 15.0, 0.08),
        Property::SodiumSaturation => (0.1, 60.0, 0.1),
        Property::AciditySaturation => (0.0, 80.0, 0.06),
        Property::Ec => (0.05, 12.0, 0.3),
        Property::Sar => (0.1, 40.0, 0.08),
        Property::FreeLime => (0.0, 30.0, 0.08),
        Property::Sand | Property::Silt | Property::Clay => (2.0, 95.0, 0.08),
        Property::BulkDensity => (0.12, 1.8, 0.07),
        Property::NitrogenRelease => (10.0, 150.0, 0.05),
        Property::Lead => (5.0, 2000.0, 0.12),
        Property::Arsenic => (1.0, 100.0, 0.06),
        Property::Cadmium => (0.1, 10.0, 0.06),
        Property::Pbi => (10.0, 900.0, 0.05),
        Property::RemainingP => (1.0, 55.0, 0.05),
    }
}

/// Units that a property may be printed in, each with what a number in the engine's unit is
/// multiplied by; the engine's own more often.
fn printed_in(property: Property) -> Drawn<(Option<Unit>, f64)> {
    let own = property.unit();
    let mut others: Vec<(Option<Unit>, f64)> = match own {
        Unit::MgPerKg => vec![
            (Some(Unit::LbPerAcre), 2.0),
            (Some(Unit::KgPerHa), 2.0),
            (Some(Unit::MgPerL), 1.2),
            (Some(Unit::MgPer100g), 0.1),
            (Some(Unit::Index), 1.0),
            (None, 1.0),
        ],
        Unit::Percent => vec![(Some(Unit::GPerKg), 10.0), (None, 1.0)],
        Unit::MeqPer100g => {
            vec![(Some(Unit::MmolcPerKg), 10.0), (Some(Unit::MeqPer100cm3), 1.0), (None, 1.0)]
        }
        Unit::DsPerM => vec![(Some(Unit::UsPerCm), 1000.0), (None, 1.0)],
        _ => vec![(Some(own), 1.0)],
    };
    if let Some(weight) = property.mg_per_mmolc() {
        others.push((Some(Unit::MeqPer100g), 0.1 / weight));
    }
    prop_oneof![12 => Just((Some(own), 1.0)), 1 => select(others)].boxed()
}

/// The extract of a whole report.
fn extract() -> Drawn<Option<Method>> {
    let often = [
        Method::Mehlich3,
        Method::Mehlich3,
        Method::Mehlich3,
        Method::Mehlich1,
        Method::BrayP1,
        Method::Olsen,
        Method::Olsen,
        Method::Morgan,
        Method::ModifiedMorgan,
    ];
    prop_oneof![
        9 => select(often.to_vec()).prop_map(Some),
        1 => Just(None),
        1 => one_of(&Method::ALL).prop_map(Some),
    ]
    .boxed()
}

/// The method of one reading in a report with this extract, as a choice of one in some.
fn method(property: Property, extract: Option<Method>, choice: Index) -> Option<Method> {
    let of = |all: &[Option<Method>]| all[choice.index(all.len())];
    match property {
        Property::BufferPh => of(&[
            Some(Method::SmpBuffer),
            Some(Method::SikoraBuffer),
            Some(Method::MehlichBuffer),
            Some(Method::ModifiedMehlichBuffer),
            Some(Method::AdamsEvansBuffer),
            Some(Method::WoodruffBuffer),
            None,
        ]),
        Property::Ec => of(&[
            Some(Method::Water1To1),
            Some(Method::SaturatedPaste),
            Some(Method::Water1To2),
            Some(Method::Water1To5),
            None,
        ]),
        Property::Lead | Property::Arsenic | Property::Cadmium => {
            of(&[Some(Method::TotalAcid), Some(Method::TotalAcid), extract])
        }
        Property::OrganicMatter => {
            of(&[Some(Method::LossOnIgnition), Some(Method::WalkleyBlack), None])
        }
        Property::Ph => of(&[Some(Method::Water1To1), Some(Method::CaCl2), None, None]),
        property if property.is_extracted() => match extract {
            Some(method) if !method.extracts(property) => [
                Method::AmmoniumAcetate,
                Method::Dtpa,
                Method::HotWater,
                Method::CalciumPhosphate,
                Method::Mehlich3,
            ]
            .into_iter()
            .find(|other| other.extracts(property)),
            extract => extract,
        },
        _ => None,
    }
}

/// A result as it is printed.
#[derive(Clone, Copy, Debug)]
enum Printed {
    Number,
    Below,
    Above,
    OnlyARating,
}

/// One reading, its method still open.
fn reading(kind: Kind, property: Property) -> Drawn<(Reading, Index)> {
    let (low, high, _) = usual(property);
    let printed = prop_oneof![
        20 => Just(Printed::Number),
        2 => Just(Printed::Below),
        1 => Just(Printed::Above),
        1 => Just(Printed::OnlyARating),
    ];
    (number(kind, low, high), printed_in(property), printed, any::<Index>())
        .prop_map(move |(value, (unit, factor), printed, method)| {
            let value = if value.is_finite() && (low..=high).contains(&value) {
                written(value * factor)
            } else {
                value
            };
            let (amount, original) = match printed {
                Printed::Number => (Some(Amount::Exactly(value)), format!("{value}")),
                Printed::Below => (Some(Amount::Below(value)), format!("<{value}")),
                Printed::Above => (Some(Amount::Above(value)), format!(">{value}")),
                Printed::OnlyARating => (None, "low".to_string()),
            };
            let rating = amount.is_none().then(|| original.clone());
            let reading = Reading {
                property,
                amount,
                unit,
                method: None,
                rating,
                name: property.label().to_string(),
                original,
                depth_cm: None,
                pairing: Pairing::Together,
                place: Place::default(),
                notes: Vec::new(),
            };
            (reading, method)
        })
        .boxed()
}

/// From where to where a sample reaches, cm.
fn layer(kind: Kind) -> Drawn<(f64, f64)> {
    let usual = select(vec![(0.0, 15.0), (0.0, 20.0), (0.0, 30.0), (0.0, 10.0), (30.0, 60.0)]);
    match kind {
        Kind::Ordinary => usual.boxed(),
        Kind::Wild => {
            prop_oneof![4 => usual, 1 => (impossible(), impossible()), 1 => Just((30.0, 30.0))]
                .boxed()
        }
    }
}

/// What a laboratory advises; of numbers only those that are read as advice.
fn advice() -> Drawn<Advice> {
    let lime = select(vec![LimeAs::CaCO3, LimeAs::CaO, LimeAs::Limestone]).prop_map(Advised::Lime);
    let feed = select(vec![Advised::Nitrogen, Advised::Phosphate, Advised::Potash]);
    let heavy = select(vec![AdviceUnit::TonnePerHa, AdviceUnit::TonPerAcre]);
    let light = select(vec![AdviceUnit::KgPerHa, AdviceUnit::LbPerAcre]);
    let lime = (lime, heavy, (0.0..17.0_f64).boxed());
    let feed = (feed, light, (0.0..800.0_f64).boxed());
    let land = maybe(0.3, select(vec![Land::Tilled, Land::Grass]));
    (prop_oneof![lime, feed], prop_oneof![1 => Just(0.0), 9 => Just(1.0)], land)
        .prop_map(|((what, unit, amount), some, land)| Advice {
            what,
            amount: written(amount * some),
            unit,
            land,
            text: "advice".into(),
            place: Place { line: 99, start: 0, end: 6 },
        })
        .boxed()
}

fn sample(kind: Kind) -> Drawn<SampleReport> {
    let each: Vec<_> =
        Property::ALL.iter().map(|p| maybe(usual(*p).2, reading(kind, *p))).collect();
    let deeper = maybe(0.1, (reading(kind, Property::NitrateN), layer(kind)));
    // Some reports are partial: a basic one, or none at all.
    let part = prop_oneof![
        8 => Just(Property::ALL.to_vec()),
        1 => Just(vec![Property::Ph, Property::Phosphorus, Property::Potassium]),
        1 => select(Property::ALL.to_vec()).prop_map(|p| vec![p]),
    ];
    let about = (extract(), maybe(0.4, layer(kind)), maybe(0.2, one_of(&Texture::ALL)));
    let advice = prop_oneof![3 => Just(Vec::new()), 1 => vec(advice(), 1..4)];
    (each, deeper, part, about, advice)
        .prop_map(|(each, deeper, part, (extract, depth_cm, texture), advice)| {
            let mut readings = Vec::new();
            for (mut reading, choice) in each.into_iter().flatten() {
                if part.contains(&reading.property) {
                    set_method(&mut reading, extract, choice);
                    readings.push(reading);
                }
            }
            if let Some(((mut reading, choice), layer)) = deeper {
                set_method(&mut reading, extract, choice);
                reading.depth_cm = Some(layer);
                readings.push(reading);
            }
            for (at, reading) in readings.iter_mut().enumerate() {
                reading.place = Place { line: at as u32 + 1, start: 0, end: 9 };
            }
            SampleReport {
                name: "Bed".into(),
                readings,
                unread: Vec::new(),
                depth_cm,
                texture,
                group: None,
                target_ph: None,
                advice,
            }
        })
        .boxed()
}

fn set_method(reading: &mut Reading, extract: Option<Method>, choice: Index) {
    let method = method(reading.property, extract, choice);
    reading.method = method.map(|value| Known { value, from: Origin::Stated });
}

/// The lines that a laboratory would print for a sample.
pub fn printed(sample: &SampleReport) -> String {
    let mut text = String::new();
    if let Some((top, bottom)) = sample.depth_cm {
        text += &format!("Sample depth: {top}-{bottom} cm\n");
    }
    for reading in &sample.readings {
        text += &reading.name;
        if let Some(method) = &reading.method {
            text += &format!(" ({})", method.value.label());
        }
        let unit = reading.unit.map_or("", Unit::symbol);
        text += &format!("\t{}\t{unit}\n", reading.original);
    }
    text
}

/// A report, which of its samples the bed is, and what is said of the readings.
fn reports(kind: Kind) -> Drawn<(Report, usize, ReadingAnswers)> {
    let samples = prop_oneof![
        30 => vec(sample(kind), 1..2),
        1 => Just(Vec::new()),
        2 => vec(sample(kind), 2..3),
    ];
    let chosen = prop_oneof![20 => Just(0_usize), 1 => 0..4_usize, 1 => Just(usize::MAX)];
    let corrected =
        prop_oneof![4 => Just(Vec::new()), 1 => vec((any::<Index>(), correction(kind)), 1..3)];
    let as_text = prop_oneof![6 => Just(false), 1 => Just(true)];
    let answers = (
        prop_oneof![3 => Just(Vec::new()), 1 => vec(one_of(&Method::ALL), 1..3)],
        maybe(0.2, select(vec![Unit::MgPerKg, Unit::LbPerAcre, Unit::KgPerHa, Unit::MgPerL])),
        maybe(0.2, one_of(&Method::ALL)),
        maybe(0.3, one_of(&Method::ALL)),
        maybe(0.4, number(kind, 5.0, 60.0)),
    );
    (samples, chosen, corrected, as_text, answers)
        .prop_map(|(samples, chosen, corrected, as_text, answers)| {
            let mut report = Report { samples, ..Report::default() };
            if as_text && let Some(sample) = report.samples.first() {
                let read = report::open(printed(sample).as_bytes());
                if let Ok(read) = read.and_then(|grid| report::read(&grid)) {
                    report = read;
                }
            }
            let (extractants, nutrient_unit, buffer, ec_method, depth_cm) = answers;
            let mut reading = ReadingAnswers {
                extractants,
                nutrient_unit,
                buffer,
                ec_method,
                depth_cm,
                ..ReadingAnswers::default()
            };
            let all: Vec<&Reading> = report.samples.iter().flat_map(|s| &s.readings).collect();
            for (at, correction) in corrected {
                if !all.is_empty() {
                    correct(&mut reading, all[at.index(all.len())], correction);
                }
            }
            (report, chosen, reading)
        })
        .boxed()
}

/// What a person says of one reading, or of all of its name.
#[derive(Clone, Debug)]
struct Said {
    in_all: bool,
    property: Option<Property>,
    result: Option<String>,
    unit: Option<Unit>,
    method: Option<Method>,
    leave_out: bool,
}

fn correction(kind: Kind) -> Drawn<Said> {
    let typed = |sign: &'static str| {
        move |value: f64| if value.is_finite() { format!("{sign}{value}") } else { "9".repeat(400) }
    };
    let result = prop_oneof![
        6 => number(kind, 0.1, 900.0).prop_map(typed("")),
        1 => number(kind, 0.1, 90.0).prop_map(typed("<")),
        1 => number(kind, 0.1, 90.0).prop_map(typed(">")),
        1 => select(vec!["", "none", "1e400", "1,5", "12..3", "trace"]).prop_map(String::from),
    ];
    (
        any::<bool>(),
        maybe(0.15, one_of(&Property::ALL)),
        maybe(0.7, result),
        maybe(0.2, one_of(&Unit::ALL)),
        maybe(0.2, one_of(&Method::ALL)),
        prop::bool::weighted(0.15),
    )
        .prop_map(|(in_all, property, result, unit, method, leave_out)| Said {
            in_all,
            property,
            result,
            unit,
            method,
            leave_out,
        })
        .boxed()
}

fn correct(answers: &mut ReadingAnswers, reading: &Reading, said: Said) {
    let Said { in_all, property, result, unit, method, leave_out } = said;
    if in_all {
        let (name, printed_unit) = (reading.name.clone(), reading.unit);
        answers.in_all_samples.push(CommonCorrection {
            name,
            printed_unit,
            property,
            unit,
            method,
            leave_out,
        });
    } else {
        let (place, original) = (reading.place, reading.original.clone());
        answers.corrections.push(Correction {
            place,
            original,
            property,
            result,
            unit,
            method,
            leave_out,
        });
    }
}

fn bed(kind: Kind) -> Drawn<Bed> {
    (
        maybe(0.85, number(kind, 0.2, 300.0)),
        maybe(0.75, number(kind, 4.0, 60.0)),
        maybe(0.5, one_of(&Texture::ALL)),
        maybe(0.8, one_of(&BedKind::ALL)),
    )
        .prop_map(|(area_m2, depth_cm, texture, kind)| Bed { area_m2, depth_cm, texture, kind })
        .boxed()
}

/// Today.
fn today(kind: Kind) -> Drawn<Option<Date>> {
    let first = Date::from_calendar_date(2026, Month::January, 1).expect("a day");
    let usual = (0..1000_i64).prop_map(move |days| Some(first + Duration::days(days)));
    match kind {
        Kind::Ordinary => prop_oneof![9 => usual, 1 => Just(None)].boxed(),
        Kind::Wild => {
            prop_oneof![6 => usual, 2 => end_of_time().prop_map(Some), 1 => Just(None)].boxed()
        }
    }
}

/// The ends of what a date can be.
fn end_of_time() -> Drawn<Date> {
    let day = |year| Date::from_calendar_date(year, Month::January, 3).expect("a day");
    select(vec![Date::MIN, day(-44), day(-1), day(0), day(1), day(1900), day(9999), Date::MAX])
        .boxed()
}

/// Another day of the year about today, most often after it.
fn other_day(kind: Kind) -> Drawn<Day> {
    let usual = (-200..400_i64).prop_map(Day::Later);
    match kind {
        Kind::Ordinary => usual.boxed(),
        Kind::Wild => {
            prop_oneof![6 => usual, 1 => end_of_time().prop_map(Day::On), 1 => (-40_000..40_000_i64).prop_map(Day::Later)]
                .boxed()
        }
    }
}

/// A day, by itself or some days after today.
#[derive(Clone, Copy, Debug)]
enum Day {
    Later(i64),
    On(Date),
}

impl Day {
    fn from(self, today: Date) -> Date {
        match self {
            Day::Later(days) => today.saturating_add(Duration::days(days)),
            Day::On(date) => date,
        }
    }
}

fn season(kind: Kind) -> Drawn<Season> {
    let day = |often| maybe(often, other_day(kind));
    let dates = (today(kind), day(0.65), day(0.4), day(0.5), day(0.3));
    let year = |low, high| maybe(0.2, prop::array::uniform12(number(kind, low, high)));
    let place = (
        maybe(0.7, one_of(&Winter::ALL)),
        maybe(0.3, one_of(&WetSeason::ALL)),
        maybe(0.5, number(kind, -60.0, 65.0)),
        maybe(0.2, number(kind, -10.0, 2500.0)),
        (year(0.0, 250.0), year(-12.0, 18.0), year(5.0, 36.0)),
    );
    let crops = prop_oneof![
        6 => Just(Vec::new()),
        1 => vec((select(vec!["beans", "leek", ""]), day(0.9), day(0.9)), 1..4),
    ];
    (dates, place, crops)
        .prop_map(|((today, planting, harvest, first_frost, last_frost), place, crops)| {
            let (winter, wet_season, latitude, elevation_m, (rain, lowest_c, highest_c)) = place;
            let about = today.unwrap_or_else(|| {
                Date::from_calendar_date(2026, Month::October, 1).expect("a day")
            });
            let at = |day: Option<Day>| day.map(|day| day.from(about));
            let crops = crops.into_iter().map(|(name, planting, harvest)| Crop {
                name: name.to_string(),
                planting: at(planting),
                harvest: at(harvest),
            });
            Season {
                today,
                planting: at(planting),
                harvest: at(harvest),
                first_frost: at(first_frost),
                last_frost: at(last_frost),
                winter,
                wet_season,
                latitude,
                elevation_m,
                rain,
                lowest_c,
                highest_c,
                crops: crops.collect(),
            }
        })
        .boxed()
}

/// What a certificate may say, from low to high.
fn certified(item: CertificateItem) -> (f64, f64) {
    match item {
        CertificateItem::MadeAt => (300.0, 900.0),
        CertificateItem::Ash => (0.5, 60.0),
        CertificateItem::OrganicCarbon => (20.0, 92.0),
        CertificateItem::HydrogenToCarbon => (0.05, 1.0),
        CertificateItem::OxygenToCarbon => (0.01, 0.6),
        CertificateItem::Cec => (1.0, 200.0),
        CertificateItem::Water => (0.5, 6.0),
        CertificateItem::ParticleSize => (0.1, 30.0),
        CertificateItem::Nitrogen => (0.05, 5.0),
        CertificateItem::Phosphorus => (0.02, 16.0),
        CertificateItem::Potassium => (0.05, 12.0),
        CertificateItem::Calcium => (0.1, 30.0),
        CertificateItem::Magnesium => (0.05, 5.0),
        CertificateItem::Sulfur => (0.01, 2.0),
        CertificateItem::Sodium => (0.01, 8.0),
        _ => (0.01, 300.0),
    }
}

fn bag(kind: Kind) -> Drawn<Bag> {
    let figure = one_of(&CertificateItem::ALL).prop_flat_map(move |what| {
        let (low, high) = certified(what);
        number(kind, low, high).prop_map(move |value| CertificateFigure { what, value })
    });
    let made = (
        maybe(0.75, one_of(&BagState::ALL)),
        maybe(0.7, one_of(&Feedstock::ALL)),
        maybe(0.3, number(kind, 1.0, 20.0)),
        maybe(0.4, number(kind, 1.0, 200.0)),
        maybe(0.3, number(kind, 5.5, 11.5)),
        maybe(0.3, number(kind, 0.2, 40.0)),
    );
    let years = match kind {
        Kind::Ordinary => (1..6_u32).boxed(),
        Kind::Wild => prop_oneof![3 => 1..6_u32, 1 => Just(0), 1 => Just(u32::MAX)].boxed(),
    };
    let more = (
        maybe(0.2, number(kind, 60.0, 500.0)),
        maybe(0.25, number(kind, 0.05, 15.0)),
        maybe(0.2, number(kind, 0.5, 80.0)),
        maybe(0.25, number(kind, 1.0, 80.0)),
        maybe(0.2, years),
        prop_oneof![2 => Just(Vec::new()), 1 => vec(figure, 1..6)],
    );
    (made, more)
        .prop_map(|(made, more)| {
            let (state, feedstock, share_percent, bag_litres, ph, liming_percent) = made;
            let (bulk_density, ec, price, moisture_percent, years, certificate) = more;
            Bag {
                state,
                feedstock,
                share_percent,
                bag_litres,
                ph,
                liming_percent,
                bulk_density,
                ec,
                price,
                moisture_percent,
                years,
                certificate,
            }
        })
        .boxed()
}

/// Three shares of a label.
fn label(kind: Kind) -> Drawn<[f64; 3]> {
    let usual = select(vec![
        [10.0, 5.0, 5.0],
        [0.0, 0.0, 50.0],
        [21.0, 0.0, 0.0],
        [5.0, 10.0, 10.0],
        [0.0, 46.0, 0.0],
        [15.0, 15.0, 15.0],
        [0.0, 0.0, 0.0],
    ]);
    match kind {
        Kind::Ordinary => usual.boxed(),
        Kind::Wild => {
            prop_oneof![2 => usual, 1 => prop::array::uniform3(number(kind, 0.0, 60.0))].boxed()
        }
    }
}

fn charge(kind: Kind) -> Drawn<Charge> {
    let known =
        (one_of(&ChargeSource::ALL), maybe(0.5, number(kind, 0.5, 300.0)), maybe(0.5, label(kind)));
    let sources = prop_oneof![4 => Just(Vec::new()), 1 => vec(known, 1..4)];
    (maybe(0.3, number(kind, -5.0, 35.0)), maybe(0.2, number(kind, 2.0, 30.0)), sources)
        .prop_map(|(temperature_c, bucket_litres, sources)| Charge {
            temperature_c,
            bucket_litres,
            sources: sources
                .into_iter()
                .map(|(source, litres, n_p2o5_k2o)| SourceFigures { source, litres, n_p2o5_k2o })
                .collect(),
        })
        .boxed()
}

fn feeds(kind: Kind) -> Drawn<Feeds> {
    (
        maybe(0.3, number(kind, 40.0, 170.0)),
        maybe(0.2, number(kind, 4.0, 7.5)),
        maybe(0.3, label(kind)),
        maybe(0.3, number(kind, 5.0, 2000.0)),
    )
        .prop_map(|(lime_percent, target_ph, fertiliser, compost_litres)| Feeds {
            lime_percent,
            target_ph,
            fertiliser,
            compost_litres,
        })
        .boxed()
}
