//! What the chemistry leaves open, asks for and hands on.

use emberloam_engine::chemistry::{Chemistry, Derived, work_out};
use emberloam_engine::quantity::{Band, Unit};
use emberloam_engine::question::QuestionId;
use emberloam_engine::ranges::Setting;
use emberloam_engine::soil::{Amount, Measure, Method, Property, Soil};
use emberloam_engine::sources::Grade;

use crate::close;

fn measure(property: Property, value: f64, method: Option<Method>) -> Measure {
    Measure { property, amount: Amount::Exactly(value), unit: property.unit(), method }
}

/// Calcium, magnesium, potassium and sodium in mg/kg by one extract.
fn bases(method: Method, ca: f64, mg: f64, k: f64, na: Option<f64>) -> Vec<Measure> {
    let mut measures = vec![
        measure(Property::Calcium, ca, Some(method)),
        measure(Property::Magnesium, mg, Some(method)),
        measure(Property::Potassium, k, Some(method)),
    ];
    measures.extend(na.map(|na| measure(Property::Sodium, na, Some(method))));
    measures
}

fn ph(value: f64) -> Measure {
    measure(Property::Ph, value, Some(Method::Water1To1))
}

fn chemistry_of(measures: Vec<Measure>) -> Chemistry {
    work_out(&Soil { measures }, &Setting::default())
}

#[track_caller]
fn band(chemistry: &Chemistry, what: Derived) -> Band {
    chemistry.get(what).unwrap_or_else(|| panic!("no {what:?} in {:?}", chemistry.figures)).band
}

fn asks(chemistry: &Chemistry, id: QuestionId) -> bool {
    chemistry.questions.iter().any(|q| q.id == id)
}

/// Source: common practice, no source: no acidity from pH 7 on. A printed
/// capacity that the bases don't fill is no acidity there; below pH 7 it is, and
/// what the laboratory itself prints is shown at any pH.
#[test]
fn no_acidity_on_the_exchange_from_ph_7() {
    let shown = |ph_value: f64, more: Option<Measure>| {
        let mut measures = bases(Method::AmmoniumAcetate, 1600.0, 200.0, 150.0, None);
        measures.push(ph(ph_value));
        measures.push(measure(Property::Cec, 16.0, None));
        measures.extend(more);
        let chemistry = chemistry_of(measures);
        assert!(band(&chemistry, Derived::BaseSaturation).likely < 65.0);
        chemistry.get(Derived::AciditySaturation).is_some()
    };
    assert!(shown(6.9, None));
    assert!(!shown(7.0, None));
    assert!(!shown(8.1, None));
    assert!(shown(7.2, Some(measure(Property::ExchangeableAcidity, 0.4, None))));
}

#[test]
fn a_buffer_without_a_name_gives_no_acidity_and_is_asked_for() {
    let with_buffer = |method| {
        let mut measures = bases(Method::Mehlich3, 800.0, 120.0, 100.0, None);
        measures.push(ph(5.8));
        measures.push(measure(Property::BufferPh, 6.5, method));
        chemistry_of(measures)
    };
    let unnamed = with_buffer(None);
    assert!(asks(&unnamed, QuestionId::Buffer));
    let without = {
        let mut measures = bases(Method::Mehlich3, 800.0, 120.0, 100.0, None);
        measures.push(ph(5.8));
        chemistry_of(measures)
    };
    assert_eq!(unnamed.cec, without.cec, "the unnamed reading must not be used");
    assert!(!asks(&with_buffer(Some(Method::SmpBuffer)), QuestionId::Buffer));
    assert_eq!(with_buffer(Some(Method::ModifiedMehlichBuffer)).cec, without.cec);
}

#[test]
fn only_extracts_that_reach_the_exchange_are_summed_and_never_volumes() {
    let olsen =
        chemistry_of([bases(Method::Olsen, 800.0, 120.0, 100.0, None), vec![ph(6.5)]].concat());
    assert!(olsen.cec.is_none() && olsen.figures.is_empty());
    let by_volume: Vec<Measure> = bases(Method::Mehlich3, 800.0, 120.0, 100.0, None)
        .into_iter()
        .map(|m| Measure { unit: Unit::MgPerL, ..m })
        .chain([ph(6.5)])
        .collect();
    assert!(chemistry_of(by_volume).cec.is_none());
    let unknown: Vec<Measure> = bases(Method::Mehlich3, 800.0, 120.0, 100.0, None)
        .into_iter()
        .map(|m| Measure { method: None, ..m })
        .chain([ph(6.5)])
        .collect();
    assert!(chemistry_of(unknown).cec.is_none());
    let empty = [bases(Method::Mehlich3, 0.0, 0.0, 0.0, None), vec![ph(7.2)]].concat();
    assert!(chemistry_of(empty).cec.is_none(), "nothing to divide by");
}

#[test]
fn sodium_below_its_limit_is_a_band_from_none_to_the_limit() {
    let mut measures = bases(Method::Mehlich3, 800.0, 120.0, 100.0, None);
    measures.push(Measure {
        amount: Amount::Below(23.0),
        ..measure(Property::Sodium, 0.0, Some(Method::Mehlich3))
    });
    measures.push(ph(6.4));
    measures.push(measure(Property::ExchangeableAcidity, 1.0, None));
    let esp = band(&chemistry_of(measures), Derived::SodiumSaturation);
    assert_eq!(esp.low, 0.0);
    assert!(esp.high > 0.0 && esp.high < 3.0, "{esp:?}");
}

