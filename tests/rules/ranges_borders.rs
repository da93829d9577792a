//! What is never judged, limits, and results in words.

use emberloam_engine::quantity::Unit;
use emberloam_engine::ranges::{Finding, Level, Setting, judge};
use emberloam_engine::soil::{Amount, Measure, Method, Property, Soil};

fn measure(property: Property, amount: Amount, method: Option<Method>) -> Measure {
    Measure { property, amount, unit: property.unit(), method }
}

fn judged(property: Property, amount: Amount, method: Option<Method>, ph: Option<f64>) -> Finding {
    let measures = ph.map(|ph| measure(Property::Ph, Amount::Exactly(ph), Some(Method::Water1To1)));
    let soil = Soil { measures: measures.into_iter().collect() };
    judge(&measure(property, amount, method), &soil, &Setting::default())
}

/// A trait of the soil has no sufficient range, and each says why. Common practice, no source.
#[test]
fn what_is_never_judged_says_why() {
    for (property, why) in [
        (Property::SaltPh, "the ranges are for water"),
        (Property::BufferPh, "how much lime"),
        (Property::Sodium, "share of the exchange capacity"),
        (Property::ExchangeableAcidity, "pH in water"),
        (Property::AciditySaturation, "pH in water"),
        (Property::Cec, "how much the soil can hold"),
        (Property::BaseSaturation, "follows the pH"),
        (Property::Sand, "trait of the soil"),
        (Property::Silt, "trait of the soil"),
        (Property::Clay, "trait of the soil"),
        (Property::BulkDensity, "trait of the soil"),
        (Property::OrganicCarbon, "organic matter"),
        (Property::NitrogenRelease, "own estimate"),
        (Property::FreeLime, "which tests can be trusted"),
        (Property::Arsenic, "limits disagree"),
        (Property::Cadmium, "limits disagree"),
    ] {
        let finding = judged(property, Amount::Exactly(5.0), Some(Method::TotalAcid), None);
        assert_eq!(finding.level, None, "{property:?}");
        let said = finding.not_judged.unwrap_or_default();
        assert!(said.contains(why), "{property:?}: {said}");
    }
}

/// Mixed vegetables are assumed only where the table is not for all plants. Common practice.
#[test]
fn what_grows_is_assumed_only_where_it_matters() {
    let assumed = |property, method| {
        let finding = judged(property, Amount::Exactly(6.0), Some(method), None);
        finding.grounds.assumed.iter().any(|a| a.starts_with("Mixed vegetables"))
    };
    assert!(assumed(Property::Ph, Method::Water1To1));
    assert!(!assumed(Property::Zinc, Method::Dtpa));
    let by_colour = |method| {
        let finding = judged(Property::Phosphorus, Amount::Exactly(60.0), Some(method), None);
        finding.grounds.assumed.iter().any(|a| a.starts_with("Read by colour"))
    };
    assert!(by_colour(Method::Mehlich3Colorimetric) && !by_colour(Method::Mehlich3));
    let potassium = judged(
        Property::Potassium,
        Amount::Exactly(60.0),
        Some(Method::Mehlich3Colorimetric),
        None,
    );
    assert!(potassium.grounds.assumed.iter().all(|a| !a.starts_with("Read by colour")));
    assert_eq!(Unit::MgPerKg, Property::Lead.unit());
}

/// A limit within one step is on it; one that reaches over steps of one side is on it or beyond; one
/// over both sides can't be told, and says by whose table. Common practice, no source.
#[test]
fn limits_on_steps() {
    use emberloam_engine::ranges::{Placed, Step, place};
    let steps = [
        Step::to("very low", Level::VeryLow, 10.0),
        Step::to("low", Level::Low, 20.0),
        Step::to("enough", Level::Sufficient, 40.0),
        Step::rest("high", Level::High),
    ];
    let at = |amount| place(&steps, amount);
    assert!(matches!(at(Amount::Below(5.0)), Placed::On(step) if step.word == "very low"));
    assert!(matches!(at(Amount::Below(20.0)), Placed::OnOrBeyond(step) if step.word == "low"));
    assert!(matches!(at(Amount::Above(40.0)), Placed::On(step) if step.word == "high"));
    assert!(matches!(at(Amount::Below(30.0)), Placed::Between(Level::VeryLow, Level::Sufficient)));
    assert!(matches!(at(Amount::Above(15.0)), Placed::Between(Level::Low, Level::High)));
    let open = judged(Property::Phosphorus, Amount::Below(60.0), Some(Method::Mehlich3), None);
    assert!(open.level.is_none() && open.source.is_some());
    assert!(open.grounds.rule.starts_with("Sufficient: ") && !open.grounds.sources.is_empty());
}

/// A result is told as it would be read out. Common practice, no source.
#[test]
fn results_in_words() {
    let told = |property, amount, method| {
        let finding = judged(property, amount, Some(method), Some(6.0));
        finding.grounds.inputs[0].value.clone()
    };
    let by = Method::Mehlich3;
    assert_eq!(told(Property::Potassium, Amount::Exactly(60.0), by), "60 mg/kg");
    assert_eq!(told(Property::Potassium, Amount::Below(60.0), by), "below 60 mg/kg");
    assert_eq!(told(Property::Potassium, Amount::Above(600.0), by), "above 600 mg/kg");
    assert_eq!(told(Property::Ph, Amount::Exactly(6.0), Method::Water1To1), "6.0");
    let range = |property, method: Method| {
        judged(property, Amount::Exactly(6.0), Some(method), None).range.expect("a range").text
    };
    assert_eq!(range(Property::Potassium, by), "141–280 mg/kg");
    assert_eq!(range(Property::Ph, Method::Water1To1), "6.0–7.0");
    assert_eq!(range(Property::Zinc, Method::Dtpa), "above 1 mg/kg");
}
