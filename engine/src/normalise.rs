//! Readings in one unit system, with the person's answers and corrections
//! applied. What is missing becomes a question; the number as printed stays
//! beside the number that is judged.

use crate::case::{Correction, ReadingAnswers};
use crate::quantity::{Context, ConvertError, Unit, convert, significant};
use crate::question::{Question, QuestionId};
use crate::report::{
    Known, Origin, Pairing, Place, Reading, SampleReport, doubt, impossible, parse_amount,
};
use crate::soil::{Amount, Measure, Method, Property, Soil, listed};

/// A sample ready to be judged.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Normalised {
    /// Every reading, usable or not.
    pub readings: Vec<NormalReading>,
    /// The usable measures.
    pub soil: Soil,
    /// What must be asked.
    pub questions: Vec<Question>,
}

/// A reading with answers and corrections applied.
#[derive(Clone, Debug, PartialEq)]
pub struct NormalReading {
    /// What was measured.
    pub property: Property,
    /// In the engine's units, or why it can't be used yet.
    pub measure: Result<Measure, String>,
    /// The number as printed or corrected, when there is one.
    pub printed: Option<f64>,
    /// The unit as printed, corrected or answered.
    pub unit: Option<Unit>,
    /// The method and how it is known.
    pub method: Option<Known<Method>>,
    /// The laboratory's own rating.
    pub rating: Option<String>,
    /// The name as printed.
    pub name: String,
    /// The result as printed.
    pub original: String,
    /// How thick the slice of soil is that it refers to, cm, when known.
    pub slice_cm: Option<f64>,
    /// From where to where that slice reaches, cm, when its own line says so.
    pub slice: Option<(f64, f64)>,
    /// Where it stands.
    pub place: Place,
    /// What was done to it.
    pub notes: Vec<String>,
}

/// Applies answers and corrections and converts to the engine's units.
///
/// ```
/// use emberloam_engine::{case::ReadingAnswers, normalise::normalise, report};
/// let grid = report::open(b"Mehlich-3\nPhosphorus 60 lb/acre\n").unwrap();
/// let report = report::read(&grid).unwrap();
/// let sample = normalise(&report.samples[0], &ReadingAnswers::default());
/// let phosphorus = sample.soil.measures[0];
/// assert_eq!(phosphorus.amount.exact(), Some(30.0)); // mg/kg
/// ```
pub fn normalise(sample: &SampleReport, answers: &ReadingAnswers) -> Normalised {
    // An answer of nothing, or less, is no answer; and what is printed comes before it.
    let answered = answers.depth_cm.filter(|depth| *depth > 0.0);
    let depth_cm = sample.depth_cm.map(|(top, bottom)| bottom - top).or(answered);
    let slice_of = |r: &Reading| r.depth_cm.map(|(top, bottom)| bottom - top).or(depth_cm);
    let mut doubts = Vec::new();
    let readings: Vec<NormalReading> =
        sample.readings.iter().map(|r| normal(r, answers, slice_of(r), &mut doubts)).collect();
    let measures = readings.iter().filter_map(|r| r.measure.as_ref().ok().copied()).collect();
    let mut questions = questions(&readings, &doubts);
    questions.splice(0..0, counted_off(sample, answers));
    Normalised { questions, soil: Soil { measures }, readings }
}

/// Asks whether names and numbers belong together that stand apart in the report.
fn counted_off(sample: &SampleReport, answers: &ReadingAnswers) -> Option<Question> {
    let of = |r: &&Reading| r.pairing == Pairing::CountedOff && answers.correction_of(r).is_none();
    let apart: Vec<&Reading> = sample.readings.iter().filter(of).collect();
    if apart.is_empty() || answers.counted_off.is_some() {
        return None;
    }
    let mut properties: Vec<Property> = apart.iter().map(|r| r.property).collect();
    properties.dedup();
    Some(Question::new(
        QuestionId::CountedOff,
        "Do these names and numbers belong together? In the report they stand apart, or something speaks against them.",
        "Until you say so, none of these numbers is used.",
        &properties,
    ))
}

/// Why a reading waits for that answer, or is left out by it.
fn apart(reading: &Reading, answers: &ReadingAnswers) -> Option<String> {
    if reading.pairing != Pairing::CountedOff {
        return None;
    }
    match answers.counted_off {
        Some(true) => None,
        Some(false) => Some("You said that this number does not belong to this name.".into()),
        None => Some(
            "It is not certain that this number belongs to this name. Answer the question about them."
                .into(),
        ),
    }
}

