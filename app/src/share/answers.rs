//! The answers of a case one by one: by their names in its JSON, with words
//! for a reader. A name is a key, or a key and a key within it, as in
//! `bed.area-m2`.

use emberloam_engine::Case;
use emberloam_engine::case::{BagState, BedKind, ChargeSource, Feedstock, WetSeason, Winter};
use emberloam_engine::quantity::{Measures, Unit, in_readers, readers_symbol, significant};
use emberloam_engine::question::QuestionId;
use emberloam_engine::region::Region;
use emberloam_engine::season::day;
use emberloam_engine::soil::{Method, PlantGroup, Texture};
use serde_json::{Map, Value};

use crate::words;

/// An answer that was given.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Its name in the JSON.
    pub name: String,
    /// What it is about.
    pub label: String,
    /// What was answered.
    pub value: String,
}

impl Answer {
    /// Whether it can hold for another report: corrections of readings and answers for one of its
    /// beds can't.
    pub fn can_be_fixed(&self) -> bool {
        !matches!(
            self.name.as_str(),
            "sample"
                | "beds"
                | "reading.corrections"
                | "reading.in-all-samples"
                | "reading.named-lines"
                | "trial.name"
                | "trial.off"
                | "trial.found"
        )
    }
}

/// The JSON of a case with nothing in it that nobody said.
pub fn sparse(case: &Case) -> Value {
    differing(whole(case), &whole(&Case::default())).unwrap_or(Value::Object(Map::new()))
}

/// The whole JSON of a case. By way of its text: a case written and read in a
/// second way would weigh as much again.
fn whole(case: &Case) -> Value {
    // A case always has a JSON.
    let json = serde_json::to_string(case).unwrap_or_default();
    serde_json::from_str(&json).unwrap_or_default()
}

/// The case of a JSON; `None` when it is none, or holds what no garden has.
pub fn case(given: &Value) -> Option<Case> {
    let case: Case = serde_json::from_str(&given.to_string()).ok()?;
    case.within_bounds().is_ok().then_some(case)
}

/// What in a JSON no garden has, in words; `None` when there is nothing, or it is no case.
pub fn beyond(given: &Value) -> Option<String> {
    let case: Case = serde_json::from_str(&given.to_string()).ok()?;
    case.within_bounds().err().map(|beyond| beyond.to_string())
}

fn differing(given: Value, nobody: &Value) -> Option<Value> {
    match given {
        Value::Object(fields) => {
            let left: Map<String, Value> = fields
                .into_iter()
                .filter_map(|(key, value)| {
                    let value = differing(value, nobody.get(&key).unwrap_or(&Value::Null))?;
                    Some((key, value))
                })
                .collect();
            (!left.is_empty()).then_some(Value::Object(left))
        }
        given => (given != *nobody).then_some(given),
    }
}

/// Every answer in a sparse JSON by its name.
fn named(given: &Value) -> Vec<(String, &Value)> {
    let mut all = Vec::new();
    for (key, value) in given.as_object().into_iter().flatten() {
        match value {
            Value::Object(fields) => {
                all.extend(fields.iter().map(|(inner, value)| (format!("{key}.{inner}"), value)));
            }
            value => all.push((key.clone(), value)),
        }
    }
    all
}

/// Only the answers with these names.
pub fn only(given: &Value, names: &[String]) -> Value {
    let mut left = Map::new();
    for (name, value) in named(given) {
        if !names.contains(&name) {
            continue;
        }
        match name.split_once('.') {
            Some((key, inner)) => {
                let group = left.entry(key).or_insert_with(|| Value::Object(Map::new()));
                if let Value::Object(group) = group {
                    group.insert(inner.into(), value.clone());
                }
            }
            None => {
                left.insert(name, value.clone());
            }
        }
    }
    Value::Object(left)
}