#[test]
fn salts_are_shown_as_paste_when_the_mix_is_known_and_asked_for_when_it_matters() {
    let salts = |ec, method| chemistry_of(vec![measure(Property::Ec, ec, method)]);
    let known = band(&salts(1.0, Some(Method::Water1To1)), Derived::Ece);
    assert!(known.low < known.high && known.low >= 1.0);
    assert!(band(&salts(2.5, Some(Method::SaturatedPaste)), Derived::Ece).is_exact());
    let unknown = salts(0.6, None);
    assert!(unknown.get(Derived::Ece).is_none() && asks(&unknown, QuestionId::EcMethod));
    assert!(!asks(&salts(0.1, None), QuestionId::EcMethod), "the answer would change nothing");
}

#[test]
fn texture_is_asked_only_when_it_decides() {
    let om = |v| chemistry_of(vec![measure(Property::OrganicMatter, v, None)]);
    assert!(asks(&om(2.2), QuestionId::Texture));
    assert!(!asks(&om(7.0), QuestionId::Texture));
}

#[test]
fn every_figure_says_what_it_rests_on() {
    let mut measures = bases(Method::Mehlich3, 900.0, 130.0, 110.0, Some(20.0));
    measures.extend([
        ph(5.9),
        measure(Property::OrganicCarbon, 2.0, None),
        measure(Property::Cec, 9.0, None),
        measure(Property::Phosphorus, 60.0, Some(Method::Mehlich3)),
        measure(Property::Aluminum, 800.0, Some(Method::Mehlich3)),
        measure(Property::Iron, 200.0, Some(Method::Mehlich3)),
        measure(Property::Ec, 0.4, Some(Method::Water1To2)),
    ]);
    let chemistry = chemistry_of(measures);
    assert!(chemistry.figures.len() >= 12);
    for figure in &chemistry.figures {
        let Band { low, likely, high } = figure.band;
        assert!(low <= likely && likely <= high, "{}: {:?}", figure.name, figure.band);
        assert!(low.is_finite() && high.is_finite(), "{}", figure.name);
        assert!(!figure.grounds.rule.is_empty(), "{}", figure.name);
        assert!(!figure.grounds.inputs.is_empty(), "{}", figure.name);
    }
}

/// From pH 7 the sum may be half lime. Source: common practice, our choice.
#[test]
fn the_sum_of_a_limy_soil_reaches_down_to_half() {
    let of_ph = |value: f64| {
        let mut measures = bases(Method::AmmoniumAcetate, 2004.0, 243.0, 391.0, Some(0.0));
        measures.push(ph(value));
        measures.push(measure(Property::ExchangeableAcidity, 0.0, None));
        chemistry_of(measures).cec.expect("a sum")
    };
    close(of_ph(7.0).low, of_ph(7.0).likely / 2.0, 1e-9);
    assert!(of_ph(6.9).is_exact());
}

/// What a number on the way rests on stands behind the last one too, once. Common practice of
/// this program.
#[test]
fn grounds_are_carried_along_once() {
    let mut measures = bases(Method::Mehlich3, 2004.0, 243.0, 391.0, Some(10.0));
    measures.push(ph(5.5));
    measures.push(measure(Property::BufferPh, 6.6, Some(Method::SmpBuffer)));
    let found = chemistry_of(measures);
    let sources = &found.get(Derived::Cec).expect("a capacity").grounds.sources;
    assert!(sources.iter().any(|c| c.grade == Grade::FromMemory), "{sources:?}");
    for (at, citation) in sources.iter().enumerate() {
        assert!(!sources[..at].contains(citation), "{citation:?} stands twice");
    }
    assert_eq!(found.get(Derived::Cec).unwrap().label, "exchange capacity (CEC)");
    let weak = |method| {
        let mut measures = bases(method, 2004.0, 243.0, 391.0, Some(10.0));
        measures.push(measure(Property::ExchangeableAcidity, 1.0, None));
        let found = chemistry_of(measures);
        found.get(Derived::Cec).unwrap().grounds.assumed.iter().any(|a| a.contains("weak extract"))
    };
    assert!(weak(Method::Mehlich1) && !weak(Method::Mehlich3));
}

/// Source: our choice of the middle among published equations stands behind a converted salt
/// reading only.
#[test]
fn a_paste_reading_rests_on_no_equation() {
    let salts = |method| {
        let found = chemistry_of(vec![measure(Property::Ec, 1.0, Some(method))]);
        found.get(Derived::Ece).expect("salts").grounds.clone()
    };
    assert!(salts(Method::SaturatedPaste).sources.is_empty());
    assert!(salts(Method::SaturatedPaste).assumed.is_empty());
    let converted = salts(Method::Water1To1);
    assert!(converted.sources.iter().any(|c| c.grade == Grade::Unsourced));
    assert!(converted.assumed.iter().any(|a| a.contains("texture is not known")));
}