/// A reading whose unit is missing or can't be right, and what it may be.
type UnitDoubt = (Property, &'static str);

/// What to do about a unit when nothing in particular is known of it.
const CORRECT_IT: &str = "Correct it beside the reading.";

fn normal(
    reading: &Reading,
    answers: &ReadingAnswers,
    depth_cm: Option<f64>,
    doubts: &mut Vec<UnitDoubt>,
) -> NormalReading {
    let correction = answers.correction_of(reading);
    let correction = correction.as_ref();
    let property = correction.and_then(|c| c.property).unwrap_or(reading.property);
    let mut notes = reading.notes.clone();
    let amount = match correction.and_then(|c| c.result.as_deref()) {
        Some(typed) => parse_amount(typed)
            .ok_or_else(|| format!("“{typed}” is not a result. Type a number, such as 18 or <2.")),
        None => reading.amount.ok_or_else(|| no_number(reading)),
    };
    let unit = unit_of(property, reading, correction, answers, &mut notes);
    let method = method_of(property, reading, correction, answers);
    let measure = if correction.is_some_and(|c| c.leave_out) {
        Err("You left this reading out.".to_string())
    } else if let (None, Some(why)) = (correction, apart(reading, answers)) {
        Err(why)
    } else {
        // Who says the unit knows the number.
        let sure = correction.is_some_and(|c| c.unit.is_some());
        amount.clone().and_then(|amount| {
            let (unit, value) =
                believed(property, amount, unit, sure, depth_cm, &mut notes, doubts)?;
            let method = method.as_ref().map(|m| m.value);
            Ok(Measure { property, amount: amount.with(value), unit, method })
        })
    };
    NormalReading {
        property,
        measure,
        printed: amount.ok().map(|a| a.number()),
        unit,
        method,
        rating: reading.rating.clone(),
        name: reading.name.clone(),
        original: reading.original.clone(),
        slice_cm: depth_cm,
        slice: reading.depth_cm,
        place: reading.place,
        notes,
    }
}

/// A number in the engine's unit, unless its own unit is missing or can't be right.
fn believed(
    property: Property,
    amount: Amount,
    unit: Option<Unit>,
    sure: bool,
    depth_cm: Option<f64>,
    notes: &mut Vec<String>,
    doubts: &mut Vec<UnitDoubt>,
) -> Result<(Unit, f64), String> {
    let Some(unit) = unit else {
        if !property.shares_unit() {
            doubts.push((property, unit_to_try(property)));
        }
        return Err(unit_missing(property));
    };
    let converted = in_engine_unit(property, amount.number(), unit, depth_cm, notes);
    if converted.is_err() && unit != Unit::Index {
        doubts.push((property, unit_to_try(property)));
    }
    let (target, value) = converted?;
    match amount.exact().and_then(|_| doubt(property, value, unit)) {
        Some(why) if !sure => {
            doubts.push((property, why));
            Err(format!(
                "{} {} {} can hardly be. {why} Correct the reading, or say its unit again to keep it.",
                property.label(),
                significant(amount.number(), 4),
                unit.symbol(),
            ))
        }
        // A report that is read holds none of these, but a correction may.
        _ => match impossible(property, value, Some(target)) {
            Some(why) => Err(format!("{}. Correct the reading.", why.trim_end_matches('.'))),
            None => Ok((target, value)),
        },
    }
}

/// What the unit of a property may be when none is printed.
fn unit_to_try(property: Property) -> &'static str {
    match property {
        Property::OrganicMatter | Property::OrganicCarbon => {
            "Most laboratories give %. 10 g/kg, and about 10 g/dm³, are 1 %."
        }
        Property::Ec => "dS/m, mS/cm and mmho/cm are the same; 1 dS/m is 1000 µS/cm.",
        Property::Cec | Property::ExchangeableAcidity => {
            "meq/100 g and cmol/kg are the same; 10 mmol/kg are 1 cmol/kg."
        }
        _ => CORRECT_IT,
    }
}

fn unit_missing(property: Property) -> String {
    if property.shares_unit() {
        "Its unit is not known yet. Answer the question about units.".to_string()
    } else {
        "Its unit is not known. Correct the reading to say it.".to_string()
    }
}

fn no_number(reading: &Reading) -> String {
    match &reading.rating {
        Some(rating) => format!(
            "The report gives only the rating “{rating}”, no number. Ask the laboratory for the number."
        ),
        None => "The report gives no number and no limit here.".to_string(),
    }
}