/// A case with other answers put in place of its own; `None` when they make no case.
pub fn put(case: &Case, part: &Value) -> Option<Case> {
    let mut whole = sparse(case);
    for (key, value) in part.as_object()? {
        match (whole.get_mut(key), value) {
            (Some(Value::Object(mine)), Value::Object(other)) => {
                mine.extend(other.iter().map(|(k, v)| (k.clone(), v.clone())));
            }
            _ => whole[key] = value.clone(),
        }
    }
    let mut put = self::case(&whole)?;
    put.report = case.report.clone();
    Some(put)
}

/// A case without the answers of these names.
pub fn without(case: &Case, names: &[String]) -> Case {
    let given = sparse(case);
    let left: Vec<String> = named(&given).into_iter().map(|(name, _)| name).collect();
    let left: Vec<String> = left.into_iter().filter(|name| !names.contains(name)).collect();
    // What was a case is still one with less in it.
    self::case(&only(&given, &left)).unwrap_or_default()
}

/// How an answer is told.
#[derive(Clone, Copy)]
enum Told {
    /// A choice, or several, by name.
    Choice(fn(&str) -> Option<&'static str>),
    /// A number in a unit.
    Number(Unit),
    /// A day.
    Day,
    /// How many there are, or that it is so.
    Count,
    /// A name that the person gave.
    Name,
}

type Row = (&'static str, &'static str, Told);

/// The answers with words of their own; any other is told by its name.
const TOLD: [Row; 37] = [
    ("sample", words::WHICH_SAMPLE, Told::Number(Unit::None)),
    ("reading.region", words::REGION, Told::Choice(region)),
    ("reading.extractants", words::EXTRACTANT, Told::Choice(method)),
    ("reading.nutrient-unit", words::NUTRIENT_UNIT, Told::Choice(unit)),
    ("reading.buffer", words::BUFFER, Told::Choice(method)),
    ("reading.ec-method", words::EC_METHOD, Told::Choice(method)),
    ("reading.depth-cm", words::SAMPLING_DEPTH, Told::Number(Unit::Cm)),
    ("reading.corrections", words::keeping::PUT_RIGHT_ONE, Told::Count),
    ("reading.in-all-samples", words::keeping::PUT_RIGHT_ALL, Told::Count),
    ("reading.named-lines", words::keeping::NAMED_LINES, Told::Count),
    ("bed.area-m2", words::AREA, Told::Number(Unit::SquareMetre)),
    ("bed.depth-cm", words::WORKED_DEPTH, Told::Number(Unit::Cm)),
    ("bed.texture", words::TEXTURE, Told::Choice(texture)),
    ("bed.kind", words::BED_KIND, Told::Choice(bed_kind)),
    ("plants", words::PLANTS, Told::Choice(plants)),
    ("beds", words::OWN_BEDS, Told::Count),
    ("trial.name", words::trial::TRIAL, Told::Name),
    ("trial.off", words::trial::NOT_SAID, Told::Count),
    ("trial.found", words::trial::FOUND, Told::Count),
    ("season.planting", words::PLANTING, Told::Day),
    ("season.harvest", words::HARVEST, Told::Day),
    ("season.first-frost", words::FIRST_FROST, Told::Day),
    ("season.last-frost", words::LAST_FROST, Told::Day),
    ("season.winter", words::WINTER, Told::Choice(winter)),
    ("season.wet-season", words::WET_SEASON, Told::Choice(wet_season)),
    ("biochar.state", words::BAG_STATE, Told::Choice(bag_state)),
    ("biochar.feedstock", words::FEEDSTOCK, Told::Choice(feedstock)),
    ("biochar.share-percent", words::SHARE, Told::Number(Unit::Percent)),
    ("biochar.bag-litres", words::BAG_LITRES, Told::Number(Unit::Litre)),
    ("biochar.ph", words::BAG_PH, Told::Number(Unit::None)),
    ("biochar.liming-percent", words::BAG_LIMING, Told::Number(Unit::Percent)),
    ("biochar.ec", words::BAG_EC, Told::Number(Unit::DsPerM)),
    ("charge-with", words::CHARGE_WITH, Told::Choice(charge_source)),
    ("feeds.lime-percent", words::LIME_PERCENT, Told::Number(Unit::Percent)),
    ("feeds.target-ph", words::TARGET_PH, Told::Number(Unit::None)),
    ("feeds.compost-litres", words::COMPOST_LITRES, Told::Number(Unit::Litre)),
    ("measures", words::MEASURES, Told::Choice(measures)),
];

fn region(name: &str) -> Option<&'static str> {
    Region::of(name).map(|region| region.name)
}