fn unit_of(
    property: Property,
    reading: &Reading,
    correction: Option<&Correction>,
    answers: &ReadingAnswers,
    notes: &mut Vec<String>,
) -> Option<Unit> {
    if let Some(unit) = correction.and_then(|c| c.unit) {
        return Some(unit);
    }
    reading.unit.or_else(|| {
        if property.unit() == Unit::None {
            return Some(Unit::None);
        }
        let answered = property.shares_unit().then_some(answers.nutrient_unit).flatten()?;
        notes.push(format!("{} by your answer", answered.symbol()));
        Some(answered)
    })
}

fn method_of(
    property: Property,
    reading: &Reading,
    correction: Option<&Correction>,
    answers: &ReadingAnswers,
) -> Option<Known<Method>> {
    if let Some(value) = correction.and_then(|c| c.method) {
        return Some(Known { value, from: Origin::Answered });
    }
    reading.method.clone().or_else(|| {
        let answered = match property {
            Property::BufferPh => answers.buffer,
            Property::Ec => answers.ec_method,
            _ if property.is_extracted() => {
                answers.extractants.iter().copied().find(|m| m.extracts(property))
            }
            _ => None,
        };
        answered.map(|value| Known { value, from: Origin::Answered })
    })
}

/// The value in the unit the engine judges it in. Volumetric results stay
/// volumetric; results per area are brought to mg/kg through the slice of
/// soil they refer to.
fn in_engine_unit(
    property: Property,
    value: f64,
    unit: Unit,
    depth_cm: Option<f64>,
    notes: &mut Vec<String>,
) -> Result<(Unit, f64), String> {
    if unit == Unit::Index {
        return Ok((Unit::Index, value));
    }
    let by_volume = matches!(unit, Unit::MgPerL | Unit::MeqPer100cm3);
    let target = match property.unit() {
        Unit::MgPerKg if by_volume => Unit::MgPerL,
        Unit::MeqPer100g if by_volume => Unit::MeqPer100cm3,
        target => target,
    };
    let per_area = matches!(unit, Unit::LbPerAcre | Unit::KgPerHa) && target == Unit::MgPerKg;
    let (context, slice) = slice(depth_cm);
    let context = context.with_charge(property.mg_per_mmolc());
    let converted = convert(value, unit, target, &context).map_err(|why| match why {
        ConvertError::NotComparable => {
            format!("The unit of {} can't be {}. Correct it.", property.label(), name_of(unit))
        }
        other => other.to_string(),
    })?;
    if unit != target {
        let mut note = format!(
            "{} {} = {} {}",
            significant(value, 4),
            unit.symbol(),
            significant(converted, 3),
            target.symbol()
        );
        if per_area {
            note.push_str(&slice);
        }
        notes.push(note);
    }
    Ok((target, converted))
}

fn name_of(unit: Unit) -> &'static str {
    match unit {
        Unit::None => "no unit",
        unit => unit.symbol(),
    }
}

/// The slice of soil a result per area refers to. US laboratories print
/// lb/acre as twice the ppm for a slice of about 6⅔ inches (17 cm), whatever
/// the soil weighs; a slice of another depth is scaled from that one.
/// Source: Iowa State University Extension, Interpreting Soil Reports.
fn slice(depth_cm: Option<f64>) -> (Context, String) {
    const FURROW_CM: f64 = 20.0 / 3.0 * 2.54;
    match depth_cm {
        Some(depth) if depth > 0.0 && !(14.0..=18.5).contains(&depth) => {
            let mut context = Context::FURROW_SLICE;
            context.soil_gg_per_ha = context.soil_gg_per_ha.map(|mass| mass * depth / FURROW_CM);
            (
                context,
                format!(
                    " (a slice {} cm deep, 2,000,000 lb/acre in each 6⅔ in)",
                    significant(depth, 3)
                ),
            )
        }
        Some(_) => {
            (Context::FURROW_SLICE, " (a furrow slice: 2,000,000 lb of soil per acre)".into())
        }
        None => (
            Context::FURROW_SLICE,
            " (taken as a furrow slice, 2,000,000 lb of soil per acre; tell us the sampling depth)"
                .into(),
        ),
    }
}

fn questions(readings: &[NormalReading], doubts: &[UnitDoubt]) -> Vec<Question> {
    let asked = [extractant(readings), shared_unit(readings), own_unit(doubts), depth(readings)];
    asked.into_iter().flatten().collect()
}

/// The properties of these readings, in their order; `None` when there are none.
fn about(
    readings: &[NormalReading],
    wanted: impl Fn(&NormalReading) -> bool,
) -> Option<Vec<Property>> {
    let mut found: Vec<Property> =
        readings.iter().filter(|r| wanted(r)).map(|r| r.property).collect();
    found.dedup();
    (!found.is_empty()).then_some(found)
}

/// Whether there is a number to judge. An index stays an index, whatever the method and the unit.
fn measured(reading: &NormalReading) -> bool {
    reading.printed.is_some() && reading.unit != Some(Unit::Index)
}

fn extractant(readings: &[NormalReading]) -> Option<Question> {
    let open = about(readings, |r| measured(r) && r.property.is_extracted() && r.method.is_none())?;
    let question = Question::new(
        QuestionId::Extractant,
        format!("Which extractant did the laboratory use for {}?", listed(&open)),
        "Without it these numbers can't be judged: the same soil gives very different numbers in different extractants.",
        &open,
    );
    Some(question.suggesting(
        "Look for a name such as Mehlich-3, Olsen or Modified Morgan at the foot of the report, or on the laboratory's web page.",
    ))
}

fn shared_unit(readings: &[NormalReading]) -> Option<Question> {
    let open = about(readings, |r| measured(r) && r.unit.is_none() && r.property.shares_unit())?;
    // 0.3 of potassium or 8 of calcium is no ppm.
    let by_charge = readings.iter().any(|r| {
        r.unit.is_none()
            && matches!(r.property, Property::Potassium | Property::Calcium | Property::Magnesium)
            && r.printed.is_some_and(|v| v > 0.0 && doubt(r.property, v, Unit::MgPerKg).is_some())
    });
    let question = Question::new(
        QuestionId::NutrientUnit,
        format!("What is the unit of {}?", listed(&open)),
        "Without it the number can't be compared with any range.",
        &open,
    );
    Some(question.suggesting(if by_charge {
        "The bases are too small for ppm: numbers like these are usual in meq/100 g (cmol/kg)."
    } else {
        "ppm (mg/kg) is the most usual. Pounds per acre are about twice the ppm."
    }))
}

fn own_unit(doubts: &[UnitDoubt]) -> Option<Question> {
    let (_, first) = doubts.first()?;
    let doubtful: Vec<Property> = doubts.iter().map(|d| d.0).collect();
    let question = Question::new(
        QuestionId::ReadingUnit,
        format!("What is the unit of {}?", listed(&doubtful)),
        "It is missing or can't be right. Until it is put right the reading is left out.",
        &doubtful,
    );
    Some(question.suggesting(*first))
}