macro_rules! chosen {
    ($($name:ident: $kind:ident, $words:expr;)+) => {
        $(fn $name(name: &str) -> Option<&'static str> {
            $kind::ALL.into_iter().find(|kind| kind.name() == name).map($words)
        })+
    };
}

chosen! {
    method: Method, Method::label;
    unit: Unit, words::unit_choice;
    texture: Texture, Texture::label;
    bed_kind: BedKind, words::bed_kind;
    plants: PlantGroup, PlantGroup::label;
    winter: Winter, words::winter;
    wet_season: WetSeason, words::wet_season;
    bag_state: BagState, words::bag_state;
    feedstock: Feedstock, words::feedstock;
    charge_source: ChargeSource, words::charge_source;
    measures: Measures, |measures| match measures {
        Measures::Metric => words::METRIC,
        Measures::Us => words::US,
    };
}

/// Every answer given in a case, in the reader's measures.
pub fn said(case: &Case, measures: Measures) -> Vec<Answer> {
    let given = sparse(case);
    let row = |name: &str| TOLD.iter().position(|(known, ..)| *known == name);
    let mut all: Vec<(usize, Answer)> = named(&given)
        .into_iter()
        .map(|(name, value)| {
            let at = row(&name);
            let (label, told) = match at {
                Some(at) => {
                    let (_, label, told) = TOLD[at];
                    (label.to_string(), Some(told))
                }
                None => (words::title(&name.replace(['.', '-'], " ")), None),
            };
            let value = tell(&name, value, told, measures);
            (at.unwrap_or(TOLD.len()), Answer { name, label, value })
        })
        .collect();
    all.sort_by_key(|(at, _)| *at);
    all.into_iter().map(|(_, answer)| answer).collect()
}

/// What was answered to a question, in words; empty where it can't be said in few.
pub fn answered(case: &Case, question: QuestionId) -> String {
    let names: &[&str] = match question {
        QuestionId::Region => &["reading.region"],
        QuestionId::Extractant => &["reading.extractants"],
        QuestionId::NutrientUnit => &["reading.nutrient-unit"],
        QuestionId::SamplingDepth => &["reading.depth-cm"],
        QuestionId::Buffer => &["reading.buffer"],
        QuestionId::EcMethod => &["reading.ec-method"],
        QuestionId::Texture => &["bed.texture"],
        QuestionId::Plants => &["plants"],
        QuestionId::BagState => &["biochar.state"],
        QuestionId::Planting => &["season.planting"],
        QuestionId::Winter => &["season.harvest", "season.first-frost"],
        QuestionId::Area => &["bed.area-m2"],
        QuestionId::WorkedDepth => &["bed.depth-cm"],
        QuestionId::ChargeWith => &["charge-with"],
        QuestionId::ReadingUnit | QuestionId::CountedOff | QuestionId::Today => &[],
    };
    let mut all = said(case, case.measures);
    all.retain(|answer| names.contains(&&*answer.name));
    all.into_iter().map(|answer| answer.value).collect::<Vec<_>>().join(", ")
}