fn depth(readings: &[NormalReading]) -> Option<Question> {
    let per_area = about(readings, |r| {
        r.slice_cm.is_none()
            && r.property.unit() == Unit::MgPerKg
            && matches!(r.unit, Some(Unit::LbPerAcre | Unit::KgPerHa))
    })?;
    let question = Question::new(
        QuestionId::SamplingDepth,
        format!(
            "How deep was the sample taken? It turns {} per area into a concentration.",
            listed(&per_area)
        ),
        "A sample twice as deep holds half the concentration for the same pounds per acre.",
        &per_area,
    );
    Some(question.suggesting("6 to 7 inches (15–18 cm) is the usual depth for a garden bed."))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::case::CommonCorrection;

    fn reading(property: Property, value: f64, unit: Option<Unit>) -> Reading {
        Reading {
            property,
            amount: Some(Amount::Exactly(value)),
            unit,
            method: None,
            rating: None,
            name: property.label().to_string(),
            original: value.to_string(),
            depth_cm: None,
            pairing: Pairing::Together,
            place: Place { line: 1, start: 0, end: 1 },
            notes: Vec::new(),
        }
    }

    fn normalised(readings: Vec<Reading>, answers: &ReadingAnswers) -> Normalised {
        normalise(&SampleReport { readings, ..SampleReport::default() }, answers)
    }

    fn asked(found: &Normalised) -> Vec<QuestionId> {
        found.questions.iter().map(|q| q.id).collect()
    }

    #[test]
    fn a_missing_unit_is_asked_and_the_number_is_not_used() {
        let found = normalised(
            vec![reading(Property::Phosphorus, 40.0, None)],
            &ReadingAnswers { extractants: vec![Method::Mehlich3], ..ReadingAnswers::default() },
        );
        assert_eq!(asked(&found), [QuestionId::NutrientUnit]);
        assert!(found.soil.measures.is_empty());
        assert_eq!(found.readings[0].printed, Some(40.0));
    }

    #[test]
    fn the_unit_of_salts_is_not_that_of_the_nutrients() {
        let answers =
            ReadingAnswers { nutrient_unit: Some(Unit::MgPerKg), ..ReadingAnswers::default() };
        let found = normalised(vec![reading(Property::Ec, 0.4, None)], &answers);
        assert!(found.soil.measures.is_empty());
        assert_eq!(asked(&found), [QuestionId::ReadingUnit]);
        assert!(found.questions[0].suggestion.as_ref().unwrap().contains("µS/cm"));
    }

    #[test]
    fn an_answered_unit_is_used_and_said() {
        let answers = ReadingAnswers {
            extractants: vec![Method::Mehlich3],
            nutrient_unit: Some(Unit::MgPerKg),
            ..ReadingAnswers::default()
        };
        let found = normalised(vec![reading(Property::Phosphorus, 40.0, None)], &answers);
        assert_eq!(found.soil.value(Property::Phosphorus), Some(40.0));
        assert_eq!(found.readings[0].notes, ["mg/kg by your answer"]);
        assert!(found.questions.is_empty());
    }

    #[test]
    fn an_answer_about_olsen_leaves_potassium_open() {
        let answers =
            ReadingAnswers { extractants: vec![Method::Olsen], ..ReadingAnswers::default() };
        let found = normalised(
            vec![
                reading(Property::Phosphorus, 12.0, Some(Unit::MgPerKg)),
                reading(Property::Potassium, 150.0, Some(Unit::MgPerKg)),
            ],
            &answers,
        );
        assert_eq!(found.readings[0].method.as_ref().map(|m| m.value), Some(Method::Olsen));
        assert_eq!(found.readings[1].method, None);
        assert_eq!(found.questions[0].about, [Property::Potassium]);
    }

    #[test]
    fn pounds_per_acre_ask_for_the_depth_and_a_deeper_slice_dilutes() {
        let pounds = || vec![reading(Property::NitrateN, 40.0, Some(Unit::LbPerAcre))];
        let found = normalised(pounds(), &ReadingAnswers::default());
        assert_eq!(asked(&found), [QuestionId::SamplingDepth]);
        let close = |value: Option<f64>, wanted: f64| {
            assert!((value.unwrap() - wanted).abs() < 1e-9, "{value:?} is not {wanted}");
        };
        close(found.soil.value(Property::NitrateN), 20.0);
        let answers = ReadingAnswers { depth_cm: Some(12.0 * 2.54), ..ReadingAnswers::default() };
        let found = normalised(pounds(), &answers);
        assert!(found.questions.is_empty());
        close(found.soil.value(Property::NitrateN), 40.0 / 3.6);
    }

    #[test]
    fn volumetric_results_stay_volumetric() {
        let found = normalised(
            vec![reading(Property::Potassium, 210.0, Some(Unit::MgPerL))],
            &ReadingAnswers {
                extractants: vec![Method::AmmoniumNitrate],
                ..ReadingAnswers::default()
            },
        );
        assert_eq!(found.soil.measures[0].unit, Unit::MgPerL);
        assert_eq!(found.soil.value(Property::Potassium), None);
    }

    #[test]
    fn charge_is_brought_to_mass_and_a_unit_that_cannot_be_is_questioned() {
        let found = normalised(
            vec![
                reading(Property::Calcium, 4.0, Some(Unit::MeqPer100g)),
                reading(Property::Phosphorus, 4.0, Some(Unit::MeqPer100g)),
            ],
            &ReadingAnswers { extractants: vec![Method::Mehlich3], ..ReadingAnswers::default() },
        );
        assert!((found.soil.value(Property::Calcium).unwrap() - 801.56).abs() < 0.01);
        assert_eq!(asked(&found), [QuestionId::ReadingUnit]);
        assert_eq!(found.questions[0].about, [Property::Phosphorus]);
    }

    #[test]
    fn a_number_that_can_hardly_be_is_asked_until_its_unit_is_said() {
        let answers = |corrections| ReadingAnswers {
            extractants: vec![Method::Mehlich3],
            corrections,
            ..ReadingAnswers::default()
        };
        let little = || vec![reading(Property::Potassium, 0.31, Some(Unit::MgPerKg))];
        let found = normalised(little(), &answers(Vec::new()));
        assert!(found.soil.measures.is_empty());
        assert_eq!(asked(&found), [QuestionId::ReadingUnit]);
        assert!(found.questions[0].suggestion.as_ref().unwrap().contains("meq/100 g"));
        let said = |unit| Correction {
            place: Place { line: 1, start: 0, end: 1 },
            original: "0.31".into(),
            property: None,
            result: None,
            unit: Some(unit),
            method: None,
            leave_out: false,
        };
        let found = normalised(little(), &answers(vec![said(Unit::MeqPer100g)]));
        assert!((found.soil.value(Property::Potassium).unwrap() - 121.2).abs() < 0.01);
        assert!(found.questions.is_empty());
        let bare = normalised(
            vec![
                reading(Property::Phosphorus, 40.0, None),
                reading(Property::Potassium, 0.31, None),
            ],
            &answers(Vec::new()),
        );
        assert_eq!(asked(&bare), [QuestionId::NutrientUnit]);
        assert!(bare.questions[0].suggestion.as_ref().unwrap().contains("meq/100 g"));
    }

    #[test]
    fn a_result_with_its_own_depth_needs_no_other() {
        let mut deep = reading(Property::NitrateN, 36.0, Some(Unit::LbPerAcre));
        deep.depth_cm = Some((0.0, 24.0 * 2.54));
        let found = normalised(vec![deep], &ReadingAnswers::default());
        assert!(found.questions.is_empty());
        assert!((found.soil.value(Property::NitrateN).unwrap() - 5.0).abs() < 1e-9);
    }

    #[test]
    fn an_index_stays_an_index_and_asks_nothing() {
        let found = normalised(
            vec![reading(Property::Zinc, 120.0, Some(Unit::Index))],
            &ReadingAnswers::default(),
        );
        let measure = found.readings[0].measure.as_ref().unwrap();
        assert_eq!((measure.unit, found.soil.value(Property::Zinc)), (Unit::Index, None));
        assert!(found.questions.is_empty());
    }

    #[test]
    fn a_correction_for_all_samples_holds_for_its_name_and_gives_way_to_a_readings_own() {
        let common = CommonCorrection {
            name: "phosphorus".into(),
            printed_unit: None,
            property: None,
            unit: Some(Unit::MgPerKg),
            method: Some(Method::Olsen),
            leave_out: false,
        };
        let at = |line| Place { line, start: 0, end: 1 };
        let own = Correction {
            place: at(7),
            original: "40".into(),
            property: None,
            result: None,
            unit: Some(Unit::LbPerAcre),
            method: None,
            leave_out: false,
        };
        let answers = ReadingAnswers {
            corrections: vec![own],
            in_all_samples: vec![common],
            ..ReadingAnswers::default()
        };
        let p = |line, unit| {
            let mut reading = reading(Property::Phosphorus, 40.0, unit);
            reading.place = at(line);
            reading
        };
        let found = normalised(vec![p(1, None), p(7, None), p(9, Some(Unit::MgPer100g))], &answers);
        let told: Vec<_> =
            found.readings.iter().map(|r| (r.unit, r.method.as_ref().map(|m| m.value))).collect();
        assert_eq!(
            told,
            [
                (Some(Unit::MgPerKg), Some(Method::Olsen)),
                (Some(Unit::LbPerAcre), Some(Method::Olsen)),
                (Some(Unit::MgPer100g), None),
            ]
        );
    }

    #[test]
    fn a_correction_holds_only_while_the_source_says_the_same() {
        let correction = Correction {
            place: Place { line: 1, start: 0, end: 1 },
            original: "40".into(),
            property: None,
            result: Some("<4".into()),
            unit: None,
            method: Some(Method::ModifiedMorgan),
            leave_out: false,
        };
        let answers = ReadingAnswers { corrections: vec![correction], ..ReadingAnswers::default() };
        let p = |value| vec![reading(Property::Phosphorus, value, Some(Unit::MgPerKg))];
        let corrected = normalised(p(40.0), &answers);
        assert_eq!(corrected.soil.measures[0].amount, Amount::Below(4.0));
        assert_eq!(corrected.soil.measures[0].method, Some(Method::ModifiedMorgan));
        let edited = normalised(p(41.0), &answers);
        assert_eq!(edited.soil.measures[0].amount, Amount::Exactly(41.0));
    }
}