fn tell(name: &str, value: &Value, told: Option<Told>, measures: Measures) -> String {
    let by_name = |value: &Value, of: fn(&str) -> Option<&'static str>| {
        let name = value.as_str().unwrap_or_default();
        of(name).map_or_else(|| name.to_string(), str::to_string)
    };
    match (told, value) {
        (Some(Told::Choice(of)), Value::Array(several)) => {
            several.iter().map(|one| by_name(one, of)).collect::<Vec<_>>().join(", ")
        }
        (Some(Told::Choice(of)), one) => by_name(one, of),
        (Some(Told::Number(unit)), Value::Number(number)) => {
            let number = number.as_f64().unwrap_or_default();
            // A sample is counted from 0 in the JSON and from 1 by people.
            let number = if name == "sample" { number + 1.0 } else { number };
            let number = significant(in_readers(number, unit, measures), 4);
            format!("{number} {}", readers_symbol(unit, measures)).trim_end().into()
        }
        (Some(Told::Day), Value::String(text)) => {
            day::parse(text).map_or_else(|| text.clone(), day::spoken)
        }
        (Some(Told::Name), Value::String(name)) => name.clone(),
        (_, Value::Array(several)) => words::keeping::so_many(several.len()),
        (_, Value::String(text)) => text.replace('-', " "),
        (_, other) => other.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use emberloam_engine::case::BedTrial;
    use proptest::prelude::*;

    use super::*;

    fn a_case() -> Case {
        let mut case = Case { sample: 1, measures: Measures::Us, ..Case::default() };
        case.bed.area_m2 = Some(10.0);
        case.bed.kind = Some(BedKind::NoDig);
        case.season.planting = day::parse("2027-04-20");
        case.charge_with = vec![ChargeSource::Compost, ChargeSource::Urine];
        case
    }

    #[test]
    fn only_what_was_said_is_in_the_sparse_json() {
        assert_eq!(sparse(&Case::default()).to_string(), "{}");
        let json = sparse(&a_case());
        assert_eq!(json["bed"], serde_json::json!({"area-m2": 10.0, "kind": "no-dig"}));
        assert_eq!(super::case(&json).unwrap(), a_case());
    }

    #[test]
    fn every_answer_is_told_in_words() {
        let all = said(&a_case(), Measures::Metric);
        let told: Vec<_> =
            all.iter().map(|a| (a.name.as_str(), a.label.as_str(), a.value.as_str())).collect();
        assert_eq!(
            told,
            [
                ("sample", words::WHICH_SAMPLE, "2"),
                ("bed.area-m2", words::AREA, "10 m²"),
                ("bed.kind", words::BED_KIND, "never dug, fed from above"),
                ("season.planting", words::PLANTING, "20 April 2027"),
                ("charge-with", words::CHARGE_WITH, "finished compost, urine, diluted"),
                ("measures", words::MEASURES, "US"),
            ]
        );
        assert!(!all[0].can_be_fixed() && all[1].can_be_fixed());
    }

    #[test]
    fn every_name_with_words_is_a_name_of_the_case() {
        let mut case = Case::default();
        // What holds for one bed alone is only written where there is such a bed.
        case.answer(0, false, |case| case.bed.area_m2 = Some(2.0));
        case.trial = Some(BedTrial { off: true, ..BedTrial::default() });
        let whole = whole(&case);
        for (name, ..) in TOLD {
            let mut here = &whole;
            for key in name.split('.') {
                here = here.get(key).unwrap_or_else(|| panic!("no {name} in a case"));
            }
        }
    }

    #[test]
    fn answers_are_put_in_and_taken_out_by_name() {
        let names = ["bed.area-m2".to_string(), "plants".into()];
        let less = without(&a_case(), &names);
        assert_eq!((less.bed.area_m2, less.bed.kind), (None, Some(BedKind::NoDig)));
        let back = put(&less, &only(&sparse(&a_case()), &names)).unwrap();
        assert_eq!(back, a_case());
        assert_eq!(put(&less, &serde_json::json!({"bed": {"area-m2": "wide"}})), None);
        assert_eq!(put(&less, &serde_json::json!(7)), None);
    }

    proptest! {
        #[test]
        fn any_numbers_come_back_from_the_sparse_json(
            area in proptest::option::of(0.0..1e5_f64),
            depth in proptest::option::of(0.1..100.0_f64),
            sample in 0_usize..50,
        ) {
            let mut case = Case { sample, ..Case::default() };
            case.bed.area_m2 = area;
            case.reading.depth_cm = depth;
            prop_assert_eq!(super::case(&sparse(&case)).unwrap(), case);
        }
    }
}
